package longthrow.core.gain;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.ToDoubleFunction;
import longthrow.core.gas.VapourPressure;
import longthrow.core.measurement.Measured;
import longthrow.core.measurement.Source;
import longthrow.core.quantity.Require;
import longthrow.core.quantity.Units;

/**
 * Standards by which torque and power of an engine that breathes freely, with a spark, are corrected for the weather. Observed times factor is corrected.
 * Formulas as in the reference rows WEA-20 to WEA-26, temperatures as printed there (273 and 460 added, not 273.15 and 459.67; 0.03 % at most).
 *
 * <p>Limits: those marked "from memory" could not be seen in the standard's own text. A state or factor outside is told ({@link AirCorrection#beyond}); the factor
 * is given all the same, for the person to judge.
 */
public enum AirStandard {
    /** SAE J1349 of June 1990. */
    SAE_J1349_1990(
            "SAE J1349 (June 1990)",
            new Reference(99e3, 25, true),
            new Form(1, 0.5, 1.180, 0.18),
            new Limits(15, 35, 90e3, 105e3, 0.93, 1.07, "from memory"),
            "85 % mechanical efficiency is taken unless the friction was measured: friction does not follow the weather"),
    /** SAE J1349 as revised in August 2004 and September 2011: same reference and form, narrower limit of the factor. */
    SAE_J1349_2004(
            "SAE J1349 (August 2004, September 2011)",
            new Reference(99e3, 25, true),
            new Form(1, 0.5, 1.180, 0.18),
            new Limits(15, 35, 90e3, 105e3, 0.97, 1.03, "from memory, not confirmed"),
            "85 % mechanical efficiency is taken unless the friction was measured: friction does not follow the weather"),
    /** SAE J607. */
    SAE_J607(
            "SAE J607",
            new Reference(Units.INCH_OF_MERCURY.toSi(29.92), (60.0 - 32) / 1.8, true),
            new Form(1, 0.5, 1, 0),
            new Limits(Double.NaN, Double.NaN, Double.NaN, Double.NaN, 0.93, 1.07, AirStandard.NONE_KNOWN),
            "no rule for mechanical efficiency: the whole brake power is multiplied"),
    /** ISO 1585 for spark ignition; the same in UN ECE R85 and 80/1269/EEC. */
    ISO_1585(
            "ISO 1585 (spark ignition)",
            new Reference(99e3, 25, true),
            new Form(1.2, 0.6, 1, 0),
            new Limits(15, 35, 80e3, 110e3, 0.93, 1.07, "factor: EU 134/2014 annex X; air: from memory"),
            "no rule for mechanical efficiency: the exponents, larger than those of the air alone, stand for it"),
    /** DIN 70020, part 3. */
    DIN_70020(
            "DIN 70020",
            new Reference(101.3e3, 20, false),
            new Form(1, 0.5, 1, 0),
            new Limits(Double.NaN, Double.NaN, Double.NaN, Double.NaN, 0.93, 1.07, AirStandard.NONE_KNOWN),
            "no rule for mechanical efficiency: the whole brake power is multiplied");

    /** What the formulas add to degrees Celsius. */
    static final double PRINTED_ICE_POINT = 273;

    private static final double PRINTED_FAHRENHEIT_POINT = 460;

    private static final String NONE_KNOWN = "no limit known to us; that of ISO 1585 is used, judgement";

    /** Steps of the gradient: small beside what the factor bends over, large beside rounding [Pa, K, -]. */
    private static final double[] STEP = {10, 0.01, 0.001};

    /**
     * Half-widths of the rectangles in which the true exponents of this engine may lie. The printed forms have 1.0 to 1.2 for the pressure and 0.5 to 0.6 for the temperature;
     * judgement: an engine may lie as far from any of them as they lie apart.
     */
    private static final double PRESSURE_EXPONENT_DOUBT = 0.2;

    private static final double TEMPERATURE_EXPONENT_DOUBT = 0.1;

    private record Reference(double pressure, double celsius, boolean dry) {}

    /** scale (p0/p)^a (T/T0)^b - offset. */
    private record Form(double pressureExponent, double temperatureExponent, double scale, double offset) {}

    private record Limits(
            double coldest, double hottest, double lowest, double highest, double least, double most, String source) {}

    private final String label;

    @SuppressWarnings("ImmutableEnumChecker") // a record of numbers
    private final Reference reference;

    @SuppressWarnings("ImmutableEnumChecker") // a record of numbers
    private final Form form;

    @SuppressWarnings("ImmutableEnumChecker") // a record of numbers
    private final Limits limits;

    private final String efficiencyRule;

    AirStandard(String label, Reference reference, Form form, Limits limits, String efficiencyRule) {
        this.label = label;
        this.reference = reference;
        this.form = form;
        this.limits = limits;
        this.efficiencyRule = efficiencyRule;
    }

    /** Stable, for files. */
    public String key() {
        return name().toLowerCase(Locale.ROOT);
    }

    /** The name that stands beside every figure corrected by it. */
    public String label() {
        return label;
    }

    /** Pressure of the reference air [Pa]. */
    public double referencePressure() {
        return reference.pressure;
    }

    /** Temperature of the reference air [degrees Celsius]. */
    public double referenceCelsius() {
        return reference.celsius;
    }

    /** Whether vapour is taken off the barometer; where not, humidity does not enter at all. */
    public boolean takesDryPressure() {
        return reference.dry;
    }

    /** What it does about friction. */
    public String efficiencyRule() {
        return efficiencyRule;
    }

    /** Least and most factor for which it is meant. */
    public double leastFactor() {
        return limits.least;
    }

    /** See {@link #leastFactor}. */
    public double mostFactor() {
        return limits.most;
    }

    /** Where the limits come from. */
    public String limitsSource() {
        return limits.source;
    }

    static double celsius(double kelvin) {
        return kelvin - VapourPressure.ICE_POINT;
    }

    /**
     * The factor by this standard, friction as it prescribes.
     * @param air as read, with its doubt
     */
    public AirCorrection correct(AirReading air) {
        return correct(air, Double.NaN);
    }

    /**
     * The same with a mechanical efficiency that was measured, for the standards that have a rule for it: friction stays as it is and what the gas does is
     * corrected. For the others it changes nothing.
     * @param mechanicalEfficiency brake over indicated power, above 0 and up to 1, or NaN where it was not measured
     */
    public AirCorrection correct(AirReading air, double mechanicalEfficiency) {
        if (!Double.isNaN(mechanicalEfficiency)) {
            Require.within("mechanical efficiency", mechanicalEfficiency, 0.3, 1);
        }
        double[] x = {
            air.barometer().value(),
            air.temperature().value(),
            air.relativeHumidity().value()
        };
        ToDoubleFunction<double[]> factor = at -> factor(at[0], at[1], at[2], mechanicalEfficiency);
        Map<Source, Double> doubt = new LinkedHashMap<>();
        Measured[] read = {air.barometer(), air.temperature(), air.relativeHumidity()};
        for (int i = 0; i < x.length; i++) {
            double slope = slope(factor, x, i);
            read[i].contributions().forEach((source, c) -> doubt.merge(source, slope * c, Double::sum));
        }
        double pressure = pressure(x[0], x[1], x[2]);
        double scale = scale(mechanicalEfficiency);
        double gas = gas(pressure, x[1]);
        exponent(doubt, "pressure", PRESSURE_EXPONENT_DOUBT, scale * gas * Math.log(reference.pressure / pressure));
        exponent(doubt, "temperature", TEMPERATURE_EXPONENT_DOUBT, scale * gas * Math.log(temperatureRatio(x[1])));
        Measured value = Measured.withContributions(factor.applyAsDouble(x), doubt);
        return new AirCorrection(this, value, pressure, beyond(pressure, x[1], value.value()));
    }

    private static void exponent(Map<Source, Double> doubt, String of, double halfWidth, double slope) {
        Source source = Source.rectangular(
                "weather correction, exponent of the " + of,
                Source.Kind.ASSUMED,
                "the standard itself: how this engine follows the " + of + " of the air (judgement)",
                halfWidth);
        doubt.put(source, slope * source.standardUncertainty());
    }

    private static double slope(ToDoubleFunction<double[]> factor, double[] x, int i) {
        double[] up = x.clone();
        double[] down = x.clone();
        up[i] = i == 2 ? Math.min(1, x[i] + STEP[i]) : x[i] + STEP[i];
        down[i] = i == 2 ? Math.max(0, x[i] - STEP[i]) : x[i] - STEP[i];
        return (factor.applyAsDouble(up) - factor.applyAsDouble(down)) / (up[i] - down[i]);
    }

    private double factor(double barometer, double temperature, double humidity, double efficiency) {
        return scale(efficiency) * gas(pressure(barometer, temperature, humidity), temperature) - offset(efficiency);
    }

    private double pressure(double barometer, double temperature, double humidity) {
        return reference.dry ? barometer - AirReading.vapour(temperature, humidity) : barometer;
    }

    private double gas(double pressure, double temperature) {
        return Math.pow(reference.pressure / pressure, form.pressureExponent)
                * Math.pow(temperatureRatio(temperature), form.temperatureExponent);
    }

    private double temperatureRatio(double kelvin) {
        double celsius = celsius(kelvin);
        return this == SAE_J607
                ? (PRINTED_FAHRENHEIT_POINT + 32 + 1.8 * celsius) / (PRINTED_FAHRENHEIT_POINT + 60)
                : (celsius + PRINTED_ICE_POINT) / (reference.celsius + PRINTED_ICE_POINT);
    }

    /** As printed, or 1 / efficiency where it was measured. */
    private double scale(double efficiency) {
        return form.offset == 0 || Double.isNaN(efficiency) ? form.scale : 1 / efficiency;
    }

    private double offset(double efficiency) {
        return form.offset == 0 || Double.isNaN(efficiency) ? form.offset : 1 / efficiency - 1;
    }

    private List<String> beyond(double pressure, double temperature, double factor) {
        List<String> beyond = new ArrayList<>();
        double celsius = celsius(temperature);
        tell(beyond, "air temperature", celsius, "°C", 1, limits.coldest, limits.hottest);
        tell(
                beyond,
                reference.dry ? "dry pressure" : "pressure",
                pressure / 1e3,
                "kPa",
                1,
                limits.lowest / 1e3,
                limits.highest / 1e3);
        tell(beyond, "factor", factor, "", 3, limits.least, limits.most);
        return beyond;
    }

    private void tell(List<String> to, String what, double got, String unit, int digits, double low, double high) {
        if (!Double.isNaN(low) && !(got >= low && got <= high)) {
            String number = "%." + digits + "f";
            String text = what + " " + number + " %s is outside what " + label + " is meant for, %."
                    + (unit.isEmpty() ? 2 : 0) + "f to %." + (unit.isEmpty() ? 2 : 0) + "f %s (%s)";
            to.add(String.format(Locale.ROOT, text, got, unit, low, high, unit, limits.source)
                    .replaceAll(" +", " "));
        }
    }
}
