package longthrow.core.cycle;

import java.util.EnumMap;
import java.util.Map;
import java.util.Objects;

/** What stood where over a cycle, every degree from {@link #FIRST} on. Immutable. */
public final class Traces {
    /** Crank angle of the first place [deg]. */
    public static final int FIRST = -180;

    /** One each degree of two turns, and the end. */
    public static final int PLACES = 721;

    /** What is traced. */
    public enum Trace {
        /** In the cylinder [Pa]. */
        PRESSURE,
        /** In the cylinder, mean over the mass [K]. */
        TEMPERATURE,
        /** Before the intake valve [Pa]. */
        INTAKE_PRESSURE,
        /** Behind the exhaust valve [Pa]. */
        EXHAUST_PRESSURE,
        /** Through the intake valve into the cylinder [kg/s]. */
        INTAKE_FLOW,
        /** Through the exhaust valve out of the cylinder [kg/s]. */
        EXHAUST_FLOW
    }

    private final Map<Trace, double[]> values;

    private Traces(Map<Trace, double[]> values) {
        this.values = values;
    }

    /** At a crank angle of whole degrees from firing top dead centre, -180 to 540. */
    public double at(Trace trace, int degree) {
        return Objects.requireNonNull(values.get(trace))[degree - FIRST];
    }

    /** All of one, in the unit of the trace; a copy. */
    public double[] all(Trace trace) {
        return Objects.requireNonNull(values.get(trace)).clone();
    }

    /** Writes them while a cycle runs. */
    static final class Pen {
        private final Map<Trace, double[]> values = new EnumMap<>(Trace.class);
        private int next;

        void begin() {
            next = 0;
        }

        /** Keeps the first state at or beyond each degree. */
        void add(double angle, Cylinder cylinder, DuctFlow intake, DuctFlow exhaust) {
            int to = Math.min(PLACES - 1, (int) Math.floor(Math.toDegrees(angle) - FIRST + 1e-9));
            if (next > to) {
                return;
            }
            double temperature = cylinder.meanTemperature();
            for (; next <= to; next++) {
                put(Trace.PRESSURE, cylinder.pressure());
                put(Trace.TEMPERATURE, temperature);
                put(Trace.INTAKE_PRESSURE, intake.portPressure());
                put(Trace.EXHAUST_PRESSURE, exhaust.portPressure());
                put(Trace.INTAKE_FLOW, intake.intoCylinder());
                put(Trace.EXHAUST_FLOW, -exhaust.intoCylinder());
            }
        }

        private void put(Trace trace, double value) {
            values.computeIfAbsent(trace, t -> new double[PLACES])[next] = value;
        }

        Traces kept() {
            Map<Trace, double[]> kept = new EnumMap<>(Trace.class);
            values.forEach((trace, all) -> kept.put(trace, all.clone()));
            return new Traces(kept);
        }
    }
}
