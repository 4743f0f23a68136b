package longthrow.workshop.store;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.UUID;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.mapper.RowMapper;
import org.jspecify.annotations.Nullable;

/** Rows of builds and their revisions, inside a transaction of the caller. */
final class BuildTable {
    private static final String ENTRY =
            "SELECT b.uuid, r.number, r.saved, r.what, r.restores, r.undo, r.text_sha256%s FROM revision r"
                    + " JOIN build b ON b.id = r.build ";

    private static final RowMapper<RevisionEntry> AS_ENTRY = (row, context) -> entry(row);

    private final Handle handle;

    BuildTable(Handle handle) {
        this.handle = handle;
    }

    /** What an edit is known by when it is sent again. */
    record Known(RevisionEntry revision, String key) {}

    /** An edit on its way in. */
    record Edit(UUID key, int basedOn, OptionalInt restores, boolean undo, Instant saved, String what, String text) {}

    List<BuildEntry> list() {
        return handle.createQuery("SELECT b.uuid, b.name, b.created, b.archived, r.number, r.saved FROM build b"
                        + " JOIN revision r ON r.build = b.id"
                        + " AND r.number = (SELECT max(number) FROM revision WHERE build = b.id) ORDER BY b.id")
                .map((row, context) -> new BuildEntry(
                        id(row.getString(1)),
                        row.getString(2),
                        Instant.parse(row.getString(3)),
                        row.getInt(5),
                        Instant.parse(row.getString(6)),
                        instant(row.getString(4))))
                .list();
    }

    Optional<String> name(BuildId id) {
        return handle.createQuery("SELECT name FROM build WHERE uuid = :uuid")
                .bind("uuid", id.toString())
                .mapTo(String.class)
                .findOne();
    }

    void insert(BuildId id, String name, Instant created, Optional<Instant> archived) {
        handle.createUpdate("INSERT INTO build (uuid, name, created, archived)"
                        + " VALUES (:uuid, :name, :created, :archived)")
                .bind("uuid", id.toString())
                .bind("name", name)
                .bind("created", created.toString())
                .bind("archived", archived.map(Instant::toString).orElse(null))
                .execute();
    }

    /** Adds an edit behind what is there. */
    RevisionEntry append(BuildId id, Edit edit) {
        String sum = StoredText.sha256(edit.text().getBytes(java.nio.charset.StandardCharsets.UTF_8));
        int number = latestNumber(id) + 1;
        handle.createUpdate("INSERT INTO revision"
                        + " (build, number, client_key, based_on, restores, undo, saved, what, text, text_sha256) VALUES"
                        + " ((SELECT id FROM build WHERE uuid = :uuid),"
                        + " :number, :key, :basedOn, :restores, :undo, :saved, :what, :text, :sum)")
                .bind("uuid", id.toString())
                .bind("number", number)
                .bind("key", edit.key().toString())
                .bind("basedOn", edit.basedOn())
                .bind("restores", edit.restores().isPresent() ? edit.restores().getAsInt() : null)
                .bind("undo", edit.undo() ? 1 : 0)
                .bind("saved", edit.saved().toString())
                .bind("what", edit.what())
                .bind("text", edit.text())
                .bind("sum", sum)
                .execute();
        return new RevisionEntry(id, number, edit.saved(), edit.what(), edit.restores(), edit.undo(), sum);
    }

    /** 0 where there is no revision yet. */
    int latestNumber(BuildId id) {
        return handle.createQuery("SELECT coalesce(max(r.number), 0) FROM revision r"
                        + " JOIN build b ON b.id = r.build WHERE b.uuid = :uuid")
                .bind("uuid", id.toString())
                .mapTo(Integer.class)
                .one();
    }

    List<RevisionEntry> history(BuildId id) {
        return handle.createQuery(String.format(ENTRY, "") + "WHERE b.uuid = :uuid ORDER BY r.number")
                .bind("uuid", id.toString())
                .map(AS_ENTRY)
                .list();
    }

    Optional<Revision> at(BuildId id, int number) {
        return handle.createQuery(String.format(ENTRY, ", r.text") + "WHERE b.uuid = :uuid AND r.number = :number")
                .bind("uuid", id.toString())
                .bind("number", number)
                .map((row, context) -> new Revision(entry(row), row.getString(8)))
                .findOne();
    }

    Optional<RevisionEntry> byKey(UUID key) {
        return handle.createQuery(String.format(ENTRY, "") + "WHERE r.client_key = :key")
                .bind("key", key.toString())
                .map(AS_ENTRY)
                .findOne();
    }

    /** Which revision an edit was made on. */
    int basedOn(UUID key) {
        return handle.createQuery("SELECT based_on FROM revision WHERE client_key = :key")
                .bind("key", key.toString())
                .mapTo(Integer.class)
                .one();
    }

    /** Keys and hashes of a build's revisions, in order. */
    List<Known> keys(BuildId id) {
        return handle.createQuery(String.format(ENTRY, ", r.client_key") + "WHERE b.uuid = :uuid ORDER BY r.number")
                .bind("uuid", id.toString())
                .map((row, context) -> new Known(entry(row), row.getString(8)))
                .list();
    }

    void rename(BuildId id, String name) {
        handle.createUpdate("UPDATE build SET name = :name WHERE uuid = :uuid")
                .bind("name", name)
                .bind("uuid", id.toString())
                .execute();
    }

    void archive(BuildId id, Optional<Instant> when) {
        handle.createUpdate("UPDATE build SET archived = :when WHERE uuid = :uuid")
                .bind("when", when.map(Instant::toString).orElse(null))
                .bind("uuid", id.toString())
                .execute();
    }

    /** Takes out the build with its revisions; what is attached to them must be gone already. */
    void delete(BuildId id) {
        handle.createUpdate("DELETE FROM revision WHERE build = (SELECT id FROM build WHERE uuid = :uuid)")
                .bind("uuid", id.toString())
                .execute();
        handle.createUpdate("DELETE FROM build WHERE uuid = :uuid")
                .bind("uuid", id.toString())
                .execute();
    }

    private static RevisionEntry entry(ResultSet row) throws SQLException {
        int restores = row.getInt(5);
        return new RevisionEntry(
                id(row.getString(1)),
                row.getInt(2),
                Instant.parse(row.getString(3)),
                row.getString(4),
                restores == 0 ? OptionalInt.empty() : OptionalInt.of(restores), // NULL reads as 0, which is no number
                row.getInt(6) == 1,
                row.getString(7));
    }

    private static BuildId id(String uuid) {
        return new BuildId(UUID.fromString(uuid));
    }

    private static Optional<Instant> instant(@Nullable String text) {
        return Optional.ofNullable(text).map(Instant::parse);
    }
}
