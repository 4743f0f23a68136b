package longthrow.core.clearance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import longthrow.core.motion.CrankMotion;
import org.junit.jupiter.api.Test;

/** Gaps that plane geometry gives in closed form, derived by hand beside each. */
class ClosedFormTest {
    private static final double NANOMETRE = 1e-9;
    private static final Body.Depth ALL = Body.Depth.throughout();
    /** The least gap may be found this much too large, never too small. */
    private static final double FOUND = Sweep.TOLERANCE;

    private static Body body(String name, Outline outline, Motion motion) {
        return Body.of(name, outline, ALL, motion);
    }

    private static Outline box(double x0, double y0, double x1, double y1) {
        return Outline.polygon(List.of(new Point(x0, y0), new Point(x1, y0), new Point(x1, y1), new Point(x0, y1)));
    }

    /** Circle of radius a at distance r from the axis, circle of radius b at distance d: nearest in one line with the axis, d - r - a - b. */
    @Test
    void aCrankPinPassesARoundStopInOneLineWithTheAxis() {
        Body pin = body("pin", Outline.circle(new Point(0, 28e-3), 14e-3), Motion.crank());
        Body stop = body("stop", Outline.circle(Point.polar(new Point(0, 0), 61e-3, 2.1), 15e-3), Motion.fixed());
        Closest closest = Sweep.least(Pair.of(pin, stop)).orElseThrow();
        assertThat(closest.gap()).isCloseTo(61e-3 - 28e-3 - 14e-3 - 15e-3, within(NANOMETRE));
        assertThat(closest.angle() % (2 * Math.PI)).isCloseTo(2.1, within(1e-4));
        assertThat(Math.hypot(closest.onOne().x(), closest.onOne().y())).isCloseTo(42e-3, within(NANOMETRE));
        assertThat(Math.hypot(closest.onOther().x(), closest.onOther().y())).isCloseTo(46e-3, within(NANOMETRE));
    }

    /** Two discs whose centres are nearer than their radii together, neither over the other's centre: depth r + s - d. */
    @Test
    void discsOverlapByTheirRadiiLessTheDistance() {
        Body one = body("one", Outline.circle(new Point(0, 0), 20e-3), Motion.fixed());
        Body other = body("other", Outline.circle(new Point(31e-3, 0), 12e-3), Motion.fixed());
        assertThat(Sweep.least(Pair.of(one, other)).orElseThrow().gap()).isCloseTo(-1e-3, within(1e-6));
    }

    /** A small disc deep inside a large one: its centre line's far point is deepest, R - (d - r); with the large one's core covered R. */
    @Test
    void aDiscInsideAnotherIsAsDeepAsItsDeepestPoint() {
        Body large = body("large", Outline.circle(new Point(0, 0), 20e-3), Motion.fixed());
        Body aside = body("small", Outline.circle(new Point(9e-3, 0), 3e-3), Motion.fixed());
        Body over = body("small", Outline.circle(new Point(2e-3, 0), 3e-3), Motion.fixed());
        assertThat(Sweep.least(Pair.of(large, aside)).orElseThrow().gap()).isCloseTo(-14e-3, within(1e-6));
        assertThat(Sweep.least(Pair.of(large, over)).orElseThrow().gap()).isCloseTo(-20e-3, within(2e-6));
    }

    /** A flat crown, offset pin path: at its top sqrt((l + r)2 - e2) plus the compression height, so the deck clearance is what is left of the deck height. */
    @Test
    void theCrownStandsBelowTheDeckByTheStack() {
        CrankMotion crank = new CrankMotion(28.25e-3, 86.4e-3, 0.8e-3);
        Body piston = body("piston", box(-33e-3, -18e-3, 33e-3, 24.9e-3), Motion.piston(crank, 0));
        Body head = body("head", box(-50e-3, 141e-3, 50e-3, 170e-3), Motion.fixed());
        double top = Math.sqrt(114.65e-3 * 114.65e-3 - 0.8e-3 * 0.8e-3) + 24.9e-3;
        Closest closest = Sweep.least(Pair.of(piston, head)).orElseThrow();
        assertThat(closest.gap()).isCloseTo(141e-3 - top, within(FOUND)).isGreaterThan(141e-3 - top - NANOMETRE);
        assertThat(Math.sin(closest.angle())).isCloseTo(0.8 / 114.65, within(2e-3)); // flat bottom: height within 1 nm
        assertThat(Sweep.least(new Pair(piston, head, 0.05e-3)).orElseThrow().gap())
                .isCloseTo(141e-3 - top - 0.05e-3, within(FOUND));
    }

    /** Scenario S1 of an invented engine, stack by hand: rod less half the stroke, less the skirt below the pin, less the counterweight radius. */
    @Test
    void aSkirtClearsTheCounterweightByTheStackAtTheBottom() {
        for (double[] rodAndGap : new double[][] {{85.6e-3, 0.85e-3}, {86.4e-3, 1.65e-3}}) {
            CrankMotion crank = new CrankMotion(28.25e-3, rodAndGap[0], 0);
            Body piston = body("piston", box(-30e-3, -17.6e-3, 30e-3, 24.9e-3), Motion.piston(crank, 0));
            Body weight = body("counterweight", Outline.counterweight(15e-3, 38.9e-3, Math.PI, 2), Motion.crank());
            Closest closest = Sweep.least(Pair.of(piston, weight)).orElseThrow();
            assertThat(closest.gap()).isCloseTo(rodAndGap[1], within(FOUND));
            assertThat(closest.angle() % (2 * Math.PI)).isCloseTo(Math.PI, within(0.02));
        }
    }

    /** A valve straight up with lift s comes s lower; by half a turn of the cam one tooth more is two turns by the teeth. */
    @Test
    void aValveComesDownByItsLiftAndItsPhaseMovesTheAngle() {
        Course lift = Course.of(a -> 4e-3 * (1 - Math.cos(a / 2)));
        Body stop = body("stop", box(-20e-3, -5e-3, 20e-3, 0), Motion.fixed());
        Body valve = body("valve", box(-15e-3, 0, 15e-3, 2e-3), Motion.valve(new Point(0, 10e-3), 0, lift));
        Closest closest = Sweep.least(Pair.of(stop, valve)).orElseThrow();
        assertThat(closest.gap()).isCloseTo(2e-3, within(FOUND));
        Body late = valve.moving(Motion.valve(new Point(0, 10e-3), 0, lift.later(0.3)));
        assertThat(Sweep.at(Pair.of(stop, late), 2 * Math.PI + 0.3)
                        .orElseThrow()
                        .gap())
                .isCloseTo(2e-3, within(1e-8));
        assertThat(Sweep.oneToothOut(36)).isCloseTo(Math.toRadians(20), within(1e-12));
        Course atValve = lift.atValve(1.5, 0.1e-3);
        assertThat(atValve.at(2 * Math.PI)).isCloseTo(1.5 * 8e-3 - 0.1e-3, within(1e-9));
        assertThat(atValve.at(0)).isZero();
        assertThat(Sweep.againstPhase(
                        phase -> Pair.of(stop, valve.moving(Motion.valve(new Point(0, 10e-3), 0, lift.later(phase)))),
                        List.of(-0.1, 0.0, 0.1)))
                .hasSize(3)
                .allSatisfy(at -> assertThat(at.gap()).isCloseTo(2e-3, within(FOUND)));
    }

    /** Half speed: after one turn of the crank it has made half of its own, in its hand. */
    @Test
    void aCamshaftTurnsAtHalfSpeedInItsHand() {
        Body nose = body(
                "nose",
                Outline.circle(new Point(0, 20e-3), 5e-3),
                Motion.halfSpeed(new Point(60e-3, 0), Motion.Hand.AGAINST_CRANK, 0));
        Body stop = body("stop", Outline.circle(new Point(60e-3 - 30e-3, 0), 2e-3), Motion.fixed());
        Closest closest = Sweep.least(Pair.of(nose, stop)).orElseThrow();
        assertThat(closest.gap()).isCloseTo(3e-3, within(NANOMETRE));
        assertThat(closest.angle()).isCloseTo(Math.PI, within(1e-4)); // a quarter turn of its own, from +y towards -x
    }

    /** Warmth moves a face by expansion times rise times its distance from the origin; end play brings bodies to one depth. */
    @Test
    void warmthGrowsOutlinesAndEndPlayBringsThemTogether() {
        Body post = Body.of("post", box(-5e-3, 0, 5e-3, 100e-3), new Body.Depth(0, 10e-3), Motion.fixed());
        Body roof = Body.of("roof", box(-5e-3, 100.3e-3, 5e-3, 110e-3), new Body.Depth(10.2e-3, 20e-3), Motion.fixed());
        assertThat(Sweep.least(Pair.of(post, roof))).isEmpty();
        assertThat(Sweep.curve(Pair.of(post, roof), 10)).isEmpty();
        Body warm = post.withEndPlay(0.25e-3).grown(23e-6 * 100);
        assertThat(Sweep.least(Pair.of(warm, roof)).orElseThrow().gap())
                .isCloseTo(0.3e-3 - 23e-6 * 100 * 100e-3, within(NANOMETRE));
    }

    /** Areas: pi r2; ring pi (R2 - r2); capsule pi r2 + 2 r d; rounded square a2 - (4 - pi) r2; hub and sector. */
    @Test
    void areasAreThoseOfTheFormulas() {
        Point o = new Point(1e-3, -2e-3);
        assertThat(Outline.circle(o, 2).area()).isCloseTo(4 * Math.PI, within(1e-12));
        assertThat(Outline.ring(o, 1, 2).area()).isCloseTo(3 * Math.PI, within(1e-12));
        assertThat(Outline.ringSector(o, 1, 2, 0.7, 1.2).area()).isCloseTo(0.6 * 3, within(1e-12));
        assertThat(Outline.capsule(new Point(0, 0), new Point(3, 4), 2).area())
                .isCloseTo(4 * Math.PI + 20, within(1e-12));
        assertThat(Outline.counterweight(1, 3, 2, 1.5).area())
                .isCloseTo(0.75 * 9 + (2 * Math.PI - 1.5) / 2, within(1e-12));
        Outline square =
                Outline.roundedPolygon(List.of(new Point(0, 0), new Point(0, 4), new Point(4, 4), new Point(4, 0)), 1);
        assertThat(square.area()).isCloseTo(16 - (4 - Math.PI), within(1e-12));
    }
}
