package longthrow.core.gas;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import longthrow.core.ReferenceRows;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;

/** Single gases against the grid of the reference rows (every cell), and what happens where the fits end. */
class SpeciesValidationTest {
    private static final Map<String, Species> NAMES = Map.ofEntries(
            Map.entry("N2", Species.N2),
            Map.entry("O2", Species.O2),
            Map.entry("CO2", Species.CO2),
            Map.entry("H2O", Species.H2O),
            Map.entry("CO", Species.CO),
            Map.entry("H2", Species.H2),
            Map.entry("H", Species.H),
            Map.entry("O", Species.O),
            Map.entry("OH", Species.OH),
            Map.entry("NO", Species.NO),
            Map.entry("AR", Species.AR),
            Map.entry("isooctane", Species.ISOOCTANE),
            Map.entry("methanol", Species.METHANOL),
            Map.entry("ethanol", Species.ETHANOL),
            Map.entry("methane", Species.METHANE));

    /** A cell and whose it is. */
    record Cell(Species species, ReferenceRows.GridCell at) {
        @Override
        public String toString() {
            return at.toString();
        }
    }

    static List<Cell> cells() {
        ReferenceRows.Row namedBy = ReferenceRows.of("05_thermodynamics").row("THM-02.1");
        List<Cell> cells = new ArrayList<>();
        NAMES.forEach((name, species) -> ReferenceRows.gridOfEach("05_species", name, namedBy, 1e-7)
                .forEach(cell -> cells.add(new Cell(species, cell))));
        return cells;
    }

    @ParameterizedTest
    @MethodSource("cells")
    void speciesIsWhatTheGridSays(Cell cell) {
        Species species = cell.species();
        double t = cell.at().argument();
        String column = cell.at().column();
        double got;
        if (column.startsWith("cp")) {
            got = species.cp(t);
        } else if (column.startsWith("h_")) {
            got = species.enthalpy(t) / 1e3;
        } else if (column.startsWith("s0")) {
            got = species.entropy(t);
        } else if (column.startsWith("u_")) {
            got = species.internalEnergy(t) / 1e3;
        } else {
            got = species.gamma(t);
        }
        cell.at().row().check(got);
    }

    @Test
    void everyCellOfTheGridIsChecked() {
        assertThat(cells()).hasSize(15 * 6 * 5);
    }

    /** At a fit's upper end the heat capacity stays what it is, enthalpy and entropy go on without a step. */
    @ParameterizedTest
    @EnumSource(Species.class)
    void aboveItsFitAHeatCapacityStays(Species species) {
        double end = species.upper();
        double cp = species.cp(end);
        assertThat(species.cp(end + 700)).isCloseTo(cp, within(1e-12 * cp));
        double rise = species.enthalpy(end + 700) - species.enthalpy(end);
        assertThat(rise).isCloseTo(700 * cp, within(1e-8 * cp * end));
        assertThat(species.entropy(end + 700) - species.entropy(end))
                .isCloseTo(cp * Math.log((end + 700) / end), within(1e-9 * cp));
    }

    /** Where two pieces meet they differ by their last printed digits only. */
    @ParameterizedTest
    @EnumSource(Species.class)
    void piecesMeet(Species species) {
        double below = Math.nextDown(1000.0);
        double rt = NasaPolynomial.MOLAR_GAS_CONSTANT * 1000;
        assertThat(species.cp(below)).isCloseTo(species.cp(1000), within(2e-5 * species.cp(1000)));
        assertThat(species.enthalpy(below)).isCloseTo(species.enthalpy(1000), within(2e-5 * rt));
        assertThat(species.entropy(below)).isCloseTo(species.entropy(1000), within(2e-6 * species.entropy(1000)));
    }

    /** Entropy is the integral of heat capacity over temperature, enthalpy of heat capacity. */
    @ParameterizedTest
    @EnumSource(Species.class)
    void enthalpyAndEntropyAreIntegrals(Species species) {
        for (double t = 230; t < 6500; t += 61) {
            double d = 0.01;
            double slope = (species.enthalpy(t + d) - species.enthalpy(t - d)) / (2 * d);
            assertThat(slope).isCloseTo(species.cp(t), within(1e-5 * species.cp(t)));
            double lean = (species.entropy(t + d) - species.entropy(t - d)) / (2 * d) * t;
            assertThat(lean).isCloseTo(species.cp(t), within(1e-5 * species.cp(t)));
            assertThat(species.gibbs(t)).isCloseTo(species.enthalpy(t) - t * species.entropy(t), within(1e-6));
        }
    }

    /** The fit of nitrogen is stated from 300 K; a little below it is still near the 7/2 R of a stiff molecule. */
    @Test
    void nitrogenHoldsBelowItsFit() {
        double stiff = 3.5 * NasaPolynomial.MOLAR_GAS_CONSTANT;
        assertThat(Species.N2.cp(200)).isCloseTo(stiff, within(0.012 * stiff));
        assertThat(Species.N2.cp(250)).isCloseTo(stiff, within(0.006 * stiff));
    }

    @Test
    void refusesBelowTwoHundredKelvinAndWhatIsNoNumber() {
        for (double bad : new double[] {199.9, -10, Double.NaN, Double.POSITIVE_INFINITY}) {
            assertThatThrownBy(() -> Species.O2.enthalpy(bad))
                    .isInstanceOf(IllegalArgumentException.class)
                    .hasMessageContaining("200")
                    .hasMessageContaining("K");
        }
    }
}
