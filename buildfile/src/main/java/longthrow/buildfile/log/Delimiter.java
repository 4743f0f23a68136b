package longthrow.buildfile.log;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * What parts the cells, and how many columns that makes: the mark under which most lines come to the same number of cells that are figures.
 * @param sign    the byte; a blank for runs of blanks
 * @param columns how many cells most lines of figures have
 */
record Delimiter(byte sign, int columns) {
    /** Of equals the earlier; a comma behind what no number holds, a blank last, as dates hold it too. */
    private static final byte[] CANDIDATES = {'\t', ';', ',', '|', ' '};

    /** Where every line is one cell: none of the candidates is in a number. */
    static final byte NONE = ';';

    private static final int MOST_LINES = 100;

    String words() {
        return switch (sign) {
            case '\t' -> "tab";
            case ' ' -> "blanks";
            default -> columns == 1 ? "nothing: one column" : "'" + (char) sign + "'";
        };
    }

    /** Columns 0 where no line holds a figure. */
    static Delimiter of(Sample sample) {
        List<Sample.Line> lines = new ArrayList<>();
        for (List<Sample.Line> some : List.of(sample.head(), sample.others())) {
            some.stream().filter(l -> !l.isBlank()).limit(MOST_LINES).forEach(lines::add);
        }
        Delimiter best = new Delimiter(NONE, 0);
        double most = 0;
        for (byte candidate : CANDIDATES) {
            Map<Integer, Double> scores = new HashMap<>();
            for (Sample.Line line : lines) {
                List<String> cells = sample.cells(line, candidate);
                if (cells.size() > 1 && cells.get(cells.size() - 1).isEmpty() && candidate != ' ') {
                    cells = cells.subList(0, cells.size() - 1);
                }
                double share = figures(cells);
                if (share > 0) {
                    scores.merge(cells.size(), share, Double::sum);
                }
            }
            for (Map.Entry<Integer, Double> one : scores.entrySet()) {
                boolean parts = one.getKey() > 1;
                double score =
                        one.getValue() * (parts ? 1 : 0.5); // one column is what everything is if nothing parts it
                if (score > most * 1.02 || (score == most && one.getKey() > best.columns && candidate == best.sign)) {
                    most = score;
                    best = new Delimiter(parts ? candidate : NONE, one.getKey());
                }
            }
        }
        return best;
    }

    /** Which share of the cells are figures or say nothing; 0 where less than half are, or none is a figure. */
    static double figures(List<String> cells) {
        int figures = 0;
        int nothing = 0;
        for (String cell : cells) {
            Look look = Look.of(cell);
            figures += look.isFigure() ? 1 : 0;
            nothing += look == Look.EMPTY || look == Look.NO_VALUE ? 1 : 0;
        }
        double share = cells.isEmpty() ? 0 : (figures + nothing) / (double) cells.size();
        return figures == 0 || share < 0.5 ? 0 : share;
    }
}
