package longthrow.core.pipe;

import longthrow.core.quantity.Require;

/**
 * Gas that stands still in a room: airbox, silencer, crankcase. It holds exactly what its ends give and take. A step is told like a pipe's: {@link #predict} (then pressure and the rest are those of the middle of the
 * step, foretold from how they changed in the last one), {@link #give} by each of its ends, {@link #finish}. Second order; of one thread.
 *
 * <p>Foretelling holds while a step changes the pressure by less than it stands off: {@link #longestStep}. A room smaller than some cells of its pipes is better said as a piece of pipe.
 */
public final class Volume {
    /** Share of the limit of Adams and Bashforth's second order, which this is for a step of one length, that is used: decay by a rate is stable up to one over it. */
    private static final double CAUTION = 0.5;

    private final Gas gas;

    private double size;
    private double mass;
    private double energy;
    private double burned;

    private double heatPerKelvin;
    private double wall = 300;

    // Of the step that is told: into the room, per second; and of the last.
    private double massRate;
    private double energyRate;
    private double burnedRate;
    private double lastMass;
    private double lastEnergy;
    private double lastBurned;
    private double sizeAfter;
    private double growth;
    private double heat;
    private boolean foretold;

    private double pressure;
    private double temperature;
    private double share;

    /**
     * @param size        [m3], above 0
     * @param pressure    [Pa], above 0
     * @param temperature [K], above 0
     * @param burned      share of burned gas, 0 to 1
     */
    public Volume(PipeGases gases, double size, double pressure, double temperature, double burned) {
        this.gas = new Gas(gases);
        this.size = Require.positive("volume [m3]", size);
        hold(pressure, temperature, burned);
    }

    /**
     * Fills it anew, as if nothing had gone before.
     * @param ofPressure    [Pa], above 0
     * @param ofTemperature [K], above 0
     * @param ofBurned      share of burned gas, 0 to 1
     */
    public void fill(double ofPressure, double ofTemperature, double ofBurned) {
        hold(ofPressure, ofTemperature, ofBurned);
        foretold = false;
    }

    private void hold(double ofPressure, double ofTemperature, double ofBurned) {
        Require.positive("pressure in a volume [Pa]", ofPressure);
        Require.positive("temperature in a volume [K]", ofTemperature);
        Require.within("share of burned gas in a volume", ofBurned, 0, 1);
        gas.atTemperature(ofBurned, ofTemperature);
        mass = ofPressure * size / (gas.gasConstant * ofTemperature);
        energy = mass * gas.energy(ofTemperature);
        burned = mass * ofBurned;
        state(size, mass, energy, burned);
    }

    /**
     * Heat to its wall, by the temperature in the middle of each step.
     * @param perKelvin   coefficient by area [W/K], 0 or above
     * @param temperature of the wall [K]
     */
    public void wall(double perKelvin, double temperature) {
        heatPerKelvin = Require.notNegative("heat to the wall of a volume [W/K]", perKelvin);
        wall = Require.positive("temperature of a volume's wall [K]", temperature);
    }

    private void state(double room, double ofMass, double ofEnergy, double ofBurned) {
        if (!(ofMass > 0 && ofEnergy > 0 && room > 0) || !(ofEnergy < Double.POSITIVE_INFINITY)) {
            throw new ArithmeticException(
                    "a volume of " + room + " m3 would hold " + ofMass + " kg with " + ofEnergy
                            + " J, which no gas can; its ends take more in a step than there is: make the step shorter, or the volume a piece of pipe");
        }
        share = Math.min(1, Math.max(0, ofBurned / ofMass));
        gas.atEnergy(share, ofEnergy / ofMass);
        temperature = gas.temperature;
        pressure = ofMass * gas.gasConstant * temperature / room;
    }

    /** A step of a room that keeps its size. */
    public void predict(double dt) {
        predict(dt, size);
    }

    /**
     * A step in which the room changes.
     * @param after size at its end [m3]
     */
    public void predict(double dt, double after) {
        sizeAfter = Require.positive("volume [m3]", after);
        double half = 0.5 * dt;
        double middle = 0.5 * (size + after);
        double work = pressure * (middle - size);
        growth = after - size;
        if (foretold) {
            state(
                    middle,
                    mass + half * lastMass,
                    energy + half * (lastEnergy + heat) - work,
                    burned + half * lastBurned);
        } else {
            state(middle, mass, energy - work, burned);
        }
        heat = heatPerKelvin * (wall - temperature);
        massRate = 0;
        energyRate = 0;
        burnedRate = 0;
    }

    /**
     * What one end brings in the step; what it takes is below 0.
     * @param massRate   [kg/s]
     * @param energyRate enthalpy with speed, over 0 K of the gas law [W]
     * @param burnedRate of burned gas [kg/s]
     */
    public void give(double massRate, double energyRate, double burnedRate) {
        this.massRate += massRate;
        this.energyRate += energyRate;
        this.burnedRate += burnedRate;
    }

    /** What a pipe's throat lets out comes here. */
    public void give(Throat throat) {
        give(throat.mass(), throat.energy(), throat.burned());
    }

    public void finish(double dt) {
        mass += dt * massRate;
        burned += dt * burnedRate;
        energy += dt * (energyRate + heat) - pressure * growth;
        size = sizeAfter;
        lastMass = massRate;
        lastEnergy = energyRate;
        lastBurned = burnedRate;
        foretold = true;
        state(size, mass, energy, burned);
    }

    /**
     * Other gas at the same pressure, between two steps.
     * @param temperature [K], above 0
     * @param burned      share of burned gas, 0 to 1
     */
    public void refill(double temperature, double burned) {
        hold(pressure, temperature, burned);
    }

    /**
     * A step that is stable whatever its ends do [s].
     * @param area of all its ends together, by their throats [m2], above 0
     */
    public double longestStep(double area) {
        double sound = Math.sqrt(gas.gamma * gas.gasConstant * temperature);
        return CAUTION * size / (Require.positive("area of the ends of a volume [m2]", area) * sound);
    }

    // ---- in the middle of a step after predict, at its end after finish

    /** [Pa]. */
    public double pressure() {
        return pressure;
    }

    /** [K]. */
    public double temperature() {
        return temperature;
    }

    /** Share of burned gas. */
    public double share() {
        return share;
    }

    /** Ratio of specific heats. */
    public double gamma() {
        return gas.gamma;
    }

    // ---- what is in it, at the end of the last step

    /** [m3]. */
    public double size() {
        return size;
    }

    /** [kg]. */
    public double mass() {
        return mass;
    }

    /** Above 0 K of the gas law [J]. */
    public double energy() {
        return energy;
    }

    /** Of burned gas [kg]. */
    public double burnedMass() {
        return burned;
    }

    /** To its wall, by area [W/K]. */
    public double heatPerKelvin() {
        return heatPerKelvin;
    }

    /** At constant pressure, of what is in it [J/(kg K)]. */
    public double heatCapacity() {
        return gas.gasConstant * gas.gamma / (gas.gamma - 1);
    }

    /** To the gas in the step last told [W]. */
    public double heat() {
        return heat;
    }
}
