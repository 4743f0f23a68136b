package longthrow.core.power;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import longthrow.core.gas.Fuel;
import longthrow.core.measurement.Measured;
import longthrow.core.measurement.Source;
import org.junit.jupiter.api.Test;

class FiguresTest {
    private static final Kind UTILITY =
            Kind.of(Kind.Use.UTILITY, Kind.Cooling.FAN, Kind.Layout.PUSHROD, Kind.Basis.NET);

    private static Map<Needed, Measured> size() {
        Map<Needed, Measured> known = new EnumMap<>(Needed.class);
        known.put(Needed.BORE, Measured.exact(0.070));
        known.put(Needed.STROKE, Measured.exact(0.052));
        known.put(Needed.COMPRESSION_RATIO, Measured.exact(8.6));
        return known;
    }

    /** Nothing is taken silently: what was not read has its range and says where it is from. */
    @Test
    void whatWasNotReadSaysWhereItIsFrom() {
        for (Kind.Use use : Kind.Use.values()) {
            for (Kind.Basis basis : Kind.Basis.values()) {
                Kind kind = Kind.of(use, Kind.Cooling.WIND, Kind.Layout.OVERHEAD_CAM, basis);
                Figures figures = Figures.of(kind, Fuel.petrol(), size());
                for (Needed needed : Needed.values()) {
                    boolean read = size().containsKey(needed);
                    assertThat(figures.usual(needed).isPresent())
                            .as(needed + " of " + kind)
                            .isEqualTo(figures.has(needed) && !read);
                    figures.usual(needed).ifPresent(source -> assertThat(source).isNotBlank());
                }
            }
        }
    }

    @Test
    void aReadingStandsForTheUsualAndForWhatFollowsFromIt() {
        Map<Needed, Measured> known = size();
        known.put(Needed.INTAKE_HEAD, Measured.exact(0.030));
        Figures figures = Figures.of(UTILITY, Fuel.petrol(), known);
        assertThat(figures.usual(Needed.INTAKE_HEAD)).isEmpty();
        assertThat(figures.number(Needed.INTAKE_THROAT)).isCloseTo(0.87 * 0.030, within(1e-12));
    }

    /** SAE J1349 has 1 kPa of vapour. Saturated: 3.169 kPa at 25 °C, 7.384 kPa at 40 °C, 0.611 kPa at 0 °C (handbook tables). */
    @Test
    void theMoistureOfTheStandardStaysThatOfTheStandardOnAnotherDay() {
        assertThat(humidity(Double.NaN)).isEqualTo(0.32);
        assertThat(humidity(298.15)).isCloseTo(1 / 3.169, within(1e-3));
        assertThat(humidity(313.15)).isCloseTo(1 / 7.384, within(1e-3));
        assertThat(humidity(273.15)).isEqualTo(1);
    }

    private static double humidity(double temperature) {
        Map<Needed, Measured> known = size();
        if (!Double.isNaN(temperature)) {
            known.put(Needed.AIR_TEMPERATURE, Measured.exact(temperature));
        }
        return Figures.of(UTILITY, Fuel.petrol(), known).number(Needed.HUMIDITY);
    }

    /** Every other figure is moved up; moist air, which cannot be moister than saturated, down. */
    @Test
    void nothingIsMovedToWhereItCannotBe() {
        Source doubt = Source.known("hygrometer", Source.Kind.ASSUMED, "hygrometer", 0.03);
        for (double humidity : new double[] {0.50, 0.98}) {
            Map<Needed, Measured> known = size();
            known.put(Needed.HUMIDITY, Measured.of(humidity, List.of(doubt)));
            Figures figures = Figures.of(UTILITY, Fuel.petrol(), known);
            List<Lean.Variant> variants = Lean.variants(figures);
            Lean.Variant moved = variants.stream()
                    .filter(v -> v.moved().contains(Needed.HUMIDITY))
                    .findFirst()
                    .orElseThrow();
            assertThat(moved.figures().number(Needed.HUMIDITY))
                    .isCloseTo(humidity + (humidity > 0.9 ? -0.03 : 0.03), within(1e-12));
            // what falls by 2 for each 1 of humidity owns twice its doubt, with the sign of the fall
            Measured leaned =
                    Lean.doubt(figures, variants, v -> -2 * v.figures().number(Needed.HUMIDITY));
            assertThat(leaned.contributions().getOrDefault(doubt, Double.NaN)).isCloseTo(-0.06, within(1e-12));
        }
    }

    @Test
    void withoutItsSizeThereIsNoEngine() {
        Map<Needed, Measured> known = size();
        known.remove(Needed.COMPRESSION_RATIO);
        assertThatThrownBy(() -> Figures.of(UTILITY, Fuel.petrol(), known))
                .hasMessageContaining("compression ratio")
                .hasMessageContaining("read it");
    }

    /** What a rating without filter and silencer leaves off is not there. */
    @Test
    void aGrossRatingHasNoFilterAndNoSilencer() {
        Kind gross = Kind.of(Kind.Use.UTILITY, Kind.Cooling.FAN, Kind.Layout.PUSHROD, Kind.Basis.GROSS);
        Figures figures = Figures.of(gross, Fuel.petrol(), size());
        assertThat(figures.has(Needed.FILTER)).isFalse();
        assertThat(figures.has(Needed.SILENCER)).isFalse();
        assertThat(Figures.of(UTILITY, Fuel.petrol(), size()).has(Needed.SILENCER))
                .isTrue();
    }
}
