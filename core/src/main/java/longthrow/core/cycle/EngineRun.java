package longthrow.core.cycle;

import java.util.Arrays;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import java.util.function.Supplier;
import longthrow.core.pipe.FlowKernel;
import longthrow.core.pipe.PipeFlow;

/**
 * One engine at one speed, cycle after cycle until each is like the one before. Angles [rad] from firing top dead centre; a cycle runs from bottom to bottom dead centre, compression first.
 * Changes as it runs; of one thread.
 */
final class EngineRun {
    private static final double BEGIN = -Math.PI;
    private static final double END = 3 * Math.PI;

    /** Gas that a first cycle finds in the exhaust [K]: its own is there after two or three. */
    private static final double FIRST_EXHAUST = 900;

    /** Residual gas and warmth of the charge that a first cycle begins with. */
    private static final double FIRST_BURNED = 0.08;

    private static final double FIRST_CHARGE = 350;

    /** Charge is compressed like this without burning: Heywood (1988), 9.2.2, 1.3 for mixtures. */
    private static final double MOTORED = 1.3;

    /** So many cycles the crankshaft turns evenly, until the load is known that holds it. */
    private static final int EVEN_CYCLES = 2;

    private final Engine engine;
    private final Setting setting;
    private final WorkingGases gases;
    private final Mesh mesh;
    private final Cylinder cylinder;
    private final DuctFlow intake;
    private final DuctFlow exhaust;
    private final FlameSpeed flame;
    private final WallHeat wallHeat;
    private final GasAtWall atWall = new GasAtWall();
    private final Knock knock = new Knock();
    private final double lost;
    private final double intakeShuts;
    private final double exhaustOpens;

    // ---- the crankshaft
    private double angle = BEGIN;
    private double speed;
    private double load;

    // ---- this cycle
    private Burning burning = Burning.BEFORE;
    private Optional<BurnCurve> curve = Optional.empty();
    private final Sums sums = new Sums();
    private final Trace trace = new Trace();
    private int cycles;
    private long steps;

    // ---- the last cycle's
    private Cycle last = Cycle.NONE;
    private double[] lastState = {};

    private enum Burning {
        BEFORE,
        LIT,
        OVER
    }

    /** What a cycle adds up. */
    private static final class Sums {
        double time;
        double charge;
        double burnedBack;
        double exhaustMass;
        double exhaustEnergy;
        double intakeEnergy;
        double pumping;
        double energyBefore;
        double massBefore;
        double exhaustHeat;
        double mouthMass;
        double tailMass;
        double portPressure;

        void clear() {
            time = 0;
            charge = 0;
            burnedBack = 0;
            exhaustMass = 0;
            exhaustEnergy = 0;
            intakeEnergy = 0;
            pumping = 0;
            exhaustHeat = 0;
            mouthMass = 0;
            tailMass = 0;
            portPressure = 0;
        }
    }

    EngineRun(Engine engine, Setting setting, WorkingGases gases, Mesh mesh, Supplier<FlowKernel> kernels) {
        this.engine = engine;
        this.setting = setting;
        this.gases = gases;
        this.mesh = mesh;
        this.cylinder = new Cylinder(engine.space(), gases.charge(), engine.walls());
        Surroundings air = setting.surroundings();
        this.intake = new DuctFlow(
                engine.intakeDuct(),
                gases.pipe(),
                kernels.get(),
                mesh.cell() * Mesh.FRESH,
                new DuctFlow.Outside(air.pressure(), air.intakeTemperature(), 0));
        this.exhaust = new DuctFlow(
                engine.exhaustDuct(),
                gases.pipe(),
                kernels.get(),
                mesh.cell(),
                new DuctFlow.Outside(air.pressure(), air.airTemperature(), 1));
        this.flame = FlameSpeed.of(gases.fuel());
        double pistonSpeed = engine.space().meanPistonSpeed(setting.speed());
        this.wallHeat = WallHeat.usual(pistonSpeed);
        this.lost = (1 - engine.firing().efficiency()) * gases.released();
        this.intakeShuts = within(engine.intake().closes());
        this.exhaustOpens = within(engine.exhaust().opens());
        this.speed = setting.speed();
        begin(air);
    }

    /** Into the cycle, from BEGIN on. */
    private static double within(double angle) {
        return angle - 4 * Math.PI * Math.floor((angle - BEGIN) / (4 * Math.PI));
    }

    private void begin(Surroundings air) {
        intake.fill(air.pressure(), air.intakeTemperature(), 0);
        exhaust.fill(air.pressure(), FIRST_EXHAUST, 1);
        cylinder.fill(engine.space().volume(BEGIN), air.pressure(), FIRST_CHARGE, FIRST_BURNED);
        atWall.wallTemperature = engine.walls().head();
    }

    /** One more cycle. */
    void cycle() {
        sums.clear();
        cylinder.account();
        sums.energyBefore = cylinder.energy();
        sums.massBefore = cylinder.mass();
        angle = BEGIN;
        burning = Burning.BEFORE;
        boolean shut = false;
        double spark = -setting.spark();
        double stop = Math.min(intakeShuts, spark);
        double gross = 0;
        trace.begin();
        while (angle < END) {
            if (!shut && angle >= intakeShuts) {
                shut = true;
                reference();
            }
            if (burning == Burning.BEFORE && angle >= spark) {
                light();
            }
            if (burning == Burning.LIT && (angle >= exhaustOpens || angle >= burnEnd())) {
                cylinder.mix();
                burning = Burning.OVER;
            }
            stop = next(shut, spark);
            step(stop, shut);
            if (angle >= Math.PI && gross == 0) {
                gross = cylinder.work();
            }
        }
        cycles++;
        double turned = sums.time;
        double even = 4 * Math.PI / turned;
        last = new Cycle(
                cylinder.work(),
                gross,
                cylinder.heat(),
                sums.charge,
                cylinder.mass(),
                even);
        if (Double.isFinite(engine.inertia())) {
            load = cylinder.work() / (4 * Math.PI);
            speed *= setting.speed() / even;
        }
    }

    private double burnEnd() {
        return curve.map(BurnCurve::end).orElse(exhaustOpens);
    }

    /** Whether the crankshaft's speed follows the gas: not before there is a load to hold against it. */
    private boolean swings() {
        return Double.isFinite(engine.inertia()) && cycles >= EVEN_CYCLES;
    }

    /** The next angle at which something begins or ends. */
    private double next(boolean shut, double spark) {
        double to = END;
        if (!shut && intakeShuts > angle) {
            to = Math.min(to, intakeShuts);
        }
        if (burning == Burning.BEFORE && spark > angle) {
            to = Math.min(to, spark);
        }
        if (burning == Burning.LIT) {
            to = Math.min(to, Math.min(exhaustOpens, burnEnd()));
        }
        if (angle < Math.PI) {
            to = Math.min(to, Math.PI);
        }
        return to;
    }

    private void reference() {
        atWall.referencePressure = cylinder.pressure();
        atWall.referenceTemperature = cylinder.temperature();
        atWall.referenceVolume = cylinder.volume();
        residual = cylinder.burned();
        trapped = cylinder.mass();
        knock.begin(cylinder.pressure(), cylinder.temperature());
    }

    private double residual;
    private double trapped;

    private void light() {
        CylinderSpace space = engine.space();
        double area = space.pistonArea();
        Engine.Firing firing = engine.firing();
        BurnAngles.Place place = new BurnAngles.Place(
                firing.chamber(),
                space.bore(),
                space.crank().stroke(),
                firing.flameTravel(),
                cylinder.volume() / area,
                space.volume(HALF_BURNED) / area);
        BurnAngles.Charge charge = new BurnAngles.Charge(
                gases.equivalenceRatio(), cylinder.burned(), cylinder.temperature(), cylinder.pressure());
        curve = BurnAngles.of(place, charge, flame, setting.speed())
                .map(angles -> BurnCurve.fromSpark(
                        -setting.spark(),
                        angles.development() * firing.developmentFactor(),
                        angles.rapid() * firing.burnFactor()));
        cylinder.spark(lost);
        burning = Burning.LIT;
    }

    /** Half has burned some 8 degrees after top dead centre with the best spark: Heywood (1988), 9.2. */
    private static final double HALF_BURNED = Math.toRadians(8);

    private double burnedShare(double at) {
        if (burning != Burning.LIT || curve.isEmpty()) {
            return 0;
        }
        return curve.get().share(at);
    }

    private void step(double stop, boolean shut) {
        double longest = Math.min(mesh.degree() / speed, Math.min(intake.longestStep(), exhaust.longestStep()));
        double left = (stop - angle) / speed;
        boolean arrives = left <= longest * (1 + 1e-12);
        double dt = arrives ? left : left < 2 * longest ? 0.5 * left : longest;
        double middle = angle + 0.5 * dt * speed;
        double end = arrives ? stop : angle + dt * speed;
        intake.predict(dt);
        exhaust.predict(dt);
        CylinderSpace space = engine.space();
        cylinder.half(space.volume(middle), dt, burnedShare(middle));
        double p = cylinder.middlePressure();
        double t = cylinder.middleTemperature();
        double burned = cylinder.middleBurned();
        intake.meet(engine.intake().at(middle, true), engine.intake().at(middle, false), p, t, burned);
        exhaust.meet(engine.exhaust().at(middle, true), engine.exhaust().at(middle, false), p, t, burned);
        double mass = intake.intoCylinder() + exhaust.intoCylinder();
        double old = intake.burnedIntoCylinder() + exhaust.burnedIntoCylinder();
        double enthalpyIn = inTermsOfCylinder(intake);
        double enthalpyOut = inTermsOfCylinder(exhaust);
        wall(p, shut);
        double coefficient = engine.firing().heatFactor() * wallHeat.coefficient(atWall);
        cylinder.whole(
                space.volume(end), dt, burnedShare(end), mass - old, old, enthalpyIn + enthalpyOut, coefficient);
        intake.finish(dt);
        exhaust.finish(dt);
        sums.time += dt;
        sums.charge += dt * (intake.intoCylinder() - intake.burnedIntoCylinder());
        sums.intakeEnergy += dt * enthalpyIn;
        sums.exhaustMass -= dt * exhaust.intoCylinder();
        sums.exhaustEnergy -= dt * enthalpyOut;
        sums.mouthMass -= dt * intake.massOut();
        sums.tailMass += dt * exhaust.massOut();
        if (shut && burning != Burning.OVER) {
            knock.add(dt, cylinder.pressure(), cylinder.temperature());
        }
        if (swings()) {
            double torque = (p - setting.surroundings().pressure())
                    * (space.volume(end) - space.volume(angle))
                    / (end - angle);
            speed += dt * (torque - load) / engine.inertia();
        }
        angle = end;
        trace.add(angle, cylinder, intake, exhaust);
        steps++;
    }

    private double inTermsOfCylinder(DuctFlow duct) {
        double mass = duct.intoCylinder();
        double old = duct.burnedIntoCylinder();
        return duct.energyIntoCylinder() + (mass - old) * gases.freshZero() + old * gases.burnedZero();
    }

    private void wall(double pressure, boolean shut) {
        atWall.pressure = pressure;
        atWall.temperature = cylinder.middleMeanTemperature();
        atWall.volume = cylinder.middleVolume();
        boolean closed = shut && angle < exhaustOpens;
        if (closed && burning != Burning.BEFORE) {
            atWall.phase = GasAtWall.Phase.BURNING;
            atWall.motoredPressure =
                    atWall.referencePressure * Math.pow(atWall.referenceVolume / atWall.volume, MOTORED);
        } else {
            atWall.phase = closed ? GasAtWall.Phase.COMPRESSION : GasAtWall.Phase.GAS_EXCHANGE;
        }
    }

    /** What a cycle came to. */
    record Cycle(double work, double gross, double heat, double charge, double mass, double speed) {
        static final Cycle NONE = new Cycle(Double.NaN, Double.NaN, Double.NaN, Double.NaN, Double.NaN, Double.NaN);
    }

    Cycle last() {
        return last;
    }

    double residual() {
        return residual;
    }

    double trapped() {
        return trapped;
    }

    int cycles() {
        return cycles;
    }

    long steps() {
        return steps;
    }

    DuctFlow intake() {
        return intake;
    }

    DuctFlow exhaust() {
        return exhaust;
    }
    Trace trace() { return trace; }
    Optional<BurnCurve> curve() { return curve; }
    double exhaustEnergy() { return sums.exhaustEnergy; }
    double octane() { return knock.octaneWanted(); }
    Cylinder cylinder() { return cylinder; }
}
