package longthrow.workshop.store;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.UUID;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.sqlite.SQLiteDataSource;

/**
 * What can still be read of a damaged database, copied row by row into one that is whole; the damaged one is left as it is. Rows are known by their shape, as the steps of
 * the schema have them; of a text its check sum tells whether it is what was saved.
 */
final class Salvage {
    /** Beside the database, and not under a name that begins with its name: it is no part of it. */
    static final String COPY = "salvaged.db";

    /** Of no text: what has it is told as not whole. */
    private static final String NO_SUM = "0".repeat(64);

    private static final int BUILD_COLUMNS = 5;
    private static final int REVISION_COLUMNS = 11;
    private static final int SIX = 6; // attachment and catalogue
    private static final int PAIR = 2; // content and setting

    private final Map<Long, List<@Nullable Object>> builds = new TreeMap<>();
    private final Map<Long, List<@Nullable Object>> revisions = new TreeMap<>();
    private final Map<Long, List<@Nullable Object>> attachments = new TreeMap<>();
    private final Map<Long, List<@Nullable Object>> catalogues = new TreeMap<>();
    /** Names of builds of which no revision is left, by their identity. */
    private final Map<String, String> gone = new LinkedHashMap<>();

    private final Map<String, Long> contents = new LinkedHashMap<>();
    private final Map<String, String> settings = new LinkedHashMap<>();

    private Salvage() {}

    /**
     * What came of it.
     * @param database the copy
     * @param lost     what is known to be missing, each as a sentence
     */
    record Saved(Path database, List<String> lost) {
        Saved {
            lost = List.copyOf(lost);
        }
    }

    /**
     * Looks the file through; empty where not a single revision is found.
     * @param log    what stood in the log beside it, before anything was opened
     * @param before builds of the newest good backup
     */
    static Optional<Saved> of(Path file, byte[] log, Setup setup, List<Backups.Held> before) {
        Salvage found = new Salvage();
        Path copy = file.resolveSibling(COPY);
        try (RawPages pages = RawPages.of(file, log)) {
            pages.rows().forEach(found::sort);
            if (found.revisions.isEmpty()) {
                return Optional.empty();
            }
            clear(file);
        } catch (IOException e) {
            throw Disk.fault("look through the damaged database", file, e);
        }
        SQLiteDataSource source = Database.source(copy, setup);
        Schema.migrate(source, copy, setup);
        Database.bare("copy what can be read", source, copy, connection -> {
            connection.setAutoCommit(false);
            found.write(connection);
            connection.commit();
            return true;
        });
        return Optional.of(new Saved(copy, found.lost(before)));
    }

    /** Names of the builds that are found in the file, where no revision of any is. */
    static List<String> names(Path file, byte[] log) {
        Salvage found = new Salvage();
        try (RawPages pages = RawPages.of(file, log)) {
            pages.rows().forEach(found::sort);
        } catch (IOException e) {
            throw Disk.fault("look through the damaged database", file, e);
        }
        return found.builds.values().stream()
                .map(b -> "'" + plain(String.valueOf(b.get(2))) + "'")
                .toList();
    }

    /** Takes the copy of an earlier time away. */
    static void clear(Path file) throws IOException {
        for (String beside : List.of("", "-wal", "-shm", "-journal")) {
            Files.deleteIfExists(file.resolveSibling(COPY + beside));
        }
    }

    // ---- which table a row is of

    private void sort(RawPages.Row row) {
        List<@Nullable Object> v = row.values();
        if (row.cut()) {
            begunOnly(v).ifPresent(begun -> revisions.putIfAbsent(row.id(), begun));
            return;
        }
        switch (v.size()) {
            case BUILD_COLUMNS -> {
                if (isUuid(v.get(1)) && v.get(2) instanceof String && isTime(v.get(3)) && isTimeOrNone(v.get(4))) {
                    builds.put(row.id(), v);
                }
            }
            case REVISION_COLUMNS -> {
                if (isRevision(v) && (isWhole(v) || !revisions.containsKey(row.id()))) {
                    revisions.put(row.id(), v);
                }
            }
            case SIX -> {
                boolean numbered = v.get(1) instanceof Long && v.get(2) instanceof String && v.get(3) instanceof String;
                if (numbered && isHash(v.get(4)) && isTime(v.get(5))) {
                    attachments.put(row.id(), v);
                } else if (isUuid(v.get(1))
                        && v.get(2) instanceof String
                        && isHash(v.get(3))
                        && isTime(v.get(4))
                        && v.get(5) instanceof Long) {
                    catalogues.put(row.id(), v);
                }
            }
            case PAIR -> {
                if (v.get(0) instanceof String key && v.get(1) instanceof String value) {
                    settings.put(key, value);
                } else if (v.get(0) instanceof String hash && isHash(hash) && v.get(1) instanceof Long bytes) {
                    contents.put(hash, bytes);
                }
            }
            default -> {
                // of no table of ours
            }
        }
    }

    /** A revision whose text goes on behind the end of the file: when and what it was can be told, and that it is not whole. */
    private static Optional<List<@Nullable Object>> begunOnly(List<@Nullable Object> v) {
        if (v.size() != REVISION_COLUMNS) {
            return Optional.empty();
        }
        List<@Nullable Object> begun = new ArrayList<>(v);
        String text = String.valueOf(v.get(9));
        int end = text.indexOf('\0');
        begun.set(9, end < 0 ? text : text.substring(0, end));
        begun.set(10, NO_SUM);
        return isRevision(begun) ? Optional.of(begun) : Optional.empty();
    }

    private static boolean isRevision(List<@Nullable Object> v) {
        return v.get(1) instanceof Long
                && v.get(2) instanceof Long number
                && number >= 1
                && number < Integer.MAX_VALUE
                && isUuid(v.get(3))
                && v.get(4) instanceof Long
                && v.get(6) instanceof Long
                && isTime(v.get(7))
                && v.get(8) instanceof String
                && v.get(9) instanceof String
                && isHash(v.get(10));
    }

    private static boolean isWhole(List<@Nullable Object> revision) {
        return revision.get(9) instanceof String text
                && StoredText.sha256(text.getBytes(java.nio.charset.StandardCharsets.UTF_8))
                        .equals(revision.get(10));
    }

    private static boolean isUuid(@Nullable Object value) {
        return value instanceof String text && StoredText.uuid(text).isPresent();
    }

    private static boolean isHash(@Nullable Object value) {
        return value instanceof String text && StoredText.isHash(text);
    }

    private static boolean isTimeOrNone(@Nullable Object value) {
        return value == null || isTime(value);
    }

    private static boolean isTime(@Nullable Object value) {
        return value instanceof String text && IntegrityCheck.isTime(text);
    }

    // ---- into the copy

    private void write(Connection connection) throws SQLException {
        revisions.values().forEach(r -> {
            long build = (Long) notNull(r.get(1));
            builds.computeIfAbsent(build, id -> nameless(id, String.valueOf(r.get(7))));
        });
        builds.entrySet().removeIf(b -> {
            boolean nothing =
                    revisions.values().stream().noneMatch(r -> b.getKey().equals(r.get(1)));
            if (nothing) {
                gone.put(
                        String.valueOf(b.getValue().get(1)),
                        plain(String.valueOf(b.getValue().get(2))));
            }
            return nothing;
        });
        for (Map.Entry<String, Long> content : contents.entrySet()) {
            put(connection, "INSERT OR IGNORE INTO content VALUES (?, ?)", content.getKey(), content.getValue());
        }
        for (Map.Entry<Long, List<@Nullable Object>> b : builds.entrySet()) {
            List<@Nullable Object> v = b.getValue();
            put(
                    connection,
                    "INSERT OR IGNORE INTO build VALUES (?, ?, ?, ?, ?)",
                    b.getKey(),
                    v.get(1),
                    plain(String.valueOf(v.get(2))),
                    v.get(3),
                    v.get(4));
        }
        for (Map.Entry<Long, List<@Nullable Object>> revision : revisions.entrySet()) {
            write(connection, revision.getKey(), revision.getValue());
        }
        for (Map.Entry<Long, List<@Nullable Object>> a : attachments.entrySet()) {
            List<@Nullable Object> v = a.getValue();
            if (revisions.containsKey(v.get(1)) && contents.containsKey(v.get(4))) {
                put(
                        connection,
                        "INSERT OR IGNORE INTO attachment VALUES (?, ?, ?, ?, ?, ?)",
                        a.getKey(),
                        v.get(1),
                        v.get(2),
                        v.get(3),
                        v.get(4),
                        v.get(5));
            }
        }
        for (Map.Entry<Long, List<@Nullable Object>> c : catalogues.entrySet()) {
            List<@Nullable Object> v = c.getValue();
            if (contents.containsKey(v.get(3))) {
                put(
                        connection,
                        "INSERT OR IGNORE INTO catalogue VALUES (?, ?, ?, ?, ?, ?)",
                        c.getKey(),
                        v.get(1),
                        v.get(2),
                        v.get(3),
                        v.get(4),
                        v.get(5));
            }
        }
        for (Map.Entry<String, String> s : settings.entrySet()) {
            put(connection, "INSERT OR IGNORE INTO setting VALUES (?, ?)", s.getKey(), s.getValue());
        }
    }

    /** What it was made on and what it brings back are the links between edits; a damaged one must not cost the edit. */
    private static void write(Connection connection, long id, List<@Nullable Object> v) throws SQLException {
        long number = (Long) notNull(v.get(2));
        long basedOn = (Long) notNull(v.get(4));
        boolean restores = v.get(5) instanceof Long back && back >= 1 && back < number;
        put(
                connection,
                "INSERT OR IGNORE INTO revision VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)",
                id,
                v.get(1),
                number,
                v.get(3),
                basedOn >= 0 && basedOn < number ? basedOn : number - 1,
                restores ? v.get(5) : null,
                restores && Long.valueOf(1).equals(v.get(6)) ? 1L : 0L,
                v.get(7),
                plain(String.valueOf(v.get(8))),
                v.get(9),
                v.get(10));
    }

    private static void put(Connection connection, String sql, @Nullable Object... values) throws SQLException {
        try (PreparedStatement statement = connection.prepareStatement(sql)) {
            for (int i = 0; i < values.length; i++) {
                statement.setObject(i + 1, values[i]);
            }
            statement.executeUpdate();
        }
    }

    private static Object notNull(@Nullable Object value) {
        return java.util.Objects.requireNonNull(value, "looked at when the row was sorted");
    }

    /** Under an identity that is the same at every start. */
    private static List<@Nullable Object> nameless(long id, String since) {
        List<@Nullable Object> row = new ArrayList<>();
        row.add(null);
        row.add(UUID.nameUUIDFromBytes(("nameless build " + id).getBytes(java.nio.charset.StandardCharsets.UTF_8))
                .toString());
        row.add("Build " + id + ", its name is lost");
        row.add(since);
        row.add(null);
        return row;
    }

    /** A name is shown in one line; a damaged sign in it is shown as one that is missing. */
    private static String plain(String name) {
        return name.codePoints()
                .map(c -> Character.isISOControl(c) ? 0xFFFD : c)
                .collect(StringBuilder::new, StringBuilder::appendCodePoint, StringBuilder::append)
                .toString();
    }

    // ---- what is missing

    private List<String> lost(List<Backups.Held> before) {
        List<String> lost = new ArrayList<>();
        long whole = revisions.values().stream().filter(Salvage::isWhole).count();
        lost.add("What could be read was copied out and is shown: " + many(builds.size(), "build") + ", "
                + many(whole, "revision") + " as saved"
                + (whole < revisions.size() ? ", " + many(revisions.size() - whole, "revision") + " damaged" : ""));
        Map<String, Long> newest = new LinkedHashMap<>();
        builds.forEach((id, build) -> {
            Map<Long, Boolean> numbers = new TreeMap<>();
            revisions.values().stream()
                    .filter(r -> id.equals(r.get(1)))
                    .forEach(r -> numbers.put((Long) notNull(r.get(2)), isWhole(r)));
            long last = numbers.keySet().stream().max(Comparator.naturalOrder()).orElse(0L);
            newest.put(String.valueOf(build.get(1)), last);
            List<Long> missing = new ArrayList<>();
            for (long number = 1; number <= last; number++) {
                if (!numbers.getOrDefault(number, false)) {
                    missing.add(number);
                }
            }
            if (!missing.isEmpty()) {
                lost.add("'" + plain(String.valueOf(build.get(2))) + "': "
                        + (missing.size() == 1 ? "revision " : "revisions ")
                        + missing.stream().map(String::valueOf).collect(Collectors.joining(", "))
                        + " cannot be read as saved" + (missing.contains(last) ? ", the newest among them" : ""));
            }
        });
        gone.forEach((uuid, name) -> {
            if (before.stream().noneMatch(held -> held.uuid().equals(uuid))) {
                lost.add("'" + name + "': nothing of it can be read, and no backup has it");
            }
        });
        for (Backups.Held held : before) {
            long here = newest.getOrDefault(held.uuid(), 0L);
            if (here < held.latest()) {
                lost.add("'" + held.name() + "': "
                        + (here == 0
                                ? "nothing of it can be read; the backup has it up to revision "
                                : "only up to revision " + here + "; the backup has it up to revision ")
                        + held.latest());
            }
        }
        return lost;
    }

    private static String many(long count, String what) {
        return count + " " + what + (count == 1 ? "" : "s");
    }
}
