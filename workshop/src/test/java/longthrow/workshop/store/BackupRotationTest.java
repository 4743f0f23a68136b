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
    void ofOneDayTheNewestStays() {
        Instant morning = Instant.parse("2026-05-05T06:00:00Z");
        Instant evening = Instant.parse("2026-05-05T23:59:59Z");
        assertThat(BackupRotation.kept(List.of(morning, evening))).containsExactly(evening);
        assertThat(BackupRotation.kept(List.of())).isEmpty();
    }
}
