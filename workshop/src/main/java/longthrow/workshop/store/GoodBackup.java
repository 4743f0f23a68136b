package longthrow.workshop.store;

import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Locale;

/**
 * A backup that was found whole.
 *
 * @param age how old it was when it was looked for
 */
public record GoodBackup(Path path, Instant made, Duration age, int builds, int revisions) {
    private static final DateTimeFormatter WHEN =
            DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm 'UTC'", Locale.ROOT).withZone(ZoneOffset.UTC);

    /** Up to twice a unit the smaller one is said: a day and a half is 36 hours. */
    private static final int TWICE = 2;

    /** Where it is, when it was made, what it holds, and a word of warning where it holds nothing or is old. */
    public String words() {
        String said = path + ", made " + WHEN.format(made) + " (" + ageWords() + ")";
        if (builds == 0) {
            return said + ". It is EMPTY: it holds no build, and putting it back brings none";
        }
        String holds = said + ", with " + many(builds, "build") + " and " + many(revisions, "revision");
        return isOld()
                ? holds + ". It is OLD: nothing that was kept since is in it"
                : holds + "; what was kept after that is not in it";
    }

    private boolean isOld() {
        return age.compareTo(Duration.ofDays(TWICE)) >= 0;
    }

    private String ageWords() {
        if (age.isNegative()) {
            return "later than the clock of this machine says now";
        }
        if (isOld()) {
            return many(age.toDays(), "day") + " ago";
        }
        return age.compareTo(Duration.ofHours(TWICE)) >= 0
                ? many(age.toHours(), "hour") + " ago"
                : many(age.toMinutes(), "minute") + " ago";
    }

    private static String many(long count, String what) {
        return count + " " + what + (count == 1 ? "" : "s");
    }
}
