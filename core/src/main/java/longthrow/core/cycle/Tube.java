package longthrow.core.cycle;

import java.util.List;
import longthrow.core.quantity.Require;

/**
 * A round pipe as one measures it: inside diameters at some places, straight cones between.
 * @param length    [m]
 * @param stations  by distance from the end towards the valve, ascending, one at least; before the first and beyond the last the diameter stays
 * @param wall      temperature of the wall [K]
 * @param roughness height of the wall's roughness [m], 0 for smooth
 */
public record Tube(double length, List<Station> stations, double wall, double roughness) implements Piece {
    /**
     * A place where the diameter is known.
     * @param at       from the end towards the valve [m]
     * @param diameter inside [m]
     */
    public record Station(double at, double diameter) {
        public Station {
            Require.notNegative("place along the pipe [m]", at);
            Require.positive("inside diameter [m]", diameter);
        }
    }

    public Tube {
        Require.positive("length of the pipe [m]", length);
        Require.positive("temperature of the pipe's wall [K]", wall);
        Require.notNegative("roughness of the pipe's wall [m]", roughness);
        stations = List.copyOf(stations);
        if (stations.isEmpty()) {
            throw new IllegalArgumentException("a pipe without a diameter; give one at least");
        }
        for (int i = 1; i < stations.size(); i++) {
            if (!(stations.get(i).at() > stations.get(i - 1).at())) {
                throw new IllegalArgumentException(
                        "diameters of a pipe stand at " + stations.get(i - 1).at() + " m and then at "
                                + stations.get(i).at() + " m; give them in the order of their places");
            }
        }
    }

    /** Of one diameter [m]. */
    public static Tube straight(double length, double diameter, double wall) {
        return new Tube(length, List.of(new Station(0, diameter)), wall, 0);
    }

    /** A cone. */
    public static Tube cone(double length, double atValve, double away, double wall) {
        return new Tube(length, List.of(new Station(0, atValve), new Station(length, away)), wall, 0);
    }

    /** Inside diameter [m] at a distance from the end towards the valve [m]. */
    public double diameter(double at) {
        Station before = stations.get(0);
        for (Station station : stations) {
            if (at <= station.at()) {
                double span = station.at() - before.at();
                return span > 0
                        ? before.diameter() + (at - before.at()) / span * (station.diameter() - before.diameter())
                        : station.diameter();
            }
            before = station;
        }
        return before.diameter();
    }
}
