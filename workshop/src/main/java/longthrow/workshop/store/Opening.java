package longthrow.workshop.store;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.sqlite.SQLiteDataSource;

/** From a folder to a store that is open: what is there is looked over before anything is written, and brought up to date after a backup. */
final class Opening {
    /** What SQLite keeps beside its file. */
    private static final List<String> BESIDE = List.of("-wal", "-shm");

    private static final String LOG_IS_GONE = "The program was cut off, and "
            + Access.DATABASE
            + "-wal, in which its last edits stood, is gone: those are missing. Put that file back if you have it and start"
            + " again. Without it, what is shown is what there is; the next start goes on from here";

    private Opening() {}

    static Store open(Path folder, Setup setup) {
        Path real = madeFolder(folder);
        ProcessLock lock = ProcessLock.take(real);
        Optional<Database> opened = Optional.empty();
        boolean whole = false;
        try {
            Backups backups = new Backups(real);
            Prepared prepared = prepared(real.resolve(Access.DATABASE), setup, backups);
            List<String> damage = prepared.damage();
            ContentFiles files = new ContentFiles(real);
            files.prepare();
            Database database = Database.open(prepared.file(), setup);
            opened = Optional.of(database);
            List<String> notes = new ArrayList<>(
                    damage.isEmpty() ? List.of() : List.of("The database is damaged; it can only be read."));
            if (damage.isEmpty()) {
                KeptFiles.finishForgetting(database, files);
                backUp(real.resolve(Access.DATABASE), setup, backups, notes);
            }
            notes.addAll(contentTroubles(database, files));
            Health health = new Health(
                    damage,
                    List.of(),
                    notes,
                    damage.isEmpty()
                            ? Optional.empty()
                            : backups.newestGood(setup.clock().instant()));
            Store store =
                    new Store(lock, new Access(real, setup, database, health, new Troubles(backups)), files, backups);
            whole = true;
            return store;
        } finally {
            if (!whole) {
                opened.ifPresent(Database::close);
                lock.close();
            }
        }
    }

    private static Path madeFolder(Path folder) {
        try {
            Disk.makeFolder(folder);
            Path real = folder.toRealPath();
            if (!Files.isWritable(real)) {
                throw Disk.notWritable("open the data: the folder is write-protected", real, null);
            }
            return real;
        } catch (IOException e) {
            throw Disk.fault("make or open the folder for the data", folder.toAbsolutePath(), e);
        }
    }

    /**
     * A database that can be opened.
     * @param file   the one there is, or what could be read of it
     * @param damage for which it can only be read; empty for none
     */
    private record Prepared(Path file, List<String> damage) {}

    /** Checks what is there and brings it up to date. */
    private static Prepared prepared(Path file, Setup setup, Backups backups) {
        SQLiteDataSource source = Database.source(file, setup);
        if (isGoneOrBare(file)) {
            refuseIfOneWasThere(file, setup, backups);
            Schema.migrate(source, file, setup);
            Disk.syncFolder(file.getParent());
            return new Prepared(file, List.of());
        }
        if (!Files.isWritable(file)) {
            throw Disk.notWritable("open the database: the file is write-protected", file, null);
        }
        byte[] log = log(file); // before SQLite looks, which lets go of what it cannot read
        boolean logIsGone = logIsGone(file);
        Found found;
        try {
            found = look(file, source, setup, backups);
        } catch (StoreFault fault) {
            if (fault.kind() != StoreFault.Kind.DAMAGED || fault.getCause() == null) {
                throw fault;
            }
            return salvaged(file, log, List.of(fault.what()), setup, backups)
                    .orElseThrow(() -> onlyNames(fault, Salvage.names(file, log)));
        }
        if (found.schema() > setup.newestSchema()
                && found.damage().isEmpty()) { // else the number itself may be damaged
            throw new StoreFault(
                    StoreFault.Kind.NEWER_SCHEMA,
                    "the data were written by a newer Longthrow (tables of version " + found.schema()
                            + "; this program knows up to " + setup.newestSchema() + "); nothing was touched",
                    file.toString(),
                    "Use the newer program. A backup from before its change is in the folder backups, named before-schema");
        }
        if (found.schema() == 0 && found.damage().isEmpty()) {
            refuseIfBackupsAreThere(file, setup, backups);
        }
        boolean today = found.schema() == setup.newestSchema();
        if (!found.damage().isEmpty()) {
            Optional<Prepared> salvaged = IntegrityCheck.isOfTextsAlone(found.damage())
                    ? Optional.empty()
                    : salvaged(file, log, found.damage(), setup, backups);
            if (salvaged.isEmpty() && !today) {
                throw damaged(file, found.damage().get(0), setup, backups, null);
            }
            return salvaged.orElseGet(() -> new Prepared(file, found.damage()));
        }
        if (!today) {
            if (found.schema() > 0) {
                backups.makeBeforeSchema(file, setup, setup.newestSchema());
            }
            Schema.migrate(source, file, setup);
        }
        clearSalvaged(file);
        return new Prepared(file, logIsGone && today ? List.of(LOG_IS_GONE) : List.of());
    }

    /** What can be read row by row of a database that is damaged; empty where nothing can. */
    private static Optional<Prepared> salvaged(
            Path file, byte[] log, List<String> damage, Setup setup, Backups backups) {
        List<Backups.Held> before = backups.newestGood(setup.clock().instant())
                .map(good -> Backups.builds(good.path()))
                .orElse(List.of());
        return Salvage.of(file, log, setup, before)
                .map(saved -> new Prepared(
                        saved.database(),
                        Stream.concat(saved.lost().stream(), damage.stream()).toList()));
    }

    /** The fault of a file of which nothing can be shown, with what is known of what was in it. */
    private static StoreFault onlyNames(StoreFault fault, List<String> names) {
        return names.isEmpty()
                ? fault
                : new StoreFault(
                        fault.kind(),
                        fault.what() + "; no edit in it can be read, and of its builds only their names are left: "
                                + String.join(", ", names),
                        fault.where(),
                        fault.mend(),
                        fault);
    }

    private static byte[] log(Path file) {
        Path log = file.resolveSibling(Access.DATABASE + "-wal");
        try {
            return Files.exists(log) ? Files.readAllBytes(log) : new byte[0];
        } catch (IOException e) {
            throw Disk.fault("read the log of the database", log, e);
        }
    }

    /** SQLite takes the index of its log away only after the log itself. */
    private static boolean logIsGone(Path file) {
        return Files.exists(file.resolveSibling(Access.DATABASE + "-shm"))
                && !Files.exists(file.resolveSibling(Access.DATABASE + "-wal"));
    }

    private static void clearSalvaged(Path file) {
        try {
            Salvage.clear(file);
        } catch (IOException stays) {
            // in nobody's way: the next one is written over it
        }
    }

    private record Found(int schema, List<String> damage) {}

    private static Found look(Path file, SQLiteDataSource source, Setup setup, Backups backups) {
        try {
            return Database.bare("look over the database", source, file, connection -> {
                if (Schema.isForeign(connection)) {
                    throw new StoreFault(
                            StoreFault.Kind.DAMAGED,
                            "this database holds tables that are not Longthrow's; nothing was touched",
                            file.toString(),
                            "Move the file elsewhere, or choose another folder with --data");
                }
                int schema = Schema.version(connection);
                return new Found(schema, IntegrityCheck.damage(connection, schema == setup.newestSchema()));
            });
        } catch (StoreFault e) {
            if (e.kind() == StoreFault.Kind.DAMAGED && e.getCause() != null) {
                throw damaged(file, e.what(), setup, backups, e);
            }
            throw e;
        }
    }

    /** An empty store in the place of a full one that was moved or deleted would look like a loss of everything. */
    private static void refuseIfOneWasThere(Path file, Setup setup, Backups backups) {
        Path log = file.resolveSibling(Access.DATABASE + "-wal");
        if (backups.any() || Files.exists(log)) {
            throw damaged(
                    file,
                    (Files.exists(file) ? "the database is an empty file of 0 bytes" : "the database is gone")
                            + ", though " + (backups.any() ? "its backups are" : "its log is") + " there",
                    setup,
                    backups,
                    null);
        }
    }

    private static void refuseIfBackupsAreThere(Path file, Setup setup, Backups backups) {
        if (backups.any()) {
            throw damaged(file, "the database holds no tables, though its backups are there", setup, backups, null);
        }
    }

    /** A file of no bytes is what a failed copy or repair of the disk leaves; to SQLite it is a new database. */
    private static boolean isGoneOrBare(Path file) {
        try {
            return !Files.exists(file) || Files.size(file) == 0;
        } catch (IOException e) {
            throw Disk.fault("look at the database", file, e);
        }
    }

    private static StoreFault damaged(Path file, String what, Setup setup, Backups backups, @Nullable Exception cause) {
        Optional<GoodBackup> good = backups.newestGood(setup.clock().instant());
        return new StoreFault(
                StoreFault.Kind.DAMAGED,
                what,
                file.toString(),
                good.isPresent()
                        ? Backups.howToPutBack(good)
                        : Backups.howToPutBack(good)
                                + ". Keep the file, it may be mended; to begin anew, move it and the folder backups to another place",
                cause);
    }

    private static void backUp(Path file, Setup setup, Backups backups, List<String> notes) {
        try {
            backups.makeIfDue(file, setup, Duration.ZERO);
        } catch (StoreFault e) {
            notes.add("A backup could not be made. " + e.getMessage());
        }
    }

    private static List<String> contentTroubles(Database database, ContentFiles files) {
        List<String> troubles = new ArrayList<>();
        try {
            for (ContentTable.Content content :
                    database.read("look over the files", handle -> new ContentTable(handle).all())) {
                files.trouble(content.sha256(), content.bytes())
                        .ifPresent(trouble -> troubles.add("A file that was attached or imported " + trouble));
            }
        } catch (StoreFault e) {
            troubles.add(e.getMessage()); // in a damaged database
        }
        return troubles;
    }

    static Path restore(Path folder, Path backup, Setup setup) {
        Path real = madeFolder(folder);
        ProcessLock lock = ProcessLock.take(real);
        try {
            List<String> damage = Backups.damage(backup);
            if (!damage.isEmpty()) {
                throw new StoreFault(
                        StoreFault.Kind.DAMAGED,
                        "this backup is not whole: " + damage.get(0),
                        backup.toString(),
                        "Take an older one; nothing was touched");
            }
            return Restoring.replace(
                    real, Access.DATABASE, BESIDE, backup, setup.clock().instant());
        } catch (IOException e) {
            throw Disk.fault("put the backup in place", real, e);
        } finally {
            lock.close();
        }
    }
}
