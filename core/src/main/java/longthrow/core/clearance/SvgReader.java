package longthrow.core.clearance;

import java.util.ArrayList;
import java.util.List;

/** Reads an SVG path into loops of edges, character by character; the first fault ends it, since what follows cannot be placed. */
final class SvgReader {
    private final String text;
    private final double unit;
    private final double tolerance;
    private final List<Edges> loops = new ArrayList<>();
    private int at;
    private int numberAt;
    private Edges.Maker maker = new Edges.Maker();
    private int edges;
    private int total;
    private double x;
    private double y;
    private double startX;
    private double startY;
    private boolean open;

    /** Ends the reading with what is wrong. */
    private static final class Faulty extends Exception {
        private static final long serialVersionUID = 1;
        private final String place;
        private final String found;
        private final String mend;

        Faulty(String place, String found, String why, String mend) {
            super(why, null, false, false);
            this.place = place;
            this.found = found;
            this.mend = mend;
        }

        OutlineText.Refused refused() {
            return OutlineText.refused(place, found, String.valueOf(getMessage()), mend);
        }
    }

    SvgReader(String text, double unit, double tolerance) {
        this.text = text;
        this.unit = unit;
        this.tolerance = tolerance;
    }

    OutlineText.Read read() {
        try {
            skip();
            if (at == text.length()) {
                throw fault("", "the path is empty", "start it with M and two numbers");
            }
            while (at < text.length()) {
                command();
                skip();
            }
            finish();
        } catch (Faulty faulty) {
            return faulty.refused();
        }
        return OutlineText.joined(loops, unit);
    }

    private Faulty fault(String found, String why, String mend) {
        return new Faulty("character " + (at + 1), PointLines.shown(found), why, mend);
    }

    private void command() throws Faulty {
        char letter = text.charAt(at);
        char kind = Character.toUpperCase(letter);
        boolean relative = letter != kind;
        if ("MLHVCQAZ".indexOf(kind) < 0) {
            throw fault(
                    String.valueOf(letter),
                    "is no command read here; allowed are M L H V C Q A Z and their small letters",
                    "write S and T curves out as C and Q");
        }
        if (!open && kind != 'M') {
            throw fault(String.valueOf(letter), "comes before any M", "start each loop with M and two numbers");
        }
        at++;
        if (kind == 'Z') {
            lineTo(startX, startY);
            end();
            return;
        }
        boolean first = true;
        do {
            one(kind == 'M' && !first ? 'L' : kind, relative);
            first = false;
        } while (isNumberNext());
    }

    private void one(char kind, boolean relative) throws Faulty {
        double fromX = relative ? x : 0;
        double fromY = relative ? y : 0;
        switch (kind) {
            case 'M' -> {
                double toX = fromX + across();
                double toY = fromY + down();
                finish();
                x = toX;
                y = toY;
                startX = x;
                startY = y;
                open = true;
            }
            case 'L' -> {
                double toX = fromX + across();
                lineTo(toX, fromY + down());
            }
            case 'H' -> lineTo(fromX + across(), y);
            case 'V' -> lineTo(x, fromY + down());
            case 'Q' -> {
                double[] p = points(2, fromX, fromY);
                curve(x, y, p[0], p[1], p[2], p[3]);
            }
            case 'C' -> {
                double[] p = points(3, fromX, fromY);
                curve(x, y, p[0], p[1], p[2], p[3], p[4], p[5]);
            }
            default -> arc(fromX, fromY);
        }
    }

    private double[] points(int count, double fromX, double fromY) throws Faulty {
        double[] p = new double[2 * count];
        for (int k = 0; k < count; k++) {
            p[2 * k] = fromX + across();
            p[2 * k + 1] = fromY + down();
        }
        return p;
    }

    private double across() throws Faulty {
        return length(number());
    }

    private double down() throws Faulty {
        return -length(number());
    }

    private double length(double number) throws Faulty {
        double metres = number * unit;
        if (!(Math.abs(metres) <= OutlineText.FARTHEST)) {
            at = numberAt;
            throw fault(
                    String.valueOf(number),
                    "is farther than " + OutlineText.FARTHEST + " m in the unit given",
                    "check the unit");
        }
        return metres;
    }

    private void count(int more) throws Faulty {
        edges += more;
        total += more;
        if (total > OutlineText.MOST_POINTS) {
            throw fault(
                    "",
                    "the path needs more than " + OutlineText.MOST_POINTS + " edges",
                    "draw it more simply, or check the unit");
        }
    }

    private void lineTo(double toX, double toY) throws Faulty {
        if (Math.hypot(toX - x, toY - y) >= Edges.SAME) {
            count(1);
            maker.line(x, y, toX, toY);
            x = toX;
            y = toY;
        }
    }

    /** Bezier curve of degree two or three, in so many straight edges that the bend between two ends stays below the tolerance. */
    private void curve(double... p) throws Faulty {
        int degree = p.length / 2 - 1;
        double bend = 0;
        for (int k = 0; k + 2 <= degree; k++) {
            bend = Math.max(
                    bend,
                    Math.hypot(
                            p[2 * k] - 2 * p[2 * k + 2] + p[2 * k + 4],
                            p[2 * k + 1] - 2 * p[2 * k + 3] + p[2 * k + 5]));
        }
        int pieces = pieces(degree * (degree - 1) * bend);
        for (int i = 1; i <= pieces; i++) {
            double t = (double) i / pieces;
            double[] q = p.clone();
            for (int level = degree; level > 0; level--) {
                for (int k = 0; k < 2 * level; k++) {
                    q[k] += t * (q[k + 2] - q[k]);
                }
            }
            lineTo(i == pieces ? p[2 * degree] : q[0], i == pieces ? p[2 * degree + 1] : q[1]);
        }
    }

    /** A chord over a stretch h of the parameter stands off by bend h2 / 8 at most. */
    private int pieces(double bend) {
        return (int) Math.min(OutlineText.MOST_POINTS + 1.0, Math.max(1, Math.ceil(Math.sqrt(bend / (8 * tolerance)))));
    }

    /** Elliptical arc from its ends to its centre: SVG 2, appendix B.2.4; radii too small for the ends are enlarged as B.2.5 says. */
    private void arc(double fromX, double fromY) throws Faulty {
        double rx = Math.abs(length(number()));
        double ry = Math.abs(length(number()));
        double tilt = -Math.toRadians(number());
        boolean large = flag();
        boolean left = !flag();
        double toX = fromX + across();
        double toY = fromY + down();
        if (rx == 0 || ry == 0 || Math.hypot(toX - x, toY - y) < Edges.SAME) {
            lineTo(toX, toY);
            return;
        }
        double ct = Math.cos(tilt);
        double st = Math.sin(tilt);
        double hx = (x - toX) / 2;
        double hy = (y - toY) / 2;
        double px = ct * hx + st * hy;
        double py = -st * hx + ct * hy;
        double lambda = px * px / (rx * rx) + py * py / (ry * ry);
        if (lambda > 1) {
            rx *= Math.sqrt(lambda);
            ry *= Math.sqrt(lambda);
            lambda = 1;
        }
        double root = Math.sqrt(Math.max(0, 1 / lambda - 1)) * (large == left ? -1 : 1);
        double cxTilted = root * rx * py / ry;
        double cyTilted = -root * ry * px / rx;
        double cx = ct * cxTilted - st * cyTilted + (x + toX) / 2;
        double cy = st * cxTilted + ct * cyTilted + (y + toY) / 2;
        double from = Math.atan2((py - cyTilted) / ry, (px - cxTilted) / rx);
        double sweep = Math.atan2((-py - cyTilted) / ry, (-px - cxTilted) / rx) - from;
        if (left && sweep <= 0) {
            sweep += 2 * Math.PI;
        } else if (!left && sweep >= 0) {
            sweep -= 2 * Math.PI;
        }
        if (Math.abs(rx - ry) <= 1e-9 * rx) {
            count(4);
            maker.arc(cx, cy, rx, from + tilt, sweep);
            x = toX;
            y = toY;
            return;
        }
        int pieces = pieces(Math.max(rx, ry) * sweep * sweep);
        for (int i = 1; i <= pieces; i++) {
            double a = from + sweep * i / pieces;
            double ex = rx * Math.cos(a);
            double ey = ry * Math.sin(a);
            lineTo(i == pieces ? toX : cx + ct * ex - st * ey, i == pieces ? toY : cy + st * ex + ct * ey);
        }
    }

    private boolean flag() throws Faulty {
        separator();
        char c = at < text.length() ? text.charAt(at) : ' ';
        if (c != '0' && c != '1') {
            throw fault(String.valueOf(c), "is no flag of an arc", "write 0 or 1");
        }
        at++;
        return c == '1';
    }

    private boolean isNumberNext() {
        int keep = at;
        separator();
        boolean is = at < text.length() && "+-.0123456789".indexOf(text.charAt(at)) >= 0;
        if (!is) {
            at = keep;
        }
        return is;
    }

    private double number() throws Faulty {
        separator();
        numberAt = at;
        int start = at;
        if (at < text.length() && "+-".indexOf(text.charAt(at)) >= 0) {
            at++;
        }
        digits();
        if (at < text.length() && text.charAt(at) == '.') {
            at++;
            digits();
        }
        if (at > start && at < text.length() && "eE".indexOf(text.charAt(at)) >= 0) {
            at++;
            if (at < text.length() && "+-".indexOf(text.charAt(at)) >= 0) {
                at++;
            }
            digits();
        }
        String written = text.substring(start, at);
        try {
            return Double.parseDouble(written);
        } catch (NumberFormatException notOne) {
            at = start;
            throw fault(
                    start < text.length() ? text.substring(start, Math.min(text.length(), start + 12)) : "",
                    start < text.length() ? "is not a number" : "the path ends where a number is due",
                    "give each command all its numbers, with decimal points");
        }
    }

    private void digits() {
        while (at < text.length() && text.charAt(at) >= '0' && text.charAt(at) <= '9') {
            at++;
        }
    }

    private void skip() {
        while (at < text.length() && Character.isWhitespace(text.charAt(at))) {
            at++;
        }
    }

    private void separator() {
        skip();
        if (at < text.length() && text.charAt(at) == ',') {
            at++;
            skip();
        }
    }

    /** Before a new loop or at the end: the one before must be closed. */
    private void finish() throws Faulty {
        if (edges > 0) {
            if (Math.hypot(x - startX, y - startY) > Edges.SAME) {
                throw fault("", "a loop ends away from where it started", "close it with Z");
            }
            end();
        }
    }

    private void end() throws Faulty {
        if (edges < 2) {
            throw fault("", "a loop of " + edges + " edges encloses nothing", "give it at least 3 corners");
        }
        maker.close();
        Edges loop = maker.made();
        if (Math.abs(loop.twiceArea()) < Edges.SAME) {
            throw fault("", "a loop encloses nothing", "give it corners that are not all on one line");
        }
        loops.add(loop);
        maker = new Edges.Maker();
        edges = 0;
        x = startX;
        y = startY;
    }
}
