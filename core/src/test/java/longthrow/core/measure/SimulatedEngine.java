package longthrow.core.measure;

import java.util.EnumMap;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.SplittableRandom;
import longthrow.core.engine.Material;
import longthrow.core.term.InstrumentKind;
import longthrow.core.term.ReadingKind;
import longthrow.core.term.Term;

/**
 * One invented engine as it truly is, with the bench it is measured on: the true error of every instrument, the true unsteadiness of the hand for
 * every kind of reading, and the true expansion of every metal. Sizes, wear and clearances are drawn over what 80 to 500 cc singles show; they
 * stand for no engine. Everything drawn about the bench is drawn from the very distribution that the tables claim.
 */
final class SimulatedEngine {
    /** 95 % half-width of a normal error, in standard deviations: what a stated error of one means. */
    static final double STATED = 1.959_963_984_540_054;

    /** How the cylinder wore. */
    enum Wear {
        /** As made: the form errors of honing alone. */
        NONE,
        /** Up to 0.03 mm of taper and out-of-round. */
        LIGHT,
        /** Up to 0.12 mm. */
        HEAVY
    }

    final Wear wear;
    private final SplittableRandom random;
    private final Map<Term, Double> truth = new EnumMap<>(Term.class);
    private final Map<InstrumentKind, double[]> instruments = new EnumMap<>(InstrumentKind.class);
    private final Map<ReadingKind, Double> hand = new EnumMap<>(ReadingKind.class);
    private final Map<Material, Double> expansion = new EnumMap<>(Material.class);
    private final Map<String, double[]> ownTools = new HashMap<>();

    /** Kinds of reading that came with what moves, shakes, wears and breathes: drawn when first asked for, so that the engines stay those whose figures are on record. */
    static final Set<ReadingKind> OF_THE_MOVING_ENGINE = EnumSet.of(
            ReadingKind.SHAPE,
            ReadingKind.DEPTH,
            ReadingKind.TILT,
            ReadingKind.SECTOR,
            ReadingKind.TORQUE,
            ReadingKind.PERIOD,
            ReadingKind.CLOCK,
            ReadingKind.HEAT,
            ReadingKind.COILS,
            ReadingKind.AIR_PRESSURE,
            ReadingKind.HUMIDITY,
            ReadingKind.OCTANE,
            ReadingKind.DROP,
            ReadingKind.FILL_LARGE,
            ReadingKind.JET_FLOW,
            ReadingKind.STAMP);

    /** Instruments that came with them. */
    static final Set<InstrumentKind> TOOLS_OF_THE_MOVING_ENGINE = EnumSet.of(
            InstrumentKind.PROTRACTOR,
            InstrumentKind.TORQUE_WRENCH,
            InstrumentKind.STOPWATCH,
            InstrumentKind.COIL_COUNT,
            InstrumentKind.BAROMETER,
            InstrumentKind.HYGROMETER,
            InstrumentKind.PUMP_LABEL,
            InstrumentKind.MANOMETER,
            InstrumentKind.MEASURING_JUG,
            InstrumentKind.TIMED_FLOW,
            InstrumentKind.STAMP);

    /** Every kind that came after the first benches were drawn. */
    private static final Set<ReadingKind> LATER = later();

    private static Set<ReadingKind> later() {
        Set<ReadingKind> later =
                EnumSet.of(ReadingKind.ARM, ReadingKind.PITCH_CIRCLE, ReadingKind.WIRE, ReadingKind.SOFT_SPRING);
        later.addAll(OF_THE_MOVING_ENGINE);
        return later;
    }

    SimulatedEngine(long seed) {
        random = new SplittableRandom(seed);
        wear = Wear.values()[random.nextInt(3)];
        for (InstrumentKind kind : InstrumentKind.values()) {
            if (!TOOLS_OF_THE_MOVING_ENGINE.contains(kind)) {
                instruments.put(kind, errorsOf(kind));
            }
        }
        for (ReadingKind kind : ReadingKind.values()) {
            if (!LATER.contains(kind)) {
                hand.put(kind, drawHand(kind));
            }
        }
        for (Material metal : Material.values()) {
            expansion.put(metal, metal.expansion() + metal.spread() / STATED * normal());
        }
        build();
    }

    private double drawHand(ReadingKind kind) {
        double nu = ReadingKind.POOLED_DEGREES_OF_FREEDOM;
        return kind.repeatability() * Math.sqrt(nu / chiSquared(nu));
    }

    /** The true figure of a quantity sought, by its path; 20 °C. */
    double at(String path) {
        return get(Term.at(path).orElseThrow());
    }

    SplittableRandom random() {
        return random;
    }

    /** True standard deviation of one reading by this hand. */
    double hand(ReadingKind kind) {
        return hand.computeIfAbsent(kind, this::drawHand);
    }

    /** True error of an instrument: added to every reading, and as a share of it. A tool of the owner's own is drawn when first used. */
    double[] instrument(InstrumentKind kind, String key) {
        return key.equals(kind.key())
                ? instruments.computeIfAbsent(kind, this::errorsOf)
                : ownTools.computeIfAbsent(key, k -> errorsOf(kind));
    }

    double expansion(Material metal) {
        return Objects.requireNonNull(expansion.get(metal));
    }

    private double[] errorsOf(InstrumentKind kind) {
        return new double[] {kind.statedError() / STATED * normal(), kind.relativeError() / STATED * normal()};
    }

    double normal() {
        return random.nextGaussian();
    }

    double between(double least, double most) {
        return least + (most - least) * random.nextDouble();
    }

    /** Marsaglia and Tsang (2000), A simple method for generating gamma variables: chi-squared is twice a gamma of half the degrees of freedom. */
    private double chiSquared(double degreesOfFreedom) {
        double d = degreesOfFreedom / 2 - 1.0 / 3;
        double c = 1 / Math.sqrt(9 * d);
        while (true) {
            double x = normal();
            double v = Math.pow(1 + c * x, 3);
            if (v > 0 && Math.log(random.nextDouble()) < 0.5 * x * x + d - d * v + d * Math.log(v)) {
                return 2 * d * v;
            }
        }
    }

    private void put(Term term, double value) {
        truth.put(term, value);
    }

    private double get(Term term) {
        return Objects.requireNonNull(truth.get(term), term.path());
    }

    private void build() {
        double mm = 1e-3;
        double cc = 1e-6;
        double displacement = 80 * cc * Math.pow(500.0 / 80, random.nextDouble());
        double bore = Math.cbrt(4 * displacement / (Math.PI * between(0.65, 1.05)));
        double stroke = displacement / (Math.PI / 4 * bore * bore);
        cylinder(bore);
        bore = get(Term.BORE);
        put(Term.SLEEVE_OUTSIDE_TOP, bore + 2 * between(2, 6) * mm);
        put(Term.SLEEVE_OUTSIDE_BOTTOM, get(Term.SLEEVE_OUTSIDE_TOP) + 0.05 * mm * normal());
        put(Term.STROKE, stroke);
        put(Term.ROD_LENGTH, stroke * between(1.5, 2.0));
        put(Term.COMPRESSION_HEIGHT, bore * between(0.3, 0.5));
        double deck = between(-0.3, 0.9) * mm;
        put(Term.DECK_HEIGHT, stroke / 2 + get(Term.ROD_LENGTH) + get(Term.COMPRESSION_HEIGHT) + deck);
        put(Term.DECK_TILT_SIDES, 0.06 * mm * normal());
        put(Term.DECK_TILT_ENDS, 0.03 * mm * normal());
        put(Term.GASKET_THICKNESS, between(0.5, 1.6) * mm);
        put(Term.GASKET_BORE, bore + between(1, 4) * mm);
        put(Term.CROWN_VOLUME, between(-1.5, 4) * cc);
        double clearance = Math.PI / 4 * bore * bore * stroke / (between(6, 10.5) - 1);
        double gasket = Math.PI / 4 * get(Term.GASKET_BORE) * get(Term.GASKET_BORE) * get(Term.GASKET_THICKNESS);
        put(Term.CHAMBER_VOLUME, clearance - gasket - Math.PI / 4 * bore * bore * deck - get(Term.CROWN_VOLUME));
        put(Term.VOLUME_IN_ASSEMBLY, clearance);
        put(Term.CHAMBER_AREA, Math.PI / 4 * bore * bore * between(1.0, 1.4));
        put(Term.VALVE_TO_HEAD, between(1.2, 3) * mm);
        put(Term.TOP_LAND_HEIGHT, between(3, 8) * mm);
        put(Term.TOP_LAND_DIAMETER, bore - between(0.3, 0.8) * mm);
        put(Term.CREVICE_VOLUME, 0.4 * cc * (1 + normal() / STATED));
        put(Term.PISTON_DIAMETER, bore - between(0.02, 0.12) * mm);
        double pin = bore * between(0.2, 0.27);
        put(Term.PIN_DIAMETER, pin);
        put(Term.PISTON_PIN_BORE, pin + between(0.002, 0.02) * mm);
        put(Term.SMALL_END_BORE, pin + between(0.008, 0.04) * mm);
        double crankpin = bore * between(0.38, 0.5);
        put(Term.CRANKPIN_LARGEST, crankpin);
        put(Term.CRANKPIN_SMALLEST, crankpin - between(0.001, 0.05) * mm);
        put(Term.CRANKPIN_DIAMETER, 0.5 * (get(Term.CRANKPIN_LARGEST) + get(Term.CRANKPIN_SMALLEST)));
        put(Term.BIG_END_BORE, crankpin + between(0.03, 0.09) * mm);
        put(Term.BIG_END_WIDTH, bore * between(0.3, 0.4));
        put(Term.CRANKPIN_WIDTH, get(Term.BIG_END_WIDTH) + between(0.1, 0.6) * mm);
        put(Term.MAIN_JOURNAL, bore * between(0.38, 0.5));
        put(Term.MAIN_BORE, get(Term.MAIN_JOURNAL) + between(0.03, 0.1) * mm);
        put(Term.SKIRT_BELOW_PIN, bore * between(0.22, 0.3));
        put(
                Term.COUNTERWEIGHT_RADIUS,
                get(Term.ROD_LENGTH) - stroke / 2 - get(Term.SKIRT_BELOW_PIN) - between(0.5, 4) * mm);
        camAndSpring(mm);
        masses(bore);
        put(Term.KEY_OFFSET, between(0.3, 1.5) * mm);
        put(Term.TAPER_DIAMETER, between(15, 28) * mm);
        put(Term.BASE_TIMING, Math.toRadians(between(15, 30)));
        put(Term.FLYWHEEL_DIAMETER, between(140, 320) * mm);
        put(Term.WANTED_SPEED, between(3000, 8000) * Math.PI / 30);
        put(Term.FLYWHEEL_MASS, between(1.5, 12));
        put(Term.FLYWHEEL_INERTIA, between(0.003, 0.08));
        put(Term.TOP_RING_GAP, between(0.15, 0.8) * mm);
        put(Term.TOP_RING_SIDE_CLEARANCE, between(0.03, 0.15) * mm);
        put(Term.CRANK_RUN_OUT, between(0.01, 0.1) * mm);
        put(Term.CRANK_END_PLAY, between(0.05, 0.5) * mm);
        put(Term.LEAK_DOWN, between(0.03, 0.4));
        put(Term.CRANKING_PRESSURE, between(4e5, 1.1e6));
        put(Term.VENTURI, between(12, 30) * mm);
    }

    private void cylinder(double size) {
        double most = switch (wear) {
            case NONE -> 0;
            case LIGHT -> 0.03e-3;
            case HEAVY -> 0.12e-3;
        };
        double topThrust = between(0, most);
        double topAxis = topThrust * between(0.2, 0.9);
        double middle = between(0.2, 0.7);
        double form = 0.002e-3;
        put(Term.BORE_TOP_THRUST, size + topThrust + form * normal());
        put(Term.BORE_MIDDLE_THRUST, size + topThrust * middle + form * normal());
        put(Term.BORE_BOTTOM_THRUST, size + form * normal());
        put(Term.BORE_TOP_AXIS, size + topAxis + form * normal());
        put(Term.BORE_MIDDLE_AXIS, size + topAxis * middle + form * normal());
        put(Term.BORE_BOTTOM_AXIS, size + form * normal());
        double sum = 0;
        for (Term place : new Term[] {
            Term.BORE_TOP_THRUST,
            Term.BORE_MIDDLE_THRUST,
            Term.BORE_BOTTOM_THRUST,
            Term.BORE_TOP_AXIS,
            Term.BORE_MIDDLE_AXIS,
            Term.BORE_BOTTOM_AXIS
        }) {
            sum += get(place);
        }
        put(Term.BORE, sum / 6);
    }

    private void camAndSpring(double mm) {
        put(Term.INTAKE_LOBE_CENTRE, Math.toRadians(between(98, 114)));
        put(Term.INTAKE_DURATION, Math.toRadians(between(200, 270)));
        put(Term.EXHAUST_LOBE_CENTRE, Math.toRadians(between(98, 114)));
        put(Term.EXHAUST_DURATION, Math.toRadians(between(200, 270)));
        put(Term.INTAKE_LIFT, between(5, 10) * mm);
        put(Term.EXHAUST_LIFT, between(5, 10) * mm);
        put(Term.SPRING_INSTALLED_HEIGHT, between(22, 38) * mm);
        put(Term.SPRING_SOLID_HEIGHT, get(Term.SPRING_INSTALLED_HEIGHT) - get(Term.INTAKE_LIFT) - between(0.5, 4) * mm);
        put(Term.SPRING_SEAT_LOAD, between(50, 150));
        put(Term.SPRING_OPEN_LOAD, get(Term.SPRING_SEAT_LOAD) + between(10e3, 25e3) * get(Term.INTAKE_LIFT));
    }

    private void masses(double bore) {
        double size = bore / 0.065;
        put(Term.PISTON_MASS, 0.16 * size * size * size * between(0.8, 1.3));
        put(Term.PIN_MASS, 0.05 * size * size * size * between(0.8, 1.3));
        put(Term.RING_MASS, 0.018 * size * size * between(0.8, 1.3));
        put(Term.ROD_SMALL_END_MASS, 0.07 * size * size * size * between(0.8, 1.3));
        put(Term.ROD_BIG_END_MASS, 0.14 * size * size * size * between(0.8, 1.3));
    }
}
