package longthrow.core.power;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import longthrow.core.answer.Answer;
import longthrow.core.answer.Approval;
import longthrow.core.answer.LimitLadder;
import longthrow.core.answer.Rung;
import longthrow.core.answer.Rung.State;
import longthrow.core.answer.Rung.Weight;
import longthrow.core.answer.Stop;
import longthrow.core.answer.TorqueCurve.Standing;
import longthrow.core.answer.Verdict;
import longthrow.core.engine.GapStops;
import longthrow.core.engine.Stops;
import longthrow.core.quantity.Units;

/**
 * Whether an engine may be run at a speed, by what {@code life} found at the one speed it was asked for. What is passed there is passed above; below, what was refused for its speed alone is no more than not approved,
 * until it is asked for.
 */
final class SpeedStanding {
    private static final double ROUNDING = 1e-9;

    private final Approval approval;
    private final List<Rung> rungs;
    private final List<Stop> stops;

    /**
     * By an answer to life.
     * @param life what {@code life} answers of the same build
     */
    SpeedStanding(Answer life) {
        LimitLadder ladder = life.ladder()
                .orElseThrow(() -> new IllegalArgumentException("an answer without limits; hand in that of life"));
        this.approval = ladder.approval();
        this.rungs = ladder.rungs();
        this.stops = life.stops();
    }

    /**
     * One speed.
     * @param standing approved, not approved, refused
     * @param why      in words
     */
    record At(Standing standing, String why) {}

    /** At a speed of the crank [rad/s]. */
    At at(double speed) {
        Optional<String> refused = refused(speed);
        if (refused.isPresent()) {
            return new At(Standing.REFUSED, refused.get());
        }
        OptionalDouble upTo = approval.upTo();
        if (upTo.isPresent() && speed <= upTo.getAsDouble() * (1 + ROUNDING)) {
            return new At(Standing.APPROVED, "");
        }
        return new At(Standing.NOT_APPROVED, upTo.isPresent() ? "above what is approved" : notApproved());
    }

    /** Why no speed is, and what life offers instead. */
    private String notApproved() {
        return approval.instead().isEmpty() ? approval.said() : approval.said() + "; instead: " + approval.instead();
    }

    private Optional<String> refused(double speed) {
        boolean isRefused = approval.verdict() == Approval.State.REFUSED;
        if (isRefused
                && (approval.asked().isEmpty() || speed >= approval.asked().getAsDouble() * (1 - ROUNDING))) {
            return Optional.of(refusal());
        }
        if (isRefused && isAtAnySpeed()) {
            return Optional.of(refusal());
        }
        return rungs.stream()
                .filter(rung -> isPassed(rung, speed))
                .findFirst()
                .map(rung -> rung.label() + " ends at "
                        + Math.round(Units.RPM.fromSi(rung.speed().orElseThrow().value())) + " rpm");
    }

    /** In the words of life, and by what. */
    private String refusal() {
        List<String> by = rungs.stream()
                .filter(Rung::isRefused)
                .map(Rung::label)
                .distinct()
                .toList();
        return by.isEmpty() ? approval.said() : approval.said() + ", for " + String.join("; ", by);
    }

    /** Damage, parts that touch, and limits that no speed decides; what else is refused without a limit of speed that says why counts as such, to be on the safe side. */
    private boolean isAtAnySpeed() {
        List<Rung> refused = rungs.stream().filter(Rung::isRefused).toList();
        boolean isDamage =
                stops.stream().anyMatch(s -> s.refused() && (Stops.isOfDamage(s) || GapStops.isOfTouching(s)));
        return isDamage
                || refused.isEmpty()
                || refused.stream().anyMatch(rung -> rung.speed().isEmpty());
    }

    /** Up to the speed asked for a maker's word covers what a sum does not show; past it nothing does. */
    private boolean isPassed(Rung rung, double speed) {
        if (rung.weight() != Weight.REFUSES || rung.speed().isEmpty()) {
            return false;
        }
        boolean isCovered = rung.state() == State.COVERED
                && approval.asked().isPresent()
                && speed <= approval.asked().getAsDouble() * (1 + ROUNDING);
        return !isCovered && rung.speed().get().probabilityAtLeast(speed * (1 - ROUNDING)) <= 1 - Verdict.SURE;
    }
}
