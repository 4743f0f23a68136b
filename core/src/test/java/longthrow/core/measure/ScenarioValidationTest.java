package longthrow.core.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import longthrow.core.answer.Answer;
import longthrow.core.answer.Result;
import longthrow.core.answer.Verdict;
import longthrow.core.build.Build;
import longthrow.core.build.Damage;
import longthrow.core.build.FitWish;
import longthrow.core.term.Choice;
import longthrow.core.term.InstrumentKind;
import longthrow.core.term.Part;
import longthrow.core.term.Term;
import org.junit.jupiter.api.Test;

/** The invented acceptance cases of the project's map of needs; figures and their plus-or-minus as printed there, to the last printed digit. */
class ScenarioValidationTest {

    static Build longerThrow() {
        return Builds.engine("S1")
                .typed(Term.BORE, "66.00 mm ± 0.01 mm")
                .typed(Term.STROKE, "56.50 mm ± 0.02 mm")
                .typed(Term.DECK_HEIGHT, "139.62 mm ± 0.05 mm")
                .typed(Term.PIN_TOP_TO_CROWN, "16.40 mm ± 0.02 mm")
                .typed(Term.PIN_DIAMETER, "17.00 mm ± 0.001 mm")
                .typed(Term.CHAMBER_VOLUME, "16.2 cc ± 0.2 cc")
                .typed(Term.CROWN_VOLUME, "1.1 cc ± 0.15 cc")
                .typed(Term.GASKET_BORE, "68.5 mm ± 0.001 mm")
                .typed(Term.GASKET_THICKNESS, "1.30 mm ± 0.03 mm")
                .typed(Term.ROD_LENGTH, "86.40 mm ± 0.03 mm")
                .typed(Term.SKIRT_BELOW_PIN, "17.6 mm ± 0.001 mm")
                .typed(Term.COUNTERWEIGHT_RADIUS, "38.9 mm ± 0.001 mm")
                .build();
    }

    @Test
    void longerThrowClosesItsStackWithItsDoubt() {
        Answer answer = Measure.of(longerThrow(), List.of());
        expect(answer, Term.COMPRESSION_HEIGHT, 24.90e-3, 0.005e-3);
        expect(answer, Term.DECK_CLEARANCE, 0.07e-3, 0.005e-3);
        expect(answer, Term.SQUISH, 1.37e-3, 0.005e-3);
        doubt(answer, Term.SQUISH, 0.07e-3, 0.005e-3);
        expect(answer, Term.SWEPT_VOLUME, 193.3e-6, 0.05e-6);
        expect(answer, Term.COMPRESSION_RATIO, 9.66, 0.005);
        doubt(answer, Term.COMPRESSION_RATIO, 0.13, 0.005);
        expect(answer, Term.SKIRT_TO_COUNTERWEIGHT, 1.65e-3, 0.005e-3);
    }

    @Test
    void longerThrowNamesTheIdealRod() {
        Build build = Builds.engine("S1")
                .typed(Term.STROKE, "56.50 mm ± 0.02 mm")
                .typed(Term.DECK_HEIGHT, "139.62 mm ± 0.05 mm")
                .typed(Term.COMPRESSION_HEIGHT, "24.90 mm ± 0.02 mm")
                .typed(Term.GASKET_THICKNESS, "1.02 mm ± 0.03 mm")
                .aim(Term.SQUISH, "1.27 mm")
                .build();
        expect(Measure.of(build, List.of()), Term.ROD_LENGTH_WANTED, 86.22e-3, 0.005e-3);
    }

    static Build sideValveKart() {
        return Builds.engine("S2")
                .typed(Term.BORE, "64.90 mm ± 0.001 mm")
                .typed(Term.STROKE, "61.20 mm ± 0.001 mm")
                .instrument("fill", InstrumentKind.BURETTE, 0.1e-6, 0.30e-6)
                .readings(Term.VOLUME_IN_ASSEMBLY, "fill", "27.9 cc", "27.6 cc", "27.8 cc")
                .typed(Term.CHAMBER_AREA, "3950 mm2 ± 1 mm2")
                .typed(Term.VALVE_TO_HEAD, "1.62 mm ± 0.01 mm")
                .instrument("wheel", InstrumentKind.DEGREE_WHEEL, Math.toRadians(0.25), 0)
                .readings(Term.INTAKE_OPENS, "wheel", "9.0 deg", "8.0 deg", "9.75 deg")
                .readings(Term.INTAKE_CLOSES, "wheel", "39.5 deg", "40.0 deg", "39.25 deg")
                .typed(Term.TAPER_DIAMETER, "22.2 mm ± 0.001 mm")
                .typed(Term.KEY_OFFSET, "0.80 mm ± 0.001 mm")
                .typed(Term.BASE_TIMING, "26 deg ± 0.01 deg")
                .keep("club: least clearance volume", Term.CLEARANCE_VOLUME, "27.0 cc", null, "0.35 cc")
                .keep("club: intake lobe centre", Term.INTAKE_LOBE_CENTRE, "103.5 deg", "106.5 deg", null)
                .keep("own: valve to head", Term.VALVE_TO_HEAD, "1.27 mm", null, null)
                .build();
    }

    @Test
    void sideValveKartKnowsItsRatioCutAndKey() {
        Answer answer = Measure.of(sideValveKart(), List.of());
        expect(answer, Term.SWEPT_VOLUME, 202.5e-6, 0.05e-6);
        expect(answer, Term.COMPRESSION_RATIO, 8.29, 0.005);
        doubt(answer, Term.COMPRESSION_RATIO, 0.09, 0.01);
        expect(answer, Term.CLEARANCE_VOLUME, 27.77e-6, 0.005e-6);
        doubt(answer, Term.CLEARANCE_VOLUME, 0.36e-6, 0.005e-6);
        expect(answer, Term.HEAD_CUT, 0.10e-3, 0.0075e-3);
        expect(answer, Term.RATIO_AFTER_CUT, 8.40, 0.005);
        expect(answer, Term.VALVE_TO_HEAD_AFTER_CUT, 1.52e-3, 0.0075e-3);
        expect(answer, Term.KEY_SHIFT, Math.toRadians(4.1), Math.toRadians(0.05));
        expect(answer, Term.TIMING_WITH_KEY, Math.toRadians(30.1), Math.toRadians(0.05));
    }

    @Test
    void threeTrialsOfTheLobeCentreReachAcrossTheRule() {
        Result centre = Measure.of(sideValveKart(), List.of())
                .value(Term.INTAKE_LOBE_CENTRE)
                .orElseThrow();
        assertThat(Math.toDegrees(centre.figure().value())).isCloseTo(105.3, within(0.05));
        assertThat(Math.toDegrees(centre.figure().low())).isCloseTo(103.8, within(0.05));
        assertThat(Math.toDegrees(centre.figure().high())).isCloseTo(106.9, within(0.05));
    }

    static Build vintageIron() {
        return Builds.engine("S4")
                .typed(Term.BORE_TOP_THRUST, "79.61 mm ± 0.01 mm")
                .typed(Term.BORE_MIDDLE_THRUST, "79.52 mm ± 0.01 mm")
                .typed(Term.BORE_BOTTOM_THRUST, "79.40 mm ± 0.01 mm")
                .typed(Term.BORE_TOP_AXIS, "79.52 mm ± 0.01 mm")
                .typed(Term.BORE_MIDDLE_AXIS, "79.47 mm ± 0.01 mm")
                .typed(Term.BORE_BOTTOM_AXIS, "79.40 mm ± 0.01 mm")
                .typed(Term.STROKE, "95.2 mm ± 0.05 mm")
                .typed(Term.CRANKPIN_DIAMETER, "34.95 mm ± 0.005 mm")
                .typed(Term.BIG_END_STRIP, "0.114 mm ± 0.01 mm")
                .typed(Term.CRANK_END_PLAY, "0.35 mm ± 0.02 mm")
                .typed(Term.CRANKING_PRESSURE, "42 psi ± 2 psi")
                .typed(Term.FLYWHEEL_DIAMETER, "457 mm ± 1 mm")
                .specified(Term.GOVERNED_SPEED, "500 rpm", null, "the plate")
                .typed(Term.WANTED_SPEED, "1250 rpm ± 1 rpm")
                .shims("0.05", "0.05", "0.025")
                .choose(Choice.CYLINDER_METAL, "iron")
                .choose(Choice.BIG_END_BEARING, "babbitt")
                .choose(Choice.FLYWHEEL_KIND, "spoked_iron")
                .choose(Choice.DUTY, "mild")
                .seen(Part.FLYWHEEL, Damage.Kind.CRACK, "spoke root, a line that stays after wiping")
                .build();
    }

    @Test
    void vintageIronShowsItsWearAndIsRefusedItsSpeed() {
        Answer answer = Measure.of(vintageIron(), List.of());
        expect(answer, Term.SWEPT_VOLUME, 471e-6, 2e-6);
        expect(answer, Term.BORE_TAPER, 0.21e-3, 0.005e-3);
        expect(answer, Term.OUT_OF_ROUND, 0.09e-3, 0.005e-3);
        expect(answer, Term.RIM_SPEED, 29.9, 0.05);
        expect(answer, Term.BIG_END_CLEARANCE, 0.114e-3, 0.0005e-3);
        assertThat(answer.stops()).anyMatch(s -> s.refused() && s.what().contains("wheel"));
        assertThat(answer.verdictsOn(Term.BORE_TAPER)).anyMatch(v -> v.state() == Verdict.State.FAILS);
        assertThat(words(answer)).contains("0.064").contains("0.039").contains("550");
        assertThat(answer.findings()).anyMatch(f -> f.message().contains("proves little"));
    }

    /** Everything the answer says in words. */
    private static String words(Answer answer) {
        StringBuilder all = new StringBuilder();
        answer.findings()
                .forEach(f ->
                        all.append(f.message()).append(' ').append(f.mend()).append('\n'));
        answer.stops()
                .forEach(s -> all.append(s.what())
                        .append(' ')
                        .append(s.why())
                        .append(' ')
                        .append(s.wayRound())
                        .append('\n'));
        answer.verdicts()
                .forEach(v -> all.append(v.why()).append(' ').append(v.cure()).append('\n'));
        return all.toString();
    }

    @Test
    void lobeCentreIsNotProvenLegalAndTheVolumeIs() {
        Answer answer = Measure.of(sideValveKart(), List.of());
        assertThat(answer.verdictsOn(Term.INTAKE_LOBE_CENTRE)).anyMatch(v -> v.state() == Verdict.State.NEAR);
        assertThat(answer.verdictsOn(Term.CLEARANCE_VOLUME)).anyMatch(v -> v.state() == Verdict.State.MEETS);
        assertThat(answer.verdictsOn(Term.VALVE_TO_HEAD))
                .anyMatch(v -> v.rule().startsWith("own:") && v.state() == Verdict.State.MEETS);
        assertThat(answer.next()).isNotEmpty();
        assertThat(answer.next().get(0).read()).isIn(Term.INTAKE_OPENS, Term.INTAKE_CLOSES);
    }

    @Test
    void longerThrowShowsTheSpreadOfTheTradeOnSquish() {
        Build build = longerThrow();
        Map<Choice, String> choices = new LinkedHashMap<>(build.choices());
        choices.put(Choice.ROD_METAL, "billet_aluminium");
        Build aluminium = new Build(
                build.name(),
                true,
                build.units(),
                List.of(),
                build.instruments(),
                build.given(),
                choices,
                Map.of(),
                List.of(),
                Map.of(),
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                Map.of(),
                FitWish.NONE,
                List.of());
        Answer answer = Measure.of(aluminium, List.of());
        assertThat(answer.verdictsOn(Term.SQUISH).stream()
                        .map(v -> v.rule() + " " + v.state())
                        .toList())
                .contains(
                        "squish_least.general MEETS",
                        "squish_least.small_kart MEETS",
                        "squish_least.large_single FAILS");
    }

    private static void expect(Answer answer, Term term, double value, double tolerance) {
        assertThat(answer.value(term)).as(term.path()).isPresent();
        assertThat(answer.value(term).orElseThrow().figure().value())
                .as(term.path())
                .isCloseTo(value, within(tolerance));
    }

    private static void doubt(Answer answer, Term term, double expanded, double tolerance) {
        assertThat(answer.value(term).orElseThrow().figure().expanded())
                .as(term.path() + " ±")
                .isCloseTo(expanded, within(tolerance));
    }
}
