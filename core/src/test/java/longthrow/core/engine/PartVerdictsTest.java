package longthrow.core.engine;

import static org.assertj.core.api.Assertions.assertThat;

import longthrow.core.answer.Finding;
import longthrow.core.build.Damage;
import longthrow.core.term.Choice;
import longthrow.core.term.Part;
import longthrow.core.term.Term;
import org.junit.jupiter.api.Test;

class PartVerdictsTest {
    @Test
    void nothingReadIsNotYetKnownForEveryPart() {
        Engine engine = new Engine();
        assertThat(PartVerdicts.of(engine.build(), engine.verdicts(), engine.figures()))
                .hasSize(8)
                .allMatch(f -> f.kind() == Finding.Kind.PART)
                .allMatch(f -> f.message().contains(": not yet known: "))
                .allMatch(f -> !f.mend().isEmpty());
    }

    /** An invented vintage engine: taper 0.21 over every figure, slow and mild. */
    @Test
    void aWornBoreOffersRingsOrASleeveAndSaysWhichIsMoneyWellSpentAtItsSpeed() {
        Engine engine = new Engine()
                .is(Choice.DUTY, "mild")
                .mm(Term.STROKE, 95.2)
                .mm(Term.BORE_TAPER, 0.21)
                .mm(Term.OUT_OF_ROUND, 0.09)
                .rpm(Term.GOVERNED_SPEED, 500);
        assertThat(engine.part("cylinder")).satisfies(f -> {
            assertThat(f.message()).startsWith("cylinder: machine: ").contains("bore taper", "0.21 mm");
            assertThat(f.mend())
                    .contains("new rings and a light hone", "smoke", "sleeve")
                    .contains("For 500 rpm in mild use rings are money well spent");
        });
        engine.rpm(Term.GOVERNED_SPEED, 3600);
        assertThat(engine.part("cylinder").mend()).contains("light hone").doesNotContain("well spent");
    }

    @Test
    void aSoundCylinderIsKept() {
        Engine engine =
                new Engine().mm(Term.STROKE, 60).mm(Term.BORE_TAPER, 0.01).mm(Term.OUT_OF_ROUND, 0.01);
        assertThat(engine.part("cylinder").message()).startsWith("cylinder: keep");
    }

    @Test
    void sourcesThatDifferLeaveThePartOpenUntilOneIsChosen() {
        Engine engine =
                new Engine().mm(Term.STROKE, 60).mm(Term.BORE_TAPER, 0.01).mm(Term.OUT_OF_ROUND, 0.09);
        assertThat(engine.part("cylinder").message())
                .startsWith("cylinder: not yet known")
                .contains("disagree");
        engine.choose("out_of_round", "lenient");
        assertThat(engine.part("cylinder").message()).startsWith("cylinder: keep");
    }

    @Test
    void aCrackedCylinderIsWalkedAwayFrom() {
        assertThat(new Engine()
                        .seen(Part.CYLINDER, Damage.Kind.CRACK, "deck")
                        .part("cylinder")
                        .message())
                .startsWith("cylinder: walk away");
    }

    @Test
    void aBentCrankshaftIsReplaced() {
        assertThat(new Engine().mm(Term.CRANK_RUN_OUT, 0.08).part("crankshaft").message())
                .startsWith("crankshaft: replace");
    }

    /** 0.35 is past the 0.20 of a fresh crankshaft and within the 0.5 of a worn one. */
    @Test
    void endPlayPastNewButWithinItsLimitIsKept() {
        assertThat(new Engine()
                        .mm(Term.CRANK_RUN_OUT, 0.02)
                        .mm(Term.CRANK_END_PLAY, 0.35)
                        .part("crankshaft")
                        .message())
                .startsWith("crankshaft: keep")
                .contains("within its wear limit");
    }

    @Test
    void aRodTooTightOnItsPinIsMachined() {
        Engine engine = new Engine()
                .is(Choice.ROD_METAL, "billet_aluminium")
                .is(Choice.BIG_END_BEARING, "rolling")
                .mm(Term.PIN_CLEARANCE, 0.010);
        assertThat(engine.part("connecting_rod")).satisfies(f -> {
            assertThat(f.message()).startsWith("connecting rod: machine");
            assertThat(f.mend()).contains("hone the small end by 0.008 mm");
        });
    }

    @Test
    void aWheelIsKeptWhenItsMakersSpeedCoversTheWantedOne() {
        Engine engine = new Engine()
                .is(Choice.FLYWHEEL_KIND, "solid_iron")
                .rpm(Term.GOVERNED_SPEED, 3600)
                .rpm(Term.WANTED_SPEED, 3600);
        assertThat(engine.part("flywheel").message()).startsWith("flywheel: keep");
        engine.rpm(Term.WANTED_SPEED, 6000);
        assertThat(engine.part("flywheel").message()).startsWith("flywheel: replace");
        engine.seen(Part.FLYWHEEL, Damage.Kind.CRACK, "hub");
        assertThat(engine.part("flywheel")).satisfies(f -> {
            assertThat(f.message()).contains("hub");
            assertThat(f.mend()).contains("destroy the wheel");
        });
    }

    @Test
    void aWornPistonGrooveReplacesThePistonAndAGapOverTheCeilingTheRings() {
        Engine engine = new Engine().mm(Term.TOP_RING_SIDE_CLEARANCE, 0.15).mm(Term.TOP_RING_GAP, 1.2);
        assertThat(engine.part("rings").message()).startsWith("piston rings: replace");
    }
}
