package longthrow.core.gas;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import longthrow.core.measurement.NotConvergedException;
import longthrow.core.quantity.Require;

/**
 * One kilogram of an ideal gas whose composition does not change: charge, or burned gas that has cooled. The polynomials of its parts are added up once, so
 * a property costs as much as that of one substance; nothing is allocated. Where shares change all the time, add the energies of two of them by mass instead of
 * making a third: energy, enthalpy, heat capacity and gas constant are linear in it (entropy is not).
 *
 * <p>Holds from 200 K; above the fits (3500 K) heat capacities stay constant, see {@link NasaPolynomial}.
 */
public final class Mixture {
    /**
     * [H2O][CO]/([CO2][H2]) of rich burned gas: 3.5, where the water-gas reaction of exhaust gas is taken to stop, that is its constant at some 1740 K.
     * Heywood (1988), section 4.9.2; from memory.
     */
    public static final double WATER_GAS = 3.5;

    /** Richest mixture the products are told of: beyond it soot and hydrocarbons, which are not among them, would appear. */
    public static final double RICHEST = 2;

    /** Hottest a temperature is sought for [K]. */
    public static final double HOTTEST = 6000;

    private static final int MOST_STEPS = 60;
    private static final double SETTLED = 1e-12;

    private final List<Substance> substances;

    /** Amount of each [mol/kg]. */
    private final double[] moles;

    private final NasaPolynomial heat;
    private final double total;
    private final double gasConstant;
    private final double mixingEntropy;

    private Mixture(List<Substance> substances, double[] moles) {
        this.substances = substances;
        this.moles = moles;
        this.heat = NasaPolynomial.sum(substances.stream().map(Substance::heat).toList(), moles);
        double sum = 0;
        for (double amount : moles) {
            sum += amount;
        }
        this.total = sum;
        this.gasConstant = NasaPolynomial.MOLAR_GAS_CONSTANT * sum;
        double mixing = 0;
        for (double amount : moles) {
            mixing -= amount * Math.log(amount / sum);
        }
        this.mixingEntropy = NasaPolynomial.MOLAR_GAS_CONSTANT * mixing;
    }

    /**
     * By amounts in any common measure, as mole fractions or moles per something.
     * @param amounts none below 0, one at least above it
     */
    public static Mixture ofMoles(Map<? extends Substance, Double> amounts) {
        List<Substance> present = amounts.entrySet().stream()
                .filter(entry -> Require.notNegative("amount of " + entry.getKey(), entry.getValue()) > 0)
                .<Substance>map(Map.Entry::getKey)
                .toList();
        if (present.isEmpty()) {
            throw new IllegalArgumentException("a mixture of nothing; give the amount of at least one gas");
        }
        double[] moles = present.stream()
                .mapToDouble(substance -> amounts.getOrDefault(substance, 0.0))
                .toArray();
        double mass = IntStream.range(0, moles.length)
                .mapToDouble(i -> moles[i] * present.get(i).molarMass())
                .sum();
        for (int i = 0; i < moles.length; i++) {
            moles[i] /= mass;
        }
        return new Mixture(present, moles);
    }

    public static Mixture air(MoistAir air) {
        return ofMoles(air.moles(1));
    }

    /** Fuel vapour alone. */
    public static Mixture vapour(Fuel fuel) {
        return ofMoles(Map.of(fuel, 1.0));
    }

    /**
     * Air and fuel, all of it vapour.
     * @param equivalenceRatio fuel to air over that of exact burning, 0 or above
     */
    public static Mixture fresh(Fuel fuel, MoistAir air, double equivalenceRatio) {
        Require.notNegative("equivalence ratio", equivalenceRatio);
        Map<Substance, Double> moles = air.moles(airPerFuel(fuel, air));
        moles.put(fuel, equivalenceRatio);
        return ofMoles(moles);
    }

    /** Moles of air that just burn a mole of fuel. */
    static double airPerFuel(Fuel fuel, MoistAir air) {
        return fuel.atoms().oxygenWanted() / air.oxygen();
    }

    /** Atoms in one kilogram of air and fuel. */
    static Atoms atoms(Fuel fuel, MoistAir air, double equivalenceRatio) {
        Atoms all = air.atoms().times(airPerFuel(fuel, air)).plus(fuel.atoms().times(equivalenceRatio));
        return all.times(1 / all.mass());
    }

    /**
     * What has burned and cooled: CO2, H2O, N2, argon with the oxygen left of a lean mixture, or with the CO and H2 of a rich one by the water-gas
     * constant {@link #WATER_GAS}.
     * @param equivalenceRatio above 0, at most {@link #RICHEST}
     */
    public static Mixture burned(Fuel fuel, MoistAir air, double equivalenceRatio) {
        Require.within("equivalence ratio", equivalenceRatio, 0, RICHEST);
        return burned(atoms(fuel, air, equivalenceRatio));
    }

    /** The same of so many atoms in a kilogram [mol/kg]. */
    static Mixture burned(Atoms atoms) {
        double carbon = atoms.carbon();
        double hydrogen = atoms.hydrogen() / 2;
        double lacking = atoms.oxygenWanted();
        double monoxide = lacking > 0 ? monoxide(carbon, hydrogen, 2 * lacking) : 0;
        double free = Math.max(2 * lacking - monoxide, 0);
        Map<Substance, Double> moles = new LinkedHashMap<>();
        moles.put(Species.N2, atoms.nitrogen() / 2);
        moles.put(Species.O2, Math.max(-lacking, 0));
        moles.put(Species.CO2, carbon - monoxide);
        moles.put(Species.H2O, hydrogen - free);
        moles.put(Species.CO, monoxide);
        moles.put(Species.H2, free);
        moles.put(Species.AR, atoms.argon());
        return ofMoles(moles);
    }

    /**
     * The CO of a rich gas: the root of (H2O)(CO) = K (CO2)(H2) where CO and H2 together make up what oxygen lacks. Written so that nothing cancels.
     * @param lacking atoms of oxygen that it would take to burn everything
     */
    private static double monoxide(double carbon, double hydrogen, double lacking) {
        double b = hydrogen - lacking + WATER_GAS * (carbon + lacking);
        double product = WATER_GAS * lacking * carbon;
        return 2 * product / (b + Math.sqrt(b * b + 4 * (1 - WATER_GAS) * product));
    }

    /**
     * Two of them together.
     * @param share of this one in the mass, 0 to 1
     */
    public Mixture with(Mixture other, double share) {
        Require.within("share of the mass", share, 0, 1);
        Map<Substance, Double> sum = new LinkedHashMap<>();
        for (int i = 0; i < moles.length; i++) {
            sum.merge(substances.get(i), share * moles[i], Double::sum);
        }
        for (int i = 0; i < other.moles.length; i++) {
            sum.merge(other.substances.get(i), (1 - share) * other.moles[i], Double::sum);
        }
        return ofMoles(sum);
    }

    /** What it holds. */
    public List<Substance> substances() {
        return substances;
    }

    /** 0 for what it does not hold. */
    public double moleFraction(Substance substance) {
        int at = substances.indexOf(substance);
        return at < 0 ? 0 : moles[at] / total;
    }

    /** 0 for what it does not hold. */
    public double massFraction(Substance substance) {
        int at = substances.indexOf(substance);
        return at < 0 ? 0 : moles[at] * substance.molarMass();
    }

    /** Atoms in one kilogram [mol/kg]. */
    public Atoms atoms() {
        Atoms sum = new Atoms(0, 0, 0, 0, 0);
        for (int i = 0; i < moles.length; i++) {
            sum = sum.plus(substances.get(i).atoms().times(moles[i]));
        }
        return sum;
    }

    /** [J/(kg K)]. */
    public double gasConstant() {
        return gasConstant;
    }

    /** [kg/mol]. */
    public double molarMass() {
        return 1 / total;
    }

    /** At constant pressure [J/(kg K)]. */
    public double cp(double temperature) {
        return heat.cp(temperature);
    }

    /** At constant volume [J/(kg K)]. */
    public double cv(double temperature) {
        return heat.cp(temperature) - gasConstant;
    }

    /** Above the elements at 298.15 K [J/kg]. */
    public double enthalpy(double temperature) {
        return heat.enthalpy(temperature);
    }

    /** Enthalpy less pressure over density [J/kg]. */
    public double internalEnergy(double temperature) {
        return heat.enthalpy(temperature) - gasConstant * temperature;
    }

    /** With that of mixing [J/(kg K)]. */
    public double entropy(double temperature, double pressure) {
        return heat.entropy(temperature)
                + mixingEntropy
                - gasConstant * Math.log(pressure / NasaPolynomial.STANDARD_PRESSURE);
    }

    /** Ratio of the specific heats. */
    public double gamma(double temperature) {
        double cp = heat.cp(temperature);
        return cp / (cp - gasConstant);
    }

    /** [m/s]. */
    public double soundSpeed(double temperature) {
        return Math.sqrt(gamma(temperature) * gasConstant * temperature);
    }

    /**
     * Where its internal energy is this [K], within 1e-12 of itself.
     * @throws IllegalArgumentException below 200 K or above {@link #HOTTEST}
     */
    public double temperatureOfEnergy(double internalEnergy) {
        return temperature("internal energy", internalEnergy, gasConstant);
    }

    /**
     * Where its enthalpy is this [K], within 1e-12 of itself.
     * @throws IllegalArgumentException below 200 K or above {@link #HOTTEST}
     */
    public double temperatureOfEnthalpy(double enthalpy) {
        return temperature("enthalpy", enthalpy, 0);
    }

    /** Newton between two ends that close in; where a step would leave them, halving. The sought function is enthalpy less {@code less} times temperature. */
    private double temperature(String what, double sought, double less) {
        double low = NasaPolynomial.LOWEST;
        double high = HOTTEST;
        double least = heat.enthalpy(low) - less * low;
        double most = heat.enthalpy(high) - less * high;
        if (!(sought >= least && sought <= most)) {
            throw new IllegalArgumentException(what + " is " + sought + " J/kg; between " + low + " and " + high
                    + " K this gas has " + least + " to " + most + " J/kg above the elements at 298.15 K");
        }
        double t = 1000;
        double step = high;
        for (int k = 0; k < MOST_STEPS; k++) {
            double over = heat.enthalpy(t) - less * t - sought;
            if (over > 0) {
                high = t;
            } else {
                low = t;
            }
            double next = t - over / (heat.cp(t) - less);
            if (!(next >= low && next <= high)) {
                next = 0.5 * (low + high);
            }
            step = Math.abs(next - t);
            t = next;
            if (step <= SETTLED * t) {
                return t;
            }
        }
        throw new NotConvergedException("temperature of a gas [K]", MOST_STEPS, step, SETTLED * t);
    }
}
