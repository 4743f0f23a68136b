package longthrow.core.power;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class SpeedsTest {
    @Test
    void liesEvenlyFromTheLowestToTheHighest() {
        List<Double> even = new Speeds(List.of(), 5, 1).between(100, 300);
        assertThat(even).containsExactly(100.0, 150.0, 200.0, 250.0, 300.0);
        assertThat(Speeds.usual().between(100, 300))
                .hasSize(Speeds.MOST)
                .startsWith(100.0)
                .endsWith(300.0);
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
}
