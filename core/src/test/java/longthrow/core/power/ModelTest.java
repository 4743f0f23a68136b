package longthrow.core.power;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import longthrow.core.answer.DefaultUsed;
import longthrow.core.cycle.Engine;
import longthrow.core.cycle.Piece;
import longthrow.core.cycle.Tube;
import longthrow.core.gas.Fuel;
import longthrow.core.measurement.Measured;
import org.junit.jupiter.api.Test;

class ModelTest {
    private static final Map<Needed, Measured> SIZE = Map.of(
            Needed.BORE, Measured.exact(0.070),
            Needed.STROKE, Measured.exact(0.052),
            Needed.COMPRESSION_RATIO, Measured.exact(8.6));

    private static List<String> taken(Kind.Use use, Kind.Cooling cooling, Kind.Layout layout, Set<Needed> without) {
        Figures figures = Figures.of(
                Kind.of(use, cooling, layout, Kind.Basis.NET), Fuel.petrol(), SIZE, without, ValveTables.NONE);
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
                .anyMatch(
                        w -> w.equals(
                                "gas swings with that in the exhaust pipe as far as 0.613 of its radius beyond its end, which stands free"))
                .anyMatch(w -> w.contains("0.822 of its radius") && w.contains("wall of the airbox"))
                .anyMatch(w -> w.contains("chamber 1.3 "))
                .anyMatch(w -> w.contains("needles, 0.4 bores"))
                .noneMatch(w -> w.contains("silencer") || w.contains("fan"));
    }

    private static Tube last(List<Piece> pieces) {
        return pieces.stream()
                .flatMap(p -> p instanceof Tube tube ? Stream.of(tube) : Stream.of())
                .reduce((first, second) -> second)
                .orElseThrow();
    }

    /** An exhaust of 500 mm, 30 mm inside; a carburettor of 60 mm, 20 mm in its venturi and so 24 at its mouth, right behind 40 mm of runner: longer by 0.6133 radii standing free, by 0.8217 in a wall. */
    @Test
    void openEndsAreLongerByWhatSwingsBeyondThem() {
        Map<Needed, Measured> read = new EnumMap<>(SIZE);
        read.put(Needed.PRIMARY_LENGTH, Measured.exact(0.500));
        read.put(Needed.PRIMARY_BORE, Measured.exact(0.030));
        read.put(Needed.INTAKE_RUNNER_LENGTH, Measured.exact(0.040));
        read.put(Needed.CARBURETTOR_LENGTH, Measured.exact(0.060));
        read.put(Needed.VENTURI, Measured.exact(0.020));
        Kind kind = Kind.of(Kind.Use.ROAD, Kind.Cooling.WIND, Kind.Layout.OVERHEAD_CAM, Kind.Basis.NET);
        Engine boxed = new Model(Figures.of(kind, Fuel.petrol(), read)).engine();
        Engine free = new Model(Figures.of(
                        kind,
                        Fuel.petrol(),
                        read,
                        Set.of(Needed.SILENCER, Needed.SILENCER_HOLE, Needed.AIRBOX, Needed.FILTER),
                        ValveTables.NONE))
                .engine();
        assertThat(last(free.exhaustDuct().pieces()).length()).isCloseTo(0.5092, within(1e-5));
        assertThat(last(boxed.exhaustDuct().pieces()).length()).isCloseTo(0.512326, within(1e-6));
        assertThat(last(free.intakeDuct().pieces()).length()).isCloseTo(0.10736, within(1e-5));
        assertThat(last(boxed.intakeDuct().pieces()).length()).isCloseTo(0.10986, within(1e-5));
    }
}
