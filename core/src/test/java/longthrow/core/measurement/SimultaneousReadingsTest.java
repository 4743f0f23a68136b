package longthrow.core.measurement;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Map;
import longthrow.core.formula.Expression;
import longthrow.core.formula.Formula;
import longthrow.core.formula.SampleSummary;
import org.junit.jupiter.api.Test;

class SimultaneousReadingsTest {
    private static final Map<String, double[]> PAIRS =
            Map.of("a", new double[] {1.0, 1.2, 0.9, 1.3, 1.1}, "b", new double[] {2.1, 2.2, 1.8, 2.5, 1.9});
    private static final Formula DIFFERENCE =
            Formula.of("difference", Expression.input("b").minus(Expression.input("a")));

    private static Measured mean(String name) {
        return SimultaneousReadings.means("p", "p", PAIRS).getOrDefault(name, Measured.exact(0));
    }

    /** JCGM 100:2008, H.2.4, second approach: a linear result worked out set by set must have the same mean, doubt and freedom. */
    @Test
    void differenceIsThatOfTheSetsTakenOneByOne() {
        double[] differences = {1.1, 1.0, 0.9, 1.2, 0.8};
        Measured bySets =
                SimultaneousReadings.means("q", "q", Map.of("d", differences)).getOrDefault("d", Measured.exact(0));
        Measured difference = Measured.through(DIFFERENCE, SimultaneousReadingsTest::mean);
        assertThat(difference.value()).isCloseTo(bySets.value(), within(1e-14));
        assertThat(difference.standardUncertainty()).isCloseTo(bySets.standardUncertainty(), within(1e-14));
        assertThat(difference.degreesOfFreedom()).isCloseTo(4, within(1e-12));
        assertThat(mean("a").degreesOfFreedom()).isCloseTo(4, within(1e-12));
    }

    /** JCGM 101:2008, 6.4.9: the mean of n normal readings is a scaled t of n - 1 degrees of freedom; 5 times the error of such a quantile. */
    @Test
    void trialsOfAnEnsembleSpreadLikeOneT() {
        Measured difference = Measured.through(DIFFERENCE, SimultaneousReadingsTest::mean);
        SampleSummary trials = MonteCarlo.summary(DIFFERENCE, SimultaneousReadingsTest::mean, 400_000, 0.95);
        double half = 0.5 * (trials.symmetric().hi() - trials.symmetric().lo());
        assertThat(half / difference.standardUncertainty()).isCloseTo(StudentT.factor(0.95, 4), within(0.05));
    }

    @Test
    void rowsOfDifferentLengthAreRefusedByName() {
        assertThatThrownBy(() -> SimultaneousReadings.means("p", "p", Map.of("a", new double[3], "b", new double[2])))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("b has 2");
        assertThatThrownBy(() -> SimultaneousReadings.means("p", "p", Map.of("a", new double[1])))
                .hasMessageContaining("at least 2");
    }
}
