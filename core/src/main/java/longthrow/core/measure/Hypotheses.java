package longthrow.core.measure;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import longthrow.core.measurement.Provenance;
import longthrow.core.quantity.Dimension;
import longthrow.core.quantity.Units;
import longthrow.core.term.InstrumentKind;
import longthrow.core.term.Term;

/** Which of the usual mistakes could have happened to which entry of a build, and what would mend each. */
final class Hypotheses {
    /** A new gasket loses about this share of its thickness when crushed; common practice, no source. */
    static final double CRUSH = 0.2;
    /** Standard deviation of that share. */
    static final double CRUSH_SPREAD = 0.07;
    /** Out of square of a deck at its edge, standard deviation [m]; common practice, no source. */
    static final double OUT_OF_SQUARE = 0.15e-3;
    /** A dish is taken to be as wide as this share of the bore, to guess its depth from its volume; common practice, no source. */
    static final double DISH_WIDTH = 0.72;
    /** Relative standard deviation of a dish depth guessed that way. */
    static final double DISH_SPREAD = 0.3;
    /** Size of a mistake of unknown kind: this share of the reading, and at least so many of its own doubts; common practice, no source. */
    private static final double OTHER_SHARE = 0.02;

    private static final double OTHER_DOUBTS = 10;
    /** A dish below this volume has no floor worth mistaking for the rim [m3]. */
    private static final double LEAST_DISH = 0.3e-6;
    /** Pitch of a metric and of an inch micrometer screw [m]. */
    private static final double[] THIMBLE_TURNS = {0.5e-3, -0.5e-3, 0.635e-3, -0.635e-3};

    private static final double INCH = 25.4;
    /** So many readings of a set are looked at one by one. */
    private static final int MOST_LOOKED = 6;

    private final List<Readings.Entry> entries;
    private final List<Hypothesis> found = new ArrayList<>();
    private final Map<Term, Double> guess = new EnumMap<>(Term.class);

    private Hypotheses(List<Readings.Entry> entries) {
        this.entries = entries;
        for (Readings.Entry entry : entries) {
            guess.putIfAbsent(entry.term(), entry.observation().value());
        }
    }

    /** Every mistake that could have happened, one hypothesis for each way to mend it. */
    static List<Hypothesis> of(List<Readings.Entry> entries) {
        Hypotheses hypotheses = new Hypotheses(entries);
        for (int i = 0; i < entries.size(); i++) {
            if (entries.get(i).provenance() != Provenance.ASSUMED) {
                hypotheses.at(i);
            }
        }
        return evenly(hypotheses.found);
    }

    /** Shares of the ways in which one mistake can have happened at one place, brought to a sum of one: a place does not weigh more for having more ways. */
    private static List<Hypothesis> evenly(List<Hypothesis> found) {
        Map<Hypothesis.Place, Double> sums = new HashMap<>();
        found.forEach(h -> sums.merge(h.place(), h.share(), Double::sum));
        List<Hypothesis> even = new ArrayList<>(found.size());
        for (Hypothesis h : found) {
            even.add(new Hypothesis(
                    h.mistake(),
                    h.entry(),
                    h.reading(),
                    h.move(),
                    h.spread(),
                    h.share() / sums.getOrDefault(h.place(), 1.0)));
        }
        return even;
    }

    private Optional<Double> guess(Term term) {
        return Optional.ofNullable(guess.get(term));
    }

    private void add(Mistake mistake, int entry, double move) {
        add(mistake, entry, move, 0);
    }

    private void add(Mistake mistake, int entry, double move, double spread) {
        Readings.Entry at = entries.get(entry);
        boolean possible = !at.term().isRead()
                || at.term().believable().holds(at.observation().value() + move)
                || spread > 0;
        if (possible && (move != 0 || spread > 0)) {
            found.add(new Hypothesis(mistake, entry, -1, move, spread, 1));
        }
    }

    private void at(int i) {
        Readings.Entry entry = entries.get(i);
        double y = entry.observation().value();
        radii(i, entry.term());
        mixedUp(i, entry.term(), y);
        gasket(i, entry.term(), y);
        deckAndDish(i, entry.term());
        if (entry.term().dimension() == Dimension.LENGTH && !entry.written().isEmpty()) {
            double step = entry.set() == null ? 0 : entry.set().instrument().resolution();
            if (entry.written().get(0).unit().equals(Units.MILLIMETRE)) {
                add(Mistake.INCH_FOR_MILLIMETRE, i, y * (INCH - 1), INCH * step / Math.sqrt(12));
            } else {
                add(Mistake.INCH_FOR_MILLIMETRE, i, y * (1 / INCH - 1));
            }
        }
        digits(i, entry);
        thimble(i, entry);
        other(i, entry);
    }

    private void radii(int i, Term term) {
        double pin = guess(Term.PIN_DIAMETER)
                        .orElseGet(() -> guess(Term.PISTON_PIN_BORE).orElse(0.0))
                / 2;
        double bigEnd = guess(Term.BIG_END_BORE)
                        .orElseGet(() -> guess(Term.CRANKPIN_DIAMETER).orElse(0.0))
                / 2;
        double smallEnd = guess(Term.SMALL_END_BORE).orElse(2 * pin) / 2;
        double main =
                guess(Term.MAIN_BORE).orElseGet(() -> guess(Term.MAIN_JOURNAL).orElse(0.0)) / 2;
        switch (term) {
            case COMPRESSION_HEIGHT -> {
                add(Mistake.RADIUS_LEFT_OUT, i, pin);
                add(Mistake.RADIUS_TWICE, i, -pin);
            }
            case PIN_TOP_TO_CROWN, SKIRT_BELOW_PIN -> add(Mistake.RADIUS_TWICE, i, -pin);
            case PIN_BOTTOM_TO_CROWN -> add(Mistake.RADIUS_LEFT_OUT, i, pin);
            case ROD_LENGTH -> {
                add(Mistake.RADIUS_LEFT_OUT, i, bigEnd + smallEnd);
                add(Mistake.RADIUS_LEFT_OUT, i, bigEnd);
                add(Mistake.RADIUS_LEFT_OUT, i, smallEnd);
                add(Mistake.RADIUS_TWICE, i, -bigEnd - smallEnd);
            }
            case ROD_INSIDE_EDGES -> add(Mistake.RADIUS_TWICE, i, -bigEnd - smallEnd);
            case DECK_HEIGHT -> {
                add(Mistake.RADIUS_LEFT_OUT, i, main);
                add(Mistake.RADIUS_TWICE, i, -main);
            }
            default -> {}
        }
    }

    private void mixedUp(int i, Term term, double y) {
        switch (term) {
            case STROKE -> add(Mistake.STROKE_FOR_THROW, i, y);
            case THROW -> add(Mistake.STROKE_FOR_THROW, i, -y / 2);
            case COUNTERWEIGHT_RADIUS -> add(Mistake.RADIUS_FOR_DIAMETER, i, -y / 2);
            case BORE,
                    GASKET_BORE,
                    PIN_DIAMETER,
                    PISTON_DIAMETER,
                    PISTON_PIN_BORE,
                    BIG_END_BORE,
                    SMALL_END_BORE,
                    CRANKPIN_DIAMETER,
                    MAIN_JOURNAL,
                    MAIN_BORE,
                    TOP_LAND_DIAMETER,
                    FLYWHEEL_DIAMETER -> add(Mistake.RADIUS_FOR_DIAMETER, i, y);
            case DECK_CLEARANCE,
                    DECK_CLEARANCE_THRUST,
                    DECK_CLEARANCE_ANTITHRUST,
                    DECK_CLEARANCE_FLYWHEEL_END,
                    DECK_CLEARANCE_OUTPUT_END,
                    CROWN_VOLUME -> add(Mistake.DEPTH_SIGN, i, -2 * y);
            default -> {}
        }
    }

    private void gasket(int i, Term term, double y) {
        double thickness = guess(Term.GASKET_THICKNESS).orElse(0.0);
        switch (term) {
            case SQUISH_FLYWHEEL_END, SQUISH_OUTPUT_END -> add(Mistake.GASKET_FORGOTTEN, i, thickness);
            case DECK_CLEARANCE -> add(Mistake.GASKET_FORGOTTEN, i, -thickness);
            case GASKET_THICKNESS -> add(Mistake.GASKET_UNCRUSHED, i, -CRUSH * y, CRUSH_SPREAD * y);
            default -> {}
        }
    }

    private void deckAndDish(int i, Term term) {
        if (term == Term.DECK_CLEARANCE || term == Term.DECK_HEIGHT) {
            add(Mistake.ONE_SIDE_OF_DECK, i, 0, OUT_OF_SQUARE);
        }
        double dish = guess(Term.CROWN_VOLUME).orElse(0.0);
        double bore =
                guess(Term.BORE).orElseGet(() -> guess(Term.BORE_TOP_THRUST).orElse(0.0));
        if (dish < LEAST_DISH || bore == 0) {
            return;
        }
        double width = DISH_WIDTH * bore;
        double depth = dish / (Math.PI / 4 * width * width);
        switch (term) {
            case COMPRESSION_HEIGHT, PIN_TOP_TO_CROWN, PIN_BOTTOM_TO_CROWN ->
                add(Mistake.DISH_FLOOR, i, depth, DISH_SPREAD * depth);
            case DECK_CLEARANCE,
                    DECK_CLEARANCE_THRUST,
                    DECK_CLEARANCE_ANTITHRUST,
                    DECK_CLEARANCE_FLYWHEEL_END,
                    DECK_CLEARANCE_OUTPUT_END -> add(Mistake.DISH_FLOOR, i, -depth, DISH_SPREAD * depth);
            default -> {}
        }
    }

    /** Every figure that becomes a written one when a digit is left out or misread, two change places or the point slips. */
    private void digits(int i, Readings.Entry entry) {
        int count = entry.written().size();
        for (int k : looked(entry)) {
            ReadingSet set = entry.set();
            double value =
                    set == null ? entry.observation().value() : set.values().get(k);
            WrittenDigits digits = WrittenDigits.of(entry.written().get(k).written(), value);
            int reading = count == 1 ? -1 : k;
            digits(Mistake.DROPPED_DIGIT, i, reading, value, digits.restored());
            digits(Mistake.DECIMAL_POINT, i, reading, value, digits.shifted());
            digits(Mistake.DIGITS_SWAPPED, i, reading, value, digits.swapped());
            digits(Mistake.MISREAD_DIGIT, i, reading, value, digits.misread());
        }
    }

    /** Of the ways one slip of the pen can be mended, those that lead to what an engine of this kind can have. */
    private void digits(Mistake mistake, int i, int reading, double value, List<Double> moves) {
        Readings.Entry entry = entries.get(i);
        List<Double> possible = new ArrayList<>(moves.size());
        for (double move : moves) {
            if (move != 0
                    && (!entry.term().isRead() || entry.term().believable().holds(value + move))) {
                possible.add(move);
            }
        }
        double share = 1.0 / (possible.size() * entry.written().size());
        for (double move : possible) {
            found.add(new Hypothesis(mistake, i, reading, move, 0, share));
        }
    }

    private void thimble(int i, Readings.Entry entry) {
        ReadingSet set = entry.set();
        if (set == null || !turns(set.instrument().kind())) {
            return;
        }
        for (double turn : THIMBLE_TURNS) {
            if (set.count() == 1) {
                found.add(new Hypothesis(Mistake.THIMBLE_TURN, i, -1, turn, 0, 1));
            } else {
                found.add(new Hypothesis(Mistake.THIMBLE_TURN, i, -1, turn, 0, 1.0 / (set.count() + 1)));
                for (int k : looked(entry)) {
                    found.add(new Hypothesis(Mistake.THIMBLE_TURN, i, k, turn, 0, 1.0 / (set.count() + 1)));
                }
            }
        }
    }

    /** Instruments read, or set, by a screw whose turns can be miscounted. */
    private static boolean turns(InstrumentKind kind) {
        return kind == InstrumentKind.MICROMETER
                || kind == InstrumentKind.DEPTH_GAUGE
                || kind == InstrumentKind.BORE_GAUGE
                || kind == InstrumentKind.TELESCOPING_GAUGE;
    }

    private void other(int i, Readings.Entry entry) {
        double spread = Math.max(OTHER_SHARE * Math.abs(entry.observation().value()), OTHER_DOUBTS * spreadOf(entry));
        add(Mistake.OTHER, i, 0, spread);
        ReadingSet set = entry.set();
        if (set != null && set.count() > 1) {
            for (int k : looked(entry)) {
                found.add(new Hypothesis(Mistake.OTHER, i, k, 0, spread, 1.0 / set.count()));
            }
        }
    }

    private static double spreadOf(Readings.Entry entry) {
        double variance = 0;
        for (var e : entry.observation().errors().entrySet()) {
            double c = e.getValue() * e.getKey().forWeights();
            variance += c * c;
        }
        return Math.sqrt(variance);
    }

    /** Readings of a set that are looked at one by one: all of a few, of many those that stand farthest from the mean. */
    private static List<Integer> looked(Readings.Entry entry) {
        ReadingSet set = entry.set();
        int count = set == null
                ? entry.written().size()
                : Math.min(set.count(), entry.written().size());
        if (set == null || count <= MOST_LOOKED) {
            return IntStream.range(0, count).boxed().toList();
        }
        double mean = set.mean();
        return IntStream.range(0, count)
                .boxed()
                .sorted(Comparator.comparingDouble(k -> -Math.abs(set.values().get(k) - mean)))
                .limit(MOST_LOOKED)
                .toList();
    }
}
