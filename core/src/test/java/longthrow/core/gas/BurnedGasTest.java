package longthrow.core.gas;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/**
 * The tables against the equilibrium they stand for. Energy by the energy above 298.15 K of the same gas in the table; where that is small, by a tenth of a megajoule. All
 * over the range: 250 to 4000 K, 0.2 to 250 bar, equivalence ratios 0.5 to 2 (slices from 0.25).
 */
class BurnedGasTest {
    private static final int POINTS = 20_000;

    /** Worst errors found: energy, gas constant, heat capacity at constant volume, energy by log p, gas constant by T and by log p; and where. */
    private static final class Worst {
        final double[] error = new double[6];
        final String[] where = new String[6];

        void add(String at, BurnedState got, Equilibrium.State wanted, double floor) {
            double r = wanted.gasConstant();
            double t = wanted.temperature();
            double[] now = {
                Math.abs(got.internalEnergy - wanted.internalEnergy())
                        / Math.max(1e5, Math.abs(wanted.internalEnergy() - floor)),
                Math.abs(got.gasConstant / r - 1),
                Math.abs(got.energyByTemperature / wanted.energyByTemperature() - 1),
                Math.abs(got.energyByLogPressure - wanted.energyByLogPressure()) / (r * t),
                Math.abs(got.gasConstantByTemperature - wanted.gasConstantByTemperature()) * t / r,
                Math.abs(got.gasConstantByLogPressure - wanted.gasConstantByLogPressure()) / r
            };
            for (int k = 0; k < now.length; k++) {
                if (!(now[k] <= error[k])) {
                    error[k] = now[k];
                    where[k] = at;
                }
            }
        }

        @Override
        public String toString() {
            StringBuilder text = new StringBuilder();
            for (int k = 0; k < error.length; k++) {
                text.append(String.format(java.util.Locale.ROOT, "%n%.2e at %s", error[k], where[k]));
            }
            return text.toString();
        }
    }

    private static double pressure(SplittableRandom random) {
        double low = Math.log(Equilibrium.LOWEST_PRESSURE);
        return Math.exp(low + random.nextDouble() * (Math.log(Equilibrium.HIGHEST_PRESSURE) - low));
    }

    /** 100 slices of all fuels and airs, 200 points each. */
    @Test
    void sliceIsTheEquilibriumItStandsFor() {
        SplittableRandom random = new SplittableRandom(20_000);
        Worst worst = new Worst();
        BurnedState state = new BurnedState();
        for (int k = 0; k < 100; k++) {
            RandomGas.Point point = RandomGas.next(random, 300);
            Equilibrium gas = point.gas();
            BurnedSlice slice = BurnedSlice.of(gas);
            for (int i = 0; i < POINTS / 100; i++) {
                double t = random.nextDouble(Equilibrium.COLDEST, Equilibrium.HOTTEST);
                double p = pressure(random);
                slice.at(t, p, state);
                double floor = gas.at(298.15, p).internalEnergy();
                worst.add(point.fuel() + " " + point.ratio() + " " + t + " " + p, state, gas.at(t, p), floor);
            }
        }
        double[] allowed = {3e-5, 1.2e-5, 4e-4, 1e-3, 5e-4, 6e-5};
        for (int k = 0; k < allowed.length; k++) {
            assertThat(worst.error[k]).as("error " + k + " of " + worst).isLessThan(allowed[k]);
        }
    }

    /** 20,000 points of petrol, E85 and methanol, a quarter of them within 0.01 of the exact ratio. */
    @Test
    void tableIsTheEquilibriumItStandsFor() {
        SplittableRandom random = new SplittableRandom(20_001);
        Worst worst = new Worst();
        BurnedState state = new BurnedState();
        for (Fuel fuel : new Fuel[] {Fuel.petrol(), Fuel.e85(), Fuel.methanol()}) {
            BurnedGas table = BurnedGas.of(fuel, MoistAir.DRY);
            for (int i = 0; i < POINTS / 3 + 1; i++) {
                double ratio = random.nextDouble() < 0.25
                        ? random.nextDouble(0.99, 1.01)
                        : random.nextDouble(BurnedGas.LEANEST, Equilibrium.RICHEST);
                double t = random.nextDouble(Equilibrium.COLDEST, Equilibrium.HOTTEST);
                double p = pressure(random);
                table.at(ratio, t, p, state);
                Equilibrium gas = Equilibrium.of(fuel, MoistAir.DRY, ratio);
                double floor = gas.at(298.15, p).internalEnergy();
                worst.add(fuel + " " + ratio + " " + t + " " + p, state, gas.at(t, p), floor);
            }
        }
        double[] allowed = {7e-4, 1.2e-4, 4e-3, 1e-3, 8e-4, 6e-5};
        for (int k = 0; k < allowed.length; k++) {
            assertThat(worst.error[k]).as("error " + k + " of " + worst).isLessThan(allowed[k]);
        }
    }

    /** At a ratio of the table it is the slice, to the last digit. */
    @Test
    void tableIsTheSliceAtItsRatios() {
        BurnedGas table = BurnedGas.of(Fuel.petrol(), MoistAir.DRY);
        BurnedState one = new BurnedState();
        BurnedState other = new BurnedState();
        for (double ratio : new double[] {0.5, 0.84, 1, 1.28, 2}) {
            BurnedSlice slice = table.slice(ratio);
            assertThat(slice.equivalenceRatio()).isEqualTo(ratio);
            table.at(ratio, 2345, 12e5, one);
            slice.at(2345, 12e5, other);
            assertThat(one.internalEnergy).isCloseTo(other.internalEnergy, within(1e-6));
            assertThat(one.gasConstant).isCloseTo(other.gasConstant, within(1e-9));
        }
    }

    /** No step in value or slope across 4000 edges of cells, all over the table; and slopes are those of the values. */
    @Test
    void isSmooth() {
        BurnedGas table = BurnedGas.of(Fuel.petrol(), MoistAir.DRY);
        SplittableRandom random = new SplittableRandom(5);
        BurnedState low = new BurnedState();
        BurnedState high = new BurnedState();
        BurnedState at = new BurnedState();
        for (int k = 0; k < 4000; k++) {
            double ratio = random.nextDouble(BurnedGas.LEANEST, Equilibrium.RICHEST);
            double t =
                    Equilibrium.COLDEST + BurnedGrid.TEMPERATURE_STEP * random.nextInt(1, BurnedGrid.TEMPERATURES - 1);
            double p =
                    Math.exp(BurnedGrid.LOWEST_LOG + BurnedGrid.LOG_STEP * random.nextInt(1, BurnedGrid.PRESSURES - 1));
            double other = Math.exp(BurnedGrid.LOWEST_LOG + BurnedGrid.LOG_STEP * 11 * random.nextDouble());
            table.at(ratio, t - 1e-7, other, low);
            table.at(ratio, t + 1e-7, other, high);
            same(low, high, ratio + " " + t + " " + other);
            table.at(ratio, t + 17, p * (1 - 1e-10), low);
            table.at(ratio, t + 17, p * (1 + 1e-10), high);
            same(low, high, ratio + " " + t + " " + p);
            double d = 1e-3;
            table.at(ratio, t + 17, other, at);
            table.at(ratio, t + 17 - d, other, low);
            table.at(ratio, t + 17 + d, other, high);
            assertThat((high.internalEnergy - low.internalEnergy) / (2 * d))
                    .isCloseTo(at.energyByTemperature, within(1e-5 * at.energyByTemperature));
            table.at(ratio, t + 17, other * Math.exp(1e-5), high);
            table.at(ratio, t + 17, other, low);
            assertThat((high.gasConstant - low.gasConstant) / 1e-5)
                    .isCloseTo(at.gasConstantByLogPressure, within(1e-3));
        }
    }

    private static void same(BurnedState one, BurnedState other, String where) {
        assertThat(other.internalEnergy).as(where).isCloseTo(one.internalEnergy, within(0.01));
        assertThat(other.energyByTemperature).as(where).isCloseTo(one.energyByTemperature, within(1e-4));
        assertThat(other.energyByLogPressure).as(where).isCloseTo(one.energyByLogPressure, within(0.01));
        assertThat(other.gasConstant).as(where).isCloseTo(one.gasConstant, within(1e-7));
        assertThat(other.gasConstantByTemperature).as(where).isCloseTo(one.gasConstantByTemperature, within(1e-7));
        assertThat(other.gasConstantByLogPressure).as(where).isCloseTo(one.gasConstantByLogPressure, within(1e-5));
    }

    /** Loosely, for a busy machine: the figures are in docs/measurements.md. */
    @Test
    void isBuiltFast() {
        double[] times = new double[9];
        for (int k = 0; k < times.length; k++) {
            long start = System.nanoTime();
            BurnedGas.of(Fuel.petrol(), MoistAir.DRY);
            times[k] = (System.nanoTime() - start) * 1e-6;
        }
        Arrays.sort(times);
        assertThat(times[0]).as("fastest of nine builds [ms]").isLessThan(1000);
    }

    @Test
    void refusesOutOfRange() {
        BurnedGas table = BurnedGas.of(Fuel.petrol(), MoistAir.DRY);
        BurnedState into = new BurnedState();
        assertThatThrownBy(() -> table.at(1, 4001, 1e5, into)).hasMessageContaining("4001.0 K");
        assertThatThrownBy(() -> table.at(1, 2000, 1e4, into)).hasMessageContaining("10000.0 Pa");
        assertThatThrownBy(() -> table.at(1, Double.NaN, 1e5, into)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> table.at(2.2, 2000, 1e5, into)).hasMessageContaining("2.2");
        table.at(0.5, Equilibrium.HOTTEST, Equilibrium.HIGHEST_PRESSURE, into);
        assertThat(into.internalEnergy).isFinite();
        table.at(2, Equilibrium.COLDEST, Equilibrium.LOWEST_PRESSURE, into);
        assertThat(into.internalEnergy).isFinite();
    }
}
