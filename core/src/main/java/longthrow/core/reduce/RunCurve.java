package longthrow.core.reduce;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import longthrow.core.formula.Expression;
import longthrow.core.formula.Formula;
import longthrow.core.measurement.Measured;
import longthrow.core.measurement.Source;

/**
 * Torque and power of one run by speed, each with two doubts: the run's own, and that which the bench lays on all its runs alike. Owns its numbers.
 */
public final class RunCurve {
    /** Where the torque is that a curve tells. */
    public enum Taken {
        /** At the crankshaft. */
        CRANK("at the crankshaft"),
        /** Reckoned to the crankshaft's speed, less what chain, belt, gears and tyre between take, which is not known. */
        BEHIND_DRIVE("at the crankshaft's speed, less what the drive between takes, which is not known"),
        /** At the drum's own speed: the ratio to the engine is not known. */
        DRUM("at the drum, by the drum's own speed"),
        /** At the driven wheel. */
        WHEEL("at the driven wheel");

        private final String words;

        Taken(String words) {
            this.words = words;
        }

        /** In words. */
        public String words() {
            return words;
        }
    }

    private static final Formula CONSUMPTION = Formula.of(
            "specific consumption",
            FourStrokeFigures.specificConsumption(
                    Expression.input("flow").times(Expression.input("meter")), Expression.input("power")));

    private final SpeedGrid grid;
    private final Taken taken;
    private final List<At> at;
    private final Peak torquePeak;
    private final Peak powerPeak;
    private final double width;
    private final List<AlongCurve> beside;
    private final Optional<AlongCurve> fuelFlow;

    RunCurve(
            SpeedGrid grid,
            Taken taken,
            List<At> at,
            Peak torquePeak,
            Peak powerPeak,
            double width,
            List<AlongCurve> beside,
            Optional<AlongCurve> fuelFlow) {
        this.grid = grid;
        this.taken = taken;
        this.at = List.copyOf(at);
        this.torquePeak = torquePeak;
        this.powerPeak = powerPeak;
        this.width = width;
        this.beside = List.copyOf(beside);
        this.fuelFlow = fuelFlow;
    }

    /**
     * The curve at one speed.
     * @param speed      [rad/s]
     * @param torque     [N m], with the doubt of the bench alone
     * @param power      [W], with the doubt of the bench alone
     * @param ownTorque  standard uncertainty of the torque that is the run's own [N m]
     * @param ownPower   standard uncertainty of the power that is the run's own [W]
     * @param ownFreedom degrees of freedom of the two
     */
    public record At(
            double speed, Measured torque, Measured power, double ownTorque, double ownPower, double ownFreedom) {
        /** Torque with all its doubt. */
        public Measured wholeTorque() {
            return whole(torque, ownTorque, ownFreedom, speed);
        }

        /** Power with all its doubt. */
        public Measured wholePower() {
            return whole(power, ownPower, ownFreedom, speed);
        }
    }

    /** The same curve with what was logged beside it. */
    RunCurve beside(List<AlongCurve> others, Optional<AlongCurve> fuel) {
        return new RunCurve(grid, taken, at, torquePeak, powerPeak, width, others, fuel);
    }

    /** A figure of the bench with the run's own scatter beside its other sources. */
    static Measured whole(Measured ofBench, double own, double freedom, double speed) {
        if (own == 0) {
            return ofBench;
        }
        Map<Source, Double> all = new LinkedHashMap<>(ofBench.contributions());
        all.put(
                new Source("run scatter at " + speed, Source.Kind.SCATTER, "scatter of the run", own, freedom, own),
                own);
        return Measured.withContributions(ofBench.value(), all);
    }

    /** The speeds it is told at. */
    public SpeedGrid grid() {
        return grid;
    }

    /** How many speeds. */
    public int size() {
        return at.size();
    }

    /** At one of the speeds, counted from 0. */
    public At at(int index) {
        return at.get(index);
    }

    /** Where the torque is. */
    public Taken taken() {
        return taken;
    }

    /** The highest torque. */
    public Peak torquePeak() {
        return torquePeak;
    }

    /** The highest power. */
    public Peak powerPeak() {
        return powerPeak;
    }

    /** How far to each side of a speed rows count for it [rad/s]: a bump narrower than this is smoothed away; 0 where nothing was smoothed. */
    public double width() {
        return width;
    }

    /** What else was written down, by speed. */
    public List<AlongCurve> beside() {
        return beside;
    }

    /** Fuel flow by speed [kg/s], where it was measured. */
    public Optional<AlongCurve> fuelFlow() {
        return fuelFlow;
    }

    /**
     * Fuel for the work done at each speed [kg/J]; empty where fuel was not measured, or where the power is not above nought by its doubt.
     * @param meter 1 with the relative doubt of what measures the fuel
     */
    public List<Optional<Measured>> consumption(Measured meter) {
        List<Optional<Measured>> all = new ArrayList<>();
        for (int i = 0; i < size(); i++) {
            Measured power = at(i).wholePower();
            all.add(
                    fuelFlow.isEmpty() || !(power.low() > 0)
                            ? Optional.empty()
                            : Optional.of(consumption(i, power, meter)));
        }
        return all;
    }

    private Measured consumption(int i, Measured power, Measured meter) {
        AlongCurve fuel = fuelFlow.orElseThrow();
        Source scatter = Source.known(
                "fuel flow scatter at " + at(i).speed(),
                Source.Kind.SCATTER,
                "scatter of the fuel flow",
                fuel.standardUncertainty(i));
        Map<String, Measured> inputs =
                Map.of("flow", Measured.of(fuel.value(i), List.of(scatter)), "meter", meter, "power", power);
        return Measured.through(CONSUMPTION, name -> java.util.Objects.requireNonNull(inputs.get(name)));
    }

    /** Each source of the bench with what it does to the torque at each speed [N m]; its sign says which way. */
    public Map<Source, double[]> benchDoubtOfTorque() {
        Map<Source, double[]> all = new LinkedHashMap<>();
        for (int i = 0; i < size(); i++) {
            int index = i;
            at(i).torque()
                    .contributions()
                    .forEach((source, c) -> all.computeIfAbsent(source, s -> new double[size()])[index] = c);
        }
        return all;
    }
}
