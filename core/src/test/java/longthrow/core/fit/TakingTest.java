package longthrow.core.fit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import longthrow.core.answer.Answer;
import longthrow.core.answer.Candidate;
import longthrow.core.build.Build;
import longthrow.core.build.Decided;
import longthrow.core.build.Given;
import longthrow.core.catalogue.Catalogue;
import longthrow.core.catalogue.Offer;
import longthrow.core.catalogue.Operation;
import longthrow.core.catalogue.PartKind;
import longthrow.core.measure.Measure;
import longthrow.core.measurement.Measured;
import longthrow.core.quantity.Quantity;
import longthrow.core.quantity.Units;
import longthrow.core.term.Choice;
import longthrow.core.term.Term;
import org.junit.jupiter.api.Test;

/** The first scenario (invented) with the way taken that fit found, and all that is not to be taken. */
class TakingTest {
    private static final String FOUND = "R3 + G1.30";

    private final Build build = Stock.longerThrow()
            .typed(Term.CRANKING_PRESSURE, "610 kPa ± 20 kPa")
            .build();
    private final Catalogue catalogue = Stock.longerThrow().catalogue();

    private Build taken() {
        return Taking.of(build, catalogue, FOUND).orElseThrow();
    }

    @Test
    void whatTheCatalogueSaysOfThePartsStandsInTheBuild() {
        Build taken = taken();
        assertThat(entry(taken, Term.ROD_LENGTH).value().written()).isEqualTo("86.40 mm");
        assertThat(entry(taken, Term.ROD_LENGTH).tolerance()).hasToString("0.03 mm");
        assertThat(entry(taken, Term.ROD_LENGTH).catalogue())
                .as("the seller's word, though it has a ±")
                .isTrue();
        assertThat(entry(taken, Term.ROD_LENGTH).by()).as("whose figure it is").isEqualTo("R3");
        assertThat(entry(taken, Term.BIG_END_WIDTH).value().written()).isEqualTo("23.9 mm");
        assertThat(entry(taken, Term.GASKET_THICKNESS).value().written()).isEqualTo("1.30 mm");
        assertThat(entry(taken, Term.GASKET_THICKNESS).by()).isEqualTo("G1.30");
        assertThat(taken.choice(Choice.ROD_METAL)).contains("billet_aluminium");
    }

    @Test
    void everythingElseStaysAsItWasWritten() {
        Build taken = taken();
        for (Term term : List.of(
                Term.BORE,
                Term.STROKE,
                Term.DONOR_STROKE,
                Term.CHAMBER_VOLUME,
                Term.PIN_TOP_TO_CROWN,
                Term.WANTED_SPEED)) {
            assertThat(taken.of(term)).as(term.path()).isEqualTo(build.of(term)).isNotEmpty();
        }
        assertThat(taken.choice(Choice.FUEL)).isEqualTo(build.choice(Choice.FUEL));
        assertThat(taken.aims()).isEqualTo(build.aims());
        assertThat(taken.fit()).isEqualTo(build.fit());
        assertThat(taken.ownRules()).isEqualTo(build.ownRules());
        assertThat(taken.name()).isEqualTo(build.name());
    }

    /** It was read with the old parts in: kept, it would speak against the new ones. */
    @Test
    void whatWasReadOnTheEngineAsItWasAssembledGoes() {
        assertThat(build.of(Term.CRANKING_PRESSURE)).isNotEmpty();
        assertThat(taken().of(Term.CRANKING_PRESSURE)).isEmpty();
    }

    /** A gasket says nothing of the rod on its crankpin, nor of how far the piston comes. */
    @Test
    void whatWasReadOfPartsThatStayStands() {
        Map<Term, List<Given>> given = new EnumMap<>(Term.class);
        given.putAll(taken().given());
        List<Term> ofTheRest =
                List.of(Term.ROD_SIDE_CLEARANCE, Term.CRANK_END_PLAY, Term.TOP_RING_GAP, Term.DECK_CLEARANCE_THRUST);
        List<String> read = List.of("0.35", "0.10", "0.28", "0.07");
        for (int i = 0; i < read.size(); i++) {
            given.put(ofTheRest.get(i), List.of(millimetres(read.get(i))));
        }
        given.put(Term.SQUISH_OUTPUT_END, List.of(millimetres("1.37")));
        Build own = build.withGiven(given);
        Build other = Taking.of(own, catalogue, "G1.30").orElseThrow();
        for (Term term : ofTheRest) {
            assertThat(other.of(term)).as(term.path()).isEqualTo(own.of(term));
        }
        assertThat(other.of(Term.DECK_HEIGHT)).isEqualTo(own.of(Term.DECK_HEIGHT));
        assertThat(other.of(Term.SQUISH_OUTPUT_END))
                .as("read over the old gasket")
                .isEmpty();
        Build otherRod = Taking.of(own, catalogue, FOUND).orElseThrow();
        assertThat(otherRod.of(Term.ROD_SIDE_CLEARANCE)).isEmpty();
        assertThat(otherRod.of(Term.DECK_CLEARANCE_THRUST)).isEmpty();
        assertThat(otherRod.of(Term.CRANK_END_PLAY)).isEqualTo(own.of(Term.CRANK_END_PLAY));
    }

    private static Given millimetres(String number) {
        return new Given.Typed(Quantity.of(number, Units.MILLIMETRE), Quantity.of("0.03", Units.MILLIMETRE), "feeler");
    }

    /**
     * What stands in the build is what the sheet says, to the micrometre. Its doubt is no smaller: a seller's ± is kept as the half-width of a
     * rectangle, which is wider than the 95 in 100 the search reckons with by 1.96 over the root of 3 at most.
     */
    @Test
    void measureFindsWhatFitPromised() {
        Answer answer = Fit.of(build, catalogue);
        Candidate candidate = answer.candidates().get(0);
        assertThat(candidate.title()).isEqualTo(FOUND);
        Answer measured = Measure.of(taken(), List.of());
        for (Term term : List.of(Term.DECK_CLEARANCE, Term.SQUISH, Term.SKIRT_TO_COUNTERWEIGHT)) {
            Measured promised = candidate.values().stream()
                    .filter(v -> v.term() == term)
                    .findFirst()
                    .orElseThrow()
                    .figure();
            Measured found = measured.value(term).orElseThrow().figure();
            assertThat(found.value()).as(term.path()).isCloseTo(promised.value(), within(1e-6));
            assertThat(found.expanded())
                    .as(term.path())
                    .isBetween(promised.expanded() - 1e-6, promised.expanded() * 1.96 / Math.sqrt(3) + 1e-6);
        }
    }

    @Test
    void theBuildThatWasAskedIsNotChanged() {
        Map<Term, List<Given>> before = Map.copyOf(build.given());
        taken();
        assertThat(build.given()).isEqualTo(before);
    }

    @Test
    void whatFitDidNotFindIsNotTaken() {
        for (String title :
                List.of("", "R3", "G1.30", "R3 + G1.02", "R1 + G1.30", "R4 + G1.30", "r3 + g1.30", "R9 + G1.30")) {
            assertThat(Taking.of(build, catalogue, title)).as(title).isEmpty();
        }
    }

    @Test
    void whatIsNotOnOfferAnyMoreIsNotTaken() {
        Catalogue without = new Catalogue(
                catalogue.parts().stream().filter(p -> !p.code().equals("R3")).toList(), catalogue.operations());
        assertThat(Taking.of(build, without, FOUND)).isEmpty();
        assertThat(Taking.of(build, new Catalogue(List.of(), List.of()), FOUND)).isEmpty();
    }

    /** The deck was read again meanwhile, one millimetre lower: the piston would stand out of it. */
    @Test
    void whatFitsThisEngineNoMoreIsNotTaken() {
        Build other = Stock.longerThrow()
                .typed(Term.DECK_HEIGHT, "138.62 mm ± 0.05 mm")
                .build();
        assertThat(Taking.of(other, catalogue, FOUND)).isEmpty();
    }

    private static Given.Specified entry(Build build, Term term) {
        assertThat(build.of(term)).hasSize(1);
        return (Given.Specified) build.of(term).get(0);
    }

    /** What is bored is read anew; where the cylinder stands over the crankshaft is as it was. */
    @Test
    void aReboreTakesTheReadingsOfTheBoreAloneOut() {
        Map<Term, String> sizes = Stock.piston();
        sizes.put(Term.PISTON_DIAMETER, "66.45 mm ± 0.005 mm");
        Stock stock = Stock.longerThrow()
                .typed(Term.BORE_OFFSET, "1.50 mm ± 0.05 mm")
                .typed(Term.BORE_MIDDLE_AXIS, "66.00 mm ± 0.01 mm")
                .is(Choice.CYLINDER_METAL, "iron")
                .part(PartKind.PISTON, "P1", 40, sizes, Map.of(Choice.PISTON_ALLOY, "cast"))
                .operation(Operation.Kind.BORE_AND_HONE, "BORE", "60", "70", "", 55)
                .wish(Stock.keeping(
                        List.of("P1", "R3", "G1.30"), PartKind.PISTON, PartKind.CONNECTING_ROD, PartKind.GASKET));
        Build own = stock.build();
        Candidate way = Fit.of(own, stock.catalogue()).candidates().get(0);
        Build bored = Taking.of(own, stock.catalogue(), way.title()).orElseThrow();
        assertThat(bored.of(Term.BORE_OFFSET))
                .isEqualTo(own.of(Term.BORE_OFFSET))
                .isNotEmpty();
        assertThat(bored.of(Term.BORE_MIDDLE_AXIS)).isEmpty();
        assertThat(entry(bored, Term.BORE).value().si()).isGreaterThan(66.45e-3);
    }

    // ---- what is taken stays a plan until it is read

    private static Decided.Work hone(Build build) {
        return build.taken().stream()
                .flatMap(d -> d instanceof Decided.Work work ? Stream.of(work) : Stream.of())
                .findFirst()
                .orElseThrow();
    }

    private static Build with(Build build, Term term, Given... entries) {
        Map<Term, List<Given>> given = new EnumMap<>(Term.class);
        given.putAll(build.given());
        given.put(term, List.of(entries));
        return build.withGiven(given);
    }

    private static Given read(String millimetres) {
        return new Given.Taken(
                List.of(Quantity.of(millimetres, Units.MILLIMETRE)), null, null, null, Given.Origin.NOT_SAID, "");
    }

    /** R3 has 17.01 and is honed; prices are those of {@link Stock#longerThrow()}. */
    @Test
    void whatIsBoughtAndDoneIsKeptWithItsOffer() {
        Build taken = taken();
        assertThat(taken.taken()).extracting(Decided::code).containsExactlyInAnyOrder("R3", "G1.30", "HONE");
        assertThat(taken.taken())
                .filteredOn(d -> d.code().equals("R3"))
                .singleElement()
                .satisfies(d -> assertThat(d.offer().price()).hasValue(9500));
        Decided.Work hone = hone(taken);
        assertThat(hone.kind()).isEqualTo(Operation.Kind.SMALL_END_HONE);
        assertThat(hone.offer().price()).hasValue(1400);
        assertThat(hone.from()).hasToString("17.01 mm");
        assertThat(hone.tolerance()).hasToString("0.002 mm");
        assertThat(hone.after())
                .as("ticket and build file name one size")
                .contains(entry(taken, Term.SMALL_END_BORE).value());
        assertThat(hone.after().orElseThrow().si()).isGreaterThan(17.01e-3);
        assertThat(build.taken()).isEmpty();
    }

    @Test
    void sizesArePlannedUntilTheyAreReadAndVerdictsSaySo() {
        Build taken = taken();
        assertThat(taken.pendingOn(Term.SMALL_END_BORE)).isPresent();
        Answer measured = Measure.of(taken, List.of());
        assertThat(measured.value(Term.SMALL_END_BORE).orElseThrow().howKnown()).isEqualTo("planned, not machined yet");
        assertThat(measured.value(Term.PIN_CLEARANCE).orElseThrow().howKnown())
                .isEqualTo("partly planned, not machined yet");
        assertThat(measured.value(Term.ROD_LENGTH).orElseThrow().howKnown()).isEqualTo("catalogue");
        assertThat(measured.verdictsOn(Term.PIN_CLEARANCE))
                .isNotEmpty()
                .allSatisfy(v -> assertThat(v.why()).endsWith("as planned, not machined yet: small-end bore"));
        assertThat(measured.verdictsOn(Term.SQUISH))
                .allSatisfy(v -> assertThat(v.why()).doesNotContain("planned"));
        assertThat(measured.findings())
                .anySatisfy(f -> assertThat(f.message()).contains("planned, not machined yet", "17.0"));
        assertThat(Fit.of(taken, catalogue).findings())
                .as("a search of the build with the plan in it")
                .anySatisfy(f -> assertThat(f.message()).contains("planned, not machined yet"));

        Build read =
                with(taken, Term.SMALL_END_BORE, taken.of(Term.SMALL_END_BORE).get(0), read("17.026"));
        assertThat(read.pending()).isEmpty();
        assertThat(read.taken()).as("paid for all the same").isEqualTo(taken.taken());
        assertThat(Measure.of(read, List.of()).findings())
                .noneSatisfy(f -> assertThat(f.message()).contains("planned"));
        assertThat(Measure.of(read, List.of()).verdictsOn(Term.PIN_CLEARANCE))
                .allSatisfy(v -> assertThat(v.why()).doesNotContain("planned"));
    }

    /** A half-width of 0.003 mm supports 0.001 mm; a tenth of that is 0.1 µm. */
    @Test
    void sizesAreWrittenNoFinerThanATenthOfWhatTheirToleranceSupports() {
        Given.Specified bore = entry(taken(), Term.SMALL_END_BORE);
        assertThat(bore.value().value().toDecimal().scale()).isLessThanOrEqualTo(4);
        assertThat(bore.tolerance())
                .isNotNull()
                .satisfies(t -> assertThat(t.written()).matches("0\\.\\d{1,4} mm"));
        assertThat(hone(taken()).amount().value().toDecimal().scale()).isLessThanOrEqualTo(4);
    }

    @Test
    void anotherWayReplacesWhatWasTakenForTheSamePart() {
        Decided.Work oldHone = new Decided.Work(
                Operation.Kind.SMALL_END_HONE,
                "OLDHONE",
                "",
                Offer.NONE,
                Quantity.of("0.02", Units.MILLIMETRE),
                null,
                null,
                null,
                "");
        Decided oldRod = new Decided.Bought(PartKind.CONNECTING_ROD, "OLD", "", Offer.NONE);
        Decided spring = new Decided.Bought(PartKind.VALVE_SPRING, "SPRING", "", Offer.NONE);
        Build before = build.withTaken(List.of(oldRod, spring, oldHone));
        assertThat(Taking.of(before, catalogue, FOUND).orElseThrow().taken())
                .extracting(Decided::code)
                .containsExactlyInAnyOrder("SPRING", "R3", "G1.30", "HONE");
    }

    /** As a figure with its ± the deck would look as if it had been read after the cut. */
    @Test
    void aPlannedDeckStaysAPlanWhenAnotherRodIsTaken() {
        Quantity height = Quantity.of("139.62", Units.MILLIMETRE);
        Build before = with(
                        build,
                        Term.DECK_HEIGHT,
                        new Given.Specified(
                                height, Quantity.of("0.05", Units.MILLIMETRE), "after machining", false, ""))
                .withTaken(List.of(new Decided.Work(
                        Operation.Kind.DECK_CUT,
                        "DECK",
                        "",
                        Offer.NONE,
                        Quantity.of("0.10", Units.MILLIMETRE),
                        Quantity.of("139.72", Units.MILLIMETRE),
                        height,
                        null,
                        "")));
        Build after = Taking.of(before, catalogue, FOUND).orElseThrow();
        assertThat(after.of(Term.DECK_HEIGHT)).isEqualTo(before.of(Term.DECK_HEIGHT));
        assertThat(after.pending()).extracting(Decided.Work::code).contains("DECK");
    }
}
