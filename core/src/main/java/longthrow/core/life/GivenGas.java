package longthrow.core.life;

import java.util.List;
import longthrow.core.quantity.Require;

/**
 * A gas trace that was measured or predicted: points joined by straight lines, repeated every two turns.
 * @param points by rising angle within two turns, two at least
 */
public record GivenGas(List<Point> points) implements GasTrace {
    /**
     * One point.
     * @param angle    after firing top dead centre [rad], from 0 up to two turns
     * @param absolute pressure [Pa], 0 and up
     */
    public record Point(double angle, double absolute) {
        public Point {
            if (!(angle >= 0 && angle < CYCLE)) {
                throw new IllegalArgumentException("crank angle is " + Math.toDegrees(angle)
                        + " deg; a gas trace runs from 0 up to 720 deg after firing top dead centre");
            }
            Require.notNegative("absolute pressure [Pa] at " + Math.toDegrees(angle) + " deg", absolute);
        }
    }

    public GivenGas {
        points = List.copyOf(points);
        if (points.size() < 2) {
            throw new IllegalArgumentException("a gas trace has " + points.size() + " points; it needs 2 at least");
        }
        for (int k = 1; k < points.size(); k++) {
            if (!(points.get(k).angle > points.get(k - 1).angle)) {
                throw new IllegalArgumentException("angles of a gas trace must rise; "
                        + Math.toDegrees(points.get(k).angle) + " deg follows "
                        + Math.toDegrees(points.get(k - 1).angle) + " deg");
            }
        }
    }

    @Override
    public double gauge(double angle) {
        double turned = angle - CYCLE * Math.floor(angle / CYCLE);
        int low = 0;
        int high = points.size(); // first point beyond the angle
        while (low < high) {
            int middle = (low + high) >>> 1;
            if (points.get(middle).angle <= turned) {
                low = middle + 1;
            } else {
                high = middle;
            }
        }
        Point before = points.get((low + points.size() - 1) % points.size());
        Point after = points.get(low % points.size());
        double span = positive(after.angle - before.angle);
        double share = positive(turned - before.angle) / span;
        return before.absolute + share * (after.absolute - before.absolute) - STANDARD_ATMOSPHERE;
    }

    private static double positive(double difference) {
        return difference < 0 ? difference + CYCLE : difference;
    }
}
