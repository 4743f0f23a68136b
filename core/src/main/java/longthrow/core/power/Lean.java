package longthrow.core.power;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.ToDoubleFunction;
import longthrow.core.measurement.Measured;
import longthrow.core.measurement.Source;

/**
 * How a torque leans on each figure it rests on: what it becomes with one of them a standard uncertainty up. From that its doubt, with what figures share kept, and whose figure owns it. The runs are
 * made outside, in any order, on any number of threads: {@link #variants} says which.
 */
public final class Lean {
    private Lean() {}

    /** One run that is wanted: empty name for the figures as they are. */
    public record Variant(List<Needed> moved, Figures figures) {}

    /** The figures as they are, then each with one moved up by its standard uncertainty, or down where there is nothing above it; none for what is exact. */
    public static List<Variant> variants(Figures figures) {
        List<Variant> variants = new ArrayList<>();
        variants.add(new Variant(List.of(), figures));
        for (Needed needed : Needed.values()) {
            figures.value(needed)
                    .filter(m -> m.standardUncertainty() > 0)
                    .ifPresent(measured -> variants.add(new Variant(
                            List.of(needed), figures.with(needed, measured.value() + step(needed, measured)))));
        }
        return variants;
    }

    /** Air cannot be moister than saturated. */
    private static double step(Needed needed, Measured measured) {
        double up = measured.standardUncertainty();
        return needed == Needed.HUMIDITY && measured.value() + up > 1 ? -up : up;
    }

    /**
     * The quantity with the doubt of the figures.
     * @param found by variant, of {@link #variants} in their order
     */
    public static Measured doubt(Figures figures, List<Variant> variants, ToDoubleFunction<Variant> found) {
        double value = found.applyAsDouble(variants.get(0));
        Map<Source, Double> contributions = new LinkedHashMap<>();
        for (Variant variant : variants.subList(1, variants.size())) {
            Needed needed = variant.moved().get(0);
            Measured figure = figures.value(needed).orElseThrow();
            double slope = (found.applyAsDouble(variant) - value) / step(needed, figure);
            figure.contributions().forEach((source, c) -> contributions.merge(source, slope * c, Double::sum));
        }
        return Measured.withContributions(value, contributions);
    }

    /** How much each moved figure moves it. */
    public static Map<Needed, Double> moves(List<Variant> variants, ToDoubleFunction<Variant> found) {
        double value = found.applyAsDouble(variants.get(0));
        Map<Needed, Double> moves = new EnumMap<>(Needed.class);
        for (Variant variant : variants.subList(1, variants.size())) {
            moves.put(variant.moved().get(0), found.applyAsDouble(variant) - value);
        }
        return moves;
    }
}
