package longthrow.core.build;

import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import longthrow.core.term.Part;

/**
 * Damage seen, not measured; or that a part was looked over and none was found.
 * @param part  where
 * @param kind  what it looks like
 * @param where in the owner's words
 */
public record Damage(Part part, Kind kind, String where) {
    /** Sorts of damage. */
    public enum Kind {
        CRACK("crack", "a line that stays after wiping, or a crack"),
        BENT("bent", "bent or twisted"),
        SCORED("scored", "deep scores or scuffing"),
        SEIZED("seized", "will not turn"),
        BROKEN("broken", "broken off or missing metal"),
        LIGHTENED("lightened", "drilled, cut or lightened"),
        WORN_KEYWAY("worn_keyway", "keyway or taper damaged"),
        CORRODED("corroded", "pitted by rust or corrosion"),
        /** Looked over and found sound: what a maker's word on an undamaged engine rests on. */
        NONE("none", "looked over, no damage found");

        private final String key;
        private final String label;

        Kind(String key, String label) {
            this.key = key;
            this.label = label;
        }

        public String key() {
            return key;
        }

        public String label() {
            return label;
        }
    }

    /** What is found, or that nobody looked: of a part found sound only how it was looked over is said. A judgement, English only. */
    private static final Pattern FOUND = Pattern.compile(
            "\\b(crack|fissure|riss|bruch|weld|repair|mended|seller|says|said|told|line|chip|bent|bend|twist|scor|scuff|seiz|brok|break|missing|drill|lighten|worn|wear|pit|rust|corro|dent|ding|gouge|nick|burn|damag|loose|not|never|nobody|skip|unknown|unsure|later|todo)[a-z]*\\b",
            Pattern.CASE_INSENSITIVE);

    /** A word in how a part was looked over that speaks of something found, or of not having looked; empty where there is none. */
    public static Optional<String> foundIn(String how) {
        Matcher word = FOUND.matcher(how);
        return word.find() ? Optional.of(word.group()) : Optional.empty();
    }

    /** Whether it says that none was found. */
    public boolean isNone() {
        return kind == Kind.NONE;
    }
}
