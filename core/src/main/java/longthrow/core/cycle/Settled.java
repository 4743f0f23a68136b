package longthrow.core.cycle;

import java.util.List;

/**
 * What stood in an engine at the end of its last cycle: where a like engine may begin, so that it has less far to go than from air at rest. Where its cycles settle does not depend on it but within {@link OperatingPoint#ALIKE}.
 * Ducts of other lengths are filled by their relative length. Immutable.
 */
public final class Settled {
    final Way intake;
    final Way exhaust;
    final double pressure;
    final double temperature;
    final double burned;
    final double speed;
    final double load;
    final double spark;

    /**
     * At bottom dead centre before compression.
     * @param pressure    in the cylinder [Pa]
     * @param temperature there [K]
     * @param burned      share of burned gas there
     * @param speed       of the crankshaft [rad/s]
     * @param load        on it [N m]
     * @param spark       before firing top dead centre [rad]
     */
    Settled(
            Way intake,
            Way exhaust,
            double pressure,
            double temperature,
            double burned,
            double speed,
            double load,
            double spark) {
        this.intake = intake;
        this.exhaust = exhaust;
        this.pressure = pressure;
        this.temperature = temperature;
        this.burned = burned;
        this.speed = speed;
        this.load = load;
        this.spark = spark;
    }

    /** What stood in a duct, from the valve outwards. */
    record Way(List<Along> pipes, List<Still> rooms) {
        Way {
            pipes = List.copyOf(pipes);
            rooms = List.copyOf(rooms);
        }
    }

    /** In a plenum [Pa, K, share of burned gas]. */
    record Still(double pressure, double temperature, double burned) {}

    /** In a pipe, cell by cell, and the mean stream that rubs on its wall. */
    static final class Along {
        final double stream;
        final double warmth;
        private final double[] pressure;
        private final double[] temperature;
        private final double[] velocity;
        private final double[] burned;

        /**
         * Of a pipe of so many cells.
         * @param stream mean over a cycle [kg/s]
         * @param warmth mean temperature over a cycle [K]
         */
        Along(int cells, double stream, double warmth) {
            this.stream = stream;
            this.warmth = warmth;
            this.pressure = new double[cells];
            this.temperature = new double[cells];
            this.velocity = new double[cells];
            this.burned = new double[cells];
        }

        void put(int cell, double ofPressure, double ofTemperature, double ofVelocity, double ofBurned) {
            pressure[cell] = ofPressure;
            temperature[cell] = ofTemperature;
            velocity[cell] = ofVelocity;
            burned[cell] = ofBurned;
        }

        /** [Pa]; at a share of the length. */
        double pressure(double share) {
            return at(pressure, share);
        }

        /** [K]. */
        double temperature(double share) {
            return at(temperature, share);
        }

        /** [m/s]. */
        double velocity(double share) {
            return at(velocity, share);
        }

        double burned(double share) {
            return at(burned, share);
        }

        /** Straight between the middles of cells; beyond the outermost as there. */
        private static double at(double[] of, double share) {
            double place = Math.max(0, Math.min(of.length - 1.0, share * of.length - 0.5));
            int left = Math.min(of.length - 2, (int) place);
            if (left < 0) {
                return of[0];
            }
            double part = place - left;
            return part == 0 ? of[left] : (1 - part) * of[left] + part * of[left + 1];
        }
    }
}
