package longthrow.workshop;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** What a mock-up told is written down on the page Clear, beside its pair. */
class MockUpPageTest extends OverHttp {
    private static final String PAIR = "counterweight_to_case";

    private String longer() {
        try {
            return visitor.upload(
                            "/builds/file",
                            "longer.yaml",
                            Files.readAllBytes(Path.of("../examples/scenarios/s1-longer-throw.yaml")),
                            Map.of("key", Visitor.key()))
                    .location()
                    .replace("/measure", "");
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }

    private static Map<String, String> form(int based, String... fields) {
        Map<String, String> form = new HashMap<>(Map.of("based", String.valueOf(based), "key", Visitor.key()));
        for (int k = 0; k < fields.length; k += 2) {
            form.put(fields[k], fields[k + 1]);
        }
        return form;
    }

    private static String of(String page, String pair) {
        Matcher article = Pattern.compile("(?s)<article class=\"gap (\\w+)\" id=\"" + pair + "\">.*?</article>")
                .matcher(page);
        return article.find() ? article.group() : "";
    }

    @Test
    void everyPairLeadsToItsFormAndWhatItSaysMakesThePairKnown() {
        String base = longer();
        String before = visitor.get(base + "/clear?now=1").body();
        assertThat(of(before, PAIR)).isEmpty();
        assertThat(Pattern.compile("href=\"" + base + "/clear/mocked/\\w+\"")
                        .matcher(before)
                        .results()
                        .count())
                .as("one for each pair")
                .isEqualTo(Pattern.compile("<details class=\"gap\">|<article class=\"gap ")
                        .matcher(before)
                        .results()
                        .count());
        assertThat(before).contains("I have mocked this up");
        assertThat(visitor.get(base + "/clear/mocked/" + PAIR).body())
                .as("the parts that are in the build now stand in the form, and are sent as they stood there")
                .contains("name=\"with_stroke\"", "value=\"56.50 mm\"");

        Visitor.Page kept = visitor.post(
                base + "/clear/mocked/" + PAIR,
                form(1, "way", "clay", "gap", "2.0; 2.1", "both_ways", "yes", "with_stroke", "56.50 mm"));
        assertThat(kept.status()).isEqualTo(303);
        assertThat(kept.location()).endsWith("/clear?now=1#" + PAIR);
        Visitor.Page after = visitor.get(base + "/clear?now=1");
        assertThat(of(after.body(), PAIR)).contains("gap clears_cold", "clay, 2.0 mm, 2.1 mm: this counts");
        assertThat(visitor.get(base + "/text").body())
                .contains("mocked_up: [{pair: counterweight_to_case, way: clay,", "with_stroke: 56.50 mm");
        assertThat(visitor.get(base + "/history").words()).contains("mock-up: counterweight to case");

        Visitor.Page page = visitor.get(base + "/clear/mocked/" + PAIR);
        assertThat(page.words()).contains("Written down", "Take it out", "I have mocked it up again");
        Map<String, String> out = form(2, "index", "0");
        out.put("was", "something else");
        assertThat(visitor.post(base + "/clear/mocked/" + PAIR + "/out", out).status())
                .isEqualTo(409);
        Matcher was = Pattern.compile("name=\"was\" value=\"([^\"]*)\"").matcher(page.body());
        assertThat(was.find()).isTrue();
        out.put("was", was.group(1).replace("&#34;", "\"").replace("&#39;", "'"));
        out.put("key", Visitor.key());
        assertThat(visitor.post(base + "/clear/mocked/" + PAIR + "/out", out).status())
                .isEqualTo(303);
        assertThat(of(visitor.get(base + "/clear?now=1").body(), PAIR))
                .as("unknown again")
                .isEmpty();
    }

    /** Nothing that is wrong is kept, all that was typed stands in the form again, and what is wrong is said. */
    @Test
    void whatIsWrongIsSaidAndLosesNothing() {
        String base = longer();
        String address = base + "/clear/mocked/" + PAIR;
        Visitor.Page bad = visitor.post(
                address, form(1, "way", "clay", "found", "gap", "gap", "two", "both_ways", "no", "note", "thin clay"));
        assertThat(bad.status()).isEqualTo(422);
        assertThat(bad.words()).contains("two").doesNotContain("mocked_up[");
        assertThat(bad.body())
                .contains(
                        "value=\"two\"", "value=\"thin clay\"", "<option value=\"no\" selected>one way only</option>");
        Visitor.Page blank = visitor.post(address, form(1, "way", "clay", "gap", ""));
        assertThat(blank.status()).isEqualTo(422);
        assertThat(blank.words()).contains("No gap is written");
        Visitor.Page blue = visitor.post(address, form(1, "way", "blue", "found", "gap", "gap", "2"));
        assertThat(blue.words()).contains("not how far they stay apart");
        Visitor.Page two =
                visitor.post(address, form(1, "way", "wire", "found", "rows", "angle", "350", "at_angle", "2"));
        assertThat(two.status()).isEqualTo(422);
        assertThat(two.body()).contains("value=\"350\"").contains("to both sides of where it is least");
        assertThat(visitor.get(base + "/text").body()).doesNotContain("mocked_up");
        assertThat(visitor.get(base + "/clear/mocked/rod_to_moon").status()).isEqualTo(404);
        assertThat(visitor.get(base + "/clear/mocked/valve_to_head").status()).isEqualTo(404);
    }

    @Test
    void marksAndWhatPassedFreeAreWrittenToo() {
        String base = longer();
        visitor.post(
                base + "/clear/mocked/rod_to_skirt",
                form(1, "way", "blue", "found", "touches", "with_stroke", "56.5", "both_ways", "yes"));
        visitor.post(base + "/clear/mocked/pushrod_to_tube", form(2, "way", "wire", "found", "free", "gap", "0,8"));
        Visitor.Page page = visitor.get(base + "/clear?now=1");
        assertThat(of(page.body(), "rod_to_skirt")).contains("gap touches", "marking blue");
        assertThat(of(page.body(), "pushrod_to_tube")).contains("at least 0.8");
        assertThat(page.words()).contains("do not turn it with the starter");
        assertThat(visitor.get(base + "/book").words()).contains("mock-up", "pushrod to its tube or hole");
    }

    /** Two tabs with one pair: the second is told of the first and chooses, and both are there if he wants both. */
    @Test
    void twoMockUpsOfOnePairAreASaidAndAChoice() {
        String base = longer();
        String address = base + "/clear/mocked/" + PAIR;
        assertThat(visitor.post(address, form(1, "way", "clay", "gap", "2.0")).status())
                .isEqualTo(303);
        Map<String, String> second = form(1, "way", "wire", "gap", "0.7", "note", "the other tab");
        Visitor.Page told = visitor.post(address, second);
        assertThat(told.status()).isEqualTo(409);
        assertThat(told.words())
                .contains("has gone on to revision 2", "gap: 2.0 mm", "Keep mine on top", "Take theirs");
        assertThat(told.body()).contains("value=\"0.7\"", "value=\"the other tab\"");
        assertThat(visitor.get(base + "/text").body()).doesNotContain("0.7 mm");
        second.put("based", told.hidden("based"));
        assertThat(visitor.post(address, second).status()).isEqualTo(303);
        assertThat(visitor.get(base + "/text").body()).contains("gap: 2.0 mm", "gap: 0.7 mm");
    }

    /** An entry stands behind what came in between: somebody else's reading is no conflict. */
    @Test
    void twoEntriesMadeAtOnceAreBothKept() {
        String base = longer();
        for (String pair : new String[] {PAIR, "rod_to_skirt"}) {
            assertThat(visitor.post(base + "/clear/mocked/" + pair, form(1, "way", "clay", "gap", "2"))
                            .status())
                    .isEqualTo(303);
        }
        assertThat(visitor.get(base + "/text").body()).contains("counterweight_to_case", "rod_to_skirt");
    }
}
