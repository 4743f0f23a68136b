package longthrow.core.recording;

import java.util.Set;

/**
 * Something wrong with rows: found, said, and left to the owner.
 * @param kind   what
 * @param column of the figure that shows it, from 0
 * @param from   the first row, from 0
 * @param to     the last row
 * @param why    what was found against which limit, for people
 * @param rule   the rule with its source
 */
public record RowFault(FaultKind kind, int column, int from, int to, String why, String rule) {
    public RowFault {
        if (from < 0 || to < from) {
            throw new IllegalArgumentException("rows from " + from + " to " + to + "; they run from 0 upwards");
        }
    }

    /**
     * In words, with the lines of the file.
     * @param recording that it is of
     * @param keeps     kinds whose rows their owner keeps all the same
     */
    public String told(Recording recording, Set<FaultKind> keeps) {
        int first = recording.lines().lineOf(from);
        int last = recording.lines().lineOf(to);
        String header = recording.columns().get(column).header();
        String what = !kind.setsAside() ? "" : keeps.contains(kind) ? " (kept, by its owner's word)" : " (set aside)";
        return (first == last ? "line " + first : "lines " + first + " to " + last)
                + (header.isEmpty() ? "" : ", " + header) + ": " + kind.label() + what + ": " + why + "; " + rule;
    }
}
