package longthrow.workshop.draw;

import java.awt.geom.Arc2D;
import java.awt.geom.FlatteningPathIterator;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.PathIterator;
import java.awt.geom.Point2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Scanner;
import org.w3c.dom.Element;

/**
 * What is wrong with where things stand in a card, found without eyes: words on words, words struck by lines that matter, leaders that touch
 * nothing, hatching in the air.
 */
final class Placement {
    /** A leader that ends this near to a line touches it [px]. */
    private static final double TOUCH = 3.5;

    /** Height of letters over their base, and below it, to their size. */
    private static final double OVER = 0.72;

    private static final double BELOW = 0.22;

    /** A filled outline or an open line of the drawing, in the order of drawing. */
    private record Shape(String kind, Path2D path, boolean filled, double stroke) {
        boolean contains(Point2D p) {
            return filled && path.contains(p);
        }

        double distance(Point2D p) {
            double least = Double.POSITIVE_INFINITY;
            for (Line2D piece : pieces()) {
                least = Math.min(least, piece.ptSegDist(p));
            }
            return least - stroke / 2;
        }

        List<Line2D> pieces() {
            List<Line2D> pieces = new ArrayList<>();
            double[] c = new double[6];
            double x = 0;
            double y = 0;
            double startX = 0;
            double startY = 0;
            for (PathIterator i = new FlatteningPathIterator(path.getPathIterator(null), 0.3); !i.isDone(); i.next()) {
                int kind = i.currentSegment(c);
                if (kind == PathIterator.SEG_MOVETO) {
                    startX = c[0];
                    startY = c[1];
                } else {
                    double toX = kind == PathIterator.SEG_CLOSE ? startX : c[0];
                    double toY = kind == PathIterator.SEG_CLOSE ? startY : c[1];
                    pieces.add(new Line2D.Double(x, y, toX, toY));
                    c[0] = toX;
                    c[1] = toY;
                }
                x = c[0];
                y = c[1];
            }
            return pieces;
        }
    }

    /** Where a leader ends, and what kind of thing it names. */
    private record Leader(String kind, Point2D end) {}

    /** One text and the box its letters fill. */
    private record Word(String text, Rectangle2D box) {}

    private final List<Shape> shapes = new ArrayList<>();
    private final List<Word> words = new ArrayList<>();
    private final List<Leader> leaders = new ArrayList<>();
    private final List<Line2D> leaderLines = new ArrayList<>();
    private final List<Line2D> hatches = new ArrayList<>();

    private Placement(Drawing drawing) {
        for (Element e : drawing.all("circle")) {
            Point2D centre = new Point2D.Double(Drawing.number(e, "cx"), Drawing.number(e, "cy"));
            if (e.getAttribute("r").equals("2.8")) {
                leaders.add(new Leader(e.getAttribute("class"), centre));
            }
        }
        for (Element e : drawing.all("path")) {
            double stroke = e.hasAttribute("stroke") ? Drawing.number(e, "stroke-width") : 0;
            boolean filled = e.hasAttribute("fill");
            Shape shape = new Shape(e.getAttribute("class"), path(e.getAttribute("d")), filled, stroke);
            if (shape.kind().equals("datum") && stroke == 1.2) {
                hatches.addAll(shape.pieces());
            } else if (isLeader(shape)) {
                leaderLines.addAll(shape.pieces());
            } else {
                shapes.add(shape);
            }
        }
        for (Element e : drawing.all("text")) {
            words.add(new Word(e.getTextContent(), Drawing.box(e, OVER, BELOW)));
        }
    }

    /** The thin line from a label to what it names. */
    private boolean isLeader(Shape shape) {
        List<Line2D> pieces = shape.pieces();
        return !shape.filled()
                && shape.stroke() == 1
                && pieces.size() == 1
                && leaders.stream().anyMatch(l -> l.end().equals(pieces.get(0).getP2()));
    }

    static List<String> faults(Drawing drawing) {
        Placement placement = new Placement(drawing);
        List<String> faults = new ArrayList<>();
        placement.wordsOnWords(faults);
        placement.struckWords(faults);
        placement.looseLeaders(faults);
        placement.hatchingInTheAir(faults);
        return faults;
    }

    private void wordsOnWords(List<String> faults) {
        for (int i = 0; i < words.size(); i++) {
            for (int j = i + 1; j < words.size(); j++) {
                if (words.get(i).box().intersects(words.get(j).box())) {
                    faults.add("words on words: " + words.get(i).text() + " | "
                            + words.get(j).text());
                }
            }
        }
    }

    /** Dimensions, datums and axes through letters; the outline of a body may pass behind, the rim keeps the letters clear of it. */
    private void struckWords(List<String> faults) {
        for (Word word : words) {
            Rectangle2D b = word.box();
            Rectangle2D core =
                    new Rectangle2D.Double(b.getX() + 2, b.getY() + 2, b.getWidth() * 0.92 - 4, b.getHeight() - 4);
            if (leaderLines.stream().anyMatch(core::intersectsLine)) {
                faults.add("struck by a leader: " + word.text());
            }
            for (Shape shape : shapes) {
                boolean matters = shape.kind().equals("lit")
                        || shape.kind().equals("datum")
                        || shape.kind().equals("quiet");
                if (matters && shape.pieces().stream().anyMatch(core::intersectsLine)) {
                    faults.add("struck by a " + shape.kind() + " line: " + word.text());
                    break;
                }
            }
        }
    }

    /** A leader from an instrument's name must touch an instrument or the thing read; others anything drawn. */
    private void looseLeaders(List<String> faults) {
        for (Leader leader : leaders) {
            boolean tool = leader.kind().equals("tool");
            boolean touches = shapes.stream()
                    .filter(s -> tool
                            ? s.kind().equals("tool") || s.kind().equals("lit")
                            : !s.kind().equals("ground"))
                    .anyMatch(s -> s.contains(leader.end()) || s.distance(leader.end()) < TOUCH);
            if (!touches) {
                faults.add("leader of a " + leader.kind() + " ends on nothing of its kind at "
                        + leader.end().getX() + ", " + leader.end().getY());
            }
        }
    }

    /** The end of each stroke must lie in a body or an instrument: in the last thing drawn there. */
    private void hatchingInTheAir(List<String> faults) {
        long loose = hatches.stream()
                .filter(h -> !solidAt(
                        new Point2D.Double(h.getX2() * 0.75 + h.getX1() * 0.25, h.getY2() * 0.75 + h.getY1() * 0.25)))
                .count();
        if (loose > 0) {
            faults.add("hatching in the air: " + loose + " of " + hatches.size() + " strokes, first at "
                    + hatches.get(0).getP1());
        }
    }

    private boolean solidAt(Point2D p) {
        boolean solid = false;
        for (Shape shape : shapes) {
            boolean body = shape.kind().equals("part") || shape.kind().equals("tool");
            if (shape.contains(p) && (body || shape.kind().equals("ground"))) {
                solid = body;
            }
        }
        return solid;
    }

    // ---- path data, as far as the drawings use it

    private static Path2D path(String data) {
        Path2D path = new Path2D.Double();
        try (Scanner in = new Scanner(data)) {
            in.useLocale(Locale.ROOT);
            char command = 'M';
            double x = 0;
            double y = 0;
            while (in.hasNext()) {
                if (!in.hasNextDouble()) {
                    command = in.next().charAt(0);
                }
                boolean relative = Character.isLowerCase(command);
                double ox = relative ? x : 0;
                double oy = relative ? y : 0;
                switch (Character.toUpperCase(command)) {
                    case 'M' -> {
                        x = ox + in.nextDouble();
                        y = oy + in.nextDouble();
                        path.moveTo(x, y);
                    }
                    case 'L' -> {
                        x = ox + in.nextDouble();
                        y = oy + in.nextDouble();
                        path.lineTo(x, y);
                    }
                    case 'H' -> {
                        x = ox + in.nextDouble();
                        path.lineTo(x, y);
                    }
                    case 'V' -> {
                        y = oy + in.nextDouble();
                        path.lineTo(x, y);
                    }
                    case 'Q' -> {
                        double cx = ox + in.nextDouble();
                        double cy = oy + in.nextDouble();
                        x = ox + in.nextDouble();
                        y = oy + in.nextDouble();
                        path.quadTo(cx, cy, x, y);
                    }
                    case 'C' -> {
                        double ax = ox + in.nextDouble();
                        double ay = oy + in.nextDouble();
                        double bx = ox + in.nextDouble();
                        double by = oy + in.nextDouble();
                        x = ox + in.nextDouble();
                        y = oy + in.nextDouble();
                        path.curveTo(ax, ay, bx, by, x, y);
                    }
                    case 'A' -> {
                        double rx = in.nextDouble();
                        double ry = in.nextDouble();
                        in.nextDouble();
                        boolean large = in.nextInt() == 1;
                        boolean sweep = in.nextInt() == 1;
                        double toX = ox + in.nextDouble();
                        double toY = oy + in.nextDouble();
                        arc(path, x, y, rx, ry, large, sweep, toX, toY);
                        x = toX;
                        y = toY;
                    }
                    case 'Z' -> {
                        path.closePath();
                        Point2D at = path.getCurrentPoint();
                        x = at == null ? x : at.getX();
                        y = at == null ? y : at.getY();
                    }
                    default -> throw new AssertionError("path command " + command + " in " + data);
                }
            }
        }
        return path;
    }

    /** SVG 1.1, appendix F.6.5, for arcs that are not turned. */
    private static void arc(
            Path2D path,
            double x1,
            double y1,
            double rx,
            double ry,
            boolean large,
            boolean sweep,
            double x2,
            double y2) {
        double dx = (x1 - x2) / 2 / rx;
        double dy = (y1 - y2) / 2 / ry;
        double half = Math.hypot(dx, dy);
        double grow = Math.max(1, half);
        double along =
                half == 0 ? 0 : Math.sqrt(Math.max(0, grow * grow - half * half)) / half * (large == sweep ? -1 : 1);
        double a = rx * grow;
        double b = ry * grow;
        double cx = (x1 + x2) / 2 + along * dy * rx;
        double cy = (y1 + y2) / 2 - along * dx * ry;
        double from = Math.toDegrees(Math.atan2((y1 - cy) / b, (x1 - cx) / a));
        double turn = Math.toDegrees(Math.atan2((y2 - cy) / b, (x2 - cx) / a)) - from;
        if (sweep && turn < 0) {
            turn += 360;
        } else if (!sweep && turn > 0) {
            turn -= 360;
        }
        path.append(new Arc2D.Double(cx - a, cy - b, 2 * a, 2 * b, -from, -turn, Arc2D.OPEN), true);
    }
}
