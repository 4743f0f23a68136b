package longthrow.workshop.store;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.UUID;
import org.jdbi.v3.core.Handle;
import org.sqlite.SQLiteDataSource;

/**
 * The store in one folder. What a method returned from is on the disk and stays there, whatever happens to the process; what
 * it threw at changed nothing. Every method may throw a {@link StoreFault}, on any thread.
 *
 * <p>A key of a save is made by the client, one for each edit and the same when it sends that edit again.
 */
public final class Store implements AutoCloseable {
    private static final String DATABASE = "longthrow.db";

    /** What SQLite keeps beside its file. */
    private static final List<String> BESIDE = List.of("-wal", "-shm");

    private final Path folder;
    private final Setup setup;
    private final ProcessLock lock;
    private final Database database;
    private final ContentFiles files;
    private final Backups backups;
    private final Health health;

    /** One at a time puts contents in their places and deletes them, so that neither overtakes the rows. */
    private final Object placing = new Object();

    private Store(
            Path folder,
            Setup setup,
            ProcessLock lock,
            Database database,
            ContentFiles files,
            Backups backups,
            Health health) {
        this.folder = folder;
        this.setup = setup;
        this.lock = lock;
        this.database = database;
        this.files = files;
        this.backups = backups;
        this.health = health;
    }

    /** Opens the store in a folder with the usual limits, or makes one there. */
    public static Store open(Path folder) {
        return open(folder, StoreLimits.DEFAULT);
    }

    /**
     * Opens the store in a folder, or makes one there; looks the database over, brings its tables up to date after a backup,
     * and makes the daily backup where that is due. {@link #health()} says what was found. A damaged database that can
     * still be read is opened for reading only.
     *
     * @throws StoreFault saying why it cannot be opened: not writable, open elsewhere, damaged beyond reading, written by a
     *     newer program, disk full
     */
    public static Store open(Path folder, StoreLimits limits) {
        return open(folder, Setup.of(limits));
    }

    static Store open(Path folder, Setup setup) {
        Path real = madeFolder(folder);
        ProcessLock lock = ProcessLock.take(real);
        Optional<Database> opened = Optional.empty();
        boolean whole = false;
        try {
            Backups backups = new Backups(real);
            List<String> damage = preparedDatabase(real.resolve(DATABASE), setup, backups);
            ContentFiles files = new ContentFiles(real);
            files.prepare();
            Database database = Database.open(real.resolve(DATABASE), setup);
            opened = Optional.of(database);
            List<String> notes = new ArrayList<>(
                    damage.isEmpty() ? List.of() : List.of("The database is damaged; it can only be read."));
            if (damage.isEmpty()) {
                finishForgetting(database, files);
                backUp(real.resolve(DATABASE), setup, backups, notes);
            }
            notes.addAll(contentTroubles(database, files));
            Health health = new Health(damage, notes, damage.isEmpty() ? Optional.empty() : backups.newestGood());
            Store store = new Store(real, setup, lock, database, files, backups, health);
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

    /** Checks what is there and brings it up to date. @return the damage, where it can be read in spite of it */
    private static List<String> preparedDatabase(Path file, Setup setup, Backups backups) {
        SQLiteDataSource source = Database.source(file, setup);
        if (!Files.exists(file)) {
            refuseIfOneWasThere(file, backups);
            Schema.migrate(source, file, setup);
            Disk.syncFolder(file.getParent());
            return List.of();
        }
        if (!Files.isWritable(file)) {
            throw Disk.notWritable("open the database: the file is write-protected", file, null);
        }
        Found found = look(file, source, setup, backups);
        if (found.schema() > setup.newestSchema()) {
            throw new StoreFault(
                    StoreFault.Kind.NEWER_SCHEMA,
                    "the data were written by a newer Longthrow (tables of version " + found.schema()
                            + "; this program knows up to " + setup.newestSchema() + "); nothing was touched",
                    file.toString(),
                    "Use the newer program. A backup from before its change is in the folder backups, named before-schema");
        }
        boolean today = found.schema() == setup.newestSchema();
        if (!found.damage().isEmpty()) {
            if (today) {
                return found.damage();
            }
            throw damaged(file, found.damage().get(0), backups, null);
        }
        if (!today) {
            if (found.schema() > 0) {
                backups.makeBeforeSchema(file, setup, setup.newestSchema());
            }
            Schema.migrate(source, file, setup);
        }
        return List.of();
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
                return new Found(
                        schema,
                        schema > setup.newestSchema()
                                ? List.of()
                                : IntegrityCheck.damage(connection, schema == setup.newestSchema()));
            });
        } catch (StoreFault e) {
            if (e.kind() == StoreFault.Kind.DAMAGED && e.getCause() != null) {
                throw damaged(file, e.what(), backups, e);
            }
            throw e;
        }
    }

    /** An empty store in the place of a full one that was moved or deleted would look like a loss of everything. */
    private static void refuseIfOneWasThere(Path file, Backups backups) {
        Path log = file.resolveSibling(DATABASE + "-wal");
        if (backups.any() || Files.exists(log)) {
            throw damaged(
                    file,
                    "the database is gone, though " + (backups.any() ? "its backups are" : "its log is") + " there",
                    backups,
                    null);
        }
    }

    private static StoreFault damaged(
            Path file, String what, Backups backups, @org.jspecify.annotations.Nullable Exception cause) {
        Optional<Path> good = backups.newestGood();
        return new StoreFault(
                StoreFault.Kind.DAMAGED,
                what,
                file.toString(),
                good.isPresent()
                        ? "The newest good backup is " + good.get() + ". Move " + DATABASE
                                + " and what begins with its name"
                                + " to another folder and keep it, then copy the backup here as " + DATABASE
                        : "There is no good backup. Keep the file, it may be mended; to begin anew, move it and the folder"
                                + " backups to another place",
                cause);
    }

    private static void backUp(Path file, Setup setup, Backups backups, List<String> notes) {
        try {
            backups.makeIfDue(file, setup);
        } catch (StoreFault e) {
            notes.add("The daily backup could not be made. " + e.getMessage());
        }
    }

    private static void finishForgetting(Database database, ContentFiles files) {
        List<String> left = database.read("look for forgotten files", handle -> new ContentTable(handle).forgotten());
        for (String sha256 : left) {
            files.delete(sha256);
            database.write("delete a forgotten file", handle -> {
                new ContentTable(handle).forgottenIsDeleted(sha256);
                return true;
            });
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

    /**
     * Puts a backup in the place of the database of a store that is not open. What was there is kept.
     *
     * @return the folder where it lies now
     */
    public static Path restore(Path folder, Path backup) {
        return restore(folder, backup, Setup.of(StoreLimits.DEFAULT));
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
                    real, DATABASE, BESIDE, backup, setup.clock().instant());
        } catch (IOException e) {
            throw Disk.fault("put the backup in place", real, e);
        } finally {
            lock.close();
        }
    }

    /** The folder, as a real path. */
    public Path folder() {
        return folder;
    }

    /** What the check at the opening found. */
    public Health health() {
        return health;
    }

    /** How much is taken. */
    public StoreLimits limits() {
        return setup.limits();
    }

    /** Makes the daily backup where it is due; for a program that stays open for days. @return the one made */
    public Optional<Path> backUpIfDue() {
        refuseIfReadOnly("make a backup");
        return backups.makeIfDue(folder.resolve(DATABASE), setup);
    }

    /** A new build with its first revision. The same key again gives the build it made the first time. */
    public BuildId create(String name, String text, UUID key) {
        String where = "new build";
        String plainName = StoredText.name(name, where);
        StoredText.build(text, limits().textBytes(), where);
        return write("create build '" + plainName + "'", handle -> {
            BuildTable table = new BuildTable(handle);
            Optional<RevisionEntry> known = table.byKey(key);
            if (known.isPresent()) {
                refuseIfOther(known.get(), known.get().number() == 1, text, key);
                return known.get().build();
            }
            BuildId id = BuildId.fresh();
            Instant now = now();
            table.insert(id, plainName, now, Optional.empty());
            table.append(id, new BuildTable.Edit(key, 0, OptionalInt.empty(), false, now, "created", text));
            return id;
        });
    }

    /** All builds, the archived too, in the order they came. */
    public List<BuildEntry> builds() {
        return database.read("list the builds", handle -> new BuildTable(handle).list());
    }

    /** The newest revision. */
    public Revision latest(BuildId id) {
        return database.read("read build " + id, handle -> latest(new BuildTable(handle), id));
    }

    /** A revision by its number. */
    public Revision at(BuildId id, int number) {
        return database.read("read build " + id, handle -> at(new BuildTable(handle), id, number));
    }

    /** All revisions, oldest first. */
    public List<RevisionEntry> history(BuildId id) {
        return database.read("read the history of build " + id, handle -> {
            BuildTable table = new BuildTable(handle);
            refuseIfUnknown(table, id);
            return table.history(id);
        });
    }

    /** The revision that an edit with this key became, if it came here before. */
    public Optional<RevisionEntry> savedBy(UUID key) {
        return database.read("look for an edit", handle -> new BuildTable(handle).byKey(key));
    }

    /**
     * An edit becomes the next revision, if the build still stands where the edit began. The same key again gives the first
     * result and adds nothing.
     *
     * @param basedOn number of the revision the edit was made on
     * @param what    what was done, one line, may be empty
     */
    public SaveResult save(BuildId id, int basedOn, String text, String what, UUID key) {
        String where = "build " + id;
        StoredText.build(text, limits().textBytes(), where);
        String plainWhat = StoredText.what(what, where);
        return write("save build " + id, handle -> {
            BuildTable table = new BuildTable(handle);
            refuseIfUnknown(table, id);
            Optional<RevisionEntry> known = table.byKey(key);
            if (known.isPresent()) {
                boolean alike = known.get().build().equals(id) && table.basedOn(key) == basedOn;
                refuseIfOther(known.get(), alike, text, key);
                return new SaveResult.Saved(known.get(), true);
            }
            return append(
                    table, id, new BuildTable.Edit(key, basedOn, OptionalInt.empty(), false, now(), plainWhat, text));
        });
    }

    /**
     * Takes back the last edit: a new revision with the text before it. Again takes back the one before that. What was taken
     * back stays in the history, from where {@link #bringBack} fetches it.
     *
     * @param basedOn number of the revision that is to be undone
     */
    public SaveResult undo(BuildId id, int basedOn, UUID key) {
        return write("undo in build " + id, handle -> {
            BuildTable table = new BuildTable(handle);
            refuseIfUnknown(table, id);
            Optional<RevisionEntry> known = table.byKey(key);
            if (known.isPresent()) {
                boolean alike = known.get().build().equals(id) && known.get().undo() && table.basedOn(key) == basedOn;
                refuseIfOther(known.get(), alike, key);
                return new SaveResult.Saved(known.get(), true);
            }
            int stands = stands(at(table, id, basedOn).entry());
            if (basedOn == table.latestNumber(id) && stands == 1) {
                throw new StoreFault(
                        StoreFault.Kind.REFUSED,
                        "there is nothing before revision 1 to go back to",
                        "build " + id,
                        "The history shows every revision; each can be brought back");
            }
            int target = stands == 1 ? 1 : stands(at(table, id, stands - 1).entry());
            return bringBack(table, id, target, true, basedOn, key);
        });
    }

    /** A new revision with the text of an older one; an edit like any other, which {@link #undo} takes back. */
    public SaveResult bringBack(BuildId id, int number, int basedOn, UUID key) {
        return write("bring back revision " + number + " of build " + id, handle -> {
            BuildTable table = new BuildTable(handle);
            refuseIfUnknown(table, id);
            Optional<RevisionEntry> known = table.byKey(key);
            if (known.isPresent()) {
                boolean alike = known.get().build().equals(id)
                        && !known.get().undo()
                        && known.get().restores().equals(OptionalInt.of(number))
                        && table.basedOn(key) == basedOn;
                refuseIfOther(known.get(), alike, key);
                return new SaveResult.Saved(known.get(), true);
            }
            return bringBack(table, id, number, false, basedOn, key);
        });
    }

    private SaveResult bringBack(BuildTable table, BuildId id, int target, boolean undo, int basedOn, UUID key) {
        String text = at(table, id, target).text();
        String what = (undo ? "undone: back to revision " : "back to revision ") + target;
        return append(table, id, new BuildTable.Edit(key, basedOn, OptionalInt.of(target), undo, now(), what, text));
    }

    /** Where in the row of edits a revision stands: at itself, or by undoing at an older one. */
    private static int stands(RevisionEntry revision) {
        return revision.undo() ? revision.restores().orElseThrow() : revision.number();
    }

    private SaveResult append(BuildTable table, BuildId id, BuildTable.Edit edit) {
        int latest = table.latestNumber(id);
        if (edit.basedOn() < 1 || edit.basedOn() > latest) {
            throw noRevision(id, edit.basedOn(), latest);
        }
        return edit.basedOn() == latest
                ? new SaveResult.Saved(table.append(id, edit), false)
                : new SaveResult.Outdated(latest(table, id));
    }

    /** What is different between two revisions, line by line. */
    public Comparison compare(BuildId id, int before, int after) {
        return database.read("compare revisions of build " + id, handle -> {
            BuildTable table = new BuildTable(handle);
            Revision one = at(table, id, before);
            Revision other = at(table, id, after);
            return new Comparison(one.entry(), other.entry(), LineDiff.of(one.text(), other.text()));
        });
    }

    /** Gives a build another name; its text stays. */
    public void rename(BuildId id, String name) {
        String plain = StoredText.name(name, "build " + id);
        change("rename build " + id, id, table -> table.rename(id, plain));
    }

    /** Puts a build away; it stays with all its revisions and files. */
    public void archive(BuildId id) {
        change("archive build " + id, id, table -> table.archive(id, Optional.of(now())));
    }

    /** Takes a build out again that was put away. */
    public void unarchive(BuildId id) {
        change("take build " + id + " out of the archive", id, table -> table.archive(id, Optional.empty()));
    }

    /**
     * Deletes a build for good, with its revisions and the files nothing else uses. Backups made before still hold its texts
     * until their time is over.
     */
    public void forget(BuildId id) {
        synchronized (placing) {
            write("forget build " + id, handle -> {
                BuildTable table = new BuildTable(handle);
                refuseIfUnknown(table, id);
                ContentTable contents = new ContentTable(handle);
                contents.detachAll(id);
                table.delete(id);
                contents.forgetUnused();
                return true;
            });
            finishForgetting(database, files);
        }
    }

    /**
     * Attaches a file to a revision. The same content is kept once; the same name with the same content on the same revision
     * again changes nothing.
     *
     * @param mediaType type and subtype, as image/jpeg
     * @param content   read to its end, not closed
     */
    public StoredFile attach(BuildId id, int revision, String name, String mediaType, InputStream content) {
        String where = "build " + id;
        String plainName = StoredText.name(name, where);
        String plainType = StoredText.mediaType(mediaType, where);
        refuseIfReadOnly("attach a file");
        at(id, revision);
        return keep(content, plainName, (handle, arrived) -> {
            at(new BuildTable(handle), id, revision);
            ContentTable contents = new ContentTable(handle);
            contents.insert(arrived.sha256(), arrived.bytes());
            contents.attach(id, revision, plainName, plainType, arrived.sha256(), now());
            return contents.files(id).stream()
                    .filter(file -> file.revision() == revision
                            && file.name().equals(plainName)
                            && file.sha256().equals(arrived.sha256()))
                    .findFirst()
                    .orElseThrow();
        });
    }

    /** Files attached to any revision of a build, in the order of the revisions. */
    public List<StoredFile> files(BuildId id) {
        return database.read("list the files of build " + id, handle -> {
            refuseIfUnknown(new BuildTable(handle), id);
            return new ContentTable(handle).files(id);
        });
    }

    /** The content of an attached file, held against its hash. */
    public byte[] content(StoredFile file) {
        return content(file.sha256(), file.name());
    }

    /** The content of a catalogue, held against its hash. */
    public byte[] content(CatalogueEntry catalogue) {
        return content(catalogue.sha256(), catalogue.name());
    }

    private byte[] content(String sha256, String name) {
        boolean known = database.read("read file '" + name + "'", handle -> new ContentTable(handle).has(sha256));
        if (!known) {
            throw new StoreFault(
                    StoreFault.Kind.NOT_FOUND,
                    "there is no such file, or not any more",
                    "file '" + name + "'",
                    "Look at the list again");
        }
        return files.read(sha256, name);
    }

    /** Keeps a catalogue as the file it is, active from the start. The same name with the same content again changes nothing. */
    public CatalogueEntry addCatalogue(String name, InputStream content) {
        String plain = StoredText.name(name, "catalogue");
        refuseIfReadOnly("keep a catalogue");
        return keep(content, plain, (handle, arrived) -> {
            ContentTable contents = new ContentTable(handle);
            Optional<CatalogueEntry> known = contents.catalogues().stream()
                    .filter(one -> one.name().equals(plain) && one.sha256().equals(arrived.sha256()))
                    .findFirst();
            if (known.isPresent()) {
                return known.get();
            }
            UUID id = UUID.randomUUID();
            contents.insert(arrived.sha256(), arrived.bytes());
            contents.insertCatalogue(id, plain, arrived.sha256(), now(), true);
            return contents.catalogue(id).orElseThrow();
        });
    }

    /** All catalogues, in the order they came. */
    public List<CatalogueEntry> catalogues() {
        return database.read("list the catalogues", handle -> new ContentTable(handle).catalogues());
    }

    /** Says whether parts of a catalogue are wanted. */
    public void activateCatalogue(UUID id, boolean active) {
        write("change catalogue " + id, handle -> {
            ContentTable contents = new ContentTable(handle);
            refuseIfUnknown(contents, id);
            contents.activate(id, active);
            return true;
        });
    }

    /** Deletes a catalogue for good. */
    public void forgetCatalogue(UUID id) {
        synchronized (placing) {
            write("forget catalogue " + id, handle -> {
                ContentTable contents = new ContentTable(handle);
                refuseIfUnknown(contents, id);
                contents.deleteCatalogue(id);
                contents.forgetUnused();
                return true;
            });
            finishForgetting(database, files);
        }
    }

    /** What was last kept under a key. */
    public Optional<String> setting(String key) {
        return database.read(
                "read setting '" + key + "'",
                handle -> handle.createQuery("SELECT value FROM setting WHERE key = :key")
                        .bind("key", key)
                        .mapTo(String.class)
                        .findOne());
    }

    /** Keeps a small value under a key. */
    public void setSetting(String key, String value) {
        String plain = StoredText.name(key, "setting");
        StoredText.build(value, limits().textBytes(), "setting '" + plain + "'");
        write(
                "keep setting '" + plain + "'",
                handle -> handle.createUpdate("INSERT INTO setting (key, value)"
                                + " VALUES (:key, :value) ON CONFLICT (key) DO UPDATE SET value = excluded.value")
                        .bind("key", plain)
                        .bind("value", value)
                        .execute());
    }

    /** Lets go of a setting; nothing happens where there is none. */
    public void removeSetting(String key) {
        write(
                "remove setting '" + key + "'",
                handle -> handle.createUpdate("DELETE FROM setting WHERE key = :key")
                        .bind("key", key)
                        .execute());
    }

    /** The build file as last saved, to take elsewhere. */
    public String exportBuild(BuildId id) {
        return latest(id).text();
    }

    /** Everything but the settings as one zip with a manifest: builds with all revisions and files, and catalogues. */
    public void exportAll(OutputStream out) {
        database.read("export everything", handle -> {
            ArchiveWriter.write(handle, files, now(), out);
            return true;
        });
    }

    /**
     * Takes in what {@link #exportAll} gave, all of it or nothing. A build that is here already keeps its name and everything
     * it has; what the archive knows besides is added.
     *
     * @throws StoreFault saying what is wrong with the archive
     */
    public ImportReport importAll(InputStream in) {
        refuseIfReadOnly("import an archive");
        try (ArchiveReader archive = ArchiveReader.read(in, limits(), files, database)) {
            synchronized (placing) {
                List<String> placed = new ArrayList<>();
                boolean done = false;
                try {
                    for (ContentFiles.Arrived arrived : archive.contents()) {
                        if (files.place(arrived)) {
                            placed.add(arrived.sha256());
                        }
                    }
                    ImportReport report = write("import an archive", handle -> archive.into(handle));
                    done = true;
                    return report;
                } finally {
                    if (!done) {
                        placed.forEach(this::takeAwayUnlessKnown);
                    }
                }
            }
        }
    }

    @Override
    public void close() {
        database.close();
        lock.close();
    }

    /** Rows that name a content which has just been put in its place. */
    @FunctionalInterface
    private interface Naming<T> {
        T rows(Handle handle, ContentFiles.Arrived arrived);
    }

    private <T> T keep(InputStream content, String name, Naming<T> naming) {
        try (ContentFiles.Arrived arrived = files.receive(content, limits().fileBytes(), name)) {
            synchronized (placing) {
                boolean fresh = files.place(arrived);
                boolean done = false;
                try {
                    T kept = write("keep file '" + name + "'", handle -> naming.rows(handle, arrived));
                    done = true;
                    return kept;
                } finally {
                    if (!done && fresh) {
                        takeAwayUnlessKnown(arrived.sha256());
                    }
                }
            }
        }
    }

    /** After a failure: a content without rows is no use; where that cannot be told it stays. */
    private void takeAwayUnlessKnown(String sha256) {
        try {
            if (!database.read("look for a file", handle -> new ContentTable(handle).has(sha256))) {
                files.delete(sha256);
            }
        } catch (StoreFault unknown) {
            // the first failure is the one to tell
        }
    }

    private <T> T write(String doing, Database.Work<T> work) {
        refuseIfReadOnly(doing);
        return database.write(doing, work);
    }

    private void change(String doing, BuildId id, java.util.function.Consumer<BuildTable> work) {
        write(doing, handle -> {
            BuildTable table = new BuildTable(handle);
            refuseIfUnknown(table, id);
            work.accept(table);
            return true;
        });
    }

    private void refuseIfReadOnly(String doing) {
        if (health.readOnly()) {
            throw new StoreFault(
                    StoreFault.Kind.READ_ONLY,
                    "could not " + doing + ": the database is damaged and can only be read ("
                            + health.damage().get(0) + ")",
                    folder.toString(),
                    health.newestGoodBackup()
                            .map(path -> "Export what is there, then put the newest good backup in its place: " + path)
                            .orElse("Export what is there; there is no good backup"));
        }
    }

    private static void refuseIfUnknown(BuildTable table, BuildId id) {
        if (table.name(id).isEmpty()) {
            throw new StoreFault(
                    StoreFault.Kind.NOT_FOUND,
                    "there is no such build, or not any more",
                    "build " + id,
                    "Look at the list of builds");
        }
    }

    private static void refuseIfUnknown(ContentTable contents, UUID id) {
        if (contents.catalogue(id).isEmpty()) {
            throw new StoreFault(
                    StoreFault.Kind.NOT_FOUND,
                    "there is no such catalogue, or not any more",
                    "catalogue " + id,
                    "Look at the list of catalogues");
        }
    }

    private static void refuseIfOther(RevisionEntry known, boolean alike, String text, UUID key) {
        String sum = StoredText.sha256(text.getBytes(StandardCharsets.UTF_8));
        refuseIfOther(known, alike && known.sha256().equals(sum), key);
    }

    /** A key that comes with another edit would make that edit vanish. */
    private static void refuseIfOther(RevisionEntry known, boolean alike, UUID key) {
        if (!alike) {
            throw new StoreFault(
                    StoreFault.Kind.REFUSED,
                    "key " + key + " came before with another edit, which is revision " + known.number() + " of build "
                            + known.build() + "; this one was not saved",
                    "build " + known.build(),
                    "Send it with a key of its own");
        }
    }

    private static Revision latest(BuildTable table, BuildId id) {
        refuseIfUnknown(table, id);
        return at(table, id, table.latestNumber(id));
    }

    static Revision at(BuildTable table, BuildId id, int number) {
        refuseIfUnknown(table, id);
        Revision revision = table.at(id, number).orElseThrow(() -> noRevision(id, number, table.latestNumber(id)));
        String sum = StoredText.sha256(revision.text().getBytes(StandardCharsets.UTF_8));
        if (!sum.equals(revision.entry().sha256())) {
            throw new StoreFault(
                    StoreFault.Kind.DAMAGED,
                    "revision " + number + " is not what was saved: its check sum differs",
                    "build " + id,
                    "Other revisions may be whole; a backup holds this one as it was");
        }
        return revision;
    }

    private static StoreFault noRevision(BuildId id, int number, int latest) {
        return new StoreFault(
                StoreFault.Kind.NOT_FOUND,
                "there is no revision " + number + "; there are 1 to " + latest,
                "build " + id,
                "Look at its history");
    }

    /** To the millisecond, which is what a text of it needs. */
    private Instant now() {
        return setup.clock().instant().truncatedTo(ChronoUnit.MILLIS);
    }
}
