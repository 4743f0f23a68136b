package longthrow.workshop;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Browser;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.ColorScheme;
import java.io.IOException;
import java.net.URI;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.io.TempDir;

/**
 * A workshop on a free port over data of its own, and a browser before it. Whatever a page says to the console, throws, or asks of
 * another host is a fault of the test, unless the test said beforehand that it is expected.
 */
abstract class InTheBrowser {
    /** A phone as narrow as phones are (CSS pixels); our own choice of device, the issue says 360. */
    static final int PHONE_WIDE = 360;

    static final int PHONE_TALL = 740;

    /** So long may a page or a figure take on a busy machine before the test gives up [ms]. */
    static final double PATIENCE = 60_000;

    @TempDir
    private Path folder;

    private Serving workshop;
    private int port;
    private final List<BrowserContext> contexts = new ArrayList<>();
    private final List<String> troubles = new ArrayList<>();
    /** To begin with: that a figure asked for was overtaken by the next key, which htmx calls an error. */
    private final List<Pattern> expected = new ArrayList<>(List.of(Pattern.compile("htmx:(sendAbort|afterRequest)")));

    @BeforeEach
    void begin() throws IOException {
        Assumptions.assumeTrue(
                Chromium.executable().isPresent(),
                "SKIPPED: no chromium on PATH, so no page was looked at in a browser; on Debian: apt-get install -y chromium");
        workshop = Serving.start(folder, 0, Example.ofThisProgram());
        port = URI.create(workshop.address()).getPort();
    }

    @AfterEach
    void end() {
        contexts.forEach(BrowserContext::close);
        if (workshop != null) {
            workshop.close();
        }
        assertThat(troubles).as("said by pages").isEmpty();
    }

    Serving workshop() {
        return workshop;
    }

    /** The workshop goes away, as when its machine is switched off. */
    void stop() {
        workshop.close();
    }

    /** It is back at the same address, with the same data and another token. */
    void startAgain() throws IOException {
        workshop = Serving.start(folder, port, Example.ofThisProgram());
    }

    /** Lets a console message of this kind pass. */
    void expect(String regex) {
        expected.add(Pattern.compile(regex));
    }

    // ---- who looks

    static Browser.NewContextOptions phone() {
        return new Browser.NewContextOptions()
                .setViewportSize(PHONE_WIDE, PHONE_TALL)
                .setDeviceScaleFactor(2)
                .setIsMobile(true)
                .setHasTouch(true);
    }

    static Browser.NewContextOptions desktop() {
        return new Browser.NewContextOptions().setViewportSize(1280, 900);
    }

    Page open(Browser.NewContextOptions options) {
        return context(options).newPage();
    }

    BrowserContext context(Browser.NewContextOptions options) {
        BrowserContext context = Chromium.browser()
                .newContext(options.setBaseURL("http://127.0.0.1:" + port).setLocale("en-GB"));
        context.setDefaultTimeout(PATIENCE);
        context.onConsoleMessage(said -> {
            if (said.type().equals("error") || said.type().equals("warning")) {
                trouble(said.type() + ": " + said.text() + " at " + said.location());
            }
        });
        context.onWebError(thrown -> trouble("thrown: " + thrown.error()));
        context.onRequest(request -> {
            URI to = URI.create(request.url());
            if (!"data".equals(to.getScheme()) && !("127.0.0.1".equals(to.getHost()) && to.getPort() == port)) {
                trouble("asked of another host: " + request.url());
            }
        });
        contexts.add(context);
        return context;
    }

    static Browser.NewContextOptions dark(Browser.NewContextOptions options) {
        return options.setColorScheme(ColorScheme.DARK);
    }

    private void trouble(String what) {
        if (expected.stream().noneMatch(p -> p.matcher(what).find())) {
            troubles.add(what);
        }
    }

    // ---- what they do

    /** Takes the invented example from the list of builds; the address of its pages. */
    String takeExample(Page page) {
        page.navigate("/builds");
        page.getByText("Take the invented example").click();
        page.waitForURL("**/measure");
        return URI.create(page.url()).getPath().replace("/measure", "");
    }

    /** Begins an empty sheet; the address of its pages. */
    String beginEmpty(Page page, String name) {
        page.navigate("/builds");
        page.getByLabel("Its name").fill(name);
        page.getByText("Begin with an empty sheet").click();
        page.waitForURL("**/measure");
        return URI.create(page.url()).getPath().replace("/measure", "");
    }

    /** The box for a first reading on a card. */
    static Locator firstBox(Page page) {
        return page.locator("input[name=reading]").first();
    }

    /** The button that keeps the readings of a card. */
    static Locator keep(Page page) {
        return page.locator("form.reading").first().locator("button").first();
    }

    /** What stands in a row of Measure, on one line. */
    static String row(Page page, String path) {
        return page.locator("tr[id='" + path + "']")
                .textContent()
                .replaceAll("\\s+", " ")
                .strip();
    }
}
