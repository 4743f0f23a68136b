package longthrow.core.clearance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;

class ReliefTest {
    private static Body body(String name, Outline outline, Motion motion) {
        return Body.of(name, outline, Body.Depth.throughout(), motion);
    }

    private static Outline box(double x0, double y0, double x1, double y1) {
        return Outline.polygon(List.of(new Point(x0, y0), new Point(x1, y0), new Point(x1, y1), new Point(x0, y1)));
    }

    /**
     * A disc on a crank sweeps a circle of 50 mm about the axis; a bar beside it from 49.6 to 60 mm, 1 mm wanted: what is within 51 mm of the axis comes off, 1.4 mm deep,
     * and 9 mm stay. Its area is that of the segment of a circle of 51 mm beyond 49.6 mm: R2 acos(d/R) - d sqrt(R2 - d2).
     */
    @Test
    void aPocketForASweptCircleIsASegmentOfIt() {
        Body bar = body("bar", box(49.6e-3, -40e-3, 60e-3, 40e-3), Motion.fixed());
        Body disc = body("disc", Outline.circle(new Point(0, 40e-3), 10e-3), Motion.crank());
        Relief relief = Relief.of(Pair.of(bar, disc), 1e-3).orElseThrow();
        assertThat(relief.depth()).isCloseTo(1.4e-3, within(0.02e-3));
        assertThat(relief.wall()).isCloseTo(9e-3, within(0.02e-3));
        assertThat(relief.deepest().y()).isCloseTo(0, within(2e-3));
        double area = 51e-3 * 51e-3 * Math.acos(49.6 / 51) - 49.6e-3 * Math.sqrt(51e-3 * 51e-3 - 49.6e-3 * 49.6e-3);
        OutlineText.Read read = OutlineText.svgPath(relief.svgPath(1e-3), 1e-3);
        assertThat(read).isInstanceOf(OutlineText.Taken.class);
        assertThat(((OutlineText.Taken) read).outline().area()).isCloseTo(area, within(0.02 * area));
    }

    @Test
    void nothingComesOffWhereTheGapIsKept() {
        Body bar = body("bar", box(52e-3, -40e-3, 60e-3, 40e-3), Motion.fixed());
        Body disc = body("disc", Outline.circle(new Point(0, 40e-3), 10e-3), Motion.crank());
        assertThat(Relief.of(Pair.of(bar, disc), 1e-3)).isEmpty();
        assertThat(Relief.of(new Pair(bar, disc, 1.2e-3), 1e-3)).isPresent();
    }
}
