package longthrow.core.measure;

import longthrow.core.measurement.Measured;

/** How an engine is said to lack a part that others have: its reach is entered as 0. */
public final class NoSuchPart {
    /** No part reaches less [m]; what a tool is off by turns a 0 that was read into some thousandths of a millimetre. A judgement. */
    private static final double LEAST_REACH = 0.1e-3;

    private NoSuchPart() {}

    /** Whether such a reach says that there is none. */
    public static boolean isSaidBy(Measured reach) {
        return Math.abs(reach.value()) < LEAST_REACH;
    }
}
