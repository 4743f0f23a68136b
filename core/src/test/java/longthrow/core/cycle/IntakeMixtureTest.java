package longthrow.core.cycle;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.SplittableRandom;
import longthrow.core.gas.Fuel;
import longthrow.core.gas.Mixture;
import longthrow.core.gas.MoistAir;
import longthrow.core.gas.PublishedValue;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What evaporates, how cold it gets, and how much of the fuel burns. */
class IntakeMixtureTest {
    private static final double ROOM = 298.15;

    static List<Fuel> fuels() {
        return List.of(Fuel.petrol(), Fuel.e10(), Fuel.e85(), Fuel.ethanol(), Fuel.methanol());
    }

    /** Lower and upper figure of the fall said in the class: petrol some 20 K when all of it evaporates. */
    @Test
    void allPetrolCoolsByTwentyKelvin() {
        double fall = ROOM - IntakeMixture.temperature(Fuel.petrol(), MoistAir.DRY, 1, ROOM, 1);
        assertThat(fall).isCloseTo(20, within(2.0));
    }

    /**
     * Pure alcohols cannot evaporate more from the air's heat than saturates what is then so cold. Vapour pressures by Antoine's equation (mm of mercury, °C; constants from memory: ethanol 8.20417, 1642.89, 230.3;
     * methanol 8.08097, 1582.271, 239.7), carried on below their range.
     */
    @Test
    void alcoholsEvaporateNoMoreThanSaturatesTheAir() {
        assertThat(saturating(Fuel.ethanol(), 8.20417, 1642.89, 230.3)).isCloseTo(0.25, within(0.03));
        assertThat(saturating(Fuel.methanol(), 8.08097, 1582.271, 239.7)).isCloseTo(0.19, within(0.03));
        assertThat(IntakeMixture.evaporatedShare(Fuel.ethanol()).value())
                .isLessThan(saturating(Fuel.ethanol(), 8.20417, 1642.89, 230.3));
        assertThat(IntakeMixture.evaporatedShare(Fuel.methanol()).value())
                .isLessThan(saturating(Fuel.methanol(), 8.08097, 1582.271, 239.7));
    }

    /** Share at which a stoichiometric charge at one atmosphere, begun at 25 °C, is saturated. */
    private static double saturating(Fuel fuel, double a, double b, double c) {
        double low = 0;
        double high = 1;
        for (int k = 0; k < 60; k++) {
            double share = 0.5 * (low + high);
            double celsius = IntakeMixture.temperature(fuel, MoistAir.DRY, 1, ROOM, share) - 273.15;
            double saturated = celsius > -100 ? Math.pow(10, a - b / (celsius + c)) / 760 : 0;
            double moles =
                    share / fuel.stoichiometricAirFuel(MoistAir.DRY) * MoistAir.DRY.molarMass() / fuel.molarMass();
            if (moles / (1 + moles) > saturated) {
                high = share;
            } else {
                low = share;
            }
        }
        return low;
    }

    @ParameterizedTest
    @MethodSource("fuels")
    void balancesEnthalpyAndCoolsMoreWithMore(Fuel fuel) {
        SplittableRandom random = new SplittableRandom(20261127);
        for (int k = 0; k < 2000; k++) {
            double phi = random.nextDouble(0.5, 2);
            double air = random.nextDouble(250, 340);
            double share = random.nextDouble(0.01, 0.9);
            double cooled = IntakeMixture.temperature(fuel, MoistAir.DRY, phi, air, share);
            assertThat(cooled).isFinite().isLessThan(air);
            assertThat(IntakeMixture.temperature(fuel, MoistAir.DRY, phi, air, share + 0.1))
                    .isLessThan(cooled);
            assertThat(IntakeMixture.temperature(fuel, MoistAir.DRY, phi * 1.1, air, share))
                    .isLessThan(cooled);
            assertThat(IntakeMixture.temperature(fuel, MoistAir.DRY, phi, air, 0))
                    .isEqualTo(air);
        }
        PublishedValue share = IntakeMixture.evaporatedShare(fuel);
        assertThat(share.low()).isLessThan(share.value());
        assertThat(share.high()).isGreaterThan(share.value()).isLessThan(1);
    }

    /** Evaporating all of it against the enthalpies of the gases themselves: heat capacities that change make 2 % of the fall. */
    @Test
    void agreesWithTheEnthalpyOfTheVapour() {
        Fuel fuel = Fuel.petrol();
        double byAir = 1 / fuel.stoichiometricAirFuel(MoistAir.DRY);
        Mixture fresh = Mixture.fresh(fuel, MoistAir.DRY, 1);
        double before =
                fresh.enthalpy(ROOM) - byAir / (1 + byAir) * fuel.latentHeat().value();
        double exact = fresh.temperatureOfEnthalpy(before);
        double got = IntakeMixture.temperature(fuel, MoistAir.DRY, 1, ROOM, 1);
        assertThat(ROOM - got).isCloseTo(ROOM - exact, within(0.02 * (ROOM - exact)));
    }

    @Test
    void moreAlcoholLessEvaporatesAndItGetsColder() {
        double before = 1;
        double warmer = ROOM;
        for (Fuel fuel : List.of(Fuel.petrol(), Fuel.e10(), Fuel.e85(), Fuel.ethanol())) {
            double share = IntakeMixture.evaporatedShare(fuel).value();
            double cooled = IntakeMixture.temperature(fuel, MoistAir.DRY, 1, ROOM, share);
            assertThat(share).isLessThan(before);
            assertThat(cooled).isLessThan(warmer + (fuel.equals(Fuel.ethanol()) ? 2 : 0));
            before = share;
            warmer = cooled;
        }
        assertThat(IntakeMixture.evaporatedShare(Fuel.methane()).value()).isEqualTo(1);
        assertThatThrownBy(() -> IntakeMixture.temperature(Fuel.petrol(), MoistAir.DRY, 1, 25, 0.5))
                .hasMessageContaining("air temperature [K] is 25");
    }

    /** By hand for CH1.87 with 20 % too much of it: each oxygen atom that lacks leaves CO (283.0 kJ/mol) or H2 (241.8 kJ/mol) of 43.7 + 0.3 MJ/kg. */
    @Test
    void richMixturesBurnWhatTheOxygenAllows() {
        Fuel fuel = Fuel.petrol();
        for (double lean : new double[] {0.6, 0.8, 1}) {
            assertThat(CombustionEfficiency.allowed(fuel, MoistAir.DRY, lean)).isCloseTo(1, within(1e-9));
        }
        double perCarbon =
                fuel.vapourHeatingValue() * fuel.molarMass() / fuel.atoms().carbon();
        double missing = 2.935 * (1 - 1 / 1.2);
        double least = 1 - missing * 283.0e3 / perCarbon;
        double most = 1 - missing * 241.8e3 / perCarbon;
        assertThat(CombustionEfficiency.allowed(fuel, MoistAir.DRY, 1.2)).isBetween(least, most);
        double before = 2;
        for (double phi = 0.7; phi < 1.9; phi += 0.02) {
            double share = CombustionEfficiency.at(fuel, MoistAir.DRY, phi);
            assertThat(share).isPositive().isLessThanOrEqualTo(before + 1e-9);
            before = share;
        }
    }

    /**
     * Air in a room by Dalton's law, each way: with droplets the air's share of the pressure is 1 over 1 + evaporated moles, as all vapour 1 over 1 + all moles. Methanol, stoichiometric, by hand: 6.43 of air to one, 28.96 over
     * 32.04 of moles: 0.1406; of 0.18 evaporated (1 + 0.0253)/1.1406 = 0.8989.
     */
    @ParameterizedTest
    @MethodSource("fuels")
    void dropletsTakeNoRoom(Fuel fuel) {
        double evaporated = 0.18;
        double moles = 1 / fuel.stoichiometricAirFuel(MoistAir.DRY) * MoistAir.DRY.molarMass() / fuel.molarMass();
        double cold = IntakeMixture.asAllVapour(fuel, MoistAir.DRY, 1, ROOM, evaporated);
        double airAsItIs = 1 / (1 + evaporated * moles) / ROOM;
        double airAsCarried = 1 / (1 + moles) / cold;
        assertThat(airAsCarried / airAsItIs).isCloseTo(1, within(1e-12));
        assertThat(IntakeMixture.asAllVapour(fuel, MoistAir.DRY, 1, ROOM, 1)).isCloseTo(ROOM, within(1e-9));
        if (fuel.atoms().equals(Fuel.methanol().atoms())) {
            assertThat(cold / ROOM).isCloseTo(0.8989, within(2e-3));
        }
    }
}
