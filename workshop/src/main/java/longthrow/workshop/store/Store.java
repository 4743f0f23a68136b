package longthrow.workshop.store;

import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.UUID;

/**
 * The store in one folder. What a method returned from is on the disk and stays there, whatever happens to the process; what
 * it threw at changed nothing. Every method may throw a {@link StoreFault}, on any thread.
 *
 * <p>A key of a save is made by the client, one for each edit and the same when it sends that edit again.
 */
public final class Store implements AutoCloseable {
    private final ProcessLock lock;
    private final Access access;
    private final ContentFiles files;
    private final Backups backups;
    private final Revisions revisions;
    private final KeptFiles kept;

    Store(ProcessLock lock, Access access, ContentFiles files, Backups backups) {
        this.lock = lock;
        this.access = access;
        this.files = files;
        this.backups = backups;
        this.revisions = new Revisions(access);
        this.kept = new KeptFiles(access, files);
    }

    /** Opens the store in a folder with the usual limits, or makes one there. */
    public static Store open(Path folder) {
        return open(folder, StoreLimits.DEFAULT);
    }

    /**
     * Opens the store in a folder, or makes one there; looks the database over, brings its tables up to date after a backup,
     * and makes a backup where something was kept since the last. {@link #health()} says what was found. A damaged database that can
     * still be read is opened for reading only.
     *
     * @throws StoreFault saying why it cannot be opened: not writable, open elsewhere, damaged beyond reading, written by a
     *     newer program, disk full
     */
    public static Store open(Path folder, StoreLimits limits) {
        return open(folder, Setup.of(limits));
    }

    static Store open(Path folder, Setup setup) {
        return Opening.open(folder, setup);
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
        return Opening.restore(folder, backup, setup);
    }

    /** The folder, as a real path. */
    public Path folder() {
        return access.folder();
    }

    /** What the check at the opening found, and what was met since. */
    public Health health() {
        return access.health();
    }

    /** How much is taken. */
    public StoreLimits limits() {
        return access.limits();
    }

    /** Makes a backup where something was kept since one that is an hour old, or is a day old. @return the one made */
    public synchronized Optional<Path> backUpIfDue() {
        access.refuseIfReadOnly("make a backup");
        access.database().refuseIfGone("make a backup");
        try {
            Optional<Path> made =
                    backups.makeIfDue(access.folder().resolve(Access.DATABASE), access.setup(), Backups.HOURLY);
            access.troubles().backup("");
            return made;
        } catch (StoreFault fault) {
            access.troubles().backup("A backup could not be made. " + fault.getMessage());
            throw fault;
        }
    }

    /** A new build with its first revision. The same key again gives the build it made the first time. */
    public BuildId create(String name, String text, UUID key) {
        return revisions.create(name, text, key);
    }

    /** All builds, the archived too, in the order they came. */
    public List<BuildEntry> builds() {
        return revisions.builds();
    }

    /** The newest revision. */
    public Revision latest(BuildId id) {
        return revisions.latest(id);
    }

    /** A revision by its number. */
    public Revision at(BuildId id, int number) {
        return revisions.at(id, number);
    }

    /** All revisions, oldest first. */
    public List<RevisionEntry> history(BuildId id) {
        return revisions.history(id);
    }

    /**
     * Holds every revision against its check sum, not only the newest of each build as the opening does; what is not as it was saved is said from then
     * on as damage that was met. Ends early when its thread is interrupted.
     * @return how many revisions were looked at
     */
    public int lookOverRevisions() {
        return revisions.lookOver();
    }

    /** Numbers of the revisions that cannot be read as they were saved. */
    public List<Integer> damaged(BuildId id) {
        return revisions.damaged(id);
    }

    /** The revision that an edit with this key became, if it came here before. */
    public Optional<RevisionEntry> savedBy(UUID key) {
        return revisions.savedBy(key);
    }

    /**
     * An edit becomes the next revision, if the build still stands where the edit began. The same key again gives the first
     * result and adds nothing.
     *
     * @param basedOn number of the revision the edit was made on
     * @param what    what was done, one line, may be empty
     */
    public SaveResult save(BuildId id, int basedOn, String text, String what, UUID key) {
        return revisions.save(id, basedOn, text, what, key);
    }

    /**
     * Takes back the last edit: a new revision with the text before it. Again takes back the one before that. What was taken
     * back stays in the history, from where {@link #bringBack} fetches it.
     *
     * @param basedOn number of the revision that is to be undone
     */
    public SaveResult undo(BuildId id, int basedOn, UUID key) {
        return revisions.undo(id, basedOn, key);
    }

    /** A new revision with the text of an older one; an edit like any other, which {@link #undo} takes back. */
    public SaveResult bringBack(BuildId id, int number, int basedOn, UUID key) {
        return revisions.bringBack(id, number, basedOn, key);
    }

    /** What is different between two revisions, line by line. */
    public Comparison compare(BuildId id, int before, int after) {
        return revisions.compare(id, before, after);
    }

    /** Gives a build another name; its text stays. */
    public void rename(BuildId id, String name) {
        revisions.rename(id, name);
    }

    /** Puts a build away; it stays with all its revisions and files. */
    public void archive(BuildId id) {
        revisions.archive(id);
    }

    /** Takes a build out again that was put away. */
    public void unarchive(BuildId id) {
        revisions.unarchive(id);
    }

    /**
     * Deletes a build for good, with its revisions and the files nothing else uses. Backups made before still hold its texts
     * until their time is over.
     */
    public void forget(BuildId id) {
        kept.forget(id);
    }

    /**
     * Attaches a file to a revision. The same content is kept once; the same name with the same content on the same revision
     * again changes nothing, unless another of that name came since: then it stands last again.
     *
     * @param mediaType type and subtype, as image/jpeg
     * @param content   read to its end, not closed
     */
    public StoredFile attach(BuildId id, int revision, String name, String mediaType, InputStream content) {
        return kept.attach(id, revision, name, mediaType, content);
    }

    /** Files attached to any revision of a build, in the order of the revisions. */
    public List<StoredFile> files(BuildId id) {
        return kept.files(id);
    }

    /** The content of an attached file, held against its hash. */
    public byte[] content(StoredFile file) {
        return kept.content(file);
    }

    /** The content of a catalogue, held against its hash. */
    public byte[] content(CatalogueEntry catalogue) {
        return kept.content(catalogue);
    }

    /** Keeps a catalogue as the file it is, active from the start. The same name with the same content again changes nothing. */
    public CatalogueEntry addCatalogue(String name, InputStream content) {
        return kept.addCatalogue(name, content);
    }

    /** All catalogues, in the order they came. */
    public List<CatalogueEntry> catalogues() {
        return kept.catalogues();
    }

    /** Says whether parts of a catalogue are wanted. */
    public void activateCatalogue(UUID id, boolean active) {
        kept.activateCatalogue(id, active);
    }

    /** Deletes a catalogue for good. */
    public void forgetCatalogue(UUID id) {
        kept.forgetCatalogue(id);
    }

    /** What was last kept under a key. */
    public Optional<String> setting(String key) {
        return access.read(
                "read setting '" + key + "'",
                handle -> handle.createQuery("SELECT value FROM setting WHERE key = :key")
                        .bind("key", key)
                        .mapTo(String.class)
                        .findOne());
    }

    /** What was last kept under each key that begins so, in the order of the keys. */
    public Map<String, String> settings(String beginning) {
        return access.read("read settings '" + beginning + "…'", handle -> {
            Map<String, String> found = new TreeMap<>();
            handle.createQuery("SELECT key, value FROM setting WHERE substr(key, 1, length(:beginning)) = :beginning")
                    .bind("beginning", beginning)
                    .map((row, context) -> Map.entry(row.getString(1), row.getString(2)))
                    .forEach(one -> found.put(one.getKey(), one.getValue()));
            return found;
        });
    }

    /** Keeps a small value under a key. */
    public void setSetting(String key, String value) {
        String plain = StoredText.name(key, "setting");
        StoredText.build(value, access.limits().textBytes(), "setting '" + plain + "'");
        access.write(
                "keep setting '" + plain + "'",
                handle -> handle.createUpdate("INSERT INTO setting (key, value)"
                                + " VALUES (:key, :value) ON CONFLICT (key) DO UPDATE SET value = excluded.value")
                        .bind("key", plain)
                        .bind("value", value)
                        .execute());
    }

    /** Lets go of a setting; nothing happens where there is none. */
    public void removeSetting(String key) {
        access.write(
                "remove setting '" + key + "'",
                handle -> handle.createUpdate("DELETE FROM setting WHERE key = :key")
                        .bind("key", key)
                        .execute());
    }

    /** The build file as last saved, to take elsewhere. */
    public String exportBuild(BuildId id) {
        return latest(id).text();
    }

    /**
     * Everything but the settings as one zip with a manifest: builds with all revisions and files, and catalogues. What cannot
     * be read as it was saved is left out, and both the manifest and the answer name it.
     */
    public ExportReport exportAll(OutputStream out) {
        return access.read("export everything", handle -> ArchiveWriter.write(handle, files, access.now(), out));
    }

    /**
     * Takes in what {@link #exportAll} gave, all of it or nothing. A build that is here already keeps its name and everything
     * it has; what the archive knows besides is added.
     *
     * @throws StoreFault saying what is wrong with the archive
     */
    public ImportReport importAll(InputStream in) {
        return kept.importAll(in);
    }

    /** Makes a backup where one is due, and lets go of everything. */
    @Override
    public void close() {
        try {
            if (!access.health().readOnly()) {
                backUpIfDue();
            }
        } catch (StoreFault untold) {
            // nobody is there any more to hear it; the next start makes it, or says why it cannot
        } finally {
            access.database().close();
            lock.close();
        }
    }
}
