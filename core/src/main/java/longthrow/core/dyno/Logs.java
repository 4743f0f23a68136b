package longthrow.core.dyno;

import java.util.List;
import java.util.Optional;
import longthrow.core.answer.DynoRuns;

/** Files of loggers as they were read outside; a sheet names them. */
public interface Logs {
    /** None at all: every run that names a file is told as not found. */
    static Logs none() {
        return new Logs() {
            @Override
            public Optional<Logged> of(DynoSheet.Log log) {
                return Optional.empty();
            }

            @Override
            public List<DynoRuns.Log> told() {
                return List.of();
            }
        };
    }

    /** What was read of a file; empty where there is no such file. */
    Optional<Logged> of(DynoSheet.Log log);

    /** What became of the rows of each file. */
    List<DynoRuns.Log> told();
}
