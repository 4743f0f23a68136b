package longthrow.workshop.draw;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;

class SvgTest {
    @Test
    void textIsEscapedAndReadsBackAsItWas() {
        String awkward = "a<b & \"c\" > d's é";
        Svg svg = new Svg("p", 10, 10, awkward, awkward + "\u0001");
        Drawing drawing = Drawing.of(svg.finished());
        assertThat(drawing.all("title").get(0).getTextContent()).isEqualTo(awkward);
        assertThat(drawing.all("desc").get(0).getTextContent()).isEqualTo(awkward + "\uFFFD");
    }

    @Test
    void numbersAreShortAndNeverMinusNought() {
        assertThat(Svg.n(12)).isEqualTo("12");
        assertThat(Svg.n(100)).isEqualTo("100");
        assertThat(Svg.n(1.25)).isEqualTo("1.3");
        assertThat(Svg.n(-0.04)).isEqualTo("0");
        assertThat(Svg.path("M", 1.26, 2, "Z")).isEqualTo("M 1.3 2 Z");
        assertThatThrownBy(() -> Svg.n(Double.NaN)).isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void badPrefixOrSizeOrAnOpenElementIsRefused() {
        assertThatThrownBy(() -> new Svg("1 x", 10, 10, "t", "d")).hasMessageContaining("'1 x'");
        assertThatThrownBy(() -> new Svg("", 10, 10, "t", "d")).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new Svg("x", 0, 10, "t", "d")).hasMessageContaining("0 by 10");
        Svg svg = new Svg("x", 10, 10, "t", "d").open("g");
        assertThatThrownBy(svg::finished).hasMessageContaining("[g, svg]");
    }
}
