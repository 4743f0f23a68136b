package longthrow.workshop;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.assertions.LocatorAssertions;
import org.junit.jupiter.api.Test;

/** Rail and list take what was worked out beside the page, and whoever stands in them stays where he is. */
class RailFollowsTest extends InTheBrowser {
    private static final LocatorAssertions.ContainsTextOptions COMES =
            new LocatorAssertions.ContainsTextOptions().setTimeout(40_000);

    @Test
    void theAnswersComeWithoutAVisit() {
        Page page = open(phone());
        String base = takeExample(page);
        page.navigate(base + "/measure");
        Locator clear = page.locator(".rail li").filter(new Locator.FilterOptions().setHasText("Clear"));
        assertThat(clear).containsText("being worked out");
        clear.locator("a").focus();
        assertThat(clear).containsText("not approved", COMES);
        assertThat(clear.locator("a")).isFocused();
        Locator shake = page.locator(".rail li").filter(new Locator.FilterOptions().setHasText("Shake"));
        assertThat(shake).containsText("near", COMES);
        assertThat(page.locator(".ways")).not().containsText("being worked out");
        assertThat(page.locator(".ways .count"))
                .hasText(String.valueOf(page.locator(".ways li").count()));
        assertThat(page.url()).endsWith("/measure");
    }
}
