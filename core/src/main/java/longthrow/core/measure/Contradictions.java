package longthrow.core.measure;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import longthrow.core.answer.Finding;
import longthrow.core.answer.NextReading;
import longthrow.core.build.Build;
import longthrow.core.measurement.Measured;
import longthrow.core.measurement.Source;
import longthrow.core.term.Term;

/** What the suspects mean for the figures: those that a suspect would move by more than half their doubt must not be used until it is settled. */
final class Contradictions {
    /** Move of a figure, as a share of its 95 % doubt, from which on it is contradicted. */
    private static final double MOVED_BY = 0.5;
    /** Suspects with a smaller share do not condemn a figure. */
    private static final double CONDEMNS_FROM = 0.02;

    private final Build build;
    private final Suspects suspects;
    private final Set<Term> touched = new LinkedHashSet<>();

    private Contradictions(Figures figures, Suspects suspects) {
        this.build = figures.build();
        this.suspects = suspects;
        if (!suspects.alarm()) {
            return;
        }
        for (Term term : figures.model().terms()) {
            figures.figure(term).ifPresent(figure -> {
                if (suspects.ranked().stream().anyMatch(s -> s.share() >= CONDEMNS_FROM && moves(figure, s))) {
                    touched.add(term);
                }
            });
        }
    }

    static Contradictions of(Figures figures, Suspects suspects) {
        return new Contradictions(figures, suspects);
    }

    private static boolean moves(Measured figure, Suspects.Suspect suspect) {
        ReadingSet set = suspect.entry().set();
        double move = suspect.reading() < 0 || set == null ? suspect.move() : suspect.move() / set.count();
        for (Map.Entry<Source, Double> error :
                suspect.entry().observation().errors().entrySet()) {
            Source source = error.getKey();
            if (isOwn(source) && source.standardUncertainty() > 0) {
                double perUnit = figure.contributions().getOrDefault(source, 0.0)
                        / (source.standardUncertainty() * error.getValue());
                return Math.abs(perUnit * move) > MOVED_BY * figure.expanded();
            }
        }
        return true; // without a source of its own there is no telling, so it counts as touched
    }

    /** Sources that belong to one entry alone. */
    private static boolean isOwn(Source source) {
        return switch (source.kind()) {
            case SCATTER, RESOLUTION, TYPED, TOLERANCE, ASSUMED -> true;
            case INSTRUMENT, TEMPERATURE, UNKNOWN -> false;
        };
    }

    /** Whether the figure rests on a reading that is probably wrong. */
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
        for (int k = 0; k < Math.min(most, ranked.size()); k++) {
            Suspects.Suspect s = ranked.get(k);
            if (k > 0 && s.share() < namedFrom) {
                break;
            }
            ReadingSet set = s.entry().set();
            boolean one = s.reading() >= 0 && set != null && set.count() > 1;
            double value = one && set != null
                    ? set.values().get(s.reading())
                    : s.entry().observation().value();
            String which = one
                    ? "reading " + (s.reading() + 1) + " of " + s.entry().term().label()
                    : s.entry().term().label();
            findings.add(new Finding(
                    Finding.Kind.SUSPECT,
                    s.entry().place(),
                    "the readings do not agree; " + which + ", "
                            + Measure.words(build, s.entry().term(), value) + ", is suspect ("
                            + Measure.percent(s.share()) + "): " + s.mistake().label() + ". All agree if it is "
                            + Measure.words(build, s.entry().term(), value + s.move()),
                    s.mistake().mend()));
        }
        return findings;
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
                Math.abs(s.move()),
                0,
                of.minutes(term.reading()),
                "the readings do not agree, and this one is the likeliest to be wrong"));
    }
}
