package longthrow.core.dyno;

/** Files of loggers, read outside. */
@FunctionalInterface
public interface Logs {
    /** No file can be had. */
    static Logs none() {
        return log -> Logged.refused(log.file(), "its file was not handed in");
    }

    /** What became of a file that a sheet names. */
    Logged of(DynoSheet.Log log);
}
