package longthrow.workshop.draw;

import static longthrow.workshop.draw.Sketch.Anchor.END;
import static longthrow.workshop.draw.Sketch.Anchor.MIDDLE;
import static longthrow.workshop.draw.Sketch.Anchor.START;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.ToDoubleFunction;
import longthrow.core.answer.TorqueCurve.Place;
import longthrow.core.quantity.Dimension;
import longthrow.core.quantity.FigurePrinter;
import longthrow.core.quantity.UnitSystem;

/** Two turns of a cycle: pressure over volume, and by crank angle how far the valves are open and what pressures stand outside them. */
public final class CycleChart {
    private static final int WIDTH = 360;
    private static final int LOOP_HEIGHT = 320;
    private static final int VALVES_HEIGHT = 430;
    private static final double LEFT = 50;
    private static final double RIGHT = 348;
    private static final double TOP = 30;
    private static final int HALF_TURN = 180;

    private CycleChart() {}

    /**
     * Pressure over volume, both by their logarithms, so that the loop of breathing is seen beside that of the fire; a whole SVG element.
     * @throws IllegalArgumentException for no places
     */
    public static String loop(List<Place> cycle, UnitSystem units, String idPrefix) {
        Place peak = most(cycle, Place::pressure);
        double bottom = LOOP_HEIGHT - 46.0;
        Scale volumes = Scale.logarithmic(
                Dimension.VOLUME,
                units,
                least(cycle, Place::volume).volume(),
                most(cycle, Place::volume).volume(),
                LEFT,
                RIGHT);
        Scale pressures = Scale.logarithmic(
                Dimension.PRESSURE, units, least(cycle, Place::pressure).pressure(), peak.pressure(), bottom, TOP);
        String highest = figure(units, Dimension.PRESSURE, peak.pressure());
        Svg svg = new Svg(
                idPrefix,
                WIDTH,
                LOOP_HEIGHT,
                "Pressure in the cylinder over its volume, two turns",
                "Both by their logarithms. Highest pressure " + highest + " at " + degrees(peak.angle())
                        + " after top dead centre; least volume "
                        + figure(
                                units,
                                Dimension.VOLUME,
                                least(cycle, Place::volume).volume()) + ", largest "
                        + figure(
                                units,
                                Dimension.VOLUME,
                                most(cycle, Place::volume).volume())
                        + ". The upper loop is compression, fire and expansion, the lower exhaust and intake.");
        Sketch s = new Sketch(svg, WIDTH, LOOP_HEIGHT);
        upright(s, pressures, "absolute pressure, " + pressures.unit(), TOP, bottom);
        for (Scale.Tick tick : volumes.ticks(0)) {
            s.grid("M", tick.at(), TOP, "V", bottom);
            s.words("quiet", tick.words(), tick.at(), bottom + 18, MIDDLE, Sketch.SMALL, false);
        }
        s.quiet("M", LEFT, bottom, "H", RIGHT);
        s.words("quiet", "volume over the piston, " + volumes.unit(), RIGHT, bottom + 38, END, Sketch.SMALL, false);
        s.lit(line(cycle, p -> volumes.at(p.volume()), p -> pressures.at(p.pressure())));
        s.spot(volumes.at(peak.volume()), pressures.at(peak.pressure()), 3.6);
        WordRoom room = new WordRoom(WIDTH, LOOP_HEIGHT, Sketch.SMALL);
        room.axis(4, TOP - 16, RIGHT, TOP - 16);
        Place before = cycle.get(0);
        for (Place place : cycle) {
            room.curve(
                    volumes.at(before.volume()),
                    pressures.at(before.pressure()),
                    volumes.at(place.volume()),
                    pressures.at(place.pressure()));
            before = place;
        }
        WordRoom.Box box = room.beside(highest, volumes.at(peak.volume()), pressures.at(peak.pressure()));
        s.words("quiet", highest, box.middle(), box.base(), MIDDLE, Sketch.SMALL, true);
        return svg.finished();
    }

    /**
     * Lifts of both valves, and below them pressures before the intake valve and behind the exhaust valve, over crank angle; a whole SVG element.
     * @throws IllegalArgumentException for no places
     */
    public static String valves(List<Place> cycle, UnitSystem units, String idPrefix) {
        double lifted = 182;
        double from = 236;
        double bottom = VALVES_HEIGHT - 62.0;
        Place intake = most(cycle, Place::intakeLift);
        Place exhaust = most(cycle, Place::exhaustLift);
        Scale angles = Scale.between(
                Dimension.ANGLE,
                units,
                cycle.get(0).angle(),
                cycle.get(cycle.size() - 1).angle(),
                LEFT,
                RIGHT);
        Scale lifts = Scale.round(
                Dimension.LENGTH, units, 0, Math.max(intake.intakeLift(), exhaust.exhaustLift()), lifted, TOP);
        Scale pressures = Scale.held(
                Dimension.PRESSURE,
                units,
                Math.min(
                        least(cycle, Place::intakePressure).intakePressure(),
                        least(cycle, Place::exhaustPressure).exhaustPressure()),
                Math.max(
                        most(cycle, Place::intakePressure).intakePressure(),
                        most(cycle, Place::exhaustPressure).exhaustPressure()),
                bottom,
                from);
        Svg svg = new Svg(
                idPrefix,
                WIDTH,
                VALVES_HEIGHT,
                "Valve lifts and the pressures outside the valves over crank angle, two turns",
                "Intake solid: most lift " + figure(units, Dimension.LENGTH, intake.intakeLift()) + " at "
                        + degrees(intake.angle()) + ", pressure before the valve "
                        + range(cycle, Place::intakePressure, units) + ". Exhaust broken: most lift "
                        + figure(units, Dimension.LENGTH, exhaust.exhaustLift()) + " at " + degrees(exhaust.angle())
                        + ", pressure behind the valve " + range(cycle, Place::exhaustPressure, units)
                        + ". Angles are from the top dead centre that fires.");
        Sketch s = new Sketch(svg, WIDTH, VALVES_HEIGHT);
        upright(s, lifts, "valve lift, " + lifts.unit(), TOP, lifted);
        upright(s, pressures, "absolute pressure outside the valve, " + pressures.unit(), from, bottom);
        s.quiet("M", LEFT, lifted, "H", RIGHT, "M", LEFT, bottom, "H", RIGHT);
        turns(s, cycle, angles, lifted, from, bottom);
        s.lit(line(cycle, p -> angles.at(p.angle()), p -> lifts.at(p.intakeLift())));
        broken(svg, line(cycle, p -> angles.at(p.angle()), p -> lifts.at(p.exhaustLift())));
        s.lit(line(cycle, p -> angles.at(p.angle()), p -> pressures.at(p.intakePressure())));
        broken(svg, line(cycle, p -> angles.at(p.angle()), p -> pressures.at(p.exhaustPressure())));
        double y = VALVES_HEIGHT - 8.0;
        s.lit("M", 8, y - 4.5, "h", 26);
        s.words("quiet", "intake", 40, y, START, Sketch.SMALL, false);
        broken(svg, "M", 108, y - 4.5, "h", 26);
        s.words("quiet", "exhaust", 140, y, START, Sketch.SMALL, false);
        return svg.finished();
    }

    private static void turns(Sketch s, List<Place> cycle, Scale angles, double lifted, double from, double bottom) {
        int first = (int) Math.round(Math.toDegrees(cycle.get(0).angle()));
        int last = (int) Math.round(Math.toDegrees(cycle.get(cycle.size() - 1).angle()));
        for (int degree = HALF_TURN * Math.floorDiv(first + HALF_TURN - 1, HALF_TURN);
                degree <= last + 2;
                degree += HALF_TURN) {
            double x = angles.at(Math.toRadians(degree));
            s.grid("M", x, TOP, "V", lifted, "M", x, from, "V", bottom);
            s.words(
                    "quiet",
                    degree + "°",
                    Math.max(18, Math.min(WIDTH - 18, x)),
                    bottom + 18,
                    MIDDLE,
                    Sketch.SMALL,
                    false);
            String dead = degree == 0 ? "fires" : Math.floorMod(degree, 2 * HALF_TURN) == 0 ? "tdc" : "bdc";
            s.words("quiet", dead, Math.max(18, Math.min(WIDTH - 16, x)), bottom + 34, MIDDLE, Sketch.SMALL, false);
        }
    }

    private static void upright(Sketch s, Scale scale, String words, double top, double bottom) {
        s.words("quiet", words, 4, top - 12, START, Sketch.SMALL, true);
        for (Scale.Tick tick : scale.ticks(28)) {
            s.grid("M", LEFT, tick.at(), "H", RIGHT);
            s.words("quiet", tick.words(), LEFT - 6, tick.at() + 4.5, END, Sketch.SMALL, false);
        }
        s.quiet("M", LEFT, top, "V", bottom);
    }

    private static void broken(Svg svg, Object... data) {
        svg.add(
                "path",
                "class",
                "other",
                "d",
                Svg.path(data),
                "stroke",
                "currentColor",
                "stroke-width",
                "2",
                "stroke-dasharray",
                "6 4");
    }

    private static Object[] line(List<Place> cycle, ToDoubleFunction<Place> x, ToDoubleFunction<Place> y) {
        List<Object> line = new ArrayList<>();
        for (Place place : cycle) {
            line.add(line.isEmpty() ? "M" : "L");
            line.add(x.applyAsDouble(place));
            line.add(y.applyAsDouble(place));
        }
        return line.toArray();
    }

    private static Place most(List<Place> cycle, ToDoubleFunction<Place> of) {
        return cycle.stream()
                .max(Comparator.comparingDouble(of))
                .orElseThrow(() -> new IllegalArgumentException("no cycle was reckoned, so there is none to be drawn"));
    }

    private static Place least(List<Place> cycle, ToDoubleFunction<Place> of) {
        return cycle.stream()
                .min(Comparator.comparingDouble(of))
                .orElseThrow(() -> new IllegalArgumentException("no cycle was reckoned, so there is none to be drawn"));
    }

    /** A share to which the figures of a picture are said; layout. */
    private static final double SAID = 0.005;

    private static String figure(UnitSystem units, Dimension dimension, double si) {
        var figure = new FigurePrinter(units)
                .print(dimension, si, SAID * Math.abs(si))
                .first();
        return figure.value() + " " + figure.unit();
    }

    private static String range(List<Place> cycle, ToDoubleFunction<Place> of, UnitSystem units) {
        return figure(units, Dimension.PRESSURE, of.applyAsDouble(least(cycle, of))) + " to "
                + figure(units, Dimension.PRESSURE, of.applyAsDouble(most(cycle, of)));
    }

    private static String degrees(double angle) {
        return Math.round(Math.toDegrees(angle)) + "°";
    }
}
