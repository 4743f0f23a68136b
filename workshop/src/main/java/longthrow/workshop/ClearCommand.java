package longthrow.workshop;

import java.io.PrintWriter;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
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
        Optional<Clearance> pair = answer.clearances().stream()
                .filter(told -> told.key().equals(relief))
                .findFirst();
        Optional<ReliefCut> cut = pair.flatMap(told -> ReliefCut.of(build, told));
        if (cut.isEmpty()) {
            String with = answer.clearances().stream()
                    .filter(ReliefCut::isFor)
                    .map(Clearance::key)
                    .collect(Collectors.joining(", "));
            line.getErr()
                    .println("longthrow: --relief: "
                            + pair.map(told -> "nothing is cut to an outline for '" + relief + "': "
                                            + told.state().label())
                                    .orElse("'" + relief + "' is no pair of this engine")
                            + (with.isEmpty() ? "; it has no outline" : "; it has outlines for " + with));
            line.getErr().flush();
            return pair.isEmpty() ? ExitCode.INPUT_REFUSED : ExitCode.of(answer);
        }
        line.getOut().print(ReliefSheet.of(cut.get(), "relief"));
        line.getOut().flush();
        return ExitCode.of(answer);
    }
}
