package longthrow.workshop;

import java.io.PrintWriter;
import java.util.Optional;
import java.util.concurrent.Callable;
import longthrow.buildfile.BuildFile;
import longthrow.buildfile.ReadBuild;
import longthrow.core.answer.Answer;
import longthrow.core.build.Build;
import longthrow.core.catalogue.Catalogue;
import longthrow.core.shake.Shake;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code longthrow shake}: where the shake goes. */
@Command(
        name = "shake",
        description = "Where the shake goes: masses, balance factor, what a counterweight can move and what it cannot.",
        footer = {
            "%nExamples:",
            "  longthrow shake my-engine.yaml",
            "  longthrow shake my-engine.yaml --catalogue parts.yaml",
            "  longthrow shake --json my-engine.yaml > answer.json"
        })
final class ShakeCommand implements Callable<ExitCode> {
    @Parameters(arity = "1", paramLabel = "FILE", description = "The build file; - for standard input.")
    private String file = "";

    @Mixin
    private CatalogueOption catalogues;

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
        Optional<Catalogue> catalogue = catalogues.read(err);
        if (build.isEmpty() || catalogue.isEmpty()) {
            err.flush();
            return ExitCode.INPUT_REFUSED;
        }
        Build asked = options.inUnits(build.get());
        Answer answer = Patience.during("balancing", err, () -> Shake.of(asked, catalogue.get()));
        options.print(answer, line);
        return ExitCode.of(answer);
    }
}
