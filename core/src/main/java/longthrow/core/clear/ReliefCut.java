package longthrow.core.clear;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import longthrow.core.answer.Answer;
import longthrow.core.answer.Clearance;
import longthrow.core.build.Build;
import longthrow.core.clearance.Outline;
import longthrow.core.clearance.Pair;
import longthrow.core.clearance.Point;
import longthrow.core.clearance.Relief;
import longthrow.core.life.Asked;
import longthrow.core.life.Known;
import longthrow.core.measure.Appraisal;
import longthrow.core.measurement.NotConvergedException;

/**
 * The outline of what has to come off a part, and where, so that a pair keeps what is wanted there for sure: the same pair as {@link Clear} tells it, cold, with the
 * gap at the best estimates made so wide that the amount to take off is the sure one. Shapes that are not measured are drawn larger than they can be, so less may do.
 * It says what geometry asks for; whether the part bears it is for its maker to say.
 * @param key    of the pair
 * @param part   that is cut
 * @param passes what passes it
 * @param wanted gap kept all over, at the best estimates [m]
 * @param relief what comes off, in the frame of the part: of a piston the pin's centre, of what stands the crank axis; up along the cylinder
 * @param edge   present outline of the part in the same frame, loop by loop [m]
 * @param isOnPiston whether the frame is the piston's
 */
public record ReliefCut(
        String key,
        String part,
        String passes,
        double wanted,
        Relief relief,
        List<List<Point>> edge,
        boolean isOnPiston) {
    /** Chords of the present outline stand off their arcs by no more than this [m]; a hundredth of a millimetre is all that is promised. */
    private static final double CHORDS = 10e-6;

    /** Outlines that are given together, as in the Book; each pair's own is to be had by itself. Layout. */
    private static final int MOST_GRAVE = 2;

    public ReliefCut {
        List<List<Point>> copies = new ArrayList<>();
        edge.forEach(loop -> copies.add(List.copyOf(loop)));
        edge = List.copyOf(copies);
    }

    /** Whether a part of this pair is to be cut to an outline. */
    public static boolean isFor(Clearance told) {
        return told.removal()
                .filter(r -> !r.shaped().isEmpty() && r.surely() > 0)
                .isPresent();
    }

    /** Whether a part of this pair is to be cut of which nobody knows what is left behind the cut. */
    public static boolean isIntoTheUnknown(Clearance told) {
        return isFor(told) && told.removal().flatMap(Clearance.Removal::leaves).isEmpty();
    }

    /** Said beside a cut of {@link #isIntoTheUnknown}. */
    public static final String LEAVES_UNKNOWN = "not known: measure what is there before anything is cut";

    /**
     * The outline for a pair of the answer of {@link Clear} to the same build.
     * @return empty where no part of it is cut to an outline
     */
    public static Optional<ReliefCut> of(Build build, Clearance told) {
        if (!isFor(told)) {
            return Optional.empty();
        }
        Known known;
        try {
            known = new Known(Appraisal.sound(build));
        } catch (NotConvergedException nothingNear) {
            return Optional.empty();
        }
        return Pairs.of(known).stream()
                .filter(plan -> plan.head().key().equals(told.key()))
                .filter(Plan.Outlines.class::isInstance)
                .map(Plan.Outlines.class::cast)
                .findFirst()
                .flatMap(plan -> cut(plan, told, new Asked(known)));
    }

    /**
     * Of the pairs of an answer of {@link Clear} that are cut to an outline the gravest few, in the order of the answer.
     * @param build that was asked about
     */
    public static List<ReliefCut> gravest(Build build, Answer clear) {
        return clear.clearances().stream()
                .filter(ReliefCut::isFor)
                .limit(MOST_GRAVE)
                .flatMap(pair -> of(build, pair).stream())
                .toList();
    }

    private static Optional<ReliefCut> cut(Plan.Outlines plan, Clearance told, Asked of) {
        Function<Sizes, Pair> drawing = plan.drawing().of(of, false);
        if (!of.isWhole()) {
            return Optional.empty();
        }
        Plan.Head head = plan.head();
        Pair drawn = drawing.apply(new Sourced(of.figures(), drawing).best());
        boolean isOne = head.cut().shaped() == Plan.Shaped.ONE;
        Pair pair = isOne ? drawn : drawn.swapped();
        double wanted = Math.max(
                0,
                told.cold().orElseThrow().value() + told.removal().orElseThrow().surely());
        List<List<Point>> edge = new ArrayList<>();
        for (Outline outline : pair.one().outlines()) {
            edge.addAll(outline.drawn(CHORDS));
        }
        return Relief.of(pair, wanted)
                .map(relief -> new ReliefCut(
                        head.key(),
                        isOne ? head.one() : head.other(),
                        isOne ? head.other() : head.one(),
                        wanted,
                        relief,
                        edge,
                        !pair.one()
                                .motion()
                                .standing(0)
                                .equals(pair.one().motion().standing(Math.PI))));
    }
}
