package longthrow.core.fit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import java.util.OptionalLong;
import longthrow.core.answer.Answer;
import longthrow.core.answer.Candidate;
import longthrow.core.answer.Sureness;
import longthrow.core.build.FitWish;
import longthrow.core.build.OwnRule;
import longthrow.core.catalogue.Catalogue;
import longthrow.core.catalogue.Operation;
import longthrow.core.catalogue.PartKind;
import longthrow.core.quantity.Quantity;
import longthrow.core.quantity.Units;
import longthrow.core.term.Choice;
import longthrow.core.term.Term;
import org.junit.jupiter.api.Test;

/** Fits that stand behind others that break a rule, behind machining, and behind parts made to order, on the invented first scenario. */
class SearchedFurtherTest {
    /** With a flat crown. */
    private static Map<Term, String> piston() {
        Map<Term, String> sizes = Stock.piston();
        sizes.put(Term.CROWN_VOLUME, "0.00 cc ± 0.15 cc");
        return sizes;
    }

    private static Stock withPiston(String code, long price, Map<Term, String> sizes, Stock stock) {
        return stock.part(PartKind.PISTON, code, price, sizes, Map.of(Choice.PISTON_ALLOY, "cast"));
    }

    private static Answer fit(Stock stock) {
        return Fit.of(stock.build(), stock.catalogue());
    }

    private static Catalogue without(String code, Catalogue catalogue) {
        return new Catalogue(
                catalogue.parts().stream().filter(p -> !p.code().equals(code)).toList(), catalogue.operations());
    }

    private static double figure(Candidate candidate, Term term) {
        return candidate.values().stream()
                .filter(v -> v.term() == term)
                .mapToDouble(v -> v.figure().value())
                .findFirst()
                .orElseThrow();
    }

    /** 130 cheaper pistons, each with a boss in the counterweight (86.40 - 28.25 - 18.9 - 38.9 = 0.35), stand before the sound one. */
    @Test
    void aFitBehindManyThatBreakARuleIsFound() {
        Stock stock = Stock.longerThrow().is(Choice.CYLINDER_METAL, "iron");
        for (int n = 0; n < 130; n++) {
            Map<Term, String> sizes = piston();
            sizes.put(Term.BOSS_BELOW_PIN, "18.9 mm ± 0.01 mm");
            withPiston("B" + n, 10, sizes, stock);
        }
        Map<Term, String> sound = piston();
        sound.put(Term.BOSS_BELOW_PIN, "16.9 mm ± 0.01 mm");
        withPiston("SOUND", 90, sound, stock);
        stock.wish(Stock.keeping(List.of("R3", "G1.30"), PartKind.PISTON, PartKind.CONNECTING_ROD, PartKind.GASKET));
        Answer answer = fit(stock);
        assertThat(answer.candidates().get(0).title()).isEqualTo("SOUND + R3 + G1.30");
        assertThat(answer.candidates()).noneMatch(c -> c.title().startsWith("B"));
        assertThat(answer.rejections()).anyMatch(r -> r.why().contains("pin boss to counterweight"));
    }

    /** Valve heads 36 and 30 with centres 31 apart overlap by 2: every combination with this head breaks the same rule and is told so once. */
    @Test
    void whatHangsOnOnePartIsRejectedOnceForAllThatHaveIt() {
        Stock stock = Stock.longerThrow().is(Choice.CYLINDER_METAL, "iron");
        Map<Term, String> clash = Map.of(
                Term.CHAMBER_VOLUME, "16.2 cc ± 0.2 cc",
                Term.VALVE_SPACING, "31 mm ± 0.1 mm",
                Term.INTAKE_HEAD, "36 mm ± 0.05 mm",
                Term.EXHAUST_HEAD, "30 mm ± 0.05 mm");
        stock.part(PartKind.HEAD, "CLASH", 10, clash, Map.of());
        for (int n = 0; n < 70; n++) {
            withPiston("P" + n, 10, piston(), stock);
        }
        stock.wish(Stock.keeping(
                List.of("R3", "G1.30", "CLASH"),
                PartKind.PISTON,
                PartKind.CONNECTING_ROD,
                PartKind.GASKET,
                PartKind.HEAD));
        Answer answer = fit(stock);
        assertThat(answer.candidates()).isEmpty();
        assertThat(answer.rejections())
                .filteredOn(r -> r.reason().equals(Obstacle.RULE.label()))
                .singleElement()
                .satisfies(r -> {
                    assertThat(r.why()).contains("valve to valve");
                    assertThat(r.count()).isEqualTo(71); // the engine's own piston too
                });
    }

    /** Rod 87.30 stands 0.83 proud; a squish of 1.27 asks for a gasket of 2.10. Rod 88, gasket 21, hone 14. */
    @Test
    void aGasketMadeToOrderIsRankedAndPriced() {
        Stock stock = Stock.longerThrow()
                .operation(Operation.Kind.GASKET_TO_ORDER, "GSHOP", "0.50", "2.50", "0.05", 21)
                .wish(Stock.keeping(List.of("R4"), PartKind.CONNECTING_ROD, PartKind.GASKET));
        Answer answer = fit(stock);
        assertThat(answer.candidates()).isNotEmpty();
        Candidate best = answer.candidates().get(0);
        assertThat(best.title()).contains("GSHOP (have a gasket made to 2.100 mm");
        assertThat(figure(best, Term.SQUISH)).isCloseTo(1.27e-3, within(1e-8));
        assertThat(best.total().known()).isEqualTo(8800 + 2100 + 1400);
    }

    /** 139.62 - 28.25 - 24.90 + 1.30 - 1.27 = 86.50; the pin 17.00 with 0.018 and 0.005 over it, the crankpin width 24.20 less the middle of 0.30 to 0.90. */
    @Test
    void aRodMadeToOrderIsRankedWithItsEverySize() {
        Stock stock = Stock.longerThrow()
                .is(Choice.ROD_METAL, "billet_aluminium")
                .operation(Operation.Kind.ROD_TO_ORDER, "RSHOP", "80", "95", "0.1", 140)
                .wish(Stock.keeping(List.of("G1.30"), PartKind.CONNECTING_ROD, PartKind.GASKET));
        Answer answer = Fit.of(stock.build(), without("R3", stock.catalogue()));
        assertThat(answer.candidates()).isNotEmpty();
        Candidate best = answer.candidates().get(0);
        assertThat(best.title()).contains("RSHOP (have a rod made to 86.500 mm (3.4055 in))");
        assertThat(figure(best, Term.SQUISH)).isCloseTo(1.27e-3, within(1e-8));
        assertThat(best.pieces())
                .anySatisfy(p -> assertThat(p.note())
                        .contains(
                                "small-end bore 17.023 ± 0.005 mm",
                                "big-end width 23.60 ± 0.05 mm",
                                "billet aluminium"));
    }

    /**
     * The piston stands 0.60 too proud (0.5 more height) and its skirt, 19.2, leaves 0.05 to the counterweight: neither cut alone closes it, the crown cut by
     * 0.50 and the skirt by 1.5 together do.
     */
    @Test
    void twoOperationsTogetherAreTriedWhereOneIsNotEnough() {
        Map<Term, String> sizes = piston();
        sizes.put(Term.COMPRESSION_HEIGHT, "25.70 mm ± 0.02 mm");
        sizes.put(Term.SKIRT_BELOW_PIN, "19.2 mm ± 0.01 mm");
        Stock one = withPiston("P1", 40, sizes, Stock.longerThrow().is(Choice.CYLINDER_METAL, "iron"))
                .operation(Operation.Kind.SKIRT_CUT, "SKIRT", "0.5", "4", "0.5", 25)
                .wish(Stock.keeping(
                        List.of("P1", "R3", "G1.30"), PartKind.PISTON, PartKind.CONNECTING_ROD, PartKind.GASKET));
        assertThat(fit(one).candidates()).isEmpty();
        Stock both = withPiston("P1", 40, sizes, Stock.longerThrow().is(Choice.CYLINDER_METAL, "iron"))
                .operation(Operation.Kind.SKIRT_CUT, "SKIRT", "0.5", "4", "0.5", 25)
                .operation(Operation.Kind.CROWN_CUT, "CROWN", "0.2", "1.0", "0.1", 30)
                .wish(Stock.keeping(
                        List.of("P1", "R3", "G1.30"), PartKind.PISTON, PartKind.CONNECTING_ROD, PartKind.GASKET));
        Answer answer = fit(both);
        assertThat(answer.candidates()).isNotEmpty();
        assertThat(answer.candidates().get(0).title()).contains("cut the crown", "shorten the skirt");
        assertThat(figure(answer.candidates().get(0), Term.SKIRT_TO_COUNTERWEIGHT))
                .isGreaterThan(1.5e-3);
    }

    /** The deck stands 0.40 too high and is cut by a shop; where it says how close it holds the cut the fit can be sure, where it does not it cannot. */
    @Test
    void aCutWithoutAToleranceIsNeverForSure() {
        for (String tolerance : new String[] {"0.01", null}) {
            Stock stock = Stock.longerThrow()
                    .typed(Term.DECK_HEIGHT, "140.02 mm ± 0.01 mm")
                    .held(Operation.Kind.DECK_CUT, "DECK", "0.1", "0.6", "0.05", tolerance, 45)
                    .own(new OwnRule(
                            "squish", Term.SQUISH, null, Quantity.of("1.5", Units.MILLIMETRE), null, null, "", ""))
                    .wish(Stock.keeping(List.of("R3", "G1.30"), PartKind.CONNECTING_ROD, PartKind.GASKET));
            Answer answer = fit(stock);
            assertThat(answer.candidates()).isNotEmpty();
            Candidate best = answer.candidates().get(0);
            assertThat(best.title()).contains("cut the deck by 0.500 mm");
            if (tolerance == null) {
                assertThat(best.sureness()).isEqualTo(Sureness.AS_KNOWN);
                assertThat(best.values()).noneMatch(v -> v.term() == Term.SQUISH);
            } else {
                assertThat(figure(best, Term.SQUISH)).isCloseTo(1.27e-3, within(1e-8));
            }
        }
    }

    /** A rule of the owner's on any figure of a part that may be bought is kept, not only those on the stack. */
    @Test
    void anOwnRuleOnTheWeightOfAPistonCountsItOut() {
        Stock stock = Stock.longerThrow()
                .is(Choice.CYLINDER_METAL, "iron")
                .own(new OwnRule(
                        "class weight", Term.PISTON_MASS, Quantity.of("150", Units.GRAM), null, null, null, "", ""));
        Map<Term, String> light = piston();
        light.put(Term.PISTON_MASS, "131 g ± 0.5 g");
        Map<Term, String> heavy = piston();
        heavy.put(Term.PISTON_MASS, "162 g ± 0.5 g");
        withPiston("LIGHT", 40, light, stock);
        withPiston("HEAVY", 60, heavy, stock);
        stock.wish(Stock.keeping(List.of("R3", "G1.30"), PartKind.PISTON, PartKind.CONNECTING_ROD, PartKind.GASKET));
        Answer answer = fit(stock);
        assertThat(answer.candidates().get(0).title()).startsWith("HEAVY");
        assertThat(answer.candidates()).noneMatch(c -> c.title().startsWith("LIGHT"));
        assertThat(answer.rejections()).anyMatch(r -> r.why().contains("piston mass"));
    }

    /** A rod that does not say its metal is not judged by that of the old one, which was steel. */
    @Test
    void aBoughtRodIsNotMadeOfWhatTheOldOneWasMadeOf() {
        Stock stock = Stock.longerThrow().is(Choice.ROD_METAL, "steel");
        RuleWindows windows = new RuleWindows(stock.build());
        Row bought = Assembly.row(stock.catalogue().of(PartKind.CONNECTING_ROD).get(0));
        assertThat(bought.words()).containsEntry(Choice.ROD_METAL, "billet_aluminium");
        var rule = longthrow.core.engine.Rule.PIN_CLEARANCE;
        java.util.function.Function<Term, java.util.Optional<longthrow.core.measurement.Measured>> figures =
                t -> java.util.Optional.of(longthrow.core.measurement.Measured.exact(17e-3));
        RuleWindows.Limits steel = windows.of(rule, rule.term(), stock.build().choices(), figures);
        RuleWindows.Limits unknown = windows.around(bought).of(rule, rule.term(), Map.of(), figures);
        RuleWindows.Limits aluminium = windows.around(bought).of(rule, rule.term(), bought.words(), figures);
        // no rule is known for steel; where the metal may be aluminium, aluminium's holds
        assertThat(steel.isNone()).isTrue();
        assertThat(aluminium.least()).isEqualTo(0.018e-3, within(1e-9));
        assertThat(unknown).isEqualTo(aluminium);
    }

    /** A pin of 17.00 in a pin bore of 16.90, or of 17.20, is another size, whatever the rod says. */
    @Test
    void aPinThatDoesNotSuitItsPistonIsNoFit() {
        for (String bore : List.of("16.90 mm ± 0.005 mm", "17.20 mm ± 0.005 mm")) {
            Map<Term, String> sizes = piston();
            sizes.put(Term.PISTON_PIN_BORE, bore);
            Answer answer = fit(withPiston("P1", 40, sizes, Stock.longerThrow().is(Choice.CYLINDER_METAL, "iron"))
                    .wish(Stock.keeping(
                            List.of("P1", "R3", "G1.30"), PartKind.PISTON, PartKind.CONNECTING_ROD, PartKind.GASKET)));
            assertThat(answer.candidates()).isEmpty();
            assertThat(answer.rejections()).anyMatch(r -> r.reason().contains("pin bore of the piston"));
        }
    }

    /** A pin of 70 in a bore of 66 stands out of the piston. */
    @Test
    void aPinAsLongAsTheBoreIsWideIsNoFit() {
        Map<Term, String> sizes = piston();
        sizes.put(Term.PIN_LENGTH, "70 mm ± 0.1 mm");
        sizes.put(Term.CLIP_SPAN, "70.6 mm ± 0.05 mm");
        Answer answer = fit(withPiston("P1", 40, sizes, Stock.longerThrow().is(Choice.CYLINDER_METAL, "iron"))
                .wish(Stock.keeping(
                        List.of("P1", "R3", "G1.30"), PartKind.PISTON, PartKind.CONNECTING_ROD, PartKind.GASKET)));
        assertThat(answer.candidates()).isEmpty();
        assertThat(answer.rejections()).anyMatch(r -> r.reason().contains("as long as the bore is wide"));
    }

    /** 139.62 - 86.40 + 28.25 + 17.6 - 85 = 14.07 out of the sleeve: the most that any source allows is 6, picked or not. */
    @Test
    void whatNoSourceAllowsIsNoFitThoughNoneIsPicked() {
        Answer answer = fit(Stock.longerThrow().typed(Term.SLEEVE_LENGTH, "85.0 mm ± 0.1 mm"));
        assertThat(answer.candidates()).isEmpty();
        assertThat(answer.rejections()).anyMatch(r -> r.reason().contains("skirt leaves the sleeve"));
    }

    /** The deck's cut comes off the upper end of the sleeve: 140.12 - 86.40 + 28.25 + 17.6 - 95 = 4.57 out of it before and after. */
    @Test
    void aDeckCutDoesNotMoveTheLowerEndOfTheSleeve() {
        Stock stock = Stock.longerThrow()
                .typed(Term.DECK_HEIGHT, "140.12 mm ± 0.01 mm")
                .typed(Term.SLEEVE_LENGTH, "95.0 mm ± 0.1 mm")
                .held(Operation.Kind.DECK_CUT, "DECK", "0.1", "0.6", "0.05", "0.01", 45)
                .own(new OwnRule("squish", Term.SQUISH, null, Quantity.of("1.5", Units.MILLIMETRE), null, null, "", ""))
                .wish(Stock.keeping(List.of("R3", "G1.30"), PartKind.CONNECTING_ROD, PartKind.GASKET));
        Candidate best = fit(stock).candidates().get(0);
        assertThat(best.title()).contains("cut the deck by 0.600 mm");
        assertThat(figure(best, Term.SKIRT_OUT_OF_SLEEVE)).isCloseTo(4.57e-3, within(1e-8));
    }

    /** Side-valve: a gasket 0.6 thinner than the crushed one brings the head 0.6 nearer to the open valves, 1.40 becomes 0.80: under the owner's 1.27. */
    @Test
    void theGapOfOpenSideValvesIsJudged() {
        Stock stock = Stock.longerThrow()
                .is(Choice.VALVE_LAYOUT, "side")
                .typed(Term.GASKET_THICKNESS, "1.90 mm ± 0.01 mm")
                .typed(Term.GASKET_BORE, "68.5 mm ± 0.1 mm")
                .typed(Term.VALVE_TO_HEAD, "1.40 mm ± 0.02 mm")
                .own(new OwnRule(
                        "open valves",
                        Term.VALVE_TO_HEAD,
                        Quantity.of("1.27", Units.MILLIMETRE),
                        null,
                        null,
                        null,
                        "",
                        ""))
                .wish(Stock.keeping(List.of("R3", "G1.30"), PartKind.CONNECTING_ROD, PartKind.GASKET));
        Answer answer = fit(stock);
        assertThat(answer.candidates()).noneMatch(c -> c.title().contains("G1.30"));
        assertThat(answer.rejections()).anyMatch(r -> r.why().contains("valve to head 0.80"));
    }

    /** Clearance volume comes to 22.3 cc; the rule says 22.0 at least and the owner keeps 0.5 back from it. */
    @Test
    void whatIsKeptBackFromARuleIsKept() {
        Answer free = fit(Stock.longerThrow().own(volumeRule(null)));
        assertThat(free.candidates()).isNotEmpty();
        double room = figure(free.candidates().get(0), Term.CLEARANCE_VOLUME);
        assertThat(room).isBetween(22.0e-6, 22.5e-6);
        Answer kept = fit(Stock.longerThrow().own(volumeRule(Quantity.of("0.5", Units.CUBIC_CENTIMETRE))));
        assertThat(kept.candidates()).noneMatch(c -> c.title().equals("R3 + G1.30"));
    }

    private static OwnRule volumeRule(@org.jspecify.annotations.Nullable Quantity guard) {
        return new OwnRule(
                "class volume",
                Term.CLEARANCE_VOLUME,
                Quantity.of("22.0", Units.CUBIC_CENTIMETRE),
                null,
                guard,
                null,
                "",
                "");
    }

    /** A rod named to stay is not pushed aside by one made to order. */
    @Test
    void whatMustStayStays() {
        Stock stock = Stock.longerThrow()
                .operation(Operation.Kind.ROD_TO_ORDER, "RSHOP", "80", "95", "0.1", 140)
                .wish(Stock.keeping(List.of("R1", "G1.30"), PartKind.CONNECTING_ROD, PartKind.GASKET));
        Answer answer = fit(stock);
        assertThat(answer.candidates()).noneMatch(c -> c.title().contains("RSHOP"));
        assertThat(answer.rejections()).anyMatch(r -> r.example().contains("R1"));
    }

    /** No rod is in the catalogue, but a shop makes one. */
    @Test
    void aShopThatMakesRodsIsEnough() {
        Stock stock = Stock.longerThrow()
                .is(Choice.ROD_METAL, "billet_aluminium")
                .operation(Operation.Kind.ROD_TO_ORDER, "RSHOP", "80", "95", "0.1", 140);
        Catalogue catalogue = new Catalogue(
                stock.catalogue().of(PartKind.GASKET), stock.catalogue().operations());
        assertThat(Fit.of(stock.build(), catalogue).candidates())
                .anyMatch(c -> c.title().contains("RSHOP"));
    }

    /** A fit dearer than the budget is named with its price, and it is not said that nothing fits. */
    @Test
    void whatCostsMoreThanTheBudgetIsNamed() {
        Stock stock = Stock.longerThrow()
                .wish(new FitWish(
                        List.of(PartKind.CONNECTING_ROD, PartKind.GASKET),
                        List.of(),
                        OptionalLong.of(5_000),
                        "EUR",
                        true,
                        List.of(),
                        null));
        Answer answer = fit(stock);
        assertThat(answer.candidates()).isEmpty();
        assertThat(answer.rejections())
                .anyMatch(r ->
                        r.reason().equals(Obstacle.BUDGET.label()) && r.why().contains("109.00 EUR"));
        assertThat(answer.findings()).anyMatch(f -> f.message().contains("keeps within the budget"));
    }

    /** By hand: 139.62 - 28.25 - 24.90 + 1.02 = 87.49; squish 1.27 and the corners 0.05 + 0.01 + 0.0205 + 0.03 leave 86.11, and the skirt asks for 86.25. */
    @Test
    void theWindowOfTheRodIsSureAtTheCornersAndKnowsTheSkirt() {
        Answer answer = fit(Stock.longerThrow());
        assertThat(answer.findings())
                .filteredOn(f -> f.message().contains("with gasket G1.02"))
                .singleElement()
                .satisfies(f -> assertThat(f.message()).contains("no length keeps for sure", "86.26 mm"));
    }

    private static Stock withWheel() {
        return Stock.longerThrow()
                .typed(Term.CRANK_TAPER, "20.00 mm ± 0.02 mm")
                .typed(Term.FLYWHEEL_TAPER_BORE, "20.00 mm ± 0.02 mm")
                .part(
                        PartKind.CRANKSHAFT,
                        "C22",
                        60,
                        Map.of(
                                Term.STROKE, "56.50 mm ± 0.02 mm",
                                Term.CRANKPIN_DIAMETER, "26.98 mm ± 0.001 mm",
                                Term.CRANKPIN_WIDTH, "24.20 mm ± 0.001 mm",
                                Term.COUNTERWEIGHT_RADIUS, "38.9 mm ± 0.001 mm",
                                Term.CRANK_TAPER, "22.00 mm ± 0.02 mm"),
                        Map.of())
                .part(
                        PartKind.FLYWHEEL,
                        "F20",
                        40,
                        Map.of(
                                Term.FLYWHEEL_TAPER_BORE, "20.00 mm ± 0.02 mm",
                                Term.FLYWHEEL_RATED_SPEED, "7000 rpm"),
                        Map.of());
    }

    /** Taper 22 in a wheel of 20, and no wheel on offer of 22: choosing wheels too does not lift the check. */
    @Test
    void aCrankshaftThatNoWheelGoesOnIsNoFitThoughWheelsMayBeBought() {
        Answer answer = fit(withWheel()
                .wish(Stock.keeping(
                        List.of("C22", "R3", "G1.30"),
                        PartKind.CRANKSHAFT,
                        PartKind.CONNECTING_ROD,
                        PartKind.GASKET,
                        PartKind.FLYWHEEL)));
        assertThat(answer.candidates()).isEmpty();
        assertThat(answer.rejections()).anyMatch(r -> r.reason().contains("flywheel does not go on"));
    }

    /** A wheel of 24 that must stay does not go on a taper of 20: then there is no way with it. */
    @Test
    void aWayWithoutWhatMustStayIsNoWay() {
        Stock stock = withWheel()
                .part(
                        PartKind.FLYWHEEL,
                        "F24",
                        40,
                        Map.of(
                                Term.FLYWHEEL_TAPER_BORE, "24.00 mm ± 0.02 mm",
                                Term.FLYWHEEL_RATED_SPEED, "7000 rpm"),
                        Map.of())
                .wish(Stock.keeping(
                        List.of("F24", "R3", "G1.30"), PartKind.CONNECTING_ROD, PartKind.GASKET, PartKind.FLYWHEEL));
        Answer answer = fit(stock);
        assertThat(answer.candidates()).isEmpty();
        assertThat(answer.rejections()).anyMatch(r -> r.why().contains("F24"));
    }

    /** Head cuts bring the ratio to 9.8, and the cam on its chain past a lobe centre of 106: no cut keeps both rules. */
    @Test
    void aCutThatBreaksARuleOnTheCamIsNoFit() {
        Stock stock = Stock.longerThrow()
                .is(Choice.CAM_DRIVE, "overhead_chain")
                .typed(Term.CAM_SPROCKET, "60.6 mm ± 0.1 mm")
                .typed(Term.GASKET_THICKNESS, "1.30 mm ± 0.01 mm")
                .typed(Term.CHECKING_LIFT, "1 mm ± 0.01 mm")
                .typed(Term.INTAKE_OPENS, "10° ± 0.2°")
                .typed(Term.INTAKE_CLOSES, "40° ± 0.2°")
                .typed(Term.CHAMBER_AREA, "3300 mm2 ± 10 mm2")
                .held(Operation.Kind.HEAD_CUT, "HC", "0.05", "0.8", "0.05", "0.01", 20)
                .own(new OwnRule(
                        "ratio",
                        Term.COMPRESSION_RATIO,
                        Quantity.of("10.4", Units.BARE_RATIO),
                        null,
                        null,
                        null,
                        "",
                        ""))
                .own(new OwnRule(
                        "lobe", Term.INTAKE_LOBE_CENTRE, null, Quantity.of("106", Units.DEGREE), null, null, "", ""))
                .wish(Stock.keeping(List.of("R3", "G1.30"), PartKind.CONNECTING_ROD, PartKind.GASKET));
        Answer answer = fit(stock);
        assertThat(answer.candidates()).isEmpty();
        assertThat(answer.rejections()).anyMatch(r -> r.why().contains("intake lobe centre"));
    }

    /** A chamber of 5500 mm2 over a gasket hole of 68.5 mm, 3685 mm2: the gasket's edge hangs over it. */
    @Test
    void aChamberWiderThanTheGasketIsNeverForSure() {
        Stock stock = Stock.longerThrow()
                .part(
                        PartKind.HEAD,
                        "WIDE",
                        30,
                        Map.of(Term.CHAMBER_VOLUME, "16.2 cc ± 0.2 cc", Term.CHAMBER_AREA, "5500 mm2 ± 10 mm2"),
                        Map.of())
                .wish(Stock.keeping(
                        List.of("WIDE", "R3", "G1.30"), PartKind.CONNECTING_ROD, PartKind.GASKET, PartKind.HEAD));
        assertThat(fit(stock).candidates()).isNotEmpty().allSatisfy(c -> {
            assertThat(c.sureness()).isEqualTo(Sureness.AS_KNOWN);
            assertThat(c.unknowns()).anyMatch(f -> f.where().equals("chamber to gasket"));
        });
    }

    /** Of cuts that cost the same the one that takes least metal: 10.4 is reached at 0.3 of those offered. */
    @Test
    void noMoreIsCutThanIsNeeded() {
        Stock stock = Stock.longerThrow()
                .typed(Term.CHAMBER_AREA, "3300 mm2 ± 10 mm2")
                .held(Operation.Kind.HEAD_CUT, "HC", "0.05", "0.8", "0.05", "0.01", 20)
                .own(new OwnRule(
                        "ratio",
                        Term.COMPRESSION_RATIO,
                        Quantity.of("10.2", Units.BARE_RATIO),
                        null,
                        null,
                        null,
                        "",
                        ""))
                .wish(Stock.keeping(List.of("R3", "G1.30"), PartKind.CONNECTING_ROD, PartKind.GASKET));
        Answer answer = fit(stock);
        double ratio = figure(answer.candidates().get(0), Term.COMPRESSION_RATIO);
        assertThat(ratio).isBetween(10.2, 10.55);
    }

    @Test
    void anAimThatNoRuleAllowsIsQuestioned() {
        Answer answer = fit(Stock.longerThrow().aim(Term.SQUISH, "9 mm"));
        assertThat(answer.findings()).anyMatch(f -> f.message().contains("outside what the rules allow"));
    }
}
