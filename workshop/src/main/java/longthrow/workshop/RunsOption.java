package longthrow.workshop;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import longthrow.buildfile.DynoSheetFile;
import longthrow.buildfile.ReadDynoSheet;
import longthrow.buildfile.log.LogsOfASheet;
import longthrow.core.dyno.DynoSheet;
import longthrow.core.dyno.Logs;
import picocli.CommandLine.Option;

/** The option by which commands are given sheets of runs. */
final class RunsOption {
    @Option(
            names = "--dyno",
            paramLabel = "SHEET",
            description =
                    "A sheet of runs on a dynamometer; logs that it names lie beside it. May be given several times.")
    private List<String> named = new ArrayList<>();

    /**
     * A sheet that was read.
     * @param folder in which its logs lie
     */
    record Read(DynoSheet sheet, Path folder) {
        /** Its loggers' files. */
        Logs logs() {
            return new LogsOfASheet(
                    sheet,
                    name -> LogOnDisk.of(folder, name),
                    Runtime.getRuntime().availableProcessors());
        }
    }

    /** All that were named; empty where one cannot be read, which is said. */
    Optional<List<Read>> read(PrintWriter err) {
        List<Read> all = new ArrayList<>();
        Set<String> before = new LinkedHashSet<>();
        boolean isRead = true;
        for (String name : named) {
            InputFile input = new InputFile(name, InputFile.Holds.RUNS, err);
            Optional<Read> sheet = Optional.empty();
            if (name.equals(InputFile.STANDARD_INPUT)) {
                input.refuse("is no sheet of runs: logs lie beside a sheet; give --dyno the name of its file");
            } else if (!before.add(name)) {
                input.refuse("is given twice with --dyno; give each sheet once");
            } else {
                sheet = read(name, err);
            }
            sheet.ifPresent(all::add);
            isRead &= sheet.isPresent();
        }
        return isRead ? Optional.of(all) : Optional.empty();
    }

    /** One sheet; empty where it cannot be read, which is said. */
    static Optional<Read> read(String name, PrintWriter err) {
        InputFile input = new InputFile(name, InputFile.Holds.RUNS, err);
        Optional<ReadDynoSheet> read = input.read().map(DynoSheetFile::read);
        read.ifPresent(r -> input.say(r.faults(), r.notes()));
        return read.flatMap(ReadDynoSheet::sheet).map(sheet -> new Read(sheet, folder(name)));
    }

    private static Path folder(String name) {
        return name.equals(InputFile.STANDARD_INPUT)
                ? Path.of("")
                : Optional.ofNullable(Path.of(name).toAbsolutePath().getParent())
                        .orElse(Path.of(""));
    }
}
