package longthrow.core.measure;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import longthrow.core.build.Build;
import longthrow.core.build.Given;
import longthrow.core.engine.Stops;
import longthrow.core.formula.Expression;
import longthrow.core.formula.Formula;
import longthrow.core.measurement.Measured;
import longthrow.core.measurement.Source;
import longthrow.core.motion.Timing;
import longthrow.core.quantity.Quantity;
import longthrow.core.term.Term;

/**
 * What the figures that stops hang on may be while readings disagree: with everything as written, with each suspect left out, by each doubtful reading alone,
 * and by each as it would be mended. Since every stop turns one way as a figure grows, the least and the most of each are enough.
 */
final class Candidates {
    private static final Formula RIM = Formula.of(
            Term.RIM_SPEED.path(),
            Timing.rimSpeed(
                    Expression.input(Term.FLYWHEEL_DIAMETER.path()), Expression.input(Term.WANTED_SPEED.path())));

    private Candidates() {}

    /**
     * Ways out of the dispute, one or more: every least with every most.
     * @param ways    the engine by each way out, as settled first
     * @param aside   entries that are doubted
     * @param mended  what the doubted entries would be when mended
     * @param touched whether a figure is in dispute
     */
    static List<Function<Term, Optional<Measured>>> of(
            List<Figures> ways, List<Readings.Entry> aside, Map<Term, List<Double>> mended, List<Term> touched) {
        Map<Term, List<Measured>> may = new EnumMap<>(Term.class);
        for (Term term : Stops.DECIDING) {
            List<Measured> found = new ArrayList<>();
            if (!touched.contains(term)) {
                ways.get(0).figure(term).ifPresent(found::add);
            } else {
                ways.forEach(w -> w.figure(term).ifPresent(found::add));
                aside.stream().filter(e -> e.term() == term).forEach(e -> alone(e).forEach(found::add));
                mended.getOrDefault(term, List.of()).forEach(v -> found.add(Measured.exact(v)));
            }
            may.put(term, extremes(found));
        }
        return everyMix(may);
    }

    /** The same when nothing could be worked out: the figures as they were written, no more. */
    static List<Function<Term, Optional<Measured>>> asWritten(Build build) {
        Map<Term, List<Measured>> may = new EnumMap<>(Term.class);
        for (Term term : Stops.DECIDING) {
            List<Measured> written = new ArrayList<>();
            for (Given given : build.of(term)) {
                if (given instanceof Given.Taken taken) {
                    taken.readings().forEach(r -> written.add(Measured.exact(r.si())));
                } else {
                    given.figure().map(Quantity::si).map(Measured::exact).ifPresent(written::add);
                }
            }
            may.put(term, extremes(written));
        }
        return everyMix(may);
    }

    /** Each reading of an entry by itself. */
    private static List<Measured> alone(Readings.Entry entry) {
        ReadingSet set = entry.set();
        List<Double> values = set == null ? List.of(entry.observation().value()) : set.values();
        Map<Source, Double> errors = new LinkedHashMap<>();
        entry.observation().errors().forEach((source, c) -> errors.put(source, c * source.standardUncertainty()));
        return values.stream().map(v -> Measured.withContributions(v, errors)).toList();
    }

    private static List<Measured> extremes(List<Measured> found) {
        if (found.isEmpty()) {
            return List.of();
        }
        Comparator<Measured> bySize = Comparator.comparingDouble(Measured::value);
        Measured least = found.stream().min(bySize).orElseThrow();
        Measured most = found.stream().max(bySize).orElseThrow();
        return least.value() == most.value() ? List.of(least) : List.of(least, most);
    }

    private static List<Function<Term, Optional<Measured>>> everyMix(Map<Term, List<Measured>> may) {
        List<Map<Term, Measured>> mixes = new ArrayList<>();
        mixes.add(new EnumMap<>(Term.class));
        may.forEach((term, values) -> {
            List<Map<Term, Measured>> longer = new ArrayList<>();
            for (Map<Term, Measured> mix : mixes) {
                if (values.isEmpty()) {
                    longer.add(mix);
                }
                for (Measured value : values) {
                    Map<Term, Measured> more = new EnumMap<>(mix);
                    more.put(term, value);
                    longer.add(more);
                }
            }
            mixes.clear();
            mixes.addAll(longer);
        });
        List<Function<Term, Optional<Measured>>> functions = new ArrayList<>();
        mixes.forEach(mix ->
                functions.add(term -> term == Term.RIM_SPEED ? rimSpeed(mix) : Optional.ofNullable(mix.get(term))));
        return functions;
    }

    private static Optional<Measured> rimSpeed(Map<Term, Measured> mix) {
        Measured diameter = mix.get(Term.FLYWHEEL_DIAMETER);
        Measured speed = mix.get(Term.WANTED_SPEED);
        return diameter == null || speed == null
                ? Optional.empty()
                : Optional.of(
                        Measured.through(RIM, path -> path.equals(Term.FLYWHEEL_DIAMETER.path()) ? diameter : speed));
    }
}
