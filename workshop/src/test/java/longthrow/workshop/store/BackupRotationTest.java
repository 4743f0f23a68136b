package longthrow.workshop.store;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;

class BackupRotationTest {
    /** Counted by hand on a calendar: 2026-03-01 is a Sunday. */
    @Test
    void ofSixtyDaysSevenDaysAndFourWeeksStay() {
        Instant first = Instant.parse("2026-01-01T12:00:00Z");
        Set<Instant> kept = new TreeSet<>();
        for (int day = 0; day < 60; day++) {
            kept.add(first.plus(Duration.ofDays(day)));
            kept = new TreeSet<>(BackupRotation.kept(kept));
        }
        assertThat(kept.stream().map(at -> at.toString().substring(5, 10)))
                .containsExactly(
                        "02-01", "02-08", "02-15", "02-22", // Sundays, the last of their weeks
                        "02-23", "02-24", "02-25", "02-26", "02-27", "02-28", "03-01");
    }

    @Test
    void daysWithoutABackupCostNone() {
        List<Instant> rare = List.of(
                Instant.parse("2020-05-05T00:00:00Z"),
                Instant.parse("2023-05-05T00:00:00Z"),
                Instant.parse("2026-05-05T00:00:00Z"));
        assertThat(BackupRotation.kept(rare)).isEqualTo(new HashSet<>(rare));
    }

    @Test
    void ofOneDayTheNewestOfEachOfTheLastSixHoursStays() {
        Set<Instant> made = new TreeSet<>();
        for (int quarter = 0; quarter < 4 * 24; quarter++) {
            made.add(Instant.parse("2026-05-05T00:00:00Z").plus(Duration.ofMinutes(15L * quarter)));
            made = new TreeSet<>(BackupRotation.kept(made));
        }
        assertThat(made.stream().map(at -> at.toString().substring(11, 16)))
                .containsExactly("18:45", "19:45", "20:45", "21:45", "22:45", "23:45");
        assertThat(BackupRotation.kept(List.of())).isEmpty();
    }

    /** Opened every hour for a hundred days: six hours, six days before today's, four weeks. */
    @Test
    void howeverOftenOneIsMadeTheirNumberIsBounded() {
        Set<Instant> kept = new TreeSet<>();
        for (int hour = 0; hour < 100 * 24; hour++) {
            kept.add(Instant.parse("2026-01-01T00:00:00Z").plus(Duration.ofHours(hour)));
            kept = new TreeSet<>(BackupRotation.kept(kept));
        }
        assertThat(kept).hasSize(BackupRotation.HOURS + BackupRotation.DAYS - 1 + BackupRotation.WEEKS);
    }
}
