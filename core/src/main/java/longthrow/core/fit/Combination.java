package longthrow.core.fit;

import longthrow.core.answer.Sureness;

/**
 * One crankshaft, piston, rod and gasket that fit, by their rows.
 * @param sureness worst of all its dimensions
 * @param bySizes   whether every size as stated keeps its window, tolerances aside
 * @param unknowns  what its parts do not say
 * @param unsaid    of those, sizes that a limit or a neighbour asks for
 * @param cuts      machine operations it needs
 * @param price     of parts and operations, whole hundredths; of what is priced
 * @param deckHalf  deck clearance in half picometres
 * @param squishHalf squish in half picometres
 * @param ratio     static compression ratio; NaN where a volume is not known
 */
public record Combination(
        int crank,
        int piston,
        int rod,
        int gasket,
        Sureness sureness,
        boolean bySizes,
        int unknowns,
        int unsaid,
        int cuts,
        long price,
        long deckHalf,
        long squishHalf,
        double ratio) {}
