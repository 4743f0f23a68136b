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
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

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

    /** The database is taken away under a running workshop: a fault of the disk. Where in the program it was met is shown on request alone. */
    @ParameterizedTest
    @ValueSource(strings = {"--trace serve", "serve --trace", "serve"})
    void aTraceOfAFaultIsShownWhereItIsAskedFor(String call) throws Exception {
        Path said = folder.resolve("said");
        List<String> arguments = new java.util.ArrayList<>(List.of(call.split(" ", -1)));
        Path data = folder.resolve("data");
        arguments.addAll(List.of("--port", "0", "--data", data.toString()));
        Process process = started(ProcessBuilder.Redirect.to(said.toFile()), arguments.toArray(String[]::new));
        try (BufferedReader out = process.inputReader(StandardCharsets.UTF_8)) {
            Matcher address = ADDRESS.matcher(String.valueOf(out.readLine()));
            assertThat(address.find()).isTrue();
            URI page = URI.create(address.group());
            try (java.util.stream.Stream<Path> files = java.nio.file.Files.list(data)) {
                for (Path file : files.filter(f ->
                                f.toString().endsWith(".sqlite") || f.toString().endsWith(".db"))
                        .toList()) {
                    java.nio.file.Files.delete(file);
                }
            }
            java.net.http.HttpClient client = java.net.http.HttpClient.newHttpClient();
            String token = client.send(
                            java.net.http.HttpRequest.newBuilder(page.resolve("alive"))
                                    .build(),
                            java.net.http.HttpResponse.BodyHandlers.ofString())
                    .body();
            int status = client.send(
                            java.net.http.HttpRequest.newBuilder(page.resolve("builds"))
                                    .header("Content-Type", "application/x-www-form-urlencoded")
                                    .POST(java.net.http.HttpRequest.BodyPublishers.ofString(
                                            "what=example&key=" + Visitor.key() + "&token=" + token))
                                    .build(),
                            java.net.http.HttpResponse.BodyHandlers.discarding())
                    .statusCode();
            assertThat(status).isEqualTo(500);
        } finally {
            process.destroyForcibly();
            process.waitFor(20, TimeUnit.SECONDS);
        }
        String all = java.nio.file.Files.readString(said);
        assertThat(all).contains("deleted or moved away");
        if (call.contains("--trace")) {
            assertThat(all).contains("where in the program it happened", "StoreFault", "\tat longthrow.");
        } else {
            assertThat(all).doesNotContain("\tat ", "where in the program");
        }
    }

    private static Process start(String... arguments) throws IOException {
        return started(ProcessBuilder.Redirect.DISCARD, arguments);
    }

    private static Process started(ProcessBuilder.Redirect errors, String... arguments) throws IOException {
        List<String> command = new java.util.ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-cp",
                System.getProperty("java.class.path"),
                Longthrow.class.getName()));
        command.addAll(List.of(arguments));
        return new ProcessBuilder(command).redirectError(errors).start();
    }
}
