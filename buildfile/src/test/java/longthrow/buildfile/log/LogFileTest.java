package longthrow.buildfile.log;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Map;
import java.util.Optional;
import java.util.zip.GZIPOutputStream;
import longthrow.buildfile.log.LogLayout.About;
import longthrow.core.quantity.Units;
import longthrow.core.recording.Channel;
import longthrow.core.recording.Sureness;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Logs as loggers write them, all invented: what they are recognised to be, and that every line is kept or listed. */
class LogFileTest {
    private static final String GERMAN = String.join(
            "\r\n",
            "Prüfstand 3",
            "Datum: 03.02.2031",
            "",
            "Zeit;Motordrehzahl;Drehmoment;Öltemperatur;Luftdruck",
            "s;1/min;Nm;°C;hPa",
            "0,01;2016,3;9,81;88,2;998,1",
            "0,02;2020,1;9,83;88,2;998,1",
            ";;;;",
            "0,03;2024;9,9;88.x;998",
            "0,04;20");

    @ParameterizedTest
    @ValueSource(strings = {"UTF-8", "UTF-16LE", "UTF-16BE", "ISO-8859-1"})
    void aLogWithPreambleUnitsAndDecimalCommasIsReadInAnyEncoding(String encoding) {
        LogRead read = read(GERMAN.getBytes(Charset.forName(encoding)), LogTold.NOTHING);
        assertThat(read.layout().encoding()).isEqualTo(encoding);
        check(read);
    }

    @Test
    void markedAndPackedItIsTheSame() throws IOException {
        check(read(("\uFEFF" + GERMAN).getBytes(StandardCharsets.UTF_8), LogTold.NOTHING));
        check(read(("\uFEFF" + GERMAN).getBytes(StandardCharsets.UTF_16LE), LogTold.NOTHING));
        check(read(packed(GERMAN.getBytes(StandardCharsets.UTF_8)), LogTold.NOTHING));
        check(read(GERMAN.replace("\r\n", "\n").getBytes(StandardCharsets.UTF_8), LogTold.NOTHING));
        check(read(GERMAN.replace("\r\n", "\r").getBytes(StandardCharsets.UTF_8), LogTold.NOTHING));
    }

    private static void check(LogRead read) {
        LogLayout layout = read.layout();
        assertThat(layout.headerLine()).isEqualTo(4);
        assertThat(layout.unitsLine()).isEqualTo(5);
        assertThat(layout.mark()).isEqualTo(',');
        assertThat(layout.questions()).isEmpty();
        assertThat(layout.columns())
                .extracting(LogLayout.Column::channel)
                .containsExactly(
                        Channel.TIME,
                        Channel.ENGINE_SPEED,
                        Channel.TORQUE,
                        Channel.OIL_TEMPERATURE,
                        Channel.AIR_PRESSURE);
        assertThat(layout.columns()).extracting(LogLayout.Column::sureness).containsOnly(Sureness.SURE);
        assertThat(read.lines()).isEqualTo(10);
        assertThat(read.recording().rows()).isEqualTo(3);
        assertThat(read.recording().lines().lineOf(2)).isEqualTo(9);
        assertThat(read.badCells()).containsExactly(new LogRead.BadCell(9, 3));
        assertThat(read.recording().values(Channel.OIL_TEMPERATURE).orElseThrow()[2])
                .isNaN();
        assertThat(read.recording().values(Channel.AIR_PRESSURE).orElseThrow()[0])
                .isEqualTo(99_810.0);
        assertThat(read.recording().values(Channel.ENGINE_SPEED).orElseThrow()[0])
                .isCloseTo(2016.3 * Math.PI / 30, within(1e-12 * 211)); // rounding of one multiplication
        assertThat(read.listed().size()).isEqualTo(7);
        assertThat(read.listed().words(5)).isEqualTo("line 8 holds no figure");
        assertThat(read.listed().words(6)).isEqualTo("line 10 has fewer cells than there are columns");
        assertThat(read.notes()).hasSize(1);
    }

    @Test
    void aFigureThatCanBeReadInTwoWaysIsAskedAboutAndNotGuessed() {
        String log = "Time [s]\tEngine Speed (rpm)\tForce (N)\n0.1\t2000\t1,234\n0.2\t2010\t12\n";
        LogRead read = read(log, LogTold.NOTHING);
        assertThat(read.layout().questions())
                .extracting(LogLayout.Question::about)
                .containsExactly(About.MARK);
        assertThat(read.listed().why(1)).isEqualTo(Why.TWO_WAYS);
        assertThat(read.recording().rows()).isEqualTo(1);
        LogTold point = new LogTold('.', 0, Optional.empty(), Map.of());
        assertThat(read(log, point).recording().values(Channel.FORCE).orElseThrow())
                .containsExactly(1234, 12);
        LogRead comma = read(log.replace("0.", "0,"), new LogTold(',', 0, Optional.empty(), Map.of()));
        assertThat(comma.recording().values(Channel.FORCE).orElseThrow()).containsExactly(1.234, 12);
    }

    @Test
    void thousandsArePartedWhereBothMarksStandInOneFigure() {
        LogRead read = read("time [s],force [N]\n0.1,\"1,234.5\"\n0.2,\"2,000\"\n", LogTold.NOTHING);
        assertThat(read.layout().grouping()).isEqualTo(',');
        assertThat(read.recording().values(Channel.FORCE).orElseThrow()).containsExactly(1234.5, 2000);
    }

    @Test
    void aCommaBetweenWholeNumbersWithoutHeaderIsAskedAbout() {
        LogRead read = read("2016,33\n2017,34\n", LogTold.NOTHING);
        assertThat(read.layout().questions())
                .extracting(LogLayout.Question::about)
                .contains(About.DELIMITER);
        assertThat(read("rpm\n2016,33\n2017,34\n", LogTold.NOTHING).recording().columns())
                .hasSize(1);
    }

    @Test
    void timesOfDayWithAndWithoutADateBecomeSeconds() {
        double[] clock = read("Uhrzeit;n [U/min]\n10:00:00,100;3000\n10:00:00,350;3100\n", LogTold.NOTHING)
                .recording()
                .values(Channel.TIME)
                .orElseThrow();
        assertThat(clock[1] - clock[0]).isCloseTo(0.25, within(1e-9));
        double[] dated = read("stamp,rpm\n2031-02-03T23:59:59.5,3000\n2031-02-04T00:00:00.25,3100\n", LogTold.NOTHING)
                .recording()
                .values(Channel.TIME)
                .orElseThrow();
        assertThat(dated[1] - dated[0]).isCloseTo(0.75, within(1e-9));
        LogRead asked = read("stamp;rpm\n03/02/2031 23:59:59;3000\n04/02/2031 00:00:01;3100\n", LogTold.NOTHING);
        assertThat(asked.layout().questions())
                .extracting(LogLayout.Question::about)
                .containsExactly(About.DATES);
    }

    @Test
    void withoutTimeTheRateIsAskedAndThenCountsRowsWithThoseThatWereLost() {
        String log = "rpm;Nm\n2000;9\nx\n2100;9,5\n# remark\n2200;9,7\n";
        assertThat(read(log, LogTold.NOTHING).layout().questions())
                .extracting(LogLayout.Question::about)
                .containsExactly(About.RATE);
        LogRead told = read(log, new LogTold((char) 0, 10, Optional.empty(), Map.of()));
        assertThat(told.layout().questions()).isEmpty();
        assertThat(told.recording().values(Channel.TIME).orElseThrow()).containsExactly(0, 0.2, 0.3);
    }

    @Test
    void aUnitThatIsNotWrittenIsConcludedOnlyWhereOneFitsAlone() {
        LogRead read = read("t [ms],map,throttle,oil temp\n1,99.9,98,90\n2,99.8,99,91\n", LogTold.NOTHING);
        assertThat(read.layout().columns().get(0).unit()).contains(Units.MILLISECOND);
        assertThat(read.layout().columns().get(1).unit()).contains(Units.KILOPASCAL);
        assertThat(read.layout().columns().get(1).sureness()).isEqualTo(Sureness.LIKELY);
        assertThat(read.layout().columns().get(3).sureness()).isEqualTo(Sureness.OPEN); // °C or °F
        assertThat(read.recording().values(Channel.OIL_TEMPERATURE)).isEmpty();
        assertThat(read.layout().questions()).hasSize(1);
    }

    @Test
    void whatIsToldIsRememberedAsTextAndGoesBeforeWhatIsRecognised() {
        LogTold told = new LogTold(
                ',',
                100,
                Optional.of(Form.DATE_DAY_FIRST),
                Map.of(
                        0, new LogTold.Column(Channel.LAMBDA, Optional.of(Units.BARE_RATIO)),
                        1, new LogTold.Column(Channel.DRUM_SPEED, Optional.of(Units.RPM)),
                        2, new LogTold.Column(Channel.MARKER, Optional.empty())));
        assertThat(LogTold.parse(told.toText())).contains(told);
        assertThat(LogTold.parse("column x")).isEmpty();
        LogRead read = read("a;b;c\n0,9;100;one\n0,91;200;two\n", told);
        assertThat(read.layout().columns())
                .extracting(LogLayout.Column::sureness)
                .containsOnly(Sureness.TOLD);
        assertThat(read.recording().values(Channel.DRUM_SPEED)).isPresent();
        assertThat(read.recording().columns().get(2).labels()).containsExactly("one", "two");
    }

    @Test
    void logsOfOneLayoutShareAFingerprintAndOthersDoNot() {
        String one = fingerprint("t [s];rpm\n0,1;2000\n0,2;2100\n");
        assertThat(fingerprint("some day\nt [s];rpm\n0.3;2500\n0.4;2600\n0.5;1\n"))
                .isEqualTo(one);
        assertThat(fingerprint("t [ms];rpm\n0,1;2000\n0,2;2100\n")).isNotEqualTo(one);
        assertThat(fingerprint("t [s],rpm\n0.1,2000\n0.2,2100\n")).isNotEqualTo(one);
    }

    private static String fingerprint(String log) {
        return read(log, LogTold.NOTHING).layout().fingerprint();
    }

    @Test
    void aHeaderThatComesAgainIsListedAndSaid() {
        LogRead read = read("t [s],rpm\n1.5,2000\n2.5,2100\nt [s],rpm\n1.5,2000\n", LogTold.NOTHING);
        assertThat(read.listed().count(Why.HEADER_AGAIN)).isEqualTo(1);
        assertThat(read.notes()).anyMatch(n -> n.contains("2 times"));
    }

    @Test
    void aBombIsRefusedAtTheStatedSize() throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (GZIPOutputStream gzip = new GZIPOutputStream(out)) {
            byte[] lines = "1,2,3\n".repeat(1 << 16).getBytes(StandardCharsets.US_ASCII);
            for (long size = 0; size <= Unpacked.MOST; size += lines.length) {
                gzip.write(lines);
            }
        }
        assertThat(LogFile.open(LogSource.of(out.toByteArray()), LogTold.NOTHING))
                .isInstanceOfSatisfying(
                        LogRefusal.class, r -> assertThat(r.found()).contains("192 MiB"));
    }

    @Test
    void aPackedLogThatWasCutOffKeepsWhatThereIsAndSaysSo() throws IOException {
        byte[] whole = packed(
                "t [s],rpm\n".concat("1.5,2000\n2.25,2100\n".repeat(50_000)).getBytes(StandardCharsets.US_ASCII));
        LogRead read = read(Arrays.copyOf(whole, whole.length / 2), LogTold.NOTHING);
        assertThat(read.recording().rows()).isGreaterThan(1000);
        assertThat(read.notes()).anyMatch(n -> n.contains("ends early"));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                "no figures\nat all\n",
                "PK\u0003\u0004xxxxxxxxxx",
                "\u0000\u0001\u0002\u0003\u0004\u0005\u0006\u0007"
            })
    void whatIsNoLogIsRefusedWithWhatToDo(String text) {
        assertThat(LogFile.open(LogSource.of(text.getBytes(StandardCharsets.ISO_8859_1)), LogTold.NOTHING))
                .isInstanceOfSatisfying(
                        LogRefusal.class, r -> assertThat(r.mend()).isNotBlank());
    }

    @Test
    void aLineWithoutEndIsRefused() {
        LogFile file = (LogFile) LogFile.open(
                LogSource.of(("1.5,2\n2.5,3\n" + "7".repeat(2 << 20)).getBytes(StandardCharsets.US_ASCII)),
                LogTold.NOTHING);
        assertThat(file.read(1)).isInstanceOf(LogFile.Refused.class);
    }

    private static byte[] packed(byte[] bytes) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (GZIPOutputStream gzip = new GZIPOutputStream(out)) {
            gzip.write(bytes);
        }
        return out.toByteArray();
    }

    private static LogRead read(String log, LogTold told) {
        return read(log.getBytes(StandardCharsets.UTF_8), told);
    }

    private static LogRead read(byte[] log, LogTold told) {
        LogFile file = (LogFile) LogFile.open(LogSource.of(log), told);
        LogRead read = ((LogFile.Done) file.read(2)).read();
        LogMutations.check(log, read);
        return read;
    }
}
