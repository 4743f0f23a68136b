package longthrow.workshop;

import com.microsoft.playwright.Browser;
import com.microsoft.playwright.BrowserType;
import com.microsoft.playwright.Playwright;
import java.io.File;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** The browser of this machine, started once for all tests. Nothing is fetched: it is the distribution's, or there is none. */
final class Chromium {
    /** The names distributions give it. */
    private static final List<String> NAMES = List.of("chromium", "chromium-browser");

    /** Asks nothing of the network by itself. */
    private static final List<String> ARGUMENTS = List.of(
            "--disable-gpu",
            "--disable-quic",
            "--no-first-run",
            "--disable-background-networking",
            "--disable-component-update",
            "--disable-sync");

    private static @Nullable Browser running;

    private Chromium() {}

    /** Where it is; {@code -Dlongthrow.chromium=PATH} names another. */
    static Optional<Path> executable() {
        String named = System.getProperty("longthrow.chromium", "");
        Stream<Path> places = named.isEmpty()
                ? Arrays.stream(Optional.ofNullable(System.getenv("PATH"))
                                .orElse("")
                                .split(File.pathSeparator, -1))
                        .flatMap(folder -> NAMES.stream().map(name -> Path.of(folder, name)))
                : Stream.of(Path.of(named));
        return places.filter(Files::isExecutable).findFirst();
    }

    static synchronized Browser browser() {
        if (running == null) {
            Path executable = executable().orElseThrow();
            Playwright playwright = Playwright.create(
                    new Playwright.CreateOptions().setEnv(Map.of("PLAYWRIGHT_SKIP_BROWSER_DOWNLOAD", "1")));
            running = playwright
                    .chromium()
                    .launch(new BrowserType.LaunchOptions()
                            .setExecutablePath(executable)
                            .setArgs(ARGUMENTS));
            Runtime.getRuntime().addShutdownHook(new Thread(playwright::close, "browser's end"));
        }
        return running;
    }
}
