package longthrow.core.measure;

/** How far the readings are from each other, whitened. */
final class Disagreement {
    final double[] residual;
    final double squares;

    Disagreement(double[] residual) {
        this.residual = residual;
        this.squares = dot(residual, residual);
    }

    /** What is left when a reading is moved. */
    Disagreement moved(double[] column, double move) {
        double[] after = residual.clone();
        for (int k = 0; k < after.length; k++) {
            after[k] += move * column[k];
        }
        return new Disagreement(after);
    }

    static double dot(double[] a, double[] b) {
        double sum = 0;
        for (int i = 0; i < a.length; i++) {
            sum += a[i] * b[i];
        }
        return sum;
    }
}
