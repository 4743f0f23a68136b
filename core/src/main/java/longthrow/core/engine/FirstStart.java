package longthrow.core.engine;

import static longthrow.core.engine.Certainty.A;
import static longthrow.core.engine.Certainty.B;
import static longthrow.core.engine.Certainty.C;
import static longthrow.core.engine.Evidence.COMMON_PRACTICE;
import static longthrow.core.engine.Evidence.HANDBOOK;
import static longthrow.core.engine.Evidence.PART_MAKER;
import static longthrow.core.engine.Evidence.SERVICE_MANUAL;
import static longthrow.core.engine.Evidence.STANDARD;

import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import longthrow.core.build.Build;
import longthrow.core.term.Choice;

/**
 * From the assembled engine to a bedded one, step by step, each with where it comes from. The maker's own list stands before it. The
 * cautions beside it are those of {@link Stops#cautions}.
 */
public enum FirstStart {
    MAKERS_LIST(
            Stage.BEFORE,
            "read the part makers' own start and running-in lists; they stand before this one",
            Condition.ALWAYS,
            A,
            "",
            PART_MAKER),
    KILL_SWITCH(
            Stage.BEFORE,
            "kill switch tried, throttle snaps shut by itself, cooling shroud and all guards on",
            Condition.ALWAYS,
            B,
            "hard stop: no start without them",
            COMMON_PRACTICE),
    EXHAUST_OUTSIDE(
            Stage.BEFORE,
            "outdoors, or the exhaust ducted outside and a carbon monoxide alarm on",
            Condition.ALWAYS,
            A,
            "200 ppm, the ceiling, in about 6 s with a 3.7 kW engine in 28 m³, Earnest et al. 1997; limits of NIOSH",
            STANDARD),
    OUT_OF_THE_PLANE(
            Stage.BEFORE,
            "nobody in the plane of the flywheel, loose clothing and hair away, ears protected, extinguisher at hand",
            Condition.ALWAYS,
            A,
            "noise by NIOSH: 85 dBA for 8 h, half the time for each 3 dBA more",
            STANDARD),
    METHANOL_CARD(
            Stage.BEFORE,
            "methanol: bucket of water and wash at hand, gloves and goggles on, fire and skin card read",
            Condition.when(Choice.FUEL, "methanol"),
            A,
            "its flame is invisible; water puts it out",
            STANDARD),
    OIL(
            Stage.BEFORE,
            "oil filled to the maker's mark, then turned by hand with the plug out until the bearings are wet",
            Condition.ALWAYS,
            B,
            "quantity and sort: ask the maker",
            SERVICE_MANUAL,
            COMMON_PRACTICE),
    TWO_TURNS(
            Stage.BEFORE,
            "two full turns by hand: nothing touches, lash as set, spark seen",
            Condition.ALWAYS,
            B,
            "",
            SERVICE_MANUAL,
            COMMON_PRACTICE),
    FIRST_MINUTES(
            Stage.START,
            "start, bring it off idle at once and vary the speed; no long idling, it glazes the bore",
            Condition.ALWAYS,
            B,
            "",
            SERVICE_MANUAL,
            COMMON_PRACTICE),
    WATCH(
            Stage.START,
            "watch for leaks, smoke that does not clear, knocking, heat; stop at once on any noise that was not there",
            Condition.ALWAYS,
            B,
            "",
            COMMON_PRACTICE),
    HEAD_HEAT(
            Stage.START,
            "head under the plug 150 to 200 °C; stop at 230 °C",
            Condition.when(Choice.HEAD_METAL, "aluminium"),
            C,
            "aluminium head",
            COMMON_PRACTICE),
    OIL_HEAT(Stage.START, "oil 80 to 110 °C; stop above 130 °C", Condition.ALWAYS, C, "splash oiling", COMMON_PRACTICE),
    CYCLES(
            Stage.BREAK_IN,
            "three heat cycles of 5 to 10 minutes, load growing, cold in between",
            Condition.ALWAYS,
            C,
            "cast and moly rings",
            SERVICE_MANUAL,
            COMMON_PRACTICE),
    SHORT_HARD_LOADS(
            Stage.BREAK_IN,
            "once warm, short hard loads with easy running between: load seats the rings",
            Condition.ALWAYS,
            B,
            "how long and on which oil is not agreed",
            SERVICE_MANUAL,
            COMMON_PRACTICE),
    DRAIN(
            Stage.BREAK_IN,
            "drain the oil after 20 to 30 minutes and look for metal in it",
            Condition.ALWAYS,
            B,
            "",
            SERVICE_MANUAL,
            COMMON_PRACTICE),
    AGAIN_COLD(
            Stage.BREAK_IN,
            "cold: lash, head bolts as their maker says, flywheel nut and every other nut again",
            Condition.ALWAYS,
            B,
            "",
            SERVICE_MANUAL,
            COMMON_PRACTICE),
    LEAK_DOWN(
            Stage.BREAK_IN,
            "leak-down before and after, crank locked, and both written down",
            Condition.ALWAYS,
            C,
            "hard stop: never with a free crank",
            COMMON_PRACTICE),
    LOG(
            Stage.BREAK_IN,
            "log the first hour minute by minute: speed, heat, noises, what was done",
            Condition.ALWAYS,
            C,
            "",
            HANDBOOK,
            COMMON_PRACTICE);

    /** When. */
    public enum Stage {
        BEFORE("before the first start"),
        START("first start"),
        BREAK_IN("running in");

        private final String label;

        Stage(String label) {
            this.label = label;
        }

        public String label() {
            return label;
        }
    }

    private final Stage stage;
    private final String step;

    @SuppressWarnings("ImmutableEnumChecker") // Condition copies its clauses
    private final Condition condition;

    private final Certainty certainty;
    private final String detail;

    @SuppressWarnings("ImmutableEnumChecker") // List.of is immutable, which its type does not say
    private final List<Evidence> evidence;

    FirstStart(
            Stage stage, String step, Condition condition, Certainty certainty, String detail, Evidence... evidence) {
        this.stage = stage;
        this.step = step;
        this.condition = condition;
        this.certainty = certainty;
        this.detail = detail;
        this.evidence = List.of(evidence);
    }

    /** The steps for this engine, in order; one that may be meant is among them. */
    public static List<FirstStart> of(Build build) {
        return Arrays.stream(values())
                .filter(s -> s.condition.in(build) != Condition.Holds.NO)
                .toList();
    }

    public Stage stage() {
        return stage;
    }

    /** What to do. */
    public String step() {
        return step;
    }

    /** In words, as a rule says it. */
    public String source() {
        return evidence.stream().map(Evidence::label).collect(Collectors.joining("; "))
                + (detail.isEmpty() ? "" : " (" + detail + ")") + "; certainty " + certainty + ", "
                + certainty.meaning();
    }
}
