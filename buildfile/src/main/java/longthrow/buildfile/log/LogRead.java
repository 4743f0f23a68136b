package longthrow.buildfile.log;

import java.util.List;
import longthrow.core.recording.Recording;

/**
 * What was read: every line of the file is a row of the recording or is listed.
 * @param layout    what the log was read as
 * @param recording the rows kept
 * @param listed    the lines that are no rows, each with why
 * @param lines     how many lines the file has: rows kept and lines listed
 * @param badCells  cells of kept rows that hold something that is no figure
 * @param badCellsInAll how many there are, with those beyond the ones kept here
 * @param emptyCells how many cells of kept rows say nothing
 * @param notes     what else to know, for people
 */
public record LogRead(
        LogLayout layout,
        Recording recording,
        ListedLines listed,
        int lines,
        List<BadCell> badCells,
        int badCellsInAll,
        long emptyCells,
        List<String> notes) {
    /** So many are told one by one. */
    static final int MOST_BAD_CELLS = 1000;

    public LogRead {
        badCells = List.copyOf(badCells);
        notes = List.copyOf(notes);
    }

    /**
     * A cell that cannot be read; its row says nothing there.
     * @param line   from 1
     * @param column from 0
     */
    public record BadCell(int line, int column) {}
}
