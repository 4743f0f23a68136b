package longthrow.core.cycle;

import java.util.Locale;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.function.IntToDoubleFunction;
import longthrow.core.CpuTime;
import longthrow.core.gas.Fuel;

/** CPU time of this thread, warm, median of many: what is asked at every step of a cylinder, and what once a cycle. Run by hand: its figures are in docs/measurements.md. */
final class BurnTiming {
    private static final int ROUNDS = 31;
    private static final int ASKED = 1 << 16;

    private static double sink;

    private BurnTiming() {}

    public static void main(String[] arguments) {
        SplittableRandom random = new SplittableRandom(1);
        double[] theta = random.doubles(ASKED, -0.4, 0.9).toArray();
        double[] pressure = random.doubles(ASKED, 1e5, 60e5).toArray();
        double[] temperature = random.doubles(ASKED, 400, 2600).toArray();
        BurnCurve curve = BurnCurve.fromSpark(-0.4, 0.4, 0.5);
        print("burn curve, share", k -> curve.share(theta[k]));
        print("burn curve, rate", k -> curve.rate(theta[k]));
        GasAtWall gas = new GasAtWall();
        gas.volume = 6e-5;
        gas.motoredPressure = 14e5;
        gas.referencePressure = 1e5;
        gas.referenceTemperature = 360;
        gas.referenceVolume = 2.2e-4;
        gas.wallTemperature = 450;
        gas.phase = GasAtWall.Phase.BURNING;
        WallHeat woschni = new Woschni(0.068, 1.96e-4, 6.5);
        WallHeat annand = new Annand(Annand.USUAL, 0.068, 6.5);
        WallHeat hohenberg = new Hohenberg(6.5);
        print("wall heat, Woschni", k -> coefficient(woschni, gas, pressure[k], temperature[k]));
        print("wall heat, Annand", k -> coefficient(annand, gas, pressure[k], temperature[k]));
        print("wall heat, Hohenberg", k -> coefficient(hohenberg, gas, pressure[k], temperature[k]));
        Knock knock = new Knock();
        knock.begin(1e5, 350);
        print("knock, one step", k -> {
            knock.add(1e-6, pressure[k], temperature[k]);
            return 0;
        });
        FlameSpeed petrol = FlameSpeed.of(Fuel.petrol());
        print(
                "burn angles, once a cycle",
                k -> BurnAngles.of(
                                BurnAngles.ANCHOR_PLACE,
                                new BurnAngles.Charge(1.1, 0.08, 600, pressure[k]),
                                petrol,
                                BurnAngles.ANCHOR_SPEED)
                        .orElseThrow()
                        .rapid());
        Friction.Engine engine = new Friction.Engine(
                0.068,
                0.054,
                0.025,
                new Bearing.Plain(0.028, 0.025, 2),
                new Bearing.Plain(0.030, 0.022, 1),
                new Friction.Valves(ValveGear.PUSHROD_FLAT, 2, 0.006, 2),
                Optional.of(new Friction.Fan(0.19, 1.15)));
        print(
                "friction, once a speed",
                k -> Friction.of(engine, new Friction.Running(100 + pressure[k] * 1e-4, 8.5, 1, 12e-6))
                        .total());
        if (Double.isNaN(sink)) {
            throw new IllegalStateException("a formula gave NaN");
        }
    }

    private static double coefficient(WallHeat formula, GasAtWall gas, double pressure, double temperature) {
        gas.pressure = pressure;
        gas.temperature = temperature;
        return formula.coefficient(gas);
    }

    private static void print(String what, IntToDoubleFunction asked) {
        double each = 1e6
                / ASKED
                * CpuTime.median(ROUNDS, () -> {
                    for (int k = 0; k < ASKED; k++) {
                        sink += asked.applyAsDouble(k);
                    }
                });
        System.out.printf(Locale.ROOT, "%s: %.1f ns%n", what, each);
    }
}
