package longthrow.core.clear;

import java.util.List;
import longthrow.core.answer.Clearance;
import longthrow.core.answer.Clearance.Hold;
import longthrow.core.answer.Clearance.State;
import longthrow.core.answer.Verdict;
import longthrow.core.build.Build;
import longthrow.core.build.Decided;
import longthrow.core.engine.Stops;
import longthrow.core.life.Known;
import longthrow.core.term.MovingPair;
import longthrow.core.term.Part;
import longthrow.core.term.Term;

/**
 * Whether an engine may be run with two parts as they are known to stand. Of an engine as he made it its maker vouches for gaps that nobody read, up to his speed; he
 * does not for parts that were bought or cut since, for a throw he did not give it, nor for a gap that was read and is too small by every source.
 */
final class Holding {
    private final Build build;
    private final boolean isMakersEngine;
    private final boolean isMakersRod;
    private final boolean isVouchedFor;

    Holding(Known known) {
        build = known.build();
        isMakersEngine = known.figure(Term.GOVERNED_SPEED).isPresent()
                && Stops.isVouched(build, Term.GOVERNED_SPEED)
                && !Stops.isOfAnotherThrow(build, known::figure)
                && build.taken().stream().noneMatch(Decided.Work.class::isInstance);
        isMakersRod = Stops.isMakersOwn(build, Part.ROD);
        isVouchedFor =
                Stops.covers(build, known::figure, Term.GOVERNED_SPEED) && Stops.isThrowAsMade(build, known::figure);
    }

    Hold of(Plan plan, Clearance told) {
        return switch (told.state()) {
            case CLEARS, CLEARS_COLD -> Hold.NOTHING;
            case TOUCHES, MAY_TOUCH -> Hold.ANY_RUN;
            case CLOSE ->
                isKeptByOne(told) && !isReserved(told)
                        ? Hold.NOTHING
                        : told.isUnderEverySource()
                                ? Hold.ANY_RUN
                                : unlessVouchedFor(plan.head().pair());
            case UNKNOWN -> {
                Hold hold = unlessVouchedFor(plan.head().pair());
                yield hold == Hold.NOTHING && isToldButForOne(plan, told) ? Hold.UNVOUCHED_RUN : hold;
            }
        };
    }

    private Hold unlessVouchedFor(MovingPair pair) {
        boolean isAsMade = isMakersEngine
                && (isMakersRod || !pair.hangsOnStack())
                && build.taken().stream()
                        .noneMatch(d -> d instanceof Decided.Bought bought && MockUps.isOf(bought.kind(), pair));
        return !isAsMade ? Hold.ANY_RUN : isVouchedFor ? Hold.NOTHING : Hold.UNVOUCHED_RUN;
    }

    /** Whether one source at least surely allows it: between sources the owner chooses. */
    private static boolean isKeptByOne(Clearance told) {
        return deciding(told).stream().anyMatch(limit -> limit.state() == Verdict.State.MEETS);
    }

    /** Whether it was mocked up in a way that leaves something open. */
    private static boolean isReserved(Clearance told) {
        return told.state() == State.CLOSE
                && deciding(told).stream().allMatch(limit -> limit.state() == Verdict.State.MEETS);
    }

    private static List<Clearance.Limit> deciding(Clearance told) {
        return told.limits().stream().filter(Clearance.Limit::decides).toList();
    }

    /**
     * Of a pair of which its owner tells all but one figure: that one might be the bad one, so leaving it out must not do better than
     * writing it down. Of one of which nothing is missing the figures do not go together, or a body that
     * is drawn larger than it can be shows nothing: then nobody knows of a bad one.
     */
    private static boolean isToldButForOne(Plan plan, Clearance told) {
        int missing = told.missing().size();
        boolean isDrawnTooLarge =
                plan.larger().isPresent() && missing == 0 && !told.hangsOn().isEmpty();
        return !(plan instanceof Plan.OnlyMockedUp)
                && !isDrawnTooLarge
                && (missing == 0 || (missing == 1 && told.hangsOn().size() > 1));
    }
}
