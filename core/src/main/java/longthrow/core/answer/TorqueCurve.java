package longthrow.core.answer;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import longthrow.core.measurement.Measured;

/**
 * What torque over what speeds, how sure, and what bounds it.
 * @param takenFor  what sort of engine it is reckoned as, in words; empty where that is not known
 * @param rows      by rising speed
 * @param cycle     what stands where over two turns, at the speed of the most torque; empty where none was reckoned
 * @param cycleSpeed of the crank there [rad/s]; NaN where none was reckoned
 * @param shares    who owns the doubt of the most torque, largest first
 * @param next      readings that would cut it most, best first
 * @param missing   what it cannot do without; empty where torque is told
 * @param sentences what it comes to, in plain words
 * @param sparks    what the spark does, by rising speed; empty where none was reckoned
 * @param jet       what the main jet becomes; empty where it was not asked
 * @param air       that it stands in; empty where nothing was reckoned
 * @param overlays  what runs on a dynamometer were measured to make, over what is predicted; empty where none were handed over
 */
public record TorqueCurve(
        String takenFor,
        List<Row> rows,
        List<Place> cycle,
        double cycleSpeed,
        List<Share> shares,
        List<Reading> next,
        List<Rung.Missing> missing,
        List<String> sentences,
        List<SparkSweep> sparks,
        Optional<JetAdvice> jet,
        Optional<Air> air,
        List<Overlay> overlays) {
    public TorqueCurve {
        rows = List.copyOf(rows);
        cycle = List.copyOf(cycle);
        shares = List.copyOf(shares);
        next = List.copyOf(next);
        missing = List.copyOf(missing);
        sentences = List.copyOf(sentences);
        sparks = List.copyOf(sparks);
        overlays = List.copyOf(overlays);
    }

    /** One that no run was laid over, in air that is not told. */
    public TorqueCurve(
            String takenFor,
            List<Row> rows,
            List<Place> cycle,
            double cycleSpeed,
            List<Share> shares,
            List<Reading> next,
            List<Rung.Missing> missing,
            List<String> sentences,
            List<SparkSweep> sparks,
            Optional<JetAdvice> jet) {
        this(
                takenFor,
                rows,
                cycle,
                cycleSpeed,
                shares,
                next,
                missing,
                sentences,
                sparks,
                jet,
                Optional.empty(),
                List.of());
    }

    /** Nothing can be reckoned for want of these. */
    public static TorqueCurve unknown(List<Rung.Missing> missing) {
        return new TorqueCurve(
                "",
                List.of(),
                List.of(),
                Double.NaN,
                List.of(),
                List.of(),
                missing,
                List.of(),
                List.of(),
                Optional.empty());
    }

    /** The same with what the main jet becomes. */
    public TorqueCurve with(JetAdvice advice) {
        return copy(Optional.of(advice), air, overlays);
    }

    /** The same with the air that it stands in. */
    public TorqueCurve with(Air other) {
        return copy(jet, Optional.of(other), overlays);
    }

    /** The same with what was measured laid over it; nothing of it moves. */
    public TorqueCurve withOverlays(List<Overlay> others) {
        return copy(jet, air, others);
    }

    private TorqueCurve copy(Optional<JetAdvice> advice, Optional<Air> day, List<Overlay> over) {
        return new TorqueCurve(
                takenFor, rows, cycle, cycleSpeed, shares, next, missing, sentences, sparks, advice, day, over);
    }

    /**
     * Air that the engine draws.
     * @param pressure    of the barometer [Pa]
     * @param temperature [K]
     * @param humidity    relative, 0 to 1
     */
    public record Air(Measured pressure, Measured temperature, Measured humidity) {}

    /** The row in which a figure is largest, among those that tell it. */
    public Optional<Row> most(String key) {
        Optional<Row> best = Optional.empty();
        for (Row row : rows) {
            double value = value(row, key);
            if (!Double.isNaN(value) && !(best.isPresent() && value <= value(best.get(), key))) {
                best = Optional.of(row);
            }
        }
        return best;
    }

    private static double value(Row row, String key) {
        return row.figure(key).map(f -> f.figure().value()).orElse(Double.NaN);
    }

    /**
     * One speed.
     * @param speed     of the crank [rad/s]
     * @param standing  whether it may be run
     * @param why       it stands so, in words
     * @param figures   what the engine does there; empty where none is told
     * @param bounds    what keeps torque down there, the most first
     * @param reckoning how sure the sums came out; empty where none were done
     */
    public record Row(
            double speed,
            Standing standing,
            String why,
            List<Shaking.Figure> figures,
            List<Bound> bounds,
            Optional<Reckoning> reckoning) {
        public Row {
            figures = List.copyOf(figures);
            bounds = List.copyOf(bounds);
            if (!standing.isTold() && !figures.isEmpty()) {
                throw new IllegalArgumentException("figures at a speed that is " + standing.label());
            }
        }

        /** The figure with this key, if it is told. */
        public Optional<Shaking.Figure> figure(String key) {
            return figures.stream().filter(f -> f.key().equals(key)).findFirst();
        }
    }

    /** Whether a speed may be run, and whether power is told there. */
    public enum Standing {
        APPROVED("approved", true),
        /** Not shown to hold: power is told, and marked. */
        NOT_APPROVED("not approved", true),
        /** A limit is passed or damage was seen: no power is told. */
        REFUSED("refused", false),
        /** The governor shuts the throttle before: full throttle is not to be had. */
        GOVERNED("held by the governor", false),
        /** No cycle comes of these figures at this speed, or none that repeats. */
        NOT_RECKONED("could not be reckoned", false);

        private final String label;
        private final boolean isTold;

        Standing(String label, boolean isTold) {
            this.label = label;
            this.isTold = isTold;
        }

        public String key() {
            return name().toLowerCase(Locale.ROOT);
        }

        public String label() {
            return label;
        }

        /** Whether power is told. */
        public boolean isTold() {
            return isTold;
        }
    }

    /**
     * Something that keeps torque down.
     * @param key    stable
     * @param what   keeps it down, in plain words
     * @param change small step of it; empty where no step of it helps
     * @param gain   share of the torque that the step would give
     */
    public record Bound(String key, String what, String change, double gain) {
        private static final double HUNDRED = 100;

        /** In few words, where the step is told beside: what, and the gain. */
        public String brief() {
            return change.isEmpty() ? what : what + percent();
        }

        /** The step in few words; empty where there is none. */
        public String step() {
            return change.isEmpty() ? "" : what + ": " + change;
        }

        /** What it is and what the step would give. */
        public String said() {
            return change.isEmpty() ? what : step() + " would give" + percent() + " of torque";
        }

        private String percent() {
            return String.format(Locale.ROOT, " +%.0f %%", HUNDRED * gain);
        }
    }

    /** What is meant by each step of {@link Row#bounds}, told once for all rows, as they first come. */
    public List<String> steps() {
        return rows.stream()
                .flatMap(row -> row.bounds().stream())
                .map(Bound::step)
                .filter(step -> !step.isEmpty())
                .distinct()
                .toList();
    }

    /**
     * How a row was reckoned.
     * @param cycles that were run until they repeat
     * @param steps  of the last one
     * @param cells  of all pipes
     * @param cell   longest cell of a pipe [m]
     * @param change of the last cycle from the one before
     * @param mass   that is missing over what came in
     * @param energy that is missing over what came in
     */
    public record Reckoning(
            int cycles, long steps, int cells, double cell, double change, double mass, double energy) {}

    /**
     * One place of the cycle.
     * @param angle           of the crank from firing top dead centre [rad]
     * @param volume          over the piston [m3]
     * @param pressure        in the cylinder [Pa]
     * @param temperature     there, mean over the mass [K]
     * @param intakeLift      of the valve [m]
     * @param exhaustLift     of the valve [m]
     * @param intakePressure  before the intake valve [Pa]
     * @param exhaustPressure behind the exhaust valve [Pa]
     */
    public record Place(
            double angle,
            double volume,
            double pressure,
            double temperature,
            double intakeLift,
            double exhaustLift,
            double intakePressure,
            double exhaustPressure) {}

    /**
     * An owner of doubt.
     * @param what  figure that is not sure, or model
     * @param share of the variance, 0 to 1
     */
    public record Share(String what, double share) {}

    /**
     * A reading that would cut the doubt.
     * @param read  where in the build file, and how
     * @param share of the variance that it owns now
     * @param now   95 % doubt of the most torque, as a share of it
     * @param after the same with this one read well
     */
    public record Reading(Rung.Missing read, double share, double now, double after) {}
}
