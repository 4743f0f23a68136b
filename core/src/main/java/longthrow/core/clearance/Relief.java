package longthrow.core.clearance;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What has to come off the first body of a pair, and where, so that the other keeps a wanted gap through two turns: all points of the first body that the other
 * comes closer to than that. Worked out on a grid of points in the frame of the first body; between them its edge is placed by straight lines, so it is to be read
 * to about a tenth of the grid's pitch.
 *
 * <p>It says what geometry asks for; whether the part bears it is for its maker to say.
 * @param outlines what comes off, in the frame of the first body; several where it is cut at several places
 * @param depth    how deep the cut goes from the body's present edge, at its deepest [m]
 * @param deepest  where that is
 * @param wall     the least that stays between the floor of the cut and the other side of the body, straight on from the floor and square to it [m]; 0 where the cut
 *                 goes through
 * @param pitch    of the grid [m]
 */
public record Relief(List<List<Point>> outlines, double depth, Point deepest, double wall, double pitch) {
    /** Cells along the longer side of what is looked over. A judgement: some hundredths of a millimetre for a valve pocket. */
    private static final int CELLS = 160;
    /** Angles at which the other body is laid down; between neighbours it is bridged by half of what it moves. */
    private static final int ANGLES = 2880;
    /** The floor is looked over where the cut is deeper than this share of its depth: at its rim a wall is as thick as the body is there. */
    private static final double FLOOR = 0.25;

    public Relief {
        List<List<Point>> copies = new ArrayList<>();
        outlines.forEach(outline -> copies.add(List.copyOf(outline)));
        outlines = List.copyOf(copies);
    }

    /**
     * For a wanted gap.
     * @param wanted gap [m], 0 or more; the play of the pair comes on top
     * @return empty where the gap is kept all over
     */
    public static Optional<Relief> of(Pair pair, double wanted) {
        if (!(wanted >= 0) || Double.isInfinite(wanted)) {
            throw new IllegalArgumentException("a gap of " + wanted + " m is wanted; it must be 0 or more, in metres");
        }
        Optional<Closest> least = Sweep.least(pair);
        if (least.isEmpty() || least.get().gap() >= wanted) {
            return Optional.empty();
        }
        return new Field(pair, wanted + pair.play()).relief();
    }

    /** As an SVG path in a length unit, y downwards as SVG counts it, in the frame of the first body. */
    public String svgPath(double unit) {
        StringBuilder path = new StringBuilder();
        for (List<Point> outline : outlines) {
            Edges.Maker maker = new Edges.Maker();
            for (int i = 0; i < outline.size(); i++) {
                Point p = outline.get(i);
                Point q = outline.get((i + 1) % outline.size());
                maker.line(p.x(), p.y(), q.x(), q.y());
            }
            maker.close();
            path.append(path.length() == 0 ? "" : " ").append(SvgWriter.of(maker.made(), unit));
        }
        return path.toString();
    }

    /** How near the other body comes to points of the first body's frame. */
    private static final class Field {
        private final Pair pair;
        private final double reach;
        private final double[] cosine;
        private final double[] sine;
        private final double[] tx;
        private final double[] ty;
        private int angles;
        private final List<PointDepth> own = new ArrayList<>();
        private final List<PointDepth> others = new ArrayList<>();
        private double x0 = Double.POSITIVE_INFINITY;
        private double y0 = Double.POSITIVE_INFINITY;
        private double x1 = Double.NEGATIVE_INFINITY;
        private double y1 = Double.NEGATIVE_INFINITY;

        Field(Pair pair, double reach) {
            this.pair = pair;
            this.reach = reach;
            pair.one().outlines().forEach(o -> own.add(new PointDepth(o)));
            pair.other().outlines().forEach(o -> others.add(new PointDepth(o)));
            cosine = new double[ANGLES];
            sine = new double[ANGLES];
            tx = new double[ANGLES];
            ty = new double[ANGLES];
            Pose a = new Pose();
            Pose b = new Pose();
            for (int k = 0; k < ANGLES; k++) {
                double angle = 4 * Math.PI * k / ANGLES;
                // only where something is too near: the gap of the bodies at this angle says so
                if (Sweep.at(pair, angle).orElseThrow().gap() + pair.play() < reach) {
                    pair.one().motion().at(angle, a);
                    pair.other().motion().at(angle, b);
                    double dx = b.x - a.x;
                    double dy = b.y - a.y;
                    cosine[angles] = b.c * a.c + b.s * a.s;
                    sine[angles] = b.s * a.c - b.c * a.s;
                    tx[angles] = a.c * dx - a.s * dy;
                    ty[angles] = a.s * dx + a.c * dy;
                    angles++;
                }
            }
        }

        /** Above 0 where material has to come off: how far inside both the first body and what the other sweeps. */
        private double cut(double x, double y) {
            double within = inside(own, x, y);
            return within < -reach ? within : Math.min(within, swept(x, y));
        }

        private static double inside(List<PointDepth> bodies, double x, double y) {
            double most = Double.NEGATIVE_INFINITY;
            for (PointDepth body : bodies) {
                most = Math.max(most, body.at(x, y));
            }
            return most;
        }

        private double swept(double x, double y) {
            double most = Double.NEGATIVE_INFINITY;
            for (int k = 0; k < angles; k++) {
                double px = x - tx[k];
                double py = y - ty[k];
                most = Math.max(
                        most, inside(others, cosine[k] * px - sine[k] * py, sine[k] * px + cosine[k] * py) + reach);
            }
            return most;
        }

        Optional<Relief> relief() {
            look();
            if (!(x1 > x0)) {
                return Optional.empty();
            }
            double pitch = Math.max(x1 - x0, y1 - y0) / (CELLS - 8);
            int nx = (int) Math.ceil((x1 - x0) / pitch) + 8;
            int ny = (int) Math.ceil((y1 - y0) / pitch) + 8;
            double left = x0 - 3.5 * pitch;
            double low = y0 - 3.5 * pitch;
            double[][] cut = new double[nx][ny];
            double depth = 0;
            Point deepest = new Point(x0, y0);
            for (int i = 0; i < nx; i++) {
                for (int j = 0; j < ny; j++) {
                    double x = left + i * pitch;
                    double y = low + j * pitch;
                    cut[i][j] = cut(x, y);
                    double within = cut[i][j] > 0 ? inside(own, x, y) : 0;
                    if (within > depth) {
                        depth = within;
                        deepest = new Point(x, y);
                    }
                }
            }
            List<List<Point>> outlines = Levels.of(cut, left, low, pitch);
            if (outlines.isEmpty()) {
                return Optional.empty();
            }
            double wall = Double.POSITIVE_INFINITY;
            for (List<Point> outline : outlines) {
                for (Point p : outline) {
                    double within = inside(own, p.x(), p.y());
                    if (within > depth) {
                        depth = within;
                        deepest = p;
                    }
                }
            }
            for (List<Point> outline : outlines) {
                for (Point p : outline) {
                    if (inside(own, p.x(), p.y()) > FLOOR * depth) {
                        wall = Math.min(wall, behind(p, pitch));
                    }
                }
            }
            return Optional.of(new Relief(outlines, depth, deepest, Double.isInfinite(wall) ? 0 : wall, pitch));
        }

        /** Box around the edge of the first body where the other comes too near, and around how deep it gets. */
        private void look() {
            double[] at = new double[2];
            double most = Math.max(reach, 0);
            Optional<Closest> least = Sweep.least(pair);
            if (least.isPresent()) {
                most = Math.max(most, reach - least.get().gap() - pair.play());
            }
            for (Outline outline : pair.one().outlines()) {
                Edges edges = outline.edges();
                for (int e = 0; e < edges.count; e++) {
                    int parts = (int) Math.max(2, Math.ceil(edges.length(e) / Math.max(0.2e-3, reach / 8)));
                    for (int k = 0; k <= parts; k++) {
                        edges.along(e, (double) k / parts, at);
                        if (swept(at[0], at[1]) > 0) {
                            x0 = Math.min(x0, at[0] - most);
                            x1 = Math.max(x1, at[0] + most);
                            y0 = Math.min(y0, at[1] - most);
                            y1 = Math.max(y1, at[1] + most);
                        }
                    }
                }
            }
        }

        /** How much stays straight on from a point of the floor, away from what sweeps. */
        private double behind(Point p, double pitch) {
            double h = 0.5 * pitch;
            double gx = swept(p.x() + h, p.y()) - swept(p.x() - h, p.y());
            double gy = swept(p.x(), p.y() + h) - swept(p.x(), p.y() - h);
            double g = Math.hypot(gx, gy);
            if (g == 0) {
                return Double.POSITIVE_INFINITY;
            }
            double way = 0;
            double most = 4 * own.size() * pair.one().outlines().get(0).edges().nodeR[0];
            while (way < most) {
                double within = inside(own, p.x() - gx / g * way, p.y() - gy / g * way);
                if (within <= 1e-7) {
                    return way;
                }
                way += within;
            }
            return way;
        }
    }
}
