package longthrow.core.measure;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import longthrow.core.answer.Finding;
import longthrow.core.answer.NextReading;
import longthrow.core.build.Build;
import longthrow.core.measurement.Source;
import longthrow.core.quantity.Percent;
import longthrow.core.term.Believable;
import longthrow.core.term.Term;

/** The suspects in words: first what no engine has, then what disagrees, likeliest first. Nothing is proposed that no engine of this kind has. */
final class SuspectWords {
    /** So many other slips are named behind the likeliest. */
    private static final int MOST_OTHERS = 4;
    /** Mistakes that can be told from the figure alone, since each can have happened in one way or two. */
    private static final Set<Mistake> PLAIN = EnumSet.complementOf(
            EnumSet.of(Mistake.OTHER, Mistake.DROPPED_DIGIT, Mistake.MISREAD_DIGIT, Mistake.DIGITS_SWAPPED));

    private final Contradictions found;
    private final Build build;

    SuspectWords(Contradictions found) {
        this.found = found;
        this.build = found.build();
    }

    /**
     * One finding for each suspect, and what was set aside.
     * @param most      so many suspects that disagree are named
     * @param namedFrom with a smaller share none but the first is
     */
    List<Finding> findings(int most, double namedFrom) {
        List<Finding> findings = new ArrayList<>();
        found.outside().forEach(e -> findings.add(outside(e)));
        List<Suspects.Suspect> named = named(most, namedFrom);
        double sum = named.stream()
                .filter(s -> !isEither(s))
                .mapToDouble(this::shareOfPlace)
                .sum();
        for (int k = 0; k < named.size(); k++) {
            Suspects.Suspect s = named.get(k);
            String also =
                    (sum > 1 + namedFrom ? "; more than one is probably wrong" : "") + (k == 0 ? asWell(named) : "");
            findings.add(
                    isEither(s)
                            ? two(s.entry(), Objects.requireNonNull(s.entry().set()))
                            : suspect(s, shareOfPlace(s) / Math.max(1, sum), also));
        }
        if (!found.aside().isEmpty()) {
            findings.add(new Finding(
                    Finding.Kind.WARNING,
                    found.aside().stream().map(this::words).distinct().collect(Collectors.joining(", ")),
                    "set aside until it is read again; figures that hang on it are marked or left out, and no verdict rests on them",
                    "read it again; nothing was changed in your file"));
        }
        found.settled().readings().entries().forEach(e -> quarrel(e).ifPresent(findings::add));
        return findings;
    }

    private String words(Aside aside) {
        return aside.isWhole() ? aside.place() : aside.place() + ", reading " + (aside.reading() + 1);
    }

    private List<Suspects.Suspect> named(int most, double namedFrom) {
        List<Suspects.Suspect> named = new ArrayList<>();
        if (!found.suspects().alarm()) {
            return named;
        }
        Set<String> places = new LinkedHashSet<>();
        for (Suspects.Suspect s : found.suspects().ranked()) {
            boolean first = named.isEmpty();
            if (named.size() >= most || (!first && s.share() < namedFrom)) {
                break;
            }
            if ((first || Contradictions.mendedTo(s).isPresent())
                    && places.add(s.entry().place())) {
                named.add(s);
            }
        }
        return named;
    }

    /** A figure no engine of this kind has, with the mistake that would explain it. */
    private Finding outside(Readings.Entry entry) {
        Term term = entry.term();
        Believable range = term.believable();
        Optional<Suspects.Suspect> mended = found.all().ranked().stream()
                .filter(s -> s.entry().place().equals(entry.place()) && PLAIN.contains(s.mistake()))
                .filter(s -> Contradictions.mendedTo(s).isPresent())
                .findFirst();
        Optional<String> thousands = entry.written().stream()
                .flatMap(q -> EntryCautions.inThousands(term, q).stream())
                .findFirst();
        String values = entry.written().stream()
                .map(q -> Measure.words(build, term, q.si(), 0))
                .distinct()
                .collect(Collectors.joining(", "));
        return new Finding(
                Finding.Kind.SUSPECT,
                entry.place(),
                term.label() + ", " + values + ", is outside what an 80 to 500 cc single shows, "
                        + Measure.words(build, term, range.least(), 0) + " to "
                        + Measure.words(build, term, range.most(), 0)
                        + thousands
                                .map(t -> ". It was written with a point; if the point parts thousands, " + t
                                        + " was meant")
                                .orElse("")
                        + mended.map(s -> (thousands.isPresent() ? ". Or " : ". Perhaps ")
                                        + s.mistake().label() + ": it would be "
                                        + Measure.words(
                                                build,
                                                term,
                                                Contradictions.mendedTo(s).orElseThrow(),
                                                doubtOf(entry)))
                                .orElse(""),
                thousands
                        .map(t ->
                                "if " + t + " was meant, write it so; else read it again and look at the decimal point")
                        .or(() -> mended.map(s -> s.mistake().mend()))
                        .orElse(Readings.checkIt(term)));
    }

    /** Whether it is one of two readings that nothing else tells apart. */
    private boolean isEither(Suspects.Suspect s) {
        ReadingSet set = s.entry().set();
        double firstWrong = found.suspects().wrongOfTwo(s.entry().place(), 0);
        return set != null && set.quarrels() && Math.max(firstWrong, 1 - firstWrong) < Contradictions.SURE;
    }

    /** How probable it is that this reading is wrong, in whatever way. */
    private double shareOfPlace(Suspects.Suspect s) {
        double sum = found.suspects().ranked().stream()
                .filter(o -> o.entry().place().equals(s.entry().place()))
                .mapToDouble(Suspects.Suspect::share)
                .sum();
        return Math.min(1, sum);
    }

    /** Other single slips that would mend it as well, so that nobody takes the likeliest for the only one. */
    private String asWell(List<Suspects.Suspect> named) {
        Set<String> places = new LinkedHashSet<>();
        named.forEach(s -> places.add(s.entry().place()));
        List<String> others = new ArrayList<>();
        for (Suspects.Suspect s : found.suspects().asWell()) {
            if (others.size() < MOST_OTHERS && !places.contains(s.entry().place())) {
                Contradictions.mendedTo(s)
                        .ifPresent(v -> others.add(s.entry().term().label() + " of "
                                + Measure.words(build, s.entry().term(), v, doubtOf(s.entry())) + " ("
                                + s.entry().place() + ")"));
            }
        }
        return others.isEmpty() ? "" : ". One slip elsewhere would mend it as well: " + String.join(", or ", others);
    }

    private Finding suspect(Suspects.Suspect s, double share, String also) {
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
                        + Measure.words(build, term, value, doubt) + ", is suspect (" + Percent.ofProbability(share)
                        + "): "
                        + s.mistake().label()
                        + Contradictions.mendedTo(s)
                                .map(v -> ". All agree if it is " + Measure.words(build, term, v, doubt))
                                .orElse("")
                        + also,
                s.mistake().mend());
    }

    /** Two readings that nothing else tells apart. */
    private Finding two(Readings.Entry entry, ReadingSet set) {
        return new Finding(
                Finding.Kind.SUSPECT,
                entry.place(),
                "the two readings of " + entry.term().label() + differ(entry, set) + ": either may be wrong",
                "read it a third time, from the start, and see which of the two it goes with");
    }

    /** Two readings that differ too much for the usual scatter and yet raise no alarm. */
    private Optional<Finding> quarrel(Readings.Entry entry) {
        ReadingSet set = entry.set();
        return set == null || !set.quarrels()
                ? Optional.empty()
                : Optional.of(new Finding(
                        Finding.Kind.WARNING,
                        entry.place(),
                        "the two readings of " + entry.term().label() + differ(entry, set)
                                + ": the doubt is widened to their own scatter",
                        "read it a third time"));
    }

    private String differ(Readings.Entry entry, ReadingSet set) {
        Term term = entry.term();
        double doubt = doubtOf(entry);
        double apart = Math.abs(set.values().get(1) - set.values().get(0));
        return ", " + Measure.words(build, term, set.values().get(0), doubt) + " and "
                + Measure.words(build, term, set.values().get(1), doubt) + ", differ by "
                + Measure.words(build, term, apart, doubt) + ", where hand and scale leave them within "
                + Measure.words(build, term, set.mostApart(), doubt)
                + String.format(Locale.ROOT, " %.0f times in 100", 100 * ReadingSet.QUARREL);
    }

    /** 95 % doubt of a reading by itself [SI]. */
    private static double doubtOf(Readings.Entry entry) {
        double variance = 0;
        for (Map.Entry<Source, Double> e : entry.observation().errors().entrySet()) {
            double c = e.getValue() * e.getKey().forWeights();
            variance += c * c;
        }
        double doubt = Source.NORMAL_95 * Math.sqrt(variance);
        return Readings.STATED.contains(entry.term()) && entry.set() == null ? 0 : doubt;
    }

    /** What cannot be believed, then the most probable suspect, is the first thing to read again. */
    List<NextReading> next() {
        List<NextReading> next = new ArrayList<>();
        for (Readings.Entry e : found.outside()) {
            again(e, "no engine of this kind has it").ifPresent(next::add);
        }
        if (found.suspects().alarm() && !found.suspects().ranked().isEmpty()) {
            again(
                            found.suspects().ranked().get(0).entry(),
                            "the readings do not agree, and this one is the likeliest to be wrong")
                    .ifPresent(next::add);
        }
        return next;
    }

    private Optional<NextReading> again(Readings.Entry entry, String why) {
        Term term = entry.term();
        if (!term.isRead()) {
            return Optional.empty();
        }
        ReadingSet set = entry.set();
        return Optional.of(new NextReading(
                term,
                set == null
                        ? term.reading().usualInstrument().key()
                        : set.instrument().key(),
                term.reading().how(),
                term,
                Double.NaN,
                Double.NaN,
                build.minutes(term.reading()),
                why));
    }
}
