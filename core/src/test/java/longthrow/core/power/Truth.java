package longthrow.core.power;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import longthrow.core.measurement.Measured;
import longthrow.core.pipe.PlainKernel;

/**
 * Writes docs/truth.md and its plots: the prediction beside every published engine that has a rating, good or bad. Run by hand after a change of what is predicted; some minutes. {@link TruthTest} holds what it says against what
 * a fresh run of some rows says.
 */
final class Truth {
    static final Path PAGE = Path.of("docs/truth.md");
    private static final double RPM = Math.PI / 30;

    private Truth() {}

    /** What came of one engine. */
    record Row(
            PublishedEngine engine,
            Measured torque,
            double power,
            double volumetric,
            double friction,
            List<Curve.Point> curve,
            double peakSpeed,
            List<Map.Entry<Needed, Double>> moves) {
        double torqueError() {
            return torque.value() / engine.torque().orElseThrow() - 1;
        }

        double powerError() {
            return power / 1000 / engine.power().orElseThrow() - 1;
        }

        double halfWidth() {
            return 1.96 * torque.standardUncertainty() / torque.value();
        }

        boolean covered() {
            return Math.abs(torqueError()) / (1 + torqueError()) <= halfWidth();
        }
    }

    static Curve.Point at(Figures figures, double rpm) {
        return Curve.at(figures, rpm * RPM, Curve.MESH, PlainKernel::new, () -> true)
                .orElseThrow();
    }

    /** Torque at the rated speed with its doubt, power at its own, and the curve. */
    static Row row(PublishedEngine engine) {
        Figures figures = engine.figures();
        double rated = engine.torqueSpeed().orElseThrow();
        List<Lean.Variant> variants = Lean.variants(figures);
        Map<Lean.Variant, Double> found = new ConcurrentHashMap<>();
        variants.parallelStream()
                .forEach(variant ->
                        found.put(variant, at(variant.figures(), rated).torque()));
        Measured torque = Lean.doubt(figures, variants, variant -> found.getOrDefault(variant, Double.NaN));
        Curve.Point there = at(figures, rated);
        double top = engine.powerSpeed().orElseThrow();
        List<Curve.Point> curve =
                IntStream.rangeClosed(4, 12).mapToObj(i -> top * i / 10).collect(Collectors.toList()).parallelStream()
                        .map(rpm -> at(figures, rpm))
                        .toList();
        return new Row(
                engine,
                torque,
                at(figures, top).power(),
                there.point().charge().volumetric(),
                there.friction(),
                curve,
                peakSpeed(figures, top, curve),
                Lean.moves(variants, variant -> found.getOrDefault(variant, Double.NaN)).entrySet().stream()
                        .sorted(Comparator.comparingDouble(move -> -Math.abs(move.getValue())))
                        .limit(4)
                        .toList());
    }

    /** Speed of most torque [rpm], to a hundredth of the rated speed: what the points of the curve are too far apart to tell. */
    private static double peakSpeed(Figures figures, double top, List<Curve.Point> curve) {
        double best = curve.stream()
                        .max(Comparator.comparingDouble(Curve.Point::torque))
                        .orElseThrow()
                        .speed()
                / RPM;
        return IntStream.rangeClosed(-9, 9)
                        .mapToObj(i -> best + 0.01 * top * i)
                        .collect(Collectors.toList())
                        .parallelStream()
                        .map(rpm -> at(figures, rpm))
                        .max(Comparator.comparingDouble(Curve.Point::torque))
                        .orElseThrow()
                        .speed()
                / RPM;
    }

    public static void main(String[] arguments) throws IOException {
        List<Row> rows = new ArrayList<>();
        for (PublishedEngine engine : PublishedEngine.makers()) {
            if (engine.torque().isPresent()) {
                rows.add(row(engine));
                System.err.println(engine.id());
            }
        }
        Path folder = Path.of("docs/truth");
        Files.createDirectories(folder);
        for (Row row : rows) {
            Files.writeString(folder.resolve(row.engine().id() + ".svg"), plot(row), StandardCharsets.UTF_8);
        }
        Files.writeString(
                PAGE,
                page(rows)
                        + WheelRows.section(WheelRows.run(WheelRows.groups()))
                        + PaperEffects.section(PaperEffects.run())
                        + plots(rows),
                StandardCharsets.UTF_8);
    }

    // ---- the page

    static String line(Row row) {
        PublishedEngine engine = row.engine();
        return String.format(
                Locale.ROOT,
                "| %s | %s | %.1f | %.1f ± %.0f %% | %+.1f %% | %s | %.2f | %.2f | %+.1f %% | %.2f | %s |",
                engine.id(),
                engine.kind().basis().name().toLowerCase(Locale.ROOT).replace('_', ' '),
                engine.torque().orElseThrow(),
                row.torque().value(),
                100 * row.halfWidth(),
                100 * row.torqueError(),
                row.covered() ? "yes" : "**no**",
                engine.power().orElseThrow(),
                row.power() / 1000,
                100 * row.powerError(),
                row.volumetric(),
                row.moves().stream()
                        .map(move -> move.getKey().label()
                                + String.format(
                                        Locale.ROOT,
                                        " %+.1f %%",
                                        100 * move.getValue() / row.torque().value()))
                        .collect(Collectors.joining(", ")));
    }

    private static double median(List<Double> values) {
        double[] sorted =
                values.stream().mapToDouble(Double::doubleValue).sorted().toArray();
        return 0.5 * (sorted[(sorted.length - 1) / 2] + sorted[sorted.length / 2]);
    }

    /** Torque of each by the mean BMEP of the others that were made for the same, each on its own basis; mean |error|. */
    private static double classConstant(List<Row> rows) {
        double sum = 0;
        for (Row row : rows) {
            List<Row> others = rows.stream()
                    .filter(other -> !other.engine().id().equals(row.engine().id()) && alike(row, other))
                    .toList();
            double mean = others.stream().mapToDouble(Truth::bmep).average().orElse(Double.NaN);
            sum += Math.abs(mean / bmep(row) - 1);
        }
        return sum / rows.size();
    }

    private static boolean alike(Row one, Row other) {
        return one.engine().kind().use() == other.engine().kind().use();
    }

    private static double bmep(Row row) {
        Figures figures = row.engine().figures();
        double bore = figures.number(Needed.BORE);
        double displacement = Math.PI / 4 * bore * bore * figures.number(Needed.STROKE);
        return row.engine().torque().orElseThrow() * 4 * Math.PI / displacement;
    }

    static String page(List<Row> rows) {
        List<Double> errors =
                rows.stream().map(row -> Math.abs(row.torqueError())).toList();
        long within = errors.stream().filter(error -> error <= 0.10).count();
        long covered = rows.stream().filter(Row::covered).count();
        Row best = rows.stream()
                .filter(row -> "E11".equals(row.engine().id()))
                .findFirst()
                .orElseThrow();
        double peak = best.peakSpeed();
        String text = """
                # The truth about `power`

                Prediction beside publication, good or bad. Written by one command (in docs/measurements.md, of `longthrow.core.power.Truth`), not by hand. Each engine is predicted
                from what is printed of it: bore, stroke, compression ratio, and valve heads, events or throttle where they are; the rest is the usual of its kind (`Usual`), the same for all. Nothing is tuned to an engine. Rows as in
                `core/src/test/resources/references/engines`, with their sources. Bands hold 95 %.

                | row | basis | torque [N·m] | predicted | error | in the band | power [kW] | predicted | error | volumetric efficiency | what moves the torque most, by its standard uncertainty |
                |---|---|---|---|---|---|---|---|---|---|---|
                """
                + rows.stream().map(Truth::line).collect(Collectors.joining("\n"))
                + "\n\n## Scores\n\n| asked | measured |\n|---|---|\n"
                + score(
                        "(a) the 95 % band covers 85 to 100 % of the rows",
                        "%d of %d, %.0f %%", covered, rows.size(), 100.0 * covered / rows.size())
                + score(
                        "(b) median half-width at most 15 %",
                        "%.1f %%",
                        100 * median(rows.stream().map(Row::halfWidth).toList()))
                + score(
                        "(b) half-width of E11 at most 8 %",
                        "%.1f %%: its exhaust pipe is not published", 100 * best.halfWidth())
                + score(
                        "(c) mean error beside that of the mean BMEP of the other rows of its use",
                        "%.1f %% (worst %.1f %%) beside %.1f %%%s; with classes as fine as the rows' own words such a constant reaches 4.8 %%, worst 10.4 %%: %s",
                        100 * mean(errors),
                        100
                                * errors.stream()
                                        .mapToDouble(Double::doubleValue)
                                        .max()
                                        .orElseThrow(),
                        100 * classConstant(rows),
                        mean(errors) > classConstant(rows) ? ": not beaten" : "",
                        mean(errors) < 0.048 ? "beaten on the mean, **not in the worst**" : "**not beaten**")
                + score("(d) median torque error at most 6 %", "%.1f %%", 100 * median(errors))
                + score(
                        "(d) 80 % of the rows within 10 %",
                        "%d of %d, %.0f %%", within, rows.size(), 100.0 * within / rows.size())
                + score("(d) E11 within 6 %", "%+.1f %%", 100 * best.torqueError())
                + score(
                        "(d) peak speed of E11 within 8 %",
                        "%.0f rpm against %.0f, %+.0f %%",
                        peak,
                        best.engine().torqueSpeed().orElseThrow(),
                        100 * (peak / best.engine().torqueSpeed().orElseThrow() - 1));
        return text + notes();
    }

    private static double mean(List<Double> values) {
        return values.stream().mapToDouble(Double::doubleValue).average().orElseThrow();
    }

    static String score(String asked, String format, Object... values) {
        return "| " + asked + " | " + String.format(Locale.ROOT, format, values) + " |\n";
    }

    private static String notes() {
        return """

                How the usual figures came to be, what was changed after the first run, and why: docs/decisions/0024.
                Not scored: E13 (no torque printed), E16 and E17 (no rating). E02 with E03 and E04 with E05 are one engine each on two bases. Rated points of governed engines are not peaks of a curve, so no peak speed is
                scored of them. A "gross maximum" of a maker does not say what was on the engine: it is taken as sold, in the air of SAE J607. Without filter and silencer the same engines are predicted 25 to 45 % above their rows.
                """;
    }

    private static String plots(List<Row> rows) {
        return "\n## Curves\n\nTorque by speed, its band at the rated speed, and the published points.\n\n"
                + rows.stream()
                        .map(row -> "![" + row.engine().id() + ": torque by speed](truth/"
                                + row.engine().id() + ".svg)")
                        .collect(Collectors.joining("\n"))
                + "\n";
    }

    // ---- a plot

    private static final int WIDE = 360;
    private static final int TALL = 220;
    private static final int LEFT = 44;
    private static final int LOW = 30;

    static String plot(Row row) {
        double top = row.engine().powerSpeed().orElseThrow() * 1.25;
        OptionalDouble ratedPower = row.engine().power();
        double most = 1.15
                * Math.max(
                        row.curve().stream()
                                .mapToDouble(Curve.Point::torque)
                                .max()
                                .orElseThrow(),
                        Math.max(
                                row.engine().torque().orElseThrow(),
                                row.torque().value() * (1 + row.halfWidth())));
        StringBuilder svg = new StringBuilder(String.format(
                Locale.ROOT,
                "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 %d %d\" font-family=\"sans-serif\" font-size=\"11\"><rect width=\"%d\" height=\"%d\" fill=\"#fff\"/>",
                WIDE,
                TALL,
                WIDE,
                TALL));
        svg.append(String.format(
                Locale.ROOT,
                "<path d=\"M%d 10V%dH%d\" fill=\"none\" stroke=\"#444\"/><text x=\"%d\" y=\"%d\">%.0f rpm</text><text x=\"4\" y=\"20\">%.0f N·m</text><text x=\"%d\" y=\"22\" font-weight=\"bold\">%s</text>",
                LEFT,
                TALL - LOW,
                WIDE - 8,
                WIDE - 70,
                TALL - 10,
                top,
                most,
                LEFT + 10,
                row.engine().id()));
        String line = row.curve().stream()
                .map(point ->
                        String.format(Locale.ROOT, "%.1f %.1f", x(point.speed() / RPM, top), y(point.torque(), most)))
                .collect(Collectors.joining("L", "M", ""));
        svg.append("<path d=\"").append(line).append("\" fill=\"none\" stroke=\"#1b6ca8\" stroke-width=\"2\"/>");
        double rated = row.engine().torqueSpeed().orElseThrow();
        svg.append(String.format(
                Locale.ROOT,
                "<path d=\"M%.1f %.1fV%.1f\" stroke=\"#1b6ca8\" stroke-width=\"5\" opacity=\"0.35\"/>",
                x(rated, top),
                y(row.torque().value() * (1 - row.halfWidth()), most),
                y(row.torque().value() * (1 + row.halfWidth()), most)));
        dot(svg, x(rated, top), y(row.engine().torque().orElseThrow(), most));
        double powerSpeed = row.engine().powerSpeed().orElseThrow();
        dot(svg, x(powerSpeed, top), y(ratedPower.orElseThrow() * 1000 / (powerSpeed * RPM), most));
        return svg.append("</svg>\n").toString();
    }

    private static void dot(StringBuilder svg, double x, double y) {
        svg.append(String.format(Locale.ROOT, "<circle cx=\"%.1f\" cy=\"%.1f\" r=\"4\" fill=\"#b3261e\"/>", x, y));
    }

    private static double x(double rpm, double top) {
        return LEFT + rpm / top * (WIDE - 8 - LEFT);
    }

    private static double y(double torque, double most) {
        return TALL - LOW - torque / most * (TALL - LOW - 10);
    }
}
