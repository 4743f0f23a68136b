package longthrow.core.recording;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * Where runs begin and end: by the slope of speed over blocks of a tenth of a second. Every limit is common practice without a source and stands here.
 */
public final class Stretches {
    /** Time over which speed is averaged before its slope is taken [s]. */
    private static final double BLOCK = 0.1;
    /** Rows it needs at least. */
    private static final int BLOCK_ROWS = 4;
    /** Slope, as a share of the range of speeds a second, beyond which speed is gained or lost [1/s]. */
    private static final double MOVING = 0.02;
    /** The same below which it is kept [1/s]. */
    private static final double STEADY = 0.01;
    /** Share of the range of speeds that a pull or a coast-down passes at least. */
    private static final double LEAST_RISE = 0.2;
    /** Least time of a pull or a coast-down [s]. */
    private static final double LEAST_MOVE = 1;
    /** Least time of a steady point [s]. */
    private static final double LEAST_STEADY = 2;
    /** Share of the highest speed below which nothing is measured. */
    private static final double AT_REST = 0.1;

    private final double[] time;
    private final double[] speed;
    private final List<Stretch> found = new ArrayList<>();
    private double range;
    private double fastest;

    private Stretches(double[] time, double[] speed) {
        this.time = time;
        this.speed = speed;
    }

    /** Pulls, coast-downs and steady points in the order of the rows; none where time or speed is not known. */
    public static List<Stretch> of(Recording recording) {
        Optional<double[]> time = recording.values(Channel.TIME);
        Optional<double[]> speed = recording
                .values(Channel.DRUM_SPEED)
                .or(() -> recording.values(Channel.ENGINE_SPEED))
                .or(() -> recording.values(Channel.ROAD_SPEED));
        if (time.isEmpty() || speed.isEmpty() || recording.rows() < 3 * BLOCK_ROWS) {
            return List.of();
        }
        return new Stretches(time.get(), speed.get()).find();
    }

    /** Means of blocks: rows at which each begins, one entry more; time and speed in its middle. */
    private static final class Blocks {
        private final int[] starts;
        private final double[] times;
        private final double[] speeds;
        private final int count;

        Blocks(int[] starts, double[] times, double[] speeds, int count) {
            this.starts = starts;
            this.times = times;
            this.speeds = speeds;
            this.count = count;
        }

        int[] starts() {
            return starts;
        }

        double[] times() {
            return times;
        }

        double[] speeds() {
            return speeds;
        }

        int count() {
            return count;
        }
    }

    private List<Stretch> find() {
        Blocks blocks = blocks();
        double[] sorted = Arrays.copyOf(blocks.speeds(), blocks.count());
        Arrays.sort(sorted);
        if (blocks.count() < 3) {
            return List.of();
        }
        fastest = sorted[sorted.length - 1 - sorted.length / 50];
        range = fastest - sorted[sorted.length / 50];
        range = Math.max(range, AT_REST * fastest); // one steady point has no range of its own
        if (!(range > 0)) {
            return List.of();
        }
        Stretch.Kind[] kinds = new Stretch.Kind[blocks.count()];
        for (int b = 0; b < kinds.length; b++) {
            kinds[b] = kind(blocks, b);
        }
        gather(blocks, kinds);
        return List.copyOf(found);
    }

    private Blocks blocks() {
        int most = time.length / BLOCK_ROWS + 2 + breaks();
        int[] starts = new int[most + 1];
        double[] times = new double[most];
        double[] speeds = new double[most];
        int count = 0;
        int from = 0;
        double t = 0;
        double v = 0;
        int known = 0;
        for (int row = 0; row < time.length; row++) {
            boolean ends = row - from >= BLOCK_ROWS && time[row] - time[from] >= BLOCK;
            boolean breaks = row > from && breaksAt(row);
            if (ends || breaks) {
                if (known > 0) {
                    starts[count] = from;
                    times[count] = t / known;
                    speeds[count++] = v / known;
                }
                from = row;
                t = 0;
                v = 0;
                known = 0;
            }
            if (!Double.isNaN(speed[row]) && !Double.isNaN(time[row])) {
                t += time[row];
                v += speed[row];
                known++;
            }
        }
        starts[count] = from;
        if (known > 0) {
            starts[count] = from;
            times[count] = t / known;
            speeds[count++] = v / known;
            starts[count] = time.length;
        }
        return new Blocks(starts, times, speeds, count);
    }

    /** Whether time starts anew at a row, or is not known there. */
    private boolean breaksAt(int row) {
        return !(time[row] >= time[row - 1]);
    }

    private int breaks() {
        int breaks = 0;
        for (int row = 1; row < time.length; row++) {
            breaks += breaksAt(row) ? 1 : 0;
        }
        return breaks;
    }

    /** By the slope from the block before to the block behind; null where it is neither. */
    private Stretch.@Nullable Kind kind(Blocks blocks, int b) {
        int before = Math.max(0, b - 1);
        int behind = Math.min(blocks.count() - 1, b + 1);
        double step = blocks.times()[behind] - blocks.times()[before];
        boolean whole = step > 0 && step < 10 * BLOCK + 4 * (step / Math.max(1, behind - before));
        double slope = (blocks.speeds()[behind] - blocks.speeds()[before]) / step / range;
        if (!whole || blocks.speeds()[b] < AT_REST * fastest) {
            return null;
        }
        if (slope > MOVING) {
            return Stretch.Kind.PULL;
        }
        return slope < -MOVING ? Stretch.Kind.COAST : Math.abs(slope) < STEADY ? Stretch.Kind.STEADY : null;
    }

    private void gather(Blocks blocks, Stretch.@Nullable Kind[] kinds) {
        for (int from = 0; from < kinds.length; from++) {
            Stretch.Kind kind = kinds[from];
            if (kind == null) {
                continue;
            }
            int to = from;
            while (to + 1 < kinds.length
                    && (kinds[to + 1] == kind
                            || (to + 2 < kinds.length && kinds[to + 2] == kind && isNoOther(kinds[to + 1], kind)))
                    && blocks.times()[to + 1] > blocks.times()[to]) {
                to++;
            }
            double start = blocks.speeds()[from];
            double end = blocks.speeds()[to];
            double lasts = blocks.times()[to] - blocks.times()[from];
            boolean counts = kind == Stretch.Kind.STEADY
                    ? lasts >= LEAST_STEADY
                    : lasts >= LEAST_MOVE && Math.abs(end - start) >= LEAST_RISE * range;
            if (counts) {
                int last = blocks.starts()[to + 1] - 1;
                found.add(new Stretch(
                        kind,
                        blocks.starts()[from],
                        kind == Stretch.Kind.PULL ? endOfPull(blocks.starts()[Math.max(from, to - 1)], last) : last,
                        start,
                        end));
            }
            from = to;
        }
    }

    /** Where rows come so seldom that a block lasts longer than it should, its last ones may hold what comes after the pull: it ends with the row before the highest speed, since the throttle may have been closed between the two. */
    private int endOfPull(int from, int last) {
        if (time[last] - time[from] < 4 * BLOCK) { // two of them
            return last;
        }
        int end = from;
        for (int row = from + 1; row <= last; row++) {
            end = speed[row] >= speed[end] || Double.isNaN(speed[end]) ? row : end;
        }
        return Math.max(from, end - 1);
    }

    /** One block between two of a kind is scatter, unless it is the opposite. */
    private static boolean isNoOther(Stretch.@Nullable Kind between, Stretch.Kind kind) {
        return between == null || kind == Stretch.Kind.STEADY || between == Stretch.Kind.STEADY;
    }
}
