package longthrow.core.gas;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** The simple law of pipes against the gases it stands for. */
class PipeGasTest {
    @Test
    void lawIsNearTheGasItStandsFor() {
        for (Fuel fuel : RandomGas.FUELS) {
            for (double ratio : new double[] {0.8, 1, 1.2, 1.5}) {
                Mixture fresh = Mixture.fresh(fuel, MoistAir.DRY, ratio);
                Mixture burned = Mixture.burned(fuel, MoistAir.DRY, ratio);
                PipeGas.Misfit ofFresh = PipeGas.of(fresh).misfit(fresh);
                PipeGas.Misfit ofBurned = PipeGas.of(burned).misfit(burned);
                PipeGas.Misfit cool = PipeGas.of(fresh, 800).misfit(fresh, 800);
                assertThat(cool.energy()).as(fuel + " " + ratio).isLessThan(0.0068);
                assertThat(cool.soundSpeed()).as(fuel + " " + ratio).isLessThan(0.003);
                isNear(ofFresh, 0.05, 0.027, 0.011, 0.0055, 0.0088, fuel + " " + ratio);
                isNear(ofBurned, 0.024, 0.006, 0.005, 0.0025, 0.003, fuel + " " + ratio);
            }
        }
    }

    private static void isNear(
            PipeGas.Misfit misfit,
            double cv,
            double energy,
            double gamma,
            double sound,
            double temperature,
            String of) {
        assertThat(misfit.heatCapacity()).as(of).isLessThan(cv);
        assertThat(misfit.energy()).as(of).isLessThan(energy);
        assertThat(misfit.gamma()).as(of).isLessThan(gamma);
        assertThat(misfit.soundSpeed()).as(of).isLessThan(sound);
        assertThat(misfit.temperature()).as(of).isLessThan(temperature);
    }

    /** Energy and back, and the mixture's energy at one temperature is that of its parts. */
    @Test
    void energyAndTemperatureAreInverse() {
        SplittableRandom random = new SplittableRandom(3);
        PipeGas fresh = PipeGas.of(Mixture.fresh(Fuel.petrol(), MoistAir.DRY, 1.1));
        PipeGas burned = PipeGas.of(Mixture.burned(Fuel.petrol(), MoistAir.DRY, 1.1));
        for (int k = 0; k < 1000; k++) {
            double share = random.nextDouble();
            double t = random.nextDouble(200, 2000);
            PipeGas both = burned.with(fresh, share);
            assertThat(both.temperature(both.energy(t))).isCloseTo(t, close(t));
            assertThat(both.energy(t))
                    .isCloseTo(share * burned.energy(t) + (1 - share) * fresh.energy(t), close(both.energy(t)));
            assertThat(both.soundSpeed(t)).isPositive();
        }
        PipeGas level = new PipeGas(287, 718, 0);
        assertThat(level.temperature(718 * 300.0)).isEqualTo(300);
        assertThat(level.gamma(300)).isCloseTo(1 + 287.0 / 718, org.assertj.core.api.Assertions.within(1e-12));
    }

    private static org.assertj.core.data.Offset<Double> close(double of) {
        return org.assertj.core.api.Assertions.within(1e-12 * of);
    }

    @Test
    void refusesWhatIsNoGas() {
        assertThatThrownBy(() -> new PipeGas(-1, 700, 0.1)).hasMessageContaining("gas constant");
        assertThatThrownBy(() -> new PipeGas(287, 700, -0.1)).hasMessageContaining("slope");
        assertThatThrownBy(() -> new PipeGas(287, Double.NaN, 0.1)).isInstanceOf(IllegalArgumentException.class);
    }
}
