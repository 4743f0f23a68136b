package longthrow.workshop;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import org.junit.jupiter.api.Test;

/** The page Shake under slider, key and field; and the ladder of Life, which needs none of them. */
class ShakeAtAnySpeedTest extends InTheBrowser {
    private static String path(Page page) {
        return page.locator("#told .hodograph path.lit").first().getAttribute("d");
    }

    @Test
    void thePathFollowsSliderAndField() {
        Page page = open(phone());
        String base = takeExample(page);
        page.navigate(base + "/shake");
        Locator slide = page.locator("input.slide.paired");
        slide.waitFor();
        assertThat(page.locator("#told")).containsText("At 5200 rpm, the speed wanted.");
        String wanted = path(page);
        slide.press("ArrowLeft");
        assertThat(page.locator("#speed")).hasValue("5150 rpm");
        assertThat(page.locator("#told")).containsText("At 5150 rpm, chosen here");
        assertThat(path(page)).isNotEqualTo(wanted);
        page.locator("#speed").fill("2600");
        assertThat(page.locator("#told")).containsText("At 2600 rpm, chosen here");
        assertThat(slide).hasValue("2600");
        assertThat(page.locator("#told .hodograph path.unknown")).hasAttribute("d", wanted);
        page.locator("#speed").fill("26");
        assertThat(page.locator("#told .notice.bad")).containsText("from 100 to 16000");
    }

    /** Each name on the ladder goes to its limit. */
    @Test
    void theLadderLeadsToItsLimits() {
        Page page = open(phone());
        String base = takeExample(page);
        page.navigate(base + "/life");
        Locator name = page.locator(".ladder a").first();
        name.waitFor();
        String key = name.getAttribute("href").substring(1);
        name.click();
        page.waitForFunction(
                "key => { const at = document.getElementById(key).getBoundingClientRect(); return at.top >= 0 && at.top < innerHeight; }",
                key);
        assertThat(page.locator("article.rung").count()).isGreaterThan(5);
    }
}
