package longthrow.core.measure;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import longthrow.core.build.Build;
import longthrow.core.term.Choice;
import longthrow.core.term.InstrumentKind;
import longthrow.core.term.ReadingKind;
import longthrow.core.term.Term;

/**
 * A careful owner's readings of an invented engine, each thing come by in two ways where a bench allows it, with no, one or two of the trade's
 * usual mistakes made on the way. Everything follows from the seed.
 */
final class MistakenBench {
    /** A mistake that was made: where, in which line of the sheet, and the error it left in the reading as entered [SI]. */
    record Made(Mistake mistake, Term term, int line, double error) {}

    /** One line of the sheet; a line with no reading is a maker's figure with that half-width [SI]. */
    private record Line(Term term, InstrumentKind kind, int count, double sheet) {}

    private static final List<Line> SHEET = List.of(
            new Line(Term.BORE, InstrumentKind.BORE_GAUGE, 3, 0),
            new Line(Term.BORE, InstrumentKind.CALIPER, 1, 0),
            new Line(Term.STROKE, InstrumentKind.DEPTH_GAUGE, 1, 0),
            new Line(Term.STROKE, InstrumentKind.CALIPER, 0, 0.05e-3),
            new Line(Term.THROW, InstrumentKind.CALIPER, 1, 0),
            new Line(Term.ROD_LENGTH, InstrumentKind.CALIPER, 0, 0.05e-3),
            new Line(Term.ROD_LENGTH, InstrumentKind.CALIPER, 1, 0),
            new Line(Term.ROD_INSIDE_EDGES, InstrumentKind.CALIPER, 2, 0),
            new Line(Term.BIG_END_BORE, InstrumentKind.BORE_GAUGE, 2, 0),
            new Line(Term.SMALL_END_BORE, InstrumentKind.BORE_GAUGE, 2, 0),
            new Line(Term.CRANKPIN_DIAMETER, InstrumentKind.MICROMETER, 2, 0),
            new Line(Term.BIG_END_STRIP, InstrumentKind.PLASTIC_STRIP, 1, 0),
            new Line(Term.PIN_DIAMETER, InstrumentKind.MICROMETER, 2, 0),
            new Line(Term.PIN_DIAMETER, InstrumentKind.CALIPER, 1, 0),
            new Line(Term.COMPRESSION_HEIGHT, InstrumentKind.DEPTH_GAUGE, 1, 0),
            new Line(Term.PIN_TOP_TO_CROWN, InstrumentKind.DEPTH_GAUGE, 1, 0),
            new Line(Term.PIN_BOTTOM_TO_CROWN, InstrumentKind.DEPTH_GAUGE, 1, 0),
            new Line(Term.DECK_HEIGHT, InstrumentKind.HEIGHT_GAUGE, 1, 0),
            new Line(Term.DECK_HEIGHT, InstrumentKind.HEIGHT_GAUGE, 0, 0.05e-3),
            new Line(Term.DECK_CLEARANCE, InstrumentKind.DEPTH_GAUGE, 1, 0),
            new Line(Term.DECK_CLEARANCE_THRUST, InstrumentKind.DEPTH_GAUGE, 1, 0),
            new Line(Term.DECK_CLEARANCE_ANTITHRUST, InstrumentKind.DEPTH_GAUGE, 1, 0),
            new Line(Term.GASKET_THICKNESS, InstrumentKind.MICROMETER, 3, 0),
            new Line(Term.GASKET_THICKNESS, InstrumentKind.CALIPER, 0, 0.03e-3),
            new Line(Term.SQUISH_FLYWHEEL_END, InstrumentKind.CALIPER, 1, 0),
            new Line(Term.SQUISH_OUTPUT_END, InstrumentKind.CALIPER, 1, 0),
            new Line(Term.CHAMBER_VOLUME, InstrumentKind.BURETTE, 2, 0),
            new Line(Term.CROWN_VOLUME, InstrumentKind.BURETTE, 2, 0),
            new Line(Term.GASKET_BORE, InstrumentKind.CALIPER, 1, 0),
            new Line(Term.GASKET_BORE, InstrumentKind.CALIPER, 0, 0.2e-3),
            new Line(Term.VOLUME_IN_ASSEMBLY, InstrumentKind.BURETTE, 2, 0),
            new Line(Term.PISTON_DIAMETER, InstrumentKind.MICROMETER, 2, 0),
            new Line(Term.PISTON_DIAMETER, InstrumentKind.CALIPER, 0, 0.01e-3),
            new Line(Term.COUNTERWEIGHT_RADIUS, InstrumentKind.CALIPER, 1, 0),
            new Line(Term.COUNTERWEIGHT_RADIUS, InstrumentKind.CALIPER, 0, 0.2e-3),
            new Line(Term.MAIN_JOURNAL, InstrumentKind.MICROMETER, 2, 0),
            new Line(Term.MAIN_JOURNAL, InstrumentKind.CALIPER, 1, 0));

    final Build build;
    final List<Made> made = new ArrayList<>();
    /** Index of the line behind each entry of the build, by term and position among the entries of that term. */
    final Map<Term, List<Integer>> lines = new EnumMap<>(Term.class);

    private final Random random;
    private final Map<Term, Double> truth = new EnumMap<>(Term.class);
    private final Map<InstrumentKind, Double> instrumentError = new EnumMap<>(InstrumentKind.class);
    private final Map<ReadingKind, Double> hand = new EnumMap<>(ReadingKind.class);
    private double dishDepth;

    MistakenBench(long seed) {
        random = new Random(seed * 0x9E3779B97F4A7C15L + 17);
        engine();
        double lot = random.nextDouble();
        int mistakes = lot < 0.30 ? 0 : lot < 0.35 ? 2 : 1;
        Map<Integer, Map<Integer, Double>> errors = new LinkedHashMap<>(); // line -> reading (-1 all) -> error
        while (made.size() < mistakes) {
            makeOne(errors);
        }
        build = write(errors);
    }

    private double between(double a, double b) {
        return a + (b - a) * random.nextDouble();
    }

    private void engine() {
        double bore = between(52, 92);
        double stroke = between(0.62, 1.05) * bore;
        double rod = between(1.5, 1.9) * stroke;
        double pin = between(0.2, 0.26) * bore;
        double crankpin = between(0.36, 0.44) * bore;
        double height = between(0.32, 0.45) * bore + 2;
        double clearance = between(-0.4, 1.2);
        double swept = Math.PI / 4 * bore * bore * stroke / 1000;
        double gasket = between(0.8, 1.5);
        double gasketBore = bore + between(1.5, 4);
        double crown = random.nextBoolean() ? between(0.8, 5) : between(-3, -0.8);
        double ratio = between(6.5, 11);
        double tiltSides = random.nextGaussian() * 0.1;
        double tiltEnds = random.nextGaussian() * 0.02;
        double crevice = between(0.1, 0.7);
        double chamber = swept / (ratio - 1)
                - Math.PI / 4 * gasketBore * gasketBore * gasket / 1000
                - Math.PI / 4 * bore * bore * clearance / 1000
                - crown;
        truth.put(Term.BORE, bore * 1e-3);
        truth.put(Term.STROKE, stroke * 1e-3);
        truth.put(Term.THROW, stroke * 0.5e-3);
        truth.put(Term.ROD_LENGTH, rod * 1e-3);
        truth.put(Term.PIN_DIAMETER, pin * 1e-3);
        truth.put(Term.SMALL_END_BORE, (pin + between(0.01, 0.03)) * 1e-3);
        truth.put(Term.CRANKPIN_DIAMETER, crankpin * 1e-3);
        double strip = between(0.03, 0.08);
        truth.put(Term.BIG_END_BORE, (crankpin + strip) * 1e-3);
        truth.put(Term.BIG_END_STRIP, strip * 1e-3);
        truth.put(
                Term.ROD_INSIDE_EDGES,
                truth.get(Term.ROD_LENGTH) - (truth.get(Term.BIG_END_BORE) + truth.get(Term.SMALL_END_BORE)) / 2);
        truth.put(Term.COMPRESSION_HEIGHT, height * 1e-3);
        truth.put(Term.PIN_TOP_TO_CROWN, (height - pin / 2) * 1e-3);
        truth.put(Term.PIN_BOTTOM_TO_CROWN, (height + pin / 2) * 1e-3);
        truth.put(Term.DECK_CLEARANCE, clearance * 1e-3);
        truth.put(Term.DECK_CLEARANCE_THRUST, (clearance + tiltSides / 2) * 1e-3);
        truth.put(Term.DECK_CLEARANCE_ANTITHRUST, (clearance - tiltSides / 2) * 1e-3);
        truth.put(Term.DECK_HEIGHT, (stroke / 2 + rod + height + clearance) * 1e-3);
        truth.put(Term.GASKET_THICKNESS, gasket * 1e-3);
        truth.put(Term.GASKET_BORE, gasketBore * 1e-3);
        truth.put(Term.SQUISH_FLYWHEEL_END, (clearance + gasket + tiltEnds / 2) * 1e-3);
        truth.put(Term.SQUISH_OUTPUT_END, (clearance + gasket - tiltEnds / 2) * 1e-3);
        truth.put(Term.CHAMBER_VOLUME, chamber * 1e-6);
        truth.put(Term.CROWN_VOLUME, crown * 1e-6);
        truth.put(Term.VOLUME_IN_ASSEMBLY, (swept / (ratio - 1) + crevice) * 1e-6);
        truth.put(Term.PISTON_DIAMETER, (bore - between(0.03, 0.1)) * 1e-3);
        truth.put(Term.COUNTERWEIGHT_RADIUS, between(0.6, 0.8) * bore * 1e-3);
        truth.put(Term.MAIN_JOURNAL, between(0.3, 0.4) * bore * 1e-3);
        double width = between(0.65, 0.8) * bore;
        dishDepth = crown > 0.3 ? crown * 1000 / (Math.PI / 4 * width * width) * 1e-3 : 0;
        for (InstrumentKind kind : InstrumentKind.values()) {
            if (!SimulatedEngine.TOOLS_OF_THE_MOVING_ENGINE.contains(kind)) {
                instrumentError.put(kind, random.nextGaussian() * kind.statedError() / 1.96);
            }
        }
        for (ReadingKind kind : ReadingKind.values()) {
            if (!SimulatedEngine.OF_THE_MOVING_ENGINE.contains(kind)) {
                hand.put(
                        kind,
                        kind.repeatability()
                                * Math.sqrt(ReadingKind.POOLED_DEGREES_OF_FREEDOM
                                        / chiSquared(ReadingKind.POOLED_DEGREES_OF_FREEDOM)));
            }
        }
    }

    private double chiSquared(double freedom) {
        double sum = 0;
        for (int k = 0; k < (int) freedom; k++) {
            double z = random.nextGaussian();
            sum += z * z;
        }
        double z = random.nextGaussian();
        return sum + (freedom - (int) freedom) * z * z;
    }

    private double t(Term term) {
        Double value = truth.get(term);
        if (value == null) {
            throw new IllegalStateException("no truth for " + term);
        }
        return value;
    }

    /** Draws mistakes until one applies to the line drawn; mistakes are drawn evenly, then the line among those where it can happen. */
    private void makeOne(Map<Integer, Map<Integer, Double>> errors) {
        Mistake[] kinds = Mistake.values();
        Mistake kind = kinds[random.nextInt(kinds.length - 1)];
        List<Integer> places = new ArrayList<>();
        for (int k = 0; k < SHEET.size(); k++) {
            if (!errors.containsKey(k) && SHEET.get(k).count() > 0 && error(kind, SHEET.get(k)) != 0) {
                places.add(k);
            }
        }
        if (places.isEmpty()) {
            return;
        }
        int line = places.get(random.nextInt(places.size()));
        Line at = SHEET.get(line);
        double error = error(kind, at);
        int reading = (kind == Mistake.THIMBLE_TURN || PEN.contains(kind)) && at.count() > 1
                ? random.nextInt(at.count())
                : -1;
        errors.put(line, Map.of(reading, error));
        made.add(new Made(kind, at.term(), line, error));
    }

    /** The error this mistake leaves in the reading, 0 when it cannot happen there. */
    private double error(Mistake mistake, Line line) {
        Term term = line.term();
        double y = t(term);
        double pin = t(Term.PIN_DIAMETER) / 2;
        double bigEnd = t(Term.BIG_END_BORE) / 2;
        double smallEnd = t(Term.SMALL_END_BORE) / 2;
        return switch (mistake) {
            case RADIUS_LEFT_OUT ->
                switch (term) {
                    case COMPRESSION_HEIGHT, PIN_BOTTOM_TO_CROWN -> -pin;
                    case ROD_LENGTH -> -(bigEnd + smallEnd);
                    case DECK_HEIGHT -> -t(Term.MAIN_JOURNAL) / 2;
                    default -> 0;
                };
            case RADIUS_TWICE ->
                switch (term) {
                    case COMPRESSION_HEIGHT, PIN_TOP_TO_CROWN -> pin;
                    case ROD_LENGTH, ROD_INSIDE_EDGES -> bigEnd + smallEnd;
                    case DECK_HEIGHT -> t(Term.MAIN_JOURNAL) / 2;
                    default -> 0;
                };
            case STROKE_FOR_THROW -> term == Term.STROKE ? -y / 2 : term == Term.THROW ? y : 0;
            case RADIUS_FOR_DIAMETER ->
                switch (term) {
                    case BORE,
                            PIN_DIAMETER,
                            PISTON_DIAMETER,
                            GASKET_BORE,
                            BIG_END_BORE,
                            SMALL_END_BORE,
                            CRANKPIN_DIAMETER,
                            MAIN_JOURNAL -> -y / 2;
                    case COUNTERWEIGHT_RADIUS -> y;
                    default -> 0;
                };
            case DEPTH_SIGN ->
                switch (term) {
                    case DECK_CLEARANCE, DECK_CLEARANCE_THRUST, DECK_CLEARANCE_ANTITHRUST, CROWN_VOLUME -> -2 * y;
                    default -> 0;
                };
            case INCH_FOR_MILLIMETRE -> y > 5e-3 ? y / 25.4 - y : 0;
            // the size of a slip of the pen is known when the figure is written
            case DROPPED_DIGIT, DIGITS_SWAPPED, MISREAD_DIGIT, DECIMAL_POINT -> y > 10e-3 ? slip(mistake) : 0;
            case GASKET_FORGOTTEN ->
                switch (term) {
                    case SQUISH_FLYWHEEL_END, SQUISH_OUTPUT_END -> -t(Term.GASKET_THICKNESS);
                    case DECK_CLEARANCE -> t(Term.GASKET_THICKNESS);
                    default -> 0;
                };
            case GASKET_UNCRUSHED -> term == Term.GASKET_THICKNESS ? y * (1 / (1 - between(0.1, 0.3)) - 1) : 0;
            case THIMBLE_TURN ->
                switch (line.kind()) {
                    case MICROMETER, DEPTH_GAUGE, BORE_GAUGE -> random.nextBoolean() ? 0.5e-3 : -0.5e-3;
                    default -> 0;
                };
            case ONE_SIDE_OF_DECK ->
                term == Term.DECK_CLEARANCE || term == Term.DECK_HEIGHT ? random.nextGaussian() * 0.15e-3 : 0;
            case DISH_FLOOR ->
                dishDepth == 0
                        ? 0
                        : switch (term) {
                            case COMPRESSION_HEIGHT, PIN_TOP_TO_CROWN, PIN_BOTTOM_TO_CROWN -> -dishDepth;
                            case DECK_CLEARANCE, DECK_CLEARANCE_THRUST, DECK_CLEARANCE_ANTITHRUST -> dishDepth;
                            default -> 0;
                        };
            case OTHER -> 0;
        };
    }

    /** Slips of the pen, which happen to one figure of a set. */
    static final List<Mistake> PEN =
            List.of(Mistake.DROPPED_DIGIT, Mistake.DIGITS_SWAPPED, Mistake.MISREAD_DIGIT, Mistake.DECIMAL_POINT);

    /** Stands for a slip of the pen until the figure is written. */
    private static double slip(Mistake mistake) {
        return Double.MIN_VALUE * (1 + PEN.indexOf(mistake));
    }

    /** A figure with one slip of the pen that shows: not in its last digit. */
    private String slipped(Mistake mistake, String text) {
        int end = text.indexOf(' ');
        List<Integer> digits = new ArrayList<>();
        for (int k = 0; k < end - 1; k++) {
            if (Character.isDigit(text.charAt(k))) {
                digits.add(k);
            }
        }
        int at = digits.get(random.nextInt(digits.size()));
        char here = text.charAt(at);
        int next = text.charAt(at + 1) == '.' ? at + 2 : at + 1;
        return switch (mistake) {
            case DROPPED_DIGIT -> text.substring(0, at) + text.substring(at + 1);
            case DIGITS_SWAPPED ->
                text.substring(0, at)
                        + text.charAt(next)
                        + text.substring(at + 1, next)
                        + here
                        + text.substring(next + 1);
            case MISREAD_DIGIT ->
                text.substring(0, at) + (char) ('1' + (here - '0' + random.nextInt(8)) % 9) + text.substring(at + 1);
            case DECIMAL_POINT -> {
                int point = text.indexOf('.');
                String plain = text.substring(0, point) + text.substring(point + 1);
                int to = random.nextBoolean() ? point + 1 : point - 1;
                yield plain.substring(0, to) + "." + plain.substring(to);
            }
            default -> throw new IllegalArgumentException(mistake + " is no slip of the pen");
        };
    }

    private Build write(Map<Integer, Map<Integer, Double>> errors) {
        Builds sheet = Builds.engine("invented bench").choose(Choice.VALVE_LAYOUT, "overhead");
        for (int k = 0; k < SHEET.size(); k++) {
            Line line = SHEET.get(k);
            Map<Integer, Double> wrong = errors.getOrDefault(k, Map.of());
            lines.computeIfAbsent(line.term(), t -> new ArrayList<>()).add(k);
            if (line.count() == 0) {
                double value = t(line.term()) + (2 * random.nextDouble() - 1) * line.sheet();
                sheet.specified(line.term(), text(line.term(), value, 1e-5), text(line.term(), line.sheet(), 1e-6));
                continue;
            }
            String[] texts = new String[line.count()];
            for (int n = 0; n < texts.length; n++) {
                double mistake = wrong.getOrDefault(-1, wrong.getOrDefault(n, 0.0));
                double read = t(line.term())
                        + instrumentError.getOrDefault(line.kind(), 0.0)
                        + random.nextGaussian() * hand.getOrDefault(line.term().reading(), 0.0)
                        + mistake;
                texts[n] = text(line.term(), read, line.kind().resolution());
                Optional<Mistake> pen =
                        PEN.stream().filter(m -> mistake == slip(m)).findFirst();
                if (pen.isPresent()) {
                    String whole = texts[n];
                    texts[n] = slipped(pen.get(), whole);
                    double error = Builds.quantity(line.term(), texts[n]).si()
                            - Builds.quantity(line.term(), whole).si();
                    int at = k;
                    made.replaceAll(m -> m.line() == at ? new Made(m.mistake(), m.term(), at, error) : m);
                }
            }
            sheet.readings(line.term(), line.kind().key(), texts);
        }
        return sheet.build();
    }

    private static String text(Term term, double value, double step) {
        double rounded = Math.round(value / step) * step;
        return term.dimension() == longthrow.core.quantity.Dimension.VOLUME
                ? String.format(Locale.ROOT, "%.2f cc", rounded * 1e6)
                : String.format(Locale.ROOT, step < 0.009e-3 ? "%.3f mm" : "%.2f mm", rounded * 1e3);
    }
}
