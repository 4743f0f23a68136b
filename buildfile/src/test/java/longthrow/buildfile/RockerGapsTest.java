package longthrow.buildfile;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Optional;
import longthrow.core.answer.Clearance;
import longthrow.core.answer.Clearance.State;
import longthrow.core.answer.Rung;
import longthrow.core.clear.Clear;
import longthrow.core.measurement.Measured;
import longthrow.core.term.MovingPair;
import longthrow.core.term.Term;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Pushrod in its tube and retainer under its rocker, by numbers worked by hand. Every figure is invented, each given to 0.001 mm so that only what is taken for granted
 * is in doubt.
 */
class RockerGapsTest {
    /** All that is promised of a gap [m]. */
    private static final double PROMISED = 0.01e-3;

    private static final String ENGINE = """
            longthrow: 1
            engine: {name: invented, valves: overhead}
            camshaft:
              drive: in_case
              checking_lift: 1.27 mm ± 0.001 mm
              intake_opens: 5° ± 0.1°
              intake_closes: 35° ± 0.1°
              exhaust_opens: 36° ± 0.1°
              exhaust_closes: 4° ± 0.1°
            intake_valve: {lift: 6.30 mm ± 0.001 mm, lash: 0 mm ± 0.001 mm}
            exhaust_valve: {lift: 6.30 mm ± 0.001 mm, lash: 0 mm ± 0.001 mm}
            valve_spring:
              retainer_diameter: 24.0 mm ± 0.001 mm
              retainer_below_tip: 3.00 mm ± 0.001 mm
            rocker:
              pushrod_arm: 16.5 mm ± 0.001 mm
              valve_arm: 25.5 mm ± 0.001 mm
              pushrod_arm_low: 0° ± 0.01°
              retainer_gap_shut: 1.40 mm ± 0.001 mm
              retainer_gap_open: 0.95 mm ± 0.001 mm
            pushrod:
              length: 120.0 mm ± 0.001 mm
              outside_diameter: 6.00 mm ± 0.001 mm
              tube_inside_diameter: 10.50 mm ± 0.001 mm
              tube_lower_end: 40.0 mm ± 0.001 mm
              tube_upper_end: 96.0 mm ± 0.001 mm
              foot_off: 0 mm ± 0.001 mm
              foot_beside: 0 mm ± 0.001 mm
              tip_off: 0 mm ± 0.001 mm
              tip_beside: 0 mm ± 0.001 mm
            lift_tables:
              - valve: intake
                at: valve
                rows: {0°: 6.30 mm, 15°: 6.18 mm, 30°: 5.75 mm, 45°: 5.08 mm, 60°: 4.23 mm, 75°: 3.28 mm, 90°: 2.33 mm, 105°: 1.48 mm, 120°: 0.78 mm, 135°: 0.31 mm, 150°: 0.06 mm, 160°: 0 mm}
              - valve: exhaust
                at: valve
                rows: {0°: 6.30 mm, 15°: 6.18 mm, 30°: 5.75 mm, 45°: 5.08 mm, 60°: 4.23 mm, 75°: 3.28 mm, 90°: 2.33 mm, 105°: 1.48 mm, 120°: 0.78 mm, 135°: 0.31 mm, 150°: 0.06 mm, 160°: 0 mm}
            use: {oil_temperature: 100 °C ± 1 °C}
            """;

    private static String with(String text, String key, String figure) {
        String changed = text.replaceAll("(\\b" + key + ": )-?[0-9.]+ ?(mm|°)", "$1" + figure + "$2");
        assertThat(changed).as(key + " is there and changes").isNotEqualTo(text);
        return changed;
    }

    private static Optional<Clearance> pair(String text, MovingPair pair) {
        return Clear.of(ClearAnswerTest.build(text)).clearances().stream()
                .filter(p -> p.key().equals(pair.key()))
                .findFirst();
    }

    private static Clearance rod(String text) {
        return pair(text, MovingPair.PUSHROD_TO_TUBE).orElseThrow();
    }

    private static Clearance retainer(String text) {
        return pair(text, MovingPair.RETAINER_TO_ROCKER).orElseThrow();
    }

    private static double cold(Clearance pair) {
        return pair.cold().orElseThrow(() -> new AssertionError(pair.why())).value();
    }

    /**
     * By hand: the ends' centres are 3 mm inside, so 114 mm apart, and the tube's ends 37/114 and 93/114 of the way up. Off 0.6 below and -0.8 above, beside 0.3 and -0.4: at the
     * upper end off 0.6 - 1.4 x 93/114 = -0.54211 and beside 0.3 - 0.7 x 93/114 = -0.27105, so 0.60609 mm from the middle line; at the lower end 0.16280. Cut square to the
     * tube the rod is sqrt(1 + (1.4² + 0.7²)/114²) of 3 mm = 3.00028 mm to its edge: 5.25 - 3.00028 - 0.60609 = 1.64363 mm. As the valve opens the rod goes up, so that the tube's
     * end comes nearer the middle, and its tip towards the pivot, where its offset is already. The rocker turns by 2 asin(3.15/25.5) = 0.24770: its arm of 16.5 mm, square with the valve shut, carries the tip
     * 16.5 (1 - cos 0.24770) = 0.50360 mm across and 16.5 sin 0.24770 = 4.04550 mm up. There the upper end is (93 - 4.0455)/114 = 0.78030 of the way: off 0.6 - 1.9036 x 0.78030 = -0.88538,
     * beside 0.3 - 0.7 x 0.78030 = -0.24621, 0.91898 mm from the middle line: 1.33074 mm are left.
     */
    @Test
    void aRodIsOffItsTubeAsFarAsItsEndsAndTheRockersArcSay() {
        String leaning = with(
                with(with(with(ENGINE, "foot_off", "0.6"), "foot_beside", "0.3"), "tip_off", "-0.8"),
                "tip_beside",
                "-0.4");
        Clearance pair = rod(leaning);
        assertThat(cold(pair)).isCloseTo(1.33074e-3, within(PROMISED));
        // lift is full at the intake's centre after overlap, or at the exhaust's before: both sway the rod alike
        assertThat(pair.curve().get(0).gap()).as("both shut at 0°").isCloseTo(1.64363e-3, within(PROMISED));
        assertThat(pair.cold().orElseThrow().shares()).isNotEmpty();
        assertThat(pair.state()).isEqualTo(State.CLEARS);
    }

    /** By hand as above, ends on the middle line: the tip goes 0.50360 mm across, 0.78030 of which is met at the tube's upper end; 5.25 - 3 - 0.39296 = 1.85704 mm. */
    @Test
    void aRodThatStandsInTheMiddleLeansByTheArcAlone() {
        assertThat(cold(rod(ENGINE))).isCloseTo(1.85704e-3, within(PROMISED));
    }

    /**
     * By hand: with its end as low at the shut valve as it gets high, 0.12385 rad = 7.0961°, the arc goes out and back. Halfway it is 16.5 (1 - cos 0.12385) = 0.12638 mm farther from the pivot; the rod has then risen
     * 16.5 sin 0.12385 = 2.0384 mm, and (93 - 2.0384)/114 = 0.79791 of it is met: 5.25 - 3 - 0.10084 = 2.14916 mm.
     */
    @Test
    void aRockerThatIsSquareAtHalfLiftSwaysTheRodLeast() {
        assertThat(cold(rod(with(ENGINE, "pushrod_arm_low", "7.0961")))).isCloseTo(2.14916e-3, within(PROMISED));
    }

    /** By hand: 22.5 in a million a kelvin on 3 mm through 80 K: 0.0054 mm, and the tube stands. */
    @Test
    void runningTheRodIsThicker() {
        Clearance pair = rod(ENGINE);
        double closes = cold(pair) - pair.running().orElseThrow().value();
        assertThat(closes).isBetween(0.0051e-3, 0.0057e-3);
        assertThat(Clear.of(ClearAnswerTest.build(ENGINE)).defaults())
                .anyMatch(d -> d.what().contains("grow as aluminium in warm oil"));
    }

    /** A thicker rod leaves half as much less: 10.50 - 9.80 leaves 0.35 mm in the middle, and the arc sways it into the wall. */
    @Test
    void aRodThatSwaysIntoItsTubeTouches() {
        Clearance pair = rod(with(ENGINE, "outside_diameter", "9.80"));
        assertThat(pair.state()).isEqualTo(State.TOUCHES);
        assertThat(pair.mend()).contains("open the tube by");
        assertThat(cold(pair)).isNegative();
    }

    /** Lower limit of the trade, 0.5 mm: 10.50 - 8.80 leaves 0.85 - 0.39 mm. */
    @Test
    void aRodThatComesCloserThanTheTradeWantsIsClose() {
        Clearance pair = rod(with(ENGINE, "outside_diameter", "8.80"));
        assertThat(cold(pair)).isBetween(0.44e-3, 0.47e-3);
        assertThat(pair.state()).isEqualTo(State.CLOSE);
        assertThat(pair.limits()).allSatisfy(limit -> assertThat(limit.least()).isCloseTo(0.5e-3, within(1e-12)));
    }

    /** What was read is what is told: least where the wedge of both readings comes down. Between them no gap is less. */
    @Test
    void aRetainerKeepsTheGapsThatWereReadShutAndOpen() {
        Clearance pair = retainer(ENGINE);
        assertThat(cold(pair)).isCloseTo(0.95e-3, within(PROMISED));
        assertThat(pair.curve().get(0).gap()).as("shut").isCloseTo(1.40e-3, within(PROMISED));
        assertThat(pair.curve().stream()
                        .mapToDouble(Clearance.AtAngle::gap)
                        .min()
                        .orElseThrow())
                .isCloseTo(0.95e-3, within(0.02e-3)); // steps of 4 degrees beside full lift
        assertThat(pair.state()).isEqualTo(State.CLEARS);
        Clearance shut = retainer(with(ENGINE, "retainer_gap_open", "2.20"));
        assertThat(cold(shut)).isCloseTo(1.40e-3, within(PROMISED));
        // 22.5 in a million of 24 mm through 80 K: 0.043 mm
        assertThat(cold(pair) - pair.running().orElseThrow().value()).isBetween(0.041e-3, 0.046e-3);
    }

    /**
     * By hand: with a lash of 0.40 mm the valve opens to 6.70 mm where the lash is gone. The rocker, square at 3.15 mm, has turned by asin(3.55/25.5) + 0.12385 = 0.26352, which is 0.01582 more than
     * at 6.30 mm. The corner of both readings stands beyond the tip by x where 1.40 - x tan 0.2477 (about) has come to 0.95: some 1.9 mm; the rocker reaches far beyond the rim, and the rim is 12 mm
     * away from the tip: there it comes down by 12 x 0.0158 = 0.19 mm more, and by the growth of 0.043 mm.
     */
    @Test
    void runningTheLashMayBeGone() {
        String loose = ENGINE.replace("lash: 0 mm", "lash: 0.40 mm");
        Clearance pair = retainer(loose);
        assertThat(cold(pair)).isCloseTo(0.95e-3, within(PROMISED));
        assertThat(cold(pair) - pair.running().orElseThrow().value()).isBetween(0.21e-3, 0.26e-3);
        Clearance unread = retainer(without(Term.INTAKE_LASH));
        assertThat(cold(unread)).isCloseTo(0.95e-3, within(PROMISED));
        assertThat(unread.running()).isEmpty();
    }

    /** Within 2° the lifter may go beside its tube as well: 4.05 mm up, 0.14 mm aside, of which 0.22 is met at the upper end and 0.71 at the lower. */
    @Test
    void whichWayTheLifterGoesIsInTheDoubt() {
        assertThat(rod(ENGINE).cold().orElseThrow().shares())
                .extracting(Measured.Share::owner)
                .anyMatch(owner -> owner.contains("lifter"));
    }

    /** An arm that is shorter than the valve's lift asks of it makes no rocker: that is said, no gap is told. */
    @Test
    void anArmTooShortForTheLiftTellsNothing() {
        String untabled = ENGINE.substring(0, ENGINE.indexOf("lift_tables"));
        String shortArm = with(
                untabled.replace("6.30 mm ± 0.001 mm, lash: 0 mm", "15.90 mm ± 0.001 mm, lash: 0.9 mm"),
                "valve_arm",
                "10.0");
        assertThat(rod(shortArm).state()).isEqualTo(State.UNKNOWN);
        assertThat(rod(shortArm).cold()).isEmpty();
        assertThat(rod(shortArm).why()).contains("so short an arm");
    }

    /** A tube whose upper end is read below its lower one tells nothing, and both readings are named. */
    @Test
    void aTubeUpsideDownTellsNothing() {
        String upsideDown = with(ENGINE, "tube_upper_end", "30.0");
        assertThat(rod(upsideDown).state()).isEqualTo(State.UNKNOWN);
        assertThat(Clear.of(ClearAnswerTest.build(upsideDown)).findings())
                .anyMatch(f -> f.message().contains("the tube would end below where it begins"));
    }

    @Test
    void aRetainerThatMeetsItsRockerAtFullLiftTouches() {
        Clearance pair = retainer(with(ENGINE, "retainer_gap_open", "0"));
        assertThat(pair.state()).isIn(State.MAY_TOUCH, State.TOUCHES);
        assertThat(retainer(with(ENGINE, "retainer_gap_open", "0.3")).state()).isEqualTo(State.CLOSE);
    }

    /** Shut alone tells nothing of the far side: drawn flat across the rim 12 mm from the tip, it comes down by 12 sin 0.2477 = 2.9 mm of 1.4. */
    @Test
    void readShutAloneItIsDrawnLargerThanItCanBe() {
        Clearance pair = retainer(ENGINE.replaceAll("  retainer_gap_open.*\\n", ""));
        assertThat(pair.state()).isEqualTo(State.UNKNOWN);
        assertThat(pair.why()).contains("drawn flat across all of it");
        assertThat(pair.mend()).contains("rocker.retainer_gap_open");
        // with room enough even so it clears
        String open = ENGINE.replaceAll("  retainer_gap_open.*\\n", "")
                .replace("retainer_gap_shut: 1.40", "retainer_gap_shut: 5.00");
        assertThat(retainer(open).state()).isEqualTo(State.CLEARS);
    }

    /** Nothing is put in the place of a reading that is not there. */
    @ParameterizedTest
    @EnumSource(
            value = Term.class,
            names = {
                "INTAKE_LIFT",
                "EXHAUST_LIFT",
                "INTAKE_LASH",
                "EXHAUST_LASH",
                "ROCKER_VALVE_ARM",
                "ROCKER_PUSHROD_ARM",
                "ROCKER_PUSHROD_LOW",
                "PUSHROD_LENGTH",
                "PUSHROD_OUTSIDE",
                "TUBE_INSIDE",
                "TUBE_FROM",
                "TUBE_TO",
                "PUSHROD_FOOT_OFF",
                "PUSHROD_FOOT_BESIDE",
                "PUSHROD_TIP_OFF",
                "PUSHROD_TIP_BESIDE"
            })
    void withoutAnyOneOfItsReadingsAPushrodIsUnknown(Term term) {
        String less = without(term);
        Clearance pair = rod(less);
        assertThat(pair.state()).isEqualTo(State.UNKNOWN);
        assertThat(pair.missing()).extracting(Rung.Missing::where).contains(term.path());
    }

    @ParameterizedTest
    @EnumSource(
            value = Term.class,
            names = {
                "INTAKE_LIFT",
                "EXHAUST_LIFT",
                "ROCKER_VALVE_ARM",
                "RETAINER_OUTSIDE",
                "RETAINER_BELOW_TIP",
                "ROCKER_OVER_RETAINER"
            })
    void withoutAnyOneOfItsReadingsARetainerIsUnknown(Term term) {
        Clearance pair = retainer(without(term));
        assertThat(pair.state()).isEqualTo(State.UNKNOWN);
        assertThat(pair.missing()).extracting(Rung.Missing::where).contains(term.path());
    }

    /** The tables tell a full lift, so they go with it. */
    private static String without(Term term) {
        String text = term == Term.INTAKE_LIFT || term == Term.EXHAUST_LIFT
                ? ENGINE.substring(0, ENGINE.indexOf("lift_tables")) + "use: {oil_temperature: 100 °C ± 1 °C}\n"
                : ENGINE;
        int section = text.indexOf("\n" + term.part().key() + ":") + 1;
        int end = text.indexOf("\n", text.indexOf(term.key() + ": ", section));
        int from = text.indexOf(term.key() + ": ", section);
        String figure = text.substring(from, end);
        String one = figure.contains(",") ? figure.substring(0, figure.indexOf(',') + 1) : figure.replace("}", "");
        return text.substring(0, from)
                + (figure.contains(",") || !figure.endsWith("}") ? "" : "head_diameter: 27 mm")
                + text.substring(from + one.length());
    }

    /** Where the exhaust opens is of no matter for how near its pushrod comes: the angles are then the intake's, aloud. */
    @Test
    void oneValveMayTellTheAngles() {
        String less = ENGINE.replaceAll("  exhaust_(opens|closes).*\\n", "");
        assertThat(cold(rod(less))).isCloseTo(1.85704e-3, within(PROMISED));
        assertThat(Clear.of(ClearAnswerTest.build(less)).defaults())
                .anyMatch(d -> d.what().contains("at the angles of the intake valve alone"));
    }

    @Test
    void whereThereIsNoPushrodThereIsNoPair() {
        String noPushrod = ENGINE.replaceFirst("pushrod:\\n(  .*\\n)*", "");
        String side = noPushrod.replace("valves: overhead", "valves: side").replaceFirst("rocker:\\n(  .*\\n)*", "");
        assertThat(pair(side, MovingPair.PUSHROD_TO_TUBE)).isEmpty();
        assertThat(pair(side, MovingPair.RETAINER_TO_ROCKER)).isEmpty();
        String overhead = noPushrod.replace("drive: in_case", "drive: overhead_chain");
        assertThat(pair(overhead, MovingPair.PUSHROD_TO_TUBE)).isEmpty();
        assertThat(cold(retainer(overhead))).isCloseTo(0.95e-3, within(PROMISED));
    }

    /**
     * A rocker traced with its nose end 8 mm beyond the end of the stem, 1 mm over it, and a retainer whose rim lies 3 mm under it. By hand: square at half lift the pivot stands 25.5 cos 0.12385 = 25.3047 mm aside and
     * 25.5 sin 0.12385 = 3.15 mm below. Turned by 0.24770 the nose's end, 33.3047 and 4.15 from the pivot, is at 33.3047 cos + 4.15 sin = 33.3055 and 4.15 cos - 33.3047 sin = -4.1439; the rim went down by 6.3
     * to -9.3 + 3.15 = -6.15 from the pivot's level: 2.006 mm over it.
     */
    @Test
    void aTracedRockerTurnsAboutItsPivot() {
        String traced = ENGINE.replaceAll("  retainer_gap_.*\\n", "") + """
                outlines:
                  - part: rocker
                    unit: 1 mm
                    doubt: 0.1 mm
                    points:
                      - 0, 0
                      - 8, 1
                      - 8, 9
                      - -26, 9
                      - -26, 3
                      - -2, 0.2
                  - part: spring_retainer
                    unit: 1 mm
                    doubt: 0.1 mm
                    points:
                      - -12, -3
                      - -12, -6
                      - 12, -6
                      - 12, -3
                      - 4, -3
                      - 4, -4.5
                      - -4, -4.5
                      - -4, -3
                """;
        Clearance pair = retainer(traced);
        assertThat(cold(pair)).isCloseTo(2.006e-3, within(PROMISED));
        assertThat(pair.state()).isEqualTo(State.CLEARS);
    }

    @ParameterizedTest
    @ValueSource(strings = {"pushrod", "camshaft_core", "sleeve_end"})
    void whatNoPlaneOutlineTellsIsRefusedWithTheReason(String part) {
        String text =
                ENGINE + "outlines:\n  - part: " + part + "\n    unit: 1 mm\n    points: [[0, 0], [9, 0], [9, 9]]\n";
        assertThat(BuildFile.read(text).faults().toString()).contains(part).contains("is not traced");
    }

    private static final String TIP_ALONE =
            "outlines: [{part: rocker, unit: 1 mm, points: [[-3,0.2],[0,0],[3,0.2],[3,3],[-3,3]]}]\n";

    private static final String WHOLE_ROCKER = "[[-30,0],[-20,8],[0,9],[4,4],[3,0.5],[0,0],[-3,0.5],[-10,-2]]";

    /** What was read as touching touches, however it is drawn: a larger gap read shut, its tip traced alone, all of it traced, or in another unit. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                "shut 4",
                "shut 15",
                TIP_ALONE,
                "outlines: [{part: rocker, unit: 1 mm, points: " + WHOLE_ROCKER + "}]\n",
                "outlines: [{part: rocker, unit: 0.1 mm, points: " + WHOLE_ROCKER + "}]\n",
                "outlines: [{part: rocker, unit: 0.4 mm, points: " + WHOLE_ROCKER + "}]\n"
            })
    void noDrawingMakesMoreOfAGapThanWasRead(String said) {
        String touching = with(ENGINE, "retainer_gap_open", "0");
        String text = said.startsWith("shut ")
                ? with(touching, "retainer_gap_shut", said.substring("shut ".length()))
                : touching + said;
        Clearance pair = retainer(text);
        assertThat(pair.state()).as(pair.why()).isEqualTo(State.TOUCHES);
        assertThat(pair.cold().orElseThrow().value()).isNotPositive();
    }

    /** By the same sums a gap that was read and is none the less is no less than it was read. */
    @Test
    void aReadingThatAgreesWithItsDrawingIsLeftToTheDrawing() {
        Clearance pair = retainer(ENGINE);
        assertThat(pair.cold().orElseThrow().way()).isEqualTo(Clearance.Way.IN_PLANE);
        assertThat(Clear.of(ClearAnswerTest.build(ENGINE)).findings())
                .noneMatch(f -> f.message().contains("cannot be more than was read"));
    }

    @ParameterizedTest
    @ValueSource(strings = {TIP_ALONE, "outlines: [{part: rocker, unit: 0.4 mm, points: " + WHOLE_ROCKER + "}]\n"})
    void aRockerThatDoesNotReachItsPivotTellsNothing(String traced) {
        Clearance pair = retainer(ENGINE + traced);
        assertThat(pair.state()).as(pair.why()).isEqualTo(State.UNKNOWN);
        assertThat(Clear.of(ClearAnswerTest.build(ENGINE + traced)).findings())
                .anyMatch(f -> f.message().contains("towards the pivot"));
    }

    /** A mark found with less lift stands for more. */
    @Test
    void aTouchWithLessLiftCountsUntilItIsMockedUpAgain() {
        String mocked = "mocked_up: [{pair: retainer_to_rocker, way: wire, gap: touches, with_intake_lift: 5 mm}]\n";
        assertThat(retainer(ENGINE + mocked).state()).isEqualTo(State.TOUCHES);
        String more = mocked.replace("5 mm", "7 mm");
        assertThat(retainer(ENGINE + more).state()).isNotEqualTo(State.TOUCHES);
    }

    /** A word that takes rocker or pushrod from an engine of which they were read takes no pair away. */
    @ParameterizedTest
    @ValueSource(strings = {"valves: side", "drive: overhead_chain"})
    void aWordAgainstTheReadingsLeavesThePairs(String word) {
        String key = word.substring(0, word.indexOf(':'));
        String text = ENGINE.replaceFirst("\\b" + key + ": [a-z_]+", word);
        assertThat(text).isNotEqualTo(ENGINE);
        assertThat(pair(text, MovingPair.PUSHROD_TO_TUBE)).isPresent();
        assertThat(pair(text, MovingPair.RETAINER_TO_ROCKER)).isPresent();
        assertThat(Clear.of(ClearAnswerTest.build(text)).findings())
                .anyMatch(f -> f.message().contains("as this word says"));
    }

    /** A release that is said not to be there, as read by any tool, has no pair and asks for nothing. */
    @ParameterizedTest
    @ValueSource(strings = {"0 mm", "0 mm ± 0.001 mm", "[0 mm, 0 mm]"})
    void noReleaseIsSaidByAReachOfNought(String reach) {
        String text = ENGINE.replace("  drive: in_case\n", "  drive: in_case\n  release_reach: " + reach + "\n");
        assertThat(text).isNotEqualTo(ENGINE);
        assertThat(Clear.of(ClearAnswerTest.build(text)).clearances())
                .noneMatch(p -> p.key().endsWith("_to_release"));
        assertThat(Clear.of(ClearAnswerTest.build(ENGINE)).clearances())
                .anyMatch(p -> p.key().endsWith("_to_release"));
    }
}
