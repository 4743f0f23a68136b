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
    CRANK_TAPER_FORM("taper", Part.CRANKSHAFT, "taper of the flywheel end as its rate, such as 1:8"),
    FLYWHEEL_TAPER_FORM("taper", Part.FLYWHEEL, "taper of the wheel's bore as its rate, such as 1:8"),
    CRANKSHAFT_METAL("metal", Part.CRANKSHAFT, "what the crankshaft is made of", Option.IRON, Option.STEEL),
    FLYWHEEL_KIND(
            "kind",
            Part.FLYWHEEL,
            "how the wheel is made",
            new Option("spoked_iron", "spoked cast iron"),
            new Option("solid_iron", "solid cast iron"),
            new Option("cast_aluminium", "cast aluminium"),
            new Option("billet_aluminium", "billet aluminium"),
            new Option("steel", "steel")),
    FUEL(
            "fuel",
            Part.USE,
            "what it will burn",
            new Option("petrol", "petrol"),
            new Option("e85", "E85"),
            new Option("methanol", "methanol")),
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
