package longthrow.core.power;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.stream.IntStream;
import longthrow.core.quantity.Units;
import org.junit.jupiter.api.Test;

class SpeedsTest {
    @Test
    void liesAtRoundSpeedsFromTheLowestToTheHighest() {
        List<Double> speeds = Speeds.usual().between(rpm(1480), rpm(3600));
        assertThat(speeds).startsWith(rpm(1480)).endsWith(rpm(3600)).isSorted();
        assertThat(speeds.subList(1, speeds.size() - 1))
                .containsExactly(
                        IntStream.rangeClosed(8, 17).mapToObj(k -> rpm(200 * k)).toArray(Double[]::new));
        for (double highest : new double[] {1490, 1900, 5200, 14000}) {
            for (int rows = 2; rows <= Speeds.MOST; rows++) {
                List<Double> some = new Speeds(List.of(), rows, 1).between(rpm(1480), rpm(highest));
                assertThat(some).hasSizeBetween(2, rows).isSorted().doesNotHaveDuplicates();
            }
        }
    }

    @Test
    void withNothingBetweenItIsTheHighestAlone() {
        assertThat(Speeds.usual().between(300, 300)).containsExactly(300.0);
        assertThat(Speeds.usual().between(300, 200)).containsExactly(200.0);
        assertThat(new Speeds(List.of(), 1, 1).between(100, 200)).containsExactly(200.0);
    }

    @Test
    void chosenOnesStandRisingAndOnce() {
        assertThat(Speeds.of(List.of(300.0, 100.0, 300.0)).between(1, 2)).containsExactly(100.0, 300.0);
    }

    @Test
    void someOfThemHaveBothEnds() {
        List<Integer> all = List.of(0, 1, 2, 3, 4, 5, 6, 7, 8);
        assertThat(new Speeds(List.of(), 9, 3).leanedOf(all)).containsExactly(0, 4, 8);
        assertThat(new Speeds(List.of(), 9, 1).leanedOf(all)).containsExactly(4);
        assertThat(new Speeds(List.of(), 9, 20).leanedOf(all)).isEqualTo(all);
        assertThat(new Speeds(List.of(), 9, 2).leanedOf(List.of())).isEmpty();
    }

    @Test
    void refusesWhatIsNoSpeedAndTooMany() {
        assertThatThrownBy(() -> Speeds.of(List.of(0.0))).hasMessageContaining("above 0");
        assertThatThrownBy(() -> Speeds.of(List.of(Double.POSITIVE_INFINITY))).hasMessageContaining("above 0");
        assertThatThrownBy(() -> Speeds.of(List.of(Double.NaN))).hasMessageContaining("above 0");
        assertThatThrownBy(() -> new Speeds(List.of(), 21, 1)).hasMessageContaining("1 to 20");
        assertThatThrownBy(() -> new Speeds(List.of(), 0, 1)).hasMessageContaining("1 to 20");
        assertThatThrownBy(() -> new Speeds(List.of(), 2, 0)).hasMessageContaining("at least");
        List<Double> many =
                IntStream.rangeClosed(1, 21).mapToObj(i -> (double) i).toList();
        assertThatThrownBy(() -> Speeds.of(many)).hasMessageContaining("1 to 20");
    }

    private static double rpm(double speed) {
        return Units.RPM.toSi(speed);
    }
}
