package longthrow.core.fit;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import longthrow.core.answer.Rejection;
import longthrow.core.answer.Verdict;
import longthrow.core.build.Build;
import longthrow.core.catalogue.Operation;
import longthrow.core.engine.Rule;
import longthrow.core.measure.Appraisal;
import longthrow.core.measurement.Measured;
import longthrow.core.quantity.FigurePrinter;
import longthrow.core.quantity.PrintedFigures;
import longthrow.core.term.Term;

/** Why one combination does not go together: the figure, the limit, and the least change that would cure it. */
final class Rejections {
    /** Beyond this, machining a fit is no cure: it is another size [m]; common practice, no source. */
    private static final double ANOTHER_SIZE = 0.15e-3;

    /** More would hide what is in front; our own choice. */
    private static final int MOST_BEHIND = 3;

    /** How a verdict says how likely it is kept. */
    private static final String PROBABILITY = "; kept with a probability of [^;()]*";

    /** Share of its doubt within which a figure is the same as before; far below what anything here can tell. */
    private static final double SAME = 1e-6;

    private final Build build;
    private final Appraisal own;
    private final Found found;
    private final Appraisal after;

    Rejections(Build build, Appraisal own, Found found) {
        this.build = build;
        this.own = own;
        this.found = found;
        this.after = Appraisal.of(
                found.isVague() ? Fitted.bySizes(build, own, found) : Fitted.with(build, own, found), Fit.LOOKED_AT);
    }

    Rejection of(Obstacle obstacle, long count) {
        Optional<Rejection> otherSize = anotherSize(obstacle, count);
        if (otherSize.isPresent()) {
            return otherSize.get();
        }
        if (obstacle == Obstacle.RATED) {
            return rated(count);
        }
        if (obstacle == Obstacle.CRANK_IN_CASE) {
            return otherShaft(count);
        }
        Optional<Verdict> verdict = verdict(obstacle);
        String why =
                verdict.map(v -> v.why() + " (" + v.label() + ")" + passedBy(v)).orElse(figure(obstacle));
        String untold = verdict.map(this::takenForDoubt).orElse("");
        why = untold.isEmpty() ? why : why.replaceAll(PROBABILITY, "") + untold;
        String cure = verdict.map(Verdict::cure).orElseGet(() -> cureWithoutRule(obstacle));
        if (!cure.isEmpty() && wantedWork(obstacle).isPresent()) {
            cure += "; a shop's own tolerance and its steps come on top of that";
        }
        String behind = behind(obstacle);
        return new Rejection(
                obstacle.label(),
                count,
                found.title(),
                why + behind,
                behind.isEmpty() || cure.isEmpty() ? cure : cure + "; THAT ALONE does not make them fit");
    }

    /**
     * What is said where a size behind the figure has no ±: what stands as its doubt is how finely the size is written, and no tolerance; a
     * probability by it would tell nothing. Empty where each has one.
     */
    private String takenForDoubt(Verdict verdict) {
        String names = after.readingsBehind(verdict.term()).stream()
                .filter(t ->
                        found.rows().anyMatch(r -> r.dim(t).filter(Dim::isVague).isPresent()))
                .sorted()
                .map(Term::label)
                .collect(Collectors.joining(", "));
        return names.isEmpty()
                ? ""
                : "; no ± is said for " + names + ", so it is taken here as good to " + Fitted.AS_STATED
                        + " mm, half of the last digit that is usual: ask for the tolerance, or measure the piece";
    }

    /** The machining that would mend a pair of parts of one size whose gap is under its least; empty where none does. */
    Optional<Operation.Kind> wantedWork(Obstacle obstacle) {
        boolean tooTight = verdict(obstacle)
                .flatMap(v -> after.figure(v.term()).map(m -> m.value() < v.least()))
                .orElse(false);
        return !tooTight || anotherSize(obstacle, 1).isPresent()
                ? Optional.empty()
                : Stream.of(Gap.values())
                        .filter(gap -> gap.obstacle() == obstacle)
                        .flatMap(gap -> gap.widens().stream())
                        .findFirst();
    }

    /** What would still keep them apart were this mended: figures these parts bring with them, past every limit the trade has for them. */
    private String behind(Obstacle obstacle) {
        List<Term> known = obstacle.term().map(Rejections::sisters).orElse(List.of());
        Map<String, List<Verdict>> families = new LinkedHashMap<>();
        for (Verdict verdict : after.verdicts()) {
            boolean decides =
                    Rule.of(verdict).map(r -> r.kind() != Rule.Kind.GUIDE).orElse(true);
            if (decides && !known.contains(verdict.term()) && isBrought(verdict.term())) {
                String family = Rule.of(verdict).map(Rule::key).orElse(verdict.rule());
                families.computeIfAbsent(family, f -> new ArrayList<>()).add(verdict);
            }
        }
        List<String> more = families.values().stream()
                .filter(all -> all.stream().allMatch(v -> v.state() == Verdict.State.FAILS && !v.isPerhapsNotMeant()))
                .map(all -> all.stream()
                        .min(Comparator.comparingDouble(this::missedBy))
                        .orElseThrow())
                .map(v -> v.why() + " (" + v.label() + ")")
                .distinct()
                .limit(MOST_BEHIND)
                .toList();
        return more.isEmpty() ? "" : "; BEHIND IT: " + String.join("; ", more);
    }

    /** Whether a figure comes of these parts: it was not known of the engine as it is, or was another. */
    private boolean isBrought(Term term) {
        Optional<Measured> before = own.figure(term);
        Optional<Measured> now = after.figure(term);
        return now.isPresent()
                && (before.isEmpty()
                        || Math.abs(now.get().value() - before.get().value())
                                > SAME * before.get().standardUncertainty());
    }

    private Rejection rated(long count) {
        String wanted = after.figure(Term.WANTED_SPEED)
                .map(m -> words(Term.WANTED_SPEED, m))
                .orElse("");
        String rating = found.rod()
                .dim(Term.ROD_RATED_SPEED)
                .map(d -> words(Term.ROD_RATED_SPEED, Measured.exact(d.value())))
                .orElse("");
        return new Rejection(
                Obstacle.RATED.label(),
                count,
                found.title(),
                "its maker rates it for " + rating + ", wanted are " + wanted,
                "a rod rated for the wanted speed or more, or a lower speed");
    }

    /** The journals and seal seats of the new crankshaft beside those of the old one. */
    private Rejection otherShaft(long count) {
        List<String> others = new ArrayList<>();
        for (Term shaft : Neighbours.SHAFTS) {
            Optional<Dim> offered = found.crank().dim(shaft);
            Optional<Dim> there = own.figure(shaft).map(Dim::of);
            if (offered.isPresent()
                    && there.isPresent()
                    && Math.abs(offered.get().value() - there.get().value()) > Neighbours.SAME_SHAFT) {
                others.add(shaft.label() + " " + millimetres(offered.get()) + ", in this case "
                        + millimetres(there.get()));
            }
        }
        if (others.isEmpty()) {
            found.crank()
                    .dim(Term.MAIN_JOURNAL)
                    .ifPresent(d -> others.add(Term.MAIN_JOURNAL.label() + " " + millimetres(d)
                            + own.figure(Term.MAIN_BORE)
                                    .map(m -> ", in a bearing of " + millimetres(Dim.of(m)))
                                    .orElse("")));
        }
        return new Rejection(
                Obstacle.CRANK_IN_CASE.label(),
                count,
                found.title(),
                String.join("; ", others),
                "a crankshaft with the journals and seal seats of this case, or bearings and seals to suit both, which its maker must name");
    }

    /** Where no rule says how much play two parts need, and as they are they cannot be put together. */
    private static String cureWithoutRule(Obstacle obstacle) {
        for (Gap gap : Gap.values()) {
            if (gap.obstacle() == obstacle) {
                return "another piece of the pair; pieces within their tolerances may suit, measured one by one";
            }
        }
        return "";
    }

    /** A verdict of the table on the figure that is in the way: failed and chosen before failed before near. */
    private Optional<Verdict> verdict(Obstacle obstacle) {
        List<Term> terms = obstacle.term()
                .map(t -> t == Term.TDC_ACCELERATION ? List.of(Term.WANTED_SPEED) : sisters(t))
                .orElse(List.of());
        return after.verdicts().stream()
                .filter(v -> terms.contains(v.term()))
                .filter(v -> v.state() == Verdict.State.FAILS || v.state() == Verdict.State.NEAR)
                .min(Comparator.comparing((Verdict v) -> v.state() == Verdict.State.FAILS ? 0 : 1)
                        .thenComparing(v -> v.chosen() ? 0 : 1)
                        .thenComparingDouble(this::missedBy));
    }

    /** By how much the figure misses the limit [SI]: where sources disagree, the one that is missed least is what kept it out. */
    private double missedBy(Verdict verdict) {
        return after.figure(verdict.term())
                .map(m -> Math.max(
                        Double.isFinite(verdict.least()) ? verdict.least() - m.value() : 0,
                        Double.isFinite(verdict.most()) ? m.value() - verdict.most() : 0))
                .orElse(0.0);
    }

    /** Where the trade disagrees: who would pass it. */
    private String passedBy(Verdict failed) {
        String rule = failed.rule().substring(0, Math.max(0, failed.rule().indexOf('.')));
        String passing = after.verdicts().stream()
                .filter(v -> v.term() == failed.term() && v.rule().startsWith(rule + ".") && !rule.isEmpty())
                .filter(v -> v.state() == Verdict.State.MEETS)
                .map(Verdict::label)
                .collect(Collectors.joining("; "));
        return passing.isEmpty() ? "" : "; sources disagree, it would pass by: " + passing;
    }

    private static List<Term> sisters(Term term) {
        return term == Term.ROD_SIDE_CLEARANCE
                ? List.of(Term.ROD_SIDE_CLEARANCE, Term.SIDE_CLEARANCE_BY_WIDTH)
                : List.of(term);
    }

    private String figure(Obstacle obstacle) {
        return obstacle.term()
                .flatMap(after::figure)
                .map(m -> obstacle.term().get().label() + " is "
                        + words(obstacle.term().get(), m))
                .orElseGet(() -> bySizes(obstacle));
    }

    /** By the sizes alone, where one of them has no tolerance and so no figure with its doubt can be said. */
    private String bySizes(Obstacle obstacle) {
        Optional<Dim> squish = after.figure(Term.DECK_HEIGHT)
                .map(Dim::of)
                .flatMap(d -> found.crank().dim(Term.STROKE).map(s -> d.plus(-0.5, s)))
                .flatMap(d -> found.rod().dim(Term.ROD_LENGTH).map(l -> d.plus(-1, l)))
                .flatMap(d -> found.piston().dim(Term.COMPRESSION_HEIGHT).map(h -> d.plus(-1, h)))
                .flatMap(d -> found.gasket().dim(Term.GASKET_THICKNESS).map(t -> d.plus(1, t)));
        boolean aboutSquish = obstacle == Obstacle.SQUISH_TIGHT || obstacle == Obstacle.SQUISH_WIDE;
        return aboutSquish && squish.isPresent()
                ? "by the sizes alone squish comes to " + millimetres(squish.get())
                : "";
    }

    private String words(Term term, Measured figure) {
        PrintedFigures printed =
                new FigurePrinter(build.units()).print(term.dimension(), figure.value(), figure.expanded());
        return printed.line();
    }

    /** Two parts of different nominal size: no machining, but another part. */
    private Optional<Rejection> anotherSize(Obstacle obstacle, long count) {
        for (Gap gap : Gap.values()) {
            if (gap.obstacle() != obstacle) {
                continue;
            }
            Optional<Dim> wide = dim(gap.wide());
            Optional<Dim> inner = dim(gap.inner());
            if (wide.isPresent() && inner.isPresent()) {
                double play = wide.get().value() - inner.get().value();
                if (Math.abs(play) > ANOTHER_SIZE
                        && gap != Gap.ROD_BETWEEN_CHEEKS
                        && gap != Gap.ROD_IN_PISTON
                        && gap != Gap.PIN_IN_CLIPS) {
                    return Optional.of(
                            new Rejection(
                                    obstacle.label() + ": another size",
                                    count,
                                    found.title(),
                                    gap.wide().label() + " " + millimetres(wide.get()) + ", "
                                            + gap.inner().label() + " " + millimetres(inner.get()) + ": another size",
                                    gap == Gap.PISTON_IN_BORE && play < 0
                                            ? "bore and hone the cylinder to this piston, if its wall allows it, or a smaller piston"
                                            : "another part of the pair, made for the other's size; machining does not bridge it"));
                }
            }
        }
        return Optional.empty();
    }

    private Optional<Dim> dim(Term term) {
        return found.rows()
                .flatMap(r -> r.dim(term).stream())
                .findFirst()
                .or(() -> after.figure(term).map(Dim::of));
    }

    private String millimetres(Dim dim) {
        return new FigurePrinter(build.units())
                        .print(longthrow.core.quantity.Dimension.LENGTH, dim.value(), 0.1e-3)
                        .first()
                        .value()
                + " " + unit(dim);
    }

    private String unit(Dim dim) {
        PrintedFigures printed =
                new FigurePrinter(build.units()).print(longthrow.core.quantity.Dimension.LENGTH, dim.value(), 0.1e-3);
        return printed.first().unit()
                + printed.second()
                        .map(f -> String.format(Locale.ROOT, " (%s %s)", f.value(), f.unit()))
                        .orElse("");
    }
}
