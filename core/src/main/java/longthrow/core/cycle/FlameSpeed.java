package longthrow.core.cycle;

import java.util.List;
import longthrow.core.gas.Atoms;
import longthrow.core.gas.Fuel;
import longthrow.core.gas.NasaPolynomial;
import longthrow.core.gas.Species;
import longthrow.core.quantity.Require;

/**
 * Laminar speed of a flame through a mixture of a fuel with air and burned gas, by published fits.
 *
 * <p>S = S0 (T / T0)^alpha (p / p0)^beta, times what is left by burned gas. Petrol: D. B. Rhodes and J. C. Keck, SAE 850047 (1985), as in Heywood (1988), eqs. 9.33 to
 * 9.37 (S0 = 30.5 - 54.9 (phi - 1.21)^2 cm/s; alpha = 2.4 - 0.271 phi^3.51; beta = -0.357 + 0.14 phi^2.77). Isooctane and methanol: M. Metghalchi and J. C. Keck, Combustion and Flame
 * 48 (1982) 191 (BM 26.3 and 36.9 cm/s at 1.13 and 1.11, Bphi -84.7 and -140.5; alpha = 2.18 - 0.8 (phi - 1); beta = -0.16 + 0.22 (phi - 1)). Ethanol: O. L. Gülder, SAE 841000 (1984): S0 = 0.465 phi^0.25
 * exp(-6.34 (phi - 1.075)^2) m/s at 300 K; alpha = 1.75; beta = -0.17 sqrt(phi) where rich, -0.17 / sqrt(phi) where lean. Burned gas of mole fraction x leaves 1 - 2.06 x^0.77 (Rhodes and Keck, for petrol;
 * taken for all). All constants from memory. Read in the abstract of Metghalchi and Keck: the form, its ranges (phi 0.8 to 1.5, 0.4 to 50 atm, 298 to 700 K, up to 0.2 of burned
 * gas by mass, which leaves 1 - 2.1 f) and that it holds within 10 %.
 *
 * <p>Petrol with ethanol: the mean of the two speeds, weighted by the heat each part of the blend sets free (an energy rule, which L. Sileghem and others, Fuel 115 (2014) 32, found to serve
 * for alcohols in petrol; from memory).
 */
public final class FlameSpeed {
    /** Equivalence ratios the fits were made from; petrol's was made from 0.7 to 1.6, the others as above. */
    public static final double LEANEST = 0.7;

    public static final double RICHEST = 1.6;

    /** Of the unburned gas, to which the fits were made [K]. */
    public static final double COLDEST = 298;

    public static final double HOTTEST = 700;

    /** [Pa]. */
    public static final double THINNEST = 0.4 * NasaPolynomial.STANDARD_PRESSURE;

    public static final double DENSEST = 50 * NasaPolynomial.STANDARD_PRESSURE;

    /** Mole fraction of burned gas up to which the fit was made (0.3, from memory). */
    public static final double MOST_BURNED = 0.3;

    /**
     * Relative standard uncertainty within the ranges: the 10 % within which its authors say the fit holds, taken whole, because the measurements of different
     * laboratories differ by as much (judgement).
     */
    private static final double FIT_DOUBT = 0.10;

    private static final double CENTIMETRE = 0.01;

    private final List<Part> parts;

    private FlameSpeed(List<Part> parts) {
        this.parts = List.copyOf(parts);
    }

    /** One fit and the share of the heat that its fuel brings. */
    private record Part(Fit fit, double share) {}

    private enum Fit {
        PETROL {
            @Override
            double at(double phi, double temperature, double atmospheres) {
                double still = CENTIMETRE * (30.5 - 54.9 * (phi - 1.21) * (phi - 1.21));
                double alpha = 2.4 - 0.271 * Math.pow(phi, 3.51);
                double beta = -0.357 + 0.14 * Math.pow(phi, 2.77);
                return still * Math.pow(temperature / 298, alpha) * Math.pow(atmospheres, beta);
            }
        },
        ISOOCTANE {
            @Override
            double at(double phi, double temperature, double atmospheres) {
                return metghalchi(26.3, -84.7, 1.13, phi, temperature, atmospheres);
            }
        },
        METHANOL {
            @Override
            double at(double phi, double temperature, double atmospheres) {
                return metghalchi(36.9, -140.5, 1.11, phi, temperature, atmospheres);
            }
        },
        ETHANOL {
            @Override
            double at(double phi, double temperature, double atmospheres) {
                double root = Math.sqrt(phi);
                double beta = phi > 1 ? -0.17 * root : -0.17 / root;
                double still = 0.465 * Math.pow(phi, 0.25) * Math.exp(-6.34 * (phi - 1.075) * (phi - 1.075));
                return still * Math.pow(temperature / 300, 1.75) * Math.pow(atmospheres, beta);
            }
        };

        /** Speed without burned gas [m/s]; below 0 where the fit has none. */
        abstract double at(double phi, double temperature, double atmospheres);

        private static double metghalchi(
                double most, double curve, double best, double phi, double temperature, double atmospheres) {
            double still = CENTIMETRE * (most + curve * (phi - best) * (phi - best));
            double alpha = 2.18 - 0.8 * (phi - 1);
            double beta = -0.16 + 0.22 * (phi - 1);
            return still * Math.pow(temperature / 298, alpha) * Math.pow(atmospheres, beta);
        }
    }

    /**
     * The fit for a fuel.
     * @throws IllegalArgumentException for a fuel without one (methane)
     */
    public static FlameSpeed of(Fuel fuel) {
        Atoms atoms = fuel.atoms();
        if (atoms.equals(Species.METHANOL.atoms())) {
            return new FlameSpeed(List.of(new Part(Fit.METHANOL, 1)));
        }
        if (atoms.equals(Species.ISOOCTANE.atoms())) {
            return new FlameSpeed(List.of(new Part(Fit.ISOOCTANE, 1)));
        }
        double ethanol = atoms.oxygen(); // moles of ethanol in one of the blend: petrol has no oxygen
        double carbon = ethanol * Species.ETHANOL.atoms().carbon()
                + (1 - ethanol) * Fuel.petrol().atoms().carbon();
        if (!(Math.abs(atoms.carbon() - carbon) < 1e-9)) {
            throw new IllegalArgumentException("there is no flame speed for " + fuel
                    + "; there is one for petrol, ethanol, blends of the two, isooctane and methanol");
        }
        double heatOfEthanol = ethanol * Fuel.ethanol().vapourHeatingValue() * Species.ETHANOL.molarMass();
        double heatOfPetrol = (1 - ethanol)
                * Fuel.petrol().vapourHeatingValue()
                * Fuel.petrol().molarMass();
        double share = heatOfEthanol / (heatOfEthanol + heatOfPetrol);
        return new FlameSpeed(List.of(new Part(Fit.PETROL, 1 - share), new Part(Fit.ETHANOL, share)));
    }

    /**
     * Speed into the unburned gas [m/s]; 0 where the fit has no flame left (so lean, rich or full of burned gas), which is far outside what it was made for:
     * ask {@link #known} too.
     * @param equivalenceRatio fuel over what the air can burn, above 0
     * @param temperature      of the unburned gas [K]
     * @param pressure         [Pa]
     * @param burned           mole fraction of burned gas among the unburned, 0 to 1
     */
    public double at(double equivalenceRatio, double temperature, double pressure, double burned) {
        Require.positive("equivalence ratio", equivalenceRatio);
        Require.positive("temperature of the unburned gas [K]", temperature);
        Require.positive("pressure [Pa]", pressure);
        Require.within("burned gas [mole fraction]", burned, 0, 1);
        double atmospheres = pressure / NasaPolynomial.STANDARD_PRESSURE;
        double speed = 0;
        for (Part part : parts) {
            if (part.share > 0) {
                speed += part.share * Math.max(0, part.fit.at(equivalenceRatio, temperature, atmospheres));
            }
        }
        return speed * left(burned);
    }

    /**
     * Relative standard uncertainty where {@link #known}: that of the fit, and for burned gas a rectangle as wide as what Rhodes and Keck are below Metghalchi and Keck (who had 2.1 times the share), over the speed. 1, which is to say not
     * known, with more burned gas than the fit was made with.
     * @param burned mole fraction of burned gas among the unburned, 0 to 1
     */
    public static double doubt(double burned) {
        Require.within("burned gas [mole fraction]", burned, 0, 1);
        if (burned > MOST_BURNED) {
            return 1;
        }
        double left = left(burned);
        return Math.hypot(FIT_DOUBT, Math.abs(1 - 2.1 * burned - left) / (2 * Math.sqrt(3) * left));
    }

    /** Of the speed, with so much burned gas. */
    private static double left(double burned) {
        return Math.max(0, 1 - 2.06 * Math.pow(burned, 0.77));
    }

    /** Whether the fits were made from measurements that reach there. What lies beyond is carried on by formula. */
    public static boolean known(double equivalenceRatio, double temperature, double pressure, double burned) {
        return equivalenceRatio >= LEANEST
                && equivalenceRatio <= RICHEST
                && temperature >= COLDEST
                && temperature <= HOTTEST
                && pressure >= THINNEST
                && pressure <= DENSEST
                && burned >= 0
                && burned <= MOST_BURNED;
    }
}
