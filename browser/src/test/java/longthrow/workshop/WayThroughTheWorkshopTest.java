package longthrow.workshop;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.AriaRole;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** The invented engine from the first visit on: Builds, Measure, a card, Parts, Fit, taking one, History. */
class WayThroughTheWorkshopTest extends InTheBrowser {
    @Test
    void theInventedEngineFromTheFirstVisitToTakenParts() {
        Page page = open(phone());
        page.navigate("/");
        assertThat(page).hasURL(Pattern.compile("/builds$"));
        assertThat(page.getByText("Nothing here yet")).isVisible();
        String base = takeExample(page);

        assertThat(page.getByText("Readings that do not agree with the rest")).isVisible();
        assertThat(page.getByText("The next best reading")).isVisible();
        page.locator("section.next li a").first().click();
        assertThat(page.getByText("How to take this reading")).isVisible();
        assertThat(page.locator(".drawing svg")).isVisible();

        page.navigate("/parts");
        page.getByText("Take the invented catalogue").click();
        assertThat(page.getByText("Nothing of it counts yet.")).isVisible();
        page.getByText("Keep the good rows").click();
        assertThat(page.locator(".card").getByText("in use").first()).isVisible();

        page.navigate(base + "/fit");
        page.getByRole(AriaRole.HEADING, new Page.GetByRoleOptions().setName("These go together"))
                .waitFor();
        String first = page.locator("article.card h3").first().textContent();
        page.locator("article.card button").first().click();
        page.waitForURL("**/measure**");
        assertThat(page.locator("p.notice").first().textContent())
                .contains("Taken: " + first.replaceFirst("^1\\. ", ""));

        page.navigate(base + "/book");
        assertThat(page.locator("h1")).containsText("Book");

        page.navigate(base + "/history");
        assertThat(page.locator(".history li").first()).containsText("took");
        page.getByText("Undo the last edit").click();
        assertThat(page.locator("p.notice").first()).isVisible();
        page.navigate("/builds");
        assertThat(page.locator(".card .state").first()).containsText("refused");
    }
}
