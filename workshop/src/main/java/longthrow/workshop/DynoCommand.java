package longthrow.workshop;

import java.io.PrintWriter;
import java.util.Optional;
import java.util.concurrent.Callable;
import longthrow.core.answer.Answer;
import longthrow.core.dyno.Dyno;
import longthrow.core.dyno.DynoSheet;
import longthrow.core.dyno.Logs;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code longthrow dyno}: was the gain real. */
@Command(
        name = "dyno",
        description = "Was the gain real: runs on a dynamometer, corrected, compared, with their doubt.",
        footer = {
            "%nExamples:",
            "  longthrow dyno examples/dyno/header.yaml",
            "  longthrow dyno examples/dyno/header.yaml --all",
            "  longthrow dyno --json examples/dyno/header.yaml > answer.json"
        })
final class DynoCommand implements Callable<ExitCode> {
    @Parameters(
            arity = "1",
            paramLabel = "SHEET",
            description = "The sheet of runs; logs that it names lie beside it. - for standard input.")
    private String file = "";

    @Mixin
    private AnswerOptions options;

    @Spec
    private CommandSpec spec;

    @Override
    public ExitCode call() {
        CommandLine line = spec.commandLine();
        PrintWriter err = line.getErr();
        Optional<RunsOption.Read> read = RunsOption.read(file, err);
        if (read.isEmpty()) {
            err.flush();
            return ExitCode.INPUT_REFUSED;
        }
        DynoSheet sheet = read.get().sheet();
        DynoSheet asked = sheet.withUnits(options.unitsOr(sheet.units()));
        Logs logs = read.get().logs();
        Answer answer = Patience.during("reading the runs", err, () -> Dyno.of(asked, logs));
        options.print(answer, line);
        return ExitCode.of(answer);
    }
}
