package longthrow.core.motion;

import java.util.List;
import java.util.function.DoubleUnaryOperator;

/** Invented lobes whose true shape is known: lift [mm] by crank degrees from the peak. */
final class InventedLobes {
    private InventedLobes() {}

    static List<DoubleUnaryOperator> all() {
        return List.of(
                rise(8.2, 140, RiseFunction.MODIFIED_SINE),
                rise(6.3, 135, RiseFunction.POLYNOMIAL_345),
                bell(8, 150),
                onRamps(6.3, 130));
    }

    static DoubleUnaryOperator rise(double lift, double half, RiseFunction function) {
        return degrees -> lift * function.at(Math.max(0, 1 - Math.abs(degrees) / half), 0);
    }

    private static DoubleUnaryOperator bell(double lift, double half) {
        return degrees -> {
            double u = degrees / half;
            return Math.abs(u) < 1 ? lift * Math.pow(1 - u * u, 3) : 0;
        };
    }

    /** With a quarter of a millimetre of ramp over twenty degrees, as lash needs. */
    private static DoubleUnaryOperator onRamps(double lift, double half) {
        DoubleUnaryOperator lobe = bell(lift, half);
        return degrees -> {
            double past = Math.min(Math.max((Math.abs(degrees) - half) / 20, 0), 1);
            return lobe.applyAsDouble(degrees) + 0.125 * (1 + Math.cos(Math.PI * past));
        };
    }
}
