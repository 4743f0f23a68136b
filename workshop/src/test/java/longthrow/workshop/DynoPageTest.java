package longthrow.workshop;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** The page Dyno: sheets and logs come and go, what runs come to is said, and a run is set aside and counted again. All figures are invented. */
class DynoPageTest extends OverHttp {
    private static final Pattern NUMBER = Pattern.compile("-?\\d+\\.?\\d*");

    private static final String HEAD = """
            longthrow_dyno: 1
            name: Did the pipe help   # by hand
            invented: yes
            standard: iso_1585
            bench: {kind: table, name: own brake}
            baseline: short pipe
            sessions:
            """;

    /** Six runs each with the same scatter; the long pipe gives 4 % at every speed. */
    private static String curves() {
        StringBuilder sheet = new StringBuilder(HEAD);
        session(sheet, "A1", "short pipe", 1);
        session(sheet, "B", "long <pipe>", 1.04);
        session(sheet, "A2", "short pipe", 1);
        return sheet.toString();
    }

    private static void session(StringBuilder sheet, String name, String setup, double by) {
        sheet.append("  - name: ").append(name).append("\n    setup: ").append(setup);
        sheet.append("\n    air: {pressure: 99.6 kPa, temperature: 19 °C, humidity: 46 %}\n    runs:\n");
        for (int run = 0; run < 6; run++) {
            sheet.append("      - rows:\n");
            for (int rpm = 2400; rpm <= 3600; rpm += 200) {
                double bend = 1 - Math.pow((rpm - 3000) / 2000.0, 2);
                int own = name.charAt(name.length() - 1); // no two sessions show the same
                double scatter = 1 + 0.002 * ((run * 7 + rpm / 200 + own) % 5 - 2);
                sheet.append(String.format(Locale.ROOT, "          %d rpm: %.3f N·m%n", rpm, 13 * by * bend * scatter));
            }
        }
    }

    private static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }

    private Visitor.Page sent(String base, String name, String text) {
        Visitor.Page page = visitor.upload(base + "/dyno", name, bytes(text), Map.of());
        assertThat(page.status()).as(page.words()).isEqualTo(303);
        return visitor.get(page.location());
    }

    private static String withoutPictures(Visitor.Page page) {
        return page.body().replaceAll("(?s)<svg.*?</svg>", "");
    }

    @Test
    void withoutASheetNothingIsKnownAndAnEmptyOneIsOffered() {
        String base = visitor.empty("Nothing run yet");
        Visitor.Page page = visitor.get(base + "/dyno");
        assertThat(page.status()).isEqualTo(200);
        assertThat(page.words()).contains("Dyno ? unknown", "No sheet is kept", "together up to 256 MiB");
        String blank = new String(visitor.download(base + "/dyno/blank"), StandardCharsets.UTF_8);
        assertThat(blank).startsWith("longthrow_dyno: 1");
        Visitor.Page begun = sent(base, "mine.yaml", blank);
        assertThat(begun.words()).contains("Dyno ~ near", "No run is held against another: no run has figures");
    }

    @Test
    void curvesAreToldWithTheirStandardAndPictures() {
        String base = visitor.empty("Pipes");
        Visitor.Page page = sent(base, "pipes.yaml", curves());
        assertThat(page.words())
                .contains(
                        "Dyno ✓ answered",
                        "Did the pipe help invented corrected to ISO 1585",
                        "Nobody in the plane of flywheel",
                        "Real as far as 3 sessions tell: 'long <pipe>' gains",
                        "long <pipe> against short pipe a real gain; corrected to ISO 1585",
                        "95 in 100, at every speed at once",
                        "A1, run 1",
                        "Does not count:",
                        "Reckoned in other ways");
        assertThat(page.body()).contains("runs-0-title").doesNotContain("<pipe>", "NaN", "Infinity");
        assertThat(page.words().indexOf("Nobody in the plane"))
                .as("cautions first")
                .isLessThan(page.words().indexOf("Real as far as"));
        String picture =
                page.body().substring(page.body().indexOf("<svg"), page.body().indexOf("</svg>"));
        assertThat(NUMBER.matcher(picture).results().count()).isBetween(200L, 3000L);
    }

    @Test
    void aFaultySheetIsSaidByLineAndMendedByTheNext() {
        String base = visitor.empty("Faults");
        Visitor.Page page = sent(base, "pipes.yaml", curves().replace("standard: iso_1585", "standard: iso"));
        assertThat(page.words())
                .contains(
                        "pipes.yaml cannot be read yet 1", "line 4", "iso_1585, ", "Dyno ~ near", "Nobody in the plane")
                .doesNotContain("Each run");
        assertThat(sent(base, "pipes.yaml", curves()).words())
                .contains("Real as far as 3 sessions tell: 'long <pipe>' gains");
    }

    @Test
    void aRunIsSetAsideAndCountsAgainAndNothingElseOfTheSheetMoves() {
        String base = visitor.empty("Aside");
        String sheet = curves();
        Visitor.Page page = sent(base, "pipes.yaml", sheet);
        Map<String, String> second = Map.of("session", "0", "run", "1", "sheet", "pipes.yaml");
        String seen = page.hidden("seen");
        assertThat(visitor.post(base + "/dyno/aside", with(second, seen, "aside", " "))
                        .words())
                .contains("none was written; nothing was changed");
        assertThat(visitor.post(base + "/dyno/aside", with(second, seen, "aside", "rain: on the belt"))
                        .status())
                .isEqualTo(303);
        Visitor.Page set = visitor.get(base + "/dyno");
        assertThat(withoutPictures(set)).contains("rain: on the belt", "Count it again");
        String written = new String(visitor.download(base + "/dyno/file?name=pipes.yaml"), StandardCharsets.UTF_8);
        assertThat(written).contains("aside: ", "# by hand");
        assertThat(visitor.post(base + "/dyno/aside", with(second, seen, "count", ""))
                        .status())
                .as("a page made before the change")
                .isEqualTo(409);
        visitor.post(base + "/dyno/aside", with(second, set.hidden("seen"), "count", ""));
        assertThat(new String(visitor.download(base + "/dyno/file?name=pipes.yaml"), StandardCharsets.UTF_8))
                .as("the newest counts, though its content was kept before")
                .isEqualTo(sheet);
        assertThat(visitor.get(base + "/dyno").words()).doesNotContain("rain: on the belt");
    }

    private static Map<String, String> with(Map<String, String> where, String seen, String what, String why) {
        Map<String, String> all = new java.util.HashMap<>(where);
        all.putAll(Map.of("seen", seen, "what", what, "why", why));
        return all;
    }

    @Test
    void peaksAloneAreDotsInTheirOrder() {
        String base = visitor.empty("Peaks");
        String sheet = HEAD.replace("short pipe", "stock")
                + session("A1", "stock", "9.38 9.71 9.67 9.71 9.73")
                + session("B", "header", "9.77 9.82 9.72 9.76 9.73")
                + session("A2", "stock", "9.40 9.42 9.44 9.44 9.45");
        Visitor.Page page = sent(base, "peaks.yml", sheet);
        assertThat(page.words())
                .contains("Runs in their order", "peak power, kW, ISO 1585", "header against stock", "A2, run 5");
        assertThat(page.body()).contains("runs-peaks-title");
    }

    private static String session(String name, String setup, String peaks) {
        return "  - name: " + name + "\n    setup: " + setup
                + "\n    air: {pressure: 99.6 kPa, temperature: 19 °C, humidity: 46 %}\n    runs: [{peak: "
                + peaks.replace(" ", " kW}, {peak: ") + " kW}]\n";
    }

    @Test
    void aLogIsToldByItsColumnsAndOneThatLacksIsAskedFor() {
        String base = visitor.empty("Logs");
        StringBuilder log = new StringBuilder("time [s];engine speed [rpm];torque [N·m]\n");
        for (int i = 0; i < 400; i++) {
            log.append(String.format(Locale.ROOT, "%.2f;%.0f;%.2f%n", i / 50.0, 1500 + 5.0 * i, 12 + 0.02 * (i % 7)));
        }
        log.append("end of it\n");
        String sheet = HEAD.replace("baseline: short pipe\n", "").replace("kind: table", "kind: brake")
                + "  - name: A1\n    setup: stock\n    runs: [{log: one.csv}, {log: two.csv}]\n";
        sent(base, "one.csv", log.toString());
        Visitor.Page page = sent(base, "logs.yaml", sheet);
        assertThat(page.words())
                .contains(
                        "one.csv",
                        "400 of 402 lines are rows",
                        "engine speed in rpm",
                        "As read, not corrected: its air is not all known",
                        "line 402",
                        "Not here: the sheet names two.csv. Send it");
        assertThat(withoutPictures(page).length()).as("rows are not sent").isLessThan(60_000);
        assertThat(new String(visitor.download(base + "/dyno/file?name=one.csv"), StandardCharsets.UTF_8))
                .isEqualTo(log.toString());
    }

    @Test
    void whatCannotBeTakenIsSaid() {
        String base = visitor.empty("Refused");
        assertThat(visitor.upload(base + "/dyno", "empty.csv", new byte[0], Map.of())
                        .words())
                .contains("The file empty.csv is empty; nothing was changed");
        assertThat(visitor.upload(base + "/dyno", "large.yaml", new byte[5 << 20], Map.of())
                        .words())
                .contains("sheet of runs has at most 4 MiB, and large.yaml has more");
        assertThat(visitor.get(base + "/dyno?sheet=none.yaml").status()).isEqualTo(404);
        assertThat(visitor.get(base + "/dyno/file?name=../../x").status()).isEqualTo(404);
    }

    // ---- rows of a log

    /** Two pulls with a rest between, 100 rows a second, one spike of one row in torque; the words of its columns are its logger's own. */
    private static String log(String header) {
        StringBuilder log = new StringBuilder(header);
        for (int i = 0; i < 6000; i++) {
            double at = i % 3000 / 100.0;
            double rpm = at < 10 ? 1500 + 300 * at : 4500 - 150 * (at - 10);
            double torque = i == 4321 ? 95 : 12 + 0.1 * Math.sin(0.7 * i) + 0.01 * (i % 7);
            log.append(String.format(Locale.ROOT, "%.2f;%.1f;%.2f%n", i / 100.0, rpm + i % 3, torque));
        }
        return log.toString();
    }

    private static final Pattern TRACE = Pattern.compile("class=\"trace\" d=\"([^\"]*)\"");

    @Test
    void rowsOfALogAreSeenThinnedAndCloserByLinksThatNeedNoScript() {
        String base = visitor.empty("Rows");
        sent(base, "one.csv", log("time [s];engine speed [rpm];torque [N·m]\n"));
        Visitor.Page page = visitor.get(base + "/dyno/log?log=one.csv");
        assertThat(page.words())
                .contains(
                        "6,000 of 6,001 lines are rows",
                        "6,000 of 6,000 rows, from 0 to 59.99 s",
                        "pull 1 from",
                        "pull 2 from",
                        "1 spike",
                        "line 4323, torque [N·m]: spike (set aside): jumps by",
                        "N·m and back");
        assertThat(page.body()).doesNotContain("NaN", "Infinity").contains("class=\"aside\"", "class=\"fault\"");
        assertThat(TRACE.matcher(page.body()).results().count())
                .as("a strip each")
                .isEqualTo(2);
        assertThat(page.body().length()).isLessThan(60_000);

        Visitor.Page piece = visitor.get(base + "/dyno/log?log=one.csv&from=43&to=43.5&piece=yes");
        assertThat(piece.words()).contains("51 of 6,000 rows, from 43 to 43.5 s", "Farther", "Earlier", "Later");
        assertThat(piece.body()).doesNotContain("<html").contains("torque [N·m]: spike");
        assertThat(visitor.get(base + "/dyno/log?log=one.csv&from=5&to=6&piece=yes")
                        .words())
                .contains("Wrong or told in this stretch Nothing.");
        assertThat(visitor.get(base + "/dyno/log?log=one.csv&from=70&to=x").words())
                .contains(
                        "From '70' to 'x' is no stretch of this log, which runs from 0 to 59.99 s; all of it is shown");
        assertThat(visitor.get(base + "/dyno/log?log=one.csv&show=2&piece=yes").body())
                .as("one channel alone")
                .containsOnlyOnce("class=\"trace\"");
        assertThat(visitor.get(base + "/dyno/log?log=none.csv").status()).isEqualTo(404);
    }

    @Test
    void whatColumnsMeanIsSaidOnceForAllLogsOfTheLayoutAndForgottenAgain() {
        String base = visitor.empty("Layouts");
        String header = "t1 [s];Q1;Q2\n";
        sent(base, "one.csv", log(header));
        String sheet = HEAD.replace("baseline: short pipe\n", "").replace("kind: table", "kind: brake")
                + "  - name: A1\n    setup: stock\n    runs: [{log: two.csv}]\n";
        sent(base, "two.csv", log(header));
        assertThat(sent(base, "logs.yaml", sheet).words())
                .contains("Q1 : not known", "no pull is found in two.csv", "one.csv", "no run names it");

        Map<String, String> said = new java.util.HashMap<>(Map.of(
                "log", "one.csv", "sheet", "", "what", "confirm", "c0", "time", "u0", "s", "c1", "engine_speed"));
        said.putAll(Map.of("u1", "rpm", "c2", "torque", "u2", "furlong"));
        assertThat(visitor.post(base + "/dyno/layout", said).words())
                .contains("'furlong' is no unit of torque of the brake, which Q2 is said to be", "nothing was changed");
        said.put("u2", "N·m");
        assertThat(visitor.post(base + "/dyno/layout", said).status()).isEqualTo(303);

        String day = java.time.LocalDate.now(java.time.ZoneId.systemDefault()).toString();
        assertThat(visitor.get(base + "/dyno/log?log=two.csv&sheet=logs.yaml").words())
                .contains("They are taken as confirmed on " + day + " for one.csv", "Q2 : torque of the brake in N·m");
        assertThat(visitor.get(base + "/dyno").words())
                .contains("columns taken as confirmed on " + day + " for one.csv", "A1, run 1 #1")
                .doesNotContain("no pull is found");

        assertThat(visitor.post(base + "/dyno/layout", Map.of("log", "two.csv", "sheet", "logs.yaml", "what", "forget"))
                        .status())
                .isEqualTo(303);
        assertThat(visitor.get(base + "/dyno").words()).contains("no pull is found in two.csv");
    }

    @Test
    void aLogThatNoRunNamesIsTold() {
        String base = visitor.empty("Unnamed");
        sent(base, "pipes.yaml", curves());
        Visitor.Page page = sent(base, "stray.csv", log("time [s];engine speed [rpm];torque [N·m]\n"));
        assertThat(page.words()).contains("stray.csv", "no run names it");
    }

    /** Whoever opens another page of the build after a start sees the mark of its runs, though nobody opened their page. */
    @Test
    void theRailKnowsRunsWithLogsAfterARestartThoughNobodyOpenedTheirPage() throws InterruptedException {
        String base = visitor.empty("Restart");
        for (String setup : new String[] {"a", "b", "c"}) {
            visitor.upload(
                    base + "/dyno", setup + ".csv", bytes(log("time [s];engine speed [rpm];torque [N·m]\n")), Map.of());
        }
        String sheet = HEAD.replace("baseline: short pipe\n", "").replace("kind: table", "kind: brake")
                + "  - {name: A1, setup: stock, runs: [{log: a.csv}]}\n"
                + "  - {name: B, setup: pipe, runs: [{log: b.csv}]}\n"
                + "  - {name: A2, setup: stock, runs: [{log: c.csv}]}\n";
        visitor.upload(base + "/dyno", "logs.yaml", bytes(sheet), Map.of());
        visitor.close();
        visitor = Visitor.in(folder);
        assertThat(visitor.get(base + "/measure").words()).contains("Dyno … being worked out");
        String words = "";
        for (int i = 0; i < 300 && !words.contains("Dyno ~ near"); i++) {
            Thread.sleep(100);
            words = visitor.get(base + "/rail?revision=1&here=measure").words(); // no visit: nobody waits for it
        }
        assertThat(words).as("two baselines, no verdict").contains("Dyno ~ near");
    }

    // ---- versions, speeds, runs that do not count

    @Test
    void anEarlierVersionOfASheetIsSeenAndBroughtBack() {
        String base = visitor.empty("Versions");
        String first = curves();
        sent(base, "pipes.yaml", first);
        Visitor.Page page = sent(base, "pipes.yaml", first.replace("Did the pipe help", "Renamed"));
        assertThat(page.words()).contains("Renamed invented", "Earlier versions of pipes.yaml 1", "Bring it back");
        String version = page.hidden("version");
        assertThat(new String(
                        visitor.download(base + "/dyno/file?name=pipes.yaml&version=" + version),
                        StandardCharsets.UTF_8))
                .isEqualTo(first);
        Map<String, String> back = Map.of("sheet", "pipes.yaml", "version", version, "seen", page.hidden("seen"));
        assertThat(visitor.post(base + "/dyno/back", back).status()).isEqualTo(303);
        assertThat(visitor.get(base + "/dyno").words())
                .contains("Did the pipe help invented", "Earlier versions of pipes.yaml 1");
        assertThat(visitor.post(base + "/dyno/back", back).status())
                .as("a page made before the change")
                .isEqualTo(409);
        assertThat(visitor.get(base + "/dyno/file?name=pipes.yaml&version=00").status())
                .isEqualTo(404);
    }

    @Test
    void picturesShowAStretchOfSpeeds() {
        String base = visitor.empty("Speeds");
        sent(base, "pipes.yaml", curves());
        Visitor.Page page = visitor.get(base + "/dyno?sheet=pipes.yaml&low=2900&high=3300");
        assertThat(page.words()).contains("from 2900 to 3300 rpm", "Lower speeds", "Higher speeds", "All speeds");
        assertThat(page.words()).contains("does not count: A1 1, B 1, A2 1");
        assertThat(page.body()).contains("class=\"thin aside\"").doesNotContain("NaN", "Infinity");
        assertThat(visitor.get(base + "/dyno?low=5000&high=x").words())
                .as("no stretch of these")
                .contains("from 2400 to 3600 rpm")
                .doesNotContain("All speeds");
    }

    @Test
    void runsThatAllDoNotCountHaveTheirPictureAllTheSame() {
        String base = visitor.empty("Set aside");
        StringBuilder sheet = new StringBuilder(HEAD);
        session(sheet, "A1", "short pipe", 1);
        String aside = sheet.toString().replace("      - rows:\n", "      - aside: rain\n        rows:\n");
        Visitor.Page page = sent(base, "rain.yaml", aside);
        assertThat(page.words()).contains("Each run", "does not count: A1 1, A1 2");
        assertThat(page.body()).contains("runs-all-title", "class=\"thin aside\"");
    }
}
