package longthrow.workshop;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.BoundingBox;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.UUID;
import java.util.stream.Stream;
import longthrow.workshop.store.BuildId;
import org.junit.jupiter.api.Test;

/** Four ways that go together, side by side, at a desk and on a phone; what they miss is said there. */
class SideBySideTest extends InTheBrowser {
    private static final Path EXAMPLES = Path.of("..", "examples");

    /** The first scenario over the whole invented catalogue, where five ways are found. */
    private String offered() throws IOException {
        BuildId id = workshop()
                .store()
                .create(
                        "Dovrin 171, rod wanted",
                        Files.readString(EXAMPLES.resolve("scenarios/s1-rod-wanted.yaml")),
                        UUID.randomUUID());
        try (Stream<Path> files = Files.list(EXAMPLES.resolve("catalogue"))) {
            for (Path file : files.sorted().toList()) {
                try (InputStream in = Files.newInputStream(file)) {
                    workshop().store().addCatalogue(String.valueOf(file.getFileName()), in);
                }
            }
        }
        return "/b/" + id;
    }

    @Test
    void fourStandSideBySideAtADeskAndOnAPhone() throws IOException {
        String base = offered();
        for (Page page : List.of(open(desktop()), open(phone()))) {
            page.navigate(base + "/fit?now=1");
            assertThat(page.locator(".beside thead th")).hasCount(4);
            boolean desk = page.viewportSize().width > PHONE_WIDE;
            assertThat(wide(page, "document.documentElement"))
                    .as("the page does not scroll sideways")
                    .isLessThanOrEqualTo(page.viewportSize().width);
            Locator box = page.locator(".beside");
            BoundingBox place = box.boundingBox();
            assertThat(place.x + place.width).isLessThanOrEqualTo(page.viewportSize().width);
            int inside = wide(page, "document.querySelector('.beside')");
            int seen = ((Number) box.evaluate("e => e.clientWidth")).intValue();
            if (desk) {
                assertThat(inside).as("nothing of the table is cut at a desk").isLessThanOrEqualTo(seen);
            } else {
                assertThat(inside)
                        .as("on a phone the table moves in its own box")
                        .isGreaterThan(seen);
                box.evaluate("e => { e.scrollLeft = e.scrollWidth; }");
                BoundingBox label = page.locator(".beside tbody th").first().boundingBox();
                assertThat(label.x).as("and its labels stay").isBetween(place.x - 1, place.x + 2);
            }
        }
    }

    @Test
    void theAimThatIsMissedAndWhatDiffersIsSaidInWordsAndSigns() throws IOException {
        String base = offered();
        Page page = open(phone());
        page.navigate(base + "/fit?now=1");
        Locator squish = page.locator(".beside tr.differs")
                .filter(new Locator.FilterOptions().setHasText("your aim of 1.27 mm"));
        assertThat(squish).hasCount(1);
        assertThat(squish.locator("th")).containsText("≠");
        assertThat(squish.locator("th")).containsText("squish, differs");
        assertThat(squish.locator(".verdict.misses")).hasCount(4);
        Locator first = page.locator("article.card").first();
        assertThat(first.locator("p.verdict.misses")).containsText("above your aim of 1.27 mm");
        assertThat(first.locator("p.verdict.misses")).containsText("outside the doubt");
        String sign =
                (String) first.locator("p.verdict.misses").evaluate("e => getComputedStyle(e, '::before').content");
        assertThat(sign).contains("✗");
        assertThat(page.locator("details.same summary")).containsText("Alike in all, within their doubt:");
        assertThat(page.locator(".beside")).not().containsText("mean piston speed");
        first.locator(".splits a").first().click();
        assertThat(page).hasURL(java.util.regex.Pattern.compile(".*#rule-.*"));
        assertThat(page.locator("form.dispute:target")).isVisible();
    }

    private static int wide(Page page, String element) {
        return ((Number) page.evaluate("() => " + element + ".scrollWidth")).intValue();
    }
}
