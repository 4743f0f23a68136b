package longthrow.workshop.draw;

import static longthrow.workshop.draw.Sketch.Anchor.END;
import static longthrow.workshop.draw.Sketch.Anchor.START;

import java.util.List;
import longthrow.core.answer.DynoRuns;
import longthrow.core.quantity.UnitSystem;

/** An engine's figure over dates: a point for each, and the line through them, whole where a trend is shown and dashed where none is. */
public final class DatesChart {
    private static final int WIDTH = 360;
    private static final int HEIGHT = 220;
    private static final double LEFT = 46;
    private static final double RIGHT = 348;
    private static final double TOP = 34;
    private static final double BOTTOM = 178;
    private static final double SPOT = 3.6;

    private final DynoRuns.Trend trend;
    private final Scale scale;
    private final Svg svg;
    private final Sketch s;
    private final double first;
    private final double last;

    private DatesChart(DynoRuns.Trend trend, UnitSystem units, String idPrefix) {
        this.trend = trend;
        List<DynoRuns.Dated> dates = trend.dates();
        this.first = dates.get(0).day();
        this.last = dates.get(dates.size() - 1).day();
        double low = dates.stream().mapToDouble(DynoRuns.Dated::figure).min().orElseThrow();
        double high = dates.stream().mapToDouble(DynoRuns.Dated::figure).max().orElseThrow();
        double room = ROOM * high; // so that scatter of a thousandth does not fill the picture
        this.scale = Scale.held(trend.dimension(), units, low - room, high + room, BOTTOM, TOP);
        this.svg =
                new Svg(idPrefix, WIDTH, HEIGHT, trend.engine() + " over dates on " + trend.dyno(), trend.sentence());
        this.s = new Sketch(svg, WIDTH, HEIGHT);
    }

    /** Share of a figure that stands free above and below; layout. */
    private static final double ROOM = 0.01;

    /**
     * The chart, a whole SVG element; empty where there are fewer than two dates.
     * @param idPrefix unlike any other's on the page
     */
    public static String of(DynoRuns.Trend trend, UnitSystem units, String idPrefix) {
        return trend.dates().size() < 2 ? "" : new DatesChart(trend, units, idPrefix).drawn();
    }

    private double x(double day) {
        return LEFT + SPOT + (RIGHT - LEFT - 2 * SPOT) * (day - first) / Math.max(1, last - first);
    }

    private String drawn() {
        s.words("quiet", trend.of() + ", " + scale.unit(), 4, 16, START, Sketch.SMALL, true);
        for (Scale.Tick tick : scale.ticks(28)) {
            s.grid("M", LEFT, tick.at(), "H", RIGHT);
            s.words("quiet", tick.words(), LEFT - 6, tick.at() + 4.5, END, Sketch.SMALL, false);
        }
        s.quiet("M", LEFT, TOP, "V", BOTTOM, "H", RIGHT);
        line();
        trend.dates().forEach(d -> s.spot(x(d.day()), scale.at(d.figure()), SPOT));
        s.words("quiet", trend.dates().get(0).date(), LEFT, BOTTOM + 20, START, Sketch.SMALL, false);
        s.words(
                "quiet",
                trend.dates().get(trend.dates().size() - 1).date(),
                RIGHT,
                BOTTOM + 20,
                END,
                Sketch.SMALL,
                false);
        return svg.finished();
    }

    /** Through the means of days and figures, where a slope is told. */
    private void line() {
        if (Double.isNaN(trend.perDay())) {
            return;
        }
        double day = trend.dates().stream()
                .mapToDouble(DynoRuns.Dated::day)
                .average()
                .orElseThrow();
        double mean = trend.dates().stream()
                .mapToDouble(DynoRuns.Dated::figure)
                .average()
                .orElseThrow();
        Object[] path = {
            "M", x(first), scale.at(mean * (1 + trend.perDay() * (first - day))),
            "L", x(last), scale.at(mean * (1 + trend.perDay() * (last - day)))
        };
        if (trend.shown()) {
            s.lit(path);
        } else {
            s.dashed("6 4", path);
        }
    }
}
