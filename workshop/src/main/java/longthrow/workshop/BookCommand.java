package longthrow.workshop;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import longthrow.buildfile.BuildFile;
import longthrow.buildfile.ReadBuild;
import longthrow.core.answer.Approval;
import longthrow.core.book.Answers;
import longthrow.core.book.Shared;
import longthrow.core.book.SharedRuns;
import longthrow.core.build.Build;
import longthrow.core.catalogue.Catalogue;
import longthrow.core.dyno.Dyno;
import longthrow.core.quantity.UnitSystem;
import longthrow.workshop.book.BookPdf;
import longthrow.workshop.book.Sheet;
import longthrow.workshop.json.BookJson;
import longthrow.workshop.print.PlainText;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code longthrow book}: the sheet to sign, print, tape to the wall and share. */
@Command(
        name = "book",
        description = {
            "The sheet to sign and print: recipe, readings, parts with reasons, shop tickets, gaps, torques, what touches, "
                    + "what lets go first, where the shake goes, what was proved on the dynamometer, first start, unknowns, every default, cost. A PDF with the "
                    + "build file inside; 'longthrow import' gives it back.",
            "Every question is asked for it, which takes five to ten seconds where most gaps are known.",
            "With --dyno it has what runs on a dynamometer proved; 'longthrow dyno' says more of them.",
            "With --wall one page to tape up. With --share names, places, photographs and all free words are left out, of "
                    + "the build file inside too."
        },
        exitCodeListHeading = "%nExit codes:%n",
        exitCodeList = {
            "0:written, and nothing in it holds a stop",
            "1:written all the same, and it holds a stop: not approved, or refused",
            "2:input refused and nothing written; the message says what to mend",
            "3:internal fault"
        },
        footer = {
            "%nExamples:",
            "  longthrow book my-engine.yaml --out my-engine-book.pdf",
            "  longthrow book my-engine.yaml --wall --out wall.pdf",
            "  longthrow book my-engine.yaml --dyno examples/dyno/header.yaml --out with-its-runs.pdf",
            "  longthrow book my-engine.yaml --catalogue examples/catalogue --share --out for-a-friend.pdf"
        })
final class BookCommand implements Callable<ExitCode> {
    /** Said of an empty name; behind it stands one that will do. */
    static final String NO_NAME = "--out names no file: the name is empty; give it one, such as --out ";

    @Parameters(arity = "1", paramLabel = "FILE", description = "The build file; - for standard input.")
    private String file = "";

    @Mixin
    private CatalogueOption catalogues;

    @Mixin
    private RunsOption runs;

    @Option(
            names = "--out",
            paramLabel = "FILE.pdf",
            description =
                    "Where the PDF goes; else beside you, named after the build file, a shared one shared-book.pdf. What is there is never overwritten.")
    private @Nullable String out;

    @Option(names = "--wall", description = "The one page for the wall instead of the full sheet.")
    private boolean wall;

    @Option(
            names = "--share",
            description =
                    "To hand on: free words are left out, for any can hold a person or a place. What is left out is listed.")
    private boolean share;

    @Option(
            names = "--with-names",
            description = "With --share: names, places, notes and photographs' names stay after all.")
    private boolean withNames;

    @Option(names = "--json", description = "One JSON document instead of a PDF; its schema: docs/book.schema.json.")
    private boolean json;

    @Option(
            names = "--units",
            paramLabel = "metric|inch",
            converter = AnswerOptions.Units.class,
            completionCandidates = AnswerOptions.Units.class,
            description = "Which units come first; else as the build file says.")
    private @Nullable UnitSystem units;

    @Spec
    private CommandSpec spec;

    @Override
    public ExitCode call() {
        CommandLine line = spec.commandLine();
        PrintWriter err = line.getErr();
        refuseWhatDoesNotGoTogether();
        Path target = json ? Path.of("") : target();
        InputFile input = new InputFile(file, InputFile.Holds.BUILD, err);
        Optional<byte[]> bytes = input.read();
        Optional<ReadBuild> read = bytes.map(BuildFile::read);
        read.ifPresent(r -> input.say(r.faults(), r.notes()));
        Optional<Build> build = read.flatMap(ReadBuild::build);
        Optional<Catalogue> catalogue = catalogues.read(err);
        Optional<List<RunsOption.Read>> sheets = runs.read(err);
        if (bytes.isEmpty() || build.isEmpty() || catalogue.isEmpty() || sheets.isEmpty()) {
            err.flush();
            return ExitCode.INPUT_REFUSED;
        }
        Build asked = units == null ? build.get() : build.get().withUnits(units);
        boolean stripped = share && !withNames;
        Optional<Shared> shared = stripped ? Optional.of(Shared.of(asked, catalogue.get())) : Optional.empty();
        Sheet sheet = Patience.during(
                "asking every question for the Book",
                err,
                () -> shared.map(s -> shared(s, sheets.get()))
                        .orElseGet(() -> Sheet.of(asked, catalogue.get(), ran(sheets.get(), asked.units()))));
        if (json) {
            line.getOut().print(BookJson.of(sheet.book()));
            line.getOut().flush();
            return code(sheet);
        }
        byte[] attached = shared.map(s -> BuildFile.write(s.build()).getBytes(StandardCharsets.UTF_8))
                .orElse(bytes.get());
        return write(sheet, attached, target) ? code(sheet) : ExitCode.INPUT_REFUSED;
    }

    private static List<Answers.Ran> ran(List<RunsOption.Read> sheets, UnitSystem units) {
        return sheets.stream()
                .map(read -> new Answers.Ran(Dyno.of(read.sheet().withUnits(units), read.logs()), false))
                .toList();
    }

    /** The questions asked of what is left, of the runs too. */
    private static Sheet shared(Shared shared, List<RunsOption.Read> sheets) {
        UnitSystem units = shared.build().units();
        List<SharedRuns> without =
                sheets.stream().map(read -> SharedRuns.of(read.sheet())).toList();
        List<Answers.Ran> ran = new ArrayList<>();
        for (int k = 0; k < sheets.size(); k++) {
            SharedRuns runs = without.get(k);
            ran.add(new Answers.Ran(
                    Dyno.of(
                            runs.sheet().withUnits(units),
                            runs.logs(sheets.get(k).logs())),
                    true));
        }
        return Sheet.of(shared.with(without), ran);
    }

    private void refuseWhatDoesNotGoTogether() {
        if (json && (wall || out != null)) {
            throw new ParameterException(
                    spec.commandLine(), "--json prints a document and makes no PDF; leave out --wall and --out");
        }
        if (withNames && !share) {
            throw new ParameterException(
                    spec.commandLine(), "--with-names goes with --share; without it nothing is left out");
        }
    }

    /** Looked at before anything is worked out, so that nobody waits for a PDF that has no place. */
    private Path target() {
        if (out == null && share && !withNames) {
            return unused(Path.of(""), wall ? "shared-wall" : "shared-book");
        }
        String name = out == null ? named() : out;
        if (name.isBlank()) {
            throw new ParameterException(spec.commandLine(), NO_NAME + "my-engine-book.pdf");
        }
        try {
            Path path = Path.of(name);
            if (Files.exists(path)) {
                throw new ParameterException(spec.commandLine(), taken(path));
            }
            return path;
        } catch (InvalidPathException cannotBeAName) {
            throw new ParameterException(
                    spec.commandLine(), "--out '" + name + "' cannot be a file's name: " + cannotBeAName.getReason());
        }
    }

    /** Not named after the build file, for its name is free words too; with a number where there is one already. */
    static Path unused(Path folder, String stem) {
        Path path = folder.resolve(stem + ".pdf");
        for (int number = 2; Files.exists(path, LinkOption.NOFOLLOW_LINKS); number++) {
            path = folder.resolve(stem + "-" + number + ".pdf");
        }
        return path;
    }

    private String named() {
        if (file.equals(InputFile.STANDARD_INPUT)) {
            throw new ParameterException(
                    spec.commandLine(), "from standard input there is no name to go by; say where it goes with --out");
        }
        Path name = Path.of(file).getFileName();
        String stem = String.valueOf(name).replaceFirst("\\.ya?ml$", "");
        return stem + (wall ? "-wall" : "-book") + (share ? "-shared" : "") + ".pdf";
    }

    private static String taken(Path path) {
        return "'" + path + "' is there already and is left as it is; choose another name with --out, or move it away";
    }

    private boolean write(Sheet sheet, byte[] buildFile, Path target) {
        PrintWriter err = spec.commandLine().getErr();
        byte[] pdf = Patience.during("printing", err, () -> BookPdf.of(sheet, wall, buildFile));
        try {
            FileOnDisk.create(target, pdf);
        } catch (FileAlreadyExistsException meanwhile) {
            return refused(taken(target));
        } catch (IOException failed) {
            return refused("'" + target + "' could not be written: " + SystemWords.plain(failed));
        }
        sayWhatIs(sheet, target, pdf.length);
        return true;
    }

    private boolean refused(String why) {
        PrintWriter err = spec.commandLine().getErr();
        err.println(spec.qualifiedName() + ": " + PlainText.of(why));
        err.flush();
        return false;
    }

    private void sayWhatIs(Sheet sheet, Path target, int size) {
        PrintWriter say = spec.commandLine().getOut();
        say.println(PlainText.of("written: " + target) + ", " + (size + 1023) / 1024 + " kB, "
                + sheet.book().defaults().size() + " defaults listed; the build file is inside");
        say.println(PlainText.of(sheet.book().approval()));
        sheet.book()
                .stops()
                .forEach(s -> say.println(PlainText.of(
                        (s.refused() ? "STOP, refused: " : "STOP, not approved: ") + s.what() + " – " + s.why())));
        if (sheet.shared()) {
            say.println("left out for sharing:");
            sheet.book().leftOut().forEach(l -> say.println("  " + PlainText.of(l)));
            sheet.lookAgain().forEach(l -> say.println("  look at it before you send it: " + PlainText.of(l)));
        }
        say.flush();
    }

    private static ExitCode code(Sheet sheet) {
        boolean isHeld = sheet.book()
                .limits()
                .filter(limits -> limits.verdict() != Approval.State.APPROVED)
                .isPresent();
        return sheet.book().stops().isEmpty() && !isHeld ? ExitCode.ANSWERED : ExitCode.ANSWERED_WITH_STOP;
    }
}
