package longthrow.core.cycle;

import java.util.Optional;
import java.util.OptionalDouble;
import longthrow.core.quantity.Require;

/**
 * Valves of one kind in one cylinder, alike and opened together.
 * @param count  1 or more
 * @param head   diameter of a head [m]
 * @param stem   diameter of the stem in the throat [m]; 0 where the guide ends above the throat or it is not known, which leaves the throat wider
 * @param throat narrowest diameter of the port behind one seat [m]; empty where not read
 * @param seat   empty where not read
 */
public record ValveGroup(int count, double head, double stem, OptionalDouble throat, Optional<Seat> seat) {
    public ValveGroup {
        if (count < 1) {
            throw new IllegalArgumentException("number of valves is " + count + "; it must be 1 or more");
        }
        Require.positive("diameter of a valve head [m]", head);
        Require.notNegative("diameter of the stem [m]", stem);
        double widest =
                throat.isPresent() ? Require.positive("diameter of the throat [m]", throat.getAsDouble()) : head;
        if (!(widest <= head)) {
            throw new IllegalArgumentException("diameter of the throat is " + widest
                    + " m; behind the seat of a head of " + head + " m it cannot be wider than the head");
        }
        if (!(stem < widest)) {
            throw new IllegalArgumentException("diameter of the stem is " + stem
                    + " m; it must be less than that of the throat, " + widest + " m");
        }
        if (seat.isPresent() && !(2 * seat.get().width() < head)) {
            throw new IllegalArgumentException("width of the seat is "
                    + seat.get().width() + " m across the radius; a head of " + head + " m has no room for it");
        }
    }

    /**
     * The ring on which head and port close.
     * @param angle of the seat from the plane of the head [rad], 0 for a flat one, below a right angle
     * @param width across the radius, as seen along the stem [m]
     */
    public record Seat(double angle, double width) {
        public Seat {
            Require.within("seat angle [rad]", angle, 0, 1.4);
            Require.notNegative("width of the seat across the radius [m]", width);
        }

        /** By its width along the slanted face, as it is read with a scale [m]. */
        public static Seat ofFace(double angle, double faceWidth) {
            return new Seat(angle, Require.notNegative("width of the seat face [m]", faceWidth) * Math.cos(angle));
        }
    }

    /** One head of this diameter, nothing else known. */
    public static ValveGroup of(double head) {
        return new ValveGroup(1, head, 0, OptionalDouble.empty(), Optional.empty());
    }

    /** Of all heads [m2]. */
    public double headArea() {
        return count * circle(head);
    }

    /** Circumference of the heads times lift [m2]. */
    public double curtainArea(double lift) {
        return count * Math.PI * head * lift;
    }

    /** Of all throats, stems taken out [m2]; where no throat was read that of the heads, which is more than any throat has. */
    public double throatArea() {
        return count * (circle(throat.orElse(head)) - circle(stem));
    }

    private static double circle(double diameter) {
        return 0.25 * Math.PI * diameter * diameter;
    }
}
