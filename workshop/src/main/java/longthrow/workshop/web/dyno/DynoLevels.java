package longthrow.workshop.web.dyno;

import java.util.ArrayList;
import java.util.List;
import longthrow.core.answer.DynoRuns;
import longthrow.core.quantity.Dimension;
import longthrow.core.quantity.Figure;
import longthrow.core.quantity.FigurePrinter;
import longthrow.core.quantity.PrintedFigures;
import longthrow.core.quantity.UnitSystem;
import longthrow.workshop.draw.DatesChart;
import longthrow.workshop.web.BothUnits;

/**
 * Days, dynamometers and dates of a sheet, laid out.
 * @param parts empty where a sheet has none of them
 */
public record DynoLevels(List<Part> parts) {
    /** To what share a mean of runs is told; layout. */
    private static final double THOUSANDTH = 0.001;

    public DynoLevels {
        parts = List.copyOf(parts);
    }

    /** One section. */
    public record Part(String id, String heading, String small, List<Line> lines) {
        public Part {
            lines = List.copyOf(lines);
        }
    }

    /**
     * One thing said.
     * @param bad     whether it is to be acted on
     * @param chart   as SVG; empty where there is none
     * @param figures that it is from
     */
    public record Line(String sentence, boolean bad, String chart, List<DynoAnswer.Told> figures) {
        public Line {
            figures = List.copyOf(figures);
        }
    }

    static DynoLevels none() {
        return new DynoLevels(List.of());
    }

    static DynoLevels of(DynoRuns runs, String standard, UnitSystem units) {
        FigurePrinter printer = new FigurePrinter(units);
        List<Part> parts = new ArrayList<>();
        List<Line> days = runs.days().stream()
                .map(d -> new Line(
                        d.sentence(),
                        d.standing() == DynoRuns.Standing.OFF,
                        "",
                        List.of(new DynoAnswer.Told(d.date(), mean(printer, d.dimension(), d.figure()), d.of()))))
                .toList();
        add(parts, "days", "Days by the reference engine", standard, days);
        for (DynoRuns.Level level : runs.levels()) {
            List<Line> lines = new ArrayList<>();
            lines.add(line(level.sentence()));
            if (level.engines() > 0) {
                level.been().forEach(b -> lines.add(line("From " + b + ".")));
            }
            level.across().forEach(a -> lines.add(line(a.sentence())));
            add(parts, "level-" + parts.size(), "Beside " + level.from(), "in no verdict", lines);
        }
        List<Line> trends = new ArrayList<>();
        for (DynoRuns.Trend trend : runs.trends()) {
            trends.add(new Line(
                    trend.sentence(),
                    false,
                    DatesChart.of(trend, units, "dates-" + trends.size()),
                    trend.dates().stream()
                            .map(d -> new DynoAnswer.Told(
                                    d.date(), mean(printer, trend.dimension(), d.figure()), trend.of()))
                            .toList()));
        }
        add(parts, "dates", "Over dates", standard, trends);
        return new DynoLevels(parts);
    }

    private static Line line(String sentence) {
        return new Line(sentence, false, "", List.of());
    }

    private static void add(List<Part> parts, String id, String heading, String small, List<Line> lines) {
        if (!lines.isEmpty()) {
            parts.add(new Part(id, heading, small, lines));
        }
    }

    private static BothUnits mean(FigurePrinter printer, Dimension dimension, double value) {
        PrintedFigures printed = printer.print(dimension, value, THOUSANDTH * value);
        return new BothUnits(
                bare(printed.first()), printed.second().map(DynoLevels::bare).orElse(""));
    }

    /** Without a doubt: what a mean is sure to stands in the sentence. */
    private static String bare(Figure figure) {
        return figure.value() + " " + figure.unit();
    }
}
