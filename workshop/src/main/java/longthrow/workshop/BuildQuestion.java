package longthrow.workshop;

import java.io.PrintWriter;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.function.Function;
import longthrow.core.answer.Answer;
import longthrow.core.build.Build;
import picocli.CommandLine;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** A command that asks one question of one build file and prints the answer. */
abstract class BuildQuestion implements Callable<ExitCode> {
    @Parameters(arity = "1", paramLabel = "FILE", description = "The build file; - for standard input.")
    private String file = "";

    @Mixin
    private AnswerOptions options;

    @Spec
    private CommandSpec spec;

    private final String doing;

    /**
     * Nothing asked yet.
     * @param doing what is said while it takes long
     */
    BuildQuestion(String doing) {
        this.doing = doing;
    }

    /** What is asked; empty where what else it needs cannot be read, which is said. */
    abstract Optional<Function<Build, Answer>> question(PrintWriter err);

    @Override
    public final ExitCode call() {
        CommandLine line = spec.commandLine();
        PrintWriter err = line.getErr();
        Optional<Build> build = InputFile.build(file, err);
        Optional<Function<Build, Answer>> question = question(err);
        if (build.isEmpty() || question.isEmpty()) {
            err.flush();
            return ExitCode.INPUT_REFUSED;
        }
        Build asked = options.inUnits(build.get());
        Answer answer = Patience.during(doing, err, () -> question.get().apply(asked));
        return tell(asked, answer, line);
    }

    /** Prints what was asked for. */
    ExitCode tell(Build build, Answer answer, CommandLine line) {
        options.print(answer, line);
        return ExitCode.of(answer);
    }
}
