package longthrow.core.quantity;

/**
 * The units in which one figure is printed on the two benches. The sizes where a unit gives way to the next are a matter of
 * layout: common practice, no source.
 *
 * @param metric printed by a metric bench
 * @param inchTrade printed by an inch bench; the same unit where both write it so
 */
public record BenchUnits(Unit metric, Unit inchTrade) {
    private static final double TORQUE_IN_POUND_FEET_FROM = Units.POUND_FOOT.toSi(15);
    private static final double PRESSURE_IN_BAR_FROM = Units.BAR.toSi(20);
    private static final double PRESSURE_IN_MEGAPASCALS_FROM = Units.BAR.toSi(200);
    private static final double MASS_IN_KILOGRAMS_FROM = Units.KILOGRAM.toSi(2);
    private static final double MASS_IN_POUNDS_FROM = Units.POUND.toSi(2);
    /** Below it a flow is that of a jet. */
    private static final double VOLUME_FLOW_OF_AIR_FROM = Units.LITRE_PER_SECOND.toSi(0.05);

    private static final double TIME_IN_MINUTES_FROM = Units.MINUTE.toSi(2);
    private static final double TIME_IN_HOURS_FROM = Units.HOUR.toSi(2);

    public BenchUnits {
        if (metric.dimension() != inchTrade.dimension()) {
            throw new IllegalArgumentException(
                    "units are '" + metric + "' of " + metric.dimension().plainName() + " and '" + inchTrade + "' of "
                            + inchTrade.dimension().plainName() + "; both must be of one dimension");
        }
    }

    /** One unit for both. */
    public static BenchUnits alone(Unit unit) {
        return new BenchUnits(unit, unit);
    }

    /** The usual units for a value of this size [coherent SI]. */
    public static BenchUnits of(Dimension dimension, double si) {
        double size = Math.abs(si);
        return switch (dimension) {
            case LENGTH -> new BenchUnits(Units.MILLIMETRE, Units.INCH);
            case AREA -> new BenchUnits(Units.SQUARE_MILLIMETRE, Units.SQUARE_INCH);
            case VOLUME -> new BenchUnits(Units.CUBIC_CENTIMETRE, Units.CUBIC_INCH);
            case MASS ->
                new BenchUnits(
                        size < MASS_IN_KILOGRAMS_FROM ? Units.GRAM : Units.KILOGRAM,
                        size < MASS_IN_POUNDS_FROM ? Units.OUNCE : Units.POUND);
            case TIME ->
                alone(
                        size < TIME_IN_MINUTES_FROM
                                ? Units.SECOND
                                : size < TIME_IN_HOURS_FROM ? Units.MINUTE : Units.HOUR);
            case ANGLE -> alone(Units.DEGREE);
            case SPEED -> new BenchUnits(Units.METRE_PER_SECOND, Units.FOOT_PER_MINUTE);
            case ROTATIONAL_SPEED -> alone(Units.RPM);
            case ACCELERATION -> new BenchUnits(Units.METRE_PER_SECOND_SQUARED, Units.FOOT_PER_SECOND_SQUARED);
            case FORCE -> new BenchUnits(Units.NEWTON, Units.POUND_FORCE);
            case STIFFNESS -> new BenchUnits(Units.NEWTON_PER_MILLIMETRE, Units.POUND_FORCE_PER_INCH);
            case TORQUE ->
                new BenchUnits(
                        Units.NEWTON_METRE, size < TORQUE_IN_POUND_FEET_FROM ? Units.POUND_INCH : Units.POUND_FOOT);
            case PRESSURE ->
                new BenchUnits(
                        size < PRESSURE_IN_BAR_FROM
                                ? Units.KILOPASCAL
                                : size < PRESSURE_IN_MEGAPASCALS_FROM ? Units.BAR : Units.MEGAPASCAL,
                        Units.PSI);
            case TEMPERATURE -> new BenchUnits(Units.CELSIUS, Units.FAHRENHEIT);
            case TEMPERATURE_DIFFERENCE -> new BenchUnits(Units.CELSIUS_DIFFERENCE, Units.FAHRENHEIT_DIFFERENCE);
            case POWER -> new BenchUnits(Units.KILOWATT, Units.HORSEPOWER);
            case INERTIA -> new BenchUnits(Units.KILOGRAM_METRE_SQUARED, Units.POUND_FOOT_SQUARED);
            case DENSITY -> new BenchUnits(Units.KILOGRAM_PER_CUBIC_METRE, Units.POUND_PER_CUBIC_FOOT);
            case VOLUME_FLOW ->
                size < VOLUME_FLOW_OF_AIR_FROM
                        ? alone(Units.CC_PER_MINUTE)
                        : new BenchUnits(Units.LITRE_PER_SECOND, Units.CUBIC_FOOT_PER_MINUTE);
            case MASS_FLOW -> new BenchUnits(Units.GRAM_PER_SECOND, Units.POUND_PER_HOUR);
            case SPECIFIC_FUEL_CONSUMPTION ->
                new BenchUnits(Units.GRAM_PER_KILOWATT_HOUR, Units.POUND_PER_HORSEPOWER_HOUR);
            case EXPANSION -> new BenchUnits(Units.MICROMETRE_PER_METRE_KELVIN, Units.MICROINCH_PER_INCH_FAHRENHEIT);
            case RATIO -> alone(Units.BARE_RATIO);
            case COUNT -> alone(Units.BARE_COUNT);
        };
    }

    boolean areOne() {
        return metric == inchTrade;
    }
}
