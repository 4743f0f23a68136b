package longthrow.buildfile;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import longthrow.core.answer.Answer;
import longthrow.core.answer.Clearance;
import longthrow.core.answer.Clearance.State;
import longthrow.core.answer.Clearance.Way;
import longthrow.core.clear.Clear;
import org.junit.jupiter.api.Test;

/** What passes beside the rod along the crankshaft: a rod stands crooked on its pin by the play of its bearing over its width. */
class CrookedRodTest {
    /** A play of 0.24 mm over a width of 24 mm: a slope of 0.01 to either side. */
    private static String loose() {
        String bore = changed(
                ClearAnswerTest.whole(), "big_end_bore: [30.048 mm, 30.050 mm]", "big_end_bore: 30.240 mm ± 0.0001 mm");
        String pin =
                changed(bore, "crankpin_diameter: [29.998 mm, 29.997 mm]", "crankpin_diameter: 30.000 mm ± 0.0001 mm");
        String width = changed(pin, "big_end_width: 23.70 mm", "big_end_width: 24.00 mm ± 0.001 mm");
        return changed(width, "crankpin_width: 24.1 mm", "crankpin_width: 24.40 mm ± 0.001 mm");
    }

    private static String changed(String text, String from, String to) {
        assertThat(text).contains(from);
        return text.replace(from, to);
    }

    private static Clearance pair(String text, String key) {
        return pair(Clear.of(ClearAnswerTest.build(text)), key);
    }

    private static Clearance pair(Answer answer, String key) {
        return answer.clearances().stream()
                .filter(p -> p.key().equals(key))
                .findFirst()
                .orElseThrow(() -> new AssertionError(key + " is missing"));
    }

    /**
     * By hand, exhaust lobe at 20.9 mm, 11.8 mm wide; float 0.20 to each side, both end plays 0.20 and 0.18. Bolts: their farthest corner is 24.5 mm out and 19.5 mm
     * down, 31.312 mm from the pin's axis, so they come 0.313 mm nearer. A dipper 60.0 mm down, with the camshaft below, and 4 mm out: 60.133 mm, 0.601 mm nearer.
     */
    @Test
    void theFartherFromThePinTheMoreRoomItTakes() {
        Answer answer = Clear.of(ClearAnswerTest.build(loose()));
        double lobe = 20.9e-3 - 11.8e-3 / 2 - 0.20e-3 - 0.20e-3 - 0.18e-3;
        Clearance.Gap bolts = pair(answer, "rod_bolts_to_exhaust_lobe").cold().orElseThrow();
        assertThat(bolts.way()).isEqualTo(Way.BESIDE);
        assertThat(bolts.value()).isCloseTo(lobe - 10.0e-3 / 2 - 0.31312e-3, within(1e-5));
        Clearance.Gap dipper = pair(
                        changed(
                                changed(loose(), "dipper_reach: 40.5 mm", "dipper_reach: 60.0 mm"),
                                "axis_up: {readings: [26.02 mm, 25.98 mm]",
                                "axis_up: {readings: [-60.02 mm, -59.98 mm]"),
                        "dipper_to_exhaust_lobe")
                .cold()
                .orElseThrow();
        assertThat(dipper.way()).isEqualTo(Way.BESIDE);
        assertThat(dipper.value()).isCloseTo(lobe - 2.5e-3 / 2 - 0.60133e-3, within(1e-5));
        assertThat(answer.defaults())
                .anyMatch(d -> d.where().equals("connecting_rod.big_end_width")
                        && d.what().contains("as crooked as the big-end clearance lets it"));
    }

    /** Without the play, the width or a plain bearing nothing is told beside the rod, and what is missing is named. */
    @Test
    void withoutPlayOrWidthNothingIsToldBesideTheRod() {
        String plain = loose();
        assertThat(pair(plain, "rod_bolts_to_exhaust_lobe").state()).isNotEqualTo(State.UNKNOWN);
        Clearance noPlay =
                pair(changed(plain, "  big_end_bore: 30.240 mm ± 0.0001 mm\n", ""), "rod_bolts_to_exhaust_lobe");
        assertThat(noPlay.state()).isEqualTo(State.UNKNOWN);
        assertThat(noPlay.missing()).anyMatch(m -> m.where().equals("connecting_rod.big_end_bore"));
        Clearance noWidth =
                pair(changed(plain, "  big_end_width: 24.00 mm ± 0.001 mm\n", ""), "rod_bolts_to_exhaust_lobe");
        assertThat(noWidth.state()).isEqualTo(State.UNKNOWN);
        assertThat(noWidth.missing()).anyMatch(m -> m.where().equals("connecting_rod.big_end_width"));
        Clearance rolling = pair(
                changed(plain, "big_end_bearing: insert", "big_end_bearing: rolling"), "rod_bolts_to_exhaust_lobe");
        assertThat(rolling.state()).isEqualTo(State.UNKNOWN);
        assertThat(rolling.missing()).anyMatch(m -> m.what().contains("needles or rollers"));
    }
}
