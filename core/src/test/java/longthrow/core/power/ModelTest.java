package longthrow.core.power;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import java.util.Set;
import longthrow.core.answer.DefaultUsed;
import longthrow.core.gas.Fuel;
import longthrow.core.measurement.Measured;
import org.junit.jupiter.api.Test;

class ModelTest {
    private static final Map<Needed, Measured> SIZE = Map.of(
            Needed.BORE, Measured.exact(0.070),
            Needed.STROKE, Measured.exact(0.052),
            Needed.COMPRESSION_RATIO, Measured.exact(8.6));

    private static List<String> taken(Kind.Use use, Kind.Cooling cooling, Kind.Layout layout, Set<Needed> without) {
        Figures figures = Figures.of(Kind.of(use, cooling, layout, Kind.Basis.NET), Fuel.petrol(), SIZE, without, ValveTables.NONE);
        List<DefaultUsed> all = Model.assumptions(figures);
        // each with a source and with a doubt that the figures hold
        assertThat(all)
                .allMatch(d -> d.source().contains("source") || d.source().contains("Moody"));
        for (DefaultUsed one : all) {
            assertThat(Needed.values())
                    .anyMatch(n -> n.key().equals(one.where())
                            && one.source().contains(n.label())
                            && figures.value(n).orElseThrow().standardUncertainty() > 0);
        }
        return all.stream().map(DefaultUsed::what).toList();
    }

    @Test
    void whatItTakesOfEveryEngineIsSaid() {
        List<String> utility = taken(Kind.Use.UTILITY, Kind.Cooling.FAN, Kind.Layout.SIDE_VALVE, Set.of());
        assertThat(utility)
                .anyMatch(w -> w.equals("wall of the chamber 2.1 and of the crown 1.05 of the bore's area"))
                .anyMatch(w -> w.equals("stems of the valves 0.2 of their heads"))
                .anyMatch(w -> w.equals("roughness of cast ports 0.26 mm and of pipes 0.045 mm"))
                .anyMatch(w -> w.contains("taking 30 W/(m² K)"))
                .anyMatch(w -> w.contains("0.37 bores") && w.contains("0.44 by 0.33"))
                .anyMatch(w -> w.contains("fan of 2.4 bores"));
        List<String> racer = taken(
                Kind.Use.COMPETITION,
                Kind.Cooling.WIND,
                Kind.Layout.OVERHEAD_CAM,
                Set.of(Needed.SILENCER, Needed.SILENCER_HOLE));
        assertThat(racer)
                .anyMatch(w -> w.contains("chamber 1.3 "))
                .anyMatch(w -> w.contains("needles, 0.4 bores"))
                .noneMatch(w -> w.contains("silencer") || w.contains("fan"));
    }
}
