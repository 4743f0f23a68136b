package longthrow.core.clear;

import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Function;
import longthrow.core.clear.Plan.Beside;
import longthrow.core.clearance.Body.Depth;
import longthrow.core.life.Asked;
import longthrow.core.life.Known;
import longthrow.core.term.OutlinedPart;
import longthrow.core.term.Part;
import longthrow.core.term.Term;

/**
 * Where a part is along the crankshaft, from the middle of the crankpin, towards the flywheel positive.
 * @param asks for what it hangs on
 * @param at   one interval or several [m]
 */
record Extent(Consumer<Asked> asks, Function<Sizes, List<Depth>> at) {
    /** An interval; nothing wide where a draw of widths turned it round. */
    static Depth depth(double from, double to) {
        return from <= to ? new Depth(from, to) : new Depth((from + to) / 2, (from + to) / 2);
    }

    /** A part whose middle and width are read. */
    private static Extent of(Term place, Term width) {
        return new Extent(
                of -> {
                    of.figure(place);
                    of.figure(width);
                },
                s -> List.of(depth(s.of(place) - s.of(width) / 2, s.of(place) + s.of(width) / 2)));
    }

    static Extent lobe(Known known, Part valve) {
        boolean isIntake = valve == Part.INTAKE_VALVE;
        return Outlined.extent(new Asked(known), isIntake ? OutlinedPart.INTAKE_LOBE : OutlinedPart.EXHAUST_LOBE)
                .orElseGet(() -> of(isIntake ? Term.INTAKE_LOBE_PLACE : Term.EXHAUST_LOBE_PLACE, Term.LOBE_WIDTH));
    }

    static Extent release(Known known) {
        return Outlined.extent(new Asked(known), OutlinedPart.RELEASE)
                .orElseGet(() -> of(Term.RELEASE_PLACE, Term.RELEASE_THICKNESS));
    }

    static Extent counterweight(Known known) {
        return Outlined.extent(new Asked(known), OutlinedPart.COUNTERWEIGHT)
                .orElseGet(() -> new Extent(
                        of -> {
                            of.figure(Term.COUNTERWEIGHT_FACES);
                            of.figure(Term.COUNTERWEIGHT_THICKNESS);
                        },
                        s -> {
                            double inner = s.of(Term.COUNTERWEIGHT_FACES) / 2;
                            double outer = inner + s.of(Term.COUNTERWEIGHT_THICKNESS);
                            return List.of(depth(inner, outer), depth(-outer, -inner));
                        }));
    }

    /**
     * Something of the rod, which floats to both sides of the middle of the crankpin.
     * @param widths along the crankshaft; the largest counts
     */
    static Extent onRod(Known known, Optional<OutlinedPart> part, List<Term> widths) {
        boolean isByWidth = known.figure(Term.ROD_SIDE_CLEARANCE).isEmpty()
                && known.figure(Term.SIDE_CLEARANCE_BY_WIDTH).isPresent();
        Term side = isByWidth ? Term.SIDE_CLEARANCE_BY_WIDTH : Term.ROD_SIDE_CLEARANCE;
        Extent still = part.flatMap(p -> Outlined.extent(new Asked(known), p))
                .orElseGet(() -> new Extent(of -> widths.forEach(of::figure), s -> {
                    double half = widths.stream().mapToDouble(s::of).max().orElse(0) / 2;
                    return List.of(depth(-half, half));
                }));
        return new Extent(
                of -> {
                    still.asks.accept(of);
                    of.figure(side);
                },
                s -> still.at.apply(s).stream()
                        .map(depth -> depth(depth.from() - s.of(side) / 2, depth.to() + s.of(side) / 2))
                        .toList());
    }

    /**
     * The room to another beside it, less all end play, since none says where a shaft stood when it was read.
     * @param play of the shafts they are on
     */
    Beside beside(Extent other, List<Term> play) {
        return new Beside(
                of -> {
                    other.asks.accept(of);
                    play.forEach(of::figure);
                    asks.accept(of);
                },
                s -> {
                    double least = Double.POSITIVE_INFINITY;
                    for (Depth one : at.apply(s)) {
                        for (Depth two : other.at.apply(s)) {
                            least = Math.min(least, Math.max(one.from() - two.to(), two.from() - one.to()));
                        }
                    }
                    return least - play.stream().mapToDouble(s::of).sum();
                });
    }
}
