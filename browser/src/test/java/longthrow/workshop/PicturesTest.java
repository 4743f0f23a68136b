package longthrow.workshop;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Page;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;

/** The pictures of the README: made with {@code -Dlongthrow.regenerate=true}; else what they show must still be on the pages. */
class PicturesTest extends InTheBrowser {
    private static final Path FOLDER = Path.of("..", "docs", "pictures");

    /** A picture is looked at beside text: it need not be larger [bytes]. */
    private static final long MOST = 200_000;

    @Test
    void showWhatThePagesShow() throws IOException {
        Page phone = open(phone().setDeviceScaleFactor(1));
        String base = takeExample(phone);
        phone.waitForLoadState();
        picture(
                phone,
                "measure-phone",
                "Measure",
                "Readings that do not agree with the rest",
                "What stands in the way");
        phone.navigate(base + "/measure/cylinder.deck_height");
        phone.locator("#how-title").scrollIntoViewIfNeeded();
        phone.evaluate("() => document.getElementById('how-title').scrollIntoView()");
        picture(phone, "card-phone", "How to take this reading", "Measured from");

        Page desk = open(desktop().setViewportSize(1100, 640));
        desk.navigate(EveryPageTest.wanted(workshop()) + "/fit?now=1");
        picture(desk, "fit-desktop", "These go together", "R3 + G130", "9.66 ± 0.13", "1.37 ± 0.07 mm");
    }

    private static void picture(Page page, String name, String... words) throws IOException {
        String text = page.locator("body").innerText();
        assertThat(text).contains(words);
        Path file = FOLDER.resolve(name + ".png");
        if (Boolean.getBoolean("longthrow.regenerate")) {
            Files.createDirectories(FOLDER);
            Files.write(file, page.screenshot());
        }
        assertThat(file).exists();
        assertThat(Files.size(file)).isBetween(1_000L, MOST);
        assertThat(Files.readString(Path.of("..", "README.md")))
                .as("the README shows it")
                .contains(name + ".png");
        assertThat(List.of(Files.readAllBytes(file)[1], Files.readAllBytes(file)[2]))
                .containsExactly((byte) 'P', (byte) 'N');
    }
}
