package longthrow.core.gain;

import longthrow.core.gas.VapourPressure;
import longthrow.core.measurement.Measured;
import longthrow.core.quantity.Require;

/**
 * The air an engine breathed, as barometer, thermometer and hygrometer told it at the dyno. What two sessions share, an instrument's own error above all,
 * stands as one shared source in both and cancels where they are compared.
 * @param barometer        pressure there, absolute and not reduced to sea level [Pa]
 * @param temperature      of the air going in [K]
 * @param relativeHumidity 0 to 1
 */
public record AirReading(Measured barometer, Measured temperature, Measured relativeHumidity) {
    public AirReading {
        Require.within("barometer [Pa]", barometer.value(), 40e3, 120e3);
        Require.within("air temperature [K]", temperature.value(), VapourPressure.COLDEST, VapourPressure.HOTTEST);
        Require.within("relative humidity", relativeHumidity.value(), 0, 1);
    }

    /** Readings without doubt, in the units of the standards. */
    public static AirReading exact(double kilopascal, double celsius, double relativeHumidity) {
        return new AirReading(
                Measured.exact(kilopascal * 1e3),
                Measured.exact(celsius + VapourPressure.ICE_POINT),
                Measured.exact(relativeHumidity));
    }

    /** Pressure of the vapour by the Magnus formula of WMO-No. 8 [Pa], which the standards' tables are nearest to. */
    public double vapour() {
        return vapour(temperature.value(), relativeHumidity.value());
    }

    static double vapour(double temperature, double relativeHumidity) {
        return relativeHumidity * VapourPressure.MAGNUS_WMO.at(temperature);
    }

    /** Pressure of the dry air: barometer less vapour [Pa]. */
    public double dryPressure() {
        return barometer.value() - vapour();
    }

    /** Density of the dry air over that at 99 kPa dry and 298 K. */
    public double densityRatio() {
        return dryPressure()
                / 99e3
                * (298 / (AirStandard.celsius(temperature.value()) + AirStandard.PRINTED_ICE_POINT));
    }
}
