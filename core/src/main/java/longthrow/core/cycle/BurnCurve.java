package longthrow.core.cycle;

import longthrow.core.quantity.Require;

/**
 * Share of the charge burned by crank angle: x = 1 - exp(-a y^(m + 1)), where y runs from 0 at the start to 1 at the end. I. Wiebe (1956, 1970), as in Heywood (1988),
 * eq. 9.31. At the end exp(-a) is left unburned and stays so: 0.1 % with {@link #THOROUGH}, 0.7 % with a = 5.
 * @param thoroughness a, above 0
 * @param form         m, above -1: how late the burning is within its time; below 0 the rate at the start has no bound
 * @param start        crank angle where it begins [rad]
 * @param duration     from start to end [rad], above 0
 */
public record BurnCurve(double thoroughness, double form, double start, double duration) {
    /** a by which 99.9 % is burned at the end: ln 1000, printed as 6.908 in the books. */
    public static final double THOROUGH = 6.908;

    /** -ln(1 - x) where a tenth and where nine tenths are burned. */
    private static final double TENTH = -Math.log1p(-0.1);

    private static final double NINE_TENTHS = -Math.log1p(-0.9);

    public BurnCurve {
        Require.positive("thoroughness a of the burn curve", thoroughness);
        if (!(form > -1 && Double.isFinite(form))) {
            throw new IllegalArgumentException("form m of the burn curve is " + form + "; it must be above -1");
        }
        Require.finite("start of burning [rad]", start);
        Require.positive("duration of burning [rad]", duration);
    }

    /**
     * The curve that begins at the spark and passes a tenth and nine tenths where told; its form follows:
     * m + 1 = ln(ln(1/0.9) / ln 10) / ln(development / (development + rapid)).
     * @param spark       [rad]
     * @param development from the spark until a tenth is burned [rad], above 0
     * @param rapid       from a tenth to nine tenths [rad], above 0
     */
    public static BurnCurve fromSpark(double spark, double development, double rapid) {
        Require.positive("flame development angle [rad]", development);
        Require.positive("rapid burning angle [rad]", rapid);
        double power = Math.log(TENTH / NINE_TENTHS) / Math.log(development / (development + rapid));
        double duration = development / Math.pow(TENTH / THOROUGH, 1 / power);
        return new BurnCurve(THOROUGH, power - 1, spark, duration);
    }

    /**
     * The curve of a given form that passes a tenth and nine tenths where told; its start follows and need not be the spark.
     * @param tenth crank angle where a tenth is burned [rad]
     * @param rapid from there to nine tenths [rad], above 0
     */
    public static BurnCurve ofForm(double thoroughness, double form, double tenth, double rapid) {
        Require.positive("rapid burning angle [rad]", rapid);
        BurnCurve unit = new BurnCurve(thoroughness, form, 0, 1);
        double early = Math.pow(TENTH / thoroughness, 1 / (form + 1));
        double late = Math.pow(NINE_TENTHS / thoroughness, 1 / (form + 1));
        double duration = rapid / (late - early);
        return new BurnCurve(unit.thoroughness, unit.form, tenth - early * duration, duration);
    }

    /** Share burned, 0 to 1 - exp(-a); flat before the start and after the end. */
    public double share(double theta) {
        double y = (theta - start) / duration;
        if (y <= 0) {
            return 0;
        }
        double shown = Math.min(y, 1);
        return -Math.expm1(-thoroughness * Math.pow(shown, form + 1));
    }

    /** Slope of the share [1/rad]; 0 before the start and after the end. */
    public double rate(double theta) {
        double y = (theta - start) / duration;
        if (y <= 0 || y > 1) {
            return 0;
        }
        double power = Math.pow(y, form);
        return thoroughness * (form + 1) / duration * power * Math.exp(-thoroughness * power * y);
    }

    /**
     * Crank angle where a share is burned [rad].
     * @param share 0 to 1 - exp(-a)
     */
    public double angle(double share) {
        Require.within("share burned", share, 0, burnedAtEnd());
        return start + duration * Math.pow(-Math.log1p(-share) / thoroughness, 1 / (form + 1));
    }

    /** Share burned at the end, 1 - exp(-a). */
    public double burnedAtEnd() {
        return -Math.expm1(-thoroughness);
    }

    /** Crank angle where most burns in an angle [rad]: y^(m + 1) = m / (a (m + 1)), not before the start (m of 0 or less) nor after the end. */
    public double fastest() {
        double y = form <= 0 ? 0 : Math.pow(form / (thoroughness * (form + 1)), 1 / (form + 1));
        return start + duration * Math.min(y, 1);
    }

    /** Crank angle where it ends [rad]. */
    public double end() {
        return start + duration;
    }
}
