package longthrow.workshop;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import java.util.List;
import org.junit.jupiter.api.Test;

/** A catalogue with bad rows among good ones: each row's fate is shown before any of it counts. */
class BadCatalogueTest extends InTheBrowser {
    /** Invented. */
    static final String ROWS = """
            # kind: connecting_rod
            code,length [mm],length ±,big_end_bore,small_end_bore [mm],metal,price [EUR],vendor
            R3,86.40,0.03,27.02 mm ± 0.01 mm,17.01,billet_aluminium,95,Quillane Works
            R5,86.4 g,,27.02 mm,,steel,,Quillane Works
            R6,86.50,0.03,27.02 mm,17.01,cheese,80,Quillane Works
            R3,86.40,0.03,27.02 mm ± 0.01 mm,17.01,billet_aluminium,95,Quillane Works
            ,86.60,0.03,27.02 mm,17.01,steel,80,Quillane Works
            """;

    @Test
    void everyRowsFateIsShownBeforeItCounts() {
        Page page = open(phone());
        page.navigate("/parts");
        EveryPageTest.offer(page, "rods.csv", ROWS);
        List<String> rows = page.locator("tbody tr").allTextContents().stream()
                .map(r -> r.replaceAll("\\s+", " ").strip())
                .toList();
        assertThat(rows).as("five rows, five fates").hasSize(5);
        assertThat(rows).anyMatch(r -> r.contains("R5") && r.contains("is a mass") && r.contains("refused"));
        assertThat(rows).anyMatch(r -> r.contains("R6") && r.contains("cheese") && r.contains("refused"));
        assertThat(rows.get(0)).as("what is to be mended comes first").contains("refused");
        assertThat(workshop().store().catalogues()).as("nothing counts yet").isEmpty();

        page.getByText("Keep the good rows").click();
        Locator kept = page.locator(".card");
        assertThat(kept).hasCount(1);
        assertThat(kept).containsText("1 part");
        assertThat(workshop().store().catalogues()).hasSize(1);
    }

    @Test
    void whatIsLeftIsGone() {
        Page page = open(desktop());
        page.navigate("/parts");
        EveryPageTest.offer(page, "rods.csv", ROWS);
        page.getByText("Leave it").click();
        assertThat(page.locator(".card")).hasCount(0);
        assertThat(workshop().store().catalogues()).isEmpty();
    }
}
