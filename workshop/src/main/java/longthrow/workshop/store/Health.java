package longthrow.workshop.store;

import java.util.List;
import java.util.Optional;

/**
 * What the check at the opening of a store found.
 *
 * @param damage           what is broken in the database; where there is any the store can only be read
 * @param notes            what the owner should know besides: a file that is gone, a backup that could not be made
 * @param newestGoodBackup the newest backup that was found whole; looked for only where there is damage
 */
public record Health(List<String> damage, List<String> notes, Optional<GoodBackup> newestGoodBackup) {
    /** Keeps its own copies. */
    public Health {
        damage = List.copyOf(damage);
        notes = List.copyOf(notes);
    }

    /** Whether the store can only be read. */
    public boolean readOnly() {
        return !damage.isEmpty();
    }
}
