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
                double scatter = 1 + 0.002 * ((run * 7 + rpm / 200) % 5 - 2);
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
                .contains("pipes.yaml cannot be read yet 1", "line 4", "iso_1585, ", "Dyno ~ near")
                .doesNotContain("Each run");
        assertThat(sent(base, "pipes.yaml", curves()).words()).contains("Real as far as 3 sessions tell: 'long <pipe>' gains");
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
}
