package longthrow.core.gas;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import longthrow.core.term.Choice;
import org.junit.jupiter.api.Test;

/** What fuels are made of and worth. */
class FuelTest {
    /** Every fuel an owner can say is one. */
    @Test
    void everyFuelThatCanBeSaidIsKnown() {
        assertThat(Choice.FUEL.options())
                .isNotEmpty()
                .allSatisfy(option ->
                        assertThat(Fuel.named(option.key())).as(option.key()).isPresent());
        assertThat(Fuel.named("coal")).isEmpty();
    }

    /** Heywood, table D.4: CH1.87; the surrogate of its vapour has it, and a molar mass near the 100 to 105 that is printed. */
    @Test
    void petrolIsWhatItsSourcesSay() {
        Fuel petrol = Fuel.petrol(95);
        assertThat(petrol.atoms().hydrogen() / petrol.atoms().carbon()).isCloseTo(1.87, within(1e-12));
        assertThat(petrol.atoms().oxygen()).isZero();
        assertThat(petrol.molarMass()).isBetween(0.100, 0.110);
        assertThat(petrol.heatingValue().low()).isCloseTo(43.440376e6, within(1.0));
        assertThat(petrol.heatingValue().high()).isEqualTo(44.0e6);
        assertThat(petrol.latentHeat().low()).isEqualTo(305e3);
        assertThat(petrol.latentHeat().high()).isCloseTo(348.9e3, within(1.0));
        assertThat(petrol.researchOctane().orElseThrow().value()).isEqualTo(95);
        assertThat(petrol.motorOctane().orElseThrow().low()).isEqualTo(85);
        assertThat(petrol.motorOctane().orElseThrow().high()).isEqualTo(87);
        assertThat(Fuel.petrol().researchOctane()).isEmpty();
        assertThat(Fuel.petrol().motorOctane()).isEmpty();
    }

    /** By hand: 100 l of E85 hold 85 l of ethanol of 793.6 kg/m3 and 15 l of petrol of 747.5. */
    @Test
    void blendsAddUpByVolume() {
        Fuel e85 = Fuel.e85();
        double ethanol = 0.85 * Fuel.ethanol().density().orElseThrow().value();
        double petrol = 0.15 * 747.5;
        assertThat(e85.density().orElseThrow().value()).isCloseTo(ethanol + petrol, within(1e-9));
        double share = ethanol / (ethanol + petrol);
        assertThat(e85.atomsPerKilogram().oxygen()).isCloseTo(share / Species.ETHANOL.molarMass(), within(1e-9));
        assertThat(e85.heatingValue().value())
                .isCloseTo(
                        share * Fuel.ethanol().heatingValue().value()
                                + (1 - share) * Fuel.petrol().heatingValue().value(),
                        within(1.0));
        assertThat(e85.stoichiometricAirFuel(MoistAir.DRY)).isBetween(9.6, 10.0);
        assertThat(e85.researchOctane()).isEmpty(); // no source read prints it
        assertThat(Fuel.e10(95).stoichiometricAirFuel(MoistAir.DRY)).isBetween(13.9, 14.2);
        assertThat(Fuel.petrolWithEthanol(0.85).heatingValue().value())
                .isEqualTo(e85.heatingValue().value());
    }

    @Test
    void fuelsAreTheSameByWhatIsSaidOfThem() {
        assertThat(Fuel.petrol(95)).isEqualTo(Fuel.petrol(95)).hasSameHashCodeAs(Fuel.petrol(95));
        assertThat(Fuel.petrol(95)).isNotEqualTo(Fuel.petrol(98)).isNotEqualTo(Fuel.petrol());
        assertThat(Fuel.petrolWithEthanol(0.2)).isNotEqualTo(Fuel.petrolWithEthanol(0.3));
    }

    @Test
    void atomsOfAKilogramWeighOne() {
        for (Fuel fuel : RandomGas.FUELS) {
            assertThat(fuel.atomsPerKilogram().mass()).as("" + fuel).isCloseTo(1, within(1e-12));
            assertThat(fuel.heatingValue().source()).isNotBlank();
            assertThat(fuel.latentHeat().source()).isNotBlank();
        }
    }

    @Test
    void refusesWhatIsNoFuel() {
        assertThatThrownBy(() -> Fuel.petrol(60)).hasMessageContaining("research octane number is 60");
        assertThatThrownBy(() -> Fuel.petrolWithEthanol(1.2)).hasMessageContaining("ethanol is 1.2");
        assertThatThrownBy(() -> new PublishedValue(3, 4, 5, "x")).hasMessageContaining("not between");
        assertThatThrownBy(() -> new PublishedValue(3, 3, 3, " ")).hasMessageContaining("source");
    }
}
