package longthrow.core.clearance;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * A closed shape in the plane, of straight and circular edges, in the frame of its body. Circles stay circles: nothing is turned into a polygon. Made from
 * the few numbers a builder can measure, or from points. Directions [rad] run from +y towards +x.
 */
public final class Outline {
    /** How far a drawn curve may stand off the edges it is turned into [m]; a twentieth of what the least gap is guaranteed to. */
    static final double CURVE_TOLERANCE = 0.5e-6;

    private final Edges edges;
    private @Nullable Cores cores; // found when first asked for; two threads would find the same

    private Outline(Edges edges) {
        this.edges = edges;
    }

    /** As collected, turned so that the material is on the left; holes are collected as loops run the other way. */
    static Outline of(Edges edges) {
        return new Outline(edges.twiceArea() < 0 ? edges.reversed() : edges);
    }

    /**
     * A full circle.
     * @param radius &gt; 0
     */
    public static Outline circle(Point centre, double radius) {
        positive("radius of a circle", radius);
        Edges.Maker maker = new Edges.Maker();
        maker.arc(centre.x(), centre.y(), radius, 0, 2 * Math.PI);
        maker.close();
        return of(maker.made());
    }

    /**
     * A full ring: a bore with its wall around it.
     * @param inner &gt; 0
     * @param outer above the inner radius
     */
    public static Outline ring(Point centre, double inner, double outer) {
        radii(inner, outer);
        Edges.Maker maker = new Edges.Maker();
        maker.arc(centre.x(), centre.y(), outer, 0, 2 * Math.PI);
        maker.close();
        maker.arc(centre.x(), centre.y(), inner, 0, -2 * Math.PI);
        maker.close();
        return of(maker.made());
    }

    /**
     * Part of a ring.
     * @param inner  &gt; 0
     * @param outer  above the inner radius
     * @param middle direction of its middle
     * @param spread of the whole sector [rad], above 0, below 2 pi
     */
    public static Outline ringSector(Point centre, double inner, double outer, double middle, double spread) {
        radii(inner, outer);
        finite("direction of a ring sector", middle);
        if (!(spread > 0 && spread < 2 * Math.PI)) {
            throw new IllegalArgumentException("a ring sector spreads over " + Math.toDegrees(spread)
                    + " degrees; it must be more than 0 and less than 360; use a full ring");
        }
        double from = Math.PI / 2 - middle - spread / 2; // from +x towards +y
        Edges.Maker maker = new Edges.Maker();
        Point start = Point.polar(centre, inner, middle + spread / 2);
        maker.line(start.x(), start.y(), centre.x() + outer * Math.cos(from), centre.y() + outer * Math.sin(from));
        maker.arc(centre.x(), centre.y(), outer, from, spread);
        Point far = Point.polar(centre, outer, middle - spread / 2);
        Point near = Point.polar(centre, inner, middle - spread / 2);
        maker.line(far.x(), far.y(), near.x(), near.y());
        maker.arc(centre.x(), centre.y(), inner, from + spread, -spread);
        maker.close();
        return of(maker.made());
    }

    /**
     * All points within a radius of a straight line between two centres: a rod beam, a bolt, a stem.
     * @param radius &gt; 0
     */
    public static Outline capsule(Point one, Point other, double radius) {
        positive("radius of a capsule", radius);
        double length = Math.hypot(other.x() - one.x(), other.y() - one.y());
        if (length < Edges.SAME) {
            return circle(one, radius);
        }
        double way = Math.atan2(other.y() - one.y(), other.x() - one.x());
        double nx = radius * Math.sin(way);
        double ny = -radius * Math.cos(way);
        Edges.Maker maker = new Edges.Maker();
        maker.line(one.x() + nx, one.y() + ny, other.x() + nx, other.y() + ny);
        maker.arc(other.x(), other.y(), radius, way - Math.PI / 2, Math.PI);
        maker.line(other.x() - nx, other.y() - ny, one.x() - nx, one.y() - ny);
        maker.arc(one.x(), one.y(), radius, way + Math.PI / 2, Math.PI);
        maker.close();
        return of(maker.made());
    }

    /**
     * A crank cheek with its counterweight: a round hub about the crank axis, and a sector with straight radial flanks.
     * @param hubRadius   &gt; 0
     * @param outerRadius above the hub's
     * @param middle      direction of the sector's middle: half a turn where it is opposite to the crank pin
     * @param spread      of the whole sector [rad], above 0, below 2 pi
     */
    public static Outline counterweight(double hubRadius, double outerRadius, double middle, double spread) {
        radii(hubRadius, outerRadius);
        finite("direction of a counterweight", middle);
        if (!(spread > 0 && spread < 2 * Math.PI)) {
            throw new IllegalArgumentException("a counterweight spreads over " + Math.toDegrees(spread)
                    + " degrees; it must be more than 0 and less than 360");
        }
        double from = Math.PI / 2 - middle - spread / 2;
        Edges.Maker maker = new Edges.Maker();
        Point axis = new Point(0, 0);
        Point root = Point.polar(axis, hubRadius, middle + spread / 2);
        Point tip = Point.polar(axis, outerRadius, middle + spread / 2);
        maker.line(root.x(), root.y(), tip.x(), tip.y());
        maker.arc(0, 0, outerRadius, from, spread);
        Point farTip = Point.polar(axis, outerRadius, middle - spread / 2);
        Point farRoot = Point.polar(axis, hubRadius, middle - spread / 2);
        maker.line(farTip.x(), farTip.y(), farRoot.x(), farRoot.y());
        maker.arc(0, 0, hubRadius, from + spread, 2 * Math.PI - spread);
        maker.close();
        return of(maker.made());
    }

    /**
     * A convex polygon with its corners rounded from inside, each by an arc that touches both sides.
     * @param corners at least 3, in either sense
     * @param radius  0 or more; the arcs of neighbouring corners must leave something of the side between them
     */
    public static Outline roundedPolygon(List<Point> corners, double radius) {
        Outline sharp = polygon(corners);
        if (!(radius >= 0) || Double.isInfinite(radius)) {
            throw new IllegalArgumentException(
                    "corners are rounded by " + radius + " m; the radius must be 0 or more, in metres");
        }
        if (radius == 0) {
            return sharp;
        }
        Edges e = sharp.edges;
        double[] cut = new double[e.count]; // of both sides at the start of each edge
        double[] turn = new double[e.count];
        double[] way = new double[e.count];
        for (int i = 0; i < e.count; i++) {
            double[] r = e.row;
            int at = i * Edges.ROW;
            way[i] = Math.atan2(r[at + Edges.Y1] - r[at + Edges.Y0], r[at + Edges.X1] - r[at + Edges.X0]);
        }
        for (int i = 0; i < e.count; i++) {
            turn[i] = Math.IEEEremainder(way[i] - way[e.previous[i]], 2 * Math.PI);
            if (!(turn[i] > -1e-9)) {
                throw new IllegalArgumentException(String.format(
                        Locale.ROOT,
                        "the corner at %.6f, %.6f m points inwards; only a convex polygon can be rounded: enter it as points, or as several bodies",
                        e.row[i * Edges.ROW],
                        e.row[i * Edges.ROW + 1]));
            }
            cut[i] = radius * Math.tan(Math.max(0, turn[i]) / 2);
        }
        Edges.Maker maker = new Edges.Maker();
        for (int i = 0; i < e.count; i++) {
            int at = i * Edges.ROW;
            double length = e.length(i);
            if (!(cut[i] + cut[e.next[i]] <= length)) {
                throw new IllegalArgumentException(String.format(
                        Locale.ROOT,
                        "corners rounded by %.6f m need %.6f m of a side that is %.6f m long; give a smaller radius",
                        radius,
                        cut[i] + cut[e.next[i]],
                        length));
            }
            double ux = Math.cos(way[i]);
            double uy = Math.sin(way[i]);
            double sx = e.row[at] + cut[i] * ux;
            double sy = e.row[at + 1] + cut[i] * uy;
            maker.arc(sx - radius * uy, sy + radius * ux, radius, way[i] - turn[i] - Math.PI / 2, Math.max(0, turn[i]));
            double rest = length - cut[e.next[i]];
            maker.line(sx, sy, e.row[at] + rest * ux, e.row[at + 1] + rest * uy);
        }
        maker.close();
        return of(maker.made());
    }

    /**
     * A polygon, concave allowed, corners in either sense; the last one is joined to the first.
     * @throws IllegalArgumentException for fewer than three different points in a row, or edges that cross or touch
     */
    public static Outline polygon(List<Point> corners) {
        Edges.Maker maker = new Edges.Maker();
        int kept = 0;
        for (int i = 0; i < corners.size(); i++) {
            Point from = corners.get(i);
            Point to = corners.get((i + 1) % corners.size());
            if (!from.equals(to)) {
                maker.line(from.x(), from.y(), to.x(), to.y());
                kept++;
            }
        }
        if (kept < 3) {
            throw new IllegalArgumentException(
                    "an outline has " + kept + " different corners; it needs at least 3 to enclose anything");
        }
        maker.close();
        Edges edges = maker.made();
        Simple.crossing(edges).ifPresent(fault -> {
            throw new Crossed(fault);
        });
        return of(edges);
    }

    /** A polygon that meets itself. */
    static final class Crossed extends IllegalArgumentException {
        private static final long serialVersionUID = 1;

        @SuppressWarnings("serial") // never sent anywhere
        private final transient Simple.Crossing crossing;

        Crossed(Simple.Crossing crossing) {
            super(crossing.inMetres());
            this.crossing = crossing;
        }

        Simple.Crossing crossing() {
            return crossing;
        }
    }

    private static void positive(String what, double value) {
        if (!(value > 0) || Double.isInfinite(value)) {
            throw new IllegalArgumentException(
                    "the " + what + " is " + value + " m; it must be a finite number above 0, in metres");
        }
    }

    private static void finite(String what, double value) {
        if (!Double.isFinite(value)) {
            throw new IllegalArgumentException("the " + what + " is " + value + " rad; it must be a finite number");
        }
    }

    private static void radii(double inner, double outer) {
        positive("inner radius", inner);
        if (!(outer > inner) || Double.isInfinite(outer)) {
            throw new IllegalArgumentException(
                    "the outer radius is " + outer + " m; it must exceed the inner one, " + inner + " m");
        }
    }

    Edges edges() {
        return edges;
    }

    Cores cores() {
        Cores found = cores;
        if (found == null) {
            found = Cores.of(this);
            cores = found;
        }
        return found;
    }

    /**
     * The outline grown about the origin of its frame, as by warmth: expansion coefficient times rise in temperature.
     * @param strain above -1; 0 leaves it as it is
     */
    public Outline grown(double strain) {
        if (!(strain > -1) || Double.isInfinite(strain)) {
            throw new IllegalArgumentException(
                    "an outline grows by a share of " + strain + "; it must be a finite number above -1, as 0.002");
        }
        return strain == 0 ? this : new Outline(edges.moved(1 + strain, 0, 0, 0));
    }

    /** The outline turned [rad] about the origin of its frame, then shifted [m]. */
    public Outline placed(double angle, double dx, double dy) {
        finite("turn of an outline", angle);
        Point by = new Point(dx, dy);
        return new Outline(edges.moved(1, angle, by.x(), by.y()));
    }

    /** The outline seen from behind: left and right change places. */
    public Outline mirrored() {
        return new Outline(edges.mirrored());
    }

    /** Highest corner or point of an arc in a direction from +y towards +x, from the origin of the frame along that direction [m]. */
    public double reach(double direction) {
        finite("direction in which an outline reaches", direction);
        double most = Double.NEGATIVE_INFINITY;
        for (List<Point> loop : drawn(CURVE_TOLERANCE)) {
            for (Point p : loop) {
                most = Math.max(most, p.x() * Math.sin(direction) + p.y() * Math.cos(direction));
            }
        }
        return most;
    }

    /** Distance from the origin of the frame to the farthest corner or point of an arc [m]. */
    public double farthest() {
        return drawn(CURVE_TOLERANCE).stream()
                .flatMap(List::stream)
                .mapToDouble(p -> Math.hypot(p.x(), p.y()))
                .max()
                .orElse(0);
    }

    /**
     * What stands around a hollow of this outline: a box so much larger, with the hollow as a hole; what was a hole stands in the hollow.
     * @param wall thickness of the box beyond the hollow [m], &gt; 0
     */
    public Outline around(double wall) {
        positive("thickness of what stands around", wall);
        double left = -reach(-Math.PI / 2) - wall;
        double right = reach(Math.PI / 2) + wall;
        double low = -reach(Math.PI) - wall;
        double high = reach(0) + wall;
        Outline box = polygon(
                List.of(new Point(left, low), new Point(right, low), new Point(right, high), new Point(left, high)));
        return new Outline(Edges.together(List.of(box.edges, edges.reversed())));
    }

    /** Only its outermost loop: holes filled. */
    public Outline filled() {
        return new Outline(edges.outermost());
    }

    /** How many edges it has; every gap takes so much longer. */
    public int edgeCount() {
        return edges.count;
    }

    /** Area enclosed [m2]. */
    public double area() {
        return 0.5 * edges.twiceArea();
    }

    /** How deep a point lies inside, as its distance to the nearest edge [m]; negative outside. */
    public double depthOf(Point point) {
        return new PointDepth(this).at(point.x(), point.y());
    }

    /** Corners and points of arcs, so dense that no chord stands off its arc by more than a tolerance [m]; loop after loop, for drawings. */
    public List<List<Point>> drawn(double tolerance) {
        positive("tolerance of a drawing", tolerance);
        List<List<Point>> loops = new ArrayList<>();
        boolean[] done = new boolean[edges.count];
        double[] at = new double[2];
        for (int first = 0; first < edges.count; first++) {
            if (!done[first]) {
                List<Point> loop = new ArrayList<>();
                int edge = first;
                do {
                    done[edge] = true;
                    int pieces = pieces(edge, tolerance);
                    for (int k = 0; k < pieces; k++) {
                        edges.along(edge, (double) k / pieces, at);
                        loop.add(new Point(at[0], at[1]));
                    }
                    edge = edges.next[edge];
                } while (edge != first);
                loops.add(List.copyOf(loop));
            }
        }
        return List.copyOf(loops);
    }

    private int pieces(int edge, double tolerance) {
        if (!edges.isArc(edge)) {
            return 1;
        }
        double radius = edges.row[edge * Edges.ROW + Edges.R];
        double angle = edges.length(edge) / radius;
        double most = tolerance >= radius ? angle : 2 * Math.acos(1 - tolerance / radius);
        return Math.max(1, (int) Math.ceil(angle / most));
    }

    /** As an SVG path in a length unit, y downwards as SVG counts it; arcs stay arcs. {@link OutlineText#svgPath} reads it back. */
    public String svgPath(double unit) {
        return SvgWriter.of(edges, unit);
    }
}
