package longthrow.core.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.EnumSet;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** What holds for every quantity, tried on seeded ones; a failure prints its case. */
class QuantityPropertiesTest {
    private static final long SEED = 20261125;

    private static final List<Dimension> ALL = List.copyOf(EnumSet.allOf(Dimension.class));
    private static final List<Dimension> MEASURED = List.copyOf(EnumSet.complementOf(EnumSet.of(Dimension.COUNT)));

    /** Pieces of quantities, whole ones and broken, so that most strings get past the first check. */
    private static final List<String> PIECES = List.of(
            "1",
            "2",
            "0",
            "66",
            ".",
            ",",
            "/",
            "-",
            "+",
            "±",
            "+/-",
            " ",
            "  ",
            "\u00a0",
            "\u2009",
            "e",
            "E",
            "e9",
            "½",
            "''",
            "\"",
            "'",
            "″",
            "’",
            "(",
            ")",
            "mm",
            "in",
            "ft",
            "lb",
            "oz",
            "cc",
            "°",
            "°C",
            "F",
            "N·m",
            "kg",
            "m2",
            "²",
            "%",
            ":1",
            "per",
            "*",
            "^",
            "µm",
            "deg",
            "K",
            "1/K",
            "000",
            "1,234",
            "5/8",
            "0x",
            "NaN",
            "inf",
            "∞",
            "－",
            "１",
            "\t",
            "\n",
            "\0",
            "\ud83d",
            "\udd27",
            "🔧",
            "٣",
            "\u202e",
            "x",
            "to",
            "..",
            "~",
            "<",
            "g/kWh",
            "psig",
            "nm",
            "999999999999999999999");

    private static final List<String> GOOD = List.of(
            "66.01 mm",
            "2 5/8 in",
            "2.165\"",
            "30 thou",
            "16,2 cc",
            "85 lb-ft",
            "-5 °F",
            "1,234.5 rpm",
            "5' 2 1/2\"",
            "0.003 kg m2",
            "55 mm ± 0.02 mm",
            "(55 ± 0.02) mm",
            "55 mm ± 1 %",
            "3 lb 4 oz",
            "9.66:1",
            "23e-6 1/K",
            "12 lb/in");

    @Test
    void noStringThrowsAndEachIsAnsweredAtOnce() {
        SplittableRandom random = new SplittableRandom(SEED);
        long slowest = 0;
        String slowestText = "";
        int understood = 0;
        for (int i = 0; i < 200_000; i++) {
            String text = i % 4 == 0 ? anyCharacters(random) : i % 4 == 1 ? pieces(random) : mutated(random);
            Dimension expected = ALL.get(random.nextInt(ALL.size()));
            long start = System.nanoTime();
            Parsed parsed = i % 3 == 0 ? QuantityParser.parse(text) : QuantityParser.parse(text, expected);
            long took = System.nanoTime() - start;
            if (took > slowest) {
                slowest = took;
                slowestText = text;
            }
            if (parsed instanceof Parsed.Understood answer) {
                understood++;
                Stated stated = answer.stated();
                assertThat(Double.isFinite(stated.value().si())).as(text).isTrue();
                assertThat(stated.written()).isEqualTo(text);
                assertThat(stated.value().dimension() != Dimension.LENGTH
                                || stated.value().exactLength().isPresent())
                        .as(text)
                        .isTrue();
                assertThat(new FigurePrinter(UnitSystem.INCH_FIRST)
                                .print(stated)
                                .line())
                        .as(text)
                        .isNotEmpty();
            } else {
                assertThat(((Parsed.Refused) parsed).message()).as(text).hasSizeLessThan(600);
            }
        }
        assertThat(understood).isGreaterThan(10_000); // the strings are not all nonsense
        assertThat(slowest)
                .as(slowestText)
                .isLessThan(500_000_000L); // [ns]; microseconds, but for a pause of the machine
    }

    private static String pieces(SplittableRandom random) {
        StringBuilder text = new StringBuilder();
        for (int n = random.nextInt(1, 9); n > 0; n--) {
            text.append(PIECES.get(random.nextInt(PIECES.size())));
        }
        return text.toString();
    }

    /** A good quantity with up to three pieces put in, characters taken out, or neither. */
    private static String mutated(SplittableRandom random) {
        StringBuilder text = new StringBuilder(GOOD.get(random.nextInt(GOOD.size())));
        for (int n = random.nextInt(4); n > 0 && text.length() > 0; n--) {
            int at = random.nextInt(text.length());
            if (random.nextBoolean()) {
                text.deleteCharAt(at);
            } else {
                text.insert(at, PIECES.get(random.nextInt(PIECES.size())));
            }
        }
        return text.toString();
    }

    private static String anyCharacters(SplittableRandom random) {
        StringBuilder text = new StringBuilder();
        for (int n = random.nextInt(260); n > 0; n--) {
            text.append((char) (random.nextBoolean() ? random.nextInt(0x80) : random.nextInt(0x10000)));
        }
        return text.toString();
    }

    @Test
    void theSameLengthIsEqualInAnyUnit() {
        SplittableRandom random = new SplittableRandom(SEED);
        for (int i = 0; i < 2_000; i++) {
            long thou = random.nextLong(1, 200_000);
            BigDecimal micrometres = new BigDecimal(thou).multiply(new BigDecimal("25.4"));
            List<ExactLength> lengths = Stream.of(
                            thou + " thou",
                            BigDecimal.valueOf(thou, 3).toPlainString() + " in",
                            thou / 12_000 + " ft "
                                    + BigDecimal.valueOf(thou % 12_000, 3).toPlainString() + " in",
                            thou / 1000 + " " + (thou % 1000) + "/1000\"",
                            micrometres.toPlainString() + " µm",
                            micrometres.movePointLeft(3).toPlainString() + " mm",
                            micrometres.movePointLeft(3).toPlainString().replace('.', ',') + "0 mm",
                            micrometres.movePointLeft(6).toPlainString() + " m",
                            micrometres.toPlainString() + "e-3 mm")
                    .map(QuantityPropertiesTest::lengthOf)
                    .distinct()
                    .toList();
            assertThat(lengths).as(thou + " thou").containsExactly(new ExactLength(thou * 25_400_000));
        }
    }

    private static ExactLength lengthOf(String text) {
        Parsed parsed = QuantityParser.parse(text, Dimension.LENGTH);
        assertThat(parsed).as(text).isInstanceOf(Parsed.Understood.class);
        return ((Parsed.Understood) parsed).stated().value().exactLength().orElseThrow();
    }

    /** A printed figure, read back, is off by the half place it was rounded to, and its doubt by a tenth of itself. */
    @Test
    void whatIsPrintedReadsBackInBothUnits() {
        SplittableRandom random = new SplittableRandom(SEED);
        for (int i = 0; i < 20_000; i++) {
            Dimension dimension = MEASURED.get(random.nextInt(MEASURED.size()));
            double si = Math.pow(10, random.nextDouble(-4, 5)) * (random.nextBoolean() ? 1 : -1);
            if (dimension == Dimension.TEMPERATURE) {
                si = Math.abs(si);
            }
            double doubt = Math.abs(si) * Math.pow(10, random.nextDouble(-5, 0));
            for (UnitSystem order : UnitSystem.values()) {
                Figure figure =
                        new FigurePrinter(order).print(dimension, si, doubt).first();
                Parsed parsed = QuantityParser.parse(figure.text(), dimension);
                if (parsed instanceof Parsed.Refused refused
                        && (refused.why().contains("picometres")
                                || refused.why().contains("absolute zero"))) {
                    continue; // computed finer than a stated length may be, or rounded past the end of the scale
                }
                assertThat(parsed).as(figure.text()).isInstanceOf(Parsed.Understood.class);
                Stated stated = ((Parsed.Understood) parsed).stated();
                double read = stated.expandedDoubt().orElseThrow().si();
                assertThat(read).as(figure.text()).isCloseTo(doubt, within(0.1 * doubt));
                assertThat(stated.value().si()).as(figure.text()).isCloseTo(si, within(0.51 * doubt));
            }
        }
    }

    @Test
    void aStatedQuantityReadsBackFromWhatWasWritten() {
        SplittableRandom random = new SplittableRandom(SEED);
        for (int i = 0; i < 5_000; i++) {
            Unit unit = Units.all().get(random.nextInt(Units.all().size()));
            BigDecimal number = BigDecimal.valueOf(random.nextLong(1, 5_000), random.nextInt(0, 4));
            if (unit.dimension() == Dimension.COUNT) {
                number = number.setScale(0, RoundingMode.CEILING);
            }
            Quantity quantity = Quantity.of(number, unit);
            Parsed parsed = QuantityParser.parse(quantity.written(), unit.dimension());
            assertThat(parsed).as(quantity.written()).isInstanceOf(Parsed.Understood.class);
            assertThat(((Parsed.Understood) parsed).stated().value()).isEqualTo(quantity);
            assertThat(unit.fromSi(quantity.si()))
                    .isCloseTo(
                            number.doubleValue(),
                            within(1e-13 * (number.doubleValue() + 500))); // 500: offsets of temperatures
        }
    }
}
