package longthrow.core.power;

import java.util.Optional;
import java.util.function.BooleanSupplier;
import java.util.function.Supplier;
import longthrow.core.cycle.Engine;
import longthrow.core.cycle.Mesh;
import longthrow.core.cycle.OperatingPoint;
import longthrow.core.cycle.Settled;
import longthrow.core.cycle.Traces;
import longthrow.core.pipe.FlowKernel;

/** The torque of one engine at one speed, as a pure function of its figures. */
public final class Curve {
    /** Cells and steps: chosen so that half of both moves the torque by less than 0.5 %, see docs/measurements.md. */
    public static final Mesh MESH = new Mesh(0.020, Math.toRadians(1));

    private Curve() {}

    /**
     * One speed.
     * @param speed    of the crankshaft [rad/s]
     * @param point    of the gas
     * @param friction mean effective pressure of what rubs [Pa]
     * @param torque   at the crankshaft [N m]
     * @param end      what stood in the engine at its end
     */
    public record Point(double speed, OperatingPoint point, double friction, double torque, Settled end) {
        /** [W]. */
        public double power() {
            return torque * speed;
        }
    }

    /**
     * At one speed.
     * @return empty where it was ended from outside
     */
    public static Optional<Point> at(
            Figures figures, double speed, Mesh mesh, Supplier<FlowKernel> kernels, BooleanSupplier goesOn) {
        return at(figures, speed, mesh, kernels, goesOn, Optional.empty());
    }

    /**
     * The same, begun with what stood in a like engine at about that speed: fewer cycles, and the same within what they may differ to be alike.
     * @param from of an engine with the same pieces; empty for air at rest
     */
    public static Optional<Point> at(
            Figures figures,
            double speed,
            Mesh mesh,
            Supplier<FlowKernel> kernels,
            BooleanSupplier goesOn,
            Optional<Settled> from) {
        Model model = new Model(figures);
        Engine engine = model.engine();
        return OperatingPoint.run(engine, model.setting(speed), model.gases(), mesh, kernels, goesOn, from)
                .map(ran -> point(model, engine, figures, speed, ran));
    }

    /** The same gas in an engine that rubs otherwise: its figures may differ in nothing else, see {@link Needed#rubsAlone}. */
    static Point rubbing(Figures figures, Point as) {
        Model model = new Model(figures);
        return point(model, model.engine(), figures, as.speed(), new OperatingPoint.Ran(as.point(), as.end()));
    }

    private static Point point(Model model, Engine engine, Figures figures, double speed, OperatingPoint.Ran ran) {
        double area = engine.space().pistonArea();
        double outside = figures.number(Needed.AIR_PRESSURE);
        double load = 0;
        for (double pressure : ran.point().traces().all(Traces.Trace.PRESSURE)) {
            load += Math.abs(pressure - outside) * area / Traces.PLACES;
        }
        double friction = model.friction(speed, load);
        double torque = (ran.point().work().net() - friction) * engine.space().displacement() / (4 * Math.PI);
        return new Point(speed, ran.point(), friction, torque, ran.end());
    }
}
