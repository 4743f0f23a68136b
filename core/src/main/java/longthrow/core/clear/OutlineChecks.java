package longthrow.core.clear;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import longthrow.core.answer.Finding;
import longthrow.core.answer.Rung;
import longthrow.core.build.TracedOutline;
import longthrow.core.clearance.Outline;
import longthrow.core.clearance.Point;
import longthrow.core.life.Known;
import longthrow.core.measurement.Measured;
import longthrow.core.term.OutlinedPart;
import longthrow.core.term.Term;

/**
 * Outlines held against the readings of the same part: where both are there the outline counts, and where they disagree it is said. No gap is told from an outline
 * that is surely smaller than what is read of its part (of a case, larger).
 */
public final class OutlineChecks {
    private OutlineChecks() {}

    /** Which disagreement is one. */
    private enum Tells {
        /** What stands out farther is said, and the outline counts. */
        LARGER_TOO,
        /** What stands out farther may be another place of the part: only what is smaller disagrees. */
        SMALLER_ALONE
    }

    /**
     * Something of an outline that is read as well.
     * @param what   it is, for people
     * @param traced [m]
     * @param doubt  95 % half-width of that [m]
     * @param name   of the reading with its place, for people
     * @param read   as it is known
     */
    private record Same(String what, double traced, double doubt, String name, Measured read, Tells tells) {
        /** By how much the two may be apart with both right [m]. */
        double both() {
            return Math.hypot(doubt, read.expanded());
        }

        double off() {
            return traced - read.value();
        }

        boolean isSmaller() {
            return off() < -both();
        }

        boolean isLarger() {
            return off() > both();
        }
    }

    /** What an outline of a build says of its part that the part's readings do not. */
    static List<Finding> findings(Known known) {
        List<Finding> all = new ArrayList<>();
        List<TracedOutline> outlines = known.build().outlines();
        for (int k = 0; k < outlines.size(); k++) {
            all.addAll(of(known, outlines.get(k), TracedOutline.place(k + 1)));
        }
        return all;
    }

    /**
     * What one outline says of its part that the part's readings do not.
     * @param known  the engine; that it has the outline already does not matter
     * @param traced as it stands or is to stand in its build
     * @param place  that is named
     */
    public static List<Finding> of(Known known, TracedOutline traced, String place) {
        List<Finding> all = new ArrayList<>();
        Outline outline = Outlined.outline(traced);
        upsideDown(traced, outline, place).ifPresent(all::add);
        for (Same same : new Compared(known, traced, outline).all()) {
            finding(traced, place, same).ifPresent(all::add);
        }
        return all;
    }

    /** Why no gap is told from an outline, with what to do; none where it tells. */
    static List<Rung.Missing> troubles(Known known, TracedOutline traced) {
        List<Rung.Missing> all = new ArrayList<>();
        Outline outline = Outlined.outline(traced);
        if (isUpsideDown(traced, outline)) {
            all.add(new Rung.Missing(
                    "",
                    "which way round the outline of the counterweight stands: its middle lies on the crankpin's side",
                    TURN,
                    0));
        }
        if (new Compared(known, traced, outline).all().stream().anyMatch(same -> isAgainst(traced, same))) {
            all.add(new Rung.Missing(
                    "",
                    "which is right, the outline of the "
                            + traced.part().label() + " or its reading: as traced it is "
                            + (traced.part() == OutlinedPart.CASE ? "wider" : "smaller"),
                    AGAIN,
                    0));
        }
        return all;
    }

    private static final String TURN =
            "turn it: +y points from the crankshaft's axis to the crankpin, and the weight hangs below";

    private static final String AGAIN =
            "measure it again; check the unit of the outline and where its datum stands, and which part was traced";

    /** Whether two disagree so that every gap of the part would be too large. */
    private static boolean isAgainst(TracedOutline traced, Same same) {
        return traced.part() == OutlinedPart.CASE ? same.isLarger() : same.isSmaller();
    }

    /** Whether the middle of a counterweight, with its doubt, lies on the crankpin's side. */
    private static boolean isUpsideDown(TracedOutline traced, Outline outline) {
        return traced.part() == OutlinedPart.COUNTERWEIGHT && new Shadow(outline).middle() > traced.expandedDoubt();
    }

    /** A counterweight that weighs on the crankpin's side would balance nothing: it opens every gap under the piston that is there. */
    private static Optional<Finding> upsideDown(TracedOutline traced, Outline outline, String place) {
        return isUpsideDown(traced, outline)
                ? Optional.of(new Finding(
                        Finding.Kind.SUSPECT,
                        place,
                        "the outline of the counterweight has its middle on the crankpin's side of the crankshaft: it seems to stand upside"
                                + " down, and no gap is told from it",
                        TURN))
                : Optional.empty();
    }

    private static Optional<Finding> finding(TracedOutline traced, String place, Same same) {
        boolean isSaid = same.isSmaller() || (same.isLarger() && same.tells() == Tells.LARGER_TOO);
        if (!isSaid) {
            return Optional.empty();
        }
        return Optional.of(new Finding(
                Finding.Kind.WARNING,
                place,
                String.format(
                        Locale.ROOT,
                        "the outline of the %s and its reading disagree: %s is %.2f mm as traced, %s is read as %.2f mm;"
                                + " both together may be off by %.2f mm. %s",
                        traced.part().label(),
                        same.what(),
                        1e3 * same.traced(),
                        same.name(),
                        1e3 * same.read().value(),
                        1e3 * same.both(),
                        isAgainst(traced, same) ? "No gap is told from it until they agree" : "The outline counts"),
                AGAIN));
    }

    /** Everything of one outline that is read as well. */
    private static final class Compared {
        private final Known known;
        private final TracedOutline traced;
        private final Outline outline;
        private final Shadow shadow;
        private final List<Same> all = new ArrayList<>();

        Compared(Known known, TracedOutline traced, Outline outline) {
            this.known = known;
            this.traced = traced;
            this.outline = outline;
            this.shadow = new Shadow(outline);
        }

        List<Same> all() {
            double below = outline.reach(Math.PI);
            switch (traced.part()) {
                case COUNTERWEIGHT -> larger("its outermost point", outline.farthest(), Term.COUNTERWEIGHT_RADIUS);
                case ROD -> rod(below);
                case DIPPER -> larger("its tip", below, Term.DIPPER_REACH);
                case PISTON_SKIRT -> larger("its lowest edge", below, Term.SKIRT_BELOW_PIN);
                case PIN_BOSS -> larger("its lowest point", below, Term.BOSS_BELOW_PIN);
                case CASE -> {
                    larger("the wall straight below", wall(Math.PI), Term.CASE_BELOW);
                    larger("the wall on the thrust side", wall(-Math.PI / 2), Term.CASE_THRUST);
                    larger("the wall on the anti-thrust side", wall(Math.PI / 2), Term.CASE_ANTITHRUST);
                }
                case INTAKE_LOBE, EXHAUST_LOBE ->
                    add(
                            "twice its least distance from the axis",
                            2 * outline.depthOf(new Point(0, 0)),
                            2,
                            Term.CAM_BASE_CIRCLE,
                            Tells.LARGER_TOO);
                case RELEASE -> larger("its outermost point", outline.farthest(), Term.RELEASE_REACH);
            }
            return all;
        }

        /** The rod with cap and bolts goes round both bores, as far down and out as bolts and cap, and all the way to the small end. */
        private void rod(double below) {
            smaller("down to its lowest point", below, Term.BOLT_DOWN);
            smaller("down to its lowest point", below, Term.CAP_BELOW);
            smaller("up to its highest point", outline.reach(0), Term.ROD_LENGTH);
            double inside = 2 * outline.depthOf(new Point(0, 0));
            boolean hasBore = known.figure(Term.BIG_END_BORE).isPresent();
            add(
                    "twice its least distance from the big end's centre",
                    inside,
                    2,
                    hasBore ? Term.BIG_END_BORE : Term.CRANKPIN_DIAMETER,
                    Tells.SMALLER_ALONE);
            // upwards the beam goes on, so the big end's own outermost point is looked for beside and below
            shadow.farthest(p -> p.y() <= Math.abs(p.x()))
                    .ifPresent(out -> smaller(
                            "its outermost point beside and below the big end's centre", out, Term.BIG_END_REACH));
            bolts();
            known.figure(Term.ROD_LENGTH).map(Measured::value).ifPresent(length -> {
                add(
                        "twice its least distance from the small end's centre",
                        2 * outline.depthOf(new Point(0, length)),
                        2,
                        Term.SMALL_END_BORE,
                        Tells.SMALLER_ALONE);
                shadow.narrowest(0, length)
                        .ifPresent(width -> add("its narrowest width", width, 2, Term.BEAM_WIDTH, Tells.SMALLER_ALONE));
            });
        }

        /** Each side by itself: one bolt that was left out opens the gap on its side. */
        private void bolts() {
            double low = known.figure(Term.BOLT_DOWN).map(down -> -down.value()).orElse(-outline.reach(Math.PI));
            double high = known.figure(Term.BOLT_UP).map(Measured::value).orElse(outline.reach(0));
            Optional<Measured> out = known.figure(Term.BOLT_OUT);
            Optional<Measured> head = known.figure(Term.BOLT_ACROSS);
            for (int side : new int[] {-1, 1}) {
                String of = side < 0 ? "thrust side" : "anti-thrust side";
                shadow.out(side, low, high)
                        .ifPresent(reach -> smaller("out to its edge at the bolts, " + of + ",", reach, Term.BOLT_OUT));
                if (out.isPresent() && head.isPresent()) {
                    double middle = side * (out.get().value() - head.get().value() / 2);
                    shadow.up(middle).ifPresent(span -> {
                        smaller("up to its edge over the middle of the bolt, " + of + ",", span.to(), Term.BOLT_UP);
                        smaller(
                                "down to its edge under the middle of the bolt, " + of + ",",
                                -span.from(),
                                Term.BOLT_DOWN);
                    });
                }
            }
        }

        /** From the datum straight on in a direction from +y towards +x to where the hollow ends [m]. */
        private double wall(double direction) {
            return new Shadow(outline.placed(-direction, 0, 0)).firstAbove();
        }

        private void larger(String what, double is, Term term) {
            add(what, is, 1, term, Tells.LARGER_TOO);
        }

        private void smaller(String what, double is, Term term) {
            add(what, is, 1, term, Tells.SMALLER_ALONE);
        }

        /** @param edges how many edges of the outline it lies between */
        private void add(String what, double is, int edges, Term term, Tells tells) {
            known.figure(term)
                    .filter(read -> Double.isFinite(is))
                    .ifPresent(read -> all.add(new Same(
                            what,
                            is,
                            edges * traced.expandedDoubt(),
                            term.label() + " (" + term.path() + ")",
                            read,
                            tells)));
        }
    }
}
