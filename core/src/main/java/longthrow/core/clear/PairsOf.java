package longthrow.core.clear;

import java.util.EnumSet;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import longthrow.core.engine.MockUp;
import longthrow.core.term.MovingPair;
import longthrow.core.term.Term;

/** The pairs that a gap of the trade is wanted of, so that what was mocked up can be said at that gap. */
public final class PairsOf {
    private static final Map<Term, MovingPair> BY_FIGURE = Map.of(
            Term.SQUISH, MovingPair.PISTON_TO_HEAD,
            Term.SKIRT_TO_COUNTERWEIGHT, MovingPair.SKIRT_TO_COUNTERWEIGHT,
            Term.BOSS_TO_COUNTERWEIGHT, MovingPair.BOSS_TO_COUNTERWEIGHT,
            Term.TOP_RING_TO_DECK, MovingPair.TOP_RING_TO_DECK,
            Term.VALVE_TO_VALVE, MovingPair.VALVE_TO_VALVE,
            Term.INTAKE_TO_WALL, MovingPair.INTAKE_VALVE_TO_WALL,
            Term.EXHAUST_TO_WALL, MovingPair.EXHAUST_VALVE_TO_WALL,
            Term.VALVE_TO_HEAD, MovingPair.VALVE_TO_HEAD);

    private PairsOf() {}

    /** Pairs of a gap that is read at the mock-up; none where it is no gap of moving parts. */
    public static Set<MovingPair> gap(MockUp gap) {
        return switch (gap) {
            case VALVE_TO_PISTON_INTAKE -> EnumSet.of(MovingPair.INTAKE_VALVE_TO_PISTON);
            case VALVE_TO_PISTON_EXHAUST -> EnumSet.of(MovingPair.EXHAUST_VALVE_TO_PISTON);
            case ROD_TO_ANYTHING -> {
                Set<MovingPair> swinging = EnumSet.range(MovingPair.BIG_END_TO_CAM_CORE, MovingPair.DIPPER_TO_RELEASE);
                swinging.addAll(
                        EnumSet.of(MovingPair.ROD_TO_SKIRT, MovingPair.ROD_TO_SLEEVE, MovingPair.ROD_BOLTS_TO_SLEEVE));
                yield swinging;
            }
            case DIPPER_TO_CASE -> EnumSet.of(MovingPair.DIPPER_TO_CASE);
            case RETAINER_TO_SEAL ->
                EnumSet.of(MovingPair.INTAKE_RETAINER_TO_SEAL, MovingPair.EXHAUST_RETAINER_TO_SEAL);
            case COUNTERWEIGHT_TO_ANYTHING -> {
                Set<MovingPair> turning =
                        EnumSet.range(MovingPair.COUNTERWEIGHT_TO_CAM_CORE, MovingPair.COUNTERWEIGHT_TO_RELEASE);
                turning.addAll(EnumSet.of(MovingPair.COUNTERWEIGHT_TO_SLEEVE, MovingPair.COUNTERWEIGHT_TO_CASE));
                yield turning;
            }
            case RETAINER_TO_ROCKER -> EnumSet.of(MovingPair.RETAINER_TO_ROCKER);
            case PUSHROD_TO_TUBE -> EnumSet.of(MovingPair.PUSHROD_TO_TUBE);
            case PLUG_GAP -> EnumSet.noneOf(MovingPair.class);
        };
    }

    /** The pair whose gap a figure is; empty where it is none. */
    public static Optional<MovingPair> figure(Term term) {
        return Optional.ofNullable(BY_FIGURE.get(term));
    }
}
