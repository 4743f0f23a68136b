package longthrow.core.cycle;

import java.util.function.DoubleUnaryOperator;

/**
 * How wide a valve stands open over two turns: the area that, filled with the flow of a nozzle without loss, passes as much. Told apart by direction. Read once into a table of
 * a half degree, straight between; a lookup allocates nothing. Angles [rad] from firing top dead centre, any number of turns.
 */
public final class Passage {
    private static final int PER_DEGREE = 2;
    private static final int PLACES = 720 * PER_DEGREE;
    private static final double PER_RADIAN = PER_DEGREE * 180 / Math.PI;

    private final double[] in;
    private final double[] out;
    private final double opens;
    private final double closes;

    private Passage(double[] in, double[] out) {
        this.in = in;
        this.out = out;
        int shut = shutBefore(out);
        this.opens = shut / PER_RADIAN;
        int open = shut;
        while (open < shut + PLACES && (out[Math.floorMod(open + 1, PLACES)] > 0)) {
            open++;
        }
        this.closes = (open + 1) / PER_RADIAN;
    }

    /** The last place of the table at which it is shut before it opens. */
    private static int shutBefore(double[] area) {
        for (int i = 0; i < PLACES; i++) {
            if (area[i] == 0 && area[(i + 1) % PLACES] > 0) {
                return i;
            }
        }
        throw new IllegalArgumentException("a valve must be shut somewhere and open somewhere over two turns");
    }

    /**
     * Read once from two laws of the angle.
     * @param in  effective area of flow into the cylinder by crank angle [m2], 0 or above, 0 while the valve is shut
     * @param out the same out of the cylinder
     */
    public static Passage of(DoubleUnaryOperator in, DoubleUnaryOperator out) {
        return new Passage(read(in), read(out));
    }

    private static double[] read(DoubleUnaryOperator area) {
        double[] places = new double[PLACES + 1];
        for (int i = 0; i < PLACES; i++) {
            double here = area.applyAsDouble(i / PER_RADIAN);
            if (!(here >= 0) || Double.isInfinite(here)) {
                throw new IllegalArgumentException("the area of a valve at " + (double) i / PER_DEGREE + " degrees is "
                        + here + " m2; it must be 0 or above");
            }
            places[i] = here;
        }
        places[PLACES] = places[0];
        return places;
    }

    /** [m2]. */
    double at(double angle, boolean intoCylinder) {
        double place = angle * PER_RADIAN;
        place -= PLACES * Math.floor(place / PLACES);
        int i = Math.min((int) place, PLACES - 1);
        double[] area = intoCylinder ? in : out;
        return area[i] + (place - i) * (area[i + 1] - area[i]);
    }

    /** Angle at which it begins to open [rad], 0 to 4 pi. */
    double opens() {
        return opens;
    }

    /** Angle at which it is shut again [rad], after {@link #opens}. */
    double closes() {
        return closes;
    }
}
