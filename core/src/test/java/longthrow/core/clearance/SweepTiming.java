package longthrow.core.clearance;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import longthrow.core.CpuTime;

/**
 * CPU time of this thread for full sweeps, warm, median of many: the least gap guaranteed of 12 pairs in two conditions (the second with 0.1 % of growth), and the
 * gap of two 64-cornered outlines at 720 angles. Run by hand: its figure is in docs/measurements.md.
 */
final class SweepTiming {
    private static final int ROUNDS = 60;

    private SweepTiming() {}

    public static void main(String[] arguments) {
        List<Pair> pairs = new ArrayList<>();
        for (int i = 0; pairs.size() < 24; i++) {
            Pair pair = Specimen.of(i).pair();
            if (pair.sharesDepth() && Sweep.least(pair).orElseThrow().gap() > 0.3e-3) {
                pairs.add(pair);
                pairs.add(Pair.of(pair.one().grown(0.001), pair.other()));
            }
        }
        print("12 pairs, two conditions, least gap: %.2f ms CPU%n", median(() -> pairs.forEach(Sweep::least)));
        print(
                "gaps worked out: %d%n",
                pairs.stream().mapToLong(Sweep::evaluations).sum());
        print("the same as curves of 720 angles: %.2f ms CPU%n", median(() -> pairs.forEach(p -> Sweep.curve(p, 720))));
        Pair polygons = polygons();
        print("64 corners each, a pair and angle: %.3f us CPU%n", median(() -> Sweep.curve(polygons, 720)) * 1e3 / 720);
        print(
                "64 corners each, least gap: %.3f ms CPU, %d gaps%n",
                median(() -> Sweep.least(polygons)), Sweep.evaluations(polygons));
    }

    /** A piston outline with a wavy crown and a valve of 64 points each, tilted by 17 degrees. */
    private static Pair polygons() {
        List<Point> piston = new ArrayList<>();
        List<Point> valve = new ArrayList<>();
        for (int i = 0; i < 64; i++) {
            if (i < 40) {
                double x = -43 + 86.0 * i / 39;
                double y = -6 * Math.exp(-Math.pow((x - 14) / 13, 2)) - 2.5 * Math.exp(-Math.pow((x + 16) / 11, 2));
                piston.add(new Point(x * 1e-3, (y + 0.4 * Math.cos(x / 5)) * 1e-3));
            } else {
                double f = (i - 40) / 23.0;
                piston.add(new Point((43 - 86 * f) * 1e-3, (-30 - 3 * Math.sin(3 * f)) * 1e-3));
            }
            double f = i < 32 ? i / 31.0 : (i - 31) / 33.0;
            double x = i < 32 ? -17 + 34 * f : 17 - 34 * f;
            double y = i < 32 ? -0.6 * (1 - (x / 17) * (x / 17)) : 1.5 + 30 * Math.exp(-Math.pow(Math.abs(x) / 4, 1.5));
            valve.add(new Point(x * 1e-3, y * 1e-3));
        }
        Course lift = Course.of(a -> {
            double off = Math.abs(Math.IEEEremainder(a - Math.toRadians(109), 4 * Math.PI));
            double c = Math.cos(0.5 * Math.PI * off / Math.toRadians(127));
            return off < Math.toRadians(127) ? 11e-3 * c * c : 0;
        });
        return Pair.of(
                Body.of(
                        "piston",
                        Outline.polygon(piston),
                        Body.Depth.throughout(),
                        Motion.piston(new longthrow.core.motion.CrankMotion(43e-3, 143e-3, 0), 0)),
                Body.of(
                        "valve",
                        Outline.polygon(valve),
                        Body.Depth.throughout(),
                        Motion.valve(new Point(14e-3, 194e-3), Math.toRadians(17), lift)));
    }

    /** [ms]. */
    private static double median(Runnable work) {
        return CpuTime.median(ROUNDS, work);
    }

    private static void print(String format, Object... values) {
        System.out.printf(Locale.ROOT, format, values);
    }
}
