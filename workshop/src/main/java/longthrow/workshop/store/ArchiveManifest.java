package longthrow.workshop.store;

import java.time.Instant;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.UUID;
import org.jdbi.v3.core.Handle;
import org.jspecify.annotations.Nullable;

/**
 * What an archive says it holds: {@code manifest.json}, with the SHA-256 of every other entry. JSON is written and read by
 * the database, which has it built in.
 *
 * @param contents hash of every attached file and catalogue, with its bytes
 */
record ArchiveManifest(
        List<Build> builds, List<Catalogue> catalogues, Map<String, Long> contents, List<String> leftOut) {
    static final String NAME = "manifest.json";
    static final String FORMAT = "longthrow-archive";

    /** Goes up when an older program could no longer read what is written. */
    static final int VERSION = 1;

    /** A build with its revisions, from number 1 without gaps. */
    record Build(BuildId id, String name, Instant created, Optional<Instant> archived, List<Revision> revisions) {}

    /** @param entry name of the entry that holds its text */
    record Revision(
            int number,
            UUID key,
            int basedOn,
            OptionalInt restores,
            boolean undo,
            Instant saved,
            String what,
            String entry,
            String sha256,
            List<Attached> files) {}

    /** A file attached to a revision. */
    record Attached(String name, String mediaType, String sha256, Instant attached) {}

    /** A catalogue. */
    record Catalogue(UUID id, String name, String sha256, Instant imported, boolean active) {}

    static String textEntry(BuildId id, int number) {
        return "builds/" + id + "/" + number + ".yaml";
    }

    static String contentEntry(String sha256) {
        return "files/" + sha256;
    }

    /**
     * What goes out. A revision has its place there for a number: in the archive numbers have no gaps. Read by the tables where
     * that is possible: an index may be what is broken.
     */
    private static final String GOING = """
            WITH gone AS MATERIALIZED (
              SELECT b.id AS build, l.value ->> 'number' AS number
                FROM json_each(:texts) l JOIN build b ON b.uuid = l.value ->> 'build'),
            going AS (
              SELECT r.*,
                r.number - (SELECT count(*) FROM gone g WHERE g.build = r.build AND g.number < r.number) AS place,
                r.based_on - (SELECT count(*) FROM gone g WHERE g.build = r.build AND g.number <= r.based_on) AS base,
                CASE WHEN EXISTS (SELECT 1 FROM gone g WHERE g.build = r.build AND g.number = r.restores) THEN NULL
                  ELSE r.restores - (SELECT count(*) FROM gone g WHERE g.build = r.build AND g.number < r.restores)
                  END AS back
              FROM revision r
              WHERE NOT EXISTS (SELECT 1 FROM gone g WHERE g.build = r.build AND g.number = r.number)),
            listed AS (
              SELECT * FROM catalogue NOT INDEXED WHERE sha256 NOT IN (SELECT value FROM json_each(:files))),
            used AS (
              SELECT * FROM content WHERE sha256 NOT IN (SELECT value FROM json_each(:files))
                AND sha256 IN (SELECT a.sha256 FROM attachment a NOT INDEXED JOIN going r ON r.id = a.revision
                  UNION SELECT sha256 FROM listed))
            """;

    /** The manifest of everything in the store that goes out, and what does not. */
    static String of(Handle handle, Instant now, LeftOut left) {
        return handle.createQuery(GOING + """
                        SELECT json_pretty(json_object(
                          'format', :format, 'version', :version, 'made', :now,
                          'leftOut', json(:why),
                          'builds', json((SELECT json_group_array(json_object(
                              'id', b.uuid, 'name', b.name, 'created', b.created, 'archived', b.archived,
                              'revisions', json((SELECT json_group_array(json_object(
                                  'number', r.place, 'key', r.client_key, 'basedOn', r.base,
                                  'restores', r.back, 'undo', CASE WHEN r.back IS NULL THEN 0 ELSE r.undo END,
                                  'saved', r.saved, 'what', r.what,
                                  'entry', 'builds/' || b.uuid || '/' || r.place || '.yaml',
                                  'sha256', r.text_sha256,
                                  'files', json((SELECT json_group_array(json_object(
                                      'name', a.name, 'mediaType', a.media_type, 'sha256', a.sha256,
                                      'attached', a.attached) ORDER BY a.id)
                                    FROM attachment a WHERE a.revision = r.id
                                      AND a.sha256 NOT IN (SELECT value FROM json_each(:files)))))
                                ORDER BY r.number) FROM going r WHERE r.build = b.id)))
                            ORDER BY b.id) FROM build b WHERE EXISTS (SELECT 1 FROM going r WHERE r.build = b.id))),
                          'catalogues', json((SELECT json_group_array(json_object(
                              'id', k.uuid, 'name', k.name, 'sha256', k.sha256, 'imported', k.imported,
                              'active', k.active) ORDER BY k.id) FROM listed k)),
                          'contents', json((SELECT json_group_array(json_object(
                              'entry', 'files/' || c.sha256, 'sha256', c.sha256, 'bytes', c.bytes)
                            ORDER BY c.sha256) FROM used c))))
                        """)
                .bind("format", FORMAT)
                .bind("version", VERSION)
                .bind("now", now.toString())
                .bind("why", whyAsJson(handle, left))
                .bind("texts", left.textsAsJson())
                .bind("files", left.contentsAsJson())
                .mapTo(String.class)
                .one();
    }

    /** Hashes of the attached files and catalogues that go out. */
    static List<String> contents(Handle handle, LeftOut left) {
        return handle.createQuery(GOING + "SELECT sha256 FROM used ORDER BY sha256")
                .bind("texts", left.textsAsJson())
                .bind("files", left.contentsAsJson())
                .mapTo(String.class)
                .list();
    }

    private static String whyAsJson(Handle handle, LeftOut left) {
        String array = "[]";
        for (String why : left.why()) {
            array = handle.createQuery("SELECT json_insert(:array, '$[#]', :why)")
                    .bind("array", array)
                    .bind("why", why)
                    .mapTo(String.class)
                    .one();
        }
        return array;
    }

    /** What a manifest says, each figure looked at. */
    static ArchiveManifest read(Handle handle, String json) {
        Reader reader = new Reader(handle, json);
        reader.checkFormat();
        Map<String, Long> contents = reader.contents();
        ArchiveManifest manifest =
                new ArchiveManifest(reader.builds(), reader.catalogues(), contents, reader.leftOut());
        manifest.checkKeys();
        return manifest;
    }

    /** Names of all entries an archive with this manifest has, each with the hash of what is in it. */
    Map<String, String> entries() {
        Map<String, String> entries = new LinkedHashMap<>();
        for (Build build : builds) {
            for (Revision revision : build.revisions()) {
                entries.put(revision.entry(), revision.sha256());
            }
        }
        contents.keySet().forEach(sha256 -> entries.put(contentEntry(sha256), sha256));
        return entries;
    }

    private void checkKeys() {
        Set<Object> seen = new HashSet<>();
        for (Build build : builds) {
            if (!seen.add(build.id())) {
                throw bad("build " + build.id() + " stands there twice");
            }
            for (Revision revision : build.revisions()) {
                if (!seen.add(revision.key())) {
                    throw bad("key " + revision.key() + " belongs to two revisions");
                }
            }
        }
        for (Catalogue catalogue : catalogues) {
            if (!seen.add(catalogue.id())) {
                throw bad("catalogue " + catalogue.id() + " stands there twice");
            }
        }
        Set<String> used = new HashSet<>();
        builds.forEach(build ->
                build.revisions().forEach(revision -> revision.files().forEach(file -> used.add(file.sha256()))));
        catalogues.forEach(catalogue -> used.add(catalogue.sha256()));
        if (!used.equals(contents.keySet())) {
            throw bad("the files it lists under contents are not those its revisions and catalogues name");
        }
    }

    /** Words of another's file, for a page. */
    private static String shownInALine(String words) {
        String plain = words.codePoints()
                .map(c -> Character.isISOControl(c) ? ' ' : c)
                .limit(StoredText.WHAT_LENGTH)
                .collect(StringBuilder::new, StringBuilder::appendCodePoint, StringBuilder::append)
                .toString();
        return plain.strip();
    }

    static StoreFault bad(String what) {
        return new StoreFault(
                StoreFault.Kind.BAD_ARCHIVE,
                what,
                "archive, " + NAME,
                "Nothing was imported. Export anew where the archive comes from, and do not edit it in between");
    }

    /** Row after row of the manifest, taken apart by the database. */
    private static final class Reader {
        private final Handle handle;
        private final String json;

        Reader(Handle handle, String json) {
            this.handle = handle;
            this.json = json;
        }

        /** A row of texts, of which each may be missing. */
        private record Row(List<@Nullable String> texts, String where) {
            String text(int at, String called) {
                String text = texts.get(at);
                if (text == null) {
                    throw bad(where + " has no " + called);
                }
                return text;
            }

            String line(int at, String called, int least, int most) {
                String text = text(at, called);
                String plain = StoredText.line(text, called, least, most, "archive, " + NAME + ", " + where);
                if (!plain.equals(text)) {
                    throw bad(where + " has blanks around its " + called);
                }
                return text;
            }

            Instant instant(int at, String called) {
                try {
                    return Instant.parse(text(at, called));
                } catch (DateTimeParseException e) {
                    throw bad(where + " has '" + text(at, called) + "' for its " + called
                            + ", which is no time as 2024-01-31T12:00:00Z");
                }
            }

            UUID uuid(int at, String called) {
                return StoredText.uuid(text(at, called))
                        .orElseThrow(() -> bad(where + " has '" + text(at, called) + "' for its " + called
                                + ", which is no UUID in small letters"));
            }

            String hash(int at) {
                String text = text(at, "sha256");
                if (!StoredText.isHash(text)) {
                    throw bad(where + " has '" + text + "' for its sha256, which is not 64 small hexadecimal digits");
                }
                return text;
            }

            int number(int at, String called, int least, int most) {
                String text = text(at, called);
                int number = text.matches("[0-9]{1,9}") ? Integer.parseInt(text) : -1;
                if (number < least || number > most) {
                    throw bad(
                            where + " has '" + text + "' for its " + called + "; allowed are " + least + " to " + most);
                }
                return number;
            }
        }

        void checkFormat() {
            boolean valid = handle.createQuery(
                            "SELECT CASE WHEN json_valid(:json) THEN json_type(:json) = 'object' ELSE 0 END")
                    .bind("json", json)
                    .mapTo(Boolean.class)
                    .one();
            if (!valid) {
                throw bad("it is not a JSON object");
            }
            Row head = rows(
                            "SELECT :json ->> 'format', :json ->> 'version', json_type(:json, '$.builds'),"
                                    + " json_type(:json, '$.catalogues'), json_type(:json, '$.contents')",
                            5,
                            "it")
                    .get(0);
            if (!head.text(0, "format").equals(FORMAT)) {
                throw bad("its format is '" + head.text(0, "format") + "', not '" + FORMAT + "'");
            }
            if (!head.text(1, "version").equals(String.valueOf(VERSION))) {
                throw bad("its version is " + head.text(1, "version") + "; this program reads version " + VERSION);
            }
            for (int at = 2; at < 5; at++) {
                if (!head.text(at, "list of builds, catalogues or contents").equals("array")) {
                    throw bad("its builds, catalogues and contents must be lists");
                }
            }
        }

        List<Build> builds() {
            Map<String, List<Attached>> files = files();
            Map<String, List<Revision>> revisions = revisions(files);
            List<Build> builds = new ArrayList<>();
            for (Row row : rows(
                    "SELECT b.value ->> 'id', b.value ->> 'name', b.value ->> 'created', b.value ->> 'archived', b.key"
                            + " FROM json_each(:json, '$.builds') b ORDER BY b.key",
                    5,
                    "build")) {
                List<Revision> own = revisions.getOrDefault(row.text(4, "place"), List.of());
                if (own.isEmpty()) {
                    throw bad(row.where() + " has no revisions");
                }
                BuildId id = new BuildId(row.uuid(0, "id"));
                for (Revision revision : own) {
                    if (!revision.entry().equals(textEntry(id, revision.number()))) {
                        throw bad("revision " + revision.number() + " of build " + id + " names the entry '"
                                + revision.entry() + "'; it must be '" + textEntry(id, revision.number()) + "'");
                    }
                }
                builds.add(new Build(
                        id,
                        row.line(1, "name", 1, StoredText.NAME_LENGTH),
                        row.instant(2, "created"),
                        row.texts().get(3) == null ? Optional.empty() : Optional.of(row.instant(3, "archived")),
                        own));
            }
            return builds;
        }

        private Map<String, List<Revision>> revisions(Map<String, List<Attached>> files) {
            Map<String, List<Revision>> found = new HashMap<>();
            for (Row row : rows(
                    "SELECT b.key, r.value ->> 'number', r.value ->> 'key', r.value ->> 'basedOn',"
                            + " r.value ->> 'restores', r.value ->> 'undo', r.value ->> 'saved', r.value ->> 'what',"
                            + " r.value ->> 'entry', r.value ->> 'sha256', r.key"
                            + " FROM json_each(:json, '$.builds') b, json_each(b.value, '$.revisions') r"
                            + " ORDER BY b.key, r.key",
                    11,
                    "revision")) {
                List<Revision> own = found.computeIfAbsent(row.text(0, "place"), build -> new ArrayList<>());
                int number = row.number(1, "number", own.size() + 1, own.size() + 1);
                boolean restores = row.texts().get(4) != null;
                boolean undo = row.number(5, "undo", 0, restores ? 1 : 0) == 1;
                own.add(new Revision(
                        number,
                        row.uuid(2, "key"),
                        row.number(3, "basedOn", 0, number - 1),
                        restores ? OptionalInt.of(row.number(4, "restores", 1, number - 1)) : OptionalInt.empty(),
                        undo,
                        row.instant(6, "saved"),
                        row.line(7, "what", 0, StoredText.WHAT_LENGTH),
                        row.text(8, "entry"),
                        row.hash(9),
                        files.getOrDefault(row.text(0, "place") + "/" + row.text(10, "place"), List.of())));
            }
            return found;
        }

        private Map<String, List<Attached>> files() {
            Map<String, List<Attached>> found = new HashMap<>();
            for (Row row : rows(
                    "SELECT b.key || '/' || r.key, f.value ->> 'name', f.value ->> 'mediaType', f.value ->> 'sha256',"
                            + " f.value ->> 'attached' FROM json_each(:json, '$.builds') b,"
                            + " json_each(b.value, '$.revisions') r, json_each(r.value, '$.files') f"
                            + " ORDER BY b.key, r.key, f.key",
                    5,
                    "file")) {
                String type = row.text(2, "mediaType");
                if (!StoredText.mediaType(type, "archive, " + NAME + ", " + row.where())
                        .equals(type)) {
                    throw bad(row.where() + " has capitals in its mediaType");
                }
                found.computeIfAbsent(row.text(0, "place"), revision -> new ArrayList<>())
                        .add(new Attached(
                                row.line(1, "name", 1, StoredText.NAME_LENGTH),
                                type,
                                row.hash(3),
                                row.instant(4, "attached")));
            }
            return found;
        }

        List<Catalogue> catalogues() {
            List<Catalogue> found = new ArrayList<>();
            for (Row row : rows(
                    "SELECT k.value ->> 'id', k.value ->> 'name', k.value ->> 'sha256', k.value ->> 'imported',"
                            + " k.value ->> 'active' FROM json_each(:json, '$.catalogues') k ORDER BY k.key",
                    5,
                    "catalogue")) {
                found.add(new Catalogue(
                        row.uuid(0, "id"),
                        row.line(1, "name", 1, StoredText.NAME_LENGTH),
                        row.hash(2),
                        row.instant(3, "imported"),
                        row.number(4, "active", 0, 1) == 1));
            }
            return found;
        }

        Map<String, Long> contents() {
            Map<String, Long> found = new LinkedHashMap<>();
            for (Row row : rows(
                    "SELECT c.value ->> 'sha256', c.value ->> 'bytes', c.value ->> 'entry'"
                            + " FROM json_each(:json, '$.contents') c ORDER BY c.key",
                    3,
                    "content")) {
                if (!row.text(2, "entry").equals(contentEntry(row.hash(0)))) {
                    throw bad(row.where() + " names the entry '" + row.text(2, "entry") + "'; it must be '"
                            + contentEntry(row.hash(0)) + "'");
                }
                if (found.put(row.hash(0), (long) row.number(1, "bytes", 0, 999_999_999)) != null) {
                    throw bad(row.where() + " stands there twice");
                }
            }
            return found;
        }

        /** What the archive says of itself that it could not take along; nothing where it says nothing. */
        List<String> leftOut() {
            return rows(
                            "SELECT l.value FROM json_each(:json, '$.leftOut') l WHERE l.type = 'text' ORDER BY l.key",
                            1,
                            "left out")
                    .stream()
                    .map(row -> shownInALine(row.text(0, "reason")))
                    .toList();
        }

        private List<Row> rows(String sql, int columns, String called) {
            return handle.createQuery(sql)
                    .bind("json", json)
                    .map((row, context) -> {
                        List<@Nullable String> texts = new ArrayList<>();
                        for (int at = 1; at <= columns; at++) {
                            texts.add(row.getString(at));
                        }
                        return new Row(texts, called + " " + row.getRow());
                    })
                    .list();
        }
    }
}
