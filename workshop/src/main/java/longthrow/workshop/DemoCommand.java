package longthrow.workshop;

import java.io.IOException;
import java.io.InputStream;
import java.io.PrintWriter;
import java.util.List;
import java.util.concurrent.Callable;
import longthrow.buildfile.BuildFile;
import longthrow.buildfile.ReadBuild;
import longthrow.core.answer.Answer;
import longthrow.core.build.Build;
import longthrow.core.measure.Measure;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** {@code longthrow demo}: the main job on the example that comes with the program. */
@Command(
        name = "demo",
        description =
                "Measure the example engine that comes along. It is invented; a stop in its answer is no fault, so this "
                        + "ends with 0.",
        footer = {"%nExample:", "  longthrow demo"})
final class DemoCommand implements Callable<ExitCode> {
    /** The same text as examples/demo.yaml: the build takes it from there. */
    static final String RESOURCE = "demo.yaml";

    @Mixin
    private AnswerOptions options;

    @Spec
    private CommandSpec spec;

    @Override
    public ExitCode call() throws IOException {
        CommandLine line = spec.commandLine();
        ReadBuild read = BuildFile.read(text());
        Build build = read.build()
                .orElseThrow(() -> new IllegalStateException(
                        "the example does not read: " + read.faults().get(0).message()));
        Answer answer =
                Patience.during("measuring", line.getErr(), () -> Measure.of(options.inUnits(build), List.of()));
        options.print(answer, line);
        if (!options.isJson()) {
            sayWhatNext(line.getOut());
        }
        return ExitCode.ANSWERED;
    }

    static byte[] text() throws IOException {
        try (InputStream in = DemoCommand.class.getResourceAsStream(RESOURCE)) {
            if (in == null) {
                throw new IllegalStateException("resource " + RESOURCE + " is missing from the jar; build again");
            }
            return in.readAllBytes();
        }
    }

    private static void sayWhatNext(PrintWriter out) {
        out.println();
        out.println("Its slip: compression height read from the top of the pin.");
        out.println("The rest of the stack disagrees with it, see SUSPECTS.");
        out.println();
        out.println("This engine is invented. With yours:");
        out.println("  ./longthrow measure --blank > my-engine.yaml");
        out.println("  # fill in what you have read, each with its unit");
        out.println("  ./longthrow measure my-engine.yaml");
        out.flush();
    }
}
