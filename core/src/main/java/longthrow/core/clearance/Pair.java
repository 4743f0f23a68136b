package longthrow.core.clearance;

/**
 * Two bodies that must not touch, in one condition of the engine. Cold and running, rocked one way and the other, are pairs of their own: with outlines grown, a
 * rod stretched in the {@link longthrow.core.motion.CrankMotion}, a piston rocked, end play added to the depths, and the play of the bearings here.
 * @param one   the body that relief is cut into where it is wanted
 * @param other moves past it
 * @param play  by how much bearings let the two come closer than drawn, taken up the worst way at every angle [m]. It is what the centres may be
 *              displaced together: for a shaft in its bearing half the diametral clearance. Where outlines are larger or smaller all round than they are
 *              drawn, so much more or less; it may be negative then
 */
public record Pair(Body one, Body other, double play) {
    public Pair {
        if (!Double.isFinite(play)) {
            throw new IllegalArgumentException("the play between '" + one.name() + "' and '" + other.name() + "' is "
                    + play + " m; it must be a finite number, in metres");
        }
    }

    /** Without play. */
    public static Pair of(Body one, Body other) {
        return new Pair(one, other, 0);
    }

    /** Whether the two are somewhere at one depth along the crank axis; if not they cannot touch. */
    public boolean sharesDepth() {
        return one.depth().isShared(other.depth());
    }

    /** The two the other way round, for relief cut into the other. */
    public Pair swapped() {
        return new Pair(other, one, play);
    }
}
