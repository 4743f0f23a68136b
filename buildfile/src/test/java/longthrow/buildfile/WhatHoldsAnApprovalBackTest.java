package longthrow.buildfile;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.charset.StandardCharsets;
import java.util.List;
import longthrow.core.answer.Answer;
import longthrow.core.answer.Approval;
import longthrow.core.answer.Rung;
import longthrow.core.answer.Stop;
import longthrow.core.build.Build;
import longthrow.core.clear.Clear;
import longthrow.core.clear.Touching;
import longthrow.core.life.Life;
import longthrow.core.quantity.Units;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** An engine that its maker's governed speed approves, and what takes that back: another throw, damage, a rating in dispute, a wheel nobody named, parts that touch. */
class WhatHoldsAnApprovalBackTest {
    private static final String SPEED = "wanted_speed: 6000 rpm";
    private static final String STROKE = "  stroke: 62.0 mm ± 0.001 mm\n";

    private static String held() {
        return replaced(Repository.text("examples/scenarios/s3-springs.yaml"), SPEED, "wanted_speed: 3600 rpm");
    }

    private static String replaced(String text, String what, String by) {
        assertThat(text).contains(what);
        return text.replace(what, by);
    }

    private static Build build(String text) {
        ReadBuild read = BuildFile.read(text.getBytes(StandardCharsets.UTF_8));
        assertThat(read.faults()).extracting(Fault::message).isEmpty();
        return read.build().orElseThrow();
    }

    private static Answer life(String text) {
        return Life.of(build(text));
    }

    private static Approval approval(Answer answer) {
        return answer.ladder().orElseThrow().approval();
    }

    /** Without this the tests below could not fail. */
    @Test
    void asItIsItIsApprovedAndSaysOnWhoseWord() {
        Approval approval = approval(life(held()));
        assertThat(approval.verdict()).isEqualTo(Approval.State.APPROVED);
        assertThat(approval.said()).contains("limits rest on a maker's word and not on a sum", "as it was made");
        Approval slower = approval(life(replaced(held(), "wanted_speed: 3600", "wanted_speed: 1000")));
        assertThat(Units.RPM.fromSi(slower.upTo().orElseThrow()))
                .as("no limit was held against more")
                .isCloseTo(1000, within(1e-6));
    }

    @Test
    void theMakersWordEndsWithAnotherThrow() {
        Answer longer = life(replaced(held(), STROKE, STROKE + "  donor_stroke: 58.0 mm ± 0.001 mm\n"));
        Approval approval = approval(longer);
        assertThat(approval.verdict()).isEqualTo(Approval.State.NOT_APPROVED);
        assertThat(approval.canHave()).as("no speed is offered").isEmpty();
        assertThat(approval.instead())
                .contains("nothing before it has been mocked up", "for the throw he made it with");
        for (String key : List.of("rod_beam_yield", "crankpin")) {
            assertThat(longer.ladder().orElseThrow().rungs().stream()
                            .filter(r -> r.key().startsWith(key))
                            .map(Rung::state))
                    .as(key)
                    .isNotEmpty()
                    .allMatch(state -> state == Rung.State.UNKNOWN);
        }
        Answer same = life(replaced(held(), STROKE, STROKE + "  donor_stroke: 62.0 mm ± 0.001 mm\n"));
        assertThat(approval(same).verdict()).isEqualTo(Approval.State.APPROVED);
    }

    @ParameterizedTest
    @CsvSource({
        "connecting_rod, lightened",
        "connecting_rod, scored",
        "connecting_rod, corroded",
        "flywheel, worn_keyway",
        "valve_spring, crack",
        "camshaft, crack",
        "piston, scored"
    })
    void damageThatWasSeenApprovesNothing(String part, String damage) {
        Approval approval = approval(
                life(held() + "\nseen:\n  - part: " + part + "\n    damage: " + damage + "\n    where: outside\n"));
        assertThat(approval.verdict()).isNotEqualTo(Approval.State.APPROVED);
        assertThat(approval.reasons()).anyMatch(r -> r.contains("was seen"));
        assertThat(approval.unlocks()).isNotEmpty();
    }

    @Test
    void ofTwoRatingsTheLowerCountsUntilItIsSettled() {
        Approval approval = approval(
                life(
                        replaced(
                                held(),
                                "  kind: solid_iron\n",
                                "  kind: solid_iron\n  rated_speed: [{specified: 6000 rpm, by: its maker}, {specified: 2000 rpm, by: its stamp}]\n")));
        assertThat(approval.verdict()).isNotEqualTo(Approval.State.APPROVED);
        assertThat(approval.reasons()).anyMatch(r -> r.contains("2000 rpm is written beside another"));
    }

    @Test
    void aWheelNobodyNamedIsNotCoveredByTheEnginesMaker() {
        Answer answer = life(replaced(held(), "  kind: solid_iron\n", ""));
        assertThat(answer.ladder().orElseThrow().rungs().stream().filter(r -> r.kind() == Rung.Kind.RIM))
                .noneMatch(r -> r.state() == Rung.State.COVERED);
    }

    /** The camshaft of the example moved into its rod bolts: whatever the ladder says, it is refused, and what would mend it comes first. */
    @Test
    void noLimitOfSpeedApprovesAnEngineWhosePartsTouch() {
        String example = Repository.text("examples/demo.yaml");
        Build near = build(example);
        Answer clear = Clear.of(near);
        assertThat(Touching.stops(clear)).extracting(Stop::refused).containsExactly(false);
        Answer heeded = Touching.heeded(life(held()), clear);
        assertThat(approval(heeded).verdict()).isEqualTo(Approval.State.NOT_APPROVED);
        assertThat(approval(heeded).said()).contains("may touch");
        assertThat(approval(heeded).upTo()).isEmpty();
        assertThat(approval(heeded).canHave()).isEmpty();
        assertThat(approval(heeded).unlocks().get(0).what()).contains("another rod or camshaft");
        assertThat(heeded.stops()).containsAll(Touching.stops(clear));

        Answer own = Touching.heeded(Life.of(near), clear);
        assertThat(approval(own).verdict()).isEqualTo(Approval.State.REFUSED);
        assertThat(approval(own).instead()).startsWith("nothing at any speed before nothing touches");
        Answer nothing = Clear.of(build(held()));
        Answer untouched = life(held());
        assertThat(Touching.heeded(untouched, nothing)).isSameAs(untouched);
    }
}
