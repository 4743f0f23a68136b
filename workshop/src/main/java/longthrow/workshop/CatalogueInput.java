package longthrow.workshop;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import longthrow.buildfile.CatalogueFile;
import longthrow.buildfile.Fault;
import longthrow.buildfile.Imported;
import longthrow.buildfile.RowFate;
import longthrow.core.catalogue.Catalogue;
import longthrow.workshop.print.PlainText;

/** Catalogues the owner names, files or folders of them, read as one. */
final class CatalogueInput {
    private static final List<String> YAML = List.of(".yaml", ".yml");
    private static final List<String> CSV = List.of(".csv", ".tsv");

    /** Bad rows told before the rest is left to the command that checks a catalogue; layout. */
    private static final int MOST_LINES = 8;

    private final String kind;
    private final PrintWriter err;

    /**
     * A reader.
     * @param kind of the rows of a CSV file; empty to be told by each file or its name
     * @param err  where to say that a file cannot be opened
     */
    CatalogueInput(String kind, PrintWriter err) {
        this.kind = kind;
        this.err = err;
    }

    /**
     * What was read.
     * @param files    each by itself, under its name
     * @param together all as one: the same row or the same code in two files is seen
     */
    record Loaded(Map<String, Imported> files, Imported together) {
        Catalogue catalogue() {
            return together.catalogue();
        }

        /** Names of those that are wrong as a whole, so that no row of them was looked at. */
        List<String> unread() {
            return files.entrySet().stream()
                    .filter(f -> !f.getValue().faults().isEmpty()
                            && f.getValue().fates().isEmpty())
                    .map(Map.Entry::getKey)
                    .toList();
        }

        /** Rows that were not taken. */
        long refused() {
            return together.fates().stream()
                    .filter(f -> f.outcome().isRefused())
                    .count();
        }

        /** One line for everything that is wrong or to be looked at, such that an editor can jump there. */
        List<String> lines() {
            List<String> lines = new ArrayList<>();
            files.forEach((name, file) -> {
                file.notes().forEach(n -> lines.add(name + ":" + n.line() + ": " + n.path() + ": " + n.text()));
                file.faults().forEach(f -> lines.add(line(name, "", f)));
            });
            for (RowFate fate : together.fates()) {
                fate.reasons().forEach(f -> lines.add(line(fate.file(), fate.code(), f)));
                fate.remarks()
                        .forEach(n -> lines.add(fate.file() + ":" + n.line() + ":" + code(fate.code()) + " " + n.path()
                                + ": " + n.text()));
                if (fate.outcome() == RowFate.Outcome.SAME) {
                    lines.add(fate.file() + ":" + fate.line() + ":" + code(fate.code()) + " is the same as "
                            + fate.other() + ", and counted once");
                }
            }
            return lines.stream().map(PlainText::of).toList();
        }

        private static String code(String code) {
            return code.isEmpty() ? "" : " " + code + ":";
        }

        private static String line(String name, String code, Fault fault) {
            return name + ":"
                    + (fault.line() > 0 ? fault.line() + ":" : "")
                    + (fault.line() > 0 && fault.column() > 0 ? fault.column() + ":" : "")
                    + code(code)
                    + (fault.path().isEmpty() ? "" : " " + fault.path() + ":")
                    + (fault.found().isEmpty() ? "" : " '" + fault.found() + "'")
                    + " " + fault.why()
                    + (fault.allowed().isEmpty() ? "" : "; allowed: " + fault.allowed())
                    + (fault.mend().isEmpty() ? "" : "; mend: " + fault.mend());
        }
    }

    /** All of them; empty after saying why one of them cannot be opened. */
    Optional<Loaded> load(List<String> names) {
        Map<String, Imported> files = new LinkedHashMap<>();
        boolean opened = true;
        for (String name : names) {
            Optional<List<String>> there = files(name);
            opened &= there.isPresent();
            for (String file : there.orElse(List.of())) {
                Optional<byte[]> bytes = new InputFile(file, InputFile.Holds.CATALOGUE, err).read();
                opened &= bytes.isPresent();
                bytes.ifPresent(b -> files.put(shown(file), read(file, b)));
            }
        }
        err.flush();
        return opened
                ? Optional.of(new Loaded(files, Imported.together(List.copyOf(files.values()))))
                : Optional.empty();
    }

    private Imported read(String file, byte[] bytes) {
        boolean yaml = file.equals(InputFile.STANDARD_INPUT)
                ? new String(bytes, 0, Math.min(bytes.length, 4000), StandardCharsets.UTF_8)
                        .lines()
                        .anyMatch(l -> l.startsWith("catalogue:"))
                : endsWith(file, YAML);
        return yaml ? CatalogueFile.yaml(file, bytes) : CatalogueFile.csv(kind, shown(file), bytes);
    }

    private static String shown(String file) {
        return file.equals(InputFile.STANDARD_INPUT) ? "standard input" : file;
    }

    /** The file, or those of a folder by name; the folders in it are not looked into. */
    private Optional<List<String>> files(String name) {
        try {
            if (name.isEmpty() || name.equals(InputFile.STANDARD_INPUT) || !Files.isDirectory(Path.of(name))) {
                return Optional.of(List.of(name));
            }
            try (Stream<Path> all = Files.list(Path.of(name))) {
                List<String> found = all.filter(Files::isRegularFile)
                        .map(Path::toString)
                        .filter(f -> endsWith(f, YAML) || endsWith(f, CSV))
                        .sorted()
                        .toList();
                if (!found.isEmpty()) {
                    return Optional.of(found);
                }
                err.println(
                        PlainText.of("longthrow: the folder " + name + " holds no catalogue; wanted are files that end"
                                + " with " + String.join(", ", CSV) + ", " + String.join(", ", YAML)));
            }
        } catch (InvalidPathException cannotBeAName) {
            return Optional.of(List.of(name)); // reading it says so
        } catch (IOException failed) {
            err.println(
                    PlainText.of("longthrow: the folder " + name + " cannot be read: " + SystemWords.plain(failed)));
        }
        return Optional.empty();
    }

    private static boolean endsWith(String file, List<String> endings) {
        return endings.stream().anyMatch(file.toLowerCase(Locale.ROOT)::endsWith);
    }

    /**
     * All catalogues as one, the good rows of them, after saying what is wrong; empty when one of them cannot be read as a whole: that nothing of it
     * fits would be an answer about parts nobody looked at.
     */
    Optional<Catalogue> together(List<String> names) {
        if (names.isEmpty()) {
            return Optional.of(Catalogue.EMPTY);
        }
        Optional<Loaded> loaded = load(names);
        loaded.ifPresent(l -> {
            l.lines().stream().limit(MOST_LINES).forEach(err::println);
            if (l.lines().size() > MOST_LINES) {
                err.println("and " + (l.lines().size() - MOST_LINES)
                        + " lines more; 'longthrow catalogue' shows every row with its reason");
            }
        });
        List<String> unread = loaded.map(Loaded::unread).orElse(List.of());
        if (!unread.isEmpty()) {
            err.println(PlainText.of("longthrow: " + String.join(", ", unread)
                    + (unread.size() == 1 ? " is no catalogue as it stands" : " are no catalogues as they stand")
                    + ", so nothing was searched; mend it or leave it out, and call again"));
        }
        return loaded.filter(l -> unread.isEmpty()).map(Loaded::catalogue);
    }
}
