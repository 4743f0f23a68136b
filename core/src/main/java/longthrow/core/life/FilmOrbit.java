package longthrow.core.life;

import java.util.ArrayList;
import java.util.List;
import longthrow.core.quantity.Require;

/**
 * Path of the crankpin in the big end under loads that swing, and the thinnest film on it. Mobility method: Booker, Trans. ASME J. Basic Eng. 87 (1965) 537 and
 * J. Lubr. Tech. 93 (1971) 168; short bearing, film torn where it would pull, M = (1-x)^5/2 / (pi (L/D)2) along the load and -4 y (1-x)^3/2 / (pi2 (L/D)2) across, x and y
 * the eccentricity along and across it; from memory, held against the pressure itself in the tests: within 6 % under the load, up to 13 % too slow far beside it. The journal moves as the load presses it, and is carried round at the mean
 * speed of journal and bearing. Holds up to lengths of about the diameter, without grooves and holes, oil everywhere, stiff round parts, one viscosity: real
 * films are thinner, and splash leaves part of the bearing dry. It ranks engines and speeds; it promises no micrometre.
 *
 * @param radius    of the crankpin [m], &gt; 0
 * @param length    of the bearing [m], &gt; 0
 * @param clearance radial [m], &gt; 0
 * @param viscosity dynamic [Pa s], &gt; 0
 */
public record FilmOrbit(double radius, double length, double clearance, double viscosity) {
    public FilmOrbit {
        Require.positive("radius of the crankpin [m]", radius);
        Require.positive("length of the big end bearing [m]", length);
        Require.positive("radial clearance [m]", clearance);
        Require.positive("viscosity [Pa s]", viscosity);
    }

    /** Nearest to the wall it may come in the sum: a film below a hundredth of a per cent of the clearance is metal on metal. */
    private static final double TOUCHING = 1e-4;

    /** Largest part of the film left that one step may use up. */
    private static final double STEP_SHARE = 0.05;

    /** Cycles after which it must repeat. */
    private static final int MOST_CYCLES = 40;

    /** Largest difference from one cycle to the next, in clearances. */
    private static final double REPEATS = 1e-4;

    /**
     * What acts at one angle.
     * @param along  load on the journal, along the cylinder [N]
     * @param across the same, across [N]
     * @param spin   mean of the speeds of journal and bearing [rad/s]
     */
    public record Drive(double along, double across, double spin) {}

    /**
     * Place of the journal.
     * @param angle  of the crank [rad]
     * @param along  eccentricity along the cylinder, in clearances
     * @param across eccentricity across, in clearances
     */
    public record Place(double angle, double along, double across) {
        public double eccentricity() {
            return Math.hypot(along, across);
        }
    }

    /**
     * One cycle, once it repeats.
     * @param places   at every drive
     * @param thinnest film over the cycle [m]
     * @param angle    where that is [rad]
     */
    public record Cycle(List<Place> places, double thinnest, double angle) {
        public Cycle {
            places = List.copyOf(places);
        }
    }

    /**
     * Velocity of the journal in clearances a second, for an eccentricity and a load; carried round included.
     */
    double[] velocity(double along, double across, Drive drive) {
        double force = Math.hypot(drive.along, drive.across);
        double vAlong = -drive.spin * across;
        double vAcross = drive.spin * along;
        if (force > 0) {
            double unitAlong = drive.along / force;
            double unitAcross = drive.across / force;
            double x = Math.min(1 - TOUCHING, along * unitAlong + across * unitAcross);
            double y = across * unitAlong - along * unitAcross;
            double root = Math.sqrt(1 - x);
            double ratio = 2 * radius / length; // D/L
            double scale = force
                    * clearance
                    * clearance
                    / (radius * radius)
                    / (viscosity * length * 2 * radius)
                    * ratio
                    * ratio;
            double towards = scale * (1 - x) * (1 - x) * root / Math.PI;
            double aside = -scale * 4 * y * (1 - x) * root / (Math.PI * Math.PI);
            vAlong += towards * unitAlong - aside * unitAcross;
            vAcross += towards * unitAcross + aside * unitAlong;
        }
        return new double[] {vAlong, vAcross};
    }

    /**
     * The drive of a rod's big end. The film pushes the crankpin as the rod does, so what presses the pin against the film is the opposite: pushed down by
     * gas, the rod nears the pin's top. Spin is the mean of crank and rod.
     * @param sums  what the loads were swept by
     * @param loads swept over two turns
     */
    public static List<Drive> drives(Loads sums, List<Load> loads) {
        List<Drive> drives = new ArrayList<>(loads.size());
        double radius = sums.crank().crankRadius();
        for (Load load : loads) {
            double rise = sums.crank().rodLength() * Math.cos(sums.crank().rodAngle(load.angle()));
            double swing = -sums.speed() * radius * Math.cos(load.angle()) / rise; // the rod turns against its angle
            drives.add(new Drive(-load.crankpinAlong(), -load.crankpinAcross(), (sums.speed() + swing) / 2));
        }
        return drives;
    }

    /**
     * Runs the cycle until it repeats.
     * @param drives evenly spaced over one cycle
     * @param period of the cycle in time [s], &gt; 0
     * @throws IllegalStateException when it has not settled after many cycles
     */
    public Cycle settle(List<Drive> drives, double period) {
        Require.positive("period of the cycle [s]", period);
        double along = 0;
        double across = 0;
        double step = period / drives.size();
        for (int cycle = 0; cycle < MOST_CYCLES; cycle++) {
            List<Place> places = new ArrayList<>(drives.size());
            double startAlong = along;
            double startAcross = across;
            double worst = 0;
            double worstAngle = 0;
            for (int k = 0; k < drives.size(); k++) {
                double angle = GasTrace.CYCLE * k / drives.size();
                places.add(new Place(angle, along, across));
                if (Math.hypot(along, across) > worst) {
                    worst = Math.hypot(along, across);
                    worstAngle = angle;
                }
                double[] next = march(along, across, drives.get(k), drives.get((k + 1) % drives.size()), step);
                along = next[0];
                across = next[1];
            }
            if (cycle > 0 && Math.hypot(along - startAlong, across - startAcross) < REPEATS) {
                return new Cycle(places, clearance * (1 - worst), worstAngle);
            }
        }
        throw new IllegalStateException(
                "the crankpin's path did not repeat within " + MOST_CYCLES + " cycles; with viscosity " + viscosity
                        + " Pa s and clearance " + clearance + " m it has no steady path");
    }

    /** From one drive to the next, by midpoint steps as short as the film asks for. */
    private double[] march(double along, double across, Drive from, Drive to, double time) {
        double x = along;
        double y = across;
        double done = 0;
        while (done < time) {
            Drive now = between(from, to, done / time);
            double[] v = velocity(x, y, now);
            double left = 1 - Math.hypot(x, y);
            double speed = Math.hypot(v[0], v[1]);
            double step = Math.min(time - done, speed > 0 ? STEP_SHARE * Math.max(left, TOUCHING) / speed : time);
            double[] middle =
                    velocity(x + v[0] * step / 2, y + v[1] * step / 2, between(from, to, (done + step / 2) / time));
            x += middle[0] * step;
            y += middle[1] * step;
            double eccentricity = Math.hypot(x, y);
            if (eccentricity > 1 - TOUCHING) {
                x *= (1 - TOUCHING) / eccentricity;
                y *= (1 - TOUCHING) / eccentricity;
            }
            done = time - done - step < 1e-12 * time ? time : done + step;
        }
        return new double[] {x, y};
    }

    private static Drive between(Drive from, Drive to, double share) {
        return new Drive(
                from.along + share * (to.along - from.along),
                from.across + share * (to.across - from.across),
                from.spin + share * (to.spin - from.spin));
    }
}
