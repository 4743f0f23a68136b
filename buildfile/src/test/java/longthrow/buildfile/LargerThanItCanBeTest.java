package longthrow.buildfile;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.stream.Stream;
import longthrow.core.answer.Answer;
import longthrow.core.answer.Clearance;
import longthrow.core.answer.Clearance.State;
import longthrow.core.answer.Clearance.Way;
import longthrow.core.answer.Finding;
import longthrow.core.clear.Clear;
import longthrow.core.clear.ReliefCut;
import org.junit.jupiter.api.Test;

/**
 * What is drawn larger than it can be shows that a pair clears, and never that it touches. The engine is the invented one of the examples, with a sleeve so long that
 * the straight wedge of the rod runs into it, though a beam of its narrowest width would not.
 */
class LargerThanItCanBeTest {
    private static final String LONG_SLEEVE =
            swapped(ClearAnswerTest.whole(), "  sleeve_length: 82.0 mm", "  sleeve_length: 98.0 mm");
    private static final String SHORT_SLEEVE =
            swapped(ClearAnswerTest.whole(), "  sleeve_length: 82.0 mm", "  sleeve_length: 70.0 mm");
    private static final String READ_BY_WIRE =
            "mocked_up:\n  - {pair: rod_to_sleeve, way: wire, gap: [4.4 mm, 4.5 mm], both_ways: yes, with_stroke: 55.40 mm}\n";

    private static String swapped(String text, String from, String to) {
        assertThat(text).contains(from);
        return text.replace(from, to);
    }

    private static Clearance pair(Answer answer, String key) {
        return answer.clearances().stream()
                .filter(p -> p.key().equals(key))
                .findFirst()
                .orElseThrow();
    }

    private static Stream<String> suspects(Answer answer) {
        return answer.findings().stream()
                .filter(f -> f.kind() == Finding.Kind.SUSPECT)
                .map(Finding::message);
    }

    @Test
    void aWedgeThatRunsIntoTheSleeveShowsNothing() {
        Answer answer = Clear.of(ClearAnswerTest.build(LONG_SLEEVE));
        Clearance rod = pair(answer, "rod_to_sleeve");
        assertThat(rod.state()).isEqualTo(State.UNKNOWN);
        assertThat(rod.why())
                .contains("the rod's shape between its ends is not known", "shows neither a touch nor a gap", "-");
        assertThat(rod.mend()).contains("mock it up", "trace the rod").doesNotContain("relieved");
        assertThat(rod.removal()).isEmpty();
        assertThat(ReliefCut.isFor(rod)).isFalse();
        assertThat(rod.missing()).isEmpty();
        assertThat(answer.stops()).noneMatch(s -> s.what().contains("rod and lower end of the sleeve"));
        assertThat(answer.defaults()).anyMatch(d -> d.what().contains("straight wedge"));
    }

    @Test
    void aWedgeThatClearsShowsThatTheRodDoes() {
        Clearance rod = pair(Clear.of(ClearAnswerTest.build(SHORT_SLEEVE)), "rod_to_sleeve");
        assertThat(rod.state()).as(rod.why()).isIn(State.CLEARS, State.CLEARS_COLD);
    }

    @Test
    void theMockUpCountsAloneWhereTheDrawingShowsNothing() {
        Answer answer = Clear.of(ClearAnswerTest.build(LONG_SLEEVE + READ_BY_WIRE));
        Clearance rod = pair(answer, "rod_to_sleeve");
        assertThat(rod.cold().orElseThrow().way()).isEqualTo(Way.MOCKED_UP);
        assertThat(rod.state()).as(rod.why()).isIn(State.CLEARS, State.CLEARS_COLD);
        assertThat(rod.why()).doesNotContain("agree", "drawn");
        assertThat(suspects(answer)).isEmpty();
    }

    /** By hand: a body that is no larger leaves at least what it leaves, so a wire that says less is another engine's, or a figure is wrong. */
    @Test
    void aMockUpBelowWhatTheLargerBodyLeavesIsSaid() {
        String less = SHORT_SLEEVE + READ_BY_WIRE.replace("[4.4 mm, 4.5 mm]", "[0.6 mm, 0.7 mm]");
        Answer answer = Clear.of(ClearAnswerTest.build(less));
        assertThat(pair(answer, "rod_to_sleeve").cold().orElseThrow().value()).isLessThan(0.7e-3);
        assertThat(suspects(answer))
                .anyMatch(said -> said.contains("rod to lower end of the sleeve: mocked up by wire"));
    }

    /** The outer edge of the counterweights comes by everything that stands still: that circle is where metal is. */
    @Test
    void whatComesRoundTouchesWhereItIsDrawn() {
        String near = swapped(
                ClearAnswerTest.whole(),
                "axis_across: {readings: [60.04 mm, 60.00 mm]",
                "axis_across: {readings: [34.04 mm, 34.00 mm]");
        Clearance core = pair(Clear.of(ClearAnswerTest.build(near)), "counterweight_to_cam_core");
        assertThat(core.state()).as(core.why()).isIn(State.TOUCHES, State.MAY_TOUCH);
    }

    @Test
    void aCircleOfTheBigEndIsNoBigEnd() {
        String far = ClearAnswerTest.whole().replaceAll("big_end_reach: [^\\n]*", "big_end_reach: 48.0 mm");
        Clearance wall = pair(Clear.of(ClearAnswerTest.build(far)), "big_end_to_case");
        assertThat(wall.state()).isEqualTo(State.UNKNOWN);
        assertThat(wall.why()).contains("on which side the big end reaches farthest is not known");
    }
}
