package longthrow.core.reduce;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import longthrow.core.formula.Expression;
import longthrow.core.formula.Formula;
import longthrow.core.measurement.Measured;
import longthrow.core.measurement.Source;
import longthrow.core.reduce.RunRows.Column;
import org.jspecify.annotations.Nullable;

/**
 * A pull on the road by satellite speed: mass times acceleration, and what a run-down says that air, tyres, wind and slope take. The poor man's dyno; its doubt is wide and stated.
 *
 * <p>A run-down the same way along the same road has the same wind and slope in it as the run: what it takes at each speed is what it takes in the run, whatever its
 * causes. From both ways without knowing which way the run went, half of what the two differ by is a doubt. From one way alone, and the run the other way, wind and slope count twice.
 */
public final class RoadRun {
    /** Standard gravity is near enough here: it only multiplies a doubt. */
    private static final double GRAVITY = FallingMass.gravity().value();

    private static final Formula MASS =
            Formula.of("mass that is sped up", Expression.input("mass").plus(Expression.input("turning")));

    private RoadRun() {}

    /**
     * Brings a pull to a curve. The rows need time and road speed, in one gear; engine speed too where it was logged.
     * @param wanted the speeds to tell it at; empty for those that {@link SpeedGrid#between} gives
     */
    public static Reduced reduce(RunRows rows, RoadBench bench, Optional<SpeedGrid> wanted) {
        List<Remark> said = new ArrayList<>();
        double[] roadSpeed = rows.column(Column.ROAD_SPEED);
        if (roadSpeed == null) {
            return Reduced.refused(said, "No column of road speed. Name it");
        }
        boolean engine = rows.has(Column.ENGINE_SPEED) || bench.engineRatio().isPresent();
        if (!engine && bench.wheelRadius().isEmpty()) {
            return Reduced.refused(
                    said,
                    "Neither engine speed nor its ratio to road speed nor the radius of the driven wheel is told: torque at which speed cannot be said. State one of them");
        }
        Measured mass = Measured.through(
                MASS,
                name -> name.equals("mass") ? bench.mass() : bench.turningMass().orElse(Measured.exact(0)));
        if (bench.turningMass().isEmpty()) {
            said.add(
                    Remark.warning(
                            "What the wheels add as they spin up is not told: the curve is too low by that, a few per cent of the mass"));
        }
        if (engine && bench.engineInertia().isEmpty()) {
            said.add(
                    Remark.warning(
                            "Inertia of what turns with the engine is not told: what speeds it up is missing from the curve, in a low gear much of it"));
        }
        said.add(
                Remark.note(
                        "Satellite speed comes late and evened out. Late alone moves nothing, since speed and its growth are late together; evened out, it rounds off gear changes: mark the run inside one gear. Beside a logged engine speed, lateness looks like slip where speed grows fast"));
        Optional<Parasitic> drag = drag(bench, mass, said);
        if (drag.isEmpty()) {
            return Reduced.refused(
                    said,
                    "No run-down: air and tyres take a large part of the power, and how much is not known. Let the vehicle roll out of gear from the highest speed, both ways, and log it");
        }
        Optional<Measured> ratio = bench.engineRatio().isPresent() || engine
                ? bench.engineRatio()
                : bench.wheelRadius().map(RoadRun::inverse);
        RunRows asDrum = rows.with(Column.DRUM_SPEED, roadSpeed);
        DrumBench asBench =
                new DrumBench(mass, engine ? bench.engineInertia() : Optional.empty(), ratio, drag, Optional.empty());
        beyond(rows, drag.get(), said);
        return DrumRun.ofVehicle(asDrum, asBench, wanted, bench.engineRatio().isPresent(), said);
    }

    private static Measured inverse(Measured radius) {
        return Measured.through(
                Formula.of("turns a metre", Expression.constant(1).dividedBy(Expression.input("radius"))), n -> radius);
    }

    private static void beyond(RunRows rows, Parasitic drag, List<Remark> said) {
        Thinned thin = rows.thinned(Column.ROAD_SPEED);
        double high = 0;
        for (double v : thin.column(0)) {
            high = Math.max(high, v);
        }
        if (high > 1.1 * drag.highest()) {
            said.add(Remark.warning(String.format(
                    Locale.ROOT,
                    "The run reaches %.0f km/h, the run-downs %.0f km/h: what air and tyres take beyond is a guess, and it is most there",
                    3.6 * high,
                    3.6 * drag.highest())));
        }
    }

    /** Force by speed that holds the vehicle back in the run, with what is not known of wind and slope. */
    private static Optional<Parasitic> drag(RoadBench bench, Measured mass, List<Remark> said) {
        Optional<CoastDown> same = bench.way() == RoadBench.Way.BACK ? bench.back() : bench.out();
        if (bench.way() != RoadBench.Way.NOT_TOLD && same.isPresent()) {
            said.add(
                    Remark.note(
                            "Air, tyres, wind and slope are taken from the run-down that went the same way; a gust in the one that was not in the other is not in the doubt"));
            return Optional.of(force(same.get(), mass, null));
        }
        if (bench.out().isPresent()
                && bench.back().isPresent()
                && overlap(bench.out().get(), bench.back().get())) {
            return Optional.of(ofBoth(bench.out().get(), bench.back().get(), mass, said));
        }
        Optional<CoastDown> one = bench.out().isPresent() ? bench.out() : bench.back();
        if (one.isEmpty()) {
            return Optional.empty();
        }
        if (bench.wind().isEmpty() || bench.rise().isEmpty()) {
            said.add(
                    Remark.warning(
                            "One run-down, not surely the way of the run, and no doubt of wind and slope is told: the curve may be off by twice what they do, and that is not in its doubt. Run down both ways"));
            return Optional.of(force(one.get(), mass, null));
        }
        said.add(Remark.note("One run-down, not surely the way of the run: wind and slope count twice in the doubt"));
        return Optional.of(force(one.get(), mass, bench));
    }

    private static boolean overlap(CoastDown out, CoastDown back) {
        return Math.max(out.lowest(), back.lowest()) < Math.min(out.highest(), back.highest());
    }

    /** Of one run-down; where a bench is given, with twice what its wind and slope may do. */
    private static Parasitic force(CoastDown down, Measured mass, @Nullable RoadBench unsure) {
        double[] at = {down.lowest(), 0.5 * (down.lowest() + down.highest()), down.highest()};
        double squareLaw = squareLaw(down, at);
        Expression pull = Expression.input("mass")
                .times(Expression.input("deceleration")
                        .plus(Expression.input("rise").times(2 * GRAVITY))
                        .plus(Expression.input("wind").times(Expression.input("per wind"))));
        Formula formula = Formula.of("drag on the road", pull);
        List<Measured> forces = new ArrayList<>();
        for (double v : at) {
            Map<String, Measured> inputs = new LinkedHashMap<>();
            inputs.put("mass", mass);
            inputs.put("deceleration", down.at(v));
            inputs.put(
                    "rise", unsure == null ? Measured.exact(0) : unsure.rise().orElseThrow());
            inputs.put(
                    "wind", unsure == null ? Measured.exact(0) : unsure.wind().orElseThrow());
            inputs.put("per wind", Measured.exact(4 * squareLaw * v)); // twice d(c v^2)/dv
            forces.add(Measured.through(formula, name -> Objects.requireNonNull(inputs.get(name))));
        }
        return Parasitic.through(at[0], at[1], at[2], forces);
    }

    /** What grows with the square of speed [1/m], not below nought: the second difference of the parabola. */
    private static double squareLaw(CoastDown down, double[] at) {
        double step = at[1] - at[0];
        double second = down.at(at[2]).value()
                - 2 * down.at(at[1]).value()
                + down.at(at[0]).value();
        return Math.max(0, second / (2 * step * step));
    }

    /** The mean of both ways, unsure by half of what they differ by. */
    private static Parasitic ofBoth(CoastDown out, CoastDown back, Measured mass, List<Remark> said) {
        double low = Math.max(out.lowest(), back.lowest());
        double high = Math.min(out.highest(), back.highest());
        double[] at = {low, 0.5 * (low + high), high};
        Expression pull = Expression.input("mass")
                .times(Expression.input("out")
                        .plus(Expression.input("back"))
                        .half()
                        .plus(Expression.input("way")));
        Formula formula = Formula.of("drag on the road, both ways", pull);
        List<Measured> forces = new ArrayList<>();
        double most = 0;
        for (double v : at) {
            double half = 0.5 * (out.at(v).value() - back.at(v).value());
            most = Math.max(most, Math.abs(half * mass.value()));
            Source way = Source.rectangular("wind and slope of the road", Source.Kind.ASSUMED, "wind and slope", 1);
            Map<String, Measured> inputs = Map.of(
                    "mass",
                    mass,
                    "out",
                    out.at(v),
                    "back",
                    back.at(v),
                    "way",
                    Measured.withContributions(0, Map.of(way, half / Math.sqrt(3))));
            forces.add(Measured.through(formula, name -> Objects.requireNonNull(inputs.get(name))));
        }
        said.add(Remark.note(String.format(
                Locale.ROOT,
                "Which way the run went is not told: wind and slope, up to %.3g N by the two run-downs, are in the doubt. Told, they drop out; so they do from the mean of runs both ways",
                most)));
        return Parasitic.through(at[0], at[1], at[2], forces);
    }
}
