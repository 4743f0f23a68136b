package longthrow.workshop.store;

import java.io.IOException;
import java.nio.file.DirectoryIteratorException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.sqlite.SQLiteConfig;
import org.sqlite.SQLiteConnection;
import org.sqlite.SQLiteDataSource;
import org.sqlite.SQLiteErrorCode;

/**
 * Copies of the database, each a file whole in itself, in the folder backups. The files attached are not copied: each is
 * written once and never again, so the same one serves every backup.
 */
final class Backups {
    /** What SQLite leaves of a database that it could not finish: itself, and its journals beside it. */
    private static final List<String> BESIDE = List.of("", "-journal", "-wal", "-shm");

    private static final String FOLDER = "backups";

    /** A backup this old is followed by another, though nothing was kept since: the copy itself may have rotted. */
    private static final Duration DAILY = Duration.ofDays(1);

    /** While the store is open, and when it is closed, a younger one is enough; at most this much is lost with a disk. */
    static final Duration HOURLY = Duration.ofHours(1);

    private static final DateTimeFormatter STAMP = DateTimeFormatter.ofPattern("uuuu-MM-dd'T'HHmmss'Z'", Locale.ROOT);
    private static final Pattern NAME =
            Pattern.compile("longthrow-(\\d{4}-\\d{2}-\\d{2}T\\d{6}Z)(-before-schema-\\d+)?\\.db");

    private final Path folder;

    Backups(Path dataFolder) {
        this.folder = dataFolder.resolve(FOLDER);
    }

    /** @param beforeSchema part of the name of one that was made before the tables were changed, else empty */
    private record Made(Path path, Instant at, String beforeSchema) {}

    /**
     * Makes one where something was kept since the newest, or that is older than a day, and lets go of those whose time is over. A
     * store that holds nothing needs none.
     *
     * @param enough a backup younger than this is enough, whatever was kept since
     */
    Optional<Path> makeIfDue(Path database, Setup setup, Duration enough) {
        Instant now = setup.clock().instant();
        Optional<Made> newest = made().stream()
                .filter(backup -> backup.beforeSchema().isEmpty())
                .max(Comparator.comparing(Made::at));
        if (newest.isPresent() && newest.get().at().isAfter(now.minus(enough))) {
            return Optional.empty();
        }
        Holding holding =
                Database.bare("look what is to be backed up", Database.source(database, setup), database, Holding::of);
        boolean young = newest.isPresent() && newest.get().at().isAfter(now.minus(DAILY));
        if (!holding.anything() || (young && holding(newest.get().path()).equals(Optional.of(holding)))) {
            return Optional.empty();
        }
        Path done = make(database, setup, "");
        rotate();
        return Optional.of(done);
    }

    Path makeBeforeSchema(Path database, Setup setup, int schema) {
        return make(database, setup, "-before-schema-" + schema);
    }

    private Path make(Path database, Setup setup, String beforeSchema) {
        String stamp = STAMP.format(LocalDateTime.ofInstant(setup.clock().instant(), ZoneOffset.UTC));
        Path place = folder.resolve("longthrow-" + stamp + beforeSchema + ".db");
        Path unfinished = folder.resolve(place.getFileName() + Disk.UNFINISHED);
        try {
            Disk.makeFolder(folder);
            clearUnfinished();
            copy(database, setup, unfinished);
            List<String> damage = damage(unfinished);
            if (!damage.isEmpty()) {
                throw new StoreFault(
                        StoreFault.Kind.DAMAGED,
                        "the backup just made is not whole: " + damage.get(0),
                        unfinished.toString(),
                        "It is thrown away, older ones stay. Look whether the disk is healthy");
            }
            Disk.sync(unfinished);
            Disk.moveInPlace(unfinished, place);
            return place;
        } catch (IOException e) {
            throw Disk.fault("make a backup", folder, e);
        } finally {
            for (String beside : BESIDE) {
                deleteQuietly(folder.resolve(unfinished.getFileName() + beside));
            }
        }
    }

    private static void copy(Path database, Setup setup, Path target) {
        Database.bare("make a backup", Database.source(database, setup), database, connection -> {
            int code = connection
                    .unwrap(SQLiteConnection.class)
                    .getDatabase()
                    .backup("main", target.toString(), (remaining, pages) -> {});
            if (code != SQLiteErrorCode.SQLITE_OK.code) {
                throw org.sqlite.core.DB.newSQLException(code, "backup to " + target);
            }
            return code;
        });
        // Out of the mode with a log beside it, so that the backup is this one file.
        Database.bare("make a backup", plainSource(target), target, connection -> {
            try (Statement statement = connection.createStatement()) {
                return statement.execute("PRAGMA journal_mode = DELETE");
            }
        });
    }

    /** What is broken in a backup; a file that is no database at all is broken too. */
    static List<String> damage(Path backup) {
        try {
            return Database.bare("check a backup", readOnlySource(backup), backup, connection -> {
                if (Schema.version(connection) == 0) {
                    return List.of("it holds no tables of Longthrow");
                }
                return IntegrityCheck.damage(connection, hasRevisions(connection));
            });
        } catch (StoreFault e) {
            return List.of(e.what());
        }
    }

    /** What a backup holds; empty where it cannot be told. */
    private static Optional<Holding> holding(Path backup) {
        try {
            return Optional.of(Database.bare("look into a backup", readOnlySource(backup), backup, Holding::of));
        } catch (StoreFault broken) {
            return Optional.empty();
        }
    }

    /**
     * A build in a backup.
     * @param latest number of its newest revision there
     */
    record Held(String uuid, String name, int latest) {}

    /** The builds in a backup; none where it cannot be read. */
    static List<Held> builds(Path backup) {
        try {
            return Database.bare("look into a backup", readOnlySource(backup), backup, connection -> {
                List<Held> held = new ArrayList<>();
                try (Statement statement = connection.createStatement();
                        var rows = statement.executeQuery("SELECT b.uuid, b.name, max(r.number) FROM build b"
                                + " JOIN revision r ON r.build = b.id GROUP BY b.id ORDER BY b.id")) {
                    while (rows.next()) {
                        held.add(new Held(rows.getString(1), rows.getString(2), rows.getInt(3)));
                    }
                }
                return held;
            });
        } catch (StoreFault broken) {
            return List.of();
        }
    }

    private static SQLiteDataSource readOnlySource(Path file) {
        SQLiteConfig config = new SQLiteConfig();
        config.setReadOnly(true);
        SQLiteDataSource source = new SQLiteDataSource(config);
        source.setUrl("jdbc:sqlite:" + file);
        return source;
    }

    private static boolean hasRevisions(Connection connection) throws SQLException {
        try (Statement statement = connection.createStatement();
                var rows = statement.executeQuery("SELECT 1 FROM sqlite_schema WHERE name = 'revision'")) {
            return rows.next();
        }
    }

    private static SQLiteDataSource plainSource(Path file) {
        SQLiteDataSource source = new SQLiteDataSource(new SQLiteConfig());
        source.setUrl("jdbc:sqlite:" + file);
        return source;
    }

    /** The newest that is whole and holds a build, each looked over until one does; else the newest that is whole. */
    Optional<GoodBackup> newestGood(Instant now) {
        Optional<GoodBackup> empty = Optional.empty();
        for (Made backup : made().stream()
                .sorted(Comparator.comparing(Made::at).reversed())
                .toList()) {
            Optional<GoodBackup> good = Optional.of(backup)
                    .filter(one -> damage(one.path()).isEmpty())
                    .flatMap(one -> holding(one.path()))
                    .map(holds -> new GoodBackup(
                            backup.path(),
                            backup.at(),
                            Duration.between(backup.at(), now),
                            holds.builds(),
                            holds.revisions()));
            if (good.isPresent() && good.get().builds() > 0) {
                return good;
            }
            empty = empty.or(() -> good);
        }
        return empty;
    }

    /** What the owner does with a backup, and which. */
    static String howToPutBack(Optional<GoodBackup> good) {
        return good.map(backup -> "The newest good backup is " + backup.words()
                        + ". To put it back, end the program, move " + Access.DATABASE
                        + " and what begins with its name to another folder and keep it, then copy the backup there as "
                        + Access.DATABASE)
                .orElse("There is no good backup");
    }

    boolean any() {
        return !made().isEmpty();
    }

    /** Backups from before a change of the tables stay, one for each set of tables: only they lead back to an older program. */
    private void rotate() {
        List<Made> all = made();
        Set<Instant> kept = BackupRotation.kept(all.stream()
                .filter(backup -> backup.beforeSchema().isEmpty())
                .map(Made::at)
                .toList());
        var newestBefore = all.stream()
                .filter(backup -> !backup.beforeSchema().isEmpty())
                .collect(Collectors.toMap(
                        Made::beforeSchema, Made::at, (one, other) -> one.isAfter(other) ? one : other));
        for (Made backup : all) {
            boolean stays = backup.beforeSchema().isEmpty()
                    ? kept.contains(backup.at())
                    : backup.at().equals(newestBefore.get(backup.beforeSchema()));
            if (!stays) {
                deleteQuietly(backup.path());
            }
        }
    }

    private List<Made> made() {
        List<Made> found = new ArrayList<>();
        if (!Files.isDirectory(folder)) {
            return found;
        }
        try (DirectoryStream<Path> files = Files.newDirectoryStream(folder, "longthrow-*.db")) {
            for (Path file : files) {
                Matcher name = NAME.matcher(String.valueOf(file.getFileName()));
                if (name.matches()) {
                    instant(name.group(1))
                            .ifPresent(at -> found.add(new Made(file, at, name.group(2) == null ? "" : name.group(2))));
                }
            }
        } catch (IOException e) {
            throw Disk.fault("read the folder of backups", folder, e);
        } catch (DirectoryIteratorException e) {
            throw Disk.fault("read the folder of backups", folder, new IOException(e.getMessage(), e));
        }
        return found;
    }

    /** Empty for a day that is in no calendar: such a file is none of ours. */
    private static Optional<Instant> instant(String stamp) {
        try {
            return Optional.of(LocalDateTime.parse(stamp, STAMP).toInstant(ZoneOffset.UTC));
        } catch (DateTimeParseException noDay) {
            return Optional.empty();
        }
    }

    private void clearUnfinished() throws IOException {
        try (DirectoryStream<Path> left = Files.newDirectoryStream(folder, "longthrow-*" + Disk.UNFINISHED + "*")) {
            for (Path file : left) {
                Files.deleteIfExists(file);
            }
        }
    }

    private static void deleteQuietly(Path file) {
        try {
            Files.deleteIfExists(file);
        } catch (IOException stays) {
            // one backup more than need be
        }
    }
}
