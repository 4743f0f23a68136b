package longthrow.core.cycle;

import longthrow.core.cycle.Crankcase.Around;
import longthrow.core.cycle.Crankcase.Breather;
import longthrow.core.formula.Interval;
import longthrow.core.gas.MoistAir;
import longthrow.core.measurement.NotConvergedException;
import longthrow.core.quantity.Require;

/**
 * What the piston loses to the gas under it. One volume of air that mixes at once (constant gamma), a nozzle without loss to the outside with its effective area, blow-by as a steady stream, heat to the walls by a
 * constant; mass and energy by Runge and Kutta of fourth order at even steps of the crank, repeated to the turn that ends as it began by Newton's steps. Oil mist, waves in a hose and a blow-by that
 * comes with the fire are left out.
 * @param meanEffective work lost over the displacement, over a cycle of two turns [Pa]
 * @param meanPressure  over a turn, over the outside [Pa]
 * @param highest       over the outside [Pa]
 * @param lowest        the same, below 0 where the case draws
 * @param throughput    gas that leaves by the breather [kg/s]
 * @param imbalance     energy of a turn that is not accounted for, over what goes back and forth
 */
public record CrankcasePumping(
        double meanEffective, double meanPressure, double highest, double lowest, double throughput, double imbalance) {
    private static final double GAMMA = AirNozzle.GAMMA;
    private static final double GAS_CONSTANT = MoistAir.DRY.gasConstant();
    private static final double HEAT = GAS_CONSTANT / (GAMMA - 1);

    private static final int FEWEST_STEPS = 720;
    private static final int MOST_STEPS = 5760;

    /** A step times the quickest rate of the breather, reckoned with half as much pressure and warmth again; the method is stable to 2.78. */
    private static final double LARGEST_STEP = 2;

    /** Below such a drop a hole's flow goes with the drop instead of its root [Pa]: no flow is turbulent at nothing. More, where the hole empties the case within a step: then the drop stays as small. */
    private static final double SOFT = 1;

    private static final double SETTLED = 1e-10;
    private static final int MOST_TURNS = 600;
    private static final double NUDGE = 1e-6;

    /** Farthest that a Newton's step may go in the logarithms, how much closer each must come, and turns that are run plainly where it does not. */
    private static final double FARTHEST = 0.5;

    private static final double CLOSER = 0.7;
    private static final int PLAIN = 5;

    /**
     * Holes tried for a bound, as area times speed of sound (over root gamma) over what the piston sweeps in a radian at most: most is lost near 0.5, a third of that or less at both ends.
     */
    private static final double SMALLEST_HOLE = 0.1;

    private static final double LARGEST_HOLE = 3;
    private static final int HOLES = 12;

    /**
     * At one speed.
     * @param speed of the crank [rad/s]
     * @throws IllegalArgumentException where gas comes in and none can leave
     * @throws NotConvergedException    where no turn ends as it began
     */
    public static CrankcasePumping of(Crankcase crankcase, Breather breather, Around around, double speed) {
        Require.positive("speed of the crank [rad/s]", speed);
        if (around.blowBy() > 0 && breather.out() == 0) {
            throw new IllegalArgumentException(
                    "blow-by of " + around.blowBy()
                            + " kg/s comes into a crankcase that nothing leaves: its pressure would rise until a seal gives way. Give the breather, or no blow-by");
        }
        return new Turn(crankcase, breather, around, speed).settled();
    }

    /**
     * Least and most that can be lost at a speed where breather or free volume are not known: over holes from shut to open, and from {@link Crankcase#LEAST_FREE} to {@link Crankcase#MOST_FREE} displacements
     * [Pa]. A hole open both ways loses more than a check valve of its size.
     * @param crankcase   with its free volume, or any where that is not known
     * @param volumeKnown whether it is
     */
    public static Interval bounds(Crankcase crankcase, boolean volumeKnown, Around around, double speed) {
        double most = 0;
        double displacement = crankcase.displacement();
        double[] volumes = volumeKnown
                ? new double[] {crankcase.smallest()}
                : new double[] {Crankcase.LEAST_FREE * displacement, Crankcase.MOST_FREE * displacement};
        Around quiet = new Around(around.pressure(), around.temperature(), 0, around.temperature());
        double scale = displacement * speed / Math.sqrt(GAS_CONSTANT * around.temperature());
        for (double volume : volumes) {
            Crankcase tried = crankcase.withSmallest(volume);
            for (int i = 0; i <= HOLES; i++) {
                double hole = scale * SMALLEST_HOLE * Math.pow(LARGEST_HOLE / SMALLEST_HOLE, (double) i / HOLES);
                most = Math.max(most, of(tried, Breather.hole(hole), quiet, speed).meanEffective);
            }
        }
        return new Interval(0, most);
    }

    /** One turn of the crank, and what it does to mass and energy. */
    private static final class Turn {
        private static final int MASS = 0;
        private static final int ENERGY = 1;
        private static final int WORK = 2;
        private static final int HEAT_IN = 3;
        private static final int PRESSURE = 4;
        private static final int LEFT = 5;
        private static final int SIZE = 6;

        private final Crankcase crankcase;
        private final Breather breather;
        private final Around around;
        private final double speed;
        private final int steps;
        private final double soft;
        /** At every half step: volume and its slope by angle. */
        private final double[] volume;

        private final double[] volumeSlope;

        private final double[] state = new double[SIZE];
        private final double[] tried = new double[SIZE];
        private final double[][] rate = new double[4][SIZE];
        private double highest;
        private double lowest;
        private int turns;

        Turn(Crankcase crankcase, Breather breather, Around around, double speed) {
            this.crankcase = crankcase;
            this.breather = breather;
            this.around = around;
            this.speed = speed;
            double widest = Math.max(breather.out(), breather.in());
            double density = 1.5 * around.pressure() / (GAS_CONSTANT * around.temperature());
            double warm = 1.5 * Math.max(around.temperature(), crankcase.wallTemperature());
            // rate of a drop's decay, times the root of the softening: see rates
            double quick = GAMMA * GAS_CONSTANT * warm * widest / crankcase.smallest() * Math.sqrt(2 * density);
            double needed = quick / Math.sqrt(SOFT) * 2 * Math.PI / speed / LARGEST_STEP;
            this.steps = (int) Math.min(MOST_STEPS, Math.max(FEWEST_STEPS, Math.ceil(needed)));
            double root = quick * 2 * Math.PI / speed / (LARGEST_STEP * steps);
            this.soft = Math.max(SOFT, root * root);
            this.volume = new double[2 * steps + 1];
            this.volumeSlope = new double[2 * steps + 1];
            for (int i = 0; i <= 2 * steps; i++) {
                double angle = Math.PI * i / steps;
                volume[i] = crankcase.volume(angle);
                volumeSlope[i] = crankcase.volumeSlope(angle);
            }
        }

        CrankcasePumping settled() {
            double start = crankcase.volume(0.5 * Math.PI);
            double mass = around.pressure() * start / (GAS_CONSTANT * around.temperature());
            double energy = mass * HEAT * around.temperature() * Math.pow(start / volume[0], GAMMA - 1);
            boolean sealed = breather.out() == 0 && breather.in() == 0;
            boolean still = sealed && crankcase.conductance() == 0;
            double worst = still ? 0 : Double.POSITIVE_INFINITY;
            double before;
            while (worst > SETTLED) {
                before = worst;
                if (turns >= MOST_TURNS) {
                    throw new NotConvergedException("gas in the crankcase", turns, worst, SETTLED);
                }
                turn(mass, energy);
                double m = Math.log(state[MASS] / mass);
                double e = Math.log(state[ENERGY] / energy);
                worst = Math.max(Math.abs(m), Math.abs(e));
                if (worst <= SETTLED) {
                    break;
                }
                turn(mass * (1 + NUDGE), energy);
                double mm = (Math.log(state[MASS] / mass) - m) / Math.log1p(NUDGE) - 1;
                double em = (Math.log(state[ENERGY] / energy) - e) / Math.log1p(NUDGE);
                turn(mass, energy * (1 + NUDGE));
                double me = (Math.log(state[MASS] / mass) - m) / Math.log1p(NUDGE);
                double ee = (Math.log(state[ENERGY] / energy) - e) / Math.log1p(NUDGE) - 1;
                double determinant = mm * ee - me * em;
                double dm = -(m * ee - e * me) / determinant;
                double de = -(e * mm - m * em) / determinant;
                if (sealed) { // the mass stays as it is; only the heat settles
                    dm = 0;
                    de = -e / ee;
                }
                double far = Math.max(Math.abs(dm), Math.abs(de));
                if (far < FARTHEST && worst < CLOSER * before) {
                    mass *= Math.exp(dm);
                    energy *= Math.exp(de);
                } else { // no Newton's step to be had from here: as it runs
                    for (int k = 0; k < PLAIN; k++) {
                        turn(mass, energy);
                        mass = state[MASS];
                        energy = state[ENERGY];
                    }
                    worst = Double.POSITIVE_INFINITY;
                }
            }
            turn(mass, energy);
            return told(mass, energy);
        }

        private CrankcasePumping told(double mass, double energy) {
            double change = state[ENERGY] - energy;
            double back = energy + Math.abs(state[WORK]);
            double meanEffective = -2 * state[WORK] / crankcase.displacement();
            return new CrankcasePumping(
                    meanEffective,
                    state[PRESSURE] / (2 * Math.PI) - around.pressure(),
                    highest - around.pressure(),
                    lowest - around.pressure(),
                    state[LEFT] * speed / (2 * Math.PI),
                    Math.abs(change + state[WORK] - state[HEAT_IN]) / back + Math.abs(Math.log(state[MASS] / mass)));
        }

        private void turn(double mass, double energy) {
            turns++;
            java.util.Arrays.fill(state, 0);
            state[MASS] = mass;
            state[ENERGY] = energy;
            highest = 0;
            lowest = Double.POSITIVE_INFINITY;
            double h = 2 * Math.PI / steps;
            for (int i = 0; i < steps; i++) {
                double pressure = rates(2 * i, state, rate[0]);
                highest = Math.max(highest, pressure);
                lowest = Math.min(lowest, pressure);
                ahead(0.5 * h, rate[0]);
                rates(2 * i + 1, tried, rate[1]);
                ahead(0.5 * h, rate[1]);
                rates(2 * i + 1, tried, rate[2]);
                ahead(h, rate[2]);
                rates(2 * i + 2, tried, rate[3]);
                for (int k = 0; k < SIZE; k++) {
                    state[k] += h / 6 * (rate[0][k] + 2 * (rate[1][k] + rate[2][k]) + rate[3][k]);
                }
            }
        }

        private void ahead(double h, double[] by) {
            tried[MASS] = state[MASS] + h * by[MASS];
            tried[ENERGY] = state[ENERGY] + h * by[ENERGY];
        }

        /** By angle; returns the pressure. */
        private double rates(int place, double[] now, double[] into) {
            double pressure = (GAMMA - 1) * now[ENERGY] / volume[place];
            double temperature = now[ENERGY] / (now[MASS] * HEAT);
            double out = 0;
            double in = 0;
            if (pressure > around.pressure() + breather.cracking()) {
                out = through(breather.out(), pressure, temperature, around.pressure() + breather.cracking());
            } else if (pressure < around.pressure()) {
                in = through(breather.in(), around.pressure(), around.temperature(), pressure);
            }
            double heat = (HEAT + GAS_CONSTANT)
                            * (in * around.temperature()
                                    + around.blowBy() * around.blowByTemperature()
                                    - out * temperature)
                    + crankcase.conductance() * (crankcase.wallTemperature() - temperature);
            double work = pressure * volumeSlope[place];
            into[MASS] = (in + around.blowBy() - out) / speed;
            into[ENERGY] = heat / speed - work;
            into[WORK] = work;
            into[HEAT_IN] = heat / speed;
            into[PRESSURE] = pressure;
            into[LEFT] = out / speed;
            return pressure;
        }

        private double through(double area, double from, double temperature, double to) {
            if (area == 0) {
                return 0;
            }
            double drop = from - to;
            return AirNozzle.mass(area, from, temperature, GAS_CONSTANT, to) * Math.sqrt(drop / (drop + soft));
        }
    }
}
