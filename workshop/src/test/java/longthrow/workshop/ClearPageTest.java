package longthrow.workshop;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.CompletableFuture;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import longthrow.buildfile.BuildFile;
import longthrow.core.answer.Answer;
import longthrow.core.answer.Clearance;
import longthrow.core.build.Build;
import longthrow.core.clear.Clear;
import org.junit.jupiter.api.Test;

/** The page Clear of the invented example, whose rod bolts come near its camshaft. */
class ClearPageTest extends OverHttp {
    private static int count(String page, String pattern) {
        Matcher found = Pattern.compile(pattern).matcher(page);
        int count = 0;
        while (found.find()) {
            count++;
        }
        return count;
    }

    @Test
    void saysWhatTouchesAndWhatIsUnknownWithTheWayToTheReading() {
        String base = visitor.example();
        Visitor.Page first = visitor.get(base + "/clear");
        assertThat(first.body()).contains("hx-get=\"" + base + "/clear/answer\"");
        assertThat(first.words()).contains("Clear … being worked out");
        Visitor.Page page = visitor.get(base + "/clear?now=1");
        assertThat(page.status()).isEqualTo(200);
        assertThat(page.words())
                .contains("Clear ■ not approved", "Unknown until mocked up", "turn it twice by hand with clay")
                .contains("may touch rod bolts to camshaft core", "never grind a bolt");
        assertThat(page.body())
                .as("what is only worked out has no card: its part is shown")
                .contains("href=\"" + base + "/measure#camshaft\"")
                .contains("href=\"" + base + "/measure/piston.boss_below_pin\"");
        int told = count(page.body(), "<article class=\"gap ");
        int unknown = count(page.body(), "<details class=\"gap\">");
        assertThat(page.words()).contains((told + unknown) + " pairs looked at: ");
        assertThat(count(page.body(), "class=\"picture chart\""))
                .as("charts of pairs that can be shown")
                .isEqualTo(count(page.body(), "<option value=\"\\w+\"[^>]* data-angle="));
        assertThat(visitor.get(base + "/clear").words())
                .as("once worked out it is remembered")
                .contains("rod bolts to camshaft core");
    }

    /** The same sentence as in the command, before all else; and what does not agree, as there. */
    @Test
    void whatItComesToStandsFirstAndWhatDoesNotAgreeIsSaid() throws IOException {
        Build build = BuildFile.read(Files.readString(Path.of("../examples/demo.yaml")))
                .build()
                .orElseThrow();
        Visitor.Page page = visitor.get(visitor.example() + "/clear?now=1");
        String said = Clear.inShort(Clear.of(build));
        assertThat(said).startsWith("not to be turned with the starter: ");
        assertThat(page.words()).contains(said.substring(1) + ". ");
        assertThat(page.body().indexOf("id=\"in-short\""))
                .isPositive()
                .isLessThan(page.body().indexOf("pairs looked at: "));
        String slipped =
                Files.readString(Path.of("../examples/demo.yaml")).replace("bolt_down: 19.5 mm", "bolt_down: -19.5 mm");
        Answer clear = Clear.of(BuildFile.read(slipped).build().orElseThrow());
        assertThat(clear.clearances())
                .filteredOn(p -> p.key().startsWith("rod_bolts_to_"))
                .isNotEmpty()
                .allMatch(p -> p.state() == Clearance.State.UNKNOWN);
        String base = visitor.upload(
                        "/builds/file",
                        "slipped.yaml",
                        slipped.getBytes(StandardCharsets.UTF_8),
                        Map.of("key", Visitor.key()))
                .location()
                .replace("/measure", "");
        assertThat(visitor.get(base + "/clear?now=1").words())
                .contains(
                        "Suspect: ",
                        "the lower end of the bolt would stand above its upper end: has one the wrong sign?");
    }

    /** What matters most stands first, once, with its reason, its mend and the way to its gap; nothing stands there where nothing may touch. */
    @Test
    void whatTouchesOrMayStandsOnTop() throws IOException {
        String base = visitor.example();
        Visitor.Page page = visitor.get(base + "/clear?now=1");
        List<Clearance> grave = Clear.of(BuildFile.read(Files.readString(Path.of("../examples/demo.yaml")))
                        .build()
                        .orElseThrow())
                .clearances()
                .stream()
                .filter(p -> p.state() == Clearance.State.TOUCHES || p.state() == Clearance.State.MAY_TOUCH)
                .toList();
        assertThat(grave).isNotEmpty();
        String body = page.body();
        String box = body.substring(body.indexOf("aria-labelledby=\"grave-head\""));
        box = box.substring(0, box.indexOf("</section>"));
        assertThat(box).contains("do not turn it with the starter");
        assertThat(count(box, "<li>")).isEqualTo(grave.size());
        for (Clearance pair : grave) {
            assertThat(box).contains("href=\"#" + pair.key() + "\"", pair.one() + " to " + pair.other(), "Do this:");
            assertThat(body).contains("<article class=\"gap " + pair.state().key() + "\" id=\"" + pair.key() + "\">");
        }
        assertThat(body.indexOf("grave-head"))
                .isGreaterThan(body.indexOf("pairs looked at: "))
                .isLessThan(body.indexOf("<b>Warning:</b>"))
                .isLessThan(body.indexOf("id=\"turning\""))
                .isLessThan(body.indexOf("id=\"unknown-head\""));
        assertThat(visitor.get(visitor.empty("Nothing read yet") + "/clear?now=1")
                        .body())
                .doesNotContain("grave-head");
    }

    /** Six unknown pairs and what does not clear stand open; the others are folded under how many they are and the least of them. */
    @Test
    void whatIsNotNeededFirstIsFoldedUnderHowManyItIs() {
        String body = visitor.get(visitor.example() + "/clear?now=1").body();
        assertThat(count(body, "<details class=\"more\">")).isEqualTo(2);
        int unknown = count(body, "<details class=\"gap\">");
        int clears = count(body, "<article class=\"gap clears");
        int cold = count(body, "<article class=\"gap clears_cold");
        assertThat(cold).isPositive().isLessThan(clears);
        String more = body.substring(body.indexOf("<details class=\"more\">"));
        assertThat(count(more.substring(0, more.indexOf("id=\"told-head\"")), "<details class=\"gap\">"))
                .isEqualTo(unknown - 6);
        assertThat(more).contains((unknown - 6) + " more pairs are unknown", "the nearest to being known: ");
        String told = more.substring(more.indexOf("id=\"told-head\""));
        String folded = told.substring(told.indexOf("<details class=\"more\">"));
        assertThat(count(folded, "<article class=\"gap clears"))
                .isEqualTo(clears)
                .isPositive();
        assertThat(folded)
                .doesNotContain("gap may_touch")
                .contains(clears + " pairs clear, " + cold + " of them cold, running not known", "the narrowest: ");
    }

    /** At the worst of every figure they touch, and by chance hardly ever: two things, said as two. */
    @Test
    void theWorstOfEveryFigureIsNotTheChance() {
        assertThat(visitor.get(visitor.example() + "/clear?now=1").words())
                .contains(
                        "with every figure at its worst an overlap of 0.35 mm (0.014 in); by chance they touch in under 1 %");
    }

    /** A name stands once beside how many pairs wait for it. */
    @Test
    void aWarningSaysANameOnce() {
        String words = visitor.get(visitor.example() + "/clear?now=1").words();
        assertThat(words).containsPattern("[a-z]+ \\(\\d+ pairs\\)");
        assertThat(Pattern.compile("([a-z]+ [a-z ]+[a-z]) \\(\\1[,)]")
                        .matcher(words)
                        .results()
                        .toList())
                .isEmpty();
    }

    /** A body that is a band right across the engine in the sums is shown between the walls of the bore. */
    @Test
    void whatIsShownOfAPistonIsCutToTheBore() throws IOException {
        String base = visitor.upload(
                        "/builds/file",
                        "longer.yaml",
                        Files.readAllBytes(Path.of("../examples/scenarios/s1-longer-throw.yaml")),
                        Map.of("key", Visitor.key()))
                .location()
                .replace("/measure", "");
        String page = visitor.get(base + "/clear?now=1").body();
        Matcher skirt = Pattern.compile(
                        "<path [^>]*data-pairs=\"skirt_to_counterweight\"[^>]*clip-path=\"url\\(#([\\w-]+)\\)\"")
                .matcher(page);
        assertThat(skirt.find()).isTrue();
        Matcher cut = Pattern.compile("<clipPath id=\"" + skirt.group(1)
                        + "\">\\s*<rect x=\"([-\\d.]+)\" y=\"[-\\d.]+\" width=\"([\\d.]+)\"")
                .matcher(page);
        assertThat(cut.find()).isTrue();
        assertThat(Double.parseDouble(cut.group(1))).isNegative();
        assertThat(Double.parseDouble(cut.group(2)))
                .as("no wider than the engine is drawn")
                .isBetween(50.0, 276.0);
    }

    /** As many as the answer has, which its JSON and text list too. */
    @Test
    void everythingThatWasTakenIsListed() throws IOException {
        Answer answer = Clear.of(BuildFile.read(Files.readString(Path.of("../examples/demo.yaml")))
                .build()
                .orElseThrow());
        String page = visitor.get(visitor.example() + "/clear?now=1").body();
        String list = page.substring(page.indexOf("<details class=\"taken\">"));
        String lines = list.substring(0, list.indexOf("</details>"));
        assertThat(count(lines, "<li>") - count(lines, "<ul class=\"places\">"))
                .as("places that something stands in for")
                .isEqualTo(answer.defaults().size())
                .isPositive();
    }

    @Test
    void whatComesOffASkirtIsThereToPrintAtFullSize() throws IOException {
        String shorter = Files.readString(Path.of("../examples/scenarios/s1-longer-throw.yaml"))
                .replace("86.40 mm ± 0.03 mm", "85.60 mm ± 0.03 mm");
        String base = visitor.upload(
                        "/builds/file",
                        "shorter.yaml",
                        shorter.getBytes(StandardCharsets.UTF_8),
                        Map.of("key", Visitor.key()))
                .location()
                .replace("/measure", "");
        String address = base + "/clear/relief/skirt_to_counterweight.svg";
        assertThat(visitor.get(base + "/clear?now=1").body())
                .contains("href=\"" + address + "\" download", "Outline of what comes off the piston skirt")
                .doesNotContain("/clear/relief/rod_bolts_to_cam_core.svg");
        Visitor.Page sheet = visitor.get(address);
        assertThat(sheet.status()).isEqualTo(200);
        assertThat(sheet.body()).startsWith("<svg ").contains("print at 100 %");
        assertThat(visitor.get(base + "/clear/relief/boss_to_counterweight.svg").status())
                .isEqualTo(404);
        assertThat(visitor.get(base + "/clear/relief/none.svg").status()).isEqualTo(404);
    }

    @Test
    void whatTouchesStandsInTheWayOnEveryPageOnceItIsKnown() {
        String base = visitor.example();
        String stop = "do not turn it with the starter: rod bolts and camshaft core may touch";
        assertThat(visitor.get(base + "/measure").words()).doesNotContain(stop);
        visitor.get(base + "/clear?now=1");
        for (String page : new String[] {"/measure", "/measure/cylinder.bore", "/fit", "/book", "/life?now=1"}) {
            assertThat(visitor.get(base + page).words()).as(page).contains(stop);
        }
        assertThat(visitor.get(base + "/life?now=1").words())
                .contains(
                        "What would lift it", "another rod or camshaft", "nothing at any speed before nothing touches");
    }

    /** The sum of the old text takes longer than the edit that overtakes it. */
    @Test
    void anAnswerOfAnOlderTextIsNeverShown() throws Exception {
        String base = visitor.example();
        String before = visitor.get(base + "/clear?now=1").words();
        assertThat(before).contains("rod bolts to camshaft core");
        for (int round = 0; round < 3; round++) {
            String far = String.format(Locale.ROOT, "%.1f mm", 60.0 + round);
            visitor.post(base + "/measure/camshaft.axis_across", form(2 * round + 1), List.of("40.0 mm"));
            CompletableFuture<Visitor.Page> slow =
                    CompletableFuture.supplyAsync(() -> visitor.get(base + "/clear?now=1"));
            visitor.post(base + "/measure/camshaft.axis_across", form(2 * round + 2), List.of(far));
            Visitor.Page shown = slow.get();
            String newest = visitor.get(base + "/clear?now=1").words();
            assertThat(shown.status() == 303 || gaps(shown.words()).equals(gaps(newest)))
                    .as("round " + round + ": " + shown.status())
                    .isTrue();
        }
    }

    private static Map<String, String> form(int based) {
        return new HashMap<>(Map.of("based", String.valueOf(based), "key", Visitor.key()));
    }

    private static String gaps(String words) {
        return words.substring(words.indexOf("pairs looked at: "));
    }

    @Test
    void pushrodAndRetainerHaveAPictureOfTheirOwnThatSaysWhatItShows() {
        String body = visitor.get(visitor.example() + "/clear?now=1").body();
        assertThat(count(body, "<div class=\"picture plane\">")).isEqualTo(2);
        assertThat(body.substring(body.indexOf("id=\"pushrod_to_tube\"")))
                .contains("<div class=\"picture plane\">", "Seen along the tube");
        assertThat(body.substring(body.indexOf("id=\"retainer_to_rocker\"")))
                .contains("<div class=\"picture plane\">", "Seen along the rocker's axis");
    }

    @Test
    void showsAPairAtAnAngleWithoutScript() {
        String base = visitor.example();
        String page = visitor.get(base + "/clear?now=1").body();
        Matcher way = Pattern.compile("href=\"([^\"]*pair=rod_bolts_to_cam_core[^\"]*)#turning\"")
                .matcher(page);
        assertThat(way.find()).isTrue();
        String shown = visitor.get(way.group(1).replace("&amp;", "&")).body();
        assertThat(shown).contains("class=\"nearest on\" data-pair=\"rod_bolts_to_cam_core\"");
        String turning = shown.substring(
                shown.indexOf("id=\"moving\""), shown.indexOf("</svg>", shown.indexOf("id=\"moving\"")));
        assertThat(count(turning, "class=\"body[^\"]* on\"")).isEqualTo(2);
        assertThat(visitor.get(base + "/clear?pair=rod_bolts_to_cam_core&angle=300")
                        .body())
                .as("elsewhere they are not at their nearest")
                .doesNotContain("nearest on");
    }

    @Test
    void whatNobodyAskedForDoesNoHarm() {
        String base = visitor.example();
        for (String asked : new String[] {"?pair=%3Cscript%3E&angle=9e9", "?pair=x&angle=-90", "?pair=&angle=99999"}) {
            Visitor.Page page = visitor.get(base + "/clear" + asked);
            assertThat(page.status()).as(asked).isEqualTo(200);
            assertThat(page.body()).doesNotContain("<script>&", "%3Cscript");
        }
        String empty = visitor.empty("Nothing read yet");
        assertThat(visitor.get(empty + "/clear?now=1").words()).contains("Unknown until mocked up");
    }
}
