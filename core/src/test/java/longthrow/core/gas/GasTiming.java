package longthrow.core.gas;

import java.util.Locale;
import java.util.SplittableRandom;
import longthrow.core.CpuTime;

/**
 * CPU time of this thread, warm, median of many: building the tables of burned gas, asking them, one equilibrium from scratch. Run by hand: its figures are in
 * docs/measurements.md.
 */
final class GasTiming {
    private static final int ROUNDS = 31;
    private static final int ASKED = 1 << 16;

    private static double sink;

    private GasTiming() {}

    public static void main(String[] arguments) {
        Fuel fuel = Fuel.petrol();
        print("table of a fuel: %.1f ms CPU%n", median(() -> take(BurnedGas.of(fuel, MoistAir.DRY))));
        BurnedGas table = BurnedGas.of(fuel, MoistAir.DRY);
        print("one equivalence ratio: %.2f ms CPU%n", median(() -> take(table.slice(1.1))));
        BurnedSlice slice = table.slice(1.1);
        SplittableRandom random = new SplittableRandom(1);
        double[] ratio = random.doubles(ASKED, 0.8, 1.3).toArray();
        double[] anywhere = random.doubles(ASKED, 400, 3200).toArray();
        double[] pressure = random.doubles(ASKED, 0.5e5, 90e5).toArray();
        double[] stroke = new double[ASKED];
        double[] falling = new double[ASKED];
        for (int k = 0; k < ASKED; k++) {
            stroke[k] = 2700 - 1500.0 * k / ASKED;
            falling[k] = 60e5 * Math.pow(20, -(double) k / ASKED);
        }
        BurnedState state = new BurnedState();
        print(
                "slice, anywhere: %.1f ns%n",
                1e6
                        / ASKED
                        * median(() -> {
                            for (int k = 0; k < ASKED; k++) {
                                slice.at(anywhere[k], pressure[k], state);
                                sink += state.energyByTemperature + state.gasConstantByLogPressure;
                            }
                        }));
        print(
                "slice, down a stroke: %.1f ns%n",
                1e6
                        / ASKED
                        * median(() -> {
                            for (int k = 0; k < ASKED; k++) {
                                slice.at(stroke[k], falling[k], state);
                                sink += state.energyByTemperature + state.gasConstantByLogPressure;
                            }
                        }));
        print(
                "table, anywhere: %.1f ns%n",
                1e6
                        / ASKED
                        * median(() -> {
                            for (int k = 0; k < ASKED; k++) {
                                table.at(ratio[k], anywhere[k], pressure[k], state);
                                sink += state.energyByTemperature + state.gasConstantByLogPressure;
                            }
                        }));
        print(
                "table, down a stroke: %.1f ns%n",
                1e6
                        / ASKED
                        * median(() -> {
                            for (int k = 0; k < ASKED; k++) {
                                table.at(1.1, stroke[k], falling[k], state);
                                sink += state.energyByTemperature + state.gasConstantByLogPressure;
                            }
                        }));
        Equilibrium gas = Equilibrium.of(fuel, MoistAir.DRY, 1.1);
        print(
                "equilibrium from scratch: %.2f us%n",
                1e3
                        / 1000
                        * median(() -> {
                            for (int k = 0; k < 1000; k++) {
                                sink += gas.at(Math.max(1000, anywhere[k]), pressure[k])
                                        .cp();
                            }
                        }));
        Mixture charge = Mixture.fresh(fuel, MoistAir.DRY, 1.1);
        print(
                "charge, energy and heat capacity: %.1f ns%n",
                1e6
                        / ASKED
                        * median(() -> {
                            for (int k = 0; k < ASKED; k++) {
                                sink += charge.internalEnergy(anywhere[k]) + charge.cv(anywhere[k]);
                            }
                        }));
        print("%s%n", Double.isNaN(sink) ? "something was no number" : "every answer was a number");
    }

    private static void take(Object made) {
        sink += made.hashCode();
    }

    /** [ms]. */
    private static double median(Runnable work) {
        return CpuTime.median(ROUNDS, work);
    }

    private static void print(String format, Object... values) {
        System.out.printf(Locale.ROOT, format, values);
    }
}
