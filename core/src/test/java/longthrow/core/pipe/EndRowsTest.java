package longthrow.core.pipe;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.function.DoubleSupplier;
import java.util.function.DoubleUnaryOperator;
import longthrow.core.ReferenceRows;
import longthrow.core.flow.EndCorrection;
import longthrow.core.flow.Isentropic;
import longthrow.core.gas.PipeGas;
import longthrow.core.pipe.PipeFlow.Side;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Rows of topic 06 by pipes that flow: waves at ends, what sounds, steady flow between still gases, a volume that blows down. */
class EndRowsTest {
    private static final ReferenceRows ROWS = ReferenceRows.of("06_gas_dynamics");

    private static PipeGases perfect(double gamma) {
        return PipeGases.alone(new PipeGas(287, 287 / (gamma - 1), 0));
    }

    private static PipeFlow straight(PipeGases gases, double length, int cells, double diameter) {
        return new PipeFlow(PipeShape.straight(length, cells, diameter), gases, new PlainKernel());
    }

    /** Between nothing and one, smooth. */
    private static double ramp(double x) {
        double t = Math.min(1, Math.max(0, x));
        return t * t * (3 - 2 * t);
    }

    private static void run(PipeFlow flow, double time, Runnable ends) {
        double now = 0;
        while (now < time) {
            double dt = flow.longestStep(); // whole steps: what an end says of a sliver of one is not what it says of a
            // step
            flow.predict(dt);
            ends.run();
            flow.finish(dt);
            now += dt;
        }
    }

    /** GAS-18 and 19, as GAS-17 in PipeFlowTest. */
    @ParameterizedTest
    @CsvSource({"GAS-18, 1.4, 2", "GAS-19, 1.35, 1.5"})
    void shocksAreThrownBackByAClosedEnd(String id, double gamma, double ratio) {
        PipeGases gases = perfect(gamma);
        double g = (gamma - 1) / (gamma + 1);
        double dense = (ratio + g) / (g * ratio + 1);
        double mach = Math.sqrt(1 + (gamma + 1) / (2 * gamma) * (ratio - 1));
        double velocity = mach * Math.sqrt(gamma * 287 * 300) * (1 - 1 / dense);
        PipeFlow flow = straight(gases, 1, 400, 0.03);
        flow.fill(
                x -> x < 0.5 ? ratio * 1e5 : 1e5,
                x -> x < 0.5 ? 300 * ratio / dense : 300,
                x -> x < 0.5 ? velocity : 0,
                x -> 0);
        run(flow, 0.55 / (mach * Math.sqrt(gamma * 287 * 300)), () -> {
            flow.open(Side.LEFT);
            flow.closed(Side.RIGHT);
        });
        double row = ROWS.row(id + ".3").value();
        ROWS.row(id + ".3").check(flow.pressure(398) / 1e5, 0.005 * row);
    }

    private record Meeting(double end, double mach) {}

    /** A simple wave that rises over a fifth of a metre and then stays, at an end open by a share. */
    private static Meeting simpleWave(double gamma, double ratio, double share) {
        PipeGases gases = perfect(gamma);
        double k = (gamma - 1) / (2 * gamma);
        double rest = Math.sqrt(gamma * 287 * 300);
        DoubleUnaryOperator sound = x -> 1 + (Math.pow(ratio, k) - 1) * ramp((0.9 - x) / 0.2);
        PipeFlow flow = straight(gases, 1, 300, 0.03);
        flow.fill(
                x -> 1e5 * Math.pow(sound.applyAsDouble(x), 1 / k),
                x -> 300 * Math.pow(sound.applyAsDouble(x), 2),
                x -> 2 / (gamma - 1) * rest * (sound.applyAsDouble(x) - 1),
                x -> 0);
        Throat throat = new Throat(gases);
        run(flow, 0.5 / rest, () -> {
            flow.open(Side.LEFT);
            throat.join(flow, Side.RIGHT, share * flow.endArea(Side.RIGHT), 1e5, 300, 0);
        });
        return new Meeting(throat.facePressure() / 1e5, throat.faceMach());
    }

    @ParameterizedTest
    @CsvSource({"GAS-20, 1.1", "GAS-21, 1.5"})
    void closedAndOpenEndsThrowSimpleWavesBack(String id, double ratio) {
        Meeting closed = simpleWave(1.4, ratio, 0);
        ROWS.row(id + ".2").check(closed.end, 0.01 * ROWS.row(id + ".2").value());
        Meeting open = simpleWave(1.4, ratio, 1);
        ROWS.row(id + ".3").check(open.mach, 0.01 * ROWS.row(id + ".3").value());
    }

    @ParameterizedTest
    @CsvSource({"GAS-39, 1.4, 1.3, 0.25", "GAS-40, 1.4, 1.3, 0.5", "GAS-41, 1.35, 1.6, 0.5"})
    void partlyOpenEndsThrowSimpleWavesBack(String id, double gamma, double ratio, double share) {
        Meeting end = simpleWave(gamma, ratio, share);
        double k = (gamma - 1) / (2 * gamma);
        double sound = Math.pow(end.end, k);
        ROWS.row(id + ".1").check(end.end, 0.01 * ROWS.row(id + ".1").value());
        ROWS.row(id + ".2").check(end.mach * sound, 0.01 * ROWS.row(id + ".2").value());
        double back = 1 + sound - Math.pow(ratio, k);
        ROWS.row(id + ".3")
                .check(Math.pow(back, 1 / k), 0.01 * ROWS.row(id + ".3").value());
    }

    // ---- what sounds

    /** By the times at which the pressure passes that outside, over many swings [Hz]. */
    private static double frequency(PipeFlow flow, Runnable ends, DoubleSupplier off, double time) {
        double now = 0;
        double first = Double.NaN;
        double last = Double.NaN;
        int passes = -1;
        double before = off.getAsDouble();
        while (now < time) {
            double dt = flow.longestStep();
            flow.predict(dt);
            ends.run();
            flow.finish(dt);
            now += dt;
            double is = off.getAsDouble();
            if (before < 0 != is < 0) {
                last = now - dt * is / (is - before);
                first = passes < 0 ? last : first;
                passes++;
            }
            before = is;
        }
        assertThat(passes).isGreaterThan(6);
        return 0.5 * passes / (last - first);
    }

    private static final double WARM = 343.2 * 343.2 / (1.4 * 287);

    @ParameterizedTest
    @CsvSource({
        "GAS-22.1, 0.4, 1, 1.4, 0",
        "GAS-22.2, 0.4, 2, 1.4, 0",
        "GAS-22.3, 0.4, 1, 1.4, 0.012",
        "GAS-22.7, 0.75, 1, 1.35, 0"
    })
    void aPipeClosedAtOneEndSounds(String row, double length, int mode, double gamma, double radius) {
        PipeGases gases = perfect(gamma);
        double warm = gamma == 1.4 ? WARM : 750;
        double sounds = length + EndCorrection.FREE.length(radius);
        PipeFlow flow = straight(gases, sounds, 80, 0.024);
        double wave = (mode - 0.5) * Math.PI / sounds;
        flow.fill(x -> 1e5 * (1 + 1e-3 * Math.cos(wave * x)), x -> warm, x -> 0, x -> 0);
        Throat throat = new Throat(gases);
        double asked = ROWS.row(row).value();
        double found = frequency(
                flow,
                () -> {
                    flow.closed(Side.LEFT);
                    throat.join(flow, Side.RIGHT, 1, 1e5, warm, 0);
                },
                () -> flow.pressure(0) - 1e5,
                6 / asked);
        ROWS.row(row).check(found, 0.005 * asked);
    }

    @Test
    void aPipeOpenAtBothEndsSounds() {
        PipeGases gases = perfect(1.4);
        PipeFlow flow = straight(gases, 0.5, 80, 0.024);
        flow.fill(x -> 1e5 * (1 + 1e-3 * Math.sin(Math.PI * x / 0.5)), x -> WARM, x -> 0, x -> 0);
        Throat throat = new Throat(gases);
        double found = frequency(
                flow,
                () -> {
                    throat.join(flow, Side.LEFT, 1, 1e5, WARM, 0);
                    throat.join(flow, Side.RIGHT, 1, 1e5, WARM, 0);
                },
                () -> flow.pressure(40) - 1e5,
                0.02);
        ROWS.row("GAS-22.4").check(found, 0.005 * 343.2);
    }

    /** The resonator of GAS-22.5. The row's formula takes the neck's air for a plug; as a pipe it swings at x c / (2 pi L), x tan x = A L / V, 5 % lower, and that is what must come out. */
    @Test
    void aVolumeSwingsOnItsNeck() {
        PipeGases gases = perfect(1.4);
        PipeFlow neck = straight(gases, 0.18, 40, 0.024);
        neck.fill(x -> 1e5, x -> WARM, x -> 0, x -> 0);
        Volume volume = new Volume(gases, 250e-6, 1.003e5, WARM, 0);
        Throat throat = new Throat(gases);
        double now = 0;
        double area = neck.endArea(Side.LEFT);
        double wanted = area * 0.18 / 250e-6;
        double x = 0.5;
        for (int n = 0; n < 200; n++) {
            x -= (x * Math.tan(x) - wanted) / (Math.tan(x) + x / Math.pow(Math.cos(x), 2));
        }
        double asked = x * 343.2 / (2 * Math.PI * 0.18);
        double first = Double.NaN;
        double last = Double.NaN;
        int passes = -1;
        double before = 1;
        while (now < 5.3 / asked) {
            double dt = neck.longestStep();
            assertThat(dt).isLessThan(volume.longestStep(area));
            neck.predict(dt);
            volume.predict(dt);
            throat.join(neck, Side.LEFT, area, volume.pressure(), volume.temperature(), 0);
            volume.give(throat);
            throat.join(neck, Side.RIGHT, area, 1e5, WARM, 0);
            neck.finish(dt);
            volume.finish(dt);
            now += dt;
            double is = volume.pressure() - 1e5;
            if (before < 0 != is < 0) {
                last = now - dt * is / (is - before);
                first = passes < 0 ? last : first;
                passes++;
            }
            before = is;
        }
        assertThat(passes).isGreaterThan(6);
        double found = 0.5 * passes / (last - first);
        assertThat(found / asked).isCloseTo(1, within(0.005));
        assertThat(found / ROWS.row("GAS-22.5").value()).isBetween(0.93, 0.97);
    }

    // ---- steady flow

    @ParameterizedTest
    @CsvSource({"GAS-30, 120000, 0.025, 0.5, 0.006", "GAS-31, 300000, 0.02, 1, 0.005"})
    void aPipeWithFrictionBetweenStillGases(String id, double p0, double diameter, double length, double factor) {
        PipeGases gases = perfect(1.4);
        PipeFlow flow = straight(gases, length, 200, diameter);
        flow.fill(x -> 1e5, x -> 300, x -> 0, x -> 0);
        for (int k = 0; k < 200; k++) {
            flow.wall(k, 2 * factor / diameter, 0, 300);
        }
        Throat in = new Throat(gases);
        Throat out = new Throat(gases);
        run(flow, 0.12, () -> {
            in.join(flow, Side.LEFT, 1, p0, 300, 0);
            out.join(flow, Side.RIGHT, 1, 1e5, 300, 0);
        });
        ROWS.row(id + ".1").check(-in.faceMach(), 0.01 * ROWS.row(id + ".1").value());
        ROWS.row(id + ".2").check(out.faceMach(), 0.01 * ROWS.row(id + ".2").value());
        ROWS.row(id + ".3").check(out.mass(), 0.01 * ROWS.row(id + ".3").value());
        assertThat(-in.mass() / out.mass()).isCloseTo(1, within(1e-6));
    }

    /** GAS-32 and 33: a cone between two straight pieces, pressures at rest and behind as the row has them. */
    @ParameterizedTest
    @CsvSource({"GAS-32, 2", "GAS-33, 0.7"})
    void aConeWidensOrNarrowsTheFlowWithoutLoss(String id, double areas) {
        PipeGases gases = perfect(1.4);
        double behind = ROWS.row(id + ".2").value() * 1e5;
        double rest = 1e5 / Isentropic.pressure(1.4, 0.3);
        double warm = 300 / Isentropic.temperature(1.4, 0.3);
        PipeShape shape = PipeShape.of(0.6, 120, x -> 0.03 * Math.sqrt(1 + (areas - 1) * ramp((x - 0.2) / 0.2)));
        PipeFlow flow = new PipeFlow(shape, gases, new PlainKernel());
        flow.fill(x -> behind, x -> 300, x -> 100 * shape.faceArea(0) / shape.cellArea((int) (x / 0.005)), x -> 0);
        Throat throat = new Throat(gases);
        run(flow, 0.06, () -> {
            throat.join(flow, Side.LEFT, 1, rest, warm, 0);
            throat.join(flow, Side.RIGHT, 1, behind, warm, 0);
        });
        double first = flow.velocity(5) / Math.sqrt(1.4 * 287 * flow.temperature(5));
        double last = flow.velocity(115) / Math.sqrt(1.4 * 287 * flow.temperature(115));
        assertThat(first).isCloseTo(0.3, within(0.003));
        ROWS.row(id + ".1").check(last, 0.01 * ROWS.row(id + ".1").value());
        double ratio = flow.pressure(115) / flow.pressure(5);
        ROWS.row(id + ".2").check(ratio, 0.01 * ROWS.row(id + ".2").value());
    }

    /** GAS-34: two straight pipes and the step between them, by the row's pressures at both ends. */
    @Test
    void aSuddenEnlargementInAPipe() {
        PipeGases gases = perfect(1.4);
        PipeFlow narrow = straight(gases, 0.2, 40, 0.03);
        PipeFlow wide = straight(gases, 0.2, 40, 0.03 * Math.sqrt(2));
        double behind = 1e5 * ROWS.row("GAS-34.2").value();
        narrow.fill(x -> 1e5, x -> 300, x -> 100, x -> 0);
        wide.fill(x -> behind, x -> 300, x -> 50, x -> 0);
        double rest = 1e5 / Isentropic.pressure(1.4, 0.4);
        double warm = 300 / Isentropic.temperature(1.4, 0.4);
        Throat throat = new Throat(gases);
        Joint joint = new Joint(gases);
        double now = 0;
        while (now < 0.05) {
            double dt = Math.min(narrow.longestStep(), wide.longestStep());
            narrow.predict(dt);
            wide.predict(dt);
            throat.join(narrow, Side.LEFT, 1, rest, warm, 0);
            joint.join(narrow, Side.RIGHT, wide, Side.LEFT, 1, 1);
            throat.join(wide, Side.RIGHT, 1, behind, warm, 0);
            narrow.finish(dt);
            wide.finish(dt);
            now += dt;
        }
        double m1 = narrow.velocity(20) / Math.sqrt(1.4 * 287 * narrow.temperature(20));
        double m2 = wide.velocity(20) / Math.sqrt(1.4 * 287 * wide.temperature(20));
        assertThat(m1).isCloseTo(0.4, within(0.004));
        ROWS.row("GAS-34.1").check(m2, 0.01 * ROWS.row("GAS-34.1").value());
        ROWS.row("GAS-34.2").check(wide.pressure(20) / narrow.pressure(20), 0.01);
    }

    /** GAS-35: a volume through a choked throat, in steps of 10 microseconds; and of second order. */
    @Test
    void aVolumeBlowsDown() {
        double[] off = new double[2];
        for (int refined = 0; refined < 2; refined++) {
            double dt = refined == 0 ? 1e-5 : 5e-6;
            PipeGases gases = PipeGases.alone(new PipeGas(288, 288 / 0.3, 0));
            Volume volume = new Volume(gases, 2.2e-4, 5e5, 1300, 0);
            Orifice throat = new Orifice(gases);
            int steps = (int) Math.round(2e-3 / dt);
            for (int k = 1; k <= steps; k++) {
                volume.predict(dt);
                throat.join(0.7 * 1.5e-4, volume.pressure(), volume.temperature(), 0, 1e4, 300, 0);
                volume.give(-throat.mass(), -throat.energy(), -throat.burned());
                volume.finish(dt);
                int row = k == steps / 4 ? 2 : k == steps / 2 ? 4 : k == steps ? 6 : 0;
                if (row > 0) {
                    ROWS.row("GAS-35." + row).check(volume.pressure() / 1e5, 2e-5);
                    ROWS.row("GAS-35." + (row + 1)).check(volume.temperature(), 5e-3);
                }
            }
            off[refined] =
                    Math.abs(volume.pressure() / 1e5 - ROWS.row("GAS-35.6").value());
        }
        assertThat(off[0] / off[1]).isBetween(3.0, 5.0);
    }
}
