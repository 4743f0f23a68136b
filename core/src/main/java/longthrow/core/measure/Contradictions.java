package longthrow.core.measure;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import longthrow.core.answer.Finding;
import longthrow.core.answer.NextReading;
import longthrow.core.build.Build;
import longthrow.core.measurement.Measured;
import longthrow.core.measurement.Source;
import longthrow.core.term.Term;

/**
 * What the suspects mean for the figures. While readings disagree, the likeliest suspects are set aside, out loud, so that a slip does not spread through
 * the instruments it shares with sound readings; a figure that hangs on a suspect, or that other likely explanations see otherwise, is marked as
 * contradicted and no verdict rests on it.
 */
final class Contradictions {
    /** Difference between two explanations, as a share of the 95 % doubt, from which on a figure is contradicted. */
    private static final double MOVED_BY = 0.5;
    /** An explanation with a smaller share does not condemn a figure. */
    private static final double LIKELY_FROM = 0.05;
    /** So many suspects are set aside at the most; with more, nothing can be trusted any longer. */
    private static final int MOST_ASIDE = 4;

    private final Build build;
    private final Suspects suspects;
    private final Figures settled;
    private final Set<String> aside = new LinkedHashSet<>();
    private final Set<Term> touched = new LinkedHashSet<>();

    private Contradictions(Figures figures, Suspects suspects) {
        this.build = figures.build();
        this.suspects = suspects;
        Figures left = figures;
        Suspects still = suspects;
        while (still.alarm() && aside.size() < MOST_ASIDE) {
            aside.add(still.ranked().get(0).entry().place());
            left = figures.without(aside);
            still = Suspects.of(left.readings());
        }
        settled = left;
        if (aside.isEmpty()) {
            return;
        }
        List<Figures> others = suspects.ranked().stream()
                .filter(s ->
                        s.share() >= LIKELY_FROM && !aside.contains(s.entry().place()))
                .map(s -> figures.without(Set.of(s.entry().place())))
                .toList();
        Set<String> hangsOn = new LinkedHashSet<>();
        figures.readings().entries().stream()
                .filter(e -> aside.contains(e.place()))
                .forEach(e -> hangsOn.addAll(e.observation().formula().inputs()));
        for (Term term : figures.model().terms()) {
            boolean shares = figures.model().formula(term).orElseThrow().inputs().stream()
                    .anyMatch(hangsOn::contains);
            if ((shares && differ(term, settled, figures)) || others.stream().anyMatch(o -> differ(term, settled, o))) {
                touched.add(term);
            }
        }
        if (still.alarm()) {
            touched.addAll(figures.model().terms());
        }
    }

    static Contradictions of(Figures figures, Suspects suspects) {
        return new Contradictions(figures, suspects);
    }

    private static boolean differ(Term term, Figures one, Figures other) {
        Optional<Measured> a = one.figure(term);
        Optional<Measured> b = other.figure(term);
        return a.isPresent() != b.isPresent()
                || (a.isPresent()
                        && b.isPresent()
                        && Math.abs(a.get().value() - b.get().value())
                                > MOVED_BY * a.get().expanded());
    }

    /** The figures with the suspects set aside; all of them when nothing disagrees. */
    Figures settled() {
        return settled;
    }

    /** Whether the figure hangs on a reading that is probably wrong. */
    boolean touches(Term term) {
        return touched.contains(term);
    }

    /** The suspects in words, most probable first. */
    List<Finding> findings(int most, double namedFrom) {
        if (!suspects.alarm()) {
            return List.of();
        }
        List<Finding> findings = new ArrayList<>();
        List<Suspects.Suspect> ranked = suspects.ranked();
        Set<String> named = new LinkedHashSet<>();
        for (Suspects.Suspect s : ranked) {
            Term term = s.entry().term();
            double before = s.entry().observation().value();
            boolean absurd = term.isRead() && !term.believable().holds(before + s.move());
            if (named.size() >= most || (!named.isEmpty() && (s.share() < namedFrom || absurd))) {
                break;
            }
            if (!named.add(s.entry().place())) {
                continue; // the likelier mistake at this place has been named
            }
            findings.add(finding(s));
        }
        findings.add(new Finding(
                Finding.Kind.WARNING,
                String.join(", ", aside),
                "set aside until it is read again; figures that hang on it are marked and no verdict rests on them",
                "read it again; nothing was changed in your file"));
        return findings;
    }

    private Finding finding(Suspects.Suspect s) {
        Term term = s.entry().term();
        ReadingSet set = s.entry().set();
        boolean one = s.reading() >= 0 && set != null && set.count() > 1;
        double value = one && set != null
                ? set.values().get(s.reading())
                : s.entry().observation().value();
        double doubt = doubtOf(s.entry());
        String which = one ? "reading " + (s.reading() + 1) + " of " + term.label() : term.label();
        return new Finding(
                Finding.Kind.SUSPECT,
                s.entry().place(),
                "the readings do not agree with each other, or with any engine that runs; " + which + ", "
                        + Measure.words(build, term, value, doubt) + ", is suspect (" + Measure.percent(s.share())
                        + "): " + s.mistake().label() + ". All agree if it is "
                        + Measure.words(build, term, value + s.move(), doubt),
                s.mistake().mend());
    }

    /** 95 % doubt of a reading by itself [SI]. */
    private static double doubtOf(Readings.Entry entry) {
        double variance = 0;
        for (Map.Entry<Source, Double> e : entry.observation().errors().entrySet()) {
            double c = e.getValue() * e.getKey().forWeights();
            variance += c * c;
        }
        return Source.NORMAL_95 * Math.sqrt(variance);
    }

    /** The most probable suspect is the first thing to read again. */
    List<NextReading> next(Build of) {
        if (!suspects.alarm() || suspects.ranked().isEmpty()) {
            return List.of();
        }
        Suspects.Suspect s = suspects.ranked().get(0);
        Term term = s.entry().term();
        if (!term.isRead()) {
            return List.of();
        }
        ReadingSet set = s.entry().set();
        String with = set == null
                ? term.reading().usualInstrument().key()
                : set.instrument().key();
        return List.of(new NextReading(
                term,
                with,
                term.reading().how(),
                term,
                Double.NaN,
                Double.NaN,
                of.minutes(term.reading()),
                "the readings do not agree, and this one is the likeliest to be wrong"));
    }
}
