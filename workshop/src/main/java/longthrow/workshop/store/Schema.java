package longthrow.workshop.store;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import org.flywaydb.core.Flyway;
import org.flywaydb.core.api.FlywayException;
import org.sqlite.SQLiteDataSource;

/** The tables, and how an older set of them becomes today's. Each step sets {@code user_version} to its own number. */
final class Schema {
    /** Number of the newest step. */
    static final int NEWEST = 1;

    /** Where the steps are on the class path. */
    static final String PLACE = "classpath:longthrow/workshop/store/schema";

    private Schema() {}

    /** The number of the newest step taken; 0 before the first. */
    static int version(Connection connection) throws SQLException {
        return number(connection, "PRAGMA user_version");
    }

    /** Whether a database without our number holds tables all the same, which are then someone else's. */
    static boolean isForeign(Connection connection) throws SQLException {
        return version(connection) == 0
                && number(
                                connection,
                                "SELECT count(*) FROM sqlite_schema WHERE tbl_name <> 'flyway_schema_history'"
                                        + " AND name NOT LIKE 'sqlite_%'")
                        > 0;
    }

    /** Takes the steps that are missing, each in one transaction. */
    static void migrate(SQLiteDataSource source, Path file, Setup setup) {
        try {
            Flyway.configure(Schema.class.getClassLoader())
                    .dataSource(source)
                    .locations(setup.schemas().toArray(String[]::new))
                    .validateMigrationNaming(true)
                    .failOnMissingLocations(true)
                    .load()
                    .migrate();
        } catch (FlywayException e) {
            throw Database.translated("set up the tables of the database", file, e);
        }
    }

    private static int number(Connection connection, String sql) throws SQLException {
        try (Statement statement = connection.createStatement();
                ResultSet rows = statement.executeQuery(sql)) {
            return rows.next() ? rows.getInt(1) : 0;
        }
    }
}
