package longthrow.buildfile;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.zip.GZIPOutputStream;
import longthrow.buildfile.log.LogSource;
import longthrow.buildfile.log.LogsOfASheet;
import longthrow.core.answer.Answer;
import longthrow.core.answer.DynoRuns;
import longthrow.core.answer.Finding;
import longthrow.core.dyno.Dyno;
import longthrow.core.dyno.DynoSheet;
import org.junit.jupiter.api.Test;

/** Logs of a sheet with what loggers and people do to them, from the bytes to the answer. The log is the invented one of the example. */
class DynoLogsTest {
    private static final String DRUM =
            "{kind: inertia_drum, drum_inertia: 2.10 kg·m², engine_inertia: 0.012 kg·m², engine_turns: 3.0,"
                    + " drive_efficiency: 0.96, coast_down: coast-down.csv}";

    private static final List<String> ROWS =
            Repository.text("examples/dyno/a1-1.csv").lines().toList();

    private static String sheet(String bench, String runs) {
        return """
            longthrow_dyno: 1
            name: t
            standard: none
            bench: %s
            baseline: stock
            sessions: [{name: A, setup: stock, runs: [%s]}]
            """.formatted(bench, runs);
    }

    private static Answer answer(String sheet, Map<String, byte[]> logs) {
        ReadDynoSheet read = DynoSheetFile.read(sheet);
        assertThat(read.faults()).extracting(Fault::message).isEmpty();
        DynoSheet of = read.sheet().orElseThrow();
        return Dyno.of(
                of,
                new LogsOfASheet(
                        of,
                        name -> name.equals("coast-down.csv")
                                ? Optional.of(LogSource.of(bytes(Repository.text("examples/dyno/coast-down.csv"))))
                                : Optional.ofNullable(logs.get(name)).map(LogSource::of),
                        1));
    }

    private static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }

    private static Answer ofDrum(String log) {
        return answer(sheet(DRUM, "{log: x.csv}"), Map.of("x.csv", bytes(log)));
    }

    private static String text(List<String> lines) {
        return String.join("\n", lines) + "\n";
    }

    private static List<DynoRuns.Run> runs(Answer answer) {
        return answer.runs().orElseThrow().runs();
    }

    private static List<String> listed(Answer answer, String file) {
        return answer.runs().orElseThrow().logs().stream()
                .filter(l -> l.file().equals(file))
                .findFirst()
                .orElseThrow()
                .listed();
    }

    private static double torque(DynoRuns.Run run) {
        return run.torque().orElseThrow().figure().value();
    }

    private static List<String> backwards(int from, int to) {
        List<String> part = new ArrayList<>(ROWS.subList(from, to));
        Collections.reverse(part);
        return part;
    }

    private static List<String> withHeader(List<String> rows) {
        List<String> all = new ArrayList<>(List.of(ROWS.get(0)));
        all.addAll(rows);
        return all;
    }

    /** The figure of the unspoilt log, from the truth that the example was made from: 13.02 ± 0.06 N·m. */
    @Test
    void theLogAsItIsGivesItsTorque() {
        assertThat(torque(runs(ofDrum(text(ROWS))).get(0))).isCloseTo(13.02, within(0.01));
    }

    @Test
    void rowsInReverseAreToldAndNoCurve() {
        Answer all = ofDrum(text(withHeader(backwards(1, ROWS.size()))));
        assertThat(runs(all)).noneMatch(DynoRuns.Run::counts);
        assertThat(listed(all, "x.csv")).anyMatch(s -> s.contains("runs back"));
    }

    @Test
    void aPartInReverseIsSetAsideAndTold() {
        for (int to : new int[] {81, ROWS.size()}) {
            int from = to == 81 ? 41 : ROWS.size() / 2;
            List<String> lines = new ArrayList<>(ROWS.subList(0, from));
            lines.addAll(backwards(from, to));
            lines.addAll(ROWS.subList(to, ROWS.size()));
            Answer answer = ofDrum(text(lines));
            assertThat(runs(answer)).isNotEmpty();
            assertThat(listed(answer, "x.csv")).anyMatch(s -> s.contains("backward time") || s.contains("starts anew"));
            runs(answer).stream()
                    .filter(r -> r.torque().isPresent())
                    .forEach(r -> assertThat(torque(r)).isCloseTo(13.02, within(0.3)));
        }
    }

    @Test
    void aRatioThatNoEngineHasIsRefusedWithWords() {
        Answer answer = answer(
                sheet(DRUM.replace("engine_turns: 3.0", "engine_turns: 1e9"), "{log: x.csv}"),
                Map.of("x.csv", bytes(text(ROWS).replaceAll("(?m)^([^,]*),[^,]*,", "$1,"))));
        assertThat(runs(answer))
                .singleElement()
                .matches(r -> r.torque().isEmpty() && r.why().contains("rpm"));
    }

    @Test
    void aSecondHeaderThatDiffersStopsTheLog() {
        List<String> lines = new ArrayList<>(ROWS.subList(0, 200));
        lines.add("Time [s],Drum speed [rpm],Engine speed [rpm],Exhaust temperature [°C]");
        lines.addAll(ROWS.subList(200, ROWS.size()));
        Answer answer = ofDrum(text(lines));
        assertThat(runs(answer)).singleElement().matches(r -> r.torque().isEmpty());
        assertThat(runs(answer).get(0).why()).contains("line 201").contains("two files");
    }

    @Test
    void theSameHeaderOnceMoreIsNoted() {
        List<String> lines = new ArrayList<>(ROWS.subList(0, 200));
        lines.add(ROWS.get(0));
        lines.addAll(ROWS.subList(200, ROWS.size()));
        Answer answer = ofDrum(text(lines));
        assertThat(torque(runs(answer).get(0))).isCloseTo(13.02, within(0.01));
        assertThat(listed(answer, "x.csv")).anyMatch(s -> s.contains("the header stands there 2 times"));
    }

    @Test
    void anotherUnitBelowRowsStopsTheLog() {
        List<String> lines = new ArrayList<>(List.of("Time,Engine speed,Drum speed,EGT", "s,rpm,rpm,°C"));
        lines.addAll(ROWS.subList(1, 200));
        lines.addAll(List.of("Time,Engine speed,Drum speed,EGT", "s,rad/s,rad/s,°C"));
        lines.addAll(ROWS.subList(200, ROWS.size()));
        assertThat(runs(ofDrum(text(lines))).get(0).why()).contains("line 203");
    }

    @Test
    void moreRunsThanOneLogHasAreRefusedBeforeTheyAreWorkedOut() {
        StringBuilder log = new StringBuilder("Time [s],Drum speed [rpm]\n");
        for (int pull = 0; pull < 501; pull++) {
            for (int i = 0; i < 30; i++) {
                log.append(String.format(java.util.Locale.ROOT, "%.2f,%d%n", pull * 4 + i * 0.1, 700 + 60 * i));
            }
        }
        Answer answer = ofDrum(log.toString());
        assertThat(runs(answer)).singleElement().matches(r -> r.why().contains("501 pulls"));
    }

    private static String named(String header) {
        List<String> lines = new ArrayList<>(ROWS);
        lines.set(0, header);
        return text(lines);
    }

    @Test
    void questionsAreAskedOnceForALayoutAndOneAnswerCountsForAll() {
        byte[] log = bytes(named("Time [s],qq,Drum speed [rpm],Exhaust temperature [°C]"));
        Map<String, byte[]> logs = Map.of("x.csv", log, "y.csv", log, "z.csv", log);
        String runs = "{log: x.csv}, {log: y.csv}, {log: z.csv}";
        Answer open = answer(sheet(DRUM, runs), logs);
        assertThat(open.runs().orElseThrow().logs().stream()
                        .flatMap(l -> l.listed().stream())
                        .filter(s -> s.startsWith("asked:")))
                .singleElement()
                .matches(s -> s.contains("columns: {qq: engine_speed rpm}")
                        && s.contains("every file of that layout")
                        && s.contains("drum_speed (rpm, rad/s, r/s)"));
        assertThat(listed(open, "y.csv")).anyMatch(s -> s.contains("asked of x.csv"));
        Answer answered = answer(sheet(DRUM, runs.replace("y.csv", "y.csv, columns: {qq: engine_speed rpm}")), logs);
        assertThat(answered.runs().orElseThrow().logs())
                .filteredOn(l -> !l.file().startsWith("coast"))
                .hasSize(3)
                .allMatch(l -> l.columns().get(1).meaning().equals("engine speed"))
                .allMatch(l -> l.listed().stream().noneMatch(s -> s.contains("asked")));
    }

    /** A unit that is asked for: the answer that is offered is one that the sheet understands. */
    @Test
    void everyAnswerThatIsOfferedIsUnderstood() {
        String log = """
                t,w1,Temp oil,Speed
                0.0,5,90,50
                0.1,6,91,51
                0.2,7,92,52
                0.3,7,92,52
                """;
        Answer open = ofDrum(log);
        List<String> offered = listed(open, "x.csv").stream()
                .filter(s -> s.contains("columns: {"))
                .map(s -> s.substring(s.indexOf("columns: {") + 10, s.indexOf('}')))
                .toList();
        assertThat(offered).hasSizeGreaterThanOrEqualTo(2);
        Answer told = answer(
                sheet(DRUM, "{log: x.csv, columns: {" + String.join(", ", offered) + "}}"),
                Map.of("x.csv", bytes(log)));
        assertThat(listed(told, "x.csv")).noneMatch(s -> s.startsWith("asked"));
        assertThat(told.runs().orElseThrow().logs().get(0).columns()).isNotEmpty();
    }

    @Test
    void aRateIsRowsASecondHoweverItIsWritten() {
        Map<String, byte[]> logs = Map.of("x.csv", withoutTime("a1-1.csv"), "y.csv", withoutTime("a1-2.csv"));
        assertThat(listed(answer(sheet(DRUM, "{log: x.csv}"), logs), "x.csv"))
                .anyMatch(s -> s.contains("rate: 50 Hz") && s.contains("50/s"));
        for (String rate : List.of("50", "50 Hz", "50/s", "50 /s", "50 rows per second")) {
            Answer answer = answer(sheet(DRUM, "{log: x.csv, rate: " + rate + "}, {log: y.csv}"), logs);
            assertThat(runs(answer)).as(rate).hasSize(2).allMatch(r -> Math.abs(torque(r) - 13.02) < 1);
        }
    }

    private static byte[] withoutTime(String file) {
        StringBuilder log = new StringBuilder("Engine speed [rpm],Drum speed [rpm]\n");
        Repository.text("examples/dyno/" + file).lines().skip(1).forEach(r -> {
            String[] cells = r.split(",", -1);
            log.append(cells[1]).append(',').append(cells[2]).append('\n');
        });
        return bytes(log.toString());
    }

    private static final String PRINTED = """
            RPM,Power (hp),Torque (ft-lbs)
            3500,4.57,6.86
            3000,3.85,6.74
            4000,5.26,6.91
            4000,5.28,6.93
            4500,5.86,6.84
            5000,6.33,6.65
            """;

    @Test
    void aTableThatADynamometerWroteIsItsRows() {
        Answer answer = answer(sheet("{kind: table}", "{log: x.csv}"), Map.of("x.csv", bytes(PRINTED)));
        DynoRuns.Run run = runs(answer).get(0);
        assertThat(torque(run)).isCloseTo(6.92 * 1.3558179483, within(1e-6)); // the mean of two lines; lb-ft in N·m
        assertThat(run.torque().orElseThrow().figure().isUnknown()).isTrue();
        assertThat(torque(runs(answer(
                                sheet("{kind: table, drive_efficiency: 0.90}", "{log: x.csv}"),
                                Map.of("x.csv", bytes(PRINTED))))
                        .get(0)))
                .isCloseTo(6.92 * 1.3558179483 / 0.90, within(1e-6));
        assertThat(answer.findings())
                .extracting(Finding::message)
                .anyMatch(m -> m.contains("2 rows of x.csv stand at 4000 rpm"))
                .anyMatch(m -> m.contains("sorted"))
                .anyMatch(m -> m.contains("as if they were written below rows:"));
        assertThat(listed(answer, "x.csv")).noneMatch(s -> s.contains("rows a second"));
        assertThat(answer(sheet("{kind: table}", "{log: x.csv}"), Map.of("x.csv", bytes(PRINTED.replace("hp", "kW"))))
                        .findings())
                .extracting(Finding::message)
                .anyMatch(m -> m.contains("another power"));
    }

    @Test
    void aLogWithoutTimeOnAnotherBenchSaysWhatItLacks() {
        Answer answer = ofDrum("Drum speed [rpm]\n700\n710\n720\n730\n");
        assertThat(runs(answer).get(0).why()).contains("rate: 50 Hz");
    }

    /** Five speeds held for 4 s each; lambda 0.90 at the lowest, 0.01 more at each of the next; 1 g/s of fuel at 12 N·m. */
    @Test
    void whatIsLoggedBesideAHeldBrakeIsAveragedAsItsTorqueIs() {
        StringBuilder log =
                new StringBuilder("Time [s],Engine speed [rpm],Torque [N·m],Lambda,EGT [°C],Fuel flow [g/s]\n");
        int row = 0;
        for (int k = 0; k < 5; k++) {
            for (int i = 0; i < 80; i++) {
                int wobble = i % 2 == 0 ? 1 : -1;
                log.append(String.format(
                        java.util.Locale.ROOT,
                        "%.2f,%d,%.2f,%.3f,%.1f,%.3f%n",
                        0.05 * row++,
                        3000 + 500 * k + wobble,
                        12 + 0.02 * wobble,
                        0.90 + 0.01 * k + 0.002 * wobble,
                        600.0 + 20 * k + wobble,
                        1 + 0.001 * wobble));
            }
        }
        Answer answer =
                answer(sheet("{kind: brake, arm: 0.25 m}", "{log: x.csv}"), Map.of("x.csv", bytes(log.toString())));
        DynoRuns.Run run = runs(answer).get(0);
        assertThat(torque(run)).isCloseTo(12, within(0.01));
        assertThat(beside(run, "lambda", 3500)).isCloseTo(0.91, within(1e-3));
        assertThat(beside(run, "exhaust temperature", 4000)).isCloseTo(640 + 273.15, within(0.5));
        double work = 12 * 4000 * Math.PI / 30; // W
        assertThat(beside(run, "fuel for the work done", 4000)).isCloseTo(1e-3 / work, within(2e-3 * 1e-3 / work));
    }

    private static double beside(DynoRuns.Run run, String name, double rpm) {
        return run.beside().stream().filter(b -> b.name().equals(name)).findFirst().orElseThrow().points().stream()
                .filter(p -> Math.abs(p.speed() - rpm * Math.PI / 30) < 1e-6)
                .findFirst()
                .orElseThrow()
                .value();
    }

    /** 733 rpm stands beside 1.042, and 2.203 beside 0.02 s: thousands by a point, of which the time says that it begins decimals. */
    @Test
    void aPointThatMayPartThousandsIsAsked() {
        StringBuilder log = new StringBuilder("Time [s];Engine speed [rpm];Drum speed [rpm]\n");
        for (String row : ROWS.subList(1, ROWS.size())) {
            String[] cells = row.split(",", -1);
            log.append(cells[0])
                    .append(';')
                    .append(grouped(cells[1]))
                    .append(';')
                    .append(grouped(cells[2]))
                    .append('\n');
        }
        Answer answer = ofDrum(log.toString());
        assertThat(runs(answer)).allMatch(r -> r.torque().isEmpty());
        assertThat(listed(answer, "x.csv"))
                .anyMatch(s -> s.startsWith("asked: column 2") && s.contains("thousands"))
                .anyMatch(s -> s.startsWith("asked: column 3") && s.contains("beside"));
    }

    private static String grouped(String figure) {
        long whole = Math.round(Double.parseDouble(figure));
        return whole < 1000
                ? String.valueOf(whole)
                : String.format(java.util.Locale.ROOT, "%d.%03d", whole / 1000, whole % 1000);
    }

    @Test
    void unitsWithLinesInTheNameAreRead() {
        Answer answer = ofDrum("""
                t_s,rpm_1_min,Roller_rad_s,v_km_h,EGT_K,Torque_N_m
                0.00,3000,100.5,40.2,900,12.1
                0.02,3010,100.9,40.3,901,12.2
                0.04,3020,101.2,40.4,902,12.3
                """);
        assertThat(answer.runs().orElseThrow().logs().get(0).columns())
                .extracting(c -> c.meaning() + " " + c.unit())
                .containsExactly(
                        "time s",
                        "engine speed rpm",
                        "drum speed rad/s",
                        "road speed km/h",
                        "exhaust temperature K",
                        "torque of the brake N·m");
        assertThat(ofDrum("t_s,Tacho_Hz\n0.00,50\n0.02,50.2\n0.04,50.4\n")
                        .runs()
                        .orElseThrow()
                        .logs()
                        .get(0)
                        .columns()
                        .get(1)
                        .unit())
                .isEqualTo("r/s");
    }

    @Test
    void aRateThatTimeContradictsIsSaid() {
        Map<String, byte[]> logs = Map.of("x.csv", bytes(text(ROWS)));
        Answer answer = answer(sheet(DRUM, "{log: x.csv, rate: 100}"), logs);
        assertThat(torque(runs(answer).get(0))).isCloseTo(13.02, within(0.01));
        assertThat(answer.findings())
                .anyMatch(f -> f.kind() == Finding.Kind.WARNING
                        && f.message().contains("100 rows a second")
                        && f.message().contains("its time is used"));
        assertThat(answer(sheet(DRUM, "{log: x.csv, rate: 50 Hz}"), logs).findings())
                .noneMatch(f -> f.message().contains("rows a second"));
    }

    @Test
    void aPullGoesOnOverMidnight() {
        List<String> lines = new ArrayList<>(List.of(ROWS.get(0).replace("Time [s]", "Time")));
        for (String row : ROWS.subList(1, ROWS.size())) {
            int comma = row.indexOf(',');
            double t = (Double.parseDouble(row.substring(0, comma)) + 86_400 - 4) % 86_400;
            lines.add(String.format(
                            java.util.Locale.ROOT, "%02d:%02d:%05.2f", (int) (t / 3600), (int) (t / 60) % 60, t % 60)
                    + row.substring(comma));
        }
        Answer answer = ofDrum(text(lines));
        assertThat(runs(answer)).singleElement().matches(r -> Math.abs(torque(r) - 13.02) < 0.01);
        assertThat(listed(answer, "x.csv")).anyMatch(s -> s.contains("midnight, time goes on"));
    }

    @Test
    void holesInAColumnAreCountedAndLinesCountedInGrammar() {
        List<String> lines = new ArrayList<>(List.of("# a logger", "# invented", ROWS.get(0)));
        int holes = 0;
        for (int i = 1; i < ROWS.size(); i++) {
            String[] cells = ROWS.get(i).split(",", -1);
            boolean hole = i % 7 == 0;
            holes += hole ? 1 : 0;
            lines.add(String.join(",", cells[0], hole ? "NaN" : cells[1], cells[2], cells[3]));
        }
        List<String> said = listed(ofDrum(text(lines)), "x.csv");
        assertThat(said)
                .contains("Engine speed [rpm]: " + holes + " of " + (ROWS.size() - 1) + " rows say nothing there")
                .contains("2 lines are remarks");
    }

    /** Time to tenths of a second: four rows of five are set aside as repeated, and nothing slips by that. */
    @Test
    void timeInTenthsOfASecondMakesNoSlip() {
        List<String> lines = new ArrayList<>(List.of(ROWS.get(0)));
        for (String row : ROWS.subList(1, ROWS.size())) {
            int comma = row.indexOf(',');
            lines.add(String.format(java.util.Locale.ROOT, "%.1f", Double.parseDouble(row.substring(0, comma)))
                    + row.substring(comma));
        }
        Answer answer = ofDrum(text(lines));
        assertThat(torque(runs(answer).get(0))).isCloseTo(13.02, within(0.1));
        assertThat(answer.findings()).extracting(Finding::message).noneMatch(m -> m.contains("Slip in"));
    }

    @Test
    void bytesBehindAPackedLogAreNoted() throws IOException {
        ByteArrayOutputStream packed = new ByteArrayOutputStream();
        try (GZIPOutputStream out = new GZIPOutputStream(packed)) {
            out.write(bytes(text(ROWS)));
        }
        assertThat(listed(answer(sheet(DRUM, "{log: x.csv}"), Map.of("x.csv", packed.toByteArray())), "x.csv"))
                .noneMatch(s -> s.contains("packed"));
        packed.write(bytes("no log, but forty bytes of something else"));
        Answer answer = answer(sheet(DRUM, "{log: x.csv}"), Map.of("x.csv", packed.toByteArray()));
        assertThat(torque(runs(answer).get(0))).isCloseTo(13.02, within(0.01));
        assertThat(listed(answer, "x.csv")).anyMatch(s -> s.startsWith("41 bytes follow behind the packed log"));
    }

    @Test
    void moreColumnsThanAreReadAreCounted() {
        String row = String.join(",", Collections.nCopies(5000, "1.5"));
        assertThat(runs(ofDrum(text(Collections.nCopies(5, row)))).get(0).why())
                .contains("5000 columns")
                .contains("at most 1000");
    }

    @Test
    void aNameThatReadsAsAnotherIsRefused() {
        for (String name : List.of("\\u202Evsc.x.csv", "x\\u0007.csv")) {
            assertThat(DynoSheetFile.read(sheet(DRUM, "{log: \"" + name + "\"}"))
                            .faults())
                    .extracting(Fault::message)
                    .anyMatch(m -> m.contains("not seen"));
        }
    }
}
