package longthrow.core.clearance;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.function.DoubleUnaryOperator;
import longthrow.core.motion.CrankMotion;

/**
 * Invented bodies for the tests, each told twice: as the outline and motion under test, and, written by itself, as dense polygons and plain formulas for the
 * twin. Lengths [m], angles [rad] from +y towards +x. No real engine.
 */
record Specimen(String name, Side one, Side other) {
    /** How far a chord of the twin's polygons stands off its arc [m]. */
    static final double CHORD = 1e-6;

    /** One of two bodies, twice. */
    record Side(Body body, List<List<double[]>> loops, Moves moves) {}

    /** Where a frame stands: x, y, turn. */
    interface Moves {
        double[] at(double angle);
    }

    Pair pair() {
        return Pair.of(one.body, other.body);
    }

    private record Shape(Outline outline, List<List<double[]>> loops) {}

    private record Way(Motion motion, Moves moves) {}

    // ---------------------------------------------------------------- shapes

    private static void arc(List<double[]> loop, double cx, double cy, double r, double from, double to) {
        int n = (int) Math.ceil(Math.abs(to - from) / (2 * Math.acos(1 - CHORD / r))) + 1;
        for (int i = 0; i <= n; i++) {
            double a = from + (to - from) * i / n;
            loop.add(new double[] {cx + r * Math.sin(a), cy + r * Math.cos(a)});
        }
    }

    private static Shape circle(double x, double y, double r) {
        List<double[]> loop = new ArrayList<>();
        arc(loop, x, y, r, 0, 2 * Math.PI);
        loop.remove(loop.size() - 1);
        return new Shape(Outline.circle(new Point(x, y), r), List.of(loop));
    }

    private static Shape ring(double x, double y, double inner, double outer) {
        List<double[]> in = new ArrayList<>();
        arc(in, x, y, inner, 0, 2 * Math.PI);
        in.remove(in.size() - 1);
        List<double[]> out = new ArrayList<>();
        arc(out, x, y, outer, 0, 2 * Math.PI);
        out.remove(out.size() - 1);
        return new Shape(Outline.ring(new Point(x, y), inner, outer), List.of(in, out));
    }

    private static Shape sector(double x, double y, double inner, double outer, double middle, double spread) {
        List<double[]> loop = new ArrayList<>();
        arc(loop, x, y, inner, middle - spread / 2, middle + spread / 2);
        arc(loop, x, y, outer, middle + spread / 2, middle - spread / 2);
        return new Shape(Outline.ringSector(new Point(x, y), inner, outer, middle, spread), List.of(loop));
    }

    private static Shape capsule(double x0, double y0, double x1, double y1, double r) {
        List<double[]> loop = new ArrayList<>();
        double way = Math.atan2(x1 - x0, y1 - y0);
        arc(loop, x1, y1, r, way - Math.PI / 2, way + Math.PI / 2);
        arc(loop, x0, y0, r, way + Math.PI / 2, way + 1.5 * Math.PI);
        return new Shape(Outline.capsule(new Point(x0, y0), new Point(x1, y1), r), List.of(loop));
    }

    private static Shape counterweight(double hub, double outer, double middle, double spread) {
        List<double[]> loop = new ArrayList<>();
        arc(loop, 0, 0, outer, middle - spread / 2, middle + spread / 2);
        arc(loop, 0, 0, hub, middle + spread / 2, middle - spread / 2 + 2 * Math.PI);
        return new Shape(Outline.counterweight(hub, outer, middle, spread), List.of(loop));
    }

    private static Shape polygon(double... xy) {
        List<double[]> loop = new ArrayList<>();
        List<Point> points = new ArrayList<>();
        for (int i = 0; i < xy.length; i += 2) {
            loop.add(new double[] {xy[i], xy[i + 1]});
            points.add(new Point(xy[i], xy[i + 1]));
        }
        return new Shape(Outline.polygon(points), List.of(loop));
    }

    /** A rectangle with rounded corners. */
    private static Shape block(double x0, double y0, double x1, double y1, double r) {
        List<double[]> loop = new ArrayList<>();
        arc(loop, x1 - r, y1 - r, r, 0, Math.PI / 2);
        arc(loop, x1 - r, y0 + r, r, Math.PI / 2, Math.PI);
        arc(loop, x0 + r, y0 + r, r, Math.PI, 1.5 * Math.PI);
        arc(loop, x0 + r, y1 - r, r, 1.5 * Math.PI, 2 * Math.PI);
        return new Shape(
                Outline.roundedPolygon(
                        List.of(new Point(x0, y0), new Point(x1, y0), new Point(x1, y1), new Point(x0, y1)), r),
                List.of(loop));
    }

    /** A jagged star about a point, concave. */
    private static Shape star(SplittableRandom random, double x, double y, double least, double most, int corners) {
        double[] xy = new double[2 * corners];
        for (int i = 0; i < corners; i++) {
            double a = 2 * Math.PI * i / corners;
            double r = random.nextDouble(least, most);
            xy[2 * i] = x + r * Math.sin(a);
            xy[2 * i + 1] = y + r * Math.cos(a);
        }
        return polygon(xy);
    }

    // ---------------------------------------------------------------- motions

    private static Way fixed() {
        return new Way(Motion.fixed(), a -> new double[] {0, 0, 0});
    }

    private static Way crank() {
        return new Way(Motion.crank(), a -> new double[] {0, 0, a});
    }

    private static Way half(double x, double y, boolean with, double later) {
        return new Way(
                Motion.halfSpeed(new Point(x, y), with ? Motion.Hand.WITH_CRANK : Motion.Hand.AGAINST_CRANK, later),
                a -> new double[] {x, y, with ? a / 2 - later : later - a / 2});
    }

    private static double pinHeight(double r, double l, double e, double a) {
        double side = r * Math.sin(a) - e;
        return r * Math.cos(a) + Math.sqrt(l * l - side * side);
    }

    private static Way rod(double r, double l, double e) {
        return new Way(Motion.rod(new CrankMotion(r, l, e)), a -> {
            double x = r * Math.sin(a);
            double y = r * Math.cos(a);
            return new double[] {x, y, Math.atan2(e - x, pinHeight(r, l, e, a) - y)};
        });
    }

    private static Way piston(double r, double l, double e, double rock) {
        return new Way(
                Motion.piston(new CrankMotion(r, l, e), rock), a -> new double[] {e, pinHeight(r, l, e, a), rock});
    }

    private static DoubleUnaryOperator bump(double centre, double half, double peak) {
        return a -> {
            double off = Math.abs(Math.IEEEremainder(a - centre, 4 * Math.PI));
            double c = Math.cos(0.5 * Math.PI * off / half);
            return off < half ? peak * c * c : 0;
        };
    }

    private static Way valve(double x, double y, double tilt, DoubleUnaryOperator lift) {
        return new Way(Motion.valve(new Point(x, y), tilt, Course.of(lift)), a -> {
            double s = lift.applyAsDouble(a);
            return new double[] {x - s * Math.sin(tilt), y - s * Math.cos(tilt), tilt};
        });
    }

    private static Way rocker(double x, double y, double angle, boolean with, DoubleUnaryOperator swing) {
        return new Way(
                Motion.rocker(
                        new Point(x, y),
                        angle,
                        with ? Motion.Hand.WITH_CRANK : Motion.Hand.AGAINST_CRANK,
                        Course.of(swing)),
                a -> new double[] {x, y, angle + (with ? 1 : -1) * swing.applyAsDouble(a)});
    }

    private static Side side(String name, Shape shape, Way way) {
        return new Side(Body.of(name, shape.outline, Body.Depth.throughout(), way.motion), shape.loops, way.moves);
    }

    private static Side at(Side side, Body.Depth depth) {
        Body b = side.body;
        return new Side(new Body(b.name(), b.outlines(), depth, b.motion()), side.loops, side.moves);
    }

    // ---------------------------------------------------------------- mechanisms

    static final int KINDS = 12;

    /** One invented mechanism by its number, the same on every machine. */
    static Specimen of(int number) {
        SplittableRandom random = new SplittableRandom(20_261_126L + number);
        Specimen s = drawn(number % KINDS, random, number);
        if (number % 10 == 7) { // the two stand beside each other along the crank axis
            return new Specimen(
                    s.name + " beside each other",
                    at(s.one, new Body.Depth(0, 8e-3)),
                    at(s.other, new Body.Depth(8.2e-3, 20e-3)));
        }
        return s;
    }

    private static Specimen drawn(int kind, SplittableRandom random, int number) {
        double r = random.nextDouble(20e-3, 45e-3);
        double l = r * random.nextDouble(2.6, 4.2);
        double e = random.nextDouble(-1.5e-3, 1.5e-3) + random.nextDouble(-1e-3, 1e-3); // bore and pin offset
        double bore = random.nextDouble(50e-3, 90e-3);
        double top = Math.sqrt((l + r) * (l + r) - e * e);
        double crown = random.nextDouble(15e-3, 30e-3);
        double shift = random.nextInt(7) == 0 ? random.nextDouble(-2e-3, 0) : random.nextDouble(0, 5e-3);
        String name = "mechanism " + number + ", ";
        switch (kind) {
            case 0 -> { // piston with a pocket under a tilted valve near overlap
                double w = bore / 2;
                Shape piston = polygon(
                        -w,
                        crown,
                        -0.6 * w,
                        crown,
                        -0.5 * w,
                        crown - 2e-3,
                        -0.1 * w,
                        crown - 1.5e-3,
                        0.1 * w,
                        crown,
                        w,
                        crown,
                        w,
                        -0.4 * w,
                        -w,
                        -0.4 * w);
                double head = random.nextDouble(12e-3, 20e-3);
                Shape valve = polygon(
                        -head, 0, head, 0, head, 1.2e-3, 3e-3, 9e-3, 3e-3, 60e-3, -3e-3, 60e-3, -3e-3, 9e-3, -head,
                        1.2e-3);
                double tilt = random.nextDouble(-0.45, 0.45);
                DoubleUnaryOperator lift =
                        bump(2 * Math.PI + random.nextDouble(-0.2, 0.2) * 12, random.nextDouble(2.0, 2.6), 9e-3);
                return new Specimen(
                        name + "piston and valve",
                        side("piston", piston, piston(r, l, e, random.nextDouble(-0.01, 0.01))),
                        side(
                                "valve",
                                valve,
                                valve(
                                        -0.3 * w,
                                        top + crown + head * Math.abs(Math.sin(tilt)) + 3e-3 + shift,
                                        tilt,
                                        lift)));
            }
            case 1 -> { // skirt and counterweight
                double w = bore / 2;
                double skirt = random.nextDouble(12e-3, 25e-3);
                double low = Math.sqrt((l - r) * (l - r) - e * e);
                double outer = low - skirt - shift;
                return new Specimen(
                        name + "skirt and counterweight",
                        side("skirt", block(-w, -skirt, w, crown, 1.5e-3), piston(r, l, e, 0.003)),
                        side(
                                "counterweight",
                                counterweight(
                                        0.4 * outer,
                                        outer,
                                        Math.PI + random.nextDouble(-0.1, 0.1),
                                        random.nextDouble(1.5, 2.8)),
                                crank()));
            }
            case 2 -> { // rod bolt and camshaft
                double y = -random.nextDouble(3e-3, 9e-3);
                double bolt = 4e-3;
                double reach = r + 22e-3;
                double angle = random.nextDouble(1.7, 2.6);
                double core = random.nextDouble(9e-3, 14e-3);
                double away = reach + core + 4e-3 + shift;
                return new Specimen(
                        name + "rod bolt and lobe",
                        side("bolt", capsule(18e-3, -14e-3, 18e-3, y + 12e-3, bolt), rod(r, l, e)),
                        side(
                                "lobe",
                                capsule(0, 0, 0, 0.45 * core, core),
                                half(
                                        away * Math.sin(angle),
                                        away * Math.cos(angle),
                                        random.nextBoolean(),
                                        random.nextDouble(0, 6))));
            }
            case 3 -> { // rod beam and cylinder foot
                double foot = random.nextDouble(0.5, 0.75) * l;
                double wall = r * (1 - foot / l) + 9e-3 + shift;
                return new Specimen(
                        name + "rod beam and cylinder foot",
                        side("beam", block(-8e-3, 0, 8e-3, l, 2e-3), rod(r, l, e)),
                        side(
                                "foot",
                                polygon(wall, foot, wall + 9e-3, foot - 2e-3, wall + 9e-3, 2 * l, wall, 2 * l),
                                fixed()));
            }
            case 4 -> { // dipper in the case
                double reach = r + 28e-3;
                return new Specimen(
                        name + "dipper and case",
                        side("dipper", capsule(0, 0, random.nextDouble(-4e-3, 4e-3), -24e-3, 4e-3), rod(r, l, e)),
                        side("case", ring(0, 0, reach + 1e-3 + shift, reach + 15e-3), fixed()));
            }
            case 5 -> { // counterweight and cam core
                double outer = r + 15e-3;
                double away = outer + 12e-3 + shift;
                double a = random.nextDouble(1, 3);
                return new Specimen(
                        name + "counterweight and cam core",
                        side("counterweight", counterweight(12e-3, outer, 3, 2.2), crank()),
                        side(
                                "core",
                                circle(random.nextDouble(0, 2e-3), 0, 12e-3),
                                half(away * Math.sin(a), away * Math.cos(a), true, 1)));
            }
            case 6 -> { // release weight and crank cheek
                double outer = r + 12e-3;
                double away = outer + 22e-3 + shift;
                double a = random.nextDouble(2, 4);
                return new Specimen(
                        name + "release weight and counterweight",
                        side(
                                "weight",
                                sector(2e-3, 0, 10e-3, 22e-3, random.nextDouble(0, 6), random.nextDouble(1, 4)),
                                half(
                                        away * Math.sin(a),
                                        away * Math.cos(a),
                                        random.nextBoolean(),
                                        random.nextDouble(0, 6))),
                        side("counterweight", counterweight(14e-3, outer, 3.2, 2.4), crank()));
            }
            case 7 -> { // valve and valve
                double apart = 30e-3 + shift;
                Shape head = block(-14e-3, 0, 14e-3, 4e-3, 0.8e-3);
                return new Specimen(
                        name + "valve and valve",
                        side("inlet", head, valve(-apart / 2, 0, -0.3, bump(7.9, 2.3, 9e-3))),
                        side(
                                "exhaust",
                                capsule(-11e-3, 1.5e-3, 11e-3, 1.5e-3, 1.5e-3),
                                valve(apart / 2, 0, random.nextDouble(0.1, 0.4), bump(4.7, 2.4, 8e-3))));
            }
            case 8 -> { // rocker and retainer
                return new Specimen(
                        name + "rocker and retainer",
                        side(
                                "rocker",
                                polygon(-20e-3, -5e-3, 20e-3, -4e-3, 24e-3, 0, 18e-3, 5e-3, -18e-3, 6e-3),
                                rocker(0, 0, random.nextDouble(-0.1, 0.1), true, bump(7.9, 2.3, 0.4))),
                        side(
                                "retainer",
                                block(-11e-3, -14e-3, 11e-3, -9e-3, 1e-3),
                                valve(24e-3, shift, 0.05, bump(7.9, 2.3, 8e-3))));
            }
            case 9 -> { // concave stars that turn past each other
                double most = r + 10e-3;
                double away = 2 * most - 8e-3 + shift;
                double a = random.nextDouble(0, 6);
                return new Specimen(
                        name + "stars",
                        side("one", star(random, 0, 0, 0.5 * most, most, 9 + number % 7), crank()),
                        side(
                                "other",
                                star(random, 0, 0, 0.6 * most, most, 12),
                                half(away * Math.sin(a), away * Math.cos(a), random.nextBoolean(), 0.3)));
            }
            case 10 -> { // touch where they start: a round throw and a round stop just under it
                double y = r + 8e-3 + 5e-3;
                return new Specimen(
                        name + "touching at the start",
                        side("throw", circle(0, r, 8e-3), crank()),
                        side("stop", circle(0, y, 5e-3), fixed()));
            }
            default -> { // one starts deep inside the other
                return new Specimen(
                        name + "overlapping at the start",
                        side("throw", circle(0, r, random.nextDouble(6e-3, 12e-3)), crank()),
                        side(
                                "plate",
                                polygon(
                                        -20e-3,
                                        r - 5e-3 + shift,
                                        25e-3,
                                        r - 3e-3,
                                        22e-3,
                                        r + 20e-3,
                                        4e-3,
                                        r + 9e-3,
                                        -16e-3,
                                        r + 22e-3),
                                fixed()));
            }
        }
    }

    /** The gap of the first outlines of one of them. */
    static PairGap gapOf(int number) {
        Pair pair = of(number).pair();
        return new PairGap(
                pair.one().motion(),
                pair.one().outlines().get(0),
                pair.other().motion(),
                pair.other().outlines().get(0));
    }
}
