package longthrow.core.cycle;

import java.util.function.DoubleUnaryOperator;
import longthrow.core.gas.BurnedState;

/** A cycle with shut valves for the tests: one gas of heat capacity a + b T before and after burning, which sets a given heat free. */
final class ClosedCycle {
    /** Heat to the walls [W/(m2 K)]. */
    interface Coefficient {
        double at(double pressure, double temperature, double volume);
    }

    /** One gas, its energy lowered by the heat when it burns. */
    record OneGas(double gasConstant, double a, double b, double heat) implements ChargeGases {
        @Override
        public void fresh(double temperature, BurnedState into) {
            into.internalEnergy = temperature * (a + 0.5 * b * temperature);
            into.energyByTemperature = a + b * temperature;
            into.energyByLogPressure = 0;
            into.gasConstant = gasConstant;
            into.gasConstantByTemperature = 0;
            into.gasConstantByLogPressure = 0;
        }

        @Override
        public void burned(double temperature, double pressure, BurnedState into) {
            fresh(temperature, into);
            into.internalEnergy -= heat;
        }
    }

    final CylinderSpace space;
    final Cylinder cylinder;
    double peakPressure;
    double peakAngle;
    double peakTemperature;
    double peakTemperatureAngle;
    double deadCentrePressure = Double.NaN;
    double deadCentreWork = Double.NaN;

    ClosedCycle(CylinderSpace space, ChargeGases gases, double wall, boolean twoZones) {
        this.space = space;
        this.cylinder = twoZones
                ? new Cylinder(space, gases, Walls.of(wall))
                : Cylinder.ofOneZone(space, gases, Walls.of(wall));
    }

    /**
     * Runs it in even steps, so that top dead centre and the start of burning stand at the end of one.
     * @param burned share by angle [deg]
     */
    void run(
            double from,
            double to,
            double step,
            double speed,
            double spark,
            DoubleUnaryOperator burned,
            Coefficient heat) {
        int steps = (int) Math.round((to - from) / step);
        double dt = Math.toRadians(step) / speed;
        boolean lit = false;
        for (int i = 0; i < steps; i++) {
            double begin = from + i * step;
            if (!lit && begin > spark - 1e-9) {
                cylinder.spark(0);
                lit = true;
            }
            cylinder.half(at(begin + 0.5 * step), dt, lit ? burned.applyAsDouble(begin + 0.5 * step) : 0);
            double coefficient =
                    heat.at(cylinder.middlePressure(), cylinder.middleMeanTemperature(), cylinder.middleVolume());
            double end = begin + step;
            cylinder.whole(at(end), dt, lit ? burned.applyAsDouble(end) : 0, 0, 0, 0, coefficient);
            note(end);
        }
    }

    private double at(double degrees) {
        return space.volume(Math.toRadians(degrees));
    }

    private void note(double angle) {
        if (cylinder.pressure() > peakPressure) {
            peakPressure = cylinder.pressure();
            peakAngle = angle;
        }
        if (cylinder.meanTemperature() > peakTemperature) {
            peakTemperature = cylinder.meanTemperature();
            peakTemperatureAngle = angle;
        }
        if (Math.abs(angle) < 1e-9) {
            deadCentrePressure = cylinder.pressure();
            deadCentreWork = cylinder.work();
        }
    }
}
