package longthrow.workshop;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Page;
import org.junit.jupiter.api.Test;

/** Two tabs on one build: the second sees what changed and chooses; nothing is lost either way. */
class TwoTabsTest extends InTheBrowser {
    @Test
    void theSecondSeesWhatChangedAndKeepsItsOwnOnTop() {
        Page first = open(phone());
        String base = beginEmpty(first, "Two tabs");
        Page second = first.context().newPage();
        first.navigate(base + "/measure/cylinder.bore");
        second.navigate(base + "/measure/crankshaft.stroke");
        firstBox(first).fill("66.00");
        keep(first).click();
        first.waitForURL("**/measure#**");

        expect("status of 409");
        firstBox(second).fill("56.50");
        keep(second).click();
        assertThat(second.getByText("What came in between")).isVisible();
        assertThat(second.locator(".difference .added")).containsText("66.00 mm");
        assertThat(second.locator(".mine")).containsText("56.50");
        second.getByText("Keep mine on top").click();
        second.waitForURL("**/measure#**");
        assertThat(row(second, "cylinder.bore")).contains("66.00 mm");
        assertThat(row(second, "crankshaft.stroke")).contains("56.50 mm");
    }

    @Test
    void orTakesTheirs() {
        Page first = open(desktop());
        String base = beginEmpty(first, "Two tabs");
        Page second = first.context().newPage();
        first.navigate(base + "/measure/cylinder.bore");
        second.navigate(base + "/measure/cylinder.bore");
        firstBox(first).fill("66.00");
        keep(first).click();
        first.waitForURL("**/measure#**");

        expect("status of 409");
        firstBox(second).fill("66.50");
        keep(second).click();
        second.getByText("Take theirs").click();
        assertThat(firstBox(second)).hasValue("66.00");
    }
}
