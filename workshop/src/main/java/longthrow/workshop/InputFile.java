package longthrow.workshop;

import java.io.BufferedInputStream;
import java.io.FileInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.PrintWriter;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.List;
import java.util.Optional;
import longthrow.buildfile.BuildFile;
import longthrow.buildfile.CatalogueFile;
import longthrow.buildfile.Fault;
import longthrow.buildfile.Note;
import longthrow.buildfile.ReadBuild;
import longthrow.core.build.Build;
import longthrow.workshop.book.BookReader;
import longthrow.workshop.print.PlainText;

/** A file the owner names: its bytes, or a plain word why not; and its faults, each with its place. */
final class InputFile {
    /** Name that stands for standard input. */
    static final String STANDARD_INPUT = "-";

    private final String name;
    private final Holds holds;
    private final PrintWriter err;

    /**
     * The engine in a build file, with what was noticed in it said; empty where none can be read, which is said.
     * @param name of the file; - for standard input
     */
    static Optional<Build> build(String name, PrintWriter err) {
        InputFile input = new InputFile(name, Holds.BUILD, err);
        Optional<ReadBuild> read = input.read().map(BuildFile::read);
        read.ifPresent(r -> input.say(r.faults(), r.notes()));
        return read.flatMap(ReadBuild::build);
    }

    /** What the file should hold, and what is said with it. */
    enum Holds {
        /** An engine to work on. */
        BUILD("nothing worked out", "build file"),
        /** An engine of which one value is to be set. */
        BUILD_TO_CHANGE("the file is left as it was", "build file"),
        /** A Book with its build file inside. */
        BOOK("nothing taken out", "Book", BookReader.MOST_BYTES),
        /** Runs on a dynamometer. */
        RUNS("nothing worked out", "sheet of runs"),
        /** Versions of donors. */
        DONORS("nothing worked out", "file of donors"),
        /** Parts and machine operations. */
        CATALOGUE("its rows are left out", "catalogue", CatalogueFile.MOST_BYTES);

        /** Far more than the reader of the file takes, which says so better. */
        private static final int USUAL_MOST_BYTES = 16 << 20;

        private final String consequence;
        private final String plainName;

        /** What is taken into memory at most, so that a wrong name cannot fill it. */
        private final int mostBytes;

        Holds(String consequence, String plainName) {
            this(consequence, plainName, USUAL_MOST_BYTES);
        }

        Holds(String consequence, String plainName, int mostBytes) {
            this.consequence = consequence;
            this.plainName = plainName;
            this.mostBytes = mostBytes;
        }
    }

    /** @param err where to say what is wrong */
    InputFile(String name, Holds holds, PrintWriter err) {
        this.name = name;
        this.holds = holds;
        this.err = err;
    }

    /** All of the file; empty after saying why not. */
    Optional<byte[]> read() {
        if (name.isEmpty()) {
            refuse("names no file: the name is empty");
            return Optional.empty();
        }
        try {
            byte[] bytes = name.equals(STANDARD_INPUT) ? atMost(System.in) : ofPath(Path.of(name));
            if (bytes.length <= holds.mostBytes) {
                return Optional.of(bytes);
            }
            refuse("is larger than " + (holds.mostBytes >> 20) + " MB; that is no " + holds.plainName
                    + ". Look at the name again");
        } catch (InvalidPathException cannotBeAName) {
            refuse("cannot be a file's name: " + cannotBeAName.getReason());
        } catch (AccessDeniedException closed) {
            refuse("may not be read by you; as its owner, open it with: chmod u+r");
        } catch (IOException failed) {
            refuse("cannot be read: " + reason(failed));
        }
        return Optional.empty();
    }

    private byte[] ofPath(Path path) throws IOException {
        if (Files.isDirectory(path)) {
            throw new IOException("it is a folder; name the file in it");
        }
        if (Files.isSymbolicLink(path)) {
            follow(path);
        }
        if (Files.notExists(path)) {
            throw new IOException(
                    holds == Holds.CATALOGUE
                            ? "there is no such file or folder; look at the name. examples/catalogue shows how one is written"
                            : holds == Holds.RUNS
                                    ? "there is no such file; look at the name. examples/dyno shows how one is written"
                                    : holds == Holds.DONORS
                                            ? "there is no such file; look at the name. examples/donors.yaml shows how one is written"
                                            : holds == Holds.BOOK
                                                    ? "there is no such file; look at the name"
                                                    : "there is no such file. 'longthrow measure --blank > " + name
                                                            + "' makes an empty one");
        }
        if (!Files.isReadable(path)) {
            throw new AccessDeniedException(name);
        }
        if (Files.isRegularFile(path) && Files.size(path) <= holds.mostBytes) {
            return Files.readAllBytes(path); // once, where a list of pieces would take the memory twice
        }
        // Buffered also because a FileInputStream asks for its length and place when many bytes are wanted: a pipe has
        // none.
        try (InputStream in = new BufferedInputStream(new FileInputStream(path.toFile()))) {
            return atMost(in);
        }
    }

    /** A link that leads nowhere, or back to itself, could otherwise not be told from a closed file. */
    private static void follow(Path link) throws IOException {
        try {
            link.getFileSystem().provider().checkAccess(link);
        } catch (NoSuchFileException | AccessDeniedException plainEnough) {
            return; // said of the file itself
        } catch (FileSystemException failed) {
            throw new IOException(SystemWords.plain(failed), failed);
        }
    }

    private byte[] atMost(InputStream in) throws IOException {
        return in.readNBytes(holds.mostBytes + 1);
    }

    private static String reason(IOException failed) {
        return failed.getMessage() == null ? failed.toString() : failed.getMessage();
    }

    /** Whether it is a pipe or a device: read once, and never to be replaced by a file. */
    boolean isStream() {
        try {
            return Files.readAttributes(Path.of(name), BasicFileAttributes.class)
                    .isOther();
        } catch (InvalidPathException | IOException notThere) {
            return false; // reading it says what is wrong
        }
    }

    void refuse(String why) {
        err.println(PlainText.of("longthrow: " + shownName() + " " + why));
    }

    /** What was understood, then what is wrong. */
    void say(List<Fault> faults, List<Note> notes) {
        echo(notes);
        if (!faults.isEmpty()) {
            report(faults);
        }
        err.flush();
    }

    /** Every fault, one a line, so that an editor can jump to each: {@code file:line:column: key: what}. */
    private void report(List<Fault> faults) {
        for (Fault fault : faults) {
            StringBuilder line = new StringBuilder(shownName()).append(':');
            if (fault.line() > 0) {
                line.append(fault.line()).append(':');
                if (fault.column() > 0) {
                    line.append(fault.column()).append(':');
                }
            }
            line.append(fault.path().isEmpty() ? "" : " " + fault.path() + ":");
            line.append(fault.found().isEmpty() ? "" : " '" + fault.found() + "'");
            line.append(' ').append(fault.why());
            line.append(fault.allowed().isEmpty() ? "" : "; allowed: " + fault.allowed());
            line.append(fault.mend().isEmpty() ? "" : "; mend: " + fault.mend());
            err.println(PlainText.of(line.toString()));
        }
        err.println("longthrow: " + faults.size() + (faults.size() == 1 ? " fault" : " faults") + " in " + shownName()
                + ", " + holds.consequence + "; mend " + (faults.size() == 1 ? "it" : "them") + " and call again");
    }

    /** How anything unusual was understood. */
    private void echo(List<Note> notes) {
        for (Note note : notes) {
            String at = note.line() > 0 ? note.line() + ": " : " ";
            err.println(PlainText.of(shownName() + ":" + at + note.path() + ": " + note.text()));
        }
    }

    private String shownName() {
        if (name.isEmpty()) {
            return "''";
        }
        return name.equals(STANDARD_INPUT) ? "standard input" : PlainText.of(name);
    }
}
