package longthrow.workshop;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.Map;
import longthrow.buildfile.BuildFile;
import longthrow.core.build.Build;
import longthrow.core.term.Term;
import longthrow.workshop.store.CatalogueEntry;
import org.junit.jupiter.api.Test;

class FitAndPartsPageTest extends OverHttp {
    private static final Path SCENARIOS = Path.of("../examples/scenarios");

    private String scenario() throws IOException {
        Visitor.Page page = visitor.upload(
                "/builds/file",
                "s1.yaml",
                Files.readAllBytes(SCENARIOS.resolve("s1-rod-wanted.yaml")),
                Map.of("key", Visitor.key()));
        return page.location().replace("/measure", "");
    }

    private void catalogue() throws IOException {
        Visitor.Page sent = visitor.upload(
                "/parts", "s1-catalogue.yaml", Files.readAllBytes(SCENARIOS.resolve("s1-catalogue.yaml")), Map.of());
        assertThat(visitor.post(sent.location(), Map.of()).status()).isEqualTo(303);
    }

    private String text(String base) {
        return new String(visitor.download(base + "/file"), StandardCharsets.UTF_8);
    }

    // ---- parts

    @Test
    void everyRowsFateIsShownBeforeACatalogueCounts() {
        String csv = "# kind: gasket\ncode,thickness [mm],price\nG1,1.02,4 EUR\nG2,1 g,\nG1,1.02,4 EUR\n";
        Visitor.Page sent = visitor.upload("/parts", "gaskets.csv", csv.getBytes(StandardCharsets.UTF_8), Map.of());
        assertThat(sent.status()).isEqualTo(303);
        Visitor.Page fates = visitor.get(sent.location());
        assertThat(fates.words())
                .contains("Nothing of it counts yet", "G1", "kept", "G2", "refused", "1 g", "the same row again")
                .contains("1 part and 0 machine operations, 1 the same again, 1 row refused");
        assertThat(visitor.serving().store().catalogues()).isEmpty();
        visitor.post(sent.location(), Map.of());
        assertThat(visitor.serving().store().catalogues().stream().map(CatalogueEntry::name))
                .containsExactly("gaskets.csv");
        assertThat(visitor.get("/parts").words()).contains("gaskets.csv", "1 part", "in use");
        assertThat(visitor.get(sent.location()).status())
                .as("kept, and so not waiting any more")
                .isEqualTo(404);
    }

    @Test
    void aKindSaidBesideTheFileStaysWithIt() {
        String csv = "code,thickness [mm]\nG1,1.02\n";
        Visitor.Page without = visitor.upload("/parts", "list.csv", csv.getBytes(StandardCharsets.UTF_8), Map.of());
        assertThat(visitor.get(without.location()).words()).contains("neither the file nor its name says");
        Visitor.Page sent =
                visitor.upload("/parts", "list.csv", csv.getBytes(StandardCharsets.UTF_8), Map.of("kind", "gasket"));
        visitor.post(sent.location(), Map.of());
        assertThat(visitor.get("/parts").words()).contains("1 part");
    }

    @Test
    void theInventedCatalogueIsOfferedLookedThroughAndKept() {
        Visitor.Page sent = visitor.post("/parts/demo", Map.of());
        assertThat(visitor.get(sent.location()).words()).contains("Rows 1 to 200 of");
        assertThat(visitor.get(sent.location() + "?from=201").words()).contains("Rows 201 to");
        visitor.post(sent.location(), Map.of());
        assertThat(visitor.get("/parts").words())
                .contains("connecting_rod.csv invented")
                .doesNotContain("Take the invented catalogue");
    }

    @Test
    void aCatalogueIsLeftOutSearchedAgainAndDeleted() throws IOException {
        catalogue();
        String id = visitor.serving().store().catalogues().get(0).id().toString();
        visitor.post("/parts/" + id + "/active", Map.of());
        assertThat(visitor.serving().store().catalogues().get(0).active()).isFalse();
        visitor.post("/parts/" + id + "/active", Map.of());
        assertThat(visitor.get("/parts/" + id).words()).contains("what becomes of it", "R3");
        visitor.post("/parts/" + id + "/forget", Map.of());
        assertThat(visitor.serving().store().catalogues()).isEmpty();
        assertThat(visitor.get("/parts/" + id).status()).isEqualTo(404);
    }

    @Test
    void allThatIsInventedIsLeftOutAtOnceTakenBackAndDeleted() throws IOException {
        catalogue();
        String csv = "# kind: gasket\ncode,thickness [mm]\nG9,1.02\n";
        Visitor.Page own = visitor.upload("/parts", "my-gaskets.csv", csv.getBytes(StandardCharsets.UTF_8), Map.of());
        visitor.post(own.location(), Map.of());
        visitor.post(visitor.post("/parts/demo", Map.of()).location(), Map.of());
        long all = visitor.serving().store().catalogues().size();
        assertThat(visitor.get("/parts").words()).contains("Leave out all invented");
        visitor.post("/parts/invented", Map.of("what", "forget"));
        assertThat(visitor.serving().store().catalogues())
                .as("none is left out yet")
                .hasSize((int) all);
        visitor.post("/parts/invented", Map.of("what", "out"));
        assertThat(visitor.said()).contains("left out of searches", "Nothing is deleted");
        assertThat(visitor.serving().store().catalogues())
                .filteredOn(CatalogueEntry::active)
                .extracting(CatalogueEntry::name)
                .containsExactly("my-gaskets.csv");
        visitor.post("/parts/invented", Map.of("what", "in"));
        assertThat(visitor.serving().store().catalogues()).allMatch(CatalogueEntry::active);
        visitor.post("/parts/invented", Map.of("what", "out"));
        visitor.post("/parts/invented", Map.of("what", "forget"));
        assertThat(visitor.serving().store().catalogues())
                .extracting(CatalogueEntry::name)
                .containsExactly("my-gaskets.csv");
        assertThat(visitor.post("/parts/invented", Map.of("what", "all")).status())
                .isEqualTo(400);
    }

    // ---- fit

    @Test
    void aCommaWithTwoReadingsIsAskedAbout() throws IOException {
        String base = scenario();
        Map<String, String> wish = new HashMap<>(
                Map.of("based", "1", "key", Visitor.key(), "engine.squish", "1,270", "engine.squish.unit", "mm"));
        Visitor.Page asked = visitor.post(base + "/fit", wish);
        assertThat(asked.status()).isEqualTo(422);
        assertThat(asked.words()).contains("can be read as 1.270 mm or as 1270 mm", "It is 1.270 mm", "It is 1270 mm");
        assertThat(asked.body()).contains("value=\"1,270\"");
        assertThat(visitor.get(base + "/history").words()).doesNotContain("aims and wishes");
        wish.put("comma", "decimal");
        assertThat(visitor.post(base + "/fit", wish).status()).isEqualTo(303);
        assertThat(BuildFile.read(text(base)).build().orElseThrow().aims().get(Term.SQUISH))
                .hasToString("1.270 mm");
    }

    @Test
    void aBudgetInACurrencyOfNoPriceIsRefusedWithThoseThereAre() throws IOException {
        String base = scenario();
        catalogue();
        Map<String, String> wish =
                new HashMap<>(Map.of("based", "1", "key", Visitor.key(), "budget", "300 ZZZ", "choose", "gasket"));
        Visitor.Page refused = visitor.post(base + "/fit", wish);
        assertThat(refused.status()).isEqualTo(422);
        assertThat(refused.words()).contains("no price of your catalogues is in ZZZ", "They have: EUR");
        wish.put("budget", "300 EUR");
        assertThat(visitor.post(base + "/fit", wish).status()).isEqualTo(303);
    }

    @Test
    void whatCountsFirstIsChosenOnThePage() throws IOException {
        String base = scenario();
        assertThat(visitor.get(base + "/fit").words()).contains("What counts first", "none chosen: fits for sure");
        Map<String, String> wish = new HashMap<>(Map.of("based", "1", "key", Visitor.key(), "order", "price"));
        assertThat(visitor.post(base + "/fit", wish).status()).isEqualTo(303);
        assertThat(BuildFile.read(text(base)).build().orElseThrow().fit().order())
                .containsExactly(longthrow.core.build.FitWish.Preference.PRICE);
        assertThat(visitor.get(base + "/fit").body()).contains("value=\"price\" selected");
        wish.putAll(Map.of("based", "2", "key", Visitor.key(), "order", ""));
        assertThat(visitor.post(base + "/fit", wish).status()).isEqualTo(303);
        assertThat(BuildFile.read(text(base)).build().orElseThrow().fit().order())
                .isEmpty();
    }

    @Test
    void aLimitOnAnyFigureIsKeptChangedAndTakenOutByForm() throws IOException {
        String base = scenario();
        Map<String, String> limit = new HashMap<>(Map.of(
                "based", "1", "key", Visitor.key(), "term", "piston.mass", "least", "", "most", "210 g", "name", ""));
        assertThat(visitor.post(base + "/limits", limit).status()).isEqualTo(303);
        Build build = BuildFile.read(text(base)).build().orElseThrow();
        assertThat(build.ownRules()).anySatisfy(rule -> {
            assertThat(rule.term().path()).isEqualTo("piston.mass");
            assertThat(rule.upper().orElseThrow()).hasToString("210 g");
        });
        assertThat(visitor.get(base + "/limits").body()).contains("value=\"210 g\"");
        limit.putAll(Map.of("based", "2", "key", Visitor.key(), "most", "210"));
        Visitor.Page faulty = visitor.post(base + "/limits", limit);
        assertThat(faulty.status()).isEqualTo(422);
        assertThat(faulty.words()).contains("210");
        limit.putAll(Map.of("key", Visitor.key(), "most", "", "name", "my limit of " + termLabel("piston.mass")));
        assertThat(visitor.post(base + "/limits", limit).status()).isEqualTo(303);
        assertThat(BuildFile.read(text(base)).build().orElseThrow().ownRules())
                .noneMatch(r -> r.term().path().equals("piston.mass"));
        limit.putAll(Map.of("based", "3", "key", Visitor.key(), "term", "", "most", "1 g"));
        assertThat(visitor.post(base + "/limits", limit).words()).contains("No figure is chosen");
    }

    private static String termLabel(String path) {
        return Term.at(path).orElseThrow().label();
    }

    /** Once everything is taken there is nothing to choose: the engine as it stands is said, and not offered. */
    @Test
    void whatStandsInTheBuildIsNoWayToTake() throws IOException {
        String base = scenario();
        catalogue();
        Visitor.Page fit = visitor.get(base + "/fit?now=1");
        visitor.post(base + "/fit/take", Map.of("based", "1", "key", Visitor.key(), "title", fit.hidden("title")));
        Visitor.Page after = visitor.get(base + "/fit?now=1");
        assertThat(after.words()).doesNotContain(". as it is");
        assertThat(after.body()).doesNotContain("value=\"as it is\"");
        assertThat(after.words())
                .contains("as taken : R3 + G130 + hone", "left to choose: nothing")
                .doesNotContain("1. R3", "1. G130");
    }

    /** The hole of this gasket is said without a ±, so the ratio has no doubt: which ± it is, and where it goes, stands with the way. */
    @Test
    void theMissingPlusMinusIsNamedAtTheWay() throws IOException {
        String base = scenario();
        String yaml = Files.readString(SCENARIOS.resolve("s1-catalogue.yaml"))
                .replaceAll("(bore: [0-9.]+ mm) ± [0-9.]+ mm", "$1");
        Visitor.Page sent = visitor.upload("/parts", "vague.yaml", yaml.getBytes(StandardCharsets.UTF_8), Map.of());
        visitor.post(sent.location(), Map.of());
        Visitor.Page page = visitor.get(base + "/fit?now=1");
        assertThat(page.words())
                .contains(
                        "no ± is said for gasket bore; write it in the catalogue behind the size, or in a column 'bore ±'");
        assertThat(page.body()).contains("href=\"/parts\">Parts, where it is a catalogue");
    }

    /** The first scenario: its rod is R3 with the thick gasket, squish 1.37 mm and ratio 9.66 (needs of the trade, S1). */
    @Test
    void theFirstScenarioFindsItsRodAndSaysWhyTheOthersDoNotFit() throws IOException {
        String base = scenario();
        catalogue();
        assertThat(visitor.get(base + "/fit").words()).contains("Searching takes a few seconds");
        String words = visitor.get(base + "/fit/answer").words();
        assertThat(words)
                .contains("These go together", "R3", "1.37 ± 0.0", "9.66 ± 0.1")
                .contains("Why the others do not fit", "Cure:");
        assertThat(visitor.get(base + "/fit").words())
                .as("worked out, so on the page")
                .contains("These go together");
    }

    @Test
    void withoutACatalogueTheStackIsSolved() throws IOException {
        String base = scenario();
        assertThat(visitor.get(base + "/fit?now=1").words()).contains("No catalogue is kept yet", "To know");
    }

    @Test
    void takenPartsStandInTheBuildAsOneRevisionThatCanBeUndone() throws IOException {
        String base = scenario();
        catalogue();
        String before = text(base);
        Visitor.Page page = visitor.get(base + "/fit?now=1");
        String title = page.hidden("title").replace("&#39;", "'").replace("&amp;", "&");
        Visitor.Page taken =
                visitor.post(base + "/fit/take", Map.of("based", "1", "key", Visitor.key(), "title", title));
        assertThat(taken.status()).as(taken.words()).isEqualTo(303);
        assertThat(visitor.said()).contains("Taken: " + title);
        Build build = BuildFile.read(text(base)).build().orElseThrow();
        assertThat(build.of(Term.ROD_LENGTH).get(0).figure().orElseThrow().si()).isEqualTo(0.0864);
        assertThat(build.of(Term.GASKET_THICKNESS).get(0).figure().orElseThrow().si())
                .isEqualTo(0.0013);
        assertThat(visitor.get(base + "/measure").words()).contains("9.66 ± 0.1");
        assertThat(visitor.serving().store().builds().get(0).latest()).isEqualTo(2);
        visitor.post(base + "/undo", Map.of("based", "2", "key", Visitor.key()));
        assertThat(text(base)).isEqualTo(before);
    }

    @Test
    void aWayThatWasNotFoundIsNotTaken() throws IOException {
        String base = scenario();
        catalogue();
        Visitor.Page page =
                visitor.post(base + "/fit/take", Map.of("based", "1", "key", Visitor.key(), "title", "R9 + nothing"));
        assertThat(page.status()).isEqualTo(409);
        assertThat(visitor.serving().store().builds().get(0).latest()).isEqualTo(1);
    }

    @Test
    void aimsAndWishesAreKeptInTheBuild() throws IOException {
        String base = scenario();
        Map<String, String> wish = new HashMap<>(Map.of(
                "based", "1",
                "key", Visitor.key(),
                "engine.squish", "1.40 mm",
                "engine.compression_ratio", "9.5",
                "budget", "250 EUR",
                "keep", "R3",
                "choose", "connecting_rod"));
        assertThat(visitor.post(base + "/fit", wish).status()).isEqualTo(303);
        Build build = BuildFile.read(text(base)).build().orElseThrow();
        assertThat(build.aims().get(Term.SQUISH)).hasToString("1.40 mm");
        assertThat(build.fit().budget()).hasValue(25_000);
        assertThat(build.fit().keep()).containsExactly("R3");
        assertThat(build.fit().machining()).isFalse();
        assertThat(visitor.get(base + "/history").words())
                .as("what was changed, not that something was")
                .contains("squish aimed at: 1.40 mm", "static compression ratio aimed at: 9.5", "budget: 250.00 EUR")
                .doesNotContain("aims and wishes for parts");
        wish.putAll(Map.of("based", "2", "key", Visitor.key(), "engine.squish", "1.40", "budget", "much"));
        Visitor.Page faulty = visitor.post(base + "/fit", wish);
        assertThat(faulty.status()).isEqualTo(422);
        assertThat(faulty.words()).contains("1.40", "much");
        assertThat(faulty.body()).contains("value=\"much\"");
    }

    /** 1.37 beside an aim of 1.27; none of the sources of the ratio for the fuel is chosen. */
    @Test
    void anAimThatIsMissedIsSaidOnItsCardAndInTheTable() throws IOException {
        String base = scenario();
        catalogue();
        Visitor.Page page = visitor.get(base + "/fit/answer");
        assertThat(page.words())
                .contains("misses: 0.10 mm above your aim of 1.27 mm")
                .contains("Aim misses: squish: 0.10 ± 0.07 mm (0.0039 ± 0.0027 in) above your aim of 1.27 mm")
                .contains("Best first means: fits for sure")
                .contains("so the mildest decides");
        assertThat(page.body()).contains("href=\"#rule-static_ratio\"", "id=\"rule-static_ratio\"");
    }

    @Test
    void aSourceIsChosenOnFitAndLetGoAgain() throws IOException {
        String base = scenario();
        catalogue();
        Map<String, String> choice = new HashMap<>(Map.of("based", "1", "key", Visitor.key(), "at", "fit"));
        choice.put("alternative", "unknown");
        assertThat(visitor.post(base + "/rule/static_ratio", choice).status())
                .as("nothing is chosen that could be let go")
                .isEqualTo(422);
        choice.put("alternative", "unknown");
        Visitor.Page gone = visitor.post(base + "/rule/squish_least", choice);
        assertThat(gone.location()).endsWith("/fit?now=1#rule-squish_least");
        assertThat(BuildFile.read(text(base)).build().orElseThrow().rulesChosen())
                .doesNotContainKey("squish_least");
        assertThat(visitor.get(base + "/measure").status()).isEqualTo(200);
        choice.putAll(Map.of("alternative", "general", "based", "2", "key", Visitor.key()));
        assertThat(visitor.post(base + "/rule/squish_least", choice).status()).isEqualTo(303);
        assertThat(visitor.get(base + "/fit?now=1").words()).contains("none of them: leave it open again");
    }

    @Test
    void bareNumbersTakeTheUnitBesideAndLimitsAreKeptAsRules() throws IOException {
        String base = scenario();
        Map<String, String> wish = new HashMap<>(Map.of(
                "based", "1",
                "key", Visitor.key(),
                "engine.squish", "0.050",
                "engine.squish.unit", "in",
                "engine.squish.least", "0.045",
                "engine.squish.most", "1.60 mm",
                "engine.compression_ratio", "",
                "budget", "250",
                "choose", "connecting_rod"));
        assertThat(visitor.post(base + "/fit", wish).status()).isEqualTo(303);
        assertThat(visitor.said()).contains("names no currency");
        Build build = BuildFile.read(text(base)).build().orElseThrow();
        assertThat(build.aims().get(Term.SQUISH)).hasToString("0.050 in");
        assertThat(build.ownRules()).singleElement().satisfies(rule -> {
            assertThat(rule.term()).isEqualTo(Term.SQUISH);
            assertThat(rule.lower().orElseThrow()).hasToString("0.045 in");
            assertThat(rule.upper().orElseThrow()).hasToString("1.60 mm");
        });
        assertThat(visitor.get(base + "/fit").body()).contains("value=\"0.045 in\"", "value=\"1.60 mm\"");
        wish.putAll(Map.of("based", "2", "key", Visitor.key(), "engine.squish", "1,3 mm"));
        wish.putAll(Map.of("engine.squish.least", "", "engine.squish.most", ""));
        assertThat(visitor.post(base + "/fit", wish).status()).isEqualTo(303);
        Build after = BuildFile.read(text(base)).build().orElseThrow();
        assertThat(after.ownRules()).isEmpty();
        assertThat(after.aims().get(Term.SQUISH)).hasToString("1,3 mm");
    }

    @Test
    void theSectionTurnsByItsAddress() throws IOException {
        String base = visitor.example();
        assertThat(visitor.get(base + "/fit/section?angle=90").body()).contains("<svg", "90");
        assertThat(visitor.get(base + "/fit?angle=120").body()).contains("value=\"120\"", "<svg");
        assertThat(visitor.get(visitor.empty("Nothing") + "/fit/section?angle=x")
                        .status())
                .isEqualTo(200);
    }
}
