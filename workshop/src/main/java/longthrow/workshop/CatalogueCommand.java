package longthrow.workshop;

import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import longthrow.buildfile.CatalogueFile;
import longthrow.buildfile.RowFate.Outcome;
import longthrow.workshop.json.CatalogueJson;
import longthrow.workshop.print.PlainText;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code longthrow catalogue}: what a catalogue holds, and every row that was not taken. */
@Command(
        name = "catalogue",
        description = {
            "Read catalogues of parts and machine operations: what they hold, and every bad row with its reason and its "
                    + "mend. The good rows are kept, and a bad row costs only itself: it ends with 2 where a whole file "
                    + "could not be read.",
            "CSV holds one kind of part a file, told by the file's name or by a line '# kind: connecting_rod' above the "
                    + "header; YAML holds several. Columns: docs/glossary.md."
        },
        footer = {
            "%nExamples:",
            "  longthrow catalogue examples/catalogue",
            "  longthrow catalogue --json examples/catalogue/connecting_rod.csv"
        })
final class CatalogueCommand implements Callable<ExitCode> {
    @Parameters(
            arity = "1..*",
            paramLabel = "FILE|FOLDER",
            description = "CSV or YAML files, or folders of them; - for standard input.")
    private List<String> names = new ArrayList<>();

    @Option(
            names = "--kind",
            paramLabel = "KIND",
            completionCandidates = Kinds.class,
            description = "What the rows of the CSV files are, where neither file nor name says it.")
    private @Nullable String kind;

    @Option(names = "--json", description = "One JSON document; its schema: docs/catalogue.schema.json.")
    private boolean json;

    @Spec
    private CommandSpec spec;

    @Override
    public ExitCode call() {
        CommandLine line = spec.commandLine();
        if (kind != null && !CatalogueFile.kinds().contains(kind)) {
            throw new ParameterException(
                    line, "--kind is '" + kind + "'; allowed: " + String.join(", ", CatalogueFile.kinds()));
        }
        Optional<CatalogueInput.Loaded> loaded =
                new CatalogueInput(kind == null ? "" : kind, line.getErr()).load(names);
        if (loaded.isEmpty()) {
            return ExitCode.INPUT_REFUSED;
        }
        PrintWriter out = line.getOut();
        if (json) {
            out.print(CatalogueJson.of(loaded.get().files(), loaded.get().together()));
        } else {
            print(loaded.get(), out);
        }
        out.flush();
        long refused = loaded.get().refused();
        if (refused > 0) {
            line.getErr().println("longthrow: " + many(refused, "row") + " refused; the others are kept");
        }
        List<String> unread = loaded.get().unread();
        if (!unread.isEmpty()) {
            line.getErr().println(PlainText.of("longthrow: nothing was read of " + String.join(", ", unread)));
        }
        line.getErr().flush();
        return unread.isEmpty() ? ExitCode.ANSWERED : ExitCode.INPUT_REFUSED;
    }

    private static void print(CatalogueInput.Loaded loaded, PrintWriter out) {
        List<String> lines = loaded.lines();
        lines.forEach(out::println);
        if (!lines.isEmpty()) {
            out.println();
        }
        CatalogueJson.counts(loaded.catalogue())
                .forEach((label, count) -> out.printf(Locale.ROOT, "%7d  %s%n", count, label));
        long refused = loaded.refused();
        long same = loaded.together().fates().stream()
                .filter(f -> f.outcome() == Outcome.SAME)
                .count();
        long files = loaded.files().values().stream()
                .filter(f -> !f.faults().isEmpty())
                .count();
        out.println(many(loaded.files().size(), "file") + ", "
                + many(loaded.together().fates().size(), "row") + ": "
                + many(loaded.catalogue().parts().size(), "part") + " and "
                + many(loaded.catalogue().operations().size(), "machine operation") + " kept, " + same
                + " the same again, " + refused + " refused"
                + (files == 0 ? "" : "; " + many(files, "file") + " with faults of the whole file"));
        if (!loaded.catalogue().parts().isEmpty()
                && loaded.catalogue().parts().stream().allMatch(p -> p.invented())) {
            out.println("All of it is invented, as its files say.");
        }
    }

    private static String many(long count, String what) {
        return count + " " + what + (count == 1 ? "" : "s");
    }

    /** The words for {@code --kind}. */
    static final class Kinds implements Iterable<String> {
        @Override
        public Iterator<String> iterator() {
            return CatalogueFile.kinds().iterator();
        }
    }
}
