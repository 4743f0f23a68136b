package longthrow.core.power;

import java.util.Locale;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import longthrow.core.cycle.OperatingPoint.Fire;
import longthrow.core.quantity.Dimension;

/** What is told of an engine at one speed. Mean effective pressures: what the gas does in compression and expansion, less what breathing takes, less what rubs, is what is left at the crankshaft. */
enum Told {
    TORQUE("torque", Dimension.TORQUE, Curve.Point::torque),
    POWER("power", Dimension.POWER, Curve.Point::power),
    BMEP(
            "brake mean effective pressure",
            Dimension.PRESSURE,
            p -> p.point().work().net() - p.friction()),
    IMEP(
            "indicated mean effective pressure, compression and expansion",
            Dimension.PRESSURE,
            p -> p.point().work().gross()),
    PMEP(
            "mean effective pressure of pumping",
            Dimension.PRESSURE,
            p -> p.point().work().pumping()),
    FMEP("mean effective pressure of friction", Dimension.PRESSURE, Curve.Point::friction),
    VOLUMETRIC_EFFICIENCY(
            "volumetric efficiency", Dimension.RATIO, p -> p.point().charge().volumetric()),
    RESIDUAL(
            "burned gas left in the charge",
            Dimension.RATIO,
            p -> p.point().charge().residual()),
    BSFC("brake specific fuel consumption", Dimension.SPECIFIC_FUEL_CONSUMPTION, p -> perWork(p)),
    FUEL("fuel", Dimension.MASS_FLOW, p -> fuelRate(p)),
    PEAK_PRESSURE("peak pressure", Dimension.PRESSURE, p -> fire(p, Fire::peak)),
    PEAK_ANGLE("peak pressure, after top dead centre", Dimension.ANGLE, p -> fire(p, Fire::peakAngle)),
    SPARK("spark, before top dead centre", Dimension.ANGLE, p -> fire(p, Fire::spark)),
    BURN_10("a tenth burned, after top dead centre", Dimension.ANGLE, p -> fire(p, Fire::tenth)),
    BURN_50("half burned, after top dead centre", Dimension.ANGLE, p -> fire(p, Fire::half)),
    BURN_90("nine tenths burned, after top dead centre", Dimension.ANGLE, p -> fire(p, Fire::nineTenths)),
    OCTANE_WANTED(
            "octane number wanted, between motor and research", Dimension.RATIO, p -> fire(p, Fire::octaneWanted)),
    EXHAUST_TEMPERATURE(
            "exhaust as it leaves the cylinder",
            Dimension.TEMPERATURE,
            p -> p.point().heat().exhaustTemperature()),
    PORT_TEMPERATURE(
            "gas in the exhaust port",
            Dimension.TEMPERATURE,
            p -> p.point().heat().portTemperature());

    private final String label;
    private final Dimension dimension;

    @SuppressWarnings("ImmutableEnumChecker") // holds no state
    private final ToDoubleFunction<Curve.Point> of;

    Told(String label, Dimension dimension, ToDoubleFunction<Curve.Point> of) {
        this.label = label;
        this.dimension = dimension;
        this.of = of;
    }

    private static double fire(Curve.Point point, ToDoubleFunction<Fire> of) {
        Optional<Fire> fire = point.point().fire();
        return fire.isPresent() ? of.applyAsDouble(fire.get()) : Double.NaN;
    }

    /** A cycle takes two turns. */
    private static double fuelRate(Curve.Point point) {
        return point.point().charge().fuel() * point.speed() / (4 * Math.PI);
    }

    /** No figure for an engine that gives no work. */
    private static double perWork(Curve.Point point) {
        return point.power() > 0 ? fuelRate(point) / point.power() : Double.NaN;
    }

    String key() {
        return name().toLowerCase(Locale.ROOT);
    }

    String label() {
        return label;
    }

    Dimension dimension() {
        return dimension;
    }

    /** NaN where it has no meaning. */
    double of(Curve.Point point) {
        return of.applyAsDouble(point);
    }
}
