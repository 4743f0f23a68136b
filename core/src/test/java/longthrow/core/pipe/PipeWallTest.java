package longthrow.core.pipe;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import longthrow.core.gas.PipeGas;
import longthrow.core.pipe.PipeFlow.Side;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Friction and heat of walls by published formulas, and what a pipe makes of them; losses of mouths and contractions. */
class PipeWallTest {
    private static final PipeGases AIR = PipeGases.alone(new PipeGas(287, 717.5, 0));

    /** Colebrook's implicit formula (1939), which Haaland's stands for within 2 %. */
    private static double colebrook(double reynolds, double roughness) {
        double root = 8;
        for (int n = 0; n < 100; n++) {
            root = -2 * Math.log10(roughness / 3.7 + 2.51 * root / reynolds);
        }
        return 0.25 / (root * root);
    }

    @ParameterizedTest
    @CsvSource({"5e3, 0", "1e4, 0", "1e5, 0", "1e6, 0", "1e4, 1e-3", "1e5, 1e-3", "1e6, 1e-4", "1e5, 0.01", "3e5, 0.03"
    })
    void frictionIsThatOfColebrook(double reynolds, double roughness) {
        assertThat(PipeWall.fanning(reynolds, roughness) / colebrook(reynolds, roughness))
                .isCloseTo(1, within(0.021));
    }

    @Test
    void frictionGoesOverFromLaminarToTurbulentWithoutAStep() {
        assertThat(PipeWall.fanning(1000, 0)).isEqualTo(0.016);
        double before = PipeWall.fanning(1990, 1e-3);
        for (double reynolds = 1990; reynolds < 4100; reynolds += 1) {
            assertThat(PipeWall.fanning(reynolds, 1e-3)).isCloseTo(before, within(1e-5));
            before = PipeWall.fanning(reynolds, 1e-3);
        }
    }

    /** Air at 1 bar, 300 K: 1.846e-5 Pa s; 1000 K: 4.24e-5 (Incropera and DeWitt, table A.4, from memory). */
    @Test
    void airIsAsThickAsTheTableSays() {
        assertThat(PipeWall.viscosity(300)).isCloseTo(1.846e-5, within(0.01e-5));
        assertThat(PipeWall.viscosity(1000)).isCloseTo(4.24e-5, within(0.1e-5));
    }

    /** A bend of 1.5 diameters: 14 diameters of rough pipe less its own 2.36. */
    @Test
    void bendsAddTheirLoss() {
        double rough = 0.25 / Math.pow(2 * Math.log10(3.7 / 1e-3), 2);
        assertThat(PipeWall.bend(1.5, 1e-3)).isCloseTo((14 - 0.75 * Math.PI) * 4 * rough, within(1e-12));
        assertThat(PipeWall.bend(5, 1e-3)).isBetween(PipeWall.bend(6, 1e-3), PipeWall.bend(4, 1e-3));
        assertThatThrownBy(() -> PipeWall.bend(0.5, 1e-3)).hasMessageContaining("bend's middle line");
    }

    /** A slow stream through a pipe with wall and bend loses 4 f L / D and the bend's share of the dynamic pressure, and warms as exp(-4 St L / D). */
    @Test
    void aPipeLosesAndWarmsAsItsWallSays() {
        double diameter = 0.02;
        double length = 0.5;
        PipeFlow flow = new PipeFlow(PipeShape.straight(length, 50, diameter), AIR, new PlainKernel());
        flow.fill(x -> 1e5, x -> 320, x -> 25, x -> 0);
        PipeWall wall = new PipeWall(1e-4, 420, 0.4);
        Throat throat = new Throat(AIR);
        double rest = 1.012e5;
        for (int part = 0; part < 3; part++) {
            double now = 0;
            while (now < 0.1) {
                double dt = flow.longestStep();
                flow.predict(dt);
                throat.join(flow, Side.LEFT, 1, rest, 320, 0);
                throat.join(flow, Side.RIGHT, 1, 1e5, 320, 0);
                flow.finish(dt);
                wall.gather(flow, dt);
                now += dt;
            }
            wall.apply(flow);
        }
        double mass = throat.mass() / flow.endArea(Side.RIGHT);
        double warm = 0;
        double dynamic = 0;
        for (int k = 0; k < 50; k++) {
            warm += flow.temperature(k) / 50;
            dynamic += 0.5 * mass * flow.velocity(k) / 50;
        }
        double reynolds = mass * diameter / PipeWall.viscosity(0.5 * (warm + 420));
        double factor = PipeWall.fanning(reynolds, 1e-4 / diameter);
        double momentum = mass * (flow.velocity(49) - flow.velocity(0));
        double lost = flow.pressure(0) - flow.pressure(49) - momentum;
        assertThat(lost / (0.98 * (4 * factor * length / diameter + 0.4) * dynamic))
                .isCloseTo(1, within(0.025)); // 49 of 50 cells, one mean viscosity for a gas that warms on its way
        double stanton = Math.max(
                0.5 * factor * Math.pow(PipeWall.PRANDTL, -2.0 / 3),
                0.07 * Math.pow(reynolds, -0.25) / PipeWall.PRANDTL); // Colburn; Depcik and Assanis
        double left = (420 - flow.temperature(49)) / (420 - flow.temperature(0));
        assertThat(Math.log(left) / (-4 * stanton * 0.98 * length / diameter)).isCloseTo(1, within(0.02));
    }

    @Test
    void aPipeThatStoodStillHasTheFactorsOfTheLaminarLimit() {
        PipeFlow flow = new PipeFlow(PipeShape.straight(0.5, 10, 0.02), AIR, new PlainKernel());
        flow.fill(x -> 1e5, x -> 300, x -> 10, x -> 0);
        new PipeWall(0, 300, 0).apply(flow);
        flow.predict(1e-5);
        flow.closed(Side.LEFT);
        flow.closed(Side.RIGHT);
        double before = flow.velocity(5);
        flow.finish(1e-5);
        double braking = 2 * 0.008 / 0.02 * 10 * 10 * 1e-5; // 16 / 2000
        assertThat(before - flow.velocity(5)).isCloseTo(braking, within(1e-3 * braking));
    }

    /** Idelchik's tables at their printed points, and what they mean for slow inflow. */
    @Test
    void mouthsLoseWhatTheTablesSay() {
        assertThat(Mouth.plain(0, 0.03).loss()).isEqualTo(1);
        assertThat(Mouth.plain(0.0006, 0.03).loss()).isCloseTo(0.72, within(1e-12));
        assertThat(Mouth.plain(0.01, 0.03).loss()).isEqualTo(0.5);
        assertThat(Mouth.flush().loss()).isEqualTo(0.5);
        assertThat(Mouth.rounded(0.003, 0.03).loss()).isCloseTo(0.12, within(1e-12));
        assertThat(Mouth.rounded(0.02, 0.03).loss()).isEqualTo(0.03);
        assertThat(Mouth.ideal().shareIn()).isEqualTo(1);
        PipeFlow flow = new PipeFlow(PipeShape.straight(0.5, 10, 0.02), AIR, new PlainKernel());
        double density = 1e5 / (287 * 300);
        flow.fill(x -> 1e5, x -> 300, x -> 5, x -> 0);
        flow.predict(flow.longestStep());
        Throat throat = new Throat(AIR);
        double rest = 1e5 + 1.5 * 0.5 * density * 25;
        double area = flow.endArea(Side.LEFT);
        throat.join(flow, Side.LEFT, area, Mouth.flush().shareIn() * area, rest, 300, 0);
        assertThat(-throat.mass() / (density * 5 * area)).isCloseTo(1, within(1e-3));
    }

    @Test
    void sharpOpeningsContractAsWeisbachFound() {
        assertThat(Contraction.sharp(0)).isCloseTo(0.611, within(5e-4));
        assertThat(Contraction.sharp(0.5)).isEqualTo(0.681);
        assertThat(Contraction.sharp(0.85)).isCloseTo(0.8525, within(1e-12));
        assertThat(Contraction.sharp(1)).isEqualTo(1);
        assertThat(Contraction.rounded()).isEqualTo(1);
        assertThatThrownBy(() -> Contraction.sharp(1.1)).hasMessageContaining("0 to 1");
    }
}
