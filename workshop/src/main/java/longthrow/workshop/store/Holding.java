package longthrow.workshop.store;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;

/**
 * How much a database holds.
 *
 * @param anything whether there is a build, a catalogue or a setting
 * @param mark     another wherever something was kept or forgotten; a revision is never changed, so its number stands for it
 */
record Holding(int builds, int revisions, boolean anything, String mark) {
    static Holding of(Connection connection) throws SQLException {
        try (Statement statement = connection.createStatement();
                ResultSet rows = statement.executeQuery("""
                        SELECT (SELECT count(*) FROM build), (SELECT count(*) FROM revision),
                          EXISTS (SELECT 1 FROM build) OR EXISTS (SELECT 1 FROM catalogue)
                            OR EXISTS (SELECT 1 FROM setting),
                          (SELECT json_group_array(json_array(id, uuid, name, archived) ORDER BY id) FROM build)
                          || (SELECT json_array(count(*), max(id)) FROM revision)
                          || (SELECT json_array(count(*), max(id)) FROM attachment)
                          || (SELECT json_group_array(json_array(id, uuid, active) ORDER BY id) FROM catalogue)
                          || (SELECT json_group_array(json_array(key, value) ORDER BY key) FROM setting)
                        """)) {
            rows.next();
            return new Holding(rows.getInt(1), rows.getInt(2), rows.getBoolean(3), rows.getString(4));
        }
    }
}
