package longthrow.workshop.web.life;

import java.util.List;

/**
 * What an owner tells beside readings: which parts were looked over, gas traces, and how the hours are spent.
 * @param base    address of the build
 * @param token   that changes carry
 * @param based   revision that it is told of
 * @param key     of the next edit, for once
 * @param parts   to look over
 * @param traces  there are
 * @param duty    how the hours are spent
 * @param sent    of a trace, to be put right
 * @param faults  of what was sent
 */
public record Telling(
        String base,
        String token,
        int based,
        String key,
        List<Looked> parts,
        List<Trace> traces,
        Duty duty,
        Sent sent,
        List<String> faults) {
    public Telling {
        parts = List.copyOf(parts);
        traces = List.copyOf(traces);
        faults = List.copyOf(faults);
    }

    /** How many of them somebody looked over. */
    public String lookedSaid() {
        long said = parts.stream().filter(part -> !part.how().isEmpty()).count();
        return "said of " + said + " of " + parts.size() + " parts";
    }

    /**
     * A part to look over.
     * @param how    it was looked over and found sound; empty where nobody said so
     * @param damage that was seen on it; empty for none
     */
    public record Looked(String key, String label, String how, String damage) {}

    /** A trace there is, by its number. */
    public record Trace(int number, String words) {}

    /**
     * How the hours are spent.
     * @param said in words, a step each; none where no duty is stated
     * @param rows to state it in, filled with what stands there or was typed
     */
    public record Duty(List<String> said, List<Row> rows) {
        public Duty {
            said = List.copyOf(said);
            rows = List.copyOf(rows);
        }
    }

    /** A step as it is typed. */
    public record Row(int number, String speed, String share) {}

    /** A trace as it was typed. */
    public record Sent(
            String speed,
            String pressure,
            String air,
            String cycles,
            String within,
            String unit,
            String note,
            String rows) {
        static final Sent NOTHING = new Sent("", "absolute", "", "mean", "", "kPa", "", "");
    }
}
