package longthrow.core.gas;

import java.util.Arrays;
import java.util.List;

/**
 * Heat capacity, enthalpy and entropy of an ideal gas over temperature [K], as pieces of NASA's polynomial with seven coefficients: over the molar
 * gas constant the heat capacity is a1 + a2 T + a3 T2 + a4 T3 + a5 T4, the enthalpy its integral plus a6, the entropy the integral of it over T
 * plus a7. Of one mole of a substance, or of one kilogram of a mixture: the numbers are then per kilogram.
 *
 * <p>Enthalpies count from the elements at 298.15 K, entropies stand at {@link #STANDARD_PRESSURE}. Below {@link #LOWEST} a temperature is refused.
 * Above the upper end of what was fitted the heat capacity stays what it is there; enthalpy and entropy go on from it without a step. Where two
 * fitted pieces meet (1000 K) they differ in their last printed digits: less than 2e-5 of the heat capacity. Reads nothing, allocates nothing.
 *
 * <p>Form: B. J. McBride, S. Gordon, M. A. Reno, Coefficients for Calculating Thermodynamic and Transport Properties of Individual Species, NASA
 * TM-4513 (1993).
 */
public final class NasaPolynomial {
    /** Molar gas constant [J/(mol K)], exact since the 2019 SI. CODATA 2018. */
    public static final double MOLAR_GAS_CONSTANT = 8.314_462_618_153_24;

    /** Pressure at which the entropies stand [Pa]: one atmosphere, as the reference data of GRI-Mech 3.0. */
    public static final double STANDARD_PRESSURE = 101_325;

    /** Lowest temperature of the fits [K]; those of N2 and AR are stated from 300 K on, see {@link Species}. */
    public static final double LOWEST = 200;

    private static final int COEFFICIENTS = 7;

    /** Upper end of each piece but the last, ascending [K]. */
    private final double[] breaks;

    /** Coefficients a1 to a7 of piece k at 7 k. */
    private final double[] a;

    private NasaPolynomial(double[] breaks, double[] a) {
        this.breaks = breaks;
        this.a = a;
    }

    /**
     * Two fitted pieces, and the constant heat capacity above them.
     * @param middle where they meet [K]
     * @param upper  where the second ends [K]
     * @param low    the seven coefficients below the middle
     * @param high   the seven above it
     */
    static NasaPolynomial of(double middle, double upper, double[] low, double[] high) {
        double[] two = new double[2 * COEFFICIENTS];
        System.arraycopy(low, 0, two, 0, COEFFICIENTS);
        System.arraycopy(high, 0, two, COEFFICIENTS, COEFFICIENTS);
        NasaPolynomial fitted = new NasaPolynomial(new double[] {middle}, two);
        double[] three = Arrays.copyOf(two, 3 * COEFFICIENTS);
        double cp = fitted.cp(upper) / MOLAR_GAS_CONSTANT;
        three[14] = cp;
        three[19] = fitted.enthalpy(upper) / MOLAR_GAS_CONSTANT - cp * upper;
        three[20] = fitted.entropy(upper) / MOLAR_GAS_CONSTANT - cp * Math.log(upper);
        return new NasaPolynomial(new double[] {middle, upper}, three);
    }

    /** The weighted sum: of a mixture, with the amounts [mol] in one kilogram (or mole) as weights. Exact, for each piece is linear in its coefficients. */
    static NasaPolynomial sum(List<NasaPolynomial> parts, double[] weights) {
        double[] breaks = parts.stream()
                .flatMapToDouble(part -> Arrays.stream(part.breaks))
                .sorted()
                .distinct()
                .toArray();
        double[] a = new double[(breaks.length + 1) * COEFFICIENTS];
        for (int piece = 0; piece <= breaks.length; piece++) {
            double inside = piece == 0
                    ? LOWEST
                    : piece == breaks.length ? breaks[piece - 1] + 1 : 0.5 * (breaks[piece - 1] + breaks[piece]);
            for (int i = 0; i < weights.length; i++) {
                NasaPolynomial part = parts.get(i);
                int from = part.at(inside);
                for (int k = 0; k < COEFFICIENTS; k++) {
                    a[piece * COEFFICIENTS + k] += weights[i] * part.a[from + k];
                }
            }
        }
        return new NasaPolynomial(breaks, a);
    }

    /** The same heat capacity with every enthalpy raised by this much [J/mol or J/kg] and every entropy by that [J/(mol K) or J/(kg K)]. */
    NasaPolynomial raised(double enthalpy, double entropy) {
        double[] shifted = a.clone();
        for (int k = 0; k < shifted.length; k += COEFFICIENTS) {
            shifted[k + 5] += enthalpy / MOLAR_GAS_CONSTANT;
            shifted[k + 6] += entropy / MOLAR_GAS_CONSTANT;
        }
        return new NasaPolynomial(breaks, shifted);
    }

    /** Where the coefficients of the piece at this temperature begin. */
    private int at(double temperature) {
        if (!(temperature >= LOWEST && temperature < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("temperature is " + temperature + " K; gas properties hold from "
                    + LOWEST + " K up. Give an absolute temperature in kelvin");
        }
        int piece = 0;
        while (piece < breaks.length && temperature >= breaks[piece]) {
            piece++;
        }
        return piece * COEFFICIENTS;
    }

    /** Heat capacity at constant pressure [J/(mol K), of a mixture J/(kg K)]. */
    public double cp(double temperature) {
        int k = at(temperature);
        double t = temperature;
        return MOLAR_GAS_CONSTANT * (a[k] + t * (a[k + 1] + t * (a[k + 2] + t * (a[k + 3] + t * a[k + 4]))));
    }

    /** Enthalpy above the elements at 298.15 K [J/mol, of a mixture J/kg]. */
    public double enthalpy(double temperature) {
        int k = at(temperature);
        double t = temperature;
        double mean = a[k]
                + t
                        * (a[k + 1] * (1.0 / 2)
                                + t * (a[k + 2] * (1.0 / 3) + t * (a[k + 3] * (1.0 / 4) + t * (a[k + 4] * (1.0 / 5)))));
        return MOLAR_GAS_CONSTANT * (a[k + 5] + t * mean);
    }

    /** Entropy at the standard pressure [J/(mol K), of a mixture J/(kg K) without that of mixing]. */
    public double entropy(double temperature) {
        int k = at(temperature);
        double t = temperature;
        double rest =
                t * (a[k + 1] + t * (a[k + 2] * (1.0 / 2) + t * (a[k + 3] * (1.0 / 3) + t * (a[k + 4] * (1.0 / 4)))));
        return MOLAR_GAS_CONSTANT * (a[k] * Math.log(t) + rest + a[k + 6]);
    }
}
