package longthrow.core.engine;

import static longthrow.core.engine.Alternative.row;
import static longthrow.core.engine.Bound.millimetres;
import static longthrow.core.engine.Certainty.B;
import static longthrow.core.engine.Certainty.C;
import static longthrow.core.engine.Certainty.D;
import static longthrow.core.engine.Evidence.COMMON_PRACTICE;
import static longthrow.core.engine.Evidence.PART_MAKER;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import longthrow.core.build.Build;
import longthrow.core.term.Choice;

/**
 * Gaps that no sheet tells and that are read when the engine is mocked up, by clay, wire or feeler through two turns by hand. They are
 * no figures of the build file; what is one has its limits in {@link Rule}. Where the trade gives a range, its closer end is a limit
 * here and the wider end stands in the words.
 */
public enum MockUp {
    VALVE_TO_PISTON_INTAKE(
            "intake valve to piston",
            "clay, or soft springs every 5° from 5° to 15° after top dead centre on overlap; not at full lift",
            row("usual", "racing, steel rod; an aluminium rod asks for 0.5 to 0.75 mm more")
                    .when(Condition.when(Choice.VALVE_LAYOUT, "overhead"))
                    .least(millimetres("2.0"))
                    .from(B, "0.080 in", PART_MAKER, COMMON_PRACTICE),
            row("kart", "kart single")
                    .when(Condition.when(Choice.VALVE_LAYOUT, "overhead"))
                    .least(millimetres("2.3"))
                    .from(C, "0.090 in", PART_MAKER)),
    VALVE_TO_PISTON_EXHAUST(
            "exhaust valve to piston",
            "clay, or soft springs every 5° from 15° to 5° before top dead centre on overlap; not at full lift",
            row("usual", "racing, steel rod; an aluminium rod asks for 0.5 to 0.75 mm more")
                    .when(Condition.when(Choice.VALVE_LAYOUT, "overhead"))
                    .least(millimetres("2.5"))
                    .from(B, "0.100 in", PART_MAKER, COMMON_PRACTICE),
            row("kart", "kart single")
                    .when(Condition.when(Choice.VALVE_LAYOUT, "overhead"))
                    .least(millimetres("2.3"))
                    .from(C, "0.090 in", PART_MAKER)),
    ROD_TO_ANYTHING(
            "rod and rod bolts to camshaft and case",
            "wire or clay, two turns by hand, both ways of the end play of crankshaft and camshaft",
            row("steel", "steel rod")
                    .when(Condition.STEEL_ROD)
                    .least(millimetres("1.3"))
                    .from(B, "0.050 in", PART_MAKER, COMMON_PRACTICE),
            row("aluminium", "aluminium rod; 1.5 to 2.0 mm")
                    .when(Condition.ALUMINIUM_ROD)
                    .least(millimetres("1.5"))
                    .from(B, "", PART_MAKER, COMMON_PRACTICE)),
    DIPPER_TO_CASE(
            "dipper to case",
            "clay, two turns by hand; with splash oiling only",
            row("usual", "where there is a dipper")
                    .between(millimetres("1.5"), millimetres("3"))
                    .from(D, "", COMMON_PRACTICE)),
    RETAINER_TO_SEAL(
            "spring retainer to valve seal",
            "at full lift, checking spring in, feeler or caliper",
            row("usual", "at full lift; 1.3 to 1.5 mm")
                    .when(Condition.when(Choice.VALVE_LAYOUT, "overhead"))
                    .least(millimetres("1.3"))
                    .from(B, "", COMMON_PRACTICE)),
    COUNTERWEIGHT_TO_ANYTHING(
            "counterweights to case, sleeve and camshaft",
            "clay, two turns by hand, both ways of the end play of crankshaft and camshaft",
            row("usual", "less than is asked of any other part in the case")
                    .least(millimetres("1.0"))
                    .from(D, "", COMMON_PRACTICE)),
    RETAINER_TO_ROCKER(
            "spring retainer to rocker",
            "wire between retainer and rocker, shut and at full lift",
            row("usual", "shut and at full lift")
                    .when(Condition.when(Choice.VALVE_LAYOUT, "overhead"))
                    .least(millimetres("0.5"))
                    .from(D, "", COMMON_PRACTICE)),
    PUSHROD_TO_TUBE(
            "pushrod to its tube or hole",
            "wire beside the pushrod, two turns by hand, at both lash and full lift",
            row("usual", "at every angle")
                    .when(Condition.when(Choice.VALVE_LAYOUT, "overhead"))
                    .least(millimetres("0.5"))
                    .from(D, "", COMMON_PRACTICE)),
    PLUG_GAP(
            "spark plug gap",
            "wire gauge, new plug",
            row("usual", "magneto, racing")
                    .between(millimetres("0.5"), millimetres("0.75"))
                    .from(C, "", Evidence.SERVICE_MANUAL));

    /** The limits above in a sentence. */
    static final String COMMON_FIGURES =
            "common figures are 1.3 mm for a steel rod, 1.5 to 2.0 mm for aluminium, dipper 1.5 to 3 mm";

    private final String label;
    private final String how;

    @SuppressWarnings("ImmutableEnumChecker") // List.of is immutable, which its type does not say
    private final List<Alternative> alternatives;

    MockUp(String label, String how, Alternative... alternatives) {
        this.label = label;
        this.how = how;
        this.alternatives = List.of(alternatives);
    }

    public String label() {
        return label;
    }

    /** Of one of its forms; stable. */
    public String key(Alternative alternative) {
        return name().toLowerCase(Locale.ROOT) + "." + alternative.key();
    }

    /** How it is read. */
    public String how() {
        return how;
    }

    /** All forms in which the trade states it. */
    public List<Alternative> alternatives() {
        return alternatives;
    }

    /** What is wanted on top of a limit at the valves where the rod is not known to be of steel [m]: aluminium stretches more, by 0.5 to 0.75 mm; the rows say so. */
    private static final double ALUMINIUM_ROD_MORE = 0.5e-3;

    /** What this engine wants on top of each of the limits [m]. */
    public double more(Build build) {
        boolean isAtValve = this == VALVE_TO_PISTON_INTAKE || this == VALVE_TO_PISTON_EXHAUST;
        return isAtValve
                        && build.choice(Choice.ROD_METAL)
                                .filter("steel"::equals)
                                .isEmpty()
                ? ALUMINIUM_ROD_MORE
                : 0;
    }

    /** A limit in words, with what this engine wants on top counted in. */
    public String limits(Alternative alternative, Build build) {
        double more = more(build);
        Optional<Double> least = alternative.lower().flatMap(bound -> bound.value(term -> Optional.empty()));
        return more == 0 || least.isEmpty()
                ? alternative.limits()
                : String.format(
                        Locale.ROOT,
                        "least %.1f mm: %.1f mm, and %.1f mm more because the rod is %s",
                        1e3 * (least.get() + more),
                        1e3 * least.get(),
                        1e3 * more,
                        build.choice(Choice.ROD_METAL).isPresent() ? "not of steel" : "not known to be of steel");
    }

    /** Those that may be meant for this engine. */
    public List<Alternative> applicable(Build build) {
        return alternatives.stream()
                .filter(a -> a.condition().in(build) != Condition.Holds.NO)
                .toList();
    }
}
