package longthrow.core.pipe;

import java.util.function.DoubleUnaryOperator;
import longthrow.core.gas.PipeGas;
import longthrow.core.quantity.Require;

/**
 * The gas in one pipe. A step is told in three: {@link #predict} (then both {@link #edge edges} are known), the fluxes through both ends, {@link #finish}. Changes as it is advanced; of one thread.
 */
public final class PipeFlow {
    /** Highest share of a cell that news may cross in a step. Two-step Hancock schemes bear 1; room for a wave that is born in it. */
    public static final double COURANT = 0.9;

    /** The first steps know of the waves that are there and not of those that the first meeting of two gases makes: so many steps of so small a share. */
    private static final int GUARDED_STEPS = 5;

    private static final double GUARDED_COURANT = 0.2;

    /** As often may a step be halved that leaves a cell without mass or energy. */
    private static final int HALVINGS = 8;

    private final PipeShape shape;
    private final PipeGases gases;
    private final FlowKernel kernel;
    private final Cells cells;

    /** Told of both ends: mass, momentum, energy and burned mass to the right. */
    private final double[] left = new double[4];

    private final double[] right = new double[4];

    private double fastest;
    private int steps;
    private long repaired;

    /** End of a pipe. */
    public enum Side {
        LEFT,
        RIGHT
    }

    public PipeFlow(PipeShape shape, PipeGases gases, FlowKernel kernel) {
        this.shape = shape;
        this.gases = gases;
        this.kernel = kernel;
        this.cells = new Cells(shape, gases);
    }

    /**
     * Fills it, each by the distance of a cell's middle from the left end [m].
     * @param pressure    [Pa], above 0
     * @param temperature [K], above 0
     * @param velocity    to the right [m/s]
     * @param burned      share of burned gas, 0 to 1
     */
    public void fill(
            DoubleUnaryOperator pressure,
            DoubleUnaryOperator temperature,
            DoubleUnaryOperator velocity,
            DoubleUnaryOperator burned) {
        for (int k = 0; k < cells.count; k++) {
            double x = shape.middle(k);
            put(
                    k,
                    pressure.applyAsDouble(x),
                    temperature.applyAsDouble(x),
                    velocity.applyAsDouble(x),
                    burned.applyAsDouble(x));
        }
        start();
    }

    /** One cell, for states that change within a cell; {@link #start} after the last. */
    void put(int cell, double pressure, double temperature, double velocity, double burned) {
        Require.positive("pressure in a pipe [Pa]", pressure);
        Require.positive("temperature in a pipe [K]", temperature);
        Require.finite("velocity in a pipe [m/s]", velocity);
        Require.within("share of burned gas in a pipe", burned, 0, 1);
        PipeGas gas = gases.at(burned);
        double density = pressure / (gas.gasConstant() * temperature);
        hold(
                cell,
                density,
                density * velocity,
                density * (gas.energy(temperature) + 0.5 * velocity * velocity),
                density * burned);
    }

    /** One cell by what is conserved, per volume. */
    void hold(int cell, double mass, double momentum, double energy, double burned) {
        int i = cell + Cells.FIRST;
        cells.mass[i] = mass;
        cells.momentum[i] = momentum;
        cells.energy[i] = energy;
        cells.burned[i] = burned;
    }

    void start() {
        steps = 0;
        kernel.derive(cells);
        fastest = kernel.fastest(cells);
        requireGas();
    }

    /**
     * Wall of a cell.
     * @param friction    twice Fanning's factor over the diameter [1/m]
     * @param heat        the same for heat: friction over the Prandtl number to 2/3 by Reynolds' and Colburn's analogy [1/m]
     * @param temperature of the wall [K]
     */
    public void wall(int cell, double friction, double heat, double temperature) {
        cells.friction[cell + Cells.FIRST] = Require.notNegative("wall friction [1/m]", friction);
        cells.heat[cell + Cells.FIRST] = Require.notNegative("wall heat [1/m]", heat);
        cells.wall[cell + Cells.FIRST] = Require.positive("temperature of a pipe's wall [K]", temperature);
    }

    // ---- a step

    /** As long as a step may be [s]. */
    public double longestStep() {
        return (steps < GUARDED_STEPS ? GUARDED_COURANT : COURANT) * cells.step / fastest;
    }

    /** Half a step on at every face, and through all but the ends. */
    public void predict(double dt) {
        beyond(Cells.FIRST - 1, Cells.FIRST, Cells.FIRST + 1);
        beyond(cells.end(), cells.end() - 1, cells.end() - 2);
        kernel.reconstruct(cells, dt);
        kernel.flow(cells);
    }

    /** Beyond an end the state goes on as it comes, so that the last cell has the slope to its neighbour; never to less than half or more than twice. */
    private void beyond(int ghost, int last, int before) {
        cells.mass[ghost] = goesOn(cells.mass[last], cells.mass[before]);
        cells.pressure[ghost] = goesOn(cells.pressure[last], cells.pressure[before]);
        cells.velocity[ghost] = 2 * cells.velocity[last] - cells.velocity[before];
        cells.share[ghost] = share(2 * cells.share[last] - cells.share[before]);
    }

    private static double goesOn(double last, double before) {
        return Math.min(2 * last, Math.max(0.5 * last, 2 * last - before));
    }

    /**
     * What stands at an end in the middle of the step.
     * @param density  [kg/m3]
     * @param velocity out of the pipe [m/s]
     * @param pressure [Pa]
     * @param burned   share of burned gas
     */
    public record Edge(double density, double velocity, double pressure, double burned) {}

    public Edge edge(Side side) {
        return new Edge(endDensity(side), endVelocity(side), endPressure(side), endBurned(side));
    }

    // The same one by one, for what is asked at every step and must not make anything new.

    double endDensity(Side side) {
        return side == Side.LEFT ? cells.rightDensity[Cells.FIRST - 1] : cells.leftDensity[cells.end() - 1];
    }

    /** Out of the pipe. */
    double endVelocity(Side side) {
        return side == Side.LEFT ? -cells.rightVelocity[Cells.FIRST - 1] : cells.leftVelocity[cells.end() - 1];
    }

    double endPressure(Side side) {
        return side == Side.LEFT ? cells.rightPressure[Cells.FIRST - 1] : cells.leftPressure[cells.end() - 1];
    }

    double endBurned(Side side) {
        return share(side == Side.LEFT ? cells.rightShare[Cells.FIRST - 1] : cells.leftShare[cells.end() - 1]);
    }

    /** Of the face at an end [m2]. */
    public double endArea(Side side) {
        return shape.faceArea(side == Side.LEFT ? 0 : cells.count);
    }

    /** A slope to half a step on may overshoot what a share can be. */
    private static double share(double reckoned) {
        return Math.min(1, Math.max(0, reckoned));
    }

    /**
     * What goes through an end in the step, each per area and time and positive out of the pipe.
     * @param mass     [kg/(m2 s)]
     * @param momentum with the pressure there [Pa]
     * @param energy   with the work of the pressure, above 0 K of the gas law [W/m2]
     * @param burned   mass of burned gas [kg/(m2 s)]
     */
    public void through(Side side, double mass, double momentum, double energy, double burned) {
        double sign = side == Side.LEFT ? -1 : 1;
        double[] end = end(side);
        end[0] = sign * mass;
        end[1] = momentum;
        end[2] = sign * energy;
        end[3] = sign * burned;
    }

    /** A wall: nothing goes through, and it bears the pressure that stops what comes (the exact wave, with gamma as it is there). */
    public void closed(Side side) {
        Edge edge = edge(side);
        PipeGas gas = gases.at(edge.burned);
        double gamma = gas.gamma(edge.pressure / (edge.density * gas.gasConstant()));
        through(side, 0, Waves.atWall(gamma, edge.density, edge.velocity, edge.pressure), 0, 0);
    }

    /** The pipe goes on as it is: waves leave. */
    public void open(Side side) {
        Edge edge = edge(side);
        PipeGas gas = gases.at(edge.burned);
        double temperature = edge.pressure / (edge.density * gas.gasConstant());
        double energy = edge.density * (gas.energy(temperature) + 0.5 * edge.velocity * edge.velocity);
        double mass = edge.density * edge.velocity;
        through(
                side,
                mass,
                mass * edge.velocity + edge.pressure,
                edge.velocity * (energy + edge.pressure),
                mass * edge.burned);
    }

    /** Kernels may write beyond the last face between cells: what was told of the ends is put there when it is needed. */
    private void advance(double dt) {
        put(Cells.FIRST - 1, left);
        put(cells.end() - 1, right);
        kernel.advance(cells, dt);
    }

    private double[] end(Side side) {
        return side == Side.LEFT ? left : right;
    }

    private void put(int face, double[] end) {
        cells.massFlux[face] = end[0];
        cells.momentumFlux[face] = end[1];
        cells.energyFlux[face] = end[2];
        cells.burnedFlux[face] = end[3];
    }

    /** The step, once the fluxes of both ends are told. A step that leaves a cell without gas is done again in shorter ones of first order. */
    public void finish(double dt) {
        advance(dt);
        cells.swap();
        kernel.derive(cells);
        fastest = kernel.fastest(cells);
        steps++;
        if (!isGas()) {
            cells.swap();
            repaired++;
            kernel.derive(cells);
            again(dt, HALVINGS);
        }
    }

    private void again(double dt, int halvings) {
        for (int part = 0; part < 2; part++) {
            kernel.flatten(cells);
            kernel.flow(cells);
            advance(0.5 * dt);
            cells.swap();
            kernel.derive(cells);
            fastest = kernel.fastest(cells);
            if (!isGas()) {
                if (halvings == 0) {
                    requireGas();
                }
                cells.swap();
                kernel.derive(cells);
                again(0.5 * dt, halvings - 1);
            }
        }
    }

    private boolean isGas() {
        return fastest < Double.POSITIVE_INFINITY; // no number where a cell holds no gas
    }

    private void requireGas() {
        if (!isGas()) {
            for (int i = Cells.FIRST; i < cells.end(); i++) {
                if (!(cells.mass[i] > 0) || !(cells.pressure[i] > 0) || !Double.isFinite(cells.speed[i])) {
                    throw new ArithmeticException("cell " + (i - Cells.FIRST) + " of a pipe of " + cells.count
                            + " holds "
                            + cells.mass[i] + " kg/m3 at " + cells.pressure[i] + " Pa moving at " + cells.velocity[i]
                            + " m/s, which no gas can; what was told to go through its ends takes more than there is");
                }
            }
        }
    }

    // ---- what is in it

    public PipeShape shape() {
        return shape;
    }

    public PipeGases gases() {
        return gases;
    }

    /** Steps that had to be done again in shorter ones. */
    public long repaired() {
        return repaired;
    }

    /** [kg/m3]. */
    public double density(int cell) {
        return cells.mass[cell + Cells.FIRST];
    }

    /** To the right [m/s]. */
    public double velocity(int cell) {
        return cells.velocity[cell + Cells.FIRST];
    }

    /** [Pa]. */
    public double pressure(int cell) {
        return cells.pressure[cell + Cells.FIRST];
    }

    /** [K]. */
    public double temperature(int cell) {
        int i = cell + Cells.FIRST;
        return cells.pressure[i] * cells.volume[i] / (cells.gasFresh + cells.gasMore * cells.share[i]);
    }

    /** Share of burned gas. */
    public double burned(int cell) {
        return cells.share[cell + Cells.FIRST];
    }

    /** In the whole pipe [kg]. */
    public double mass() {
        return sum(cells.mass);
    }

    /** In the whole pipe, moving and warm, above 0 K of the gas law [J]. */
    public double energy() {
        return sum(cells.energy);
    }

    /** Of burned gas in the whole pipe [kg]. */
    public double burnedMass() {
        return sum(cells.burned);
    }

    private double sum(double[] perVolume) {
        double sum = 0;
        for (int k = 0; k < cells.count; k++) {
            sum += perVolume[k + Cells.FIRST] * shape.cellArea(k);
        }
        return sum * cells.step;
    }
}
