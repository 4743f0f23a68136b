package longthrow.buildfile;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import longthrow.core.dyno.BenchFigure;
import longthrow.core.dyno.BenchKind;
import longthrow.core.gain.AirStandard;
import longthrow.core.quantity.Unit;
import longthrow.core.recording.Channel;
import longthrow.core.recording.FaultKind;

/** The part of the glossary on sheets of runs. */
final class WordsOfADynoSheet {
    /** Meaning of each key, by the place it stands in; a test holds them against the reader's own lists. */
    static final Map<String, Map<String, String>> MEANINGS = meanings();

    private WordsOfADynoSheet() {}

    private static Map<String, Map<String, String>> meanings() {
        Map<String, Map<String, String>> all = new LinkedHashMap<>();
        all.put(
                "sheet",
                words(
                        "longthrow_dyno", "version of the layout, always the first line",
                        "name", "what was tried",
                        "invented", "`yes` where it is made up",
                        "units", "`metric` or `inch`: which come first in print",
                        "notes", "lines in your own words",
                        "engine", "file with the build that the runs belong to",
                        "standard", "to which runs are corrected; `none` for as read",
                        "bench", "by what the runs were read",
                        "baseline", "setup that others are held against; the first session's where it is not said",
                        "speeds", "`from` and `to`: the speeds that are used",
                        "sessions", "in the order in which they were run"));
        all.put(
                "bench",
                words(
                        "kind", "what it is, see below",
                        "name", "which one; figures of two dynamometers are never held beside each other as they are",
                        "calibration",
                                "`{load hung: what the cell showed}`, three lines or more, loads put on and taken off; a bare number is in the unit of the log's column; a column of counts is told as `force N`, and its numbers are then only what the cell showed",
                        "coast_down", "log of a run in which drum or vehicle ran out by itself",
                        "falling_mass",
                                "masses that fell on a cord around the drum: `mass`, `height`, `time`, `stops_after`",
                        "added_disc",
                                "a disc put on the drum for another run-down: `inertia`, or `mass`, `diameter` and `bore`; and its `coast_down`"));
        all.put(
                "session",
                words(
                        "name", "each once",
                        "setup", "what was on the engine; of a check the name of the reference engine",
                        "date", "year-month-day",
                        "who", "ran it",
                        "dyno", "where it is another than the bench's",
                        "check", "`yes` where it ran a reference engine, to see the dynamometer's level",
                        "air",
                                "`pressure` of the barometer at the place, not brought to sea level, `temperature` and relative `humidity` of the air drawn in",
                        "runs", "in the order in which they were run; the first is warm-up"));
        all.put(
                "run",
                words(
                        "name", "its number where it has none",
                        "peak", "highest power or torque alone",
                        "rows", "`{speed: torque or power}`, speeds rising",
                        "log", "a logger's file beside the sheet",
                        "columns",
                                "`{name or number of a column: meaning unit}`; said once it counts for every file of that layout in the sheet",
                        "rate", "rows a second, where the log has no time: `50`, `50 Hz`, `50/s`",
                        "keep", "faults whose rows are kept all the same, as a list",
                        "aside", "why the run does not count",
                        "air", "where it was read again for this run"));
        return all;
    }

    private static Map<String, String> words(String... keysAndMeanings) {
        Map<String, String> words = new LinkedHashMap<>();
        for (int i = 0; i < keysAndMeanings.length; i += 2) {
            words.put(keysAndMeanings[i], keysAndMeanings[i + 1]);
        }
        return words;
    }

    static void write(Markdown page) {
        page.heading(2, "Sheets of runs");
        page.line("A sheet of runs on a dynamometer begins with `" + DynoSheetFile.VERSION + ": "
                + DynoSheetFile.FORMAT_VERSION
                + "` and is read by `longthrow dyno`. Every figure has its unit, and its ± where it is known.");
        page.line("");
        page.head("where", "key", "what stands there");
        MEANINGS.forEach((where, words) -> words.forEach((key, meaning) -> page.row(where, "`" + key + "`", meaning)));
        page.line("");
        page.line("Kinds of bench, and the figures that each has:");
        page.line("");
        page.head("kind", "what it is", "figures");
        for (BenchKind kind : BenchKind.values()) {
            page.row(
                    "`" + kind.key() + "`",
                    kind.meaning(),
                    Markdown.keys(Arrays.stream(BenchFigure.values())
                            .filter(f -> f.isOf(kind))
                            .map(BenchFigure::key)
                            .toList()));
        }
        page.line("");
        page.head("figure of the bench", "meaning");
        for (BenchFigure figure : BenchFigure.values()) {
            page.row("`" + figure.key() + "`", figure.meaning());
        }
        page.line("");
        page.line("Standards: "
                + Arrays.stream(AirStandard.values())
                        .map(s -> "`" + s.key() + "` " + s.label())
                        .collect(Collectors.joining(", "))
                + ".");
        page.line("");
        page.line("What a logger's column may be, for `columns`, with the units loggers write it in:");
        page.line("");
        page.head("meaning", "what it is", "units");
        for (Channel channel : Channel.values()) {
            page.row(
                    "`" + channel.key() + "`",
                    channel.label(),
                    channel.units().stream()
                            .map(Unit::symbol)
                            .filter(s -> !s.isEmpty())
                            .collect(Collectors.joining(", ")));
        }
        page.line("");
        page.line("Faults of rows, for `keep`:");
        page.line("");
        page.head("fault", "what it is", "its rows");
        for (FaultKind kind : FaultKind.values()) {
            page.row(
                    "`" + kind.name().toLowerCase(Locale.ROOT) + "`",
                    kind.label(),
                    kind.setsAside() ? "set aside unless kept" : "kept");
        }
    }

    /** Keys that are explained for one place. */
    static List<String> keys(String where) {
        return List.copyOf(MEANINGS.getOrDefault(where, Map.of()).keySet());
    }
}
