package longthrow.core.pipe;

import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;
import java.util.function.IntToDoubleFunction;
import longthrow.core.CpuTime;
import longthrow.core.gas.PipeGas;
import longthrow.core.pipe.PipeFlow.Side;

/** CPU time of one call of each kind of end, warm, median of many: states as an engine has them, none after the other alike. Run by hand: its figures are in docs/measurements.md. */
final class EndTiming {
    private static final int STATES = 512;
    private static final int CALLS = 1_000_000;
    private static final PipeGases GASES = new PipeGases(new PipeGas(287, 690, 0.09), new PipeGas(289, 720, 0.15));

    private EndTiming() {}

    private static PipeFlow uniform(double pressure, double temperature, double velocity, double burned) {
        PipeFlow flow = new PipeFlow(PipeShape.straight(0.3, 3, 0.03), GASES, new PlainKernel());
        flow.fill(x -> pressure, x -> temperature, x -> velocity, x -> burned);
        flow.predict(flow.longestStep());
        return flow;
    }

    public static void main(String[] arguments) {
        throat("throat, valve: shares 0 to 0.6, still gas within a tenth of the pipe's pressure", 0, 0.6, 0.1);
        throat("throat, valve at blowdown: still gas at up to four times the pressure, or a quarter", 0, 0.6, 1.4);
        throat("throat, open end", 1, 1, 0.03);
        joint("joint, a tenth of the pipe's pressure between its ends, throat half the pipe", 0.5, 0.1);
        joint("joint, the same without a throat", 1, 0.1);
        junction();
        volumes();
    }

    private static PipeFlow[] some(SplittableRandom random, double spread) {
        PipeFlow[] flows = new PipeFlow[STATES];
        for (int n = 0; n < STATES; n++) {
            flows[n] = uniform(
                    1e5 * Math.exp(random.nextDouble(-spread, spread)),
                    random.nextDouble(300, 1000),
                    random.nextDouble(-100, 100),
                    random.nextDouble());
        }
        return flows;
    }

    private static void joint(String what, double share, double spread) {
        SplittableRandom random = new SplittableRandom(8);
        PipeFlow[] first = some(random, spread);
        PipeFlow[] second = some(random, spread);
        double area = share * first[0].endArea(Side.RIGHT);
        Joint joint = new Joint(GASES);
        say(what, k -> {
            joint.join(first[k], Side.RIGHT, second[k], Side.LEFT, area, area);
            return joint.mass();
        });
    }

    private static void junction() {
        SplittableRandom random = new SplittableRandom(9);
        PipeFlow[] flows = some(random, 0.1);
        Junction[] junctions = new Junction[STATES];
        for (int n = 0; n < STATES; n++) {
            junctions[n] = new Junction(
                    GASES,
                    List.of(
                            new Junction.End(flows[n], Side.RIGHT),
                            new Junction.End(flows[(n + 1) % STATES], Side.LEFT),
                            new Junction.End(flows[(n + 2) % STATES], Side.LEFT)));
        }
        say("junction of three", k -> {
            junctions[k].join();
            return junctions[k].mass(0);
        });
    }

    private static void volumes() {
        Volume one = new Volume(GASES, 1e-3, 1.2e5, 400, 0.2);
        Volume two = new Volume(GASES, 1e-3, 1e5, 300, 0.6);
        Orifice orifice = new Orifice(GASES);
        say("two volumes and the orifice between them, a step", k -> {
            one.predict(5e-6);
            two.predict(5e-6);
            orifice.join(1e-5, one, two);
            one.finish(5e-6);
            two.finish(5e-6);
            return orifice.mass();
        });
    }

    private static void say(String what, IntToDoubleFunction call) {
        double[] sink = new double[1];
        double time = CpuTime.median(15, () -> {
            for (int n = 0; n < CALLS; n++) {
                sink[0] += call.applyAsDouble(n & (STATES - 1));
            }
        });
        System.out.printf(Locale.ROOT, "%.0f ns a call: %s (%g)%n", time * 1e6 / CALLS, what, sink[0]);
    }

    private static void throat(String what, double least, double most, double spread) {
        SplittableRandom random = new SplittableRandom(7);
        PipeFlow[] flows = new PipeFlow[STATES];
        double[] share = new double[STATES];
        double[] still = new double[STATES];
        double[] warm = new double[STATES];
        for (int n = 0; n < STATES; n++) {
            double pressure = 1e5 * Math.exp(random.nextDouble(-0.3, 0.3));
            flows[n] =
                    uniform(pressure, random.nextDouble(300, 1000), random.nextDouble(-100, 100), random.nextDouble());
            share[n] = flows[n].endArea(Side.RIGHT) * (least + (most - least) * random.nextDouble());
            still[n] = pressure * Math.exp(random.nextDouble(-spread, spread));
            warm[n] = random.nextDouble(300, 1500);
        }
        Throat throat = new Throat(GASES);
        say(what, k -> {
            throat.join(flows[k], Side.RIGHT, share[k], still[k], warm[k], 0.5);
            return throat.mass();
        });
    }
}
