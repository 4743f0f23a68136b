package longthrow.workshop;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Browser;
import com.microsoft.playwright.Page;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What is typed and not sent, the way on from a reading that is kept, and the rail at every width. */
class TypedAndBackTest extends InTheBrowser {
    @Test
    void whatWasTypedComesBackWithItsPageAndIsGoneOnceItIsKept() {
        Page page = open(phone());
        String base = takeExample(page);
        String card = base + "/measure/cylinder.bore";
        page.navigate(card);
        String before = firstBox(page).inputValue();
        firstBox(page).fill("65,777");
        page.locator("#note").fill("after the hone");
        page.locator("a.mark").click();
        page.waitForURL("**/builds");
        page.goBack();
        page.waitForURL("**" + card);
        assertThat(firstBox(page)).hasValue("65,777");
        assertThat(page.locator("#note")).hasValue("after the hone");
        assertThat(page.locator(".put-back")).containsText("not kept");

        page.getByText("Clear it").click();
        assertThat(firstBox(page)).hasValue(before);
        page.reload();
        assertThat(firstBox(page)).hasValue(before);

        firstBox(page).fill("65.54");
        keep(page).click();
        page.waitForURL("**/measure#**");
        page.navigate(card);
        assertThat(page.locator(".put-back")).hasCount(0);
    }

    /** What came back was begun on an older revision: it is asked about, and overwrites nothing by itself. */
    @Test
    void whatComesBackOverwritesNothingNewer() {
        expect("status of 409"); // that is the question itself
        Page page = open(desktop());
        String base = takeExample(page);
        page.navigate(base + "/text");
        String old = page.locator("textarea").inputValue();
        page.locator("textarea").fill(old + "# mine\n");
        page.navigate(base + "/measure/cylinder.bore");
        firstBox(page).fill("65.54");
        keep(page).click();
        page.waitForURL("**/measure#**");
        page.navigate(base + "/text");
        assertThat(page.locator(".put-back")).isVisible();
        page.locator("main form button").last().click();
        assertThat(page.locator("main")).containsText("Not kept yet");
    }

    @Test
    void aKeptReadingStandsInSightWithTheWayOn() {
        Page page = open(phone());
        String base = takeExample(page);
        page.navigate(base + "/measure/piston.pin_diameter");
        firstBox(page).fill("15.999");
        keep(page).click();
        page.waitForURL("**/measure#piston.pin_diameter");
        assertThat(page.locator("tr.kept th")).isInViewport();
        assertThat(page.locator("tr.onward")).containsText("Kept: pin diameter.");
        page.locator("tr.onward a").first().click();
        page.waitForURL("**/measure/**");
        assertThat(page.locator("h2")).containsText(new String[] {"Enter it"});
    }

    /** From the narrowest phone to the width at which the rail stands beside the page: all ten are there, whole, and nothing is cut. */
    @ParameterizedTest
    @ValueSource(ints = {360, 719, 720, 1100, 1119, 1120, 1280})
    void theRailShowsAllTenQuestions(int width) {
        Page page = open(new Browser.NewContextOptions().setViewportSize(width, 800));
        String base = takeExample(page);
        page.navigate(base + "/measure");
        assertThat(page.locator(".rail .q")).hasCount(10);
        Object cut = page.evaluate("() => [...document.querySelectorAll('.rail .q')].filter((one) => {"
                + " one.scrollIntoView({ block: 'nearest', inline: 'nearest' });"
                + " const box = one.getBoundingClientRect();"
                + " return box.left < -1 || box.right > innerWidth + 1 || box.bottom > innerHeight + 1"
                + " || one.scrollWidth > one.clientWidth + 1; }).map((one) => one.textContent)");
        assertThat((List<?>) cut).isEmpty();
        if (width >= 720) {
            assertThat(page.evaluate("() => { const list = document.querySelector('.rail ol');"
                            + " return list.scrollWidth <= list.clientWidth + 1; }"))
                    .as("seen without scrolling sideways")
                    .isEqualTo(true);
        }
    }
}
