package longthrow.buildfile.log;

/** What came of opening a log: the log with its layout, or why it cannot be read. */
public sealed interface LogOpened permits LogFile, LogRefusal {}
