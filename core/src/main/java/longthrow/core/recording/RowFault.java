package longthrow.core.recording;

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
}
