package longthrow.core.engine;

/**
 * Grades of bolts by their standard. Proof, yield and tensile strength are the standard's least; endurance is of a rolled thread with its notch in
 * it, Budynas and Nisbett, Shigley's Mechanical Engineering Design, table 8-17. ISO 898-1 and SAE J429 (Shigley tables 8-9 and 8-11); from memory. [Pa]
 */
public enum BoltGrade {
    /** Up to 16 mm; thicker ones are a little stronger. */
    ISO_8_8("8.8", 580, 640, 800, 129),
    ISO_9_8("9.8", 650, 720, 900, 140),
    ISO_10_9("10.9", 830, 940, 1040, 162),
    ISO_12_9("12.9", 970, 1100, 1220, 190),
    SAE_5("grade 5", 85 * BoltGrade.KSI, 92 * BoltGrade.KSI, 120 * BoltGrade.KSI, 18.6 * BoltGrade.KSI),
    SAE_8("grade 8", 120 * BoltGrade.KSI, 130 * BoltGrade.KSI, 150 * BoltGrade.KSI, 23.2 * BoltGrade.KSI);

    /** A thousand pounds a square inch [MPa]. */
    private static final double KSI = 6.894757293168;

    /** Young's modulus of bolt steel; Shigley table 8-8. */
    public static final double MODULUS = 207e9;

    /** Share of the proof load that a joint opened now and then is drawn up to; Shigley eq. (8-31). */
    public static final double PRELOAD_SHARE = 0.75;

    private final String label;
    private final double proof;
    private final double yield;
    private final double ultimate;
    private final double endurance;

    BoltGrade(String label, double proof, double yield, double ultimate, double endurance) {
        this.label = label;
        this.proof = proof;
        this.yield = yield;
        this.ultimate = ultimate;
        this.endurance = endurance;
    }

    public String label() {
        return label;
    }

    /** Stress it bears without staying longer. */
    public double proof() {
        return proof * 1e6;
    }

    /** Yield strength. */
    public double yieldStrength() {
        return yield * 1e6;
    }

    /** Tensile strength. */
    public double ultimate() {
        return ultimate * 1e6;
    }

    /** Half the swing that its thread bears for good. */
    public double endurance() {
        return endurance * 1e6;
    }
}
