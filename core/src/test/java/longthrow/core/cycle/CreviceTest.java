package longthrow.core.cycle;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import longthrow.core.motion.CrankMotion;
import org.junit.jupiter.api.Test;

/** Gas in crevices: nothing is lost or made, and what is held near the peak is as published. */
class CreviceTest {
    private static final CylinderSpace SPACE = CylinderSpace.flat(0.070, new CrankMotion(0.026, 0.086, 0), 8.5);
    private static final Walls WALLS = Walls.of(480);
    private static final double SPEED = 2000 * InventedEngine.RPM;

    /** A closed cycle that burns from 20 before to 40 degrees after top centre, heat of the given coefficient. */
    private static Cylinder run(double share, double coefficient, double to) {
        Cylinder cylinder = new Cylinder(SPACE, InventedEngine.GASES.charge(), WALLS, Crevice.of(share, SPACE, WALLS));
        double from = -0.75 * Math.PI;
        double step = Math.toRadians(0.5);
        BurnCurve curve = BurnCurve.fromSpark(Math.toRadians(-25), Math.toRadians(22), Math.toRadians(25));
        cylinder.fill(SPACE.volume(from), 1e5, 350, 0.07);
        boolean lit = false;
        int steps = (int) Math.round((to - from) / step);
        for (int k = 1; k <= steps; k++) {
            double end = from + k * step;
            if (!lit && end > curve.start()) {
                cylinder.spark(0);
                lit = true;
            }
            double dt = step / SPEED;
            cylinder.half(SPACE.volume(end - 0.5 * step), dt, curve.share(end - 0.5 * step));
            cylinder.whole(SPACE.volume(end), dt, curve.share(end), 0, 0, 0, coefficient);
        }
        return cylinder;
    }

    /** M. Namazian and J. B. Heywood, SAE 820088, as in Heywood (1988), 8.6, from memory: 5 to 10 % of the charge is in crevices near the peak. */
    @Test
    void holdAsMuchNearThePeakAsPublished() {
        Cylinder peak = run(Crevice.SHARE.value(), 500, Math.toRadians(15));
        double inside = peak.inCrevice() / (peak.mass() + peak.inCrevice());
        assertThat(inside).isBetween(0.05, 0.10);
    }

    @Test
    void massAndEnergyAreKept() {
        double to = 0.75 * Math.PI;
        Cylinder first = run(0.0027, 600, -0.75 * Math.PI);
        Cylinder last = run(0.0027, 600, to);
        double mass = first.mass() + first.inCrevice();
        assertThat(last.mass() + last.inCrevice()).isCloseTo(mass, within(1e-12 * mass));
        double energy = first.energy() + first.energyInCrevice();
        double spent = last.work() + last.heat() + last.unreleased();
        assertThat(last.energy() + last.energyInCrevice() + spent).isCloseTo(energy, within(1e-9 * Math.abs(energy)));
    }

    @Test
    void lowerThePeakAndCostWork() {
        Cylinder without = run(0, 500, 0.75 * Math.PI);
        Cylinder with = run(0.002, 500, 0.75 * Math.PI);
        assertThat(with.work()).isBetween(0.94 * without.work(), 0.99 * without.work());
        assertThat(run(0.002, 500, Math.toRadians(15)).pressure())
                .isLessThan(0.97 * run(0, 500, Math.toRadians(15)).pressure());
    }

    /** All that burns is burned at the end: what came back into hot gas is no charge any more. */
    @Test
    void whatComesBackBurns() {
        Cylinder end = run(0.002, 500, 0.6 * Math.PI);
        assertThat(end.freshMass()).isLessThan(0.002 * end.mass());
        assertThat(end.inCrevice()).isLessThan(0.02 * end.mass());
    }
}
