package longthrow.core.clear;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import longthrow.core.build.Build;
import longthrow.core.clearance.Body;
import longthrow.core.clearance.Pair;
import longthrow.core.life.Asked;
import longthrow.core.life.Known;
import longthrow.core.measure.Appraisal;
import longthrow.core.measurement.NotConvergedException;
import longthrow.core.term.OutlinedPart;

/**
 * A pair as {@link Clear} sees it, cold and at the best estimates, for a picture: where a shape is not measured, larger than it can be.
 * @param key   of the pair
 * @param one   part
 * @param other what it passes
 */
public record Drawn(String key, Body one, Body other) {
    /** The pairs of an engine for which all is known that they are drawn from, and that move past each other in one plane. */
    public static List<Drawn> of(Build build) {
        Known known;
        try {
            known = new Known(Appraisal.sound(build));
        } catch (NotConvergedException nothingNear) {
            return List.of();
        }
        List<Drawn> all = new ArrayList<>();
        for (Plan plan : Pairs.of(known)) {
            if (plan instanceof Plan.Outlines outlines) {
                draw(outlines, new Asked(known), all);
            }
        }
        return List.copyOf(all);
    }

    /** Name of a body that is drawn as its part was traced. */
    public static String traced(OutlinedPart part) {
        return part.label() + ", traced";
    }

    private static void draw(Plan.Outlines plan, Asked of, List<Drawn> into) {
        Function<Sizes, Pair> drawing = plan.drawing().of(of, false);
        if (!of.isWhole()) {
            return;
        }
        try {
            Pair pair = drawing.apply(new Sourced(of.figures(), drawing).best());
            into.add(new Drawn(plan.head().key(), pair.one(), pair.other()));
        } catch (IllegalArgumentException doNotGoTogether) {
            // said with the pair
        }
    }
}
