package longthrow.core.term;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * Two parts of an engine that may touch as it is turned, by the name a mock-up is written down under. Which of them an engine has, and how each is told,
 * is in {@code core.clear}.
 */
public enum MovingPair {
    SKIRT_TO_COUNTERWEIGHT("piston skirt", "counterweight", Of.CRANKWORK),
    BOSS_TO_COUNTERWEIGHT("pin boss", "counterweight", Of.CRANKWORK),
    COUNTERWEIGHT_TO_SLEEVE("counterweight", "lower end of the sleeve", Of.CRANKWORK),
    COUNTERWEIGHT_TO_CASE("counterweight", "case", Of.CRANKWORK),
    ROD_TO_SKIRT("rod beam", "inside of the skirt", Of.CRANKWORK),
    BIG_END_TO_CAM_CORE("rod big end", "camshaft core", Of.CRANKWORK),
    BIG_END_TO_INTAKE_LOBE("rod big end", "intake lobe", Of.CRANKWORK),
    BIG_END_TO_EXHAUST_LOBE("rod big end", "exhaust lobe", Of.CRANKWORK),
    BIG_END_TO_RELEASE("rod big end", "compression release", Of.CRANKWORK),
    BIG_END_TO_CASE("rod big end", "case", Of.CRANKWORK),
    ROD_BOLTS_TO_CAM_CORE("rod bolts", "camshaft core", Of.CRANKWORK),
    ROD_BOLTS_TO_INTAKE_LOBE("rod bolts", "intake lobe", Of.CRANKWORK),
    ROD_BOLTS_TO_EXHAUST_LOBE("rod bolts", "exhaust lobe", Of.CRANKWORK),
    ROD_BOLTS_TO_RELEASE("rod bolts", "compression release", Of.CRANKWORK),
    ROD_BOLTS_TO_CASE("rod bolts", "case", Of.CRANKWORK),
    DIPPER_TO_CAM_CORE("dipper", "camshaft core", Of.CRANKWORK),
    DIPPER_TO_INTAKE_LOBE("dipper", "intake lobe", Of.CRANKWORK),
    DIPPER_TO_EXHAUST_LOBE("dipper", "exhaust lobe", Of.CRANKWORK),
    DIPPER_TO_RELEASE("dipper", "compression release", Of.CRANKWORK),
    DIPPER_TO_CASE("dipper", "case", Of.CRANKWORK),
    ROD_TO_SLEEVE("rod", "lower end of the sleeve", Of.CRANKWORK),
    ROD_BOLTS_TO_SLEEVE("rod bolts", "lower end of the sleeve", Of.CRANKWORK),
    COUNTERWEIGHT_TO_CAM_CORE("counterweight", "camshaft core", Of.CRANKWORK),
    COUNTERWEIGHT_TO_INTAKE_LOBE("counterweight", "intake lobe", Of.CRANKWORK),
    COUNTERWEIGHT_TO_EXHAUST_LOBE("counterweight", "exhaust lobe", Of.CRANKWORK),
    COUNTERWEIGHT_TO_RELEASE("counterweight", "compression release", Of.CRANKWORK),
    PISTON_TO_HEAD("piston crown", "head", Of.STACK),
    TOP_RING_TO_DECK("top ring", "edge of the deck", Of.STACK),
    OIL_RING_TO_SLEEVE_END("oil ring", "lower end of the sleeve", Of.STACK),
    INTAKE_VALVE_TO_PISTON("intake valve", "piston", Of.STACK),
    INTAKE_VALVE_TO_WALL("intake valve", "bore wall", Of.VALVE_GEAR),
    INTAKE_RETAINER_TO_SEAL("intake spring retainer", "valve seal or guide", Of.VALVE_GEAR),
    EXHAUST_VALVE_TO_PISTON("exhaust valve", "piston", Of.STACK),
    EXHAUST_VALVE_TO_WALL("exhaust valve", "bore wall", Of.VALVE_GEAR),
    EXHAUST_RETAINER_TO_SEAL("exhaust spring retainer", "valve seal or guide", Of.VALVE_GEAR),
    VALVE_TO_VALVE("intake valve", "exhaust valve", Of.VALVE_GEAR),
    VALVE_TO_HEAD("open valve", "head", Of.VALVE_GEAR),
    RETAINER_TO_ROCKER("spring retainer", "rocker", Of.VALVE_GEAR),
    PUSHROD_TO_TUBE("pushrod", "its tube or hole", Of.VALVE_GEAR);

    /** What of an engine decides a gap. */
    private enum Of {
        /** Throw, rod and piston, and where shafts stand in their end play. */
        CRANKWORK,
        /** Throw, rod, piston and gasket; end play moves nothing along the cylinder. */
        STACK,
        /** Neither. */
        VALVE_GEAR
    }

    private final String one;
    private final String other;
    private final Of of;

    MovingPair(String one, String other, Of of) {
        this.one = one;
        this.other = other;
        this.of = of;
    }

    /** The pair of this name; empty for one that nobody knows. */
    public static Optional<MovingPair> at(String key) {
        return Arrays.stream(values()).filter(p -> p.key().equals(key)).findFirst();
    }

    /** Name in files and addresses. */
    public String key() {
        return name().toLowerCase(Locale.ROOT);
    }

    /** The part that passes, for people. */
    public String one() {
        return one;
    }

    /** What it passes, for people. */
    public String other() {
        return other;
    }

    /** Both, for people. */
    public String label() {
        return one + " to " + other;
    }

    /** Whether another throw, rod, piston or gasket makes it another gap. */
    public boolean hangsOnStack() {
        return of != Of.VALVE_GEAR;
    }

    /** Whether it is to be read with the shafts pushed both ways of their end play. */
    public boolean hangsOnEndPlay() {
        return of == Of.CRANKWORK;
    }

    /** Readings of its gap at single places: it is never more than one of them. */
    public List<Term> gapsRead() {
        return this == RETAINER_TO_ROCKER
                ? List.of(Term.ROCKER_OVER_RETAINER, Term.ROCKER_OVER_RETAINER_OPEN)
                : List.of();
    }

    /** Whether another camshaft makes it another gap. */
    public boolean hangsOnCamshaft() {
        return !camshaftBy().isEmpty();
    }

    /** Sizes by which the camshaft of a mock-up is known again: lifts of the lobes that play a part, of a pair with the shaft itself its core; none where none plays a part. */
    public List<Term> camshaftBy() {
        return switch (this) {
            case BIG_END_TO_CAM_CORE, ROD_BOLTS_TO_CAM_CORE, DIPPER_TO_CAM_CORE, COUNTERWEIGHT_TO_CAM_CORE ->
                List.of(Term.CAM_CORE);
            case BIG_END_TO_INTAKE_LOBE,
                    ROD_BOLTS_TO_INTAKE_LOBE,
                    DIPPER_TO_INTAKE_LOBE,
                    COUNTERWEIGHT_TO_INTAKE_LOBE,
                    INTAKE_VALVE_TO_PISTON,
                    INTAKE_VALVE_TO_WALL,
                    INTAKE_RETAINER_TO_SEAL -> List.of(Term.INTAKE_LIFT);
            case BIG_END_TO_EXHAUST_LOBE,
                    ROD_BOLTS_TO_EXHAUST_LOBE,
                    DIPPER_TO_EXHAUST_LOBE,
                    COUNTERWEIGHT_TO_EXHAUST_LOBE,
                    BIG_END_TO_RELEASE,
                    ROD_BOLTS_TO_RELEASE,
                    DIPPER_TO_RELEASE,
                    COUNTERWEIGHT_TO_RELEASE,
                    EXHAUST_VALVE_TO_PISTON,
                    EXHAUST_VALVE_TO_WALL,
                    EXHAUST_RETAINER_TO_SEAL -> List.of(Term.EXHAUST_LIFT);
            case VALVE_TO_VALVE, VALVE_TO_HEAD, RETAINER_TO_ROCKER, PUSHROD_TO_TUBE ->
                List.of(Term.INTAKE_LIFT, Term.EXHAUST_LIFT);
            case SKIRT_TO_COUNTERWEIGHT,
                    BOSS_TO_COUNTERWEIGHT,
                    COUNTERWEIGHT_TO_SLEEVE,
                    COUNTERWEIGHT_TO_CASE,
                    ROD_TO_SKIRT,
                    BIG_END_TO_CASE,
                    ROD_BOLTS_TO_CASE,
                    DIPPER_TO_CASE,
                    ROD_TO_SLEEVE,
                    ROD_BOLTS_TO_SLEEVE,
                    PISTON_TO_HEAD,
                    TOP_RING_TO_DECK,
                    OIL_RING_TO_SLEEVE_END -> List.of();
        };
    }

    /** Whether a valve in soft springs, pressed on until it meets something, meets the other part of it. */
    public boolean isMetByValve() {
        return switch (this) {
            case INTAKE_VALVE_TO_PISTON,
                    EXHAUST_VALVE_TO_PISTON,
                    VALVE_TO_VALVE,
                    VALVE_TO_HEAD,
                    INTAKE_RETAINER_TO_SEAL,
                    EXHAUST_RETAINER_TO_SEAL -> true;
            default -> false;
        };
    }

    /** Whether it is of a valve over the piston. */
    public boolean isOverPiston() {
        return this == INTAKE_VALVE_TO_PISTON || this == EXHAUST_VALVE_TO_PISTON;
    }

    /** Whether it is told about the overlap of the valves, where firing top dead centre tells nothing: both are shut. */
    public boolean isAtOverlap() {
        return isOverPiston() || this == VALVE_TO_VALVE;
    }
}
