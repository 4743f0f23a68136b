package longthrow.workshop.store;

import java.nio.charset.StandardCharsets;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Instant;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.List;
import org.sqlite.SQLiteErrorCode;
import org.sqlite.SQLiteException;

/** Looks a database over, changing nothing. */
final class IntegrityCheck {
    /** More than these are not told one by one; our own choice. */
    private static final int MOST_TOLD = 10;

    /** Begins what is said of a text that is not what was saved. */
    private static final String A_TEXT = "revision ";

    private IntegrityCheck() {}

    /** Whether the database itself is whole, and only texts in it are not what was saved. */
    static boolean isOfTextsAlone(List<String> damage) {
        return damage.stream().allMatch(line -> line.startsWith(A_TEXT));
    }

    /**
     * What is broken, each as a sentence; empty where all is whole.
     *
     * @param ownTables whether today's tables are there: then the newest text of every build is held against its hash, which
     *                  tells of a flipped sign the database itself would not notice
     */
    static List<String> damage(Connection connection, boolean ownTables) throws SQLException {
        List<String> found = new ArrayList<>();
        try {
            structure(connection, found);
            references(connection, found);
            if (ownTables) {
                marks(connection, found);
                texts(connection, found);
            }
        } catch (SQLiteException e) {
            int primary = e.getResultCode().code & 0xff;
            if (primary != SQLiteErrorCode.SQLITE_CORRUPT.code && primary != SQLiteErrorCode.SQLITE_ERROR.code) {
                throw e; // no database at all, or not to be read: another matter
            }
            found.add("the check itself stopped: " + e.getMessage());
        }
        return List.copyOf(found);
    }

    private static void structure(Connection connection, List<String> found) throws SQLException {
        try (Statement statement = connection.createStatement();
                ResultSet rows = statement.executeQuery("PRAGMA integrity_check(" + MOST_TOLD + ")")) {
            while (rows.next()) {
                String line = rows.getString(1);
                if (!"ok".equals(line)) {
                    found.add("structure of the database: " + line);
                }
            }
        }
    }

    private static void references(Connection connection, List<String> found) throws SQLException {
        try (Statement statement = connection.createStatement();
                ResultSet rows = statement.executeQuery("PRAGMA foreign_key_check")) {
            for (int told = 0; rows.next() && told < MOST_TOLD; told++) {
                found.add("row " + rows.getString(2) + " of table " + rows.getString(1)
                        + " belongs to something that is gone from table " + rows.getString(3));
            }
        }
    }

    /** Times and identities, without which no row can be told: SQLite takes any text for them. */
    private static void marks(Connection connection, List<String> found) throws SQLException {
        marks(connection, "build", "uuid, created, archived", found);
        marks(connection, "revision", "client_key, saved, NULL", found);
        marks(connection, "catalogue", "uuid, imported, NULL", found);
        marks(connection, "attachment", "NULL, attached, NULL", found);
    }

    /**
     * In one table.
     * @param columns identity, time, second time; NULL where it has none
     */
    private static void marks(Connection connection, String table, String columns, List<String> found)
            throws SQLException {
        try (Statement statement = connection.createStatement();
                ResultSet rows = statement.executeQuery("SELECT id, " + columns + " FROM " + table)) {
            int told = 0;
            while (rows.next() && told < MOST_TOLD) {
                String identity = rows.getString(2);
                String second = rows.getString(4);
                if ((identity != null && StoredText.uuid(identity).isEmpty())
                        || !isTime(String.valueOf(rows.getString(3)))
                        || (second != null && !isTime(second))) {
                    found.add("row " + rows.getLong(1) + " of table " + table + " has no readable time or identity");
                    told++;
                }
            }
        }
    }

    /** Whether it is a time as they are kept. */
    static boolean isTime(String text) {
        try {
            return !Instant.parse(text).equals(Instant.MIN);
        } catch (DateTimeParseException damaged) {
            return false;
        }
    }

    private static void texts(Connection connection, List<String> found) throws SQLException {
        try (Statement statement = connection.createStatement();
                ResultSet rows = statement.executeQuery("SELECT b.name, r.number, r.text, r.text_sha256 FROM revision r"
                        + " JOIN build b ON b.id = r.build WHERE r.number ="
                        + " (SELECT max(number) FROM revision WHERE build = r.build) ORDER BY b.id")) {
            while (rows.next() && found.size() < 3 * MOST_TOLD) {
                String text = String.valueOf(rows.getString(3)); // nothing stands there only where it is damaged
                String sum = StoredText.sha256(text.getBytes(StandardCharsets.UTF_8));
                if (!sum.equals(rows.getString(4))) {
                    found.add(A_TEXT + rows.getInt(2) + " of build '" + rows.getString(1)
                            + "' is not what was saved: its check sum differs");
                }
            }
        }
    }
}
