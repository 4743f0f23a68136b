package longthrow.core.power;

import java.util.ArrayList;
import java.util.Collection;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import longthrow.core.cycle.Knock;
import longthrow.core.cycle.Mesh;
import longthrow.core.cycle.Settled;
import longthrow.core.measurement.Measured;
import longthrow.core.measurement.NotConvergedException;
import longthrow.core.measurement.Source;

/** How what is told leans on the figures at one speed: the doubt that each source brings, and what each lever would give. */
final class Leaning {
    /**
     * Cut up coarser than the curve, for only differences count: moves of torque come out within 0.15 % of the torque as with {@link Curve#MESH}, in half of the time (LeaningTest).
     */
    static final Mesh MESH = new Mesh(0.025, Math.toRadians(2));

    private static final Source KNOCK =
            Source.known("model: octane wanted", Source.Kind.ASSUMED, "formula of the knocking delay", Knock.DOUBT);

    private final double speed;
    private final Map<Told, Map<Source, Double>> contributions;
    private final Map<Needed, Double> moves;
    private final Map<Lever, Double> gains;

    private Leaning(
            double speed,
            Map<Told, Map<Source, Double>> contributions,
            Map<Needed, Double> moves,
            Map<Lever, Double> gains) {
        this.speed = speed;
        this.contributions = contributions;
        this.moves = moves;
        this.gains = gains;
    }

    /** What has to be run for it at one speed. */
    static final class Plan {
        private final Figures figures;
        private final double speed;
        private final List<Lean.Variant> variants;
        private final List<Lever> levers = new ArrayList<>();
        private final List<Run> runs = new ArrayList<>();

        /**
         * At a speed.
         * @param from what stood in the engine there, to begin with
         */
        Plan(Figures figures, double speed, Optional<Settled> from) {
            this.figures = figures;
            this.speed = speed;
            this.variants = Lean.variants(figures);
            variants.stream().filter(Plan::isRun).forEach(v -> runs.add(new Run(v.figures(), speed, MESH, from)));
            for (Lever lever : Lever.values()) {
                if (figures.has(lever.needed())) {
                    levers.add(lever);
                    if (!lever.needed().rubsAlone()) {
                        runs.add(new Run(moved(lever), speed, MESH, from));
                    }
                }
            }
        }

        /** What only rubs is not run again: the gas is that of the engine as it is. */
        private static boolean isRun(Lean.Variant variant) {
            return variant.moved().stream().noneMatch(Needed::rubsAlone);
        }

        private Figures moved(Lever lever) {
            return figures.with(lever.needed(), lever.moved(figures.number(lever.needed())));
        }

        List<Run> runs() {
            return List.copyOf(runs);
        }

        /**
         * What comes of it; empty where the engine does not run with one of its figures moved by its doubt, for then a straight line tells nothing.
         * @param outcomes of {@link #runs}, in their order
         */
        Optional<Leaning> of(List<Run.Outcome> outcomes) {
            if (outcomes.size() != runs.size()) {
                throw new IllegalArgumentException(outcomes.size() + " outcomes of " + runs.size() + " runs");
            }
            Map<Lean.Variant, Curve.Point> points = new HashMap<>();
            Iterator<Run.Outcome> ran = outcomes.iterator();
            for (Lean.Variant variant : variants) {
                Optional<Curve.Point> point = isRun(variant)
                        ? ran.next().point()
                        : rubbing(variant.figures(), point(points, variants.get(0)));
                if (point.isEmpty()) {
                    return Optional.empty();
                }
                points.put(variant, point.get());
            }
            Map<Told, Map<Source, Double>> contributions = new EnumMap<>(Told.class);
            for (Told told : Told.values()) {
                if (points.values().stream().noneMatch(p -> Double.isNaN(told.of(p)))) {
                    Measured doubt = Lean.doubt(figures, variants, v -> told.of(point(points, v)));
                    contributions.put(told, doubt.contributions());
                }
            }
            double torque = point(points, variants.get(0)).torque();
            Map<Lever, Double> gains = new EnumMap<>(Lever.class);
            for (Lever lever : levers) {
                Optional<Curve.Point> moved = lever.needed().rubsAlone()
                        ? rubbing(moved(lever), point(points, variants.get(0)))
                        : ran.next().point();
                if (torque > 0 && moved.isPresent()) {
                    gains.put(lever, moved.get().torque() / torque - 1);
                }
            }
            Map<Needed, Double> moves =
                    Lean.moves(variants, v -> point(points, v).torque());
            return Optional.of(new Leaning(speed, contributions, moves, gains));
        }

        /** Empty where what its crankcase takes is not found. */
        private static Optional<Curve.Point> rubbing(Figures figures, Curve.Point as) {
            try {
                return Optional.of(Curve.rubbing(figures, as));
            } catch (NotConvergedException e) {
                return Optional.empty();
            }
        }

        private static Curve.Point point(Map<Lean.Variant, Curve.Point> points, Lean.Variant variant) {
            Curve.Point point = points.get(variant);
            if (point == null) {
                throw new IllegalStateException("a variant that was never run");
            }
            return point;
        }
    }

    double speed() {
        return speed;
    }

    /** How far each figure moves the torque by its standard uncertainty [N m]. */
    Map<Needed, Double> moves() {
        return moves;
    }

    /** What each lever gives, as a share of the torque. */
    Map<Lever, Double> gains() {
        return gains;
    }

    /**
     * A figure with its doubt at any speed: between two speeds that were leaned on, what each source brings goes along a straight line; beyond them it is that of the nearest. In the unit of the
     * figure rather than as a share of it, for torque may be nothing.
     * @param leanings by rising speed
     */
    static Measured doubted(List<Leaning> leanings, Told told, double speed, double value) {
        Map<Source, Double> sources = new LinkedHashMap<>();
        boolean isKnown = !leanings.isEmpty();
        for (Weighted part : weighted(leanings, speed)) {
            Map<Source, Double> own = part.leaning.contributions.get(told);
            if (own == null) {
                isKnown = false;
            } else {
                own.forEach((source, c) -> sources.merge(source, part.weight * c, Double::sum));
            }
        }
        if (!isKnown) {
            Source unknown =
                    Source.known("power: " + told.key(), Source.Kind.UNKNOWN, "doubt not known", Math.abs(value) + 1);
            return Measured.of(value, List.of(unknown));
        }
        if (told == Told.OCTANE_WANTED) {
            sources.put(KNOCK, Knock.DOUBT);
        }
        return Measured.withContributions(value, sources);
    }

    /** What each lever gives at any speed, in the same way. */
    static Map<Lever, Double> gains(List<Leaning> leanings, double speed) {
        Map<Lever, Double> gains = new EnumMap<>(Lever.class);
        Collection<Weighted> parts = weighted(leanings, speed);
        for (Lever lever : Lever.values()) {
            double gain = 0;
            for (Weighted part : parts) {
                Double own = part.leaning.gains.get(lever);
                gain = own == null ? Double.NaN : gain + part.weight * own;
            }
            if (!parts.isEmpty() && !Double.isNaN(gain)) {
                gains.put(lever, gain);
            }
        }
        return gains;
    }

    private record Weighted(Leaning leaning, double weight) {}

    private static List<Weighted> weighted(List<Leaning> leanings, double speed) {
        if (leanings.isEmpty()) {
            return List.of();
        }
        Leaning first = leanings.get(0);
        Leaning last = leanings.get(leanings.size() - 1);
        if (speed <= first.speed) {
            return List.of(new Weighted(first, 1));
        }
        if (speed >= last.speed) {
            return List.of(new Weighted(last, 1));
        }
        int above = 1;
        while (leanings.get(above).speed < speed) {
            above++;
        }
        Leaning low = leanings.get(above - 1);
        Leaning high = leanings.get(above);
        double share = (speed - low.speed) / (high.speed - low.speed);
        return List.of(new Weighted(low, 1 - share), new Weighted(high, share));
    }
}
