package longthrow.core.shake;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import longthrow.core.motion.CrankMotion;
import longthrow.core.quantity.Require;

/**
 * Path of the tip of the shaking force over one turn: {@link ShakingForce} in plain numbers.
 * @param points by rising angle, from 0 up to one turn, without the last
 */
public record Hodograph(List<Point> points) {
    public Hodograph {
        points = List.copyOf(points);
    }

    /**
     * The force at one angle.
     * @param angle  from top dead centre [rad]
     * @param along  the cylinder, towards the head positive [N]
     * @param across it, towards the crank pin at +90 degrees positive [N]
     */
    public record Point(double angle, double along, double across) {
        public double size() {
            return Math.hypot(along, across);
        }
    }

    /**
     * Masses that make it [kg], those of the crank at the crank radius.
     * @param reciprocating piston assembly and small end, &gt; 0
     * @param turning       rotating mass less counterweight; usually below 0
     */
    public record Masses(double reciprocating, double turning) {
        public Masses {
            Require.positive("reciprocating mass [kg]", reciprocating);
            Require.finite("rotating mass less counterweight [kg]", turning);
        }

        /** With the rotating mass wholly balanced and this share of the reciprocating mass besides. */
        public static Masses ofFactor(double reciprocating, double factor) {
            return new Masses(reciprocating, -factor * reciprocating);
        }
    }

    /**
     * Over one turn.
     * @param speed of the crank [rad/s], 0 and up
     * @param count of points, 2 at least
     */
    public static Hodograph of(CrankMotion crank, Masses masses, double speed, int count) {
        Require.notNegative("speed [rad/s]", speed);
        Require.within("points of a hodograph", count, 2, 1_000_000);
        double square = speed * speed;
        double turning = masses.turning * crank.crankRadius() * square;
        List<Point> points = new ArrayList<>(count);
        for (int k = 0; k < count; k++) {
            double angle = 2 * Math.PI * k / count;
            double piston = masses.reciprocating * crank.travelBend(angle) * square;
            points.add(new Point(angle, piston + turning * Math.cos(angle), turning * Math.sin(angle)));
        }
        return new Hodograph(points);
    }

    /** Where the force is largest. */
    public Point largest() {
        return points.stream().max(Comparator.comparingDouble(Point::size)).orElseThrow();
    }

    /** Largest push along the cylinder, either way [N]. */
    public double largestAlong() {
        return points.stream().mapToDouble(p -> Math.abs(p.along)).max().orElseThrow();
    }

    /** Largest push across the cylinder, either way [N]. */
    public double largestAcross() {
        return points.stream().mapToDouble(p -> Math.abs(p.across)).max().orElseThrow();
    }
}
