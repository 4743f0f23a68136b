package longthrow.core.cycle;

import java.util.Arrays;

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

    private final double[][] values;

    private Traces(double[][] values) {
        this.values = values;
    }

    /** At a crank angle of whole degrees from firing top dead centre, -180 to 540. */
    public double at(Trace trace, int degree) {
        return values[trace.ordinal()][degree - FIRST];
    }

    /** All of one, in the unit of the trace; a copy. */
    public double[] all(Trace trace) {
        return values[trace.ordinal()].clone();
    }

    /** Writes them while a cycle runs. */
    static final class Pen {
        private final double[][] values = new double[Trace.values().length][PLACES];
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
            values[trace.ordinal()][next] = value;
        }

        Traces kept() {
            return new Traces(Arrays.stream(values).map(double[]::clone).toArray(double[][]::new));
        }
    }
}
