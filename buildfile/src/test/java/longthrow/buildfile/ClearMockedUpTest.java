package longthrow.buildfile;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import longthrow.core.answer.Answer;
import longthrow.core.answer.Clearance;
import longthrow.core.answer.Clearance.Gap;
import longthrow.core.answer.Clearance.State;
import longthrow.core.answer.Clearance.Way;
import longthrow.core.answer.Finding;
import longthrow.core.answer.Stop;
import longthrow.core.build.Build;
import longthrow.core.clear.Clear;
import longthrow.core.engine.GapStops;
import longthrow.core.term.MovingPair;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What a mock-up makes of the pairs of invented engines. */
class ClearMockedUpTest {
    private static final String LONGER = read("scenarios/s1-longer-throw.yaml");

    private static String read(String file) {
        try {
            return Files.readString(Path.of("../examples").resolve(file));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static Build build(String text) {
        ReadBuild read = BuildFile.read(text);
        return read.build().orElseThrow(() -> new AssertionError(read.faults().toString()));
    }

    private static String with(String text, String... entries) {
        return text + "\nmocked_up:\n"
                + List.of(entries).stream().map(e -> "  - {" + e + "}\n").collect(Collectors.joining());
    }

    /** The same by entries that say with which throw they were read: {@link #LONGER} has another than its donor. */
    private static String longer(String... entries) {
        return with(
                LONGER,
                List.of(entries).stream()
                        .map(e -> e.contains("with_stroke") ? e : e + ", with_stroke: 56.5 mm")
                        .toArray(String[]::new));
    }

    private static Answer clear(String text) {
        return Clear.of(build(text));
    }

    private static Clearance pair(Answer answer, MovingPair pair) {
        return answer.clearances().stream()
                .filter(c -> c.key().equals(pair.key()))
                .findFirst()
                .orElseThrow(() -> new AssertionError(pair + " is missing"));
    }

    private static Clearance pair(String text, MovingPair pair) {
        return pair(clear(text), pair);
    }

    private static List<Finding> about(Answer answer, Finding.Kind kind) {
        return answer.findings().stream()
                .filter(f -> f.kind() == kind && f.where().startsWith("mocked_up"))
                .toList();
    }

    private static Clearance.Gap cold(Clearance pair) {
        return pair.cold().orElseThrow();
    }

    /** The names a mock-up is written down under are those of the pairs, of any layout, and none besides. */
    @Test
    void thereIsANameForEveryPairOfEveryLayout() {
        String overhead = ClearAnswerTest.whole();
        Set<String> keys = new LinkedHashSet<>();
        for (String valves : List.of("overhead", "side")) {
            String text = overhead.replace("valves: overhead", "valves: " + valves);
            clear(text).clearances().forEach(c -> {
                keys.add(c.key());
                MovingPair named = MovingPair.at(c.key()).orElseThrow();
                assertThat(c.one()).isEqualTo(named.one());
                assertThat(c.other()).isEqualTo(named.other());
            });
        }
        assertThat(keys)
                .containsExactlyInAnyOrder(java.util.Arrays.stream(MovingPair.values())
                        .map(MovingPair::key)
                        .toArray(String[]::new));
    }

    /**
     * By hand: two readings of clay scatter by 0.08 mm each, so their mean by 0.0566; a caliper's step 0.01 mm gives 0.0029, its error of 0.03 mm at 95 % 0.0153; together
     * 0.0587 mm with 12.5 (0.0587 / 0.0566)^4 = 14.5 degrees of freedom, for which Student's factor is 2.14 (JCGM 100:2008 table G.2: 2.14 at 14): 0.126 mm.
     */
    @Test
    void aPairThatOnlyMockingUpTellsIsKnownByItsReadings() {
        Answer before = clear(LONGER);
        assertThat(pair(before, MovingPair.COUNTERWEIGHT_TO_CASE).state()).isEqualTo(State.UNKNOWN);
        Answer after = clear(longer("pair: counterweight_to_case, way: clay, gap: [2.0 mm, 2.1 mm], both_ways: yes"));
        Clearance known = pair(after, MovingPair.COUNTERWEIGHT_TO_CASE);
        assertThat(known.state()).isEqualTo(State.CLEARS_COLD);
        assertThat(cold(known).value()).isCloseTo(2.05e-3, within(1e-9));
        assertThat(cold(known).high() - cold(known).value()).isCloseTo(0.126e-3, within(0.002e-3));
        assertThat(cold(known).worst()).isLessThan(cold(known).low());
        assertThat(cold(known).contact()).isLessThan(1e-6);
        assertThat(cold(known).way()).isEqualTo(Way.MOCKED_UP);
        assertThat(known.why()).contains("as mocked up, cold", "running not known: it was read cold", "clay");
        assertThat(known.mocked()).singleElement().satisfies(m -> {
            assertThat(m.place()).isEqualTo("mocked_up[1]");
            assertThat(m.counts()).isTrue();
            assertThat(m.read()).isEqualTo("2.0 mm, 2.1 mm");
        });
        assertThat(known.from()).containsExactly("mocked_up[1]");
        assertThat(after.defaults())
                .as("parts not said are taken aloud, and so is the usual doubt of clay")
                .anyMatch(d -> d.where().equals("mocked_up[1]") && d.what().contains("parts that are in the build now"))
                .anyMatch(d -> d.where().equals("mocked_up[1]") && d.what().contains("usual scatter of clay"));
        assertThat(about(after, Finding.Kind.SUSPECT)).isEmpty();
        // nothing else moves, and without the entry all is as before
        assertThat(after.clearances().stream().filter(c -> !c.equals(known)).toList())
                .containsExactlyInAnyOrderElementsOf(before.clearances().stream()
                        .filter(c -> !c.key().equals(known.key()))
                        .toList());
        assertThat(after.stops().stream().map(Stop::why).collect(Collectors.joining()))
                .doesNotContain("counterweight to case");
    }

    @Test
    void readOneWayOfTheEndPlayItIsNeverMoreThanClose() {
        String read = "pair: rod_bolts_to_case, way: wire, gap: 4.0 mm";
        Clearance both = pair(longer(read + ", both_ways: yes"), MovingPair.ROD_BOLTS_TO_CASE);
        assertThat(both.state()).isEqualTo(State.CLEARS_COLD);
        for (String rest : List.of("", ", both_ways: no", ", both_ways: unknown")) {
            Clearance one = pair(longer(read + rest), MovingPair.ROD_BOLTS_TO_CASE);
            assertThat(one.state()).as(rest).isEqualTo(State.CLOSE);
            assertThat(one.why()).contains("end play");
            assertThat(one.mend()).contains("one way of their end play and then the other");
        }
        assertThat(pair(longer("pair: retainer_to_rocker, way: wire, gap: 1.5 mm"), MovingPair.RETAINER_TO_ROCKER)
                        .state())
                .as("end play has nothing to do with it")
                .isEqualTo(State.CLEARS_COLD);
    }

    /** A mark is contact, and so is a gap of nothing, by whatever else stands beside it. */
    @ParameterizedTest
    @ValueSource(
            strings = {"gap: touches", "gap: 0 mm", "gap: [2 mm, 0 mm]", "rows: {90°: 1 mm, 95°: 0 mm, 100°: 1 mm}"})
    void whatTouchesIsStopped(String found) {
        Answer answer = clear(longer(
                "pair: rod_to_skirt, way: clay, both_ways: yes, " + found,
                "pair: rod_to_skirt, way: clay, both_ways: yes, gap: 2.0 mm"));
        Clearance touches = pair(answer, MovingPair.ROD_TO_SKIRT);
        assertThat(touches.state()).isEqualTo(State.TOUCHES);
        assertThat(cold(touches).contact()).isEqualTo(1);
        assertThat(touches.mend()).contains("by more than 1.50 mm", "mock it up again");
        assertThat(answer.stops())
                .anyMatch(s -> s.refused() && s.what().contains("rod beam and inside of the skirt touch"));
        assertThat(about(answer, Finding.Kind.SUSPECT))
                .as("two that do not agree")
                .hasSize(1);
    }

    @Test
    void aMarkCountsBeforeADrawingThatClears() {
        Answer answer = clear(longer("pair: skirt_to_counterweight, way: blue, gap: touches"));
        assertThat(pair(answer, MovingPair.SKIRT_TO_COUNTERWEIGHT).state()).isEqualTo(State.TOUCHES);
        assertThat(about(answer, Finding.Kind.SUSPECT)).hasSize(1);
    }

    /** A wire of 1.6 mm that passes says that 1.5 mm, which an aluminium rod wants, is likely kept; one of 1.4 that it is not known. */
    @Test
    void whatPassedFreeIsTheLeastItCanBe() {
        Clearance thick = pair(
                longer("pair: rod_bolts_to_case, way: wire, at_least: 1.8 mm, both_ways: yes"),
                MovingPair.ROD_BOLTS_TO_CASE);
        assertThat(thick.state()).isEqualTo(State.CLEARS_COLD);
        assertThat(cold(thick).way()).isEqualTo(Way.AT_LEAST);
        assertThat(thick.why()).startsWith("at least 1.8");
        Clearance thin = pair(
                longer("pair: rod_bolts_to_case, way: wire, at_least: 1.4 mm, both_ways: yes"),
                MovingPair.ROD_BOLTS_TO_CASE);
        assertThat(thin.state()).isEqualTo(State.CLOSE);
    }

    @Test
    void freeWithoutAnAmountIsNeverMoreThanClose() {
        String blue = "pair: pushrod_to_tube, way: blue, at_least: 0 mm";
        Clearance free = pair(longer(blue), MovingPair.PUSHROD_TO_TUBE);
        assertThat(free.state()).isEqualTo(State.CLOSE);
        assertThat(free.mend()).contains("pass a wire or a feeler");
        assertThat(pair(longer("pair: rod_to_skirt, way: blue, at_least: 0 mm"), MovingPair.ROD_TO_SKIRT)
                        .state())
                .as("and one way of the end play it may still touch the other")
                .isEqualTo(State.MAY_TOUCH);
        assertThat(pair(
                                longer("pair: rod_bolts_to_case, way: blue, at_least: 0 mm, both_ways: yes"),
                                MovingPair.ROD_BOLTS_TO_CASE)
                        .limits())
                .as("no limit is held against what was not read")
                .isEmpty();
    }

    @Test
    void aMockUpOfAnotherThrowTellsNoMore() {
        String read = "pair: rod_bolts_to_case, way: clay, gap: 3.0 mm, both_ways: yes, ";
        Answer other = clear(longer(read + "with_stroke: 50.0 mm"));
        Clearance pair = pair(other, MovingPair.ROD_BOLTS_TO_CASE);
        assertThat(pair.state()).isEqualTo(State.UNKNOWN);
        assertThat(pair.mocked()).singleElement().satisfies(m -> {
            assertThat(m.counts()).isFalse();
            assertThat(m.said()).contains("stroke 50.0 mm", "56.50 mm");
        });
        assertThat(about(other, Finding.Kind.WARNING))
                .singleElement()
                .satisfies(f -> assertThat(f.mend()).contains("mock it up again"));
        for (String same : List.of("with_stroke: 56.5 mm", "with_stroke: 2.224 in", "with_rod_length: 86.4 mm")) {
            assertThat(pair(longer(read + same), MovingPair.ROD_BOLTS_TO_CASE).state())
                    .as(same)
                    .isEqualTo(State.CLEARS_COLD);
        }
        assertThat(pair(longer(read + "with_rod_length: 85.6 mm"), MovingPair.ROD_BOLTS_TO_CASE)
                        .state())
                .isEqualTo(State.UNKNOWN);
        assertThat(pair(
                                longer("pair: pushrod_to_tube, way: wire, gap: 1.0 mm, with_stroke: 50.0 mm"),
                                MovingPair.PUSHROD_TO_TUBE)
                        .state())
                .as("a throw has nothing to do with a pushrod")
                .isEqualTo(State.CLEARS_COLD);
    }

    /** A crankshaft that was taken from a catalogue and is not read yet was in no mock-up that does not say so. */
    @Test
    void aPartThatIsStillToComeWasNotInIt() {
        String sheet = LONGER.replace(
                "stroke: 56.50 mm ± 0.02 mm", "stroke: {catalogue: 56.50 mm, tolerance: 0.02 mm, by: a list}");
        assertThat(sheet).isNotEqualTo(LONGER);
        String taken = sheet + "\ntaken: [{part: crankshaft, code: M-565}]\n";
        String read = "pair: rod_bolts_to_case, way: clay, gap: 3.0 mm, both_ways: yes";
        Answer answer = clear(with(taken, read));
        assertThat(pair(answer, MovingPair.ROD_BOLTS_TO_CASE).state()).isEqualTo(State.UNKNOWN);
        assertThat(about(answer, Finding.Kind.WARNING)).hasSize(1);
        assertThat(pair(with(taken, read + ", with_stroke: 56.5 mm"), MovingPair.ROD_BOLTS_TO_CASE)
                        .state())
                .isEqualTo(State.CLEARS_COLD);
        assertThat(pair(with(taken, "pair: retainer_to_rocker, way: wire, gap: 1.5 mm"), MovingPair.RETAINER_TO_ROCKER)
                        .state())
                .isEqualTo(State.CLEARS_COLD);
    }

    /** Read since or not: an entry that does not say which part was in it may be from before. */
    @Test
    void aPartThatWasReadSinceWasInNoEntryThatDoesNotSaySo() {
        String read = "pair: piston_to_head, way: wire, gap: 1.0 mm, with_stroke: 56.5 mm";
        String rod = ", with_rod_length: 86.4 mm";
        String taken = LONGER + "\ntaken: [{part: connecting_rod, code: R-864}]\n";
        assertThat(mocked(taken, read).counts()).isFalse();
        assertThat(mocked(taken, read).said()).contains("another connecting rod was taken since");
        assertThat(mocked(taken, read + rod).said()).doesNotContain("tells no more");
        String ground = LONGER
                + "\ntaken: [{work: crankpin_offset_grind, code: W-1, amount: 3.25 mm, from: 50 mm, to: 56.5 mm}]\n";
        String bare = "pair: rod_bolts_to_case, way: clay, gap: 3.0 mm, both_ways: yes";
        assertThat(mocked(ground, bare).said()).contains("stroke was machined since");
        assertThat(mocked(ground, bare + ", with_stroke: 56.5 mm").said()).doesNotContain("tells no more");
    }

    @Test
    void withAnotherThrowThanTheDonorsAnEntryHasToSayItsOwn() {
        String read = "pair: rod_bolts_to_case, way: clay, gap: 3.0 mm, both_ways: yes";
        Answer answer = clear(with(LONGER, read));
        assertThat(pair(answer, MovingPair.ROD_BOLTS_TO_CASE).state()).isEqualTo(State.UNKNOWN);
        assertThat(about(answer, Finding.Kind.WARNING))
                .singleElement()
                .satisfies(f -> assertThat(f.message()).contains("donor's stroke is 50.00 mm", "56.50 mm"));
        String same = LONGER.replace("donor_stroke: 50.00 mm", "donor_stroke: 56.50 mm");
        assertThat(same).isNotEqualTo(LONGER);
        assertThat(pair(with(same, read), MovingPair.ROD_BOLTS_TO_CASE).state()).isEqualTo(State.CLEARS_COLD);
        assertThat(pair(with(LONGER, "pair: retainer_to_rocker, way: wire, gap: 1.5 mm"), MovingPair.RETAINER_TO_ROCKER)
                        .state())
                .as("a throw has nothing to do with a rocker")
                .isEqualTo(State.CLEARS_COLD);
    }

    /** The camshaft is known again by what it lifts, or by its core. */
    @Test
    void aMockUpOfAnotherCamshaftTellsNoMore() {
        String whole = ClearAnswerTest.whole();
        String read = "pair: intake_valve_to_piston, way: clay, gap: 1.0 mm, with_stroke: 55.39 mm";
        assertThat(mocked(whole, read + ", with_intake_lift: 9.9 mm").said())
                .contains("tells no more", "intake valve lift 9.9 mm");
        String taken = whole + "\ntaken: [{part: camshaft, code: C-1}]\n";
        assertThat(mocked(taken, read).said()).contains("another camshaft was taken since");
        assertThat(mocked(taken, read + ", with_intake_lift: 6.32 mm").said()).doesNotContain("another camshaft");
        assertThat(mocked(
                                taken,
                                "pair: dipper_to_cam_core, way: clay, both_ways: yes, gap: 1.0 mm, with_cam_core: 40 mm")
                        .said())
                .contains("camshaft core diameter 40 mm");
        assertThat(mocked(taken, "pair: rod_to_skirt, way: clay, both_ways: yes, gap: 2.0 mm, with_stroke: 55.39 mm")
                        .said())
                .as("no camshaft there")
                .doesNotContain("tells no more");
    }

    private static Clearance.Mocked mocked(String text, String entry) {
        String key = entry.substring("pair: ".length(), entry.indexOf(','));
        return pair(with(text, entry), MovingPair.at(key).orElseThrow())
                .mocked()
                .get(0);
    }

    @Test
    void aPairThatTheEngineDoesNotHaveIsSaid() {
        Answer answer = clear(longer("pair: valve_to_head, way: clay, gap: 1.0 mm"));
        assertThat(about(answer, Finding.Kind.WARNING))
                .singleElement()
                .satisfies(f -> assertThat(f.message()).contains("has no such pair"));
    }

    // ---- beside a drawing

    /** The skirt is drawn 1.65 mm from the counterweight, closely; clay that reads about as much agrees, and the drawing is the surer. */
    @Test
    void whereBothAgreeTheSurerCounts() {
        Answer answer = clear(longer("pair: skirt_to_counterweight, way: clay, gap: 1.6 mm, both_ways: yes"));
        Clearance drawn = pair(LONGER, MovingPair.SKIRT_TO_COUNTERWEIGHT);
        Clearance both = pair(answer, MovingPair.SKIRT_TO_COUNTERWEIGHT);
        assertThat(both.cold()).isEqualTo(drawn.cold());
        assertThat(both.state()).isEqualTo(drawn.state());
        assertThat(both.why()).contains("which agrees");
        assertThat(both.mocked()).singleElement().matches(m -> !m.counts());
        assertThat(about(answer, Finding.Kind.SUSPECT)).isEmpty();
        Clearance surer = pair(
                longer("pair: skirt_to_counterweight, way: feeler, gap: 1.64 mm ± 0.01 mm, both_ways: yes"),
                MovingPair.SKIRT_TO_COUNTERWEIGHT);
        assertThat(cold(surer).value()).isCloseTo(1.64e-3, within(1e-9));
        assertThat(surer.mocked()).singleElement().matches(Clearance.Mocked::counts);
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.9, 2.6})
    void whereTheyDoNotAgreeTheSmallerCountsAndBothAreNamed(double millimetres) {
        Answer answer =
                clear(longer("pair: skirt_to_counterweight, way: clay, gap: " + millimetres + " mm, both_ways: yes"));
        Clearance pair = pair(answer, MovingPair.SKIRT_TO_COUNTERWEIGHT);
        assertThat(cold(pair).value()).isCloseTo(Math.min(millimetres, 1.65) * 1e-3, within(0.005e-3));
        assertThat(about(answer, Finding.Kind.SUSPECT)).singleElement().satisfies(f -> {
            assertThat(f.message()).contains(String.valueOf(millimetres), "1.65", "the smaller counts");
            assertThat(f.mend())
                    .contains("counterweight radius")
                    .matches(
                            millimetres < 1.65
                                    ? "read [a-z -]+ again first, which owns the most .* mock it up again; .*"
                                    : "mock it up again first: .*");
        });
        assertThat(pair.why()).contains("does not agree");
    }

    /** Running, what was read is less by what the drawing closes. */
    @Test
    void theDrawingSaysHowMuchItClosesRunning() {
        String whole = ClearAnswerTest.whole();
        Clearance drawn = pair(whole, MovingPair.SKIRT_TO_COUNTERWEIGHT);
        double gap = cold(drawn).value();
        double closes = gap - drawn.running().orElseThrow().value();
        assertThat(closes).isPositive();
        Clearance read = pair(
                with(
                        whole,
                        String.format(
                                Locale.ROOT,
                                "pair: skirt_to_counterweight, way: feeler, gap: %.3f mm ± 0.002 mm, both_ways: yes, with_stroke: 55.39 mm",
                                1e3 * gap)),
                MovingPair.SKIRT_TO_COUNTERWEIGHT);
        assertThat(cold(read).way()).isEqualTo(Way.MOCKED_UP);
        assertThat(read.running().orElseThrow().value()).isCloseTo(gap - closes, within(1e-6));
        assertThat(read.running().orElseThrow().worst()).isLessThan(cold(read).worst() - closes + 1e-9);
    }

    // ---- by angle

    private static String rows(Clearance drawn, double shiftMillimetres, int from, int to, int off) {
        StringBuilder rows = new StringBuilder();
        for (Clearance.AtAngle at : drawn.curve()) {
            long degrees = Math.round(Math.toDegrees(at.angle()));
            if (degrees >= from && degrees <= to) {
                rows.append(rows.isEmpty() ? "" : ", ")
                        .append(String.format(
                                Locale.ROOT,
                                "%d°: %.3f mm",
                                degrees,
                                1e3 * at.gap() + shiftMillimetres - (degrees == off ? 1 : 0)));
            }
        }
        return "rows: {" + rows + "}";
    }

    @Test
    void softSpringsMoveTheDrawnCurveToWhereTheyRead() {
        String whole = ClearAnswerTest.whole();
        Clearance drawn = pair(whole, MovingPair.INTAKE_VALVE_TO_PISTON);
        int least = (int) Math.round(Math.toDegrees(cold(drawn).angle()));
        String entry = "pair: intake_valve_to_piston, way: soft_spring, with_stroke: 55.39 mm, ";
        String even = rows(drawn, -0.4, least - 14, least + 14, -1);
        Answer answer = clear(with(whole, entry + even));
        Clearance read = pair(answer, MovingPair.INTAKE_VALVE_TO_PISTON);
        String said = read.mocked().get(0).said();
        assertThat(said).contains("least at ", "moved by -0.40 mm");
        assertThat(cold(read).value()).isCloseTo(cold(drawn).value() - 0.4e-3, within(0.01e-3));
        assertThat(Math.toDegrees(cold(read).angle())).isCloseTo(least, within(2.0));
        assertThat(about(answer, Finding.Kind.SUSPECT))
                .allMatch(f -> !f.message().contains("shape"));

        Answer slip = clear(with(whole, entry + rows(drawn, -0.4, least - 14, least + 14, nearest(drawn, least))));
        assertThat(about(slip, Finding.Kind.SUSPECT))
                .anyMatch(f -> f.message().contains("do not go with the shape of the drawn curve"));
        assertThat(cold(pair(slip, MovingPair.INTAKE_VALVE_TO_PISTON)).value())
                .as("the smallest read counts till then")
                .isLessThan(cold(drawn).value() - 1.2e-3);
    }

    private static int nearest(Clearance drawn, int degrees) {
        return drawn.curve().stream()
                .map(at -> (int) Math.round(Math.toDegrees(at.angle())))
                .min(java.util.Comparator.comparingInt(d -> Math.abs(d - degrees)))
                .orElseThrow();
    }

    /** Gaps of 2 mm + 0.002 mm for each square degree from 93°, by hand: the parabola's least is 2.000 mm at 93°. */
    @Test
    void withoutADrawingTheParabolaThroughTheSmallestTells() {
        Clearance read = pair(
                longer("pair: rod_to_skirt, way: wire, both_ways: yes,"
                        + " rows: {85°: 2.128 mm, 90°: 2.018 mm, 95°: 2.008 mm, 100°: 2.098 mm}"),
                MovingPair.ROD_TO_SKIRT);
        assertThat(cold(read).value()).isCloseTo(2.0e-3, within(1e-8));
        assertThat(Math.toDegrees(cold(read).angle())).isCloseTo(93, within(1e-6));
        assertThat(read.state()).isEqualTo(State.CLEARS_COLD);
        Clearance open = pair(
                longer("pair: rod_to_skirt, way: wire, both_ways: yes,"
                        + " rows: {85°: 2.4 mm, 90°: 2.2 mm, 95°: 2.0 mm}"),
                MovingPair.ROD_TO_SKIRT);
        assertThat(open.state()).isEqualTo(State.CLOSE);
        assertThat(open.why()).contains("may be smaller beyond");
    }

    // ---- how close

    /**
     * By hand: clay comes again within 1.96 hypot(0.08, 0.01 / √12) = 0.157 mm, wire within 0.098 mm, soft springs within 0.098 mm, a feeler (steps of 0.02 mm) within 0.0226 mm; a bench table that says
     * 0.02 mm of clay makes it 0.040 mm.
     */
    @ParameterizedTest
    @CsvSource({"clay, 0.157", "wire, 0.098", "feeler, 0.0226"})
    void aDoubtThatItsWayDoesNotAllowIsRaised(String way, double least) {
        String read = "pair: rod_to_skirt, both_ways: yes, way: " + way + ", gap: 2.0 mm ± ";
        Answer answer = clear(longer(read + "0.000001 mm"));
        Clearance.Gap gap = cold(pair(answer, MovingPair.ROD_TO_SKIRT));
        assertThat(1e3 * (gap.high() - gap.value())).isCloseTo(least, within(0.001));
        assertThat(about(answer, Finding.Kind.WARNING))
                .singleElement()
                .satisfies(f -> assertThat(f.message()).contains("one reading comes again within"));
        Answer wide = clear(longer(read + "0.3 mm"));
        assertThat(1e3 * cold(pair(wide, MovingPair.ROD_TO_SKIRT)).high()).isCloseTo(2.3, within(0.001));
        assertThat(about(wide, Finding.Kind.WARNING)).isEmpty();
        Answer own = clear(
                with(LONGER + "\nbench: {clay: {repeatability: 0.02 mm}}", read + "0.001 mm, with_stroke: 56.5 mm"));
        if (way.equals("clay")) {
            assertThat(1e3 * cold(pair(own, MovingPair.ROD_TO_SKIRT)).high()).isCloseTo(2.040, within(0.001));
        }
    }

    // ---- which way is safe

    /** A smaller reading never makes a better state, and no reading makes a drawn gap larger. */
    @Test
    void aSmallerReadingNeverLooksBetter() {
        for (MovingPair pair : List.of(MovingPair.ROD_BOLTS_TO_CASE, MovingPair.SKIRT_TO_COUNTERWEIGHT)) {
            Optional<State> last = Optional.empty();
            double drawn = pair(LONGER, pair).cold().map(Clearance.Gap::value).orElse(Double.POSITIVE_INFINITY);
            for (double gap : new double[] {6, 3, 2, 1.7, 1.5, 1.3, 1, 0.6, 0.3, 0.15, 0.05, 0}) {
                Clearance read =
                        pair(longer("pair: " + pair.key() + ", way: clay, both_ways: yes, gap: " + gap + " mm"), pair);
                State now = read.state();
                last.ifPresent(before -> assertThat(now.compareTo(before))
                        .as(pair + " at " + gap)
                        .isLessThanOrEqualTo(0));
                last = Optional.of(now);
                assertThat(cold(read).value()).isLessThanOrEqualTo(drawn + 0.2e-3);
            }
            assertThat(last).contains(State.TOUCHES);
        }
    }

    @Test
    void readingsThatLieFarApartCountByTheSmallest() {
        Answer answer = clear(longer("pair: rod_to_skirt, way: wire, both_ways: yes, gap: [1.0 mm, 2.5 mm]"));
        assertThat(cold(pair(answer, MovingPair.ROD_TO_SKIRT)).value()).isCloseTo(1e-3, within(1e-9));
        assertThat(about(answer, Finding.Kind.SUSPECT)).hasSize(1);
    }

    // ---- read too poorly, which is not too close

    /** Blue without a mark, one way of the end play only: no room was shown to be missing, so the stop asks for a better reading and holds back what it held. */
    @Test
    void whatWasReadPoorlyIsToBeReadBetterAndNotToBeGivenRoom() {
        for (String entry : List.of(
                "pair: pushrod_to_tube, way: blue, at_least: 0 mm",
                "pair: rod_bolts_to_case, way: wire, gap: 9.0 mm, both_ways: no")) {
            Answer answer = clear(longer(entry));
            assertThat(answer.stops())
                    .as(entry)
                    .filteredOn(GapStops::isReadPoorly)
                    .singleElement()
                    .satisfies(stop -> {
                        assertThat(stop.what()).startsWith("do not run it before it is read better: ");
                        assertThat(stop.what()).doesNotContain("too close");
                        assertThat(stop.wayRound()).containsAnyOf("pass a wire or a feeler", "mock it up again");
                        assertThat(GapStops.isOfAGap(stop)).isTrue();
                        assertThat(GapStops.pair(stop)).endsWith("may be closer than was read");
                    });
        }
        Answer near = clear(longer("pair: rod_bolts_to_case, way: wire, gap: 0.9 mm, both_ways: yes"));
        assertThat(near.stops()).noneMatch(GapStops::isReadPoorly);
        assertThat(near.stops())
                .anyMatch(s -> s.what().startsWith("do not run it before there is more room: rod bolts"));
    }

    // ---- a traced rod holds its bolts

    private static final String ROD =
            "outlines:\n  - {part: connecting_rod, unit: 1 mm, from: -12 mm, to: 12 mm, doubt: 0.3 mm, points: [[-25, -24], [25, -24],"
                    + " [25, 13], [13, 26], [10, 60], [12, 75], [12, 98], [-12, 98], [-12, 75], [-10, 60], [-13, 26], [-25, 13]]}\n";

    private static Answer traced(String gap) {
        return clear(with(
                ClearAnswerTest.whole() + ROD,
                "pair: rod_bolts_to_cam_core, way: clay, gap: " + gap + ", both_ways: yes, with_stroke: 55.40 mm"));
    }

    @Test
    void whatWasReadAtTheBoltsCountsForTheTracedRod() {
        Gap drawn = pair(ClearAnswerTest.whole() + ROD, MovingPair.BIG_END_TO_CAM_CORE)
                .cold()
                .orElseThrow();
        double nearer = 1e3 * drawn.value() - 1.5;
        Answer answer = traced(String.format(java.util.Locale.ROOT, "%.2f mm", nearer));
        Clearance rod = pair(answer, MovingPair.BIG_END_TO_CAM_CORE);
        assertThat(1e3 * rod.cold().orElseThrow().value()).isCloseTo(nearer, within(0.01));
        assertThat(rod.mocked())
                .singleElement()
                .satisfies(m -> assertThat(m.counts()).isTrue());
        Clearance alone = pair(
                with(
                        LONGER + ROD,
                        "pair: rod_bolts_to_cam_core, way: clay, gap: 5.0 mm, both_ways: yes, with_stroke: 56.5 mm"),
                MovingPair.BIG_END_TO_CAM_CORE);
        assertThat(alone.state())
                .as("nothing is drawn that tells of the rest of the rod")
                .isEqualTo(State.CLOSE);
        assertThat(alone.why()).contains("the rest of the rod was not");
        assertThat(answer.findings())
                .filteredOn(f -> f.where().equals("mocked_up[1]") && f.kind() == Finding.Kind.NOTE)
                .singleElement()
                .satisfies(
                        f -> assertThat(f.message()).contains("big_end_to_cam_core", "the traced rod holds its bolts"));
        assertThat(answer.findings()).noneMatch(f -> f.message().contains("no such pair"));
    }

    /** Another place of the rod may be nearer: far bolts say nothing against the drawing, and the smaller gap stands. */
    @Test
    void boltsThatAreFarSayNothingOfTheRestOfTheRod() {
        Gap drawn = pair(ClearAnswerTest.whole() + ROD, MovingPair.BIG_END_TO_CAM_CORE)
                .cold()
                .orElseThrow();
        Answer answer = traced(String.format(java.util.Locale.ROOT, "%.2f mm", 1e3 * drawn.value() + 6));
        Clearance rod = pair(answer, MovingPair.BIG_END_TO_CAM_CORE);
        assertThat(rod.cold().orElseThrow().value()).isEqualTo(drawn.value());
        assertThat(rod.why()).contains("the rest of the rod comes nearer");
        assertThat(answer.findings()).noneMatch(f -> f.message().contains("One of the two is wrong"));
    }

    // ---- in one sentence

    @Test
    void whatItComesToIsSaidInOneSentence() {
        assertThat(Clear.inShort(clear(LONGER)))
                .matches("not to be turned under power before \\d+ of \\d+ gaps are known");
        assertThat(Clear.inShort(clear(longer("pair: skirt_to_counterweight, way: blue, gap: touches"))))
                .matches("not to be turned with the starter: 1 pair touches; \\d+ of \\d+ gaps not known");
        String stock = """
                longthrow: 1
                engine: {name: Stock, invented: yes, valves: overhead}
                crankshaft: {stroke: 50.00 mm ± 0.02 mm, donor_stroke: 50.00 mm ± 0.02 mm}
                use: {governed_speed: {specified: 3600 rpm, by: the engine's plate}, wanted_speed: 3600 rpm}
                """;
        assertThat(Clear.inShort(clear(stock)))
                .matches("(\\d+) of \\1 gaps not known; the maker vouches for them up to 3600 rpm");
    }
}
