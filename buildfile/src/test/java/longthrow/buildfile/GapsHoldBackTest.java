package longthrow.buildfile;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import longthrow.core.answer.Answer;
import longthrow.core.answer.Approval;
import longthrow.core.answer.Clearance;
import longthrow.core.answer.Stop;
import longthrow.core.book.Answers;
import longthrow.core.book.Book;
import longthrow.core.build.Build;
import longthrow.core.catalogue.Catalogue;
import longthrow.core.clear.Clear;
import longthrow.core.engine.GapStops;
import longthrow.core.engine.MockUp;
import longthrow.core.life.Life;
import longthrow.core.measure.Measure;
import longthrow.core.quantity.Units;
import longthrow.core.shake.Shake;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** One verdict of limits and gaps: what {@code clear} stops, {@code life} does not approve, and in the same words. */
class GapsHoldBackTest {
    /** Rated, looked over, every limit known: approved but for its gaps; and of a longer throw than its donor's. */
    private static final String RATED = LadderMutationTest.RATED;

    private static final String LONGER =
            Running.replaced(RATED, "stroke: 55.40 mm,", "stroke: 55.40 mm, donor_stroke: 50.00 mm,");

    /** With another throw than the donor's a mock-up says with which it was read. */
    private static final String THROW = ", with_stroke: 55.40 mm";

    private static final String HELD = LookedOver.springsAtTheMakersSpeed();

    private static Approval approval(String text) {
        return Running.asked(Running.build(text)).ladder().orElseThrow().approval();
    }

    private static String mockedUp(String text, List<String> entries) {
        return text + "\nmocked_up:\n"
                + entries.stream().map(e -> "  - {" + e + "}\n").collect(Collectors.joining());
    }

    /** Of every pair that is not told, read with plenty of room in it. */
    private static List<String> everyPairOf(String text) {
        return Clear.of(Running.build(text)).clearances().stream()
                .filter(pair -> pair.state() == Clearance.State.UNKNOWN)
                .map(pair -> "pair: " + pair.key() + ", way: feeler, gap: 4.0 mm, both_ways: yes" + THROW)
                .collect(Collectors.toCollection(ArrayList::new));
    }

    /** Whatever the sheet: approved means that no stop of its gaps stands, and the stops are the same in both answers. */
    private static void areOfOneMind(String text) {
        Build build = Running.build(text);
        Answer clear = Clear.of(build);
        Answer life = Running.asked(build);
        List<Stop> gaps = clear.stops().stream().filter(GapStops::isOfGaps).toList();
        assertThat(life.stops()).containsAll(gaps);
        if (!gaps.isEmpty()) {
            assertThat(life.ladder().orElseThrow().approval().verdict()).isNotEqualTo(Approval.State.APPROVED);
        }
    }

    @Test
    void pastTheMakersSpeedRatingsApproveNothingBeforeItIsMockedUp() {
        Approval approval = approval(RATED);
        assertThat(approval.verdict()).isEqualTo(Approval.State.NOT_APPROVED);
        assertThat(approval.said()).contains("before it has been mocked up");
        assertThat(approval.unlocks()).anyMatch(u -> u.what().contains("turn it twice by hand"));
        areOfOneMind(RATED);
    }

    /** The way there: with every pair mocked up, rod and wheel rated and a limiter, a longer throw is approved; with one pair less it is not, and that one is named. */
    @Test
    void aLongerThrowIsApprovedOnceEveryPairIsMockedUp() {
        assertThat(approval(LONGER).verdict()).isEqualTo(Approval.State.NOT_APPROVED);
        List<String> entries = everyPairOf(LONGER);
        assertThat(entries).hasSizeGreaterThan(10);
        Approval whole = approval(mockedUp(LONGER, entries));
        assertThat(whole.verdict()).as(whole.reasons().toString()).isEqualTo(Approval.State.APPROVED);
        String left = entries.remove(3);
        Approval less = approval(mockedUp(LONGER, entries));
        assertThat(less.verdict()).isEqualTo(Approval.State.NOT_APPROVED);
        String key = left.substring("pair: ".length(), left.indexOf(','));
        Clearance pair = Clear.of(Running.build(LONGER)).clearances().stream()
                .filter(c -> c.key().equals(key))
                .findFirst()
                .orElseThrow();
        assertThat(less.reasons())
                .singleElement()
                .asString()
                .contains("not known: " + pair.one() + " to " + pair.other());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "way: wire, gap: 0.30 mm, both_ways: yes | too close",
                "way: blue, gap: touches | touch",
                "way: blue, at_least: 0 mm | may be closer than was read"
            })
    void aGapThatIsReadTooSmallIsApprovedByNoRating(String read, String said) {
        List<String> entries = everyPairOf(LONGER);
        entries.removeIf(e -> e.contains("intake_valve_to_piston"));
        entries.add("pair: intake_valve_to_piston, " + read + THROW);
        String text = mockedUp(LONGER, entries);
        Approval approval = approval(text);
        assertThat(approval.verdict()).isNotEqualTo(Approval.State.APPROVED);
        assertThat(approval.reasons()).anyMatch(r -> r.contains("intake valve") && r.contains(said));
        areOfOneMind(text);
    }

    /** Of the engine as he made it, at his speed, its maker vouches for what nobody read; not for what was read and is too small by every source. */
    @Test
    void atTheMakersSpeedHeVouchesForGapsThatNobodyRead() {
        Approval approval = approval(HELD);
        assertThat(approval.verdict()).as(approval.reasons().toString()).isEqualTo(Approval.State.APPROVED);
        assertThat(approval.said()).contains("gaps that nobody read rest on it too");
        areOfOneMind(HELD);
        String near = mockedUp(HELD, List.of("pair: intake_valve_to_piston, way: wire, gap: 0.30 mm"));
        assertThat(approval(near).verdict()).isEqualTo(Approval.State.NOT_APPROVED);
        assertThat(approval(near).canHave()).isEmpty();
        assertThat(approval(near).instead()).contains("intake valve and piston come too close");
        areOfOneMind(near);
    }

    /** Of an approved engine the Book says one verdict, up to what, on whose word and what is not known, and the same nowhere else otherwise. */
    @Test
    void theBookSaysTheOneVerdict() {
        Build build = Running.build(HELD);
        Answer clear = Clear.of(build);
        Answer life = Life.of(build, Catalogue.EMPTY, clear.clearances());
        Answers answers = Answers.of(Measure.of(build, List.of()), Optional.empty())
                .with(Optional.of(clear), Optional.of(life), Optional.of(Shake.of(build)));
        Book book = Book.of(build, answers, Catalogue.EMPTY, List.of());
        String said = life.ladder().orElseThrow().approval().said();
        assertThat(said).startsWith("approved up to ");
        assertThat(book.approval())
                .startsWith("APPROVED" + said.substring("approved".length()))
                .contains("rest on a maker's word", "gaps that nobody read rest on it too")
                .contains(
                        book.unknowns().isEmpty() ? "APPROVED" : "Not known: ",
                        "Makers' sheets, class rules and those who sign stand before it")
                .doesNotContain("No stop is known", "That is no approval");
        assertThat(book.limits().orElseThrow().line()).doesNotContain("APPROVED", "approved");
        assertThat(book.touching().orElseThrow().least())
                .doesNotContain("No gap is known", "Unknown until mocked up")
                .contains("the maker's word on the engine as he made it stands");
    }

    /** One figure is wanted of a pair wherever it is said: that of {@code clear} is that of the Book, what a rod asks on top counted in. */
    @Test
    void whatIsWantedAtTheValvesIsOneFigure() {
        Build build = Running.build(mockedUp(HELD, List.of("pair: intake_valve_to_piston, way: wire, gap: 0.30 mm")));
        Answer clear = Clear.of(build);
        List<String> wanted = clear.clearances().stream()
                .filter(pair -> pair.key().equals("intake_valve_to_piston"))
                .flatMap(pair -> pair.limits().stream())
                .map(limit -> String.format(Locale.ROOT, "least %.1f mm", 1e3 * limit.least()))
                .toList();
        assertThat(wanted)
                .as("2.0 and 2.3 mm, and 0.5 mm for a rod that is not of steel")
                .containsExactly("least 2.5 mm", "least 2.8 mm");
        Answers answers = Answers.of(Measure.of(build, List.of()), Optional.empty())
                .with(Optional.of(clear), Optional.empty(), Optional.empty());
        assertThat(Book.of(build, answers, Catalogue.EMPTY, List.of()).targets())
                .filteredOn(t -> t.label().equals(MockUp.VALVE_TO_PISTON_INTAKE.label()))
                .singleElement()
                .satisfies(t -> assertThat(t.limits())
                        .extracting(l -> l.window().substring(0, "least 2.5 mm".length()))
                        .containsExactlyElementsOf(wanted));
    }

    /** What is vouched for is said as a speed that makers vouch for, not as a thing. */
    @Test
    void aLimiterIsHeldAgainstWhatMakersVouchFor() {
        assertThat(Running.asked(Running.build(RATED)).ladder().orElseThrow().rungs())
                .filteredOn(rung -> rung.key().equals("limiter"))
                .singleElement()
                .satisfies(rung ->
                        assertThat(rung.why()).containsPattern("^4000 rpm; makers vouch for speeds up to \\d+ rpm"));
    }

    /** Another part, a cut, a shorter throw: then it is not the engine he made. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "donor_stroke: 62.0 mm ± 0.001 mm|donor_stroke: 64.0 mm ± 0.001 mm",
                "donor_stroke: 62.0 mm ± 0.001 mm|donor_stroke: {assumed: 62.0 mm ± 0.1 mm, because: it looks so}",
                "donor_stroke: 62.0 mm ± 0.001 mm|donor_stroke: {specified: 62.0 mm, tolerance: 0.1 mm, by: the seller}",
            })
    void anotherThrowThanHisIsNotHis(String change) {
        String text = Running.replaced(
                HELD, change.substring(0, change.indexOf('|')), change.substring(change.indexOf('|') + 1));
        Approval approval = approval(text);
        assertThat(approval.verdict()).as(change).isNotEqualTo(Approval.State.APPROVED);
        assertThat(approval.reasons()).anyMatch(r -> r.contains("throw") || r.contains("mocked up"));
        areOfOneMind(text);
    }

    /** Figures that show a touch, one of them left out: it is no more approved than with it. */
    @Test
    void aReadingThatShowsATouchHelpsNothingByBeingLeftOut() {
        String touching = HELD.replace(
                        "camshaft:\n",
                        "camshaft:\n  axis_up: 20.0 mm ± 0.05 mm\n  axis_across: 40.0 mm ± 0.05 mm\n  core_diameter: 16.0 mm ± 0.05 mm\n")
                .replace("crankshaft:\n", "crankshaft:\n  counterweight_radius: 40.0 mm ± 0.05 mm\n");
        assertThat(approval(touching).verdict()).isEqualTo(Approval.State.REFUSED);
        for (String line : List.of(
                "  axis_up: 20.0 mm ± 0.05 mm\n",
                "  axis_across: 40.0 mm ± 0.05 mm\n",
                "  core_diameter: 16.0 mm ± 0.05 mm\n",
                "  counterweight_radius: 40.0 mm ± 0.05 mm\n")) {
            String less = Running.replaced(touching, line, "");
            assertThat(approval(less).verdict()).as(line).isNotEqualTo(Approval.State.APPROVED);
            areOfOneMind(less);
        }
    }

    /** A stock engine of which little is written, approved at its maker's speed. */
    private static final String STOCK = """
            longthrow: 1
            engine: {name: Stock, invented: yes, valves: overhead}
            flywheel: {kind: solid_iron}
            connecting_rod: {bolt_tightenings: 1}
            crankshaft: {stroke: 50.00 mm ± 0.02 mm, donor_stroke: 50.00 mm ± 0.02 mm}
            use: {governed_speed: {specified: 3600 rpm, by: the engine's plate}, wanted_speed: 3600 rpm}
            """ + LookedOver.SEEN;

    @Test
    void aStockEngineIsApprovedAtItsMakersSpeed() {
        Approval approval = approval(STOCK);
        assertThat(approval.verdict()).as(approval.reasons().toString()).isEqualTo(Approval.State.APPROVED);
        assertThat(approval.upTo().orElseThrow()).isEqualTo(approval.asked().orElseThrow());
    }

    /** What was read of it says that it cannot be put together, touches, binds or lets go: the maker spoke of another state of it. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "taken: [{part: flywheel, code: X1, price: 1 EUR}]",
                "piston: {pin_length: 50 mm, clip_span: 49 mm}",
                "piston: {compression_height: 25 mm, pin_diameter: 17 mm, pin_bore: 17 mm, oil_groove_to_crown: 20 mm}",
                "clutch: {bore: 22 mm, keyway_width: 6 mm}\noutput_shaft: {diameter: 19 mm, keyway_width: 5 mm}",
                "rules: {keep: [{name: class, term: use.wanted_speed, most: 3000 rpm}]}",
                "ignition: {coil_gap: 0.1 mm}",
            })
    void whatIsReadThatCannotBeHoldsItBack(String more) {
        Approval approval = approval(STOCK + more + "\n");
        assertThat(approval.verdict()).as(approval.said()).isNotEqualTo(Approval.State.APPROVED);
        assertThat(approval.unlocks()).isNotEmpty();
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "connecting_rod: {bolt_tightenings: 1} | connecting_rod: {bolt_tightenings: 1, metal: billet_aluminium}",
                "connecting_rod: {bolt_tightenings: 1} | connecting_rod: {bolt_tightenings: 1, side_clearance: 0 mm}",
                "flywheel: {kind: solid_iron} | flywheel: {kind: solid_iron, keyway_width: 5 mm}",
                "stroke: 50.00 mm ± 0.02 mm | stroke: {assumed: 50 mm ± 0.1 mm, because: a guess}",
                "stroke: 50.00 mm ± 0.02 mm | stroke: {catalogue: 50.0 mm, tolerance: 0.1 mm, by: the crank seller}",
                "by: the engine's plate | by: 'worn plate, could be 3600 or 6600'",
                "by: the engine's plate | by: plate of another engine",
                "by: the engine's plate | by: the maker?",
                "connecting_rod: {bolt_tightenings: 1} | connecting_rod: {bolt_tightenings: 1, length: {specified: 86 mm, tolerance: 0.03 mm, by: the aftermarket maker}}",
            })
    void anotherPartAGuessOrADoubtedWordIsNotTheMakers(String was, String is) {
        String text = Running.replaced(STOCK, was, is);
        if (is.contains("keyway_width")) {
            text = Running.replaced(text, "crankshaft: {", "crankshaft: {keyway_width: 4 mm, ");
        }
        assertThat(approval(text).verdict()).as(is).isNotEqualTo(Approval.State.APPROVED);
    }

    /** Makers rate rod and wheel far beyond what the springs follow: a limiter there lets the engine run past what is approved. */
    @Test
    void aLimiterCutsAtWhatCanBeApprovedAndNoHigher() {
        String open = mockedUp(LONGER, everyPairOf(LONGER));
        Approval approved = approval(open);
        assertThat(approved.verdict()).as(approved.reasons().toString()).isEqualTo(Approval.State.APPROVED);
        long upTo = Math.round(Units.RPM.fromSi(approved.upTo().orElseThrow()));
        assertThat(upTo).isBetween(4000L, 6300L);
        Approval over = approval(Running.replaced(open, "specified: 4000 rpm", "specified: " + (upTo + 100) + " rpm"));
        assertThat(over.verdict()).isEqualTo(Approval.State.NOT_APPROVED);
        assertThat(over.unlocks()).anyMatch(u -> u.what().contains("set the limiter to " + upTo));
        assertThat(approval(Running.replaced(open, "specified: 4000 rpm", "specified: " + upTo + " rpm"))
                        .verdict())
                .isEqualTo(Approval.State.APPROVED);
    }

    /** A limiter that is a guess, a seller's claim, or told within thousands limits nothing. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "{assumed: 4000 rpm ± 10 rpm, because: it looked so}",
                "{catalogue: 4000 rpm, tolerance: 10 rpm, by: its seller}",
                "4000 rpm ± 3000 rpm",
            })
    void aLimiterOfWhichNothingIsSureHoldsNothing(String cuts) {
        String open = mockedUp(LONGER, everyPairOf(LONGER));
        Approval approval = approval(Running.replaced(open, "{specified: 4000 rpm, by: its maker}", cuts));
        assertThat(approval.verdict()).as(approval.said()).isEqualTo(Approval.State.NOT_APPROVED);
    }

    /** What seizes or breaks has to be shown to hold where no maker vouches for the run: left out, guessed, or told too widely it is not. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "top_gap: 0.30 mm ± 0.02 mm | top_gap: 0.30 mm ± 0.20 mm",
                "top_gap: 0.30 mm ± 0.02 mm, | ''",
                "top_gap: 0.30 mm ± 0.02 mm | top_gap: {assumed: 0.30 mm ± 0.02 mm, because: usual}",
                "small_end_bore: 16.026 mm ± 0.003 mm | small_end_bore: 16.026 mm ± 0.1 mm",
                "diameter: 65.470 mm ± 0.004 mm | diameter: 65.470 mm ± 0.1 mm",
                "run_out: 0.02 mm ± 0.01 mm | run_out: 0.02 mm ± 1.5 mm",
                "run_out: 0.02 mm ± 0.01 mm, | ''",
                "side_clearance: 0.45 mm ± 0.03 mm | side_clearance: 0.45 mm ± 2 mm",
                "big_end_bore: 30.045 mm | big_end_bore: 30.045 mm ± 0.2 mm",
                "duty: mild | kind: none",
            })
    void whatSeizesHasToBeShownToHold(String was, String is) {
        String text = is.startsWith("kind") ? Running.replaced(LONGER, "  duty: mild\n", "") : LONGER;
        text = is.startsWith("kind") ? text : Running.replaced(text, was, is);
        Approval approval = approval(mockedUp(text, everyPairOf(text)));
        assertThat(approval.verdict()).as(approval.said()).isEqualTo(Approval.State.NOT_APPROVED);
    }

    /** A camshaft that was bought is not the one whose springs the maker matched, and strokes that are not shown to be the same are not. */
    @ParameterizedTest
    @ValueSource(strings = {"stroke: 50.00 mm ± 14 mm", "stroke: 50.00 mm ± 2.5 mm"})
    void theSameThrowHasToBeShown(String wide) {
        String text = Running.replaced(STOCK, "stroke: 50.00 mm ± 0.02 mm,", wide + ",");
        assertThat(approval(text).verdict()).isNotEqualTo(Approval.State.APPROVED);
    }

    @Test
    void aBoughtCamshaftEndsTheMakersWordOnTheValves() {
        String bought = STOCK + "taken: [{part: camshaft, code: C1, price: 40 EUR}]\n";
        String text = mockedUp(
                bought,
                everyPairOf(bought).stream()
                        .map(e -> e.replace(
                                THROW, ", with_stroke: 50.00 mm, with_intake_lift: 6.0 mm, with_exhaust_lift: 6.0 mm"))
                        .toList());
        Approval approval = approval(text);
        assertThat(approval.verdict()).isEqualTo(Approval.State.NOT_APPROVED);
        assertThat(approval.reasons()).anyMatch(r -> r.contains("floats"));
    }

    /** Bad news of parts that are not named counts until somebody says that it was of others. */
    @Test
    void aTouchIsNotThrownAwayForAWordThatIsMissing() {
        List<String> entries = everyPairOf(LONGER);
        entries.removeIf(e -> e.contains("skirt_to_counterweight"));
        entries.add("pair: skirt_to_counterweight, way: clay, gap: touches, both_ways: yes");
        Approval approval = approval(mockedUp(LONGER, entries));
        assertThat(approval.verdict()).isEqualTo(Approval.State.REFUSED);
    }

    /** What touched at a shorter throw comes nearer by a longer one; of one that touched at a longer throw nothing is known. */
    @ParameterizedTest
    @CsvSource({"50.00 mm, REFUSED", "58.00 mm, NOT_APPROVED"})
    void aTouchAtAShorterThrowIsATouchAtALonger(String with, Approval.State verdict) {
        List<String> entries = everyPairOf(LONGER);
        entries.removeIf(e -> e.contains("skirt_to_counterweight"));
        entries.add("pair: skirt_to_counterweight, way: clay, gap: touches, both_ways: yes, with_stroke: " + with);
        assertThat(approval(mockedUp(LONGER, entries)).verdict()).isEqualTo(verdict);
    }

    @ParameterizedTest
    @ValueSource(strings = {"rod_to_skirt", "counterweight_to_case", "retainer_to_rocker"})
    void aGapOfNextToNothingIsTooClose(String key) {
        List<String> entries = everyPairOf(LONGER);
        entries.removeIf(e -> e.contains(key));
        entries.add("pair: " + key
                + ", way: wire, gap: 0.15 mm, both_ways: yes, with_stroke: 55.40 mm, with_rod_length: 85.20 mm");
        Approval approval = approval(mockedUp(LONGER, entries));
        assertThat(approval.verdict()).as(approval.reasons().toString()).isNotEqualTo(Approval.State.APPROVED);
        assertThat(approval.reasons()).anyMatch(r -> r.contains("too close"));
    }
}
