package longthrow.workshop;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import longthrow.buildfile.BuildFile;
import longthrow.buildfile.ReadBuild;
import longthrow.workshop.book.BookReader;
import longthrow.workshop.print.PlainText;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code longthrow import}: the build file back out of a Book. */
@Command(
        name = "import",
        description =
                "Take the build file out of a Book, byte for byte; refused where it is not the one that the checksum in the Book tells of.",
        footer = {"%nExample:", "  longthrow import my-engine-book.pdf --out my-engine-again.yaml"})
final class ImportCommand implements Callable<ExitCode> {
    @Parameters(arity = "1", paramLabel = "BOOK.pdf", description = "The Book; - for standard input.")
    private String file = "";

    @Option(
            names = "--out",
            required = true,
            paramLabel = "FILE",
            description = "Where the build file goes. What is there is never overwritten.")
    private String out = "";

    @Spec
    private CommandSpec spec;

    @Override
    public ExitCode call() {
        PrintWriter err = spec.commandLine().getErr();
        if (out.isBlank()) {
            throw new ParameterException(spec.commandLine(), BookCommand.NO_NAME + "my-engine.yaml");
        }
        InputFile input = new InputFile(file, InputFile.Holds.BOOK, err);
        Optional<byte[]> pdf = input.read();
        if (pdf.isEmpty()) {
            return refused();
        }
        BookReader.Taken taken = BookReader.buildFile(pdf.get());
        Optional<byte[]> buildFile = taken.buildFile();
        if (buildFile.isEmpty()) {
            input.refuse(taken.why());
            return refused();
        }
        ReadBuild read = BuildFile.read(buildFile.get());
        input.say(read.faults(), read.notes());
        if (read.build().isEmpty()) {
            return refused();
        }
        return write(buildFile.get(), taken.vouched()) ? ExitCode.ANSWERED : refused();
    }

    private boolean write(byte[] buildFile, boolean vouched) {
        PrintWriter err = spec.commandLine().getErr();
        String name = PlainText.of(out);
        try {
            FileOnDisk.create(Path.of(out), buildFile);
        } catch (FileAlreadyExistsException taken) {
            err.println(
                    "longthrow: '" + name + "' is there already and is left as it is; choose another name with --out");
            return false;
        } catch (InvalidPathException cannotBeAName) {
            err.println("longthrow: --out '" + name + "' cannot be a file's name");
            return false;
        } catch (IOException failed) {
            err.println("longthrow: '" + name + "' could not be written: " + SystemWords.plain(failed));
            return false;
        }
        PrintWriter say = spec.commandLine().getOut();
        say.println("written: " + name + ", " + buildFile.length + " bytes"
                + (vouched ? ", as they were put in by the checksum in the Book" : ""));
        if (!vouched) {
            say.println(BookReader.UNVOUCHED);
        }
        say.flush();
        return true;
    }

    private ExitCode refused() {
        spec.commandLine().getErr().flush();
        return ExitCode.INPUT_REFUSED;
    }
}
