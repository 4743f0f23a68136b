package longthrow.core.life;

import longthrow.core.quantity.Require;

/**
 * Reynolds' equation for a plain bearing under steady load, solved on a grid: what {@link RaimondiBoyd} tabulates, for any length. The film starts and tears
 * where it will, pressure never below nothing (Christopherson 1941): each point is relaxed and, where that would pull, set to nothing; so
 * both edges of the film are found with the pressure. Constant viscosity, true round parts, no groove, open ends. Sommerfeld numbers come within 1 %
 * of a grid twice as fine for lengths of a quarter of the diameter and more.
 *
 * @param eccentricity share of the clearance, 0 to below 1
 * @param sommerfeld   (r/c)2 mu N / P that goes with it
 * @param attitude     angle between load and smallest film [rad]
 */
public record ReynoldsFilm(double eccentricity, double sommerfeld, double attitude) {
    /** Round the bearing; by symmetry only one half of the length. */
    private static final int ROUND = 240;

    private static final int ALONG = 24;

    /** Successive over-relaxation; 2 less a few grid steps is about the quickest for a rectangle. */
    private static final double RELAXATION = 1.93;

    private static final double TOLERANCE = 1e-8;
    private static final int MOST_SWEEPS = 20_000;

    /**
     * Solves it.
     * @param ratio length over diameter, above 0
     */
    public static ReynoldsFilm solve(double eccentricity, double ratio) {
        Require.within("eccentricity", eccentricity, 1e-3, 0.98);
        Require.positive("length over diameter", ratio);
        double[] pressure = new double[ROUND * (ALONG + 1)]; // pressure[i * (ALONG + 1) + j], j = ALONG at the open end
        double dx = 2 * Math.PI / ROUND;
        double dz = 1.0 / ALONG;
        double along = 1 / (ratio * ratio) / (dz * dz);
        double change = 1;
        double largest = 1;
        int sweep = 0;
        while (change > TOLERANCE * largest) {
            if (++sweep > MOST_SWEEPS) {
                throw new IllegalStateException(
                        "the film at eccentricity " + eccentricity + " and length over diameter " + ratio
                                + " did not settle in " + MOST_SWEEPS + " sweeps; last change " + change);
            }
            change = 0;
            largest = 0;
            for (int i = 0; i < ROUND; i++) {
                double angle = i * dx; // from the widest gap on
                double before = cube(eccentricity, angle - dx / 2) / (dx * dx);
                double after = cube(eccentricity, angle + dx / 2) / (dx * dx);
                double across = cube(eccentricity, angle) * along;
                double wedge = -eccentricity * Math.sin(angle);
                double middle = before + after + 2 * across;
                int row = i * (ALONG + 1);
                int previous = (i + ROUND - 1) % ROUND * (ALONG + 1); // round the bearing there is no edge
                int next = (i + 1) % ROUND * (ALONG + 1);
                for (int j = 0; j < ALONG; j++) {
                    double inner = pressure[row + (j == 0 ? 1 : j - 1)];
                    double sum = before * pressure[previous + j]
                            + after * pressure[next + j]
                            + across * (inner + pressure[row + j + 1])
                            - wedge;
                    double old = pressure[row + j];
                    double relaxed = Math.max(0, old + RELAXATION * (sum / middle - old));
                    pressure[row + j] = relaxed;
                    change = Math.max(change, Math.abs(relaxed - old));
                    largest = Math.max(largest, relaxed);
                }
            }
        }
        return of(eccentricity, pressure, dx, dz);
    }

    private static double cube(double eccentricity, double angle) {
        double film = 1 + eccentricity * Math.cos(angle);
        return film * film * film;
    }

    /** Pressure is in units of 6 mu w (r/c)2; load is its integral, and P = W / (2 r L) gives S = 1 / (6 pi w) with w = the mean over half a length, by quarter turns. */
    private static ReynoldsFilm of(double eccentricity, double[] pressure, double dx, double dz) {
        double line = 0; // along the line of centres, towards the smallest film
        double square = 0;
        for (int i = 0; i < ROUND; i++) {
            double sum = 0.5 * pressure[i * (ALONG + 1)];
            for (int j = 1; j < ALONG; j++) {
                sum += pressure[i * (ALONG + 1) + j];
            }
            line -= sum * dz * dx * Math.cos(i * dx);
            square += sum * dz * dx * Math.sin(i * dx);
        }
        double load = Math.hypot(line, square);
        return new ReynoldsFilm(eccentricity, 1 / (6 * Math.PI * load), Math.atan2(square, line));
    }
}
