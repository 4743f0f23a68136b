package longthrow.core.clear;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import longthrow.core.build.TracedOutline;
import longthrow.core.clearance.Outline;
import longthrow.core.clearance.OutlineText;
import longthrow.core.clearance.Point;
import longthrow.core.quantity.Quantity;
import org.jspecify.annotations.Nullable;

/**
 * What a traced outline encloses, in the frame of its part: the datum at (0, 0), y upwards, x towards the anti-thrust side with the crankshaft turning clockwise.
 * Nothing is thrown for what stands in the text: every fault is named with its place.
 */
public final class Tracing {
    /** So many edges an outline may have: each makes every gap take longer, and by hand nobody traces more. A judgement. */
    public static final int MOST_EDGES = 1000;

    /** No part of these engines reaches farther from its datum [m]: the largest that any reading of a case allows, and a little more. */
    public static final double FARTHEST = 0.26;

    /** None is smaller across [m]; what is has the wrong unit. A judgement. */
    public static final double LEAST_ACROSS = 3e-3;

    /** Edges that stand for a curve of a path lie off it by no more than this [m]: half of what is promised of a gap. */
    private static final double CURVES = 5e-6;

    private Tracing() {}

    /** The outline: for a case the hollow inside. Holes of any other are filled, since what is inside does not touch. */
    public static OutlineText.Read read(TracedOutline traced) {
        double unit = traced.unit().si();
        OutlineText.Read read = traced.form() == TracedOutline.Form.POINTS
                ? OutlineText.csv(traced.text(), unit)
                : OutlineText.svgPath(traced.text(), unit, CURVES);
        if (!(read instanceof OutlineText.Taken taken)) {
            return read;
        }
        Outline outline = placed(taken.outline(), traced);
        return fault(outline, traced)
                .<OutlineText.Read>map(fault -> new OutlineText.Refused(List.of(fault)))
                .orElseGet(() -> new OutlineText.Taken(outline));
    }

    private static Outline placed(Outline drawn, TracedOutline traced) {
        double up = traced.form() == TracedOutline.Form.POINTS ? 1 : -1; // SVG counts downwards
        Outline outline = drawn.placed(0, -metres(traced.datumX()), -up * metres(traced.datumY()));
        Outline seen = traced.mirrored() ? outline.mirrored() : outline;
        return traced.part().isHollow() ? seen : seen.filled();
    }

    private static double metres(@Nullable Quantity length) {
        return length == null ? 0 : length.si();
    }

    private static Optional<OutlineText.Fault> fault(Outline outline, TracedOutline traced) {
        if (outline.edgeCount() > MOST_EDGES) {
            return fault(
                    "has " + outline.edgeCount() + " edges; allowed are " + MOST_EDGES,
                    "leave out points that lie on a line with their neighbours, or draw it more simply");
        }
        double farthest = outline.farthest();
        if (farthest > FARTHEST) {
            return fault(
                    String.format(
                            Locale.ROOT,
                            "reaches %s mm from %s; no part of such an engine reaches farther than %.0f mm",
                            Math.round(1e3 * farthest),
                            traced.part().datum(),
                            1e3 * FARTHEST),
                    "check the unit, which for a picture is the length of one of its pixels, and where the datum stands"
                            + " in the drawing");
        }
        double across = Math.max(
                outline.reach(0) + outline.reach(Math.PI), outline.reach(Math.PI / 2) + outline.reach(-Math.PI / 2));
        if (across < LEAST_ACROSS) {
            return fault(
                    String.format(
                            Locale.ROOT,
                            "is %.3g mm across; no such part is smaller than %.0f mm",
                            1e3 * across,
                            1e3 * LEAST_ACROSS),
                    "check the unit");
        }
        if (traced.part().embracesDatum() && !(outline.filled().depthOf(new Point(0, 0)) > 0)) {
            return fault(
                    "does not go around " + traced.part().datum() + ", where (0, 0) has to be",
                    "say where in the drawing that stands (datum_x, datum_y), or draw it from there");
        }
        return Optional.empty();
    }

    private static Optional<OutlineText.Fault> fault(String why, String mend) {
        return Optional.of(new OutlineText.Fault("the outline", "", why, mend));
    }
}
