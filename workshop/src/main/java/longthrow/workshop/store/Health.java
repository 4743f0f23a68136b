package longthrow.workshop.store;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * What the check at the opening of a store found, and what was met since.
 *
 * @param damage           what is broken in the database; where there is any the store can only be read
 * @param met              what is broken and was seen only since, by somebody who needed it; the rest is written as before
 * @param notes            what the owner should know besides: a file that is gone, a backup that could not be made
 * @param newestGoodBackup the newest backup that was found whole; looked for only where there is damage
 */
public record Health(List<String> damage, List<String> met, List<String> notes, Optional<GoodBackup> newestGoodBackup) {
    /** So many are named on every page; layout. */
    private static final int MOST_SAID = 3;

    /** Keeps its own copies. */
    public Health {
        damage = List.copyOf(damage);
        met = List.copyOf(met);
        notes = List.copyOf(notes);
    }

    /** What stands on top of every page of a damaged store; empty where nothing is damaged. */
    public String summary() {
        List<String> all = readOnly() ? damage : met;
        if (all.isEmpty()) {
            return "";
        }
        return (readOnly() ? "The data are damaged and can only be read: " : "Some of the data are damaged: ")
                + all.stream().limit(MOST_SAID).collect(Collectors.joining("; "))
                + (all.size() > MOST_SAID ? "; and " + (all.size() - MOST_SAID) + " more" : "")
                + ". Save all builds as one file. " + Backups.howToPutBack(newestGoodBackup);
    }

    /** Whether the store can only be read. */
    public boolean readOnly() {
        return !damage.isEmpty();
    }
}
