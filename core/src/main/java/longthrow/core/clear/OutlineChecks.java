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
import longthrow.core.term.OutlinedPart;
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
            upsideDown(traced, place).ifPresent(all::add);
            for (Same same : sames(traced, Outlined.outline(traced))) {
                known.figure(same.term())
                        .flatMap(read -> finding(known, traced, place, same, read))
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

    /** Whether the middle of a counterweight, with its doubt, lies on the crankpin's side. */
    static boolean isUpsideDown(TracedOutline traced) {
        return traced.part() == OutlinedPart.COUNTERWEIGHT && centre(Outlined.outline(traced)) > traced.expandedDoubt();
    }

    /** A counterweight that weighs on the crankpin's side would balance nothing: it opens every gap under the piston that is there. */
    private static Optional<Finding> upsideDown(TracedOutline traced, String place) {
        if (!isUpsideDown(traced)) {
            return Optional.empty();
        }
        return Optional.of(new Finding(
                Finding.Kind.SUSPECT,
                place,
                "the outline of the counterweight has its middle on the crankpin's side of the crankshaft: it seems to stand upside"
                        + " down, and no gap is told from it",
                "turn it: +y points from the crankshaft's axis to the crankpin, and the weight hangs below"));
    }

    /** Height of the middle of an outline over its datum [m]. */
    private static double centre(Outline outline) {
        double twice = 0;
        double moment = 0;
        for (List<Point> loop : outline.drawn(CHORDS)) {
            for (int i = 0; i < loop.size(); i++) {
                Point a = loop.get(i);
                Point b = loop.get((i + 1) % loop.size());
                double cross = a.x() * b.y() - b.x() * a.y();
                twice += cross;
                moment += cross * (a.y() + b.y());
            }
        }
        return moment / (3 * twice);
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

    /** Whether an outline is surely smaller than what is read of its part, or a hollow larger: every gap of it would be too large. */
    static boolean isTooSmall(Known known, TracedOutline traced) {
        return sames(traced, Outlined.outline(traced)).stream()
                .anyMatch(same -> known.figure(same.term())
                        .filter(read -> {
                            double off = same.traced() - read.value();
                            return Double.isFinite(off)
                                    && (traced.part() == OutlinedPart.CASE ? off : -off) > both(traced, same, read);
                        })
                        .isPresent());
    }

    /** By how much the two may be apart with both right [m]. */
    private static double both(TracedOutline traced, Same same, Measured read) {
        double doubt = (same.term() == Term.CAM_BASE_CIRCLE ? 2 : 1) * traced.expandedDoubt();
        return Math.hypot(doubt, read.expanded());
    }

    private static Optional<Finding> finding(
            Known known, TracedOutline traced, String place, Same same, Measured read) {
        // the bolts may end higher than cap and big end, so only a rod that is traced too short disagrees
        double off = same.traced() - read.value();
        boolean isMore = same.term() == Term.BOLT_DOWN;
        double both = both(traced, same, read);
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
                                        + " both together may be off by %.2f mm. %s",
                                traced.part().label(),
                                same.what(),
                                1e3 * same.traced(),
                                same.term().label(),
                                same.term().path(),
                                1e3 * read.value(),
                                1e3 * both,
                                isTooSmall(known, traced)
                                        ? "No gap is told from it until they agree"
                                        : "The outline counts"),
                        "measure it again; check the unit of the outline and where its datum stands, and which part was traced"));
    }
}
