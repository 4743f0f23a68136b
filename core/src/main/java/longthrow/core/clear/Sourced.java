package longthrow.core.clear;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import longthrow.core.clearance.ClearanceDoubt;
import longthrow.core.clearance.Closest;
import longthrow.core.clearance.Mechanism;
import longthrow.core.clearance.Mechanism.Parameter;
import longthrow.core.clearance.Pair;
import longthrow.core.clearance.Sweep;
import longthrow.core.measurement.Law;
import longthrow.core.measurement.Measured;
import longthrow.core.measurement.Source;
import longthrow.core.measurement.StudentT;
import longthrow.core.term.Term;

/**
 * The doubt of a gap from that of its figures. Figures share sources of error, and a mechanism's parameters must not share any: so its parameters are the sources
 * themselves, each moving every figure it acts on. Sources that matter little are put together, figure by figure.
 */
final class Sourced {
    /** A source that moves the gap by less than this share of all of them together, through any one figure, is put together with its like. A judgement. */
    private static final double MINOR = 0.04;
    /** Farther from its estimate than this many standard uncertainties no figure is drawn: the few that a t of few degrees throws farther are drawn there. */
    private static final double FARTHEST = 8;

    private static final double COVERAGE = 0.95;
    /** Draws in full where they are needed: a probability then scatters by a point or so, see {@link ClearanceDoubt}, an end of the 95 % by a tenth of the spread. */
    private static final int DRAWS = 400;
    /** A gap so many standard uncertainties from all that is asked of it is far. */
    private static final double FAR = 8;
    /** How far to both sides each figure is moved to see what it does [standard uncertainties]: so far that another place comes to be the nearest, if one may. */
    private static final double LOOK = 3;

    private final Map<String, Measured> figures;
    private final Function<Sizes, Pair> drawn;

    /**
     * A gap to be asked about.
     * @param figures by name, all that the drawing looks at
     * @param drawn   must be pure
     */
    Sourced(Map<String, Measured> figures, Function<Sizes, Pair> drawn) {
        this.figures = figures;
        this.drawn = drawn;
    }

    /**
     * What was found.
     * @param gap    with its doubt
     * @param shares by owner, largest first
     */
    record Found(ClearanceDoubt gap, List<Measured.Share> shares) {
        Found {
            shares = List.copyOf(shares);
        }
    }

    /** At the best estimates. */
    Sizes best() {
        Map<String, Double> values = new LinkedHashMap<>();
        figures.forEach((name, figure) -> values.put(name, figure.value()));
        return new Sizes(values);
    }

    private double gap(Sizes sizes) {
        return Sweep.least(drawn.apply(sizes)).orElseThrow().gap();
    }

    /**
     * The least gap. Where it is so far from touching and from every limit that no probability hangs on it, straight lines carry its doubt; else it is drawn.
     * @param limits wanted gaps [m]
     */
    Found found(List<Double> limits) {
        Map<String, Double> slopes = new LinkedHashMap<>();
        Map<String, Double> closing = new LinkedHashMap<>();
        Closest nearest = Sweep.least(drawn.apply(best())).orElseThrow();
        look(nearest.gap(), slopes, closing);
        double spread = rootSumSquare(closing.values());
        double asked = limits.stream().mapToDouble(Double::doubleValue).max().orElse(0);
        boolean isFar = nearest.gap() - FAR * spread > asked || nearest.gap() + FAR * spread < 0;
        return isFar ? straight(nearest, closing, limits) : drawn(slopes, limits);
    }

    /** Change of the gap with each figure, and by how much one standard uncertainty of it closes the gap at the most. */
    private void look(double gap, Map<String, Double> slopes, Map<String, Double> closing) {
        Map<String, Double> values = best().values();
        figures.forEach((name, figure) -> {
            double u = figure.standardUncertainty();
            if (u > 0) {
                Map<String, Double> moved = new LinkedHashMap<>(values);
                moved.put(name, figure.value() + LOOK * u);
                double up = gap(new Sizes(moved));
                moved.put(name, figure.value() - LOOK * u);
                double down = gap(new Sizes(moved));
                slopes.put(name, (up - down) / (2 * LOOK * u));
                closing.put(name, Math.max(Math.abs(up - gap), Math.abs(down - gap)) / LOOK);
            }
        });
    }

    private static double rootSumSquare(java.util.Collection<Double> parts) {
        return Math.sqrt(parts.stream().mapToDouble(x -> x * x).sum());
    }

    private Found straight(Closest nearest, Map<String, Double> closing, List<Double> limits) {
        double gap = nearest.gap();
        double spread = rootSumSquare(closing.values());
        double half = StudentT.factor(COVERAGE, Double.POSITIVE_INFINITY) * spread;
        double worst = gap
                - 2 * closing.values().stream().mapToDouble(Double::doubleValue).sum();
        List<Measured.Share> shares = closing.entrySet().stream()
                .map(e -> new Measured.Share(
                        Term.at(e.getKey()).map(Term::label).orElse(e.getKey()),
                        spread > 0 ? e.getValue() * e.getValue() / (spread * spread) : 0))
                .sorted(java.util.Comparator.comparingDouble(Measured.Share::share)
                        .reversed())
                .toList();
        return new Found(
                new ClearanceDoubt(
                        nearest,
                        gap - half,
                        gap + half,
                        worst,
                        gap < 0 ? 1 : 0,
                        Map.of(),
                        false,
                        limits.stream().map(limit -> gap < limit ? 1.0 : 0.0).toList()),
                shares);
    }

    private Found drawn(Map<String, Double> slopes, List<Double> limits) {
        double square = 0;
        for (Map.Entry<String, Double> slope : slopes.entrySet()) {
            double u = figure(slope.getKey()).standardUncertainty();
            square += slope.getValue() * slope.getValue() * u * u;
        }
        double spread = Math.sqrt(square);
        double least = MINOR * spread;
        Set<Source> kept = new LinkedHashSet<>();
        slopes.forEach((name, slope) -> figure(name).contributions().forEach((source, c) -> {
            if (Math.abs(slope * c) >= least && c != 0) {
                kept.add(source);
            }
        }));
        List<Parameter> parameters = new ArrayList<>();
        List<Map<String, Double>> moves = new ArrayList<>();
        Map<String, String> owners = new LinkedHashMap<>();
        for (Source source : kept) {
            Map<String, Double> move = new LinkedHashMap<>();
            figures.forEach((name, figure) -> {
                Double c = figure.contributions().get(source);
                if (c != null && c != 0) {
                    move.put(name, c);
                }
            });
            parameters.add(new Parameter(source.id(), 0, law(source)));
            moves.add(move);
            owners.put(source.id(), source.label());
        }
        figures.forEach((name, figure) -> {
            double rest = 0;
            for (Map.Entry<Source, Double> c : figure.contributions().entrySet()) {
                rest += kept.contains(c.getKey()) ? 0 : c.getValue() * c.getValue();
            }
            if (rest > 0) {
                String id = name + " rest";
                parameters.add(Parameter.normal(id, 0, 1));
                moves.add(Map.of(name, Math.sqrt(rest)));
                owners.put(id, Term.at(name).map(Term::label).orElse(name) + ", the rest");
            }
        });
        Mechanism mechanism = new Mechanism(parameters, errors -> drawn.apply(moved(moves, errors)));
        ClearanceDoubt doubt = ClearanceDoubt.of(mechanism, limits, DRAWS).orElseThrow();
        return new Found(doubt, byOwner(doubt.shares(), owners));
    }

    private Measured figure(String name) {
        return java.util.Objects.requireNonNull(figures.get(name));
    }

    private Sizes moved(List<Map<String, Double>> moves, double[] errors) {
        Map<String, Double> values = new LinkedHashMap<>();
        figures.forEach((name, figure) -> values.put(name, figure.value()));
        for (int k = 0; k < errors.length; k++) {
            double by = Math.max(-FARTHEST, Math.min(FARTHEST, errors[k]));
            if (by != 0) {
                moves.get(k).forEach((name, c) -> values.merge(name, by * c, Double::sum));
            }
        }
        return new Sizes(values);
    }

    private static Law law(Source source) {
        if (source.kind().isRectangular()) {
            return new Law.Rectangular(-Math.sqrt(3), Math.sqrt(3));
        }
        return Double.isFinite(source.degreesOfFreedom())
                ? new Law.ScaledT(source.degreesOfFreedom(), 0, 1)
                : new Law.Normal(0, 1);
    }

    private static List<Measured.Share> byOwner(Map<String, Double> shares, Map<String, String> owners) {
        Map<String, Double> sums = new LinkedHashMap<>();
        shares.forEach((id, share) -> sums.merge(owners.getOrDefault(id, id), share, Double::sum));
        return sums.entrySet().stream()
                .map(e -> new Measured.Share(e.getKey(), e.getValue()))
                .sorted(java.util.Comparator.comparingDouble(Measured.Share::share)
                        .reversed())
                .toList();
    }

    /** The least a figure can be with each source at the end of its 95 % range, a rectangular one at its limit. */
    static double worst(Measured figure) {
        double off = 0;
        for (Map.Entry<Source, Double> c : figure.contributions().entrySet()) {
            Source source = c.getKey();
            double end =
                    source.kind().isRectangular() ? Math.sqrt(3) : StudentT.factor(COVERAGE, source.degreesOfFreedom());
            off += Math.abs(c.getValue()) * Math.min(end, FARTHEST);
        }
        return figure.value() - off;
    }

    /** A plain sum of the figures, with its doubt. */
    Measured told(ToDoubleFunction<Sizes> sum) {
        List<String> names = List.copyOf(figures.keySet());
        return longthrow.core.measure.Carried.through(
                x -> {
                    Map<String, Double> values = new LinkedHashMap<>();
                    for (int k = 0; k < x.length; k++) {
                        values.put(names.get(k), x[k]);
                    }
                    return sum.applyAsDouble(new Sizes(values));
                },
                names.stream().map(this::figure).toList());
    }
}
