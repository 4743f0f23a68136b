package longthrow.core.clear;

import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import longthrow.core.answer.Rung;
import longthrow.core.clear.Plan.Beside;
import longthrow.core.clearance.Body.Depth;
import longthrow.core.life.Asked;
import longthrow.core.life.Known;
import longthrow.core.term.Choice;
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
     * How far from the crankpin's axis something of the rod is.
     * @param asks     for what it hangs on
     * @param farthest [m]
     */
    record FromPin(Consumer<Asked> asks, ToDoubleFunction<Sizes> farthest) {
        /** A reach that is read. */
        static FromPin of(Term reach) {
            return new FromPin(of -> of.figure(reach), s -> s.of(reach));
        }
    }

    /**
     * Something of the rod, which floats to both sides of the middle of the crankpin and stands as crooked on it as its bearing lets it: by the play across its
     * width, which at a point so far from the pin's axis comes to reach times play over width, either way (geometry).
     * @param widths along the crankshaft; the largest counts
     * @param away   its point farthest from the crankpin's axis
     */
    static Extent onRod(Known known, Optional<OutlinedPart> part, List<Term> widths, FromPin away) {
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
                    away.asks.accept(of);
                    asksCrookedness(of);
                },
                s -> {
                    double off = s.of(side) / 2 + away.farthest.applyAsDouble(s) * crookedness(s);
                    return still.at.apply(s).stream()
                            .map(depth -> depth(depth.from() - off, depth.to() + off))
                            .toList();
                });
    }

    private static void asksCrookedness(Asked of) {
        if (of.known().build().chose(Choice.BIG_END_BEARING, "rolling")) {
            of.restsOn(Choice.BIG_END_BEARING.path());
            of.lacks(new Rung.Missing(
                    Choice.BIG_END_BEARING.path(),
                    "how far the rod rocks on its needles or rollers",
                    "no reading of the build file tells it: mock up what passes beside the rod, the rod pressed over both ways",
                    0));
            return;
        }
        of.figure(Term.BIG_END_CLEARANCE);
        of.figure(Term.BIG_END_WIDTH);
        of.takes(
                Term.BIG_END_WIDTH.path(),
                "the rod stands on its crankpin as crooked as the big-end clearance lets it over the big-end width, either way, on top"
                        + " of its side clearance; the bearing is taken to be as wide as the big end",
                "on the safe side but for the bore's chamfers; geometry");
    }

    /** Slope of the rod on its crankpin at the most. */
    private static double crookedness(Sizes s) {
        return Math.max(0, s.of(Term.BIG_END_CLEARANCE)) / s.of(Term.BIG_END_WIDTH);
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
