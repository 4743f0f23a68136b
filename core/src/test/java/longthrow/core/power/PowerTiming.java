package longthrow.core.power;

import java.util.EnumMap;
import java.util.Locale;
import java.util.Map;
import longthrow.core.CpuTime;
import longthrow.core.gas.Fuel;
import longthrow.core.measurement.Measured;
import longthrow.core.pipe.FlowKernel;
import longthrow.core.pipe.NamedKernel;

/** CPU time of one operating point of an invented utility engine with airbox and silencer, warm, median of many. Run by hand: its figures are in docs/measurements.md. */
final class PowerTiming {
    private static final int ROUNDS = 9;

    /** So that nothing is left out as unused. */
    private static double sum;

    private PowerTiming() {}

    /** With the plain kernel, or with one whose class is named. */
    public static void main(String[] arguments) throws ReflectiveOperationException {
        FlowKernel kernel = NamedKernel.of(arguments);
        Figures figures = figures();
        for (int rpm : new int[] {2000, 3600, 6000}) {
            double speed = rpm * Math.PI / 30;
            double time = CpuTime.median(
                    ROUNDS,
                    () -> sum += Curve.at(figures, speed, Curve.MESH, () -> kernel, () -> true)
                            .orElseThrow()
                            .torque());
            System.out.printf(Locale.ROOT, "%d rpm: %.0f ms%n", rpm, time);
        }
    }

    static Figures figures() {
        Map<Needed, Measured> known = new EnumMap<>(Needed.class);
        known.put(Needed.BORE, Measured.exact(0.070));
        known.put(Needed.STROKE, Measured.exact(0.052));
        known.put(Needed.COMPRESSION_RATIO, Measured.exact(8.6));
        return Figures.of(
                Kind.of(Kind.Use.UTILITY, Kind.Cooling.FAN, Kind.Layout.PUSHROD, Kind.Basis.NET), Fuel.petrol(), known);
    }
}
