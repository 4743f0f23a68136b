package longthrow.workshop;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** The built program serving a folder in a process of its own, as an owner starts it. */
final class ServedProgram implements AutoCloseable {
    private static final Pattern ADDRESS = Pattern.compile("http://127\\.0\\.0\\.1:\\d+/");
    private static final int SECONDS = 30;

    private final Process process;
    private final String address;

    private ServedProgram(Process process, String address) {
        this.process = process;
        this.address = address;
    }

    /**
     * Starts it and waits until it says where it serves.
     * @param program the launcher
     */
    static ServedProgram in(Path program, Path folder) {
        try {
            Process process = new ProcessBuilder(
                            program.toString(), "serve", "--port", "0", "--data", folder.toString())
                    .redirectError(ProcessBuilder.Redirect.INHERIT)
                    .start();
            BufferedReader out = process.inputReader(StandardCharsets.UTF_8);
            StringBuilder said = new StringBuilder();
            Matcher address = ADDRESS.matcher(said);
            while (!address.reset(said).find()) {
                String line = out.readLine();
                if (line == null) {
                    process.destroyForcibly();
                    throw new AssertionError("no address in: " + said);
                }
                said.append(line).append('\n');
            }
            return new ServedProgram(process, address.group());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Of its pages. */
    String address() {
        return address;
    }

    /** Ended as by its owner; its folder is free then. */
    @Override
    public void close() {
        process.destroy();
        try {
            if (!process.waitFor(SECONDS, TimeUnit.SECONDS)) {
                process.destroyForcibly();
                throw new AssertionError("it did not end within " + SECONDS + " s");
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}
