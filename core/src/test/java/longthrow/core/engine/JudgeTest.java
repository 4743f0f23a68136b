package longthrow.core.engine;

import static longthrow.core.answer.Verdict.State.FAILS;
import static longthrow.core.answer.Verdict.State.MEETS;
import static longthrow.core.answer.Verdict.State.NEAR;
import static longthrow.core.answer.Verdict.State.UNKNOWN;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import longthrow.core.answer.Verdict;
import longthrow.core.build.OwnRule;
import longthrow.core.measurement.Measured;
import longthrow.core.measurement.Source;
import longthrow.core.quantity.Dimension;
import longthrow.core.quantity.Quantity;
import longthrow.core.quantity.Unit;
import longthrow.core.quantity.Units;
import longthrow.core.term.Choice;
import longthrow.core.term.Term;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Verdicts of the invented engines whose figures are worked by hand, and the ways of judging. */
class JudgeTest {
    private static Engine aluminiumRod() {
        return new Engine().is(Choice.ROD_METAL, "billet_aluminium");
    }

    private static Quantity quantity(String number, Unit unit) {
        return Quantity.of(number, unit);
    }

    /** An invented longer-throw engine, summed by hand: 139.62 - 28.25 - 86.40 - 24.90 + 1.30 = 1.37; pin 17.01 - 17.00; side 24.2 - 23.9. */
    @Nested
    class LongerThrow {
        @Test
        void squishMeetsTheKartAndTheGeneralRuleAndFailsTheOneForLargeSingles() {
            Engine engine = aluminiumRod().mm(Term.SQUISH, 1.37, 0.07);
            assertThat(engine.state("squish_least.general")).isEqualTo(MEETS);
            assertThat(engine.state("squish_least.small_kart")).isEqualTo(MEETS);
            assertThat(engine.state("squish_least.large_single")).isEqualTo(FAILS);
            assertThat(engine.verdicts()).noneMatch(v -> v.rule().startsWith("squish_least.steel"));
        }

        @Test
        void theThinGasketFailsTheGeneralRuleAndMeetsTheKartRule() {
            Engine engine = aluminiumRod().mm(Term.SQUISH, 1.09, 0.07);
            assertThat(engine.state("squish_least.general")).isEqualTo(FAILS);
            assertThat(engine.state("squish_least.small_kart")).isEqualTo(MEETS);
            assertThat(engine.disagreements()).singleElement().satisfies(f -> {
                assertThat(f.message())
                        .contains("sources disagree", "general, aluminium rod (least 1.27 mm) fails")
                        .contains("small kart single, aluminium rod (least 0.76 mm) meets")
                        .contains("rod size, rod metal, speed and bearing slack differ");
                assertThat(f.mend()).startsWith("choose with rules: choose: squish_least: small_kart or general");
            });
        }

        @Test
        void aThickerGasketBySoMuchIsTheCure() {
            Verdict tight = aluminiumRod().mm(Term.SQUISH, 1.09).verdict("squish_least.general");
            assertThat(tight.cure()).contains("gasket thicker by 0.18 mm (0.007");
        }

        /** 0.008 mm to the limit; with 0.006 mm at 95 %, 1.645/1.960 of it more to be sure of 95 % on one side: 0.013 mm. */
        @Test
        void withDoubtTheCureSaysWhatReachesTheLimitAndWhatIsSure() {
            assertThat(aluminiumRod()
                            .mm(Term.PIN_CLEARANCE, 0.010, 0.006)
                            .verdict("pin_clearance.aluminium_rod")
                            .cure())
                    .isEqualTo("hone the small end by 0.008 mm (0.00031 in), or 0.013 mm (0.00051 in) to be sure");
        }

        /** Least 0.018 mm. Nothing is known to be wrong with 0.021 mm, nor by any digit it has with 0.01799 mm: only the doubt is too wide. */
        @ParameterizedTest
        @CsvSource({"0.021, above the least", "0.01799, 'is on the least, 0.018 mm'"})
        void aFigureInsideItsLimitsOrOnThemIsReadAgainAndNothingIsTakenOff(double clearance, String why) {
            Verdict near =
                    aluminiumRod().mm(Term.PIN_CLEARANCE, clearance, 0.006).verdict("pin_clearance.aluminium_rod");
            assertThat(near.state()).isEqualTo(NEAR);
            assertThat(near.why()).contains(why);
            assertThat(near.cure()).isEqualTo("read it again, more often or with a finer instrument");
        }

        /** The window of 0.5 ° is narrower than the doubt of 10 °, so the figure in its middle is hardly inside: still nothing to turn. */
        @Test
        void aWindowNarrowerThanTheDoubtAsksForABetterReading() {
            Verdict verdict = new Engine()
                    .own(new OwnRule(
                            "inlet lobe",
                            Term.INTAKE_LOBE_CENTRE,
                            quantity("104.75", Units.DEGREE),
                            quantity("105.25", Units.DEGREE),
                            null,
                            null,
                            "",
                            ""))
                    .with(
                            Term.INTAKE_LOBE_CENTRE,
                            Measured.of(
                                    Math.toRadians(105),
                                    List.of(Source.at95("lobe", Source.Kind.TYPED, "lobe", Math.toRadians(10)))))
                    .verdict("own:inlet lobe");
            assertThat(verdict.state()).isEqualTo(FAILS);
            assertThat(verdict.cure()).isEqualTo("read it again, more often or with a finer instrument");
        }

        @Test
        void aPinTooTightInItsAluminiumRodIsHonedByTheDifference() {
            Verdict tight = aluminiumRod().mm(Term.PIN_CLEARANCE, 0.010).verdict("pin_clearance.aluminium_rod");
            assertThat(tight.state()).isEqualTo(FAILS);
            assertThat(tight.chosen()).isTrue();
            assertThat(tight.cure()).contains("hone the small end by 0.008 mm (0.0003");
            assertThat(tight.why()).contains("0.01 mm", "0.008 mm", "below the least, 0.018 mm");
        }

        @Test
        void sideClearanceStandsOnItsLeastAndMeetsIt() {
            assertThat(aluminiumRod()
                            .with(Term.SIDE_CLEARANCE_BY_WIDTH, Measured.exact(24.2e-3 - 23.9e-3))
                            .verdict("rod_side_clearance.single"))
                    .satisfies(v -> {
                        assertThat(v.state()).isEqualTo(MEETS);
                        assertThat(v.why()).contains("exactly on the least, 0.30 mm");
                    });
        }

        /** 0.001 x 26.98 mm + 0.0127 mm = 0.03968 mm; bearing 27.02 - 26.98 = 0.040. */
        @Test
        void bigEndIsAtTheLowEndOfEveryBookThatAllowsIt() {
            Engine engine = aluminiumRod()
                    .is(Choice.BIG_END_BEARING, "bare")
                    .with(Term.BIG_END_CLEARANCE, Measured.exact(27.02e-3 - 26.98e-3))
                    .mm(Term.CRANKPIN_DIAMETER, 26.98);
            assertThat(engine.verdict("big_end_clearance.plain").least()).isCloseTo(0.03968e-3, within(1e-15));
            assertThat(engine.state("big_end_clearance.plain")).isEqualTo(MEETS);
            assertThat(engine.state("big_end_clearance.service")).isEqualTo(MEETS);
            assertThat(engine.state("big_end_clearance.aluminium_kart")).isEqualTo(MEETS);
            assertThat(engine.state("big_end_clearance.aluminium_full_size")).isEqualTo(FAILS);
            assertThat(engine.state("big_end_limit.service")).isEqualTo(MEETS);
        }
    }

    /** An invented side-valve kart, own limit 1.27 mm; class volume 27.0 cc. */
    @Nested
    class ClassLegal {
        private final OwnRule valve = new OwnRule(
                "valve to head",
                Term.VALVE_TO_HEAD,
                quantity("1.27", Units.MILLIMETRE),
                null,
                null,
                null,
                "by clay",
                "mine");

        @Test
        void valveToHeadMeetsTheOwnersRuleBeforeAndAfterTheCut() {
            Engine engine = new Engine()
                    .is(Choice.VALVE_LAYOUT, "side")
                    .own(valve)
                    .mm(Term.VALVE_TO_HEAD, 1.62)
                    .mm(Term.VALVE_TO_HEAD_AFTER_CUT, 1.52);
            assertThat(engine.verdicts().stream().filter(v -> v.rule().equals("own:valve to head")))
                    .hasSize(2)
                    .allMatch(v -> v.state() == MEETS && v.chosen());
            assertThat(engine.verdicts().stream().filter(v -> v.rule().startsWith("valve_to_head.")))
                    .hasSize(4)
                    .allMatch(v -> !v.chosen() && v.why().contains("your own rule 'valve to head' stands before it"));
        }

        /** 27.77 - 27.0 = 0.77 with 95 % 0.36; guard 0.35 leaves 27.35. */
        @Test
        void theGuardIsShownAndTheRuleItselfJudges() {
            OwnRule volume = new OwnRule(
                    "class volume",
                    Term.VOLUME_IN_ASSEMBLY,
                    quantity("27.0", Units.CUBIC_CENTIMETRE),
                    null,
                    quantity("0.35", Units.CUBIC_CENTIMETRE),
                    quantity("20", Units.CELSIUS),
                    "burette through the plug hole",
                    "invented rule sheet 4.2");
            Verdict verdict = new Engine()
                    .own(volume)
                    .with(
                            Term.VOLUME_IN_ASSEMBLY,
                            Measured.of(27.77e-6, List.of(Source.at95("v", Source.Kind.TYPED, "burette", 0.36e-6))))
                    .verdict("own:class volume");
            assertThat(verdict.state()).isEqualTo(MEETS);
            assertThat(verdict.why()).contains("0.77 cc", "0.35 cc", "is kept back", "no less than 27.35 cc");
            assertThat(verdict.source())
                    .contains("invented rule sheet 4.2", "burette through the plug hole", "at 20 °C");
        }

        /** Three trials 105.25, 106.0, 104.75: mean 105.33, s 0.629, t(2) = 4.30: 103.8 to 106.9 against 103.5 to 106.5. */
        @Test
        void threeTrialsDoNotProveTheLobeCentre() {
            double u = Math.toRadians(0.629 / Math.sqrt(3));
            Source scatter = new Source("lobe", Source.Kind.SCATTER, "lobe centre", u, 2, u);
            Verdict verdict = new Engine()
                    .own(new OwnRule(
                            "inlet lobe",
                            Term.INTAKE_LOBE_CENTRE,
                            quantity("103.5", Units.DEGREE),
                            quantity("106.5", Units.DEGREE),
                            null,
                            null,
                            "",
                            ""))
                    .with(Term.INTAKE_LOBE_CENTRE, Measured.of(Math.toRadians(105.333), List.of(scatter)))
                    .verdict("own:inlet lobe");
            assertThat(verdict.state()).isEqualTo(NEAR);
            assertThat(verdict.why()).contains("below the most, 106.5 °");
            assertThat(verdict.cure()).isEqualTo("read it again, more often or with a finer instrument");
        }

        @Test
        void aLimitNoEngineKeepsJudgesNothing() {
            OwnRule rule =
                    new OwnRule("little bore", Term.BORE, null, quantity("-66", Units.MILLIMETRE), null, null, "", "");
            Verdict verdict = new Engine().own(rule).mm(Term.BORE, 66).verdict("own:little bore");
            assertThat(verdict.state()).isEqualTo(UNKNOWN);
            assertThat(verdict.cure()).contains("sign");
        }

        @Test
        void aBoreIsNotLowered() {
            OwnRule rule = new OwnRule("bore", Term.BORE, null, quantity("65.5", Units.MILLIMETRE), null, null, "", "");
            assertThat(new Engine()
                            .own(rule)
                            .mm(Term.BORE, 66)
                            .verdict("own:bore")
                            .cure())
                    .contains("sleeve", "0.5 mm")
                    .doesNotContain("lower");
        }

        /** A club's cap says nothing of an engine of which neither its wheel nor its class is told. */
        @Test
        void aClubsCapIsSilentUntilTheWheelIsSaid() {
            Engine engine = new Engine().rpm(Term.WANTED_SPEED, 6500);
            assertThat(engine.verdicts()).noneMatch(v -> v.rule().startsWith("iron_wheel_class_cap"));
            engine.is(Choice.FLYWHEEL_KIND, "solid_iron");
            assertThat(engine.verdict("iron_wheel_class_cap.pulling").chosen()).isFalse();
        }

        @Test
        void anOwnRuleWithoutAFigureIsUnknownRatherThanForgotten() {
            assertThat(new Engine().own(valve).state("own:valve to head")).isEqualTo(UNKNOWN);
        }
    }

    /** ISO 1: lengths are at 20 °C. An iron cylinder of 66.400 mm at 40 °C is 66.400 / (1 + 10.5e-6 x 20) = 66.38606 mm at 20 °C. */
    @Nested
    class RulesAtAnotherTemperature {
        private final OwnRule hot = new OwnRule(
                "largest bore",
                Term.BORE,
                null,
                quantity("66.400", Units.MILLIMETRE),
                null,
                quantity("40", Units.CELSIUS),
                "engine just run",
                "invented sheet 7");

        @Test
        void theLimitIsBroughtToTwentyDegreesWithTheExpansionOfThePart() {
            Verdict verdict = new Engine()
                    .own(hot)
                    .is(Choice.CYLINDER_METAL, "iron")
                    .mm(Term.BORE, 66.390)
                    .verdict("own:largest bore");
            assertThat(verdict.most()).isCloseTo(66.38606e-3, within(0.05e-6)); // kept to 0.1 um
            assertThat(verdict.why()).contains("66.3861 mm", "66.400 mm", "at 40 °C", "expansion of iron");
            assertThat(verdict.state()).isEqualTo(FAILS);
        }

        /** 66.386 lies 0.06 um under the limit; the expansion, known to 1.0e-6/K, leaves 66.4 mm x 1.0e-6 x 20 = 1.33 um at 95 %: Φ(0.06/0.68) = 0.54. */
        @Test
        void theDoubtOfTheExpansionIsDoubtOfTheLimit() {
            Verdict verdict = new Engine()
                    .own(hot)
                    .is(Choice.CYLINDER_METAL, "iron")
                    .mm(Term.BORE, 66.386)
                    .verdict("own:largest bore");
            assertThat(verdict.state()).isEqualTo(NEAR);
            assertThat(verdict.probability()).isCloseTo(0.54, within(0.05));
        }

        /** Aluminium: 16.5 / (1 + 22.5e-6 x 20)^3 = 16.47775 cc. */
        @Test
        void aVolumeOfOnePartGrowsThreeTimesAsItsLengths() {
            OwnRule chamber = new OwnRule(
                    "chamber",
                    Term.CHAMBER_VOLUME,
                    null,
                    quantity("16.5", Units.CUBIC_CENTIMETRE),
                    null,
                    quantity("40", Units.CELSIUS),
                    "",
                    "");
            Engine engine = new Engine().own(chamber).with(Term.CHAMBER_VOLUME, Measured.exact(16.49e-6));
            assertThat(engine.state("own:chamber")).isEqualTo(UNKNOWN);
            assertThat(engine.verdict("own:chamber").cure()).contains("what the head is made of");
            Verdict verdict = engine.is(Choice.HEAD_METAL, "aluminium").verdict("own:chamber");
            assertThat(verdict.most()).isCloseTo(16.47775e-6, within(0.00002e-6));
            assertThat(verdict.state()).isEqualTo(FAILS);
        }

        @Test
        void aVolumeOfSeveralPartsAtAnotherTemperatureIsUnknown() {
            OwnRule swept = new OwnRule(
                    "swept",
                    Term.SWEPT_VOLUME,
                    null,
                    quantity("193.30", Units.CUBIC_CENTIMETRE),
                    null,
                    quantity("40", Units.CELSIUS),
                    "",
                    "");
            Verdict verdict = new Engine()
                    .own(swept)
                    .is(Choice.CYLINDER_METAL, "iron")
                    .with(Term.SWEPT_VOLUME, Measured.exact(193.2e-6))
                    .verdict("own:swept");
            assertThat(verdict.state()).isEqualTo(UNKNOWN);
            assertThat(verdict.cure()).contains("more than one part", "20 °C");
        }

        @Test
        void atTwentyDegreesNothingIsDoneToIt() {
            OwnRule cold = new OwnRule(
                    "largest bore", Term.BORE, null, hot.most(), null, quantity("20", Units.CELSIUS), "", "");
            Verdict verdict = new Engine().own(cold).mm(Term.BORE, 66.400).verdict("own:largest bore");
            assertThat(verdict.state()).isEqualTo(MEETS);
            assertThat(verdict.why()).contains("exactly on the most, 66.400 mm");
        }

        @Test
        void withoutTheMetalNothingIsDecided() {
            Verdict verdict = new Engine().own(hot).mm(Term.BORE, 60).verdict("own:largest bore");
            assertThat(verdict.state()).isEqualTo(UNKNOWN);
            assertThat(verdict.why()).contains("the rule speaks of 40 °C");
            assertThat(verdict.cure()).contains("made of");
        }

        @Test
        void aGapBetweenTwoPartsIsNotScaledByOneOfThem() {
            OwnRule gap = new OwnRule(
                    "skirt",
                    Term.PISTON_TO_WALL,
                    quantity("0.05", Units.MILLIMETRE),
                    null,
                    null,
                    quantity("90", Units.CELSIUS),
                    "",
                    "");
            Engine engine = new Engine()
                    .own(gap)
                    .is(Choice.PISTON_ALLOY, "cast")
                    .is(Choice.CYLINDER_METAL, "iron")
                    .mm(Term.PISTON_TO_WALL, 0.08);
            assertThat(engine.state("own:skirt")).isEqualTo(UNKNOWN);
        }
    }

    /** An invented vintage engine, 79.40 x 95.2, crankpin 34.95. */
    @Nested
    class Vintage {
        private Engine engine() {
            return new Engine()
                    .is(Choice.BIG_END_BEARING, "babbitt")
                    .mm(Term.STROKE, 95.2)
                    .mm(Term.CRANKPIN_DIAMETER, 34.95)
                    .mm(Term.BORE_TAPER, 0.21)
                    .mm(Term.OUT_OF_ROUND, 0.09);
        }

        /** 0.0005 x 95.2 mm = 0.0476 mm, said as 0.048. */
        @Test
        void taperIsFarOverTheFigureByTravel() {
            Verdict taper = engine().verdict("bore_taper.per_travel");
            assertThat(taper.most()).isCloseTo(0.0476e-3, within(1e-15));
            assertThat(taper.state()).isEqualTo(FAILS);
            assertThat(taper.why()).contains("0.1624 mm", "0.0005 × stroke");
        }

        @Test
        void outOfRoundIsBetweenTheStrictAndTheLenientManual() {
            assertThat(engine().state("out_of_round.strict")).isEqualTo(FAILS);
            assertThat(engine().state("out_of_round.lenient")).isEqualTo(MEETS);
            assertThat(engine().disagreements()).anyMatch(f -> f.where().equals(Term.OUT_OF_ROUND.path()));
        }

        /** Babbitt 0.001 to 0.0015 of the pin: 0.035 to 0.052. Strip 0.114; 0.05 out of each side leaves 0.064, 0.075 leaves 0.039. */
        @ParameterizedTest
        @CsvSource({"0.114, FAILS", "0.064, FAILS", "0.039, MEETS", "0.034, FAILS"})
        void bigEndIsHeldAgainstTheBabbittWindow(double clearance, Verdict.State expected) {
            Verdict verdict = engine().mm(Term.BIG_END_CLEARANCE, clearance).verdict("big_end_clearance.babbitt");
            assertThat(verdict.least()).isCloseTo(0.03495e-3, within(1e-15));
            assertThat(verdict.most()).isCloseTo(0.052425e-3, within(1e-15));
            assertThat(verdict.state()).isEqualTo(expected);
            assertThat(verdict.chosen()).isTrue();
        }

        @Test
        void shimsAtHandAreTriedOut() {
            Verdict verdict = engine().shimsEachSide("0.05", "0.05", "0.025")
                    .mm(Term.BIG_END_CLEARANCE, 0.114)
                    .verdict("big_end_clearance.babbitt");
            assertThat(verdict.cure())
                    .contains("0.05 mm leaves 0.064 mm (0.0025")
                    .contains("0.05 + 0.025 mm leaves 0.039 mm (0.0015")
                    .containsPattern("leaves 0\\.064 mm [^;]*, still loose")
                    .containsPattern("leaves 0\\.039 mm [^;]*, within")
                    .containsPattern("leaves 0\\.014 mm [^;]*, too tight");
        }
    }

    // ---- limits

    /** Sums of stated lengths that doubles miss by a hair decide as their decimals do. */
    @ParameterizedTest
    @CsvSource({
        "0.1,  0.3,  0.40, MEETS",
        "0.15, 0.25, 0.40, MEETS",
        "0.7,  -0.3, 0.40, MEETS",
        "1.3,  -0.9, 0.40, MEETS",
        "0.1,  0.300000001, 0.40, FAILS"
    })
    void aFigureOnTheLimitMeetsItHoweverItWasSummed(double a, double b, String most, Verdict.State expected) {
        Verdict verdict = new Engine()
                .with(Term.COIL_GAP, Measured.exact(a * 1e-3 + b * 1e-3))
                .verdict("coil_gap.magneto");
        assertThat(verdict.most()).isEqualTo(Double.parseDouble(most) / 1000);
        assertThat(verdict.state()).isEqualTo(expected);
    }

    /** Each absolute limit of the table: on it meets, a nanometre (or a billionth) past it fails. */
    @Test
    void everyStatedLimitIsInclusive() {
        int checked = 0;
        for (Rule rule : Rule.values()) {
            for (Alternative a : rule.alternatives()) {
                for (boolean low : new boolean[] {true, false}) {
                    Bound bound = low ? a.least() : a.most();
                    if (bound == null || bound.reference().isPresent()) {
                        continue;
                    }
                    double limit = bound.value(t -> Optional.empty()).orElseThrow();
                    double step = rule.term().dimension() == Dimension.LENGTH ? 1e-9 : 1e-9 * limit;
                    assertThat(stateAt(rule, a, limit)).as(rule.key(a)).isEqualTo(MEETS);
                    assertThat(stateAt(rule, a, Math.nextUp(limit)))
                            .as(rule.key(a))
                            .isEqualTo(MEETS);
                    assertThat(stateAt(rule, a, Math.nextDown(limit)))
                            .as(rule.key(a))
                            .isEqualTo(MEETS);
                    assertThat(stateAt(rule, a, limit + (low ? -step : step)))
                            .as(rule.key(a))
                            .isEqualTo(FAILS);
                    checked++;
                }
            }
        }
        assertThat(checked).isGreaterThan(40);
    }

    private static Verdict.State stateAt(Rule rule, Alternative a, double value) {
        Engine engine = new Engine().choose(rule.key(), a.key()).with(rule.term(), Measured.exact(value));
        a.condition().clauses().forEach(c -> engine.is(c.choice(), c.options().get(0)));
        return engine.state(rule.key(a));
    }

    @Test
    void aFactorOfAnotherStatedLengthIsInclusiveToo() {
        Engine engine = new Engine()
                .is(Choice.DUTY, "oval_or_drag")
                .mm(Term.BORE, 66)
                .mm(Term.TOP_RING_GAP, 0.363); // 0.0055 x 66
        assertThat(engine.state("top_ring_gap_least.oval_or_drag")).isEqualTo(MEETS);
        assertThat(engine.mm(Term.TOP_RING_GAP, 0.362999).state("top_ring_gap_least.oval_or_drag"))
                .isEqualTo(FAILS);
    }

    // ---- doubt

    /** One-sided normal: 1.645 standard uncertainties above the least is 95 % (JCGM 106:2012, table of the normal distribution). */
    @ParameterizedTest
    @CsvSource({"1.66, MEETS", "1.62, NEAR", "0, NEAR", "-1.62, NEAR", "-1.66, FAILS"})
    void probabilityDecidesBetweenMeetsNearAndFails(double standardUncertainties, Verdict.State expected) {
        double u = 0.01e-3;
        Source source = Source.known("s", Source.Kind.INSTRUMENT, "gauge", u);
        assertThat(aluminiumRod()
                        .with(Term.PIN_CLEARANCE, Measured.of(0.018e-3 + standardUncertainties * u, List.of(source)))
                        .state("pin_clearance.aluminium_rod"))
                .isEqualTo(expected);
    }

    /** Gap and bore read with one gauge: its error acts on gap - 0.0055 bore as 1 - 0.0055 x 1 of itself. */
    @Test
    void whatFigureAndLimitShareCancels() {
        Source gauge = Source.known("gauge", Source.Kind.INSTRUMENT, "gauge", 0.01e-3);
        Measured bore = Measured.withContributions(66e-3, Map.of(gauge, 0.02e-3 / 0.0055));
        Measured gap = Measured.withContributions(0.364e-3, Map.of(gauge, 0.02e-3));
        Verdict verdict = new Engine()
                .is(Choice.DUTY, "oval_or_drag")
                .with(Term.BORE, bore)
                .with(Term.TOP_RING_GAP, gap)
                .verdict("top_ring_gap_least.oval_or_drag");
        assertThat(verdict.state()).isEqualTo(MEETS);
        assertThat(verdict.probability()).isGreaterThan(0.999);
    }

    @Test
    void aLimitWhoseReferenceIsUnknownIsUnknownAndSaysWhy() {
        Verdict verdict = new Engine().mm(Term.BORE_TAPER, 0.03).verdict("bore_taper.per_travel");
        assertThat(verdict.state()).isEqualTo(UNKNOWN);
        assertThat(verdict.most()).isNaN();
        assertThat(verdict.why()).contains("stroke, which is not known");
    }

    @Test
    void anAimWithoutAFigureIsUnknown() {
        Engine engine = aluminiumRod();
        engine.aims.put(Term.SQUISH, quantity("1.27", Units.MILLIMETRE));
        assertThat(engine.state("squish_least.general")).isEqualTo(UNKNOWN);
        assertThat(new Engine().verdicts()).isEmpty();
    }

    // ---- choosing

    @Test
    void noneIsInForceWhereTheTradeDisagreesUntilTheOwnerChooses() {
        Engine engine = aluminiumRod().mm(Term.SQUISH, 1.37);
        assertThat(engine.verdicts())
                .filteredOn(v -> v.rule().startsWith("squish_least"))
                .noneMatch(Verdict::chosen);
        engine.choose("squish_least", "general");
        assertThat(engine.verdicts())
                .filteredOn(Verdict::chosen)
                .extracting(Verdict::rule)
                .containsExactly("squish_least.general");
        assertThat(engine.disagreements()).singleElement().satisfies(f -> {
            assertThat(f.message()).contains("In force: general");
            assertThat(f.mend()).isEmpty();
        });
    }

    @Test
    void aRuleForAWordNotSaidIsShownButNotInForce() {
        Verdict verdict = new Engine().mm(Term.PIN_CLEARANCE, 0.010).verdict("pin_clearance.aluminium_rod");
        assertThat(verdict.chosen()).isFalse();
        assertThat(verdict.why())
                .contains("connecting_rod.metal is cast aluminium or billet aluminium, which is not said");
    }

    @Test
    void aRuleForAnotherEngineIsNotShownUnlessTheOwnerPicksIt() {
        Engine steel = new Engine().is(Choice.ROD_METAL, "steel").mm(Term.SQUISH, 1.0);
        assertThat(steel.verdicts()).noneMatch(v -> v.rule().equals("squish_least.general"));
        Verdict picked = steel.choose("squish_least", "general").verdict("squish_least.general");
        assertThat(picked.chosen()).isTrue();
        assertThat(picked.why()).contains("picked by you, although");
    }

    @Test
    void wordsUnderRulesThatTheTableDoesNotHaveAreFound() {
        assertThat(new Engine().choose("squish", "general").disagreements())
                .singleElement()
                .satisfies(f -> assertThat(f.mend()).contains("squish_least"));
        assertThat(new Engine().choose("squish_least", "huge").disagreements())
                .singleElement()
                .satisfies(f -> assertThat(f.mend()).contains("small_kart, general, large_single"));
    }
}
