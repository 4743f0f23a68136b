package longthrow.core.pipe;

/** Straight lines between the values of a printed table. */
final class Tabled {
    private Tabled() {}

    /** By place, from 0 for the first; beyond the ends it stays. */
    static double at(double place, double[] values) {
        double within = Math.min(values.length - 1.0, Math.max(0, place));
        int left = Math.min(values.length - 2, (int) within);
        return values[left] + (within - left) * (values[left + 1] - values[left]);
    }

    /** By argument, rising. */
    static double at(double x, double[] arguments, double[] values) {
        int left = 0;
        while (left < arguments.length - 2 && x > arguments[left + 1]) {
            left++;
        }
        double place = (x - arguments[left]) / (arguments[left + 1] - arguments[left]);
        return at(left + Math.min(1, Math.max(0, place)), values);
    }
}
