package longthrow.core.reduce;

import java.util.Arrays;
import java.util.Random;

/** Pulls of which the truth is known: torque by speed, an inertia, what the pickup and the engine scatter. Seeded. */
final class Simulated {
    static final double LOW = 210; // rad/s: 2000 rpm
    static final double HIGH = 840; // 8000 rpm

    /** Shapes of torque over 0 to 1 of the speeds: a hill, a hill with a shoulder, falling, two hills, flat. */
    enum Shape {
        HILL,
        NARROW,
        FALLING,
        WAVES,
        FLAT;

        double torque(double speed) {
            double u = (speed - LOW) / (HIGH - LOW);
            return switch (this) {
                case HILL -> 12 - 16 * (u - 0.45) * (u - 0.45);
                case NARROW -> 10 + 3 * Math.exp(-0.5 * Math.pow((u - 0.55) / 0.12, 2)) - 2 * u;
                case FALLING -> 13 - 4 * u;
                case WAVES -> 11 + Math.sin(3 * Math.PI * u) - 2 * u * u;
                case FLAT -> 10;
            };
        }
    }

    /** What scatters: the pickup [rad/s], the engine's torque [N m] lingering 20 ms, and a brake's reading [N m], own and lingering 0.15 s. */
    record Scatter(double pickup, double engine, double own, double lingering) {
        static final Scatter[] ALL = {
            new Scatter(0.8, 0, 0.3, 0), new Scatter(0.8, 0.4, 0.3, 0.3), new Scatter(0.4, 1.2, 0.3, 0.6)
        };
    }

    final double[] time;
    final double[] speed;
    final double[] reading; // of a brake [N m]

    private Simulated(double[] time, double[] speed, double[] reading) {
        this.time = time;
        this.speed = speed;
        this.reading = reading;
    }

    int rows() {
        return time.length;
    }

    /** A pull from LOW to HIGH of an engine on an inertia [kg m2], so many rows a second. */
    static Simulated pull(Shape shape, Scatter scatter, double inertia, double rate, Random random) {
        double dt = 1 / rate;
        int most = 100_000;
        double[][] columns = new double[3][most];
        double keptEngine = Math.exp(-dt / 0.02);
        double keptBrake = Math.exp(-dt / 0.15);
        double engine = 0;
        double brake = 0;
        double speed = LOW;
        int n = 0;
        while (speed < HIGH && n < most) {
            double torque = shape.torque(speed);
            engine = keptEngine * engine
                    + Math.sqrt(1 - keptEngine * keptEngine) * scatter.engine * random.nextGaussian();
            brake = keptBrake * brake
                    + Math.sqrt(1 - keptBrake * keptBrake) * scatter.lingering * random.nextGaussian();
            columns[0][n] = n * dt;
            columns[1][n] = speed + scatter.pickup * random.nextGaussian();
            columns[2][n] = torque + scatter.own * random.nextGaussian() + brake;
            n++;
            speed += (torque + engine) / inertia * dt;
        }
        return new Simulated(Arrays.copyOf(columns[0], n), Arrays.copyOf(columns[1], n), Arrays.copyOf(columns[2], n));
    }

    /** Brought down to points, as a run is. */
    LocalFit drawn(boolean slope, double[] places) {
        Thinned t = Thinned.of(0, rows(), time, speed, reading);
        return slope
                ? LocalFit.ofSlopes(t.column(0), t.column(1), t.column(1), places)
                : LocalFit.ofValues(t.column(1), t.column(2), places);
    }
}
