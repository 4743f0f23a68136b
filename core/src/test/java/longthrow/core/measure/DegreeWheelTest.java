package longthrow.core.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import longthrow.core.answer.Answer;
import longthrow.core.build.Build;
import longthrow.core.term.InstrumentKind;
import longthrow.core.term.Term;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A zero that stands wrong shifts both lobe centres one way and leaves durations, separation and overlap alone: hand derivation. */
class DegreeWheelTest {
    private static final double WRONG = Math.toRadians(3);

    private static double sharedBy(Term term, int times) {
        String[] opens = new String[times];
        String[] closes = new String[times];
        for (int k = 0; k < times; k++) {
            opens[k] = 10 + 0.5 * k + " deg";
            closes[k] = 40 - 0.25 * k + " deg";
        }
        Build build = Builds.engine("wheel")
                .instrument("wheel", InstrumentKind.DEGREE_WHEEL, Math.toRadians(0.25), WRONG)
                .readings(Term.INTAKE_OPENS, "wheel", opens)
                .readings(Term.INTAKE_CLOSES, "wheel", closes)
                .readings(Term.EXHAUST_OPENS, "wheel", closes)
                .readings(Term.EXHAUST_CLOSES, "wheel", opens)
                .build();
        Answer answer = Measure.of(build, List.of());
        return answer.value(term).orElseThrow().figure().contributions().entrySet().stream()
                .filter(c -> c.getKey().id().equals("instrument wheel"))
                .mapToDouble(c -> c.getValue() * 1.959_964)
                .sum();
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 3})
    void aWrongZeroMovesLobeCentres(int times) {
        assertThat(sharedBy(Term.INTAKE_LOBE_CENTRE, times)).isCloseTo(WRONG, within(1e-6));
        assertThat(sharedBy(Term.EXHAUST_LOBE_CENTRE, times)).isCloseTo(-WRONG, within(1e-6));
        assertThat(sharedBy(Term.INTAKE_OPENS, times)).isCloseTo(-WRONG, within(1e-6));
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 3})
    void aWrongZeroLeavesSpansAlone(int times) {
        for (Term span : List.of(Term.INTAKE_DURATION, Term.EXHAUST_DURATION, Term.LOBE_SEPARATION, Term.OVERLAP)) {
            assertThat(sharedBy(span, times)).as(span.path()).isCloseTo(0, within(1e-9));
        }
    }

    @Test
    void theSparkBeforeTopDeadCentreReadsSmall() {
        assertThat(Readings.directionOf(Term.BASE_TIMING)).isEqualTo(-1);
        assertThat(Readings.directionOf(Term.STROKE)).isEqualTo(1);
    }
}
