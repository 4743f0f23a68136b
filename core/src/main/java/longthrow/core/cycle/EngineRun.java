package longthrow.core.cycle;

import java.util.Locale;
import java.util.Optional;
import java.util.function.Supplier;
import java.util.stream.Stream;
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

    /** Share of its mean speed below which a crankshaft is said to stall: what it does there no steady mean tells. Judgement. */
    private static final double STALLED = 0.25;

    /** So many cycles the crankshaft turns evenly, until the load is known that holds it. */
    private static final int EVEN_CYCLES = 2;

    /**
     * After the second cycle to this one, plenums are filled with what they are on their way to, while cycles still differ; what is asked of cycles that repeat stays what it is. Later ones are left
     * alone: an engine that does not settle of itself is not to be kept from it, nor helped to look as if it did.
     */
    private static final int FIRST_LEAP = 2;

    private static final int LAST_LEAP = 12;

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
    private double knockEnd;
    private final Traces.Pen pen = new Traces.Pen();
    private Sums sums = new Sums();
    private double residual;
    private double trapped;
    private double spark;
    private double peak;
    private double peakAngle;
    private double gross;

    // ---- all of them
    private int cycles;
    private int evenCycles = EVEN_CYCLES;
    private double change = Double.POSITIVE_INFINITY;
    private double lastWork;
    private double lastCharge;
    private double[] lastPressures = {};

    private enum Burning {
        BEFORE,
        LIT,
        OVER
    }

    /** What a cycle adds up. */
    private static final class Sums {
        long steps;
        double time;
        double charge;
        double leaves;
        double leavesWarm;
        double intakeEnergy;
        double exhaustEnergy;
        double portWarmth;
        double mouth;
        double tail;
    }

    EngineRun(Engine engine, Setting setting, WorkingGases gases, Mesh mesh, Supplier<FlowKernel> kernels) {
        this.engine = engine;
        this.setting = setting;
        this.gases = gases;
        this.mesh = mesh;
        this.cylinder = new Cylinder(
                engine.space(),
                gases.charge(),
                engine.walls(),
                Crevice.of(engine.firing().crevices(), engine.space(), engine.walls()));
        Surroundings air = setting.surroundings();
        this.intake = new DuctFlow(
                engine.intakeDuct(),
                gases.pipe(),
                kernels.get(),
                mesh.cell() * Mesh.FRESH,
                new DuctFlow.Outside(air.pressure(), air.intakeTemperature(), 0),
                new DuctFlow.Outside(air.pressure(), air.intakeTemperature(), 0));
        this.exhaust = new DuctFlow(
                engine.exhaustDuct(),
                gases.pipe(),
                kernels.get(),
                mesh.cell(),
                new DuctFlow.Outside(air.pressure(), air.airTemperature(), 1),
                new DuctFlow.Outside(air.pressure(), FIRST_EXHAUST, 1));
        this.flame = FlameSpeed.of(gases.fuel());
        double pistonSpeed = engine.space().meanPistonSpeed(setting.speed());
        this.wallHeat = WallHeat.usual(pistonSpeed);
        this.lost = (1 - engine.firing().efficiency()) * gases.released();
        this.intakeShuts = within(engine.intake().closes());
        this.exhaustOpens = within(engine.exhaust().opens());
        this.speed = setting.speed();
        this.spark = setting.spark() instanceof Spark.Fixed fixed ? fixed.before() : Spark.FIRST;
        begin(air);
    }

    /** Into the cycle, from BEGIN on. */
    private static double within(double angle) {
        return angle - 4 * Math.PI * Math.floor((angle - BEGIN) / (4 * Math.PI));
    }

    private void begin(Surroundings air) {
        cylinder.fill(engine.space().volume(BEGIN), air.pressure(), FIRST_CHARGE, FIRST_BURNED);
        atWall.wallTemperature = engine.walls().head();
    }

    /**
     * Begins with what stood in a like engine, before the first cycle.
     * @throws IllegalArgumentException where its ducts have not as many pipes and plenums
     */
    void begin(Settled with) {
        intake.beginWith(with.intake);
        exhaust.beginWith(with.exhaust);
        cylinder.fill(engine.space().volume(BEGIN), with.pressure, with.temperature, with.burned);
        if (!(setting.spark() instanceof Spark.Fixed)) {
            spark = with.spark;
        }
        if (Double.isFinite(engine.inertia())) {
            speed = with.speed;
            load = with.load;
            evenCycles = 0;
        }
    }

    /** What stands in it at the end of a cycle. */
    Settled kept() {
        return new Settled(
                intake.kept(),
                exhaust.kept(),
                cylinder.pressure(),
                cylinder.temperature(),
                cylinder.burned(),
                speed,
                load,
                spark);
    }

    /** One more cycle. */
    void cycle() {
        sums = new Sums();
        cylinder.account();
        angle = BEGIN;
        burning = Burning.BEFORE;
        peak = 0;
        gross = Double.NaN;
        pen.begin();
        pen.add(angle, cylinder, intake, exhaust);
        intake.begin();
        exhaust.begin();
        boolean shut = false;
        while (angle < END) {
            if (!shut && angle >= intakeShuts) {
                shut = true;
                closed();
            }
            if (burning == Burning.BEFORE && angle >= -spark) {
                light();
            }
            if (burning == Burning.LIT && (angle >= exhaustOpens || angle >= burnEnd())) {
                cylinder.mix();
                burning = Burning.OVER;
            }
            if (angle >= Math.PI && Double.isNaN(gross)) {
                gross = cylinder.work();
            }
            step(next(shut), shut);
        }
        cycles++;
        compare();
        time();
        if (cycles >= FIRST_LEAP && cycles <= LAST_LEAP && change > OperatingPoint.ALIKE) {
            intake.foresee(sums.mouth, sums.time);
            exhaust.foresee(sums.tail, sums.time);
        }
        intake.rub();
        exhaust.rub();
        if (Double.isFinite(engine.inertia())) {
            load = cylinder.work() / (4 * Math.PI);
            speed *= setting.speed() * sums.time / (4 * Math.PI);
        }
    }

    /** How far this cycle is from the one before. */
    private void compare() {
        double[] pressures = pressures();
        double most = Math.max(
                Math.abs(cylinder.work() - lastWork) / Math.max(Math.abs(cylinder.work()), leastWork()),
                Math.abs(sums.charge - lastCharge) / Math.abs(sums.charge));
        double squares = 0;
        for (int i = 0; i < lastPressures.length; i++) {
            double by = (pressures[i] - lastPressures[i]) / pressures[i];
            squares += by * by;
        }
        double kept = Math.abs(sums.mouth - sums.tail) / Math.abs(sums.charge);
        change = lastPressures.length == 0
                ? Double.POSITIVE_INFINITY
                : Math.max(Math.max(most, kept), Math.sqrt(squares / lastPressures.length));
        lastWork = cylinder.work();
        lastCharge = sums.charge;
        lastPressures = pressures;
    }

    /** A cycle's work is held against this where it does less [J]: what the air does on the displacement. */
    private double leastWork() {
        return setting.surroundings().pressure() * engine.space().displacement();
    }

    private double[] pressures() {
        return Stream.of(intake, exhaust).flatMapToDouble(DuctFlow::pressures).toArray();
    }

    /** A spark that is sought comes as much earlier as half has burned too late. */
    private void time() {
        if (setting.spark() instanceof Spark.HalfBurnedAt sought && curve.isPresent()) {
            double late = curve.get().angle(0.5) - sought.after();
            spark = Math.min(Spark.EARLIEST, Math.max(Spark.LATEST, spark + late));
        }
    }

    private double burnEnd() {
        return curve.map(BurnCurve::end).orElse(exhaustOpens);
    }

    /** Where so little is left that it does not matter how it burns. */
    private double knockEnds() {
        return switch (burning) {
            case BEFORE -> Double.POSITIVE_INFINITY;
            case LIT -> knockEnd;
            case OVER -> Double.NEGATIVE_INFINITY;
        };
    }

    /** Whether the crankshaft's speed follows the gas: not before there is a load to hold against it. */
    private boolean swings() {
        return Double.isFinite(engine.inertia()) && cycles >= evenCycles;
    }

    /** The next angle at which something begins or ends. */
    private double next(boolean shut) {
        double to = END;
        if (!shut && intakeShuts > angle) {
            to = Math.min(to, intakeShuts);
        }
        if (burning == Burning.BEFORE && -spark > angle) {
            to = Math.min(to, -spark);
        }
        if (burning == Burning.LIT) {
            to = Math.min(to, Math.min(exhaustOpens, burnEnd()));
            if (knockEnds() > angle) {
                to = Math.min(to, knockEnds());
            }
        }
        if (angle < Math.PI) {
            to = Math.min(to, Math.PI);
        }
        return to;
    }

    private void closed() {
        atWall.referencePressure = cylinder.pressure();
        atWall.referenceTemperature = cylinder.temperature();
        atWall.referenceVolume = cylinder.volume();
        residual = cylinder.burned();
        trapped = cylinder.mass();
        knock.begin(cylinder.pressure(), cylinder.temperature());
    }

    private void light() {
        CylinderSpace space = engine.space();
        double area = space.pistonArea();
        Engine.Firing firing = engine.firing();
        BurnAngles.Place place = new BurnAngles.Place(
                firing.chamber(),
                space.bore(),
                space.crank().stroke(),
                firing.flameTravel(),
                -spark,
                at -> space.volume(at) / area);
        BurnAngles.Charge charge = new BurnAngles.Charge(
                gases.equivalenceRatio(), cylinder.burned(), cylinder.temperature(), cylinder.pressure());
        curve = BurnAngles.of(place, charge, flame, setting.speed())
                .map(angles -> BurnCurve.fromSpark(
                        -spark,
                        angles.development() * firing.developmentFactor(),
                        angles.rapid() * firing.burnFactor()));
        knockEnd = curve.map(burn -> burn.angle(Knock.BURNED)).orElse(exhaustOpens);
        cylinder.spark(lost);
        burning = Burning.LIT;
    }

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
        cylinder.whole(space.volume(end), dt, burnedShare(end), mass - old, old, enthalpyIn + enthalpyOut, coefficient);
        intake.finish(dt);
        exhaust.finish(dt);
        count(dt, enthalpyIn, enthalpyOut, t);
        if (shut && angle < knockEnds()) {
            knock.add(dt, cylinder.pressure(), cylinder.temperature());
        }
        if (swings()) {
            double torque =
                    (p - setting.surroundings().pressure()) * (space.volume(end) - space.volume(angle)) / (end - angle);
            speed += dt * (torque - load) / engine.inertia();
            if (!(speed > STALLED * setting.speed())) {
                throw new DoesNotRunException(
                        "at a mean of " + Math.round(setting.speed() * 30 / Math.PI)
                                + " rpm a wheel of "
                                + String.format(Locale.ROOT, "%.2g", engine.inertia())
                                + " kg m2 does not carry the crankshaft through compression: it stalls. Read the inertia of the wheel (flywheel.inertia) where it was not, or ask for a higher speed");
            }
        }
        angle = end;
        if (cylinder.pressure() > peak) {
            peak = cylinder.pressure();
            peakAngle = angle;
        }
        pen.add(angle, cylinder, intake, exhaust);
    }

    private void count(double dt, double enthalpyIn, double enthalpyOut, double temperature) {
        sums.steps++;
        sums.time += dt;
        sums.charge += dt * (intake.intoCylinder() - intake.burnedIntoCylinder());
        sums.intakeEnergy += dt * enthalpyIn;
        sums.exhaustEnergy -= dt * enthalpyOut;
        double leaves = dt * Math.max(0, -exhaust.intoCylinder());
        sums.leaves += leaves;
        sums.leavesWarm += leaves * temperature;
        sums.portWarmth += dt * exhaust.portTemperature();
        sums.mouth -= dt * intake.massOut();
        sums.tail += dt * exhaust.massOut();
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

    int cycles() {
        return cycles;
    }

    /** How far the last cycle was from the one before, at most of work, charge, pressures in pipes and plenums, and what has come in and not gone out. */
    double change() {
        return change;
    }

    /** The last cycle. */
    OperatingPoint point(boolean settled) {
        double displacement = engine.space().displacement();
        double fuel = sums.charge * gases.fuelShare();
        double air = sums.charge - fuel;
        Surroundings around = setting.surroundings();
        double holds = displacement * gases.air().density(around.airTemperature(), around.pressure());
        double energy =
                sums.intakeEnergy - sums.exhaustEnergy - cylinder.work() - cylinder.heat() - cylinder.unreleased();
        double fuelEnergy = fuel * gases.fuel().vapourHeatingValue();
        long repaired = Stream.of(intake, exhaust)
                .flatMap(duct -> duct.pipes().stream())
                .mapToLong(PipeFlow::repaired)
                .sum();
        return new OperatingPoint(
                setting,
                new OperatingPoint.Work(
                        cylinder.work() / displacement, gross / displacement, cylinder.work() / (4 * Math.PI)),
                new OperatingPoint.Charge(air, fuel, trapped, residual, air / holds),
                curve.map(burn -> new OperatingPoint.Fire(
                        spark,
                        burn.angle(0.1),
                        burn.angle(0.5),
                        burn.angle(0.9),
                        peak,
                        peakAngle,
                        knock.octaneWanted(),
                        knock.fitted())),
                new OperatingPoint.Heat(
                        fuelEnergy,
                        cylinder.work(),
                        cylinder.heat(),
                        sums.leavesWarm / sums.leaves,
                        sums.portWarmth / sums.time),
                new OperatingPoint.Balance((sums.mouth - sums.tail) / sums.charge, energy / fuelEnergy),
                new OperatingPoint.Effort(
                        settled, change, cycles, sums.steps, intake.cells() + exhaust.cells(), repaired),
                pen.kept());
    }
}
