package longthrow.core.measure;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import longthrow.core.answer.Finding;
import longthrow.core.answer.Verdict;
import longthrow.core.build.Build;
import longthrow.core.measurement.Measured;
import longthrow.core.term.Believable;
import longthrow.core.term.Choice;
import longthrow.core.term.Term;

/**
 * Readings each of which can be believed, and which together make an engine that nobody builds. Nothing is refused for it; nothing is bought or machined
 * for it either before they are read again.
 */
final class StrangeTogether {
    /**
     * Displacement of the singles this program is for, 80 to 500 cc, with a margin down to the 49 cc of minibikes and mopeds [m3]; common practice, no
     * source.
     */
    static final Believable DISPLACEMENT = new Believable(40e-6, 700e-6);
    /** A gasket's hole is made no more than this larger than the bore it seals, in diameter [m]: 1 to 4 mm are met; common practice, no source. */
    private static final double MOST_OVER_BORE = 10e-3;
    /** As the other where the hole takes in the valves beside the bore too: the round hole of the same area [m]; common practice, no source. */
    private static final double MOST_OVER_BORE_SIDE_VALVE = 25e-3;

    private final Figures figures;
    private final Build build;
    private final boolean gasketDoubtful;
    private final boolean displacementDoubtful;
    private final OutOfOrder order;

    StrangeTogether(Figures figures) {
        this.figures = figures;
        this.build = figures.build();
        this.order = new OutOfOrder(figures);
        this.gasketDoubtful = figures.figure(Term.GASKET_OVER_BORE)
                .filter(over -> over.probabilityAtMost(mostOverBore()) <= 1 - Verdict.SURE)
                .isPresent();
        this.displacementDoubtful = figures.figure(Term.SWEPT_VOLUME)
                .filter(swept -> swept.probabilityAtLeast(DISPLACEMENT.least()) <= 1 - Verdict.SURE
                        || swept.probabilityAtMost(DISPLACEMENT.most()) <= 1 - Verdict.SURE)
                .isPresent();
    }

    private double mostOverBore() {
        return build.chose(Choice.VALVE_LAYOUT, "side") ? MOST_OVER_BORE_SIDE_VALVE : MOST_OVER_BORE;
    }

    /** One for each pair of readings that make no engine, naming both. */
    List<Finding> findings() {
        List<Finding> findings = new ArrayList<>(order.findings());
        if (gasketDoubtful) {
            findings.add(new Finding(
                    Finding.Kind.SUSPECT,
                    places(List.of(Term.GASKET_BORE, Term.BORE)),
                    said(Term.GASKET_BORE) + " and " + said(Term.BORE) + ": the hole would be "
                            + said(Term.GASKET_OVER_BORE, "") + " larger than the bore, and none is made more than "
                            + Measure.words(build, Term.GASKET_OVER_BORE, mostOverBore(), 0)
                            + " larger (common practice, no source). One of the two is read or written wrong, or the gasket is another engine's."
                            + " What hangs on them is in dispute, and no verdict rests on it",
                    "read both again before anything is bought or machined for it"));
        }
        if (displacementDoubtful) {
            findings.add(new Finding(
                    Finding.Kind.WARNING,
                    places(List.of(Term.BORE, Term.STROKE)),
                    said(Term.BORE) + " and " + said(Term.STROKE) + " make " + said(Term.SWEPT_VOLUME, "")
                            + ": the limits here are for singles of 80 to 500 cc, and none smaller than "
                            + Measure.words(build, Term.SWEPT_VOLUME, DISPLACEMENT.least(), 0) + " or larger than "
                            + Measure.words(build, Term.SWEPT_VOLUME, DISPLACEMENT.most(), 0)
                            + " was thought of (common practice, no source)",
                    "read both again, and look at the unit, before anything is bought or machined for it"));
        }
        return findings;
    }

    private String said(Term term) {
        return said(term, term.label() + " ");
    }

    private String said(Term term, String before) {
        Measured figure = figures.figure(term).orElseThrow();
        return before + Measure.words(build, term, figure.value(), figure.expanded());
    }

    private String places(List<Term> terms) {
        Set<String> places = new LinkedHashSet<>();
        for (Term term : terms) {
            Measured figure = figures.figure(term).orElseThrow();
            List<String> from = figures.result(term, figure).from();
            places.addAll(from.isEmpty() ? List.of(term.path()) : from);
        }
        return String.join(", ", places);
    }

    /** Whether the figure hangs on a gasket's hole and a bore that cannot belong together, or on two readings of one body that cannot both be. */
    boolean spoils(Term term) {
        return order.spoils(term) || (gasketDoubtful && hangsOn(term, List.of(Term.GASKET_BORE, Term.BORE)));
    }

    /** The verdict with nothing bought or machined for sizes that are to be read again first. */
    Verdict withoutBuying(Verdict verdict) {
        boolean cureRestsOnIt = displacementDoubtful
                && !verdict.cure().isEmpty()
                && hangsOn(verdict.term(), List.of(Term.BORE, Term.STROKE));
        return cureRestsOnIt
                ? verdict.withCure("first read bore and stroke again: together they make no engine of this kind")
                : verdict;
    }

    private boolean hangsOn(Term term, List<Term> readings) {
        Set<String> behind = readings.stream()
                .flatMap(t -> figures.model().formula(t).stream())
                .flatMap(f -> f.inputs().stream())
                .collect(Collectors.toSet());
        return Optional.of(term)
                .flatMap(figures.model()::formula)
                .filter(f -> f.inputs().stream().anyMatch(behind::contains))
                .isPresent();
    }
}
