package longthrow.workshop;

import java.io.PrintWriter;
import java.util.Optional;
import java.util.function.Function;
import longthrow.core.answer.Answer;
import longthrow.core.build.Build;
import longthrow.core.clear.Clear;
import longthrow.core.shake.Shake;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** {@code longthrow shake}: where the shake goes. */
@Command(
        name = "shake",
        description = "Where the shake goes: masses, balance factor, what a counterweight can move and what it cannot.",
        footer = {
            "%nExamples:",
            "  longthrow shake my-engine.yaml",
            "  longthrow shake my-engine.yaml --catalogue parts.yaml",
            "  longthrow shake --json my-engine.yaml > answer.json"
        })
final class ShakeCommand extends BuildQuestion {
    @Mixin
    private CatalogueOption catalogues;

    ShakeCommand() {
        super("balancing");
    }

    @Override
    Optional<Function<Build, Answer>> question(PrintWriter err) {
        return catalogues.read(err).map(catalogue -> build -> Clear.settled(Shake.of(build, catalogue), build));
    }
}
