package longthrow.core.fit;

import longthrow.core.answer.Sureness;
import org.jspecify.annotations.Nullable;

/**
 * Whether two parts go into each other.
 * @param sureness worst of the gaps between them
 * @param unknowns  gaps on which one of them says nothing
 * @param cuts      machine operations that make them fit
 * @param price     of those operations, whole hundredths
 * @param obstacle  what keeps them apart; null when nothing does
 */
public record Pairing(
        Sureness sureness,
        int unknowns,
        int cuts,
        long price,
        @Nullable Obstacle obstacle) {
    /** Nothing between them. */
    public static final Pairing FREE = new Pairing(Sureness.SURE, 0, 0, 0, null);

    /** Kept apart. */
    public static Pairing never(Obstacle obstacle) {
        return new Pairing(Sureness.NO, 0, 0, 0, obstacle);
    }

    boolean fits() {
        return sureness != Sureness.NO;
    }

    Pairing and(Pairing other) {
        return new Pairing(
                Sureness.worse(sureness, other.sureness),
                unknowns + other.unknowns,
                cuts + other.cuts,
                price + other.price,
                fits() ? other.obstacle : obstacle);
    }
}
