package longthrow.core.power;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.function.ToDoubleFunction;
import longthrow.core.gas.Fuel;
import longthrow.core.measurement.Measured;
import longthrow.core.measurement.Source;
import org.junit.jupiter.api.Test;

/** Sums in place of an engine, whose doubt is known: no gas is run. */
class LeanTest {
    private static final double LENGTH = 0.5;
    private static final double HALF_WIDTH = 0.2;

    private final Source range = Source.rectangular("range", Source.Kind.ASSUMED, "exhaust pipe", HALF_WIDTH);
    private final Source gauge = Source.known("gauge", Source.Kind.INSTRUMENT, "ratio", 0.02);

    private Figures figures() {
        Map<Needed, Measured> known = new EnumMap<>(Needed.class);
        known.put(Needed.BORE, Measured.exact(0.070));
        known.put(Needed.STROKE, Measured.exact(0.052));
        known.put(Needed.COMPRESSION_RATIO, Measured.of(8.6, List.of(gauge)));
        known.put(Needed.PRIMARY_LENGTH, Measured.of(LENGTH, List.of(range)));
        return Figures.of(
                Kind.of(Kind.Use.UTILITY, Kind.Cooling.FAN, Kind.Layout.PUSHROD, Kind.Basis.NET), Fuel.petrol(), known);
    }

    private double share(Source source, ToDoubleFunction<Figures> of) {
        Figures figures = figures();
        return Lean.doubt(figures, Lean.variants(figures), variant -> of.applyAsDouble(variant.figures()))
                .contributions()
                .getOrDefault(source, Double.NaN);
    }

    /** A range is run to both sides, a reading that is near to one. */
    @Test
    void whatIsDoubtedFarIsRunToBothSides() {
        List<Lean.Variant> variants = Lean.variants(figures());
        assertThat(variants)
                .filteredOn(v -> v.moved().contains(Needed.PRIMARY_LENGTH))
                .extracting(v -> v.figures().number(Needed.PRIMARY_LENGTH) - LENGTH)
                .satisfiesExactly(
                        up -> assertThat(up).isCloseTo(HALF_WIDTH / Math.sqrt(3), within(1e-12)),
                        down -> assertThat(down).isCloseTo(-HALF_WIDTH / Math.sqrt(3), within(1e-12)));
        assertThat(variants)
                .filteredOn(v -> v.moved().contains(Needed.COMPRESSION_RATIO))
                .hasSize(1);
    }

    /** A straight line: its slope times the doubt, with its sign. */
    @Test
    void aStraightLineOwnsItsSlope() {
        assertThat(share(range, figures -> 5 - 3 * figures.number(Needed.PRIMARY_LENGTH)))
                .isCloseTo(-3 * HALF_WIDTH / Math.sqrt(3), within(1e-12));
        assertThat(share(gauge, figures -> 7 * figures.number(Needed.COMPRESSION_RATIO)))
                .isCloseTo(0.14, within(1e-12));
    }

    /**
     * A corner, x to one side with twice the slope of the other: over the range the mean of the square is (1 + 4) / 2 times that of x, a^2 / 3. A straight line from above would say twice the doubt of the lower side.
     */
    @Test
    void aCornerOwnsTheMeanOfItsSquares() {
        double owned = share(range, figures -> {
            double x = figures.number(Needed.PRIMARY_LENGTH) - LENGTH;
            return x > 0 ? 2 * x : x;
        });
        assertThat(owned).isCloseTo(Math.sqrt(2.5) * HALF_WIDTH / Math.sqrt(3), within(1e-12));
    }

    /** At a peak both sides fall alike; the doubt is what they fall, not nothing. */
    @Test
    void aPeakIsNotCertain() {
        double owned = share(range, figures -> -10 * Math.pow(figures.number(Needed.PRIMARY_LENGTH) - LENGTH, 2));
        assertThat(Math.abs(owned)).isCloseTo(10 * HALF_WIDTH * HALF_WIDTH / 3, within(1e-12));
    }
}
