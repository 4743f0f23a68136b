package longthrow.core.gas;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Map;
import java.util.SplittableRandom;
import java.util.function.Consumer;
import longthrow.core.gas.RandomGas.Point;
import org.junit.jupiter.api.Test;

/** Gas of fixed composition by what must hold of it. */
class MixtureTest {
    private static void thousand(Consumer<Point> check) {
        SplittableRandom random = new SplittableRandom(11);
        for (int k = 0; k < 1000; k++) {
            check.accept(RandomGas.next(random, 200));
        }
    }

    /** Charge and what it burns to have the same atoms, and the rich one its water-gas constant. */
    @Test
    void burningKeepsAtoms() {
        thousand(point -> {
            Atoms before =
                    Mixture.fresh(point.fuel(), point.air(), point.ratio()).atoms();
            Mixture burned = Mixture.burned(point.fuel(), point.air(), point.ratio());
            Atoms after = burned.atoms();
            String of = point.toString();
            assertThat(after.carbon()).as(of).isCloseTo(before.carbon(), within(1e-12 * before.carbon()));
            assertThat(after.hydrogen()).as(of).isCloseTo(before.hydrogen(), within(1e-12 * before.hydrogen()));
            assertThat(after.oxygen()).as(of).isCloseTo(before.oxygen(), within(1e-12 * before.oxygen()));
            assertThat(after.nitrogen()).as(of).isCloseTo(before.nitrogen(), within(1e-12 * before.nitrogen()));
            assertThat(after.argon()).as(of).isCloseTo(before.argon(), within(1e-12));
            assertThat(after.mass()).as(of).isCloseTo(1, within(1e-12));
            if (point.ratio() > 1.001) {
                double k = burned.moleFraction(Species.H2O)
                        * burned.moleFraction(Species.CO)
                        / (burned.moleFraction(Species.CO2) * burned.moleFraction(Species.H2));
                assertThat(k).as(of).isCloseTo(Mixture.WATER_GAS, within(1e-8));
                assertThat(burned.moleFraction(Species.O2)).isZero();
            } else if (point.ratio() < 0.999) {
                assertThat(burned.moleFraction(Species.CO)).isZero();
            }
        });
    }

    @Test
    void propertiesFitTogether() {
        thousand(point -> {
            Mixture gas = Mixture.fresh(point.fuel(), point.air(), point.ratio());
            double t = Math.max(point.temperature(), 210);
            double d = 0.01;
            String of = point.toString();
            assertThat(gas.cp(t) - gas.cv(t)).as(of).isCloseTo(gas.gasConstant(), within(1e-9));
            assertThat((gas.enthalpy(t + d) - gas.enthalpy(t - d)) / (2 * d))
                    .as(of)
                    .isCloseTo(gas.cp(t), within(1e-3 * gas.cp(t)));
            assertThat((gas.internalEnergy(t + d) - gas.internalEnergy(t - d)) / (2 * d))
                    .as(of)
                    .isCloseTo(gas.cv(t), within(1e-3 * gas.cv(t)));
            double slope = (gas.entropy(t + d, 1e5) - gas.entropy(t - d, 1e5)) / (2 * d) * t;
            assertThat(slope).as(of).isCloseTo(gas.cp(t), within(1e-3 * gas.cp(t)));
            assertThat(gas.entropy(t, 2e5) - gas.entropy(t, 1e5))
                    .as(of)
                    .isCloseTo(-gas.gasConstant() * Math.log(2), within(1e-8));
            assertThat(gas.gamma(t)).as(of).isCloseTo(gas.cp(t) / gas.cv(t), within(1e-12));
            assertThat(gas.temperatureOfEnergy(gas.internalEnergy(t))).as(of).isCloseTo(t, within(1e-8 * t));
            assertThat(gas.temperatureOfEnthalpy(gas.enthalpy(t))).as(of).isCloseTo(t, within(1e-8 * t));
        });
    }

    /** The polynomial added up once against its parts one by one, above the fits too. */
    @Test
    void sumIsThatOfItsParts() {
        thousand(point -> {
            Mixture gas = Mixture.fresh(point.fuel(), point.air(), point.ratio());
            double t = 1.6 * point.temperature();
            double enthalpy = 0;
            double entropy = 0;
            for (Substance part : gas.substances()) {
                double amount = gas.massFraction(part) / part.molarMass();
                enthalpy += amount * part.heat().enthalpy(t);
                entropy += amount
                        * (part.heat().entropy(t)
                                - NasaPolynomial.MOLAR_GAS_CONSTANT
                                        * Math.log(gas.moleFraction(part) * 3e5 / NasaPolynomial.STANDARD_PRESSURE));
            }
            assertThat(gas.enthalpy(t)).as("" + point).isCloseTo(enthalpy, within(1e-3));
            assertThat(gas.entropy(t, 3e5)).as("" + point).isCloseTo(entropy, within(1e-6));
        });
    }

    /** Half of each: energies and gas constants in the middle, entropy above it by that of mixing. */
    @Test
    void mixesByMass() {
        Mixture charge = Mixture.fresh(Fuel.e85(), MoistAir.DRY, 1.1);
        Mixture burned = Mixture.burned(Fuel.e85(), MoistAir.DRY, 1.1);
        Mixture both = charge.with(burned, 0.25);
        assertThat(both.gasConstant())
                .isCloseTo(0.25 * charge.gasConstant() + 0.75 * burned.gasConstant(), within(1e-9));
        assertThat(both.internalEnergy(600))
                .isCloseTo(0.25 * charge.internalEnergy(600) + 0.75 * burned.internalEnergy(600), within(1e-5));
        assertThat(both.entropy(600, 1e5))
                .isGreaterThan(0.25 * charge.entropy(600, 1e5) + 0.75 * burned.entropy(600, 1e5));
        assertThat(both.massFraction(Fuel.e85())).isCloseTo(0.25 * charge.massFraction(Fuel.e85()), within(1e-12));
    }

    /** Burning the charge at 298.15 K sets free what the fuel says, liquid and latent heat. */
    @Test
    void burningSetsTheHeatingValueFree() {
        for (Fuel fuel : RandomGas.FUELS) {
            Mixture charge = Mixture.fresh(fuel, MoistAir.DRY, 0.9);
            Mixture burned = Mixture.burned(fuel, MoistAir.DRY, 0.9);
            double free = (charge.enthalpy(298.15) - burned.enthalpy(298.15)) / charge.massFraction(fuel);
            assertThat(free)
                    .as("" + fuel)
                    .isCloseTo(fuel.heatingValue().value() + fuel.latentHeat().value(), within(1e-7 * free));
        }
    }

    @Test
    void refusesWhatCannotBe() {
        assertThatThrownBy(() -> Mixture.ofMoles(Map.of(Species.N2, 0.0))).hasMessageContaining("mixture of nothing");
        assertThatThrownBy(() -> Mixture.ofMoles(Map.of(Species.N2, -1.0))).hasMessageContaining("amount of N2");
        assertThatThrownBy(() -> Mixture.burned(Fuel.petrol(), MoistAir.DRY, 2.5))
                .hasMessageContaining("2.5");
        assertThatThrownBy(() -> Mixture.fresh(Fuel.petrol(), MoistAir.DRY, -0.1))
                .hasMessageContaining("-0.1");
        Mixture air = Mixture.air(MoistAir.DRY);
        assertThatThrownBy(() -> air.temperatureOfEnergy(1e9))
                .hasMessageContaining("1.0E9")
                .hasMessageContaining("6000");
        assertThatThrownBy(() -> air.temperatureOfEnthalpy(Double.NaN)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> air.cp(150)).hasMessageContaining("150");
    }
}
