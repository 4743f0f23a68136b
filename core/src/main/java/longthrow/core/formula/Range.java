package longthrow.core.formula;

/**
 * The values a formula takes over a box of inputs.
 *
 * @param interval holds every value taken; rounded outward
 * @param attained from a value that is taken to another that is taken, and so, the formula being continuous, every value
 *                 between; the truth lies between this and {@code interval}
 * @param quality  whether {@code interval} is the range itself or may be wider
 */
public record Range(Interval interval, Interval attained, Quality quality) {
    /** How close {@link Range#interval} is to the truth. */
    public enum Quality {
        /** Both ends are values that are taken, exact up to outward rounding of the last digits. */
        EXACT,
        /** Sound, perhaps wider than the truth: an end lies inside the box, or the search for it was cut short. */
        ENCLOSURE
    }

    /** How much wider {@link #interval} may be than the truth, in the units of the result; infinite if unbounded. */
    public double excess() {
        return (attained.lo() - interval.lo()) + (interval.hi() - attained.hi());
    }
}
