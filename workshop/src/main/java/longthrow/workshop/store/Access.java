package longthrow.workshop.store;

import java.nio.file.Path;
import java.time.Instant;
import java.time.temporal.ChronoUnit;

/**
 * The database of an open store: read by many, written by one after the other, and not at all where it is damaged.
 *
 * @param folder    where the store lies, a real path
 * @param atOpening what the check at the opening found
 */
record Access(Path folder, Setup setup, Database database, Health atOpening, Troubles troubles) {
    /** Name of the database in its folder. */
    static final String DATABASE = "longthrow.db";

    StoreLimits limits() {
        return setup.limits();
    }

    <T> T read(String doing, Database.Work<T> work) {
        try {
            return database.read(doing, work);
        } catch (StoreFault fault) {
            throw told(fault);
        }
    }

    <T> T write(String doing, Database.Work<T> work) {
        refuseIfReadOnly(doing);
        database.refuseIfGone(doing);
        try {
            return database.write(doing, work);
        } catch (StoreFault fault) {
            throw told(fault);
        }
    }

    private StoreFault told(StoreFault fault) {
        return fault.kind() == StoreFault.Kind.DAMAGED ? troubles.met(fault, now()) : fault;
    }

    Health health() {
        return troubles.with(atOpening, now());
    }

    void refuseIfReadOnly(String doing) {
        if (atOpening.readOnly()) {
            throw new StoreFault(
                    StoreFault.Kind.READ_ONLY,
                    "could not " + doing + ": the database is damaged and can only be read ("
                            + atOpening.damage().get(0) + ")",
                    folder.toString(),
                    "Save all builds as one file. " + Backups.howToPutBack(atOpening.newestGoodBackup()));
        }
    }

    /** To the millisecond, which is what a text of it needs. */
    Instant now() {
        return setup.clock().instant().truncatedTo(ChronoUnit.MILLIS);
    }
}
