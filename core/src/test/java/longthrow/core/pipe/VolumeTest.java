package longthrow.core.pipe;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import longthrow.core.gas.PipeGas;
import org.junit.jupiter.api.Test;

class VolumeTest {
    private static final PipeGases GASES = new PipeGases(new PipeGas(287, 690, 0.09), new PipeGas(289, 720, 0.15));

    /** By hand: a litre at 120 kPa of half fresh, half burned gas, R = 288 J/(kg K), at 800 K holds 0.12 / 230.4 g. */
    @Test
    void otherGasStandsAtTheSamePressure() {
        Volume volume = new Volume(GASES, 1e-3, 1.2e5, 500, 1);
        volume.refill(800, 0.5);
        assertThat(volume.pressure()).isCloseTo(1.2e5, within(1e-6));
        assertThat(volume.temperature()).isCloseTo(800, within(1e-9));
        assertThat(volume.share()).isCloseTo(0.5, within(1e-12));
        assertThat(volume.mass()).isCloseTo(120 / (288 * 800.0), within(1e-12));
        assertThat(volume.burnedMass()).isCloseTo(60 / (288 * 800.0), within(1e-12));
    }

    /** What is in it goes on from there: nothing comes or goes, nothing changes. */
    @Test
    void afterItAStepWithoutEndsChangesNothing() {
        Volume volume = new Volume(GASES, 1e-3, 1.2e5, 500, 1);
        volume.refill(800, 0.5);
        volume.predict(1e-4);
        volume.finish(1e-4);
        assertThat(volume.pressure()).isCloseTo(1.2e5, within(1e-6));
        assertThat(volume.temperature()).isCloseTo(800, within(1e-9));
    }

    /** R and cp of fresh gas at 300 K by its law: cv = 690 + 0.09 T. */
    @Test
    void heatCapacityIsThatOfTheGasInIt() {
        assertThat(new Volume(GASES, 1e-3, 1e5, 300, 0).heatCapacity()).isCloseTo(287 + 690 + 27, within(1e-9));
    }

    @Test
    void whatNoGasIsIsRefused() {
        Volume volume = new Volume(GASES, 1e-3, 1.2e5, 500, 1);
        assertThatThrownBy(() -> volume.refill(0, 0.5)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> volume.refill(Double.NaN, 0.5)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> volume.refill(300, 1.1)).isInstanceOf(IllegalArgumentException.class);
        assertThat(volume.temperature()).isCloseTo(500, within(1e-9));
    }
}
