package longthrow.core.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import longthrow.core.answer.Answer;
import longthrow.core.answer.Verdict;
import longthrow.core.build.Build;
import longthrow.core.build.Instrument;
import longthrow.core.term.InstrumentKind;
import longthrow.core.term.Term;
import org.junit.jupiter.api.Test;

/** Degreeing verdicts: acceptance case S2, and hand-made cases on either side of it. */
class DegreeingTest {
    private static Build cam(double zeroError, String least, String most, String[] opens, String[] closes) {
        return Builds.engine("cam")
                .instrument("wheel", InstrumentKind.DEGREE_WHEEL, Math.toRadians(0.25), zeroError)
                .readings(Term.INTAKE_OPENS, "wheel", opens)
                .readings(Term.INTAKE_CLOSES, "wheel", closes)
                .keep("card", Term.INTAKE_LOBE_CENTRE, least, most, null)
                .build();
    }

    private static Verdict verdict(Build build) {
        return Measure.of(build, List.of()).verdictsOn(Term.INTAKE_LOBE_CENTRE).get(0);
    }

    private static final String[] OPENS = {"9.0 deg", "8.0 deg", "9.75 deg"};
    private static final String[] CLOSES = {"39.5 deg", "40.0 deg", "39.25 deg"};

    /** S2: "mean 105.3 ... 95 % interval of the mean (t, 2 degrees of freedom) is 103.8-106.9, not proven legal, take 5+ more". */
    @Test
    void threeTrialsDoNotProveTheLobeCentre() {
        Answer answer = Measure.of(ScenarioValidationTest.sideValveKart(), List.of());
        Verdict verdict = answer.verdictsOn(Term.INTAKE_LOBE_CENTRE).get(0);
        assertThat(verdict.state()).isEqualTo(Verdict.State.NEAR);
        assertThat(verdict.why()).startsWith("not proven: ").contains("95 % interval 103.8 ° to 106.9 °");
        assertThat(verdict.cure()).startsWith("take 5 more trials");
    }

    /** The count by hand: scatter 0.6374 degrees of two degrees of freedom, times sqrt(2 / 0.4463) is 1.349; t 2.365 of 8 trials over sqrt 8 is 1.128, of 7 it is 1.248; to go 1.167. */
    @Test
    void theCountIsThatOfTheHandDerivation() {
        ReadingSet three = new ReadingSet(
                Term.INTAKE_OPENS,
                "trials",
                List.of(Math.toRadians(105.25), Math.toRadians(106.0), Math.toRadians(104.75)),
                Instrument.builtIn(InstrumentKind.DEGREE_WHEEL),
                0.01,
                12.5);
        assertThat(Math.toDegrees(three.scatter())).isCloseTo(0.6292, within(0.01));
        assertThat(Degreeing.more(three, Math.toRadians(1.167), 0)).isEqualTo(5);
        assertThat(Degreeing.more(three, Math.toRadians(3), 0)).isLessThan(3);
        assertThat(Degreeing.more(three, Math.toRadians(0.02), 0)).isGreaterThan(100);
    }

    @Test
    void wellInsideIsProvenAndWellOutsideIsWrong() {
        Verdict inside = verdict(cam(0, "100 deg", "111 deg", OPENS, CLOSES));
        assertThat(inside.why()).startsWith("proven: ");
        Verdict outside = verdict(cam(0, "109 deg", "112 deg", OPENS, CLOSES));
        assertThat(outside.why()).startsWith("wrong: ");
        assertThat(outside.state()).isEqualTo(Verdict.State.FAILS);
    }

    /** The zero of a wheel that stands once for all trials is in every one of them. */
    @Test
    void noNumberOfTrialsBeatsTheZeroOfTheWheel() {
        Verdict verdict = verdict(cam(Math.toRadians(1.5), "103.5 deg", "106.5 deg", OPENS, CLOSES));
        assertThat(verdict.cure()).startsWith("more trials cannot settle it").contains("1.5 °");
    }

    @Test
    void oneTrialAsksForTrials() {
        Verdict verdict = verdict(cam(0, "103.5 deg", "106 deg", new String[] {"9 deg"}, new String[] {"40 deg"}));
        assertThat(verdict.why()).startsWith("not proven: ");
        assertThat(verdict.cure()).startsWith("take three or more trials");
    }
}
