package longthrow.core.flow;

import longthrow.core.quantity.Require;

/**
 * The least area between a poppet valve, its seat and its port, by lift: first between seats face to face, then from the seat's inner edge slanting, then the port about the stem (Heywood, 1988,
 * eqs. 6.7 to 6.9). Geometry alone; what flows is less by a discharge coefficient.
 * @param head      outer diameter of the valve's head at the seat [m]
 * @param seatWidth along the cone's projection in Heywood's figure: inner seat diameter is head - 2 seatWidth [m]
 * @param seatAngle between the seat and the head's plane [rad], above 0 and below a right angle
 * @param port      diameter [m]
 * @param stem      diameter [m], 0 or above
 */
public record PoppetWay(double head, double seatWidth, double seatAngle, double port, double stem) {
    public PoppetWay {
        Require.positive("valve head diameter [m]", head);
        Require.positive("seat width [m]", seatWidth);
        Require.positive("seat angle [rad]", seatAngle);
        Require.positive("right angle less seat angle [rad]", 0.5 * Math.PI - seatAngle);
        Require.positive("port diameter [m]", port);
        Require.notNegative("stem diameter [m]", stem);
        Require.positive("port diameter less stem diameter [m]", port - stem);
        Require.positive("head diameter less two seat widths [m]", head - 2 * seatWidth);
    }

    /** Up to this lift seats face each other [m]. */
    public double firstEnds() {
        return seatWidth / (Math.sin(seatAngle) * Math.cos(seatAngle));
    }

    /** From this lift on the port is narrower than the valve [m]; never before {@link #firstEnds}. */
    public double secondEnds() {
        double reach = (port * port - stem * stem) / (4 * mean());
        double square = Math.max(0, reach * reach - seatWidth * seatWidth);
        return Math.max(firstEnds(), Math.sqrt(square) + seatWidth * Math.tan(seatAngle));
    }

    private double mean() {
        return head - seatWidth;
    }

    /** [m2]; none at a lift of 0 and below. */
    public double area(double lift) {
        if (lift <= 0) {
            return 0;
        }
        double free = portArea();
        if (lift > secondEnds()) {
            return free;
        }
        return Math.min(free, gap(head, seatWidth, seatAngle, lift));
    }

    /** Between head and seat alone [m2]: square to the seat's face while seats face each other, then from edge to edge. */
    public static double gap(double head, double seatWidth, double seatAngle, double lift) {
        double sine = Math.sin(seatAngle);
        double cosine = Math.cos(seatAngle);
        if (lift * sine * cosine <= seatWidth) {
            return Math.PI * lift * cosine * (head - 2 * seatWidth + lift * sine * cosine);
        }
        return Math.PI * (head - seatWidth) * Math.hypot(lift - seatWidth * sine / cosine, seatWidth);
    }

    /** About the stem [m2]. */
    public double portArea() {
        return 0.25 * Math.PI * (port * port - stem * stem);
    }

    /** Of the cylinder from seat to head: pi by head by lift [m2], the area that many a discharge coefficient means. */
    public double curtain(double lift) {
        return Math.PI * head * lift;
    }
}
