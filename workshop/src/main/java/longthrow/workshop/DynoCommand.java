package longthrow.workshop;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import longthrow.buildfile.DynoSheetFile;
import longthrow.buildfile.ReadDynoSheet;
import longthrow.buildfile.log.LogsOfASheet;
import longthrow.core.answer.Answer;
import longthrow.core.dyno.Dyno;
import longthrow.core.dyno.DynoSheet;
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
        InputFile input = new InputFile(file, InputFile.Holds.RUNS, err);
        Optional<ReadDynoSheet> read = input.read().map(DynoSheetFile::read);
        read.ifPresent(r -> input.say(r.faults(), r.notes()));
        Optional<DynoSheet> sheet = read.flatMap(ReadDynoSheet::sheet);
        if (sheet.isEmpty()) {
            err.flush();
            return ExitCode.INPUT_REFUSED;
        }
        DynoSheet asked = sheet.get().withUnits(options.unitsOr(sheet.get().units()));
        Path folder = file.equals(InputFile.STANDARD_INPUT)
                ? Path.of("")
                : Optional.ofNullable(Path.of(file).toAbsolutePath().getParent())
                        .orElse(Path.of(""));
        LogsOfASheet logs = new LogsOfASheet(
                asked, name -> LogOnDisk.of(folder, name), Runtime.getRuntime().availableProcessors());
        Answer answer = Patience.during("reading the runs", err, () -> Dyno.of(asked, logs));
        options.print(answer, line);
        return ExitCode.of(answer);
    }
}
