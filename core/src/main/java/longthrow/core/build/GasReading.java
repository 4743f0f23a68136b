package longthrow.core.build;

import java.util.List;
import java.util.Optional;
import longthrow.core.quantity.Quantity;
import org.jspecify.annotations.Nullable;

/**
 * Pressure in the cylinder against crank angle, as a transducer read it at one speed.
 * @param speed    of the crank while it was taken
 * @param pressure what the figures are above
 * @param air      outside, on that day; null where the figures are absolute
 * @param cycles   which turns the trace is of
 * @param within   95 % half-width of a pressure, as a share of it: transducer, amplifier and pegging together
 * @param note     how it was taken and pegged; empty for nothing
 * @param rows     by rising angle after firing top dead centre, negative before it
 */
public record GasReading(
        Quantity speed,
        Reference pressure,
        @Nullable Quantity air,
        Cycles cycles,
        Quantity within,
        String note,
        List<Row> rows) {
    /** Rows one and a half degrees of a small transducer's lag apart tell nothing more; farther apart than this a peak slips between them [deg]; a judgement. */
    public static final double NEAR_THE_PEAK = 5;

    /** Elsewhere [deg]; a judgement. */
    public static final double ELSEWHERE = 15;

    /** Half of the stretch about firing in which rows lie close [deg]: the peak is in it. */
    private static final double ABOUT_FIRING = 60;

    private static final double HALF_A_TURN = 180;

    /** Where a peak may lie after firing top dead centre [deg]; well-timed engines have it at 10 to 20; common practice, no source. */
    private static final double EARLIEST_PEAK = -10;

    private static final double LATEST_PEAK = 60;

    /** Least that compression and fire together make of the pressure at bottom dead centre; a motored engine of ratio 4 has 6. */
    private static final double LEAST_RISE = 3;

    /** What an unblown cylinder may hold at bottom dead centre before compression [Pa], throttled hard to rammed hard; common practice, no source. */
    private static final double LEAST_TRAPPED = 20e3;

    private static final double MOST_TRAPPED = 160e3;

    /** What a pressure is read above. */
    public enum Reference {
        ABSOLUTE("absolute", "above nothing"),
        GAUGE("gauge", "above the air outside");

        private final String key;
        private final String meaning;

        Reference(String key, String meaning) {
            this.key = key;
            this.meaning = meaning;
        }

        public String key() {
            return key;
        }

        public String meaning() {
            return meaning;
        }
    }

    /** Which turns it is of. */
    public enum Cycles {
        MEAN("mean", "the mean of many cycles"),
        STRONGEST("strongest", "the strongest of many cycles");

        private final String key;
        private final String meaning;

        Cycles(String key, String meaning) {
            this.key = key;
            this.meaning = meaning;
        }

        public String key() {
            return key;
        }

        public String meaning() {
            return meaning;
        }
    }

    /** One line. */
    public record Row(Quantity angle, Quantity pressure) {}

    public GasReading {
        rows = List.copyOf(rows);
    }

    /**
     * Why it is no gas trace.
     * @param found what is there
     * @param why   it cannot be
     * @param mend  what to do
     */
    public record Trouble(String found, String why, String mend) {}

    /** Absolute pressure of a row [Pa]. */
    public double absolute(Row row) {
        return row.pressure().si() + (air == null ? 0 : air.si());
    }

    private static double degrees(Row row) {
        return Math.toDegrees(row.angle().si());
    }

    /** What it says that no engine does, whatever its sizes; empty for a trace that may be. */
    public Optional<Trouble> trouble() {
        if (pressure == Reference.GAUGE && air == null) {
            return Optional.of(new Trouble(
                    "gauge pressures",
                    "stand without the pressure of the air they were read above",
                    "write air: with its pressure on that day, such as 99.6 kPa"));
        }
        return coverage().or(this::steps).or(this::pressures);
    }

    private Optional<Trouble> coverage() {
        if (rows.size() < 2) {
            return Optional.of(
                    new Trouble(rows.size() + " rows", "are no trace", "write angle and pressure, every 5° or closer"));
        }
        double first = degrees(rows.get(0));
        double last = degrees(rows.get(rows.size() - 1));
        boolean isWhole = last - first >= 4 * HALF_A_TURN - ELSEWHERE;
        boolean isAboutFiring = first <= -HALF_A_TURN && last >= HALF_A_TURN;
        return isWhole || isAboutFiring
                ? Optional.empty()
                : Optional.of(new Trouble(
                        rows.get(0).angle().written() + " to "
                                + rows.get(rows.size() - 1).angle().written(),
                        "is neither two whole turns nor the turn about firing",
                        "write rows from -180° to 180° or farther; 0° is firing top dead centre"));
    }

    private Optional<Trouble> steps() {
        for (int k = 1; k < rows.size(); k++) {
            double before = degrees(rows.get(k - 1));
            double after = degrees(rows.get(k));
            double most = isAboutFiring(before) || isAboutFiring(after) ? NEAR_THE_PEAK : ELSEWHERE;
            if (!(after > before) || after - before > most + 1e-9) {
                return Optional.of(new Trouble(
                        rows.get(k - 1).angle().written() + " to "
                                + rows.get(k).angle().written(),
                        after > before ? "leaves a gap in which a peak can hide" : "does not rise",
                        "write rows in order, every " + (int) NEAR_THE_PEAK + "° or closer from -60° to 60° and every "
                                + (int) ELSEWHERE + "° elsewhere"));
            }
        }
        return Optional.empty();
    }

    private static boolean isAboutFiring(double degrees) {
        double turned = Math.IEEEremainder(degrees, 4 * HALF_A_TURN);
        return turned > -ABOUT_FIRING && turned < ABOUT_FIRING;
    }

    private Optional<Trouble> pressures() {
        Row peak = rows.get(0);
        double trapped = Double.NaN;
        double nearest = Double.POSITIVE_INFINITY;
        for (Row row : rows) {
            if (!(absolute(row) >= 0)) {
                return Optional.of(new Trouble(
                        row.pressure().written() + " at " + row.angle().written(),
                        "is less than nothing",
                        pressure == Reference.ABSOLUTE
                                ? "peg the trace: at bottom dead centre before compression it is about that of the air; or say pressure: gauge"
                                : "peg the trace anew, and read the air's pressure again"));
            }
            if (absolute(row) > absolute(peak)) {
                peak = row;
            }
            double away = Math.abs(Math.IEEEremainder(degrees(row) + HALF_A_TURN, 4 * HALF_A_TURN));
            if (away < nearest) {
                nearest = away;
                trapped = absolute(row);
            }
        }
        double at = Math.IEEEremainder(degrees(peak), 4 * HALF_A_TURN);
        if (!(at >= EARLIEST_PEAK && at <= LATEST_PEAK)) {
            return Optional.of(new Trouble(
                    peak.pressure().written() + " at " + peak.angle().written(),
                    "is the highest pressure, and no engine fires there",
                    "set 0° to firing top dead centre, with a stop or the motored peak, and write the angles anew"));
        }
        if (!(trapped >= LEAST_TRAPPED && trapped <= MOST_TRAPPED)) {
            return Optional.of(new Trouble(
                    String.format(java.util.Locale.ROOT, "%.0f kPa absolute", trapped / 1e3),
                    "at bottom dead centre before compression is not what an unblown cylinder holds",
                    "peg the trace there to the pressure in the intake, and say whether it is absolute or gauge"));
        }
        return absolute(peak) >= LEAST_RISE * trapped
                ? Optional.empty()
                : Optional.of(new Trouble(
                        peak.pressure().written() + " at " + peak.angle().written(),
                        "is the highest pressure, and is less than compression alone makes",
                        "check the unit of the pressures and the transducer's scale"));
    }
}
