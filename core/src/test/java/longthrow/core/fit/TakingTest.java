package longthrow.core.fit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import longthrow.core.answer.Answer;
import longthrow.core.answer.Candidate;
import longthrow.core.build.Build;
import longthrow.core.build.Given;
import longthrow.core.catalogue.Catalogue;
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
        assertThat(entry(taken, Term.ROD_LENGTH).plusMinus().written()).isEqualTo("0.03 mm");
        assertThat(entry(taken, Term.ROD_LENGTH).note())
                .as("whose figure it is")
                .isEqualTo("R3");
        assertThat(entry(taken, Term.BIG_END_WIDTH).value().written()).isEqualTo("23.9 mm");
        assertThat(entry(taken, Term.GASKET_THICKNESS).value().written()).isEqualTo("1.30 mm");
        assertThat(entry(taken, Term.GASKET_THICKNESS).note()).isEqualTo("G1.30");
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

    /** To the micrometre: what stands in the build is what the sheet says, with its doubt. */
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
            assertThat(found.expanded()).as(term.path()).isCloseTo(promised.expanded(), within(1e-6));
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

    private static Given.Typed entry(Build build, Term term) {
        assertThat(build.of(term)).hasSize(1);
        return (Given.Typed) build.of(term).get(0);
    }
}
