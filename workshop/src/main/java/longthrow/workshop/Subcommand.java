package longthrow.workshop;

import java.util.List;
import java.util.concurrent.Callable;

/** The commands, in the order in which the help lists them. */
enum Subcommand {
    MEASURE("measure"),
    FIT("fit"),
    CLEAR("clear"),
    LIFE("life"),
    SHAKE("shake"),
    POWER("power"),
    DYNO("dyno"),
    BOOK("book"),
    IMPORT("import"),
    CATALOGUE("catalogue"),
    SET("set"),
    SERVE("serve"),
    DEMO("demo"),
    COMPLETION("completion");

    private final String word;

    Subcommand(String word) {
        this.word = word;
    }

    /** What is typed for it. */
    String word() {
        return word;
    }

    /** A fresh one, for one call. */
    Callable<ExitCode> make() {
        return switch (this) {
            case MEASURE -> new MeasureCommand();
            case FIT -> new FitCommand();
            case CLEAR -> new ClearCommand();
            case LIFE -> new LifeCommand();
            case SHAKE -> new ShakeCommand();
            case POWER -> new PowerCommand();
            case DYNO -> new DynoCommand();
            case BOOK -> new BookCommand();
            case IMPORT -> new ImportCommand();
            case CATALOGUE -> new CatalogueCommand();
            case SET -> new SetCommand();
            case SERVE -> new ServeCommand();
            case DEMO -> new DemoCommand();
            case COMPLETION -> new CompletionCommand();
        };
    }

    /**
     * Those that a call can come to: the one that its first word names, and all where it names none or wants to know the others.
     * Each that is not wired saves some 10 ms of the start.
     */
    static List<Subcommand> reachedBy(String... arguments) {
        for (Subcommand each : values()) {
            if (each != COMPLETION && arguments.length > 0 && each.word.equals(arguments[0])) {
                return List.of(each);
            }
        }
        return List.of(values());
    }
}
