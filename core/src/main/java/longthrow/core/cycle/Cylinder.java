package longthrow.core.cycle;

import longthrow.core.gas.BurnedState;
import longthrow.core.measurement.NotConvergedException;
import longthrow.core.quantity.Require;

/**
 * The gas in the cylinder: one zone, and two from the spark until the flame is through, at one pressure. Mass and energy are kept exactly as they are given and taken;
 * temperatures and pressure follow from them and the volume. What the flame has not reached is squeezed without loss but for the heat it gives away.
 *
 * <p>A {@link Crevice} takes gas in and gives it back as the pressure goes, a step behind it.
 *
 * <p>A step is told in two: {@link #half} gives the state in the middle of it, by which is reckoned what flows and what the walls take; {@link #whole} takes the step with
 * them. Second order. Heywood (1988), section 9.2 and 14.4, has the balances. Changes as it is advanced; of one thread; allocates nothing.
 */
final class Cylinder {
    /** Least share of the charge in a flame that is told apart: the energy of less is within what the rest is known to. */
    private static final double SMALLEST_FLAME = 1e-3;

    private static final int MOST_STEPS = 80;

    /** A step of Newton's so small, of temperature and pressure, is the last: what it still misses is about the square of it, 1e-12. */
    private static final double SETTLED = 1e-6;

    /** No search goes further in one step than by this share of a temperature or pressure. */
    private static final double LONGEST_STRIDE = 0.3;

    /** Burned gas as cold as a wall does not care for its pressure [Pa]. */
    private static final double COLD_PRESSURE = 1e6;

    /** Where the search for the flame's temperature begins, above what has not burned [K]; where it ends does not depend on it. */
    private static final double FLAME_RISE = 1900;

    private final CylinderSpace space;
    private final ChargeGases gases;
    private final Walls walls;
    private final Crevice crevice;
    private final boolean apart;

    // ---- enthalpy of a kilogram in the crevice [J/kg], and what its gas holds by pressure [kg/Pa] if all were one or
    // the other
    private final double freshInCrevice;
    private final double oldInCrevice;
    private final double freshByPressure;
    private final double oldByPressure;

    private double creviceFresh;
    private double creviceOld;

    /** Burned gas that came back out of the crevice to the flame, less what went in from it [kg]. */
    private double back;

    private final BurnedState fresh = new BurnedState();
    private final BurnedState old = new BurnedState();
    private final BurnedState flame = new BurnedState();

    /** State at the beginning of a step, or in its middle, or as it is sought. */
    private static final class State {
        double volume;
        double energy;
        double freshMass;
        double oldMass;
        double flameMass;
        double pressure;
        /** Of all, or of what the flame has not reached. */
        double temperature;

        double flameTemperature;

        double unburnedMass() {
            return freshMass + oldMass;
        }
    }

    private State now = new State();
    private State middle = new State();
    private State next = new State();

    // ---- rates of the last step, by which the middle of the next is foretold
    private double freshRate;
    private double oldRate;
    private double energyRate;
    private double flameMassRate;

    // ---- and how fast it changed in the last step, whence the search in the next begins; where it ends does not
    // depend on it
    private double pressureRate;
    private double temperatureRate;
    private double flameRate;

    /** From what the flame has not reached to the walls [W]. */
    private double unburnedHeat;

    private double burnable;
    private double lost;
    private double work;
    private double heat;
    private double unreleased;

    Cylinder(CylinderSpace space, ChargeGases gases, Walls walls) {
        this(space, gases, walls, Crevice.none());
    }

    Cylinder(CylinderSpace space, ChargeGases gases, Walls walls, Crevice crevice) {
        this(space, gases, walls, crevice, true);
    }

    private Cylinder(CylinderSpace space, ChargeGases gases, Walls walls, Crevice crevice, boolean apart) {
        this.space = space;
        this.gases = gases;
        this.walls = walls;
        this.apart = apart;
        this.crevice = crevice;
        double wall = crevice.temperature();
        gases.fresh(wall, fresh);
        gases.burned(wall, COLD_PRESSURE, old);
        this.freshInCrevice = enthalpy(fresh, wall);
        this.oldInCrevice = enthalpy(old, wall);
        this.freshByPressure = crevice.volume() / (fresh.gasConstant * wall);
        this.oldByPressure = crevice.volume() / (old.gasConstant * wall);
    }

    private static double enthalpy(BurnedState gas, double temperature) {
        return gas.internalEnergy + gas.gasConstant * temperature;
    }

    /** All of one temperature even while it burns: the model of textbooks, to be held against them. */
    static Cylinder ofOneZone(CylinderSpace space, ChargeGases gases, Walls walls) {
        return new Cylinder(space, gases, walls, Crevice.none(), false);
    }

    /**
     * Fills it.
     * @param volume   above the piston [m3]
     * @param pressure [Pa]
     * @param temperature [K]
     * @param burned   share of the mass that is burned gas
     */
    void fill(double volume, double pressure, double temperature, double burned) {
        Require.within("share of burned gas", burned, 0, 1);
        now.volume = Require.positive("volume above the piston [m3]", volume);
        now.pressure = Require.positive("pressure [Pa]", pressure);
        now.temperature = Require.positive("temperature [K]", temperature);
        gases.fresh(temperature, fresh);
        gases.burned(temperature, pressure, old);
        double constant = (1 - burned) * fresh.gasConstant + burned * old.gasConstant;
        double mass = pressure * volume / (constant * temperature);
        now.freshMass = (1 - burned) * mass;
        now.oldMass = burned * mass;
        now.flameMass = 0;
        now.flameTemperature = temperature;
        now.energy = now.freshMass * fresh.internalEnergy + now.oldMass * old.internalEnergy;
        freshRate = 0;
        oldRate = 0;
        energyRate = 0;
        flameMassRate = 0;
        unburnedHeat = 0;
        creviceFresh = (1 - burned) * freshByPressure * pressure;
        creviceOld = burned * oldByPressure * pressure;
        still();
        account();
    }

    /** Work, heat and what did not burn count from here. */
    void account() {
        work = 0;
        heat = 0;
        unreleased = 0;
    }

    /**
     * From now on {@link #half} and {@link #whole} are told how much has burned.
     * @param lost of each kilogram of charge that burns, the energy that is not set free for want of oxygen or time [J/kg]
     */
    void spark(double lost) {
        this.lost = Require.notNegative("energy not set free [J/kg]", lost);
        burnable = now.unburnedMass();
        back = 0;
    }

    /** The flame is through, or the exhaust valve opens: one zone again, of the same mass, energy and volume. */
    void mix() {
        if (now.flameMass > 0) {
            double mean = meanTemperature(now);
            now.oldMass += now.flameMass;
            now.flameMass = 0;
            now.temperature = mean;
            solveOne(now);
            still();
        }
        unburnedHeat = 0;
    }

    /**
     * Foretells the middle of a step by what flowed in the last one.
     * @param volume      above the piston in the middle [m3]
     * @param burnedShare of what was in the cylinder at the spark, in the middle; 0 before
     */
    void half(double volume, double dt, double burnedShare) {
        double kappa = now.flameMass > 0 || burnedShare > SMALLEST_FLAME ? kappa(now) : 0;
        take(middle, volume, 0.5 * dt, burnedShare, now.pressure);
        begin(middle, 0.5 * dt);
        solve(middle, kappa, 0.5 * dt);
    }

    /**
     * The step.
     * @param volume      above the piston at its end [m3]
     * @param burnedShare at its end
     * @param charge      that comes in [kg/s]
     * @param burned      gas that comes in [kg/s]
     * @param enthalpy    that comes with both, from the zero of {@link ChargeGases} [W]
     * @param coefficient of heat to the walls [W/(m2 K)]
     */
    void whole(
            double volume,
            double dt,
            double burnedShare,
            double charge,
            double burned,
            double enthalpy,
            double coefficient) {
        double given = coefficient * overWalls(middle.volume, meanTemperature(middle));
        unburnedHeat =
                middle.flameMass > 0 ? coefficient * unburnedShare() * overWalls(middle.volume, middle.temperature) : 0;
        double kappa = middle.flameMass > 0 ? kappa(middle) : 0;
        freshRate = charge;
        oldRate = burned;
        flameMassRate = 0;
        energyRate = enthalpy - given;
        heat += dt * given;
        breathe(dt);
        work += middle.pressure * (volume - now.volume);
        take(next, volume, dt, burnedShare, middle.pressure);
        unreleased += toBurn * lost;
        back += dt * flameMassRate;
        rates(middle, 0.5 * dt);
        begin(next, dt);
        solve(next, kappa, dt);
        rates(next, dt);
        State then = now;
        now = next;
        next = then;
    }

    /** Fresh charge that burned in the step last taken [kg]. */
    private double toBurn;

    /** The crevice comes to the pressure that is now, within the step; what goes in leaves its warmth at the wall. */
    private void breathe(double dt) {
        if (crevice.volume() == 0) {
            return;
        }
        double holds = creviceFresh / freshByPressure + creviceOld / oldByPressure; // the pressure it is full at
        double more = now.pressure - holds;
        if (more > 0) {
            breatheIn(more, dt);
        } else {
            breatheOut(more / holds, dt);
        }
    }

    private void breatheIn(double more, double dt) {
        boolean isReached = middle.flameMass > 0 && middle.unburnedMass() < Crevice.REACHED * burnable;
        double temperature = isReached ? middle.flameTemperature : middle.temperature;
        double all = middle.unburnedMass();
        double share = isReached || !(all > 0) ? 0 : middle.freshMass / all;
        gases.burned(temperature, middle.pressure, old);
        double mass = more / (share / freshByPressure + (1 - share) / oldByPressure);
        double in = (1 - share) * mass;
        double carried = in * enthalpy(old, temperature);
        double kept = in * oldInCrevice;
        if (share > 0) {
            gases.fresh(temperature, fresh);
            carried += share * mass * enthalpy(fresh, temperature);
            kept += share * mass * freshInCrevice;
        }
        creviceFresh += share * mass;
        creviceOld += in;
        energyRate -= carried / dt;
        heat += carried - kept;
        if (isReached) {
            flameMassRate -= in / dt;
        } else {
            freshRate -= share * mass / dt;
            oldRate -= in / dt;
            burnable -= mass; // what is out of reach does not burn
        }
    }

    /** A share of what is in it, below 0. */
    private void breatheOut(double share, double dt) {
        double ofFresh = -share * creviceFresh;
        double ofOld = -share * creviceOld;
        creviceFresh -= ofFresh;
        creviceOld -= ofOld;
        energyRate += (ofFresh * freshInCrevice + ofOld * oldInCrevice) / dt;
        boolean isFlame = middle.flameMass > 0;
        if (isFlame || middle.temperature > Crevice.BURNS_ABOVE) {
            energyRate -= ofFresh * lost / dt;
            unreleased += ofFresh * lost;
            ofOld += ofFresh;
            ofFresh = 0;
        }
        if (isFlame) {
            flameMassRate += ofOld / dt;
        } else {
            freshRate += ofFresh / dt;
            oldRate += ofOld / dt;
        }
    }

    /** Masses, volume and energy after so much time, with where the search for the rest begins. */
    private void take(State to, double volume, double time, double burnedShare, double push) {
        to.volume = volume;
        to.energy = now.energy + time * energyRate - push * (volume - now.volume);
        to.freshMass = now.freshMass + time * freshRate;
        to.oldMass = now.oldMass + time * oldRate;
        to.flameMass = now.flameMass > 0 ? now.flameMass + time * flameMassRate : 0;
        to.pressure = now.pressure;
        to.temperature = now.temperature;
        to.flameTemperature = now.flameMass > 0 ? now.flameTemperature : now.temperature + FLAME_RISE;
        toBurn = 0;
        if (!apart) {
            toBurn = burnedShare > 0 ? Math.max(0, to.freshMass - (1 - burnedShare) * burnable) : 0;
            to.freshMass -= toBurn;
            to.oldMass += toBurn;
            to.energy -= toBurn * lost;
            return;
        }
        double wanted = burnedShare > SMALLEST_FLAME ? burnedShare * burnable + back - now.flameMass : 0;
        if (wanted > 0) {
            double share = Math.min(1, wanted / to.unburnedMass());
            toBurn = share * to.freshMass;
            to.flameMass += share * to.unburnedMass();
            to.freshMass -= toBurn;
            to.oldMass -= share * to.oldMass;
            to.energy -= toBurn * lost;
        }
    }

    private void still() {
        pressureRate = 0;
        temperatureRate = 0;
        flameRate = 0;
    }

    /** From now to there, by so much time. */
    private void rates(State there, double time) {
        pressureRate = (there.pressure - now.pressure) / time;
        temperatureRate = (there.temperature - now.temperature) / time;
        flameRate = now.flameMass > 0 ? (there.flameTemperature - now.flameTemperature) / time : 0;
    }

    /** Where the search begins if all goes on as it went; as it is now where that is far. */
    private void begin(State to, double time) {
        double pressure = now.pressure + time * pressureRate;
        double temperature = now.temperature + time * temperatureRate;
        if (near(pressure, now.pressure) && near(temperature, now.temperature)) {
            to.pressure = pressure;
            to.temperature = temperature;
            if (now.flameMass > 0) {
                double hot = now.flameTemperature + time * flameRate;
                to.flameTemperature = near(hot, now.flameTemperature) ? hot : now.flameTemperature;
            }
        }
    }

    private static boolean near(double there, double here) {
        return Math.abs(there - here) <= LONGEST_STRIDE * here;
    }

    private void solve(State of, double kappa, double time) {
        if (of.flameMass > 0) {
            solveTwo(of, kappa, time);
        } else {
            solveOne(of);
        }
    }

    /** Surface times what it is colder than the gas [m2 K]. */
    private double overWalls(double volume, double temperature) {
        double sleeve = space.sleeveArea(volume);
        return space.headArea() * (temperature - walls.head())
                + space.crownArea() * (temperature - walls.crown())
                + sleeve * (temperature - walls.sleeve());
    }

    /** Share of the volume that the flame has not reached. */
    private double unburnedShare() {
        gases.fresh(middle.temperature, fresh);
        gases.burned(middle.temperature, middle.pressure, old);
        double constants = middle.freshMass * fresh.gasConstant + middle.oldMass * old.gasConstant;
        return Math.min(1, constants * middle.temperature / (middle.pressure * middle.volume));
    }

    /** Gas constant over heat capacity at constant pressure of what the flame has not reached. */
    private double kappa(State of) {
        gases.fresh(of.temperature, fresh);
        gases.burned(of.temperature, of.pressure, old);
        double constants = of.freshMass * fresh.gasConstant + of.oldMass * old.gasConstant;
        double capacity = of.freshMass * fresh.energyByTemperature + of.oldMass * old.energyByTemperature + constants;
        return constants > 0 ? constants / capacity : 0;
    }

    /** Temperature of one gas that fills the volume as the zones do [K]. */
    private double meanTemperature(State of) {
        if (of.flameMass == 0) {
            return of.temperature;
        }
        gases.fresh(of.temperature, fresh);
        gases.burned(of.temperature, of.pressure, old);
        gases.burned(of.flameTemperature, of.pressure, flame);
        double constants = of.freshMass * fresh.gasConstant + of.oldMass * old.gasConstant;
        return of.pressure * of.volume / (constants + of.flameMass * flame.gasConstant);
    }

    /** One zone: temperature and pressure by energy and volume, by Newton. */
    private void solveOne(State of) {
        double t = of.temperature;
        double p = of.pressure;
        double dt = t;
        for (int k = 0; k < MOST_STEPS && t > 0 && p > 0; k++) {
            gases.fresh(t, fresh);
            gases.burned(t, p, old);
            double constants = of.freshMass * fresh.gasConstant + of.oldMass * old.gasConstant;
            double over = of.freshMass * fresh.internalEnergy + of.oldMass * old.internalEnergy - of.energy;
            double press = constants * t - p * of.volume;
            double byT = of.freshMass * fresh.energyByTemperature + of.oldMass * old.energyByTemperature;
            double byP = of.oldMass * old.energyByLogPressure / p;
            double pressByT = constants + of.oldMass * old.gasConstantByTemperature * t;
            double pressByP = of.oldMass * old.gasConstantByLogPressure * t / p - of.volume;
            double determinant = byT * pressByP - byP * pressByT;
            dt = (byP * press - over * pressByP) / determinant;
            double dp = (pressByT * over - byT * press) / determinant;
            double stride = stride(dt / t, dp / p);
            t += stride * dt;
            p += stride * dp;
            if (Math.abs(dt) <= SETTLED * t && Math.abs(dp) <= SETTLED * p) {
                of.temperature = t;
                of.pressure = p;
                of.flameTemperature = t;
                return;
            }
        }
        throw lost("the gas", of, dt);
    }

    /** Two zones: pressure and the flame's temperature; what the flame has not reached follows the pressure from where it is now. */
    private void solveTwo(State of, double kappa, double time) {
        double p0 = now.pressure;
        double p = of.pressure;
        double tb = of.flameTemperature;
        double cooled = cooled(of, kappa, time);
        double dt = tb;
        for (int k = 0; k < MOST_STEPS && tb > 0 && p > 0; k++) {
            // (p / p0) to kappa, by the series of logarithm and power: a step changes the pressure little
            double r = (p - p0) / (p + p0);
            double x = kappa * 2 * r * (1 + r * r * (1.0 / 3 + r * r * 0.2));
            double tu = now.temperature * (1 + x * (1 + x * (1.0 / 2 + x * (1.0 / 6 + x / 24)))) - cooled;
            gases.fresh(tu, fresh);
            gases.burned(tu, p, old);
            gases.burned(tb, p, flame);
            double slope = kappa * tu / p;
            double constants = of.freshMass * fresh.gasConstant + of.oldMass * old.gasConstant;
            double capacity = of.freshMass * fresh.energyByTemperature + of.oldMass * old.energyByTemperature;
            double over = of.freshMass * fresh.internalEnergy
                    + of.oldMass * old.internalEnergy
                    + of.flameMass * flame.internalEnergy
                    - of.energy;
            double press = constants * tu + of.flameMass * flame.gasConstant * tb - p * of.volume;
            double byT = of.flameMass * flame.energyByTemperature;
            double byP = capacity * slope + of.flameMass * flame.energyByLogPressure / p;
            double pressByT = of.flameMass * (flame.gasConstant + flame.gasConstantByTemperature * tb);
            double pressByP = constants * slope + of.flameMass * flame.gasConstantByLogPressure * tb / p - of.volume;
            double determinant = byT * pressByP - byP * pressByT;
            dt = (byP * press - over * pressByP) / determinant;
            double dp = (pressByT * over - byT * press) / determinant;
            double stride = stride(dt / tb, dp / p);
            tb += stride * dt;
            p += stride * dp;
            if (Math.abs(dt) <= SETTLED * tb && Math.abs(dp) <= SETTLED * p) {
                of.temperature = tu + slope * stride * dp;
                of.pressure = p;
                of.flameTemperature = tb;
                return;
            }
        }
        throw lost("the burning gas", of, dt);
    }

    private double cooled(State of, double kappa, double time) {
        if (unburnedHeat == 0 || !(of.unburnedMass() > SMALLEST_FLAME * burnable) || kappa == 0) {
            return 0; // what is left is too little to be told by its temperature
        }
        double constants = of.freshMass * fresh.gasConstant + of.oldMass * old.gasConstant;
        return time * unburnedHeat * kappa / constants;
    }

    private static double stride(double one, double other) {
        double longest = Math.max(Math.abs(one), Math.abs(other));
        return longest > LONGEST_STRIDE ? LONGEST_STRIDE / longest : 1;
    }

    private static NotConvergedException lost(String what, State of, double last) {
        return new NotConvergedException(
                "temperature [K] of " + what + " in the cylinder (" + of.volume + " m3, "
                        + (of.unburnedMass() + of.flameMass) + " kg, " + of.energy + " J)",
                MOST_STEPS,
                last,
                SETTLED);
    }

    // ---- in the middle of a step, after half

    /** [Pa]. */
    double middlePressure() {
        return middle.pressure;
    }

    /** Of all, or of what the flame has not reached [K]. */
    double middleTemperature() {
        return middle.temperature;
    }

    /** Temperature of one gas that fills the room as the zones do [K]. */
    double middleMeanTemperature() {
        return meanTemperature(middle);
    }

    double middleVolume() {
        return middle.volume;
    }

    /** Share of burned gas in the mass. */
    double middleBurned() {
        return (middle.oldMass + middle.flameMass) / (middle.unburnedMass() + middle.flameMass);
    }

    // ---- now

    double volume() {
        return now.volume;
    }

    /** [Pa]. */
    double pressure() {
        return now.pressure;
    }

    /** Of all, or of what the flame has not reached [K]. */
    double temperature() {
        return now.temperature;
    }

    /** Of the flame's gas; where there is no flame as {@link #temperature} [K]. */
    double flameTemperature() {
        return now.flameTemperature;
    }

    /** Temperature of one gas that fills the room as the zones do [K]. */
    double meanTemperature() {
        return meanTemperature(now);
    }

    /** [kg]. */
    double mass() {
        return now.unburnedMass() + now.flameMass;
    }

    /** Share of burned gas in the mass. */
    double burned() {
        return (now.oldMass + now.flameMass) / mass();
    }

    /** Of charge that has not burned [kg]. */
    double freshMass() {
        return now.freshMass;
    }

    /** In the crevice, not counted in {@link #mass} [kg]. */
    double inCrevice() {
        return creviceFresh + creviceOld;
    }

    /** Of what is there, by its enthalpy, not counted in {@link #energy} [J]. */
    double energyInCrevice() {
        return creviceFresh * freshInCrevice + creviceOld * oldInCrevice;
    }

    /** From the zero of {@link ChargeGases} [J]. */
    double energy() {
        return now.energy;
    }

    boolean burning() {
        return now.flameMass > 0;
    }

    /** Of the gas on the piston since {@link #account} [J]. */
    double work() {
        return work;
    }

    /** To the walls since {@link #account} [J]. */
    double heat() {
        return heat;
    }

    /** What burning did not set free since {@link #account} [J]. */
    double unreleased() {
        return unreleased;
    }
}
