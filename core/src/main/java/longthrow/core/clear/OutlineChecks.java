package longthrow.core.clear;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import longthrow.core.answer.Finding;
import longthrow.core.answer.Rung;
import longthrow.core.build.TracedOutline;
import longthrow.core.clearance.Outline;
import longthrow.core.clearance.Point;
import longthrow.core.formula.Expression;
import longthrow.core.life.Asked;
import longthrow.core.life.Known;
import longthrow.core.measurement.Measured;
import longthrow.core.term.Choice;
import longthrow.core.term.OutlinedPart;
import longthrow.core.term.Part;
import longthrow.core.term.Term;

/**
 * Outlines held against what their part must be, and against the readings of it: where both are there the outline counts, and where they disagree it is said. No gap
 * is told from an outline that cannot be its part, nor from one that is surely smaller than what is read of it (of a case, larger).
 */
public final class OutlineChecks {
    /** So many times a reading and more is no slip of the hand but another unit or another part: of units mixed up, the closest are 2.54 apart. A judgement. */
    private static final double ANOTHER_UNIT = 2;

    private OutlineChecks() {}

    /**
     * Why an outline cannot be its part.
     * @param what of the part, to go on behind its name
     * @param mend what to do
     */
    private record NotIt(String what, String mend) {}

    /** Which disagreement is one. */
    private enum Tells {
        /** What stands out farther is said, and the outline counts. */
        LARGER_TOO,
        /** What stands out farther may be another place of the part: only what is smaller disagrees. */
        SMALLER_ALONE,
        /** Either way the datum or the part is another, and no gap is told. */
        EITHER_WAY
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

        boolean isSaid() {
            return isSmaller() || (isLarger() && tells != Tells.SMALLER_ALONE);
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
        notIt(traced, outline)
                .ifPresent(not -> all.add(new Finding(
                        Finding.Kind.SUSPECT,
                        place,
                        "the outline of the " + traced.part().label() + " cannot be that part as it stands: "
                                + not.what() + ". No gap is told from it",
                        not.mend())));
        if (traced.isTooClose()) {
            all.add(new Finding(
                    Finding.Kind.WARNING,
                    place,
                    String.format(
                            Locale.ROOT,
                            "the outline of the %s is said to be within %s all round; taken as %.1f mm (%s)",
                            traced.part().label(),
                            java.util.Objects.requireNonNull(traced.doubt()).written(),
                            1e3 * TracedOutline.LEAST_DOUBT,
                            TracedOutline.LEAST_DOUBT_SOURCE),
                    "write by how much the tracing may be off, part and paper laid over each other"));
        }
        for (Same same : new Compared(known, traced, outline).all()) {
            finding(traced, place, same).ifPresent(all::add);
        }
        return all;
    }

    /** Whether anything speaks against an outline, be it on the safe side. */
    static boolean isDisputed(Known known, TracedOutline traced) {
        Outline outline = Outlined.outline(traced);
        return notIt(traced, outline).isPresent()
                || new Compared(known, traced, outline).all().stream().anyMatch(Same::isSaid);
    }

    /** Why no gap is told from an outline, with what to do; none where it tells. */
    static List<Rung.Missing> troubles(Known known, TracedOutline traced) {
        List<Rung.Missing> all = new ArrayList<>();
        Outline outline = Outlined.outline(traced);
        notIt(traced, outline)
                .ifPresent(not -> all.add(new Rung.Missing(
                        "",
                        "what the outline of the " + traced.part().label() + " is of: " + not.what(),
                        not.mend(),
                        0)));
        if (all.isEmpty()
                && new Compared(known, traced, outline).all().stream().anyMatch(same -> isAgainst(traced, same))) {
            all.add(new Rung.Missing(
                    "",
                    "which is right, the outline of the "
                            + traced.part().label() + " or its reading: as traced it is "
                            + (traced.part() == OutlinedPart.CASE ? "wider" : "smaller, or surely another part"),
                    AGAIN,
                    0));
        }
        return all;
    }

    /** Of its half width a retainer's rim is looked at here; layout. */
    private static final double RIM = 0.9;
    /** A rocker is looked at in so many columns over half a retainer; layout. */
    private static final int COLUMNS = 40;

    private static final String AGAIN =
            "measure it again; check the unit of the outline and where its datum stands, and which part was traced";

    /** Whether two disagree so that a gap of the part would be too large, or could be. */
    private static boolean isAgainst(TracedOutline traced, Same same) {
        boolean isCase = traced.part() == OutlinedPart.CASE;
        return (isCase ? same.isLarger() : same.isSmaller())
                || (same.tells() == Tells.EITHER_WAY && same.isLarger())
                || (same.tells() == Tells.LARGER_TOO
                        && same.isLarger()
                        && same.traced() > ANOTHER_UNIT * same.read().value());
    }

    /** What no doubt of the tracing and no reading excuses; most of it stands the wrong way round, or its datum stands elsewhere. */
    private static Optional<NotIt> notIt(TracedOutline traced, Outline outline) {
        double doubt = traced.expandedDoubt();
        String datum = traced.part().datum();
        return switch (traced.part()) {
            case COUNTERWEIGHT -> {
                if (new Shadow(outline).middle() > doubt) {
                    // one that weighs on the crankpin's side would balance nothing
                    yield Optional.of(
                            new NotIt(
                                    "its middle lies on the crankpin's side of the crankshaft, so it stands upside down",
                                    "turn it: +y points from the crankshaft's axis to the crankpin, and the weight hangs below"));
                }
                boolean isSegment = outline.reach(0) <= doubt;
                yield !isSegment && outline.depthOf(new Point(0, 0)) < -doubt
                        ? Optional.of(new NotIt(
                                datum + " lies outside of it, and yet it reaches to both sides of that axis",
                                "say where in the drawing the axis stands (datum_x, datum_y); a weight that is bolted on hangs wholly below the axis, any"
                                        + " other is traced with the web that it is of"))
                        : Optional.empty();
            }
            case ROD ->
                outline.reach(0) <= outline.reach(Math.PI)
                        ? Optional.of(new NotIt(
                                "it reaches no farther up than down, so it stands upside down or is of the big end alone",
                                "trace all of it, and turn it: +y points to the small end"))
                        : Optional.empty();
            case DIPPER, PISTON_SKIRT, PIN_BOSS ->
                outline.reach(Math.PI) <= 0
                        ? Optional.of(new NotIt(
                                "all of it lies above " + datum
                                        + ", so it stands upside down, or its datum stands elsewhere",
                                "turn it: +y points " + traced.part().upwards() + "; and say where in the drawing "
                                        + datum + " stands (datum_x, datum_y)"))
                        : Optional.empty();
            case INTAKE_LOBE, EXHAUST_LOBE ->
                outline.farthest() - outline.reach(0) > doubt
                        ? Optional.of(new NotIt(
                                "its nose does not point up",
                                "turn it: +y points " + traced.part().upwards()))
                        : Optional.empty();
            case ROCKER ->
                Math.abs(outline.depthOf(new Point(0, 0))) > doubt
                        ? Optional.of(new NotIt(
                                "its tip does not lie on the end of the valve's stem, where (0, 0) has to be",
                                "say where in the drawing the rocker touches the stem (datum_x, datum_y)"))
                        : Optional.empty();
            case RETAINER ->
                outline.reach(Math.PI) <= 0
                        ? Optional.of(new NotIt(
                                "all of it lies above " + datum + ", so it stands upside down",
                                "turn it: +y points " + traced.part().upwards()))
                        : Optional.empty();
            case CASE, RELEASE -> Optional.empty();
        };
    }

    private static Optional<Finding> finding(TracedOutline traced, String place, Same same) {
        if (!same.isSaid()) {
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
                case DIPPER -> {
                    larger("its tip", below, Term.DIPPER_REACH);
                    add("twice down to its tip", 2 * below, 2, Term.BIG_END_BORE, Tells.SMALLER_ALONE);
                    double width = outline.reach(Math.PI / 2) + outline.reach(-Math.PI / 2);
                    add("its width", width, 2, Term.DIPPER_WIDTH, Tells.SMALLER_ALONE);
                }
                case PISTON_SKIRT -> larger("its lowest edge", below, Term.SKIRT_BELOW_PIN);
                case PIN_BOSS -> {
                    larger("its lowest point", below, Term.BOSS_BELOW_PIN);
                    boolean hasBore = known.figure(Term.PISTON_PIN_BORE).isPresent();
                    Term pin = hasBore ? Term.PISTON_PIN_BORE : Term.PIN_DIAMETER;
                    add("twice down to its lowest point", 2 * below, 2, pin, Tells.SMALLER_ALONE);
                }
                case CASE -> {
                    larger("the wall straight below", wall(Math.PI), Term.CASE_BELOW);
                    larger("the wall on the thrust side", wall(-Math.PI / 2), Term.CASE_THRUST);
                    larger("the wall on the anti-thrust side", wall(Math.PI / 2), Term.CASE_ANTITHRUST);
                }
                case INTAKE_LOBE -> lobe(Part.INTAKE_VALVE);
                case EXHAUST_LOBE -> lobe(Part.EXHAUST_VALVE);
                case RELEASE -> larger("its outermost point", outline.farthest(), Term.RELEASE_REACH);
                case ROCKER -> rocker();
                case RETAINER -> retainer();
            }
            traced.reach().ifPresent(reach -> along(reach.to() - reach.from()));
            return all;
        }

        /** A base circle of another size is that of another camshaft, or its axis is not where it is said; a nose too low opens every gap at it. */
        private void lobe(Part valve) {
            double base = 2 * outline.depthOf(new Point(0, 0));
            add("twice its least distance from the axis", base, 2, Term.CAM_BASE_CIRCLE, Tells.EITHER_WAY);
            Asked of = new Asked(known);
            Expression rise = of.figure(Lift.full(valve)).plus(of.figure(Lift.lash(valve)));
            Optional<String> layout = known.build().choice(Choice.VALVE_LAYOUT);
            if (layout.isEmpty()) {
                return;
            }
            boolean isOverhead = layout.get().equals("overhead");
            Expression lift = isOverhead
                    ? rise.times(of.figure(Term.ROCKER_PUSHROD_ARM)).dividedBy(of.figure(Term.ROCKER_VALVE_ARM))
                    : rise;
            of.told("lobe lift", lift)
                    .ifPresent(read -> all.add(new Same(
                            "its nose over its base circle",
                            outline.farthest() - base / 2,
                            traced.expandedDoubt(),
                            "what lifts the valve so far (" + Lift.full(valve).path() + ", lash"
                                    + (isOverhead ? ", rocker" : "") + ")",
                            read,
                            Tells.SMALLER_ALONE)));
        }

        /** A retainer whose rim lies lower than read, or that is narrower, leaves gaps at the rocker that are not there. */
        private void retainer() {
            double right = outline.reach(Math.PI / 2);
            double left = outline.reach(-Math.PI / 2);
            add("its width", left + right, 2, Term.RETAINER_OUTSIDE, Tells.SMALLER_ALONE);
            Stream.of(shadow.up(RIM * right), shadow.up(-RIM * left))
                    .flatMap(Optional::stream)
                    .map(Shadow.Span::to)
                    .max(Double::compare)
                    .ifPresent(rim -> add("down to its rim", -rim, 1, Term.RETAINER_BELOW_TIP, Tells.EITHER_WAY));
        }

        /** Over the outer half of the retainer's width, where no stem stands. */
        private void rocker() {
            // what is traced of its tip alone passes over no retainer
            smaller("from its tip to its end towards the pivot", outline.reach(-Math.PI / 2), Term.ROCKER_VALVE_ARM);
            Optional<Measured> wide = known.figure(Term.RETAINER_OUTSIDE);
            Optional<Measured> below = known.figure(Term.RETAINER_BELOW_TIP);
            if (wide.isEmpty() || below.isEmpty()) {
                return;
            }
            double half = wide.get().value() / 2;
            IntStream.rangeClosed(COLUMNS / 2, COLUMNS)
                    .mapToDouble(k -> half * k / COLUMNS)
                    .boxed()
                    .flatMap(x -> Stream.of(shadow.up(x), shadow.up(-x)))
                    .flatMap(Optional::stream)
                    .map(Shadow.Span::from)
                    .min(Double::compare)
                    .ifPresent(low -> add(
                            "its least height over the outer half of the retainer",
                            low + below.get().value(),
                            1,
                            Term.ROCKER_OVER_RETAINER,
                            Tells.EITHER_WAY));
        }

        /** How wide it is along the crankshaft: narrower than read it would pass beside what it meets. */
        private void along(double width) {
            List<Term> read = switch (traced.part()) {
                case COUNTERWEIGHT -> List.of(Term.COUNTERWEIGHT_THICKNESS);
                case ROD -> List.of(Term.BIG_END_WIDTH, Term.BOLT_ACROSS);
                case DIPPER -> List.of(Term.DIPPER_THICKNESS);
                case PISTON_SKIRT -> List.of(Term.SKIRT_WIDTH);
                case INTAKE_LOBE, EXHAUST_LOBE -> List.of(Term.LOBE_WIDTH);
                case RELEASE -> List.of(Term.RELEASE_THICKNESS);
                case PIN_BOSS, CASE, ROCKER, RETAINER -> List.of();
            };
            read.forEach(term -> add("its width along the crankshaft", width, 2, term, Tells.SMALLER_ALONE));
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
