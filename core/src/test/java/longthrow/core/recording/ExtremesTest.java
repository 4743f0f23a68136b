package longthrow.core.recording;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import longthrow.core.quantity.Units;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What a picture of a log keeps of it, held against every row looked at one by one. All figures are invented. */
class ExtremesTest {
    private static final Recording.Column TIME =
            new Recording.Column("t", Channel.TIME, Optional.of(Units.SECOND), Sureness.TOLD, "", List.of());

    private static RunningTime time(double... at) {
        Recording recording = new Recording(List.of(TIME), new double[][] {at}, RowLines.from(2, at.length));
        return RunningTime.of(recording, RowFaults.of(recording));
    }

    static IntStream seeds() {
        return IntStream.range(0, 60);
    }

    /** Rows at uneven times, some without a figure, one spike of a single row: seen at whatever width, from wherever to wherever. */
    @ParameterizedTest
    @MethodSource("seeds")
    void noExtremeIsLostAndNoneIsMadeUp(int seed) {
        SplittableRandom random = new SplittableRandom(20261127L + seed);
        int rows = 2 + random.nextInt(20_000);
        double[] at = new double[rows];
        double[] values = new double[rows];
        for (int row = 1; row < rows; row++) {
            at[row] = at[row - 1] + (random.nextInt(50) == 0 ? 3 : random.nextDouble() * 0.01);
        }
        for (int row = 0; row < rows; row++) {
            values[row] = random.nextInt(30) == 0 ? Double.NaN : Math.sin(0.001 * row) + random.nextDouble();
        }
        values[random.nextInt(rows)] = 1000;
        values[random.nextInt(rows)] = -1000;
        RunningTime time = time(at);
        boolean isWhole = seed % 3 == 0;
        double from = isWhole ? 0 : random.nextDouble() * 0.6 * time.end();
        double to = isWhole ? time.end() : from + random.nextDouble() * (time.end() - from) + 1e-3;
        int pixels = 1 + random.nextInt(700);

        Extremes extremes = Extremes.of(time, values, from, to, pixels);

        double[] least = new double[pixels];
        double[] greatest = new double[pixels];
        int[] firstLeast = new int[pixels];
        int[] firstGreatest = new int[pixels];
        Arrays.fill(least, Double.POSITIVE_INFINITY);
        Arrays.fill(greatest, Double.NEGATIVE_INFINITY);
        for (int row = 0; row < rows; row++) {
            if (at[row] < from || at[row] > to || Double.isNaN(values[row])) {
                continue;
            }
            int pixel = Math.min(pixels - 1, (int) ((at[row] - from) * (pixels / (to - from))));
            if (values[row] < least[pixel]) {
                least[pixel] = values[row];
                firstLeast[pixel] = row;
            }
            if (values[row] > greatest[pixel]) {
                greatest[pixel] = values[row];
                firstGreatest[pixel] = row;
            }
        }
        for (int pixel = 0; pixel < pixels; pixel++) {
            assertThat(extremes.isEmpty(pixel)).isEqualTo(Double.isInfinite(least[pixel]));
            if (!extremes.isEmpty(pixel)) {
                assertThat(extremes.least(pixel)).isEqualTo(least[pixel]);
                assertThat(extremes.greatest(pixel)).isEqualTo(greatest[pixel]);
                assertThat(extremes.falls(pixel)).isEqualTo(firstGreatest[pixel] < firstLeast[pixel]);
            }
        }
        if (isWhole) {
            assertThat(IntStream.range(0, pixels)
                            .filter(p -> !extremes.isEmpty(p))
                            .mapToDouble(extremes::greatest))
                    .as("the spike of one row")
                    .contains(Arrays.stream(values)
                            .filter(v -> !Double.isNaN(v))
                            .max()
                            .orElseThrow());
        }
    }

    @Test
    void timeThatStartsAnewGoesOnAndTimeThatStandsOrIsNotKnownDoesNotRunBack() {
        double[] at = new double[3000];
        for (int row = 0; row < at.length; row++) {
            at[row] = row < 1500 ? 5 + 0.01 * row : 0.01 * (row - 1500);
        }
        at[10] = at[9];
        at[20] = Double.NaN;
        at[30] = at[28];
        RunningTime time = time(at);
        assertThat(time.restarts()).isEqualTo(1);
        assertThat(time.at(0)).isZero();
        assertThat(time.at(20)).isEqualTo(time.at(19));
        for (int row = 1; row < at.length; row++) {
            assertThat(time.at(row)).isGreaterThanOrEqualTo(time.at(row - 1));
        }
        assertThat(time.end()).isCloseTo(29.99, within(1e-9)); // 3000 rows at 0.01 s
        assertThat(time.firstFrom(1)).isEqualTo(100);
        assertThat(time.firstFrom(1000)).isEqualTo(3000);
    }

    @Test
    void withoutTimeRowsAreCounted() {
        Recording none = new Recording(List.of(), new double[0][], RowLines.from(1, 5));
        RunningTime rows = RunningTime.of(none, List.of());
        assertThat(rows.isCounted()).isTrue();
        assertThat(rows.end()).isEqualTo(4);
        assertThatThrownBy(() -> Extremes.of(rows, new double[5], 3, 3, 100)).hasMessageContaining("from 3.0 to 3.0");
    }
}
