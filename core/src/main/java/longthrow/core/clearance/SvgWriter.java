package longthrow.core.clearance;

import java.util.Locale;

/** An outline as an SVG path; y counts downwards there, so what turns to the left here turns the other way there. */
final class SvgWriter {
    /** Digits go down to this [m]. */
    private static final double FINEST = 1e-10;

    private SvgWriter() {}

    static String of(Edges edges, double unit) {
        if (!(unit > 0) || Double.isInfinite(unit)) {
            throw new IllegalArgumentException(
                    "the unit of a path is " + unit + " m; give its length in metres, 0.001 for millimetres");
        }
        int digits = (int) Math.max(0, Math.min(15, Math.ceil(Math.log10(unit / FINEST) - 1e-9)));
        StringBuilder path = new StringBuilder();
        boolean[] done = new boolean[edges.count];
        for (int first = 0; first < edges.count; first++) {
            if (!done[first]) {
                int at = first * Edges.ROW;
                path.append(path.length() == 0 ? "M" : " M")
                        .append(pair(edges.row[at + Edges.X0], edges.row[at + Edges.Y0], unit, digits));
                int edge = first;
                do {
                    done[edge] = true;
                    at = edge * Edges.ROW;
                    String end = pair(edges.row[at + Edges.X1], edges.row[at + Edges.Y1], unit, digits);
                    if (edges.isArc(edge)) {
                        String radius = number(edges.row[at + Edges.R] / unit, digits);
                        String sweep = edges.row[at + Edges.TURN] > 0 ? "0" : "1";
                        path.append(" A")
                                .append(radius)
                                .append(' ')
                                .append(radius)
                                .append(" 0 0 ")
                                .append(sweep)
                                .append(' ')
                                .append(end);
                    } else {
                        path.append(" L").append(end);
                    }
                    edge = edges.next[edge];
                } while (edge != first);
                path.append(" Z");
            }
        }
        return path.toString();
    }

    static String pair(double x, double y, double unit, int digits) {
        return number(x / unit, digits) + " " + number(-y / unit, digits);
    }

    private static String number(double value, int digits) {
        String written = String.format(Locale.ROOT, "%." + digits + "f", value);
        return written.matches("-0\\.?0*") ? written.substring(1) : written;
    }
}
