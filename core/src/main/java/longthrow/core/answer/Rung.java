package longthrow.core.answer;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import longthrow.core.measurement.Measured;
import longthrow.core.term.Part;

/**
 * One limit of the engine: what gives up, at what speed, and what that is known by.
 * @param key         stable
 * @param label       what gives up, for people
 * @param part        that gives up
 * @param kind        in what way
 * @param weight      what it means when it is passed
 * @param speed       of the crank at which it gives up [rad/s]; empty when not known, or when no speed decides
 * @param state       how it stands at the speed asked for
 * @param probability that it holds there; NaN when unknown
 * @param hangsOn     places in the build file that it was asked of, readings and words alike
 * @param from        entries that the figures behind it rest on
 * @param source      material, grade, rule or formula with where it comes from
 * @param missing     what would have to be read or asked; empty when it is known
 * @param why         how it stands, in words
 * @param unlock      what would mend it; empty when it holds
 */
public record Rung(
        String key,
        String label,
        Part part,
        Kind kind,
        Weight weight,
        Optional<Measured> speed,
        State state,
        double probability,
        List<String> hangsOn,
        List<String> from,
        String source,
        List<Missing> missing,
        String why,
        String unlock) {
    public Rung {
        hangsOn = List.copyOf(hangsOn);
        from = List.copyOf(from);
        missing = List.copyOf(missing);
        if ((state == State.UNKNOWN) == missing.isEmpty()) {
            throw new IllegalArgumentException(key + " is " + state + " with " + missing.size()
                    + " things missing; unknown means that something is");
        }
    }

    /** In what way something gives up. */
    public enum Kind {
        /** What the part's maker approves. */
        RATING("maker's rating"),
        /** Breaks or yields under one load. */
        STRENGTH("strength"),
        /** Breaks after so many swings. */
        FATIGUE("fatigue over the hours wanted"),
        /** Valve leaves its lobe. */
        FLOAT("float"),
        /** Parts of the valve train meet, at any speed. */
        TRAVEL("travel"),
        /** Ring lifts in its groove. */
        FLUTTER("ring flutter"),
        /** Waves in a spring. */
        SURGE("surge"),
        /** Wheel by its rim. */
        RIM("rim"),
        /** Wheel turns on its taper. */
        SLIP("slip"),
        /** Oil between rod and crankpin. */
        FILM("oil film"),
        /** Worn or set past what a part is mended or replaced at, at any speed. */
        WEAR("wear and fit"),
        /** What holds the speed: limiter and idle. */
        HELD("what holds the speed"),
        /** A figure the trade goes by. */
        TRADE("trade's figure");

        private final String label;

        Kind(String label) {
            this.label = label;
        }

        public String key() {
            return name().toLowerCase(java.util.Locale.ROOT);
        }

        public String label() {
            return label;
        }
    }

    /** What passing it means. */
    public enum Weight {
        /** The speed is refused. */
        REFUSES,
        /** The speed is not approved: the sum is on the safe side or the trade's figure is not sure enough to refuse by. */
        HOLDS_BACK,
        /** It is said, and decides nothing. */
        TELLS;

        public String key() {
            return name().toLowerCase(java.util.Locale.ROOT);
        }
    }

    /** How it stands at the speed asked for. */
    public enum State {
        /** Surely holds. */
        HOLDS("holds"),
        /** Cannot be told: neither surely held nor surely passed. */
        NEAR("near"),
        /** Surely passed by; not called so, for a test that is passed is a good thing. */
        EXCEEDED("exceeded"),
        /** Something is missing. */
        UNKNOWN("unknown"),
        /** A maker's rating covers it, whatever the sum says or lacks. */
        COVERED("covered by its maker"),
        /** Known, and there is no speed to hold it against. */
        NOT_ASKED("no speed asked for");

        private final String label;

        State(String label) {
            this.label = label;
        }

        public String key() {
            return name().toLowerCase(java.util.Locale.ROOT);
        }

        public String label() {
            return label;
        }
    }

    /**
     * Something a rung cannot do without.
     * @param where place in the build file; empty when it is no entry of one
     * @param what  it is, for people
     * @param how   to read it, or whom to ask
     * @param minutes it takes; 0 for a word or a question
     */
    public record Missing(String where, String what, String how, double minutes) {}

    /** The same, covered by a maker's word. */
    public Rung covered(String byWhom) {
        String said = state == State.UNKNOWN
                ? "not reckoned: " + why
                : state == State.NEAR || state == State.EXCEEDED
                        ? "by the sum alone " + state.label() + ": " + why
                        : why;
        return new Rung(
                key,
                label,
                part,
                kind,
                weight,
                speed,
                State.COVERED,
                probability,
                hangsOn,
                from,
                source,
                List.of(),
                byWhom + " covers it; " + said,
                "");
    }

    /** The same seen otherwise, where the sum behind it is a bound or a guess. */
    public Rung seenAs(State seen, Weight means, String said, String mend) {
        return new Rung(
                key, label, part, kind, means, speed, seen, probability, hangsOn, from, source, missing, said, mend);
    }

    /**
     * The same by something else that was read too.
     * @param at     speed at which it gives up then
     * @param places of the build file that it rests on besides
     */
    public Rung by(List<String> places, Optional<Measured> at, String said) {
        return new Rung(
                key,
                label,
                part,
                kind,
                weight,
                at,
                state,
                probability,
                and(hangsOn, places),
                and(from, places),
                source,
                missing,
                said,
                unlock);
    }

    private static List<String> and(List<String> some, List<String> more) {
        return Stream.concat(some.stream(), more.stream()).distinct().toList();
    }

    /** Whether it keeps the speed asked for from being approved. */
    public boolean isInTheWay() {
        return weight != Weight.TELLS && (state == State.NEAR || state == State.EXCEEDED || state == State.UNKNOWN);
    }

    /** Whether it is passed and passing it is refused. */
    public boolean isRefused() {
        return weight == Weight.REFUSES && state == State.EXCEEDED;
    }
}
