package longthrow.core.build;

import java.util.Arrays;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import longthrow.core.term.Part;

/**
 * Damage seen, not measured; or that a part was looked over and none was found.
 * @param part  where
 * @param kind  what it looks like
 * @param where in the owner's words; where none was found, first how it was looked over, see {@link How}
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

    /**
     * How a part was looked over. Wheels and rods break from cracks that no eye sees, which dye, magnet powder or a shop shows; a lens does on a cleaned rod, crankshaft
     * or piston, not all over a wheel of rough casting; of a piston, whose cracks at bosses and skirt stand open, the eye alone is the trade's habit. Common practice, no
     * source.
     */
    public enum How {
        DYED("dyed"),
        MAGNET_POWDER("magnet powder"),
        BY_A_SHOP("by a shop"),
        EYE_AND_LENS("eye and lens"),
        BY_EYE("by eye");

        private final String words;

        How(String words) {
            this.words = words;
        }

        /**
         * Whether it shows what breaks a part.
         * @param isMagnetic whether the part is known to be of iron or steel
         */
        boolean tells(Part part, boolean isMagnetic) {
            return switch (this) {
                case DYED, BY_A_SHOP -> true;
                case MAGNET_POWDER -> isMagnetic;
                case EYE_AND_LENS -> part != Part.FLYWHEEL;
                case BY_EYE -> part == Part.PISTON;
            };
        }

        /** What counts, for messages and documents. */
        public static String accepted() {
            return "'dyed', 'by a shop', 'magnet powder' (iron and steel), 'eye and lens' (not a flywheel) or 'by eye' (a piston alone), then a comma and where, such as 'dyed, hub and rim'";
        }
    }

    /** How it was looked over, which stands before the first comma; empty where it is none of the ways that count. */
    public Optional<How> how() {
        String said = where.split(",", 2)[0].strip().replaceAll("\\s+", " ");
        return Arrays.stream(How.values())
                .filter(h -> h.words.equalsIgnoreCase(said))
                .findFirst();
    }

    /** What is found, or that nobody looked: of a part found sound only how it was looked over is said. A judgement, English only. */
    private static final Pattern FOUND = Pattern.compile(
            "\\b(crack|fissure|riss|bruch|weld|repair|mended|seller|says|said|told|line|hairline|chip|bent|bend|twist|scor|scuff|seiz|brok|break|missing|drill|lighten|worn|wear|pit|rust|corro|dent|ding|gouge|nick|burn|damag|loose|not|never|nobody|skip|unknown|unsure|later|todo)[a-z]*\\b",
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
