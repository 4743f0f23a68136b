package longthrow.core.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.math.BigDecimal;
import org.junit.jupiter.api.Test;

class ExactLengthTest {
    /** NIST SP 811 (2008), B.8: 1 in = 25.4 mm exactly; the rest is division by hand. */
    @Test
    void inchFractionsAreWholePicometres() {
        assertThat(ExactLength.ofInchFraction(1, 0, 1).picometres()).isEqualTo(25_400_000_000L);
        assertThat(ExactLength.ofInchFraction(0, 1, 64).picometres()).isEqualTo(396_875_000L);
        assertThat(ExactLength.ofInchFraction(2, 5, 8)).isEqualTo(ExactLength.ofMillimetres("66.675"));
        assertThat(ExactLength.ofInchFraction(-2, -5, 8)).isEqualTo(ExactLength.ofMillimetres("-66.675"));
        assertThat(ExactLength.ofInchFraction(0, 1, 1000).toMillimetresExact()).isEqualTo("0.0254");
    }

    /** The sum of decision 0004, where doubles give two different answers by the order of the terms. */
    @Test
    void deckClearanceOfExactlyTheLimitMeetsIt() {
        ExactLength deck = ExactLength.ofMillimetres("139.62")
                .minus(ExactLength.ofMillimetres("28.25"))
                .minus(ExactLength.ofMillimetres("86.07"))
                .minus(ExactLength.ofMillimetres("24.90"));
        assertThat(deck).isEqualByComparingTo(ExactLength.ofMillimetres("0.40"));
        assertThat(139.62 - 28.25 - 86.07 - 24.90).isNotEqualTo(0.40);
        assertThat(deck.metres()).isEqualTo(0.0004);
        assertThat(deck).hasToString("0.4 mm");
    }

    @Test
    void sumsHalvesAndMultiplesStayExact() {
        ExactLength stroke = ExactLength.ofMillimetres("56.50");
        assertThat(stroke.half()).isEqualTo(ExactLength.ofMillimetres("28.25"));
        assertThat(stroke.half().times(2)).isEqualTo(stroke);
        assertThat(stroke.plus(stroke.negated())).isEqualTo(ExactLength.ZERO);
        assertThat(ExactLength.ofMillimetres(new BigDecimal("1E+3")).toMillimetresExact())
                .isEqualTo("1000");
    }

    @Test
    void refusesWhatItCannotKeepExactly() {
        assertThatThrownBy(() -> ExactLength.ofInchFraction(0, 1, 3))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("0 1/3 in")
                .hasMessageContaining("not a whole number of picometres");
        assertThatThrownBy(() -> ExactLength.ofMillimetres("0.0000000001")).hasMessageContaining("9 places");
        assertThatThrownBy(() -> ExactLength.ofMillimetres("1e308")).hasMessageContaining("9,223 km");
        assertThatThrownBy(() -> ExactLength.ofMillimetres("9223372036.9")).hasMessageContaining("9,223 km");
        assertThatThrownBy(() -> ExactLength.ofMillimetres("2,5")).hasMessageContaining("write it like 86.40");
        assertThatThrownBy(() -> ExactLength.ofInchFraction(1, 1, 0)).hasMessageContaining("denominator 0");
        assertThatThrownBy(() -> ExactLength.ofInchFraction(1, -1, 2)).hasMessageContaining("same sign");
        assertThatThrownBy(() -> ExactLength.of(Quantity.of("1", Units.GRAM))).hasMessageContaining("is a mass");
        assertThatThrownBy(() -> new ExactLength(3).half())
                .isInstanceOf(ArithmeticException.class)
                .hasMessageContaining("0.000000003 mm");
    }

    @Test
    void overflowIsAnErrorAndNeverWraps() {
        ExactLength longest = new ExactLength(Long.MAX_VALUE);
        ExactLength least = new ExactLength(1);
        assertThatThrownBy(() -> longest.plus(least)).hasMessageContaining("beyond ±9,223 km");
        assertThatThrownBy(() -> new ExactLength(Long.MIN_VALUE).minus(least)).hasMessageContaining("beyond");
        assertThatThrownBy(() -> new ExactLength(Long.MIN_VALUE).negated()).hasMessageContaining("beyond");
        assertThatThrownBy(() -> longest.times(2)).hasMessageContaining("beyond ±9,223 km");
        assertThat(ExactLength.ofMillimetres("9223372036.854775807")).isEqualTo(longest);
    }

    @Test
    void aQuantityFinerThanAPicometreHasNoExactLength() {
        assertThat(Quantity.of("1/3 in", Fraction.of(1, 3), Units.INCH).exactLength())
                .isEmpty();
        assertThat(Quantity.of("1", Units.GRAM).exactLength()).isEmpty();
        assertThat(Quantity.of("0.40", Units.MILLIMETRE).exactLength()).contains(ExactLength.ofMillimetres("0.4"));
    }
}
