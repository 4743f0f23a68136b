package longthrow.workshop;

import java.io.PrintWriter;
import java.util.Optional;
import java.util.concurrent.Callable;
import longthrow.buildfile.BuildFile;
import longthrow.buildfile.ReadBuild;
import longthrow.core.answer.Answer;
import longthrow.core.build.Build;
import longthrow.core.clear.Clear;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code longthrow clear}: whether anything touches. */
@Command(
        name = "clear",
        description = "Whether anything touches, cold and running, through two turns.",
        footer = {
            "%nExamples:",
            "  longthrow clear my-engine.yaml",
            "  longthrow clear my-engine.yaml --all",
            "  longthrow clear --json my-engine.yaml > answer.json"
        })
final class ClearCommand implements Callable<ExitCode> {
    @Parameters(arity = "1", paramLabel = "FILE", description = "The build file; - for standard input.")
    private String file = "";

    @Mixin
    private AnswerOptions options;

    @Spec
    private CommandSpec spec;

    @Override
    public ExitCode call() {
        CommandLine line = spec.commandLine();
        PrintWriter err = line.getErr();
        InputFile input = new InputFile(file, InputFile.Holds.BUILD, err);
        Optional<ReadBuild> read = input.read().map(BuildFile::read);
        read.ifPresent(r -> input.say(r.faults(), r.notes()));
        Optional<Build> build = read.flatMap(ReadBuild::build);
        if (build.isEmpty()) {
            err.flush();
            return ExitCode.INPUT_REFUSED;
        }
        Build asked = options.inUnits(build.get());
        Answer answer = Patience.during("turning it over", err, () -> Clear.of(asked));
        options.print(answer, line);
        return ExitCode.of(answer);
    }
}
