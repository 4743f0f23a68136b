package longthrow.core.term;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * A part whose outline may be given as it was traced, instead of the few numbers that it is drawn from otherwise. Every outline is the part's shadow along the
 * crankshaft, seen from the end where the crankshaft turns clockwise with the cylinder up: x to the right is then towards the anti-thrust side.
 */
public enum OutlinedPart {
    COUNTERWEIGHT(
            "counterweight",
            Part.CRANKSHAFT,
            "counterweight",
            "the crankshaft axis",
            "towards the crankpin",
            Along.BOTH_SIDES,
            false,
            Term.COUNTERWEIGHT_RADIUS),
    ROD(
            "connecting_rod",
            Part.ROD,
            "rod with cap and bolts",
            "the big end's centre",
            "towards the small end",
            Along.SIGNED,
            true,
            Term.BIG_END_REACH,
            Term.BOLT_OUT,
            Term.BOLT_UP,
            Term.BOLT_DOWN,
            Term.BEAM_WIDTH),
    DIPPER(
            "dipper",
            Part.ROD,
            "dipper",
            "the big end's centre",
            "towards the small end; the dipper lies below",
            Along.SIGNED,
            false,
            Term.DIPPER_REACH,
            Term.DIPPER_WIDTH),
    PISTON_SKIRT(
            "piston_skirt",
            Part.PISTON,
            "piston skirt",
            "the pin's centre",
            "towards the crown",
            Along.SIGNED,
            false,
            Term.SKIRT_BELOW_PIN),
    PIN_BOSS(
            "pin_boss",
            Part.PISTON,
            "pin boss",
            "the pin's centre",
            "towards the crown",
            Along.SIGNED,
            false,
            Term.BOSS_BELOW_PIN),
    CASE(
            "case",
            Part.CYLINDER,
            "inside of the case",
            "the crankshaft axis",
            "up along the cylinder; where the case opens to the cylinder, carry both sides straight up past the pin",
            Along.THROUGHOUT,
            true,
            Term.CASE_BELOW,
            Term.CASE_THRUST,
            Term.CASE_ANTITHRUST),
    INTAKE_LOBE(
            "intake_lobe",
            Part.CAMSHAFT,
            "intake lobe",
            "the camshaft axis",
            "towards the nose, where it lifts most",
            Along.SIGNED,
            true,
            Term.CAM_BASE_CIRCLE,
            Term.INTAKE_LASH,
            Term.ROCKER_PUSHROD_ARM,
            Term.ROCKER_VALVE_ARM),
    EXHAUST_LOBE(
            "exhaust_lobe",
            Part.CAMSHAFT,
            "exhaust lobe",
            "the camshaft axis",
            "towards the nose, where it lifts most",
            Along.SIGNED,
            true,
            Term.CAM_BASE_CIRCLE,
            Term.EXHAUST_LASH,
            Term.ROCKER_PUSHROD_ARM,
            Term.ROCKER_VALVE_ARM),
    RELEASE(
            "compression_release",
            Part.CAMSHAFT,
            "compression release",
            "the camshaft axis",
            "towards the nose of the exhaust lobe; the weight swung out",
            Along.SIGNED,
            false,
            Term.CAM_CORE,
            Term.RELEASE_REACH,
            Term.RELEASE_ANGLE,
            Term.RELEASE_SPAN);

    /** How its place along the crankshaft is told, from the middle of the crankpin. */
    public enum Along {
        /** Towards the flywheel positive. */
        SIGNED("from the middle of the crankpin, towards the flywheel positive"),
        /** Outwards, alike on both sides. */
        BOTH_SIDES("from the middle of the crankpin outwards, alike on both sides"),
        /** Not at all: it stands around everything. */
        THROUGHOUT("not told: what stands around is taken all along; trace it where it is narrowest");

        private final String meaning;

        Along(String meaning) {
            this.meaning = meaning;
        }

        /** For people. */
        public String meaning() {
            return meaning;
        }
    }

    private final String key;
    private final Part part;
    private final String label;
    private final String datum;
    private final String upwards;
    private final Along along;
    private final boolean embraces;

    @SuppressWarnings("ImmutableEnumChecker") // List.of is immutable, which its type does not say
    private final List<Term> instead;

    OutlinedPart(
            String key,
            Part part,
            String label,
            String datum,
            String upwards,
            Along along,
            boolean embracesDatum,
            Term... instead) {
        this.key = key;
        this.part = part;
        this.label = label;
        this.datum = datum;
        this.upwards = upwards;
        this.along = along;
        this.embraces = embracesDatum;
        if (instead.length == 0) {
            throw new IllegalArgumentException(label + " says no reading that its outline counts for");
        }
        this.instead = List.of(instead);
    }

    /** Word in a build file. */
    public String key() {
        return key;
    }

    /** Section of a build file that has the few numbers of it. */
    public Part part() {
        return part;
    }

    /** For people, in the middle of a sentence. */
    public String label() {
        return label;
    }

    /** Where (0, 0) is. */
    public String datum() {
        return datum;
    }

    /** Where +y points. */
    public String upwards() {
        return upwards;
    }

    public Along along() {
        return along;
    }

    /** Whether its datum lies within what is traced, holes filled. */
    public boolean embracesDatum() {
        return embraces;
    }

    /** Readings that its shape is drawn from where it is not traced. */
    public List<Term> instead() {
        return instead;
    }

    public static List<String> keys() {
        return Arrays.stream(values()).map(OutlinedPart::key).toList();
    }

    public static Optional<OutlinedPart> at(String key) {
        return Arrays.stream(values()).filter(p -> p.key.equals(key)).findFirst();
    }
}
