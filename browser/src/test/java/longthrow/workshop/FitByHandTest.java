package longthrow.workshop;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.BoundingBox;
import java.io.IOException;
import org.junit.jupiter.api.Test;

/** Fit as one works it: aims by slider and field, the section turned by slider, key and finger, one taken. */
class FitByHandTest extends InTheBrowser {
    @Test
    void aimsFollowTheSliderAndAreDroppedByAnEmptyField() throws IOException {
        String base = EveryPageTest.wanted(workshop());
        Page page = open(phone());
        page.navigate(base + "/fit?now=1");
        page.getByText("Aims, and what may be bought").click();
        Locator field = page.locator("[id='engine.squish']");
        Locator slide = page.locator("[data-for='engine.squish']");
        assertThat(slide).hasValue("1.27");
        slide.press("ArrowRight");
        assertThat(field).hasValue("1.28 mm");
        field.fill("1,40 mm");
        assertThat(slide).hasValue("1.4");
        page.getByText("Keep and search").click();
        assertThat(page.locator("p.notice")).containsText("Kept");
        page.getByText("Aims, and what may be bought").click();
        field.fill("");
        page.locator("#budget").fill("");
        page.evaluate("() => { window.before = true; }");
        page.getByText("Keep and search").click();
        page.waitForFunction("() => !window.before && document.readyState === 'complete'");
        page.navigate(base + "/text");
        assertThat(page.locator("textarea").inputValue()).contains("engine.squish: unknown", "budget: unknown");
        page.navigate(base + "/fit?now=1");
        assertThat(field).hasValue("");
        assertThat(page.locator("#budget")).hasValue("");
    }

    @Test
    void theSectionTurnsByKeyAndByFinger() throws IOException {
        String base = EveryPageTest.wanted(workshop());
        Page page = open(desktop());
        page.navigate(base + "/fit?now=1");
        page.getByText("The engine as it is, cut open").click();
        page.locator("#angle").press("ArrowRight");
        assertThat(page.locator("#section svg")).containsText("crank at 5°");
        BoundingBox box = page.locator("#section").boundingBox();
        page.mouse().move(box.x + 100, box.y + 100);
        page.mouse().down();
        page.mouse().move(box.x + 180, box.y + 100);
        page.mouse().up();
        assertThat(page.locator("#section svg")).containsText("crank at 45°");
    }

    @Test
    void takingSaysWhatItPutsIn() throws IOException {
        String base = EveryPageTest.wanted(workshop());
        Page page = open(phone());
        page.navigate(base + "/fit?now=1");
        Locator first = page.locator("article.card").first();
        assertThat(first).containsText("puts in: connecting rod R3, gasket G130");
        assertThat(first).containsText("Not put in:");
        assertThat(page.locator(".rail [aria-current]")).containsText("not approved");
        first.locator("button").click();
        page.waitForURL("**/measure");
        assertThat(row(page, "engine.squish")).contains("1.37 ± 0.07 mm");
    }
}
