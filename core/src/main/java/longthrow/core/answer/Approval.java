package longthrow.core.answer;

import java.util.List;
import java.util.OptionalDouble;

/**
 * What may be done with the whole engine. Refused, a limit passed or damage seen, is not the same as not approved, data missing or too uncertain.
 * @param verdict of the whole
 * @param asked   speed it was held against [rad/s]; empty when none is wanted
 * @param upTo    highest speed that is approved [rad/s]; empty unless approved
 * @param canHave highest speed that could be had as it is, once every stop on damage is settled [rad/s]; empty when no maker's speed is known
 * @param said    the verdict in one sentence
 * @param reasons why, gravest first
 * @param unlocks what would lift it, in the order in which to do or buy it
 * @param instead what can be had instead; empty when approved
 */
public record Approval(
        State verdict,
        OptionalDouble asked,
        OptionalDouble upTo,
        OptionalDouble canHave,
        String said,
        List<String> reasons,
        List<Unlock> unlocks,
        String instead) {
    public Approval {
        reasons = List.copyOf(reasons);
        unlocks = List.copyOf(unlocks);
        if ((verdict == State.APPROVED) != upTo.isPresent()) {
            throw new IllegalArgumentException("an engine is approved up to a speed, or not approved");
        }
    }

    /** The three verdicts. */
    public enum State {
        REFUSED("REFUSED"),
        NOT_APPROVED("NOT APPROVED"),
        APPROVED("APPROVED");

        private final String label;

        State(String label) {
            this.label = label;
        }

        public String key() {
            return name().toLowerCase(java.util.Locale.ROOT);
        }

        public String label() {
            return label;
        }
    }

    /**
     * One thing that would help.
     * @param what  to do, buy, read or ask
     * @param why   which limits it is for
     * @param price for people; that it is not known where no catalogue says it; empty where nothing is bought
     * @param code  of the catalogue's part; empty for none
     */
    public record Unlock(String what, String why, String price, String code) {}
}
