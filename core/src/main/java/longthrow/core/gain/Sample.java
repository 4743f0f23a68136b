package longthrow.core.gain;

/**
 * What repeated figures come to. Two passes: differences are taken from the mean before they are squared, so figures that agree in their first six digits lose none.
 * @param count                 how many
 * @param mean                  arithmetic
 * @param standardDeviation     with count - 1; NaN for fewer than two
 * @param firstAutocorrelation  of neighbours in order; NaN for fewer than two, or where all are alike
 */
public record Sample(int count, double mean, double standardDeviation, double firstAutocorrelation) {
    /** Of figures in order, one or more. */
    public static Sample of(double... x) {
        int n = x.length;
        if (n == 0) {
            throw new IllegalArgumentException("no figures; give one or more");
        }
        double mean = mean(x);
        double squares = 0;
        double products = 0;
        for (int i = 0; i < n; i++) {
            double d = x[i] - mean;
            squares += d * d;
            products += i == 0 ? 0 : d * (x[i - 1] - mean);
        }
        double deviation = n < 2 ? Double.NaN : Math.sqrt(squares / (n - 1));
        return new Sample(n, mean, deviation, n < 2 || squares == 0 ? Double.NaN : products / squares);
    }

    /** Mean, and then the mean of what is left beside it. */
    static double mean(double... x) {
        double sum = 0;
        for (double v : x) {
            sum += v;
        }
        double first = sum / x.length;
        double left = 0;
        for (double v : x) {
            left += v - first;
        }
        return first + left / x.length;
    }

    /** Sum of squared differences from the mean. */
    double sumOfSquares() {
        return count < 2 ? 0 : standardDeviation * standardDeviation * (count - 1);
    }

    double variance() {
        return standardDeviation * standardDeviation;
    }
}
