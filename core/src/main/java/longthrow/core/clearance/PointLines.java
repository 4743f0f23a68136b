package longthrow.core.clearance;

import java.util.ArrayList;
import java.util.List;

/** Reads points, one a line. */
final class PointLines {
    private final List<OutlineText.Fault> faults = new ArrayList<>();
    private final List<Point> points = new ArrayList<>();
    private final List<Integer> lines = new ArrayList<>();
    private final double unit;

    private PointLines(double unit) {
        this.unit = unit;
    }

    static OutlineText.Read read(String text, double unit) {
        PointLines lines = new PointLines(unit);
        String[] all = (text.startsWith("\uFEFF") ? text.substring(1) : text).split("\\R", -1);
        boolean first = true;
        for (int i = 0; i < all.length; i++) {
            String line = all[i].strip();
            if (line.isEmpty() || line.startsWith("#")) {
                continue;
            }
            lines.line(i + 1, all[i], first);
            first = false;
            if (lines.points.size() > OutlineText.MOST_POINTS) {
                return OutlineText.refused(
                        "line " + (i + 1),
                        "",
                        "is past the " + OutlineText.MOST_POINTS + " points an outline may have",
                        "leave out points that lie on a line with their neighbours");
            }
        }
        return lines.outline();
    }

    private void line(int number, String line, boolean mayBeHeading) {
        String[] cells = line.split("[,;\t]", -1);
        if (cells.length != 2) {
            faults.add(new OutlineText.Fault(
                    "line " + number,
                    shown(line),
                    "has " + cells.length + (cells.length == 1 ? " cell" : " cells") + " instead of x and y",
                    "write two numbers with decimal points and one comma, semicolon or tab between them"));
            return;
        }
        boolean words = cells[0].strip().matches("\\p{L}.*") && cells[1].strip().matches("\\p{L}.*");
        if (mayBeHeading && words && !cells[0].strip().matches("(?i)nan|inf.*")) {
            return;
        }
        double x = cell(number, 1, cells[0]);
        double y = cell(number, cells[0].length() + 2, cells[1]);
        if (Double.isFinite(x) && Double.isFinite(y)) {
            points.add(new Point(x, y));
            lines.add(number);
        }
    }

    private double cell(int line, int column, String cell) {
        String place = "line " + line + ", column " + column;
        double value;
        try {
            value = Double.parseDouble(cell.strip()) * unit;
        } catch (NumberFormatException notOne) {
            value = Double.NaN;
        }
        if (!(Math.abs(value) <= OutlineText.FARTHEST) || !cell.strip().matches("[-+0-9.eE]+")) {
            faults.add(new OutlineText.Fault(
                    place,
                    shown(cell.strip()),
                    Double.isFinite(value)
                            ? "is farther than " + OutlineText.FARTHEST + " m from the origin in the unit given"
                            : "is not a number",
                    Double.isFinite(value) ? "check the unit" : "write digits with a decimal point, as -12.5"));
            return Double.NaN;
        }
        return value;
    }

    private OutlineText.Read outline() {
        if (!faults.isEmpty()) {
            return new OutlineText.Refused(faults);
        }
        if (points.size() > 1 && points.get(0).equals(points.get(points.size() - 1))) {
            points.remove(points.size() - 1);
        }
        try {
            return new OutlineText.Taken(Outline.polygon(points));
        } catch (Outline.Crossed crossed) {
            return crossed(crossed.crossing());
        } catch (IllegalArgumentException refused) {
            return OutlineText.refused(
                    "the points", "", String.valueOf(refused.getMessage()), "give the corners in order, once around");
        }
    }

    /** Named by the points between which the two edges run, in the order of the text. */
    private OutlineText.Read crossed(Simple.Crossing crossing) {
        List<Integer> starts = new ArrayList<>(); // a point entered twice in a row starts no edge
        for (int i = 0; i < points.size(); i++) {
            if (!points.get(i).equals(points.get((i + 1) % points.size()))) {
                starts.add(i);
            }
        }
        int one = starts.get(crossing.one());
        int other = starts.get(crossing.other());
        return OutlineText.refused(
                "line " + lines.get(crossing.isSpike() ? other : one),
                "",
                crossing.isSpike()
                        ? "point " + (other + 1) + ": the outline " + crossing.inUnits(unit, 1)
                        : "points " + point(one) + " and " + point(other) + ": " + crossing.inUnits(unit, 1),
                crossing.isSpike()
                        ? "leave that point out"
                        : "look for points in the wrong order or entered twice: an outline may not meet itself");
    }

    private String point(int start) {
        return (start + 1) + " to " + ((start + 1) % points.size() + 1);
    }

    /** Shortened, with control characters made visible. */
    static String shown(String text) {
        String visible = text.replaceAll("\\p{Cntrl}", "\u00B7");
        return visible.length() > 40 ? visible.substring(0, 40) + "\u2026" : visible;
    }
}
