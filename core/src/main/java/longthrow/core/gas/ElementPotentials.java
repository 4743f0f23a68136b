package longthrow.core.gas;

import longthrow.core.measurement.NotConvergedException;

/**
 * Newton's method for one kilogram of burned gas in chemical equilibrium at given temperature and pressure. Mutable, one thread.
 *
 * <p>At the least Gibbs energy every species has n_j = exp(sum_i a_ij pi_i + eta - g_j/RT - ln p/p0): four potentials pi of the elements C, H, O, N and
 * eta, the logarithm of all moles, are the only unknowns. They must give the atoms there are and add up to all moles. So S. Gordon and B. J. McBride, NASA
 * RP-1311 (1994), chapter 2, in the potentials alone, and W. C. Reynolds, The Element Potential Method, Stanford (1986). Argon takes part in the moles only.
 *
 * <p>The first guess takes CO2, CO, H2O, H2, O2, N2 alone, whose oxygen balance is one rising function of the root of the O2 there is. A step is shortened while it would
 * change a species of weight by more than e squared, or raise a trace to weight. Derivatives by temperature and pressure come from the last matrix.
 */
final class ElementPotentials {
    static final Species[] SPECIES = {
        Species.CO2,
        Species.CO,
        Species.H2O,
        Species.H2,
        Species.O2,
        Species.N2,
        Species.H,
        Species.O,
        Species.OH,
        Species.NO,
        Species.N
    };
    static final int COUNT = SPECIES.length;

    private static final int UNKNOWNS = 5;
    private static final int CO2 = 0;
    private static final int CO = 1;
    private static final int H2O = 2;
    private static final int H2 = 3;
    private static final int O2 = 4;
    private static final int N2 = 5;

    private static final int MOST_STEPS = 200;
    /** Largest change of a logarithm in the last step, of any species, and weighted by its mole fraction: what is left is its square. */
    private static final double LAST_STEP = 1e-4;

    private static final double LAST_WEIGHTED_STEP = 1e-11;
    /** A species of weight has this mole fraction or more, a trace may rise to the other in one step; both as logarithms, as in NASA RP-1311. */
    private static final double WEIGHT = Math.log(1e-8);

    private static final double RISEN = Math.log(1e-4);
    private static final double LARGEST_CHANGE = 2;

    /** Atoms C, H, O, N of species j at 4 j. */
    private static final double[] A = atomsOfSpecies();

    /** Atoms C, H, O, N of the gas and its argon [mol/kg]. */
    private final double[] b;

    private final double argon;

    /** Gibbs energy over RT, enthalpy over RT of each species at the temperature of composition. */
    private final double[] gibbs = new double[COUNT];

    private final double[] enthalpy = new double[COUNT];

    /** Energy [J/mol] and heat capacity at constant volume [J/(mol K)] of each species, argon last, at the temperature of the gas. */
    private final double[] energy = new double[COUNT + 1];

    private final double[] capacity = new double[COUNT + 1];

    /** Potentials of C, H, O, N, and the logarithm of all moles. */
    private final double[] x = new double[UNKNOWNS];

    /** Amounts [mol/kg]. */
    private final double[] n = new double[COUNT];

    /** Change of the logarithm of each amount by that of the temperature of composition, and of the pressure. */
    private final double[] byTemperature = new double[COUNT];

    private final double[] byPressure = new double[COUNT];

    /** Of the unknowns, the same two. */
    private final double[] xByTemperature = new double[UNKNOWNS];

    private final double[] xByPressure = new double[UNKNOWNS];

    /** Rows of 5 with two right sides. */
    private final double[] matrix = new double[UNKNOWNS * WIDTH];

    private static final int WIDTH = UNKNOWNS + 2;

    private double compositionTemperature;

    ElementPotentials(Atoms perKilogram) {
        this.b =
                new double[] {perKilogram.carbon(), perKilogram.hydrogen(), perKilogram.oxygen(), perKilogram.nitrogen()
                };
        this.argon = perKilogram.argon();
    }

    private static double[] atomsOfSpecies() {
        double[] a = new double[4 * COUNT];
        for (int j = 0; j < COUNT; j++) {
            Atoms atoms = SPECIES[j].atoms();
            a[4 * j] = atoms.carbon();
            a[4 * j + 1] = atoms.hydrogen();
            a[4 * j + 2] = atoms.oxygen();
            a[4 * j + 3] = atoms.nitrogen();
        }
        return a;
    }

    /** The temperature at which the composition is in equilibrium [K]. */
    void composedAt(double temperature) {
        compositionTemperature = temperature;
        double rt = NasaPolynomial.MOLAR_GAS_CONSTANT * temperature;
        for (int j = 0; j < COUNT; j++) {
            double h = SPECIES[j].enthalpy(temperature);
            enthalpy[j] = h / rt;
            gibbs[j] = (h - temperature * SPECIES[j].entropy(temperature)) / rt;
        }
    }

    /** The temperature of the gas [K], at which its energy is taken. */
    void heatAt(double temperature) {
        double rt = NasaPolynomial.MOLAR_GAS_CONSTANT * temperature;
        for (int j = 0; j <= COUNT; j++) {
            Species species = j < COUNT ? SPECIES[j] : Species.AR;
            energy[j] = species.enthalpy(temperature) - rt;
            capacity[j] = species.cp(temperature) - NasaPolynomial.MOLAR_GAS_CONSTANT;
        }
    }

    /** From scratch at the temperature of composition. */
    void solve(double logPressure) {
        guess(logPressure);
        settle(logPressure);
    }

    /** From the last solution, gone on along its derivatives. */
    void solveFrom(double logTemperatureStep, double logPressureStep, double logPressure) {
        for (int i = 0; i < UNKNOWNS; i++) {
            x[i] += xByTemperature[i] * logTemperatureStep + xByPressure[i] * logPressureStep;
        }
        settle(logPressure);
    }

    private void guess(double logPressure) {
        double moles = b[0] + 0.5 * b[1] + 0.5 * b[3] + argon + Math.max(0, 0.5 * b[2] - b[0] - 0.25 * b[1]);
        double carbon = b[0] / moles;
        double hydrogen = 0.5 * b[1] / moles;
        double surplus = (b[2] - 2 * b[0] - 0.5 * b[1]) / moles;
        double half = 0.5 * (gibbs[O2] + logPressure);
        double kCarbon = Math.exp(gibbs[CO2] - gibbs[CO] - half);
        double kHydrogen = Math.exp(gibbs[H2O] - gibbs[H2] - half);
        double low = -80;
        double high = 0;
        while (high - low > 1e-3) {
            double y = Math.exp(0.5 * (low + high));
            double over =
                    2 * y * y - carbon * kCarbon / (y + kCarbon) - hydrogen * kHydrogen / (y + kHydrogen) - surplus;
            if (over > 0) {
                high = 0.5 * (low + high);
            } else {
                low = 0.5 * (low + high);
            }
        }
        double root = Math.exp(high);
        x[2] = high + half;
        x[0] = Math.log(carbon * root / (root + kCarbon)) + gibbs[CO2] + logPressure - 2 * x[2];
        x[1] = 0.5 * (Math.log(hydrogen * root / (root + kHydrogen)) + gibbs[H2O] + logPressure - x[2]);
        x[3] = 0.5 * (Math.log(0.5 * b[3] / moles) + gibbs[N2] + logPressure);
        x[4] = Math.log(moles);
    }

    private void amounts(double logPressure) {
        double base = x[4] - logPressure;
        for (int j = 0; j < COUNT; j++) {
            int k = 4 * j;
            n[j] = Math.exp(A[k] * x[0] + A[k + 1] * x[1] + A[k + 2] * x[2] + A[k + 3] * x[3] + base - gibbs[j]);
        }
    }

    private void settle(double logPressure) {
        double worst = Double.NaN;
        for (int step = 0; step < MOST_STEPS; step++) {
            amounts(logPressure);
            double total = Math.exp(x[4]);
            fillMatrix(total);
            double left0 = b[0];
            double left1 = b[1];
            double left2 = b[2];
            double left3 = b[3];
            double left4 = total - argon;
            for (int j = 0; j < COUNT; j++) {
                int k = 4 * j;
                left0 -= A[k] * n[j];
                left1 -= A[k + 1] * n[j];
                left2 -= A[k + 2] * n[j];
                left3 -= A[k + 3] * n[j];
                left4 -= n[j];
            }
            right(0, left0, left1, left2, left3, left4);
            right(1, 0, 0, 0, 0, 0);
            eliminate();
            double scale = 1;
            double weighted = 0;
            worst = 0;
            for (int j = 0; j < COUNT; j++) {
                double change = change(j, UNKNOWNS);
                double size = Math.abs(change);
                double fraction = n[j] / total;
                worst = Math.max(worst, size);
                weighted = Math.max(weighted, size * fraction);
                if (size > LARGEST_CHANGE) {
                    scale = Math.min(scale, shortened(change, Math.log(fraction)));
                }
            }
            for (int i = 0; i < UNKNOWNS; i++) {
                x[i] += scale * matrix[i * WIDTH + UNKNOWNS];
            }
            if (scale == 1 && worst < LAST_STEP && weighted < LAST_WEIGHTED_STEP) {
                finish(logPressure);
                return;
            }
        }
        throw new NotConvergedException(
                "equilibrium of burned gas at " + compositionTemperature + " K", MOST_STEPS, worst, LAST_STEP);
    }

    private static double shortened(double change, double logFraction) {
        if (logFraction > WEIGHT) {
            return LARGEST_CHANGE / Math.abs(change);
        }
        return change > 0 ? Math.min(1, Math.max(RISEN - logFraction, LARGEST_CHANGE) / change) : 1;
    }

    /** Logarithm of an amount by the unknowns' change that stands in a column of the solved matrix. */
    private double change(int j, int column) {
        int k = 4 * j;
        return A[k] * matrix[column]
                + A[k + 1] * matrix[WIDTH + column]
                + A[k + 2] * matrix[2 * WIDTH + column]
                + A[k + 3] * matrix[3 * WIDTH + column]
                + matrix[4 * WIDTH + column];
    }

    private void finish(double logPressure) {
        amounts(logPressure);
        fillMatrix(Math.exp(x[4]));
        for (int i = 0; i < UNKNOWNS; i++) {
            double temperature = 0;
            double pressure = 0;
            for (int j = 0; j < COUNT; j++) {
                double weight = i < 4 ? A[4 * j + i] * n[j] : n[j];
                temperature -= weight * enthalpy[j];
                pressure += weight;
            }
            matrix[i * WIDTH + UNKNOWNS] = temperature;
            matrix[i * WIDTH + UNKNOWNS + 1] = pressure;
        }
        eliminate();
        for (int i = 0; i < UNKNOWNS; i++) {
            xByTemperature[i] = matrix[i * WIDTH + UNKNOWNS];
            xByPressure[i] = matrix[i * WIDTH + UNKNOWNS + 1];
        }
        for (int j = 0; j < COUNT; j++) {
            byTemperature[j] = change(j, UNKNOWNS) + enthalpy[j];
            byPressure[j] = change(j, UNKNOWNS + 1) - 1;
        }
    }

    private void fillMatrix(double total) {
        double[] m = matrix;
        double cc = n[CO2] + n[CO];
        double co = 2 * n[CO2] + n[CO];
        double hh = 4 * n[H2O] + 4 * n[H2] + n[6] + n[8];
        double ho = 2 * n[H2O] + n[8];
        double h = 2 * n[H2O] + 2 * n[H2] + n[6] + n[8];
        double oo = 4 * n[CO2] + n[CO] + n[H2O] + 4 * n[O2] + n[7] + n[8] + n[9];
        double on = n[9];
        double o = 2 * n[CO2] + n[CO] + n[H2O] + 2 * n[O2] + n[7] + n[8] + n[9];
        double nn = 4 * n[N2] + n[9] + n[10];
        double nitrogen = 2 * n[N2] + n[9] + n[10];
        double all = n[0] + n[1] + n[2] + n[3] + n[4] + n[5] + n[6] + n[7] + n[8] + n[9] + n[10];
        row(m, 0, cc, 0, co, 0, cc);
        row(m, WIDTH, 0, hh, ho, 0, h);
        row(m, 2 * WIDTH, co, ho, oo, on, o);
        row(m, 3 * WIDTH, 0, 0, on, nn, nitrogen);
        row(m, 4 * WIDTH, cc, h, o, nitrogen, all - total);
    }

    private static void row(double[] m, int at, double c, double h, double o, double n, double all) {
        m[at] = c;
        m[at + 1] = h;
        m[at + 2] = o;
        m[at + 3] = n;
        m[at + 4] = all;
    }

    private void right(int side, double c, double h, double o, double nitrogen, double all) {
        int at = UNKNOWNS + side;
        matrix[at] = c;
        matrix[WIDTH + at] = h;
        matrix[2 * WIDTH + at] = o;
        matrix[3 * WIDTH + at] = nitrogen;
        matrix[4 * WIDTH + at] = all;
    }

    /** Gauss and Jordan with the largest pivot of each column; both right sides become solutions. */
    private void eliminate() {
        double[] m = matrix;
        for (int p = 0; p < UNKNOWNS; p++) {
            int best = p;
            for (int i = p + 1; i < UNKNOWNS; i++) {
                if (Math.abs(m[i * WIDTH + p]) > Math.abs(m[best * WIDTH + p])) {
                    best = i;
                }
            }
            if (best != p) {
                for (int k = p; k < WIDTH; k++) {
                    double swap = m[p * WIDTH + k];
                    m[p * WIDTH + k] = m[best * WIDTH + k];
                    m[best * WIDTH + k] = swap;
                }
            }
            double inverse = 1 / m[p * WIDTH + p];
            for (int k = p + 1; k < WIDTH; k++) {
                m[p * WIDTH + k] *= inverse;
            }
            for (int i = 0; i < UNKNOWNS; i++) {
                double factor = m[i * WIDTH + p];
                if (i != p && factor != 0) {
                    for (int k = p + 1; k < WIDTH; k++) {
                        m[i * WIDTH + k] -= factor * m[p * WIDTH + k];
                    }
                }
            }
        }
    }

    /** Amount of a species [mol/kg]. */
    double amount(int j) {
        return j < COUNT ? n[j] : argon;
    }

    /**
     * Energy, gas constant and their derivatives at the temperature of the gas.
     * @param slope of the logarithm of the temperature of composition by the temperature of the gas [1/K]
     */
    void properties(double slope, BurnedState into) {
        double u = argon * energy[COUNT];
        double cv = argon * capacity[COUNT];
        double shiftT = 0;
        double shiftP = 0;
        double moles = argon;
        double molesT = 0;
        double molesP = 0;
        for (int j = 0; j < COUNT; j++) {
            double t = n[j] * byTemperature[j];
            double p = n[j] * byPressure[j];
            u += n[j] * energy[j];
            cv += n[j] * capacity[j];
            shiftT += t * energy[j];
            shiftP += p * energy[j];
            moles += n[j];
            molesT += t;
            molesP += p;
        }
        into.internalEnergy = u;
        into.energyByTemperature = cv + slope * shiftT;
        into.energyByLogPressure = shiftP;
        into.gasConstant = NasaPolynomial.MOLAR_GAS_CONSTANT * moles;
        into.gasConstantByTemperature = NasaPolynomial.MOLAR_GAS_CONSTANT * slope * molesT;
        into.gasConstantByLogPressure = NasaPolynomial.MOLAR_GAS_CONSTANT * molesP;
    }
}
