package longthrow.workshop;

import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import longthrow.buildfile.Nearest;
import longthrow.workshop.print.PlainText;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Help;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.ParseResult;
import picocli.CommandLine.RunLast;
import picocli.CommandLine.ScopeType;
import picocli.CommandLine.Spec;
import picocli.CommandLine.UnmatchedArgumentException;

/**
 * The root command, and the main class that wires the rest.
 *
 * <p>A command is a {@code Callable<ExitCode>} listed in {@link Subcommand}. It writes to {@code
 * spec.commandLine().getOut()}, asks {@code getColorScheme().ansi()} about colour, and refuses input by returning
 * {@link ExitCode#INPUT_REFUSED} after saying why, or by throwing a {@link ParameterException}.
 */
@Command(
        name = "longthrow",
        description = "The bench book, with the sums inside, for single-cylinder four-strokes.",
        versionProvider = Version.class,
        synopsisSubcommandLabel = "COMMAND",
        exitCodeListHeading = "%nExit codes:%n",
        exitCodeList = {
            "0:answered",
            "1:answered, and the answer holds a stop or does not approve the speed",
            "2:input refused, or no room for the answer (full disk); the message says what to mend",
            "3:internal fault"
        },
        footer = {"%nExample:", "  longthrow measure my-engine.yaml"})
public final class Longthrow implements Callable<ExitCode> {
    /** Shows where in the program a fault happened. */
    static final String TRACE = "--trace";

    @Option(
            names = {"-h", "--help"},
            usageHelp = true,
            scope = ScopeType.INHERIT,
            description = "Show this help and leave.")
    @SuppressWarnings("UnusedVariable") // picocli acts on it
    private boolean help;

    @Option(
            names = {"-V", "--version"},
            versionHelp = true,
            description = "Show the version and leave.")
    @SuppressWarnings("UnusedVariable") // picocli acts on it
    private boolean version;

    @Option(
            names = TRACE,
            scope = ScopeType.INHERIT,
            description = "After an internal fault, also show where in the program it happened.")
    private boolean trace;

    @Spec
    private CommandSpec spec;

    /** Runs one call and ends the process with its {@link ExitCode}, as {@link #forTheLauncher} puts it. */
    public static void main(String[] arguments) {
        System.exit(forTheLauncher(run(
                new FileOutputStream(FileDescriptor.out),
                new FileOutputStream(FileDescriptor.err),
                Colour.ofThisTerminal(),
                arguments)));
    }

    /**
     * The code of a stop, 1, is also what a Java ends with that cannot start. So the launcher names another number for it in the
     * property {@code longthrow.stop} and turns that back into 1.
     */
    static int forTheLauncher(int code) {
        return code == ExitCode.ANSWERED_WITH_STOP.code() ? Integer.getInteger("longthrow.stop", code) : code;
    }

    /** One call with its answer brought to the end of the line: an answer that could not be written is none. */
    static int run(OutputStream out, OutputStream err, Help.Ansi colour, String... arguments) {
        // UTF-8 whatever the locale: the signs of the trade (±, °, µ) would come out as question marks otherwise.
        RememberingStream written = new RememberingStream(out);
        PrintWriter answers = new PrintWriter(written, false, StandardCharsets.UTF_8);
        PrintWriter messages = new PrintWriter(err, false, StandardCharsets.UTF_8);
        int code;
        try {
            code = run(answers, messages, colour, arguments);
        } catch (LinkageError fault) { // before the commands were wired
            code = new Longthrow().confess(fault, messages);
        }
        answers.flush();
        Optional<IOException> failure = written.failure();
        if (failure.isPresent() && !SystemWords.readerHasLeft(failure.get())) {
            messages.println("longthrow: the answer could not be written: " + SystemWords.plain(failure.get()));
            code = ExitCode.INPUT_REFUSED.code();
        }
        messages.flush();
        return code;
    }

    /** One call from arguments to exit code, with nothing of the process around it touched. */
    static int run(PrintWriter out, PrintWriter err, Help.Ansi colour, String... arguments) {
        Longthrow root = new Longthrow();
        return execute(root, root.commandLine(out, err, colour, Subcommand.reachedBy(arguments)), arguments);
    }

    /** The wired command line. Tests hand in further commands: settings reach only those present when they are made. */
    CommandLine commandLine(
            PrintWriter out, PrintWriter err, Help.Ansi colour, List<Subcommand> wired, Object... further) {
        CommandLine line = new CommandLine(this);
        for (Subcommand each : wired) {
            CommandLine command = new CommandLine(each.make());
            command.setUnmatchedOptionsArePositionalParams(each == Subcommand.SET); // -0.10 mm is a value
            line.addSubcommand(each.word(), command);
        }
        for (Object command : further) {
            line.addSubcommand(command);
        }
        return line.setExpandAtFiles(false) // a file's name may begin with @
                .setOut(out)
                .setErr(err)
                .setColorScheme(Help.defaultColorScheme(colour))
                .setUsageHelpAutoWidth(false)
                .setExecutionStrategy(Longthrow::callAndTranslate)
                .setParameterExceptionHandler((refusal, ignored) -> refuse(refusal))
                .setExecutionExceptionHandler((fault, at, ignored) -> confess(fault, at.getErr()));
    }

    static int execute(Longthrow root, CommandLine line, String... arguments) {
        try {
            return line.execute(arguments);
        } catch (StackOverflowError | OutOfMemoryError | AssertionError | LinkageError fault) {
            return root.confess(fault, line.getErr()); // picocli hands on exceptions only
        }
    }

    @Override
    public ExitCode call() {
        throw new ParameterException(spec.commandLine(), "a command is missing");
    }

    private static int callAndTranslate(ParseResult parsed) {
        int code = new RunLast().execute(parsed);
        CommandLine last =
                parsed.asCommandLineList().get(parsed.asCommandLineList().size() - 1);
        return last.getExecutionResult() instanceof ExitCode result ? result.code() : code;
    }

    private static int refuse(ParameterException refusal) {
        CommandLine line = refusal.getCommandLine();
        PrintWriter err = line.getErr();
        String name = line.getCommandSpec().qualifiedName();
        err.println(name + ": " + PlainText.of(message(refusal)));
        Optional<String> command = noSuchCommand(refusal);
        if (command.isPresent()) { // only what is alike: to take another command for it would be a guess
            Nearest.to(command.get(), line.getSubcommands().keySet())
                    .ifPresent(near -> err.println("Did you mean: " + name + " " + near + "?"));
        } else {
            StringWriter suggestions = new StringWriter();
            UnmatchedArgumentException.printSuggestions(refusal, new PrintWriter(suggestions, true));
            suggestions.toString().lines().map(PlainText::of).forEach(err::println);
        }
        err.println("See: " + name + " --help");
        err.flush();
        return ExitCode.INPUT_REFUSED.code();
    }

    private static String message(ParameterException refusal) {
        return noSuchCommand(refusal)
                .map(word -> "no command is called '" + word + "'; commands: "
                        + String.join(
                                ", ", refusal.getCommandLine().getSubcommands().keySet()))
                .orElseGet(() -> String.valueOf(refusal.getMessage()));
    }

    /** The word that stands where a command should. */
    private static Optional<String> noSuchCommand(ParameterException refusal) {
        return refusal instanceof UnmatchedArgumentException unmatched
                        && refusal.getCommandLine().getParent() == null
                        && !unmatched.getUnmatched().isEmpty()
                        && !unmatched.getUnmatched().get(0).startsWith("-")
                ? Optional.of(unmatched.getUnmatched().get(0))
                : Optional.empty();
    }

    private int confess(Throwable fault, PrintWriter err) {
        err.println("longthrow: internal fault, no fault of your input: " + PlainText.of(fault.toString()));
        if (fault instanceof LinkageError) {
            err.println(
                    "A piece of the program is missing: the build is damaged. Delete the folder build and call again.");
        }
        if (trace) {
            StringWriter whole = new StringWriter();
            fault.printStackTrace(new PrintWriter(whole, true));
            whole.toString().lines().map(Longthrow::plainKeepingTab).forEach(err::println);
        } else {
            err.println("The same call with --trace shows where; please report it with that.");
        }
        err.flush();
        return ExitCode.INTERNAL_FAULT.code();
    }

    private static String plainKeepingTab(String line) {
        return line.startsWith("\t") ? "\t" + PlainText.of(line.substring(1)) : PlainText.of(line);
    }
}
