package longthrow.workshop;

import java.io.PrintWriter;
import java.util.Optional;
import java.util.function.Function;
import longthrow.core.answer.Answer;
import longthrow.core.build.Build;
import longthrow.core.clear.Clear;
import longthrow.core.life.Life;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** {@code longthrow life}: what lets go first. */
@Command(
        name = "life",
        description = "What lets go first, at what speed, and whether the speed wanted may be run.",
        footer = {
            "%nExamples:",
            "  longthrow life my-engine.yaml",
            "  longthrow life my-engine.yaml --all",
            "  longthrow life my-engine.yaml --catalogue parts.yaml",
            "  longthrow life --json my-engine.yaml > answer.json"
        })
final class LifeCommand extends BuildQuestion {
    @Mixin
    private CatalogueOption catalogues;

    LifeCommand() {
        super("weighing");
    }

    @Override
    Optional<Function<Build, Answer>> question(PrintWriter err) {
        return catalogues
                .read(err)
                .map(catalogue ->
                        build -> Life.of(build, catalogue, Clear.of(build).clearances()));
    }
}
