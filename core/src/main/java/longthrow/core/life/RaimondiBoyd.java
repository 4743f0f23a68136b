package longthrow.core.life;

import java.util.List;
import java.util.function.ToDoubleFunction;
import longthrow.core.quantity.Require;

/**
 * The full journal bearing by the table of Raimondi and Boyd, Trans. ASLE 1 (1958) 159-209, as handbooks print it; from memory, its three shorter
 * lengths held against {@link ReynoldsFilm} in the tests. Between rows: load and friction straight on logarithmic paper by log of the film left; between lengths:
 * their own interpolation (Shigley eq. (12-16)).
 */
public final class RaimondiBoyd {
    private RaimondiBoyd() {}

    /**
     * One row.
     * @param film       smallest film over radial clearance, 1 less eccentricity
     * @param attitude   angle between load and smallest film [degrees]
     * @param sommerfeld (r/c)2 mu N / P
     * @param friction   (r/c) f
     */
    private record Row(double film, double attitude, double sommerfeld, double friction) {}

    /** Columns of the table. */
    public enum Length {
        /** Without end leakage. */
        ENDLESS(
                Double.POSITIVE_INFINITY,
                List.of(
                        new Row(0.9, 69.10, 0.240, 4.80),
                        new Row(0.8, 67.26, 0.123, 2.57),
                        new Row(0.6, 61.94, 0.0626, 1.52),
                        new Row(0.4, 54.31, 0.0389, 1.20),
                        new Row(0.2, 42.22, 0.021, 0.961),
                        new Row(0.1, 31.62, 0.0115, 0.756))),
        ONE(
                1,
                List.of(
                        new Row(0.9, 79.5, 1.33, 26.4),
                        new Row(0.8, 74.02, 0.631, 12.8),
                        new Row(0.6, 63.10, 0.264, 5.79),
                        new Row(0.4, 50.58, 0.121, 3.22),
                        new Row(0.2, 36.24, 0.0446, 1.70),
                        new Row(0.1, 26.45, 0.0188, 1.05))),
        HALF(
                0.5,
                List.of(
                        new Row(0.9, 81.62, 4.31, 85.6),
                        new Row(0.8, 74.94, 2.03, 40.9),
                        new Row(0.6, 61.45, 0.779, 17.0),
                        new Row(0.4, 48.14, 0.319, 8.10),
                        new Row(0.2, 33.31, 0.0923, 3.26),
                        new Row(0.1, 23.66, 0.0313, 1.60))),
        QUARTER(
                0.25,
                List.of(
                        new Row(0.9, 82.31, 16.2, 322),
                        new Row(0.8, 75.18, 7.57, 153),
                        new Row(0.6, 60.86, 2.83, 61.1),
                        new Row(0.4, 46.72, 1.07, 26.7),
                        new Row(0.2, 31.04, 0.261, 8.80),
                        new Row(0.1, 21.85, 0.0736, 3.50)));

        /** One less an eccentricity of 0.9 is not quite 0.1 in binary. */
        private static final double ROUNDING = 0x1p-40;

        private final double ratio;

        @SuppressWarnings("ImmutableEnumChecker") // List.of is immutable, which its type does not say
        private final List<Row> rows;

        Length(double ratio, List<Row> rows) {
            this.ratio = ratio;
            this.rows = rows;
        }

        /** Length over diameter. */
        public double ratio() {
            return ratio;
        }

        /** Row and share of the way to the next, by the logarithm of the film. */
        private double place(double film) {
            Require.within("smallest film over clearance", Math.rint(film / ROUNDING) * ROUNDING, 0.1, 0.9);
            int k = 0;
            while (k < rows.size() - 2 && film < rows.get(k + 1).film) {
                k++;
            }
            return k + Math.log(film / rows.get(k).film) / Math.log(rows.get(k + 1).film / rows.get(k).film);
        }

        private double between(double place, ToDoubleFunction<Row> column) {
            int k = (int) Math.min(Math.floor(place), rows.size() - 2.0);
            double share = place - k;
            double before = Math.log(column.applyAsDouble(rows.get(k)));
            double after = Math.log(column.applyAsDouble(rows.get(k + 1)));
            return Math.exp(before + share * (after - before));
        }

        /** Sommerfeld number at a smallest film from 0.1 to 0.9 of the clearance. */
        public double sommerfeld(double film) {
            return between(place(film), Row::sommerfeld);
        }

        /**
         * Attitude at that film [rad].
         * @param film 0.1 to 0.9
         */
        public double attitude(double film) {
            return Math.toRadians(between(place(film), Row::attitude));
        }

        /**
         * (r/c) f at that film.
         * @param film 0.1 to 0.9
         */
        public double friction(double film) {
            return between(place(film), Row::friction);
        }

        /**
         * Smallest film over clearance at a Sommerfeld number within the table.
         * @throws IllegalArgumentException below the last row, where metal is near, and above the first
         */
        public double film(double sommerfeld) {
            Require.within(
                    "Sommerfeld number", sommerfeld, rows.get(rows.size() - 1).sommerfeld, rows.get(0).sommerfeld);
            int k = 0;
            while (k < rows.size() - 2 && sommerfeld < rows.get(k + 1).sommerfeld) {
                k++;
            }
            Row before = rows.get(k);
            Row after = rows.get(k + 1);
            double share = Math.log(sommerfeld / before.sommerfeld) / Math.log(after.sommerfeld / before.sommerfeld);
            return before.film * Math.pow(after.film / before.film, share);
        }
    }

    /**
     * Sommerfeld number for any length of a quarter of the diameter and more, at a smallest film.
     * @param ratio length over diameter, 0.25 and up
     * @param film  over the clearance, 0.1 to 0.9
     */
    public static double sommerfeld(double ratio, double film) {
        Require.within("length over diameter", ratio, 0.25, Double.MAX_VALUE);
        double one = 1 - ratio;
        double two = 1 - 2 * ratio;
        double four = 1 - 4 * ratio;
        double sum = -one * two * four / 8 * Length.ENDLESS.sommerfeld(film)
                + two * four / 3 * Length.ONE.sommerfeld(film)
                - one * four / 4 * Length.HALF.sommerfeld(film)
                + one * two / 24 * Length.QUARTER.sommerfeld(film);
        return sum / (ratio * ratio * ratio);
    }
}
