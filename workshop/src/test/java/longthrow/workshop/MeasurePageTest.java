package longthrow.workshop;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import longthrow.buildfile.BuildFile;
import longthrow.core.build.Build;
import longthrow.core.build.Given;
import longthrow.core.term.Term;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class MeasurePageTest extends OverHttp {
    private Map<String, String> form(int based) {
        return new HashMap<>(
                Map.of("based", "" + based, "key", Visitor.key(), "entry", "0", "how", "read", "unit", "mm"));
    }

    private Build build(String base) {
        return BuildFile.read(visitor.download(base + "/file")).build().orElseThrow();
    }

    private String text(String base) {
        return new String(visitor.download(base + "/file"), StandardCharsets.UTF_8);
    }

    @Test
    void thePageShowsSuspectsNextReadingTheRailAndWhatStandsInTheWay() {
        String base = visitor.example();
        String words = visitor.get(base + "/measure").words();
        assertThat(words)
                .contains("Readings that do not agree with the rest", "compression height, 15.625 mm")
                .contains("The next best reading", "What stands in the way", "do not run it at 5200 rpm")
                .contains(
                        "Measure ■ refused",
                        "Book ■ refused",
                        "Clear … being worked out",
                        "Power … being worked out",
                        "Dyno ? unknown")
                .containsPattern(
                        "STOP: \\d+ refused, \\d+ not approved; \\d+ readings? suspect; \\d+ figures? not known yet")
                .doesNotContain("hard stop")
                .contains("137.35 ± 0.06 mm");
    }

    /** Only what there is is named, and the line has as many as the list it sums up. */
    @Test
    void theLineOfStopsCountsWhatTheListHas() throws IOException {
        String base = throwWith(scenario("s1-longer-throw.yaml"));
        Visitor.Page page = visitor.get(base + "/measure");
        assertThat(page.words()).contains("NOT APPROVED: ").doesNotContain(" 0 refused");
        Matcher lead = Pattern.compile("<p class=\"lead\">([^<]*)").matcher(page.body());
        Matcher badge = Pattern.compile("<span class=\"count\">(\\d+)").matcher(page.body());
        assertThat(lead.find() && badge.find()).isTrue();
        int sum = Pattern.compile("\\d+")
                .matcher(lead.group(1))
                .results()
                .mapToInt(n -> Integer.parseInt(n.group()))
                .sum();
        assertThat(sum).isEqualTo(Integer.parseInt(badge.group(1)));
    }

    @Test
    void aCardOfWhichNothingIsKnownHasNoEmptyHeading() {
        String base = visitor.empty("One");
        Visitor.Page card = visitor.get(base + "/measure/gasket.thickness");
        assertThat(card.body()).doesNotContain("As it is known now").contains("t<sub>g</sub>");
    }

    /** With nothing read no single reading brings a figure; the first steps are named all the same. */
    @Test
    void anEmptySheetSaysWithWhatToBegin() {
        String base = visitor.empty("Fresh");
        Visitor.Page page = visitor.get(base + "/measure");
        assertThat(page.words())
                .contains(
                        "Begin with bore",
                        "begin here",
                        "Nothing is read yet. Begin with: bore",
                        "then stroke",
                        "then deck height");
        String next = page.body().substring(page.body().indexOf("The next best reading"));
        assertThat(next.indexOf("/measure/cylinder.bore\"")).isPositive();
        assertThat(next.indexOf("/measure/crankshaft.stroke")).isGreaterThan(next.indexOf("/measure/cylinder.bore\""));
        assertThat(next.indexOf("/measure/cylinder.deck_height"))
                .isGreaterThan(next.indexOf("/measure/crankshaft.stroke"));
    }

    /** A page from before the first edit holds the key of that edit. */
    @Test
    void theSameFormSentTwiceCountsOnceAndWithAnotherReadingIsAnotherEdit() {
        String base = visitor.example();
        Map<String, String> form = form(1);
        visitor.post(base + "/measure/cylinder.deck_height", form, List.of("137.41"));
        visitor.post(base + "/measure/cylinder.deck_height", form, List.of("137.41"));
        assertThat(visitor.get(base + "/history").body()).doesNotContain("<li value=\"3\">");
        Visitor.Page asked = visitor.post(base + "/measure/cylinder.deck_height", form, List.of("137.43"));
        assertThat(asked.status()).as("asked, not taken for the first").isEqualTo(409);
        form.put("based", "2");
        visitor.post(base + "/measure/cylinder.deck_height", form, List.of("137.43"));
        assertThat(text(base)).contains("137.43");
    }

    @Test
    void aFormThatIsNotOneOfThePagesIsRefusedAndNothingIsKept() {
        String base = visitor.example();
        String card = base + "/measure/cylinder.deck_height";
        for (String entry : List.of("99", "-1", "x")) {
            Map<String, String> form = form(1);
            form.put("entry", entry);
            assertThat(visitor.post(card, form, List.of("137.41")).status())
                    .as(entry)
                    .isEqualTo(entry.equals("x") ? 400 : 422);
        }
        Map<String, String> how = form(1);
        how.put("how", "wat");
        assertThat(visitor.post(card, how, List.of("137.41")).status()).isEqualTo(422);
        assertThat(visitor.post(card, form(1), Collections.nCopies(51, "137.41"))
                        .status())
                .isEqualTo(422);
        Map<String, String> note = form(1);
        note.put("note", "no \uFFFD letter");
        assertThat(visitor.post(card, note, List.of("137.41")).status()).isEqualTo(400);
        assertThat(visitor.get(base + "/history").body()).doesNotContain("<li value=\"2\">");
    }

    /** The blank sheet says of every line that it is not known: that is no reading. */
    @Test
    void whatIsNotKnownIsNotCountedAsKnown() {
        String base = visitor.empty("Fresh");
        assertThat(visitor.get(base + "/measure").words())
                .contains("0 of ")
                .doesNotContainPattern("[1-9]\\d* of \\d+ known");
        visitor.post(base + "/measure/cylinder.bore", form(1), List.of("66.00"));
        assertThat(visitor.get(base + "/measure").words()).containsPattern("(?<!\\d)1 of \\d+ known");
        Map<String, String> unknown = form(2);
        unknown.put("unknown", "yes");
        visitor.post(base + "/measure/cylinder.bore", unknown);
        assertThat(visitor.get(base + "/measure").words()).doesNotContainPattern("[1-9]\\d* of \\d+ known");
    }

    private String throwWith(String changes) {
        return visitor.upload(
                        "/builds/file",
                        "throw.yaml",
                        changes.getBytes(StandardCharsets.UTF_8),
                        Map.of("key", Visitor.key()))
                .location()
                .replace("/measure", "");
    }

    private static String scenario(String name) throws IOException {
        return Files.readString(Path.of("../examples/scenarios").resolve(name));
    }

    @Test
    void aRuleInDisputeIsOpenWithEverySourceAndIsSettledOnThePage() throws IOException {
        String base = throwWith(
                scenario("s1-longer-throw.yaml").replaceFirst("rules:\\n  choose:\\n    squish_least: general\\n", ""));
        Visitor.Page page = visitor.get(base + "/measure");
        assertThat(page.words())
                .contains("OPEN, the trade disagrees: least squish")
                .contains("meets: small kart single, aluminium rod; least 0.76 mm")
                .contains("meets: general, aluminium rod; least 1.27 mm")
                .contains("fails: large single, aluminium rod; least 1.5 mm")
                .doesNotContain("fails: least squish");
        Map<String, String> choice = new HashMap<>(
                Map.of("based", "1", "key", Visitor.key(), "at", "engine.squish", "alternative", "general"));
        assertThat(visitor.post(base + "/rule/squish_least", choice).status()).isEqualTo(303);
        assertThat(build(base).rulesChosen()).containsEntry("squish_least", "general");
        assertThat(visitor.get(base + "/measure").words())
                .contains("Others say", "fails: large single, aluminium rod; least 1.5 mm")
                .doesNotContain("the trade disagrees: least squish");
        choice.putAll(Map.of("based", "2", "alternative", "no_such"));
        assertThat(visitor.post(base + "/rule/squish_least", choice).status()).isEqualTo(422);
        assertThat(visitor.post(base + "/rule/no_such", choice).status()).isEqualTo(404);
        assertThat(visitor.get(base + "/measure").words()).contains("none of them: leave it open again");
        choice.putAll(Map.of("key", Visitor.key(), "alternative", "unknown"));
        assertThat(visitor.post(base + "/rule/squish_least", choice).status()).isEqualTo(303);
        assertThat(build(base).rulesChosen()).isEmpty();
        assertThat(visitor.get(base + "/measure").words())
                .contains("the trade disagrees: least squish")
                .doesNotContain("leave it open again");
    }

    @Test
    void whatStandsInTheWayLeadsToTheFieldThatMendsIt() throws IOException {
        String base =
                throwWith(scenario("s1-longer-throw.yaml").replace("  crankpin_width: 24.20 mm ± 0.001 mm\n", ""));
        String page = visitor.get(base + "/measure").body();
        assertThat(page)
                .containsPattern("href=\"" + base + "/measure/connecting_rod.side_clearance\">rod side clearance");
        visitor.get(base + "/clear?now=1"); // while the gaps are being worked out that is said instead
        assertThat(visitor.get(base + "/measure").words())
                .contains(
                        "Clear says which gaps are known and takes what is read of the others.",
                        "Clear says which gaps are known",
                        "at the end of the Book");
        String rated = throwWith(scenario("s1-longer-throw.yaml")
                .replace("  wanted_speed: 6500 rpm\n", "  wanted_speed: 6500 rpm\n  governed_speed: 3600 rpm\n")
                .replace("  length: 86.40 mm", "  rated_speed: 5500 rpm\n  length: 86.40 mm"));
        assertThat(visitor.get(rated + "/measure").body())
                .containsPattern("href=\"" + rated + "/measure/connecting_rod.rated_speed\">do not run it at 6500 rpm")
                .contains("href=\"" + rated + "/measure/use.wanted_speed\">or change the ");
    }

    @Test
    void partsStandInStrippingOrder() {
        String base = visitor.example();
        String page = visitor.get(base + "/measure").body();
        assertThat(page.indexOf("id=\"output_shaft\"")).isPositive().isLessThan(page.indexOf("id=\"head\""));
        assertThat(page.indexOf("id=\"head\"")).isLessThan(page.indexOf("id=\"crankshaft\""));
    }

    @Test
    void everyReadingHasACard() {
        String base = visitor.example();
        for (Term term : Term.read()) {
            Visitor.Page card = visitor.get(base + "/measure/" + term.path());
            assertThat(card.status()).as(term.path()).isEqualTo(200);
            assertThat(card.words())
                    .as(term.path())
                    .contains(term.isWish() ? "your decision" : "How to take this reading")
                    .contains(term.isWish() ? "What it is" : "Instrument");
            assertThat(card.body().contains("name=\"part_at\""))
                    .as(term.path())
                    .isEqualTo(term.dimension() == longthrow.core.quantity.Dimension.LENGTH);
        }
        assertThat(visitor.get(base + "/measure/cylinder.deck_height").body()).contains("<svg");
        assertThat(visitor.get(base + "/measure/engine.squish").status()).isEqualTo(404);
    }

    @Test
    void severalReadingsAreKeptWithInstrumentTemperatureAndNote() {
        String base = visitor.empty("One");
        Map<String, String> form = form(1);
        form.putAll(Map.of("with", "bore_gauge", "note", "after: the hone", "part_at", "24", "part_at_unit", "°C"));
        Visitor.Page kept = visitor.post(
                base + "/measure/cylinder.bore_top_thrust", form, List.of("66.01", "66.02", "", "2.5990 in"));
        assertThat(kept.status()).isEqualTo(303);
        assertThat(visitor.said()).isEqualTo("Kept: bore, top, thrust.");
        Given.Taken taken = (Given.Taken) build(base).of(Term.BORE_TOP_THRUST).get(0);
        assertThat(taken.readings().stream().map(q -> q.written()))
                .containsExactly("66.01 mm", "66.02 mm", "2.5990 in");
        assertThat(taken.instrument()).isEqualTo("bore_gauge");
        assertThat(taken.note()).isEqualTo("after: the hone");
        assertThat(taken.partTemperature()).hasToString("24 °C");
    }

    /** A keypad that knows only a comma; where it could also part thousands, it is a decimal mark if no engine has it otherwise. */
    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            value = {
                "cylinder.bore_top_thrust; mm; 66,01; 66.01 mm",
                "cylinder.bore_top_thrust; mm; 65,541; 65.541 mm",
                "cylinder.deck_clearance; mm; -0,105; -0.105 mm",
                "use.wanted_speed; rpm; 5200,5; 5200.5 rpm",
                "gasket.thickness; mm; 1,27; 1.27 mm",
                "connecting_rod.small_end_mass; g; 48,6; 48.6 g"
            })
    void aDecimalCommaIsUnderstood(String path, String unit, String typed, String meant) {
        String base = visitor.empty("Comma");
        Map<String, String> form = form(1);
        form.put("unit", unit);
        assertThat(visitor.post(base + "/measure/" + path, form, List.of(typed)).status())
                .isEqualTo(303);
        Term term = Term.at(path).orElseThrow();
        String[] figure = meant.split(" ", -1);
        assertThat(build(base).of(term).get(0).figure().orElseThrow().si())
                .isEqualTo(longthrow.core.quantity.Quantity.of(
                                figure[0], longthrow.core.quantity.Unit.of(term.dimension(), figure[1]))
                        .si());
    }

    /** A wish of 12,000 is twelve thousand: no engine runs at 12 rpm. Which way it was read is said, and the text has it as it was meant. */
    @ParameterizedTest
    @CsvSource({
        "use.governed_speed, '6,500', 6500 rpm",
        "use.wanted_speed, '6,500', 6500 rpm",
        "use.wanted_speed, '12,000', 12000 rpm"
    })
    void aCommaIsReadAsAnEngineCanHaveIt(String path, String typed, String meant) {
        String base = visitor.empty("Comma");
        Map<String, String> form = form(1);
        form.put("unit", "rpm");
        assertThat(visitor.post(base + "/measure/" + path, form, List.of(typed)).status())
                .isEqualTo(303);
        assertThat(visitor.said()).contains("Read " + typed + " rpm as " + meant);
        assertThat(text(base)).contains(path.substring(4) + ": " + meant);
    }

    /** Where neither reading is an engine's, nobody but its owner knows which was meant. Both are offered, and either button keeps it. */
    @ParameterizedTest
    @CsvSource({"decimal, 90.500 rpm", "thousands, 90500 rpm"})
    void aCommaWithTwoReadingsIsAskedAboutAndKeptAsChosen(String button, String kept) {
        String base = visitor.empty("Comma");
        Map<String, String> form = form(1);
        form.put("unit", "rpm");
        Visitor.Page asked = visitor.post(base + "/measure/use.governed_speed", form, List.of("90,500"));
        assertThat(asked.status()).isEqualTo(422);
        assertThat(asked.words())
                .contains("can be read as 90.500 rpm or as 90500 rpm", "It is 90.500 rpm It is 90500 rpm")
                .doesNotContain("allowed: a point");
        assertThat(asked.body())
                .contains("value=\"90,500\"")
                .contains("<button form=\"reading-form\" name=\"comma\" value=\"" + button + "\">");
        assertThat(visitor.serving().store().builds().get(0).latest()).isEqualTo(1);
        assertThat(visitor.post(base + "/preview/use.governed_speed", form, List.of("90,500"))
                        .words())
                .contains("can be read as 90.500 rpm or as 90500 rpm");
        form.put("comma", button);
        assertThat(visitor.post(base + "/measure/use.governed_speed", form, List.of("90,500"))
                        .status())
                .isEqualTo(303);
        assertThat(text(base)).contains("governed_speed: " + kept);
    }

    /** Where no engine has the figure by thousands the comma is a decimal mark, and the page says how it was read. */
    @Test
    void howACommaWasReadIsSaid() {
        String base = visitor.empty("Comma");
        visitor.post(base + "/measure/cylinder.bore_top_thrust", form(1), List.of("65,541"));
        assertThat(visitor.said()).contains("Read 65,541 mm as 65.541 mm");
    }

    /** 65006500 is 6500 typed twice. A wish is held against no reading, so nothing else would ever catch it. */
    @ParameterizedTest
    @CsvSource({"65006500, Check the figure and its unit", "6.500, If 6500 rpm was meant"})
    void aWantedSpeedThatNoEngineRunsAtIsNotKept(String typed, String mend) {
        String base = visitor.empty("Odd");
        Map<String, String> form = form(1);
        form.put("unit", "rpm");
        Visitor.Page refused = visitor.post(base + "/measure/use.wanted_speed", form, List.of(typed));
        assertThat(refused.status()).isEqualTo(422);
        assertThat(refused.words()).contains("is outside what 80 to 500 cc singles run at, 100 rpm to 16000 rpm", mend);
        assertThat(refused.body()).contains("value=\"" + typed + "\"");
        assertThat(visitor.serving().store().builds().get(0).latest()).isEqualTo(1);
    }

    @Test
    void whatStandsOutInAnEntryIsSaidAndTheEntryKept() {
        String base = visitor.empty("Odd");
        Map<String, String> form = form(1);
        form.put("unit", "rpm");
        visitor.post(base + "/measure/use.governed_speed", form, List.of("6.500"));
        assertThat(visitor.said()).contains("Mind:", "6.500 rpm was taken as 6.5 rpm", "6500 rpm");
        assertThat(text(base)).contains("governed_speed: 6.500 rpm");
        assertThat(visitor.post(base + "/preview/cylinder.bore", form(2), List.of("66 mm ± 70 mm"))
                        .words())
                .contains("larger than the figure itself");
        visitor.post(base + "/measure/cylinder.bore", form(2), List.of("66 mm ± 70 mm"));
        assertThat(visitor.said()).contains("Mind:", "larger than the figure itself");
        assertThat(text(base)).contains("bore: 66 mm ± 70 mm");
    }

    @Test
    void aRatingIsAskedWhoseWordItIsAndLiftsNothingWithout() throws IOException {
        String base = throwWith(scenario("s1-longer-throw.yaml")
                .replace("  length: 86.40 mm", "  rated_speed: 9000 rpm\n  length: 86.40 mm"));
        assertThat(visitor.get(base + "/measure").words())
                .contains("rod rated speed 9000 rpm is nobody's word as it stands, and approves nothing");
        Visitor.Page card = visitor.get(base + "/measure/connecting_rod.rated_speed");
        assertThat(card.words()).contains("Whose word is it?");
        assertThat(card.body()).containsPattern("<details open>\\s*<summary>Off a sheet");
        assertThat(visitor.get(base + "/measure/connecting_rod.length").words()).doesNotContain("Whose word is it?");
        Map<String, String> sheet = form(1);
        sheet.putAll(Map.of("how", "sheet", "value", "9000", "unit", "rpm", "by", "the rod maker's sheet"));
        visitor.post(base + "/measure/connecting_rod.rated_speed", sheet);
        assertThat(visitor.said()).isEqualTo("Kept: rod rated speed.");
        assertThat(visitor.get(base + "/measure").words()).doesNotContain("nobody's word");
    }

    @Test
    void aTaperThatIsNoneIsRefusedWithWhatIsAllowed() {
        String base = visitor.empty("Taper");
        Map<String, String> word = new HashMap<>(Map.of("based", "1", "key", Visitor.key(), "word", "banana"));
        Visitor.Page refused = visitor.post(base + "/choice/crankshaft.taper", word);
        assertThat(refused.status()).isEqualTo(422);
        assertThat(refused.words()).contains("banana", "is no rate of taper", "one in so many, such as 1:8");
        word.put("word", "1:8");
        assertThat(visitor.post(base + "/choice/crankshaft.taper", word).status())
                .isEqualTo(303);
        assertThat(build(base).choice(longthrow.core.term.Choice.CRANK_TAPER_FORM))
                .contains("1:8");
    }

    /** Who does not want torque and power foretold misses none of what nothing else asks for. */
    @Test
    void whatPowerAloneAsksForIsMissingToNobodyElse() {
        String base = visitor.empty("Fresh");
        String words = visitor.get(base + "/measure").words();
        long ofTheEngine = Term.read().stream()
                .filter(t -> t.part() == longthrow.core.term.Part.WHOLE && t != Term.VALVES)
                .count();
        assertThat(words).contains("0 of " + ofTheEngine + " known");
        assertThat(words).containsPattern("(?i)day and place.{0,80}for power alone");
        String page =
                visitor.getWith(base + "/measure", "kept=engine.leak_down").body();
        String onward = page.substring(page.indexOf("<tr class=\"onward\">"));
        assertThat(onward.substring(0, onward.indexOf("</tr>")))
                .contains("Next in stripping order: <a href=\"" + base + "/measure/engine.mass\"");
        Map<String, String> form = form(1);
        form.put("unit", "kPa");
        assertThat(visitor.post(base + "/measure/place.air_pressure", form, List.of("98.4"))
                        .status())
                .isEqualTo(303);
        assertThat(visitor.get(base + "/measure").words()).containsPattern("(?i)day and place.{0,80}1 of 1 known");
    }

    @Test
    void afterAReadingTheWayGoesOnFromItsOwnRow() {
        String base = visitor.example();
        Visitor.Page kept = visitor.post(base + "/measure/cylinder.deck_height", form(1), List.of("137.41"));
        assertThat(kept.location()).isEqualTo(base + "/measure#cylinder.deck_height");
        assertThat(kept.headers().getOrDefault("set-cookie", List.of()))
                .anyMatch(c -> c.startsWith("kept=cylinder.deck_height"));
        String page =
                visitor.getWith(base + "/measure", "kept=cylinder.deck_height").body();
        assertThat(page).containsPattern("<tr id=\"cylinder.deck_height\" class=\"kept\">");
        String onward = page.substring(page.indexOf("<tr class=\"onward\">"));
        assertThat(onward.substring(0, onward.indexOf("</tr>")))
                .contains("The next best reading: <a href=\"" + base + "/measure/")
                .contains("Next in stripping order: <a href=\"" + base + "/measure/")
                .contains("Or find a quantity", "name=\"find\"")
                .doesNotContain("/measure/cylinder.deck_height\"");
        assertThat(visitor.get(base + "/measure").body()).as("said once").doesNotContain("class=\"onward\"");
    }

    /** The label, the part, the trade's word; without script, by the address alone. */
    @ParameterizedTest
    @CsvSource({
        "deck height, cylinder.deck_height, piston.pin_diameter",
        "pin diam, piston.pin_diameter, cylinder.deck_height",
        "conrod, connecting_rod.length, cylinder.bore",
        "jug, cylinder.bore, gasket.bore",
        "RING gap, rings.top_gap, cylinder.bore"
    })
    void aQuantityIsFoundByItsWords(String words, String found, String not) {
        String base = visitor.example();
        Visitor.Page page =
                visitor.get(base + "/measure?find=" + java.net.URLEncoder.encode(words, StandardCharsets.UTF_8));
        assertThat(page.body())
                .contains("<tr id=\"" + found + "\"", "value=\"" + words + "\"", "All of them")
                .doesNotContain("<tr id=\"" + not + "\"")
                .doesNotContainPattern("<section class=\"part\"[^>]*>\\s*<details>");
    }

    /** A unit, money, a worked-out figure and a kind of fuel lead to where they are set. */
    @ParameterizedTest
    @CsvSource({
        "rpm, <tr id=\"use.wanted_speed\"",
        "budget, /fit#budget\"",
        "squish, /fit#engine.squish.least\"",
        "premium, <label for=\"use.fuel\"",
        "premium, The rule on static compression ratio: highest static ratio for the fuel"
    })
    void whatStandsElsewhereIsLedTo(String words, String found) {
        String base = visitor.example();
        assertThat(visitor.get(base + "/measure?find=" + words).body()).contains(found);
    }

    @Test
    void whatIsCalledNothingHereIsSaidAndMarksAreNotObeyed() {
        String base = visitor.empty("One");
        Visitor.Page page = visitor.get(base + "/measure?find=%3Cb%3Ebanana");
        assertThat(page.words()).contains("Nothing here is called that");
        assertThat(page.body()).doesNotContain("<b>banana");
    }

    @Test
    void suspectsAreNamedByTheirLabel() {
        String base = visitor.example();
        String page = visitor.get(base + "/measure").body();
        String suspects = page.substring(page.indexOf("suspects-title"));
        assertThat(suspects.substring(0, suspects.indexOf("</section>")))
                .contains("/measure/piston.compression_height\"><b>compression height")
                .doesNotContain("<b>piston.");
    }

    @Test
    void aFigureWithItsDoubtIsKeptAsTyped() {
        String base = visitor.empty("One");
        visitor.post(base + "/measure/cylinder.bore", form(1), List.of("66.01 mm ± 0.02 mm"));
        assertThat(text(base)).contains("bore: 66.01 mm ± 0.02 mm");
    }

    @Test
    void whatIsWrongStandsBesideTheFormWithWhatWasTyped() {
        String base = visitor.empty("One");
        Map<String, String> form = form(1);
        form.put("note", "my note <b>&</b>");
        Visitor.Page page = visitor.post(base + "/measure/cylinder.bore", form, List.of("66 cc", "about 66"));
        assertThat(page.status()).isEqualTo(422);
        assertThat(page.words()).contains("66 cc", "about 66", "does not start with a number");
        assertThat(page.body())
                .contains("value=\"66 cc\"", "value=\"about 66\"", "my note &lt;b>&amp;&lt;/b>")
                .doesNotContain("<b>&");
        assertThat(visitor.serving().store().builds().get(0).latest()).isEqualTo(1);
    }

    @Test
    void aSheetAndAGuessAreKeptBesideAReading() {
        String base = visitor.empty("One");
        visitor.post(base + "/measure/connecting_rod.length", form(1), List.of("85.21"));
        Map<String, String> sheet = form(2);
        sheet.putAll(Map.of(
                "entry", "new", "how", "sheet", "value", "85.20", "plus_minus", "0.03", "by", "the rod maker's sheet"));
        assertThat(visitor.post(base + "/measure/connecting_rod.length", sheet).status())
                .isEqualTo(303);
        assertThat(build(base).of(Term.ROD_LENGTH)).hasSize(2);
        Map<String, String> again = form(3);
        visitor.post(base + "/measure/connecting_rod.length", again, List.of("85.21", "85.18"));
        List<Given> all = build(base).of(Term.ROD_LENGTH);
        assertThat(all).hasSize(2);
        assertThat(((Given.Taken) all.get(0)).readings()).hasSize(2);
        assertThat(((Given.Specified) all.get(1)).by()).isEqualTo("the rod maker's sheet");
    }

    @Test
    void aGuessWithoutReasonOrDoubtIsRefused() {
        String base = visitor.empty("One");
        Map<String, String> guess = form(1);
        guess.putAll(Map.of("entry", "new", "how", "guess", "value", "1.2", "unit", "cc"));
        Visitor.Page page = visitor.post(base + "/measure/piston.crown_volume", guess);
        assertThat(page.status()).isEqualTo(422);
        assertThat(page.words()).contains("A guess needs its ±", "A guess needs its reason");
        assertThat(page.body()).contains("value=\"1.2\"");
    }

    @Test
    void notKnownTakesAReadingOutAndKeepsTheRest() {
        String base = visitor.example();
        Map<String, String> form = form(1);
        form.put("unknown", "yes");
        form.put("entry", "1");
        visitor.post(base + "/measure/connecting_rod.length", form);
        List<Given> left = build(base).of(Term.ROD_LENGTH);
        assertThat(left).hasSize(1);
        assertThat(left.get(0)).isInstanceOf(Given.Specified.class);
        Map<String, String> alone = form(2);
        alone.put("unknown", "yes");
        visitor.post(base + "/measure/cylinder.deck_height", alone);
        assertThat(build(base).of(Term.DECK_HEIGHT).get(0)).isInstanceOf(Given.NotKnown.class);
        assertThat(text(base)).contains("# a bought offset key", "# crushed, three places");
    }

    @Test
    void anEditKeepsEveryOtherCharacterOfTheText() {
        String base = visitor.example();
        String before = text(base);
        Map<String, String> form = form(1);
        form.put("with", "height_gauge");
        visitor.post(base + "/measure/cylinder.deck_height", form, List.of("137.40", "137.42"));
        List<String> changed = text(base)
                .lines()
                .filter(l -> !before.lines().toList().contains(l))
                .toList();
        assertThat(changed).hasSize(1);
        assertThat(changed.get(0)).contains("137.40 mm", "137.42 mm", "height_gauge");
    }

    @Test
    void aSecondTabSeesWhatChangedAndChooses() {
        String base = visitor.example();
        visitor.post(base + "/measure/cylinder.deck_height", form(1), List.of("137.40"));
        Map<String, String> late = form(1);
        Visitor.Page conflict = visitor.post(base + "/measure/cylinder.bore", late, List.of("65.55"));
        assertThat(conflict.status()).isEqualTo(409);
        assertThat(conflict.words())
                .contains("Not kept yet", "What came in between", "137.34 mm", "137.40 mm", "bore: 65.55 mm")
                .contains("Keep mine on top", "Take theirs");
        assertThat(conflict.hidden("based")).isEqualTo("2");
        late.put("based", "2");
        assertThat(visitor.post(base + "/measure/cylinder.bore", late, List.of("65.55"))
                        .status())
                .isEqualTo(303);
        assertThat(text(base)).contains("137.40 mm", "bore: 65.55 mm");
    }

    /** The one changes the gasket's hole, the other the deck height: kept, the text holds both. */
    @Test
    void textsThatTouchDifferentLinesGoTogether() {
        String base = visitor.example();
        String begun = text(base);
        String mine = begun.replace("specified: 67.8 mm", "specified: 67.9 mm");
        assertThat(mine).isNotEqualTo(begun);
        visitor.post(base + "/measure/cylinder.deck_height", form(1), List.of("137.40"));
        Map<String, String> late = form(1);
        late.put("text", mine);
        Visitor.Page conflict = visitor.post(base + "/text", late);
        assertThat(conflict.status()).isEqualTo(409);
        assertThat(conflict.words())
                .contains("Keep both", "67.9 mm", "touch different lines")
                .doesNotContain("on top");
        late.put("based", "2");
        late.put(
                "text",
                longthrow.workshop.store.TextMerge.of(begun, mine, text(base)).orElseThrow());
        assertThat(visitor.post(base + "/text", late).status()).isEqualTo(303);
        assertThat(text(base)).contains("137.40 mm", "67.9 mm");
    }

    @Test
    void textsThatTouchOneLineAreNotSaidToGoTogether() {
        String base = visitor.example();
        String mine = text(base).replaceFirst("(?m)^(  deck_height:).*$", "$1 137.77 mm ± 0.02 mm");
        visitor.post(base + "/measure/cylinder.deck_height", form(1), List.of("137.40"));
        Map<String, String> late = form(1);
        late.put("text", mine);
        Visitor.Page conflict = visitor.post(base + "/text", late);
        assertThat(conflict.words())
                .contains("Overwrite what came in between", "the lines that go away are marked", "137.77 mm")
                .doesNotContain("on top", "Keep both");
    }

    @Test
    void readingsThatWaitedOnThePhoneAreKeptOnTopInTheirOrderAndOnlyOnce() {
        String base = visitor.example();
        Map<String, String> first = form(1);
        first.put("queued", "yes");
        Map<String, String> second = form(1);
        second.put("queued", "yes");
        for (int again = 0; again < 2; again++) {
            assertThat(visitor.post(base + "/measure/cylinder.deck_height", first, List.of("137.40"))
                            .status())
                    .isEqualTo(303);
            assertThat(visitor.post(base + "/measure/gasket.thickness", second, List.of("1.12"))
                            .status())
                    .isEqualTo(303);
        }
        assertThat(text(base)).contains("137.40 mm", "thickness: 1.12 mm");
        assertThat(visitor.serving().store().builds().get(0).latest()).isEqualTo(3);
        Map<String, String> other = form(1);
        other.put("queued", "yes");
        assertThat(visitor.post(base + "/measure/gasket.thickness", other, List.of("1.30"))
                        .status())
                .as("the same reading was changed meanwhile: its owner chooses")
                .isEqualTo(409);
    }

    @Test
    void aPreviewShowsChangedFiguresAndKeepsNothing() {
        String base = visitor.example();
        Visitor.Page preview =
                visitor.post(base + "/preview/cylinder.deck_height", form(1), List.of("137.36", "137.38"));
        assertThat(preview.status()).isEqualTo(200);
        assertThat(preview.words())
                .contains("With this, not kept yet", "deck height", "137.37 ± 0.06 mm", "was 137.35 ± 0.06 mm");
        assertThat(preview.body()).doesNotContain("<html");
        Visitor.Page faulty = visitor.post(base + "/preview/cylinder.deck_height", form(1), List.of("137.50 cc"));
        assertThat(faulty.words()).contains("137.50 cc");
        assertThat(visitor.serving().store().builds().get(0).latest()).isEqualTo(1);
    }

    /** What is copied out of it, or read aloud, is its text alone: without its marks no two words run together. */
    @Test
    void textOfThePreviewHoldsItsWordsApart() {
        String base = visitor.example();
        String text = visitor.post(base + "/preview/cylinder.deck_height", form(1), List.of("137.36", "137.38"))
                .body()
                .replaceAll("<[^>]*>", "")
                .replaceAll("\\s+", " ");
        assertThat(text)
                .containsPattern(
                        "deck height: 137\\.37 ± 0\\.06 mm \\(5\\.408\\d* ± [\\d.]+ in\\), was 137\\.35 ± 0\\.06 mm; doubt mostly: ")
                .doesNotContainPattern("[\\w)](was |doubt mostly)");
        String row = visitor.get(base + "/measure").body().replaceAll("<[^>]*>", "");
        assertThat(row).doesNotContainPattern("[\\w)](doubt mostly|in dispute)");
    }

    /** What the typed reading makes wrong stands first, in words, not after all figures; and says nothing of what was wrong before. */
    @ParameterizedTest
    @CsvSource({
        "crankshaft.counterweight_radius, 77.8, mm, radius and diameter were mixed up",
        "crankshaft.stroke, 28.25, mm, stroke and half stroke were mixed up",
        "rings.top_gap, 30, mm, is outside what an 80 to 500 cc single shows",
        "piston.skirt_below_pin, 24.0, mm, the skirt would strike the counterweight"
    })
    void aReadingThatIsWrongIsWarnedOfWhileItIsTyped(String path, String typed, String unit, String warning)
            throws IOException {
        String base = throwWith(scenario("s1-longer-throw.yaml"));
        Map<String, String> form = form(1);
        form.put("unit", unit);
        form.put("entry", "0");
        String words =
                visitor.post(base + "/preview/" + path, form, List.of(typed)).words();
        assertThat(words).contains(warning);
        assertThat(words.strip()).startsWith("▲ Warning:");
    }

    @Test
    void wordsAreChosen() {
        String base = visitor.empty("One");
        visitor.post(base + "/choice/head.metal", Map.of("based", "1", "key", Visitor.key(), "word", "aluminium"));
        assertThat(text(base)).containsPattern("(?s)head:.*metal: aluminium");
        Visitor.Page wrong =
                visitor.post(base + "/choice/head.metal", Map.of("based", "2", "key", Visitor.key(), "word", "cheese"));
        assertThat(wrong.status()).isEqualTo(422);
        assertThat(wrong.words()).contains("cheese");
        visitor.post(base + "/choice/head.metal", Map.of("based", "2", "key", Visitor.key(), "word", ""));
        assertThat(build(base).choices()).isEmpty();
    }

    @Test
    void theTextCanBeChangedAndFaultsKeepWhatWasTyped() {
        String base = visitor.empty("One");
        String better = text(base).replace("units: metric", "units: inch");
        assertThat(visitor.post(
                                base + "/text",
                                Map.of("based", "1", "key", Visitor.key(), "text", better.replace("\n", "\r\n")))
                        .status())
                .isEqualTo(303);
        assertThat(text(base)).isEqualTo(better);
        Visitor.Page bad = visitor.post(
                base + "/text",
                Map.of(
                        "based",
                        "2",
                        "key",
                        Visitor.key(),
                        "text",
                        "longthrow: 1\nengine:\n  name: One\n  nonsense: 5\n"));
        assertThat(bad.status()).isEqualTo(422);
        assertThat(bad.words()).contains("nonsense: 5", "line 4");
    }

    @Test
    void marksInNamesAndNotesAreShownAndNotObeyed() {
        String base = visitor.empty("<script>alert(1)</script>");
        Map<String, String> form = form(1);
        form.put("note", "\"><img src=x onerror=alert(1)>");
        visitor.post(base + "/measure/cylinder.bore", form, List.of("66.01"));
        for (String page : List.of(
                "/builds", base + "/measure", base + "/measure/cylinder.bore", base + "/text", base + "/history")) {
            assertThat(visitor.get(page).body())
                    .as(page)
                    .doesNotContain("<script>alert")
                    .doesNotContain("<img");
        }
    }
}
