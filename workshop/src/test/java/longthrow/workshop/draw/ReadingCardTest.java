package longthrow.workshop.draw;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.util.List;
import java.util.stream.Collectors;
import longthrow.core.quantity.UnitSystem;
import longthrow.core.term.InstrumentKind;
import longthrow.core.term.Term;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;

class ReadingCardTest {
    private static List<Term> terms() {
        return ReadingCard.all().stream().map(ReadingCard::term).toList();
    }

    /** Off a maker's sheet, or the owner's own wish: nothing to read on the bench. All else {@code measure} may ask for. */
    @ParameterizedTest
    @EnumSource(Term.class)
    void everyTermReadOnTheBenchHasACardAndNoOtherHas(Term term) {
        boolean onASheet = List.of(
                        Term.FLYWHEEL_RATED_SPEED,
                        Term.ROD_RATED_SPEED,
                        Term.GOVERNED_SPEED,
                        Term.WANTED_SPEED,
                        Term.OCTANE_NUMBER,
                        Term.MAIN_JET_NUMBER,
                        Term.LIFE_WANTED)
                .contains(term);
        assertThat(ReadingCard.of(term).isPresent()).isEqualTo(term.isRead() && !onASheet);
    }

    @ParameterizedTest
    @MethodSource("terms")
    void pictureStandsAloneAndKeepsItsWordsInside(Term term) {
        assertThat(Drawing.of(card(term).svg("card-7")).faults("card-7")).isEmpty();
    }

    @ParameterizedTest
    @MethodSource("terms")
    void wordsStandClearLeadersTouchAndHatchingIsInMetal(Term term) {
        assertThat(Placement.faults(Drawing.of(card(term).svg("c")))).isEmpty();
    }

    @ParameterizedTest
    @MethodSource("terms")
    void pictureNamesDatumInstrumentAndSymbol(Term term) {
        ReadingCard card = card(term);
        Drawing drawing = Drawing.of(card.svg("c"));
        String from = term == Term.CHAMBER_AREA ? "" : "from: ";
        assertThat(drawing.words())
                .as("an outline is traced, not measured from")
                .contains(from + card.datum());
        assertThat(drawing.words()).contains(card.instrument());
        assertThat(drawing.all("desc").get(0).getTextContent())
                .contains(card.datum(), card.instrument(), term.meaning());
        long symbols = drawing.all("text").stream()
                .filter(t -> t.getAttribute("class").equals("lit"))
                .map(t -> t.getTextContent())
                .filter(t -> t.equals(term.symbol().replace("_", "")))
                .count();
        assertThat(symbols).as("in the caption and at what is read").isGreaterThanOrEqualTo(2);
        List<String> kinds = drawing.all("path").stream()
                .map(p -> p.getAttribute("class"))
                .distinct()
                .toList();
        assertThat(kinds).contains("tool", "datum");
        assertThat(kinds).as("something is picked out").anyMatch(k -> k.equals("lit") || k.equals("tool"));
    }

    @ParameterizedTest
    @MethodSource("terms")
    void stepsAreFewAndShortAndInstrumentIsTheUsualOne(Term term) {
        ReadingCard card = card(term);
        assertThat(card.steps()).hasSizeBetween(2, 4).allSatisfy(step -> {
            assertThat(step).endsWith(".").hasSizeLessThan(170);
            assertThat(step).as("ASCII quotes and no blanks at the ends").isEqualTo(step.strip());
        });
        assertThat(card.mistake()).endsWith(".");
        assertThat(card.instrument()).isEqualTo(term.reading().usualInstrument().label());
    }

    @Test
    void readingsThatShareAPictureDifferInWhatIsLit() {
        assertThat(List.of(
                                Term.BORE_TOP_THRUST,
                                Term.BORE_MIDDLE_THRUST,
                                Term.BORE_BOTTOM_THRUST,
                                Term.BORE_TOP_AXIS,
                                Term.BORE_MIDDLE_AXIS,
                                Term.BORE_BOTTOM_AXIS)
                        .stream()
                        .map(t -> drawnPaths(t))
                        .distinct())
                .hasSize(6);
        assertThat(List.of(
                                Term.DECK_CLEARANCE,
                                Term.DECK_CLEARANCE_THRUST,
                                Term.DECK_CLEARANCE_ANTITHRUST,
                                Term.DECK_CLEARANCE_FLYWHEEL_END,
                                Term.DECK_CLEARANCE_OUTPUT_END)
                        .stream()
                        .map(t -> drawnPaths(t))
                        .distinct())
                .hasSize(5);
        for (List<Term> shared : List.of(
                List.of(
                        Term.BIG_END_REACH,
                        Term.CAP_BELOW,
                        Term.BOLT_OUT,
                        Term.BOLT_UP,
                        Term.BOLT_DOWN,
                        Term.DIPPER_REACH,
                        Term.DIPPER_WIDTH),
                List.of(Term.BOLT_ACROSS, Term.DIPPER_THICKNESS),
                List.of(Term.BEAM_WIDTH, Term.BEAM_THICKNESS, Term.BEAM_WEB, Term.BEAM_FLANGE),
                List.of(Term.ROD_BOLT_DIAMETER, Term.ROD_BOLT_PITCH, Term.ROD_BOLT_GRIP, Term.ROD_BOLT_ENGAGEMENT),
                List.of(Term.INTAKE_LOBE_PLACE, Term.EXHAUST_LOBE_PLACE, Term.RELEASE_PLACE),
                List.of(Term.RELEASE_REACH, Term.RELEASE_ANGLE, Term.RELEASE_SPAN),
                List.of(Term.CASE_BELOW, Term.CASE_THRUST, Term.CASE_ANTITHRUST),
                List.of(Term.COUNTERWEIGHT_FACES, Term.COUNTERWEIGHT_THICKNESS, Term.MAIN_SPAN),
                List.of(Term.INTAKE_POCKET, Term.EXHAUST_POCKET),
                List.of(Term.INTAKE_THROAT, Term.INTAKE_PORT_LENGTH),
                List.of(Term.RUNNER_LENGTH, Term.RUNNER_BORE),
                List.of(Term.AIRBOX_VOLUME, Term.SILENCER_VOLUME, Term.CASE_VOLUME),
                List.of(Term.BREATHER_HOLE, Term.SILENCER_HOLE),
                List.of(Term.MAIN_JET_FLOW, Term.MAIN_JET_HEAD),
                List.of(
                        Term.OIL_TEMPERATURE,
                        Term.PISTON_TEMPERATURE,
                        Term.ROD_TEMPERATURE,
                        Term.CYLINDER_TEMPERATURE))) {
            assertThat(shared.stream().map(ReadingCardTest::drawnPaths).distinct())
                    .as(shared.toString())
                    .hasSize(shared.size());
        }
    }

    /** Everything drawn, without the words. */
    private static String drawnPaths(Term term) {
        Drawing drawing = Drawing.of(card(term).svg("c"));
        return drawing.all("path").stream().map(p -> p.getAttribute("d")).collect(Collectors.joining(" "))
                + drawing.all("circle").stream()
                        .map(c -> c.getAttribute("cx") + "," + c.getAttribute("cy"))
                        .collect(Collectors.joining(" "));
    }

    /** Figures of ReadingKind.BORE and InstrumentKind.BORE_GAUGE: 0.006 mm, steps of 0.002 mm, 0.005 mm. */
    @Test
    void usualErrorComesFromTheBenchsOwnTable() {
        assertThat(card(Term.BORE).usualError())
                .isEqualTo(
                        "one reading scatters by 0.006 mm (0.00024 in) (standard deviation); the instrument shows steps of"
                                + " 0.002 mm (0.00008 in) and may be off by 0.005 mm (0.00020 in) (19 times in 20)");
        assertThat(card(Term.BORE).usualError(UnitSystem.INCH_FIRST)).startsWith("one reading scatters by 0.00024 in");
        assertThat(card(Term.SPRING_SEAT_LOAD).usualError()).contains("4 N", "1 % of the reading");
        assertThat(card(Term.LEAK_DOWN).usualError()).contains("scatters by 1 %", "off by 2 %");
        assertThat(card(Term.CHAMBER_AREA).usualError()).contains("off by 1 % of the reading");
        assertThat(card(Term.SPRING_COILS).usualError())
                .contains("scatters by 0.1 of a coil", "steps of 0.25 of a coil");
        assertThat(card(Term.ROD_BOLT_TORQUE).usualError()).contains("0.3 N·m", "6 % of the reading");
        assertThat(InstrumentKind.COUNT.statedError()).isZero();
        assertThat(card(Term.TEETH).usualError()).isEqualTo("none: counted");
    }

    @Test
    void readingsThatHurtSaySo() {
        assertThat(card(Term.LEAK_DOWN).caution().orElseThrow()).contains("lock");
        assertThat(card(Term.SPRING_OPEN_LOAD).caution().orElseThrow()).contains("guard");
        assertThat(card(Term.VOLUME_IN_ASSEMBLY).caution().orElseThrow()).contains("Drain");
        assertThat(card(Term.CYLINDER_TEMPERATURE).caution().orElseThrow()).contains("exhaust led outside");
        assertThat(card(Term.FLYWHEEL_NUT_TORQUE).caution().orElseThrow()).contains("Lead off");
        assertThat(card(Term.BORE).caution()).isEmpty();
    }

    @Test
    void keptDrawing() throws IOException {
        Golden.matches("bore-top-thrust", card(Term.BORE_TOP_THRUST).svg("kept"));
    }

    private static ReadingCard card(Term term) {
        return ReadingCard.of(term).orElseThrow();
    }
}
