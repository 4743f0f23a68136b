package longthrow.core.pipe;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.fail;
import static org.assertj.core.api.Assertions.within;

import java.util.SplittableRandom;
import longthrow.core.ReferenceRows;
import longthrow.core.gas.PipeGas;
import longthrow.core.pipe.PipeFlow.Side;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** One throat between one state at a pipe's end and one still gas, against closed forms and against what no throat may do. */
class ThroatTest {
    private static final PipeGases TWO = new PipeGases(new PipeGas(287, 690, 0.09), new PipeGas(289, 720, 0.15));

    /** Of the same state everywhere, a step foretold: the state stands at its ends. */
    private static PipeFlow uniform(
            PipeGases gases, double pressure, double temperature, double velocity, double burned) {
        PipeFlow flow = new PipeFlow(PipeShape.straight(0.3, 3, 0.03), gases, new PlainKernel());
        flow.fill(x -> pressure, x -> temperature, x -> velocity, x -> burned);
        flow.predict(flow.longestStep());
        return flow;
    }

    private static PipeGases perfect(double gamma) {
        return PipeGases.alone(new PipeGas(287, 287 / (gamma - 1), 0));
    }

    /** GAS-20, 21 and 39 to 41: what stands behind a simple wave meets the end as one jump, whose shock differs from the rows' second simple wave by its loss. */
    @ParameterizedTest
    @CsvSource({
        "GAS-39, 1.4, 1.3, 0.25",
        "GAS-40, 1.4, 1.3, 0.5",
        "GAS-41, 1.35, 1.6, 0.5",
    })
    void aPartlyOpenEndThrowsBackWhatANozzleDoes(String id, double gamma, double ratio, double share) {
        ReferenceRows rows = ReferenceRows.of("06_gas_dynamics");
        PipeGases gases = perfect(gamma);
        double k = (gamma - 1) / (2 * gamma);
        double rest = Math.sqrt(gamma * 287 * 300);
        double cooled = Math.pow(ratio, k);
        double velocity = 2 / (gamma - 1) * (cooled - 1) * rest;
        PipeFlow flow = uniform(gases, ratio * 1e5, 300 * cooled * cooled, velocity, 0);
        Throat throat = new Throat(gases);
        double pipe = flow.endArea(Side.RIGHT);
        throat.join(flow, Side.RIGHT, share * pipe, 1e5, 300, 0);
        double end = throat.facePressure() / 1e5;
        double sound = Math.pow(end, k);
        rows.row(id + ".1").check(end, 1e-5 * end);
        rows.row(id + ".2").check(throat.faceMach() * sound, 1e-4);
        double back = 1 + sound - cooled; // of the two simple waves one has this sound speed alone
        rows.row(id + ".3").check(Math.pow(back, 1 / k), 1e-5);
    }

    @ParameterizedTest
    @CsvSource({"GAS-20, 1.1", "GAS-21, 1.5"})
    void closedAndOpenEndsThrowSimpleWavesBack(String id, double ratio) {
        ReferenceRows rows = ReferenceRows.of("06_gas_dynamics");
        PipeGases gases = perfect(1.4);
        double rest = Math.sqrt(1.4 * 287 * 300);
        double cooled = Math.pow(ratio, 1 / 7.0);
        double velocity = 5 * (cooled - 1) * rest;
        rows.row(id + ".1").check(velocity / rest);
        PipeFlow flow = uniform(gases, ratio * 1e5, 300 * cooled * cooled, velocity, 0);
        Throat throat = new Throat(gases);
        throat.join(flow, Side.RIGHT, 0, 1e5, 300, 0);
        rows.row(id + ".2").check(throat.facePressure() / 1e5, 0.002 * ratio);
        throat.join(flow, Side.RIGHT, 1, 1e5, 300, 0);
        rows.row(id + ".3").check(throat.faceMach());
        double back = Math.pow(
                1 - (cooled - 1),
                7); // the wave back lowers the sound speed by as much as the one that came had raised it
        rows.row(id + ".4").check(back);
        assertThat(throat.facePressure()).isEqualTo(1e5);
    }

    /** Sums of one end told by themselves, where the equations of the throat are put in once more. */
    @ParameterizedTest
    @ValueSource(doubles = {1e-4, 0.03, 0.3, 0.8, 0.999, 1})
    void whatIsKeptIsKeptFromFaceToThroat(double share) {
        double gamma = 1.37;
        PipeGases gases = perfect(gamma);
        SplittableRandom random = new SplittableRandom(41);
        Throat throat = new Throat(gases);
        for (int n = 0; n < 300; n++) {
            double pressure = 1e5 * Math.exp(random.nextDouble(-1, 1));
            double temperature = random.nextDouble(280, 1500);
            double sound = Math.sqrt(gamma * 287 * temperature);
            PipeFlow flow = uniform(gases, pressure, temperature, sound * random.nextDouble(-0.7, 0.7), 0);
            double still = pressure * Math.exp(random.nextDouble(-1.5, 1.5));
            double warm = random.nextDouble(280, 1500);
            double area = flow.endArea(Side.RIGHT);
            throat.join(flow, Side.RIGHT, share * area, still, warm, 0);
            double face = throat.faceMach();
            double at = throat.throatMach();
            boolean out = throat.mass() > 0;
            if (throat.mass() == 0) {
                continue;
            }
            double face0 = 1 + 0.5 * (gamma - 1) * face * face;
            double at0 = 1 + 0.5 * (gamma - 1) * at * at;
            double e = 0.5 * (gamma + 1) / (gamma - 1);
            double throughFace = Math.abs(throat.mass()) / area;
            double rest = out ? throat.facePressure() * Math.pow(face0, gamma / (gamma - 1)) : still;
            double total = out ? throat.energy() / throat.mass() / (gamma * 287 / (gamma - 1)) : warm;
            double throughThroat =
                    share * rest / Math.sqrt(287 * total) * Math.sqrt(gamma) * Math.abs(at) * Math.pow(at0, -e);
            assertThat(throughThroat / throughFace)
                    .isCloseTo(1, within(1e-11 + 1e-14 / Math.abs(face))); // so much of the face's speed is rounded off
            double throatPressure = rest * Math.pow(at0, -gamma / (gamma - 1));
            assertThat(Math.abs(at)).isLessThanOrEqualTo(1 + 1e-12);
            assertThat(at * throat.mass()).isPositive();
            assertThat(face * throat.mass()).isPositive();
            if (Math.abs(at) < 1) {
                assertThat(throatPressure / (out ? still : throat.facePressure()))
                        .isCloseTo(1, within(1e-9));
            } else {
                assertThat(throatPressure).isGreaterThanOrEqualTo((out ? still : throat.facePressure()) * (1 - 1e-12));
            }
            assertThat(throat.energy() / throat.mass()).isCloseTo(gamma * 287 / (gamma - 1) * total, within(1e-6));
        }
    }

    /** 10,000 seeded pairs: hot and cold, near and past choking, reversed, faster than sound, throats of a millionth. Finite, positive, and less goes out the higher the pressure outside. */
    @Test
    void noThroatIsEverWithoutAnAnswerAndNoneTurnsAgainstThePressure() {
        SplittableRandom random = new SplittableRandom(20_261_127);
        Throat throat = new Throat(TWO);
        for (int n = 0; n < 10_000; n++) {
            double pressure = 1e5 * Math.pow(10, random.nextDouble(-1.3, 1.7));
            double temperature = random.nextDouble(230, 2600);
            double burned = random.nextInt(3) == 0 ? random.nextInt(2) : random.nextDouble();
            PipeGas gas = TWO.at(burned);
            double sound = gas.soundSpeed(temperature);
            double mach = random.nextInt(4) == 0 ? random.nextDouble(-2.5, 2.5) : random.nextDouble(-0.9, 0.9);
            PipeFlow flow = uniform(TWO, pressure, temperature, mach * sound, burned);
            double share = random.nextInt(4) == 0 ? 1 : Math.pow(10, random.nextDouble(-6, 0));
            double area = share * flow.endArea(Side.RIGHT);
            double warm = random.nextDouble(230, 2600);
            double density = pressure / (gas.gasConstant() * temperature);
            double most = density * sound * flow.endArea(Side.RIGHT);
            String said = n + ": p " + pressure + " T " + temperature + " M " + mach + " share " + share + " still at "
                    + warm;
            double start = pressure * Math.pow(10, random.nextDouble(-2, 0));
            double before = Double.POSITIVE_INFINITY;
            for (int k = 0; k <= 40; k++) {
                double still = start * Math.pow(1.25, k);
                double mass = mass(throat, flow, area, still, warm, said);
                double noise = 1e-12 * Math.max(most, Math.abs(mass));
                if (!(mass <= before + noise)) {
                    fail(said + " lets more out at " + still + ": " + mass + " after " + before);
                }
                double near = mass(throat, flow, area, still * (1 + 1e-8), warm, said);
                double heavier = Math.max(density, still / (287 * warm));
                double slope = 30 * heavier / (density * sound) * flow.endArea(Side.RIGHT);
                if (!(Math.abs(near - mass) < slope * 1e-8 * still + noise)) {
                    fail(said + " jumps at " + still + " from " + mass + " to " + near);
                }
                before = mass;
            }
        }
    }

    private static double mass(Throat throat, PipeFlow flow, double area, double still, double warm, String said) {
        throat.join(flow, Side.RIGHT, area, still, warm, 0.4);
        boolean sound = throat.facePressure() > 0
                && Double.isFinite(throat.facePressure() + throat.mass() + throat.energy() + throat.burned())
                && Double.isFinite(throat.throatMach() + throat.faceMach())
                && throat.energy() * throat.mass() >= 0;
        if (!sound) {
            fail(said + " at " + still + " gives " + throat.mass() + " kg/s, face " + throat.facePressure() + " Pa");
        }
        return throat.mass();
    }

    @Test
    void aThroatOfNoWidthIsAWall() {
        PipeFlow flow = uniform(TWO, 1.3e5, 700, 40, 0.3);
        Throat throat = new Throat(TWO);
        throat.join(flow, Side.LEFT, 0, 9e5, 2000, 1);
        assertThat(throat.mass()).isZero();
        assertThat(throat.energy()).isZero();
        assertThat(throat.facePressure()).isLessThan(1.3e5); // on the left the gas runs away from it
    }

    /** Left and right are each other's picture, to the last digit. */
    @Test
    void bothEndsAreAlike() {
        Throat throat = new Throat(TWO);
        throat.join(uniform(TWO, 1.3e5, 700, 40, 0.3), Side.RIGHT, 2e-4, 1.1e5, 300, 0);
        double right = throat.mass();
        throat.join(uniform(TWO, 1.3e5, 700, -40, 0.3), Side.LEFT, 2e-4, 1.1e5, 300, 0);
        assertThat(throat.mass()).isEqualTo(right).isPositive();
    }

    @Test
    void whatNoThroatCanBeIsRefused() {
        PipeFlow flow = uniform(TWO, 1.3e5, 700, 40, 0.3);
        Throat throat = new Throat(TWO);
        assertThatThrownBy(() -> throat.join(flow, Side.LEFT, Double.NaN, 1e5, 300, 0))
                .hasMessageContaining("areas must be 0 or above");
        assertThatThrownBy(() -> throat.join(flow, Side.LEFT, 1e-4, -1, 300, 0)).hasMessageContaining("above 0");
    }
}
