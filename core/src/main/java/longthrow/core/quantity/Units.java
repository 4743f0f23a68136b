package longthrow.core.quantity;

import static longthrow.core.quantity.Dimension.*;

import java.util.ArrayList;
import java.util.List;

/**
 * The one table of units. Where a spelling fits several dimensions, the one expected is taken, and with none expected
 * the earlier row. Separators, powers and "per" may be written in any usual way ({@link Spellings}).
 *
 * <p>A spelling after "~" is understood but said back to the writer, because the word also has another meaning.
 *
 * <p>Factors follow from the definitions in NIST Special Publication 811 (2008), Appendix B: 1 in = 25.4 mm,
 * 1 lb = 0.453 592 37 kg, standard gravity 9.806 65 m/s².
 */
public final class Units {
    private static final String SI = "SI unit or prefix, NIST SP 811 (2008), section 4";
    private static final String WITH_SI = "accepted for use with the SI, NIST SP 811 (2008), table 6";
    private static final String B8 = "NIST SP 811 (2008), Appendix B.8";
    private static final String FROM_B8 = "from the definitions in NIST SP 811 (2008), Appendix B.8";
    private static final String COLUMN =
            "conventional column (mercury 13595.1 kg/m³, water 1000 kg/m³, standard gravity), NIST SP 811 (2008), B.8";

    private static final List<Unit> ROWS = new ArrayList<>();

    private static final Fraction ONE = Fraction.ONE;
    private static final Fraction KILO = Fraction.of(1000);
    private static final Fraction MILLI = ONE.over(KILO);
    private static final Fraction MICRO = MILLI.times(MILLI);
    private static final Fraction INCH_M = Fraction.of("0.0254");
    private static final Fraction FOOT_M = INCH_M.times(Fraction.of(12));
    private static final Fraction MILE_M = FOOT_M.times(Fraction.of(5280));
    private static final Fraction MM2 = MILLI.times(MILLI);
    private static final Fraction INCH2 = INCH_M.times(INCH_M);
    private static final Fraction FOOT2 = FOOT_M.times(FOOT_M);
    private static final Fraction CC_M3 = MICRO;
    private static final Fraction INCH3 = INCH2.times(INCH_M);
    private static final Fraction FOOT3 = FOOT2.times(FOOT_M);
    private static final Fraction US_GALLON_M3 = INCH3.times(Fraction.of(231));
    private static final Fraction IMPERIAL_GALLON_M3 = Fraction.of("0.00454609");
    private static final Fraction MINUTE_S = Fraction.of(60);
    private static final Fraction HOUR_S = Fraction.of(3600);
    private static final Fraction POUND_KG = Fraction.of("0.45359237");
    private static final Fraction OUNCE_KG = POUND_KG.over(Fraction.of(16));
    private static final Fraction GRAVITY = Fraction.of("9.80665");
    private static final Fraction LBF_N = POUND_KG.times(GRAVITY);
    private static final Fraction SLUG_KG = LBF_N.over(FOOT_M);
    private static final Fraction HP_W = Fraction.of(550).times(FOOT_M).times(LBF_N);
    private static final Fraction METRIC_HP_W = Fraction.of(75).times(GRAVITY);
    private static final Fraction MERCURY = Fraction.of("13595.1").times(GRAVITY);
    private static final Fraction WATER = KILO.times(GRAVITY);
    private static final Fraction FAHRENHEIT_K = Fraction.of(5, 9);

    // length
    public static final Unit MILLIMETRE = row(LENGTH, "mm", MILLI, SI, "millimetre|millimetres|millimeter|millimeters");
    public static final Unit INCH = row(LENGTH, "in", INCH_M, B8, "inch|inches|\"|ins");
    public static final Unit THOU = row(LENGTH, "thou", INCH_M.times(MILLI), B8, "thous|~mil|~mils");
    public static final Unit MICROMETRE =
            row(LENGTH, "µm", MICRO, SI, "micron|microns|micrometre|micrometres|micrometer|micrometers");
    public static final Unit NANOMETRE = row(LENGTH, "nm", MICRO.times(MILLI), SI, "nanometre|nanometres");
    public static final Unit CENTIMETRE = row(LENGTH, "cm", Fraction.of(1, 100), SI, "centimetre|centimetres");
    public static final Unit METRE = row(LENGTH, "m", ONE, SI, "metre|metres|meter|meters");
    public static final Unit KILOMETRE = row(LENGTH, "km", KILO, SI, "kilometre|kilometres");
    public static final Unit FOOT = row(LENGTH, "ft", FOOT_M, B8, "foot|feet|'");
    public static final Unit YARD = row(LENGTH, "yd", FOOT_M.times(Fraction.of(3)), B8, "yard|yards");
    public static final Unit MILE = row(LENGTH, "mile", MILE_M, B8, "miles|mi");

    // area
    public static final Unit SQUARE_MILLIMETRE = row(AREA, "mm²", MM2, SI, "sq mm");
    public static final Unit SQUARE_CENTIMETRE = row(AREA, "cm²", Fraction.of(1, 10_000), SI, "sq cm");
    public static final Unit SQUARE_METRE = row(AREA, "m²", ONE, SI, "sq m");
    public static final Unit SQUARE_INCH = row(AREA, "sq in", INCH2, B8, "in2|square inch|square inches");
    public static final Unit SQUARE_FOOT = row(AREA, "sq ft", FOOT2, B8, "ft2|square foot|square feet");

    // volume
    public static final Unit CUBIC_CENTIMETRE = row(VOLUME, "cc", CC_M3, SI, "cm3|ccm|ml|millilitre|millilitres|ccs");
    public static final Unit CUBIC_MILLIMETRE = row(VOLUME, "mm³", CC_M3.times(MILLI), SI, "cu mm");
    public static final Unit LITRE = row(VOLUME, "L", MILLI, WITH_SI, "l|litre|litres|liter|liters");
    public static final Unit CUBIC_METRE = row(VOLUME, "m³", ONE, SI, "cu m");
    public static final Unit CUBIC_INCH = row(VOLUME, "cu in", INCH3, B8, "in3|cubic inch|cubic inches|cid|cui");
    public static final Unit CUBIC_FOOT = row(VOLUME, "cu ft", FOOT3, B8, "ft3|cubic foot|cubic feet");
    public static final Unit US_FLUID_OUNCE =
            row(VOLUME, "US fl oz", US_GALLON_M3.over(Fraction.of(128)), B8, "fl oz US|US fluid ounce|US fluid ounces");
    public static final Unit IMPERIAL_FLUID_OUNCE =
            row(VOLUME, "imp fl oz", IMPERIAL_GALLON_M3.over(Fraction.of(160)), B8, "UK fl oz|imperial fl oz");
    public static final Unit US_QUART = row(VOLUME, "US qt", US_GALLON_M3.over(Fraction.of(4)), B8, "US quart");
    public static final Unit US_GALLON = row(VOLUME, "US gal", US_GALLON_M3, B8, "US gallon|US gallons");
    public static final Unit IMPERIAL_GALLON =
            row(VOLUME, "imp gal", IMPERIAL_GALLON_M3, B8, "UK gal|imperial gal|imperial gallon|imperial gallons");

    // mass
    public static final Unit GRAM = row(MASS, "g", MILLI, SI, "gram|grams|gramme|grammes|gm");
    public static final Unit KILOGRAM = row(MASS, "kg", ONE, SI, "kilogram|kilograms|kilo|kilos|kgs");
    public static final Unit MILLIGRAM = row(MASS, "mg", MICRO, SI, "milligram|milligrams");
    public static final Unit POUND = row(MASS, "lb", POUND_KG, B8, "lbs|pound|pounds|lbm");
    public static final Unit OUNCE = row(MASS, "oz", OUNCE_KG, B8, "ounce|ounces|ozs");
    public static final Unit SLUG = row(MASS, "slug", SLUG_KG, FROM_B8, "slugs");

    // time
    public static final Unit SECOND = row(TIME, "s", ONE, SI, "sec|secs|second|seconds");
    public static final Unit MILLISECOND = row(TIME, "ms", MILLI, SI, "millisecond|milliseconds");
    public static final Unit MINUTE = row(TIME, "min", MINUTE_S, WITH_SI, "mins|minute|minutes");
    public static final Unit HOUR = row(TIME, "h", HOUR_S, WITH_SI, "hr|hrs|hour|hours");

    // angle
    public static final Unit DEGREE = piRow(ANGLE, "°", Fraction.of(1, 180), WITH_SI, "deg|degs|degree|degrees");
    public static final Unit RADIAN = row(ANGLE, "rad", ONE, SI, "radian|radians");
    public static final Unit TURN = piRow(ANGLE, "turn", Fraction.of(2), B8, "turns|rev|revs|revolution|revolutions");

    // speed
    public static final Unit METRE_PER_SECOND = row(SPEED, "m/s", ONE, SI, "m/sec|mps");
    public static final Unit FOOT_PER_SECOND = row(SPEED, "ft/s", FOOT_M, B8, "ft/sec|fps");
    public static final Unit FOOT_PER_MINUTE = row(SPEED, "ft/min", FOOT_M.over(MINUTE_S), B8, "fpm");
    public static final Unit METRE_PER_MINUTE = row(SPEED, "m/min", ONE.over(MINUTE_S), WITH_SI, "");
    public static final Unit KILOMETRE_PER_HOUR = row(SPEED, "km/h", KILO.over(HOUR_S), WITH_SI, "km/hr|kph|kmh");
    public static final Unit MILE_PER_HOUR = row(SPEED, "mph", MILE_M.over(HOUR_S), B8, "mile/h|miles/h|mi/h");

    // rotational speed
    public static final Unit RPM =
            piRow(ROTATIONAL_SPEED, "rpm", Fraction.of(1, 30), B8, "1/min|/min|r/min|rev/min|revs/min|turns/min|~revs");
    public static final Unit RADIAN_PER_SECOND = row(ROTATIONAL_SPEED, "rad/s", ONE, SI, "rad/sec");
    public static final Unit TURN_PER_SECOND =
            piRow(ROTATIONAL_SPEED, "r/s", Fraction.of(2), B8, "rev/s|revs/s|turns/s|rps");

    // acceleration
    public static final Unit METRE_PER_SECOND_SQUARED = row(ACCELERATION, "m/s²", ONE, SI, "m/s/s");
    public static final Unit FOOT_PER_SECOND_SQUARED = row(ACCELERATION, "ft/s²", FOOT_M, B8, "ft/s/s");
    public static final Unit STANDARD_GRAVITY = row(ACCELERATION, "gₙ", GRAVITY, B8, "~g|gn|g_n");

    // force
    public static final Unit NEWTON = row(FORCE, "N", ONE, SI, "newton|newtons");
    public static final Unit KILONEWTON = row(FORCE, "kN", KILO, SI, "kilonewton|kilonewtons");
    public static final Unit POUND_FORCE = row(FORCE, "lbf", LBF_N, B8, "~lb|~lbs|~pound|~pounds");
    public static final Unit KILOGRAM_FORCE = row(FORCE, "kgf", GRAVITY, B8, "kp");
    public static final Unit OUNCE_FORCE = row(FORCE, "ozf", LBF_N.over(Fraction.of(16)), B8, "");

    // stiffness
    public static final Unit NEWTON_PER_MILLIMETRE = row(STIFFNESS, "N/mm", KILO, SI, "kN/m");
    public static final Unit NEWTON_PER_METRE = row(STIFFNESS, "N/m", ONE, SI, "");
    public static final Unit POUND_FORCE_PER_INCH =
            row(STIFFNESS, "lbf/in", LBF_N.over(INCH_M), B8, "lb/in|lbs/in|lb/inch|lbs/inch|lbf/inch|lb/\"");
    public static final Unit KILOGRAM_FORCE_PER_MILLIMETRE =
            row(STIFFNESS, "kgf/mm", GRAVITY.times(KILO), FROM_B8, "~kg/mm");

    // torque
    public static final Unit NEWTON_METRE = row(TORQUE, "N·m", ONE, SI, "Nm|newton metre|newton metres");
    public static final Unit POUND_FOOT = row(
            TORQUE, "lb-ft", LBF_N.times(FOOT_M), B8, "ft-lb|lbft|ftlb|ft-lbs|lbs-ft|lbf ft|ft lbf|lbf-ft|foot pounds");
    public static final Unit POUND_INCH =
            row(TORQUE, "lb-in", LBF_N.times(INCH_M), B8, "in-lb|lbin|inlb|in-lbs|lbs-in|lbf in|in lbf|inch pounds");
    public static final Unit OUNCE_INCH =
            row(TORQUE, "oz-in", LBF_N.over(Fraction.of(16)).times(INCH_M), B8, "in-oz|ozf in");
    public static final Unit KILOGRAM_FORCE_METRE = row(TORQUE, "kgf·m", GRAVITY, B8, "kp m|kgfm|mkgf|~kg m|~kgm");
    public static final Unit KILOGRAM_FORCE_CENTIMETRE =
            row(TORQUE, "kgf·cm", GRAVITY.over(Fraction.of(100)), B8, "kp cm|kgfcm|~kg cm");

    // pressure and stress
    public static final Unit KILOPASCAL = row(PRESSURE, "kPa", KILO, SI, "kilopascal|kilopascals");
    public static final Unit PASCAL = row(PRESSURE, "Pa", ONE, SI, "N/m2|pascal|pascals");
    public static final Unit HECTOPASCAL = row(PRESSURE, "hPa", Fraction.of(100), SI, "");
    public static final Unit MEGAPASCAL = row(PRESSURE, "MPa", KILO.times(KILO), SI, "N/mm2|megapascal");
    public static final Unit GIGAPASCAL = row(PRESSURE, "GPa", KILO.times(KILO).times(KILO), SI, "kN/mm2");
    public static final Unit BAR = row(PRESSURE, "bar", Fraction.of(100_000), B8, "bars");
    public static final Unit MILLIBAR = row(PRESSURE, "mbar", Fraction.of(100), B8, "mb|millibar|millibars");
    public static final Unit PSI =
            row(PRESSURE, "psi", LBF_N.over(INCH2), B8, "lbf/in2|lb/in2|lbs/in2|lb/sq in|lbf/sq in");
    public static final Unit KSI = row(PRESSURE, "ksi", LBF_N.over(INCH2).times(KILO), B8, "kpsi");
    public static final Unit ATMOSPHERE = row(PRESSURE, "atm", Fraction.of(101_325), B8, "atmosphere|atmospheres");
    public static final Unit KILOGRAM_FORCE_PER_CM2 =
            row(PRESSURE, "kgf/cm²", GRAVITY.times(Fraction.of(10_000)), B8, "kp/cm2|~kg/cm2");
    public static final Unit INCH_OF_MERCURY = row(PRESSURE, "inHg", MERCURY.times(INCH_M), COLUMN, "in Hg|\"Hg");
    public static final Unit MILLIMETRE_OF_MERCURY = row(PRESSURE, "mmHg", MERCURY.times(MILLI), COLUMN, "mm Hg");
    public static final Unit INCH_OF_WATER = row(PRESSURE, "inH2O", WATER.times(INCH_M), COLUMN, "in H2O|\"H2O");
    public static final Unit MILLIMETRE_OF_WATER = row(PRESSURE, "mmH2O", WATER.times(MILLI), COLUMN, "mm H2O");

    // temperature, then its differences
    public static final Unit CELSIUS = temperature("°C", ONE, Fraction.of("273.15"), "C|celsius|° celsius|℃");
    public static final Unit FAHRENHEIT =
            temperature("°F", FAHRENHEIT_K, Fraction.of("459.67"), "F|fahrenheit|° fahrenheit|℉");
    public static final Unit KELVIN = temperature("K", ONE, Fraction.ZERO, "kelvin|kelvins");
    public static final Unit CELSIUS_DIFFERENCE =
            row(TEMPERATURE_DIFFERENCE, "°C", ONE, "NIST SP 811 (2008), B.9", "C|celsius|° celsius");
    public static final Unit FAHRENHEIT_DIFFERENCE =
            row(TEMPERATURE_DIFFERENCE, "°F", FAHRENHEIT_K, "NIST SP 811 (2008), B.9", "F|fahrenheit|° fahrenheit");
    public static final Unit KELVIN_DIFFERENCE = row(TEMPERATURE_DIFFERENCE, "K", ONE, SI, "kelvin|kelvins");

    // power
    public static final Unit KILOWATT = row(POWER, "kW", KILO, SI, "kilowatt|kilowatts");
    public static final Unit WATT = row(POWER, "W", ONE, SI, "watt|watts");
    public static final Unit HORSEPOWER = row(POWER, "hp", HP_W, B8 + ", 550 ft·lbf/s", "bhp|horsepower");
    public static final Unit METRIC_HORSEPOWER =
            row(POWER, "PS", METRIC_HP_W, B8 + ", metric, 75 kgf·m/s", "cv|metric hp|metric horsepower");

    // moment of inertia
    public static final Unit KILOGRAM_METRE_SQUARED = row(INERTIA, "kg·m²", ONE, SI, "kgm2");
    public static final Unit GRAM_CENTIMETRE_SQUARED =
            row(INERTIA, "g·cm²", MILLI.over(Fraction.of(10_000)), SI, "gcm2");
    public static final Unit KILOGRAM_CENTIMETRE_SQUARED = row(INERTIA, "kg·cm²", Fraction.of(1, 10_000), SI, "kgcm2");
    public static final Unit KILOGRAM_MILLIMETRE_SQUARED = row(INERTIA, "kg·mm²", MM2, SI, "kgmm2");
    public static final Unit POUND_FOOT_SQUARED =
            row(INERTIA, "lb·ft²", POUND_KG.times(FOOT2), FROM_B8, "lbft2|lbm ft2");
    public static final Unit POUND_INCH_SQUARED =
            row(INERTIA, "lb·in²", POUND_KG.times(INCH2), FROM_B8, "lbin2|lbm in2");
    public static final Unit SLUG_FOOT_SQUARED =
            row(INERTIA, "slug·ft²", SLUG_KG.times(FOOT2), FROM_B8, "lbf ft s2|lb ft s2");

    // density
    public static final Unit KILOGRAM_PER_CUBIC_METRE = row(DENSITY, "kg/m³", ONE, SI, "g/L");
    public static final Unit GRAM_PER_CC = row(DENSITY, "g/cc", KILO, SI, "g/cm3|g/ml|kg/L|kg/dm3");
    public static final Unit POUND_PER_CUBIC_FOOT = row(DENSITY, "lb/ft³", POUND_KG.over(FOOT3), B8, "lb/cu ft");
    public static final Unit POUND_PER_CUBIC_INCH = row(DENSITY, "lb/in³", POUND_KG.over(INCH3), B8, "lb/cu in");

    // flows
    public static final Unit LITRE_PER_SECOND = row(VOLUME_FLOW, "L/s", MILLI, WITH_SI, "l/sec");
    public static final Unit CUBIC_FOOT_PER_MINUTE =
            row(VOLUME_FLOW, "cfm", FOOT3.over(MINUTE_S), B8, "ft3/min|cu ft/min");
    public static final Unit CUBIC_METRE_PER_SECOND = row(VOLUME_FLOW, "m³/s", ONE, SI, "");
    public static final Unit CUBIC_METRE_PER_HOUR = row(VOLUME_FLOW, "m³/h", ONE.over(HOUR_S), WITH_SI, "");
    public static final Unit LITRE_PER_MINUTE = row(VOLUME_FLOW, "L/min", MILLI.over(MINUTE_S), WITH_SI, "lpm");
    public static final Unit CC_PER_MINUTE =
            row(VOLUME_FLOW, "cc/min", CC_M3.over(MINUTE_S), WITH_SI, "ml/min|cm3/min");
    public static final Unit CC_PER_SECOND = row(VOLUME_FLOW, "cc/s", CC_M3, SI, "ml/s|cm3/s");
    public static final Unit GRAM_PER_SECOND = row(MASS_FLOW, "g/s", MILLI, SI, "");
    public static final Unit KILOGRAM_PER_SECOND = row(MASS_FLOW, "kg/s", ONE, SI, "");
    public static final Unit KILOGRAM_PER_HOUR = row(MASS_FLOW, "kg/h", ONE.over(HOUR_S), WITH_SI, "kg/hr");
    public static final Unit GRAM_PER_MINUTE = row(MASS_FLOW, "g/min", MILLI.over(MINUTE_S), WITH_SI, "");
    public static final Unit POUND_PER_HOUR = row(MASS_FLOW, "lb/h", POUND_KG.over(HOUR_S), B8, "lb/hr|lbs/hr|lbs/h");
    public static final Unit POUND_PER_MINUTE = row(MASS_FLOW, "lb/min", POUND_KG.over(MINUTE_S), B8, "lbs/min");

    // specific fuel consumption
    public static final Unit GRAM_PER_KILOWATT_HOUR =
            row(SPECIFIC_FUEL_CONSUMPTION, "g/kWh", MILLI.over(KILO.times(HOUR_S)), WITH_SI, "g/kW/h|g/(kW h)|g/kW-hr");
    public static final Unit POUND_PER_HORSEPOWER_HOUR = row(
            SPECIFIC_FUEL_CONSUMPTION,
            "lb/hp-h",
            POUND_KG.over(HP_W.times(HOUR_S)),
            FROM_B8,
            "lb/hph|lb/hp/h|lb/hp-hr|lb/hp/hr|lb/bhp-h|lb/bhp-hr|lbs/hp-hr|lbs/hp-h");

    // thermal expansion
    public static final Unit MICROMETRE_PER_METRE_KELVIN =
            row(EXPANSION, "µm/m/K", MICRO, SI, "um/(m K)|µm/m/°C|µm/(m °C)|ppm/K|ppm/°C");
    public static final Unit PER_KELVIN = row(EXPANSION, "1/K", ONE, SI, "/K|K-1|1/°C|/°C|m/m/K|mm/mm/K");
    public static final Unit MICROINCH_PER_INCH_FAHRENHEIT =
            row(EXPANSION, "µin/in/°F", MICRO.over(FAHRENHEIT_K), FROM_B8, "uin/(in °F)|ppm/°F|µin/in/F");
    public static final Unit PER_FAHRENHEIT = row(EXPANSION, "1/°F", ONE.over(FAHRENHEIT_K), B8, "/°F|in/in/°F");

    // ratio and count
    public static final Unit BARE_RATIO = row(RATIO, "", ONE, "a pure number", "in/in|mm/mm|m/m");
    public static final Unit TO_ONE = row(RATIO, ":1", ONE, "a pure number", "to 1");
    public static final Unit PERCENT =
            row(RATIO, "%", Fraction.of(1, 100), "NIST SP 811 (2008), 7.10.2", "percent|per cent|pct");
    public static final Unit MILLIMETRE_PER_METRE = row(RATIO, "mm/m", MILLI, SI, "thou/in");
    public static final Unit PART_PER_MILLION = row(RATIO, "ppm", MICRO, "a pure number", "");
    public static final Unit BARE_COUNT = row(COUNT, "", ONE, "a pure number", "");

    private Units() {}

    /** All rows, in the order of the table. */
    public static List<Unit> all() {
        return List.copyOf(ROWS);
    }

    private static Unit row(Dimension dimension, String symbol, Fraction factor, String source, String spellings) {
        return add(dimension, symbol, factor, 0, Fraction.ZERO, source, spellings);
    }

    private static Unit piRow(Dimension dimension, String symbol, Fraction factor, String source, String spellings) {
        return add(dimension, symbol, factor, 1, Fraction.ZERO, source, spellings);
    }

    private static Unit temperature(String symbol, Fraction factor, Fraction offset, String spellings) {
        return add(TEMPERATURE, symbol, factor, 0, offset, "NIST SP 811 (2008), B.9", spellings);
    }

    private static Unit add(
            Dimension dimension,
            String symbol,
            Fraction factor,
            int piPower,
            Fraction offset,
            String source,
            String spellings) {
        List<String> others = spellings.isEmpty() ? List.of() : List.of(spellings.split("\\|", -1));
        Unit unit = new Unit(dimension, symbol, factor, piPower, offset, others, source);
        ROWS.add(unit);
        return unit;
    }
}
