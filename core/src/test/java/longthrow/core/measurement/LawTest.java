package longthrow.core.measurement;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.stream.Stream;
import longthrow.core.formula.SampleSource;
import longthrow.core.formula.SampleSummary;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class LawTest {
    static Stream<Law> laws() {
        return Stream.of(
                new Law.Normal(3, 0.5),
                new Law.Rectangular(-1, 5),
                new Law.ArcSine(2, 7),
                new Law.ScaledT(9, -4, 2),
                new Law.CurvilinearTrapezoid(1, 4, 0.8));
    }

    /** Draws have the moments the law states (JCGM 101:2008, 6.4); 5 standard errors of 200 000 draws, kurtosis of t9 (4.2) at worst. */
    @ParameterizedTest
    @MethodSource("laws")
    void drawsHaveTheStatedMoments(Law law) {
        double[] draws = new double[200_000];
        law.fill(SampleSource.of(7), draws, draws.length);
        SampleSummary summary = SampleSummary.of(draws, 0.95);
        double error = law.standardDeviation() / Math.sqrt(draws.length);
        assertThat(summary.mean()).isCloseTo(law.mean(), within(5 * error));
        assertThat(summary.standardDeviation()).isCloseTo(law.standardDeviation(), within(5 * error));
    }

    /** Student's t has no mean with one degree of freedom and no finite variance with two. */
    @Test
    void heavyTailsHaveNoMoments() {
        assertThat(new Law.ScaledT(1, 0, 1).mean()).isNaN();
        assertThat(new Law.ScaledT(2, 0, 1).standardDeviation()).isEqualTo(Double.POSITIVE_INFINITY);
    }

    @Test
    void impossibleLawsAreRefused() {
        assertThatThrownBy(() -> new Law.Rectangular(2, 1)).hasMessageContaining("the lower one first");
        assertThatThrownBy(() -> new Law.Normal(0, -1)).hasMessageContaining("standard deviation");
        assertThatThrownBy(() -> new Law.ScaledT(0, 0, 1)).hasMessageContaining("degrees of freedom");
        assertThatThrownBy(() -> new Law.CurvilinearTrapezoid(0, 1, 0.6)).hasMessageContaining("half their distance");
    }
}
