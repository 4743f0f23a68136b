package longthrow.core.measure;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

/** Slips of the pen by hand. */
class WrittenDigitsTest {
    private static List<Long> hundredths(List<Double> moves, double value) {
        return moves.stream().map(m -> Math.round((value + m) * 100)).toList();
    }

    @Test
    void aSlipIsTakenBack() {
        WrittenDigits digits = WrittenDigits.of("68.40 mm", 68.40);
        assertThat(hundredths(digits.swapped(), 68.40)).contains(8640L, 6480L, 6804L);
        assertThat(hundredths(digits.shifted(), 68.40)).containsExactly(68400L, 684L, 684000L, 68L);
        assertThat(hundredths(digits.misread(), 68.40)).contains(88_40L, 66_40L).doesNotContain(840L);
        assertThat(hundredths(WrittenDigits.of("8.40 mm", 8.40).restored(), 8.40))
                .contains(8640L, 6840L, 843L);
    }

    @Test
    void aFractionAndALongFigureHaveNoDigitsToSlip() {
        for (String text : List.of("2 1/4 in", "66.000001 mm")) {
            WrittenDigits digits = WrittenDigits.of(text, 57.15);
            assertThat(digits.swapped()).isEmpty();
            assertThat(digits.misread()).isEmpty();
            assertThat(digits.restored()).isEmpty();
            assertThat(digits.shifted()).allMatch(m -> m == 0);
        }
    }
}
