package longthrow.workshop.store;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** Damage that the check at the opening did not see and somebody met since, and the backup that could not be made. */
final class Troubles {
    /** To look a backup over takes as long as the check at the opening; so long what was found is good enough. */
    private static final Duration LOOK_AGAIN = Duration.ofMinutes(10);

    private final Backups backups;
    private final Set<String> met = new LinkedHashSet<>();
    private Optional<GoodBackup> good = Optional.empty();
    private @Nullable Instant looked;
    private String backupTrouble = "";

    Troubles(Backups backups) {
        this.backups = backups;
    }

    /** The fault with what helps: which backup there is, how old, with how much in it. */
    synchronized StoreFault met(StoreFault fault, Instant now) {
        met.add(fault.what());
        return fault.withMend(fault.mend() + ". " + Backups.howToPutBack(newestGood(now)));
    }

    synchronized void backup(String trouble) {
        backupTrouble = trouble;
    }

    /** What was found at the opening, with what came since. */
    synchronized Health with(Health atOpening, Instant now) {
        List<String> notes = new ArrayList<>(atOpening.notes());
        if (!backupTrouble.isEmpty()) {
            notes.add(backupTrouble);
        }
        return atOpening.readOnly() || met.isEmpty()
                ? new Health(atOpening.damage(), List.of(), notes, atOpening.newestGoodBackup())
                : new Health(List.of(), List.copyOf(met), notes, newestGood(now));
    }

    private Optional<GoodBackup> newestGood(Instant now) {
        if (looked == null || Duration.between(looked, now).compareTo(LOOK_AGAIN) >= 0) {
            good = backups.newestGood(now);
            looked = now;
        }
        return good;
    }
}
