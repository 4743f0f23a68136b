package longthrow.core.dyno;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import longthrow.core.answer.DynoRuns;
import longthrow.core.answer.Finding;
import longthrow.core.gain.AirStandard;
import longthrow.core.gain.DayCheck;
import longthrow.core.gain.GainSentences;
import longthrow.core.gain.LevelFactor;
import longthrow.core.gain.Trend;
import longthrow.core.quantity.FigurePrinter;

/** What one dynamometer shows beside another, what it shows from day to day with a reference engine, and what an engine does over dates. Never part of the verdict on a change. */
final class Levels {
    private final DynoSheet sheet;
    private final String main;
    private final String baseline;
    private final List<Finding> findings;
    private final FigurePrinter printer;
    private final List<DynoRuns.Day> days = new ArrayList<>();
    private final List<DynoRuns.Level> levels = new ArrayList<>();
    private final List<DynoRuns.Trend> trends = new ArrayList<>();

    /**
     * Of a sheet.
     * @param main     name of the dynamometer that gains are told on
     * @param findings takes warnings
     */
    Levels(
            DynoSheet sheet,
            String main,
            String baseline,
            List<Reading.Ran> ran,
            Weather weather,
            List<Finding> findings) {
        this.sheet = sheet;
        this.main = main;
        this.baseline = baseline;
        this.findings = findings;
        this.printer = new FigurePrinter(sheet.units());
        if (sheet.standard().isPresent()) {
            AirStandard standard = sheet.standard().get();
            Visits visits = new Visits(sheet, standard, main, ran, weather, findings);
            days(visits, standard);
            levels(visits, standard);
            trends(visits, standard);
        } else if (sheet.sessions().stream().anyMatch(s -> s.check() || !isMain(Visits.dyno(sheet, s)))) {
            findings.add(new Finding(
                    Finding.Kind.NOTE,
                    "standard",
                    "figures are as read, so days and dynamometers are not held against each other: the weather would be in it",
                    "write a standard, and the air of each session"));
        }
    }

    List<DynoRuns.Day> days() {
        return days;
    }

    List<DynoRuns.Level> levels() {
        return levels;
    }

    List<DynoRuns.Trend> trends() {
        return trends;
    }

    private boolean isMain(String dyno) {
        return dyno.equals(main);
    }

    /** For people. */
    static String named(String dyno) {
        return dyno.isEmpty() ? "the sheet's own" : dyno;
    }

    // ---- days

    /** An engine that goes to a dynamometer again and again. */
    private record Place(String dyno, String setup) {}

    private static Map<Place, List<Visits.Visit>> byPlace(List<Visits.Visit> visits) {
        Map<Place, List<Visits.Visit>> places = new LinkedHashMap<>();
        visits.forEach(
                v -> places.computeIfAbsent(new Place(v.dyno(), v.session().setup()), k -> new ArrayList<>())
                        .add(v));
        return places;
    }

    private void days(Visits visits, AirStandard standard) {
        byPlace(visits.where(v -> v.session().check())).forEach((place, there) -> {
            Map<LocalDate, List<Visits.Kept>> dated = Visits.byDate(there);
            visits.figure(there.stream().filter(v -> v.date().isPresent()).toList())
                    .ifPresent(figure -> {
                        List<Double> earlier = new ArrayList<>();
                        dated.forEach((date, runs) -> {
                            double today = figure.mean(runs);
                            day(place, date, figure, earlier, today, standard);
                            earlier.add(today);
                        });
                    });
        });
    }

    private void day(
            Place place,
            LocalDate date,
            Visits.Figure figure,
            List<Double> earlier,
            double today,
            AirStandard standard) {
        Optional<DayCheck> check = DayCheck.of(standard, earlier, today);
        String sentence = check.map(c -> GainSentences.day(
                        c, date.toString(), named(place.dyno()), place.setup(), figure.dimension(), printer))
                .orElseGet(() -> GainSentences.noDayCheck(date.toString(), named(place.dyno()), earlier.size()));
        DynoRuns.Standing standing = check.map(c -> c.isInside() ? DynoRuns.Standing.USUAL : DynoRuns.Standing.OFF)
                .orElse(DynoRuns.Standing.NOT_KNOWN);
        days.add(new DynoRuns.Day(
                named(place.dyno()),
                place.setup(),
                date.toString(),
                figure.of(),
                figure.dimension(),
                today,
                earlier.size(),
                check.map(DayCheck::expected).orElse(Double.NaN),
                check.map(DayCheck::halfWidth).orElse(Double.NaN),
                standing,
                sentence));
        if (standing == DynoRuns.Standing.OFF) {
            findings.add(new Finding(
                    Finding.Kind.WARNING, "dynamometer", sentence.replaceAll("\\.$", ""), GainSentences.dayMend()));
        }
    }

    /** What is to be said beside a gain whose sessions ran on days on which the dynamometer was off its level; empty where there is none. */
    List<String> besideGain(String setup) {
        Set<String> dates = new LinkedHashSet<>();
        sheet.sessions().stream()
                .filter(s -> !s.check() && !s.date().isEmpty() && isMain(Visits.dyno(sheet, s)))
                .filter(s -> s.setup().equals(setup) || s.setup().equals(baseline))
                .forEach(s -> dates.add(s.date()));
        List<String> off = days.stream()
                .filter(d -> d.standing() == DynoRuns.Standing.OFF
                        && d.dyno().equals(named(main))
                        && dates.contains(d.date()))
                .map(DynoRuns.Day::date)
                .distinct()
                .toList();
        return off.isEmpty() ? List.of() : List.of(GainSentences.gainOnDaysOff(setup, off, dates.size() == 1));
    }

    /** Without days on which the dynamometer was off its level: their figures are held against none of other days. */
    private List<Visits.Visit> atItsLevel(List<Visits.Visit> visits) {
        return visits.stream().filter(v -> !isOff(v.dyno(), v.date())).toList();
    }

    private boolean isOff(String dyno, Optional<LocalDate> date) {
        return days.stream()
                .anyMatch(d -> d.standing() == DynoRuns.Standing.OFF
                        && d.dyno().equals(named(dyno))
                        && date.map(LocalDate::toString)
                                .filter(d.date()::equals)
                                .isPresent());
    }

    private String leftOut(List<Visits.Visit> visits) {
        List<String> dates = visits.stream()
                .filter(v -> isOff(v.dyno(), v.date()))
                .map(v -> v.date().orElseThrow() + " on " + named(v.dyno()))
                .distinct()
                .toList();
        return dates.isEmpty() ? "" : " " + GainSentences.leftOut(dates);
    }

    // ---- dynamometers

    private void levels(Visits visits, AirStandard standard) {
        Set<String> others = new LinkedHashSet<>();
        sheet.sessions().stream()
                .map(s -> Visits.dyno(sheet, s))
                .filter(d -> !isMain(d))
                .forEach(others::add);
        others.forEach(other -> levels.add(level(other, visits, standard)));
    }

    private DynoRuns.Level level(String other, Visits visits, AirStandard standard) {
        List<LevelFactor.Both> both = new ArrayList<>();
        List<String> engines = engines(other, visits);
        for (String setup : engines) {
            both(setup, other, visits).ifPresent(both::add);
        }
        Optional<LevelFactor> factor = LevelFactor.of(named(other), named(main), standard, both);
        List<String> been = both.stream()
                .map(b -> GainSentences.been(b, named(other), named(main)))
                .toList();
        List<DynoRuns.Across> across =
                factor.map(f -> across(f, both, other, visits, standard)).orElse(List.of());
        return new DynoRuns.Level(
                named(other),
                named(main),
                been,
                factor.map(LevelFactor::factor).orElse(Double.NaN),
                factor.map(LevelFactor::halfWidth).orElse(Double.NaN),
                factor.map(LevelFactor::freedom).orElse(Double.NaN),
                factor.map(LevelFactor::engines).orElse(0),
                factor.map(GainSentences::level)
                                .orElseGet(() -> GainSentences.noLevelFactor(named(other), named(main), been))
                        + leftOut(visits.where(v -> engines.contains(v.session().setup()))),
                across);
    }

    /** Each reference engine that was on both; and of the setups of the sheet's own engine, which are one engine, the one that was on both most often. */
    private List<String> engines(String other, Visits visits) {
        Set<String> references = new LinkedHashSet<>();
        Set<String> setups = new LinkedHashSet<>();
        setups.add(baseline);
        visits.all().forEach(v -> setups.add(v.session().setup()));
        visits.where(v -> v.session().check())
                .forEach(v -> references.add(v.session().setup()));
        String best = "";
        int most = 0;
        for (String setup : setups) {
            int least = Math.min(
                    at(other, setup, visits).size(), at(main, setup, visits).size());
            if (!references.contains(setup) && least > most) {
                most = least;
                best = setup;
            }
        }
        return Stream.concat(references.stream(), Stream.of(best).filter(s -> !s.isEmpty()))
                .toList();
    }

    private List<Visits.Visit> sessions(String dyno, String setup, Visits visits) {
        return atItsLevel(
                visits.where(v -> v.dyno().equals(dyno) && v.session().setup().equals(setup)));
    }

    private List<List<Visits.Kept>> at(String dyno, String setup, Visits visits) {
        return Visits.days(sessions(dyno, setup, visits));
    }

    private Optional<LevelFactor.Both> both(String setup, String other, Visits visits) {
        List<List<Visits.Kept>> there = at(other, setup, visits);
        List<List<Visits.Kept>> here = at(main, setup, visits);
        if (there.isEmpty() || here.isEmpty()) {
            return Optional.empty();
        }
        return visits.figure(
                        Stream.concat(sessions(other, setup, visits).stream(), sessions(main, setup, visits).stream())
                                .toList())
                .map(figure -> new LevelFactor.Both(
                        setup,
                        there.stream().map(figure::mean).toList(),
                        here.stream().map(figure::mean).toList()));
    }

    /** Sessions on the other dynamometer with a setup that is not what the factor is from. */
    private List<DynoRuns.Across> across(
            LevelFactor factor, List<LevelFactor.Both> both, String other, Visits visits, AirStandard standard) {
        List<DynoRuns.Across> across = new ArrayList<>();
        List<Visits.Visit> base = sessions(main, baseline, visits).stream()
                .filter(v -> !v.session().check())
                .toList();
        for (Visits.Visit visit : atItsLevel(
                visits.where(v -> v.dyno().equals(other) && !v.session().check()))) {
            String setup = visit.session().setup();
            if (both.stream().anyMatch(b -> b.name().equals(setup))) {
                continue;
            }
            List<Visits.Visit> together =
                    Stream.concat(Stream.of(visit), base.stream()).toList();
            Optional<Visits.Figure> figure = base.isEmpty() ? Optional.empty() : visits.figure(together);
            Optional<LevelFactor.Ratio> ratio = figure.flatMap(f -> ratio(f, visit, base, factor, both, standard));
            across.add(new DynoRuns.Across(
                    visit.session().name(),
                    setup,
                    baseline,
                    figure.map(Visits.Figure::of).orElse(""),
                    ratio.map(LevelFactor.Ratio::ratio).orElse(Double.NaN),
                    ratio.map(LevelFactor.Ratio::halfWidth).orElse(Double.NaN),
                    ratio.map(r -> GainSentences.across(
                                    visit.session().name(),
                                    setup,
                                    baseline,
                                    factor,
                                    r,
                                    figure.orElseThrow().of()))
                            .orElseGet(() ->
                                    GainSentences.notAcross(visit.session().name(), baseline, named(main)))));
        }
        return across;
    }

    /**
     * The doubt of each side is what runs scatter and, where it can be told, what visits scatter: a further visit is a further day. Empty where neither can be told.
     */
    private Optional<LevelFactor.Ratio> ratio(
            Visits.Figure figure,
            Visits.Visit visit,
            List<Visits.Visit> base,
            LevelFactor factor,
            List<LevelFactor.Both> both,
            AirStandard standard) {
        List<List<Double>> runs = Stream.concat(Stream.of(visit), base.stream())
                .map(v -> v.kept().stream().map(figure::of).toList())
                .toList();
        Optional<Visits.Spread> ofRuns = Visits.spread(runs);
        Optional<Visits.Spread> ofVisits = Visits.spread(
                both.stream().flatMap(b -> Stream.of(b.onFrom(), b.onTo())).toList());
        if (ofRuns.isEmpty()) {
            return Optional.empty();
        }
        // by engines that were on each once, their differences hold the scatter of visits: that of one is that of the
        // mean times the root of their number
        double day =
                ofVisits.map(Visits.Spread::widened).orElse(factor.standardUncertainty() * Math.sqrt(factor.engines()));
        List<List<Visits.Kept>> baseDays = Visits.days(base);
        List<Visits.Kept> baseRuns =
                base.stream().flatMap(v -> v.kept().stream()).toList();
        double there = figure.mean(visit.kept());
        double here = figure.mean(baseRuns);
        double one = ofRuns.get().widened();
        return LevelFactor.compare(
                new LevelFactor.Figure(
                        named(main),
                        standard,
                        here,
                        here * Math.hypot(one / Math.sqrt(baseRuns.size()), day / Math.sqrt(baseDays.size()))),
                new LevelFactor.Figure(
                        factor.from(),
                        standard,
                        there,
                        there * Math.hypot(one / Math.sqrt(visit.kept().size()), day)),
                Optional.of(factor));
    }

    // ---- dates

    private void trends(Visits visits, AirStandard standard) {
        byPlace(visits.where(v -> v.session().check() || v.session().setup().equals(baseline)))
                .forEach((place, all) -> {
                    boolean isReference = all.stream().anyMatch(v -> v.session().check());
                    // a drift of the dynamometer itself is seen by the reference engine on all its days
                    List<Visits.Visit> there = isReference ? all : atItsLevel(all);
                    Map<LocalDate, List<Visits.Kept>> dated = Visits.byDate(there);
                    if (dated.size() > 1) {
                        visits.figure(there.stream()
                                        .filter(v -> v.date().isPresent())
                                        .toList())
                                .ifPresent(figure -> trend(
                                        place, figure, dated, isReference, isReference ? "" : leftOut(all), standard));
                    }
                });
    }

    private void trend(
            Place place,
            Visits.Figure figure,
            Map<LocalDate, List<Visits.Kept>> dated,
            boolean isReference,
            String leftOut,
            AirStandard standard) {
        List<Trend.Dated> points = new ArrayList<>();
        List<DynoRuns.Dated> told = new ArrayList<>();
        dated.forEach((date, runs) -> {
            double mean = figure.mean(runs);
            points.add(new Trend.Dated(date.toEpochDay(), mean));
            told.add(new DynoRuns.Dated(
                    date.toString(),
                    points.get(points.size() - 1).day() - points.get(0).day(),
                    mean));
        });
        Optional<Trend> trend = Trend.of(place.setup(), points);
        trends.add(new DynoRuns.Trend(
                place.setup(),
                named(place.dyno()),
                figure.of(),
                figure.dimension(),
                told,
                trend.map(Trend::perDay).orElse(Double.NaN),
                trend.map(Trend::halfWidth).orElse(Double.NaN),
                trend.filter(Trend::isShown).isPresent(),
                trend.map(t -> GainSentences.trend(t, named(place.dyno()), standard, isReference))
                                .orElseGet(
                                        () -> GainSentences.noTrend(place.setup(), named(place.dyno()), points.size()))
                        + leftOut));
    }
}
