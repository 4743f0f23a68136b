package longthrow.core.term;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * A part whose outline may be given as it was traced, instead of the few numbers that it is drawn from otherwise. Every outline is the part's shadow along the
 * crankshaft, seen from the end where the crankshaft turns clockwise with the cylinder up: x to the right is then towards the anti-thrust side. Rocker and retainer are
 * shadows along the rocker's axis instead, x away from its pivot. What is round is told by its diameter and has none: a pushrod and its tube, the camshaft's core, a
 * valve; nor has the sleeve's end, for a tube's shadow is solid all across.
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
            Term.RELEASE_SPAN),
    ROCKER(
            "rocker",
            Part.ROCKER,
            "rocker",
            "the middle of the end of the shut valve's stem",
            "along the stem, away from the valve's head",
            Along.OWN_PLANE,
            false,
            Term.ROCKER_OVER_RETAINER,
            Term.ROCKER_OVER_RETAINER_OPEN),
    RETAINER(
            "spring_retainer",
            Part.SPRING,
            "spring retainer",
            "the middle of the end of the valve's stem",
            "along the stem, away from the valve's head",
            Along.OWN_PLANE,
            false,
            Term.RETAINER_OUTSIDE,
            Term.RETAINER_BELOW_TIP);

    /** How its place along the crankshaft is told, from the middle of the crankpin. */
    public enum Along {
        /** Towards the flywheel positive. */
        SIGNED("from the middle of the crankpin, towards the flywheel positive"),
        /** Outwards, alike on both sides. */
        BOTH_SIDES("from the middle of the crankpin outwards, alike on both sides"),
        /** Not at all: it stands around everything. */
        THROUGHOUT("not told: what stands around is taken all along; trace it where it is narrowest"),
        /** Not at all: what it meets lies in the same plane, across the crankshaft or not. */
        OWN_PLANE("not told: rocker and retainer move in a plane of their own");

        private final String meaning;

        Along(String meaning) {
            this.meaning = meaning;
        }

        /** Whether a build file may tell it. */
        public boolean isTold() {
            return this == SIGNED || this == BOTH_SIDES;
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

    /** Where +x points, to the right, and from where it is looked at, for people. */
    public String rightwards() {
        return along == Along.OWN_PLANE
                ? "away from the rocker's pivot. Seen along the rocker's axis"
                : "towards the anti-thrust side. Seen from the end where the crankshaft turns clockwise";
    }

    public Along along() {
        return along;
    }

    /** Whether what is traced is the room inside, and the part stands around it. */
    public boolean isHollow() {
        return along == Along.THROUGHOUT;
    }

    /** Whether its datum lies within what is traced, holes filled. */
    public boolean embracesDatum() {
        return embraces;
    }

    /** Readings that its shape is drawn from where it is not traced. */
    public List<Term> instead() {
        return instead;
    }

    private static final String ROUND = "it is round: its diameter tells all that an outline would";

    /** Why something that stands in some pair is not traced; empty where it is, or where nobody knows such a part. */
    public static Optional<String> whyNot(String key) {
        return Optional.ofNullable(
                switch (key) {
                    case "pushrod", "pushrod_tube", "tube" ->
                        ROUND + ", and a rod in a round tube is told across it (section pushrod)";
                    case "camshaft_core", "cam_core" -> ROUND + " (camshaft.core_diameter)";
                    case "intake_valve", "exhaust_valve", "valve" -> ROUND + ", with its margin";
                    case "sleeve", "sleeve_end" ->
                        "it stands all round: its shadow along the crankshaft is solid from side to side and shows no notch in its end"
                                + " (cylinder.sleeve_length tells where it ends)";
                    default -> null;
                });
    }

    public static List<String> keys() {
        return Arrays.stream(values()).map(OutlinedPart::key).toList();
    }

    public static Optional<OutlinedPart> at(String key) {
        return Arrays.stream(values()).filter(p -> p.key.equals(key)).findFirst();
    }
}
