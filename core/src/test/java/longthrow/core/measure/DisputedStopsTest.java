package longthrow.core.measure;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import longthrow.core.answer.Answer;
import longthrow.core.answer.Stop;
import longthrow.core.build.Damage;
import longthrow.core.term.Choice;
import longthrow.core.term.InstrumentKind;
import longthrow.core.term.Part;
import longthrow.core.term.Term;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A stop never leaves because the figure it hangs on is in dispute. An invented engine with a longer throw, one slip at a time. */
class DisputedStopsTest {
    private static final String MOCK_UP = "before it has been mocked up";

    private static Builds longThrow(String stroke, String rod) {
        return Builds.engine("longer throw")
                .choose(Choice.FLYWHEEL_KIND, "cast_aluminium")
                .typed(Term.DECK_HEIGHT, "139.62 mm ± 0.05 mm")
                .typed(Term.STROKE, stroke + " ± 0.02 mm")
                .typed(Term.DONOR_STROKE, "50.00 mm ± 0.01 mm")
                .typed(Term.ROD_LENGTH, rod + " ± 0.03 mm")
                .typed(Term.PIN_DIAMETER, "17.00 mm ± 0.001 mm")
                .typed(Term.PIN_TOP_TO_CROWN, "16.40 mm ± 0.02 mm");
    }

    private static List<Stop> stops(Builds engine) {
        return Measure.of(engine.build(), List.of()).stops();
    }

    @ParameterizedTest
    @CsvSource({"56.50 mm, 86.40 mm", "28.25 mm, 86.40 mm", "56.50 mm, 68.40 mm"})
    void aSlipInTheStackKeepsTheMockUp(String stroke, String rod) {
        assertThat(stops(longThrow(stroke, rod))).anyMatch(s -> s.what().contains(MOCK_UP));
    }

    @Test
    void aThrowTypedAsTheStrokeKeepsTheMockUp() {
        assertThat(stops(longThrow("56.50 mm", "86.40 mm").typed(Term.THROW, "56.50 mm ± 0.02 mm")))
                .anyMatch(s -> s.what().contains(MOCK_UP));
    }

    @Test
    void twoStrokesAndTwoDonorStrokesKeepTheMockUp() {
        assertThat(stops(longThrow("56.50 mm", "86.40 mm").typed(Term.STROKE, "56.90 mm ± 0.02 mm")))
                .anyMatch(s -> s.what().contains(MOCK_UP));
        assertThat(stops(longThrow("56.50 mm", "86.40 mm").typed(Term.DONOR_STROKE, "49.00 mm ± 0.01 mm")))
                .anyMatch(s -> s.what().contains(MOCK_UP));
    }

    @Test
    void twoWantedSpeedsThatBothPassTheMakersKeepTheRefusal() {
        Builds one = longThrow("56.50 mm", "86.40 mm")
                .readings(Term.GOVERNED_SPEED, null, "3600 rpm")
                .readings(Term.WANTED_SPEED, null, "5200 rpm", "5600 rpm");
        assertThat(stops(one)).anyMatch(s -> s.refused() && s.what().startsWith("do not run it at"));
        Builds two = longThrow("56.50 mm", "86.40 mm")
                .readings(Term.GOVERNED_SPEED, null, "3600 rpm")
                .typed(Term.WANTED_SPEED, "5200 rpm ± 10 rpm")
                .typed(Term.WANTED_SPEED, "5400 rpm ± 10 rpm");
        assertThat(stops(two)).anyMatch(s -> s.refused() && s.what().startsWith("do not run it at"));
        assertThat(stops(two)).anyMatch(s -> s.what().contains(MOCK_UP));
    }

    /** 65 rpm is no speed to run at; 650 and 6500 are what a digit more would make of it, and no maker's speed is known. */
    @Test
    void aSpeedNoEngineRunsAtKeepsItsStop() {
        assertThat(stops(longThrow("56.50 mm", "86.40 mm").readings(Term.WANTED_SPEED, null, "65 rpm")))
                .anyMatch(s -> !s.refused() && s.what().contains("is not approved"));
    }

    @Test
    void readingsNoEngineComesNearKeepTheStopsOfWhatIsWritten() {
        Answer answer = Measure.of(
                longThrow("56.50 mm", "86.40 mm")
                        .seen(Part.FLYWHEEL, Damage.Kind.CRACK, "hub")
                        .instrument("gauge", InstrumentKind.BORE_GAUGE, 0.002e-3, 0.05)
                        .readings(Term.BORE, "gauge", "30 mm", "110 mm")
                        .build(),
                List.of());
        assertThat(answer.stops())
                .anyMatch(Stop::refused)
                .anyMatch(s -> s.what().contains(MOCK_UP));
    }

    @Test
    void whereNothingDisagreesTheStopsSayNothingOfADispute() {
        assertThat(stops(longThrow("56.50 mm", "86.40 mm")))
                .isNotEmpty()
                .allSatisfy(s -> assertThat(s.why()).doesNotContain("disagree"));
    }
}
