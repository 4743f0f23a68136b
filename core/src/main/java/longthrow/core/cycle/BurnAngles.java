package longthrow.core.cycle;

import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import longthrow.core.gas.Fuel;
import longthrow.core.motion.CrankMotion;
import longthrow.core.quantity.Require;

/**
 * How many degrees the fire takes, from what it burns in. S. D. Hires, R. J. Tabaczynski and J. M. Novak, SAE 780232 (1978), as in Heywood (1988), 9.3.4 (from memory):
 * development ~ (Sp nu)^(1/3) (h / SL)^(2/3), all at the spark; rapid burning ~ (B / h*) (rho / rho*)^(10/9) (Sp nu*)^(1/3) (h / SL*)^(2/3), where * is the unburned gas when half has burned. Sp mean piston
 * speed, nu kinematic viscosity, h chamber height at the spark, SL laminar flame speed, B bore.
 *
 * <p>The source fits its two constants to one engine. Both have the dimension of one over a length, which is that of turning over piston speed, pi / stroke: written with it what is left is a bare number
 * (our reading, so that engines of other strokes follow). The numbers here are not fitted either: they are such that a small engine at its {@link #ANCHOR anchor} has the middle of the published range of its
 * {@link Chamber}. In rapid burning B stands for how far the flame has to go; a plug nearer the middle than usual for the chamber shortens it by the square root of the way (a middle plug burns some 30 % faster than
 * one at the wall: T. Poulos and J. B. Heywood, SAE 830334, from memory).
 *
 * <p>The flame develops in a gas that is squeezed meanwhile; the angle of the source holds for one that is not, so its rate is summed over what passes (our reading; the more the earlier the spark).
 *
 * <p>The state at half burned is reckoned, not asked: pressure as compressed by n = 1.3 to the volume there, times 2.3 for half of what burning at constant volume would do (3.6 times, petrol near
 * stoichiometric, from memory); the unburned gas follows with the same n. As the anchor is reckoned alike, most of what is wrong in it cancels.
 * @param development     from the spark to a tenth burned [rad]
 * @param rapid           from a tenth to nine tenths [rad]
 * @param developmentDoubt relative standard uncertainty
 * @param rapidDoubt       relative standard uncertainty
 * @param known            whether the flame speed at the spark lies within its fit
 */
public record BurnAngles(double development, double rapid, double developmentDoubt, double rapidDoubt, boolean known) {
    /** How much the scaling away from the anchor may be wrong, relative standard uncertainty; judgement. */
    private static final double SCALING_DOUBT = 0.10;

    private static final double THIRD = 1.0 / 3;
    private static final double DENSITY_POWER = 10.0 / 9;
    private static final double TRAVEL_POWER = 0.5;
    private static final double POLYTROPIC = 1.3;
    private static final double HALF_BURNED_RISE = 1 + 0.5 * (3.6 - 1);

    /** Where half has burned with the best spark [rad]: 7 to 10 degrees after top centre. */
    private static final double HALF_BURNED = Math.toRadians(8);

    /** A flame that has not developed here does not burn the charge before the exhaust opens [rad]; judgement. */
    private static final double LATEST = Math.toRadians(70);

    private static final double STEP = Math.toRadians(1);

    /**
     * Where the middle of the published ranges is set: a single of 70 mm bore and 55 mm stroke, 8.5 to 1, at 3600 rpm and full load on petrol, 10 % rich, sparked 22 degrees before top centre; compressed with n = 1.32 from
     * 0.97 bar and 358 K at 0.92 of the volume. Judgement: the ranges do not say at which speed they were read.
     */
    static final Place ANCHOR_PLACE = anchorPlace();

    static final Charge ANCHOR = new Charge(1.1, 0.08, 630, 9.9e5);
    static final double ANCHOR_SPEED = 3600 * Math.PI / 30;

    private static final double MIDDLE_DEVELOPMENT =
            Math.toRadians(0.5 * (Chamber.SHORTEST_DEVELOPMENT_DEGREES + Chamber.LONGEST_DEVELOPMENT_DEGREES));
    private static final double DEVELOPMENT_RANGE_DOUBT =
            rangeDoubt(Chamber.SHORTEST_DEVELOPMENT_DEGREES, Chamber.LONGEST_DEVELOPMENT_DEGREES);

    private static final FlameSpeed PETROL = FlameSpeed.of(Fuel.petrol());
    private static final double DEVELOPMENT_FACTOR = developmentFactor();
    private static final double RAPID_AT_ANCHOR = rapid(ANCHOR_PLACE, ANCHOR, PETROL, ANCHOR_SPEED);

    private static Place anchorPlace() {
        CylinderSpace space = CylinderSpace.flat(0.070, new CrankMotion(0.0275, 0.0907, 0), 8.5);
        return new Place(
                Chamber.WEDGE,
                0.070,
                0.055,
                0.75 * 0.070,
                Math.toRadians(-22),
                angle -> space.volume(angle) / space.pistonArea());
    }

    /** So that at the anchor the angles passed add up to 1 where the middle of the range ends. */
    private static double developmentFactor() {
        double first = ANCHOR_PLACE.heightAtSpark();
        double sum = 0;
        int steps = 1000;
        for (int i = 0; i < steps; i++) {
            double height =
                    ANCHOR_PLACE.height.applyAsDouble(ANCHOR_PLACE.spark + (i + 0.5) / steps * MIDDLE_DEVELOPMENT);
            Charge here = ANCHOR.squeezed(Math.pow(first / height, POLYTROPIC));
            sum += MIDDLE_DEVELOPMENT / steps / inGasAsItIs(ANCHOR_PLACE, height, here, PETROL, ANCHOR_SPEED);
        }
        return sum;
    }

    public BurnAngles {
        Require.positive("flame development angle [rad]", development);
        Require.positive("rapid burning angle [rad]", rapid);
    }

    /**
     * Where it burns.
     * @param bore        [m]
     * @param stroke      [m]
     * @param flameTravel from the plug to the farthest wall, seen along the cylinder [m]; {@link Chamber#usualTravel} bores where it is not told
     * @param spark       crank angle from firing top centre [rad], below 0 before it
     * @param height      volume over the area of the bore [m] by crank angle from firing top centre [rad]
     */
    public record Place(
            Chamber chamber, double bore, double stroke, double flameTravel, double spark, DoubleUnaryOperator height) {
        public Place {
            Require.positive("bore [m]", bore);
            Require.positive("stroke [m]", stroke);
            Require.within("way from the plug to the farthest wall in bores", flameTravel / bore, 0.3, 1.5);
            Require.positive("height of the chamber at the spark [m]", height.applyAsDouble(spark));
            Require.positive("height of the chamber at half burned [m]", height.applyAsDouble(HALF_BURNED));
        }

        private double heightAtSpark() {
            return height.applyAsDouble(spark);
        }

        private double heightAtHalf() {
            return height.applyAsDouble(HALF_BURNED);
        }
    }

    /**
     * What burns, when the spark jumps.
     * @param equivalenceRatio fuel over what the air can burn
     * @param burned           mole fraction of burned gas left over
     * @param temperature      [K]
     * @param pressure         [Pa]
     */
    public record Charge(double equivalenceRatio, double burned, double temperature, double pressure) {
        public Charge {
            Require.positive("equivalence ratio", equivalenceRatio);
            Require.within("burned gas left over [mole fraction]", burned, 0, 1);
            Require.positive("temperature at the spark [K]", temperature);
            Require.positive("pressure at the spark [Pa]", pressure);
        }

        /** The unburned gas when half has burned. */
        private Charge halfBurned(Place place) {
            return squeezed(Math.pow(place.heightAtSpark() / place.heightAtHalf(), POLYTROPIC) * HALF_BURNED_RISE);
        }

        /** At so many times the pressure. */
        private Charge squeezed(double by) {
            double warmed = Math.pow(by, 1 - 1 / POLYTROPIC);
            return new Charge(equivalenceRatio, burned, temperature * warmed, pressure * by);
        }

        private double speed(FlameSpeed flame) {
            return flame.at(equivalenceRatio, temperature, pressure, burned);
        }

        private double viscosity() {
            return Annand.kinematicViscosity(temperature, pressure);
        }
    }

    /**
     * The angles; empty where no flame goes through such a charge (too lean, too rich, too much burned gas).
     * @param speed of the crankshaft [rad/s]
     */
    public static Optional<BurnAngles> of(Place place, Charge charge, FlameSpeed flame, double speed) {
        Require.positive("crankshaft speed [rad/s]", speed);
        double developed = development(place, charge, flame, speed);
        if (!(charge.speed(flame) > 0) || !(developed * DEVELOPMENT_FACTOR < Double.POSITIVE_INFINITY)) {
            return Optional.empty();
        }
        Chamber chamber = place.chamber;
        double middle = 0.5 * (chamber.shortestRapid() + chamber.longestRapid());
        double way = Math.pow(place.flameTravel / (chamber.usualTravel() * place.bore), TRAVEL_POWER);
        boolean known = FlameSpeed.known(charge.equivalenceRatio, charge.temperature, charge.pressure, charge.burned);
        return Optional.of(new BurnAngles(
                developed,
                middle * way * rapid(place, charge, flame, speed) / RAPID_AT_ANCHOR,
                doubtOfDevelopment(),
                doubtOfRapid(chamber),
                known));
    }

    /** Relative standard uncertainty of the development angle, of all chambers alike. */
    public static double doubtOfDevelopment() {
        return Math.hypot(DEVELOPMENT_RANGE_DOUBT, SCALING_DOUBT);
    }

    /** Relative standard uncertainty of the rapid burning angle. */
    public static double doubtOfRapid(Chamber chamber) {
        return Math.hypot(rangeDoubt(chamber.shortestRapid(), chamber.longestRapid()), SCALING_DOUBT);
    }

    /** Standard uncertainty of a rectangle over its middle. */
    private static double rangeDoubt(double low, double high) {
        return (high - low) / (high + low) / Math.sqrt(3);
    }

    /**
     * From the spark to a tenth: the source's angle holds for a gas that stays as it is at the spark; here it changes while the flame develops, which is over when the angles passed, each over the
     * angle that the gas there would take, add up to 1. Infinite where that is not so before {@link #LATEST}.
     */
    private static double development(Place place, Charge charge, FlameSpeed flame, double speed) {
        double first = place.heightAtSpark();
        double done = 0;
        for (double passed = 0; place.spark + passed < LATEST; passed += STEP) {
            double height = place.height.applyAsDouble(place.spark + passed + 0.5 * STEP);
            Charge here = charge.squeezed(Math.pow(first / height, POLYTROPIC));
            double whole = DEVELOPMENT_FACTOR * inGasAsItIs(place, height, here, flame, speed);
            double next = done + STEP / whole;
            if (next >= 1) {
                return passed + STEP * (1 - done) / (next - done);
            }
            done = next;
        }
        return Double.POSITIVE_INFINITY;
    }

    private static double inGasAsItIs(Place place, double height, Charge gas, FlameSpeed flame, double speed) {
        return Math.PI / place.stroke * burning(place, height, gas, gas.speed(flame), speed);
    }

    private static double rapid(Place place, Charge charge, FlameSpeed flame, double speed) {
        Charge half = charge.halfBurned(place);
        double thinner = charge.pressure / charge.temperature * half.temperature / half.pressure;
        return Math.PI
                / place.stroke
                * (place.bore / place.heightAtHalf())
                * Math.pow(thinner, DENSITY_POWER)
                * burning(place, place.heightAtSpark(), half, half.speed(flame), speed);
    }

    /** (Sp nu)^(1/3) (h / SL)^(2/3) [m]. */
    private static double burning(Place place, double height, Charge gas, double flame, double speed) {
        double pistonSpeed = speed * place.stroke / Math.PI;
        return Math.pow(pistonSpeed * gas.viscosity(), THIRD) * Math.pow(height / flame, 2 * THIRD);
    }

    /** The curve that begins at the spark [rad] and has these angles. */
    public BurnCurve curve(double spark) {
        return BurnCurve.fromSpark(spark, development, rapid);
    }
}
