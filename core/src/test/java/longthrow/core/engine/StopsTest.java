package longthrow.core.engine;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import longthrow.core.answer.Finding;
import longthrow.core.answer.Stop;
import longthrow.core.build.Build;
import longthrow.core.build.Damage;
import longthrow.core.build.Given;
import longthrow.core.measurement.Measured;
import longthrow.core.term.Choice;
import longthrow.core.term.Part;
import longthrow.core.term.Term;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class StopsTest {
    private static List<Stop> stops(Engine engine) {
        return Stops.of(engine.build(), engine.figures());
    }

    /** An invented vintage engine: 457 mm spoked iron wheels, rated 500; at n rpm the rim does pi x 0.457 x n / 60 m/s. */
    private static Engine vintage(double wantedRpm) {
        return new Engine()
                .is(Choice.FLYWHEEL_KIND, "spoked_iron")
                .mm(Term.FLYWHEEL_DIAMETER, 457)
                .rpm(Term.GOVERNED_SPEED, 500)
                .rpm(Term.WANTED_SPEED, wantedRpm)
                .with(Term.RIM_SPEED, Measured.exact(Math.PI * 0.457 * wantedRpm / 60));
    }

    @Test
    void oldSpokedWheelWithALineIsDyeCheckedBeforeAnything() {
        Engine engine = vintage(1250).seen(Part.FLYWHEEL, Damage.Kind.CRACK, "spoke root");
        assertThat(stops(engine)).allMatch(Stop::refused).hasSize(3);
        Stop line = stops(engine).get(0);
        assertThat(line.what()).contains("do not start");
        assertThat(line.why()).contains("spoke root");
        assertThat(line.wayRound())
                .contains("penetrant dye", "destroy the wheel", "500 rpm", "550 rpm")
                .contains("13.2 m/s"); // pi x 0.457 x 550 / 60 = 13.16
        Stop rim = stops(engine).get(1);
        assertThat(rim.why()).contains("29.9 m/s", "inside the handbook's", "25 m/s", "30 m/s"); // 29.91
    }

    @ParameterizedTest
    @CsvSource({"500, 0", "550, 1", "560, 1", "1250, 2"})
    void speedsOfTheVintageEngine(double rpm, int stops) {
        assertThat(stops(vintage(rpm))).hasSize(stops);
    }

    @Test
    void upToATenthOverTheMakersSpeedIsNotApprovedAndPastItIsRefused() {
        Stop within = stops(vintage(550)).get(0);
        assertThat(within.refused()).isFalse();
        assertThat(within.why()).contains("rod rated speed").doesNotContain("flywheel rated speed");
        assertThat(stops(vintage(551)).get(0).refused()).isTrue();
    }

    /** (6000/3600)^2 = 2.78. */
    @Test
    void aSpeedGoalWithoutRatingsIsNotApprovedAndSaysWhichAreMissing() {
        Engine engine = new Engine().rpm(Term.GOVERNED_SPEED, 3600).rpm(Term.WANTED_SPEED, 6000);
        assertThat(stops(engine)).singleElement().satisfies(s -> {
            assertThat(s.refused()).isFalse();
            assertThat(s.why()).contains("2.78 times", Term.FLYWHEEL_RATED_SPEED.path(), Term.ROD_RATED_SPEED.path());
            assertThat(s.wayRound()).contains("hold the maker's 3600 rpm");
        });
    }

    @Test
    void ratingsOfWheelAndRodApproveASpeedAndOneTooLowRefusesIt() {
        Engine engine = new Engine()
                .is(Choice.FLYWHEEL_KIND, "billet_aluminium")
                .rpm(Term.GOVERNED_SPEED, 3600)
                .rpm(Term.WANTED_SPEED, 6000)
                .rpm(Term.FLYWHEEL_RATED_SPEED, 8000)
                .rpm(Term.ROD_RATED_SPEED, 6000);
        assertThat(stops(engine)).isEmpty();
        engine.rpm(Term.ROD_RATED_SPEED, 5500);
        assertThat(stops(engine)).singleElement().satisfies(s -> {
            assertThat(s.refused()).isTrue();
            assertThat(s.why()).contains("exceeded: rod rated speed 5500 rpm").doesNotContain("passed");
        });
    }

    @Test
    void aCastAluminiumWheelIsRefusedAnythingOverItsMakersSpeed() {
        Engine engine = new Engine()
                .is(Choice.FLYWHEEL_KIND, "cast_aluminium")
                .rpm(Term.GOVERNED_SPEED, 3600)
                .rpm(Term.WANTED_SPEED, 3601);
        assertThat(stops(engine))
                .singleElement()
                .matches(Stop::refused)
                .satisfies(s -> assertThat(s.why())
                        .contains("exceeded: cast-aluminium wheel: never past the maker's speed")
                        .doesNotContain("passed"));
    }

    @Test
    void aCastWheelNobodyRatesIsNotRunAtAll() {
        assertThat(stops(new Engine().is(Choice.FLYWHEEL_KIND, "solid_iron")))
                .singleElement()
                .satisfies(s -> assertThat(s.wayRound()).contains("destroyed"));
    }

    @Test
    void aLightenedWheelIsDestroyed() {
        assertThat(stops(new Engine().seen(Part.FLYWHEEL, Damage.Kind.LIGHTENED, "")))
                .singleElement()
                .matches(s -> s.refused() && s.wayRound().startsWith("destroy the wheel"));
    }

    @ParameterizedTest
    @EnumSource(
            value = Damage.Kind.class,
            names = {"CRACK", "BENT", "BROKEN"})
    void aDamagedRodIsNotRun(Damage.Kind kind) {
        assertThat(stops(new Engine().seen(Part.ROD, kind, ""))).singleElement().matches(Stop::refused);
    }

    /** (56.50 - 50.00) / 2 = 3.25. */
    @Test
    void aLongerThrowIsUnknownUntilMockedUp() {
        Engine engine = new Engine().mm(Term.STROKE, 56.50, 0.02).mm(Term.DONOR_STROKE, 50.00);
        assertThat(stops(engine)).singleElement().satisfies(s -> {
            assertThat(s.refused()).isFalse();
            assertThat(s.why()).contains("3.25", "rod bolts may touch the camshaft", "dipper");
        });
        assertThat(stops(new Engine().mm(Term.STROKE, 50.01, 0.05).mm(Term.DONOR_STROKE, 50.00)))
                .isEmpty();
    }

    @Test
    void anEngineOfWhichNothingIsKnownHasNoStopsButItsCautions() {
        assertThat(stops(new Engine())).isEmpty();
        List<Finding> cautions = Stops.cautions(new Engine().build());
        assertThat(cautions).noneMatch(c -> c.message().contains("methanol"));
        String all = cautions.toString();
        assertThat(all)
                .contains("kill switch", "throttle", "shroud", "guards", "lock the crankshaft", "carbon monoxide")
                .contains("part maker", "class rules", "local law", "qualified machinist");
    }

    @Test
    void methanolComesWithItsFireCard() {
        assertThat(Stops.cautions(new Engine().is(Choice.FUEL, "methanol").build())
                        .get(0))
                .satisfies(c -> {
                    assertThat(c.kind()).isEqualTo(Finding.Kind.WARNING);
                    assertThat(c.message()).contains("invisible", "skin", "lungs");
                    assertThat(c.mend()).contains("water");
                });
    }

    /** A cast wheel wanted at 5200 rpm over its maker's 3600, and ratings of wheel and rod as given. */
    private static Engine fasterThanGoverned() {
        return new Engine()
                .is(Choice.FLYWHEEL_KIND, "cast_aluminium")
                .rpm(Term.GOVERNED_SPEED, 3600)
                .rpm(Term.WANTED_SPEED, 5200);
    }

    @ParameterizedTest
    @CsvSource({"5500, 5000", "9000, 9000", "9000, 1"})
    void aGuessNeverLiftsAStop(double rpm, double plusMinus) {
        Engine engine = fasterThanGoverned()
                .guessRpm(Term.FLYWHEEL_RATED_SPEED, rpm, plusMinus)
                .guessRpm(Term.ROD_RATED_SPEED, rpm, plusMinus);
        assertThat(stops(engine)).singleElement().satisfies(s -> {
            assertThat(s.refused())
                    .isTrue(); // the maker's speed of a cast aluminium wheel is passed whatever is guessed
            assertThat(s.why()).contains("rod rated speed", "a guess approves nothing", "cast-aluminium wheel");
        });
    }

    /** A rating that was typed and nothing more is nobody's word: it may refuse a speed, and approves none, however high it is. */
    @Test
    void aRatingWithoutSayingWhoseWordItIsLiftsNoStopAndSaysWhy() {
        Engine engine = new Engine()
                .is(Choice.FLYWHEEL_KIND, "billet_aluminium")
                .rpm(Term.GOVERNED_SPEED, 3600)
                .rpm(Term.WANTED_SPEED, 6000)
                .nobodysRpm(Term.FLYWHEEL_RATED_SPEED, 9000)
                .nobodysRpm(Term.ROD_RATED_SPEED, 9000);
        assertThat(stops(engine)).singleElement().satisfies(s -> {
            assertThat(s.refused()).isFalse();
            assertThat(s.why())
                    .contains("flywheel rated speed 9000 rpm is nobody's word", "rod rated speed 9000 rpm")
                    .contains(Stops.WHOSE_WORD, Term.ROD_RATED_SPEED.path());
        });
        engine.rpm(Term.FLYWHEEL_RATED_SPEED, 9000).rpm(Term.ROD_RATED_SPEED, 9000);
        assertThat(stops(engine)).as("said by their makers").isEmpty();
        engine.nobodysRpm(Term.ROD_RATED_SPEED, 5500);
        assertThat(stops(engine))
                .as("one too low refuses all the same")
                .singleElement()
                .matches(Stop::refused);
    }

    /** (6000/3600)^2 = 2.778 by the speed; 56.50 / 50.00 = 1.13 by the throw; 3.139 on rod and bolts. */
    @Test
    void withAnotherThrowBothFactorsAreSaid() {
        Engine engine = new Engine()
                .rpm(Term.GOVERNED_SPEED, 3600)
                .rpm(Term.WANTED_SPEED, 6000)
                .mm(Term.STROKE, 56.50, 0.02)
                .mm(Term.DONOR_STROKE, 50.00);
        assertThat(stops(engine))
                .anySatisfy(s -> assertThat(s.why())
                        .contains(
                                "by the speed loads on wheel, rod and bolts grow to 2.78 times",
                                "1.13 times",
                                "3.14 times"));
        engine.given.put(Term.DONOR_STROKE, List.of(new Given.NotKnown("")));
        engine.figures.remove(Term.DONOR_STROKE);
        assertThat(stops(engine))
                .anySatisfy(s -> assertThat(s.why())
                        .contains("2.78 times", "what the throw adds on rod and bolts is not known")
                        .doesNotContain("1.13"));
        engine.given.remove(Term.DONOR_STROKE);
        engine.mm(Term.DONOR_STROKE, 56.50, 0.02);
        assertThat(stops(engine))
                .anySatisfy(s -> assertThat(s.why())
                        .contains("; loads on wheel, rod and bolts grow to 2.78 times;")
                        .doesNotContain("by the throw"));
    }

    @Test
    void aGovernedSpeedThatIsNobodysWordCoversNothing() {
        Engine engine = new Engine()
                .is(Choice.FLYWHEEL_KIND, "solid_iron")
                .rpm(Term.WANTED_SPEED, 3600)
                .nobodysRpm(Term.GOVERNED_SPEED, 9000);
        assertThat(stops(engine))
                .extracting(Stop::what)
                .contains("3600 rpm is not approved", "do not run the cast flywheel at any speed yet");
        assertThat(stops(engine)).noneMatch(s -> (s.why() + s.wayRound()).contains("the maker's 9000 rpm"));
        engine.rpm(Term.GOVERNED_SPEED, 3600);
        assertThat(stops(engine)).isEmpty();
    }

    @Test
    void aGuessedGovernedSpeedLiftsNothingEither() {
        Engine engine = new Engine().rpm(Term.WANTED_SPEED, 5200).guessRpm(Term.GOVERNED_SPEED, 6000, 10);
        assertThat(stops(engine))
                .singleElement()
                .satisfies(s -> assertThat(s.refused()).isFalse());
        engine.is(Choice.FLYWHEEL_KIND, "solid_iron");
        assertThat(stops(engine)).anyMatch(s -> s.what().startsWith("do not run the cast flywheel"));
    }

    /** 5201 against 5200 with u = 500 / 1.96: a chance of 50 %; at 5700, 1.96 standard uncertainties above, 97.5 %. */
    @ParameterizedTest
    @CsvSource({"5201, 1", "5500, 1", "5700, 0"})
    void aRatingCoversASpeedOnlyWhenItSurelyDoes(double rated, int stops) {
        Engine engine =
                fasterThanGoverned().rpm(Term.FLYWHEEL_RATED_SPEED, rated, 500).rpm(Term.ROD_RATED_SPEED, rated, 500);
        assertThat(stops(engine)).hasSize(stops);
        assertThat(PartVerdicts.of(engine.build(), engine.verdicts(), engine.figures()))
                .filteredOn(f -> f.where().equals("flywheel"))
                .singleElement()
                .satisfies(f -> assertThat(f.message().contains("keep")).isEqualTo(stops == 0));
    }

    @Test
    void aDonorStrokeWrittenDownAsUnknownLeavesTheThrowUnapproved() {
        Engine engine = new Engine().mm(Term.STROKE, 56.50, 0.02);
        assertThat(stops(engine)).isEmpty();
        engine.given.put(Term.DONOR_STROKE, List.of(new Given.NotKnown("")));
        assertThat(stops(engine)).singleElement().satisfies(s -> {
            assertThat(s.refused()).isFalse();
            assertThat(s.what()).contains("mocked up");
            assertThat(s.why()).contains(Term.DONOR_STROKE.path());
        });
    }

    private static Function<Term, Optional<Measured>> at(double rpm) {
        return fasterThanGoverned().rpm(Term.WANTED_SPEED, rpm).figures();
    }

    /** Whichever of 5200 and 5600 is right, 3600 is passed; of 3500 and 5600 only one passes it. */
    @Test
    void aStopThatHoldsByEveryReadingStandsAndOneThatHoldsBySomeIsNotApproved() {
        Build build = fasterThanGoverned().build();
        assertThat(Stops.ofEach(build, List.of(at(5200), at(5600))))
                .singleElement()
                .matches(Stop::refused);
        assertThat(Stops.ofEach(build, List.of(at(3500), at(5600))))
                .singleElement()
                .satisfies(s -> {
                    assertThat(s.refused()).isFalse();
                    assertThat(s.why()).contains("readings behind it disagree");
                });
        assertThat(Stops.ofEach(build, List.of(at(3500), at(3600)))).isEmpty();
    }
}
