package longthrow.core.engine;

import longthrow.core.formula.Expression;

/**
 * Wire of valve springs. Tensile strength A / d^m with d in mm: Budynas and Nisbett, Shigley's Mechanical Engineering Design, table 10-4;
 * shear moduli table 10-5; share of it borne in torsion table 10-6; from memory. [Pa]
 */
public enum SpringWire {
    MUSIC("music wire", 2211, 0.145, 80.0, 0.45, 0.65),
    OIL_TEMPERED("oil-tempered wire", 1855, 0.187, 77.2, 0.50, 0.70),
    CHROME_VANADIUM("chrome-vanadium wire", 2005, 0.168, 77.2, 0.50, 0.70),
    CHROME_SILICON("chrome-silicon wire", 1974, 0.108, 77.2, 0.50, 0.70);

    /** Scatter of the strength, half-width: tables of the makers allow 5 to 8 % either way; common practice, no source. */
    public static final double SPREAD = 0.07;

    /** Density of spring steel [kg/m3]; Shigley table A-5; from memory. */
    public static final double DENSITY = 7850;

    /** Half the swing of shear stress borne for good, not peened, whatever the wire; Zimmerli, Shigley eq. (10-28). */
    public static final double PLAIN_SWING = 241e6;

    /** Mean stress that goes with {@link #PLAIN_SWING}. */
    public static final double PLAIN_MEAN = 379e6;

    /** Half the swing, shot-peened; Shigley eq. (10-29). */
    public static final double PEENED_SWING = 398e6;

    /** Mean stress that goes with {@link #PEENED_SWING}. */
    public static final double PEENED_MEAN = 534e6;

    /** Strength in shear over tensile strength; Shigley eq. (10-30). */
    public static final double SHEAR_ULTIMATE = 0.67;

    private final String label;
    private final double factor;
    private final double exponent;
    private final double shearModulus;
    private final double beforeSet;
    private final double afterSet;

    SpringWire(String label, double factor, double exponent, double shearModulus, double beforeSet, double afterSet) {
        this.label = label;
        this.factor = factor;
        this.exponent = exponent;
        this.shearModulus = shearModulus;
        this.beforeSet = beforeSet;
        this.afterSet = afterSet;
    }

    public String label() {
        return label;
    }

    /** Tensile strength of a wire this thick [m]. */
    public Expression ultimate(Expression diameter) {
        return diameter.times(1e3).power(-exponent).times(factor * 1e6);
    }

    public double shearModulus() {
        return shearModulus * 1e9;
    }

    /** Share of the tensile strength at which a spring begins to set, as wound; Wahl's factor in the stress. */
    public double beforeSet() {
        return beforeSet;
    }

    /** The same once its maker has pressed it solid for good; the middle of the printed range, the stress without Wahl's factor. */
    public double afterSet() {
        return afterSet;
    }
}
