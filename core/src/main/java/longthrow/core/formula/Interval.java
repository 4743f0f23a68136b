package longthrow.core.formula;

/**
 * All numbers from {@code lo} to {@code hi}, both included. Arithmetic rounds outward: the result holds every value the
 * operation can give for numbers taken from the operands (Moore, Kearfott &amp; Cloud, Introduction to Interval Analysis,
 * SIAM 2009, ch. 2; from memory). An end that is computed without error is not widened.
 *
 * @param lo lower end, may be minus infinity
 * @param hi upper end, may be plus infinity, &gt;= lo
 */
public record Interval(double lo, double hi) {
    /** Every number. */
    public static final Interval WHOLE = new Interval(Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY);

    static final Interval ZERO = new Interval(0, 0);
    static final Interval ONE = new Interval(1, 1);
    static final Interval ZERO_TO_ONE = new Interval(0, 1);
    static final Interval ONE_OR_MINUS_ONE = new Interval(-1, 1);

    /** Below this magnitude the exactness tests by remainder are not trusted, since the remainder may underflow. */
    private static final double REMAINDER_TRUSTED_ABOVE = 0x1p-900;

    /** Beyond this magnitude the position of an angle within its turn is not worth resolving. */
    private static final double LARGEST_ANGLE = 1e8;

    public Interval {
        if (!(lo <= hi) || lo == Double.POSITIVE_INFINITY || hi == Double.NEGATIVE_INFINITY) {
            throw new IllegalArgumentException("an interval from " + lo + " to " + hi
                    + " holds no number; give the lower end first, both ends numbers");
        }
    }

    /** The interval that holds just this number. */
    public static Interval point(double value) {
        return new Interval(value, value);
    }

    /** From value - halfWidth to value + halfWidth, rounded outward. */
    public static Interval around(double value, double halfWidth) {
        return point(value).plus(new Interval(-halfWidth, halfWidth));
    }

    public boolean contains(double value) {
        return lo <= value && value <= hi;
    }

    public boolean contains(Interval other) {
        return lo <= other.lo && other.hi <= hi;
    }

    public boolean isPoint() {
        return lo == hi;
    }

    public boolean isBounded() {
        return lo > Double.NEGATIVE_INFINITY && hi < Double.POSITIVE_INFINITY;
    }

    /** hi - lo, rounded up. */
    public double width() {
        return isPoint() ? 0 : Math.nextUp(hi - lo);
    }

    /** A number about the middle; the finite end or zero if the interval is unbounded. */
    public double middle() {
        if (!isBounded()) {
            return contains(0) ? 0 : (lo > 0 ? lo : hi);
        }
        double middle = lo / 2 + hi / 2;
        return Math.min(hi, Math.max(lo, middle));
    }

    /** The smallest interval that holds both. */
    public Interval hull(Interval other) {
        return new Interval(Math.min(lo, other.lo), Math.max(hi, other.hi));
    }

    public Interval plus(Interval other) {
        return new Interval(sumDown(lo, other.lo), sumUp(hi, other.hi));
    }

    public Interval minus(Interval other) {
        return new Interval(sumDown(lo, -other.hi), sumUp(hi, -other.lo));
    }

    public Interval negated() {
        return new Interval(0 - hi, 0 - lo);
    }

    public Interval times(Interval other) {
        double low = Math.min(
                Math.min(productDown(lo, other.lo), productDown(lo, other.hi)),
                Math.min(productDown(hi, other.lo), productDown(hi, other.hi)));
        double high = Math.max(
                Math.max(productUp(lo, other.lo), productUp(lo, other.hi)),
                Math.max(productUp(hi, other.lo), productUp(hi, other.hi)));
        return new Interval(low, high);
    }

    /**
     * This / other. Where {@code other} touches zero the quotient has no bound on that side; where it holds zero inside,
     * or is zero, nothing is known: {@link #WHOLE}.
     */
    public Interval dividedBy(Interval other) {
        if ((other.lo < 0 && other.hi > 0) || (other.lo == 0 && other.hi == 0)) {
            return WHOLE;
        }
        if (other.hi <= 0) {
            return negated().dividedBy(other.negated());
        }
        // other >= 0 from here: the quotient rises with the numerator and moves toward zero as the divisor grows
        double low = lo >= 0 ? quotientDown(lo, other.hi) : quotientDown(lo, other.lo);
        double high = hi <= 0 ? quotientUp(hi, other.hi) : quotientUp(hi, other.lo);
        return new Interval(low, high);
    }

    public Interval squared() {
        Interval size = absolute();
        return new Interval(Math.max(0, productDown(size.lo, size.lo)), productUp(size.hi, size.hi));
    }

    public Interval absolute() {
        if (lo >= 0) {
            return this;
        }
        return hi <= 0 ? negated() : new Interval(0, Math.max(-lo, hi));
    }

    public Interval min(Interval other) {
        return new Interval(Math.min(lo, other.lo), Math.min(hi, other.hi));
    }

    public Interval max(Interval other) {
        return new Interval(Math.max(lo, other.lo), Math.max(hi, other.hi));
    }

    /**
     * Square root.
     *
     * @throws OutsideDomainException if the interval holds negative numbers
     */
    public Interval squareRoot() {
        if (lo < 0) {
            throw new OutsideDomainException("the square root", this, "0 or more");
        }
        double low = Math.sqrt(lo);
        double high = Math.sqrt(hi);
        boolean lowExact = lo == 0 || (lo > REMAINDER_TRUSTED_ABOVE && Math.fma(low, low, -lo) == 0);
        boolean highExact =
                hi == 0 || !Double.isFinite(hi) || (hi > REMAINDER_TRUSTED_ABOVE && Math.fma(high, high, -hi) == 0);
        return new Interval(lowExact ? low : Math.max(0, Math.nextDown(low)), highExact ? high : Math.nextUp(high));
    }

    /** e to the power; at most 1 unit in the last place off by the promise of {@link Math#exp}, widened by 2. */
    public Interval exponential() {
        double low = lo == 0 ? 1 : Math.max(0, lower(Math.exp(lo)));
        return new Interval(low, hi == 0 ? 1 : upper(Math.exp(hi)));
    }

    /**
     * Natural logarithm; no lower bound where the interval touches zero.
     *
     * @throws OutsideDomainException if the interval holds negative numbers or is zero
     */
    public Interval logarithm() {
        if (lo < 0 || hi == 0) {
            throw new OutsideDomainException("the logarithm", this, "more than 0");
        }
        return new Interval(lo == 1 ? 0 : lower(Math.log(lo)), hi == 1 ? 0 : upper(Math.log(hi)));
    }

    public Interval sine() {
        return wave(Math.PI / 2, Math.sin(lo), Math.sin(hi));
    }

    public Interval cosine() {
        return wave(0, Math.cos(lo), Math.cos(hi));
    }

    /**
     * Inverse sine [rad].
     *
     * @throws OutsideDomainException if the interval reaches beyond -1 or 1
     */
    public Interval arcSine() {
        if (lo < -1 || hi > 1) {
            throw new OutsideDomainException("the inverse sine", this, "-1 to 1");
        }
        return new Interval(lower(Math.asin(lo)), upper(Math.asin(hi)));
    }

    public Interval arcTangent() {
        return new Interval(lower(Math.atan(lo)), upper(Math.atan(hi)));
    }

    /**
     * To a constant power. A negative power of an interval that holds zero is unbounded as in {@link #dividedBy}.
     *
     * @throws OutsideDomainException if the power is not whole and the interval holds negative numbers
     */
    public Interval power(double exponent) {
        if (exponent == 0) {
            return ONE;
        }
        if (exponent < 0) {
            return ONE.dividedBy(power(-exponent));
        }
        if (exponent == 1) {
            return this;
        }
        boolean whole = exponent == Math.rint(exponent);
        if (lo < 0 && !whole) {
            throw new OutsideDomainException("the power " + exponent, this, "0 or more");
        }
        boolean even = whole && exponent % 2 == 0;
        if (lo < 0 && even) {
            return absolute().power(exponent);
        }
        double low = lo == 0 ? 0 : lower(Math.pow(lo, exponent));
        return new Interval(lo > 0 ? Math.max(0, low) : low, hi == 0 ? 0 : upper(Math.pow(hi, exponent)));
    }

    /** A wave of amplitude 1 with crests at {@code crest} + 2 pi k, given its values at the two ends. */
    private Interval wave(double crest, double atLow, double atHigh) {
        if (!(Math.abs(lo) <= LARGEST_ANGLE && Math.abs(hi) <= LARGEST_ANGLE)) {
            return ONE_OR_MINUS_ONE;
        }
        double high = holdsTurn(crest) ? 1 : Math.min(1, upper(Math.max(atLow, atHigh)));
        double low = holdsTurn(crest + Math.PI) ? -1 : Math.max(-1, lower(Math.min(atLow, atHigh)));
        return new Interval(low, high);
    }

    /** Whether angle + 2 pi k lies within, in doubt yes: a turn counts as held within 1e-12 turns beside the ends. */
    private boolean holdsTurn(double angle) {
        double slack = 1e-12 * (1 + Math.max(Math.abs(lo), Math.abs(hi)));
        double first = Math.ceil((lo - angle) / (2 * Math.PI) - slack);
        return first <= (hi - angle) / (2 * Math.PI) + slack;
    }

    /** Two units in the last place down: library functions are promised to 1. */
    private static double lower(double value) {
        return Math.nextDown(Math.nextDown(value));
    }

    private static double upper(double value) {
        return Math.nextUp(Math.nextUp(value));
    }

    /** The exact rounding error of a + b is found by Knuth's two-sum; zero means the sum is the sum. */
    private static boolean sumIsExact(double a, double b, double sum) {
        double bRounded = sum - a;
        return (a - (sum - bRounded)) + (b - bRounded) == 0;
    }

    private static double sumDown(double a, double b) {
        double sum = a + b;
        return sumIsExact(a, b, sum) || sum == Double.NEGATIVE_INFINITY ? sum : Math.nextDown(sum);
    }

    private static double sumUp(double a, double b) {
        double sum = a + b;
        return sumIsExact(a, b, sum) || sum == Double.POSITIVE_INFINITY ? sum : Math.nextUp(sum);
    }

    private static boolean productIsExact(double a, double b, double product) {
        return Math.abs(product) > REMAINDER_TRUSTED_ABOVE && Double.isFinite(product) && Math.fma(a, b, -product) == 0;
    }

    /** Zero times unbounded is zero: the bound is a limit, never a value taken. */
    private static double productDown(double a, double b) {
        if (a == 0 || b == 0) {
            return 0;
        }
        double product = a * b;
        boolean infinite = Double.isInfinite(a) || Double.isInfinite(b);
        return infinite || productIsExact(a, b, product) ? product : Math.nextDown(product);
    }

    private static double productUp(double a, double b) {
        return -productDown(-a, b) + 0.0;
    }

    /** a / b where either a >= 0 and b > 0, b perhaps infinite, or a < 0 and b >= 0, b finite. */
    private static double quotientDown(double a, double b) {
        if (a == 0 || b == Double.POSITIVE_INFINITY) {
            return 0;
        }
        if (b == 0 || Double.isInfinite(a)) {
            return Double.NEGATIVE_INFINITY;
        }
        double quotient = a / b;
        boolean exact = Math.abs(quotient) > REMAINDER_TRUSTED_ABOVE
                && Math.abs(a) > REMAINDER_TRUSTED_ABOVE
                && Double.isFinite(quotient)
                && Math.fma(quotient, b, -a) == 0;
        return exact ? quotient : Math.nextDown(quotient);
    }

    private static double quotientUp(double a, double b) {
        return -quotientDown(-a, b) + 0.0;
    }
}
