package longthrow.buildfile.log;

import java.util.List;
import java.util.Optional;
import longthrow.core.quantity.Unit;
import longthrow.core.recording.Channel;
import longthrow.core.recording.Sureness;

/**
 * What a log was recognised to be, for its owner to confirm.
 * @param encoding    of its text: "UTF-8", "UTF-16LE", ...
 * @param isPacked    whether it was packed by gzip
 * @param lineEnd     "LF", "CRLF" or "CR"
 * @param delimiter   what parts the cells, in words
 * @param mark        the decimal mark, '.' or ','
 * @param grouping    what stands between thousands; 0 where nothing does
 * @param headerLine  the line that names the columns, from 1; 0 where there is none
 * @param unitsLine   the line of their units; 0 where there is none
 * @param firstLine   the first line of figures
 * @param columns     what they mean
 * @param questions   what cannot be told from the file
 * @param fingerprint the same for all logs of this layout; by it what the owner said is remembered
 * @param isFingerprintWeak whether other layouts may share it, as there is no header
 */
public record LogLayout(
        String encoding,
        boolean isPacked,
        String lineEnd,
        String delimiter,
        char mark,
        char grouping,
        int headerLine,
        int unitsLine,
        int firstLine,
        List<Column> columns,
        List<Question> questions,
        String fingerprint,
        boolean isFingerprintWeak) {
    public LogLayout {
        columns = List.copyOf(columns);
        questions = List.copyOf(questions);
    }

    /**
     * One column.
     * @param header   as it stands in the file; empty where there is none
     * @param channel  what it means
     * @param form     how its cells are written
     * @param unit     in which; empty where that is not known, and for words
     * @param sureness of channel and unit
     * @param why      what spoke for it, for people
     */
    public record Column(
            String header, Channel channel, Form form, Optional<Unit> unit, Sureness sureness, String why) {
        /** The same, open until its owner says what it is. */
        Column open(String because) {
            return new Column(header, channel, form, unit, Sureness.OPEN, because);
        }
    }

    /**
     * What the owner is asked.
     * @param about   what it is about
     * @param column  from 0; -1 where it is about the whole log
     * @param text    the question with what hangs on it
     * @param choices what it can be, as far as that is known
     */
    public record Question(About about, int column, String text, List<String> choices) {
        public Question {
            choices = List.copyOf(choices);
        }
    }

    /** What a question is about. */
    public enum About {
        /** Point or comma. */
        MARK,
        /** Whether a comma parts cells or marks decimals. */
        DELIMITER,
        /** What a column means. */
        CHANNEL,
        /** In which unit a column is. */
        UNIT,
        /** Day or month first. */
        DATES,
        /** Rows a second. */
        RATE
    }
}
