package longthrow.buildfile;

import java.util.List;

/**
 * What became of one row of a catalogue.
 * @param file    it stands in
 * @param line    from 1, where the row begins
 * @param code    as written; empty when it has none
 * @param outcome kept or not
 * @param reasons why not; empty for a kept row
 * @param remarks what to look at in a row all the same
 * @param other   file and line of the row that is the same, or that has the same code; empty for none
 */
public record RowFate(
        String file, int line, String code, Outcome outcome, List<Fault> reasons, List<Note> remarks, String other) {
    public RowFate {
        reasons = List.copyOf(reasons);
        remarks = List.copyOf(remarks);
    }

    /** Kept or not. */
    public enum Outcome {
        KEPT("kept"),
        /** Nothing is lost: an equal row is kept. */
        SAME("the same row again"),
        REFUSED("refused"),
        /** Which of the two is right cannot be told from here; the first one is kept. */
        OTHER_FIGURES("refused: this code stands elsewhere and says something else");

        private final String label;

        Outcome(String label) {
            this.label = label;
        }

        public String label() {
            return label;
        }

        /** Whether the owner has something to mend. */
        public boolean isRefused() {
            return this == REFUSED || this == OTHER_FIGURES;
        }
    }
}
