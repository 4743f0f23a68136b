package longthrow.workshop.store;

import java.nio.file.Path;
import java.time.Instant;
import java.time.temporal.ChronoUnit;

/**
 * The database of an open store: read by many, written by one after the other, and not at all where it is damaged.
 *
 * @param folder where the store lies, a real path
 */
record Access(Path folder, Setup setup, Database database, Health health) {
    /** Name of the database in its folder. */
    static final String DATABASE = "longthrow.db";

    StoreLimits limits() {
        return setup.limits();
    }

    <T> T read(String doing, Database.Work<T> work) {
        return database.read(doing, work);
    }

    <T> T write(String doing, Database.Work<T> work) {
        refuseIfReadOnly(doing);
        return database.write(doing, work);
    }

    void refuseIfReadOnly(String doing) {
        if (health.readOnly()) {
            throw new StoreFault(
                    StoreFault.Kind.READ_ONLY,
                    "could not " + doing + ": the database is damaged and can only be read ("
                            + health.damage().get(0) + ")",
                    folder.toString(),
                    health.newestGoodBackup()
                            .map(good -> "Export what is there, then put the newest good backup in its place: "
                                    + good.words())
                            .orElse("Export what is there; there is no good backup"));
        }
    }

    /** To the millisecond, which is what a text of it needs. */
    Instant now() {
        return setup.clock().instant().truncatedTo(ChronoUnit.MILLIS);
    }
}
