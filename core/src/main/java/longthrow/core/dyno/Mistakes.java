package longthrow.core.dyno;

import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import longthrow.core.answer.Finding;
import longthrow.core.gain.AirStandard;
import longthrow.core.quantity.Stated;

/** The trade's mistakes in a sheet of runs, tested by their size. Nothing is mended by them: each is named, with what to look at. */
final class Mistakes {
    /** Between sessions of one day a barometer hardly moves so far [Pa]: a step is a slip, or one figure of a weather report. Common practice, no source. */
    private static final double BAROMETER_STEP = 600;

    /** Nor a thermometer at the intake [K]. Common practice, no source. */
    private static final double THERMOMETER_STEP = 12;

    /** Air this dry is not met outside of a desert's noon: it is a share written as per cent. Common practice, no source. */
    private static final double DRIEST = 0.02;

    /** What the standard atmosphere has at sea level [Pa] (ISO 2533). */
    private static final double STANDARD_ATMOSPHERE = 101_325;

    /** Where weather alone makes more than this between sessions as read, it is said. Judgement. */
    private static final double WEATHER_SHARE = 0.002;

    /** What a bench for engines of this size has, from least to most; judgement, no source. */
    private static final Map<BenchFigure, double[]> USUAL = new EnumMap<>(Map.ofEntries(
            Map.entry(BenchFigure.DRUM_INERTIA, new double[] {1e-3, 500}),
            Map.entry(BenchFigure.DRUM_MASS, new double[] {0.5, 3000}),
            Map.entry(BenchFigure.DRUM_DIAMETER, new double[] {0.03, 3}),
            Map.entry(BenchFigure.ENGINE_TURNS, new double[] {0.05, 40}),
            Map.entry(BenchFigure.ENGINE_INERTIA, new double[] {1e-5, 2}),
            Map.entry(BenchFigure.DRIVE_EFFICIENCY, new double[] {0.6, 1}),
            Map.entry(BenchFigure.ARM, new double[] {0.03, 3}),
            Map.entry(BenchFigure.MASS, new double[] {20, 3000}),
            Map.entry(BenchFigure.ROLL_OUT, new double[] {0.3, 4})));

    private final DynoSheet sheet;
    private final Weather weather;
    private final List<Finding> found = new ArrayList<>();
    private final List<String> doubts = new ArrayList<>();

    private Mistakes(DynoSheet sheet, Weather weather) {
        this.sheet = sheet;
        this.weather = weather;
    }

    /** Looks for all of them. */
    static Mistakes in(DynoSheet sheet, Weather weather) {
        Mistakes mistakes = new Mistakes(sheet, weather);
        mistakes.bench();
        mistakes.air();
        mistakes.weatherLeftIn();
        mistakes.order();
        mistakes.copied();
        mistakes.names();
        mistakes.rates();
        mistakes.checks();
        return mistakes;
    }

    /** What is found, each to be looked at. */
    List<Finding> found() {
        return List.copyOf(found);
    }

    /** Why no gain is proved until it is looked at, in words that follow "since"; empty where nothing is that grave. */
    List<String> doubts() {
        return doubts.stream().distinct().toList();
    }

    private void doubt(String why, String where, String what, String mend) {
        doubts.add(why);
        warn(where, what, mend);
    }

    private void warn(String where, String what, String mend) {
        found.add(new Finding(Finding.Kind.WARNING, where, what, mend));
    }

    private void bench() {
        USUAL.forEach((figure, range) -> {
            Optional<Stated> stated =
                    Optional.ofNullable(sheet.bench().figures().get(figure));
            stated.filter(s -> s.value().si() < range[0] || s.value().si() > range[1])
                    .ifPresent(s -> warn(
                            "bench." + figure.key(),
                            s.written() + " is not what a bench for such engines has",
                            "look at its unit; every torque hangs on it"));
        });
    }

    // ---- air

    private void air() {
        for (DynoSheet.Session session : sheet.sessions()) {
            session.air()
                    .humidity()
                    .filter(h -> h.value().si() < DRIEST)
                    .ifPresent(h -> doubt(
                            "a humidity was not read",
                            "session " + session.name(),
                            "a relative humidity of " + h.written() + " is drier than air is",
                            "write it as 46 %, or as 0.46 without a unit"));
        }
        step(
                "barometer",
                DynoSheet.Air::pressure,
                BAROMETER_STEP,
                "; was one taken from a weather report, which is brought to sea level?");
        step(
                "thermometer",
                DynoSheet.Air::temperature,
                THERMOMETER_STEP,
                "; was one read in another unit, or in the sun?");
        List<Stated> pressures = sheet.sessions().stream()
                .flatMap(s -> s.air().pressure().stream())
                .toList();
        if (pressures.size() > 1
                && pressures.stream().allMatch(p -> Math.abs(p.value().si() - STANDARD_ATMOSPHERE) < 1)) {
            doubt(
                    "the barometer was not read",
                    "air",
                    "all sessions stand at " + pressures.get(0).written()
                            + ", which is the standard atmosphere and not what a barometer shows three times",
                    "read the barometer at the bench, in every session");
        }
    }

    private void step(String instrument, Function<DynoSheet.Air, Optional<Stated>> read, double most, String question) {
        List<DynoSheet.Session> with = sheet.sessions().stream()
                .filter(s -> read.apply(s.air()).isPresent())
                .toList();
        for (int i = 1; i < with.size(); i++) {
            DynoSheet.Session before = with.get(i - 1);
            DynoSheet.Session after = with.get(i);
            Stated first = read.apply(before.air()).orElseThrow();
            Stated second = read.apply(after.air()).orElseThrow();
            boolean isOneDay = before.date().equals(after.date());
            if (isOneDay && Math.abs(second.value().si() - first.value().si()) > most) {
                doubt(
                        "barometer or thermometer step further than weather does between sessions",
                        "sessions " + before.name() + " and " + after.name(),
                        "the " + instrument + " goes from " + first.written() + " to " + second.written()
                                + ", further than weather does from one session to the next; a slip there makes a gain or hides one",
                        "look at both again" + question);
            }
        }
    }

    /** As read, the weather is in every figure. */
    private void weatherLeftIn() {
        if (sheet.standard().isPresent()) {
            return;
        }
        List<Double> factors = sheet.sessions().stream()
                .filter(s -> !s.check())
                .flatMap(s -> weather.factor(s.air(), Optional.of(AirStandard.ISO_1585)).stream())
                .map(f -> f.factor().value())
                .toList();
        double low = factors.stream().mapToDouble(f -> f).min().orElse(1);
        double high = factors.stream().mapToDouble(f -> f).max().orElse(1);
        if (high / low - 1 > WEATHER_SHARE) {
            doubt(
                    "the weather is in these figures",
                    "standard",
                    String.format(
                            Locale.ROOT,
                            "figures are as read; by %s the air alone makes %.1f %% between these sessions, and that is in every gain",
                            AirStandard.ISO_1585.label(),
                            100 * (high / low - 1)),
                    "write 'standard: " + AirStandard.ISO_1585.key()
                            + "', unless the dynamometer corrected its figures already: then name its standard in the notes and leave the air out");
        }
    }

    // ---- order and names

    private void order() {
        DynoSheet.Session before = null;
        for (DynoSheet.Session session : sheet.sessions()) {
            if (date(session).isEmpty()) {
                continue;
            }
            if (before != null && date(session).get().isBefore(date(before).orElseThrow())) {
                doubt(
                        "the sessions do not stand in the order of their dates",
                        "session " + session.name(),
                        "its date, " + session.date() + ", lies before that of session " + before.name()
                                + " above it; drift is reckoned in the order of the sheet",
                        "put the sessions in the order in which they were run, or mend the date");
            }
            before = session;
        }
    }

    private static Optional<LocalDate> date(DynoSheet.Session session) {
        try {
            return session.date().isEmpty() ? Optional.empty() : Optional.of(LocalDate.parse(session.date()));
        } catch (DateTimeParseException none) {
            return Optional.empty();
        }
    }

    /** Figures that were written down by hand and are those of another session, all of them. */
    private void copied() {
        Map<List<DynoSheet.Evidence>, String> seen = new HashMap<>();
        for (DynoSheet.Session session : sheet.sessions()) {
            List<DynoSheet.Evidence> figures =
                    session.pulls().stream().map(DynoSheet.Pull::evidence).toList();
            if (figures.size() < 2 || figures.stream().anyMatch(e -> e instanceof DynoSheet.Log)) {
                continue;
            }
            String before = seen.putIfAbsent(figures, session.name());
            if (before != null) {
                doubt(
                        "two sessions show the same to the last digit",
                        "session " + session.name(),
                        "its figures are those of session " + before
                                + " to the last digit, which no engine shows twice",
                        "write what was read in it");
            }
        }
    }

    /** Loggers keep their rate: where it is told by hand, and differently, the slower one seems to pull harder. */
    private void rates() {
        Map<Double, String> rates = new LinkedHashMap<>();
        for (DynoSheet.Session session : sheet.sessions()) {
            for (DynoSheet.Pull pull : session.pulls()) {
                if (pull.evidence() instanceof DynoSheet.Log log) {
                    log.rate().ifPresent(r -> rates.putIfAbsent(r.si(), r.written() + " (" + log.file() + ")"));
                }
            }
        }
        if (rates.size() > 1) {
            doubt(
                    "logs are read at different rates",
                    "rate",
                    "rows a second are told as " + String.join(" and ", rates.values())
                            + "; torque on a drum goes with the square of the rate",
                    "look at the logger; write one rate, or log the time");
        }
    }

    private void checks() {
        String undated = sheet.sessions().stream()
                .filter(s -> s.check() && s.date().isEmpty())
                .map(DynoSheet.Session::name)
                .collect(Collectors.joining(", "));
        if (!undated.isEmpty()) {
            warn(
                    "sessions " + undated,
                    "a reference engine was run on a day that is not said, so it checks no day",
                    "write their 'date'");
        }
    }

    private void names() {
        Map<String, Set<String>> alike = sheet.sessions().stream()
                .map(DynoSheet.Session::setup)
                .collect(Collectors.groupingBy(
                        s -> s.strip().replaceAll("\\s+", " ").toLowerCase(Locale.ROOT),
                        java.util.LinkedHashMap::new,
                        Collectors.toCollection(LinkedHashSet::new)));
        alike.values().stream()
                .filter(names -> names.size() > 1)
                .forEach(names -> warn(
                        "setups",
                        names.stream().map(n -> "'" + n + "'").collect(Collectors.joining(" and "))
                                + " are written as two setups, so one is held against the other",
                        "write one name alike in all sessions, if one is meant"));
    }
}
