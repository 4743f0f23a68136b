package longthrow.core.cycle;

/**
 * Heat from the gas in the cylinder into its walls, by one of three published formulas; each is one number for the whole wall.
 *
 * <p>The usual one here is {@link Hohenberg}. None was made for small air-cooled engines with spark, and no comparison on one could be read (those of Annand and Woschni are the most used in
 * research: T. De Cuyper and others, Applied Thermal Engineering 118 (2017) 561, abstract read). Over the three closed cycles of the reference values (3600 to 6000 rpm, full
 * throttle) Woschni gives 0.95 to 1.06 of Hohenberg's heat, Annand with a = 0.35 1.00 to 1.03, with a = 0.49 1.36 to 1.40: Hohenberg is in the middle, and alone was made from engines of several sizes. What lies between them is the doubt: {@link #DOUBT}.
 */
public sealed interface WallHeat permits Woschni, Annand, Hohenberg {
    /**
     * Relative standard uncertainty of the heat of a whole cycle: a rectangle from the least of the three to the largest has 0.13 of the middle one; with it 0.15 for what is not alike in all three, the size and
     * the cooling of the engines they came from (judgement).
     */
    double DOUBT = 0.20;

    /** Heat transfer coefficient now [W/(m2 K)]: heat flux over gas temperature less wall temperature. */
    double coefficient(GasAtWall gas);

    /**
     * The one taken where none is asked for, see above.
     * @param pistonSpeed mean, [m/s], above 0
     */
    static WallHeat usual(double pistonSpeed) {
        return new Hohenberg(pistonSpeed);
    }
}
