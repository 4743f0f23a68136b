package longthrow.buildfile.log;

/**
 * Why nothing of a log was read.
 * @param found   what is there
 * @param allowed what can be read
 * @param mend    what to do
 */
public record LogRefusal(String found, String allowed, String mend) implements LogOpened {}
