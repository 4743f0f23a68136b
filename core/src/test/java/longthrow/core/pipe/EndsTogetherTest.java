package longthrow.core.pipe;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.SplittableRandom;
import longthrow.core.gas.PipeGas;
import longthrow.core.pipe.PipeFlow.Side;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Pipes, volumes, junctions and throats of every kind in one closed house: what may not change, and what must stay at rest. */
class EndsTogetherTest {
    private static final PipeGases TWO = new PipeGases(new PipeGas(287, 690, 0.09), new PipeGas(289, 720, 0.15));
    private static final PipeGases AIR = PipeGases.alone(new PipeGas(287, 717.5, 0));

    private static PipeFlow pipe(double length, int cells, double from, double to) {
        return new PipeFlow(PipeShape.of(length, cells, x -> from + (to - from) * x / length), TWO, new PlainKernel());
    }

    /** Volume, valve, pipe, plate, pipe, junction of three: one to another volume by a plain end, one closed; and a breather between the volumes. */
    private static final class House {
        final Volume one;
        final Volume two;
        final PipeFlow first = pipe(0.3, 30, 0.03, 0.035);
        final PipeFlow second = pipe(0.2, 20, 0.04, 0.03);
        final PipeFlow third = pipe(0.25, 25, 0.03, 0.05);
        final PipeFlow blind = pipe(0.15, 15, 0.02, 0.015);
        final List<PipeFlow> pipes = List.of(first, second, third, blind);
        final Throat valve = new Throat(TWO);
        final Joint plate = new Joint(TWO);
        final Orifice breather = new Orifice(TWO);
        final Junction junction = new Junction(
                TWO,
                List.of(
                        new Junction.End(second, Side.RIGHT),
                        new Junction.End(third, Side.LEFT),
                        new Junction.End(blind, Side.LEFT)));
        double now;

        House(Volume one, Volume two) {
            this.one = one;
            this.two = two;
        }

        void step(double lift) {
            double dt = 1;
            for (PipeFlow pipe : pipes) {
                dt = Math.min(dt, pipe.longestStep());
            }
            for (PipeFlow pipe : pipes) {
                pipe.predict(dt);
            }
            one.predict(dt);
            two.predict(dt);
            valve.join(first, Side.LEFT, lift * 4e-4, one.pressure(), one.temperature(), one.share());
            one.give(valve);
            plate.join(first, Side.RIGHT, second, Side.LEFT, 3e-4, 2.5e-4);
            junction.join();
            blind.closed(Side.RIGHT);
            double end = third.endArea(Side.RIGHT);
            valve.join(
                    third,
                    Side.RIGHT,
                    end,
                    Mouth.flush().shareIn() * end,
                    two.pressure(),
                    two.temperature(),
                    two.share());
            two.give(valve);
            breather.join(2e-5, two, one);
            for (PipeFlow pipe : pipes) {
                pipe.finish(dt);
            }
            one.finish(dt);
            two.finish(dt);
            now += dt;
        }

        double mass() {
            return one.mass()
                    + two.mass()
                    + pipes.stream().mapToDouble(PipeFlow::mass).sum();
        }

        double energy() {
            return one.energy()
                    + two.energy()
                    + pipes.stream().mapToDouble(PipeFlow::energy).sum();
        }

        double burned() {
            return one.burnedMass()
                    + two.burnedMass()
                    + pipes.stream().mapToDouble(PipeFlow::burnedMass).sum();
        }
    }

    @Test
    void nothingIsLostInTenThousandStepsThroughEveryKindOfEnd() {
        House house = new House(new Volume(TWO, 4e-4, 5e5, 1400, 0.9), new Volume(TWO, 2e-3, 1e5, 310, 0));
        for (PipeFlow pipe : house.pipes) {
            pipe.fill(x -> 1.1e5, x -> 400 + 500 * x, x -> 0, x -> x < 0.1 ? 0 : 0.7);
        }
        double mass = house.mass();
        double energy = house.energy();
        double burned = house.burned();
        for (int k = 0; k < 10_000; k++) {
            double turn = Math.sin(500 * house.now);
            house.step(turn > 0 ? turn : 0);
        }
        assertThat(house.mass() / mass).isCloseTo(1, within(1e-12));
        assertThat(house.energy() / energy).isCloseTo(1, within(1e-12));
        assertThat(house.burned() / burned).isCloseTo(1, within(1e-12));
        assertThat(house.two.mass()).isNotCloseTo(2e-3 * 1e5 / (287 * 310), within(1e-4)); // something did flow
    }

    /** One pressure, and everything else different: hot and cold, burned and fresh, wide and narrow. */
    @Test
    void whatIsAtRestStaysAtRestThroughEveryKindOfEnd() {
        House house = new House(new Volume(TWO, 4e-4, 1e5, 1400, 0.9), new Volume(TWO, 2e-3, 1e5, 310, 0));
        int n = 0;
        for (PipeFlow pipe : house.pipes) {
            double warm = 350 + 150 * n;
            double share = 0.3 * n;
            n++;
            pipe.fill(x -> 1e5, x -> warm, x -> 0, x -> share);
        }
        for (int k = 0; k < 2000; k++) {
            house.step(0.6);
        }
        for (PipeFlow pipe : house.pipes) {
            for (int k = 0; k < pipe.shape().cells(); k++) {
                assertThat(pipe.velocity(k) / 350).isCloseTo(0, within(1e-12));
                assertThat(pipe.pressure(k) / 1e5).isCloseTo(1, within(1e-12));
            }
        }
        assertThat(house.one.pressure() / 1e5).isCloseTo(1, within(1e-12));
        assertThat(house.two.pressure() / 1e5).isCloseTo(1, within(1e-12));
    }

    // ---- junctions

    private static PipeFlow straight(double length, int cells, double size) {
        PipeFlow flow = new PipeFlow(PipeShape.straight(length, cells, 0.03), AIR, new PlainKernel());
        double sound = Math.sqrt(1.4 * 287 * 300);
        flow.fill(
                x -> 1e5 * Math.pow(1 + 0.2 * bump(x, size), 7),
                x -> 300 * Math.pow(1 + 0.2 * bump(x, size), 2),
                x -> sound * bump(x, size),
                x -> 0);
        return flow;
    }

    private static double bump(double x, double size) {
        double near = (x - 0.25) / 0.1;
        return Math.abs(near) >= 1 ? 0 : size * Math.pow(Math.cos(0.5 * Math.PI * near), 4);
    }

    private static double furthest(PipeFlow flow) {
        double furthest = 0;
        for (int k = 0; k < flow.shape().cells(); k++) {
            double off = flow.pressure(k) / 1e5 - 1;
            furthest = Math.abs(off) > Math.abs(furthest) ? off : furthest;
        }
        return furthest;
    }

    /** Sound sees the others' areas together: with n alike it throws back (2 - n) / n and lets 2 / n through. */
    @ParameterizedTest
    @ValueSource(ints = {2, 3, 4})
    void aJunctionDividesASoundAsItsAreasDo(int count) {
        PipeFlow first = straight(0.5, 200, 0.005);
        double came = furthest(first);
        List<PipeFlow> others = java.util.stream.IntStream.range(1, count)
                .mapToObj(n -> straight(0.5, 200, 0))
                .toList();
        List<Junction.End> ends = new java.util.ArrayList<>();
        ends.add(new Junction.End(first, Side.RIGHT));
        others.forEach(flow -> ends.add(new Junction.End(flow, Side.LEFT)));
        Junction junction = new Junction(AIR, ends);
        double now = 0;
        while (now < 0.5 / 347.2) {
            double dt = first.longestStep();
            for (PipeFlow flow : others) {
                dt = Math.min(dt, flow.longestStep());
            }
            first.predict(dt);
            for (PipeFlow flow : others) {
                flow.predict(dt);
                flow.open(Side.RIGHT);
            }
            first.open(Side.LEFT);
            junction.join();
            first.finish(dt);
            for (PipeFlow flow : others) {
                flow.finish(dt);
            }
            now += dt;
        }
        assertThat(furthest(first) / came).isCloseTo((2.0 - count) / count, within(0.01));
        for (PipeFlow flow : others) {
            assertThat(furthest(flow) / came)
                    .isCloseTo(2.0 / count, within(0.02)); // peaks are clipped a little on the way
        }
    }

    @Test
    void noJunctionIsEverWithoutAnAnswer() {
        SplittableRandom random = new SplittableRandom(20_261_129);
        for (int n = 0; n < 10_000; n++) {
            List<Junction.End> ends = new java.util.ArrayList<>();
            int count = 3 + random.nextInt(3);
            for (int k = 0; k < count; k++) {
                PipeFlow flow = new PipeFlow(
                        PipeShape.straight(0.1, 3, 0.005 + 0.05 * random.nextDouble()), TWO, new PlainKernel());
                double pressure = 1e5 * Math.pow(10, random.nextDouble(-0.7, 0.7));
                double warm = random.nextDouble(230, 2000);
                double speed = random.nextDouble(-1.2, 1.2) * TWO.fresh().soundSpeed(warm);
                double share = random.nextDouble();
                flow.fill(x -> pressure, x -> warm, x -> speed, x -> share);
                flow.predict(flow.longestStep());
                ends.add(new Junction.End(flow, random.nextBoolean() ? Side.LEFT : Side.RIGHT));
            }
            Junction junction = new Junction(TWO, ends);
            junction.join();
            double sum = 0;
            double through = 0;
            for (int k = 0; k < count; k++) {
                sum += junction.mass(k);
                through += Math.abs(junction.mass(k));
            }
            assertThat(junction.pressure()).isFinite().isNotNegative();
            assertThat(sum).as("junction " + n).isCloseTo(0, within(1e-14 * through + 1e-300));
        }
    }

    // ---- volumes

    /** To its wall alone: the difference falls as exp of -(U / m cv) t. */
    @Test
    void aVolumeCoolsToItsWall() {
        Volume volume = new Volume(AIR, 1e-3, 1e5, 900, 0);
        volume.wall(2, 400);
        double heldBack = volume.mass() * 717.5 / 2;
        for (int k = 0; k < 1000; k++) {
            volume.predict(1e-4);
            volume.finish(1e-4);
        }
        assertThat(volume.temperature()).isCloseTo(400 + 500 * Math.exp(-0.1 / heldBack), within(0.01));
    }

    /** A crankcase without ends: pressure by volume to the power of gamma, to second order; and the energy that its piston gives comes back. */
    @Test
    void aVolumeThatChangesIsCompressedWithoutLoss() {
        double[] off = new double[2];
        for (int refined = 0; refined < 2; refined++) {
            int steps = refined == 0 ? 100 : 200;
            Volume volume = new Volume(AIR, 5e-4, 1e5, 300, 0);
            for (int k = 1; k <= steps; k++) {
                volume.predict(1e-4, 5e-4 * (1 - 0.3 * Math.sin(0.5 * Math.PI * k / steps)));
                volume.finish(1e-4);
            }
            off[refined] = Math.abs(volume.pressure() / 1e5 - Math.pow(0.7, -1.4));
        }
        assertThat(off[0]).isLessThan(1e-4);
        assertThat(off[0] / off[1]).isBetween(3.5, 4.5);
    }

    @Test
    void aVolumeThatIsRobbedOfMoreThanItHoldsSaysSo() {
        Volume volume = new Volume(AIR, 1e-6, 1e5, 300, 0);
        volume.predict(1e-3);
        volume.give(-1, -3e5, 0);
        assertThatThrownBy(() -> volume.finish(1e-3)).hasMessageContaining("make the step shorter");
        assertThatThrownBy(() -> new Volume(AIR, 0, 1e5, 300, 0)).hasMessageContaining("volume [m3]");
    }

    /** Between its small and its large differences an orifice neither jumps nor turns. */
    @Test
    void anOrificeIsContinuous() {
        Orifice orifice = new Orifice(TWO);
        double before = Double.POSITIVE_INFINITY;
        for (double behind = 3e4; behind < 3e5; behind *= 1.0001) {
            orifice.join(1e-4, 1e5, 500, 0.3, behind, 400, 0.1);
            assertThat(orifice.mass()).isLessThanOrEqualTo(before * (before > 0 ? 1 + 1e-12 : 1 - 1e-12));
            before = orifice.mass();
            assertThat(Math.abs(orifice.mach())).isLessThanOrEqualTo(1 + 1e-12);
        }
        orifice.join(1e-4, 1e5, 500, 0.3, 1e5, 400, 0.1);
        assertThat(orifice.mass()).isZero();
    }
}
