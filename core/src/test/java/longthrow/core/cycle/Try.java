package longthrow.core.cycle;

import java.util.List;
import longthrow.core.CpuTime;
import longthrow.core.gas.*;
import longthrow.core.motion.*;
import longthrow.core.pipe.PlainKernel;

public class Try {
    static Passage passage(double head, double lift, double open, double close) { // ATDC firing deg
        double c = Math.toRadians((open + close) / 2), d = Math.toRadians(close - open);
        LobeCurve lobe = LobeCurve.of(lift, 0.0005, d, c);
        java.util.function.DoubleUnaryOperator a = x -> {
            double y = x; 
            while (y < c - 2 * Math.PI) y += 4 * Math.PI; while (y > c + 2 * Math.PI) y -= 4 * Math.PI;
            if (Math.abs(y-c) > lobe.halfWidth()) return 0;
            double l = Math.max(0, lobe.at(y));
            double cd = 0.70 - 0.9*(l/head)*(l/head)*2;
            return Math.PI * head * l * cd;
        };
        return Passage.of(a, a);
    }
    public static void main(String[] x) {
        double bore = 0.068, stroke = 0.054;
        CylinderSpace space = CylinderSpace.flat(bore, new CrankMotion(stroke / 2, 0.084, 0), 8.5);
        Engine e = new Engine(space, passage(0.025, 0.006, 360-5, 540+35), passage(0.024, 0.006, 180-40, 360+5),
            x.length > 3 ? new Duct(List.of(Tube.cone(0.06, 0.023, 0.020, 350), new Tube(0.06, List.of(new Tube.Station(0, 0.018), new Tube.Station(0.02,0.018), new Tube.Station(0.035,0.015), new Tube.Station(0.06,0.02)), 310, 0), Plenum.of(5e-4), new Plate(2.5e-4)), 1) : new Duct(List.of(Tube.cone(0.18, 0.023, 0.020, 325)), 0.9),
            x.length > 3 ? new Duct(List.of(Tube.straight(0.10, 0.023, 600), new Plenum(1.2e-3, 0.08, 500, 20), new Plate(1.5e-4)), 1) : new Duct(List.of(Tube.straight(0.35, 0.025, 600)), 1), new Walls(480, 520, 430),
            new Engine.Firing(Chamber.WEDGE, 0.75 * bore, 1, 1, 1, 0.97), x.length > 2 ? Double.parseDouble(x[2]) : Double.POSITIVE_INFINITY);
        WorkingGases g = WorkingGases.of(Fuel.petrol(), MoistAir.DRY, 1.12);
        double cell = x.length > 0 ? Double.parseDouble(x[0]) : 0.01;
        for (int again = 0; again < 3; again++) for (int rpm : new int[] {2000, 3600, 5000, 6000}) {
            long t0 = CpuTime.now();
            OperatingPoint p = OperatingPoint.run(e, new Setting(rpm * Math.PI / 30, Spark.degrees(25), new Surroundings(101325, 290, 298)), g,
                new Mesh(cell, Math.toRadians(x.length > 1 ? Double.parseDouble(x[1]) : 1)), PlainKernel::new, () -> true).get();
            long t1 = CpuTime.now();
            System.out.printf("%d rpm %.1f ms net %.4f gross %.4f ve %.4f res %.4f exhT %.0f port %.0f %s %s fuelJ %.1f walls %.3f%n", rpm, (t1-t0)*1e-6, p.work().net()/1e5, p.work().gross()/1e5, p.charge().volumetric(), p.charge().residual(), p.heat().exhaustTemperature(), p.heat().portTemperature(), p.effort(), p.balance(), p.heat().fuel(), p.heat().walls()/p.heat().fuel());
        }
    }
}
