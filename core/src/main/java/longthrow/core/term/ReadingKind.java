package longthrow.core.term;

import longthrow.core.quantity.Dimension;

/**
 * How a reading is taken, and what may be expected of it: the usual instrument, the pooled repeatability that stands in for
 * scatter when a reading was taken only once or twice (JCGM 100:2008 4.2.4), and the minutes one more takes.
 * Repeatability is the standard deviation of one reading by a careful owner [SI], with the degrees of freedom it is credited with.
 * Figures: order of the usual errors in workshop manuals and part-maker sheets; common practice, no source, unless said.
 * Both columns may be overridden in the build file under {@code bench}.
 */
public enum ReadingKind {
    BORE(
            "bore",
            InstrumentKind.BORE_GAUGE,
            0.006e-3,
            2,
            "across the bore, gauge rocked to the smallest figure, at the stated depth and direction, at 20 °C"),
    JOURNAL(
            "journal",
            InstrumentKind.MICROMETER,
            0.002e-3,
            1,
            "across the journal, ratchet to the same feel each time, two places and two directions"),
    SMALL_BORE(
            "small_bore",
            InstrumentKind.BORE_GAUGE,
            0.004e-3,
            2,
            "across the bore in two directions, cap torqued where there is one"),
    OUTSIDE("outside", InstrumentKind.CALIPER, 0.01e-3, 1, "between the jaws, square, clean, two directions"),
    TRAVEL(
            "travel",
            InstrumentKind.DEPTH_GAUGE,
            0.03e-3,
            5,
            "depth to the crown on the pin axis at top and at bottom dead centre, piston pushed to the same side"),
    DECK(
            "deck",
            InstrumentKind.DEPTH_GAUGE,
            0.015e-3,
            4,
            "dial or depth gauge on a bridge across the clean deck, piston at top dead centre, below deck positive"),
    HEIGHT(
            "height",
            InstrumentKind.HEIGHT_GAUGE,
            0.025e-3,
            12,
            "case on the plate: heights of the two things read, a bore at its top less half of it; their difference"),
    CENTRES(
            "centres",
            InstrumentKind.CALIPER,
            0.015e-3,
            3,
            "inside edge to inside edge of the two bores, jaws at the same depth"),
    ARM(
            "arm",
            InstrumentKind.CALIPER,
            0.15e-3,
            5,
            "rocker off the engine, centres marked on squared paper under it or jaws set over the marks, along the line between them"),
    PITCH_CIRCLE(
            "pitch_circle",
            InstrumentKind.CALIPER,
            0.05e-3,
            6,
            "teeth counted, times the pitch read over ten links or ten teeth, over π; or over the rollers of the chain laid round it, less one roller"),
    CROWN(
            "crown",
            InstrumentKind.DEPTH_GAUGE,
            0.012e-3,
            3,
            "crown face down on the plate, from the rim, not from a dish floor"),
    ROD_CENTRES(
            "rod_centres",
            InstrumentKind.CALIPER,
            0.02e-3,
            5,
            "not read straight: inside edge to inside edge plus half of each bore; easier and surer is to write the bare edge reading under inside_edges"),
    PIN_CENTRE(
            "pin_centre",
            InstrumentKind.DEPTH_GAUGE,
            0.015e-3,
            4,
            "not read straight: pin top to crown rim plus half a pin; easier and surer is to write the bare reading under pin_top_to_crown or pin_bottom_to_crown"),
    SOLDER(
            "solder",
            InstrumentKind.CALIPER,
            0.025e-3,
            15,
            "soft solder at the end of the pin line, head torqued on the used gasket, turned through top dead centre, read at its thinnest"),
    GASKET(
            "gasket",
            InstrumentKind.MICROMETER,
            0.008e-3,
            2,
            "a crushed used gasket of the same make, three places; a new one is too thick"),
    FILL(
            "fill",
            InstrumentKind.BURETTE,
            0.12e-6,
            15,
            "plate with a small hole sealed by a smear of grease, filled from the burette, no bubble, plug in"),
    FILL_ASSEMBLED(
            "fill_assembled",
            InstrumentKind.BURETTE,
            0.2e-6,
            25,
            "engine at top dead centre by positive stop, both valves shut, filled through the plug hole to its lower thread"),
    AREA("area", InstrumentKind.TRACED_AREA, 15e-6, 20, "outline of the chamber traced on squared paper"),
    GAP("gap", InstrumentKind.FEELER, 0.01e-3, 2, "feeler leaf with a light drag, square"),
    STRIP(
            "strip",
            InstrumentKind.PLASTIC_STRIP,
            0.01e-3,
            15,
            "dry journal, strip across its length, cap torqued, shaft not turned, widest part of the strip on the scale"),
    FLOAT("float", InstrumentKind.DIAL_INDICATOR, 0.01e-3, 3, "dial on the end, pushed and pulled by hand"),
    RUN_OUT(
            "run_out",
            InstrumentKind.DIAL_INDICATOR,
            0.008e-3,
            6,
            "between centres or on the bearings, total movement of the dial in one turn"),
    EVENT(
            "event",
            InstrumentKind.DEGREE_WHEEL,
            Math.toRadians(0.6),
            10,
            "degree wheel zeroed by positive stop both ways, turned in the running direction only"),
    LIFT(
            "lift",
            InstrumentKind.DIAL_INDICATOR,
            0.01e-3,
            2,
            "dial in line with the motion, lash taken out or as stated"),
    MASS("mass", InstrumentKind.SCALE, 0.15e-3, 1, "clean and dry"),
    ROD_END_MASS(
            "rod_end_mass",
            InstrumentKind.SCALE,
            0.6e-3,
            6,
            "one end on the scale, the other hung, rod level by a spirit level"),
    HEAVY_MASS("heavy_mass", InstrumentKind.PLATFORM_SCALE, 3e-3, 2, "whole part on the scale"),
    INERTIA("inertia", InstrumentKind.SWING, 2e-5, 30, "hung and swung, twenty swings timed, three times"),
    SPRING_LOAD("spring_load", InstrumentKind.SPRING_TESTER, 2, 3, "spring pressed to the stated height on the tester"),
    SPRING_LENGTH(
            "spring_length", InstrumentKind.CALIPER, 0.05e-3, 2, "between the seats, or the free spring standing"),
    PRESSURE(
            "pressure",
            InstrumentKind.PRESSURE_GAUGE,
            20e3,
            4,
            "throttle open, plug out, pulled until the needle stops rising"),
    LEAK(
            "leak",
            InstrumentKind.LEAK_DOWN_TESTER,
            0.01,
            10,
            "engine warm, at top dead centre, crank locked so that it cannot turn"),
    CLAY("clay", InstrumentKind.CALIPER, 0.08e-3, 25, "oiled clay, cut through and measured after two turns by hand"),
    WIRE(
            "wire",
            InstrumentKind.CALIPER,
            0.05e-3,
            10,
            "soft wire or solder laid between the parts, two turns by hand, measured where it is thinnest"),
    SOFT_SPRING(
            "soft_spring",
            InstrumentKind.DIAL_INDICATOR,
            0.05e-3,
            3,
            "checking spring in, dial on the retainer; at each crank angle the valve is pressed by hand until it meets the piston"),
    TAPE("tape", InstrumentKind.TAPE, 0.5e-3, 2, "along the centre line"),
    PLUG("plug", InstrumentKind.GO_NO_GO, 0.005e-3, 3, "largest plug gauge that enters by its own weight"),
    SPEED("speed", InstrumentKind.TACHOMETER, 15 * Math.PI / 30, 1, "steady for ten seconds"),
    COUNT("count", InstrumentKind.COUNT, 1e-9, 1, "counted"),
    SHAPE(
            "shape",
            InstrumentKind.CALIPER,
            0.15e-3,
            4,
            "depth end of the caliper or a square and rule from the stated datum; of a cast or forged surface its outermost point, of a hole or cup its middle"),
    DEPTH("depth", InstrumentKind.DEPTH_GAUGE, 0.02e-3, 3, "depth gauge from the stated face, square to it"),
    TILT(
            "tilt",
            InstrumentKind.PROTRACTOR,
            Math.toRadians(0.4),
            5,
            "protractor on the head face, against a rod in the guide"),
    SECTOR(
            "sector",
            InstrumentKind.PROTRACTOR,
            Math.toRadians(1),
            5,
            "part laid on paper on its axis, lines drawn from the axis past the stated places, protractor between them"),
    TORQUE("torque", InstrumentKind.TORQUE_WRENCH, 0.3, 1, "what the wrench is set to, pulled slowly and once"),
    PERIOD("period", InstrumentKind.STOPWATCH, 0.0015, 6, "twenty swings of a few degrees timed, divided by twenty"),
    CLOCK("clock", InstrumentKind.STOPWATCH, 1, 1, "by the hour meter or the log"),
    HEAT("heat", InstrumentKind.THERMOMETER, 2, 5, "thermometer held where it is said until it rises no more"),
    COILS("coils", InstrumentKind.COIL_COUNT, 0.1, 2, "counted to a quarter from where the wire leaves the end coil"),
    AIR_PRESSURE(
            "air_pressure",
            InstrumentKind.BAROMETER,
            50,
            2,
            "barometer where it will run, left until it stands still; the pressure of the place, not the weather report's, which is reduced to sea level"),
    HUMIDITY(
            "humidity",
            InstrumentKind.HYGROMETER,
            0.01,
            5,
            "hygrometer in the shade, air moving past it, left for five minutes"),
    OCTANE("octane", InstrumentKind.PUMP_LABEL, 0.1, 1, "as the pump prints it"),
    DROP(
            "drop",
            InstrumentKind.MANOMETER,
            50,
            15,
            "tube of water on a tap that lies flush in the wall, throttle wide open, speed steady under load"),
    FILL_LARGE(
            "fill_large",
            InstrumentKind.MEASURING_JUG,
            10e-6,
            15,
            "openings but one closed, filled from the jug, bubbles rocked out"),
    JET_FLOW(
            "jet_flow",
            InstrumentKind.TIMED_FLOW,
            15e-9,
            10,
            "jet in a tube, level kept by an overflow, what runs through caught and timed"),
    STAMP("stamp", InstrumentKind.STAMP, 1e-9, 1, "as it is stamped");

    /** Degrees of freedom credited to each pooled repeatability: a judgement good to about 20 %, JCGM 100:2008 G.4.2 eq. (G.3). */
    public static final double POOLED_DEGREES_OF_FREEDOM = 12.5;

    private final String key;
    private final InstrumentKind instrument;
    private final double repeatability;
    private final double minutes;
    private final String how;

    ReadingKind(String key, InstrumentKind instrument, double repeatability, double minutes, String how) {
        this.key = key;
        this.instrument = instrument;
        this.repeatability = repeatability;
        this.minutes = minutes;
        this.how = how;
    }

    public String key() {
        return key;
    }

    /** The instrument taken to have been used when none is named; every use is listed among the defaults of an answer. */
    public InstrumentKind usualInstrument() {
        return instrument;
    }

    public Dimension dimension() {
        return instrument.dimension();
    }

    /** Standard deviation of one reading [SI], &gt; 0. */
    public double repeatability() {
        return repeatability;
    }

    /** Minutes for one reading with the part at hand, &gt; 0. Common practice, no source. */
    public double minutes() {
        return minutes;
    }

    /** How to take it, one sentence without a full stop. */
    public String how() {
        return how;
    }
}
