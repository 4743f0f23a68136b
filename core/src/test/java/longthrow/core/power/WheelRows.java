package longthrow.core.power;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.stream.Collectors;
import longthrow.core.gas.Fuel;
import longthrow.core.measurement.Measured;

/**
 * Torque measured at the rear wheel beside the torque predicted at the crankshaft, at the speeds that were measured. What lies between is not predicted: one factor for each group (one dynamometer, one sort of drive), by least squares of
 * the logarithm over all points of the group.
 */
final class WheelRows {
    /** Groups whose ratios from engine to engine are scored: of a kind, on one dynamometer, each with torque and power printed. */
    static final List<String> COMPARED = List.of("150-trio", "450-mx-2021");

    static final double RATIO_ASKED = 0.03;
    static final double LEVEL_ASKED = 0.06;

    private WheelRows() {}

    /** One published figure: torque at a speed, whether it was printed as that or as power. */
    record Point(String id, String group, String what, double rpm, double measured, double predicted) {
        /** Logarithm of the factor that would make this one right. */
        double wanted() {
            return Math.log(measured / predicted);
        }
    }

    /** What was predicted of one group with its factor. */
    record Group(String name, List<Point> points) {
        double factor() {
            return Math.exp(points.stream().mapToDouble(Point::wanted).average().orElseThrow());
        }

        double level(Point point) {
            return factor() * point.predicted() / point.measured() - 1;
        }

        /** One figure cannot be wrong after a factor of its own. */
        boolean tells() {
            return points.size() > 1;
        }
    }

    /** Ratio of one engine's figure to another's. */
    record Ratio(Point one, Point other) {
        double error() {
            return Math.exp(other.wanted() - one.wanted()) - 1;
        }
    }

    static Figures figures(Map<String, String> row) {
        String name = PublishedEngine.text(row, "class");
        int valves = Integer.parseInt(PublishedEngine.text(row, "valves"));
        Kind kind = new Kind(
                name.startsWith("motocross") ? Kind.Use.COMPETITION : Kind.Use.ROAD,
                PublishedEngine.cooling(PublishedEngine.text(row, "cooling")),
                Kind.Layout.OVERHEAD_CAM, // all of them
                valves / 2,
                valves / 2,
                Kind.Basis.MAKER);
        Map<Needed, Measured> known = new EnumMap<>(Needed.class);
        PublishedEngine.put(known, Needed.BORE, PublishedEngine.number(row, "bore_mm"), 1e-3);
        PublishedEngine.put(known, Needed.STROKE, PublishedEngine.number(row, "stroke_mm"), 1e-3);
        PublishedEngine.put(known, Needed.COMPRESSION_RATIO, PublishedEngine.number(row, "compression_ratio"), 1);
        return Figures.of(kind, Fuel.petrol(), known);
    }

    /** @param only the groups that are wanted */
    static List<Group> run(List<String> only) {
        List<Map<String, String>> curves = PublishedEngine.rows("measured_curves");
        List<Asked> asked = new ArrayList<>();
        for (Map<String, String> row : PublishedEngine.rows("measured_wheel_dyno")) {
            String id = PublishedEngine.text(row, "id");
            String group = PublishedEngine.text(row, "group");
            if (!only.contains(group)) {
                continue;
            }
            Figures figures = figures(row);
            for (String what : new String[] {"torque", "power"}) {
                String at = "torque".equals(what) ? "peak_torque_Nm" : "torque_at_peak_power_Nm";
                OptionalDouble torque = PublishedEngine.number(row, at);
                OptionalDouble rpm = PublishedEngine.number(row, "peak_" + what + "_rpm");
                if (torque.isPresent()) {
                    asked.add(new Asked(id, group, what, rpm.orElseThrow(), torque.getAsDouble(), figures));
                }
            }
            double peak = PublishedEngine.number(row, "peak_power_rpm").orElseThrow();
            for (Map<String, String> step : curves) {
                double rpm = PublishedEngine.number(step, "rpm").orElseThrow();
                if (PublishedEngine.text(step, "engine").startsWith(id + " ") && rpm != peak) {
                    double torque =
                            PublishedEngine.number(step, "torque_Nm_computed").orElseThrow();
                    asked.add(new Asked(id, group, "curve", rpm, torque, figures));
                }
            }
        }
        Map<String, List<Point>> found =
                new TreeMap<>(asked.parallelStream().map(Asked::run).collect(Collectors.groupingBy(Point::group)));
        return found.entrySet().stream()
                .map(entry -> new Group(entry.getKey(), entry.getValue()))
                .toList();
    }

    private record Asked(String id, String group, String what, double rpm, double measured, Figures figures) {
        Point run() {
            return new Point(
                    id, group, what, rpm, measured, Truth.at(figures, rpm).torque());
        }
    }

    static List<String> groups() {
        return PublishedEngine.rows("measured_wheel_dyno").stream()
                .map(row -> PublishedEngine.text(row, "group"))
                .distinct()
                .toList();
    }

    /** Of the groups that are compared: every two engines, torque with torque and power with power. */
    static List<Ratio> ratios(List<Group> groups) {
        List<Ratio> ratios = new ArrayList<>();
        for (Group group : groups) {
            if (COMPARED.contains(group.name())) {
                for (Point one : group.points()) {
                    for (Point other : group.points()) {
                        if (one.what().equals(other.what()) && one.id().compareTo(other.id()) < 0) {
                            ratios.add(new Ratio(one, other));
                        }
                    }
                }
            }
        }
        return ratios;
    }

    static String line(Group group, Point point) {
        return String.format(
                Locale.ROOT,
                "| %s | %s | %s | %.0f | %.2f | %.2f | %.3f | %s |",
                group.name(),
                point.id(),
                point.what(),
                point.rpm(),
                point.measured(),
                point.predicted(),
                group.factor(),
                group.tells() ? String.format(Locale.ROOT, "%+.1f %%", 100 * group.level(point)) : "one figure only");
    }

    static String line(Ratio ratio) {
        return String.format(
                Locale.ROOT,
                "| %s | %s to %s | %s | %.3f | %.3f | %+.1f %% |",
                ratio.one().group(),
                ratio.one().id(),
                ratio.other().id(),
                ratio.one().what(),
                ratio.one().measured() / ratio.other().measured(),
                ratio.one().predicted() / ratio.other().predicted(),
                100 * ratio.error());
    }

    static String section(List<Group> groups) {
        List<Ratio> ratios = ratios(groups);
        List<Double> levels = groups.stream()
                .filter(Group::tells)
                .flatMap(group -> group.points().stream().map(group::level))
                .map(Math::abs)
                .toList();
        return """

                ## At the wheel

                Torque measured at the rear wheel (power is scored as the torque that it is) beside the torque predicted at the crankshaft at the same speed, bore, stroke and ratio as printed (most of them from memory, says the column
                `obtained`), the rest the usual of the kind, motocross as competition, the others as road, in the air of DIN 70020: which correction a magazine took is not told. One factor for each group, by least squares of the
                logarithm over its figures, holds drive, tyre, dynamometer and correction; it is not predicted. The usual carburettor stands for injection, and the usual exhaust pipe for one that was made for the engine.

                | group | row | figure | rpm | measured [N·m] | predicted at the crankshaft | factor | error after the factor |
                |---|---|---|---|---|---|---|---|
                """
                + groups.stream()
                        .flatMap(group -> group.points().stream().map(point -> line(group, point)))
                        .collect(Collectors.joining("\n"))
                + """


                | group | engines | figure | ratio measured | predicted | error |
                |---|---|---|---|---|---|
                """
                + ratios.stream().map(WheelRows::line).collect(Collectors.joining("\n"))
                + "\n\n| asked | measured |\n|---|---|\n"
                + Truth.score(
                        "a factor that a drive can have: below 1",
                        "%d of %d; above 1 the prediction is too low, whatever the drive takes: %s",
                        groups.stream().filter(group -> group.factor() < 1).count(),
                        groups.size(),
                        groups.stream()
                                .filter(group -> group.factor() >= 1)
                                .map(group -> String.format(Locale.ROOT, "%s %.2f", group.name(), group.factor()))
                                .collect(Collectors.joining(", ")))
                + Truth.score(
                        "ratios inside 150-trio and 450-mx-2021 within 3 %",
                        "%d of %d; worst %.1f %%",
                        ratios.stream()
                                .filter(ratio -> Math.abs(ratio.error()) <= RATIO_ASKED)
                                .count(),
                        ratios.size(),
                        100
                                * ratios.stream()
                                        .mapToDouble(ratio -> Math.abs(ratio.error()))
                                        .max()
                                        .orElseThrow())
                + Truth.score(
                        "level after one factor for a group within 6 %",
                        "%d of %d; worst %.1f %%",
                        levels.stream().filter(level -> level <= LEVEL_ASKED).count(),
                        levels.size(),
                        100
                                * levels.stream()
                                        .mapToDouble(Double::doubleValue)
                                        .max()
                                        .orElseThrow());
    }
}
