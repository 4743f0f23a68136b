package longthrow.core.gas;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import longthrow.core.quantity.Require;
import org.jspecify.annotations.Nullable;

/**
 * What is burned, as a liquid of its own and as a vapour that a {@link Mixture} may hold. Heating values are lower ones (water leaves as vapour), at 298.15 K
 * and constant pressure, per kilogram of liquid; the vapour's enthalpy is set so that liquid heating value plus latent heat is what burning it sets free.
 *
 * <p>Petrol is CH1.87 (Heywood 1988, appendix D, table D.4; row THM-06), its vapour isooctane and toluene in the proportion that gives it (a surrogate of two
 * parts, common practice in combustion research, no single source): 106 g/mol, where the table of the U.S. Department of Energy prints 100 to 105. The parts' own
 * enthalpies would set 0.60 MJ/kg less free than is taken: the surrogate is for heat capacity and composition, the heating value for heat. Petrol's two printed heating values (43.44 and 44.0 MJ/kg) and
 * latent heats (349 and 305 kJ/kg) are taken in the middle and kept as the spread. Octane numbers nobody prints are unknown.
 *
 * <p>What is named DOE here: U.S. Department of Energy, Alternative Fuels Data Center, Properties of Fuels, read in public copies; figures in Btu(IT)/lb and
 * lb/gal, converted (2326 J/kg, 119.826 kg/m3).
 */
public final class Fuel implements Substance {
    /** Where enthalpies and heating values stand [K]. */
    static final double REFERENCE = 298.15;

    private static final String HEYWOOD =
            "J. B. Heywood, Internal Combustion Engine Fundamentals (1988), table D.4, from memory";
    private static final String DOE = "DOE, Properties of Fuels";
    private static final String CRC =
            "CRC Handbook of Chemistry and Physics, enthalpy of vaporisation at 298.15 K, from memory";

    /** One pound per US gallon [kg/m3] and one Btu(IT) per pound [J/kg], exact by definition of their units to the digits given. */
    private static final double POUND_PER_GALLON = 0.45359237 / 3.785411784e-3;

    private static final double BTU_PER_POUND = 2326;

    private static final double PETROL_HYDROGEN = 1.87;

    private final String label;
    private final Atoms atoms;
    private final NasaPolynomial heat;
    private final PublishedValue latentHeat;
    private final PublishedValue heatingValue;
    private final Optional<PublishedValue> density;
    private final Optional<PublishedValue> researchOctane;
    private final Optional<PublishedValue> motorOctane;

    private Fuel(
            String label,
            Vapour vapour,
            PublishedValue latentHeat,
            PublishedValue heatingValue,
            Optional<PublishedValue> density,
            Octane octane) {
        this.label = label;
        this.atoms = vapour.atoms;
        this.heat = vapour.heat;
        this.latentHeat = latentHeat;
        this.heatingValue = heatingValue;
        this.density = density;
        this.researchOctane = octane.research;
        this.motorOctane = octane.motor;
    }

    /** Mean molecule of the vapour and its heat. */
    private record Vapour(Atoms atoms, NasaPolynomial heat) {
        static Vapour of(Species species) {
            return new Vapour(species.atoms(), species.heat());
        }

        /** One mole that is so much of one and the rest of the other, their mixing in the entropy. */
        static Vapour mixed(Substance one, double fraction, Substance other) {
            double rest = 1 - fraction;
            double mixing =
                    -NasaPolynomial.MOLAR_GAS_CONSTANT * (fraction * Math.log(fraction) + rest * Math.log(rest));
            NasaPolynomial heat = NasaPolynomial.sum(List.of(one.heat(), other.heat()), new double[] {fraction, rest});
            return new Vapour(one.atoms().times(fraction).plus(other.atoms().times(rest)), heat.raised(0, mixing));
        }

        /** Heat of burning one kilogram of it at the reference [J/kg]. */
        double heatingValue() {
            return molarHeatingValue() / atoms.mass();
        }

        private double molarHeatingValue() {
            return heat.enthalpy(REFERENCE)
                    + atoms.oxygenWanted() * Species.O2.enthalpy(REFERENCE)
                    - atoms.carbon() * Species.CO2.enthalpy(REFERENCE)
                    - atoms.hydrogen() / 2 * Species.H2O.enthalpy(REFERENCE);
        }

        /** With the formation enthalpy that gives this heat of burning [J/kg]. */
        Vapour burning(double heatingValue) {
            return new Vapour(atoms, heat.raised(heatingValue * atoms.mass() - molarHeatingValue(), 0));
        }
    }

    private record Octane(Optional<PublishedValue> research, Optional<PublishedValue> motor) {
        static final Octane UNKNOWN = new Octane(Optional.empty(), Optional.empty());

        static Octane of(PublishedValue research, PublishedValue motor) {
            return new Octane(Optional.of(research), Optional.of(motor));
        }

        /**
         * Petrol's research number as asked. Its motor number lies 8 to 10 below: where EN 228 asks 95 and 98 it asks 85 and 88, and the DOE tables print
         * 88 to 98 with 80 to 88 and 90 to 100 with 81 to 90. The middle is a reading of those limits, not a correlation.
         */
        static Octane petrol(double research) {
            Require.within("research octane number", research, 80, 120);
            return of(
                    PublishedValue.of(research, "as asked"),
                    new PublishedValue(
                            research - 9,
                            research - 10,
                            research - 8,
                            "research number less 8 to 10: limits of EN 228 and of " + DOE));
        }
    }

    /** Petrol without ethanol, its octane number not told. */
    public static Fuel petrol() {
        return petrol(Octane.UNKNOWN);
    }

    /**
     * Petrol without ethanol.
     * @param researchOctane its research octane number, RON, 80 to 120; a pump that prints (R + M)/2 prints some 4 to 5 less
     */
    public static Fuel petrol(double researchOctane) {
        return petrol(Octane.petrol(researchOctane));
    }

    private static Fuel petrol(Octane octane) {
        PublishedValue latent =
                middle(305e3, 150 * BTU_PER_POUND, HEYWOOD + ", 305 kJ/kg; " + DOE + ", about 150 Btu/lb");
        PublishedValue heating =
                middle(18676 * BTU_PER_POUND, 44.0e6, HEYWOOD + ", 44.0 MJ/kg; " + DOE + ", 18 676 Btu/lb");
        PublishedValue density = middle(720, 775, "EN 228: 720 to 775 kg/m3 at 15 °C");
        // 18 - 10 x hydrogen for 8 - x carbon
        double toluene = (18 - 8 * PETROL_HYDROGEN) / (10 - PETROL_HYDROGEN);
        Vapour vapour =
                Vapour.mixed(Species.TOLUENE, toluene, Species.ISOOCTANE).burning(heating.value() + latent.value());
        return new Fuel("petrol", vapour, latent, heating, Optional.of(density), octane);
    }

    private static PublishedValue middle(double low, double high, String source) {
        return new PublishedValue(0.5 * (low + high), low, high, source + "; the middle taken");
    }

    /** Petrol with 10 % of ethanol by volume, its octane number not told. */
    public static Fuel e10() {
        return blended("E10", 0.10, Octane.UNKNOWN);
    }

    /**
     * Petrol with 10 % of ethanol by volume.
     * @param researchOctane of the blend, as the pump prints it; EN 228 asks the same motor numbers of it
     */
    public static Fuel e10(double researchOctane) {
        return blended("E10", 0.10, Octane.petrol(researchOctane));
    }

    /** 85 % ethanol by volume in petrol. What is sold under the name may hold 51 to 83 %: see {@link #petrolWithEthanol}. Octane numbers unknown. */
    public static Fuel e85() {
        return blended("E85", 0.85, Octane.UNKNOWN);
    }

    /**
     * A blend by volume at 15 °C, the volumes taken to add up; octane numbers unknown, for they do not blend in proportion.
     * @param ethanol share of the volume, above 0 and below 1
     */
    public static Fuel petrolWithEthanol(double ethanol) {
        return blended("petrol with ethanol", ethanol, Octane.UNKNOWN);
    }

    private static Fuel blended(String label, double ethanol, Octane octane) {
        if (!(ethanol > 0 && ethanol < 1)) {
            throw new IllegalArgumentException(
                    "ethanol is " + ethanol + " of the volume; it must be above 0 and below 1");
        }
        Fuel alcohol = ethanol();
        Fuel petrol = petrol();
        PublishedValue density = PublishedValue.weighted(
                alcohol.density.orElseThrow(), ethanol, petrol.density.orElseThrow(), 1 - ethanol);
        double share = ethanol * alcohol.density.orElseThrow().value() / density.value();
        double moles = share / alcohol.molarMass();
        double others = (1 - share) / petrol.molarMass();
        return new Fuel(
                label,
                Vapour.mixed(alcohol, moles / (moles + others), petrol),
                PublishedValue.weighted(alcohol.latentHeat, share, petrol.latentHeat, 1 - share),
                PublishedValue.weighted(alcohol.heatingValue, share, petrol.heatingValue, 1 - share),
                Optional.of(density),
                octane);
    }

    public static Fuel methanol() {
        return pure(
                "methanol",
                Species.METHANOL,
                new PublishedValue(
                        37.43e3 / Species.METHANOL.molarMass(),
                        1103e3,
                        506 * BTU_PER_POUND,
                        CRC + "; " + HEYWOOD + ", 1103 kJ/kg (near its boiling point); " + DOE
                                + ", 506 Btu/lb at 60 °F"),
                Optional.of(density(6.63, 0.796)),
                Octane.of(PublishedValue.of(107, DOE), PublishedValue.of(92, DOE)));
    }

    public static Fuel ethanol() {
        return pure(
                "ethanol",
                Species.ETHANOL,
                new PublishedValue(
                        42.32e3 / Species.ETHANOL.molarMass(),
                        840e3,
                        396 * BTU_PER_POUND,
                        CRC + "; " + HEYWOOD + ", 840 kJ/kg (near its boiling point); " + DOE
                                + ", 396 Btu/lb at 60 °F"),
                Optional.of(density(6.61, 0.796)),
                Octane.of(PublishedValue.of(108, DOE), PublishedValue.of(92, DOE)));
    }

    /** Printed as pounds per gallon and as specific gravity, both at 60 °F, 0.6 K above 15 °C; water there 999.0 kg/m3. */
    private static PublishedValue density(double poundsPerGallon, double gravity) {
        double low = poundsPerGallon * POUND_PER_GALLON;
        double high = gravity * 999.0;
        return middle(
                low, high, DOE + ", " + poundsPerGallon + " lb/gal and specific gravity " + gravity + " at 60 °F");
    }

    /** 2,2,4-trimethylpentane, where both octane scales have their 100. */
    public static Fuel isooctane() {
        return pure(
                "isooctane",
                Species.ISOOCTANE,
                new PublishedValue(
                        35.14e3 / Species.ISOOCTANE.molarMass(),
                        35.14e3 / Species.ISOOCTANE.molarMass(),
                        308e3,
                        CRC + "; " + HEYWOOD + ", 308 kJ/kg"),
                Optional.of(PublishedValue.of(696, "CRC Handbook, 692 kg/m3 at 20 °C, brought to 15 °C; from memory")),
                Octane.of(
                        PublishedValue.of(100, "definition of the scale, ASTM D2699"),
                        PublishedValue.of(100, "definition of the scale, ASTM D2700")));
    }

    /** A gas as delivered: no liquid, no latent heat, heating value of the gas. Octane unknown: the scales end below it. */
    public static Fuel methane() {
        return pure(
                "methane",
                Species.METHANE,
                PublishedValue.of(0, "a gas as delivered"),
                Optional.empty(),
                Octane.UNKNOWN);
    }

    private static Fuel pure(
            String label, Species species, PublishedValue latent, Optional<PublishedValue> density, Octane octane) {
        Vapour vapour = Vapour.of(species);
        PublishedValue heating = new PublishedValue(
                vapour.heatingValue() - latent.value(),
                vapour.heatingValue() - latent.high(),
                vapour.heatingValue() - latent.low(),
                "enthalpies of " + species + ", O2, CO2 and H2O at 298.15 K (see Species) less the latent heat");
        return new Fuel(label, vapour, latent, heating, density, octane);
    }

    /** The fuel by the word owners write (choice {@code fuel}); empty for a word that is none. Petrol comes without octane number. */
    public static Optional<Fuel> named(String key) {
        return switch (key) {
            case "petrol" -> Optional.of(petrol());
            case "e10" -> Optional.of(e10());
            case "e85" -> Optional.of(e85());
            case "methanol" -> Optional.of(methanol());
            default -> Optional.empty();
        };
    }

    public String label() {
        return label;
    }

    /** Of the mean molecule of the vapour; isooctane's carbon atoms are 8. */
    @Override
    public Atoms atoms() {
        return atoms;
    }

    /** Of one mole of vapour. */
    @Override
    public NasaPolynomial heat() {
        return heat;
    }

    /** Atoms in one kilogram [mol/kg]. */
    public Atoms atomsPerKilogram() {
        return atoms.times(1 / molarMass());
    }

    /** Mass of air to the mass of fuel it burns, all of both. */
    public double stoichiometricAirFuel(MoistAir air) {
        return atoms.oxygenWanted() / air.oxygen() * air.molarMass() / molarMass();
    }

    /** Lower heating value of the liquid (of methane, of the gas) [J/kg]. */
    public PublishedValue heatingValue() {
        return heatingValue;
    }

    /** Heat taken up in evaporating at 298.15 K [J/kg]; the spread holds what is printed for other temperatures too. */
    public PublishedValue latentHeat() {
        return latentHeat;
    }

    /** Lower heating value of the vapour [J/kg]: liquid and latent heat. */
    public double vapourHeatingValue() {
        return heatingValue.value() + latentHeat.value();
    }

    /** Liquid at 15 °C [kg/m3]; empty for a gas. */
    public Optional<PublishedValue> density() {
        return density;
    }

    /** RON; empty where unknown. */
    public Optional<PublishedValue> researchOctane() {
        return researchOctane;
    }

    /** MON; empty where unknown. */
    public Optional<PublishedValue> motorOctane() {
        return motorOctane;
    }

    /** The same fuel by all that is said of it, so that mixtures know it again. */
    @Override
    public boolean equals(@Nullable Object other) {
        return other instanceof Fuel that
                && label.equals(that.label)
                && atoms.equals(that.atoms)
                && heatingValue.equals(that.heatingValue)
                && latentHeat.equals(that.latentHeat)
                && density.equals(that.density)
                && researchOctane.equals(that.researchOctane)
                && motorOctane.equals(that.motorOctane);
    }

    @Override
    public int hashCode() {
        return Objects.hash(label, atoms, heatingValue, latentHeat, density, researchOctane, motorOctane);
    }

    @Override
    public String toString() {
        return label;
    }
}
