package longthrow.core.fit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalLong;
import longthrow.core.answer.Answer;
import longthrow.core.answer.Candidate;
import longthrow.core.build.Build;
import longthrow.core.build.FitWish;
import longthrow.core.build.Given;
import longthrow.core.build.OwnRule;
import longthrow.core.catalogue.Catalogue;
import longthrow.core.catalogue.Operation;
import longthrow.core.catalogue.PartKind;
import longthrow.core.quantity.Quantity;
import longthrow.core.quantity.Units;
import longthrow.core.term.Choice;
import longthrow.core.term.Term;
import org.junit.jupiter.api.Test;

/** Traps that a wrong "it fits" would come of, each on the invented first scenario with one thing changed. */
class FitTrapsTest {
    private static Answer fit(Stock stock) {
        return Fit.of(stock.build(), stock.catalogue());
    }

    private static Answer withPiston(Map<Term, String> sizes) {
        Stock stock = Stock.longerThrow()
                .is(Choice.CYLINDER_METAL, "iron")
                .part(PartKind.PISTON, "P1", 40, sizes, Map.of(Choice.PISTON_ALLOY, "cast"))
                .wish(Stock.keeping(
                        List.of("P1", "R3", "G1.30"), PartKind.PISTON, PartKind.CONNECTING_ROD, PartKind.GASKET));
        return fit(stock);
    }

    @Test
    void theSoundPistonFits() {
        assertThat(withPiston(Stock.piston()).candidates())
                .singleElement()
                .satisfies(c -> assertThat(c.title()).isEqualTo("P1 + R3 + G1.30"));
    }

    /** 24.90 - 8.50 - 17.0 = -0.60: the pin bore cuts the groove, tolerance said or not. */
    @Test
    void anOilGrooveCutByThePinBoreIsNoFit() {
        Map<Term, String> sizes = Stock.piston();
        sizes.put(Term.OIL_GROOVE_TO_CROWN, "17.0 mm");
        Answer answer = withPiston(sizes);
        assertThat(answer.candidates()).isEmpty();
        assertThat(answer.rejections())
                .anySatisfy(r -> assertThat(r.reason()).contains("cuts the oil-ring groove open"));
    }

    /** A dome is no rim: what it does in the chamber no sheet tells, tolerance said or not. */
    @Test
    void aRisingCrownIsShown() {
        Map<Term, String> sizes = Stock.piston();
        sizes.put(Term.CROWN_RISE, "2.2 mm");
        assertThat(withPiston(sizes).candidates())
                .singleElement()
                .satisfies(c -> assertThat(c.forces()).anyMatch(f -> f.message().contains("crown rises 2.2")));
    }

    /** Skirt 19.2: 86.40 - 28.25 - 19.2 - 38.9 = 0.05; the rule asks 1.5, the shop cuts in steps of 0.5: 1.5 leaves 1.55. */
    @Test
    void aSkirtIsCutToASizeThatClears() {
        Map<Term, String> sizes = Stock.piston();
        sizes.put(Term.SKIRT_BELOW_PIN, "19.2 mm ± 0.01 mm");
        Stock stock = Stock.longerThrow()
                .is(Choice.CYLINDER_METAL, "iron")
                .part(PartKind.PISTON, "P1", 40, sizes, Map.of(Choice.PISTON_ALLOY, "cast"))
                .operation(Operation.Kind.SKIRT_CUT, "CUT", "0.5", "4", "0.5", 25)
                .wish(Stock.keeping(
                        List.of("P1", "R3", "G1.30"), PartKind.PISTON, PartKind.CONNECTING_ROD, PartKind.GASKET));
        assertThat(fit(stock).candidates()).singleElement().satisfies(c -> {
            assertThat(c.title()).contains("shorten the skirt by 1.500 mm");
            assertThat(c.values())
                    .filteredOn(v -> v.term() == Term.SKIRT_TO_COUNTERWEIGHT)
                    .allSatisfy(v -> assertThat(v.figure().value()).isGreaterThan(1.5e-3));
        });
    }

    /** AKI 87, 9.0 at 101.325 kPa: at 87.3 kPa 9.0 (101.325 / 87.3)^(1 / 1.3) = 10.09, so 9.66 is in; at sea level it is not. */
    @Test
    void theRatioForTheFuelHangsOnThePlace() {
        Stock seaLevel = Stock.longerThrow().choose("static_ratio", "regular");
        assertThat(fit(seaLevel).candidates()).isEmpty();
        Stock high = Stock.longerThrow()
                .choose("static_ratio", "regular")
                .wish(new FitWish(
                        List.of(PartKind.CONNECTING_ROD, PartKind.GASKET),
                        List.of(),
                        OptionalLong.empty(),
                        "",
                        true,
                        List.of(),
                        Quantity.of("87.3", Units.KILOPASCAL)));
        Answer answer = fit(high);
        assertThat(answer.candidates())
                .singleElement()
                .satisfies(c -> assertThat(c.title()).isEqualTo("R3 + G1.30"));
        assertThat(answer.defaults()).anyMatch(d -> d.what().contains("10.09, where sea level has 9.00"));
    }

    /**
     * The search has its own quick sums: on the engine of the first scenario they are those of the formulas that give the candidate its figures.
     */
    @Test
    void theQuickSumsAreThoseOfTheFormulas() {
        Stock stock = Stock.longerThrow();
        Assembly assembly =
                new Assembly(stock.build(), longthrow.core.measure.Appraisal.sound(stock.build()), stock.catalogue());
        List<Found> found = new Hunt(assembly, new Barred(), 60).best();
        assertThat(found).singleElement().satisfies(f -> {
            Candidate candidate = fit(stock).candidates().get(0);
            assertThat(f.combination().ratio()).isCloseTo(value(candidate, Term.COMPRESSION_RATIO), within(1e-9));
            assertThat(f.combination().squishHalf() / 2e12).isCloseTo(value(candidate, Term.SQUISH), within(1e-12));
            assertThat(f.combination().deckHalf() / 2e12)
                    .isCloseTo(value(candidate, Term.DECK_CLEARANCE), within(1e-12));
        });
    }

    private static double value(Candidate candidate, Term term) {
        return candidate.values().stream()
                .filter(v -> v.term() == term)
                .findFirst()
                .orElseThrow()
                .figure()
                .value();
    }

    /** Nothing fits, so a rod is ordered: pin 17.00 + 0.018 + 0.005, crankpin width 24.20 less the middle of 0.30 to 0.90. */
    @Test
    void aRodToOrderTakesItsClearancesFromTheRules() {
        Stock stock = Stock.longerThrow()
                .is(Choice.ROD_METAL, "billet_aluminium")
                .own(new OwnRule(
                        "none fits", Term.SQUISH, Quantity.of("1.6", Units.MILLIMETRE), null, null, null, "", ""));
        Answer answer = fit(stock);
        assertThat(answer.candidates()).isEmpty();
        assertThat(answer.findings()).anySatisfy(f -> {
            assertThat(f.where()).isEqualTo("to order: connecting rod");
            assertThat(f.message()).contains("small-end bore 17.023", "big-end width 23.60");
        });
    }

    /** A rule on a figure that cannot be worked out is never passed in silence, and nothing is then for sure. */
    @Test
    void aRuleInTheDarkIsNamed() {
        Stock stock = new Stock();
        Stock.longerThrow().build().given().forEach((term, list) -> {
            if (term != Term.CHAMBER_VOLUME) {
                var typed = (longthrow.core.build.Given.Typed) list.get(0);
                stock.typed(
                        term,
                        typed.value().written() + " ± " + typed.plusMinus().written());
            }
        });
        stock.own(new OwnRule(
                "my ratio", Term.COMPRESSION_RATIO, null, Quantity.of("6", Units.BARE_RATIO), null, null, "", ""));
        stock.aim(Term.SQUISH, "1.27 mm").wish(Stock.longerThrow().build().fit());
        Answer answer = Fit.of(stock.build(), Stock.longerThrow().catalogue());
        assertThat(answer.candidates()).isNotEmpty().allSatisfy(c -> {
            assertThat(c.isPartlyUnknown()).isTrue();
            assertThat(c.sureness()).isEqualTo(longthrow.core.answer.Sureness.AS_KNOWN);
            assertThat(c.unknowns()).anyMatch(f -> f.message().contains("my ratio"));
        });
    }

    /** A dish of 1.1 cc after 0.5 mm off the crown is between nothing and 1.1 cc: the ratio carries that doubt. */
    @Test
    void aCutCrownHasADishOfUncertainVolume() {
        Row row = Assembly.row(Stock.longerThrow()
                .part(PartKind.PISTON, "P1", 40, Stock.piston(), Map.of())
                .catalogue()
                .of(PartKind.PISTON)
                .get(0));
        Dim left = row.crownCut(0.5e-3).dim(Term.CROWN_VOLUME).orElseThrow();
        assertThat(left.value() - left.half()).isLessThanOrEqualTo(0);
        assertThat(left.value() + left.half()).isGreaterThanOrEqualTo(1.1e-6);
    }

    @Test
    void aRodRatedBelowTheWantedSpeedIsNoRod() {
        Stock stock = Stock.longerThrow();
        Map<Term, String> slow = new HashMap<>();
        stock.catalogue().of(PartKind.CONNECTING_ROD).stream()
                .filter(p -> p.code().equals("R3"))
                .forEach(p ->
                        p.figures().forEach((t, f) -> slow.put(t, f.value().written() + " ± 0.001 mm")));
        slow.put(Term.ROD_RATED_SPEED, "4500 rpm");
        stock.part(PartKind.CONNECTING_ROD, "SLOW", 10, slow, Map.of(Choice.ROD_METAL, "billet_aluminium"));
        Answer answer = fit(stock);
        assertThat(answer.candidates()).noneMatch(c -> c.title().contains("SLOW"));
        assertThat(answer.rejections()).anyMatch(r -> r.reason().contains("below the wanted speed"));
    }

    /** The engine's own rod is held to its rating too, but for the speed that the maker of the engine governs it to. */
    @Test
    void ownRodRatedBelowTheWantedSpeedIsNoRodEither() {
        assertThat(withOwnRodRated("4500", "3600").candidates())
                .noneMatch(c -> c.title().equals("as it is"));
        assertThat(withOwnRodRated("7000", "3600").candidates())
                .anyMatch(c -> c.title().equals("as it is"));
        assertThat(withOwnRodRated("4500", "6500").candidates())
                .anyMatch(c -> c.title().equals("as it is"));
    }

    private static Answer withOwnRodRated(String rated, String governed) {
        Stock stock = Stock.longerThrow();
        Build with = Taking.of(stock.build(), stock.catalogue(), "R3 + G1.30").orElseThrow();
        Map<Term, List<Given>> given = new EnumMap<>(Term.class);
        given.putAll(with.given());
        given.put(Term.ROD_RATED_SPEED, List.of(speed(rated)));
        given.put(Term.GOVERNED_SPEED, List.of(speed(governed)));
        return Fit.of(with.withGiven(given), stock.catalogue());
    }

    private static Given speed(String written) {
        return new Given.Specified(Quantity.of(written, Units.RPM), null, "its maker", false, "");
    }

    /** 86.40 - 28.25 - 18.9 - 38.9 = 0.35 under the boss, although the skirt beside it clears. */
    @Test
    void aPinBossInTheCounterweightIsNoFit() {
        Map<Term, String> sizes = Stock.piston();
        sizes.put(Term.BOSS_BELOW_PIN, "18.9 mm");
        Answer answer = withPiston(sizes);
        assertThat(answer.candidates()).isEmpty();
        assertThat(answer.rejections()).anyMatch(r -> r.why().contains("pin boss to counterweight"));
    }

    @Test
    void aPinLongerThanItsClipsIsNoFit() {
        Map<Term, String> sizes = Stock.piston();
        sizes.put(Term.PIN_LENGTH, "52.0 mm");
        sizes.put(Term.CLIP_SPAN, "51.5 mm");
        assertThat(withPiston(sizes).candidates()).isEmpty();
    }

    @Test
    void aPistonAsLargeAsItsBoreIsNoFitUnlessTheCylinderIsBored() {
        Map<Term, String> sizes = Stock.piston();
        sizes.put(Term.PISTON_DIAMETER, "66.45 mm ± 0.005 mm");
        assertThat(withPiston(sizes).candidates()).isEmpty();
        Stock bored = Stock.longerThrow()
                .is(Choice.CYLINDER_METAL, "iron")
                .part(PartKind.PISTON, "P1", 40, sizes, Map.of(Choice.PISTON_ALLOY, "cast"))
                .operation(Operation.Kind.BORE_AND_HONE, "BORE", "60", "70", "", 55)
                .wish(Stock.keeping(
                        List.of("P1", "R3", "G1.30"), PartKind.PISTON, PartKind.CONNECTING_ROD, PartKind.GASKET));
        assertThat(fit(bored).candidates()).singleElement().satisfies(c -> {
            assertThat(c.pieces()).extracting(Candidate.Piece::code).contains("BORE");
            assertThat(c.total().known()).isEqualTo(100 * (40 + 95 + 55 + 14));
        });
    }

    /** The gasket says no tolerance for its hole, so no ratio with doubt can be told; by the sizes alone 9.66 is over the rule's 9. */
    @Test
    void aRuleThatCannotBeJudgedForWantOfAToleranceIsJudgedByTheSizes() {
        Stock stock = Stock.longerThrow()
                .own(new OwnRule(
                        "ratio",
                        Term.COMPRESSION_RATIO,
                        null,
                        Quantity.of("9.6", Units.BARE_RATIO),
                        null,
                        null,
                        "",
                        ""))
                .part(
                        PartKind.GASKET,
                        "VAGUE",
                        5,
                        Map.of(Term.GASKET_THICKNESS, "1.30 mm ± 0.03 mm", Term.GASKET_BORE, "68.5 mm"),
                        Map.of())
                .wish(Stock.keeping(List.of("R3", "VAGUE"), PartKind.CONNECTING_ROD, PartKind.GASKET));
        Answer answer = fit(stock);
        assertThat(answer.candidates().toString() + answer.rejections()).contains("9.66");
        assertThat(answer.candidates().stream()
                        .filter(c ->
                                c.unknowns().stream().noneMatch(f -> f.where().contains("not judged"))))
                .isEmpty();
    }

    /** 28.02 does not go into a bearing for 25; where neither shaft nor bearing was read, that is said. */
    @Test
    void aCrankshaftOfAnotherCaseIsNoFit() {
        Map<Term, String> crank = new HashMap<>(Map.of(
                Term.STROKE, "56.50 mm ± 0.02 mm",
                Term.CRANKPIN_DIAMETER, "26.98 mm ± 0.001 mm",
                Term.CRANKPIN_WIDTH, "24.30 mm ± 0.001 mm",
                Term.COUNTERWEIGHT_RADIUS, "38.9 mm ± 0.001 mm",
                Term.MAIN_JOURNAL, "28.02 mm ± 0.005 mm"));
        Stock unread = Stock.longerThrow()
                .part(PartKind.CRANKSHAFT, "C1", 90, crank, Map.of())
                .wish(Stock.keeping(
                        List.of("C1", "R3", "G1.30"), PartKind.CRANKSHAFT, PartKind.CONNECTING_ROD, PartKind.GASKET));
        assertThat(fit(unread).candidates())
                .singleElement()
                .satisfies(c -> assertThat(c.isPartlyUnknown()).isTrue());
        Stock other = Stock.longerThrow()
                .typed(Term.MAIN_BORE, "25.03 mm ± 0.005 mm")
                .part(PartKind.CRANKSHAFT, "C1", 90, crank, Map.of())
                .wish(Stock.keeping(
                        List.of("C1", "R3", "G1.30"), PartKind.CRANKSHAFT, PartKind.CONNECTING_ROD, PartKind.GASKET));
        assertThat(fit(other).candidates()).isEmpty();
    }

    @Test
    void rulesThatExcludeEachOtherAreNamed() {
        Stock stock = Stock.longerThrow()
                .own(new OwnRule("tight", Term.SQUISH, null, Quantity.of("1", Units.MILLIMETRE), null, null, "", ""));
        Answer answer = fit(stock);
        assertThat(answer.candidates()).isEmpty();
        assertThat(answer.findings()).anyMatch(f -> f.message().contains("exclude each other"));
    }

    /** It may be bought, and there is none: to be told to allow it helps nobody. */
    @Test
    void aKindTheCatalogueDoesNotHoldIsSaidToBeMissingThere() {
        Stock stock = Stock.longerThrow().wish(Stock.keeping(List.of(), PartKind.CONNECTING_ROD, PartKind.GASKET));
        Answer answer = Fit.of(
                stock.build(),
                new Catalogue(
                        stock.catalogue().parts().stream()
                                .filter(p -> p.kind() != PartKind.GASKET)
                                .toList(),
                        List.of()));
        assertThat(answer.unknowns())
                .filteredOn(u -> u.term() == Term.GASKET_THICKNESS)
                .singleElement()
                .satisfies(u -> assertThat(u.why())
                        .contains("the catalogue holds no " + PartKind.GASKET.label())
                        .doesNotContain("fit: choose:"));
    }

    @Test
    void aMissingPlaceInTheStackIsNamedRatherThanSearched() {
        Answer answer = fit(Stock.longerThrow().wish(Stock.keeping(List.of(), PartKind.CONNECTING_ROD)));
        assertThat(answer.unknowns())
                .anyMatch(u -> u.term() == Term.GASKET_THICKNESS && u.why().contains("add gasket to fit: choose:"));
    }

    @Test
    void aDoubtAsWideAsThePartLiftsNothingAndFitsNothing() {
        Stock stock = Stock.longerThrow().typed(Term.STROKE, "56.50 mm ± 8 mm");
        Answer answer = fit(stock);
        assertThat(answer.candidates()).isEmpty();
        assertThat(answer.unknowns()).anyMatch(u -> u.term() == Term.STROKE);
        assertThat(answer.stops()).anyMatch(s -> s.what().contains("mocked up"));
    }

    @Test
    void otherCurrenciesAreNotAdded() {
        Stock stock = Stock.longerThrow()
                .wish(new FitWish(
                        List.of(PartKind.CONNECTING_ROD, PartKind.GASKET),
                        List.of(),
                        OptionalLong.of(33_000),
                        "USD",
                        true,
                        List.of(),
                        null));
        Answer answer = fit(stock);
        Candidate.Total total = answer.candidates().get(0).total();
        assertThat(total.known()).isZero();
        assertThat(total.notPriced()).contains("R3", "HONE");
        assertThat(answer.findings()).anyMatch(f -> f.message().contains("no rate of exchange"));
    }

    /** Pin 17.00 in 17.01: the shop takes off at least 0.02, in steps of 0.005: 0.020, not the 0.010 that would do. */
    @Test
    void machiningKeepsToItsRangeAndSteps() {
        Stock stock = Stock.longerThrow();
        Answer answer = Fit.of(
                stock.build(),
                new longthrow.core.catalogue.Catalogue(
                        stock.catalogue().parts(),
                        new Stock()
                                .operation(Operation.Kind.SMALL_END_HONE, "COARSE", "0.02", "0.06", "0.005", 9)
                                .catalogue()
                                .operations()));
        assertThat(answer.candidates())
                .singleElement()
                .satisfies(c -> assertThat(c.pieces())
                        .filteredOn(p -> p.code().equals("COARSE"))
                        .singleElement()
                        .satisfies(p -> assertThat(p.note()).contains("0.020 mm")));
    }
}
