package longthrow.core.measure;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.IntStream;
import longthrow.core.build.Build;
import longthrow.core.measurement.Measured;
import longthrow.core.term.Choice;
import longthrow.core.term.InstrumentKind;
import longthrow.core.term.Term;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Simulated truth: how often the 95 % interval of each figure holds the true figure of the engine, over {@value #ENGINES} invented engines read through
 * their instruments. Wanted: 94 to 96 in 100. A count over {@value #ENGINES} scatters by 0.31 (one standard deviation), so of the some 1000 counts made
 * here a method that covers exactly 95 would put one or two outside 94 to 96 by chance; {@link #SLACK}, one and a half of them, is allowed for that and for what
 * docs/decisions/0006-intervals.md says of the method. Figures that miss even so are named in {@link #KNOWN}, with the reason, and must miss no further.
 */
class CoverageTest {
    private static final int ENGINES = 5000;
    private static final long SEED = 20_261_125L;
    private static final double SLACK = 0.5;

    /** Wider bounds for single figures, with the reason. */
    private record Bounds(double least, double most) {}

    private static final Map<Term, Bounds> KNOWN = new EnumMap<>(Map.of(
            // feeler leaves of 0.02 mm and a scatter of half that: three readings fall on two or three leaves only
            Term.TOP_RING_GAP,
            new Bounds(92.8, 96.5),
            Term.ROD_SIDE_CLEARANCE,
            new Bounds(93.5, 97.7),
            Term.SIDE_CLEARANCE_BY_WIDTH,
            new Bounds(93.5, 97.7),
            // the larger of two differences, each of two scatters of two degrees of freedom
            Term.BORE_TAPER,
            new Bounds(93.5, 97.1)));

    private static final Map<String, Map<Term, Count>> TABLE = new LinkedHashMap<>();

    private static final Term[] MAP = {
        Term.BORE_TOP_THRUST,
        Term.BORE_MIDDLE_THRUST,
        Term.BORE_BOTTOM_THRUST,
        Term.BORE_TOP_AXIS,
        Term.BORE_MIDDLE_AXIS,
        Term.BORE_BOTTOM_AXIS
    };
    private static final Term[] DECKS = {
        Term.DECK_CLEARANCE_THRUST,
        Term.DECK_CLEARANCE_ANTITHRUST,
        Term.DECK_CLEARANCE_FLYWHEEL_END,
        Term.DECK_CLEARANCE_OUTPUT_END
    };
    private static final Term[] CYLINDER = {
        Term.SLEEVE_OUTSIDE_TOP,
        Term.SLEEVE_OUTSIDE_BOTTOM,
        Term.STROKE,
        Term.PIN_DIAMETER,
        Term.PISTON_PIN_BORE,
        Term.PISTON_DIAMETER,
        Term.GASKET_THICKNESS,
        Term.GASKET_BORE,
        Term.CROWN_VOLUME,
        Term.TOP_LAND_HEIGHT,
        Term.TOP_LAND_DIAMETER,
        Term.SKIRT_BELOW_PIN,
        Term.COUNTERWEIGHT_RADIUS,
        Term.BIG_END_BORE,
        Term.SMALL_END_BORE,
        Term.BIG_END_WIDTH,
        Term.CRANKPIN_WIDTH,
        Term.CRANKPIN_LARGEST,
        Term.CRANKPIN_SMALLEST,
        Term.MAIN_JOURNAL,
        Term.MAIN_BORE,
        Term.CHAMBER_AREA
    };
    private static final Term[] REST = {
        Term.INTAKE_OPENS,
        Term.INTAKE_CLOSES,
        Term.EXHAUST_OPENS,
        Term.EXHAUST_CLOSES,
        Term.INTAKE_LIFT,
        Term.SPRING_INSTALLED_HEIGHT,
        Term.SPRING_SOLID_HEIGHT,
        Term.SPRING_SEAT_LOAD,
        Term.SPRING_OPEN_LOAD,
        Term.KEY_OFFSET,
        Term.TAPER_DIAMETER,
        Term.BASE_TIMING,
        Term.PISTON_MASS,
        Term.PIN_MASS,
        Term.RING_MASS,
        Term.ROD_SMALL_END_MASS,
        Term.ROD_BIG_END_MASS,
        Term.FLYWHEEL_DIAMETER,
        Term.WANTED_SPEED,
        Term.VALVE_TO_HEAD,
        Term.FLYWHEEL_MASS,
        Term.FLYWHEEL_INERTIA,
        Term.TOP_RING_GAP,
        Term.CRANK_RUN_OUT,
        Term.CRANK_END_PLAY,
        Term.LEAK_DOWN,
        Term.CRANKING_PRESSURE,
        Term.VENTURI
    };
    private static final Term[] STACK = {
        Term.DECK_HEIGHT, Term.ROD_INSIDE_EDGES, Term.PIN_TOP_TO_CROWN, Term.CHAMBER_VOLUME
    };

    /** Nothing read that anything else checks. */
    private static BenchDesign plain(BenchDesign design) {
        return design.read(MAP).read(CYLINDER).read(REST).read(STACK);
    }

    /** Most of the stack and of the volumes known in two or three ways. */
    private static BenchDesign redundant(BenchDesign design) {
        return design.read(Term.BORE, Term.STROKE, Term.PIN_DIAMETER, Term.PISTON_PIN_BORE)
                .read(Term.GASKET_THICKNESS, Term.GASKET_BORE, Term.CROWN_VOLUME)
                .read(Term.TOP_LAND_HEIGHT, Term.TOP_LAND_DIAMETER, Term.BIG_END_BORE, Term.SMALL_END_BORE)
                .read(Term.CRANKPIN_LARGEST, Term.CRANKPIN_SMALLEST, Term.CRANKPIN_WIDTH, Term.BIG_END_WIDTH)
                .read(STACK)
                .read(DECKS)
                .read(Term.DECK_CLEARANCE, Term.ROD_LENGTH, Term.THROW, Term.COMPRESSION_HEIGHT)
                .read(Term.PIN_BOTTOM_TO_CROWN, Term.VOLUME_IN_ASSEMBLY)
                .read(Term.SQUISH_FLYWHEEL_END, Term.SQUISH_OUTPUT_END, Term.BIG_END_STRIP, Term.ROD_SIDE_CLEARANCE)
                .read(Term.ROD_MASS, Term.ROD_SMALL_END_MASS, Term.ROD_BIG_END_MASS)
                .sheet(Term.STROKE, 0.05e-3)
                .sheet(Term.ROD_LENGTH, 0.05e-3);
    }

    static List<BenchDesign> designs() {
        List<BenchDesign> designs = new ArrayList<>();
        for (int n : new int[] {1, 2, 3}) {
            designs.add(plain(new BenchDesign("n = " + n).times(n)));
        }
        for (int n : new int[] {5, 10}) {
            designs.add(new BenchDesign("n = " + n)
                    .times(n)
                    .read(MAP)
                    .read(CYLINDER)
                    .read(STACK));
        }
        designs.add(plain(new BenchDesign("n = 1 to 5").timesUpTo(5)));
        designs.add(new BenchDesign("direct, n = 2")
                .times(2)
                .read(Term.BORE, Term.ROD_LENGTH, Term.COMPRESSION_HEIGHT, Term.VOLUME_IN_ASSEMBLY)
                .read(DECKS)
                .read(CYLINDER));
        designs.add(new BenchDesign("shared, n = 3")
                .toolSetWith("gauge", InstrumentKind.BORE_GAUGE, InstrumentKind.MICROMETER)
                .times(3)
                .readWith("gauge", MAP)
                .readWith("gauge", Term.PISTON_PIN_BORE, Term.SMALL_END_BORE, Term.BIG_END_BORE, Term.MAIN_BORE)
                .readWith("micrometer", Term.PISTON_DIAMETER, Term.TOP_LAND_DIAMETER, Term.PIN_DIAMETER)
                .readWith("micrometer", Term.CRANKPIN_LARGEST, Term.CRANKPIN_SMALLEST, Term.MAIN_JOURNAL)
                .readWith("caliper", Term.DECK_HEIGHT, Term.STROKE, Term.ROD_INSIDE_EDGES, Term.PIN_TOP_TO_CROWN)
                .readWith("caliper", Term.GASKET_THICKNESS, Term.GASKET_BORE, Term.SKIRT_BELOW_PIN)
                .readWith("caliper", Term.SLEEVE_OUTSIDE_TOP, Term.SLEEVE_OUTSIDE_BOTTOM, Term.COUNTERWEIGHT_RADIUS)
                .readWith("caliper", Term.TOP_LAND_HEIGHT, Term.CRANKPIN_WIDTH, Term.BIG_END_WIDTH)
                .read(Term.CHAMBER_VOLUME, Term.CROWN_VOLUME));
        designs.add(redundant(new BenchDesign("redundant, n = 1").times(1)));
        designs.add(redundant(new BenchDesign("redundant, n = 3").times(3)));
        designs.add(redundant(new BenchDesign("redundant, n = 1 to 5").timesUpTo(5)));
        designs.add(new BenchDesign("sheets")
                .read(Term.BORE, Term.PISTON_DIAMETER, Term.GASKET_THICKNESS, Term.GASKET_BORE)
                .read(Term.CHAMBER_VOLUME, Term.CROWN_VOLUME)
                .sheet(Term.STROKE, 0.05e-3)
                .sheet(Term.ROD_LENGTH, 0.1e-3)
                .sheet(Term.COMPRESSION_HEIGHT, 0.04e-3)
                .sheet(Term.DECK_HEIGHT, 0.08e-3)
                .sheet(Term.PIN_DIAMETER, 0.006e-3)
                .sheet(Term.SMALL_END_BORE, 0.01e-3)
                .sheet(Term.WANTED_SPEED, 10)
                .sheet(Term.FLYWHEEL_DIAMETER, 0.2e-3));
        designs.add(new BenchDesign("warm, n = 1 to 3")
                .choose(Choice.CYLINDER_METAL, "aluminium")
                .choose(Choice.PISTON_ALLOY, "cast")
                .choose(Choice.ROD_METAL, "cast_aluminium")
                .choose(Choice.CRANKSHAFT_METAL, "steel")
                .timesUpTo(3)
                .read(Term.GASKET_THICKNESS, Term.GASKET_BORE, Term.CHAMBER_VOLUME, Term.CROWN_VOLUME)
                .warmerBy(25)
                .read(MAP)
                .read(Term.STROKE, Term.DECK_HEIGHT, Term.ROD_INSIDE_EDGES, Term.BIG_END_BORE, Term.SMALL_END_BORE)
                .read(Term.PIN_TOP_TO_CROWN, Term.PIN_DIAMETER, Term.PISTON_DIAMETER, Term.MAIN_JOURNAL)
                .read(Term.CRANKPIN_LARGEST, Term.CRANKPIN_SMALLEST, Term.SKIRT_BELOW_PIN)
                .read(Term.COUNTERWEIGHT_RADIUS, Term.SLEEVE_OUTSIDE_TOP, Term.SLEEVE_OUTSIDE_BOTTOM));
        return designs;
    }

    /** How often the interval held the truth. */
    private static final class Count {
        private int held;
        private int total;

        synchronized void add(Measured figure, double truth) {
            total++;
            held += figure.low() <= truth && truth <= figure.high() ? 1 : 0;
        }

        void add(Count other) {
            total += other.total;
            held += other.held;
        }

        double percent() {
            return 100.0 * held / total;
        }
    }

    private static Map<Term, Count> run(BenchDesign design) {
        Map<Term, Count> counts = new EnumMap<>(Term.class);
        design.formulas().keySet().forEach(term -> counts.put(term, new Count()));
        IntStream.range(0, ENGINES).parallel().forEach(k -> {
            SimulatedEngine engine = new SimulatedEngine(SEED + k);
            Build build = design.readings(engine);
            Figures figures = Figures.of(build);
            counts.forEach((term, count) ->
                    figures.figure(term).ifPresent(figure -> count.add(figure, design.truth(engine, term))));
        });
        counts.values().removeIf(count -> count.total == 0);
        return counts;
    }

    @ParameterizedTest
    @MethodSource("designs")
    void intervalsHoldTheTruthNineteenTimesInTwenty(BenchDesign design) {
        Map<Term, Count> counts = run(design);
        TABLE.put(design.name(), counts);
        List<String> misses = new ArrayList<>();
        double sum = 0;
        int inside = 0;
        for (Map.Entry<Term, Count> entry : counts.entrySet()) {
            double percent = entry.getValue().percent();
            Bounds bounds = Optional.ofNullable(KNOWN.get(entry.getKey())).orElse(new Bounds(94 - SLACK, 96 + SLACK));
            assertThat(entry.getValue().total).as(entry.getKey().path()).isEqualTo(ENGINES);
            if (percent < bounds.least() || percent > bounds.most()) {
                misses.add(String.format(Locale.ROOT, "%s %.2f", entry.getKey().path(), percent));
            }
            sum += percent;
            inside += percent >= 94 && percent <= 96 ? 1 : 0;
        }
        assertThat(misses).as("%s: outside the bounds", design.name()).isEmpty();
        assertThat(sum / counts.size()).as("mean over all figures").isBetween(94.7, 95.3);
        assertThat(inside / (double) counts.size())
                .as("share of the figures within 94 to 96")
                .isGreaterThanOrEqualTo(0.9);
    }

    /** Each figure over all the ways of reading in which it is known. */
    private static Map<Term, Count> overAll() {
        Map<Term, Count> over = new EnumMap<>(Term.class);
        TABLE.values()
                .forEach(counts -> counts.forEach((term, count) ->
                        over.computeIfAbsent(term, t -> new Count()).add(count)));
        return over;
    }

    /** The table that docs/coverage.md keeps; over all ways of reading every figure is held 94 to 96 times in 100, without exception. */
    @AfterAll
    static void writesTheTable() throws IOException {
        StringBuilder text = new StringBuilder("| figure | all |");
        TABLE.keySet().forEach(name -> text.append(' ').append(name).append(" |"));
        text.append("\n|---|").append("---|".repeat(TABLE.size() + 1)).append('\n');
        for (Term term : Term.values()) {
            if (TABLE.values().stream().noneMatch(counts -> counts.containsKey(term))) {
                continue;
            }
            Count all = Objects.requireNonNull(overAll().get(term));
            text.append("| ").append(term.path()).append(String.format(Locale.ROOT, " | %.1f |", all.percent()));
            for (Map<Term, Count> counts : TABLE.values()) {
                Count count = counts.get(term);
                text.append(count == null ? " |" : String.format(Locale.ROOT, " %.1f |", count.percent()));
            }
            text.append('\n');
        }
        for (Map.Entry<Term, Count> each : overAll().entrySet()) {
            assertThat(each.getValue().percent())
                    .as("%s over all ways of reading", each.getKey().path())
                    .isBetween(94.0, 96.0);
        }
        Files.createDirectories(Path.of("target"));
        Files.writeString(Path.of("target", "coverage.md"), text);
    }
}
