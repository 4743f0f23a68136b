package longthrow.workshop;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/** The page Power: what is missing leads to where it is read, a speed that is told stands with its figures and pictures, and nothing waits for it. */
class PowerPageTest extends OverHttp {
    private static final Pattern LINK = Pattern.compile("href=\"([^\"]*)\"");

    /** Invented; as little as torque can be told of. */
    private static final Path ENGINE = Path.of("../examples/scenarios/breathing.yaml");

    private String kept(String text) {
        return visitor.upload(
                        "/builds/file",
                        "engine.yaml",
                        text.getBytes(StandardCharsets.UTF_8),
                        Map.of("key", Visitor.key()))
                .location()
                .replaceAll("/measure.*", "");
    }

    private static String main(Visitor.Page page) {
        return page.body().substring(page.body().indexOf("<main"), page.body().indexOf("</main>"));
    }

    private void noLinkIsDead(String base, Visitor.Page page) {
        String measure = visitor.get(base + "/measure").body();
        Set<String> links = LINK.matcher(main(page))
                .results()
                .map(m -> m.group(1))
                .collect(Collectors.toCollection(LinkedHashSet::new));
        assertThat(links).hasSizeGreaterThan(5);
        for (String link : links) {
            String[] parts = link.split("#", -1);
            if (parts.length > 1 && parts[0].equals(base + "/measure")) {
                assertThat(measure).as(link).contains(" id=\"" + parts[1] + "\"");
            } else {
                assertThat(visitor.get(link).status()).as(link).isEqualTo(200);
            }
        }
    }

    @Test
    void whatItCannotDoWithoutLeadsToWhereItIsRead() throws IOException {
        String base = visitor.empty("Nothing read yet");
        Visitor.Page page = visitor.get(base + "/power?now=1");
        assertThat(page.words())
                .contains(
                        "No torque is told before this is read",
                        "chamber volume",
                        "where the valves are",
                        "A predicted torque is no leave to run at a speed",
                        "carbon monoxide alarm")
                .doesNotContain("Each speed");
        noLinkIsDead(base, page);
    }

    /** A word that is asked for and a suspect: the example lacks one reading that agrees with the rest. */
    @Test
    void theExampleSaysWhatIsInDisputeAndTellsNoTorque() throws IOException {
        String base = visitor.example();
        assertThat(visitor.get(base + "/power").body())
                .as("the page is there before its sums are")
                .contains("hx-get=\"" + base + "/power/answer\"", base + "/power?now=1");
        Visitor.Page page = visitor.get(base + "/power?now=1");
        assertThat(page.words())
                .contains("No torque is told before this is read 1", "compression height", "Power ? unknown");
        assertThat(visitor.get(base + "/power").body())
                .as("once worked out it is remembered")
                .doesNotContain("/power/answer");
    }

    /** Reckoned alone: some sixty sums, where the curve takes five times as many. */
    @Test
    void aSpeedOfTheReadersOwnIsReckonedAlone() throws IOException {
        String base = kept(Files.readString(ENGINE));
        String body = "";
        for (int asked = 0; asked < 100 && !body.contains("</table>"); asked++) {
            body = visitor.get(base + "/power/told?speed=3000").body();
            assertThat(body).containsAnyOf("hx-trigger=\"load", "</table>");
        }
        assertThat(body)
                .contains(
                        "At the speed of your own",
                        "3000 rpm",
                        "not approved",
                        "chosen-loop-title",
                        "chosen-valves-title")
                .contains("volumetric efficiency", "brake specific fuel consumption", "cells of gas", "open");
        Visitor.Page page = visitor.get(base + "/power?speed=3000");
        assertThat(page.words()).as("it is remembered").contains("brake mean effective pressure");
        assertThat(page.body()).contains("value=\"3000 rpm\"", base + "/power/answer");
        assertThat(page.words())
                .as("the rail has a word before the curve is asked for")
                .contains("Power");
        Matcher torque = Pattern.compile("Most torque ([\\d.]+) ± [\\d.]+ N·m").matcher(page.words());
        assertThat(torque.find()).isTrue();
        assertThat(Double.parseDouble(torque.group(1)))
                .as("0.2 litres at some 8 to 10 bar")
                .isBetween(9.0, 17.0);
    }

    @Test
    void aSpeedThatIsNoneIsSaidAndNothingIsBegun() throws IOException {
        String base = kept(Files.readString(ENGINE));
        Visitor.Page page = visitor.get(base + "/power?speed=17");
        assertThat(page.status()).isEqualTo(200);
        assertThat(page.words())
                .contains("Crank speed: “17” was asked for; it must be a speed from", "Shown is the curve alone");
        assertThat(page.body()).doesNotContain("/power/told");
        assertThat(visitor.get(base + "/power?speed=%3Cb%3E").body()).doesNotContain("<b>”");
    }

    /** It is asked for and under way; other pages do not wait for it. */
    @Test
    void otherPagesDoNotWaitForIt() throws IOException {
        String base = kept(Files.readString(ENGINE));
        visitor.get(base + "/life?now=1");
        assertThat(visitor.get(base + "/power/answer").body())
                .as("the curve takes longer than one asking")
                .contains("hx-get=\"" + base + "/power/answer\"");
        long begun = System.nanoTime();
        for (String address : List.of("/measure", "/life", "/power", "/history")) {
            assertThat(visitor.get(base + address).status()).isEqualTo(200);
        }
        assertThat((System.nanoTime() - begun) / 1e9)
                .as("four pages that are worked out [s]")
                .isLessThan(10);
    }
}
