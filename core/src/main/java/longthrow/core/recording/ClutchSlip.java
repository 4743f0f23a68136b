package longthrow.core.recording;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * Slip by the ratio of engine to drum: where it is locked the ratio stands still, and where the clutch slips the engine turns faster than that. A lower
 * ratio is no slip: an engine that idles while the drum runs out has one.
 */
final class ClutchSlip {
    /** Rows that are averaged, so that pickups' scatter does not count. */
    private static final int BLOCK = 16;
    /** Above the locked ratio by more than this share is slip: common practice, no source. */
    private static final double SLIP = 0.01;
    /** Blocks that must keep one ratio within the same share, or there is none: common practice, no source. */
    private static final double LEAST_LOCKED = 0.3;
    /** Below this share of its highest speed a drum tells no ratio: common practice, no source. */
    private static final double SLOW = 0.1;

    private static final String RULE = "the ratio of " + BLOCK + " rows more than " + 100 * SLIP
            + " % above the locked one (common practice, no source)";

    private ClutchSlip() {}

    static List<RowFault> of(Recording recording, BitSet unfit) {
        Optional<Integer> engine = recording.find(Channel.ENGINE_SPEED);
        Optional<Integer> drum = recording.find(Channel.DRUM_SPEED);
        int blocks = recording.rows() / BLOCK;
        if (engine.isEmpty() || drum.isEmpty() || blocks < 4) {
            return List.of();
        }
        double[] ratios = ratios(recording.values(engine.get()), recording.values(drum.get()), blocks, unfit);
        double[] known =
                Arrays.stream(ratios).filter(r -> !Double.isNaN(r)).sorted().toArray();
        if (known.length < 4) {
            return List.of();
        }
        double locked = densest(known);
        if (locked < 0) {
            return List.of(new RowFault(
                    FaultKind.NO_FIXED_RATIO,
                    engine.get(),
                    0,
                    recording.rows() - 1,
                    "engine and drum keep no ratio for long: slip cannot be told from a belt or gears that change it",
                    "less than " + 100 * LEAST_LOCKED + " % of the rows within " + 100 * SLIP
                            + " % of one ratio (common practice, no source)"));
        }
        return stretches(ratios, locked, engine.get(), recording.rows());
    }

    private static List<RowFault> stretches(double[] ratios, double locked, int column, int rows) {
        List<RowFault> faults = new ArrayList<>();
        for (int block = 0; block < ratios.length; block++) {
            if (!(ratios[block] > locked * (1 + SLIP))) {
                continue;
            }
            int to = block;
            double most = ratios[block];
            while (to + 1 < ratios.length && ratios[to + 1] > locked * (1 + SLIP)) {
                most = Math.max(most, ratios[++to]);
            }
            faults.add(new RowFault(
                    FaultKind.CLUTCH_SLIP,
                    column,
                    block * BLOCK,
                    to == ratios.length - 1 ? rows - 1 : (to + 1) * BLOCK - 1,
                    String.format(
                            Locale.ROOT,
                            "engine to drum up to %.4f, locked %.4f: %.1f %% slip",
                            most,
                            locked,
                            100 * (1 - locked / most)),
                    RULE));
            block = to;
        }
        return faults;
    }

    private static double[] ratios(double[] engine, double[] drum, int blocks, BitSet unfit) {
        double fastest = 0;
        for (double d : drum) {
            fastest = d > fastest ? d : fastest;
        }
        double[] ratios = new double[blocks];
        for (int b = 0; b < blocks; b++) {
            double e = 0;
            double d = 0;
            int rows = 0;
            for (int row = b * BLOCK; row < (b + 1) * BLOCK; row++) {
                boolean both = !Double.isNaN(engine[row]) && !Double.isNaN(drum[row]) && !unfit.get(row);
                rows += both ? 1 : 0;
                e += both ? engine[row] : 0;
                d += both ? drum[row] : 0;
            }
            ratios[b] = rows > 0 && d > SLOW * fastest * rows ? e / d : Double.NaN;
        }
        return ratios;
    }

    /** The middle of the window of ratios, one share wide, that holds most; -1 where it holds too few. */
    private static double densest(double[] sorted) {
        int best = 0;
        int bestFrom = 0;
        int to = 0;
        for (int from = 0; from < sorted.length; from++) {
            while (to < sorted.length && sorted[to] <= sorted[from] * (1 + SLIP)) {
                to++;
            }
            if (to - from > best) {
                best = to - from;
                bestFrom = from;
            }
        }
        return best < LEAST_LOCKED * sorted.length ? -1 : sorted[bestFrom + best / 2];
    }
}
