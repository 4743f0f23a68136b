package longthrow.workshop;

import java.io.PrintWriter;
import java.util.Optional;
import java.util.function.Function;
import longthrow.core.answer.Answer;
import longthrow.core.build.Build;
import longthrow.core.clear.Clear;
import picocli.CommandLine.Command;

/** {@code longthrow clear}: whether anything touches. */
@Command(
        name = "clear",
        description = "Whether anything touches, cold and running, through two turns.",
        footer = {
            "%nExamples:",
            "  longthrow clear my-engine.yaml",
            "  longthrow clear my-engine.yaml --all",
            "  longthrow clear --json my-engine.yaml > answer.json"
        })
final class ClearCommand extends BuildQuestion {
    ClearCommand() {
        super("turning it over");
    }

    @Override
    Optional<Function<Build, Answer>> question(PrintWriter err) {
        return Optional.of(Clear::of);
    }
}
