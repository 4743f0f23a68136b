package longthrow.workshop;

import io.javalin.util.JavalinBindException;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.CountDownLatch;
import java.util.stream.Stream;
import longthrow.workshop.print.PlainText;
import longthrow.workshop.store.DataFolder;
import longthrow.workshop.store.StoreFault;
import longthrow.workshop.web.Server;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** {@code longthrow serve}: the workshop in a browser of this machine. */
@Command(
        name = "serve",
        description = {
            "Open the workshop for a browser on this machine: builds, readings and what follows from them, kept in one folder.",
            "Nothing is fetched from outside and nothing sent there. Ctrl-C ends it; everything that was kept is on the disk."
        },
        footer = {"%nExamples:", "  longthrow serve", "  longthrow serve --port 0 --data my-workshop"})
final class ServeCommand implements Callable<ExitCode> {
    /** Not given to another service by IANA as far as is known; from memory. */
    private static final int USUAL_PORT = 8173;

    private static final int HIGHEST_PORT = 65_535;

    /** Setting of the log, of the place where faults of the store are said. */
    private static final String TRACES = "org.slf4j.simpleLogger.log." + Server.class.getName();

    @Option(
            names = "--port",
            paramLabel = "PORT",
            defaultValue = "" + USUAL_PORT,
            description = "Where it listens, on this machine alone; 0 takes any that is free. Usual: ${DEFAULT-VALUE}.")
    private int port;

    @Option(
            names = "--data",
            paramLabel = "FOLDER",
            description = "Where the builds lie. Usual: the folder for data of programs of this system.")
    private @Nullable String data;

    @Spec
    private CommandSpec spec;

    @Override
    public ExitCode call() throws IOException, InterruptedException {
        CommandLine line = spec.commandLine();
        if (port < 0 || port > HIGHEST_PORT) {
            throw new ParameterException(
                    line, "--port is " + port + "; allowed: 0 to " + HIGHEST_PORT + ", 0 for any that is free");
        }
        if (Stream.of(line, spec.root().commandLine())
                .anyMatch(call -> call.getParseResult().hasMatchedOption(Longthrow.TRACE))) {
            System.setProperty(TRACES, "debug"); // read when the first page is served
        }
        Optional<Serving> started = start(line.getErr());
        if (started.isEmpty()) {
            return ExitCode.INPUT_REFUSED;
        }
        Serving serving = started.get();
        CountDownLatch end = new CountDownLatch(1);
        Thread closing = new Thread(
                () -> {
                    serving.close();
                    end.countDown();
                },
                "closing");
        Runtime.getRuntime().addShutdownHook(closing);
        say(serving, line.getOut());
        end.await(); // Ctrl-C, or the end of the session
        return ExitCode.ANSWERED;
    }

    private Optional<Serving> start(PrintWriter err) throws IOException {
        try {
            Map<String, String> properties = new HashMap<>();
            for (String name : System.getProperties().stringPropertyNames()) {
                properties.put(name, System.getProperty(name, ""));
            }
            Path folder = DataFolder.of(System.getenv(), properties, Optional.ofNullable(data))
                    .path();
            if (Files.exists(folder) && !Files.isDirectory(folder)) {
                err.println(
                        PlainText.of(
                                "longthrow: " + folder
                                        + " is a file, and the builds lie in a folder. Choose another with --data; it is made where it is not there yet"));
                err.flush();
                return Optional.empty();
            }
            return Optional.of(Serving.start(folder, port, Example.ofThisProgram()));
        } catch (StoreFault fault) {
            err.println(PlainText.of("longthrow: " + fault.getMessage()));
        } catch (JavalinBindException taken) {
            err.println("longthrow: port " + port
                    + " cannot be had: another program listens there, or this one already does."
                    + " Open http://127.0.0.1:" + port + "/ to see, or choose another: longthrow serve --port 0");
        }
        err.flush();
        return Optional.empty();
    }

    private static void say(Serving serving, PrintWriter out) {
        out.println("Open " + serving.address() + " in a browser of this machine.");
        out.println(PlainText.of("The builds lie in " + serving.store().folder()));
        serving.store().health().damage().forEach(d -> out.println(PlainText.of("Damaged: " + d)));
        serving.store()
                .health()
                .newestGoodBackup()
                .ifPresent(g -> out.println(PlainText.of("The newest good backup is " + g.words() + ".")));
        serving.store().health().notes().forEach(n -> out.println(PlainText.of(n)));
        out.println("Ctrl-C ends it.");
        out.flush();
    }
}
