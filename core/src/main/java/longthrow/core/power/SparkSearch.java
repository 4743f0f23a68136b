package longthrow.core.power;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import longthrow.core.answer.Rung;
import longthrow.core.answer.SparkSweep;
import longthrow.core.answer.SparkSweep.Point;
import longthrow.core.answer.SparkSweep.Side;
import longthrow.core.answer.SparkSweep.Spot;
import longthrow.core.answer.SparkSweep.Step;
import longthrow.core.cycle.Knock;
import longthrow.core.cycle.Spark;
import longthrow.core.measurement.Measured;
import longthrow.core.measurement.Source;
import longthrow.core.quantity.Dimension;
import longthrow.core.quantity.FigurePrinter;

/** What a sweep of the spark comes to at one speed: advance of most torque, advance at which it knocks, what lies between that and the one that is set, and what each key would do. */
final class SparkSearch {
    /** Offset keys as they are sold move the spark by 2 to 4 degrees; the other way round they make it later by as much. Common practice, no source. */
    static final int[] KEY_DEGREES = {-4, -3, -2, 0, 2, 3, 4};

    /** Half of the range of 7 to 10 degrees after top dead centre in which half has burned in published engines at their best, see {@link Spark.HalfBurnedAt#BEST}. */
    private static final double HALF_BURNED_REACH = Math.toRadians(1.5);

    /** Earlier than this no earlier spark is advised, whatever the sum says. */
    private static final double HALF_BURNED_EARLIEST = Spark.HalfBurnedAt.BEST - HALF_BURNED_REACH;

    /** Share of the torque by which a run may be off from its neighbours (see {@link Leaning#MESH}). */
    private static final double TORQUE_REACH = 0.0015;

    private final Setting setting;
    private final List<Point> points;
    private final FigurePrinter printer;

    /**
     * What is known beside the runs.
     * @param speed    of the crank [rad/s]
     * @param marked   what to say of a speed that is not approved; empty where it is
     * @param set      spark as read; empty where not
     * @param straight spark with the straight key [rad]; NaN where not known
     * @param acting   octane number by which the fuel acts; empty where not known
     * @param octane   what makes the number wanted doubtful at a given spark
     * @param burning  what makes doubtful when half has burned at a given spark [rad]
     * @param missing  what would have to be told where set or acting are empty
     */
    record Setting(
            double speed,
            String marked,
            Optional<Measured> set,
            double straight,
            Optional<Measured> acting,
            Map<Source, Double> octane,
            Map<Source, Double> burning,
            List<Rung.Missing> missing) {}

    /**
     * Of what was run.
     * @param points by rising advance
     */
    SparkSearch(Setting setting, List<Point> points, FigurePrinter printer) {
        this.setting = setting;
        this.points = points;
        this.printer = printer;
    }

    /** Empty where too little ran. */
    Optional<SparkSweep> sweep() {
        if (points.size() < 3) {
            return Optional.empty();
        }
        Spot best = best();
        Optional<Crossing> crossing = crossing();
        Spot limited = limited(crossing);
        Spot margin = margin(limited);
        List<Step> steps = steps();
        double worth = crossing.map(c -> Knock.DOUBT / c.slope).orElse(Double.NaN);
        return Optional.of(new SparkSweep(
                setting.speed,
                setting.set,
                points,
                best,
                limited,
                margin,
                worth,
                steps,
                setting.missing,
                said(best, limited, margin, worth)));
    }

    // ---- most torque

    private Spot best() {
        int top = 0;
        for (int i = 1; i < points.size(); i++) {
            if (points.get(i).torque() > points.get(top).torque()) {
                top = i;
            }
        }
        if (top == 0) {
            return new Spot(
                    Side.LATER_THAN, Optional.of(Measured.exact(points.get(0).advance())));
        }
        if (top == points.size() - 1) {
            return new Spot(
                    Side.EARLIER_THAN,
                    Optional.of(Measured.exact(points.get(top).advance())));
        }
        Point a = points.get(top - 1);
        Point b = points.get(top);
        Point c = points.get(top + 1);
        Parabola parabola = Parabola.through(a, b, c);
        double at = Math.max(a.advance(), Math.min(c.advance(), parabola.top()));
        // a run that is off moves the top by the difference of slopes over twice the bend
        double off = TORQUE_REACH * Math.abs(b.torque()) * Math.sqrt(2) / (c.advance() - a.advance());
        Map<Source, Double> sources = new LinkedHashMap<>();
        add(
                sources,
                Source.rectangular(
                        "model: torque of the sweep",
                        Source.Kind.ASSUMED,
                        "torque from run to run of a sweep",
                        off / (2 * Math.abs(parabola.bend))));
        double follows = (a.halfBurned() - c.halfBurned()) / (c.advance() - a.advance());
        double pull = follows > 0 ? 1 / follows : 1; // half burned moves by so much of what the spark does
        setting.burning.forEach((source, u) -> sources.merge(source, pull * u, Double::sum));
        // as far as the sum's best lies from that of published engines, and half of their range
        add(
                sources,
                Source.rectangular(
                        "model: best half burned",
                        Source.Kind.ASSUMED,
                        "where half has burned with most torque, by the sum and as published",
                        pull * (Math.abs(halfBurnedAt(at) - Spark.HalfBurnedAt.BEST) + HALF_BURNED_REACH)));
        return new Spot(Side.AT, Optional.of(Measured.withContributions(at, sources)));
    }

    private static void add(Map<Source, Double> sources, Source source) {
        sources.merge(source, source.standardUncertainty(), Double::sum);
    }

    /** Torque over advance: value at the middle, slope there, half of the second slope. */
    private record Parabola(double middle, double value, double slope, double bend) {
        static Parabola through(Point a, Point b, Point c) {
            double left = (b.torque() - a.torque()) / (b.advance() - a.advance());
            double right = (c.torque() - b.torque()) / (c.advance() - b.advance());
            double bend = (right - left) / (c.advance() - a.advance());
            return new Parabola(b.advance(), b.torque(), left + bend * (b.advance() - a.advance()), bend);
        }

        /** Where it is flat. */
        double top() {
            return middle - 0.5 * slope / bend;
        }

        double at(double advance) {
            double x = advance - middle;
            return value + x * (slope + x * bend);
        }
    }

    // ---- knock

    private record Crossing(double advance, double slope) {}

    /** The first one, coming from the late side. */
    private Optional<Crossing> crossing() {
        if (setting.acting.isEmpty()) {
            return Optional.empty();
        }
        double octane = setting.acting.get().value();
        for (int i = 1; i < points.size(); i++) {
            Point a = points.get(i - 1);
            Point b = points.get(i);
            if (a.octaneWanted() < octane && b.octaneWanted() >= octane) {
                double slope = (b.octaneWanted() - a.octaneWanted()) / (b.advance() - a.advance());
                return Optional.of(new Crossing(a.advance() + (octane - a.octaneWanted()) / slope, slope));
            }
        }
        return Optional.empty();
    }

    private Spot limited(Optional<Crossing> crossing) {
        if (setting.acting.isEmpty() || points.stream().anyMatch(p -> Double.isNaN(p.octaneWanted()))) {
            return Spot.UNKNOWN;
        }
        Point first = points.get(0);
        if (first.octaneWanted() >= setting.acting.get().value()) {
            return new Spot(Side.LATER_THAN, Optional.of(Measured.exact(first.advance())));
        }
        if (crossing.isEmpty()) {
            double last = points.get(points.size() - 1).advance();
            return new Spot(Side.EARLIER_THAN, Optional.of(Measured.exact(last)));
        }
        Crossing at = crossing.get();
        Map<Source, Double> sources = new LinkedHashMap<>();
        spare(setting.acting.get().value()).contributions().forEach((source, u) -> sources.put(source, u / at.slope));
        return new Spot(Side.AT, Optional.of(Measured.withContributions(at.advance, sources)));
    }

    /** Octane number of the fuel less that wanted, at a spark known exactly. */
    private Measured spare(double wanted) {
        return PumpOctane.margin(setting.acting.orElseThrow(), Measured.withContributions(wanted, setting.octane));
    }

    private Spot margin(Spot limited) {
        if (setting.set.isEmpty() || limited.angle().isEmpty()) {
            return Spot.UNKNOWN;
        }
        return new Spot(
                limited.side(), Optional.of(PumpOctane.margin(limited.angle().get(), setting.set.get())));
    }

    // ---- keys

    private List<Step> steps() {
        if (setting.set.isEmpty()) {
            return List.of();
        }
        double now = setting.set.get().value();
        double straight = Double.isNaN(setting.straight) ? now : setting.straight;
        double torque = torqueAt(now);
        List<Step> steps = new ArrayList<>();
        for (int degrees : KEY_DEGREES) {
            double advance = straight + Math.toRadians(degrees);
            boolean isRun = advance >= points.get(0).advance()
                    && advance <= points.get(points.size() - 1).advance();
            if (isRun && torque > 0 && Math.abs(advance - now) > 1e-6) {
                Optional<Measured> spare = spareAt(advance);
                steps.add(new Step(
                        Math.toRadians(degrees),
                        advance,
                        torqueAt(advance) / torque - 1,
                        spare,
                        advance < now ? "" : against(advance, spare)));
            }
        }
        return steps;
    }

    /** What speaks against an earlier spark; empty where nothing does. */
    private String against(double advance, Optional<Measured> spare) {
        if (spare.isEmpty() || spare.get().isUnknown()) {
            return "how far it is from knocking is not known";
        }
        if (spare.get().low() < 0) {
            return "within its doubt it may knock";
        }
        return halfBurnedAt(advance) < HALF_BURNED_EARLIEST
                ? "half of the charge would have burned earlier than it has in published engines at their best"
                : "";
    }

    private double halfBurnedAt(double advance) {
        int above = above(advance);
        Point a = points.get(above - 1);
        Point b = points.get(above);
        double share = (advance - a.advance()) / (b.advance() - a.advance());
        return a.halfBurned() + share * (b.halfBurned() - a.halfBurned());
    }

    private int above(double advance) {
        int above = 1;
        while (above < points.size() - 1 && points.get(above).advance() < advance) {
            above++;
        }
        return above;
    }

    /** By the parabola through the three that lie nearest. */
    private double torqueAt(double advance) {
        int middle = 1;
        for (int i = 2; i < points.size() - 1; i++) {
            if (Math.abs(points.get(i).advance() - advance)
                    < Math.abs(points.get(middle).advance() - advance)) {
                middle = i;
            }
        }
        return Parabola.through(points.get(middle - 1), points.get(middle), points.get(middle + 1))
                .at(advance);
    }

    /** With the doubt of the spark that is set, which a key keeps. */
    private Optional<Measured> spareAt(double advance) {
        if (setting.acting.isEmpty()) {
            return Optional.empty();
        }
        int above = above(advance);
        Point a = points.get(above - 1);
        Point b = points.get(above);
        double slope = (b.octaneWanted() - a.octaneWanted()) / (b.advance() - a.advance());
        if (Double.isNaN(slope)) {
            return Optional.empty();
        }
        Measured spare = spare(a.octaneWanted() + slope * (advance - a.advance()));
        Map<Source, Double> sources = new LinkedHashMap<>(spare.contributions());
        setting.set
                .orElseThrow()
                .contributions()
                .forEach((source, u) -> sources.merge(source, -slope * u, Double::sum));
        return Optional.of(Measured.withContributions(spare.value(), sources));
    }

    // ---- words

    private String said(Spot best, Spot limited, Spot margin, double worth) {
        StringBuilder said = new StringBuilder("At ")
                .append(printer.print(Dimension.ROTATIONAL_SPEED, setting.speed, 0)
                        .first()
                        .text())
                .append(setting.marked.isEmpty() ? "" : setting.marked + ",")
                .append(" most torque comes with the spark ")
                .append(angle(best))
                .append(" before top dead centre");
        setting.set.ifPresent(set -> said.append("; it is set to ").append(angle(set)));
        said.append(". ");
        if (best.side() == Side.AT && halfBurnedAt(best.angle().orElseThrow().value()) < HALF_BURNED_EARLIEST) {
            said.append(
                    "By the sum half has burned there earlier than it has in published engines at their best, so the"
                            + " best lies rather later than earlier; torque hardly changes between. ");
        }
        if (margin.side() == Side.UNKNOWN) {
            said.append("How far that is from knocking is not known");
            wantedWhereItStands().ifPresent(said::append);
            if (setting.missing.isEmpty()) {
                said.append(": what is known of knocking was fitted to petrol. ");
            } else {
                said.append("; read first: ")
                        .append(String.join(
                                ", ",
                                setting.missing.stream()
                                        .map(Rung.Missing::where)
                                        .toList()))
                        .append(". ");
            }
            said.append("No earlier spark is advised.");
            return said.toString();
        }
        switch (limited.side()) {
            case AT -> {
                Measured left = margin.angle().orElseThrow();
                said.append("It begins to knock at ")
                        .append(angle(limited))
                        .append(left.value() < 0 ? ", which is passed: margin " : ": margin ")
                        .append(angle(left))
                        .append("; the doubt of the knocking formula alone, ")
                        .append((int) Knock.DOUBT)
                        .append(" octane numbers, is worth ")
                        .append(String.format(Locale.ROOT, "%.1f°", Math.toDegrees(worth)))
                        .append(".");
            }
            case EARLIER_THAN ->
                said.append("By the best estimate the octane number wanted stays below the fuel's up to the earliest")
                        .append(" spark that was reckoned, ")
                        .append(angle(limited.angle().orElseThrow()))
                        .append("; ")
                        .append(surelyUpTo());
            case LATER_THAN ->
                said.append("It knocks even with the latest spark that was reckoned, ")
                        .append(angle(limited.angle().orElseThrow()))
                        .append(": the fuel or the compression is the trouble.");
            case UNKNOWN -> throw new IllegalStateException("a margin without a limit");
        }
        double octane = setting.acting.map(Measured::value).orElse(Double.NaN);
        if (best.side() == Side.EARLIER_THAN) {
            said.append(" So early a best is beyond what such engines are run at: the sum burns too fast there, torque")
                    .append(" hardly changes, and it is no advice to set it.");
        }
        said.append(" Which key: see what is said of all speeds.");
        if (octane < Knock.LOWEST_FITTED || octane > Knock.HIGHEST_FITTED) {
            said.append(" The fuel lies outside of the ")
                    .append((int) Knock.LOWEST_FITTED)
                    .append(" to ")
                    .append((int) Knock.HIGHEST_FITTED)
                    .append(" octane that the formula was fitted to.");
        }
        return said.toString();
    }

    /** How far the fuel is surely enough, with the doubt of what is wanted and of what the fuel acts as. */
    private String surelyUpTo() {
        Optional<Point> last = points.stream()
                .filter(p -> spare(p.octaneWanted()).low() >= 0)
                .max(Comparator.comparingDouble(Point::advance));
        return last.isEmpty()
                ? "within the doubt of the sum it may knock at any of them."
                : last.get().equals(points.get(points.size() - 1))
                        ? "with the doubt of the sum too."
                        : "surely, with the doubt of the sum, only up to "
                                + angle(Measured.exact(last.get().advance())) + ".";
    }

    /** The octane number that is wanted at the spark as set, or at that of most torque. */
    private Optional<String> wantedWhereItStands() {
        double at = setting.set
                .map(Measured::value)
                .orElseGet(() -> points.stream()
                        .max(Comparator.comparingDouble(Point::torque))
                        .orElseThrow()
                        .advance());
        Point point = points.stream()
                .min(Comparator.comparingDouble(p -> Math.abs(p.advance() - at)))
                .orElseThrow();
        return Double.isNaN(point.octaneWanted())
                ? Optional.empty()
                : Optional.of(": at " + angle(Measured.exact(point.advance())) + " it wants an octane number of "
                        + said(Dimension.RATIO, Measured.withContributions(point.octaneWanted(), setting.octane)));
    }

    private String angle(Spot spot) {
        String side = spot.side() == Side.AT ? "" : spot.side().label() + " ";
        return side + angle(spot.angle().orElseThrow());
    }

    private String angle(Measured angle) {
        return said(Dimension.ANGLE, angle);
    }

    private String said(Dimension dimension, Measured figure) {
        return figure.isUnknown()
                ? printer.printDoubtUnknown(dimension, figure.value()).line()
                : printer.print(dimension, figure.value(), figure.expanded()).line();
    }
}
