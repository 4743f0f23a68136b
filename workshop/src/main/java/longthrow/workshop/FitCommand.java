package longthrow.workshop;

import java.io.PrintWriter;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import longthrow.core.answer.Answer;
import longthrow.core.build.Build;
import longthrow.core.catalogue.Catalogue;
import longthrow.core.catalogue.CataloguePart;
import longthrow.core.fit.Fit;
import longthrow.workshop.print.PlainText;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code longthrow fit}: which parts go together. */
@Command(
        name = "fit",
        description = {
            "Which crank, piston, rod and gasket close the stack and go together, why the others do not, and what "
                    + "machining closes the rest. Without a catalogue the stack is solved for each of its figures.",
            "What may be bought, the budget and what counts first stand in the build file under 'fit:'."
        },
        footer = {
            "%nExamples:",
            "  longthrow fit my-engine.yaml",
            "  longthrow fit my-engine.yaml --catalogue examples/catalogue",
            "  longthrow fit my-engine.yaml --catalogue parts.yaml --why R1"
        })
final class FitCommand extends BuildQuestion {
    @Mixin
    private CatalogueOption catalogues;

    @Option(
            names = "--why",
            paramLabel = "CODE",
            description =
                    "Only with this part: what it goes with, or what keeps it out and the least change that cures it.")
    private @Nullable String why;

    FitCommand() {
        super("searching");
    }

    @Override
    Optional<Function<Build, Answer>> question(PrintWriter err) {
        String code = why;
        return catalogues
                .read(err)
                .filter(catalogue -> code == null || !isUnknown(code, catalogue, err))
                .map(catalogue -> build -> code == null ? Fit.of(build, catalogue) : Fit.why(build, catalogue, code));
    }

    /** Whether no part has this code; says so. */
    private static boolean isUnknown(String code, Catalogue catalogue, PrintWriter err) {
        if (catalogue.parts().stream().anyMatch(p -> p.code().equals(code))) {
            return false;
        }
        boolean operation =
                catalogue.operations().stream().anyMatch(o -> o.code().equals(code));
        String alike = catalogue.parts().stream()
                .map(CataloguePart::code)
                .filter(c -> c.equalsIgnoreCase(code)
                        || (!code.isEmpty() && c.regionMatches(true, 0, code, 0, Math.min(2, code.length()))))
                .limit(8)
                .collect(Collectors.joining(", "));
        String shown = code.length() > 40 ? code.substring(0, 40) + "…" : code;
        err.println(PlainText.of("longthrow: --why '" + shown + "': "
                + (operation
                        ? "that is machining, not a part; it is named where a combination uses it"
                        : "no part of the catalogue has this code"
                                + (alike.isEmpty()
                                        ? "; 'longthrow catalogue' shows what there is"
                                        : "; alike: " + alike))));
        err.flush();
        return true;
    }
}
