package longthrow.core.cycle;

import java.util.Locale;
import longthrow.core.CpuTime;
import longthrow.core.cycle.Crankcase.Around;
import longthrow.core.cycle.Crankcase.Breather;
import longthrow.core.motion.CrankMotion;
import longthrow.core.motion.LobeCurve;

/** CPU time, warm: of a lookup of lift and area, of one crankcase at one speed and of its bounds. Run by hand: its figures are in docs/measurements.md. */
final class BreathTiming {
    private static final int LOOKUPS = 1_000_000;
    private static final int ROUNDS = 31;

    private static double sink;

    private BreathTiming() {}

    public static void main(String[] arguments) {
        ValveLift lift = ValveLift.assumed(new LobeCurve(6e-3, 2.4, ValveLift.intakeCentre(1.8)), 1, 0);
        ValveFlow flow = ValveFlow.usual(ValveGroup.of(0.027), true);
        print("lift and area, a lookup [ns]", CpuTime.median(ROUNDS, () -> {
            double angle = 0;
            for (int i = 0; i < LOOKUPS; i++) {
                angle += 0.037;
                sink += flow.into(lift.at(angle));
            }
        }));
        CrankMotion crank = new CrankMotion(0.027, 0.084, 0);
        Crankcase crankcase = new Crankcase(0.00363, crank, 400e-6, 350, 0.5);
        Around around = new Around(100e3, 310, 5e-5, 400);
        print("crankcase, hole [ms]", CpuTime.median(ROUNDS, () -> crankcase(crankcase, Breather.hole(50e-6), around)));
        print(
                "crankcase, check valve [ms]",
                CpuTime.median(ROUNDS, () -> crankcase(crankcase, Breather.checkValve(50e-6, 100), around)));
        print(
                "crankcase, bounds [ms]",
                CpuTime.median(
                        ROUNDS,
                        () -> sink += CrankcasePumping.bounds(crankcase, true, around, 377)
                                .hi()));
        if (!(sink > 0)) {
            throw new IllegalStateException("nothing was reckoned");
        }
    }

    private static void crankcase(Crankcase crankcase, Breather breather, Around around) {
        sink += CrankcasePumping.of(crankcase, breather, around, 377).meanEffective();
    }

    private static void print(String what, double value) {
        System.out.printf(Locale.ROOT, "%s: %.2f%n", what, value);
    }
}
