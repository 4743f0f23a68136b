package longthrow.core.gas;

/** What a gas mixture may hold: a species, or the vapour of a fuel taken as one. All of it is per mole; ideal gas. */
public sealed interface Substance permits Species, Fuel {
    /** Heat capacity, enthalpy and entropy of one mole. */
    NasaPolynomial heat();

    /** Atoms in one mole. */
    Atoms atoms();

    /** [kg/mol]. */
    default double molarMass() {
        return atoms().mass();
    }
}
