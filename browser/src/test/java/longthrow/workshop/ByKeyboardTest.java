package longthrow.workshop;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Page;
import java.util.LinkedHashMap;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** The first scenario (examples/scenarios/s1-longer-throw.yaml) typed by keyboard alone on a phone. Answers from the scenario's own text. */
class ByKeyboardTest extends InTheBrowser {
    /** More controls than any page has. */
    private static final int MOST_TABS = 500;

    /** Term, figure and its ± as the scenario says them; the unit is the usual one of the card. Cylinder first, as one strips. */
    private static Map<String, String[]> readings() {
        Map<String, String[]> all = new LinkedHashMap<>();
        all.put("head.chamber_volume", new String[] {"16.2", "0.2"});
        all.put("gasket.thickness", new String[] {"1.30", "0.03"});
        all.put("gasket.bore", new String[] {"68.5", "0.001"});
        all.put("cylinder.bore", new String[] {"66.00", "0.01"});
        all.put("cylinder.deck_height", new String[] {"139.62", "0.05"});
        all.put("piston.pin_top_to_crown", new String[] {"16.40", "0.02"});
        all.put("piston.pin_diameter", new String[] {"17.00", "0.001"});
        all.put("piston.crown_volume", new String[] {"1.1", "0.15"});
        all.put("connecting_rod.length", new String[] {"86.40", "0.03"});
        all.put("crankshaft.stroke", new String[] {"56.50", "0.02"});
        return all;
    }

    @Test
    void theFirstScenarioIsTypedAndAnswered() {
        Page page = open(phone());
        page.navigate("/builds");
        tabTo(page, "#new-name");
        page.keyboard().type("Dovrin 171, longer throw");
        page.keyboard().press("Enter");
        page.waitForURL("**/measure");
        readings().forEach((term, figure) -> {
            String part = term.substring(0, term.indexOf('.'));
            page.waitForLoadState();
            if (!(Boolean) page.evaluate("id => document.querySelector('#' + id + ' > details').open", part)) {
                tabTo(page, "#" + part + " summary");
                page.keyboard().press("Enter");
            }
            tabTo(page, "tr[id='" + term + "'] a");
            page.keyboard().press("Enter");
            page.waitForURL("**/measure/" + term);
            page.waitForLoadState();
            tabTo(page, "input[name=reading]");
            page.keyboard().type(figure[0]);
            tabTo(page, "#read-plus-minus");
            page.keyboard().type(figure[1]);
            page.keyboard().press("Enter");
            page.waitForURL("**/measure#" + term);
        });
        page.waitForLoadState();
        assertThat(row(page, "cylinder.deck_clearance")).contains("0.07 ± 0.06 mm");
        assertThat(row(page, "engine.squish")).contains("1.37 ± 0.07 mm");
        assertThat(row(page, "cylinder.swept_volume")).contains("193.30 ± 0.09 cc");
        assertThat(row(page, "engine.compression_ratio")).contains("9.66 ± 0.13");
    }

    /** Presses Tab until the first element that the selector names has the focus. */
    private static void tabTo(Page page, String selector) {
        for (int i = 0; i < MOST_TABS; i++) {
            page.keyboard().press("Tab");
            if ((Boolean) page.evaluate("s => document.activeElement === document.querySelector(s)", selector)) {
                return;
            }
        }
        throw new AssertionError("not reached by Tab: " + selector);
    }
}
