package longthrow.core.dyno;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Predicate;
import longthrow.core.answer.Finding;
import longthrow.core.gain.AirCorrection;
import longthrow.core.gain.AirStandard;
import longthrow.core.gain.Campaign;
import longthrow.core.gain.GainSentences;
import longthrow.core.measurement.Measured;
import longthrow.core.quantity.Dimension;
import longthrow.core.quantity.Quantity;
import longthrow.core.quantity.Units;
import longthrow.core.reduce.SpeedGrid;

/**
 * Sessions as visits of an engine to a dynamometer: the runs of each that are kept, corrected by one standard. The same rule for warm-up as for a gain ({@link Campaign#WARM_UP}); what its owner set
 * aside and what slipped is out too.
 */
final class Visits {
    /**
     * A kept run.
     * @param figures as read
     * @param factor  of the weather
     */
    record Kept(RunFigures figures, double factor) {}

    /**
     * One session.
     * @param dyno where; empty for the sheet's own where it has no name
     * @param date empty where it says none
     * @param kept one or more
     */
    record Visit(DynoSheet.Session session, String dyno, Optional<LocalDate> date, List<Kept> kept) {}

    private final DynoSheet sheet;
    private final List<Visit> all = new ArrayList<>();

    /**
     * Of a sheet that is corrected.
     * @param main     name of the dynamometer that gains are told on; of another one only tables and peaks are used, for its logs would be reckoned with the figures of this bench
     * @param findings takes what is not used and why
     */
    Visits(
            DynoSheet sheet,
            AirStandard standard,
            String main,
            List<Reading.Ran> ran,
            Weather weather,
            List<Finding> findings) {
        this.sheet = sheet;
        for (DynoSheet.Session session : sheet.sessions()) {
            String dyno = dyno(sheet, session);
            boolean isOwnBench = dyno.equals(main) || dyno.equals(sheet.bench().name());
            List<Reading.Ran> told = ran.stream()
                    .filter(r -> r.session().name().equals(session.name())
                            && r.figures().isPresent())
                    .filter(r -> isOwnBench || !(r.pull().evidence() instanceof DynoSheet.Log))
                    .toList();
            List<Kept> kept = new ArrayList<>();
            for (Reading.Ran one : told.subList(Math.min(Campaign.WARM_UP, told.size()), told.size())) {
                Optional<AirCorrection> air = weather.factor(one.pull().airIn(session), Optional.of(standard));
                if (one.aside().isEmpty() && !one.slipped() && air.isPresent()) {
                    kept.add(new Kept(
                            one.figures().orElseThrow(), air.get().factor().value()));
                }
            }
            Optional<LocalDate> date =
                    session.date().isEmpty() ? Optional.empty() : Optional.of(LocalDate.parse(session.date()));
            if (!kept.isEmpty()) {
                all.add(new Visit(session, dyno, date, List.copyOf(kept)));
            } else if (session.check()) {
                findings.add(new Finding(
                        Finding.Kind.NOTE,
                        "session " + session.name(),
                        GainSentences.noFigureOfADay(isOwnBench, session.air().isKnown()),
                        ""));
            }
            if (session.check() && date.isEmpty()) {
                findings.add(new Finding(
                        Finding.Kind.NOTE,
                        "session " + session.name(),
                        "it ran the reference engine and says no date, so no day is checked by it",
                        "write 'date: 2026-05-02', with its own day"));
            }
        }
    }

    /** By its name; that of the bench where a session says none. */
    static String dyno(DynoSheet sheet, DynoSheet.Session session) {
        return session.dyno().isEmpty() ? sheet.bench().name() : session.dyno();
    }

    List<Visit> all() {
        return all;
    }

    List<Visit> where(Predicate<Visit> holds) {
        return all.stream().filter(holds).toList();
    }

    /** Kept runs of each date, by date; sessions without one are left out. */
    static Map<LocalDate, List<Kept>> byDate(List<Visit> visits) {
        Map<LocalDate, List<Kept>> dated = new TreeMap<>();
        visits.forEach(v -> v.date()
                .ifPresent(d -> dated.computeIfAbsent(d, k -> new ArrayList<>()).addAll(v.kept())));
        return dated;
    }

    /** As by date; sessions without one are one visit together, for nothing says that they were days apart. */
    static List<List<Kept>> days(List<Visit> visits) {
        List<List<Kept>> days = new ArrayList<>(byDate(visits).values());
        List<Kept> undated = visits.stream()
                .filter(v -> v.date().isEmpty())
                .flatMap(v -> v.kept().stream())
                .toList();
        if (!undated.isEmpty()) {
            days.add(undated);
        }
        return days;
    }

    /**
     * What runs are told by, when they are held against each other.
     * @param of        in words
     * @param dimension of the figure
     * @param speeds    at which the mean torque is taken [rad/s]; empty for the peak
     */
    record Figure(String of, Dimension dimension, List<Double> speeds) {
        /** Mean torque over the speeds by trapezoids, which is the area over their span; or the peak. Corrected. */
        double of(Kept run) {
            if (speeds.isEmpty()) {
                return run.factor()
                        * run.figures().peak(dimension).orElseThrow().figure().value();
            }
            double area = 0;
            for (int i = 1; i < speeds.size(); i++) {
                area += (speeds.get(i) - speeds.get(i - 1))
                        / 2
                        * (run.figures().torque(speeds.get(i)) + run.figures().torque(speeds.get(i - 1)));
            }
            return run.factor() * area / (speeds.get(speeds.size() - 1) - speeds.get(0));
        }

        double mean(List<Kept> runs) {
            return runs.stream().mapToDouble(this::of).average().orElseThrow();
        }
    }

    /** The area over the speeds that all have and that are used; the peak where some are a peak alone; empty where peaks are of both kinds. */
    Optional<Figure> figure(List<Visit> visits) {
        List<RunFigures> runs = visits.stream()
                .flatMap(v -> v.kept().stream())
                .map(Kept::figures)
                .toList();
        if (runs.isEmpty()) {
            return Optional.empty();
        }
        if (runs.stream().allMatch(RunFigures::isCurve)) {
            List<Double> speeds = speeds(runs);
            if (speeds.size() > 1) {
                return Optional.of(new Figure(
                        String.format(
                                java.util.Locale.ROOT,
                                "mean torque from %.0f to %.0f rpm",
                                Units.RPM.fromSi(speeds.get(0)),
                                Units.RPM.fromSi(speeds.get(speeds.size() - 1))),
                        Dimension.TORQUE,
                        speeds));
            }
        }
        for (Dimension dimension : List.of(Dimension.POWER, Dimension.TORQUE)) {
            if (runs.stream()
                    .allMatch(r -> r.peak(dimension)
                            .filter(p -> p.figure().value() > 0)
                            .isPresent())) {
                return Optional.of(new Figure("peak " + dimension.plainName(), dimension, List.of()));
            }
        }
        return Optional.empty();
    }

    private List<Double> speeds(List<RunFigures> runs) {
        double low = Math.max(
                sheet.from().map(Quantity::si).orElse(0.0),
                runs.stream().mapToDouble(r -> r.reach()[0]).max().orElseThrow());
        double high = Math.min(
                sheet.to().map(Quantity::si).orElse(Double.POSITIVE_INFINITY),
                runs.stream().mapToDouble(r -> r.reach()[1]).min().orElseThrow());
        List<List<Double>> written =
                runs.stream().map(RunFigures::speeds).distinct().toList();
        List<Double> speeds = new ArrayList<>();
        if (written.size() == 1 && !written.get(0).isEmpty()) {
            speeds.addAll(written.get(0));
        } else {
            SpeedGrid.between(Units.RPM.fromSi(low), Units.RPM.fromSi(high)).ifPresent(grid -> {
                for (int i = 0; i < grid.count(); i++) {
                    speeds.add(Units.RPM.toSi(grid.rpm(i)));
                }
            });
        }
        return speeds.stream()
                .filter(s -> s >= low * (1 - RunFigures.SAME) && s <= high * (1 + RunFigures.SAME))
                .filter(s -> runs.stream().allMatch(r -> r.torque(s) > 0))
                .toList();
    }

    /** Relative scatter of runs about the mean of their own list, pooled; empty where no list has two. */
    static Optional<Spread> spread(List<? extends List<Double>> lists) {
        double squares = 0;
        int freedom = 0;
        for (List<Double> list : lists) {
            double mean = list.stream().mapToDouble(Math::log).average().orElse(0);
            squares += list.stream()
                    .mapToDouble(v -> Math.pow(Math.log(v) - mean, 2))
                    .sum();
            freedom += list.size() - 1;
        }
        return freedom > 0 ? Optional.of(new Spread(Math.sqrt(squares / freedom), freedom)) : Optional.empty();
    }

    /**
     * Scatter as a share.
     * @param deviation of one
     * @param freedom   degrees of freedom
     */
    record Spread(double deviation, double freedom) {
        /** As a normal deviation whose 95 % is as wide as Student's of so few. */
        double widened() {
            return deviation
                    * longthrow.core.measurement.StudentT.factor(Measured.COVERAGE, freedom)
                    / longthrow.core.measurement.Source.NORMAL_95;
        }
    }
}
