package longthrow.core.term;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class TaperRateTest {
    @ParameterizedTest
    @ValueSource(strings = {"1:8", "1:7.5", "1:5", "1:19.922"})
    void ratesAreTaken(String rate) {
        assertThat(TaperRate.isRate(rate)).isTrue();
    }

    @ParameterizedTest
    @ValueSource(strings = {"banana", "1:0", "8", "2:16", "1 in 8", "1:8 dry", "", "1:-8", "1:1e3"})
    void whatIsNoRateIsNotTakenForOne(String words) {
        assertThat(TaperRate.isRate(words)).isFalse();
    }

    /** 12 / 1.5 = 8; 12 / 2.25 = 5.333; 1 / (2 tan 3.58°) = 7.992; of the half angle 3.5763°, 1 / (2 tan) = 8.000. By hand. */
    @ParameterizedTest
    @CsvSource({
        "1 in 8, 1:8",
        "1/8, 1:8",
        "1 to 7.5, 1:7.5",
        "1.5 in/ft, 1:8",
        "2.25\" per foot, 1:5.333",
        "7.16°, 1:7.992",
        "3.5763 deg half, 1:8"
    })
    void whatSaysItInAnotherWayIsToldTheRate(String words, String rate) {
        assertThat(TaperRate.mend(words)).startsWith("write " + rate);
        assertThat(TaperRate.isRate(rate)).isTrue();
    }

    @ParameterizedTest
    @ValueSource(strings = {"banana", "0 in/ft", "0°", ""})
    void nonsenseIsToldHowToMeasureIt(String words) {
        assertThat(TaperRate.mend(words)).contains("two places of the taper", "unknown");
    }
}
