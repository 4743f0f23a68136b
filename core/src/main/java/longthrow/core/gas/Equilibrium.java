package longthrow.core.gas;

import java.util.function.DoubleFunction;
import java.util.function.ToDoubleFunction;
import longthrow.core.measurement.NotConvergedException;
import longthrow.core.quantity.Require;

/**
 * Burned gas of one fuel, air and equivalence ratio in chemical equilibrium: CO2, CO, H2O, H2, O2, N2, H, O, OH, NO, N, and argon that takes no part.
 *
 * <p>From {@link #FREEZING} up the composition is that of least Gibbs energy at the temperature and pressure of the gas. Below, reactions are far too slow for
 * that: the composition stops. So that nothing jumps it is that of a temperature which follows the gas down to 1000 K, then lags (900 K +
 * (T - 800 K)2 / 400 K) and from 800 K down stays at 900 K; energy and gas constant and their first derivatives are continuous. Lean and exact
 * mixtures have nothing left to freeze there; rich ones keep the water-gas shares of 900 K, where {@link Mixture#burned} has those of some 1740 K, as
 * exhaust gas is taken to have.
 *
 * <p>Soot, hydrocarbons, NO2 and ions are not among the species. Heat capacities above 3500 K are those of 3500 K (see {@link Species}).
 */
public final class Equilibrium {
    /** Range of what may be asked: temperature [K], pressure [Pa], equivalence ratio. */
    public static final double COLDEST = 250;

    public static final double HOTTEST = 4000;
    public static final double LOWEST_PRESSURE = 0.2e5;
    public static final double HIGHEST_PRESSURE = 250e5;
    public static final double LEANEST = 0.25;
    public static final double RICHEST = Mixture.RICHEST;

    /** Where the composition begins to lag [K], and where it has stopped. */
    public static final double FREEZING = 1000;

    static final double FROZEN = 800;

    private static final int MOST_STEPS = 100;
    private static final double SETTLED = 1e-11;
    private static final double LARGEST_STEP = 0.1;

    /** Where the search for a temperature begins [K]. */
    private static final double START = 2200;

    private final Atoms atoms;
    private final double equivalenceRatio;

    private Equilibrium(Atoms atoms, double equivalenceRatio) {
        this.atoms = atoms;
        this.equivalenceRatio = equivalenceRatio;
    }

    /**
     * All fuel and air together, burned.
     * @param equivalenceRatio fuel to air over that of exact burning, {@link #LEANEST} to {@link #RICHEST}
     */
    public static Equilibrium of(Fuel fuel, MoistAir air, double equivalenceRatio) {
        Require.within("equivalence ratio of burned gas", equivalenceRatio, LEANEST, RICHEST);
        return new Equilibrium(Mixture.atoms(fuel, air, equivalenceRatio), equivalenceRatio);
    }

    /** Atoms in one kilogram [mol/kg]. */
    public Atoms atoms() {
        return atoms;
    }

    public double equivalenceRatio() {
        return equivalenceRatio;
    }

    ElementPotentials potentials() {
        return new ElementPotentials(atoms);
    }

    /** Temperature whose equilibrium the composition is in [K]. */
    static double composition(double temperature) {
        if (temperature >= FREEZING) {
            return temperature;
        }
        double above = Math.max(temperature - FROZEN, 0);
        return 0.5 * (FREEZING + FROZEN) + above * above / (2 * (FREEZING - FROZEN));
    }

    /** Slope of the logarithm of that by the temperature [1/K]. */
    static double compositionSlope(double temperature) {
        double slope = temperature >= FREEZING ? 1 : Math.max(temperature - FROZEN, 0) / (FREEZING - FROZEN);
        return slope / composition(temperature);
    }

    /**
     * The gas at a temperature and a pressure.
     * @throws IllegalArgumentException out of range
     */
    public State at(double temperature, double pressure) {
        return solved(temperature, pressure).inRange();
    }

    /** The same on the way of a search, which may leave the range of pressures and come back. */
    private State solved(double temperature, double pressure) {
        Require.within("burned gas temperature [K]", temperature, COLDEST, HOTTEST);
        Require.positive("burned gas pressure [Pa]", pressure);
        ElementPotentials potentials = new ElementPotentials(atoms);
        potentials.composedAt(composition(temperature));
        potentials.solve(Math.log(pressure / NasaPolynomial.STANDARD_PRESSURE));
        potentials.heatAt(temperature);
        return new State(potentials, temperature, pressure);
    }

    /**
     * Burning at constant pressure without loss.
     * @param enthalpy of what burns [J/kg]
     * @throws IllegalArgumentException if that leaves the range
     */
    public State flameAtConstantPressure(double enthalpy, double pressure) {
        return sought(
                "flame at constant pressure",
                t -> solved(t, pressure),
                state -> (enthalpy - state.enthalpy()) / (state.cp() * state.temperature()));
    }

    /**
     * Burning at constant volume without loss.
     * @param internalEnergy of what burns [J/kg]
     * @param specificVolume [m3/kg]
     * @throws IllegalArgumentException if that leaves the range
     */
    public State flameAtConstantVolume(double internalEnergy, double specificVolume) {
        return sought(
                "flame at constant volume",
                t -> solvedAtVolume(t, specificVolume),
                state -> (internalEnergy - state.internalEnergy()) / (state.cv() * state.temperature()));
    }

    /**
     * Without loss and always in equilibrium to another volume.
     * @param entropy        [J/(kg K)]
     * @param specificVolume [m3/kg]
     * @throws IllegalArgumentException if that leaves the range
     */
    public State expanded(double entropy, double specificVolume) {
        return sought(
                "expansion without loss",
                t -> solvedAtVolume(t, specificVolume),
                state -> (entropy - state.entropy()) / state.cv());
    }

    /** Newton on the temperature, by steps relative to it of a tenth at most. */
    private static State sought(String what, DoubleFunction<State> at, ToDoubleFunction<State> stepWanted) {
        double t = START;
        double step = Double.NaN;
        for (int k = 0; k < MOST_STEPS; k++) {
            State state = at.apply(t);
            step = stepWanted.applyAsDouble(state);
            if (Math.abs(step) < SETTLED) {
                return state.inRange();
            }
            double limited = Math.max(-LARGEST_STEP, Math.min(LARGEST_STEP, step));
            double next = Math.max(COLDEST, Math.min(HOTTEST, t * (1 + limited)));
            if (next == t && (t == COLDEST || t == HOTTEST)) {
                throw new IllegalArgumentException(what + " would end beyond " + t
                        + " K, where burned gas is not told of; look at the energy or entropy given");
            }
            t = next;
        }
        throw new NotConvergedException(what, MOST_STEPS, step, SETTLED);
    }

    /**
     * The gas at a temperature and a specific volume [m3/kg].
     * @throws IllegalArgumentException out of range
     */
    public State atVolume(double temperature, double specificVolume) {
        return solvedAtVolume(temperature, specificVolume).inRange();
    }

    private State solvedAtVolume(double temperature, double specificVolume) {
        Require.positive("specific volume [m3/kg]", specificVolume);
        double logPressure = Math.log(Mixture.burned(atoms).gasConstant() * temperature / specificVolume);
        double step = Double.NaN;
        for (int k = 0; k < MOST_STEPS; k++) {
            State state = solved(temperature, Math.exp(logPressure));
            double wanted = Math.log(state.gasConstant() * temperature / specificVolume);
            step = (wanted - logPressure) / (1 - state.gasConstantByLogPressure() / state.gasConstant());
            if (Math.abs(step) < SETTLED) {
                return state;
            }
            logPressure += step;
        }
        throw new NotConvergedException("pressure of burned gas at constant volume", MOST_STEPS, step, SETTLED);
    }

    /** Burned gas at one temperature and pressure. */
    public static final class State {
        private final double temperature;
        private final double pressure;
        private final double[] moles = new double[ElementPotentials.COUNT + 1];
        private final double total;
        private final BurnedState p = new BurnedState();
        private final double entropy;

        private State(ElementPotentials solved, double temperature, double pressure) {
            this.temperature = temperature;
            this.pressure = pressure;
            solved.properties(compositionSlope(temperature), p);
            this.total = p.gasConstant / NasaPolynomial.MOLAR_GAS_CONSTANT;
            double s = 0;
            double above = Math.log(pressure / NasaPolynomial.STANDARD_PRESSURE);
            for (int j = 0; j < moles.length; j++) {
                moles[j] = solved.amount(j);
                if (moles[j] > 0) {
                    double mixed = Math.log(moles[j] / total) + above;
                    s += moles[j] * (species(j).entropy(temperature) - NasaPolynomial.MOLAR_GAS_CONSTANT * mixed);
                }
            }
            this.entropy = s;
        }

        private State inRange() {
            Require.within("burned gas pressure [Pa]", pressure, LOWEST_PRESSURE, HIGHEST_PRESSURE);
            return this;
        }

        private static Species species(int j) {
            return j < ElementPotentials.COUNT ? ElementPotentials.SPECIES[j] : Species.AR;
        }

        /** [K]. */
        public double temperature() {
            return temperature;
        }

        /** [Pa]. */
        public double pressure() {
            return pressure;
        }

        /** 0 for what burned gas does not hold. */
        public double moleFraction(Species species) {
            return amount(species) / total;
        }

        /** [mol/kg]. */
        public double amount(Species species) {
            for (int j = 0; j < moles.length; j++) {
                if (species(j) == species) {
                    return moles[j];
                }
            }
            return 0;
        }

        /** [J/(kg K)]. */
        public double gasConstant() {
            return p.gasConstant;
        }

        /** [kg/mol]. */
        public double molarMass() {
            return 1 / total;
        }

        /** [m3/kg]. */
        public double specificVolume() {
            return p.gasConstant * temperature / pressure;
        }

        /** [J/kg]. */
        public double internalEnergy() {
            return p.internalEnergy;
        }

        /** [J/kg]. */
        public double enthalpy() {
            return p.internalEnergy + p.gasConstant * temperature;
        }

        /** With that of mixing [J/(kg K)]. */
        public double entropy() {
            return entropy;
        }

        /** At constant pressure [J/(kg K)]. */
        public double energyByTemperature() {
            return p.energyByTemperature;
        }

        /** At constant temperature [J/kg]. */
        public double energyByLogPressure() {
            return p.energyByLogPressure;
        }

        /** At constant pressure [J/(kg K2)]. */
        public double gasConstantByTemperature() {
            return p.gasConstantByTemperature;
        }

        /** At constant temperature [J/(kg K)]. */
        public double gasConstantByLogPressure() {
            return p.gasConstantByLogPressure;
        }

        /** Enthalpy by temperature at constant pressure, the shift of composition in it [J/(kg K)]. */
        public double cp() {
            return p.energyByTemperature + p.gasConstant + temperature * p.gasConstantByTemperature;
        }

        /** Energy by temperature at constant volume, the shift of composition in it [J/(kg K)]. */
        public double cv() {
            double rise = (1 + temperature * p.gasConstantByTemperature / p.gasConstant) / yielding();
            return p.energyByTemperature + p.energyByLogPressure * rise / temperature;
        }

        /** Fall of the logarithm of the volume by that of the pressure at constant temperature; 1 where nothing reacts. */
        private double yielding() {
            return 1 - p.gasConstantByLogPressure / p.gasConstant;
        }

        /** Of waves so slow that the gas stays in equilibrium [m/s]. */
        public double soundSpeed() {
            return Math.sqrt(cp() / cv() * p.gasConstant * temperature / yielding());
        }
    }
}
