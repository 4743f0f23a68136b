package longthrow.workshop;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.AriaRole;
import org.junit.jupiter.api.Test;

/** A keypad that knows only a comma: every box for a number takes it. */
class DecimalCommaTest extends InTheBrowser {
    @Test
    void isTakenWhereverANumberMayBeTyped() {
        Page page = open(phone());
        String base = beginEmpty(page, "Komma");

        page.navigate(base + "/measure/cylinder.bore");
        page.locator("input[name=reading]").nth(0).fill("66,01");
        page.locator("input[name=reading]").nth(1).fill("66,02");
        page.locator("input[name=part_at]").fill("21,5");
        keep(page).click();
        page.waitForURL("**/measure#**");
        assertThat(row(page, "cylinder.bore")).contains("66,01 mm, 66,02 mm", "66.015 ±");

        page.navigate(base + "/measure/gasket.thickness");
        firstBox(page).fill("1,30");
        page.locator("#read-plus-minus").fill("0,03");
        keep(page).click();
        page.waitForURL("**/measure#**");
        assertThat(row(page, "gasket.thickness")).contains("1,30 mm ± 0,03 mm", "1.300 ± 0.030 mm");

        page.navigate(base + "/measure/crankshaft.stroke");
        page.getByText("Off a sheet, or a guess").click();
        page.locator("#value").fill("56,50");
        page.locator("#plus_minus").fill("0,02");
        page.locator("#by").fill("the maker");
        page.locator("form.reading").nth(1).locator("button").first().click();
        page.waitForURL("**/measure#**");
        assertThat(row(page, "crankshaft.stroke")).contains("56,50 mm ± 0,02 mm (sheet)", "56.50");

        page.navigate(base + "/fit");
        aim(page, "squish").fill("1,27"); // in the unit chosen beside it
        aim(page, "static compression ratio").fill("9,6");
        page.getByLabel("Budget").fill("330,50 EUR");
        page.getByText("Keep and search").click();
        assertThat(page.locator("p.notice")).containsText("Kept");
        page.navigate(base + "/text");
        assertThat(page.locator("textarea").inputValue()).contains("330,50 EUR", "1,27 mm", "9,6");
    }

    private static Locator aim(Page page, String figure) {
        return page.getByRole(
                        AriaRole.GROUP,
                        new Page.GetByRoleOptions().setName(figure).setExact(true))
                .getByLabel("Aim at");
    }
}
