package longthrow.workshop;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.AriaRole;
import org.junit.jupiter.api.Test;

/** With script switched off values are read and entered as with it. */
class ScriptOffTest extends InTheBrowser {
    @Test
    void readsAndEntersValues() {
        Page page = open(phone().setJavaScriptEnabled(false));
        String base = beginEmpty(page, "Plain");
        // By its address: where the testing tool switches script off, no fold of any page opens.
        page.navigate(base + "/measure/cylinder.bore");
        firstBox(page).fill("66,00");
        keep(page).click();
        assertThat(page.locator("p.notice")).containsText("Kept: bore");
        assertThat(row(page, "cylinder.bore")).contains("66,00 mm", "66.000 ±", "in");

        page.navigate(base + "/fit?now=1");
        page.getByRole(
                        AriaRole.GROUP,
                        new Page.GetByRoleOptions().setName("squish").setExact(true))
                .getByLabel("Aim at")
                .fill("1,27 mm");
        page.getByText("Keep and search").click();
        assertThat(page.locator("p.notice")).containsText("Kept");
        page.navigate(base + "/fit?angle=90");
        assertThat(page.locator("#section svg")).containsText("90°");
        page.navigate(base + "/history");
        assertThat(page.locator(".history li")).hasCount(3);
    }
}
