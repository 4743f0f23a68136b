package longthrow.core.power;
import java.util.*;
import java.util.stream.*;
import longthrow.core.cycle.*;
import longthrow.core.measurement.*;
import longthrow.core.pipe.*;
public class TruthTry {
  static final Mesh M = new Mesh(0.02, Math.toRadians(1));
  static Curve.Point at(Figures f, double rpm) { return Curve.at(f, rpm*Math.PI/30, M, PlainKernel::new, () -> true).get(); }
  public static void main(String[] x) {
    boolean bands = x.length > 0;
    List<Double> errs = new ArrayList<>();
    for (PublishedEngine e : PublishedEngine.makers()) {
      if (e.torque().isEmpty()) continue;
      Figures f = e.figures();
      double tr = e.torqueSpeed().getAsDouble(), pr = e.powerSpeed().getAsDouble();
      Curve.Point a = at(f, tr), b = at(f, pr);
      double et = a.torque() / e.torque().getAsDouble() - 1, ep = b.power() / 1000 / e.power().getAsDouble() - 1;
      errs.add(Math.abs(et));
      double vd = f.number(Needed.BORE)*f.number(Needed.BORE)*Math.PI/4*f.number(Needed.STROKE);
      String s = String.format("%s %-45.45s T %.2f/%.2f %+.1f%%  P %.2f/%.2f %+.1f%%  bmep %.2f ve %.2f %.2f res %.3f fmep %.2f %.2f pump %.2f %.2f settled %s %s spark %s oct %.0f", e.id(), e.name(), a.torque(), e.torque().getAsDouble(), et*100, b.power()/1000, e.power().getAsDouble(), ep*100, a.torque()*4*Math.PI/vd/1e5, a.point().charge().volumetric(), b.point().charge().volumetric(), a.point().charge().residual(), a.friction()/1e5, b.friction()/1e5, a.point().work().pumping()/1e5, b.point().work().pumping()/1e5, a.point().effort().settled(), b.point().effort().settled(), a.point().fire().map(q -> String.format("%.0f", Math.toDegrees(q.spark()))).orElse("none"), a.point().fire().map(q->q.octaneWanted()).orElse(0.0));
      System.out.println(s);
      if (bands) {
        List<Lean.Variant> v = Lean.variants(f);
        Map<Lean.Variant, Double> found = new IdentityHashMap<>();
        Map<Lean.Variant, Double> got = v.parallelStream().collect(Collectors.toConcurrentMap(q -> q, q -> at(q.figures(), tr).torque()));
        Measured m = Lean.doubt(f, v, got::get);
        System.out.printf("    band ±%.1f%% (95%%), covers %s; ", 100*1.96*m.standardUncertainty()/m.value(), Math.abs(e.torque().getAsDouble()-m.value()) < 1.96*m.standardUncertainty());
        Lean.moves(v, got::get).entrySet().stream().sorted(Comparator.comparingDouble(q -> -Math.abs(q.getValue()))).limit(9).forEach(q -> System.out.printf("%s %+.1f%% ", q.getKey(), 100*q.getValue()/m.value()));
        System.out.println();
      }
    }
    Collections.sort(errs); System.out.println("median " + errs.get(errs.size()/2) + " within 10%: " + errs.stream().filter(q -> q <= .1).count() + " of " + errs.size());
    PublishedEngine e = PublishedEngine.makers().stream().filter(q -> q.id().equals("E11")).findFirst().get();
    for (int rpm = 2500; rpm <= 7500; rpm += 500) { var p = at(e.figures(), rpm); System.out.printf("E11 %d: %.2f Nm %.2f kW ve %.3f%n", rpm, p.torque(), p.power()/1000, p.point().charge().volumetric()); }
  }
}
