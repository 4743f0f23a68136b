package longthrow.buildfile.log;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;
import longthrow.core.recording.Recording;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Every number comes out of a log as the double that {@link Double#parseDouble} makes of its text, bit for bit. */
class DecimalBytesTest {
    /** Halves between doubles, the ends of their range and more digits than they hold. */
    private static final List<String> HARD = List.of(
            "9007199254740993",
            "9007199254740992.99999999999",
            "1.00000000000000011102230246251565404236316680908203125",
            "2.2250738585072011e-308",
            "4.9e-324",
            "2.4703282292062327e-324",
            "1.7976931348623157e308",
            "0.1",
            "0.3",
            "123456789.123456789",
            "8.5",
            "-0.0",
            "0",
            "00012.500",
            "+7.25",
            "5.",
            ".5",
            "-.125",
            "1e5",
            "1.5E-3",
            "12345678",
            "1234567.8",
            "123456789012345678901234567890",
            "0.000000000000000000000001",
            "179769313486231580793e289",
            "99999999999999999.9",
            "6.0221e23",
            "7.3177701707893310e15");

    @Test
    void hardDecimalsAreTheNearestDouble() {
        for (String text : HARD) {
            assertSame(text, '.');
            assertSame(text.replace('.', ','), ',');
        }
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2})
    void randomDecimalsAreTheNearestDouble(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        for (int i = 0; i < 100_000; i++) {
            assertSame(decimal(random), '.');
        }
    }

    /** The eight bytes at once of the plain case, through the door that a log takes. */
    @Test
    void rowsOfDecimalsComeOutAsTheirText() {
        SplittableRandom random = new SplittableRandom(3);
        StringBuilder log = new StringBuilder("rpm;power [kW];x\n");
        double[][] wanted = new double[3][20_000];
        for (int row = 0; row < wanted[0].length; row++) {
            for (int c = 0; c < 3; c++) {
                String text = random.nextInt(50) == 0
                        ? decimal(random)
                        : String.format(
                                Locale.ROOT,
                                "%." + random.nextInt(5) + "f",
                                (random.nextDouble() - 0.3) * Math.pow(10, random.nextInt(6)));
                double value = Double.parseDouble(text);
                wanted[c][row] = Double.isInfinite(value) ? Double.NaN : value;
                log.append(c == 0 ? "" : ";").append(text);
            }
            log.append(row % 3 == 0 ? "\r\n" : "\n");
        }
        LogFile file =
                (LogFile) LogFile.open(LogSource.of(log.toString().getBytes(StandardCharsets.UTF_8)), LogTold.NOTHING);
        Recording one = ((LogFile.Done) file.read(1)).read().recording();
        Recording two = ((LogFile.Done) file.read(2)).read().recording();
        assertThat(one.rows()).isEqualTo(wanted[0].length);
        for (int c = 0; c < 3; c++) {
            assertThat(two.values(c)).containsExactly(one.values(c));
            for (int row = 0; row < wanted[0].length; row++) {
                double si = one.columns().get(c).unit().isPresent()
                        ? one.columns().get(c).unit().get().toSi(wanted[c][row])
                        : wanted[c][row];
                if (Double.doubleToLongBits(one.values(c)[row]) != Double.doubleToLongBits(si)) {
                    throw new AssertionError("row " + row + " column " + c + ": " + one.values(c)[row] + " for " + si);
                }
            }
        }
    }

    private static void assertSame(String text, char mark) {
        byte[] bytes = ("x" + text + "y").getBytes(StandardCharsets.ISO_8859_1);
        assertThat(DecimalBytes.isNumber(bytes, 1, bytes.length - 1, (byte) mark))
                .as(text)
                .isTrue();
        double value = DecimalBytes.value(bytes, 1, bytes.length - 1, (byte) mark);
        assertThat(Double.doubleToRawLongBits(value))
                .as(text)
                .isEqualTo(Double.doubleToRawLongBits(Double.parseDouble(text.replace(',', '.'))));
    }

    private static String decimal(SplittableRandom random) {
        return switch (random.nextInt(4)) {
            case 0 -> Double.toString(Double.longBitsToDouble(random.nextLong() & 0x7fefffffffffffffL));
            case 1 -> random.nextLong() + "." + random.nextInt(1_000_000);
            case 2 ->
                String.format(Locale.ROOT, "%." + random.nextInt(20) + "f", random.nextDouble() * 100_000 - 50_000);
            default ->
                random.nextInt(100_000) + "."
                        + String.format(Locale.ROOT, "%0" + (1 + random.nextInt(9)) + "d", random.nextInt(10));
        };
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                "-",
                ".",
                "+.",
                "1.2.3",
                "1e",
                "1e+",
                "0x10",
                "1d",
                "NaN",
                "Infinity",
                "1 2",
                "--1",
                "1-",
                "1e99999"
            })
    void whatIsNoDecimalIsNone(String text) {
        byte[] bytes = text.getBytes(StandardCharsets.ISO_8859_1);
        assertThat(DecimalBytes.isNumber(bytes, 0, bytes.length, (byte) '.')).isFalse();
    }
}
