package longthrow.core.reduce;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Optional;
import java.util.Random;
import longthrow.core.measurement.Measured;
import longthrow.core.reduce.RunRows.Column;
import longthrow.core.reduce.Simulated.Scatter;
import longthrow.core.reduce.Simulated.Shape;
import org.junit.jupiter.api.Test;

/** Peaks of pulls whose truth is known: none is invented, and those there are lie where they are said to. */
class PeakTest {
    private static final int RUNS = 100;
    private static final double INERTIA = 0.14;
    private static final DrumBench BENCH = new DrumBench(
            Measured.exact(INERTIA),
            Optional.of(Measured.exact(0)),
            Optional.of(Measured.exact(1)),
            Optional.empty(),
            Optional.empty());

    private static RunCurve curve(Shape shape, Random random) {
        Simulated pull = Simulated.pull(shape, Scatter.ALL[1], INERTIA, 100, random);
        RunRows rows =
                RunRows.between(0, pull.rows()).with(Column.TIME, pull.time).with(Column.DRUM_SPEED, pull.speed);
        return DrumRun.reduce(rows, BENCH, Optional.empty()).curve().orElseThrow();
    }

    /** Falling and flat torque has no peak inside: by chance in 5 of 100, so at most 11 (binomial, 99.5 %). */
    @Test
    void noPeakIsInvented() {
        for (Shape shape : new Shape[] {Shape.FALLING, Shape.FLAT}) {
            Random random = new Random(11);
            int invented = 0;
            for (int run = 0; run < RUNS; run++) {
                invented += curve(shape, random).torquePeak().standing() == Peak.Standing.SHOWN ? 1 : 0;
            }
            assertThat(invented).as("peaks of %s", shape).isLessThanOrEqualTo(11);
        }
    }

    /** A hill that is there is shown, and the stretch that is told has its top in it, as often as 95 % of 100 runs allow. */
    @Test
    void hillIsShownWhereItIs() {
        Random random = new Random(12);
        int shown = 0;
        int inStretch = 0;
        int covered = 0;
        double truth = Simulated.LOW + 0.45 * (Simulated.HIGH - Simulated.LOW);
        for (int run = 0; run < RUNS; run++) {
            Peak peak = curve(Shape.HILL, random).torquePeak();
            shown += peak.standing() == Peak.Standing.SHOWN ? 1 : 0;
            inStretch += peak.lowSpeed() <= truth && truth <= peak.highSpeed() ? 1 : 0;
            covered += peak.value().low() <= 12 && 12 <= peak.value().high() ? 1 : 0;
        }
        assertThat(shown).isGreaterThanOrEqualTo(95);
        assertThat(inStretch).isGreaterThanOrEqualTo(89);
        assertThat(covered).isGreaterThanOrEqualTo(89);
    }

    /** Power of flat torque is highest at the highest speed, and that is said rather than a peak there. */
    @Test
    void powerThatStillRisesHasItsPeakBeyond() {
        Peak peak = curve(Shape.FLAT, new Random(13)).powerPeak();
        assertThat(peak.standing()).isEqualTo(Peak.Standing.MAY_LIE_ABOVE);
        assertThat(peak.highSpeed()).isGreaterThan(0.97 * Simulated.HIGH);
    }
}
