package longthrow.core.quantity;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Objects;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Expected values are hand conversions by the definitions of the inch, the pound and the degree Fahrenheit. */
class QuantityParserTest {
    @ParameterizedTest(name = "{0} is {2} {3}")
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '~',
            value = {
                "66.01 mm         | LENGTH           | 66.01      | mm",
                "2 5/8 in         | LENGTH           | 66.675     | mm",
                "2-5/8 in         | LENGTH           | 66.675     | mm",
                "5/8\"            | LENGTH           | 15.875     | mm",
                "2\u00a05/8 in    | LENGTH           | 66.675     | mm",
                "2½ in            | LENGTH           | 63.5       | mm",
                "⅝ in             | LENGTH           | 15.875     | mm",
                "-2 5/8 in        | LENGTH           | -66.675    | mm",
                "2.165\"          | LENGTH           | 54.991     | mm",
                "2.165″           | LENGTH           | 54.991     | mm",
                "2.165”           | LENGTH           | 54.991     | mm",
                "2.165''          | LENGTH           | 54.991     | mm",
                "2.165′′          | LENGTH           | 54.991     | mm",
                "2.165 INCH       | LENGTH           | 54.991     | mm",
                "2.165 in.        | LENGTH           | 54.991     | mm",
                ".5 in            | LENGTH           | 12.7       | mm",
                "30 thou          | LENGTH           | 0.762      | mm",
                "5 ft 2 in        | LENGTH           | 1574.8     | mm",
                "2' 3\"           | LENGTH           | 685.8      | mm",
                "2’-3 1/2”        | LENGTH           | 698.5      | mm",
                "-2' 3\"          | LENGTH           | -685.8     | mm",
                "6.5'             | LENGTH           | 1981.2     | mm",
                "25 µm            | LENGTH           | 0.025      | mm",
                "25 μm            | LENGTH           | 0.025      | mm",
                "25 um            | LENGTH           | 0.025      | mm",
                "12 nm            | LENGTH           | 0.000012   | mm",
                "６６．０１ｍｍ   | LENGTH           | 66.01      | mm",
                "16.2 cc          | VOLUME           | 16.2       | cc",
                "16.2 cm³         | VOLUME           | 16.2       | cc",
                "16.2 CM^3        | VOLUME           | 16.2       | cc",
                "1 cu. in.        | VOLUME           | 16.387064  | cc",
                "85 lb-ft         | TORQUE           | 1020       | lb-in",
                "85 ft·lbf        | TORQUE           | 1020       | lb-in",
                "96 in-lb         | TORQUE           | 8          | lb-ft",
                "96 IN-LB         | TORQUE           | 8          | lb-ft",
                "12 Nm            | TORQUE           | 12         | N·m",
                "12 N m           | TORQUE           | 12         | N·m",
                "12 n-m           | TORQUE           | 12         | N·m",
                "1.5 kgf m        | TORQUE           | 14.709975  | N·m",
                "3.2 bar          | PRESSURE         | 320        | kPa",
                "1.5e3 Pa         | PRESSURE         | 1.5        | kPa",
                "28 in H2O        | PRESSURE         | 711.2      | mmH2O",
                "28 inH₂O         | PRESSURE         | 711.2      | mmH2O",
                "-5 °F            | TEMPERATURE      | -5         | °F",
                "−5 °F            | TEMPERATURE      | -5         | °F",
                "– 5 deg F        | TEMPERATURE      | -5         | °F",
                "20 ℃             | TEMPERATURE      | 68         | °F",
                "9 F              | TEMPERATURE_DIFFERENCE | 5    | K",
                "36 °             | ANGLE            | 36         | °",
                "36 degrees       | ANGLE            | 36         | °",
                "1850 rpm         | ROTATIONAL_SPEED | 1850       | rpm",
                "1850 1/min       | ROTATIONAL_SPEED | 1850       | rpm",
                "1850/min         | ROTATIONAL_SPEED | 1850       | rpm",
                "10\u2009000 rpm  | ROTATIONAL_SPEED | 10000      | rpm",
                "12 oz            | MASS             | 0.75       | lb",
                "3 lb 4 oz        | MASS             | 52         | oz",
                "12 lb            | MASS             | 192        | oz",
                "12 lb            | FORCE            | 12         | lbf",
                "120 lb/in        | STIFFNESS        | 120        | lbf/in",
                "120 lb per inch  | STIFFNESS        | 120        | lbf/in",
                "0.003 kg m2      | INERTIA          | 30000      | g·cm²",
                "0.003 kg·m²      | INERTIA          | 30000      | g·cm²",
                "500 g/(kW·h)     | SPECIFIC_FUEL_CONSUMPTION | 500 | g/kWh",
                "23 µm/(m·K)      | EXPANSION        | 0.000023   | 1/K",
                "23e-6 1/K        | EXPANSION        | 0.000023   | 1/K",
                "9.66             | RATIO            | 9.66       | :1",
                "9.66 : 1         | RATIO            | 9.66       | :1",
                "12 %             | RATIO            | 0.12       | in/in",
                "0.004 in/in      | RATIO            | 0.4        | %",
                "3                | COUNT            | 3          | ~~",
            })
    void readsWhatPeopleWrite(String text, Dimension dimension, String number, String unit) {
        Quantity quantity = understood(text, dimension).value();
        assertThat(quantity).isEqualTo(Quantity.of(number, Unit.of(dimension, unit)));
        assertThat(quantity.dimension()).isEqualTo(dimension);
        assertThat(quantity.written()).isEqualTo(text.strip());
    }

    @ParameterizedTest(name = "{0} is {1} ± {2} {3}")
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '~',
            value = {
                "55 mm ± 0.02 mm  | 55   | 0.02  | mm | LENGTH",
                "55 ± 0.02 mm     | 55   | 0.02  | mm | LENGTH",
                "55 mm ± 0.02     | 55   | 0.02  | mm | LENGTH",
                "(55 ± 0.02) mm   | 55   | 0.02  | mm | LENGTH",
                "55 mm +/- 0.02   | 55   | 0.02  | mm | LENGTH",
                "55mm+-20um       | 55   | 0.02  | mm | LENGTH",
                "55 mm ± 1 %      | 55   | 0.55  | mm | LENGTH",
                "-55 mm ± 1 %     | -55  | 0.55  | mm | LENGTH",
                "2 5/8 ± 1/64 in  | 2.625| 0.015625 | in | LENGTH",
                "20 ± 0.5 °C      | 20   | 0.5   | °C | TEMPERATURE",
                "20 °C ± 0.9 °F   | 20   | 0.5   | °C | TEMPERATURE",
                "9.66 ± 0.13      | 9.66 | 0.13  | :1 | RATIO",
                "16,2 ± 0,2 cc    | 16.2 | 0.2   | cc | VOLUME",
            })
    void readsADoubtInEveryUsualForm(String text, String value, String doubt, String unit, Dimension dimension) {
        Stated stated = understood(text, dimension);
        Unit itsUnit = Unit.of(dimension, unit);
        assertThat(stated.value()).isEqualTo(Quantity.of(value, itsUnit));
        assertThat(stated.expandedDoubt()).contains(Quantity.of(doubt, itsUnit.ofDifference()));
        assertThat(stated.written()).isEqualTo(text);
    }

    /** M is mega (BIPM, The SI Brochure, 9th edition, table 7): nobody means it of a bore, and it is said what was taken. */
    @Test
    void aCapitalMThatWouldBeMegaIsSaidBack() {
        assertThat(understood("66 Mm", Dimension.LENGTH).notes()).hasSize(1).allMatch(n -> n.contains("66 mm"));
        assertThat(understood("66 MM", Dimension.LENGTH).notes()).isEmpty();
        assertThat(understood("66 Mm", Dimension.LENGTH).value().si()).isEqualTo(0.066);
    }

    @Test
    void percentInBracketsIsAbsolute() {
        Stated stated = understood("(10 ± 1) %", Dimension.RATIO);
        assertThat(stated.value()).isEqualTo(Quantity.of("0.1", Units.BARE_RATIO));
        assertThat(stated.expandedDoubt()).contains(Quantity.of("0.01", Units.BARE_RATIO));
    }

    @ParameterizedTest(name = "{0}: {2}")
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '~',
            value = {
                "16,2 cc      | VOLUME           | read 16,2 cc as 16.2 cc",
                "2,5 mm       | LENGTH           | read 2,5 mm as 2.5 mm",
                "0,123 mm     | LENGTH           | read 0,123 mm as 0.123 mm",
                "1234,567 mm  | LENGTH           | read 1234,567 mm as 1234.567 mm",
                "1,234.5 rpm  | ROTATIONAL_SPEED | read 1,234.5 rpm as 1234.5 rpm",
                "1.234,5 rpm  | ROTATIONAL_SPEED | read 1.234,5 rpm as 1234.5 rpm",
                "1,234,567 Pa | PRESSURE         | read 1,234,567 Pa as 1234567 Pa",
                "2-5/8 in     | LENGTH           | read 2-5/8 in as 2 5/8 in",
                "12 lb        | FORCE            | read 12 lb as 12 lbf, a force",
                "5 mil        | LENGTH           | read 5 mil as 5 thou, a length",
                "2 kg m       | TORQUE           | read 2 kg m as 2 kgf·m, a torque",
                "5 ft 2 in    | LENGTH           | read 5 ft 2 in as 62 in",
                "55 mm ± 1 %  | LENGTH           | read ± 1 % as a share of the value, ± 0.55 mm",
            })
    void saysBackWhatWasWrittenUnusually(String text, Dimension dimension, String note) {
        assertThat(understood(text, dimension).notes()).containsExactly(note);
    }

    @ParameterizedTest
    @ValueSource(strings = {"66.01 mm", "2 5/8 in", "-5 mm", "1.5e3 mm", "2.165\"", "5/8 in", "55 ± 0.02 mm"})
    void saysNothingAboutPlainWriting(String text) {
        assertThat(understood(text, Dimension.LENGTH).notes()).isEmpty();
    }

    @ParameterizedTest(name = "{0}: {2}")
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '~',
            value = {
                "66.01         | LENGTH | '66.01' has no unit: write 66.01 mm or 66.01 in (",
                "66,01         | LENGTH | '66,01' has no unit: write 66.01 mm or 66.01 in (",
                "16.2 cc       | LENGTH | '16.2 cc' is a volume; a length is wanted here: give it in mm or in (allowed: mm, in, thou",
                "1,234 mm      | LENGTH | '1,234 mm' can be read as 1.234 or as 1234: write 1.234 mm or 1234 mm",
                "55 ± 1,234 mm | LENGTH | can be read as 1.234 or as 1234",
                "12 nm         | TORQUE | is a length; a torque is wanted here: give it in N·m",
                "12 NM         | TORQUE | newton metre, nanometre or nautical mile",
                "12 kg         | FORCE  | is a mass; a force is wanted here: give it in N, lbf or kgf",
                "12 oz         | VOLUME | is a mass; a volume is wanted here: give it in cc or cu in (allowed: cc, cu in, ml, L, US fl oz",
                "20 fl oz      | VOLUME | write US fl oz or imp fl oz",
                "1 gal         | VOLUME | write US gal or imp gal",
                "200 mpa       | PRESSURE | millipascal or megapascal",
                "40 psig       | PRESSURE | gauge",
                "5 M           | LENGTH | did you mean m?",
                "5 inchs       | LENGTH | did you mean in?",
                "5 foos        | LENGTH | has the unit 'foos', which is not known",
                "2-5 mm        | LENGTH | reads like a range",
                "2 to 5 mm     | LENGTH | reads like a range",
                "5 mm +0.02 -0 | LENGTH | one-sided limits",
                "2 5 mm        | LENGTH | two numbers side by side",
                "10 000 mm     | LENGTH | two numbers side by side",
                "2 9/8 in      | LENGTH | fraction of one or more",
                "5/0 in        | LENGTH | denominator 0",
                "1/3 in        | LENGTH | not a whole number of picometres",
                "0.0000000001 mm | LENGTH | not a whole number of picometres",
                "1e30 mm       | LENGTH | beyond 9,223 km",
                "1e308 mm      | LENGTH | exponent 308",
                "1e99999999999 mm | LENGTH | far beyond anything that is measured",
                "NaN           | LENGTH | is not a finite number",
                "NaN mm        | LENGTH | is not a finite number",
                "-Infinity mm  | LENGTH | is not a finite number",
                "∞ mm          | LENGTH | is not a finite number",
                "0x1F mm       | LENGTH | hexadecimal",
                "~~            | LENGTH | is empty",
                "mm            | LENGTH | does not start with a number",
                "<5 mm         | LENGTH | one value is wanted here, not a limit",
                "1,234.. mm    | LENGTH | do not make one number",
                "12,34.5 mm    | LENGTH | do not make one number",
                "66.01.2 mm    | LENGTH | do not make one number",
                "5, mm         | LENGTH | do not make one number",
                "1,2,3 mm      | LENGTH | do not make one number",
                "± 0.02 mm     | LENGTH | one value before and one doubt behind",
                "55 ±          | LENGTH | one value before and one doubt behind",
                "5 ± 1 ± 1 mm  | LENGTH | one value before and one doubt behind",
                "55 ± -0.02 mm | LENGTH | negative doubt",
                "55 ± 0.02     | LENGTH | has no unit",
                "55 mm ± 2 °C  | LENGTH | is a temperature; a length is wanted here",
                "9.66 ± 1 %    | RATIO  | two ways",
                "20 °C ± 1 %   | TEMPERATURE | two ways",
                "5 ft 2 in ± 1 | LENGTH | no unit behind the ±",
                "5 ft 13 in    | LENGTH | less than 12 in",
                "5.5 ft 2 in   | LENGTH | whole ft",
                "5 ft 2        | LENGTH | has no unit behind 2",
                "5 ft 2 mm     | LENGTH | less than 12 in",
                "-500 °F       | TEMPERATURE | below absolute zero",
                "-1 K          | TEMPERATURE | below absolute zero",
                "2.5           | COUNT  | not a whole number",
                "3 mm          | COUNT  | is a length; a count is wanted here",
                "5\u0007mm      | LENGTH | invisible character U+0007",
                "5\u200bmm     | LENGTH | invisible character U+200B",
                "10/4/2 in     | LENGTH | not known",
            })
    void refusesSayingWhatToWrite(String text, Dimension dimension, String message) {
        Parsed.Refused refused = refused(text, dimension);
        assertThat(refused.message()).contains(message);
        assertThat(refused.mend()).isNotBlank();
        assertThat(refused.allowed()).isNotBlank();
    }

    @Test
    void withoutAnExpectedDimensionTheUnitSaysIt() {
        assertThat(understood("85 lb-ft").value().dimension()).isEqualTo(Dimension.TORQUE);
        assertThat(understood("12 lb").value().dimension()).isEqualTo(Dimension.MASS);
        assertThat(understood("5 m").value().dimension()).isEqualTo(Dimension.LENGTH);
        assertThat(understood("20 °C").value().dimension()).isEqualTo(Dimension.TEMPERATURE);
        Parsed bare = QuantityParser.parse("66.01");
        assertThat(bare).isInstanceOf(Parsed.Refused.class);
        assertThat(((Parsed.Refused) bare).message()).contains("has no unit");
    }

    @Test
    void longTextIsRefusedAndShownShort() {
        Parsed.Refused refused = refused("9".repeat(10_000) + " mm", Dimension.LENGTH);
        assertThat(refused.message())
                .contains("far too long")
                .contains("(10003 characters)")
                .hasSizeLessThan(300);
        assertThat(refused("9".repeat(60) + " mm", Dimension.LENGTH).message()).contains("a number of 60 digits");
        assertThat(refused("\n\u0000", Dimension.LENGTH).found()).isEqualTo("\\u000a\\u0000");
    }

    @Test
    void equalWorthIsEqualInAnyUnit() {
        assertThat(understood("1 in").value())
                .isEqualTo(understood("25.4 mm").value())
                .hasSameHashCodeAs(understood("25.4 mm").value())
                .isNotEqualTo(understood("25.4 g").value())
                .isGreaterThan(understood("25.39 mm").value());
        assertThat(understood("0 °").value()).isEqualTo(understood("0 rad").value());
        assertThat(understood("180 °").value())
                .isNotEqualTo(understood("3.14159265358979 rad").value())
                .isGreaterThan(understood("3.14159265358979 rad").value());
    }

    private static Stated understood(String text) {
        return stated(QuantityParser.parse(text));
    }

    private static Stated understood(String text, Dimension dimension) {
        return stated(QuantityParser.parse(text, dimension));
    }

    private static Stated stated(Parsed parsed) {
        assertThat(parsed).isInstanceOf(Parsed.Understood.class);
        return ((Parsed.Understood) parsed).stated();
    }

    private static Parsed.Refused refused(String text, Dimension dimension) {
        Parsed parsed = QuantityParser.parse(Objects.requireNonNull(text), dimension);
        assertThat(parsed).isInstanceOf(Parsed.Refused.class);
        return (Parsed.Refused) parsed;
    }
}
