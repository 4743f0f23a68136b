package longthrow.core.cycle;
import longthrow.core.motion.*;
public class Try3 { public static void main(String[] x) {
 for (double free : new double[]{1,2,3,6}) for (double d : new double[]{0.003,0.006,0.010}) for (int rpm : new int[]{2500,3600,6000}) {
  double vd = Math.PI/4*.07*.07*.052;
  Crankcase c = new Crankcase(Math.PI/4*.07*.07, new CrankMotion(.026,.086,0), free*vd, 370, Crankcase.usualConductance(free*vd));
  Crankcase.Around a = new Crankcase.Around(1e5, 310, 2e-5, 400);
  double A=Math.PI/4*d*d*0.6;
  System.out.printf("free %.0f d %.0f rpm %d hole %.4f bar  check %.4f bar (mean %.3f)%n", free, d*1000, rpm, CrankcasePumping.of(c, Crankcase.Breather.hole(A), a, rpm*Math.PI/30).meanEffective()/1e5, CrankcasePumping.of(c, Crankcase.Breather.checkValve(A, 300), a, rpm*Math.PI/30).meanEffective()/1e5, CrankcasePumping.of(c, Crankcase.Breather.checkValve(A, 300), a, rpm*Math.PI/30).meanPressure()/1e5);
 }
 Crankcase c = new Crankcase(Math.PI/4*.07*.07, new CrankMotion(.026,.086,0), 3*2e-4, 370, Crankcase.usualConductance(6e-4));
 long t=System.nanoTime(); var b = CrankcasePumping.bounds(c, false, new Crankcase.Around(1e5, 310, 2e-5, 400), 3600*Math.PI/30); System.out.println(b + " " + (System.nanoTime()-t)*1e-6 + " ms");
}}
