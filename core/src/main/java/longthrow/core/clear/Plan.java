package longthrow.core.clear;

import java.util.Collections;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import longthrow.core.answer.Clearance.Way;
import longthrow.core.clearance.Pair;
import longthrow.core.formula.Expression;
import longthrow.core.life.Asked;
import longthrow.core.term.MovingPair;
import longthrow.core.term.Term;

/** One pair of an engine, before it is asked about. */
sealed interface Plan {
    Head head();

    /** What of it is drawn larger than it can be, so that a touch of the drawing shows none of the parts; empty where nothing is. */
    default Optional<Larger> larger() {
        return Optional.empty();
    }

    /**
     * A body whose shape is not known where the drawing comes closest: where it clears the part clears, and where it does not, nothing is shown.
     * @param where place in the build file that it is drawn from
     * @param what  is not known and how it is drawn instead, for people
     * @param known what would make the shape known, in the imperative; empty where only mocking up tells
     */
    record Larger(String where, String what, Optional<String> known) {}

    /**
     * What is said of a pair whatever comes out.
     * @param pair  of parts
     * @param one   the part, for people: where an outline holds more than its name says, all it holds
     * @param want  gaps the trade wants there
     * @param how   it is read when mocked up
     * @param cut   what would mend it
     */
    record Head(MovingPair pair, String one, Wanted want, String how, Cut cut) {
        Head(MovingPair pair, Wanted want, String how, Cut cut) {
            this(pair, pair.one(), want, how, cut);
        }

        String key() {
            return pair.key();
        }

        String other() {
            return pair.other();
        }

        /** The same of which the trade wants nothing. */
        Head withoutLimits() {
            return new Head(pair, one, Wanted.NOTHING, how, cut);
        }
    }

    /**
     * What mends a gap that is too small.
     * @param what   in the imperative, {x} for the amount
     * @param shaped which of the two a cutter shapes
     * @param part   sizes that together are what may be cut into; empty where it is not told
     * @param taken  sizes that are cut out of it already
     */
    record Cut(String what, Shaped shaped, List<Term> part, List<Term> taken) {
        public Cut {
            part = List.copyOf(part);
            taken = List.copyOf(taken);
        }

        static Cut of(String what) {
            return of(what, Shaped.NEITHER);
        }

        static Cut of(String what, Shaped shaped) {
            return new Cut(what, shaped, List.of(), List.of());
        }
    }

    /** Which part of a pair is cut to an outline. */
    enum Shaped {
        ONE,
        OTHER,
        /** One of them is made shorter or smaller all round, or another part is fitted. */
        NEITHER
    }

    /** Asks for what a pair is drawn from and gives the drawing, to be used once all is known. */
    interface Drawing {
        /**
         * Asks, and gives the drawing.
         * @param runs whether the engine runs
         */
        Function<Sizes, Pair> of(Asked of, boolean runs);
    }

    /**
     * How one passes beside the other along the crankshaft.
     * @param asks for what it hangs on
     * @param gap  [m]
     */
    record Beside(Consumer<Asked> asks, ToDoubleFunction<Sizes> gap) {}

    /**
     * Outlines that move past each other.
     * @param warm   what running changes
     * @param beside empty where both are at one depth
     * @param hasCam whether the camshaft's phase plays a part
     * @param larger what is drawn larger than it can be; empty where nothing is
     */
    record Outlines(
            Head head,
            Drawing drawing,
            Set<Warm> warm,
            Optional<Beside> beside,
            boolean hasCam,
            @Override Optional<Larger> larger)
            implements Plan {
        public Outlines {
            warm = Collections.unmodifiableSet(new LinkedHashSet<>(warm)); // in order: what is missing is told in it
        }
    }

    /**
     * A gap that a formula tells, or a reading of its own.
     * @param figure  asks for what it hangs on and gives the formula
     * @param angle   of the crank where it is least; NaN where none decides
     * @param notWarm why it is not told running
     */
    record Told(Head head, Function<Asked, Expression> figure, Way way, double angle, String notWarm) implements Plan {}

    /**
     * A gap that no figure of a build file tells.
     * @param why for people
     */
    record OnlyMockedUp(Head head, String why) implements Plan {}
}
