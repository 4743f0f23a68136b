package longthrow.core.life;

import longthrow.core.formula.Expression;

/**
 * A plain bearing under steady load, in the terms of the handbooks. Budynas and Nisbett, Shigley's Mechanical Engineering Design, sections 12-3 and
 * 12-6; from memory. Coherent SI; turns are radians over 2 pi.
 * @param radius    of the journal [m]
 * @param length    of the bearing [m]
 * @param clearance radial: half the diametral one [m]
 * @param viscosity dynamic [Pa s]
 * @param speed     of the journal [rad/s]
 */
public record JournalBearing(
        Expression radius, Expression length, Expression clearance, Expression viscosity, Expression speed) {
    private Expression turns() {
        return speed.dividedBy(2 * Math.PI);
    }

    private Expression slackness() {
        return radius.dividedBy(clearance);
    }

    /** Load over projected area [Pa]. */
    public Expression pressure(Expression load) {
        return load.dividedBy(radius.times(length).times(2));
    }

    /** Sommerfeld's number (r/c)2 mu N / P, N in turns a second. */
    public Expression sommerfeld(Expression pressure) {
        return slackness().squared().times(viscosity).times(turns()).dividedBy(pressure);
    }

    /** Viscosity that gives a Sommerfeld number [Pa s]. */
    public static Expression viscosityFor(
            Expression sommerfeld, Expression pressure, Expression slackness, Expression turnsPerSecond) {
        return sommerfeld.times(pressure).dividedBy(slackness.squared().times(turnsPerSecond));
    }

    /** Friction coefficient of a journal that runs in the middle: Petroff, 2 pi2 mu N / P r / c. For light loads. */
    public Expression petroff(Expression pressure) {
        return viscosity
                .times(turns())
                .times(slackness())
                .times(2 * Math.PI * Math.PI)
                .dividedBy(pressure);
    }

    /** Torque of a friction coefficient [N m]. */
    public Expression frictionTorque(Expression coefficient, Expression load) {
        return coefficient.times(load).times(radius);
    }

    /**
     * Load that a short bearing bears at an eccentricity, the film torn where it would pull: Ocvirk, NACA TN 2808 (1952); Hamrock, Fundamentals of
     * Fluid Film Lubrication, chapter 10. Good for lengths up to the radius, and not bad up to the diameter.
     * @param eccentricity share of the clearance, 0 to below 1
     */
    public Expression shortLoad(Expression eccentricity) {
        Expression square = eccentricity.squared();
        Expression open = Expression.constant(1).minus(square);
        Expression shape = eccentricity
                .dividedBy(open.squared())
                .times(open.times(Math.PI * Math.PI).plus(square.times(16)).squareRoot());
        return viscosity
                .times(speed)
                .times(radius)
                .times(length.power(3))
                .dividedBy(clearance.squared().times(4))
                .times(shape);
    }

    /** Angle between load and the line through both centres, short bearing [rad]. */
    public static Expression shortAttitude(Expression eccentricity) {
        Expression open = Expression.constant(1).minus(eccentricity.squared()).squareRoot();
        return open.times(Math.PI / 4).dividedBy(eccentricity).arcTangent();
    }

    /** Smallest film [m]. */
    public Expression smallestFilm(Expression eccentricity) {
        return clearance.times(Expression.constant(1).minus(eccentricity));
    }

    /**
     * Pressure of the short bearing in the middle of its length [Pa].
     * @param angle from the widest gap on, in the direction of rotation [rad]
     */
    public Expression shortPressure(Expression eccentricity, Expression angle) {
        Expression film = eccentricity.times(angle.cosine()).plus(1);
        return viscosity
                .times(speed)
                .times(length.squared())
                .times(0.75)
                .dividedBy(clearance.squared())
                .times(eccentricity.times(angle.sine()))
                .dividedBy(film.power(3));
    }

    /**
     * Where that pressure is largest [rad]: cos = (1 - sqrt(1 + 24 e2)) / (4 e), from its derivative set to nothing.
     * @param eccentricity above 0
     */
    public static Expression angleOfLargestPressure(Expression eccentricity) {
        Expression root = eccentricity.squared().times(24).plus(1).squareRoot();
        Expression cosine = Expression.constant(1).minus(root).dividedBy(eccentricity.times(4));
        return Expression.constant(Math.PI / 2).minus(cosine.arcSine());
    }
}
