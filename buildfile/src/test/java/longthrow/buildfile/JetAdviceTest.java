package longthrow.buildfile;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.charset.StandardCharsets;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import longthrow.core.answer.Answer;
import longthrow.core.answer.JetAdvice;
import longthrow.core.answer.Rung;
import longthrow.core.build.Build;
import longthrow.core.catalogue.Catalogue;
import longthrow.core.life.Life;
import longthrow.core.power.Prediction;
import longthrow.core.power.Run;
import longthrow.core.power.Speeds;
import org.junit.jupiter.api.Test;

/** S2, an invented case worked by hand: a side-valve engine on methanol goes from one track to another, higher and hotter. */
class JetAdviceTest {
    private static final String ENGINE = """
        longthrow: 1
        engine: {name: jets, invented: yes, valves: side, made_for: competition}
        carburettor: {jetted_pressure: 99.2 kPa, jetted_temperature: 24 °C, jetted_humidity: 50 %, jetted_fuel: methanol}
        place: {air_pressure: 87.3 kPa, air_temperature: 30 °C, relative_humidity: 30 %}
        use: {fuel: methanol}
        """;

    private static JetAdvice jet(String text) {
        Build build =
                BuildFile.read(text.getBytes(StandardCharsets.UTF_8)).build().orElseThrow();
        Answer life = Life.of(build, Catalogue.EMPTY, List.of());
        return Prediction.of(
                        build,
                        life,
                        Speeds.usual(),
                        runs -> Optional.of(
                                Collections.nCopies(runs.size(), new Run.Outcome(Optional.empty(), "not run"))))
                .flatMap(Answer::torque)
                .orElseThrow()
                .jet()
                .orElseThrow();
    }

    private static JetAdvice.Change change(String text) {
        return jet(text).change().orElseThrow();
    }

    @Test
    void anotherTrackAsksForASmallerJet() {
        JetAdvice.Change change = change(ENGINE);
        assertThat(change.air()).isCloseTo(0.863, within(0.0005));
        assertThat(change.area().value() - 1).isCloseTo(-0.07, within(0.005));
        assertThat(change.diameter().value() - 1).isCloseTo(-0.036, within(0.0005));
        assertThat(change.asFlow().physics()).isEqualTo(change.area().value());
        assertThat(change.asDiameter().physics()).isCloseTo(change.diameter().value(), within(1e-12));
        // the trade: half to all of the density's change on the number, -7 to -14 %
        assertThat(change.asDiameter().leanest() - 1).isCloseTo(-0.14, within(0.005));
        assertThat(change.asFlow().leanest() - 1).isCloseTo(-0.14, within(0.005));
        assertThat(change.asFlow().richest() - 1).isGreaterThan(-0.07);
        assertThat(change.heat()).isEqualTo(1);
        // 2 % for the model, and two barometers, thermometers and hygrometers
        assertThat(change.area().standardUncertainty() / change.area().value()).isBetween(0.02, 0.025);
        assertThat(change.diameter().standardUncertainty() / change.diameter().value())
                .isCloseTo(
                        0.5
                                * change.area().standardUncertainty()
                                / change.area().value(),
                        within(1e-12));
        JetAdvice jet = jet(ENGINE);
        assertThat(jet.said())
                .contains("0.863")
                .contains("-7.1 %")
                .contains("-3.6 %")
                .doesNotContain("instead of");
        assertThat(jet.cautions()).anyMatch(c -> c.contains("rich side")).anyMatch(c -> c.contains("fire card"));
        assertThat(jet.read()).hasSize(3);
    }

    /** By mass 14.6 over 6.47 of air to fuel, by density the root of 747 over 794: 2.2 times the area at the same mixture. */
    @Test
    void anotherFuelIsToldByHeatAndByVolume() {
        String petrol = ENGINE.replace("jetted_fuel: methanol", "jetted_fuel: petrol")
                .replace(
                        "87.3 kPa, air_temperature: 30 °C, relative_humidity: 30 %",
                        "99.2 kPa, air_temperature: 24 °C, relative_humidity: 50 %");
        JetAdvice.Change change = change(petrol);
        assertThat(change.air()).isCloseTo(1, within(1e-9));
        assertThat(change.area().value()).isCloseTo(2.2, within(0.02));
        assertThat(change.heat()).isBetween(1.00, 1.06);
        assertThat(change.volume()).isBetween(2.05, 2.2);
        // how rich either fuel is wanted is open by 8 % each
        assertThat(change.area().standardUncertainty() / change.area().value()).isGreaterThan(0.065);
        assertThat(jet(petrol).said()).contains("methanol instead of petrol").contains("times the fuel by volume");
        assertThat(jet(petrol).cautions()).anyMatch(c -> c.contains("fire card"));
    }

    /** By hand: area 0.930, diameter 0.9644 of what it was. */
    @Test
    void whatToGetIsTheNextToTheRichSide() {
        // 130 comes to 125.4, in steps of 2.5 to 127.5; 51 thousandths to 49.2 and 50; a flow of 180 to 167.4 and 170
        Object[][] cases = {
            {"main_jet_number: 130, main_jet_numbering: hundredths_mm", 130.0, 127.5, 2},
            {"main_jet_number: 51, main_jet_numbering: thousandths_in", 51.0, 50.0, 2},
            {"main_jet_number: 180, main_jet_numbering: flow", 180.0, 170.0, 1},
        };
        for (Object[] one : cases) {
            JetAdvice jet = jet(ENGINE.replace("carburettor: {", "carburettor: {" + one[0] + ", "));
            assertThat(jet.buy()).as((String) one[0]).hasSize(1);
            JetAdvice.Buy buy = jet.buy().get(0);
            assertThat(buy.present()).isEqualTo((double) one[1]);
            assertThat(buy.next()).isEqualTo((double) one[2]);
            double area = jet.change().orElseThrow().area().value();
            assertThat(buy.fuelShare())
                    .isCloseTo(Math.pow(buy.next() / buy.present(), (int) one[3]) / area, within(1e-12))
                    .isGreaterThanOrEqualTo(1);
            assertThat(jet.said()).contains("to the rich side");
        }
        for (String nothing : List.of("main_jet_number: 130", "main_jet_number: 130, main_jet_numbering: own")) {
            assertThat(jet(ENGINE.replace("carburettor: {", "carburettor: {" + nothing + ", "))
                            .buy())
                    .as(nothing)
                    .isEmpty();
        }
        // a bore of 1.42 mm comes to 1.37 and so to 1.40 among metric drills; its 55.9 thousandths to 53.9 and so to
        // 55, number 54
        JetAdvice drilled = jet(ENGINE.replace("carburettor: {", "carburettor: {main_jet_drill: 1.42 mm, "));
        assertThat(drilled.buy()).extracting(JetAdvice.Buy::next).containsExactly(140.0, 55.0);
        // one of 1.30 mm to 1.254, for which 1.25 is too lean
        JetAdvice stays = jet(ENGINE.replace("carburettor: {", "carburettor: {main_jet_drill: 1.30 mm, "));
        assertThat(stays.said()).contains("130 stays");
    }

    @Test
    void withoutAnOldGoodSettingThereIsNoneAndItIsSaidWhatToWrite() {
        JetAdvice jet = jet(ENGINE.replaceAll("(?m)^carburettor.*\n", ""));
        assertThat(jet.change()).isEmpty();
        assertThat(jet.missing().stream().map(Rung.Missing::where))
                .containsExactly(
                        "carburettor.jetted_pressure",
                        "carburettor.jetted_temperature",
                        "carburettor.jetted_humidity",
                        "carburettor.jetted_fuel");
        assertThat(jet.cautions()).anyMatch(c -> c.contains("rich side"));
        assertThat(jet(ENGINE.replace("use: {fuel: methanol}\n", "")).missing().stream()
                        .map(Rung.Missing::where))
                .containsExactly("use.fuel");
    }
}
