package longthrow.workshop;

import java.io.PrintWriter;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import longthrow.core.answer.Answer;
import longthrow.core.answer.Clearance;
import longthrow.core.build.Build;
import longthrow.core.clear.Clear;
import longthrow.core.clear.ReliefCut;
import longthrow.workshop.draw.ReliefSheet;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** {@code longthrow clear}: whether anything touches. */
@Command(
        name = "clear",
        description = "Whether anything touches, cold and running, through two turns.",
        footer = {
            "%nExamples:",
            "  longthrow clear my-engine.yaml",
            "  longthrow clear my-engine.yaml --all",
            "  longthrow clear --json my-engine.yaml > answer.json",
            "  longthrow clear my-engine.yaml --relief skirt_to_counterweight > skirt.svg"
        })
final class ClearCommand extends BuildQuestion {
    @Option(
            names = "--relief",
            paramLabel = "PAIR",
            description =
                    "Instead of the answer, the outline of what comes off for one pair, as an SVG to print at full size and lay"
                            + " on the part. PAIR is its key in the JSON.")
    private String relief = "";

    ClearCommand() {
        super("turning it over");
    }

    @Override
    Optional<Function<Build, Answer>> question(PrintWriter err) {
        return Optional.of(Clear::of);
    }

    @Override
    ExitCode tell(Build build, Answer answer, CommandLine line) {
        if (relief.isEmpty()) {
            return super.tell(build, answer, line);
        }
        Optional<ReliefCut> cut = answer.clearances().stream()
                .filter(pair -> pair.key().equals(relief))
                .findFirst()
                .flatMap(pair -> ReliefCut.of(build, pair));
        if (cut.isEmpty()) {
            List<String> with = answer.clearances().stream()
                    .filter(ReliefCut::isFor)
                    .map(Clearance::key)
                    .toList();
            line.getErr()
                    .println("longthrow: --relief: '" + relief
                            + "' is no pair of which something is cut to an outline; "
                            + (with.isEmpty() ? "this engine has none" : "this engine has " + String.join(", ", with)));
            line.getErr().flush();
            return ExitCode.INPUT_REFUSED;
        }
        line.getOut().print(ReliefSheet.of(cut.get(), "relief"));
        line.getOut().flush();
        return ExitCode.of(answer);
    }
}
