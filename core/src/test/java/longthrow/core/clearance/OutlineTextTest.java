package longthrow.core.clearance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class OutlineTextTest {
    private static final double MM = 1e-3;

    private static Outline taken(OutlineText.Read read) {
        assertThat(read).isInstanceOf(OutlineText.Taken.class);
        return ((OutlineText.Taken) read).outline();
    }

    @Test
    void pointsAreReadInTheUnitGiven() {
        Outline mm = taken(OutlineText.csv("x,y\n# a square\n0,0\n10,0\n10,10\n0,10\n0,0\n", MM));
        assertThat(mm.area()).isCloseTo(100e-6, within(1e-15));
        assertThat(taken(OutlineText.csv("0;0\n1;0\n1;1\n0;1", 0.0254)).area())
                .isCloseTo(0.0254 * 0.0254, within(1e-15));
    }

    @Test
    void everyFaultOfAListIsNamedWithItsPlace() {
        OutlineText.Read read = OutlineText.csv("0,0\n1,zwei\nNaN,3\n4,5,6\n1e9,2\n", MM);
        assertThat(((OutlineText.Refused) read).faults())
                .extracting(OutlineText.Fault::place)
                .containsExactly("line 2, column 3", "line 3, column 1", "line 4", "line 5, column 1");
        assertThat(((OutlineText.Refused) read).faults().get(0).message()).contains("'zwei' is not a number");
    }

    @ParameterizedTest
    @ValueSource(strings = {"0,0\n1,1", "0,0\n4,4\n4,0\n0,4", "0,0\n4,0\n2,0\n2,3", ""})
    void whatEnclosesNothingOrMeetsItselfIsRefused(String text) {
        assertThat(OutlineText.csv(text, MM)).isInstanceOf(OutlineText.Refused.class);
    }

    /** Areas by hand; y counts downwards in a path and upwards in the frame. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "M0 0 H10 V10 H0 Z | 100",
                "m0,0 h10 v10 h-10 z | 100",
                "M0 0 L10 0 10 10 0 10Z | 100",
                "M-5 0 A5 5 0 0 1 5 0 A5 5 0 0 1 -5 0 Z | 78.5398163397",
                "M-5 0a5 5 0 1010 0a5 5 0 10-10 0 | 78.5398163397",
                "M0 0 Q5 10 10 0 Z | 33.3333333",
                "M0 0 C0 10 10 10 10 0 Z | 60",
                "M-6 0 A6 3 0 0 0 6 0 A6 3 0 0 0 -6 0 Z | 56.5486678",
                "M0 0H9V9H0Z M3 3h3v3h-3z | 72"
            })
    void pathsEncloseWhatTheyShould(String path, double squareMillimetres) {
        assertThat(taken(OutlineText.svgPath(path, MM)).area())
                .isCloseTo(squareMillimetres * 1e-6, within(1e-8)); // curves within 0.0005 mm over 20 mm of edge
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "L1 1|character 1",
                "M0 0 L1 x|character 9",
                "M0 0 S1 1 2 2|character 6",
                "M0 0 L9 0 L9 9|character 15",
                "M0 0 A1 1 0 2 0 3 3|character 13",
                "M0 0 L1e9 0|character 7"
            })
    void faultsOfAPathAreNamedWithTheirPlace(String path, String place) {
        OutlineText.Read read = OutlineText.svgPath(path, MM);
        assertThat(((OutlineText.Refused) read).faults().get(0).place()).isEqualTo(place);
    }

    @Test
    void aPathWrittenIsReadBack() {
        for (Outline outline : List.of(
                Outline.counterweight(12e-3, 40e-3, 3, 2),
                Outline.ring(new Point(1e-3, 2e-3), 20e-3, 30e-3),
                Outline.capsule(new Point(0, 0), new Point(9e-3, 5e-3), 3e-3))) {
            Outline again = taken(OutlineText.svgPath(outline.svgPath(MM), MM));
            assertThat(again.area()).isCloseTo(outline.area(), within(1e-11));
            assertThat(again.depthOf(new Point(25e-3, 2e-3)))
                    .isCloseTo(outline.depthOf(new Point(25e-3, 2e-3)), within(2e-9));
        }
    }

    @Test
    void shapesThatAreNoneAreRefusedWithWords() {
        assertThatThrownBy(() -> Outline.circle(new Point(0, 0), Double.NaN))
                .hasMessageContaining("radius of a circle is NaN");
        assertThatThrownBy(() -> Outline.ring(new Point(0, 0), 2, 1)).hasMessageContaining("must exceed the inner one");
        assertThatThrownBy(() -> Outline.polygon(List.of(new Point(0, 0), new Point(1, 0))))
                .hasMessageContaining("at least 3");
        assertThatThrownBy(() -> Outline.roundedPolygon(
                        List.of(new Point(0, 0), new Point(1, 0), new Point(1, 1), new Point(0, 1)), 0.6))
                .hasMessageContaining("smaller radius");
        assertThatThrownBy(() -> new Point(Double.NaN, 0)).hasMessageContaining("finite");
    }
}
