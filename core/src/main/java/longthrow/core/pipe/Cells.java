package longthrow.core.pipe;

import java.util.Arrays;

/**
 * What a {@link FlowKernel} works on: one number of each kind for every cell and face, side by side. Open to kernels and to nobody else.
 *
 * <p>Cell k of the pipe stands at index k + {@link #FIRST}; one cell beyond each end is there for slopes alone. Face f, between cells f - 1 and f of the pipe, stands at
 * index f + FIRST - 1, so that a cell's left face is one before it and its right face at its own index. Behind the last cell there is room for a kernel that works on
 * {@link #LANES} at once: cells there have no volume (their inverse area is 0) and stay as they are.
 */
public final class Cells {
    /** Index of the first cell. */
    public static final int FIRST = 2;

    /** As many cells as a kernel may work on beyond the last. */
    public static final int LANES = 16;

    /** Cells of the pipe. */
    public final int count;

    /** Length of a cell [m]. */
    public final double step;

    /** Constants of the fresh gas, and how much more each is of burned gas: gas constant, and heat capacity a + b T. */
    public final double gasFresh;

    public final double gasMore;
    public final double aFresh;
    public final double aMore;
    public final double bFresh;
    public final double bMore;

    /** Per volume: mass, momentum, energy above 0 K of the gas law, mass of burned gas; and where the next of each is written. */
    public double[] mass;

    public double[] momentum;
    public double[] energy;
    public double[] burned;
    public double[] nextMass;
    public double[] nextMomentum;
    public double[] nextEnergy;
    public double[] nextBurned;

    /** What follows from those: volume per mass, velocity, pressure, burned share, heat capacity, gamma times pressure, and how fast news goes. */
    public final double[] volume;

    public final double[] velocity;
    public final double[] pressure;
    public final double[] share;
    public final double[] heatCapacity;
    public final double[] stiffness;
    public final double[] speed;

    /** Of the pipe: area of faces, inverse area of cells, growth of the area over a cell over the area, wall friction, wall heat, temperature of the wall. */
    public final double[] faceArea;

    public final double[] inverseArea;
    public final double[] widening;
    public final double[] friction;
    public final double[] heat;
    public final double[] wall;

    /** In the middle of the step, at the middle of each cell. */
    public final double[] midDensity;

    public final double[] midVelocity;
    public final double[] midPressure;
    public final double[] midShare;

    /** In the middle of the step, on the left and on the right of each face. */
    public final double[] leftDensity;

    public final double[] leftVelocity;
    public final double[] leftPressure;
    public final double[] leftShare;
    public final double[] rightDensity;
    public final double[] rightVelocity;
    public final double[] rightPressure;
    public final double[] rightShare;

    /** Through each face, per area and time. */
    public final double[] massFlux;

    public final double[] momentumFlux;
    public final double[] energyFlux;
    public final double[] burnedFlux;

    private final double[][] scratch;

    Cells(PipeShape shape, PipeGases gases) {
        count = shape.cells();
        step = shape.step();
        gasFresh = gases.fresh().gasConstant();
        gasMore = gases.burned().gasConstant() - gasFresh;
        aFresh = gases.fresh().a();
        aMore = gases.burned().a() - aFresh;
        bFresh = gases.fresh().b();
        bMore = gases.burned().b() - bFresh;
        mass = filled(1);
        momentum = filled(0);
        energy = filled(aFresh * IDLE);
        burned = filled(0);
        nextMass = filled(1);
        nextMomentum = filled(0);
        nextEnergy = filled(aFresh * IDLE);
        nextBurned = filled(0);
        volume = filled(1);
        velocity = filled(0);
        pressure = filled(gasFresh * IDLE);
        share = filled(0);
        heatCapacity = filled(aFresh);
        stiffness = filled(gasFresh * IDLE);
        speed = filled(1);
        faceArea = filled(1);
        inverseArea = filled(0);
        widening = filled(0);
        friction = filled(0);
        heat = filled(0);
        wall = filled(IDLE);
        midDensity = filled(1);
        midVelocity = filled(0);
        midPressure = filled(gasFresh * IDLE);
        midShare = filled(0);
        leftDensity = filled(1);
        leftVelocity = filled(0);
        leftPressure = filled(gasFresh * IDLE);
        leftShare = filled(0);
        rightDensity = filled(1);
        rightVelocity = filled(0);
        rightPressure = filled(gasFresh * IDLE);
        rightShare = filled(0);
        massFlux = filled(0);
        momentumFlux = filled(0);
        energyFlux = filled(0);
        burnedFlux = filled(0);
        scratch = new double[16][];
        for (int k = 0; k < scratch.length; k++) {
            scratch[k] = filled(1);
        }
        for (int f = 0; f <= count; f++) {
            faceArea[f + FIRST - 1] = shape.faceArea(f);
        }
        for (int k = 0; k < count; k++) {
            inverseArea[k + FIRST] = 1 / shape.cellArea(k);
            widening[k + FIRST] = (shape.faceArea(k + 1) - shape.faceArea(k)) / shape.cellArea(k);
        }
    }

    /** Temperature of what is not in the pipe and stands still there [K]. */
    private static final double IDLE = 300;

    private double[] filled(double value) {
        double[] all = new double[count + 2 * FIRST + LANES];
        Arrays.fill(all, value);
        return all;
    }

    /** Room for a kernel's own sums. */
    public double[] scratch(int which) {
        return scratch[which];
    }

    /** One past the last cell. */
    public int end() {
        return FIRST + count;
    }

    /** What was written becomes what is; the other way round it is taken back. */
    void swap() {
        double[] was = mass;
        mass = nextMass;
        nextMass = was;
        was = momentum;
        momentum = nextMomentum;
        nextMomentum = was;
        was = energy;
        energy = nextEnergy;
        nextEnergy = was;
        was = burned;
        burned = nextBurned;
        nextBurned = was;
    }
}
