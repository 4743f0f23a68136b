package longthrow.core.recording;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import longthrow.core.quantity.Unit;

/**
 * Rows of figures as a logger wrote them, by column, in coherent SI where the unit is known; NaN where a row says nothing.
 *
 * <p>The arrays belong to the recording: {@link #values} hands out the array itself, as copies of millions of figures are dear, and nobody may
 * write into it.
 */
public final class Recording {
    private final List<Column> columns;

    private final double[][] values;
    private final RowLines lines;

    /**
     * One column.
     * @param header   as it stands in the file; empty where there is none
     * @param channel  what it means
     * @param unit     in which the file gives it; empty where that is not known, and then the figures are as written
     * @param sureness of both
     * @param why      what spoke for it, for people
     * @param labels   where the file writes words: what each number of the column stands for, from 0
     */
    public record Column(
            String header, Channel channel, Optional<Unit> unit, Sureness sureness, String why, List<String> labels) {
        public Column {
            labels = List.copyOf(labels);
        }

        /** Whether its figures may be used as what the channel says. */
        public boolean isUsable() {
            return channel != Channel.UNKNOWN && unit.isPresent() && sureness != Sureness.OPEN;
        }

        /** A value of it [coherent SI, or as written where the unit is not known] in words, in the unit of the file, to five digits. */
        public String told(double si) {
            return words(unit.map(u -> u.fromSi(si)).orElse(si), unit);
        }

        /** The same of what lies between two values, in which the offset of a scale of temperature has no part. */
        public String toldDifference(double si) {
            Optional<Unit> between = unit.map(Unit::ofDifference);
            return words(between.map(u -> u.fromSi(si)).orElse(si), between);
        }

        private static String words(double figure, Optional<Unit> unit) {
            if (!Double.isFinite(figure)) {
                return "no figure";
            }
            BigDecimal number =
                    BigDecimal.valueOf(figure).round(new MathContext(DIGITS)).stripTrailingZeros();
            String symbol = unit.map(Unit::symbol).orElse("");
            return number.toPlainString() + (symbol.isEmpty() ? "" : " " + symbol);
        }

        /** Of a figure that is told in words; layout. */
        private static final int DIGITS = 5;
    }

    /**
     * A recording of these columns.
     * @param columns what they are
     * @param values  one array a column, each as long as there are rows; taken over, not copied
     * @param lines   where the rows stand in the file
     * @throws IllegalArgumentException if an array is missing or of another length
     */
    public Recording(List<Column> columns, double[][] values, RowLines lines) {
        this.columns = List.copyOf(columns);
        this.values = values.clone();
        this.lines = lines;
        if (columns.size() != values.length) {
            throw new IllegalArgumentException(columns.size() + " columns come with " + values.length + " arrays");
        }
        for (double[] column : values) {
            if (column.length != lines.rows()) {
                throw new IllegalArgumentException(
                        "an array of " + column.length + " figures stands beside " + lines.rows() + " rows");
            }
        }
    }

    /** What the columns are, in the order of the file. */
    public List<Column> columns() {
        return columns;
    }

    /** How many rows there are. */
    public int rows() {
        return lines.rows();
    }

    /** In which lines of the file they stand. */
    public RowLines lines() {
        return lines;
    }

    /**
     * The figures of a column, one a row; the array itself, not to be written to.
     * @param column from 0
     */
    public double[] values(int column) {
        return values[column];
    }

    /** The first usable column of a channel, from 0. */
    public Optional<Integer> find(Channel channel) {
        for (int i = 0; i < columns.size(); i++) {
            if (columns.get(i).channel() == channel && columns.get(i).isUsable()) {
                return Optional.of(i);
            }
        }
        return Optional.empty();
    }

    /** The figures of the first usable column of a channel; the array itself, not to be written to. */
    public Optional<double[]> values(Channel channel) {
        return find(channel).map(i -> values[i]);
    }

    /** Those rows alone, their lines kept. */
    public Recording only(boolean[] kept) {
        if (kept.length != rows()) {
            throw new IllegalArgumentException(kept.length + " words on " + rows() + " rows");
        }
        int count = 0;
        for (boolean k : kept) {
            count += k ? 1 : 0;
        }
        double[][] chosen = new double[values.length][count];
        int[] where = new int[count];
        int to = 0;
        for (int row = 0; row < kept.length; row++) {
            if (kept[row]) {
                for (int c = 0; c < values.length; c++) {
                    chosen[c][to] = values[c][row];
                }
                where[to++] = lines.lineOf(row);
            }
        }
        return new Recording(columns, chosen, RowLines.of(where));
    }

    /** Rows from one up to before another. */
    public Recording slice(int from, int to) {
        double[][] part = new double[values.length][];
        for (int c = 0; c < values.length; c++) {
            part[c] = Arrays.copyOfRange(values[c], from, to);
        }
        int[] where = new int[to - from];
        for (int row = from; row < to; row++) {
            where[row - from] = lines.lineOf(row);
        }
        return new Recording(columns, part, RowLines.of(where));
    }

    /** With another column behind those there are, as where the owner states a rate and time follows from it. */
    public Recording with(Column column, double[] figures) {
        List<Column> more = new ArrayList<>(columns);
        more.add(column);
        double[][] all = Arrays.copyOf(values, values.length + 1);
        all[values.length] = figures;
        return new Recording(more, all, lines);
    }
}
