package longthrow.workshop;

import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Help.Ansi;

/** Whether to colour what is printed: only on a terminal that can, and never against NO_COLOR. */
final class Colour {
    /**
     * Set by the launcher, which can ask about standard output alone. {@code System.console()} cannot: up to Java 21
     * it is absent as soon as input is piped, in some later versions it is present even when output is. Not set: no
     * terminal.
     */
    private static final String TERMINAL_PROPERTY = "longthrow.terminal";

    private Colour() {}

    static Ansi ofThisTerminal() {
        boolean terminal = Boolean.getBoolean(TERMINAL_PROPERTY);
        return of(terminal, System.getenv("NO_COLOR"), System.getenv("TERM"));
    }

    /** @param noColor by the convention of that variable, any text but the empty one says no */
    static Ansi of(boolean terminal, @Nullable String noColor, @Nullable String term) {
        boolean refused = noColor != null && !noColor.isEmpty();
        return terminal && !refused && !"dumb".equals(term) ? Ansi.ON : Ansi.OFF;
    }
}
