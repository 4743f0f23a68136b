package longthrow.core.clearance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Bounds from a {@link Strip} against gaps worked out whole, and how far edges reach against all their points. */
class StripTest {
    private static final int ASKED = 40;
    private static final int FARTHER = 6;
    /** Farthest way [rad]: a few of the first looks of a sweep. */
    private static final double FARTHEST = 0.4;
    /** Round-off of coordinates of a few tenths of a metre, ample. */
    private static final double CLOSE = 1e-11;

    static java.util.stream.IntStream numbers() {
        return java.util.stream.IntStream.range(0, 120).filter(i -> i % 10 != 7); // those share no depth
    }

    @ParameterizedTest
    @MethodSource("numbers")
    void noGapOnTheWayIsLessThanTheStripTells(int number) {
        PairGap laid = Specimen.gapOf(number);
        PairGap whole = Specimen.gapOf(number);
        Random random = new Random(number);
        for (int k = 0; k < ASKED; k++) {
            double angle = 4 * Math.PI * random.nextDouble();
            if (!laid.layStrip(laid.at(angle))) {
                continue;
            }
            double way = FARTHEST * Math.pow(random.nextDouble(), 3) * (random.nextBoolean() ? 1 : -1);
            double bound = laid.leastOn(angle, way);
            for (int f = 0; f <= FARTHER; f++) {
                double at = angle + way * f / FARTHER;
                // a depth is found from below, so that the gap told is no less than there is
                assertThat(whole.at(at))
                        .as("from " + angle + " by " + way + ", at " + at)
                        .isGreaterThanOrEqualTo(bound - CLOSE);
            }
        }
    }

    /** A bound of minus infinity would be no less true, so it is held against the gap where it starts: of most specimens it is the gap itself, overlapping ones among them. */
    @Test
    void whereItStartsTheStripIsMostlyTheGap() {
        int apart = 0;
        int tightApart = 0;
        int over = 0;
        int tightOver = 0;
        for (int number : numbers().toArray()) {
            PairGap laid = Specimen.gapOf(number);
            for (int k = 0; k < ASKED; k++) {
                double angle = 4 * Math.PI * k / ASKED;
                double gap = laid.at(angle);
                boolean tight = laid.layStrip(gap) && laid.leastOn(angle, 0) > gap - Sweep.TOLERANCE;
                apart += gap > 0 ? 1 : 0;
                over += gap < 0 ? 1 : 0;
                tightApart += gap > 0 && tight ? 1 : 0;
                tightOver += gap < 0 && tight ? 1 : 0;
            }
        }
        assertThat(tightApart).isGreaterThan(apart / 2);
        assertThat(tightOver).isGreaterThan(over / 4);
    }

    @ParameterizedTest
    @MethodSource("numbers")
    void edgesReachAsFarAsTheFarthestOfTheirPoints(int number) {
        Edges edges = Specimen.of(number).pair().one().outlines().get(0).edges();
        Random random = new Random(number);
        double[] at = new double[2];
        for (int k = 0; k < ASKED; k++) {
            double length = 0.2 + random.nextDouble();
            double turn = 2 * Math.PI * random.nextDouble();
            double nx = length * Math.cos(turn);
            double ny = length * Math.sin(turn);
            double most = Double.NEGATIVE_INFINITY;
            int cuts = 400;
            for (int i = 0; i < edges.count; i++) {
                for (int c = 0; c <= cuts; c++) {
                    edges.along(i, (double) c / cuts, at);
                    most = Math.max(most, nx * at[0] + ny * at[1]);
                }
            }
            double reach = edges.reach(nx, ny, Double.NEGATIVE_INFINITY, new int[128]);
            // an arc of a quarter turn cut so finely stands off its cuts by 2e-6 of its radius, here under 0.1 m
            assertThat(reach).isCloseTo(most, within(4e-7)).isGreaterThanOrEqualTo(most - CLOSE);
            assertThat(edges.reach(nx, ny, most + 1e-3, new int[128])).isEqualTo(most + 1e-3);
        }
    }

    /** By hand: a circle of 10 mm whose centre lies 4 mm past a straight face goes 14 mm in along its normal. */
    @Test
    void aCircleGoesInByItsRadiusAndHowFarItsCentreIsPastTheFace() {
        Pair pair = Pair.of(
                Body.of(
                        "face",
                        Outline.polygon(List.of(
                                new Point(-0.1, -0.1), new Point(0.1, -0.1), new Point(0.1, 0), new Point(-0.1, 0))),
                        Body.Depth.throughout(),
                        Motion.fixed()),
                Body.of(
                        "disk",
                        Outline.circle(new Point(0.03, -0.004), 0.01),
                        Body.Depth.throughout(),
                        Motion.fixed()));
        PairGap gap = new PairGap(
                Motion.fixed(),
                pair.one().outlines().get(0),
                Motion.fixed(),
                pair.other().outlines().get(0));
        double depth = gap.at(0);
        assertThat(depth).isCloseTo(-0.014, within(1e-6));
        assertThat(gap.layStrip(depth)).isTrue();
        assertThat(gap.leastOn(0, 0.1)).isCloseTo(-0.014, within(1e-6)).isLessThanOrEqualTo(depth + CLOSE);
    }

    /**
     * By hand: a square on its corner goes 4 mm into a face. Along the normals of its two lower sides the face goes in by 4 mm / root 2, and so deep lies a point of the face between
     * them; the corner lies 4 mm within the face, unless that is too thin.
     */
    @Test
    void twoDirectionsHoldTheOtherWayInToo() {
        Outline face = Outline.polygon(
                List.of(new Point(-0.1, -0.1), new Point(0.1, -0.1), new Point(0.1, 0), new Point(-0.1, 0)));
        Outline square = Outline.polygon(
                List.of(new Point(0, -0.004), new Point(0.02, 0.016), new Point(0, 0.036), new Point(-0.02, 0.016)));
        Pose pose = new Pose();
        Motion.fixed().at(0, pose);
        double half = Math.sqrt(0.5);
        Strip strip = new Strip(face.edges());
        strip.lay(face.edges(), pose, square.edges(), pose, half, half);
        strip.hold(-half, half, 0.5, 1);
        assertThat(strip.least(0, 0)).isCloseTo(-0.004, within(CLOSE));
        strip.hold(-half, half, 0.5, 0.003);
        assertThat(strip.least(0, 0)).isCloseTo(-0.003, within(CLOSE));
        strip.hold(-half, half, 0.5, 0.002);
        assertThat(strip.least(0, 0)).isCloseTo(-0.004 * half, within(CLOSE));
    }
}
