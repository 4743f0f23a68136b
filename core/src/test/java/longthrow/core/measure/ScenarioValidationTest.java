package longthrow.core.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import longthrow.core.answer.Answer;
import longthrow.core.answer.Result;
import longthrow.core.build.Build;
import longthrow.core.term.InstrumentKind;
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
