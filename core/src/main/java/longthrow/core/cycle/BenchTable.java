package longthrow.core.cycle;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import longthrow.core.gas.MoistAir;
import longthrow.core.quantity.Require;

/**
 * What a flow bench said of one port, lift by lift. Nothing of it is corrected: what could be off goes into {@link #doubt}.
 * @param toCylinder whether air was drawn or blown into the cylinder; false for out of it
 * @param rows       as read with all valves of the port lifted, by rising lift; a row for the shut valve may be there or not
 * @param scale      what the rows' values are
 * @param entry      what the air came in by, or left by
 * @param meterDoubt relative standard uncertainty of the bench's figures
 */
public record BenchTable(boolean toCylinder, List<Row> rows, Scale scale, Entry entry, double meterDoubt) {
    /** Benches repeat and agree to 1 to 2 % (common practice, no source); the larger, taken whole as standard uncertainty. */
    public static final double USUAL_METER_DOUBT = 0.02;

    /** Below the highest before it by more than this share a row is taken for a mistake; ports that stall at high lift lose less. A judgement. */
    public static final double LARGEST_FALL = 0.10;

    /** More than the gap or throat could pass without loss by this share is a wrong unit, basis or depression, not scatter. A judgement. */
    private static final double BEYOND = 0.10;

    /** Fewest rows off the seat that make a curve. */
    private static final int FEWEST = 3;

    /** Depression of what is called a flow bench [Pa]: one to a hundred inches of water. A judgement. */
    public static final double WEAKEST = 249;

    public static final double STRONGEST = 24_900;

    /** Air that benches stand in [K] and [Pa], the widest that is let in. A judgement. */
    public static final double COLDEST = 230;

    public static final double HOTTEST = 350;
    public static final double THINNEST = 50e3;
    public static final double DENSEST = 110e3;

    /** Of a room that nobody wrote down, and how far off it may be to each side: common practice, no source. */
    private static final double ROOM_TEMPERATURE = 293.15;

    private static final double ROOM_TEMPERATURE_REACH = 10;
    private static final double ROOM_PRESSURE = 98e3;
    private static final double ROOM_PRESSURE_REACH = 5e3;

    /** Dynamic pressures of the port lost at an edge that is not rounded: 0.5, flush pipe entrance (F. M. White, Fluid Mechanics, minor losses; from memory). */
    private static final double SHARP_EDGE = 0.5;

    /** By so much differ coefficients made with and without the air's compression at 28 inches of water; a table seldom says which. Rectangular. */
    private static final double COMPRESSION = 0.04;

    public BenchTable {
        rows = List.copyOf(rows);
        Require.within("relative doubt of the bench", meterDoubt, 0, 1);
    }

    /**
     * One lift.
     * @param lift  of the valve [m]
     * @param value volume flow [m3/s] or coefficient, as {@link Scale} says
     * @param drop  depression at which it was read [Pa]; not looked at for a coefficient
     */
    public record Row(double lift, double value, double drop) {}

    /** What a table's values are. A coefficient without its basis is no reading: it has to be asked. */
    public sealed interface Scale {
        /** Coefficient of flow through this area, by the nozzle without loss. */
        record Coefficient(Basis basis) implements Scale {}

        /**
         * Volume flow as of the air before the port.
         * @param temperature of the air before the port [K], where it was written down
         * @param pressure    there [Pa]
         */
        record VolumeFlow(OptionalDouble temperature, OptionalDouble pressure) implements Scale {
            public VolumeFlow {
                temperature.ifPresent(t -> Require.within("temperature at the bench [K]", t, COLDEST, HOTTEST));
                pressure.ifPresent(p -> Require.within("air pressure at the bench [Pa]", p, THINNEST, DENSEST));
            }
        }
    }

    /** Area behind a coefficient. */
    public enum Basis {
        /** Circumference of the head times lift. */
        CURTAIN,
        /** Of the valve head. */
        HEAD,
        /** Of the narrowest port, stem taken out. */
        THROAT
    }

    /** How the port was joined to the room. */
    public enum Entry {
        /** Bell-mouth, port plate or clay radius: no loss to speak of. */
        RADIUSED,
        /** The bare face of the head. */
        BARE,
        /** Not written down. */
        NOT_SAID
    }

    /**
     * Something about a table.
     * @param refuses whether nothing can be made of the table until it is mended
     * @param row     from 0; -1 for the whole
     * @param words   what, where, found, allowed, how to mend
     */
    public record Remark(boolean refuses, int row, String words) {}

    /** Everything that is wrong with it or worth knowing, by row. */
    public List<Remark> remarks(ValveGroup valves) {
        List<Remark> remarks = new ArrayList<>();
        shape(remarks);
        if (remarks.stream().noneMatch(Remark::refuses)) {
            falls(remarks);
            sizes(valves, remarks);
            unsaid(remarks);
        }
        return List.copyOf(remarks);
    }

    private void shape(List<Remark> remarks) {
        int open = 0;
        double before = -1;
        for (int i = 0; i < rows.size(); i++) {
            Row row = rows.get(i);
            if (!(row.lift >= 0) || Double.isInfinite(row.lift) || !(row.value >= 0) || Double.isInfinite(row.value)) {
                refuse(
                        remarks,
                        i,
                        "lift is %s mm and flow %s; both must be numbers of 0 or above",
                        millimetres(row.lift),
                        row.value);
            } else if (!(row.lift > before)) {
                refuse(
                        remarks,
                        i,
                        "lift is %s mm after %s mm; lifts must rise from row to row",
                        millimetres(row.lift),
                        millimetres(before));
            } else if (row.lift == 0 && row.value != 0) {
                refuse(
                        remarks,
                        i,
                        "flow is %s at no lift; a valve that leaks has to be lapped before its port is read",
                        row.value);
            } else if (row.lift > 0 && row.value == 0) {
                refuse(remarks, i, "no flow at a lift of %s mm; leave out what was not read", millimetres(row.lift));
            }
            if (scale instanceof Scale.VolumeFlow && row.lift > 0 && !(row.drop >= WEAKEST && row.drop <= STRONGEST)) {
                refuse(
                        remarks,
                        i,
                        "depression is %s Pa; it must be from %s to %s Pa (1 to 100 inches of water): is it in another unit?",
                        row.drop,
                        WEAKEST,
                        STRONGEST);
            }
            before = Math.max(before, row.lift);
            open += row.lift > 0 ? 1 : 0;
        }
        if (open < FEWEST) {
            refuse(remarks, -1, "the table has %s rows off the seat; a curve needs %s at least", open, FEWEST);
        }
    }

    private void falls(List<Remark> remarks) {
        double highest = 0;
        for (int i = 0; i < rows.size(); i++) {
            double area = perDrop(rows.get(i));
            if (area < highest * (1 - LARGEST_FALL)) {
                refuse(
                        remarks,
                        i,
                        "flow is %s %% below that of a lower lift; more than %s %% is taken for a mistake: read this row again, or leave it out",
                        percent(1 - area / highest),
                        percent(LARGEST_FALL));
            } else if (area < highest) {
                remarks.add(new Remark(
                        false,
                        i,
                        words(
                                "flow falls by %s %% while the lift grows: the port stalls there, or the row is off",
                                percent(1 - area / highest))));
            }
            highest = Math.max(highest, area);
        }
    }

    private void sizes(ValveGroup valves, List<Remark> remarks) {
        for (int i = 0; i < rows.size(); i++) {
            Row row = rows.get(i);
            double room = Math.min(valves.curtainArea(row.lift), valves.throatArea());
            double share = row.lift > 0 ? area(row, valves) / room : 0;
            if (share > 1 + BEYOND) {
                refuse(
                        remarks,
                        i,
                        "flow is %s times what the gap at this lift or the throat behind it passes without any loss; check unit, depression, basis and whether it is of one valve or all",
                        String.format(Locale.ROOT, "%.2f", share));
            } else if (share > 1) {
                remarks.add(new Remark(
                        false,
                        i,
                        words(
                                "flow is %s %% more than the gap at this lift or the throat behind it passes without any loss: lift, flow or depression are off by that at least",
                                percent(share - 1))));
            }
        }
    }

    private void unsaid(List<Remark> remarks) {
        if (scale instanceof Scale.VolumeFlow flow && (flow.temperature.isEmpty() || flow.pressure.isEmpty())) {
            remarks.add(new Remark(
                    false,
                    -1,
                    words(
                            "temperature or air pressure at the bench was not written down: taken as %.0f °C and %.0f kPa where missing, with doubt",
                            temperature() - 273.15, pressure() / 1e3)));
        }
        if (entry != Entry.RADIUSED) {
            remarks.add(
                    new Remark(
                            false,
                            -1,
                            entry == Entry.BARE
                                    ? "read at the bare face of the head: its sharp edge takes some of the flow, which a pipe bolted there does not; taken as read, with doubt"
                                    : "whether a port plate or bell-mouth was used was not written down; taken as read, with doubt"));
        }
        remarks.add(new Remark(
                false,
                -1,
                words(
                        "nothing was read beyond a lift of %s mm: from there on the flow is held at that of the last row",
                        millimetres(lastLift()))));
    }

    private static void refuse(List<Remark> remarks, int row, String form, Object... values) {
        remarks.add(new Remark(true, row, words(form, values)));
    }

    private static String words(String form, Object... values) {
        return String.format(Locale.ROOT, form, values);
    }

    private static String millimetres(double metres) {
        return String.format(Locale.ROOT, "%.2f", 1e3 * metres);
    }

    private static String percent(double share) {
        return String.format(Locale.ROOT, "%.1f", 100 * share);
    }

    /** Highest lift that was read [m]. */
    public double lastLift() {
        return rows.isEmpty() ? 0 : rows.get(rows.size() - 1).lift;
    }

    private double temperature() {
        return scale instanceof Scale.VolumeFlow flow ? flow.temperature.orElse(ROOM_TEMPERATURE) : ROOM_TEMPERATURE;
    }

    private double pressure() {
        return scale instanceof Scale.VolumeFlow flow ? flow.pressure.orElse(ROOM_PRESSURE) : ROOM_PRESSURE;
    }

    /** Effective area of a row [m2]. */
    double area(Row row, ValveGroup valves) {
        if (scale instanceof Scale.Coefficient coefficient) {
            return row.value
                    * switch (coefficient.basis) {
                        case CURTAIN -> valves.curtainArea(row.lift);
                        case HEAD -> valves.headArea();
                        case THROAT -> valves.throatArea();
                    };
        }
        return perDrop(row);
    }

    /** What must not fall as the lift grows: effective area of a flow, coefficient times lift of a curtain, else the coefficient. */
    private double perDrop(Row row) {
        if (scale instanceof Scale.Coefficient coefficient) {
            return coefficient.basis == Basis.CURTAIN ? row.value * row.lift : row.value;
        }
        if (row.value == 0) {
            return 0;
        }
        double pressure = pressure();
        double gasConstant = MoistAir.DRY.gasConstant();
        double mass = row.value * pressure / (gasConstant * temperature());
        return mass / AirNozzle.mass(1, pressure, temperature(), gasConstant, pressure - row.drop);
    }

    /**
     * Relative standard uncertainty of every effective area alike: of the bench, of air nobody wrote down (rectangular; the area goes with the root of the density), and of a sharp edge that may or may
     * not have been in the way (rectangular to each side, as wide as it can take).
     */
    public double doubt(ValveGroup valves) {
        double sum = meterDoubt * meterDoubt;
        if (scale instanceof Scale.Coefficient) {
            sum += COMPRESSION * COMPRESSION / 3;
        }
        if (scale instanceof Scale.VolumeFlow flow) {
            if (flow.temperature.isEmpty()) {
                sum += square(0.5 * ROOM_TEMPERATURE_REACH / ROOM_TEMPERATURE) / 3;
            }
            if (flow.pressure.isEmpty()) {
                sum += square(0.5 * ROOM_PRESSURE_REACH / ROOM_PRESSURE) / 3;
            }
        }
        if (entry != Entry.RADIUSED) {
            double share = Math.min(1, area(rows.get(rows.size() - 1), valves) / valves.throatArea());
            double loss = 1 - 1 / Math.sqrt(1 + SHARP_EDGE * share * share);
            sum += loss * loss / 3;
        }
        return Math.sqrt(sum);
    }

    private static double square(double x) {
        return x * x;
    }
}
