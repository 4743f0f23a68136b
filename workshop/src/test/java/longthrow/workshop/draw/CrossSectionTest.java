package longthrow.workshop.draw;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import longthrow.core.term.Term;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class CrossSectionTest {
    private static final double ROUNDING = 0.25;

    private static CrossSection whole() {
        return CrossSection.of(DrawnAnswer.whole().answer());
    }

    @ParameterizedTest
    @ValueSource(doubles = {-7, 0, 0.4, 1.57, 2.5, 3.14159, 4.2, 5.9, 100})
    void standsAloneAtEveryAngle(double angle) {
        assertThat(Drawing.of(whole().at(angle, "x")).faults("x")).isEmpty();
    }

    /** Outlines of parts, in the order of drawing: two walls, head, piston, web, journal, rod, crankpin, pin. */
    private static List<String> parts(String svg) {
        List<String> outlines = new ArrayList<>();
        Drawing.of(svg).all("path").stream()
                .filter(p -> p.getAttribute("class").equals("part"))
                .forEach(p -> outlines.add(p.getAttribute("d")));
        return outlines;
    }

    /** y of a box: "M x y h width v height ...". */
    private static double top(String outline) {
        return Double.parseDouble(outline.split(" ", -1)[2]);
    }

    private static double tall(String outline) {
        return Double.parseDouble(outline.split(" ", -1)[6]);
    }

    /** Scale by the sleeve, 88 mm. At bottom dead centre the piston is one stroke, 56.50 mm, below where it was. */
    @Test
    void pistonTravelsItsStroke() {
        List<String> atTop = parts(whole().atTopDeadCentre("x"));
        List<String> atBottom = parts(whole().atBottomDeadCentre("x"));
        double scale = tall(atTop.get(0)) / 88;
        assertThat(top(atBottom.get(3)) - top(atTop.get(3))).isCloseTo(56.50 * scale, within(ROUNDING));
    }

    /** Deck clearance 0.07 mm: crown below the deck by as much. */
    @Test
    void crownStandsBelowTheDeckByTheDeckClearance() {
        List<String> parts = parts(whole().atTopDeadCentre("x"));
        double scale = tall(parts.get(0)) / 88;
        assertThat(top(parts.get(3)) - top(parts.get(0))).isCloseTo(0.07 * scale, within(ROUNDING));
        assertThat(tall(parts.get(3))).as("crown to skirt: 24.90 + 17.6").isCloseTo(42.5 * scale, within(ROUNDING));
    }

    /**
     * A quarter turn past the throw along the cylinder the pin stands sqrt(86.40^2 - 28.25^2) = 81.6513 mm above the axis, at the top 114.65: 32.9987
     * mm lower.
     */
    @Test
    void pistonStandsWhereTheSliderCrankPutsIt() {
        double atTop = top(parts(whole().atTopDeadCentre("x")).get(3));
        List<String> quarter = parts(whole().at(Math.PI / 2, "x"));
        double scale = tall(quarter.get(0)) / 88;
        assertThat(top(quarter.get(3)) - atTop).isCloseTo(32.9987 * scale, within(ROUNDING));
    }

    @Test
    void gapsAreWrittenAndShownByAnArrowAtTheirDeadCentreOnly() {
        Drawing top = Drawing.of(whole().atTopDeadCentre("x"));
        assertThat(top.words()).contains("0.07 ± 0.06 mm", "1.37 ± 0.07 mm", "1.65 ± 0.07 mm");
        assertThat(arrows(top)).isEqualTo(2);
        assertThat(arrows(Drawing.of(whole().atBottomDeadCentre("x")))).isEqualTo(2);
        assertThat(arrows(Drawing.of(whole().at(1, "x")))).isZero();
    }

    private static long arrows(Drawing drawing) {
        return drawing.all("path").stream()
                .filter(p -> p.getAttribute("class").equals("lit")
                        && p.getAttribute("fill").equals("currentColor"))
                .count();
    }

    @Test
    void unknownSizesAreDashedAndNamed() {
        assertThat(whole().dashed()).isEmpty();
        CrossSection section = CrossSection.of(
                DrawnAnswer.whole().without(Term.ROD_LENGTH, Term.PIN_DIAMETER).answer());
        assertThat(section.dashed()).containsExactly("rod length", "pin diameter");
        Drawing drawing = Drawing.of(section.at(1, "x"));
        assertThat(drawing.words()).contains("Dashed: not known", "rod length", "pin diameter");
        assertThat(drawing.all("path").stream()
                        .filter(p -> p.getAttribute("class").equals("unknown"))
                        .count())
                .as("piston hangs on the rod, rod, pin")
                .isEqualTo(3);
    }

    @Test
    void nothingKnownIsStillADrawing() {
        CrossSection section = CrossSection.of(new DrawnAnswer().answer());
        assertThat(section.dashed()).hasSize(12);
        assertThat(Drawing.of(section.at(2, "x")).faults("x")).isEmpty();
    }

    @Test
    void offsetsMoveThePistonAndTheDeadCentres() {
        CrossSection section = CrossSection.of(DrawnAnswer.whole()
                .with(Term.PIN_OFFSET, 0.8, 0.05)
                .with(Term.BORE_OFFSET, 5, 0.05)
                .answer());
        assertThat(Drawing.of(section.atTopDeadCentre("x")).words()).contains("crank at 2.9°"); // asin(5.8 / 114.6)
        assertThat(Drawing.of(section.atBottomDeadCentre("x")).faults("x")).isEmpty();
    }

    @Test
    void rodTooShortOrAngleWithoutNumberIsRefusedWithTheFigures() {
        CrossSection section = CrossSection.of(
                DrawnAnswer.whole().with(Term.ROD_LENGTH, 20, 0.05).answer());
        assertThatThrownBy(() -> section.at(1, "x"))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("20.00 ± 0.05 mm");
        assertThatThrownBy(() -> whole().at(Double.NaN, "x")).hasMessageContaining("NaN");
    }

    @Test
    void keptDrawing() throws IOException {
        Golden.matches("cross-section", whole().at(Math.toRadians(40), "kept"));
    }
}
