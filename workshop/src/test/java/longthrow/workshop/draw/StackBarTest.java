package longthrow.workshop.draw;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.util.List;
import longthrow.core.quantity.UnitSystem;
import longthrow.core.term.Term;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Element;

class StackBarTest {
    /** Coordinates are written to 0.1 pixel: two of them make a height. */
    private static final double ROUNDING = 0.11;

    private static Drawing drawn(DrawnAnswer answer) {
        return Drawing.of(StackBar.of(answer.answer()).svg("s"));
    }

    private static Element bar(Drawing drawing, Term term) {
        return drawing.all("rect").stream()
                .filter(r -> r.getAttribute("data-term").equals(term.path()))
                .findFirst()
                .orElseThrow();
    }

    private static double height(Drawing drawing, Term term) {
        return Drawing.number(bar(drawing, term), "height");
    }

    private static double top(Drawing drawing, Term term) {
        return Drawing.number(bar(drawing, term), "y");
    }

    @Test
    void heightsAreInTheProportionOfTheFigures() {
        Drawing drawing = drawn(DrawnAnswer.stack());
        double scale = height(drawing, Term.DECK_HEIGHT) / 139.62;
        assertThat(height(drawing, Term.STROKE)).isCloseTo(28.25 * scale, within(ROUNDING));
        assertThat(height(drawing, Term.ROD_LENGTH)).isCloseTo(86.40 * scale, within(ROUNDING));
        assertThat(height(drawing, Term.COMPRESSION_HEIGHT)).isCloseTo(24.90 * scale, within(ROUNDING));
        assertThat(top(drawing, Term.COMPRESSION_HEIGHT) - top(drawing, Term.DECK_HEIGHT))
                .as("what is left below the deck")
                .isCloseTo(0.07 * scale, within(ROUNDING));
    }

    /** The magnified end shows 3 mm in 240 pixels. */
    @Test
    void lastMillimetresShowGasketAndPistonToTheirOwnScale() {
        Drawing drawing = drawn(DrawnAnswer.stack());
        double scale = 240 / 3.0;
        double deck = top(drawing, Term.GASKET_THICKNESS) + height(drawing, Term.GASKET_THICKNESS);
        assertThat(height(drawing, Term.GASKET_THICKNESS)).isCloseTo(1.30 * scale, within(ROUNDING));
        assertThat(top(drawing, Term.DECK_CLEARANCE)).isCloseTo(deck + 0.07 * scale, within(2 * ROUNDING));
        assertThat(drawing.words()).contains("the last 3 mm at the deck");
    }

    @Test
    void proudPistonStandsAboveTheDeckAndIsCalledSo() {
        Drawing drawing = drawn(DrawnAnswer.stack().with(Term.DECK_CLEARANCE, -0.40, 0.06));
        double deck = top(drawing, Term.GASKET_THICKNESS) + height(drawing, Term.GASKET_THICKNESS);
        assertThat(top(drawing, Term.DECK_CLEARANCE)).isCloseTo(deck - 0.40 * 80, within(2 * ROUNDING));
        assertThat(drawing.words()).contains("proud", "-0.40 ± 0.06 mm");
    }

    @Test
    void deepPistonEnlargesWhatIsShownInsteadOfLeavingIt() {
        Drawing drawing = drawn(DrawnAnswer.stack().with(Term.DECK_CLEARANCE, 6, 0.06));
        assertThat(top(drawing, Term.DECK_CLEARANCE)).isLessThan(70 + 240);
        assertThat(drawing.words()).contains("the last 9.9 mm"); // 1.35 x (6 + 1.3), layout
        assertThat(drawing.faults("s")).isEmpty();
    }

    @Test
    void figuresStandWithTheirDoubtInTheUnitAskedFor() {
        assertThat(drawn(DrawnAnswer.stack()).words())
                .contains("139.62 ± 0.05 mm", "½ × 56.500 ± 0.020 mm", "86.400 ± 0.030 mm", "1.37 ± 0.07 mm");
        Drawing inches = Drawing.of(
                StackBar.of(DrawnAnswer.stack().answer(), UnitSystem.INCH_FIRST).svg("s"));
        assertThat(inches.words()).contains("5.4969 ± 0.0020 in");
    }

    @Test
    void unknownPartsAreOpenGapsWithAQuestionMark() {
        Drawing drawing = drawn(DrawnAnswer.stack().without(Term.ROD_LENGTH, Term.DECK_CLEARANCE, Term.SQUISH));
        assertThat(bar(drawing, Term.ROD_LENGTH).getAttribute("class")).isEqualTo("unknown");
        assertThat(bar(drawing, Term.ROD_LENGTH).getAttribute("fill")).isEqualTo("none");
        assertThat(bar(drawing, Term.STROKE).getAttribute("class")).isEqualTo("part");
        assertThat(drawing.words()).contains("?", "rod length not known", "squish not known");
        assertThat(drawing.faults("s")).isEmpty();
    }

    @Test
    void nothingKnownIsStillADrawing() {
        Drawing drawing = drawn(new DrawnAnswer());
        assertThat(drawing.faults("s")).isEmpty();
        assertThat(List.of(Term.STROKE, Term.ROD_LENGTH, Term.COMPRESSION_HEIGHT, Term.DECK_HEIGHT))
                .allSatisfy(
                        t -> assertThat(bar(drawing, t).getAttribute("class")).isEqualTo("unknown"));
    }

    @Test
    void disputedFigureSaysSo() {
        Drawing drawing = drawn(DrawnAnswer.stack().disputed(Term.DECK_CLEARANCE, -0.07, 0.06));
        assertThat(drawing.words()).contains("deck clearance: proud, in dispute");
        assertThat(drawing.faults("s")).isEmpty();
    }

    @Test
    void keptDrawing() throws IOException {
        Golden.matches("stack-bar", StackBar.of(DrawnAnswer.stack().answer()).svg("kept"));
    }
}
