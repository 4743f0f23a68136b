package longthrow.core.clearance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import longthrow.core.motion.CrankMotion;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class ClearanceDoubtTest {
    private static final int TRIALS = 10_000;

    /** Gap in closed form: a flat crown under a capsule tilted by 0.2, whose lower end stands 12 mm to the side; least over crank angle by steps and ever finer steps. */
    private static double valveGap(double r, double rod, double ratio, double lash, double later, double seat) {
        double best = Double.POSITIVE_INFINITY;
        double from = Math.toRadians(200);
        double to = Math.toRadians(620);
        for (int round = 0; round < 3; round++) {
            double step = (to - from) / 200;
            double at = from;
            for (int k = 0; k <= 200; k++) {
                double angle = from + k * step;
                double off = Math.abs(angle - later - 2 * Math.PI - 1.9);
                double c = Math.cos(0.5 * Math.PI * off / 2.3);
                double lift = Math.max(0, (off < 2.3 ? ratio * 8e-3 * c * c : 0) - lash);
                double side = r * Math.sin(angle) - 0.7e-3;
                double crown = r * Math.cos(angle) + Math.sqrt(rod * rod - side * side) + 20e-3;
                double gap = seat - lift * Math.cos(0.2) - 12e-3 * Math.sin(0.2) + 1e-3 * Math.cos(0.2) - 1e-3 - crown;
                if (gap < best) {
                    best = gap;
                    at = angle;
                }
            }
            from = at - step;
            to = at + step;
        }
        return best;
    }

    private static double later(int number) {
        return 0.02 * (number % 9) - 0.2;
    }

    /** The gap of a mechanism in closed form, nothing of the package in it. */
    private static double plain(int number, List<Double> p) {
        SplittableRandom random = new SplittableRandom(7_000L + number);
        double r = random.nextDouble(22e-3, 40e-3);
        return number % 2 == 1
                ? valveGap(r, p.get(4), p.get(0) / 8e-3, p.get(2), p.get(1) + later(number), p.get(3))
                : p.get(1) - p.get(0) / 2 - p.get(2) - p.get(3);
    }

    /** Skirt and counterweight of an invented engine, nominal gap near 0, doubts of all three shapes. */
    private static Mechanism skirt(int number) {
        SplittableRandom random = new SplittableRandom(7_000L + number);
        double r = random.nextDouble(22e-3, 40e-3);
        double l = r * random.nextDouble(2.8, 3.8);
        double skirt = random.nextDouble(12e-3, 22e-3);
        double u = random.nextDouble(0.02e-3, 0.08e-3);
        double outer = l - r - skirt - random.nextDouble(-1.5, 2.5) * 2 * u;
        boolean valve = number % 2 == 1;
        if (valve) {
            double seat = l + r + 23e-3;
            double near =
                    seat - valveGap(r, l, 1, 0.1e-3, later(number), seat) + random.nextDouble(-1.5, 2.5) * 0.15e-3;
            return new Mechanism(
                    List.of(
                            Mechanism.Parameter.normal("lift", 8e-3, 0.05e-3),
                            Mechanism.Parameter.normal("phase", 0, Math.toRadians(1)),
                            Mechanism.Parameter.rectangular("lash", 0.1e-3, 0.03e-3),
                            Mechanism.Parameter.ofFewReadings("seat", near, 0.1e-3, 5),
                            Mechanism.Parameter.rectangular("rod", l, 0.03e-3)),
                    p -> {
                        Course lift = BUMP.atValve(p[0] / 8e-3, p[2]).later(p[1] + later(number));
                        return Pair.of(
                                body(
                                        "piston",
                                        box(30e-3, -10e-3, 20e-3),
                                        Motion.piston(new CrankMotion(r, p[4], 0.7e-3), 0)),
                                body(
                                        "valve",
                                        Outline.capsule(new Point(-12e-3, 1e-3), new Point(12e-3, 1e-3), 1e-3),
                                        Motion.valve(new Point(0, p[3]), 0.2, lift)));
                    });
        }
        return new Mechanism(
                List.of(
                        Mechanism.Parameter.normal("stroke", 2 * r, u),
                        Mechanism.Parameter.rectangular("rod", l, 2 * u),
                        Mechanism.Parameter.ofFewReadings("skirt", skirt, u, 4),
                        Mechanism.Parameter.normal("radius", outer, u)),
                p -> Pair.of(
                        body("piston", box(25e-3, -p[2], 20e-3), Motion.piston(new CrankMotion(p[0] / 2, p[1], 0), 0)),
                        body("counterweight", Outline.counterweight(10e-3, p[3], Math.PI, 2), Motion.crank())));
    }

    private static final Course BUMP = Course.of(a -> {
        double off = Math.abs(Math.IEEEremainder(a - 2 * Math.PI - 1.9, 4 * Math.PI));
        double c = Math.cos(0.5 * Math.PI * off / 2.3);
        return off < 2.3 ? 8e-3 * c * c : 0;
    });

    private static Body body(String name, Outline outline, Motion motion) {
        return Body.of(name, outline, Body.Depth.throughout(), motion);
    }

    private static Outline box(double half, double low, double high) {
        return Outline.polygon(
                List.of(new Point(-half, low), new Point(half, low), new Point(half, high), new Point(-half, high)));
    }

    static java.util.stream.IntStream numbers() {
        return java.util.stream.IntStream.range(0, 50);
    }

    /** Against 10,000 draws with a generator of its own and gaps in closed form; 2 points are asked for, of which the trials themselves take 0.5 (one standard deviation). */
    @ParameterizedTest
    @MethodSource("numbers")
    void chanceOfContactIsThatOfPlainTrials(int number) {
        Mechanism mechanism = skirt(number);
        ClearanceDoubt doubt = ClearanceDoubt.of(mechanism).orElseThrow();
        java.util.Random random = new java.util.Random(99 + number);
        int touched = 0;
        for (int k = 0; k < TRIALS; k++) {
            List<Double> values = new ArrayList<>();
            for (Mechanism.Parameter p : mechanism.parameters()) {
                values.add(p.value() + error(p, random));
            }
            touched += plain(number, values) < 0 ? 1 : 0;
        }
        assertThat(doubt.nominal().gap())
                .isCloseTo(
                        plain(
                                number,
                                mechanism.parameters().stream()
                                        .map(Mechanism.Parameter::value)
                                        .toList()),
                        within(2e-6));
        assertThat(doubt.contact())
                .as(mechanism.pair().other().name())
                .isCloseTo(touched / (double) TRIALS, within(0.02));
        // with as few draws in full as an answer can afford
        assertThat(ClearanceDoubt.of(mechanism, List.of(), 400).orElseThrow().contact())
                .isCloseTo(touched / (double) TRIALS, within(0.02));
        assertThat(doubt.worst()).isLessThan(doubt.nominal().gap());
        assertThat(doubt.low()).isLessThan(doubt.nominal().gap());
        assertThat(doubt.high()).isGreaterThan(doubt.nominal().gap());
        assertThat(doubt.shares().values().stream().mapToDouble(s -> s).sum()).isCloseTo(1, within(1e-9));
    }

    private static double error(Mechanism.Parameter p, java.util.Random random) {
        if (p.error() instanceof longthrow.core.measurement.Law.Rectangular r) {
            return r.lo() + (r.hi() - r.lo()) * random.nextDouble();
        }
        double g = random.nextGaussian();
        if (p.error() instanceof longthrow.core.measurement.Law.ScaledT t) {
            double chi = 0;
            for (int i = 0; i < (int) t.degreesOfFreedom(); i++) {
                double z = random.nextGaussian();
                chi += z * z;
            }
            return t.scale() * g / Math.sqrt(chi / t.degreesOfFreedom());
        }
        return p.error().standardDeviation() * g;
    }

    /** A sum of independent lengths: variance adds, shares go by squares, the worst case by the ends. */
    @Test
    void aStackOfLengthsAddsUpByTheBook() {
        Mechanism stack = new Mechanism(
                List.of(
                        Mechanism.Parameter.normal("low", 10e-3, 0.03e-3),
                        Mechanism.Parameter.normal("high", 10.05e-3, 0.04e-3)),
                p -> Pair.of(
                        body("low", box(5e-3, 0, p[0]), Motion.fixed()),
                        body("high", box(5e-3, p[1], 20e-3), Motion.fixed())));
        ClearanceDoubt doubt = ClearanceDoubt.of(stack).orElseThrow();
        assertThat(doubt.contact()).isCloseTo(0.1587, within(0.006)); // normal below -1 standard deviation: 0.1587
        assertThat(doubt.high() - doubt.low()).isCloseTo(2 * 1.96 * 0.05e-3, within(0.005e-3));
        assertThat(doubt.shares().get("high")).isCloseTo(0.64, within(0.02));
        assertThat(doubt.worst()).isCloseTo(0.05e-3 - 1.96 * 0.07e-3, within(1e-6));
        assertThat(doubt.isWhole()).isFalse();
    }

    /**
     * A gap that is the lesser of two, which no sum of parabolas tells: chance of contact of either of two walls, each at one standard deviation, 1 - 0.8413 squared,
     * with few draws in full. Plain shares of 400 draws scatter by 2.3 points (one standard deviation), mended by the sum, over 12 lots of draws, by less.
     */
    @Test
    void fewDrawsTellTheChanceWhereTheNearestPlaceJumps() {
        double square = 0;
        int seeds = 12;
        for (int k = 0; k < seeds; k++) {
            List<Mechanism.Parameter> parameters = new ArrayList<>();
            parameters.add(Mechanism.Parameter.normal("left wall", -10.05e-3, 0.05e-3));
            for (int idle = 0; idle < k; idle++) { // what matters to nothing lets the right wall draw other figures
                parameters.add(Mechanism.Parameter.normal("idle " + idle, 0, 1));
            }
            parameters.add(Mechanism.Parameter.normal("right wall", 10.05e-3, 0.05e-3));
            Mechanism between = new Mechanism(
                    parameters,
                    p -> Pair.of(
                            body("block", box(10e-3, 0, 20e-3), Motion.fixed()),
                            new Body(
                                    "walls",
                                    List.of(wall(p[0] - 5e-3, p[0]), wall(p[p.length - 1], p[p.length - 1] + 5e-3)),
                                    Body.Depth.throughout(),
                                    Motion.fixed())));
            ClearanceDoubt doubt = ClearanceDoubt.of(between, List.of(), 400).orElseThrow();
            assertThat(doubt.isWhole()).isTrue();
            double off = doubt.contact() - (1 - 0.8413 * 0.8413);
            square += off * off / seeds;
        }
        assertThat(Math.sqrt(square)).isLessThan(0.015);
    }

    private static Outline wall(double from, double to) {
        return Outline.polygon(
                List.of(new Point(from, 0), new Point(to, 0), new Point(to, 20e-3), new Point(from, 20e-3)));
    }
}
