package longthrow.core.quantity;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** The quick way to a quantity against the plain one, of which it must be the same to the last bit. */
class DecimalQuantityTest {
    private static final List<Unit> UNITS = List.of(
            Unit.of(Dimension.LENGTH, "mm"),
            Unit.of(Dimension.LENGTH, "in"),
            Unit.of(Dimension.LENGTH, "thou"),
            Unit.of(Dimension.VOLUME, "cc"),
            Unit.of(Dimension.VOLUME, "cu in"),
            Unit.of(Dimension.MASS, "oz"),
            Unit.of(Dimension.FORCE, "lbf"),
            Unit.of(Dimension.ANGLE, "°"),
            Unit.of(Dimension.ROTATIONAL_SPEED, "rpm"),
            Unit.of(Dimension.TEMPERATURE, "°F"));

    @Test
    void isTheSameAsThePlainWay() {
        SplittableRandom random = new SplittableRandom(20240601);
        for (int i = 0; i < 20_000; i++) {
            Unit unit = UNITS.get(random.nextInt(UNITS.size()));
            long unscaled = random.nextLong() >> random.nextInt(1, 63);
            int scale = random.nextInt(18);
            Quantity quick = Quantity.ofDecimal(unscaled, scale, unit);
            Quantity plain = Quantity.of(BigDecimal.valueOf(unscaled, scale), unit);
            String shown = unscaled + " / 10^" + scale + " " + unit;
            assertThat(quick.si()).as(shown).isEqualTo(plain.si());
            assertThat(quick.written()).as(shown).isEqualTo(plain.written());
            assertThat(quick.value()).as(shown).isEqualTo(plain.value());
            assertThat(quick)
                    .as(shown)
                    .isEqualTo(plain)
                    .hasSameHashCodeAs(plain)
                    .isEqualByComparingTo(plain);
        }
    }

    /** 1 in = 25.4 mm (NIST SP 811 (2008), B.8), 25.4e9 pm: nine decimals of an inch end in 25.4 pm. */
    @Test
    void decimalsThatLeaveWholePicometres() {
        assertThat(Unit.of(Dimension.LENGTH, "mm").decimalsOfExactLength()).isEqualTo(9);
        assertThat(Unit.of(Dimension.LENGTH, "in").decimalsOfExactLength()).isEqualTo(8);
        assertThat(Unit.of(Dimension.LENGTH, "m").decimalsOfExactLength()).isEqualTo(12);
        assertThat(Unit.of(Dimension.VOLUME, "cc").decimalsOfExactLength()).isEqualTo(-1);
    }
}
