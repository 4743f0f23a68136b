package longthrow.core.cycle;

import java.util.ArrayList;
import java.util.List;
import longthrow.core.pipe.FlowKernel;
import longthrow.core.pipe.PipeFlow;
import longthrow.core.pipe.PipeFlow.Side;
import longthrow.core.pipe.PipeGases;
import longthrow.core.pipe.PipeShape;
import longthrow.core.pipe.Throat;

/** The gas on the way between valve and outside. Left ends of its pipes are towards the valve. Changes as it is advanced; of one thread. */
final class DuctFlow {
    /** A slope takes three cells. */
    private static final int FEWEST_CELLS = 3;

    private final List<PipeFlow> pipes = new ArrayList<>();
    private final Throat valve;
    private final Throat mouth;
    private final double mouthIn;
    private final double mouthOut;
    private final double outsidePressure;
    private final double outsideTemperature;
    private final double outsideBurned;

    private double massOut;

    /**
     * @param cell        longest cell [m]
     * @param outside     pressure [Pa], temperature [K] and burned share of what may come in at the mouth
     */
    DuctFlow(Duct duct, PipeGases gases, FlowKernel kernel, double cell, Outside outside) {
        valve = new Throat(gases);
        mouth = new Throat(gases);
        outsidePressure = outside.pressure;
        outsideTemperature = outside.temperature;
        outsideBurned = outside.burned;
        for (Piece piece : duct.pieces()) {
            if (piece instanceof Tube tube) {
                int cells = Math.max(FEWEST_CELLS, (int) Math.ceil(tube.length() / cell - 1e-9));
                pipes.add(new PipeFlow(PipeShape.of(tube.length(), cells, tube::diameter), gases, kernel));
            }
        }
        double last = last().endArea(Side.RIGHT);
        mouthOut = last;
        mouthIn = last * duct.mouth();
    }

    record Outside(double pressure, double temperature, double burned) {}

    private PipeFlow last() {
        return pipes.get(pipes.size() - 1);
    }

    /** All of one state, at rest. */
    void fill(double pressure, double temperature, double burned) {
        for (PipeFlow pipe : pipes) {
            pipe.fill(x -> pressure, x -> temperature, x -> 0, x -> burned);
        }
    }

    double longestStep() {
        double longest = Double.POSITIVE_INFINITY;
        for (PipeFlow pipe : pipes) {
            longest = Math.min(longest, pipe.longestStep());
        }
        return longest;
    }

    void predict(double dt) {
        for (PipeFlow pipe : pipes) {
            pipe.predict(dt);
        }
    }

    /** What the cylinder stands against in the middle of the step, see {@link Throat#join}; then {@link #intoCylinder} and its like say what flows. */
    void meet(double areaIn, double areaOut, double pressure, double temperature, double burned) {
        valve.join(pipes.get(0), Side.LEFT, areaIn, areaOut, pressure, temperature, burned);
    }

    /** [kg/s]. */
    double intoCylinder() {
        return valve.mass();
    }

    double burnedIntoCylinder() {
        return valve.burned();
    }

    /** By the gas law of the pipes [W]. */
    double energyIntoCylinder() {
        return valve.energy();
    }

    void finish(double dt) {
        mouth.join(last(), Side.RIGHT, mouthOut, mouthIn, outsidePressure, outsideTemperature, outsideBurned);
        massOut = mouth.mass();
        for (PipeFlow pipe : pipes) {
            pipe.finish(dt);
        }
    }

    /** Out of the mouth in the step last taken [kg/s]. */
    double massOut() {
        return massOut;
    }

    List<PipeFlow> pipes() {
        return pipes;
    }

    int cells() {
        return pipes.stream().mapToInt(pipe -> pipe.shape().cells()).sum();
    }

    double mass() {
        return pipes.stream().mapToDouble(PipeFlow::mass).sum();
    }

    /** In the cell next to the valve [Pa]. */
    double portPressure() {
        return pipes.get(0).pressure(0);
    }

    /** In the cell next to the valve [K]. */
    double portTemperature() {
        return pipes.get(0).temperature(0);
    }
}
