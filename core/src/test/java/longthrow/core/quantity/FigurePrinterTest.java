package longthrow.core.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Locale;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Expected lines are rounded by hand by the rule of {@link Digits}, after JCGM 100:2008, 7.2.6. */
class FigurePrinterTest {
    private static final FigurePrinter METRIC = new FigurePrinter(UnitSystem.METRIC_FIRST);
    private static final FigurePrinter INCH = new FigurePrinter(UnitSystem.INCH_FIRST);

    private final Locale before = Locale.getDefault();

    @BeforeEach
    void useALocaleWithDecimalComma() {
        Locale.setDefault(Locale.GERMANY);
    }

    @AfterEach
    void restoreLocale() {
        Locale.setDefault(before);
    }

    @Test
    void ownersChoiceComesFirst() {
        assertThat(METRIC.print(Dimension.LENGTH, 1.37e-3, 0.07e-3).line())
                .isEqualTo("1.37 ± 0.07 mm (0.0539 ± 0.0028 in)");
        assertThat(INCH.print(Dimension.LENGTH, 1.37e-3, 0.07e-3).line())
                .isEqualTo("0.0539 ± 0.0028 in (1.37 ± 0.07 mm)");
    }

    @Test
    void aCountIsWholeWhereItsDoubtLeavesOneNumber() {
        assertThat(METRIC.print(Dimension.COUNT, 3, 2.2e-9).line()).isEqualTo("3");
        assertThat(INCH.print(Dimension.COUNT, 22.9999999999, 1e-9).line()).isEqualTo("23");
        assertThat(METRIC.print(Dimension.COUNT, 3, 0.6).line()).isEqualTo("3.0 ± 0.6");
        assertThat(METRIC.print(Dimension.COUNT, 3.2, 0.1).line()).isEqualTo("3.20 ± 0.10");
        assertThat(METRIC.print(Dimension.RATIO, 3, 2.2e-9).line()).isEqualTo("3.0000000000 ± 0.0000000022");
    }

    @ParameterizedTest(name = "{0} ± {1}: {2} ± {3}")
    @CsvSource({
        "9.6612, 0.1312, 9.66, 0.13",
        "8.2934, 0.0911, 8.29, 0.09",
        "0.7712, 0.3644, 0.77, 0.36",
        "2.0449, 0.4499, 2.04, 0.45",
        "1850, 25, 1850, 25",
        "1853, 130, 1850, 130",
        "12345, 6789, 12000, 7000",
        "5, 0.096, 5.00, 0.10",
        "5, 0.0996, 5.00, 0.10",
        "5, 0.0496, 5.00, 0.05",
        "2.5, 5.4, 2, 5",
        "3.5, 5.4, 4, 5",
        "0.3, 500, 0, 500",
        "-0.3, 500, 0, 500",
        "-0.0004, 0.2, 0.00, 0.20",
        "-1.5, 0.02, -1.500, 0.020",
        "0, 0.02, 0.000, 0.020",
        "123.456, 1e-30, 123.456000000000, 0.000000000001",
        "2e20, 3e18, 2.000e20, 0.030e20",
        "2e-9, 3e-11, 2.000e-9, 0.030e-9",
    })
    void digitsStopWhereTheDoubtDoes(double value, double doubt, String shown, String shownDoubt) {
        Figure figure = METRIC.print(Dimension.RATIO, value, doubt).first();
        assertThat(figure.value()).isEqualTo(shown);
        assertThat(figure.doubt()).isEqualTo(shownDoubt);
    }

    @ParameterizedTest(name = "{0}: {1}")
    @CsvSource(
            delimiter = '|',
            value = {
                "16.2 cc ± 0.2 cc   | 16.2 ± 0.2 cc (0.989 ± 0.012 cu in)",
                "85 ± 3 lb-ft       | 115.2 ± 4.1 N·m (85 ± 3 lb-ft)",
                "12 ± 0.6 N·m       | 12.0 ± 0.6 N·m (106 ± 5 lb-in)",
                "101.3 ± 0.1 kPa    | 101.3 ± 0.1 kPa (14.692 ± 0.015 psi)",
                "60 ± 1 bar         | 60 ± 1 bar (870 ± 15 psi)",
                "320 ± 20 MPa       | 320 ± 20 MPa (46400 ± 2900 psi)",
                "20 ± 0.5 °C        | 20.0 ± 0.5 °C (68.0 ± 0.9 °F)",
                "350 ± 5 g          | 350 ± 5 g (12.35 ± 0.18 oz)",
                "3.2 ± 0.1 kg       | 3.2 ± 0.1 kg (7.05 ± 0.22 lb)",
                "15.3 ± 0.2 m/s     | 15.3 ± 0.2 m/s (3012 ± 39 ft/min)",
                "402 ± 8 N          | 402 ± 8 N (90.4 ± 1.8 lbf)",
                "32 ± 1 N/mm        | 32 ± 1 N/mm (183 ± 6 lbf/in)",
                "1850 ± 20 rpm      | 1850 ± 20 rpm",
                "36 ± 1 °           | 36 ± 1 °",
                "9.6 ± 0.2 kW       | 9.6 ± 0.2 kW (12.87 ± 0.27 hp)",
                "12 ± 2 kg·m²       | 12 ± 2 kg·m² (285 ± 47 lb·ft²)",
                "8 % ± 1 %          | 8 ± 1 %",
                "55 ± 0.02 mm       | 55.00 ± 0.02 mm (2.1654 ± 0.0008 in)",
                "9.66:1             | 9.66:1",
            })
    void everyQuantityIsPrintedForBothBenches(String stated, String line) {
        assertThat(METRIC.print(stated(stated)).line()).isEqualTo(line);
    }

    @ParameterizedTest(name = "{0}: {1}")
    @CsvSource(
            delimiter = '|',
            value = {
                "55 mm      | 55 mm (2.165 in)", // DCU-09: the trade's 2.165
                "0.018 mm   | 0.018 mm (0.00071 in)",
                "0.05 mm    | 0.05 mm (0.0020 in)",
                "0.08 mm    | 0.08 mm (0.0031 in)",
                "15.625 mm  | 15.625 mm (0.61516 in)",
                "24.8 cc    | 24.8 cc (1.513 cu in)",
                "0.0007 in  | 0.01778 mm (0.0007 in)",
                "66.010 mm  | 66.010 mm (2.59882 in)",
                "66.01 mm   | 66.01 mm (2.5988 in)",
                "2 5/8 in   | 66.675 mm (2 5/8 in)",
                "30 thou    | 0.762 mm (0.03 in)",
                "-5 °F      | -20.56 °C (-5 °F)",
                "-0.00 mm   | 0.00 mm (0 in)",
                ".5 in      | 12.7 mm (0.5 in)",
                "16,2 cc    | 16.2 cc (0.9886 cu in)",
                "5 ft 2 in  | 1574.8 mm (62 in)",
                "12 %       | 12 %",
                "90 °       | 90 °",
                "2 rad      | 114.6 °",
            })
    void withoutADoubtItIsPrintedAsWritten(String stated, String line) {
        assertThat(METRIC.print(stated(stated)).line()).isEqualTo(line);
    }

    @Test
    void exactLengthsAreExactInMillimetres() {
        assertThat(METRIC.print(ExactLength.ofInchFraction(0, 1, 64)).line()).isEqualTo("0.396875 mm (0.015625 in)");
        assertThat(METRIC.print(ExactLength.ofMillimetres("0.40")).line()).isEqualTo("0.4 mm (0.0157 in)");
    }

    @Test
    void anUnknownDoubtIsSaid() {
        PrintedFigures printed = METRIC.printDoubtUnknown(Dimension.LENGTH, 1.37e-3);
        assertThat(printed.line()).isEqualTo("1.370 mm (0.05394 in), doubt unknown");
        assertThat(printed.first()).isEqualTo(new Figure("1.370", "unknown", "mm"));
        assertThat(METRIC.printDoubtUnknown(Dimension.LENGTH, 0).line()).isEqualTo("0 mm (0 in), doubt unknown");
        assertThat(METRIC.printDoubtUnknown(Dimension.ANGLE, Math.PI).line()).isEqualTo("180.0 °, doubt unknown");
    }

    @Test
    void aZeroDoubtPrintsNoDoubt() {
        assertThat(METRIC.print(Dimension.LENGTH, 0.0254, 0).line()).isEqualTo("25.4 mm (1 in)");
        assertThat(METRIC.print(Dimension.LENGTH, 0, 0).line()).isEqualTo("0 mm (0 in)");
        assertThat(METRIC.print(Dimension.LENGTH, -0.0, 0).line()).isEqualTo("0 mm (0 in)");
    }

    /** Converted with 25.4 mm and 16.387064 cc, NIST SP 811 (2008), B.8, and cut like what was stated. */
    @Test
    void aComputedValueWithoutDoubtIsConvertedAsIfItHadBeenStated() {
        assertThat(METRIC.print(Dimension.LENGTH, 15.625e-3, 0).line()).isEqualTo("15.625 mm (0.61516 in)");
        assertThat(INCH.print(Dimension.LENGTH, 15.625e-3, 0).line()).isEqualTo("0.61516 in (15.625 mm)");
        assertThat(METRIC.print(Dimension.VOLUME, 24.8e-6, 0).line()).isEqualTo("24.8 cc (1.513 cu in)");
        assertThat(INCH.print(Dimension.LENGTH, 0.0007 * 0.0254, 0).line()).isEqualTo("0.0007 in (0.01778 mm)");
    }

    @Test
    void theCallerMayChooseTheUnits() {
        BenchUnits road = new BenchUnits(Units.KILOMETRE_PER_HOUR, Units.MILE_PER_HOUR);
        assertThat(METRIC.print(road, 25, 0.5).line()).isEqualTo("90.0 ± 1.8 km/h (55.9 ± 1.1 mph)");
        assertThatThrownBy(() -> new BenchUnits(Units.GRAM, Units.INCH)).hasMessageContaining("one dimension");
    }

    @Test
    void refusesToPrintWhatIsNoNumber() {
        assertThatThrownBy(() -> METRIC.print(Dimension.LENGTH, Double.NaN, 1)).hasMessageContaining("value is NaN");
        assertThatThrownBy(() -> METRIC.print(Dimension.LENGTH, 1, -1)).hasMessageContaining("zero or more");
        assertThatThrownBy(() -> METRIC.printDoubtUnknown(Dimension.LENGTH, Double.POSITIVE_INFINITY))
                .hasMessageContaining("finite");
    }

    @Test
    void extremesAreShort() {
        assertThat(METRIC.print(Dimension.LENGTH, Double.MAX_VALUE, Double.MIN_VALUE)
                        .line())
                .hasSizeLessThan(120);
        assertThat(METRIC.print(Dimension.LENGTH, Double.MIN_VALUE, Double.MAX_VALUE)
                        .line())
                .hasSizeLessThan(120);
        assertThat(METRIC.print(Dimension.LENGTH, 1, Double.MIN_VALUE).line()).hasSizeLessThan(120);
    }

    private static Stated stated(String text) {
        Parsed parsed = text.endsWith(":1") || text.endsWith("%")
                ? QuantityParser.parse(text, Dimension.RATIO)
                : QuantityParser.parse(text);
        assertThat(parsed).isInstanceOf(Parsed.Understood.class);
        return ((Parsed.Understood) parsed).stated();
    }
}
