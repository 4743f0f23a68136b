package longthrow.workshop;

import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import longthrow.buildfile.BlankSheet;
import longthrow.buildfile.DonorFile;
import longthrow.buildfile.ReadDonors;
import longthrow.core.answer.Answer;
import longthrow.core.build.Build;
import longthrow.core.build.Donor;
import longthrow.core.clear.Clear;
import longthrow.core.measure.Measure;
import longthrow.core.quantity.Dimension;
import longthrow.core.quantity.Parsed;
import longthrow.core.quantity.Quantity;
import longthrow.core.quantity.QuantityParser;
import longthrow.core.quantity.Stated;
import longthrow.core.quantity.UnitSystem;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import picocli.CommandLine.TypeConversionException;

/** {@code longthrow measure}: from readings to what the engine really is. */
@Command(
        name = "measure",
        description = "What have I really got, how sure, what does not add up, and what to read next.",
        footer = {
            "%nExamples:",
            "  longthrow measure --blank > my-engine.yaml    an empty reading sheet, to fill in",
            "  longthrow measure my-engine.yaml",
            "  longthrow measure --units inch --all my-engine.yaml",
            "  longthrow measure --at-lift '1 mm' --at-lift '0.050 in' my-engine.yaml",
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
            names = "--at-lift",
            paramLabel = "LIFT",
            converter = Lift.class,
            description =
                    "When each valve passes this lift, in any unit ('1 mm', '0.050 in'), and how it moves; may be given several times.")
    private List<Quantity> lifts = new ArrayList<>();

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
        Optional<Build> build = InputFile.build(file, err);
        Optional<List<Donor>> known = donors == null ? Optional.of(List.of()) : readDonors(donors, err);
        if (build.isEmpty() || known.isEmpty()) {
            err.flush();
            return ExitCode.INPUT_REFUSED;
        }
        Build asked = options.inUnits(build.get());
        Answer answer =
                Patience.during("measuring", err, () -> Clear.settled(Measure.of(asked, known.get(), lifts), asked));
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
        if (!lifts.isEmpty()) {
            throw new ParameterException(line, "--blank prints an empty sheet and takes no --at-lift; leave one out");
        }
        line.getOut().print(BlankSheet.text(options.unitsOr(UnitSystem.METRIC_FIRST)));
        line.getOut().flush();
        return ExitCode.ANSWERED;
    }

    private static Optional<List<Donor>> readDonors(String name, PrintWriter err) {
        InputFile input = new InputFile(name, InputFile.Holds.DONORS, err);
        Optional<ReadDonors> read = input.read().map(DonorFile::read);
        read.ifPresent(r -> input.say(r.faults(), r.notes()));
        return read.flatMap(ReadDonors::donors);
    }

    /** A lift as an owner types it: a length above nothing, its unit beside it. */
    static final class Lift implements ITypeConverter<Quantity> {
        @Override
        public Quantity convert(String text) {
            Parsed parsed = QuantityParser.parse(text, Dimension.LENGTH);
            if (parsed instanceof Parsed.Refused refused) {
                throw new TypeConversionException(refused.message());
            }
            Stated stated = ((Parsed.Understood) parsed).stated();
            if (stated.expandedDoubt().isPresent()) {
                throw new TypeConversionException(
                        "'" + text
                                + "' has a doubt; the lift asked for is one figure: leave the ± out (allowed: a length above 0)");
            }
            if (!(stated.value().si() > 0)) {
                throw new TypeConversionException(
                        "'" + text
                                + "' is no lift of an open valve: give a length above 0 and below the full lift, such as '1 mm'");
            }
            return stated.value();
        }
    }
}
