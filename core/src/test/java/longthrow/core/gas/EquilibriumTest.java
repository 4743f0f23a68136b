package longthrow.core.gas;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.stream.Stream;
import longthrow.core.gas.RandomGas.Point;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Burned gas in equilibrium by what must hold of it: atoms kept, Gibbs energy least, derivatives and identities, no corner that fails. */
class EquilibriumTest {
    private static final double R = NasaPolynomial.MOLAR_GAS_CONSTANT;

    /** Reactions that together reach every composition of the same atoms. */
    private static final List<Map<Species, Double>> REACTIONS = List.of(
            Map.of(Species.CO2, -1.0, Species.CO, 1.0, Species.O2, 0.5),
            Map.of(Species.H2O, -1.0, Species.H2, 1.0, Species.O2, 0.5),
            Map.of(Species.H2, -0.5, Species.H, 1.0),
            Map.of(Species.O2, -0.5, Species.O, 1.0),
            Map.of(Species.H2, -0.5, Species.O2, -0.5, Species.OH, 1.0),
            Map.of(Species.N2, -0.5, Species.O2, -0.5, Species.NO, 1.0),
            Map.of(Species.N2, -0.5, Species.N, 1.0));

    static Stream<Point> thousandStates() {
        SplittableRandom random = new SplittableRandom(20261126);
        return Stream.generate(() -> RandomGas.next(random, 300)).limit(1000);
    }

    @Test
    void atomsAreKept() {
        thousandStates().forEach(point -> {
            Equilibrium.State state = point.state();
            Atoms wanted = point.gas().atoms();
            double[] got = new double[5];
            for (Species species : Species.values()) {
                double amount = state.amount(species);
                Atoms atoms = species.atoms();
                got[0] += amount * atoms.carbon();
                got[1] += amount * atoms.hydrogen();
                got[2] += amount * atoms.oxygen();
                got[3] += amount * atoms.nitrogen();
                got[4] += amount * atoms.argon();
                assertThat(amount).as(point + " " + species).isFinite().isGreaterThanOrEqualTo(0);
            }
            assertThat(got[0]).as("" + point).isCloseTo(wanted.carbon(), within(1e-12 * wanted.carbon()));
            assertThat(got[1]).as("" + point).isCloseTo(wanted.hydrogen(), within(1e-12 * wanted.hydrogen()));
            assertThat(got[2]).as("" + point).isCloseTo(wanted.oxygen(), within(1e-12 * wanted.oxygen()));
            assertThat(got[3]).as("" + point).isCloseTo(wanted.nitrogen(), within(1e-12 * wanted.nitrogen()));
            assertThat(got[4]).as("" + point).isCloseTo(wanted.argon(), within(1e-12));
        });
    }

    /** Along each reaction the Gibbs energy is level, and higher a little to either side. */
    @Test
    void gibbsEnergyIsLeast() {
        thousandStates()
                .filter(point -> point.temperature() > Equilibrium.FREEZING)
                .forEach(point -> {
                    Equilibrium.State state = point.state();
                    for (Map<Species, Double> reaction : REACTIONS) {
                        double affinity = 0;
                        double size = Double.POSITIVE_INFINITY;
                        for (Map.Entry<Species, Double> part : reaction.entrySet()) {
                            affinity += part.getValue() * potential(state, part.getKey());
                            size = Math.min(size, state.amount(part.getKey()));
                        }
                        assertThat(affinity).as(point + " " + reaction).isCloseTo(0, within(2e-4));
                        double here = gibbs(state, reaction, 0);
                        double step = 0.3 * size;
                        if (step > 1e-5) { // else its change drowns in the digits of the sum
                            assertThat(gibbs(state, reaction, step))
                                    .as(point + " " + reaction)
                                    .isGreaterThan(here);
                            assertThat(gibbs(state, reaction, -step))
                                    .as(point + " " + reaction)
                                    .isGreaterThan(here);
                        }
                    }
                });
    }

    /** Chemical potential over RT. */
    private static double potential(Equilibrium.State state, Species species) {
        return species.gibbs(state.temperature()) / (R * state.temperature())
                + Math.log(state.moleFraction(species) * state.pressure() / NasaPolynomial.STANDARD_PRESSURE);
    }

    /** Gibbs energy over RT of a kilogram, the reaction moved on by so much [mol/kg], less that of N2 and argon as they are. */
    private static double gibbs(Equilibrium.State state, Map<Species, Double> reaction, double extent) {
        double total = 0;
        for (Species species : Species.values()) {
            total += moved(state, species, reaction, extent);
        }
        double sum = 0;
        for (Species species : Species.values()) {
            double amount = moved(state, species, reaction, extent);
            if (amount > 0) {
                double at = species.gibbs(state.temperature()) / (R * state.temperature());
                sum += amount * (at + Math.log(amount / total * state.pressure() / NasaPolynomial.STANDARD_PRESSURE));
            }
        }
        return sum;
    }

    private static double moved(
            Equilibrium.State state, Species species, Map<Species, Double> reaction, double extent) {
        return state.amount(species) + extent * reaction.getOrDefault(species, 0.0);
    }

    /** Derivatives against differences of the values, and what thermodynamics says they must be among themselves. */
    @Test
    void derivativesAndIdentitiesHold() {
        thousandStates().filter(EquilibriumTest::hasRoom).forEach(point -> {
            Equilibrium gas = point.gas();
            double t = point.temperature();
            double p = point.pressure();
            Equilibrium.State state = gas.at(t, p);
            double dt = 1e-4 * t;
            Equilibrium.State hot = gas.at(t + dt, p);
            Equilibrium.State cold = gas.at(t - dt, p);
            double dp = 1e-4;
            Equilibrium.State high = gas.at(t, p * Math.exp(dp));
            Equilibrium.State low = gas.at(t, p * Math.exp(-dp));
            String of = point.toString();
            double cv = state.energyByTemperature();
            assertThat((hot.internalEnergy() - cold.internalEnergy()) / (2 * dt))
                    .as(of)
                    .isCloseTo(cv, within(1e-5 * cv));
            double scale = 1e-5 * state.gasConstant() * t;
            assertThat((high.internalEnergy() - low.internalEnergy()) / (2 * dp))
                    .as(of)
                    .isCloseTo(state.energyByLogPressure(), within(scale));
            double r = state.gasConstant();
            assertThat((hot.gasConstant() - cold.gasConstant()) / (2 * dt))
                    .as(of)
                    .isCloseTo(state.gasConstantByTemperature(), within(1e-5 * r / t));
            assertThat((high.gasConstant() - low.gasConstant()) / (2 * dp))
                    .as(of)
                    .isCloseTo(state.gasConstantByLogPressure(), within(1e-6 * r));
            assertThat((hot.enthalpy() - cold.enthalpy()) / (2 * dt))
                    .as(of)
                    .isCloseTo(state.cp(), within(1e-5 * state.cp()));
            if (t > Equilibrium.FREEZING + dt) {
                // T ds = dh - v dp, in equilibrium
                assertThat((hot.entropy() - cold.entropy()) / (2 * dt) * t)
                        .as(of)
                        .isCloseTo(state.cp(), within(1e-5 * state.cp()));
                double byLog = (high.entropy() - low.entropy()) / (2 * dp) * t;
                double heat = (high.enthalpy() - low.enthalpy()) / (2 * dp) - r * t;
                assertThat(byLog).as(of).isCloseTo(heat, within(1e-5 * r * t));
                // Maxwell: ds/dlnp = - d(RT)/dT
                assertThat(byLog)
                        .as(of)
                        .isCloseTo(-t * (r + t * state.gasConstantByTemperature()), within(1e-5 * r * t));
            }
            assertThat(state.cv()).as(of).isLessThan(state.cp()).isGreaterThan(0);
        });
    }

    private static boolean hasRoom(Point point) {
        return point.temperature() < 3995
                && point.pressure() > 1.01 * Equilibrium.LOWEST_PRESSURE
                && point.pressure() < 0.99 * Equilibrium.HIGHEST_PRESSURE
                && Math.abs(point.temperature() - 3500) > 1 // heat capacities of the fits have a corner there
                && Math.abs(point.temperature() - 1000) > 1
                && Math.abs(point.temperature() - 800) > 1;
    }

    /** Every corner and edge of the range, every fuel. */
    @Test
    void noCornerFails() {
        for (Fuel fuel : RandomGas.FUELS) {
            for (double ratio : new double[] {0.25, 0.7, 0.95, 0.999, 1 - 1e-9, 1, 1 + 1e-9, 1.001, 1.05, 1.4, 2}) {
                Equilibrium gas = Equilibrium.of(fuel, MoistAir.DRY, ratio);
                for (double t : new double[] {250, 799, 800, 900, 1000, 1200, 1700, 2500, 3200, 3700, 4000}) {
                    for (double p : new double[] {0.2e5, 1e5, 1e6, 7e6, 250e5}) {
                        Equilibrium.State state = gas.at(t, p);
                        double sum = Stream.of(Species.values())
                                .mapToDouble(state::moleFraction)
                                .sum();
                        assertThat(sum)
                                .as(fuel + " " + ratio + " " + t + " " + p)
                                .isCloseTo(1, within(1e-12));
                    }
                }
            }
        }
    }

    /** Below 1000 K a lean gas is what {@link Mixture#burned} says; a rich one keeps its atoms and stops at 800 K. */
    @Test
    void coldGasStopsReacting() {
        Mixture lean = Mixture.burned(Fuel.petrol(), MoistAir.DRY, 0.9);
        Equilibrium.State cold =
                Equilibrium.of(Fuel.petrol(), MoistAir.DRY, 0.9).at(700, 1e5);
        assertThat(cold.internalEnergy()).isCloseTo(lean.internalEnergy(700), within(200.0));
        assertThat(cold.gasConstant()).isCloseTo(lean.gasConstant(), within(1e-5 * lean.gasConstant()));
        assertThat(cold.cp()).isCloseTo(lean.cp(700), within(1e-4 * lean.cp(700)));
        Equilibrium rich = Equilibrium.of(Fuel.petrol(), MoistAir.DRY, 1.3);
        assertThat(rich.at(790, 1e5).amount(Species.CO))
                .isEqualTo(rich.at(300, 1e5).amount(Species.CO));
        assertThat(rich.at(950, 1e5).amount(Species.CO))
                .isGreaterThan(rich.at(850, 1e5).amount(Species.CO));
    }

    /** Energy and its slope go on without a step where the composition begins to lag and where it stops; but for the last digits of the fits, which meet at 1000 K. */
    @ParameterizedTest
    @MethodSource("seams")
    void joinsSmoothly(double seam) {
        for (double ratio : new double[] {0.8, 1, 1.3, 2}) {
            Equilibrium gas = Equilibrium.of(Fuel.petrol(), MoistAir.DRY, ratio);
            Equilibrium.State below = gas.at(seam - 1e-6, 5e5);
            Equilibrium.State above = gas.at(seam + 1e-6, 5e5);
            assertThat(above.internalEnergy()).isCloseTo(below.internalEnergy(), within(0.5));
            assertThat(above.energyByTemperature()).isCloseTo(below.energyByTemperature(), within(0.05));
        }
    }

    static Stream<Double> seams() {
        return Stream.of(Equilibrium.FREEZING, Equilibrium.FROZEN);
    }

    /** A flame gives back the enthalpy it was made of; there and back along an isentrope gives the same state. */
    @Test
    void flamesAndExpansionsComeBack() {
        SplittableRandom random = new SplittableRandom(7);
        for (int k = 0; k < 60; k++) {
            Point point = RandomGas.next(random, 1200);
            Equilibrium gas = point.gas();
            Equilibrium.State state = point.state();
            String of = point.toString();
            double t = point.temperature();
            assertThat(gas.flameAtConstantPressure(state.enthalpy(), point.pressure())
                            .temperature())
                    .as(of)
                    .isCloseTo(t, within(1e-6));
            assertThat(gas.flameAtConstantVolume(state.internalEnergy(), state.specificVolume())
                            .temperature())
                    .as(of)
                    .isCloseTo(t, within(1e-6));
            assertThat(gas.expanded(state.entropy(), state.specificVolume()).temperature())
                    .as(of)
                    .isCloseTo(t, within(1e-6));
        }
    }

    /** Sound: the isentropic slope of pressure by density, by differences. */
    @Test
    void soundTravelsAtTheIsentropicSlope() {
        Equilibrium gas = Equilibrium.of(Fuel.petrol(), MoistAir.DRY, 1.1);
        Equilibrium.State state = gas.at(2600, 30e5);
        double v = state.specificVolume();
        Equilibrium.State more = gas.expanded(state.entropy(), v * 1.0001);
        Equilibrium.State less = gas.expanded(state.entropy(), v * 0.9999);
        double square = -v * v * (more.pressure() - less.pressure()) / (2e-4 * v);
        assertThat(state.soundSpeed()).isCloseTo(Math.sqrt(square), within(1e-5 * state.soundSpeed()));
    }

    @Test
    void refusesOutOfRange() {
        Equilibrium gas = Equilibrium.of(Fuel.petrol(), MoistAir.DRY, 1);
        assertThatThrownBy(() -> gas.at(4100, 1e5))
                .hasMessageContaining("temperature [K] is 4100.0")
                .hasMessageContaining("4000");
        assertThatThrownBy(() -> gas.at(Double.NaN, 1e5)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> gas.at(2000, 50)).hasMessageContaining("pressure [Pa] is 50.0");
        assertThatThrownBy(() -> Equilibrium.of(Fuel.petrol(), MoistAir.DRY, 2.1))
                .hasMessageContaining("2.1");
        assertThatThrownBy(() -> Equilibrium.of(Fuel.petrol(), MoistAir.DRY, 0.2))
                .hasMessageContaining("0.2");
        assertThatThrownBy(() -> gas.flameAtConstantPressure(1e8, 1e5)).hasMessageContaining("would end beyond 4000");
    }
}
