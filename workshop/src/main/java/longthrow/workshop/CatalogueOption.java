package longthrow.workshop;

import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import longthrow.core.catalogue.Catalogue;
import picocli.CommandLine.Option;

/** The option by which commands are given catalogues. */
final class CatalogueOption {
    @Option(
            names = "--catalogue",
            paramLabel = "FILE|FOLDER",
            description = "Parts and machine operations, CSV or YAML, or a folder of them; may be given several times.")
    private List<String> named = new ArrayList<>();

    /** All that was named, read as one; empty where some cannot be read, which is said. */
    Optional<Catalogue> read(PrintWriter err) {
        return new CatalogueInput("", err).together(named);
    }
}
