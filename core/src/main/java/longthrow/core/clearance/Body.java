package longthrow.core.clearance;

import java.util.ArrayList;
import java.util.List;

/**
 * One part, or one section of a part along the crank axis.
 * @param name     as its owner calls it
 * @param outlines one or more, in the frame of the motion; the body is all of them together
 * @param depth    where it is along the crank axis
 * @param motion   how its frame moves
 */
public record Body(String name, List<Outline> outlines, Depth depth, Motion motion) {
    public Body {
        outlines = List.copyOf(outlines);
        if (outlines.isEmpty()) {
            throw new IllegalArgumentException("body '" + name + "' has no outline; give at least one");
        }
    }

    /** With one outline. */
    public static Body of(String name, Outline outline, Depth depth, Motion motion) {
        return new Body(name, List.of(outline), depth, motion);
    }

    /**
     * Interval along the crank axis [m], either way from any datum that all bodies of an engine share.
     * @param from lower end
     * @param to   not below it; infinite ends are a body that reaches all through
     */
    public record Depth(double from, double to) {
        public Depth {
            if (!(from <= to)) {
                throw new IllegalArgumentException("a body reaches along the crank axis from " + from + " to " + to
                        + " m; give two numbers, the lower one first");
            }
        }

        /** All along the crank axis. */
        public static Depth throughout() {
            return new Depth(Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY);
        }

        /**
         * As far as end play may carry it.
         * @param play to either side, 0 or more [m]
         */
        public Depth widened(double play) {
            if (!(play >= 0)) {
                throw new IllegalArgumentException("end play is " + play + " m to either side; it must be 0 or more");
            }
            return new Depth(from - play, to + play);
        }

        /** Whether both are somewhere at one depth; two that just meet are. */
        public boolean isShared(Depth other) {
            return from <= other.to && other.from <= to;
        }
    }

    /** As warm as this: grown about the origin of its frame by a share, see {@link Outline#grown}. */
    public Body grown(double strain) {
        List<Outline> grown = new ArrayList<>();
        outlines.forEach(outline -> grown.add(outline.grown(strain)));
        return new Body(name, grown, depth, motion);
    }

    /** With end play to either side. */
    public Body withEndPlay(double play) {
        return new Body(name, outlines, depth.widened(play), motion);
    }

    /** Moving otherwise. */
    public Body moving(Motion other) {
        return new Body(name, outlines, depth, other);
    }
}
