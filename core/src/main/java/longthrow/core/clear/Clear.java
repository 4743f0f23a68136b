package longthrow.core.clear;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import longthrow.core.answer.Answer;
import longthrow.core.answer.Clearance;
import longthrow.core.answer.DefaultUsed;
import longthrow.core.answer.Finding;
import longthrow.core.answer.Rung;
import longthrow.core.answer.Stop;
import longthrow.core.build.Build;
import longthrow.core.engine.GapStops;
import longthrow.core.engine.Stops;
import longthrow.core.life.Known;
import longthrow.core.measure.Appraisal;
import longthrow.core.measure.AsPlanned;
import longthrow.core.measurement.NotConvergedException;
import longthrow.core.quantity.Dimension;
import longthrow.core.quantity.FigurePrinter;
import longthrow.core.term.Term;

/** The question {@code clear}: does anything touch, cold and running, through two turns? A pure function from a build to its answer. */
public final class Clear {
    /** Figures an owner looks for beside the gaps. */
    private static final Set<Term> SHOWN = EnumSet.of(
            Term.STROKE,
            Term.DONOR_STROKE,
            Term.ROD_LENGTH,
            Term.DECK_CLEARANCE,
            Term.SQUISH,
            Term.SKIRT_TO_COUNTERWEIGHT,
            Term.BOSS_TO_COUNTERWEIGHT,
            Term.WANTED_SPEED,
            Term.GOVERNED_SPEED);

    /** Readings named first, those that tell of most pairs; layout. */
    private static final int READ_FIRST = 6;

    private Clear() {}

    /** What an answer to {@code clear} comes to, in one sentence; empty where no pair was looked at. */
    public static String inShort(Answer answer) {
        FigurePrinter printer = new FigurePrinter(answer.units());
        Optional<String> speed = answer.value(Term.GOVERNED_SPEED)
                .map(v -> printer.print(Dimension.ROTATIONAL_SPEED, v.figure().value(), 0)
                        .first()
                        .text());
        return answer.clearances().isEmpty() ? "" : GapStops.inShort(answer.clearances(), speed);
    }

    /**
     * Every pair that may touch: the unknown first, then what touches, then by what is left.
     * @throws IllegalArgumentException when a reading names an instrument that the build does not have and that is not built in
     */
    public static Answer of(Build build) {
        Appraisal appraisal;
        try {
            appraisal = Appraisal.sound(build);
        } catch (NotConvergedException e) {
            return untangled(build);
        }
        Known known = new Known(appraisal);
        Telling telling = new Telling(known, new Holding(known));
        List<Plan> plans = Pairs.of(known);
        List<Clearance> pairs = inOrder(plans.stream().map(telling::tell).toList());
        Set<DefaultUsed> defaults = new LinkedHashSet<>(telling.taken());
        defaults.addAll(appraisal.defaults());
        List<Finding> findings = new ArrayList<>(appraisal.suspects());
        findings.addAll(AsPlanned.findings(build));
        findings.addAll(OutlineChecks.findings(known));
        findings.addAll(telling.findings());
        findings.addAll(MockUps.ofNoPair(build, plans));
        findings.addAll(Pairs.contradictions(known));
        findings.addAll(readFirst(pairs));
        vouchedFor(pairs).ifPresent(findings::add);
        findings.addAll(cautions(build));
        return appraisal
                .answer("clear", SHOWN, findings, GapStops.together(appraisal.stops(), pairs), List.copyOf(defaults))
                .withClearances(pairs);
    }

    /** What is unknown before what is told, that with the least missing first; then the gravest, then the narrowest. */
    private static List<Clearance> inOrder(List<Clearance> pairs) {
        return pairs.stream()
                .sorted(Comparator.comparing(Clearance::state)
                        .thenComparingInt(p -> p.missing().isEmpty()
                                ? Integer.MAX_VALUE
                                : p.missing().size())
                        .thenComparingDouble(
                                p -> p.cold().map(Clearance.Gap::value).orElse(0.0)))
                .toList();
    }

    /**
     * An answer of another question, without the stop that is there until the engine is mocked up, once every pair is known: an engine of which nothing was mocked up
     * is not looked through, for there are pairs that nothing else tells.
     * @param build that the answer is of
     */
    public static Answer settled(Answer answer, Build build) {
        boolean isAsked = !build.mockedUp().isEmpty() && answer.stops().stream().anyMatch(GapStops::isOfTheUnknown);
        return isAsked ? GapStops.settled(answer, of(build).stops()) : answer;
    }

    /** Gaps that nobody read and that hold nothing back. */
    private static Optional<Finding> vouchedFor(List<Clearance> pairs) {
        long gaps = pairs.stream()
                .filter(p -> p.state() == Clearance.State.UNKNOWN && p.hold() == Clearance.Hold.NOTHING)
                .count();
        return gaps == 0
                ? Optional.empty()
                : Optional.of(
                        new Finding(
                                Finding.Kind.NOTE,
                                "gaps its maker vouches for",
                                gaps + (gaps == 1 ? " pair was" : " pairs were")
                                        + " not read, and the engine is as its maker made it, for all that is written: up to his speed he vouches for "
                                        + (gaps == 1 ? "it" : "them"),
                                "turn it twice by hand before it is started all the same; write down every part that is not the one he fitted"));
    }

    /** The readings that most of the unknown pairs wait for. */
    private static List<Finding> readFirst(List<Clearance> pairs) {
        Map<String, Integer> waiting = new LinkedHashMap<>();
        Map<String, Rung.Missing> what = new LinkedHashMap<>();
        for (Clearance pair : pairs) {
            for (Rung.Missing missing : pair.missing()) {
                if (Term.at(missing.where()).filter(Term::isRead).isPresent()) {
                    waiting.merge(missing.where(), 1, Integer::sum);
                    what.putIfAbsent(missing.where(), missing);
                }
            }
        }
        if (waiting.isEmpty()) {
            return List.of();
        }
        String list = waiting.entrySet().stream()
                .sorted(Map.Entry.<String, Integer>comparingByValue().reversed())
                .limit(READ_FIRST)
                .map(e -> java.util.Objects.requireNonNull(what.get(e.getKey())).what() + " (" + e.getKey() + ", "
                        + e.getValue() + (e.getValue() == 1 ? " pair)" : " pairs)"))
                .collect(Collectors.joining(", "));
        return List.of(new Finding(
                Finding.Kind.WARNING,
                "what to read first",
                "most of the unknown pairs wait for: " + list,
                "read these while it is apart, and mock up what is left"));
    }

    private static List<Finding> cautions(Build build) {
        List<Finding> cautions = new ArrayList<>(Stops.cautions(build));
        cautions.add(new Finding(
                Finding.Kind.NOTE,
                "what a drawing cannot see",
                "casting flash, a bolt head unlike the other, a bent rod, a part put in the wrong way round, a"
                        + " valve that floats: every gap takes parts as read, put together as they should be",
                "turn it twice by hand with clay at every place before it is started, whatever stands here;"
                        + " fingers out of gears and off springs"));
        return cautions;
    }

    /** When the readings are so far from any engine that no figures can be found that come near them all. */
    private static Answer untangled(Build build) {
        return Appraisal.untangled(
                "clear",
                build,
                List.of(new Stop(
                        "do not turn it under power",
                        Appraisal.NO_ENGINE,
                        "find the wrong reading first: see measure",
                        false)));
    }
}
