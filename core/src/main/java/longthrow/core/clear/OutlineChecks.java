package longthrow.core.clear;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import longthrow.core.answer.Finding;
import longthrow.core.build.TracedOutline;
import longthrow.core.clearance.Outline;
import longthrow.core.clearance.Point;
import longthrow.core.life.Known;
import longthrow.core.measurement.Measured;
import longthrow.core.term.Term;

/** Outlines held against the readings of the same part: where both are there the outline counts, and where they disagree it is said. */
final class OutlineChecks {
    /** Chords of an outline that is looked through stand off by no more than this [m]. */
    private static final double CHORDS = 1e-6;

    private OutlineChecks() {}

    /** Something of an outline that is read as well. */
    private record Same(String what, double traced, Term term) {}

    static List<Finding> findings(Known known) {
        List<Finding> all = new ArrayList<>();
        List<TracedOutline> outlines = known.build().outlines();
        for (int k = 0; k < outlines.size(); k++) {
            TracedOutline traced = outlines.get(k);
            String place = TracedOutline.place(k + 1);
            for (Same same : sames(traced, Outlined.outline(traced))) {
                known.figure(same.term())
                        .flatMap(read -> finding(traced, place, same, read))
                        .ifPresent(all::add);
            }
        }
        return all;
    }

    private static List<Same> sames(TracedOutline traced, Outline outline) {
        double below = outline.reach(Math.PI);
        return switch (traced.part()) {
            case COUNTERWEIGHT ->
                List.of(new Same("its outermost point", outline.farthest(), Term.COUNTERWEIGHT_RADIUS));
            case ROD -> List.of(new Same("down to its lowest point", below, Term.BOLT_DOWN));
            case DIPPER -> List.of(new Same("its tip", below, Term.DIPPER_REACH));
            case PISTON_SKIRT -> List.of(new Same("its lowest edge", below, Term.SKIRT_BELOW_PIN));
            case PIN_BOSS -> List.of(new Same("its lowest point", below, Term.BOSS_BELOW_PIN));
            case CASE ->
                List.of(
                        new Same("the wall straight below", wall(outline, Math.PI), Term.CASE_BELOW),
                        new Same("the wall on the thrust side", wall(outline, -Math.PI / 2), Term.CASE_THRUST),
                        new Same("the wall on the anti-thrust side", wall(outline, Math.PI / 2), Term.CASE_ANTITHRUST));
            case INTAKE_LOBE, EXHAUST_LOBE ->
                List.of(new Same(
                        "twice its least distance from the axis",
                        2 * outline.depthOf(new Point(0, 0)),
                        Term.CAM_BASE_CIRCLE));
            case RELEASE -> List.of(new Same("its outermost point", outline.farthest(), Term.RELEASE_REACH));
        };
    }

    /** From the datum straight on in a direction from +y towards +x to where the hollow ends [m]. */
    private static double wall(Outline outline, double direction) {
        Outline upright = outline.placed(-direction, 0, 0);
        double nearest = Double.POSITIVE_INFINITY;
        for (List<Point> loop : upright.drawn(CHORDS)) {
            for (int i = 0; i < loop.size(); i++) {
                Point a = loop.get(i);
                Point b = loop.get((i + 1) % loop.size());
                if (a.x() > 0 != b.x() > 0) {
                    double y = a.y() + (b.y() - a.y()) * a.x() / (a.x() - b.x());
                    nearest = y > 0 ? Math.min(nearest, y) : nearest;
                }
            }
        }
        return nearest;
    }

    private static Optional<Finding> finding(TracedOutline traced, String place, Same same, Measured read) {
        // the bolts may end higher than cap and big end, so only a rod that is traced too short disagrees
        double off = same.traced() - read.value();
        boolean isMore = same.term() == Term.BOLT_DOWN;
        double doubt = (same.term() == Term.CAM_BASE_CIRCLE ? 2 : 1) * traced.expandedDoubt();
        double both = Math.hypot(doubt, read.expanded());
        if (!Double.isFinite(off) || (isMore ? -off : Math.abs(off)) <= both) {
            return Optional.empty();
        }
        return Optional.of(
                new Finding(
                        Finding.Kind.WARNING,
                        place,
                        String.format(
                                Locale.ROOT,
                                "the outline of the %s and its reading disagree: %s is %.2f mm as traced, %s (%s) is read as %.2f mm;"
                                        + " both together may be off by %.2f mm. The outline counts",
                                traced.part().label(),
                                same.what(),
                                1e3 * same.traced(),
                                same.term().label(),
                                same.term().path(),
                                1e3 * read.value(),
                                1e3 * both),
                        "measure it again; check the unit of the outline and where its datum stands, and which part was traced"));
    }
}
