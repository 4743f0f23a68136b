package longthrow.core.term;

import longthrow.core.quantity.Dimension;

/**
 * Built-in kinds of instrument. Resolution is the step of the scale or display; the reading lies anywhere within half a step
 * of the truth (rectangular, JCGM 100:2008 F.2.2.1). Stated error is the maker's limit for the instrument as a whole, read
 * here as a 95 % figure and shared by every reading taken with the same instrument.
 * Stated errors: typical maker's limits for workshop grade; standards named where one exists, figures from memory.
 * The owner's own instrument, entered in the build file, overrides every figure here.
 */
public enum InstrumentKind {
    CALIPER("caliper", Dimension.LENGTH, 0.01e-3, 0.03e-3, 0, "ISO 13385-1, digital caliper to 150 mm; from memory"),
    MICROMETER(
            "micrometer",
            Dimension.LENGTH,
            0.001e-3,
            0.004e-3,
            0,
            "ISO 3611, outside micrometer to 100 mm; from memory"),
    BORE_GAUGE(
            "bore_gauge",
            Dimension.LENGTH,
            0.002e-3,
            0.005e-3,
            0,
            "dial bore gauge with its setting ring or micrometer; common practice, no source"),
    TELESCOPING_GAUGE(
            "telescoping_gauge",
            Dimension.LENGTH,
            0.01e-3,
            0.02e-3,
            0,
            "telescoping gauge read by micrometer; common practice, no source"),
    DEPTH_GAUGE(
            "depth_gauge",
            Dimension.LENGTH,
            0.01e-3,
            0.02e-3,
            0,
            "depth micrometer or dial on a bridge; ISO 13385-2 and ISO 463, from memory"),
    HEIGHT_GAUGE(
            "height_gauge", Dimension.LENGTH, 0.02e-3, 0.04e-3, 0, "ISO 13225, height gauge on a plate; from memory"),
    DIAL_INDICATOR(
            "dial_indicator",
            Dimension.LENGTH,
            0.01e-3,
            0.015e-3,
            0,
            "ISO 463, dial gauge 0.01 mm, 10 mm range; from memory"),
    FEELER(
            "feeler",
            Dimension.LENGTH,
            0.02e-3,
            0.005e-3,
            0,
            "feeler leaves in 0.02 mm steps; common practice, no source"),
    PLASTIC_STRIP(
            "plastic_strip",
            Dimension.LENGTH,
            0.01e-3,
            0.015e-3,
            0,
            "flattened strip against its printed scale; common practice, no source"),
    TAPE("tape", Dimension.LENGTH, 1e-3, 1e-3, 0, "steel tape, EC class II; from memory"),
    BURETTE("burette", Dimension.VOLUME, 0.1e-6, 0.1e-6, 0, "ISO 385, 50 ml class B: 0.1 ml; from memory"),
    TRACED_AREA(
            "traced_area",
            Dimension.AREA,
            1e-6,
            0,
            0.01,
            "outline traced on squared paper or scanned: 1 %; common practice, no source"),
    DEGREE_WHEEL(
            "degree_wheel",
            Dimension.ANGLE,
            Math.toRadians(0.25),
            Math.toRadians(0.5),
            0,
            "degree wheel zeroed by positive stop both ways; common practice, no source"),
    SCALE("scale", Dimension.MASS, 0.1e-3, 0.3e-3, 0, "kitchen or gram scale to 1 kg; common practice, no source"),
    PLATFORM_SCALE(
            "platform_scale", Dimension.MASS, 5e-3, 10e-3, 0, "parcel scale to 20 kg; common practice, no source"),
    SPRING_TESTER("spring_tester", Dimension.FORCE, 2, 4, 0.01, "bench spring tester; common practice, no source"),
    PRESSURE_GAUGE("pressure_gauge", Dimension.PRESSURE, 5e3, 0, 0.025, "class 2.5 gauge, EN 837-1; from memory"),
    LEAK_DOWN_TESTER(
            "leak_down_tester", Dimension.RATIO, 0.01, 0.02, 0, "two-gauge tester; common practice, no source"),
    TACHOMETER(
            "tachometer",
            Dimension.ROTATIONAL_SPEED,
            10 * Math.PI / 30,
            10 * Math.PI / 30,
            0.001,
            "inductive tachometer; common practice, no source"),
    SWING(
            "swing",
            Dimension.INERTIA,
            1e-6,
            0,
            0.03,
            "torsion swing or pendulum timed over many swings: 3 %; common practice, no source"),
    GO_NO_GO(
            "plug_gauge",
            Dimension.LENGTH,
            0.01e-3,
            0.004e-3,
            0,
            "pin or plug gauges in 0.01 mm steps; common practice, no source"),
    THERMOMETER("thermometer", Dimension.TEMPERATURE, 0.5, 1, 0, "contact thermometer; common practice, no source"),
    COUNT("count", Dimension.COUNT, 1e-9, 0, 0, "counted"),
    PROTRACTOR(
            "protractor",
            Dimension.ANGLE,
            Math.toRadians(0.5),
            Math.toRadians(0.5),
            0,
            "bevel protractor; common practice, no source"),
    TORQUE_WRENCH(
            "torque_wrench",
            Dimension.TORQUE,
            0.5,
            0,
            0.06,
            "ISO 6789-1: 4 % of the reading, 6 % up to 10 N·m, the larger taken; from memory"),
    STOPWATCH(
            "stopwatch", Dimension.TIME, 0.0005, 0, 0.0001, "stopwatch over twenty swings; common practice, no source"),
    COIL_COUNT("coil_count", Dimension.RATIO, 0.25, 0, 0, "counted by eye to a quarter; common practice, no source"),
    BAROMETER(
            "barometer",
            Dimension.PRESSURE,
            100,
            200,
            0,
            "barometer or the sensor of a telephone, not reduced to sea level; common practice, no source"),
    HYGROMETER("hygrometer", Dimension.RATIO, 0.01, 0.05, 0, "hygrometer with a display; common practice, no source"),
    PUMP_LABEL(
            "pump_label",
            Dimension.RATIO,
            1,
            1,
            0,
            "whole numbers on the pump; another laboratory reads the same fuel within about 1 (ASTM D2699, reproducibility, from memory)"),
    MANOMETER(
            "manometer",
            Dimension.PRESSURE,
            20,
            20,
            0.01,
            "tube of water beside a rule in millimetres; common practice, no source"),
    MEASURING_JUG(
            "measuring_jug",
            Dimension.VOLUME,
            10e-6,
            10e-6,
            0.01,
            "graduated cylinder of 1 L, 10 ml steps; ISO 4788, from memory"),
    TIMED_FLOW(
            "timed_flow",
            Dimension.VOLUME_FLOW,
            8e-9,
            0,
            0.02,
            "burette and stopwatch over two minutes, 1 cc steps, 2 %; common practice, no source"),
    STAMP("stamp", Dimension.RATIO, 1e-9, 0, 0, "read off the part");

    private final String key;
    private final Dimension dimension;
    private final double resolution;
    private final double statedError;
    private final double relativeError;
    private final String source;

    InstrumentKind(
            String key,
            Dimension dimension,
            double resolution,
            double statedError,
            double relativeError,
            String source) {
        this.key = key;
        this.dimension = dimension;
        this.resolution = resolution;
        this.statedError = statedError;
        this.relativeError = relativeError;
        this.source = source;
    }

    public String key() {
        return key;
    }

    public Dimension dimension() {
        return dimension;
    }

    /** Step of the scale, full width, in SI units of {@link #dimension()}, &gt; 0. */
    public double resolution() {
        return resolution;
    }

    /** Stated error, 95 % half-width, in SI units of {@link #dimension()}, &ge; 0. */
    public double statedError() {
        return statedError;
    }

    /** Stated error as a share of the reading, 95 % half-width, &ge; 0; added in quadrature to {@link #statedError()}. */
    public double relativeError() {
        return relativeError;
    }

    public String source() {
        return source;
    }

    /** Name for people. */
    public String label() {
        return key.replace('_', ' ');
    }
}
