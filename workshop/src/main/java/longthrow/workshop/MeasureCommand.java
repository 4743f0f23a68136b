package longthrow.workshop;

import java.io.PrintWriter;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import longthrow.buildfile.BlankSheet;
import longthrow.buildfile.BuildFile;
import longthrow.buildfile.DonorFile;
import longthrow.buildfile.ReadBuild;
import longthrow.buildfile.ReadDonors;
import longthrow.core.answer.Answer;
import longthrow.core.build.Build;
import longthrow.core.build.Donor;
import longthrow.core.measure.Measure;
import longthrow.core.quantity.UnitSystem;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code longthrow measure}: from readings to what the engine really is. */
@Command(
        name = "measure",
        description = "What have I really got, how sure, what does not add up, and what to read next.",
        footer = {
            "%nExamples:",
            "  longthrow measure --blank > my-engine.yaml    an empty reading sheet, to fill in",
            "  longthrow measure my-engine.yaml",
            "  longthrow measure --units inch --all my-engine.yaml",
            "  longthrow measure --json my-engine.yaml > answer.json"
        })
final class MeasureCommand implements Callable<ExitCode> {
    @Parameters(arity = "0..1", paramLabel = "FILE", description = "The build file; - for standard input.")
    private @Nullable String file;

    @Option(
            names = "--donors",
            paramLabel = "FILE",
            description = "Versions of donor engines, to tell which one this is.")
    private @Nullable String donors;

    @Option(
            names = "--blank",
            description = "Print an empty reading sheet in stripping order; filled in, it is a build file.")
    private boolean blank;

    @Mixin
    private AnswerOptions options;

    @Spec
    private CommandSpec spec;

    @Override
    public ExitCode call() {
        CommandLine line = spec.commandLine();
        if (blank) {
            return printBlank(line);
        }
        if (file == null) {
            throw new ParameterException(
                    line, "a build file is missing; 'longthrow measure --blank' prints an empty one to fill in");
        }
        if (InputFile.STANDARD_INPUT.equals(file) && InputFile.STANDARD_INPUT.equals(donors)) {
            throw new ParameterException(line, "build and donors cannot both come from standard input");
        }
        PrintWriter err = line.getErr();
        Optional<Build> build = readBuild(file, err);
        Optional<List<Donor>> known = donors == null ? Optional.of(List.of()) : readDonors(donors, err);
        if (build.isEmpty() || known.isEmpty()) {
            err.flush();
            return ExitCode.INPUT_REFUSED;
        }
        Answer answer = Patience.during("measuring", err, () -> Measure.of(options.inUnits(build.get()), known.get()));
        options.print(answer, line);
        return ExitCode.of(answer);
    }

    private ExitCode printBlank(CommandLine line) {
        if (file != null) {
            throw new ParameterException(line, "--blank prints an empty sheet and takes no FILE; found '" + file + "'");
        }
        options.refuseOnASheet(line);
        if (donors != null) {
            throw new ParameterException(line, "--blank prints an empty sheet and takes no --donors; leave one out");
        }
        line.getOut().print(BlankSheet.text(options.unitsOr(UnitSystem.METRIC_FIRST)));
        line.getOut().flush();
        return ExitCode.ANSWERED;
    }

    private static Optional<Build> readBuild(String name, PrintWriter err) {
        InputFile input = new InputFile(name, InputFile.Holds.BUILD, err);
        Optional<ReadBuild> read = input.read().map(BuildFile::read);
        read.ifPresent(r -> input.say(r.faults(), r.notes()));
        return read.flatMap(ReadBuild::build);
    }

    private static Optional<List<Donor>> readDonors(String name, PrintWriter err) {
        InputFile input = new InputFile(name, InputFile.Holds.DONORS, err);
        Optional<ReadDonors> read = input.read().map(DonorFile::read);
        read.ifPresent(r -> input.say(r.faults(), r.notes()));
        return read.flatMap(ReadDonors::donors);
    }
}
