package longthrow.core.gas;

import longthrow.core.quantity.Require;

/**
 * What a substance or mixture is made of [mol of atoms in a mole of it, or in a kilogram where that is said]. Each is 0 or above; a fuel's need not be whole.
 */
public record Atoms(double carbon, double hydrogen, double oxygen, double nitrogen, double argon) {
    /** Molar masses [kg/mol]: IUPAC's abridged standard atomic weights (2021), argon 39.95. */
    static final double CARBON = 12.011e-3;

    static final double HYDROGEN = 1.008e-3;
    static final double OXYGEN = 15.999e-3;
    static final double NITROGEN = 14.007e-3;
    static final double ARGON = 39.95e-3;

    public Atoms {
        Require.notNegative("carbon [mol]", carbon);
        Require.notNegative("hydrogen [mol]", hydrogen);
        Require.notNegative("oxygen [mol]", oxygen);
        Require.notNegative("nitrogen [mol]", nitrogen);
        Require.notNegative("argon [mol]", argon);
    }

    static Atoms fuel(double carbon, double hydrogen, double oxygen) {
        return new Atoms(carbon, hydrogen, oxygen, 0, 0);
    }

    /** Mass of all of them [kg]. */
    public double mass() {
        return carbon * CARBON + hydrogen * HYDROGEN + oxygen * OXYGEN + nitrogen * NITROGEN + argon * ARGON;
    }

    /** Oxygen molecules it takes to burn them to CO2 and H2O, less what they bring [mol]; below 0 where they bring more. */
    public double oxygenWanted() {
        return carbon + hydrogen / 4 - oxygen / 2;
    }

    Atoms times(double factor) {
        return new Atoms(carbon * factor, hydrogen * factor, oxygen * factor, nitrogen * factor, argon * factor);
    }

    Atoms plus(Atoms other) {
        return new Atoms(
                carbon + other.carbon,
                hydrogen + other.hydrogen,
                oxygen + other.oxygen,
                nitrogen + other.nitrogen,
                argon + other.argon);
    }
}
