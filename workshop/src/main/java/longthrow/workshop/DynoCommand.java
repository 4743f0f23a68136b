package longthrow.workshop;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import longthrow.core.answer.Answer;
import longthrow.core.answer.Finding;
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
        Answer answer = beside(Patience.during("reading the runs", err, () -> Dyno.of(asked, logs)), read.get());
        options.print(answer, line);
        return ExitCode.of(answer);
    }

    /** As it is called from where the sheet was. */
    private String beside(String engine) {
        return file.equals(InputFile.STANDARD_INPUT)
                ? engine
                : Path.of(file).resolveSibling(engine).toString();
    }

    /** The answer, with how its runs are seen over what is predicted where the sheet names its build. */
    private Answer beside(Answer answer, RunsOption.Read read) {
        return read.sheet()
                .engine()
                .map(engine -> answer.with(
                        read.has(engine)
                                ? new Finding(
                                        Finding.Kind.NOTE,
                                        "engine",
                                        "its build is " + engine
                                                + "; these runs over the torque that is predicted of it are told by: longthrow power "
                                                + beside(engine) + " --dyno " + file,
                                        "")
                                : new Finding(
                                        Finding.Kind.WARNING,
                                        "engine",
                                        "the sheet names " + engine + " as its build, and no such file lies beside it",
                                        "put it there, mend 'engine', or leave that line out")))
                .orElse(answer);
    }
}
