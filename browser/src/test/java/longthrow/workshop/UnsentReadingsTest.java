package longthrow.workshop;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.assertions.LocatorAssertions;
import java.io.IOException;
import java.util.List;
import java.util.regex.Pattern;
import longthrow.workshop.store.BuildId;
import longthrow.workshop.store.RevisionEntry;
import org.junit.jupiter.api.Test;

/**
 * Readings typed while the workshop is away: it is stopped and started again, with another token, as a machine that was switched off.
 */
class UnsentReadingsTest extends InTheBrowser {
    private static final LocatorAssertions.IsHiddenOptions LONG =
            new LocatorAssertions.IsHiddenOptions().setTimeout(PATIENCE);

    /** Within it a page that was opened has asked for all it asks for [ms]. */
    private static final double AT_REST = 1500;

    /** A workshop that was started anew refuses the token of a page from before, once: the page then asks for the new one. */
    private static final String TOKEN_FROM_BEFORE = "|status of 403.*/preview/|Code 403 from .*/preview/";

    @Test
    void aPageFromBeforeStillShowsWhatFollowsFromWhatIsTyped() throws IOException {
        expect("ERR_CONNECTION_REFUSED|Failed to fetch|net::ERR" + TOKEN_FROM_BEFORE);
        Page page = open(phone());
        String base = beginEmpty(page, "From before");
        page.navigate(base + "/measure/cylinder.bore");
        stop();
        startAgain();
        firstBox(page).fill("66.02");
        assertThat(page.locator("#figures"))
                .containsText("66.02", new LocatorAssertions.ContainsTextOptions().setTimeout(PATIENCE));
    }

    @Test
    void waitOnThePhoneSurviveAReloadAndArriveInOrder() throws IOException {
        expect("ERR_CONNECTION_REFUSED|Failed to fetch|net::ERR|NetworkError|htmx:" + TOKEN_FROM_BEFORE);
        Page page = open(phone());
        String base = beginEmpty(page, "Unsent");
        page.evaluate("() => navigator.serviceWorker.ready.then(() => true)");
        for (String term : List.of("cylinder.bore", "crankshaft.stroke")) {
            page.navigate(base + "/measure/" + term);
        }
        page.navigate(base + "/measure/cylinder.bore");
        firstBox(page).fill("66.00");
        page.waitForResponse(
                answer -> answer.url().endsWith(base + "/measure/cylinder.bore")
                        && answer.request().method().equals("GET"),
                () -> keep(page).click());
        page.waitForURL("**/measure#**");
        assertThat(page.locator("p.notice")).containsText("Kept: bore");

        stop();
        // Both cards and the page Measure were seen before, so they are still there.
        page.navigate(base + "/measure/crankshaft.stroke");
        assertThat(page.locator("#away")).containsText("does not answer");
        type(page, "56.50");
        assertThat(page.locator("#unsent")).containsText("1 reading is not sent yet.");
        assertThat(page.locator(".waits")).containsText("Not sent yet: 56.50 mm");
        assertThat(page.locator(".waits")).isInViewport();
        page.navigate(base + "/measure/cylinder.bore");
        type(page, "66.02");
        assertThat(page.locator("#unsent")).containsText("2 readings are not sent yet.");

        page.reload();
        assertThat(page.locator("#unsent")).containsText("2 readings are not sent yet.");
        assertThat(page.locator("#unsent li").first()).containsText("56.50");
        assertThat(page.locator("#unsent li").last()).containsText("66.02");
        page.navigate(base + "/measure");
        assertThat(page.locator("tr[id='cylinder.bore']")).containsText("not sent yet: 66.02");
        assertThat(page.getByText("Kept: bore")).hasCount(0);

        startAgain();
        assertThat(page.locator("#unsent"))
                .containsText("2 readings sent", new LocatorAssertions.ContainsTextOptions().setTimeout(PATIENCE));
        page.reload();
        assertThat(page.locator("#unsent")).isHidden(LONG);
        assertThat(row(page, "crankshaft.stroke")).contains("56.50 mm");
        assertThat(row(page, "cylinder.bore")).contains("66.02 mm");
        assertThat(whatWasDone(base))
                .extracting(w -> w.replaceFirst(": .*", ""))
                .containsSubsequence("stroke", "bore");
    }

    /** Each is kept, in the order in which they were typed: neither is taken for a change of somebody else's. */
    @Test
    void aReadingTypedTwiceFollowsItself() throws IOException {
        expect("ERR_CONNECTION_REFUSED|Failed to fetch|net::ERR|NetworkError|htmx:" + TOKEN_FROM_BEFORE);
        Page page = open(phone());
        String base = beginEmpty(page, "Twice");
        page.evaluate("() => navigator.serviceWorker.ready.then(() => true)");
        for (String term : List.of("crankshaft.stroke", "cylinder.bore")) {
            page.navigate(base + "/measure/" + term);
        }
        stop();
        type(page, "66.02");
        page.navigate(base + "/measure/crankshaft.stroke");
        type(page, "56.50");
        page.navigate(base + "/measure/cylinder.bore");
        type(page, "66.04");
        assertThat(page.locator("#unsent")).containsText("3 readings are not sent yet.");
        startAgain();
        assertThat(page.locator("#unsent"))
                .containsText("3 readings sent", new LocatorAssertions.ContainsTextOptions().setTimeout(PATIENCE));
        page.navigate(base + "/measure");
        assertThat(row(page, "cylinder.bore")).contains("66.04 mm");
        assertThat(row(page, "crankshaft.stroke")).contains("56.50 mm");
        assertThat(whatWasDone(base)).filteredOn(w -> w.startsWith("bore: ")).hasSize(2);
    }

    /** In the place of the browser's own page: what is not here, what is safe, and what there is. */
    @Test
    void aCardThatWasNotOpenedBeforeSaysSoAndNamesThoseThatWere() throws IOException {
        expect("ERR_CONNECTION_REFUSED|Failed to fetch|net::ERR|status of 503");
        Page page = open(phone());
        String base = beginEmpty(page, "Not here");
        page.evaluate("() => navigator.serviceWorker.ready.then(() => true)");
        page.navigate(base + "/measure/cylinder.bore");
        stop();
        for (String never : List.of("/measure/crankshaft.stroke", "/fit", "/history")) {
            page.navigate(base + never);
            assertThat(page.locator("h1")).containsText("Not kept on this device");
            assertThat(page.locator("main")).containsText("What you typed is safe");
        }
        page.locator("main .leads a", new Page.LocatorOptions().setHasText("bore"))
                .first()
                .click();
        page.waitForURL("**/measure/cylinder.bore");
        assertThat(firstBox(page)).isVisible();
        startAgain();
        page.navigate(base + "/measure/crankshaft.stroke");
        assertThat(firstBox(page)).isVisible();
    }

    /** The first page of a session comes before the worker that keeps pages. */
    @Test
    void theVeryFirstPageIsKeptToo() {
        expect("ERR_CONNECTION_REFUSED|Failed to fetch|net::ERR");
        String base = beginEmpty(open(desktop()), "First");
        Page page = open(phone());
        page.navigate(base + "/measure/cylinder.bore");
        // the page and all that it is made of, each kept once: after the last nothing is kept any more
        page.waitForFunction(
                "async () => { const kept = await caches.open('longthrow-pages-2');"
                        + " const parts = [...document.querySelectorAll('script[src], link[rel=stylesheet], link[rel=icon]')]"
                        + ".map((one) => one.src || one.href);"
                        + " return (await Promise.all([location.href, ...parts].map((one) => kept.match(one)))).every(Boolean); }");
        page.waitForTimeout(AT_REST); // nothing of it is on its way any more
        stop();
        page.reload();
        assertThat(firstBox(page)).isVisible();
        assertThat(page.locator("body"))
                .hasAttribute("data-seen", Pattern.compile("20.*")); // it is the one that was kept
        assertThat(page.locator("#away"))
                .containsText("does not answer", new LocatorAssertions.ContainsTextOptions().setTimeout(PATIENCE));
    }

    @Test
    void askWhenTheSameReadingWasChangedMeanwhile() throws IOException {
        expect("ERR_CONNECTION_REFUSED|Failed to fetch|net::ERR|status of 409|htmx:" + TOKEN_FROM_BEFORE);
        Page page = open(phone());
        String base = beginEmpty(page, "Disputed");
        page.navigate(base + "/measure/cylinder.bore");
        Page bench = open(desktop());
        stop();
        type(page, "66.02");
        assertThat(page.locator("#unsent")).containsText("1 reading is not sent yet.");
        // Switched off and on again without the phone in reach.
        page.context().setOffline(true);
        startAgain();
        bench.navigate(base + "/measure/cylinder.bore");
        firstBox(bench).fill("66.10");
        keep(bench).click();
        bench.waitForURL("**/measure#**");
        page.context().setOffline(false);

        Locator unsent = page.locator("#unsent li");
        assertThat(unsent)
                .containsText(
                        "another change of the same reading came before it",
                        new LocatorAssertions.ContainsTextOptions().setTimeout(PATIENCE));
        unsent.getByText("Look at it").click();
        assertThat(page.getByText("What came in between")).isVisible();
        assertThat(page.locator(".mine")).containsText("66.02");
        page.getByText("Keep mine on top").click();
        page.waitForURL("**/measure#**");
        assertThat(row(page, "cylinder.bore")).contains("66.02 mm");
        assertThat(whatWasDone(base)).filteredOn(w -> w.startsWith("bore: ")).hasSize(2);
    }

    @Test
    void anotherFormSaysThatNothingWasSentAndKeepsWhatWasTyped() {
        expect("ERR_CONNECTION_REFUSED|Failed to fetch|net::ERR");
        Page page = open(phone());
        String base = beginEmpty(page, "Away");
        page.navigate(base + "/text");
        page.locator("textarea").fill("longthrow: 1\nengine:\n  name: typed while away\n");
        stop();
        page.locator("main form button").first().click();
        assertThat(page.locator("#away")).containsText("Nothing was sent");
        assertThat(page.locator("textarea").inputValue()).contains("typed while away");
    }

    private static void type(Page page, String reading) {
        firstBox(page).fill(reading);
        keep(page).click();
    }

    private List<String> whatWasDone(String base) {
        BuildId id = BuildId.parse(base.replace("/b/", "")).orElseThrow();
        return workshop().store().history(id).stream().map(RevisionEntry::what).toList();
    }
}
