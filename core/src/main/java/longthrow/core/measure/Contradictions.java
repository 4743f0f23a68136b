package longthrow.core.measure;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Stream;
import longthrow.core.answer.Stop;
import longthrow.core.answer.Unknown;
import longthrow.core.build.Build;
import longthrow.core.engine.Stops;
import longthrow.core.measurement.Measured;
import longthrow.core.term.Term;

/**
 * What the suspects mean for the figures. A figure no engine of this kind has, and while readings disagree the likeliest suspects, are set aside, out loud,
 * so that a slip does not spread through the instruments it shares with sound readings; a figure that hangs on a suspect, or that other likely
 * explanations see otherwise, is marked as contradicted and no verdict rests on it. Of a set only the one reading that stands alone is set aside.
 */
final class Contradictions {
    /** Difference between two explanations, as a share of the 95 % doubt, from which on a figure is contradicted. */
    private static final double MOVED_BY = 0.5;
    /** An explanation with a smaller share does not condemn a figure. */
    private static final double LIKELY_FROM = 0.05;
    /** So many suspects are set aside at the most; with more, nothing can be trusted any longer. */
    private static final int MOST_ASIDE = 4;
    /** From so many readings on, the rest of a set says something without the one that is set aside. */
    private static final int ENOUGH_LEFT = 3;
    /** As sure as a limit is surely kept. */
    static final double SURE = 0.95;

    private final Figures written;
    private final Figures believable;
    private final Figures settled;
    private final Suspects all;
    private final Suspects suspects;
    private final List<Readings.Entry> outside;
    private final Set<Aside> aside = new LinkedHashSet<>();
    private final Set<Term> touched = new LinkedHashSet<>();
    private final List<Figures> ways = new ArrayList<>();

    private Contradictions(Figures figures) {
        written = figures;
        outside = figures.readings().entries().stream()
                .filter(e -> !isBelievable(e))
                .toList();
        outside.forEach(e -> aside.addAll(unbelievable(e)));
        believable = figures.without(aside);
        all = Suspects.of(figures);
        suspects = aside.isEmpty() ? all : Suspects.of(believable);
        Figures left = believable;
        Suspects still = suspects;
        int most = aside.size() + MOST_ASIDE;
        while (still.alarm() && aside.size() < most) {
            aside.add(toSetAside(still));
            left = figures.without(aside);
            still = Suspects.of(left);
        }
        settled = left;
        ways.add(settled);
        if (aside.isEmpty()) {
            return;
        }
        ways.add(believable);
        if (!outside.isEmpty()) {
            ways.add(written);
        }
        List<Figures> others = likely().stream()
                .filter(s -> !isAside(s.entry()))
                .map(s -> believable.without(Set.of(Aside.all(s.entry().place()))))
                .toList();
        ways.addAll(others);
        touch(others);
        if (still.alarm()) {
            touched.addAll(figures.model().terms());
        }
    }

    private void touch(List<Figures> others) {
        Set<String> hangsOn = new LinkedHashSet<>();
        written.readings().entries().stream()
                .filter(this::isAside)
                .forEach(e -> hangsOn.addAll(e.observation().formula().inputs()));
        for (Term term : written.model().terms()) {
            boolean shares = written.model().formula(term).orElseThrow().inputs().stream()
                    .anyMatch(hangsOn::contains);
            if ((shares && differ(term, settled, written)) || others.stream().anyMatch(o -> differ(term, settled, o))) {
                touched.add(term);
            }
        }
    }

    static Contradictions of(Figures figures) {
        return new Contradictions(figures);
    }

    private static boolean isBelievable(Readings.Entry entry) {
        return unbelievable(entry).isEmpty();
    }

    /** What of an entry no engine of this kind has. */
    private static List<Aside> unbelievable(Readings.Entry entry) {
        ReadingSet set = entry.set();
        if (!entry.term().isRead() || entry.written().isEmpty()) {
            return List.of();
        }
        List<Double> values = set == null ? List.of(entry.observation().value()) : set.values();
        List<Aside> outside = new ArrayList<>();
        for (int k = 0; k < values.size(); k++) {
            if (!entry.term().believable().holds(values.get(k))) {
                outside.add(new Aside(entry.place(), k));
            }
        }
        return outside.size() == values.size() ? List.of(Aside.all(entry.place())) : outside;
    }

    /** The likeliest suspect, or the one reading of its set where the rest can speak without it. */
    private Aside toSetAside(Suspects still) {
        Suspects.Suspect first = still.ranked().get(0);
        String place = first.entry().place();
        ReadingSet set = first.entry().set();
        boolean seenBefore = aside.stream().anyMatch(a -> a.place().equals(place));
        if (set == null || set.count() < 2 || first.reading() < 0 || seenBefore) {
            return Aside.all(place);
        }
        boolean oneStands = set.count() >= ENOUGH_LEFT || still.wrongOfTwo(place, first.reading()) >= SURE;
        return oneStands ? new Aside(place, first.reading()) : Aside.all(place);
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

    private boolean isAside(Readings.Entry entry) {
        return aside.stream().anyMatch(a -> a.place().equals(entry.place()));
    }

    /** Suspects worth condemning a figure for. */
    private List<Suspects.Suspect> likely() {
        return !suspects.alarm()
                ? List.of()
                : suspects.ranked().stream()
                        .filter(s -> s.share() >= LIKELY_FROM)
                        .toList();
    }

    Build build() {
        return written.build();
    }

    /** The figures as they were written. */
    Figures written() {
        return written;
    }

    /** The figures with the suspects set aside; all of them when nothing disagrees. */
    Figures settled() {
        return settled;
    }

    /** Suspects with everything as written. */
    Suspects all() {
        return all;
    }

    /** Suspects among what can be believed. */
    Suspects suspects() {
        return suspects;
    }

    /** Entries that no engine of this kind has. */
    List<Readings.Entry> outside() {
        return outside;
    }

    Set<Aside> aside() {
        return aside;
    }

    /** Whether the figure hangs on a reading that is probably wrong. */
    boolean touches(Term term) {
        return touched.contains(term);
    }

    /** The figure to show: as settled, or in dispute as all that can be believed has it. */
    Optional<Measured> shown(Term term) {
        Optional<Measured> figure = settled.figure(term);
        return figure.isPresent() || !touches(term) ? figure : believable.figure(term);
    }

    /** What must not be done, by every way out of the dispute. */
    List<Stop> stops(Function<Term, Optional<Measured>> agreed) {
        List<Stop> stops = new ArrayList<>(Impossible.stops(ways, likeliestFirst()));
        if (touched.isEmpty()) {
            stops.addAll(Stops.of(build(), agreed));
            return stops;
        }
        List<Readings.Entry> doubted = written.readings().entries().stream()
                .filter(e -> isAside(e)
                        || likely().stream().anyMatch(s -> s.entry().place().equals(e.place())))
                .toList();
        Map<Term, List<Double>> mended = new EnumMap<>(Term.class);
        for (Readings.Entry e : doubted) {
            for (Suspects.Suspect s : outside.contains(e) ? all.ranked() : likely()) {
                if (s.entry().place().equals(e.place()) && s.share() >= LIKELY_FROM) {
                    mendedTo(s)
                            .ifPresent(v -> mended.computeIfAbsent(e.term(), t -> new ArrayList<>())
                                    .add(v));
                }
            }
        }
        stops.addAll(Stops.ofEach(build(), Candidates.of(ways, doubted, mended, List.copyOf(touched))));
        return stops;
    }

    /** Places of suspect readings, those that no engine has first, then by how likely each is wrong. */
    private List<String> likeliestFirst() {
        return Stream.concat(
                        outside.stream(),
                        suspects.alarm() ? suspects.ranked().stream().map(Suspects.Suspect::entry) : Stream.of())
                .map(Readings.Entry::place)
                .distinct()
                .toList();
    }

    /** What a suspect reading would be when mended; empty where no engine of this kind has that. */
    static Optional<Double> mendedTo(Suspects.Suspect s) {
        ReadingSet set = s.entry().set();
        double before = set != null && set.count() > 1 && s.reading() >= 0
                ? set.values().get(s.reading())
                : s.entry().observation().value();
        double after = before + s.move();
        return s.entry().term().isRead() && !s.entry().term().believable().holds(after)
                ? Optional.empty()
                : Optional.of(after);
    }

    /** What cannot be said, and of that what was read but is set aside. */
    List<Unknown> unknowns() {
        List<Unknown> unknowns = new ArrayList<>();
        for (Unknown unknown : settled.unknowns()) {
            if (shown(unknown.term()).isPresent()) {
                continue;
            }
            Set<String> again = new LinkedHashSet<>();
            List<Term> missing = new ArrayList<>(unknown.missing());
            for (Readings.Entry e : written.readings().entries()) {
                if (aside.contains(Aside.all(e.place())) && unknown.missing().contains(e.term())) {
                    again.add(e.term().label() + " (" + e.place() + ")");
                    missing.remove(e.term());
                }
            }
            unknowns.add(
                    again.isEmpty()
                            ? unknown
                            : new Unknown(
                                    unknown.term(),
                                    missing,
                                    "read again what is set aside: " + String.join(", ", again)));
        }
        return unknowns;
    }
}
