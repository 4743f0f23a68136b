package longthrow.core.reduce;

import java.util.List;
import java.util.Optional;

/**
 * The speeds a curve is told at: whole multiples of a step, so that runs of one engine share them.
 * @param stepRpm  between two speeds
 * @param firstRpm the lowest, a multiple of the step
 * @param count    how many, at least 1
 */
public record SpeedGrid(int stepRpm, int firstRpm, int count) {
    /** Steps tried, longest first, and how many speeds a step must give. Common practice, no source: 100 rpm between 3000 and 7000. */
    private static final int[] STEPS = {500, 250, 200, 100, 50, 25, 20, 10};

    private static final int ENOUGH = 25;

    public SpeedGrid {
        if (stepRpm < 1 || firstRpm < 0 || count < 1 || firstRpm % stepRpm != 0) {
            throw new IllegalArgumentException("step " + stepRpm + " rpm, first " + firstRpm + " rpm, " + count
                    + " speeds: want a step of 1 or more, a first that is a multiple of it, and a count of 1 or more");
        }
    }

    /** The longest step that gives 25 speeds between the two, ends included; empty where 10 rpm gives none. */
    public static Optional<SpeedGrid> between(double lowRpm, double highRpm) {
        Optional<SpeedGrid> last = Optional.empty();
        for (int step : STEPS) {
            last = withStep(step, lowRpm, highRpm);
            if (last.isPresent() && last.get().count >= ENOUGH) {
                return last;
            }
        }
        return last;
    }

    /** All multiples of a step between the two. */
    public static Optional<SpeedGrid> withStep(int step, double lowRpm, double highRpm) {
        int first = (int) Math.ceil(Math.max(0, lowRpm) / step - 1e-9);
        int last = (int) Math.floor(highRpm / step + 1e-9);
        return last < first ? Optional.empty() : Optional.of(new SpeedGrid(step, first * step, last - first + 1));
    }

    /** The part of this grid between the two. */
    public Optional<SpeedGrid> within(double lowRpm, double highRpm) {
        return withStep(stepRpm, Math.max(lowRpm, firstRpm), Math.min(highRpm, lastRpm()));
    }

    /** What all share: the longest step among them, over the speeds each reaches; empty where there are none. */
    public static Optional<SpeedGrid> shared(List<SpeedGrid> grids) {
        int step = grids.stream().mapToInt(SpeedGrid::stepRpm).max().orElse(0);
        double low = grids.stream().mapToInt(SpeedGrid::firstRpm).max().orElse(0);
        double high = grids.stream().mapToInt(SpeedGrid::lastRpm).min().orElse(-1);
        return step == 0 ? Optional.empty() : withStep(step, low, high);
    }

    /** The highest speed. */
    public int lastRpm() {
        return firstRpm + (count - 1) * stepRpm;
    }

    /** One of the speeds, counted from 0. */
    public int rpm(int index) {
        return firstRpm + index * stepRpm;
    }
}
