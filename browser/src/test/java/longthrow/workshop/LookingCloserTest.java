package longthrow.workshop;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.BoundingBox;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;

/** The rows of a log on the page Dyno, seen closer by a drag, by a key and without script. */
class LookingCloserTest extends InTheBrowser {
    private static final Path LOG = Path.of("..", "examples", "dyno", "a1-2.csv");

    private String sent(Page page) {
        String base = beginEmpty(page, "Rows");
        page.navigate(base + "/dyno");
        page.locator("#file").setInputFiles(LOG);
        page.getByText("Keep them").click();
        page.locator("a[href*='log=a1-2.csv']").first().waitFor(); // the address is the same before it was kept
        return base + "/dyno/log?log=a1-2.csv";
    }

    @Test
    void aDragAndAKeyLeadToAStretchAndBackAgainWithoutAnotherPage() {
        Page page = open(phone());
        page.navigate(sent(page));
        page.evaluate("() => { window.same = true; }");
        assertThat(page.locator("#rows-about")).containsText("416 of 416 rows, from 0 to 8.3 s");
        Locator picture = page.locator("#rows [data-drag] svg");
        picture.scrollIntoViewIfNeeded();
        BoundingBox box = picture.boundingBox();
        // the strips run from 50 to 348 of 360, and from 0 to 8.3 s
        double pixels = box.width / 360;
        double y = box.y + box.height / 3;
        page.mouse().move(box.x + 149.3 * pixels, y);
        page.mouse().down();
        page.mouse().move(box.x + 180 * pixels, y);
        page.mouse().move(box.x + 199 * pixels, y);
        page.mouse().up();
        assertThat(page.locator("#from")).not().hasValue("0");
        double from = Double.parseDouble(page.locator("#from").inputValue());
        double to = Double.parseDouble(page.locator("#to").inputValue());
        assertThat(from).isCloseTo(8.3 / 3, org.assertj.core.api.Assertions.within(0.05)); // two pixels
        assertThat(to).isCloseTo(8.3 / 2, org.assertj.core.api.Assertions.within(0.05));
        assertThat(page.locator("#rows")).containsText("1 spike");

        page.locator("#later").focus();
        page.keyboard().press("Enter");
        assertThat(page.locator("#from")).not().hasValue(String.valueOf(from));
        assertThat(page.locator("#later")).isFocused();
        page.goBack();
        assertThat(page.locator("#from")).hasValue(String.valueOf(from));
        assertThat((Boolean) page.evaluate("() => window.same === true")).isTrue();
    }

    @Test
    void withoutScriptLinksAndFormLeadThere() {
        Page page = open(phone().setJavaScriptEnabled(false));
        page.navigate(sent(page));
        page.locator("#nearer").click();
        assertThat(page.locator("#rows-about")).containsText("from 2.075 to 6.225 s");
        page.locator("#from").fill("2,9");
        page.locator("#to").fill("3.1");
        page.getByText("Show it").click();
        assertThat(page.locator("#rows-about")).containsText("from 2.9 to 3.1 s");
        page.locator("#whole").click();
        assertThat(page.locator("#rows-about")).containsText("416 of 416 rows");
    }
}
