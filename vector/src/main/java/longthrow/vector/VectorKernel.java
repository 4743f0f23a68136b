package longthrow.vector;

import jdk.incubator.vector.DoubleVector;
import jdk.incubator.vector.VectorSpecies;
import longthrow.core.pipe.Cells;
import longthrow.core.pipe.FlowKernel;
import longthrow.core.pipe.PlainKernel;

/**
 * The sums of {@link PlainKernel}, operation by operation, for as many cells at once as the processor takes. Short methods, each one loop: longer ones the compiler leaves with objects for vectors.
 * Loops run on to the next whole vector; what lies there has no volume and is told by {@link Cells} to be of no account.
 */
public final class VectorKernel implements FlowKernel {
    private static final VectorSpecies<Double> S = DoubleVector.SPECIES_PREFERRED;
    private static final int V = S.length();

    @Override
    public String name() {
        return "vector, " + V + " at once";
    }

    // ---- what follows from the state

    @Override
    public void derive(Cells c) {
        derive(c, c.mass, c.momentum, c.energy, c.burned);
    }

    private static void derive(Cells c, double[] mass, double[] momentum, double[] energy, double[] burned) {
        DoubleVector a0 = DoubleVector.broadcast(S, c.aFresh);
        DoubleVector a1 = DoubleVector.broadcast(S, c.aMore);
        DoubleVector b0 = DoubleVector.broadcast(S, 2 * c.bFresh);
        DoubleVector b1 = DoubleVector.broadcast(S, 2 * c.bMore);
        DoubleVector r0 = DoubleVector.broadcast(S, c.gasFresh);
        DoubleVector r1 = DoubleVector.broadcast(S, c.gasMore);
        DoubleVector half = DoubleVector.broadcast(S, 0.5);
        DoubleVector one = DoubleVector.broadcast(S, 1);
        DoubleVector refused = DoubleVector.broadcast(S, PlainKernel.REFUSED);
        int end = c.end();
        for (int i = Cells.FIRST; i < end; i += V) {
            DoubleVector m = DoubleVector.fromArray(S, mass, i);
            DoubleVector v = one.div(m);
            DoubleVector u = DoubleVector.fromArray(S, momentum, i).mul(v);
            DoubleVector y = DoubleVector.fromArray(S, burned, i).mul(v);
            DoubleVector e =
                    DoubleVector.fromArray(S, energy, i).mul(v).sub(half.mul(u).mul(u));
            DoubleVector a = a0.add(a1.mul(y));
            DoubleVector cv = a.mul(a).add(b0.add(b1.mul(y)).mul(e)).sqrt();
            DoubleVector sum = a.add(cv);
            DoubleVector inverse = one.div(sum.mul(cv));
            DoubleVector t = e.add(e).mul(cv.mul(inverse));
            DoubleVector r = r0.add(r1.mul(y));
            DoubleVector p = m.mul(r).mul(t);
            DoubleVector stiffness = p.add(p.mul(r.mul(sum.mul(inverse))));
            v.intoArray(c.volume, i);
            u.intoArray(c.velocity, i);
            y.intoArray(c.share, i);
            cv.intoArray(c.heatCapacity, i);
            p.intoArray(c.pressure, i);
            stiffness.intoArray(c.stiffness, i);
            DoubleVector taken = stiffness.sub(stiffness.abs()).mul(refused);
            u.abs().add(stiffness.mul(v).add(taken).sqrt()).intoArray(c.speed, i);
        }
    }

    @Override
    public double fastest(Cells cells) {
        return PLAIN.fastest(cells);
    }

    private static final PlainKernel PLAIN = new PlainKernel();

    // ---- at the faces, half a step on

    @Override
    public void reconstruct(Cells c, double dt) {
        double[] density = c.scratch(0);
        double[] velocity = c.scratch(1);
        double[] pressure = c.scratch(2);
        double[] share = c.scratch(3);
        slopes(c.end(), c.mass, c.velocity, c.pressure, c.share, density, velocity, pressure, share);
        halfStep(c, 0.5 * dt / c.step, c.mass, density, velocity, pressure, share);
    }

    private static void slopes(
            int end,
            double[] density,
            double[] velocity,
            double[] pressure,
            double[] share,
            double[] qSlope,
            double[] uSlope,
            double[] pSlope,
            double[] ySlope) {
        DoubleVector half = DoubleVector.broadcast(S, 0.5);
        for (int i = Cells.FIRST; i < end; i += V) {
            DoubleVector q = DoubleVector.fromArray(S, density, i);
            DoubleVector qBack = q.sub(DoubleVector.fromArray(S, density, i - 1));
            DoubleVector qFore = DoubleVector.fromArray(S, density, i + 1).sub(q);
            DoubleVector qSum = qBack.add(qFore);
            DoubleVector qOver = qSum.abs().sub(qBack.sub(qFore).abs());
            DoubleVector qMost = half.mul(qOver.add(qOver.abs()));
            DoubleVector qHalf = half.mul(qSum);
            half.mul(qHalf.add(qMost).abs().sub(qHalf.sub(qMost).abs())).intoArray(qSlope, i);
            DoubleVector u = DoubleVector.fromArray(S, velocity, i);
            DoubleVector uBack = u.sub(DoubleVector.fromArray(S, velocity, i - 1));
            DoubleVector uFore = DoubleVector.fromArray(S, velocity, i + 1).sub(u);
            DoubleVector uSum = uBack.add(uFore);
            DoubleVector uOver = uSum.abs().sub(uBack.sub(uFore).abs());
            DoubleVector uMost = half.mul(uOver.add(uOver.abs()));
            DoubleVector uHalf = half.mul(uSum);
            half.mul(uHalf.add(uMost).abs().sub(uHalf.sub(uMost).abs())).intoArray(uSlope, i);
            DoubleVector p = DoubleVector.fromArray(S, pressure, i);
            DoubleVector pBack = p.sub(DoubleVector.fromArray(S, pressure, i - 1));
            DoubleVector pFore = DoubleVector.fromArray(S, pressure, i + 1).sub(p);
            DoubleVector pSum = pBack.add(pFore);
            DoubleVector pOver = pSum.abs().sub(pBack.sub(pFore).abs());
            DoubleVector pMost = half.mul(pOver.add(pOver.abs()));
            DoubleVector pHalf = half.mul(pSum);
            half.mul(pHalf.add(pMost).abs().sub(pHalf.sub(pMost).abs())).intoArray(pSlope, i);
            DoubleVector y = DoubleVector.fromArray(S, share, i);
            DoubleVector yBack = y.sub(DoubleVector.fromArray(S, share, i - 1));
            DoubleVector yFore = DoubleVector.fromArray(S, share, i + 1).sub(y);
            DoubleVector ySum = yBack.add(yFore);
            DoubleVector yOver = ySum.abs().sub(yBack.sub(yFore).abs());
            DoubleVector yMost = half.mul(yOver.add(yOver.abs()));
            DoubleVector yHalf = half.mul(ySum);
            half.mul(yHalf.add(yMost).abs().sub(yHalf.sub(yMost).abs())).intoArray(ySlope, i);
        }
    }

    private static void halfStep(
            Cells c, double time, double[] mass, double[] qSlope, double[] uSlope, double[] pSlope, double[] ySlope) {
        DoubleVector step = DoubleVector.broadcast(S, time);
        DoubleVector half = DoubleVector.broadcast(S, 0.5);
        double[] velocity = c.velocity;
        int end = c.end();
        for (int i = Cells.FIRST; i < end; i += V) {
            DoubleVector q = DoubleVector.fromArray(S, mass, i);
            DoubleVector u = DoubleVector.fromArray(S, velocity, i);
            DoubleVector qRise = DoubleVector.fromArray(S, qSlope, i);
            DoubleVector uRise = DoubleVector.fromArray(S, uSlope, i);
            DoubleVector pRise = DoubleVector.fromArray(S, pSlope, i);
            DoubleVector yRise = DoubleVector.fromArray(S, ySlope, i);
            DoubleVector spread =
                    uRise.add(DoubleVector.fromArray(S, c.widening, i).mul(u));
            DoubleVector qMid = q.sub(step.mul(u.mul(qRise).add(q.mul(spread))));
            DoubleVector qEdge = half.mul(qRise);
            qMid.intoArray(c.midDensity, i);
            qMid.add(qEdge).intoArray(c.leftDensity, i);
            qMid.sub(qEdge).intoArray(c.rightDensity, i - 1);
            DoubleVector pPush =
                    u.mul(pRise).add(DoubleVector.fromArray(S, c.stiffness, i).mul(spread));
            DoubleVector pMid = DoubleVector.fromArray(S, c.pressure, i).sub(step.mul(pPush));
            DoubleVector pEdge = half.mul(pRise);
            pMid.intoArray(c.midPressure, i);
            pMid.add(pEdge).intoArray(c.leftPressure, i);
            pMid.sub(pEdge).intoArray(c.rightPressure, i - 1);
            DoubleVector uPush = u.mul(uRise).add(pRise.mul(DoubleVector.fromArray(S, c.volume, i)));
            DoubleVector uMid = u.sub(step.mul(uPush));
            DoubleVector uEdge = half.mul(uRise);
            uMid.intoArray(c.midVelocity, i);
            uMid.add(uEdge).intoArray(c.leftVelocity, i);
            uMid.sub(uEdge).intoArray(c.rightVelocity, i - 1);
            DoubleVector yMid = DoubleVector.fromArray(S, c.share, i).sub(step.mul(u.mul(yRise)));
            DoubleVector yEdge = half.mul(yRise);
            yMid.intoArray(c.midShare, i);
            yMid.add(yEdge).intoArray(c.leftShare, i);
            yMid.sub(yEdge).intoArray(c.rightShare, i - 1);
        }
    }

    @Override
    public void flatten(Cells cells) {
        PLAIN.flatten(cells);
    }

    // ---- through the faces

    @Override
    public void flow(Cells c) {
        double[] soundLeft = c.scratch(0);
        double[] soundRight = c.scratch(1);
        double[] energyLeft = c.scratch(2);
        double[] energyRight = c.scratch(3);
        sides(c, soundLeft, soundRight, energyLeft, energyRight);
        waves(c, soundLeft, soundRight, energyLeft, energyRight);
    }

    /** Speed of sound, and what is in a volume, on both sides. */
    private static void sides(
            Cells c, double[] soundLeft, double[] soundRight, double[] energyLeft, double[] energyRight) {
        DoubleVector a0 = DoubleVector.broadcast(S, c.aFresh);
        DoubleVector a1 = DoubleVector.broadcast(S, c.aMore);
        DoubleVector b0 = DoubleVector.broadcast(S, c.bFresh);
        DoubleVector b1 = DoubleVector.broadcast(S, c.bMore);
        DoubleVector r0 = DoubleVector.broadcast(S, c.gasFresh);
        DoubleVector r1 = DoubleVector.broadcast(S, c.gasMore);
        DoubleVector half = DoubleVector.broadcast(S, 0.5);
        DoubleVector one = DoubleVector.broadcast(S, 1);
        int end = c.end() - 1;
        for (int f = Cells.FIRST; f < end; f += V) {
            DoubleVector ql = DoubleVector.fromArray(S, c.leftDensity, f);
            DoubleVector ul = DoubleVector.fromArray(S, c.leftVelocity, f);
            DoubleVector yl = DoubleVector.fromArray(S, c.leftShare, f);
            DoubleVector qr = DoubleVector.fromArray(S, c.rightDensity, f);
            DoubleVector ur = DoubleVector.fromArray(S, c.rightVelocity, f);
            DoubleVector yr = DoubleVector.fromArray(S, c.rightShare, f);
            DoubleVector gl = r0.add(r1.mul(yl));
            DoubleVector gr = r0.add(r1.mul(yr));
            DoubleVector nl = ql.mul(gl);
            DoubleVector nr = qr.mul(gr);
            DoubleVector n = one.div(nl.mul(nr));
            DoubleVector tl = DoubleVector.fromArray(S, c.leftPressure, f).mul(nr.mul(n));
            DoubleVector tr = DoubleVector.fromArray(S, c.rightPressure, f).mul(nl.mul(n));
            DoubleVector al = a0.add(a1.mul(yl));
            DoubleVector ar = a0.add(a1.mul(yr));
            DoubleVector bl = b0.add(b1.mul(yl)).mul(tl);
            DoubleVector br = b0.add(b1.mul(yr)).mul(tr);
            ql.mul(tl.mul(al.add(half.mul(bl))).add(half.mul(ul).mul(ul))).intoArray(energyLeft, f);
            qr.mul(tr.mul(ar.add(half.mul(br))).add(half.mul(ur).mul(ur))).intoArray(energyRight, f);
            DoubleVector hl = al.add(bl);
            DoubleVector hr = ar.add(br);
            DoubleVector h = one.div(hl.mul(hr));
            DoubleVector rtl = gl.mul(tl);
            DoubleVector rtr = gr.mul(tr);
            rtl.add(rtl.mul(gl.mul(hr.mul(h)))).sqrt().intoArray(soundLeft, f);
            rtr.add(rtr.mul(gr.mul(hl.mul(h)))).sqrt().intoArray(soundRight, f);
        }
    }

    private static void waves(
            Cells c, double[] soundLeft, double[] soundRight, double[] energyLeft, double[] energyRight) {
        DoubleVector half = DoubleVector.broadcast(S, 0.5);
        DoubleVector one = DoubleVector.broadcast(S, 1);
        int end = c.end() - 1;
        for (int f = Cells.FIRST; f < end; f += V) {
            DoubleVector ql = DoubleVector.fromArray(S, c.leftDensity, f);
            DoubleVector ul = DoubleVector.fromArray(S, c.leftVelocity, f);
            DoubleVector pl = DoubleVector.fromArray(S, c.leftPressure, f);
            DoubleVector qr = DoubleVector.fromArray(S, c.rightDensity, f);
            DoubleVector ur = DoubleVector.fromArray(S, c.rightVelocity, f);
            DoubleVector pr = DoubleVector.fromArray(S, c.rightPressure, f);
            DoubleVector cl = DoubleVector.fromArray(S, soundLeft, f);
            DoubleVector cr = DoubleVector.fromArray(S, soundRight, f);
            DoubleVector el = DoubleVector.fromArray(S, energyLeft, f);
            DoubleVector er = DoubleVector.fromArray(S, energyRight, f);
            DoubleVector back = ul.sub(cl);
            DoubleVector other = ur.sub(cr);
            DoubleVector sl = half.mul(back.add(other).sub(back.sub(other).abs()));
            DoubleVector fore = ul.add(cl);
            other = ur.add(cr);
            DoubleVector sr = half.mul(fore.add(other).add(fore.sub(other).abs()));
            DoubleVector dl = sl.sub(ul);
            DoubleVector dr = sr.sub(ur);
            DoubleVector ml = ql.mul(dl);
            DoubleVector mr = qr.mul(dr);
            DoubleVector ss = pr.sub(pl).add(ml.mul(ul)).sub(mr.mul(ur)).div(ml.sub(mr));
            DoubleVector wl = sl.sub(ss);
            DoubleVector wr = sr.sub(ss);
            DoubleVector w = one.div(wl.mul(wr));
            DoubleVector il = wr.mul(w);
            DoubleVector ir = wl.mul(w);
            DoubleVector work = pl.add(ml.mul(ss.sub(ul))).mul(ss);
            DoubleVector xl = ml.mul(il);
            DoubleVector xr = mr.mul(ir);
            DoubleVector fl = dl.mul(el).sub(pl.mul(ul)).add(work).mul(il);
            DoubleVector fr = dr.mul(er).sub(pr.mul(ur)).add(work).mul(ir);
            DoubleVector kl = half.mul(sl.sub(sl.abs()));
            DoubleVector km = half.mul(ss.sub(ss.abs()));
            DoubleVector kr = half.mul(sr.sub(sr.abs()));
            DoubleVector jl = ql.mul(ul);
            DoubleVector jr = qr.mul(ur);
            DoubleVector mass =
                    jl.add(kl.mul(xl.sub(ql))).add(km.mul(xr.sub(xl))).add(kr.mul(qr.sub(xr)));
            mass.intoArray(c.massFlux, f);
            jl.mul(ul)
                    .add(pl)
                    .add(kl.mul(xl.mul(ss).sub(jl)))
                    .add(km.mul(ss).mul(xr.sub(xl)))
                    .add(kr.mul(jr.sub(xr.mul(ss))))
                    .intoArray(c.momentumFlux, f);
            ul.mul(el.add(pl))
                    .add(kl.mul(fl.sub(el)))
                    .add(km.mul(fr.sub(fl)))
                    .add(kr.mul(er.sub(fr)))
                    .intoArray(c.energyFlux, f);
            DoubleVector size = mass.abs();
            half.mul(mass.add(size))
                    .mul(DoubleVector.fromArray(S, c.leftShare, f))
                    .add(half.mul(mass.sub(size)).mul(DoubleVector.fromArray(S, c.rightShare, f)))
                    .intoArray(c.burnedFlux, f);
        }
    }

    // ---- a step forward

    @Override
    public void advance(Cells c, double dt) {
        momentum(c, dt, c.momentum, c.nextMomentum, c.burned, c.nextBurned);
        energy(c, dt, c.energy, c.nextEnergy, c.mass, c.nextMass);
    }

    private static void momentum(
            Cells c, double dt, double[] momentum, double[] nextMomentum, double[] burned, double[] nextBurned) {
        DoubleVector step = DoubleVector.broadcast(S, dt);
        DoubleVector perStep = DoubleVector.broadcast(S, dt / c.step);
        int end = c.end();
        for (int i = Cells.FIRST; i < end; i += V) {
            DoubleVector right = DoubleVector.fromArray(S, c.faceArea, i);
            DoubleVector left = DoubleVector.fromArray(S, c.faceArea, i - 1);
            DoubleVector share = perStep.mul(DoubleVector.fromArray(S, c.inverseArea, i));
            DoubleVector u = DoubleVector.fromArray(S, c.midVelocity, i);
            DoubleVector stream =
                    step.mul(DoubleVector.fromArray(S, c.midDensity, i)).mul(u.abs());
            DoubleVector braking =
                    stream.mul(DoubleVector.fromArray(S, c.friction, i)).mul(u);
            DoubleVector net = DoubleVector.fromArray(S, c.burnedFlux, i)
                    .mul(right)
                    .sub(DoubleVector.fromArray(S, c.burnedFlux, i - 1).mul(left));
            DoubleVector.fromArray(S, burned, i).sub(share.mul(net)).intoArray(nextBurned, i);
            DoubleVector push = DoubleVector.fromArray(S, c.momentumFlux, i)
                    .mul(right)
                    .sub(DoubleVector.fromArray(S, c.momentumFlux, i - 1).mul(left))
                    .sub(DoubleVector.fromArray(S, c.midPressure, i).mul(right.sub(left)));
            DoubleVector.fromArray(S, momentum, i)
                    .sub(share.mul(push))
                    .sub(braking)
                    .intoArray(nextMomentum, i);
        }
    }

    private static void energy(
            Cells c, double dt, double[] energy, double[] nextEnergy, double[] mass, double[] nextMass) {
        DoubleVector step = DoubleVector.broadcast(S, dt);
        DoubleVector perStep = DoubleVector.broadcast(S, dt / c.step);
        DoubleVector r0 = DoubleVector.broadcast(S, c.gasFresh);
        DoubleVector r1 = DoubleVector.broadcast(S, c.gasMore);
        int end = c.end();
        for (int i = Cells.FIRST; i < end; i += V) {
            DoubleVector right = DoubleVector.fromArray(S, c.faceArea, i);
            DoubleVector left = DoubleVector.fromArray(S, c.faceArea, i - 1);
            DoubleVector share = perStep.mul(DoubleVector.fromArray(S, c.inverseArea, i));
            DoubleVector q = DoubleVector.fromArray(S, c.midDensity, i);
            DoubleVector r = r0.add(r1.mul(DoubleVector.fromArray(S, c.midShare, i)));
            DoubleVector stream =
                    step.mul(q).mul(DoubleVector.fromArray(S, c.midVelocity, i).abs());
            DoubleVector warmth = DoubleVector.fromArray(S, c.heatCapacity, i)
                    .add(r)
                    .mul(DoubleVector.fromArray(S, c.wall, i)
                            .sub(DoubleVector.fromArray(S, c.midPressure, i).div(q.mul(r))));
            DoubleVector heating =
                    stream.mul(DoubleVector.fromArray(S, c.heat, i)).mul(warmth);
            DoubleVector carried = DoubleVector.fromArray(S, c.massFlux, i)
                    .mul(right)
                    .sub(DoubleVector.fromArray(S, c.massFlux, i - 1).mul(left));
            DoubleVector.fromArray(S, mass, i).sub(share.mul(carried)).intoArray(nextMass, i);
            DoubleVector net = DoubleVector.fromArray(S, c.energyFlux, i)
                    .mul(right)
                    .sub(DoubleVector.fromArray(S, c.energyFlux, i - 1).mul(left));
            DoubleVector.fromArray(S, energy, i)
                    .sub(share.mul(net))
                    .add(heating)
                    .intoArray(nextEnergy, i);
        }
    }
}
