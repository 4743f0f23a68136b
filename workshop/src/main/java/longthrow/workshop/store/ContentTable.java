package longthrow.workshop.store;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jdbi.v3.core.Handle;

/** Rows of contents and of what uses them, attachments and catalogues, inside a transaction of the caller. */
final class ContentTable {
    private final Handle handle;

    ContentTable(Handle handle) {
        this.handle = handle;
    }

    /** A content by hash and size. */
    record Content(String sha256, long bytes) {}

    List<Content> all() {
        return handle.createQuery("SELECT sha256, bytes FROM content ORDER BY sha256")
                .map((row, context) -> new Content(row.getString(1), row.getLong(2)))
                .list();
    }

    boolean has(String sha256) {
        return handle.createQuery("SELECT count(*) FROM content WHERE sha256 = :sha256")
                        .bind("sha256", sha256)
                        .mapTo(Integer.class)
                        .one()
                > 0;
    }

    void insert(String sha256, long bytes) {
        handle.createUpdate("INSERT INTO content (sha256, bytes) VALUES (:sha256, :bytes) ON CONFLICT DO NOTHING")
                .bind("sha256", sha256)
                .bind("bytes", bytes)
                .execute();
        handle.createUpdate("DELETE FROM forgotten_content WHERE sha256 = :sha256")
                .bind("sha256", sha256)
                .execute();
    }

    /** Attaches a content to a revision, and says whether it was not attached before. */
    boolean attach(BuildId id, int revision, String name, String mediaType, String sha256, Instant when) {
        return handle.createUpdate("INSERT INTO attachment (revision, name, media_type, sha256, attached)"
                                + " VALUES ((SELECT r.id FROM revision r JOIN build b ON b.id = r.build"
                                + " WHERE b.uuid = :uuid AND r.number = :number), :name, :type, :sha256, :when)"
                                + " ON CONFLICT (revision, name, sha256) DO NOTHING")
                        .bind("uuid", id.toString())
                        .bind("number", revision)
                        .bind("name", name)
                        .bind("type", mediaType)
                        .bind("sha256", sha256)
                        .bind("when", when.toString())
                        .execute()
                > 0;
    }

    /** Takes a content off a revision; of no consequence where it is not on it. */
    void detach(BuildId id, int revision, String name, String sha256) {
        handle.createUpdate("DELETE FROM attachment WHERE name = :name AND sha256 = :sha256"
                        + " AND revision = (SELECT r.id FROM revision r JOIN build b ON b.id = r.build"
                        + " WHERE b.uuid = :uuid AND r.number = :number)")
                .bind("uuid", id.toString())
                .bind("number", revision)
                .bind("name", name)
                .bind("sha256", sha256)
                .execute();
    }

    List<StoredFile> files(BuildId id) {
        return handle.createQuery("SELECT r.number, a.name, a.media_type, a.sha256, c.bytes, a.attached"
                        + " FROM attachment a JOIN content c ON c.sha256 = a.sha256"
                        + " JOIN revision r ON r.id = a.revision JOIN build b ON b.id = r.build"
                        + " WHERE b.uuid = :uuid ORDER BY r.number, a.id")
                .bind("uuid", id.toString())
                .map((row, context) -> new StoredFile(
                        id,
                        row.getInt(1),
                        row.getString(2),
                        row.getString(3),
                        row.getString(4),
                        row.getLong(5),
                        Instant.parse(row.getString(6))))
                .list();
    }

    void detachAll(BuildId id) {
        handle.createUpdate("DELETE FROM attachment WHERE revision IN (SELECT r.id FROM revision r"
                        + " JOIN build b ON b.id = r.build WHERE b.uuid = :uuid)")
                .bind("uuid", id.toString())
                .execute();
    }

    List<CatalogueEntry> catalogues() {
        return handle.createQuery("SELECT k.uuid, k.name, k.sha256, c.bytes, k.imported, k.active FROM catalogue k"
                        + " JOIN content c ON c.sha256 = k.sha256 ORDER BY k.id")
                .map((row, context) -> new CatalogueEntry(
                        UUID.fromString(row.getString(1)),
                        row.getString(2),
                        row.getString(3),
                        row.getLong(4),
                        Instant.parse(row.getString(5)),
                        row.getInt(6) == 1))
                .list();
    }

    Optional<CatalogueEntry> catalogue(UUID id) {
        return catalogues().stream().filter(entry -> entry.id().equals(id)).findFirst();
    }

    void insertCatalogue(UUID id, String name, String sha256, Instant imported, boolean active) {
        handle.createUpdate("INSERT INTO catalogue (uuid, name, sha256, imported, active)"
                        + " VALUES (:uuid, :name, :sha256, :imported, :active)")
                .bind("uuid", id.toString())
                .bind("name", name)
                .bind("sha256", sha256)
                .bind("imported", imported.toString())
                .bind("active", active ? 1 : 0)
                .execute();
    }

    void activate(UUID id, boolean active) {
        handle.createUpdate("UPDATE catalogue SET active = :active WHERE uuid = :uuid")
                .bind("active", active ? 1 : 0)
                .bind("uuid", id.toString())
                .execute();
    }

    void deleteCatalogue(UUID id) {
        handle.createUpdate("DELETE FROM catalogue WHERE uuid = :uuid")
                .bind("uuid", id.toString())
                .execute();
    }

    /** Takes contents nothing uses any more out of the list, and notes that their files are to be deleted. */
    void forgetUnused() {
        String unused = " WHERE sha256 NOT IN (SELECT sha256 FROM attachment)"
                + " AND sha256 NOT IN (SELECT sha256 FROM catalogue)";
        handle.execute("INSERT INTO forgotten_content (sha256) SELECT sha256 FROM content" + unused
                + " ON CONFLICT DO NOTHING");
        handle.execute("DELETE FROM content" + unused);
    }

    List<String> forgotten() {
        return handle.createQuery("SELECT sha256 FROM forgotten_content ORDER BY sha256")
                .mapTo(String.class)
                .list();
    }

    void forgottenIsDeleted(String sha256) {
        handle.createUpdate("DELETE FROM forgotten_content WHERE sha256 = :sha256")
                .bind("sha256", sha256)
                .execute();
    }
}
