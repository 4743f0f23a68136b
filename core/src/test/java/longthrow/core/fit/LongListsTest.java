package longthrow.core.fit;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalLong;
import java.util.SplittableRandom;
import longthrow.core.answer.Answer;
import longthrow.core.build.FitWish;
import longthrow.core.catalogue.PartKind;
import longthrow.core.term.Choice;
import longthrow.core.term.Term;
import org.junit.jupiter.api.Test;

/** Five lists of a hundred invented parts each, ten thousand million combinations, most of which go together: answered in bounded time, and what was left off is said. */
class LongListsTest {
    private static final int EACH = 100;
    /** Far above what it takes, for a machine that is busy with other things [s]. */
    private static final double SLOWEST = 90;

    private static String size(SplittableRandom random, double middle, double spread, double tolerance) {
        return String.format(
                Locale.ROOT, "%.2f mm ± %.3f mm", middle + spread * (2 * random.nextDouble() - 1), tolerance);
    }

    @Test
    void longListsAreAnsweredAndWhatIsLeftOffIsSaid() {
        SplittableRandom random = new SplittableRandom(5);
        Stock stock = Stock.longerThrow().is(Choice.CYLINDER_METAL, "iron");
        for (int n = 0; n < EACH; n++) {
            stock.part(
                    PartKind.CRANKSHAFT,
                    "C" + n,
                    20 + n,
                    Map.of(
                            Term.STROKE, size(random, 56.3, 0.2, 0.01),
                            Term.CRANKPIN_DIAMETER, "26.98 mm ± 0.001 mm",
                            Term.CRANKPIN_WIDTH, "24.20 mm ± 0.001 mm",
                            Term.COUNTERWEIGHT_RADIUS, "38.0 mm ± 0.01 mm"),
                    Map.of());
            Map<Term, String> piston = new HashMap<>(Stock.piston());
            piston.put(Term.COMPRESSION_HEIGHT, size(random, 24.9, 0.2, 0.01));
            stock.part(PartKind.PISTON, "P" + n, 30 + n, piston, Map.of(Choice.PISTON_ALLOY, "cast"));
            stock.part(
                    PartKind.CONNECTING_ROD,
                    "L" + n,
                    40 + n,
                    Map.of(
                            Term.ROD_LENGTH, size(random, 86.4, 0.2, 0.01),
                            Term.BIG_END_BORE, "27.03 mm ± 0.001 mm",
                            Term.SMALL_END_BORE, "17.025 mm ± 0.001 mm",
                            Term.BIG_END_WIDTH, "23.6 mm ± 0.001 mm"),
                    Map.of(Choice.ROD_METAL, "billet_aluminium"));
            stock.part(
                    PartKind.GASKET,
                    "T" + n,
                    5 + n,
                    Map.of(Term.GASKET_THICKNESS, size(random, 1.4, 0.2, 0.01), Term.GASKET_BORE, "68.5 mm ± 0.01 mm"),
                    Map.of());
            stock.part(
                    PartKind.HEAD,
                    "H" + n,
                    50 + n,
                    Map.of(
                            Term.CHAMBER_VOLUME,
                            String.format(Locale.ROOT, "%.2f cc ± 0.1 cc", 16 + random.nextDouble())),
                    Map.of());
        }
        stock.wish(new FitWish(
                List.of(PartKind.CRANKSHAFT, PartKind.PISTON, PartKind.CONNECTING_ROD, PartKind.GASKET, PartKind.HEAD),
                List.of(),
                OptionalLong.empty(),
                "EUR",
                true,
                List.of(),
                null));
        long start = System.nanoTime();
        Answer answer = Fit.of(stock.build(), stock.catalogue());
        double seconds = (System.nanoTime() - start) / 1e9;
        System.out.printf(Locale.ROOT, "five lists of %d parts: %.1f s%n", EACH, seconds);
        assertThat(answer.candidates()).isNotEmpty();
        assertThat(answer.findings()).anyMatch(f -> f.message().contains("left off after"));
        assertThat(answer.findings()).anyMatch(f -> f.message().contains("too many combinations to count"));
        assertThat(seconds).isLessThan(SLOWEST);
    }
}
