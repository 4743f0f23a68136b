package longthrow.core.clear;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import longthrow.core.build.TracedOutline;
import longthrow.core.clearance.Body;
import longthrow.core.clearance.Body.Depth;
import longthrow.core.clearance.Motion;
import longthrow.core.clearance.Outline;
import longthrow.core.clearance.OutlineText;
import longthrow.core.life.Asked;
import longthrow.core.life.Known;
import longthrow.core.measurement.Measured;
import longthrow.core.measurement.Source;
import longthrow.core.term.OutlinedPart;

/**
 * Parts as they were traced. A tracing is taken to be off by one amount all round, normal about 0: where it is too small, every gap of its part is so much
 * narrower than drawn. That shifts the gap as bearing play does, so it goes into the play of the pair (docs/decisions/0016).
 */
final class Outlined {
    /** What stands around a hollow is drawn so thick [m]; layout. */
    private static final double WALL = 0.02;

    private static final String ERROR = "outline of the ";

    private final OutlinedPart part;
    private final Outline outline;

    private Outlined(OutlinedPart part, Outline outline) {
        this.part = part;
        this.outline = outline;
    }

    /** Whether a part was traced. */
    static boolean has(Asked of, OutlinedPart part) {
        return of.known().build().outline(part).isPresent();
    }

    /** Asks for a part as traced; empty where it was not. */
    static Optional<Outlined> of(Asked of, OutlinedPart part) {
        Optional<TracedOutline> traced = of.known().build().outline(part);
        return traced.map(t -> {
            String place = place(of, t);
            of.restsOn(place);
            error(of, t, place);
            OutlineChecks.troubles(of.known(), t).forEach(of::lacks);
            if (t.reach().isEmpty() && part.along().isTold()) {
                of.takes(
                        place,
                        "where the " + part.label() + " as traced is along the crankshaft is not told: taken"
                                + " throughout, or as far as widths and places that were read say",
                        "on the safe side");
            }
            return new Outlined(part, outline(t));
        });
    }

    static String place(Asked of, TracedOutline traced) {
        return TracedOutline.place(of.known().build().outlines().indexOf(traced) + 1);
    }

    /** The outline of a text that was found sound when the build was read. */
    static Outline outline(TracedOutline traced) {
        OutlineText.Read read = Tracing.read(traced);
        if (read instanceof OutlineText.Taken taken) {
            return taken.outline();
        }
        OutlineText.Refused refused = (OutlineText.Refused) read;
        throw new IllegalArgumentException("outline of the " + traced.part().label() + ": "
                + refused.faults().get(0).message());
    }

    private static void error(Asked of, TracedOutline traced, String place) {
        String name = error(traced);
        boolean isUsual = traced.doubt() == null;
        of.given(
                name,
                Measured.of(
                        0,
                        List.of(Source.at95(
                                place,
                                isUsual || traced.isTooClose() ? Source.Kind.ASSUMED : Source.Kind.TYPED,
                                name,
                                traced.expandedDoubt()))));
        if (isUsual) {
            of.takes(
                    place,
                    "the " + name + " is taken as within 0.5 mm all round, since its doubt is not told",
                    TracedOutline.USUAL_DOUBT_SOURCE);
        }
        if (traced.isTooClose()) {
            of.takes(place, "the " + name + " is taken as within 0.1 mm all round", TracedOutline.LEAST_DOUBT_SOURCE);
        }
    }

    /** Name of the figure that says by how much a tracing is off. */
    static String error(TracedOutline traced) {
        return ERROR + traced.part().label();
    }

    /** Asks for that figure. */
    static void askError(Asked of, TracedOutline traced) {
        String place = place(of, traced);
        of.restsOn(place);
        error(of, traced, place);
    }

    /** Whether a figure of this name is by how much a tracing is off. */
    static boolean isError(String name) {
        return name.startsWith(ERROR);
    }

    /** By how much all that was traced of a pair is larger than drawn [m]. */
    static double larger(Sizes s) {
        return s.values().entrySet().stream()
                .filter(e -> e.getKey().startsWith(ERROR))
                .mapToDouble(Map.Entry::getValue)
                .sum();
    }

    /** As a body that moves with its frame, warm. */
    Body body(double strain, Motion motion) {
        Outline shape = part.isHollow() ? outline.around(WALL) : outline;
        return Body.of(Drawn.traced(part), shape, Depth.throughout(), motion).grown(strain);
    }

    /** Cold, shifted in its frame [m]. */
    Body moved(double dx, double dy, Motion motion) {
        return new Outlined(part, outline.placed(0, dx, dy)).body(0, motion);
    }

    /** As a body whose frame is turned besides [rad], from +y towards +x. */
    Body turned(double angle, double strain, Motion motion) {
        return new Outlined(part, outline.placed(angle, 0, 0)).body(strain, motion);
    }

    /** The part's place along the crankshaft as told with its outline; empty where none is. */
    static Optional<Extent> extent(Asked of, OutlinedPart part) {
        return of.known().build().outline(part).flatMap(traced -> traced.reach().map(reach -> extent(traced, reach)));
    }

    /** How far from its frame's origin a part as traced reaches at the most; empty where it was not traced. */
    static Optional<Extent.FromPin> farthest(Known known, OutlinedPart part) {
        return known.build()
                .outline(part)
                .map(traced -> new Extent.FromPin(
                        of -> {
                            String place = place(of, traced);
                            of.restsOn(place);
                            error(of, traced, place);
                        },
                        s -> outline(traced).farthest() + s.of(ERROR + part.label())));
    }

    /** Its ends are as doubtful as the tracing: the ± moves both outwards. */
    private static Extent extent(TracedOutline traced, TracedOutline.Reach reach) {
        String name = error(traced);
        Function<Sizes, List<Depth>> at = s -> {
            double from = reach.from() - s.of(name);
            double to = reach.to() + s.of(name);
            return traced.part().along() == OutlinedPart.Along.BOTH_SIDES
                    ? List.of(Extent.depth(from, to), Extent.depth(-to, -from))
                    : List.of(Extent.depth(from, to));
        };
        return new Extent(of -> askError(of, traced), at);
    }
}
