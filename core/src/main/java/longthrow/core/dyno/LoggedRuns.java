package longthrow.core.dyno;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import longthrow.core.answer.DefaultUsed;
import longthrow.core.answer.Finding;

/** Runs that a logger wrote, brought to curves. */
final class LoggedRuns {
    private final Logs logs;

    LoggedRuns(DynoSheet sheet, Logs logs, List<Finding> findings, Set<DefaultUsed> defaults) {
        this.logs = logs;
    }

    List<Reading.Ran> of(DynoSheet.Session session, DynoSheet.Pull pull, DynoSheet.Log log, String name) {
        if (logs.of(log).isEmpty()) {
            return List.of(new Reading.Ran(
                    session, pull, name, Optional.empty(), pull.aside(), false, "its file " + log.file() + " was not read"));
        }
        throw new UnsupportedOperationException("not yet"); 
    }
}
