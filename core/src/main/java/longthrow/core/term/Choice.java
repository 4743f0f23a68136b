package longthrow.core.term;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/** What an owner says by choosing a word rather than reading a figure. Keys stand in the section of their part. */
public enum Choice {
    VALVE_LAYOUT(
            "valves",
            Part.WHOLE,
            "where the valves are",
            new Option("overhead", "overhead valve"),
            new Option("side", "side-valve")),
    COOLING(
            "cooling",
            Part.WHOLE,
            "what cools the cylinder",
            new Option("fan", "a fan that the engine turns"),
            new Option("wind", "the wind of driving"),
            new Option("liquid", "liquid")),
    MADE_FOR(
            "made_for",
            Part.WHOLE,
            "what its maker made the engine for",
            new Option("utility", "to drive a machine at a governed speed; such an engine stays one in a kart"),
            new Option("road", "to move a vehicle on road or trail"),
            new Option("competition", "to win: its maker built it for racing")),
    DONOR("donor", Part.WHOLE, "what the engine was sold as"),
    CAM_DRIVE(
            "drive",
            Part.CAMSHAFT,
            "where the camshaft runs and what drives it",
            new Option("in_case", "in the case, by gears"),
            new Option("overhead_chain", "overhead, by chain"),
            new Option("overhead_belt", "overhead, by toothed belt")),
    ROCKER_ADJUSTER(
            "adjuster",
            Part.ROCKER,
            "what sets the lash",
            new Option("pivot_nut", "nut at the pivot, on a stud"),
            new Option("pushrod_screw", "screw at the pushrod end"),
            new Option("valve_screw", "screw at the valve end")),
    CYLINDER_METAL("metal", Part.CYLINDER, "what the bore is made of", Option.IRON, Option.ALUMINIUM),
    HEAD_METAL("metal", Part.HEAD, "what the head is made of", Option.IRON, Option.ALUMINIUM),
    PISTON_ALLOY(
            "alloy",
            Part.PISTON,
            "how the piston was made",
            new Option("cast", "cast"),
            new Option("high_silicon_forging", "forged, about 12 % silicon"),
            new Option("low_silicon_forging", "forged, low silicon"),
            new Option("iron", "cast iron")),
    ROD_METAL(
            "metal",
            Part.ROD,
            "what the rod is made of",
            new Option("cast_aluminium", "cast aluminium"),
            new Option("billet_aluminium", "billet aluminium"),
            new Option("steel", "steel")),
    BIG_END_BEARING(
            "big_end_bearing",
            Part.ROD,
            "what runs on the crankpin",
            new Option("bare", "the rod's own metal"),
            new Option("insert", "insert shell"),
            new Option("babbitt", "babbitt"),
            new Option("rolling", "needle or roller")),
    SPRING_METAL(
            "metal",
            Part.SPRING,
            "wire of the valve springs",
            new Option("music", "music wire"),
            new Option("oil_tempered", "oil-tempered wire"),
            new Option("chrome_vanadium", "chrome-vanadium wire"),
            new Option("chrome_silicon", "chrome-silicon wire")),
    ROD_BOLT_GRADE(
            "bolt_grade",
            Part.ROD,
            "strength stamped on the rod bolts",
            Option.CLASS_8_8,
            Option.CLASS_10_9,
            Option.CLASS_12_9,
            Option.GRADE_5,
            Option.GRADE_8),
    ROD_BOLT_LUBRICANT(
            "bolt_lubricant",
            Part.ROD,
            "what is on the threads and under the heads of the rod bolts when they are tightened",
            Option.DRY,
            Option.OIL,
            Option.PASTE),
    ROD_BOLT_INTO(
            "bolt_into",
            Part.ROD,
            "what the rod bolts are screwed into",
            new Option("steel", "steel: a nut or a steel rod"),
            new Option("aluminium", "the aluminium of the rod")),
    CRANK_TAPER_FORM("taper", Part.CRANKSHAFT, "taper of the flywheel end as its rate, such as 1:8"),
    FLYWHEEL_TAPER_FORM("taper", Part.FLYWHEEL, "taper of the wheel's bore as its rate, such as 1:8"),
    MAIN_BEARING(
            "main_bearing",
            Part.CRANKSHAFT,
            "what the main journals run in",
            new Option("plain", "plain bearings"),
            new Option("ball", "ball bearings"),
            new Option("roller", "roller bearings")),
    CRANKSHAFT_METAL("metal", Part.CRANKSHAFT, "what the crankshaft is made of", Option.IRON, Option.STEEL),
    BREATHER(
            "breather",
            Part.CRANKCASE,
            "what lets the crankcase breathe",
            new Option("check_valve", "a check valve: out, not back in"),
            new Option("open_hole", "an open hole or hose: out and in")),
    AIR_FILTER("air_filter", Part.INTAKE, "whether it breathes through an air filter", Option.FITTED, Option.NONE),
    SILENCER("silencer", Part.EXHAUST, "whether the exhaust ends in a silencer", Option.FITTED, Option.NONE),
    INTAKE_RESTRICTOR_EDGE(
            "restrictor_edge",
            Part.INTAKE,
            "how the hole of a restrictor plate under the carburettor is made",
            Option.THIN,
            Option.THICK,
            Option.ROUNDED),
    EXHAUST_RESTRICTOR_EDGE(
            "restrictor_edge",
            Part.EXHAUST,
            "how the hole of a restrictor plate at the exhaust port is made",
            Option.THIN,
            Option.THICK,
            Option.ROUNDED),
    FLYWHEEL_KIND(
            "kind",
            Part.FLYWHEEL,
            "how the wheel is made",
            new Option("spoked_iron", "spoked cast iron"),
            new Option("solid_iron", "solid cast iron"),
            new Option("cast_aluminium", "cast aluminium"),
            new Option("billet_aluminium", "billet aluminium"),
            new Option("steel", "steel")),
    FLYWHEEL_NUT_LUBRICANT(
            "nut_lubricant",
            Part.FLYWHEEL,
            "what is on thread and face of the flywheel nut when it is tightened; the taper itself is dry and clean",
            Option.DRY,
            Option.OIL,
            Option.PASTE),
    CAM_TURN(
            "turns",
            Part.CAMSHAFT,
            "which way the camshaft turns",
            new Option("against", "against the crankshaft, as a gear on its gear"),
            new Option("with", "with the crankshaft, as by chain or belt")),
    LIFTER(
            "lifter",
            Part.CAMSHAFT,
            "what runs on the lobe",
            new Option("flat", "a flat foot"),
            new Option("roller", "a roller")),
    OIL(
            "oil",
            Part.USE,
            "oil in the case",
            new Option("sae_20", "SAE 20"),
            new Option("sae_30", "SAE 30"),
            new Option("sae_40", "SAE 40"),
            new Option("5w_30", "5W-30"),
            new Option("10w_30", "10W-30"),
            new Option("10w_40", "10W-40"),
            new Option("20w_50", "20W-50")),
    FUEL(
            "fuel",
            Part.USE,
            "what it will burn",
            new Option("petrol", "petrol"),
            new Option("e85", "E85"),
            new Option("methanol", "methanol")),
    JETTED_FUEL(
            "jetted_fuel",
            Part.CARBURETTOR,
            "what it burned where the present main jet was right",
            new Option("petrol", "petrol"),
            new Option("e85", "E85"),
            new Option("methanol", "methanol")),
    OCTANE_SCALE(
            "octane_scale",
            Part.USE,
            "by which scale the pump prints the octane number",
            new Option("research", "research (RON)"),
            new Option("mean", "mean of research and motor, (R+M)/2")),
    MAIN_JET_NUMBERING(
            "main_jet_numbering",
            Part.CARBURETTOR,
            "what the number on the main jet counts",
            new Option("hundredths_mm", "hundredths of a millimetre of its bore"),
            new Option("thousandths_in", "thousandths of an inch of its bore"),
            new Option("flow", "its maker's flow, in cc/min or the like"),
            new Option("own", "its maker's own numbers")),
    MAIN_JET_LIQUID(
            "main_jet_liquid",
            Part.CARBURETTOR,
            "what ran through the main jet when its flow was read",
            new Option("water", "water"),
            new Option("petrol", "petrol"),
            new Option("methanol", "methanol")),
    BOWL_VENT(
            "bowl_vent",
            Part.CARBURETTOR,
            "where the air over the fuel in the float bowl comes from",
            new Option("inside", "from the carburettor's mouth, behind the filter"),
            new Option("outside", "from outside")),
    GOVERNOR(
            "governor",
            Part.USE,
            "whether the maker's governor is whole or was taken out",
            new Option("whole", "whole and set as its maker set it"),
            new Option("removed", "taken out, or its arm alone")),
    DUTY(
            "duty",
            Part.USE,
            "how hard it will be used",
            new Option("mild", "utility, show, yard"),
            new Option("oval_or_drag", "oval or drag racing"),
            new Option("boosted", "boosted"));

    private final String key;
    private final Part part;
    private final String meaning;

    @SuppressWarnings("ImmutableEnumChecker") // made by List.of
    private final List<Option> options;

    Choice(String key, Part part, String meaning, Option... options) {
        this.key = key;
        this.part = part;
        this.meaning = meaning;
        this.options = List.of(options);
    }

    /**
     * One word that may be chosen.
     * @param key in the build file
     * @param label for people
     */
    public record Option(String key, String label) {
        static final Option IRON = new Option("iron", "cast iron");
        static final Option ALUMINIUM = new Option("aluminium", "aluminium");
        static final Option STEEL = new Option("steel", "steel");
        static final Option CLASS_8_8 = new Option("class_8_8", "class 8.8");
        static final Option CLASS_10_9 = new Option("class_10_9", "class 10.9");
        static final Option CLASS_12_9 = new Option("class_12_9", "class 12.9");
        static final Option GRADE_5 = new Option("grade_5", "SAE grade 5");
        static final Option GRADE_8 = new Option("grade_8", "SAE grade 8");
        static final Option FITTED = new Option("fitted", "fitted");
        static final Option NONE = new Option("none", "none");
        static final Option THIN = new Option("thin", "square edges, thinner than half its hole");
        static final Option THICK = new Option("thick", "square edges, half its hole or thicker");
        static final Option ROUNDED = new Option("rounded", "rounded or coned where the gas comes in");
        static final Option DRY = new Option("dry", "dry");
        static final Option OIL = new Option("oil", "oil");
        static final Option PASTE = new Option("paste", "assembly paste");
    }

    public static Optional<Choice> at(String path) {
        return Arrays.stream(values()).filter(c -> c.path().equals(path)).findFirst();
    }

    public String key() {
        return key;
    }

    public Part part() {
        return part;
    }

    public String path() {
        return part.key() + "." + key;
    }

    public String meaning() {
        return meaning;
    }

    /** Words allowed; empty when any words will do, or when it {@link #isTaper is a rate of taper}. */
    public List<Option> options() {
        return options;
    }

    /** Whether it is written as a {@link TaperRate}. */
    public boolean isTaper() {
        return this == CRANK_TAPER_FORM || this == FLYWHEEL_TAPER_FORM;
    }

    public Optional<Option> option(String optionKey) {
        return options.stream().filter(o -> o.key().equals(optionKey)).findFirst();
    }
}
