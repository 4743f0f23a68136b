package longthrow.workshop.store;

import java.time.DayOfWeek;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.time.temporal.TemporalAdjusters;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.function.Function;

/** Which backups stay: the newest of each of the last hours, of each of the last days, and of each of the last weeks before them. */
final class BackupRotation {
    /** Hours, counted where there is a backup: so many steps back within a day; our own choice. */
    static final int HOURS = 6;

    /** Days, counted where there is a backup; asked for by the owner's needs, our own choice. */
    static final int DAYS = 7;

    /** Weeks from Monday (UTC), counted where there is a backup not among those of the days. */
    static final int WEEKS = 4;

    private BackupRotation() {}

    static Set<Instant> kept(Collection<Instant> made) {
        List<Instant> newestFirst =
                made.stream().sorted(Comparator.reverseOrder()).toList();
        Set<Instant> kept = new HashSet<>();
        keepFirstOfEach(newestFirst, BackupRotation::day, DAYS, kept);
        Set<LocalDate> days = new HashSet<>();
        kept.forEach(at -> days.add(day(at)));
        List<Instant> older =
                newestFirst.stream().filter(at -> !days.contains(day(at))).toList();
        keepFirstOfEach(newestFirst, at -> at.truncatedTo(ChronoUnit.HOURS), HOURS, kept);
        keepFirstOfEach(older, at -> day(at).with(TemporalAdjusters.previousOrSame(DayOfWeek.MONDAY)), WEEKS, kept);
        return kept;
    }

    private static void keepFirstOfEach(
            List<Instant> newestFirst, Function<Instant, ?> span, int spans, Set<Instant> kept) {
        Set<Object> seen = new HashSet<>();
        for (Instant at : newestFirst) {
            if (seen.size() < spans && seen.add(span.apply(at))) {
                kept.add(at);
            }
        }
    }

    private static LocalDate day(Instant at) {
        return LocalDate.ofInstant(at, ZoneOffset.UTC);
    }
}
