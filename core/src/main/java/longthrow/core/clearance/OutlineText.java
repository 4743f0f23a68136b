package longthrow.core.clearance;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Outlines from text: a list of points as CSV, or an SVG path. The unit is the caller's to give; it is never guessed. Nothing is thrown for what stands in the
 * text: every fault is named with its place.
 */
public final class OutlineText {
    /** As many points an outline may have; far more than are drawn by hand. A judgement. */
    public static final int MOST_POINTS = 10_000;

    /** Largest coordinate either way [m]; the engines are of hand size, so what is larger has the wrong unit. A judgement. */
    public static final double FARTHEST = 10;

    private OutlineText() {}

    /** What became of a text. */
    public sealed interface Read {}

    /**
     * An outline.
     * @param outline as read
     */
    public record Taken(Outline outline) implements Read {}

    /**
     * None.
     * @param faults every one that was found, in the order of the text; never empty
     */
    public record Refused(List<Fault> faults) implements Read {
        public Refused {
            faults = List.copyOf(faults);
        }
    }

    /**
     * What is wrong with a text.
     * @param place where: line and column, or character, from 1
     * @param found what stands there
     * @param why   what is wrong with it and what is allowed
     * @param mend  what to do
     */
    public record Fault(String place, String found, String why, String mend) {
        /** All of it in one line. */
        public String message() {
            return place + ": " + (found.isEmpty() ? "" : "'" + found + "' ") + why + "; " + mend;
        }
    }

    /**
     * Points, one a line: x and y, between them a comma, a semicolon or a tab; decimal point. Lines that are empty or start with # are passed over, and so is one
     * heading of two words in the first line. y counts upwards, towards the head. A last point equal to the first closes the outline and is left out.
     * @param unit length of one unit of the text [m]
     */
    public static Read csv(String text, double unit) {
        requireUnit(unit);
        return PointLines.read(text, unit);
    }

    /**
     * An SVG path: M L H V C Q A Z and their small letters (SVG 2, W3C, chapter 9). y counts downwards there, so the picture as seen is the shape with the
     * head up. Circular arcs stay exact; other curves become straight edges that stand off by {@link Outline#CURVE_TOLERANCE} at most. Several loops are one
     * outline and its holes. Every loop ends with Z or where it started.
     * @param unit length of one unit of the path [m]
     */
    public static Read svgPath(String path, double unit) {
        return svgPath(path, unit, Outline.CURVE_TOLERANCE);
    }

    /**
     * The same with coarser curves, for what is not drawn that exactly: each edge makes every gap take longer.
     * @param tolerance by which the straight edges of a curve may stand off it [m], &gt; 0
     */
    public static Read svgPath(String path, double unit, double tolerance) {
        requireUnit(unit);
        if (!(tolerance > 0)) {
            throw new IllegalArgumentException(
                    "curves may stand off by " + tolerance + " m; give more than 0, in metres");
        }
        return new SvgReader(path, unit, tolerance).read();
    }

    private static void requireUnit(double unit) {
        if (!(unit > 0) || Double.isInfinite(unit)) {
            throw new IllegalArgumentException(
                    "the unit of a text is " + unit + " m; give its length in metres, 0.001 for millimetres");
        }
    }

    /**
     * Puts loops together: the largest is the outline, all others must be holes in it.
     * @param unit length of one unit of the text they were read from, whose y counts downwards [m]
     */
    static Read joined(List<Edges> loops, double unit) {
        List<Edges> parts = new ArrayList<>(loops);
        parts.sort((a, b) -> Double.compare(Math.abs(b.twiceArea()), Math.abs(a.twiceArea())));
        for (int i = 0; i < parts.size(); i++) {
            Edges loop = parts.get(i);
            Optional<Simple.Crossing> crossing = Simple.crossing(loop);
            if (crossing.isPresent()) {
                return refused("outline", "", crossing.get().inUnits(unit, -1), "draw it so that it goes round once");
            }
            if (loop.twiceArea() > 0 != (i == 0)) {
                parts.set(i, loop.reversed());
            }
        }
        Edges all = Edges.together(parts);
        Optional<Simple.Crossing> crossing = Simple.crossing(all);
        if (crossing.isPresent()) {
            return refused("outline", "", crossing.get().inUnits(unit, -1), "keep its loops apart");
        }
        for (int i = 1; i < parts.size(); i++) {
            Point on = new Point(parts.get(i).row[Edges.X0], parts.get(i).row[Edges.Y0]);
            for (int j = 0; j < i; j++) {
                if (Outline.of(parts.get(j)).depthOf(on) > 0 != (j == 0)) {
                    return refused(
                            "outline",
                            "",
                            "has a loop that is no hole in the largest one",
                            "give each piece an outline of its own, and holes only one deep");
                }
            }
        }
        return new Taken(Outline.of(all));
    }

    static Refused refused(String place, String found, String why, String mend) {
        return new Refused(List.of(new Fault(place, found, why, mend)));
    }
}
