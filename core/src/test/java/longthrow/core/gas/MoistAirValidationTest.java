package longthrow.core.gas;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import longthrow.core.ComputedRows;
import longthrow.core.ReferenceRows;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Moist air against the reference rows of the weather that are about air. */
class MoistAirValidationTest {
    private static final ReferenceRows ROWS = ReferenceRows.of("04_weather");
    private static final double[] CELSIUS = {-10, 0, 5, 10, 15, 20, 25, 30, 35, 40, 45, 50};
    private static final ComputedRows COMPUTED = computed();

    static List<ReferenceRows.Row> rows() {
        return COMPUTED.rows();
    }

    @ParameterizedTest
    @MethodSource("rows")
    void airIsWhatTheRowSays(ReferenceRows.Row row) {
        boolean density = row.quantity().equals("density");
        boolean steam = row.id().startsWith("WEA-07.");
        if (density || steam) {
            COMPUTED.check(row, 1e-3 * row.value()); // "rel 0.1 % for ideal-gas moist air", "for a Magnus/Buck formula"
        } else {
            COMPUTED.check(row);
        }
    }

    /**
     * Left out: the compressibility factor (air is an ideal gas here), the standard atmosphere and the altitudes found in it, the dyno's correction factors
     * with the density ratio they print; and WEA-27.1 to 29.1, whose constants are those of the standard atmosphere, see below.
     */
    @Test
    void whatIsLeftOutIsNamed() {
        Set<String> named = ROWS.all().stream()
                .map(ReferenceRows.Row::id)
                .filter(MoistAirValidationTest::aboutSomethingElse)
                .collect(Collectors.toSet());
        assertThat(ROWS.all()).hasSize(187);
        assertThat(COMPUTED.rows()).hasSize(106);
        assertThat(COMPUTED.leftOut(named)).isEmpty();
    }

    private static boolean aboutSomethingElse(String id) {
        int number = Integer.parseInt(id.substring(4, 6));
        int row = Integer.parseInt(id.substring(7));
        boolean compressibility = number >= 9 && number <= 13 && row == 2;
        boolean atmosphere = number >= 14 && number <= 19;
        boolean correction = number >= 20 && number <= 24 && row > 2;
        return compressibility || atmosphere || correction || number >= 25;
    }

    private static ComputedRows computed() {
        ComputedRows to = new ComputedRows(ROWS);
        saturated(to, "WEA-01", VapourPressure.BUCK_1981, CELSIUS, 1);
        saturated(to, "WEA-02", VapourPressure.BUCK_1996, CELSIUS, 1);
        saturated(to, "WEA-03", VapourPressure.MAGNUS_WMO, CELSIUS, 1);
        saturated(to, "WEA-04", VapourPressure.TETENS, CELSIUS, 1);
        saturated(to, "WEA-05", VapourPressure.CIPM_2007, CELSIUS, 1);
        double[] handbook = {0, 5, 10, 15, 20, 25, 30, 35, 40, 45, 50};
        saturated(to, "WEA-06", VapourPressure.CIPM_2007, handbook, 1e-3);
        saturated(to, "WEA-07", VapourPressure.CIPM_2007, new double[] {0.01, 10, 20, 25, 30, 40}, 1);
        humidity(to, 1, 25, 0.6, 99000);
        humidity(to, 4, 32, 0.85, 101000);
        humidity(to, 7, 10, 0.3, 96500);
        density(to, "WEA-09", 101325, 20, 0.5);
        density(to, "WEA-10", 101325, 25, 0);
        density(to, "WEA-11", 99000, 25, 0);
        density(to, "WEA-12", 100000, 15, 0.6);
        density(to, "WEA-13", 101325, 27, 1);
        dry(to, "WEA-20", 101.8, 10, 0.3);
        dry(to, "WEA-21", 100, 25, 0.3155);
        dry(to, "WEA-22", 98.6, 32, 0.7);
        dry(to, "WEA-23", 83.5, 22, 0.25);
        dry(to, "WEA-24", 101, 38, 0.45);
        return to;
    }

    private static void saturated(
            ComputedRows to, String caseId, VapourPressure formula, double[] celsius, double factor) {
        for (int k = 0; k < celsius.length; k++) {
            to.put(caseId + "." + (k + 1), formula.at(celsius[k] + 273.15) * factor);
        }
    }

    /** The rows take the vapour's pressure by Magnus, without enhancement, and 0.621945 for the ratio of molar masses. */
    private static void humidity(ComputedRows to, int row, double celsius, double relative, double pressure) {
        double vapour = relative * VapourPressure.MAGNUS_WMO.at(celsius + 273.15);
        to.putFrom(
                "WEA-08",
                row,
                vapour,
                VapourPressure.MAGNUS_WMO.dewPoint(vapour) - 273.15,
                0.621945 * vapour / (pressure - vapour));
    }

    /** The ratio of masses of moist air itself, whose molar masses differ from the handbook's in the fifth digit. */
    @Test
    void humidityRatioIsThatOfItsParts() {
        double vapour = 0.6 * VapourPressure.MAGNUS_WMO.at(298.15);
        double ratio = MoistAir.DRY.moist(vapour / 99000).humidityRatio();
        ReferenceRows.Row row = ROWS.row("WEA-08.3");
        row.check(ratio, 5e-5 * row.value());
    }

    private static void density(ComputedRows to, String caseId, double pressure, double celsius, double relative) {
        MoistAir air = MoistAir.of(relative, celsius + 273.15, pressure);
        to.put(caseId + ".1", air.density(celsius + 273.15, pressure));
        to.put(caseId + ".3", air.water());
    }

    private static void dry(ComputedRows to, String caseId, double kilopascal, double celsius, double relative) {
        double vapour = relative * VapourPressure.MAGNUS_WMO.at(celsius + 273.15) / 1e3;
        to.putFrom(caseId, 1, vapour, kilopascal - vapour);
    }

    /** WEA-27.1, 28.1, 29.1 take gas constants 287.05287 and 461.495 of the standard atmosphere; of this air they are within 1e-4. */
    @Test
    void densityAgreesWithTheStandardAtmospheresConstants() {
        ROWS.row("WEA-27.1").check(moist(101325, 15, 0), 1e-4);
        ROWS.row("WEA-28.1").check(moist(98600, 32, 0.7), 1e-4);
        ROWS.row("WEA-29.1").check(moist(83500, 22, 0.25), 1e-4);
    }

    private static double moist(double pressure, double celsius, double relative) {
        double vapour = relative * VapourPressure.MAGNUS_WMO.at(celsius + 273.15);
        return MoistAir.DRY.moist(vapour / pressure).density(celsius + 273.15, pressure);
    }

    /** CIPM-2007 prints 28.96546 g/mol for dry air with 400 ppm of carbon dioxide. */
    @Test
    void dryAirHasTheMolarMassOfTheFormula() {
        assertThat(MoistAir.DRY.molarMass()).isCloseTo(28.96546e-3, within(2.5e-5 * 28.97e-3));
        assertThat(MoistAir.DRY.gasConstant()).isCloseTo(287.05, within(0.02));
    }

    @Test
    void refusesWhatIsNoAir() {
        assertThatThrownBy(() -> MoistAir.of(1.2, 293, 1e5)).hasMessageContaining("relative humidity is 1.2");
        assertThatThrownBy(() -> MoistAir.of(0.5, 20, 1e5)).hasMessageContaining("air temperature [K] is 20");
        assertThatThrownBy(() -> MoistAir.of(0.5, 303, 101.3)).hasMessageContaining("is the pressure in pascal?");
        assertThatThrownBy(() -> new MoistAir(0.21, 0.7, 0, 0, 0)).hasMessageContaining("must add up to 1");
        assertThatThrownBy(() -> new MoistAir(0, 1, 0, 0, 0)).hasMessageContaining("burns nothing");
        assertThatThrownBy(() -> new MoistAir(Double.NaN, 1, 0, 0, 0)).isInstanceOf(IllegalArgumentException.class);
    }
}
