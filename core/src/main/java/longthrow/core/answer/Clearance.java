package longthrow.core.answer;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import longthrow.core.measurement.Measured;

/**
 * Whether two parts of an engine touch through two turns.
 * @param key       stable
 * @param one       part, for people
 * @param other     what it passes
 * @param state     how they stand to each other
 * @param cold      least gap as drawn, at 20 °C; empty when it cannot be said
 * @param running   least gap warm, at the wanted speed, with bearings taken up the worst way; empty when it cannot be said
 * @param limits    what the trade wants there, all of it; empty where it states nothing
 * @param removal   what would have to come off where a limit is not surely kept
 * @param phases    least cold gap with the camshaft early or late; empty where it plays no part
 * @param curve     cold gap against the crank angle; empty where it is not of the plane
 * @param warmCurve the same running, at the best estimates; empty where the running gap cannot be said
 * @param hangsOn   places in the build file that it was asked of
 * @param from      entries that the figures behind it rest on
 * @param missing   what would have to be read or asked for the cold gap; empty when it is known, and where only mocking up tells
 * @param notWarm   what would have to be read for the running gap
 * @param mocked    what the mock-up told of them, in the order of the file; empty where nothing was mocked up
 * @param how       it is read when the engine is mocked up
 * @param why       how it stands, in words
 * @param mend      what would mend it; empty when it clears
 * @param hold      whether the engine may be run with it as it is known
 */
public record Clearance(
        String key,
        String one,
        String other,
        State state,
        Optional<Gap> cold,
        Optional<Gap> running,
        List<Limit> limits,
        Optional<Removal> removal,
        List<AtPhase> phases,
        List<AtAngle> curve,
        List<AtAngle> warmCurve,
        List<String> hangsOn,
        List<String> from,
        List<Rung.Missing> missing,
        List<Rung.Missing> notWarm,
        List<Mocked> mocked,
        String how,
        String why,
        String mend,
        Hold hold) {
    public Clearance {
        limits = List.copyOf(limits);
        phases = List.copyOf(phases);
        curve = List.copyOf(curve);
        warmCurve = List.copyOf(warmCurve);
        hangsOn = List.copyOf(hangsOn);
        from = List.copyOf(from);
        missing = List.copyOf(missing);
        notWarm = List.copyOf(notWarm);
        mocked = List.copyOf(mocked);
        if ((state == State.UNKNOWN) != cold.isEmpty()) {
            throw new IllegalArgumentException(key + " is " + state + (cold.isEmpty() ? " without" : " with")
                    + " a gap; a pair is unknown when no gap is known, and then only");
        }
    }

    /** The same with what the mock-up told, and a word on it behind the others. */
    public Clearance withMocked(List<Mocked> told, String said) {
        return copy(state, told, said.isEmpty() ? why : why + "; " + said, mend, removal, hold);
    }

    /** The same in another state. */
    public Clearance withState(State other) {
        return copy(other, mocked, why, mend, removal, hold);
    }

    /** The same to be mended in another way, without an amount. */
    public Clearance withMend(String other) {
        return copy(state, mocked, why, other, Optional.empty(), hold);
    }

    /** The same holding a run back, or not. */
    public Clearance withHold(Hold other) {
        return copy(state, mocked, why, mend, removal, other);
    }

    /** Whether room was shown to be missing, surely or perhaps: of what keeps every source that decides, or of which no gap was read, only the reading is too poor. */
    public boolean isRoomDoubtful() {
        return limits.stream().anyMatch(limit -> limit.decides() && limit.state() != Verdict.State.MEETS);
    }

    /** Whether every source that decides is surely not satisfied. */
    public boolean isUnderEverySource() {
        return limits.stream().anyMatch(Limit::decides)
                && limits.stream().filter(Limit::decides).allMatch(limit -> limit.state() == Verdict.State.FAILS);
    }

    private Clearance copy(
            State now, List<Mocked> told, String because, String way, Optional<Removal> off, Hold holding) {
        return new Clearance(
                key, one, other, now, cold, running, limits, off, phases, curve, warmCurve, hangsOn, from, missing,
                notWarm, told, how, because, way, holding);
    }

    /** Whether an engine may be run with two parts as they are known to stand: nothing is approved past a pair that holds it back. */
    public enum Hold {
        /** They clear, or nothing is known and the maker vouches for the engine as he made it. */
        NOTHING("nothing"),
        /**
         * Not known, of an engine that for all that is known is as its maker made it: past his speed, while nobody says whose throw it is, or with one figure left out of
         * those that would tell, he does not vouch for it.
         */
        UNVOUCHED_RUN("a run its maker does not vouch for"),
        /** They touch or may, come closer than any source allows, or are not known of an engine that is not as its maker made it. */
        ANY_RUN("any run");

        private final String label;

        Hold(String label) {
            this.label = label;
        }

        public String key() {
            return name().toLowerCase(java.util.Locale.ROOT);
        }

        public String label() {
            return label;
        }
    }

    /** How two parts stand to each other, gravest first after the unknown. */
    public enum State {
        /** Something is missing. */
        UNKNOWN("unknown until mocked up"),
        /** They surely touch. */
        TOUCHES("touches"),
        /** They do not surely stay apart: at the worst of what is known they touch. */
        MAY_TOUCH("may touch"),
        /** They stay apart, and not surely by all that every source wants. */
        CLOSE("close"),
        /** Cold they keep what every source wants; what is left running is not known. */
        CLEARS_COLD("clears cold, running not known"),
        /** They keep what every source wants, and stay apart running. */
        CLEARS("clears");

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

    /** Which way two parts stay apart. */
    public enum Way {
        /** In the plane the rod swings in. */
        IN_PLANE,
        /** Along the crankshaft: one passes beside the other. */
        BESIDE,
        /** Along the line in which one moves: a travel left. */
        TRAVEL,
        /** As a gap of it was read, of which the rest can only be less. */
        READ,
        /** As it was read when the engine was mocked up. */
        MOCKED_UP,
        /** As {@link #MOCKED_UP}, where the mock-up told only that they stay apart by at least so much. */
        AT_LEAST;

        public String key() {
            return name().toLowerCase(java.util.Locale.ROOT);
        }
    }

    /**
     * A least gap with its doubt. Below 0 it is minus the depth to which one lies inside the other.
     * @param value   at the best estimates [m]
     * @param low     lower end of the 95 % interval [m]
     * @param high    upper end [m]
     * @param worst   with each figure behind it at the end of its 95 % range, a tolerance at its limit, on the side that closes it [m]
     * @param angle   of the crank [rad], 0 firing top dead centre, up to two turns; as drawn where a mock-up read none; NaN where no angle decides
     * @param contact probability that they touch, 0 to 1
     * @param way     which way they stay apart
     * @param place   nearest points; empty where it is not of the plane
     * @param shares  who owns the doubt, largest first
     */
    public record Gap(
            double value,
            double low,
            double high,
            double worst,
            double angle,
            double contact,
            Way way,
            Optional<Place> place,
            List<Measured.Share> shares) {
        public Gap {
            shares = List.copyOf(shares);
        }

        /** The same that may be so large. */
        public Gap withHigh(double other) {
            return new Gap(value, low, other, worst, angle, contact, way, place, shares);
        }
    }

    /**
     * Where they are nearest [m]: crank axis at 0, up along the cylinder, across towards the anti-thrust side.
     * @param acrossOne   of the first part
     * @param upOne       of the first part
     * @param acrossOther of the other
     * @param upOther     of the other
     */
    public record Place(double acrossOne, double upOne, double acrossOther, double upOther) {}

    /**
     * A gap that the trade wants.
     * @param key    of rule or mock-up gap and alternative
     * @param label  for people
     * @param least  wanted [m]
     * @param keeps  probability that the cold gap is not less, 0 to 1
     * @param state  the verdict by it
     * @param decides whether it counts: the owner chose it, or chose none and there may be others
     * @param source where it comes from
     */
    public record Limit(
            String key,
            String label,
            double least,
            double keeps,
            Verdict.State state,
            boolean decides,
            String source) {}

    /**
     * What has to come off so that every limit is kept.
     * @param what   is to be cut, or changed instead
     * @param at     at the best estimates [m]
     * @param surely so that it is kept with 95 in 100 [m]
     * @param leaves what is left of the part behind the cut at the sure amount [m]; empty when it is not known
     * @param shaped part that is cut to an outline, see {@code ReliefCut}; empty where none is
     */
    public record Removal(String what, double at, double surely, Optional<Double> leaves, String shaped) {}

    /**
     * One entry of the mock-up.
     * @param place  in the build file
     * @param way    it was read, for people
     * @param read   as it was written
     * @param counts whether the cold gap is this one
     * @param said   how it stands against the drawing, or why it tells no more
     */
    public record Mocked(String place, String way, String read, boolean counts, String said) {}

    /**
     * Least gap with the camshaft out of time.
     * @param later than read [rad of crank]; earlier where negative
     * @param gap   [m]
     * @param teeth by which its gear is out, later positive; 0 where the angle is no whole tooth's
     */
    public record AtPhase(double later, double gap, int teeth) {
        /** In a few words. */
        public String said() {
            String angle = String.format(Locale.ROOT, "%+.0f°", Math.toDegrees(later));
            String by = teeth == 0 ? angle : "one tooth " + (teeth > 0 ? "late" : "early") + " (" + angle + ")";
            return by + String.format(Locale.ROOT, " %.2f mm", 1e3 * gap + 0.0);
        }
    }

    /** Gap [m] at a crank angle [rad]. */
    public record AtAngle(double angle, double gap) {}
}
