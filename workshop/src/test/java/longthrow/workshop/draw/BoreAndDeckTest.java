package longthrow.workshop.draw;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import longthrow.core.term.Term;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class BoreAndDeckTest {
    private static DrawnAnswer map() {
        return new DrawnAnswer()
                .with(Term.BORE_TOP_THRUST, 66.050, 0.01)
                .with(Term.BORE_MIDDLE_THRUST, 66.030, 0.01)
                .with(Term.BORE_BOTTOM_THRUST, 66.010, 0.01)
                .with(Term.BORE_TOP_AXIS, 66.020, 0.01)
                .with(Term.BORE_MIDDLE_AXIS, 66.010, 0.01)
                .with(Term.BORE_BOTTOM_AXIS, 66.000, 0.01)
                .with(Term.BORE_TAPER, 0.040, 0.012)
                .with(Term.OUT_OF_ROUND, 0.030, 0.014);
    }

    private static DrawnAnswer corners() {
        return new DrawnAnswer()
                .with(Term.BORE, 66, 0.01)
                .with(Term.DECK_CLEARANCE_THRUST, 0.90, 0.02)
                .with(Term.DECK_CLEARANCE_ANTITHRUST, 0.77, 0.02)
                .with(Term.DECK_CLEARANCE_FLYWHEEL_END, 0.82, 0.04)
                .with(Term.DECK_CLEARANCE_OUTPUT_END, -0.05, 0.04)
                .with(Term.DECK_TILT_SIDES, 0.13, 0.02)
                .with(Term.DECK_TILT_ENDS, 0.87, 0.06);
    }

    /** 0.05 mm and 0.01 mm of doubt, halved, at 150 px for 66 mm: 0.068 px, so 200 times fit into 26 px and 500 do not. */
    @Test
    void boreMapSaysHowMuchTooLargeItIsDrawn() {
        BoreMap drawn = BoreMap.of(map().answer()).orElseThrow();
        assertThat(drawn.factor()).isEqualTo(200);
        Drawing drawing = Drawing.of(drawn.svg("b"));
        assertThat(drawing.faults("b")).isEmpty();
        assertThat(drawing.words())
                .contains("66.050 ± 0.010 mm", "Differences drawn 200 times too large", "bore taper 0.040 ± 0.012 mm");
    }

    @Test
    void missingReadingLeavesAQuestionMarkAndNoReadingNoMap() {
        Drawing drawing =
                Drawing.of(BoreMap.of(map().without(Term.BORE_MIDDLE_AXIS).answer())
                        .orElseThrow()
                        .svg("b"));
        assertThat(drawing.words()).contains("?");
        assertThat(drawing.faults("b")).isEmpty();
        assertThat(BoreMap.of(new DrawnAnswer().answer())).isEmpty();
    }

    /** 0.90 mm at 150 px for 66 mm: 2.05 px; 20 times fit into 44 px. */
    @Test
    void deckTiltShowsFourCornersAndSaysHowMuchTooLargeItIsDrawn() {
        DeckTilt drawn = DeckTilt.of(corners().answer()).orElseThrow();
        assertThat(drawn.factor()).isEqualTo(20);
        Drawing drawing = Drawing.of(drawn.svg("d"));
        assertThat(drawing.faults("d")).isEmpty();
        assertThat(drawing.words())
                .contains("0.900 ± 0.020 mm", "-0.050 ± 0.040 mm", "difference 0.87 ± 0.06 mm", "20 times too large");
    }

    @Test
    void deckTiltWithoutCornersOrBoreIsNotDrawnAndWithOneMissingStaysOpen() {
        assertThat(DeckTilt.of(new DrawnAnswer().with(Term.BORE, 66, 0).answer()))
                .isEmpty();
        assertThat(DeckTilt.of(corners().without(Term.BORE).answer())).isEmpty();
        Drawing drawing = Drawing.of(DeckTilt.of(corners()
                        .without(Term.DECK_CLEARANCE_OUTPUT_END, Term.DECK_TILT_ENDS)
                        .answer())
                .orElseThrow()
                .svg("d"));
        assertThat(drawing.words()).contains("?", "difference not known");
        assertThat(drawing.faults("d")).isEmpty();
    }

    @Test
    void disputedCornerSaysSo() {
        Drawing drawing = Drawing.of(DeckTilt.of(corners()
                        .disputed(Term.DECK_CLEARANCE_FLYWHEEL_END, 0.82, 0.04)
                        .answer())
                .orElseThrow()
                .svg("d"));
        assertThat(drawing.words()).contains("in dispute");
        assertThat(drawing.faults("d")).isEmpty();
    }

    @ParameterizedTest
    @CsvSource({"0, 1", "100, 1", "30, 1", "13, 2", "2.6, 10", "0.1, 200", "0.05, 500"})
    void exaggerationIsTheLargestOfOneTwoFiveThatFits(double pixels, int factor) {
        assertThat(Exaggeration.factor(pixels, 26)).isEqualTo(factor);
    }

    @Test
    void figuresOfTheSameTermAreNamedAlikeEverywhere() {
        assertThat(List.of(
                        Drawing.of(DeckTilt.of(corners().answer()).orElseThrow().svg("d"))
                                .all("desc")
                                .get(0)
                                .getTextContent()))
                .allSatisfy(d -> assertThat(d).contains(Term.DECK_CLEARANCE_THRUST.label() + " 0.900 ± 0.020 mm"));
    }
}
