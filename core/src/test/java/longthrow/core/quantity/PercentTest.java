package longthrow.core.quantity;

import static org.assertj.core.api.Assertions.assertThat;

import longthrow.core.answer.Verdict;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PercentTest {
    /** 95 % is where "meets" begins, so what is just below must not read 95 %. */
    @ParameterizedTest
    @CsvSource({
        "0.9499, 94.9 %",
        "0.94999, 94.9 %",
        "0.95, 95.0 %",
        "0.0501, 5.1 %",
        "0.05, 5.0 %",
        "0.9, 90.0 %",
        "0.8999, 89 %",
        "0.0999, 10.0 %",
        "0.1001, 11 %",
        "0.5, 50 %",
        "0.29, 29 %",
        "0.9899, 98.9 %",
        "0.99, over 99 %",
        "1, over 99 %",
        "0.01, under 1 %",
        "0, under 1 %"
    })
    void probabilityIsNeverPrintedSurerThanItIs(double probability, String printed) {
        assertThat(Percent.ofProbability(probability)).isEqualTo(printed);
    }

    @Test
    void thePrintedProbabilityHasTheVerdictOfTheOneBehindIt() {
        for (int i = 101; i < 9900; i++) {
            double probability = i / 10000.0;
            double printed =
                    Double.parseDouble(Percent.ofProbability(probability).replace(" %", "")) / 100;
            assertThat(Verdict.State.of(printed)).isEqualTo(Verdict.State.of(probability));
        }
    }

    @ParameterizedTest
    @CsvSource({"0, 0 %", "0.004, under 1 %", "0.52, 52 %", "0.994, over 99 %", "1, 100 %"})
    void aShareIsNeverPrintedAsNothingOrAsAllThatItIsNot(double share, String printed) {
        assertThat(Percent.ofShare(share)).isEqualTo(printed);
    }
}
