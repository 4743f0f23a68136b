package longthrow.workshop;

import static org.assertj.core.api.Assertions.assertThat;

import com.deque.html.axecore.playwright.AxeBuilder;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.ColorScheme;
import com.microsoft.playwright.options.FilePayload;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import longthrow.workshop.store.BuildId;
import org.junit.jupiter.api.Test;

/**
 * Every page by the rules of accessibility (axe), light and dark, as on a phone and on a desk; nothing scrolls sideways, every target
 * is large enough, and every control is reached by Tab and shows it.
 */
class EveryPageTest extends InTheBrowser {
    /** Opens what is folded at first. */
    private static final String UNFOLD =
            "() => document.querySelectorAll('details.more').forEach(d => { d.open = true; })";

    private static final Path EXAMPLES = Path.of("..", "examples");

    /** WCAG 2.2 AA is the first five together; the rest is what axe's makers call good practice. */
    private static final List<String> TAGS =
            List.of("wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice");

    private static final String FAULTS =
            ".then(result => result.violations.map(v => v.id + ': ' + v.help + ' – ' + v.nodes.length + ' × '"
                    + " + v.nodes.slice(0, 2).map(n => n.html.slice(0, 160) + ' ' + n.failureSummary).join(' | ')))";

    private static final String RUN =
            "tags => axe.run(document, {runOnly: {type: 'tag', values: tags}, resultTypes: ['violations']})" + FAULTS;

    private static final String RUN_COLOURS =
            "() => axe.run(document, {runOnly: ['color-contrast', 'link-in-text-block', 'target-size'], resultTypes: ['violations']})"
                    + FAULTS;

    /** Between the last control and the first the window itself has the focus, once or twice. */
    private static final int FOR_THE_WINDOW = 2;

    /** Some three hundred sums of a curve, on a machine that does other things too. */
    static final double SUMS_WITHIN_MILLISECONDS = 300_000;

    private final List<String> faults = new ArrayList<>();

    @Test
    void ofNoBuild() {
        Page page = page();
        page.navigate("/builds");
        look(page, "builds, none yet");
        expect("status of 404");
        page.navigate("/no-such-page");
        look(page, "message");
        page.navigate("/parts");
        look(page, "parts, none yet");
        offer(page, "rods.csv", BadCatalogueTest.ROWS);
        look(page, "fates before they count");
        page.getByText("Keep the good rows").click();
        page.waitForURL("**/parts");
        page.locator("main .card h3 a").waitFor();
        look(page, "parts, one");
        page.locator("main .card h3 a").click();
        page.waitForURL("**/parts/*-*");
        look(page, "fates of a kept one");
        page.navigate("/builds");
        page.locator("#new-file")
                .setInputFiles(new FilePayload(
                        "engine.yaml",
                        "text/yaml",
                        "longthrow: 1\nengine:\n  name: X\n  bore: 7\n".getBytes(StandardCharsets.UTF_8)));
        expect("status of 422");
        page.getByText("Read it").click();
        page.locator(".notice.bad").waitFor();
        look(page, "faults of a file");
        assertThat(faults).isEmpty();
    }

    @Test
    void ofAnEmptySheet() {
        Page page = page();
        String base = beginEmpty(page, "An engine with a long name that takes more than one line of a phone");
        look(page, "measure, empty");
        page.navigate(base + "/measure/cylinder.bore");
        look(page, "card, empty");
        expect("status of 422");
        firstBox(page).fill("66 kg");
        keep(page).click();
        page.locator(".notice.bad").waitFor();
        look(page, "card with a fault");
        page.navigate(base + "/fit");
        page.locator("[hx-get$=answer]")
                .waitFor(new com.microsoft.playwright.Locator.WaitForOptions()
                        .setState(com.microsoft.playwright.options.WaitForSelectorState.DETACHED));
        look(page, "fit, nothing to search");
        page.navigate(base + "/clear?now=1");
        look(page, "clear, nothing read");
        page.navigate(base + "/life?now=1");
        look(page, "life, nothing read");
        page.navigate(base + "/shake?now=1");
        look(page, "shake, nothing read");
        page.navigate(base + "/power?now=1");
        look(page, "power, nothing read");
        page.navigate(base + "/dyno");
        look(page, "dyno, no sheet");
        page.locator("#file").setInputFiles(EXAMPLES.resolve("dyno").resolve("header.yaml"));
        page.getByText("Keep them").click();
        page.waitForURL("**/dyno?sheet=**");
        look(page, "dyno, peaks");
        page.locator("#file").setInputFiles(new Path[] {
            EXAMPLES.resolve("dyno").resolve("muffler.yaml"),
            EXAMPLES.resolve("dyno").resolve("a1-1.csv"),
            EXAMPLES.resolve("dyno").resolve("a1-2.csv"),
            EXAMPLES.resolve("dyno").resolve("coast-down.csv")
        });
        page.getByText("Keep them").click();
        page.waitForURL("**/dyno?sheet=muffler.yaml");
        look(page, "dyno, logs");
        page.navigate(base + "/dyno/log?sheet=muffler.yaml&log=a1-2.csv");
        look(page, "dyno, rows of a log");
        page.navigate("/builds");
        look(page, "builds, one");
        assertThat(faults).isEmpty();
    }

    @Test
    void ofTheInventedEngine() {
        Page page = page();
        String base = takeExample(page);
        look(page, "measure");
        for (String term : List.of("cylinder.bore", "cylinder.deck_height", "camshaft.intake_closes")) {
            page.navigate(base + "/measure/" + term);
            look(page, "card " + term);
        }
        page.navigate(base + "/measure/cylinder.deck_height?entry=new");
        look(page, "card, one more entry");
        firstBox(page).fill("137.35");
        keep(page).click();
        page.waitForURL("**/measure#**");
        look(page, "measure with a notice");
        page.navigate(base + "/clear");
        page.locator("#crank-slide").waitFor();
        look(page, "clear");
        page.evaluate(UNFOLD);
        look(page, "clear, unfolded");
        page.navigate(base + "/life");
        page.locator("article.rung").first().waitFor();
        look(page, "life");
        page.evaluate(UNFOLD);
        look(page, "life, unfolded");
        page.navigate(base + "/shake");
        page.locator("input.slide.paired").waitFor();
        look(page, "shake");
        page.navigate(base + "/shake?speed=17");
        look(page, "shake, at a speed that is not taken");
        page.navigate(base + "/power?now=1");
        look(page, "power, a reading in dispute");
        page.navigate(base + "/power?speed=17");
        look(page, "power, at a speed that is not taken");
        page.navigate(base + "/history");
        look(page, "history");
        page.getByText("what changed").first().click();
        page.waitForURL("**/compare?**");
        look(page, "compare");
        page.navigate(base + "/text");
        look(page, "text");
        page.locator("textarea").fill("longthrow: 1\nengine:\n  name: [\n");
        expect("status of 422");
        page.locator("main form button").first().click();
        page.locator(".notice.bad").first().waitFor();
        look(page, "text with faults");
        assertThat(faults).isEmpty();
    }

    /** The curve and a speed of one's own, with all that stands in their folds. */
    @Test
    void ofAnEngineWhoseTorqueIsTold() {
        String base = breathing(workshop());
        Page page = page();
        page.setDefaultNavigationTimeout(SUMS_WITHIN_MILLISECONDS);
        page.navigate(base + "/power");
        look(page, "power, while it is worked out");
        page.navigate(base + "/power?speed=2700&now=1");
        page.locator("table.speeds").first().waitFor();
        look(page, "power");
        assertThat(faults).isEmpty();
    }

    @Test
    void ofPartsThatAreWanted() throws IOException {
        String base = wanted(workshop());
        Page page = page();
        page.navigate(base + "/fit");
        page.locator("article.card").first().waitFor();
        look(page, "fit");
        page.navigate(base + "/book");
        page.waitForFunction("() => !document.querySelector('[hx-trigger=load]')"); // all its pieces are there
        look(page, "book");
        Page second = page.context().newPage();
        second.navigate(base + "/measure/cylinder.bore");
        page.navigate(base + "/measure/cylinder.bore");
        page.locator("input[name=reading]").first().fill("66.01");
        keep(page).click();
        page.waitForURL("**/measure#**");
        expect("status of 409");
        second.locator("input[name=reading]").first().fill("66.02");
        keep(second).click();
        second.getByText("What came in between").waitFor();
        look(second, "changed meanwhile");
        assertThat(faults).isEmpty();
    }

    /** An invented engine of which as much is written down as torque cannot do without. */
    static String breathing(Serving workshop) {
        try {
            String text = Files.readString(Path.of("../examples/scenarios/breathing.yaml"));
            return "/b/" + workshop.store().create("breathing", text, UUID.randomUUID());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** The first scenario with rod and gasket wanted, over what was on offer. */
    static String wanted(Serving workshop) throws IOException {
        BuildId id = workshop.store()
                .create(
                        "Dovrin 171, rod wanted",
                        Files.readString(EXAMPLES.resolve("scenarios/s1-rod-wanted.yaml")),
                        UUID.randomUUID());
        try (InputStream catalogue = Files.newInputStream(EXAMPLES.resolve("scenarios/s1-catalogue.yaml"))) {
            workshop.store().addCatalogue("s1-catalogue.yaml", catalogue);
        }
        return "/b/" + id;
    }

    static void offer(Page page, String name, String rows) {
        page.locator("#file").setInputFiles(new FilePayload(name, "text/csv", rows.getBytes(StandardCharsets.UTF_8)));
        page.getByText("Look it through").click();
        page.getByText("Nothing of it counts yet.").waitFor();
    }

    private Page page() {
        BrowserContext context = context(phone());
        return context.newPage();
    }

    private void look(Page page, String name) {
        // What is worked out beside the page may still come into its list of what stands in the way: then other links
        // stand
        // there than those that were counted or reached.
        page.waitForFunction("() => !document.querySelector('.rail[data-asks]')");
        // Of the table of speeds three lines: the others are made by the same template, and all of them opened take
        // minutes.
        page.evaluate("() => document.querySelectorAll('details').forEach("
                + "d => { d.open = !d.closest('table.speeds tbody:nth-of-type(n+4)'); })");
        // What is out of sight is laid out when it comes into sight: until then its size is a guess, and so is what
        // lies over it.
        page.evaluate("() => document.querySelectorAll('.rows, .picture, .chapter')"
                + ".forEach(e => e.style.contentVisibility = 'visible')");
        page.evaluate(AXE);
        for (ColorScheme scheme : List.of(ColorScheme.LIGHT, ColorScheme.DARK)) {
            page.emulateMedia(new Page.EmulateMediaOptions().setColorScheme(scheme));
            for (int wide : List.of(1280, PHONE_WIDE)) {
                page.setViewportSize(wide, PHONE_TALL);
                String where = name + ", " + scheme.name() + ", " + wide + ": ";
                // Of the other two nothing is another but colours and room.
                boolean whole = (scheme == ColorScheme.LIGHT) == (wide == PHONE_WIDE);
                strings(whole ? page.evaluate(RUN, TAGS) : page.evaluate(RUN_COLOURS))
                        .forEach(f -> faults.add(where + f));
                if (scheme == ColorScheme.LIGHT) {
                    strings(page.evaluate(LOOKS)).forEach(f -> faults.add(where + f));
                }
            }
        }
        page.evaluate(FOCUS_WATCH);
        page.evaluate(
                "() => { document.activeElement.blur(); scrollTo(0, 0); getSelection().setPosition(document.body, 0); }");
        int controls = ((Number) page.evaluate("() => longthrowFocus.count()")).intValue();
        for (int i = 0; i < controls + FOR_THE_WINDOW; i++) {
            page.keyboard().press("Tab");
        }
        strings(page.evaluate("() => longthrowFocus.faults()")).forEach(f -> faults.add(name + ": " + f));
    }

    private static List<String> strings(Object evaluated) {
        List<String> all = new ArrayList<>();
        if (evaluated instanceof List<?> list) {
            list.forEach(one -> all.add(String.valueOf(one)));
        }
        return all;
    }

    private static final String AXE = axe();
    private static final String LOOKS = script("looks.js");
    private static final String FOCUS_WATCH = script("focus-watch.js");

    private static String axe() {
        return "() => { " + AxeBuilder.getAxeScript() + " }";
    }

    private static String script(String name) {
        try (InputStream in = EveryPageTest.class.getResourceAsStream(name)) {
            if (in == null) {
                throw new IllegalStateException(name + " is missing beside the tests");
            }
            String text = new String(in.readAllBytes(), StandardCharsets.UTF_8);
            return text.substring(text.indexOf("() =>"));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
