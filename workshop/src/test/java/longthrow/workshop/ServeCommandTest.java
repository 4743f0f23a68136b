package longthrow.workshop;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedReader;
import java.io.IOException;
import java.net.HttpURLConnection;
import java.net.ServerSocket;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ServeCommandTest {
    private static final Pattern ADDRESS = Pattern.compile("http://127\\.0\\.0\\.1:\\d+/");

    @TempDir
    private Path folder;

    @Test
    void printsItsAddressAnswersAndEndsCleanlyWhenToldTo() throws Exception {
        Process process = start("serve", "--port", "0", "--data", folder.toString());
        try (BufferedReader out = process.inputReader(StandardCharsets.UTF_8)) {
            String first = String.valueOf(out.readLine());
            Matcher address = ADDRESS.matcher(first);
            assertThat(address.find()).as(first).isTrue();
            HttpURLConnection page = (HttpURLConnection)
                    URI.create(address.group() + "builds").toURL().openConnection();
            assertThat(page.getResponseCode()).isEqualTo(200);
            assertThat(CommandRun.of("serve", "--port", "0", "--data", folder.toString())
                            .err())
                    .as("a second one on the same data")
                    .contains("open");
            process.destroy();
            assertThat(process.waitFor(20, TimeUnit.SECONDS)).isTrue();
        } finally {
            process.destroyForcibly();
        }
        try (Serving again = Serving.start(folder, 0, Example.ofThisProgram())) {
            assertThat(again.store().health().damage()).isEmpty();
        }
    }

    @Test
    void aSecondOneOnTheSameDataIsRefusedAndSaysWhy() throws IOException {
        try (Serving first = Serving.start(folder, 0, Example.ofThisProgram())) {
            CommandRun second = CommandRun.of("serve", "--port", "0", "--data", folder.toString());
            assertThat(second.code()).isEqualTo(2);
            assertThat(second.err()).contains(folder.toRealPath().toString()).doesNotContain("Exception");
            assertThat(first.store().builds()).isEmpty();
        }
    }

    @Test
    void aTakenPortIsRefusedWithTheWayRound() throws IOException {
        try (ServerSocket taken = new ServerSocket(0, 1, java.net.InetAddress.getLoopbackAddress())) {
            CommandRun run =
                    CommandRun.of("serve", "--port", String.valueOf(taken.getLocalPort()), "--data", folder.toString());
            assertThat(run.code()).isEqualTo(2);
            assertThat(run.err())
                    .contains("port " + taken.getLocalPort(), "--port 0")
                    .doesNotContain("Exception");
        }
    }

    @Test
    void aPortThatIsNoneIsRefused() {
        CommandRun run = CommandRun.of("serve", "--port", "70000", "--data", folder.toString());
        assertThat(run.code()).isEqualTo(2);
        assertThat(run.err()).contains("70000", "0 to 65535");
    }

    @Test
    void aFolderThatCannotBeIsRefused() throws IOException {
        Path file = folder.resolve("a-file");
        java.nio.file.Files.writeString(file, "not a folder");
        CommandRun run = CommandRun.of("serve", "--port", "0", "--data", file.toString());
        assertThat(run.code()).isEqualTo(2);
        assertThat(run.err()).contains("a-file").doesNotContain("Exception");
    }

    private static Process start(String... arguments) throws IOException {
        List<String> command = new java.util.ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-cp",
                System.getProperty("java.class.path"),
                Longthrow.class.getName()));
        command.addAll(List.of(arguments));
        return new ProcessBuilder(command)
                .redirectError(ProcessBuilder.Redirect.DISCARD)
                .start();
    }
}
