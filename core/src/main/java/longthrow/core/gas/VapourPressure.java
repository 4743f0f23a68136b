package longthrow.core.gas;

import java.util.function.DoubleUnaryOperator;
import longthrow.core.quantity.Require;

/**
 * Published formulas for the pressure of water vapour over liquid water [Pa], by temperature [K], from {@link #COLDEST} to {@link #HOTTEST}.
 * {@link #CIPM_2007} agrees with the handbook tables within 0.1 % from 0 to 50 degrees Celsius and is what {@link MoistAir} takes;
 * {@link #MAGNUS_WMO} lies 0.3 % below them and is for what prints it. Coefficients as in the reference rows WEA-01 to WEA-05.
 */
public enum VapourPressure {
    /** A. L. Buck, J. Appl. Meteorol. 20 (1981) 1527, equation e_w1. */
    BUCK_1981(t -> 611.21 * Math.exp(17.502 * t / (240.97 + t))),
    /** A. L. Buck, as revised in 1996. */
    BUCK_1996(t -> 611.21 * Math.exp((18.678 - t / 234.5) * t / (257.14 + t))),
    /** WMO-No. 8 (2008), annex 4.B, after D. Sonntag (1990). */
    MAGNUS_WMO(t -> 611.2 * Math.exp(17.62 * t / (243.12 + t))),
    /** O. Tetens (1930) in the form of F. W. Murray (1967). */
    TETENS(t -> 610.78 * Math.pow(10, 7.5 * t / (237.3 + t))),
    /** A. Picard and others, Metrologia 45 (2008) 149, annex A1.1. */
    CIPM_2007(t -> {
        double k = t + VapourPressure.ICE_POINT;
        return Math.exp(1.2378847e-5 * k * k - 1.9121316e-2 * k + 33.93711047 - 6343.1645 / k);
    });

    /** 0 degrees Celsius [K]. */
    public static final double ICE_POINT = 273.15;

    /** Coldest air asked about [K]; over liquid water, which may be colder than ice. */
    public static final double COLDEST = ICE_POINT - 50;

    /** Hottest [K]. */
    public static final double HOTTEST = ICE_POINT + 60;

    @SuppressWarnings("ImmutableEnumChecker") // keeps no state
    private final DoubleUnaryOperator byCelsius;

    VapourPressure(DoubleUnaryOperator byCelsius) {
        this.byCelsius = byCelsius;
    }

    /** Pressure of saturated vapour [Pa]. */
    public double at(double temperature) {
        Require.within("air temperature [K]", temperature, COLDEST, HOTTEST);
        return byCelsius.applyAsDouble(temperature - ICE_POINT);
    }

    /**
     * Temperature at which vapour of this pressure is saturated [K], by halving, within 1e-9 K.
     * @param pressure of the vapour [Pa]; between those at the coldest and the hottest
     */
    public double dewPoint(double pressure) {
        Require.within("vapour pressure [Pa]", pressure, at(COLDEST), at(HOTTEST));
        double low = COLDEST;
        double high = HOTTEST;
        while (high - low > 1e-9) {
            double middle = 0.5 * (low + high);
            if (at(middle) < pressure) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return 0.5 * (low + high);
    }
}
