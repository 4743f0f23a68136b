package longthrow.workshop;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.Function;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import longthrow.buildfile.BuildFile;
import longthrow.buildfile.CatalogueFile;
import longthrow.buildfile.Imported;
import longthrow.core.answer.Answer;
import longthrow.core.answer.Approval;
import longthrow.core.answer.Finding;
import longthrow.core.answer.LimitLadder;
import longthrow.core.answer.Rung;
import longthrow.core.answer.Shaking;
import longthrow.core.build.Build;
import longthrow.core.catalogue.Catalogue;
import longthrow.core.clear.Clear;
import longthrow.core.life.Life;
import longthrow.core.quantity.Units;
import longthrow.core.shake.Shake;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The pages say what the answers say, all of it, and every input they name leads to the field that mends it. */
class LifeAndShakePageTest extends OverHttp {
    private static final Path EXAMPLES = Path.of("../examples");
    private static final Pattern LINK = Pattern.compile("href=\"([^\"]*)\"");

    private static String text(String file) throws IOException {
        return Files.readString(EXAMPLES.resolve(file));
    }

    private static Answer life(Build build, Catalogue catalogue) {
        return Life.of(build, catalogue, Clear.of(build).clearances());
    }

    private static Build build(String text) {
        return BuildFile.read(text).build().orElseThrow();
    }

    private static int count(String page, String pattern) {
        Matcher found = Pattern.compile(pattern).matcher(page);
        int count = 0;
        while (found.find()) {
            count++;
        }
        return count;
    }

    /** A build of this text; the address of its pages. */
    private String kept(String text) {
        return visitor.upload(
                        "/builds/file",
                        "engine.yaml",
                        text.getBytes(StandardCharsets.UTF_8),
                        Map.of("key", Visitor.key()))
                .location()
                .replaceAll("/measure.*", "");
    }

    private static Rung first(LimitLadder ladder, Function<Rung, Boolean> which) {
        return ladder.rungs().stream().filter(which::apply).findFirst().orElseThrow();
    }

    /** In what the page says of itself, behind the frame. */
    private static String main(Visitor.Page page) {
        return page.body().substring(page.body().indexOf("<main"), page.body().indexOf("</main>"));
    }

    @Test
    void theLimitsComeAfterThePageAndAreRemembered() {
        String base = visitor.example();
        Visitor.Page first = visitor.get(base + "/life");
        assertThat(first.body()).contains("hx-get=\"" + base + "/life/answer\"", base + "/life?now=1");
        assertThat(first.words())
                .contains("Life … being worked out", "Shake … being worked out", "What stands in the way");
        assertThat(visitor.get(base + "/life/answer").body()).contains("The limit ladder");
        assertThat(visitor.get(base + "/life").words())
                .as("once worked out it is remembered")
                .contains("Life ■ refused", "Each limit");
        assertThat(visitor.get(base + "/shake").body()).contains("hx-get=\"" + base + "/shake/answer\"");
        visitor.get(base + "/shake?now=1");
        assertThat(visitor.get(base + "/shake").words()).contains("Shake ~ near", "Path of the force");
    }

    @ParameterizedTest
    @ValueSource(strings = {"demo.yaml", "scenarios/s3-springs.yaml", "scenarios/s4-vintage-iron.yaml"})
    void everyLimitStandsOnItsPageOnceWithItsSpeedAndItsSource(String file) throws IOException {
        LimitLadder ladder = life(build(text(file)), Catalogue.EMPTY).ladder().orElseThrow();
        Visitor.Page page = visitor.get(kept(text(file)) + "/life?now=1");
        assertThat(page.status()).isEqualTo(200);
        long unknown = ladder.rungs().stream()
                .filter(r -> r.state() == Rung.State.UNKNOWN)
                .count();
        assertThat(count(page.body(), "<details class=\"gap\" id=")).isEqualTo((int) unknown);
        assertThat(count(page.body(), "<article class=\"rung "))
                .isEqualTo(ladder.rungs().size() - (int) unknown);
        assertThat(count(page.body(), "<div class=\"bar\">"))
                .as("bars and their scale")
                .isEqualTo(1
                        + (int) ladder.rungs().stream()
                                .filter(r -> r.speed().isPresent())
                                .count());
        for (Rung rung : ladder.rungs()) {
            assertThat(count(page.body(), " id=\"" + rung.key() + "\""))
                    .as(rung.key())
                    .isEqualTo(1);
            assertThat(page.words()).contains(rung.label());
        }
        assertThat(page.words())
                .contains(
                        "REFUSED", "What would lift it", "price not known", "What can be had instead", "Will it start")
                .contains("these are the trade's figures, not approval of your parts", "dye-check")
                .doesNotContain("✓ APPROVED");
    }

    /** What holds is folded under how many it is and the first to go; so are guides, and unknown limits past the sixth. What decides stands open. */
    @Test
    void whatIsNotNeededFirstIsFoldedUnderHowManyItIs() throws IOException {
        LimitLadder ladder =
                life(build(text("demo.yaml")), Catalogue.EMPTY).ladder().orElseThrow();
        String body = visitor.get(visitor.example() + "/life?now=1").body();
        long unknown = ladder.rungs().stream()
                .filter(r -> r.state() == Rung.State.UNKNOWN)
                .count();
        long holds = ladder.rungs().stream()
                .filter(r -> r.state() == Rung.State.HOLDS)
                .count();
        Rung first = ladder.rungs().stream()
                .filter(r -> r.state() == Rung.State.HOLDS && r.speed().isPresent())
                .findFirst()
                .orElseThrow();
        assertThat(body)
                .contains(
                        (unknown - 6) + " more limits are unknown",
                        holds + " limits hold",
                        "the first to go: " + first.label() + " at ");
        String each = body.substring(body.indexOf("id=\"limits-head\""));
        String open = each.substring(0, each.indexOf("<details class=\"more\">"));
        assertThat(count(open, "<article class=\"rung "))
                .isEqualTo((int) ladder.rungs().stream()
                        .filter(r -> r.state() != Rung.State.UNKNOWN
                                && r.state() != Rung.State.HOLDS
                                && r.state() != Rung.State.COVERED
                                && r.weight() != Rung.Weight.TELLS)
                        .count())
                .isPositive();
    }

    /** As many as the answer has, which its JSON and text list too. */
    @Test
    void everythingThatWasTakenIsListedOnBothPages() throws IOException {
        Build demo = build(text("demo.yaml"));
        String base = visitor.example();
        Map<String, Answer> answers =
                Map.of("/life", life(demo, Catalogue.EMPTY), "/shake", Shake.of(demo, Catalogue.EMPTY));
        answers.forEach((address, answer) -> {
            String page = visitor.get(base + address + "?now=1").body();
            String list = page.substring(page.indexOf("<details class=\"taken\">"));
            String lines = list.substring(0, list.indexOf("</details>"));
            assertThat(count(lines, "<li>") - count(lines, "<ul class=\"places\">"))
                    .as(address + ": places that something stands in for")
                    .isEqualTo(answer.defaults().size())
                    .isPositive();
            assertThat(list)
                    .contains("<span class=\"count\">" + answer.defaults().size() + "</span>");
        });
    }

    private void noLinkIsDead(String base, String address) {
        String measure = visitor.get(base + "/measure").body();
        String page = main(visitor.get(base + address));
        Set<String> links =
                LINK.matcher(page).results().map(m -> m.group(1)).collect(Collectors.toCollection(LinkedHashSet::new));
        assertThat(links).as(address).hasSizeGreaterThan(10);
        for (String link : links) {
            String[] parts = link.split("#", -1);
            if (parts[0].isEmpty()) {
                assertThat(page).as(link).contains(" id=\"" + parts[1] + "\"");
            } else if (parts.length > 1 && parts[0].equals(base + "/measure")) {
                assertThat(measure.contains(" id=\"" + parts[1] + "\""))
                        .as("Measure has the place " + link)
                        .isTrue();
            } else if (!link.contains("pair=")) {
                assertThat(visitor.get(link).status()).as(link).isEqualTo(200);
            }
        }
    }

    /** An empty sheet misses most, so it names most. */
    @Test
    void noLinkOfAnEmptySheetIsDead() {
        String base = visitor.empty("Nothing read yet");
        noLinkIsDead(base, "/life?now=1");
        noLinkIsDead(base, "/clear?now=1");
    }

    /** Whatever the page names by a link is there: a card, a row or a word on Measure, the text, a place on the page itself. */
    @Test
    void everyInputLeadsToTheFieldThatMendsIt() throws IOException {
        String base = visitor.example();
        for (String address : List.of("/life?now=1", "/shake?now=1", "/clear?now=1")) {
            noLinkIsDead(base, address);
        }
        LimitLadder ladder =
                life(build(text("demo.yaml")), Catalogue.EMPTY).ladder().orElseThrow();
        Rung unknown = first(ladder, r -> r.state() == Rung.State.UNKNOWN);
        Rung known =
                first(ladder, r -> r.state() == Rung.State.HOLDS && r.speed().isPresent());
        String page = visitor.get(base + "/life?now=1").body();
        assertThat(page)
                .contains("href=\"" + base + "/measure/"
                        + unknown.missing().get(0).where() + "\"");
        String row = page.substring(page.indexOf("<article class=\"rung holds\" id=\"" + known.key() + "\""));
        assertThat(row.substring(0, row.indexOf("</article>"))).contains("href=\"" + base + "/measure");
    }

    /** One count of what is unknown: that of the list below it, told apart into what is in the way and what only guides. */
    @Test
    void whatIsUnknownIsCountedOnce() throws IOException {
        LimitLadder ladder =
                life(build(text("demo.yaml")), Catalogue.EMPTY).ladder().orElseThrow();
        List<Rung> unknown = ladder.rungs().stream()
                .filter(r -> r.state() == Rung.State.UNKNOWN)
                .toList();
        long inTheWay = unknown.stream().filter(Rung::isInTheWay).count();
        assertThat(inTheWay).as("some only guide").isPositive().isLessThan(unknown.size());
        assertThat(visitor.get(visitor.example() + "/life?now=1").words())
                .contains(
                        unknown.size() + " limits are unknown until more is read: " + inTheWay + " in the way, "
                                + (unknown.size() - inTheWay) + " only guide",
                        "Unknown until it is read " + unknown.size());
    }

    /** The page and the Book draw the same force to the same scale, and say how large it gets. */
    @Test
    void pageAndBookHaveOneScaleForThePathOfTheForce() {
        String base = visitor.example();
        String page = path(visitor.get(base + "/shake?now=1").body(), "hodograph");
        String book = path(visitor.get(base + "/book?now=1").body(), "book-hodograph");
        assertThat(page).isEqualTo(book).contains(">scale: ", " along<", " across<");
    }

    /** What is drawn, without its name. */
    private static String path(String page, String prefix) {
        String from = page.substring(page.indexOf(prefix + "-desc\">"));
        return from.substring(from.indexOf('>'), from.indexOf("</svg>"));
    }

    @Test
    void aSpeedThatIsHeldIsApproved() throws IOException {
        String unseen = text("scenarios/s3-springs.yaml")
                .replace("wanted_speed: 6000 rpm", "wanted_speed: 3600 rpm")
                .replace(
                        "  stroke: 62.0 mm ± 0.001 mm\n",
                        "  stroke: 62.0 mm ± 0.001 mm\n  donor_stroke: 62.0 mm ± 0.001 mm\n")
                .replace("intake_valve:\n", "exhaust_valve:\n  lift: 8.20 mm ± 0.03 mm\n\nintake_valve:\n")
                .replace("  metal: cast_aluminium\n", "  metal: cast_aluminium\n  bolt_tightenings: 1\n");
        assertThat(visitor.get(kept(unseen) + "/life?now=1").words())
                .contains(
                        "NOT APPROVED not approved at 3600 rpm yet: nobody says that flywheel, connecting rod",
                        "hold 3600 rpm",
                        "say so on Life, under Looked over");
        String held = unseen + """

                seen:
                  - {part: flywheel, damage: none, where: dyed}
                  - {part: connecting_rod, damage: none, where: dyed}
                  - {part: crankshaft, damage: none, where: dyed}
                  - {part: piston, damage: none, where: by eye}
                """;
        assertThat(life(build(held), Catalogue.EMPTY)
                        .ladder()
                        .orElseThrow()
                        .approval()
                        .verdict())
                .isEqualTo(Approval.State.APPROVED);
        String base = kept(held);
        assertThat(visitor.get(base + "/life?now=1").words())
                .contains("APPROVED approved up to 3600 rpm, as far as these limits go", "Life ✓ answered")
                .doesNotContain("NOT APPROVED", "What would lift it");
    }

    /** Looking over is told on the page, and a trace goes in and out there; what is wrong with one is said and nothing is lost. */
    @Test
    void whatWasLookedOverAndAGasTraceAreToldOnThePage() throws IOException {
        String base = kept(text("scenarios/s3-springs.yaml"));
        Visitor.Page page = visitor.get(base + "/life?now=1");
        assertThat(page.words()).contains("Looked over, no damage found", "Gas trace measured on this engine 0");
        visitor.post(
                base + "/life/looked",
                fields(
                        page,
                        "how.flywheel",
                        "dyed, rim",
                        "how.crankshaft",
                        "",
                        "how.piston",
                        "",
                        "how.connecting_rod",
                        ""));
        assertThat(visitor.get(base + "/text").body()).contains("damage: none", "dyed, rim");
        StringBuilder rows = new StringBuilder("angle;kPa\n");
        for (int degrees = -180; degrees <= 180; degrees += 5) {
            rows.append(degrees)
                    .append(';')
                    .append(Math.round(100 + 3000 * Math.exp(-Math.pow((degrees - 12) / 30.0, 2))))
                    .append('\n');
        }
        page = visitor.get(base + "/life?now=1");
        Visitor.Page wrong = visitor.post(
                base + "/life/gas",
                fields(
                        page,
                        "speed",
                        "",
                        "within",
                        "3",
                        "unit",
                        "kPa",
                        "cycles",
                        "mean",
                        "pressure",
                        "absolute",
                        "rows",
                        "0;1",
                        "note",
                        "mine"));
        assertThat(wrong.status()).isEqualTo(422);
        assertThat(wrong.words()).contains("speed is empty");
        assertThat(wrong.body()).contains("value=\"mine\"");
        visitor.post(
                base + "/life/gas",
                fields(
                        page,
                        "speed",
                        "3000",
                        "within",
                        "3",
                        "unit",
                        "kPa",
                        "cycles",
                        "mean",
                        "pressure",
                        "absolute",
                        "rows",
                        rows.toString()));
        page = visitor.get(base + "/life?now=1");
        assertThat(page.words())
                .contains(
                        "Gas trace measured on this engine 1",
                        "3000 rpm, absolute, the mean of many cycles, within 3 %, 73 rows");
        String unused = life(build(traced(rows)), Catalogue.EMPTY).findings().stream()
                .filter(f -> f.where().startsWith("gas_traces"))
                .map(Finding::message)
                .findFirst()
                .orElseThrow();
        assertThat(page.body())
                .as("why it is not used, at the trace")
                .contains("id=\"gas-1-unused\" class=\"notice doubt\"");
        assertThat(page.words()).contains(unused);
        assertThat(visitor.get(base + "/life/answer").body())
                .as("and where the limits come after the page")
                .contains("id=\"gas-1-unused\" class=\"notice doubt\" hx-swap-oob=\"true\"");
        visitor.post(base + "/life/gas", fields(page, "out", "1"));
        assertThat(visitor.get(base + "/life?now=1").words()).contains("Gas trace measured on this engine 0");
    }

    private static String traced(CharSequence rows) throws IOException {
        String points = rows.toString()
                .lines()
                .skip(1)
                .map(row -> row.replace(";", "°: ") + " kPa")
                .collect(java.util.stream.Collectors.joining(", "));
        return text("scenarios/s3-springs.yaml")
                + "\ngas_traces:\n  - {speed: 3000 rpm, pressure: absolute, cycles: mean, within: 3 %, rows: {" + points
                + "}}\n";
    }

    /** The duty goes in and out on the page, bare numbers in its units; what is none is said, and what was typed stays. */
    @Test
    void howTheHoursAreSpentIsStatedAndTakenAwayOnThePage() throws IOException {
        String disputed = "compression_height: {readings: [15.62 mm, 15.63 mm], with: my_caliper, who: the owner}";
        assertThat(text("demo.yaml")).contains(disputed);
        String base = kept(text("demo.yaml").replace(disputed, "pin_top_to_crown: 7.63 mm"));
        Visitor.Page page = visitor.get(base + "/life?now=1");
        assertThat(page.words())
                .contains("How the hours are spent", "None stated.")
                .doesNotContain("stated duty");
        String before = visitor.get(base + "/text").body();
        Visitor.Page wrong = visitor.post(
                base + "/life/duty",
                fields(page, "speed.1", "3000", "share.1", "70", "speed.2", "5200 rpm", "share.2", "35 %"));
        assertThat(wrong.status()).isEqualTo(422);
        assertThat(wrong.words()).contains("105 % is what the shares add up to", "100 % within 0.5 %", "share smaller");
        assertThat(wrong.body()).contains("value=\"5200 rpm\"", "value=\"35 %\"", "<details open");
        Visitor.Page half = visitor.post(base + "/life/duty", fields(page, "speed.1", "3000", "share.1", ""));
        assertThat(half.status()).isEqualTo(422);
        assertThat(half.words()).contains("share of step 1 is empty");
        visitor.post(
                base + "/life/duty",
                fields(page, "speed.1", "3000", "share.1", "70", "speed.2", "5200 rpm", "share.2", "30 %"));
        page = visitor.get(base + "/life?now=1");
        assertThat(page.words())
                .contains(
                        "70 % at 3000 rpm, 42 h of 60 h",
                        "30 % at 5200 rpm, 18 h of 60 h",
                        "rod beam, hours at the stated duty",
                        "by Miner's sum; 60 h are wanted",
                        "beside the stated duty, whose own limit decides")
                .doesNotContain("hours_at");
        assertThat(page.body()).contains(base + "/life#duty");
        assertThat(visitor.get(base + "/text").body()).contains("hours_at: [{speed: 3000 rpm, share: 70 %}");
        assertThat(visitor.get(base + "/book?view=sheet&now=1").words())
                .contains("stated duty running time as stated: 70 % at 3000 rpm; 30 % at 5200 rpm")
                .doesNotContain("hours_at");
        visitor.post(base + "/life/duty", fields(page, "out", "all"));
        assertThat(visitor.get(base + "/life?now=1").words()).contains("None stated.");
        assertThat(before).doesNotContain("hours_at");
    }

    private static Map<String, String> fields(Visitor.Page page, String... namesAndValues) {
        Map<String, String> fields = new LinkedHashMap<>();
        for (String name : List.of("token", "based", "key")) {
            fields.put(name, page.hidden(name));
        }
        for (int k = 0; k < namesAndValues.length; k += 2) {
            fields.put(namesAndValues[k], namesAndValues[k + 1]);
        }
        return fields;
    }

    /** Any unit of speed, as in every other field. */
    @Test
    void theSpeedOfTheShakeIsReadInAnyUnit() {
        String base = visitor.example();
        assertThat(visitor.get(base + "/shake?speed=50+rev%2Fs").words()).contains("At 3000 rpm, chosen here");
        assertThat(visitor.get(base + "/shake?speed=3000").words()).contains("At 3000 rpm, chosen here");
        assertThat(visitor.get(base + "/shake?speed=3000+mm").words()).contains("must be a speed from");
    }

    @Test
    void anEmptySheetSaysWhatToReadAndApprovesNothing() {
        String base = visitor.empty("Nothing read yet");
        assertThat(visitor.get(base + "/life?now=1").words())
                .contains("NOT APPROVED", "Life ■ not approved", "Unknown until it is read", "wanted speed")
                .doesNotContain("✓ holds", "The limit ladder");
        Visitor.Page shake = visitor.get(base + "/shake?now=1");
        assertThat(shake.status()).isEqualTo(200);
        assertThat(shake.words()).contains("Shake ? unknown", "No speed is known", "No counterweight can make");
        assertThat(shake.body())
                .contains("href=\"" + base + "/measure/use.wanted_speed\"")
                .doesNotContain("hodograph", "class=\"slide\"");
    }

    @Test
    void shakeHasItsPathItsTradeAndWhatNothingCancels() throws IOException {
        Shaking shaking =
                Shake.of(build(text("demo.yaml")), Catalogue.EMPTY).shaking().orElseThrow();
        Visitor.Page page = visitor.get(visitor.example() + "/shake?now=1");
        shaking.sentences().forEach(s -> assertThat(page.words()).contains(s));
        assertThat(count(page.body(), "id=\"hodograph-title\"")).isEqualTo(1);
        assertThat(count(main(page), "<tr")).isEqualTo(1 + shaking.trade().size());
        assertThat(page.words())
                .contains("as it is", "a shaft turning against the crank", "At 5200 rpm, the speed wanted.")
                .contains("A force is no leave to run at a speed");
        shaking.figures().forEach(f -> assertThat(page.words()).contains(f.label()));
    }

    /** The whole page, and the piece that script fetches, at a speed that was chosen: the figures are those of the answer there. */
    @Test
    void anySpeedCanBeChosenWithoutScript() throws IOException {
        Shaking there = Shake.of(build(text("demo.yaml")), Catalogue.EMPTY, OptionalDouble.of(Units.RPM.toSi(3000)))
                .shaking()
                .orElseThrow();
        String sentence = there.sentences().get(1);
        assertThat(sentence).contains("3000 rpm");
        String base = visitor.example();
        for (String address : List.of("/shake?speed=3000", "/shake/told?speed=3000")) {
            Visitor.Page page = visitor.get(base + address);
            assertThat(page.words())
                    .as(address)
                    .contains("At 3000 rpm, chosen here; the speed wanted is 5200 rpm.", sentence)
                    .contains("Broken line: at the speed wanted");
        }
        assertThat(visitor.get(base + "/shake?speed=3000").body()).contains("id=\"speed\"", "value=\"3000 rpm\"");
        assertThat(visitor.get(base + "/shake").words())
                .as("the answer of the build is not that of the speed looked at")
                .contains("At 5200 rpm, the speed wanted.");
    }

    @ParameterizedTest
    @ValueSource(strings = {"99", "16001", "-500", "fast", "3e3", "NaN", "%3Cscript%3E", "999999999999999999999999"})
    void aSpeedThatIsNoneIsSaidAndHarmsNothing(String asked) {
        String base = visitor.example();
        for (String address : List.of("/shake?speed=", "/shake/told?speed=")) {
            Visitor.Page page = visitor.get(base + address + asked);
            assertThat(page.status()).isEqualTo(200);
            assertThat(page.words()).contains("from 100 to 16000", "At 5200 rpm, the speed wanted.");
            assertThat(page.body()).doesNotContain("<script>”");
        }
    }

    /** A heavy counterweight: where to drill, how wide, how deep, what is left, and what comes of it. */
    @Test
    void aHeavyCounterweightHasItsHoles() throws IOException {
        String heavy = text("demo.yaml")
                .replace("bob_weight: 258.0 g", "bob_weight: 306.0 g")
                .replace("counterweight_thickness: 16.5 mm", "counterweight_thickness: 20.0 mm");
        Shaking shaking = Shake.of(build(heavy)).shaking().orElseThrow();
        assertThat(shaking.drilling()).isNotEmpty();
        Visitor.Page page = visitor.get(kept(heavy) + "/shake?now=1");
        for (Shaking.Holes holes : shaking.drilling()) {
            assertThat(page.words())
                    .contains(String.format(Locale.ROOT, "%d of %.0f mm", holes.count(), 1e3 * holes.diameter()));
        }
        assertThat(count(page.body(), "<dt>Wall left</dt>"))
                .isEqualTo(shaking.drilling().size());
        assertThat(page.words()).contains("A machinist judges the web first", "Factor then");
    }

    @Test
    void priceAndOtherPistonsComeFromWhatIsOnOffer() throws IOException {
        String base = visitor.example();
        visitor.get(base + "/life?now=1");
        Build demo = build(text("demo.yaml"));
        Set<Imported> offered = new LinkedHashSet<>();
        for (String file : List.of("flywheel.csv", "piston.csv")) {
            byte[] rows = Files.readAllBytes(EXAMPLES.resolve("catalogue").resolve(file));
            offered.add(CatalogueFile.csv("", file, rows));
            visitor.serving().store().addCatalogue(file, new ByteArrayInputStream(rows));
        }
        Catalogue offer = Imported.together(List.copyOf(offered)).catalogue();
        assertThat(visitor.get(base + "/life").words())
                .as("what was worked out before the offer is not shown for it")
                .contains("takes a moment", "Life … being worked out");
        Approval approval = life(demo, offer).ladder().orElseThrow().approval();
        Approval.Unlock wheel = approval.unlocks().stream()
                .filter(u -> !u.code().isEmpty())
                .findFirst()
                .orElseThrow();
        assertThat(visitor.get(base + "/life?now=1").words()).contains(wheel.what() + "; " + wheel.price());
        List<Shaking.OtherPiston> pistons =
                Shake.of(demo, offer).shaking().orElseThrow().pistons();
        assertThat(pistons).isNotEmpty();
        String words = visitor.get(base + "/shake?now=1").words();
        assertThat(words).contains("With another piston");
        pistons.forEach(p -> assertThat(words).contains(p.code() + ", " + p.name()));
    }
}
