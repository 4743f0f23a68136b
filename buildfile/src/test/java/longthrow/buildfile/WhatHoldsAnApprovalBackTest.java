package longthrow.buildfile;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import longthrow.core.answer.Answer;
import longthrow.core.answer.Approval;
import longthrow.core.answer.Clearance;
import longthrow.core.answer.Rung;
import longthrow.core.answer.Stop;
import longthrow.core.build.Build;
import longthrow.core.catalogue.Catalogue;
import longthrow.core.clear.Clear;
import longthrow.core.engine.GapStops;
import longthrow.core.life.Life;
import longthrow.core.quantity.Units;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** An engine that its maker's governed speed approves, and what takes that back: another throw, damage, a rating in dispute, a wheel nobody named, parts that touch. */
class WhatHoldsAnApprovalBackTest {

    private static String held() {
        return LookedOver.springsAtTheMakersSpeed();
    }

    private static Answer life(String text) {
        return Running.asked(Running.build(text));
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
        Approval slower = approval(life(Running.replaced(held(), "wanted_speed: 3600", "wanted_speed: 1000")));
        assertThat(Units.RPM.fromSi(slower.upTo().orElseThrow()))
                .as("no limit was held against more")
                .isCloseTo(1000, within(1e-6));
    }

    @Test
    void theMakersWordEndsWithAnotherThrow() {
        Answer longer = life(Running.replaced(held(), "donor_stroke: 62.0 mm", "donor_stroke: 58.0 mm"));
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
        Answer same = life(held());
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
        Approval approval =
                approval(life(held() + "  - {part: " + part + ", damage: " + damage + ", where: outside}\n"));
        assertThat(approval.verdict()).isNotEqualTo(Approval.State.APPROVED);
        assertThat(approval.reasons()).anyMatch(r -> r.contains("was seen"));
        assertThat(approval.unlocks()).isNotEmpty();
    }

    @Test
    void ofTwoRatingsTheLowerCountsUntilItIsSettled() {
        Approval approval = approval(
                life(
                        Running.replaced(
                                held(),
                                "  kind: solid_iron\n",
                                "  kind: solid_iron\n  rated_speed: [{specified: 6000 rpm, by: its maker}, {specified: 2000 rpm, by: its maker's stamp}]\n")));
        assertThat(approval.verdict()).isNotEqualTo(Approval.State.APPROVED);
        assertThat(approval.reasons()).anyMatch(r -> r.contains("2000 rpm is written beside another"));
    }

    @Test
    void aWheelNobodyNamedIsNotCoveredByTheEnginesMaker() {
        Answer answer = life(Running.replaced(held(), "  kind: solid_iron\n", ""));
        assertThat(answer.ladder().orElseThrow().rungs().stream().filter(r -> r.kind() == Rung.Kind.RIM))
                .noneMatch(r -> r.state() == Rung.State.COVERED);
    }

    /** The camshaft of the example moved into its rod bolts: whatever the ladder says, it is refused, and what would mend it comes first. */
    @Test
    void noLimitOfSpeedApprovesAnEngineWhosePartsTouch() {
        Build near = Running.build(Repository.text("examples/demo.yaml"));
        List<Clearance> pairs = Clear.of(near).clearances();
        List<Stop> touching = GapStops.together(List.of(), pairs).stream()
                .filter(GapStops::isOfTouching)
                .toList();
        assertThat(touching).extracting(Stop::refused).containsExactly(false);
        Build held = Running.build(held());
        Answer heeded = Life.of(held, Catalogue.EMPTY, pairs);
        assertThat(approval(heeded).verdict()).isEqualTo(Approval.State.NOT_APPROVED);
        assertThat(approval(heeded).said()).contains("may touch");
        assertThat(approval(heeded).upTo()).isEmpty();
        assertThat(approval(heeded).canHave()).isEmpty();
        assertThat(approval(heeded).unlocks().get(0).what()).contains("another rod or camshaft");
        assertThat(heeded.stops()).containsAll(touching);

        Answer own = Running.asked(near);
        assertThat(approval(own).verdict()).isEqualTo(Approval.State.REFUSED);
        assertThat(approval(own).instead()).startsWith("nothing at any speed before nothing touches");
    }

    /** What was said of no part approves nothing: a maker's speed is of an undamaged engine, and the first line says what to look over. */
    @Test
    void anEngineNobodyLookedOverIsNotApprovedYet() {
        Approval bare = approval(life("""
                longthrow: 1
                engine: {name: plate alone, invented: yes}
                flywheel: {kind: steel}
                crankshaft: {stroke: 50.0 mm ± 0.01 mm, donor_stroke: 50.0 mm ± 0.01 mm}
                connecting_rod: {bolt_tightenings: 1}
                use: {governed_speed: {specified: 3600 rpm, by: the engine's plate}, wanted_speed: 3600 rpm}
                """));
        assertThat(bare.verdict()).isEqualTo(Approval.State.NOT_APPROVED);
        assertThat(bare.said())
                .contains("nobody says that flywheel, connecting rod, crankshaft and piston were looked over");
        assertThat(bare.instead()).contains("hold 3600 rpm", "undamaged", "once these parts are looked over");
        assertThat(bare.unlocks())
                .singleElement()
                .satisfies(u -> assertThat(u.what()).contains("look over", "dye"));
        assertThat(Units.RPM.fromSi(bare.canHave().orElseThrow())).isCloseTo(3600, within(1e-6));
        Approval unseen = approval(life(Running.replaced(
                held(), "  - {part: crankshaft, damage: none, where: 'dyed, fillets and taper'}\n", "")));
        assertThat(unseen.verdict()).isEqualTo(Approval.State.NOT_APPROVED);
        assertThat(unseen.said()).contains("nobody says that crankshaft was looked over");
        assertThat(approval(life(held())).said()).contains("looked over and found sound: flywheel (dyed, hub and rim)");
    }

    @ParameterizedTest
    @CsvSource({
        "seller, false",
        "the rod seller's sheet, false",
        "somebody on a forum with a plate, false",
        "Zoltan, false",
        "no plate found, false",
        "my own sheet, false",
        "a plate I made, false",
        "the maker's plate on my engine, false",
        "the manufacturer's data sheet, false",
        "stamped in the shroud, false",
        "ask the maker, false",
        "hearsay from the maker, false",
        "fake plate, false",
        "'the plate, illegible', false",
        "the maker's sheet with 20 % added, false",
        "the rod maker's sheet, false",
        "dinner plate, false",
        "the maker?, false",
        "its maker, true",
        "The Maker, true",
        "maker's manual, true",
        "the maker’s stamp, true",
        "the engine maker's sheet, true",
        "its engine's plate, true"
    })
    void onlyTheMakersWordLetsAnythingRun(String by, boolean counts) {
        String text = Running.replaced(held(), "by: the engine's plate", "by: \"" + by + "\"");
        Approval approval = approval(life(text));
        assertThat(approval.verdict() == Approval.State.APPROVED).as(by).isEqualTo(counts);
        if (!counts) {
            assertThat(approval.reasons()).as(by).anyMatch(r -> r.contains("claim") || r.contains("word"));
            assertThat(life(text).findings().stream()
                            .filter(f -> f.mend().contains("behind by: count the maker, the maker's sheet"))
                            .toList())
                    .as(by)
                    .singleElement()
                    .satisfies(f -> assertThat(f.where()).contains("use.governed_speed"));
        }
        String catalogue = Running.replaced(
                held(), "specified: 3600 rpm, by: the engine's plate", "catalogue: 3600 rpm, by: X-36");
        assertThat(approval(life(catalogue)).verdict()).isNotEqualTo(Approval.State.APPROVED);
    }

    /** A count that its owner is not sure of counts at its upper end, and no maker vouches for it. */
    @ParameterizedTest
    @CsvSource({"4 ± 3, NOT_APPROVED", "5 ± 3, NOT_APPROVED", "2 ± 1, APPROVED", "9 ± 1, REFUSED"})
    void boltsThatMayHaveBeenDrawnUpTooOftenHoldItBack(String count, Approval.State verdict) {
        Approval approval =
                approval(life(Running.replaced(held(), "bolt_tightenings: 1", "bolt_tightenings: " + count)));
        assertThat(approval.verdict()).as(approval.reasons().toString()).isEqualTo(verdict);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "rings: {top_gap: 0 mm} | top_gap_shut | REFUSED",
                "rings: {top_gap: 0.05 mm ± 0.01 mm}\\npiston: {alloy: cast} | top_ring_gap_least_low | NOT_APPROVED",
                "limiter: {cut_speed: 6000 rpm} | limiter | NOT_APPROVED",
                "output_shaft: {diameter: 19.05 mm} | | APPROVED"
            })
    void whatIsSetOrWornWrongHoldsItBack(String more, String key, Approval.State verdict) {
        Answer answer = life(Running.replaced(
                Running.replaced(held(), "use:\n", more.replace("\\n", "\n") + "\nuse:\n  duty: mild\n"), "x", "x"));
        assertThat(approval(answer).verdict())
                .as(approval(answer).reasons().toString())
                .isEqualTo(verdict);
        if (key != null) {
            Rung rung = answer.ladder().orElseThrow().rung(key).orElseThrow();
            assertThat(rung.isInTheWay()).isTrue();
            assertThat(rung.source()).isNotBlank();
            assertThat(rung.unlock()).isNotBlank();
        }
    }

    /** At the maker's speed his governor holds the engine, unless it was taken out: then a limiter has to. Not said, it is taken to hold, as before. */
    @ParameterizedTest
    @CsvSource({
        ", , APPROVED",
        "unknown, , APPROVED",
        "whole, , APPROVED",
        "whole, 3600, APPROVED",
        "removed, , NOT_APPROVED",
        "removed, 6000, NOT_APPROVED",
        "removed, 3600, APPROVED"
    })
    void withoutItsGovernorALimiterHasToHoldTheMakersSpeed(String governor, String cutsAt, Approval.State verdict) {
        String text = Running.replaced(
                held(),
                "use:\n",
                (cutsAt == null ? "" : "limiter: {cut_speed: " + cutsAt + " rpm}\n") + "use:\n"
                        + (governor == null ? "" : "  governor: " + governor + "\n"));
        for (String said : List.of(text, Running.replaced(text, "  wanted_speed: 3600 rpm\n", ""))) {
            Answer answer = life(said);
            boolean isWanted = said.contains("wanted_speed");
            if (isWanted) {
                assertThat(approval(answer).verdict())
                        .as(approval(answer).reasons().toString())
                        .isEqualTo(verdict);
            } else if (verdict == Approval.State.NOT_APPROVED) {
                assertThat(approval(answer).verdict()).as("no speed wanted").isEqualTo(verdict);
            }
            if (verdict == Approval.State.NOT_APPROVED) {
                Rung limiter = answer.ladder().orElseThrow().rung("limiter").orElseThrow();
                assertThat(limiter.isInTheWay()).isTrue();
                assertThat(limiter.why()).contains("nothing holds the engine");
                assertThat(approval(answer).reasons()).anyMatch(r -> r.contains("nothing holds the engine"));
                if (isWanted) {
                    assertThat(approval(answer).unlocks())
                            .anyMatch(u -> u.what().contains("limiter"));
                }
            }
        }
    }

    @ParameterizedTest
    @CsvSource({"oil_temperature: 150 °C, oil_heat", "idle_speed: 3900 rpm, idle"})
    void heatAndIdleHoldItBack(String use, String key) {
        Answer answer = life(Running.replaced(held(), "use:\n", "use:\n  " + use + "\n"));
        assertThat(approval(answer).verdict()).isEqualTo(Approval.State.NOT_APPROVED);
        assertThat(answer.ladder().orElseThrow().rung(key).orElseThrow().state())
                .isEqualTo(Rung.State.EXCEEDED);
    }

    /** No oil is that hot: it is a suspect, and a suspect holds back. */
    @Test
    void oilAtTwiceItsHeatHoldsItBack() {
        Approval approval = approval(life(Running.replaced(held(), "use:\n", "use:\n  oil_temperature: 250 °C\n")));
        assertThat(approval.verdict()).isNotEqualTo(Approval.State.APPROVED);
        assertThat(approval.reasons()).anyMatch(r -> r.contains("oil"));
    }

    /** Wear past what a part is mended at: a big end that knocks holds back, a worn bore is said and many run so. */
    @Test
    void wearCountsByWhatItDoes() {
        Answer knocks = life(Running.replaced(
                        held(),
                        "  metal: cast_aluminium\n",
                        "  metal: cast_aluminium\n  big_end_bearing: bare\n  big_end_bore: 30.15 mm\n")
                + "");
        assertThat(approval(knocks).verdict()).isEqualTo(Approval.State.APPROVED);
        Answer worn = life(Running.replaced(
                Running.replaced(
                        held(),
                        "  metal: cast_aluminium\n",
                        "  metal: cast_aluminium\n  big_end_bearing: bare\n  big_end_bore: 30.15 mm\n"),
                "crankshaft:\n",
                "crankshaft:\n  crankpin_diameter: 30.00 mm\n  end_play: 0.9 mm\n"));
        assertThat(approval(worn).verdict()).isEqualTo(Approval.State.NOT_APPROVED);
        assertThat(approval(worn).reasons())
                .anyMatch(r -> r.contains("big-end"))
                .anyMatch(r -> r.contains("end play"));
        Answer taper = life(Running.replaced(
                held(),
                "  bore: 81.0 mm ± 0.001 mm\n",
                "  bore_top_thrust: 81.30 mm\n  bore_bottom_thrust: 81.00 mm\n"));
        Rung said = taper.ladder().orElseThrow().rung("bore_taper").orElseThrow();
        assertThat(said.state()).isEqualTo(Rung.State.EXCEEDED);
        assertThat(said.isInTheWay()).isFalse();
        assertThat(said.why()).contains("smokes");
    }

    /** A cracked wheel is refused at whatever speed, and no limiter helps it. */
    @Test
    void aCrackIsRefusedAtAnySpeed() {
        Approval approval = approval(life(Repository.text("examples/scenarios/s4-vintage-iron.yaml")));
        assertThat(approval.said()).isEqualTo("refused at any speed");
        assertThat(approval.unlocks()).noneMatch(u -> u.what().contains("limiter"));
        assertThat(approval.unlocks().get(0).what()).contains("dye");
    }

    /** A torque far over what the rod's maker asks for is a suspect, and past the proof load of the grade it is refused. */
    @Test
    void aTorqueFarOverItsMakersHoldsItBack() {
        Approval approval = approval(
                life(
                        Running.replaced(
                                held(),
                                "  metal: cast_aluminium\n",
                                "  metal: cast_aluminium\n  bolt_torque: [{specified: 17 N·m, tolerance: 1 N·m, by: the rod maker's sheet}, {readings: 40 N·m}]\n")));
        assertThat(approval.verdict()).isNotEqualTo(Approval.State.APPROVED);
        assertThat(approval.reasons()).anyMatch(r -> r.contains("torque"));
    }

    /** Guides of the trade are printed as well as they are said. */
    @Test
    void aGuideIsNoSurerThanItIsSaid() {
        Rung guide = life(Running.replaced(held(), "use:\n", "use:\n  duty: mild\n"))
                .ladder()
                .orElseThrow()
                .rung("mean_piston_speed")
                .orElseThrow();
        double share = guide.speed().orElseThrow().expanded()
                / guide.speed().orElseThrow().value();
        assertThat(share).isBetween(0.02, 0.06);
    }

    /** How it was looked over is told in a few words before where: anything else is not counted, and it is said what counts. A wheel and a rod crack where no eye sees it. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "flywheel | dyed, hub and rim | dyed | true",
                "flywheel | dyed, hub and rim | By a shop, with its papers | true",
                "flywheel | dyed, hub and rim | magnet powder | true",
                "flywheel | dyed, hub and rim | eye and lens, hub | false",
                "flywheel | dyed, hub and rim | by eye | false",
                "flywheel | dyed, hub and rim | photo only | false",
                "flywheel | dyed, hub and rim | from the outside only | false",
                "flywheel | dyed, hub and rim | hub and rim, dyed | false",
                "flywheel | dyed, hub and rim | dyed green | false",
                "flywheel | dyed, hub and rim | '' | false",
                "crankshaft | dyed, fillets and taper | eye and lens, fillets | true",
                "crankshaft | dyed, fillets and taper | by eye | false"
            })
    void onlyAWayOfLookingThatShowsACrackCounts(String part, String was, String now, boolean counts) {
        Answer answer = life(Running.replaced(held(), "'" + was + "'", "'" + now + "'"));
        assertThat(approval(answer).verdict())
                .as(now)
                .isEqualTo(counts ? Approval.State.APPROVED : Approval.State.NOT_APPROVED);
        assertThat(answer.findings().stream()
                        .filter(f -> f.where().startsWith("seen["))
                        .toList())
                .as(now)
                .hasSize(counts ? 0 : 1)
                .allMatch(f -> f.message().contains("not counted as looked over")
                        && f.mend().contains("'dyed'"));
        if (!counts) {
            assertThat(approval(answer).reasons()).anyMatch(r -> r.contains("nobody says that " + part));
        }
    }

    /** What was found does not pass as how it was looked at. */
    @org.junit.jupiter.params.ParameterizedTest
    @org.junit.jupiter.params.provider.ValueSource(
            strings = {
                "dye shows a crack at the hub",
                "not looked at yet",
                "a line at the root",
                "hairline in the rim",
                "bent a little",
                "rust pits"
            })
    void aCrackWrittenIntoSoundIsRefused(String where) {
        String text = LookedOver.springsAtTheMakersSpeed().replace("dyed, hub and rim", where);
        ReadBuild read = BuildFile.read(text.getBytes(java.nio.charset.StandardCharsets.UTF_8));
        assertThat(read.build()).isEmpty();
        assertThat(read.faults())
                .anySatisfy(fault -> assertThat(fault.toString()).contains("seen[1].where"));
    }

    /** A maker spoke of an undamaged engine, not of undamaged moving parts. */
    @org.junit.jupiter.params.ParameterizedTest
    @org.junit.jupiter.params.provider.ValueSource(strings = {"cylinder", "head", "rings", "output_shaft", "clutch"})
    void damageOnAnyPartHoldsTheMakersWordBack(String part) {
        String sound = LookedOver.springsAtTheMakersSpeed();
        String broken = sound + "  - {part: " + part + ", damage: broken}\n";
        assertThat(Running.asked(BuildFile.read(sound.getBytes(java.nio.charset.StandardCharsets.UTF_8))
                                .build()
                                .orElseThrow())
                        .ladder()
                        .orElseThrow()
                        .approval()
                        .verdict())
                .isEqualTo(longthrow.core.answer.Approval.State.APPROVED);
        assertThat(Running.asked(BuildFile.read(broken.getBytes(java.nio.charset.StandardCharsets.UTF_8))
                                .build()
                                .orElseThrow())
                        .ladder()
                        .orElseThrow()
                        .approval()
                        .verdict())
                .isNotEqualTo(longthrow.core.answer.Approval.State.APPROVED);
    }

    /** A line that is not there is no better than one that says unknown. */
    @Test
    void withoutTheDonorsStrokeNobodyKnowsWhoseThrowItIs() {
        String sound = LookedOver.springsAtTheMakersSpeed();
        String without = sound.replace("  donor_stroke: 62.0 mm ± 0.001 mm\n", "");
        assertThat(without).isNotEqualTo(sound);
        longthrow.core.answer.Approval approval = Running.asked(
                        BuildFile.read(without.getBytes(java.nio.charset.StandardCharsets.UTF_8))
                                .build()
                                .orElseThrow())
                .ladder()
                .orElseThrow()
                .approval();
        assertThat(approval.verdict()).isNotEqualTo(longthrow.core.answer.Approval.State.APPROVED);
        assertThat(approval.reasons()).anySatisfy(why -> assertThat(why).contains("crankshaft.donor_stroke"));
    }
}
