package longthrow.core.recording;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;

/**
 * Finds what is wrong with rows. Every limit is common practice without a source, and stands here; each fault says its rule.
 *
 * <p>Limits on jumps are taken from the column itself: its usual step from row to row, the median of the sizes of steps, by 1.4826, which for normal
 * scatter is their standard deviation (Rousseeuw and Croux 1993, section 1).
 */
public final class RowFaults {
    /** A step beyond so many usual ones is no scatter. */
    private static final double JUMP = 10;
    /** The same in steps of the logger's resolution, where most rows repeat the last. */
    private static final double JUMP_IN_LEAST_STEPS = 6;

    private static final double SIGMA_OF_MEDIAN = 1.4826;
    /** Rows that a spike lasts at most. */
    private static final int SPIKE_ROWS = 3;
    /** Where more rows than this share say nothing, the logger writes the channel less often than the others. */
    private static final double MOST_MISSING = 0.1;
    /** A row of equal figures is no chance where it is rarer than this. */
    private static final double CHANCE = 1e-9;
    /** Fewer equal figures are never called stuck. */
    private static final int LEAST_STUCK = 10;
    /** Where more rows than this share repeat the last, standing still is how the channel is. */
    private static final double MOST_REPEATED = 0.5;
    /** A step of so many usual ones is a gap. */
    private static final double GAP = 3;
    /** Rows within which time that ran back must come up again, else it has started anew. */
    private static final int BACK_ROWS = 1000;
    /** Enough to know a column's steps. */
    private static final int SAMPLED = 20_000;

    private final Recording recording;
    private final List<RowFault> found = new ArrayList<>();

    private RowFaults(Recording recording) {
        this.recording = recording;
    }

    /** All faults of a recording, in the order of their rows. */
    public static List<RowFault> of(Recording recording) {
        RowFaults faults = new RowFaults(recording);
        faults.time();
        for (int c = 0; c < recording.columns().size(); c++) {
            Recording.Column column = recording.columns().get(c);
            if (column.isUsable() && column.channel() != Channel.TIME && column.channel() != Channel.MARKER) {
                faults.figures(c);
            }
        }
        faults.found.addAll(ClutchSlip.of(recording, faults.unfit()));
        faults.found.sort(Comparator.comparingInt(RowFault::from)
                .thenComparingInt(RowFault::column)
                .thenComparing(RowFault::kind));
        return List.copyOf(faults.found);
    }

    /**
     * Which rows are kept: all but those of faults that set aside, as far as the owner does not keep them, and those of faults that he sets aside.
     * @param faults    of the recording
     * @param kept      faults whose rows the owner keeps all the same
     * @param setAside  faults whose rows the owner sets aside though they would stay
     */
    public static boolean[] rowsKept(
            Recording recording, List<RowFault> faults, Set<RowFault> kept, Set<RowFault> setAside) {
        boolean[] rows = new boolean[recording.rows()];
        Arrays.fill(rows, true);
        for (RowFault fault : faults) {
            boolean aside = setAside.contains(fault) || (fault.kind().setsAside() && !kept.contains(fault));
            if (aside) {
                Arrays.fill(rows, fault.from(), fault.to() + 1, false);
            }
        }
        return rows;
    }

    /** Rows in which the speed of engine or drum is known to be wrong. */
    private BitSet unfit() {
        BitSet unfit = new BitSet();
        for (RowFault fault : found) {
            Channel channel = recording.columns().get(fault.column()).channel();
            if (channel == Channel.ENGINE_SPEED || channel == Channel.DRUM_SPEED) {
                unfit.set(fault.from(), fault.to() + 1);
            }
        }
        return unfit;
    }

    private void add(FaultKind kind, int column, int from, int to, String why, String rule) {
        found.add(new RowFault(kind, column, from, to, why, rule + " (common practice, no source)"));
    }

    private void time() {
        Optional<Integer> column = recording.find(Channel.TIME);
        if (column.isEmpty() || recording.rows() < 2) {
            return;
        }
        int c = column.get();
        double[] time = recording.values(c);
        double usual = Steps.of(time).medianSize();
        double latest = time[0];
        for (int row = 1; row < time.length; row++) {
            double t = time[row];
            double step = t - latest;
            if (step > 0) {
                if (step > GAP * usual && usual > 0) {
                    add(
                            FaultKind.TIME_GAP,
                            c,
                            row,
                            row,
                            String.format(Locale.ROOT, "%.6g s since the row before, usual are %.6g s", step, usual),
                            "more than " + GAP + " usual steps");
                }
                latest = t;
            } else if (step == 0) {
                int to = row;
                while (to + 1 < time.length && time[to + 1] == latest) {
                    to++;
                }
                add(FaultKind.TIME_REPEATED, c, row, to, "the same time as the row before", "time must rise");
                row = to;
            } else if (step < 0) {
                int to = comesUp(time, row, latest);
                int falls = row;
                while (to < 0 && falls + 1 < time.length && time[falls + 1] < time[falls]) {
                    falls++;
                }
                if (falls > row) {
                    add(
                            FaultKind.TIME_RESTART,
                            c,
                            row,
                            falls,
                            "time runs back from row to row: these rows stand from their end to their beginning; turn"
                                    + " them round",
                            "not back within " + BACK_ROWS + " rows");
                    latest = time[falls];
                    row = falls;
                } else if (to < 0) {
                    add(
                            FaultKind.TIME_RESTART,
                            c,
                            row,
                            row,
                            String.format(
                                    Locale.ROOT,
                                    "time falls by %.6g s and does not come up again: another run, or midnight",
                                    -step),
                            "not back within " + BACK_ROWS + " rows");
                    latest = t;
                } else {
                    add(
                            FaultKind.TIME_BACKWARD,
                            c,
                            row,
                            to,
                            String.format(Locale.ROOT, "time runs back by %.6g s", -step),
                            "time must rise");
                    row = to;
                }
            } else if (Double.isNaN(latest)) {
                latest = t;
            }
        }
    }

    /** The usual step of time from row to row [s]; 0 where there is none. */
    public static double usualStep(double[] time) {
        return Steps.of(time).medianSize();
    }

    /** The last row before time passes the latest again; -1 where it does not soon. */
    private static int comesUp(double[] time, int from, double latest) {
        int end = Math.min(time.length, from + BACK_ROWS);
        for (int row = from; row < end; row++) {
            if (time[row] > latest) {
                return row - 1;
            }
        }
        return -1;
    }

    private void figures(int c) {
        double[] x = recording.values(c);
        Steps steps = Steps.of(x);
        if (steps.count() < LEAST_STUCK) {
            return;
        }
        double limit = Math.max(JUMP * SIGMA_OF_MEDIAN * steps.medianSize(), JUMP_IN_LEAST_STEPS * steps.least());
        double chance = Math.max(steps.repeated(), 1e-3); // rarer is not known from a sample
        int leastStuck = steps.repeated() < MOST_REPEATED
                ? Math.max(LEAST_STUCK, (int) Math.ceil(Math.log(CHANCE) / Math.log(chance)))
                : Integer.MAX_VALUE;
        if (isSound(x, limit, leastStuck)) {
            return;
        }
        BitSet gone = new BitSet();
        missing(c, x, gone);
        if (limit > 0) {
            jumps(c, x, limit, gone);
        }
        if (leastStuck < Integer.MAX_VALUE) {
            stuck(c, x, leastStuck, gone);
        }
    }

    /** In one pass: no figure is missing, none leaps, none stands. Most columns of most logs need no more. */
    private static boolean isSound(double[] x, double limit, int leastStuck) {
        if (Double.isNaN(x[0])) {
            return false;
        }
        int same = 1;
        for (int row = 1; row < x.length; row++) {
            double step = Math.abs(x[row] - x[row - 1]);
            same = step == 0 ? same + 1 : 1;
            if (!(step <= limit) || same >= leastStuck) { // NaN as well
                return false;
            }
        }
        return true;
    }

    private void missing(int c, double[] x, BitSet gone) {
        int count = 0;
        for (double v : x) {
            count += Double.isNaN(v) ? 1 : 0;
        }
        if (count == 0 || count > MOST_MISSING * x.length) {
            return;
        }
        for (int row = 0; row < x.length; row++) {
            if (Double.isNaN(x[row])) {
                int to = row;
                while (to + 1 < x.length && Double.isNaN(x[to + 1])) {
                    to++;
                }
                gone.set(row, to + 1);
                add(FaultKind.DROPOUT, c, row, to, "no figure", "fewer than a tenth of the rows say nothing");
                row = to;
            }
        }
    }

    /** Away and back: to zero and back however long, elsewhere within a few rows. */
    private void jumps(int c, double[] x, double limit, BitSet gone) {
        for (int row = 1; row < x.length; row++) {
            double before = x[row - 1];
            if (!(Math.abs(x[row] - before) > limit)) {
                continue;
            }
            int zeros = row;
            while (zeros < x.length && x[zeros] == 0) {
                zeros++;
            }
            if (zeros > row && zeros < x.length && Math.abs(x[zeros]) > limit) {
                gone.set(row, zeros);
                add(
                        FaultKind.DROPOUT,
                        c,
                        row,
                        zeros - 1,
                        "zero between " + figure(c, before) + " and " + figure(c, x[zeros]),
                        "from zero further than " + limitWords(c, limit));
                row = zeros;
                continue;
            }
            for (int to = row; to < Math.min(row + SPIKE_ROWS, x.length - 1); to++) {
                if (Math.abs(x[to + 1] - before) <= limit / 2) {
                    gone.set(row, to + 1);
                    add(
                            FaultKind.SPIKE,
                            c,
                            row,
                            to,
                            "jumps by " + difference(c, x[row] - before) + " and back",
                            "further than " + limitWords(c, limit) + ", and back to half of it within " + SPIKE_ROWS
                                    + " rows");
                    row = to + 1;
                    break;
                }
            }
        }
    }

    private String limitWords(int c, double limit) {
        return String.format(
                Locale.ROOT,
                "%s: %.0f usual steps or %.0f of the least",
                difference(c, limit),
                JUMP,
                JUMP_IN_LEAST_STEPS);
    }

    /** A value of a column in the unit that the file gives it in. */
    private String figure(int c, double si) {
        return recording.columns().get(c).told(si);
    }

    /** Between two values of a column, in the same unit; of temperatures without the offset of their scale. */
    private String difference(int c, double si) {
        return recording.columns().get(c).toldDifference(si);
    }

    private void stuck(int c, double[] x, int least, BitSet gone) {
        int from = 0;
        for (int row = 1; row <= x.length; row++) {
            if (row < x.length && x[row] == x[from]) {
                continue;
            }
            boolean stands = row - from >= least && x[from] != 0; // what stands at zero is at rest
            if (stands && !gone.get(from)) {
                add(
                        FaultKind.STUCK,
                        c,
                        from,
                        row - 1,
                        "stands at " + figure(c, x[from]) + " for " + (row - from) + " rows",
                        least + " equal figures are rarer than once in " + Math.round(1 / CHANCE));
            }
            from = row;
        }
    }

    /**
     * Steps from row to row of a column.
     * @param count      how many were looked at
     * @param medianSize of their sizes
     * @param least      size that is not zero; 0 where all are
     * @param repeated   the share that are zero
     */
    private record Steps(int count, double medianSize, double least, double repeated) {
        static Steps of(double[] x) {
            double[] sizes = new double[Math.min(x.length, 2 * SAMPLED)];
            int count = 0;
            int zeros = 0;
            double least = Double.POSITIVE_INFINITY;
            int stretch = Math.max(1, x.length / SAMPLED); // each so many rows
            for (int row = 1; row < x.length && count < sizes.length; row += stretch) {
                double size = Math.abs(x[row] - x[row - 1]);
                if (size == 0) {
                    zeros++;
                } else if (size > 0) {
                    least = Math.min(least, size);
                } else {
                    continue;
                }
                sizes[count++] = size;
            }
            if (count == 0) {
                return new Steps(0, 0, 0, 0);
            }
            Arrays.sort(sizes, 0, count);
            return new Steps(count, sizes[count / 2], zeros == count ? 0 : least, zeros / (double) count);
        }
    }
}
