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
 * How a torque leans on each figure it rests on: what it becomes with one of them a standard uncertainty up, and down where that is far. From that its doubt, with what figures share kept, and whose figure owns it. The runs are
 * made outside, in any order, on any number of threads: {@link #variants} says which.
 */
public final class Lean {
    /**
     * Doubt of a figure over the figure, above which both sides are run: pipes and rooms are doubted by a fifth and more, and torque bends over that. Below it a straight line from one side is good to a few per cent of a
     * contribution that is small.
     */
    private static final double FAR = 0.05;

    private Lean() {}

    /** One run that is wanted: empty name for the figures as they are. */
    public record Variant(List<Needed> moved, Figures figures) {}

    /** The figures as they are, then each with one moved up by its standard uncertainty, or down where there is nothing above it, then those doubted far and not by all of themselves with one moved down; none for what is exact. */
    public static List<Variant> variants(Figures figures) {
        List<Variant> variants = new ArrayList<>();
        variants.add(new Variant(List.of(), figures));
        for (Needed needed : Needed.values()) {
            figures.value(needed)
                    .filter(m -> m.standardUncertainty() > 0)
                    .ifPresent(measured -> variants.add(new Variant(
                            List.of(needed), figures.with(needed, measured.value() + step(needed, measured)))));
        }
        for (Needed needed : Needed.values()) {
            figures.value(needed)
                    .filter(m -> m.standardUncertainty() > FAR * m.value() && m.standardUncertainty() < m.value())
                    .filter(m -> step(needed, m) > 0)
                    .ifPresent(measured -> variants.add(new Variant(
                            List.of(needed), figures.with(needed, measured.value() - measured.standardUncertainty()))));
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
        moves(variants, found).forEach((needed, move) -> {
            Measured figure = figures.value(needed).orElseThrow();
            double slope = move / figure.standardUncertainty();
            figure.contributions().forEach((source, c) -> contributions.merge(source, slope * c, Double::sum));
        });
        return Measured.withContributions(value, contributions);
    }

    /**
     * How much each moved figure moves it, as it grows. Where both sides were run, the root of the mean of their squares: a figure within a range, all of it alike, errs on the whole by what its two standard uncertainties
     * do, for they stand where Gauss's rule of two points has its own (Abramowitz and Stegun, 25.4.30: at one over root three of the half-width), exact while the square of what it does is a cubic. It does not vanish where
     * the torque peaks, as half the difference would.
     */
    public static Map<Needed, Double> moves(List<Variant> variants, ToDoubleFunction<Variant> found) {
        Figures figures = variants.get(0).figures();
        double value = found.applyAsDouble(variants.get(0));
        Map<Needed, List<Double>> sides = new EnumMap<>(Needed.class);
        for (Variant variant : variants.subList(1, variants.size())) {
            Needed needed = variant.moved().get(0);
            double way = Math.signum(variant.figures().number(needed) - figures.number(needed));
            sides.computeIfAbsent(needed, n -> new ArrayList<>()).add(way * (found.applyAsDouble(variant) - value));
        }
        Map<Needed, Double> moves = new EnumMap<>(Needed.class);
        sides.forEach((needed, both) -> moves.put(needed, together(both)));
        return moves;
    }

    private static double together(List<Double> sides) {
        double square = 0;
        double sum = 0;
        for (double side : sides) {
            square += side * side;
            sum += side;
        }
        return Math.copySign(Math.sqrt(square / sides.size()), sum);
    }
}
