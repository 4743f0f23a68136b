package longthrow.core.gain;

import java.util.Optional;

/** One pull as it was read, before the weather's correction: a figure for each speed of the campaign's grid, or its peak alone. Torque or power, any unit, the same throughout a campaign. */
public final class Run {
    private final String name;
    private final double[] values;
    private final Optional<String> setAside;
    private final boolean slipped;
    private final Optional<String> odd;

    private Run(String name, double[] values, Optional<String> setAside, boolean slipped, Optional<String> odd) {
        this.odd = odd;
        for (double value : values) {
            if (Double.isInfinite(value) || value <= 0) {
                throw new IllegalArgumentException("run " + name + " has the figure " + value
                        + "; torque or power must be above 0, or NaN at a speed it did not reach");
            }
        }
        this.name = name;
        this.values = values;
        this.setAside = setAside;
        this.slipped = slipped;
    }

    /**
     * A pull over speeds.
     * @param values one for each speed of the grid; NaN where it did not reach
     */
    public static Run curve(String name, double... values) {
        return new Run(name, values.clone(), Optional.empty(), false, Optional.empty());
    }

    /** A pull of which only the peak was kept. */
    public static Run peak(String name, double value) {
        return curve(name, value);
    }

    /** The same, set aside by its owner for a reason. */
    public Run setAside(String reason) {
        if (reason.isBlank()) {
            throw new IllegalArgumentException("run " + name + " is set aside without a reason; say why");
        }
        return new Run(name, values, Optional.of(reason), slipped, odd);
    }

    /** The same, with the clutch seen slipping by the ratio of engine and drum: what slips is no power of the engine's. */
    public Run slipped() {
        return new Run(name, values, setAside, true, odd);
    }

    /** The same, so far from the other pulls of its session that it is none of theirs. */
    public Run odd(String why) {
        return new Run(name, values, setAside, slipped, Optional.of(why));
    }

    /** The same without its owner's word against it. */
    public Run takenBack() {
        return new Run(name, values, Optional.empty(), slipped, odd);
    }

    /** Why it is none of its session's; empty where it is. */
    public Optional<String> oddity() {
        return odd;
    }

    public String name() {
        return name;
    }

    /** How many speeds. */
    public int size() {
        return values.length;
    }

    /** As read at a speed of the grid; NaN where it did not reach. */
    public double at(int speed) {
        return values[speed];
    }

    /** Its owner's reason, where he set it aside. */
    public Optional<String> reason() {
        return setAside;
    }

    /** Whether the ratio told of a slipping clutch. */
    public boolean isSlipped() {
        return slipped;
    }
}
