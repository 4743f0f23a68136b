package longthrow.core.cycle;

import java.util.Optional;
import java.util.function.BooleanSupplier;
import java.util.function.Supplier;
import longthrow.core.measurement.NotConvergedException;
import longthrow.core.pipe.FlowKernel;

/**
 * What one engine does at one speed, cycle after cycle alike. Work and pressures are those of the gas; what rubs is told outside. Angles [rad] from firing top dead centre.
 * @param setting how it ran
 * @param work    of the gas on the piston
 * @param charge  what it drew in
 * @param fire    how it burned; empty where no flame goes through such a charge
 * @param heat    where the energy goes
 * @param balance whether nothing was lost on the way
 * @param effort  how it was reckoned
 * @param traces  over the cycle
 */
public record OperatingPoint(
        Setting setting,
        Work work,
        Charge charge,
        Optional<Fire> fire,
        Heat heat,
        Balance balance,
        Effort effort,
        Traces traces) {

    /**
     * Mean effective pressures [Pa].
     * @param net    over the whole cycle
     * @param gross  over compression and expansion
     * @param torque mean of the whole cycle on the crankshaft, before friction [N m]
     */
    public record Work(double net, double gross, double torque) {
        /** What breathing takes [Pa]. */
        public double pumping() {
            return gross - net;
        }
    }

    /**
     * Masses of a cycle [kg].
     * @param air        drawn in, with its moisture
     * @param fuel       drawn in
     * @param trapped    in the cylinder when the intake valve has shut
     * @param residual   share of burned gas in that
     * @param volumetric efficiency: air over what the displacement holds at the state of the surroundings
     */
    public record Charge(double air, double fuel, double trapped, double residual, double volumetric) {}

    /**
     * The burning.
     * @param spark         before firing top dead centre
     * @param tenth         crank angle where a tenth has burned
     * @param half          where half has
     * @param nineTenths    where nine tenths have
     * @param peak          highest pressure [Pa]
     * @param peakAngle     where it stands
     * @param octaneWanted  octane number below which it knocks, by the delay of {@link Knock}
     * @param octaneFitted  whether that lies where the delay was fitted
     */
    public record Fire(
            double spark,
            double tenth,
            double half,
            double nineTenths,
            double peak,
            double peakAngle,
            double octaneWanted,
            boolean octaneFitted) {}

    /**
     * Of the energy that the fuel of a cycle would set free if it had the air [J].
     * @param fuel    all of it
     * @param work    of the gas
     * @param walls   to the walls of the cylinder
     * @param exhaustTemperature of what leaves the cylinder, mean over its mass [K]
     * @param portTemperature    of the gas in the exhaust port, mean over time [K]
     */
    public record Heat(double fuel, double work, double walls, double exhaustTemperature, double portTemperature) {}

    /**
     * What is missing, over what came in: 0 if nothing is.
     * @param mass   in at the intake's mouth less out at the exhaust's
     * @param energy in by the valves less out by valves, work and walls
     */
    public record Balance(double mass, double energy) {}

    /**
     * How it was reckoned.
     * @param settled  whether cycles repeat as {@link OperatingPoint#run} asks
     * @param change   of the last cycle from the one before, see {@link #ALIKE}
     * @param cycles   that were run
     * @param steps    of the last one
     * @param cells    of all pipes
     * @param repaired steps of a pipe that had to be done again in shorter ones
     */
    public record Effort(boolean settled, double change, int cycles, long steps, int cells, long repaired) {}

    /** How much two cycles may differ to be alike: of work, of charge, of the pressures in pipes and plenums, and of what comes in and goes out. */
    public static final double ALIKE = 5e-4;

    /** So many cycles in succession must be alike. */
    static final int IN_SUCCESSION = 2;

    /** After so many it is given up; a hundred seeded engines settle in 10 on the mean. */
    static final int MOST_CYCLES = 60;

    /**
     * Runs cycles until two in succession are alike within {@link #ALIKE} to the one before each, or {@link #MOST_CYCLES} have run.
     * @param kernels  for the pipes
     * @param goesOn   asked after every cycle; if false the run ends
     * @return empty where it was ended from outside
     * @throws DoesNotRunException where the engine does not come through its cycle
     */
    public static Optional<OperatingPoint> run(
            Engine engine,
            Setting setting,
            WorkingGases gases,
            Mesh mesh,
            Supplier<FlowKernel> kernels,
            BooleanSupplier goesOn) {
        return run(engine, setting, gases, mesh, kernels, goesOn, Optional.empty())
                .map(Ran::point);
    }

    /**
     * What came of a run, and what stood in the engine at its end.
     */
    public record Ran(OperatingPoint point, Settled end) {}

    /**
     * The same, begun with what stood in a like engine: fewer cycles.
     * @param from empty for air at rest
     * @throws IllegalArgumentException where the ducts of that engine have not as many pipes and plenums
     */
    public static Optional<Ran> run(
            Engine engine,
            Setting setting,
            WorkingGases gases,
            Mesh mesh,
            Supplier<FlowKernel> kernels,
            BooleanSupplier goesOn,
            Optional<Settled> from) {
        EngineRun run = new EngineRun(engine, setting, gases, mesh, kernels);
        from.ifPresent(run::begin);
        int alike = 0;
        while (alike < IN_SUCCESSION && run.cycles() < MOST_CYCLES) {
            if (!goesOn.getAsBoolean()) {
                return Optional.empty();
            }
            try {
                run.cycle();
            } catch (NotConvergedException | ArithmeticException e) {
                throw new DoesNotRunException(
                        "at " + Math.round(setting.speed() * 30 / Math.PI)
                                + " rpm the state of the gas is not found: the figures of this engine cannot all be right, or it is beyond what these sums can do: "
                                + e.getMessage(),
                        e);
            }
            alike = run.change() <= ALIKE ? alike + 1 : 0;
        }
        return Optional.of(new Ran(run.point(alike >= IN_SUCCESSION), run.kept()));
    }
}
