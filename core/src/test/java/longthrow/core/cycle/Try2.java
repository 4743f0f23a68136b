package longthrow.core.cycle;
import java.util.*;
import longthrow.core.CpuTime;
import longthrow.core.gas.*;
import longthrow.core.measurement.*;
import longthrow.core.pipe.*;
import longthrow.core.power.*;
public class Try2 {
    public static void main(String[] x) {
        Map<Needed, Measured> k = new EnumMap<>(Needed.class);
        k.put(Needed.BORE, Measured.exact(0.070)); k.put(Needed.STROKE, Measured.exact(0.052)); k.put(Needed.COMPRESSION_RATIO, Measured.exact(8.6));
        Figures f = Figures.of(Kind.of(Kind.Use.UTILITY, Kind.Cooling.FAN, Kind.Layout.PUSHROD, Kind.Basis.NET), Fuel.petrol(), k);
        for (Needed n : Needed.values()) System.out.println(n + " " + f.value(n).map(m -> String.format("%.5f ± %.5f", m.value(), m.standardUncertainty())).orElse("-"));
        for (double cell : new double[] {0.020}) for (int rpm : new int[] {1800, 2500, 3600, 5000}) {
            long t = CpuTime.now();
            Curve.Point p = Curve.at(f, rpm * Math.PI / 30, new Mesh(cell, Math.toRadians(1)), PlainKernel::new, () -> true).get();
            System.out.printf("%.3f %d: T %.3f Nm bmep %.3f fmep %.3f net %.3f pump %.3f ve %.3f res %.3f walls %.3f %s %s %.0f ms%n", cell, rpm, p.torque(), p.torque() * 4 * Math.PI / (Math.PI/4*.07*.07*.052) / 1e5, p.friction() / 1e5, p.point().work().net() / 1e5, p.point().work().pumping() / 1e5, p.point().charge().volumetric(), p.point().charge().residual(), p.point().heat().walls()/p.point().heat().fuel(), p.point().effort(), p.point().fire().map(q -> String.format("%.0f %.0f %.0f %.0f bar %.0f oct %.0f", Math.toDegrees(q.tenth()), Math.toDegrees(q.half()), Math.toDegrees(q.nineTenths()), q.peak()/1e5, Math.toDegrees(q.peakAngle()), q.octaneWanted())).orElse(""), (CpuTime.now() - t) * 1e-6);
        }
    }
}
