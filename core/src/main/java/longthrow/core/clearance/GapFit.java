package longthrow.core.clearance;

import java.util.List;
import org.hipparchus.special.Gamma;

/**
 * Gaps read at the engine, by soft spring or clay, against the gaps predicted: how far the predicted curve is to be moved to fit the readings, and whether it
 * fits them then. Weighted least squares of each reading against the curve, moved by one length and, where asked, by one angle; agreement by
 * chi-squared at the degrees of freedom left (Pearson's test as in JCGM 100-style adjustment; any textbook of statistics). Readings are taken as independent.
 * @param shift          to be added to the predicted gaps [m]
 * @param shiftDoubt     standard uncertainty of it, by the doubts the readings state [m]
 * @param phase          crank angle by which the readings lie later than the predicted curve [rad]; 0 where it was not fitted
 * @param phaseDoubt     standard uncertainty of it [rad]
 * @param chiSquared     sum of squared residuals, each by its standard uncertainty, after the fit
 * @param freedom        readings less what was fitted; 0 says that nothing is left to disagree
 * @param chance         probability of so much disagreement or more if curve and doubts are right; 1 at no freedom
 * @param residuals      of each reading after the fit, in standard uncertainties, in the order of the readings
 */
public record GapFit(
        double shift,
        double shiftDoubt,
        double phase,
        double phaseDoubt,
        double chiSquared,
        int freedom,
        double chance,
        List<Double> residuals) {
    private static final int ROUNDS = 30;
    /** Step of the numeric slope of the curve [rad]. */
    private static final double STEP = Math.toRadians(0.05);
    /** Where rounds end [rad]. */
    private static final double SETTLED = 1e-7;
    /** As far as a phase is looked for either way [rad]: beyond it another flank would be fitted. A judgement. */
    private static final double FARTHEST = Math.toRadians(15);
    /** Below this share of its greatest value the determinant says that slope and shift cannot be told apart. */
    private static final double SINGULAR = 1e-9;

    /**
     * One reading.
     * @param angle               crank angle [rad]
     * @param gap                 0 or more [m]
     * @param standardUncertainty of the gap, the angle's included [m], &gt; 0
     */
    public record Reading(double angle, double gap, double standardUncertainty) {
        public Reading {
            if (!Double.isFinite(angle) || !(gap >= 0) || Double.isInfinite(gap)) {
                throw new IllegalArgumentException("a gap of " + gap + " m was read at " + angle
                        + " rad; the angle must be finite, the gap 0 or more, in metres");
            }
            if (!(standardUncertainty > 0) || Double.isInfinite(standardUncertainty)) {
                throw new IllegalArgumentException("the standard uncertainty of a gap read is " + standardUncertainty
                        + " m; it must be above 0: no reading is sure");
            }
        }
    }

    /** What is fitted. */
    public enum Freely {
        /** One length is added to the curve. */
        SHIFT(1),
        /** One length is added, and the curve is moved along the crank angle. */
        SHIFT_AND_PHASE(2);

        private final int unknowns;

        Freely(int unknowns) {
            this.unknowns = unknowns;
        }
    }

    public GapFit {
        residuals = List.copyOf(residuals);
    }

    /**
     * Fits.
     * @throws IllegalArgumentException with fewer readings than are needed, with bodies that share no depth, or where the readings lie so that shift and phase
     *     cannot be told apart
     */
    public static GapFit of(Pair pair, List<Reading> readings, Freely freely) {
        int n = readings.size();
        if (n < freely.unknowns) {
            throw new IllegalArgumentException("there are " + n + " readings of the gap; to fit " + freely.unknowns
                    + " figures at least as many are needed, and one more to see whether they agree");
        }
        if (!pair.sharesDepth()) {
            throw new IllegalArgumentException("'" + pair.one().name() + "' and '"
                    + pair.other().name() + "' share no depth along the crank axis, yet a gap was read between them;"
                    + " check the depths entered");
        }
        double phase = 0;
        double shift = 0;
        double ww = 0;
        double ws = 0;
        double ss = 0;
        for (int round = 0; round < ROUNDS; round++) {
            ww = 0;
            ws = 0;
            ss = 0;
            double wr = 0;
            double sr = 0;
            for (Reading reading : readings) {
                double w = 1 / (reading.standardUncertainty * reading.standardUncertainty);
                double at = reading.angle - phase;
                double slope = freely == Freely.SHIFT
                        ? 0
                        : -(predicted(pair, at + STEP) - predicted(pair, at - STEP)) / (2 * STEP);
                double rest = reading.gap - predicted(pair, at);
                ww += w;
                ws += w * slope;
                ss += w * slope * slope;
                wr += w * rest;
                sr += w * slope * rest;
            }
            if (freely == Freely.SHIFT) {
                shift = wr / ww;
                break;
            }
            double determinant = ww * ss - ws * ws;
            if (!(determinant > SINGULAR * ww * ss)) {
                throw new IllegalArgumentException(
                        "the gaps were read where the curve is equally steep all over, so a shift and a phase cannot be told apart;"
                                + " read on both flanks, or fit the shift alone");
            }
            shift = (ss * wr - ws * sr) / determinant;
            double step = (ww * sr - ws * wr) / determinant;
            phase += Math.max(-FARTHEST / 4, Math.min(FARTHEST / 4, step));
            if (Math.abs(phase) > FARTHEST) {
                throw new IllegalArgumentException(
                        "the readings fit no phase within 15 degrees of the predicted curve; check the angles, or fit the shift alone");
            }
            if (Math.abs(step) < SETTLED) {
                break;
            }
        }
        double[] residual = new double[n];
        double chi = 0;
        for (int i = 0; i < n; i++) {
            Reading reading = readings.get(i);
            residual[i] = (reading.gap - predicted(pair, reading.angle - phase) - shift) / reading.standardUncertainty;
            chi += residual[i] * residual[i];
        }
        int freedom = n - freely.unknowns;
        double determinant = ww * ss - ws * ws;
        return new GapFit(
                shift,
                freely == Freely.SHIFT ? Math.sqrt(1 / ww) : Math.sqrt(ss / determinant),
                phase,
                freely == Freely.SHIFT ? 0 : Math.sqrt(ww / determinant),
                chi,
                freedom,
                freedom == 0 ? 1 : Gamma.regularizedGammaQ(freedom / 2.0, chi / 2),
                java.util.Arrays.stream(residual).boxed().toList());
    }

    private static double predicted(Pair pair, double angle) {
        return Sweep.at(pair, angle).orElseThrow().gap();
    }
}
