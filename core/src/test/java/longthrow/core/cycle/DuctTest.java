package longthrow.core.cycle;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import longthrow.core.gas.PipeGas;
import longthrow.core.pipe.PipeGases;
import longthrow.core.pipe.PlainKernel;
import org.junit.jupiter.api.Test;

class DuctTest {
    private static final PipeGases AIR = PipeGases.alone(new PipeGas(287, 717.5, 0));

    @Test
    void aTubeIsAsWideAsItsStationsSay() {
        Tube tube = new Tube(0.1, List.of(new Tube.Station(0.02, 0.02), new Tube.Station(0.06, 0.03)), 300, 0);
        assertThat(tube.diameter(0)).isEqualTo(0.02);
        assertThat(tube.diameter(0.04)).isCloseTo(0.025, within(1e-15));
        assertThat(tube.diameter(0.1)).isEqualTo(0.03);
    }

    /** Every kind of piece in one way: gas as outside stays at rest. */
    @Test
    void gasAsOutsideStaysAtRest() {
        for (Duct duct : List.of(
                new Duct(List.of(Tube.cone(0.1, 0.02, 0.03, 300)), 0.9),
                new Duct(List.of(Tube.straight(0.1, 0.02, 300), new Plate(1e-4), Tube.straight(0.1, 0.03, 300)), 1),
                new Duct(
                        List.of(
                                Tube.straight(0.1, 0.02, 300),
                                Plenum.of(1e-3),
                                Tube.straight(0.2, 0.03, 300),
                                Plate.hole(0.01)),
                        1),
                new Duct(List.of(Tube.straight(0.1, 0.02, 300), Plenum.of(1e-3), Plate.hole(0.01)), 1))) {
            DuctFlow.Outside air = new DuctFlow.Outside(1e5, 300, 0);
            DuctFlow flow = new DuctFlow(duct, AIR, new PlainKernel(), 0.01, air, air);
            for (int i = 0; i < 500; i++) {
                double dt = flow.longestStep();
                flow.predict(dt);
                flow.meet(1e-4, 1e-4, 1e5, 300, 0);
                flow.finish(dt);
            }
            flow.rub();
            assertThat(flow.pressures()).allSatisfy(p -> assertThat(p).isCloseTo(1e5, within(1e-5)));
            assertThat(flow.intoCylinder()).isCloseTo(0, within(1e-9));
            assertThat(flow.massOut()).isCloseTo(0, within(1e-9));
        }
    }

    /** What is drawn in steadily at the valve comes in at the mouth, past every piece. */
    @Test
    void whatIsDrawnAtTheValveComesInAtTheMouth() {
        Duct duct = new Duct(
                List.of(
                        Tube.straight(0.1, 0.02, 300),
                        Plate.hole(0.015),
                        Tube.straight(0.1, 0.02, 300),
                        Plenum.of(2e-4),
                        Tube.straight(0.1, 0.03, 300)),
                0.8);
        DuctFlow.Outside air = new DuctFlow.Outside(1e5, 300, 0);
        DuctFlow flow = new DuctFlow(duct, AIR, new PlainKernel(), 0.01, air, air);
        for (int i = 0; i < 6000; i++) {
            double dt = flow.longestStep();
            flow.predict(dt);
            flow.meet(5e-5, 5e-5, 0.95e5, 300, 0);
            flow.finish(dt);
        }
        assertThat(flow.intoCylinder()).isGreaterThan(1e-3);
        assertThat(-flow.massOut() / flow.intoCylinder()).isCloseTo(1, within(1e-3));
    }

    @Test
    void whatCannotBeAWayIsRefused() {
        assertThatThrownBy(() -> new Duct(List.of(), 1)).hasMessageContaining("begins at the valve with a pipe");
        assertThatThrownBy(() -> new Duct(List.of(Plenum.of(1e-3)), 1)).hasMessageContaining("begins at the valve");
        Tube tube = Tube.straight(0.1, 0.02, 300);
        assertThatThrownBy(() -> new Duct(List.of(tube, Plenum.of(1e-3)), 1)).hasMessageContaining("without a hole");
        assertThatThrownBy(() -> new Duct(List.of(tube, new Plate(1e-4), new Plate(1e-4)), 1))
                .hasMessageContaining("there must be a pipe");
        assertThatThrownBy(() -> new Duct(List.of(tube), 1.2)).hasMessageContaining("at most 1");
        assertThatThrownBy(() ->
                        new Tube(0.1, List.of(new Tube.Station(0.05, 0.02), new Tube.Station(0.01, 0.02)), 300, 0))
                .hasMessageContaining("in the order of their places");
    }
}
