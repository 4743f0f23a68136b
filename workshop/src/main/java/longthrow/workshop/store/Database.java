package longthrow.workshop.store;

import com.zaxxer.hikari.HikariConfig;
import com.zaxxer.hikari.HikariDataSource;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.SQLTransientConnectionException;
import java.time.Duration;
import java.util.Optional;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;
import org.jdbi.v3.core.JdbiException;
import org.sqlite.SQLiteConfig;
import org.sqlite.SQLiteConfig.JournalMode;
import org.sqlite.SQLiteConfig.Pragma;
import org.sqlite.SQLiteConfig.SynchronousMode;
import org.sqlite.SQLiteConfig.TransactionMode;
import org.sqlite.SQLiteDataSource;
import org.sqlite.SQLiteErrorCode;
import org.sqlite.SQLiteException;
import org.sqlite.SQLiteOpenMode;

/** The database file behind its connections: one that writes, a few that read. */
final class Database implements AutoCloseable {
    /** So long a call waits for another program that holds the file, a copying one perhaps; our own choice. */
    private static final Duration PATIENCE = Duration.ofSeconds(10);

    /** So long a call waits for those before it; our own choice. */
    private static final Duration WAIT = PATIENCE.multipliedBy(3);

    /** More readers than a household has people; our own choice. */
    private static final int READERS = 4;

    private final Path file;
    private final HikariDataSource writers;
    private final HikariDataSource readers;
    private final Jdbi writing;
    private final Jdbi reading;
    private final Optional<Object> identity;
    private volatile boolean closed;

    private Database(Path file, HikariDataSource writers, HikariDataSource readers) {
        this.identity = identity(file);
        this.file = file;
        this.writers = writers;
        this.readers = readers;
        this.writing = Jdbi.create(writers);
        this.reading = Jdbi.create(readers);
    }

    /** Work on a handle in one transaction. */
    @FunctionalInterface
    interface Work<T> {
        T with(Handle handle);
    }

    /** Work on a bare connection. */
    @FunctionalInterface
    interface BareWork<T> {
        T with(Connection connection) throws SQLException;
    }

    /** @param setup how large the file may grow, for tests of a full disk */
    static Database open(Path file, Setup setup) {
        HikariDataSource writers = pool(source(file, setup), "writer", 1, "PRAGMA fullfsync = 1");
        try {
            return new Database(file, writers, pool(source(file, setup), "readers", READERS, "PRAGMA query_only = 1"));
        } catch (RuntimeException e) {
            writers.close();
            throw translated("open the database", file, e);
        }
    }

    /** Every connection of the program is made with these settings. */
    static SQLiteDataSource source(Path file, Setup setup) {
        SQLiteConfig config = new SQLiteConfig();
        config.setJournalMode(JournalMode.WAL);
        config.setSynchronous(SynchronousMode.FULL); // a commit returns when it is on the disk
        config.enforceForeignKeys(true);
        config.setBusyTimeout((int) PATIENCE.toMillis());
        config.setTransactionMode(TransactionMode.DEFERRED);
        config.setPragma(Pragma.SECURE_DELETE, "on"); // what is forgotten is overwritten
        setup.mostPages().ifPresent(config::setMaxPageCount);
        SQLiteDataSource source = new SQLiteDataSource(config);
        source.setUrl("jdbc:sqlite:" + file);
        return source;
    }

    private static HikariDataSource pool(SQLiteDataSource source, String name, int size, String atStart) {
        if (size == 1) {
            source.getConfig().setTransactionMode(TransactionMode.IMMEDIATE); // waits at the start, never in the middle
        }
        source.getConfig().resetOpenMode(SQLiteOpenMode.CREATE); // it is there; one that was deleted is not made anew
        HikariConfig config = new HikariConfig();
        config.setDataSource(source);
        config.setPoolName("longthrow " + name);
        config.setMaximumPoolSize(size);
        config.setMinimumIdle(size); // all at once: one opened later would not find a file that was deleted
        config.setMaxLifetime(0); // a file does not hang up
        config.setConnectionInitSql(atStart);
        config.setConnectionTimeout(WAIT.toMillis());
        return new HikariDataSource(config);
    }

    /** Reads in one transaction: all of it sees the same state. */
    <T> T read(String doing, Work<T> work) {
        return in(reading, doing, work);
    }

    /** Writes in one transaction, one caller after the other. When this returns, what was written is on the disk. */
    <T> T write(String doing, Work<T> work) {
        return in(writing, doing, work);
    }

    /** What is written to a file that was deleted or replaced meanwhile is gone with it when the program ends. */
    void refuseIfGone(String doing) {
        if (closed || identity.isEmpty() || identity(file).equals(identity)) {
            return;
        }
        throw new StoreFault(
                StoreFault.Kind.DAMAGED,
                "could not " + doing + ": the file of the database was "
                        + (Files.exists(file) ? "replaced by another" : "deleted or moved away")
                        + " while the program was working with it",
                file.toString(),
                "Do not end the program yet: it can still read all that was kept. Save all builds as one file first. Then end"
                        + " it, put the file back where it was, or the newest backup, and bring the builds back from the one file");
    }

    /** Device and place of a file on it; empty where the file is gone, or the system has none (Windows keeps an open file). */
    private static Optional<Object> identity(Path file) {
        try {
            return Optional.ofNullable(
                    Files.readAttributes(file, BasicFileAttributes.class).fileKey());
        } catch (IOException gone) {
            return Optional.empty();
        }
    }

    private <T> T in(Jdbi jdbi, String doing, Work<T> work) {
        if (closed) {
            throw new StoreFault(
                    StoreFault.Kind.CLOSED,
                    "could not " + doing + ": the store is closed",
                    file.toString(),
                    "Start the program again");
        }
        try {
            return jdbi.inTransaction(work::with);
        } catch (JdbiException e) {
            throw translated(doing, file, e);
        }
    }

    /** Work outside the pools, before they are opened or for a file that is no store in use. */
    static <T> T bare(String doing, SQLiteDataSource source, Path file, BareWork<T> work) {
        try (Connection connection = source.getConnection()) {
            return work.with(connection);
        } catch (SQLException e) {
            throw translated(doing, file, e);
        }
    }

    /** The fault a failure of the database is to its owner; a failure with no result code of SQLite stays what it is. */
    static RuntimeException translated(String doing, Path file, Exception failure) {
        for (Throwable at = failure; at != null; at = at.getCause()) {
            if (at instanceof StoreFault fault) {
                return fault;
            }
            if (at instanceof SQLiteException sqlite) {
                return fault(doing, file, sqlite);
            }
            if (at instanceof SQLTransientConnectionException) {
                return new StoreFault(
                        StoreFault.Kind.LOCKED,
                        "could not " + doing + ": so much is read or written that its turn did not come within "
                                + WAIT.toSeconds() + " s",
                        file.toString(),
                        "Try again; where that does not help, end what else keeps this machine or its disk busy",
                        failure);
            }
        }
        return failure instanceof RuntimeException runtime
                ? runtime
                : new IllegalStateException("could not " + doing, failure);
    }

    private static StoreFault fault(String doing, Path file, SQLiteException failure) {
        SQLiteErrorCode code = failure.getResultCode();
        int primary = code.code & 0xff;
        boolean refused =
                primary == SQLiteErrorCode.SQLITE_IOERR.code || primary == SQLiteErrorCode.SQLITE_CANTOPEN.code;
        if (primary == SQLiteErrorCode.SQLITE_FULL.code || (refused && Disk.isFull(file))) {
            return Disk.full(doing, file, failure);
        }
        if (primary == SQLiteErrorCode.SQLITE_CORRUPT.code || primary == SQLiteErrorCode.SQLITE_NOTADB.code) {
            return new StoreFault(
                    StoreFault.Kind.DAMAGED,
                    "could not " + doing + ": the database is damaged (" + code.message + ")",
                    file.toString(),
                    "What can be read goes out: all builds as one file, or where that does not work each by its own file",
                    failure);
        }
        if (primary == SQLiteErrorCode.SQLITE_BUSY.code || primary == SQLiteErrorCode.SQLITE_LOCKED.code) {
            return new StoreFault(
                    StoreFault.Kind.LOCKED,
                    "could not " + doing + ": another program held the database for more than " + PATIENCE.toSeconds()
                            + " s",
                    file.toString(),
                    "End what else works on that file (a copying program, a database browser) and try again",
                    failure);
        }
        if (primary == SQLiteErrorCode.SQLITE_READONLY.code
                || primary == SQLiteErrorCode.SQLITE_PERM.code
                || primary == SQLiteErrorCode.SQLITE_CANTOPEN.code) {
            return Disk.notWritable(doing, file, failure);
        }
        return new StoreFault(
                StoreFault.Kind.DISK_FAILED,
                "could not " + doing + ": " + Disk.words(failure),
                file.toString(),
                "Nothing acknowledged is lost. Look whether the disk is there and healthy, then try again",
                failure);
    }

    @Override
    public void close() {
        closed = true;
        readers.close();
        writers.close();
    }
}
