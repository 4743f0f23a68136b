package longthrow.core.answer;

import java.util.List;
import java.util.Locale;
import longthrow.core.quantity.Dimension;

/**
 * What the runs of one sheet were measured to make, over what is predicted. Nothing predicted is moved by it.
 * @param sheet     name of what was tried
 * @param invented  whether the sheet says that it is made up
 * @param standard  that its figures were corrected to; empty where they are as read
 * @param place     where torque was measured, in words
 * @param sentences which air each stands in, and what else may stand between them
 * @param held      each setup, the baseline first; each run where there is no mean
 */
public record Overlay(
        String sheet, boolean invented, String standard, String place, List<String> sentences, List<Held> held) {
    public Overlay {
        sentences = List.copyOf(sentences);
        held = List.copyOf(held);
    }

    /** What the two beside each other come to. */
    public enum Verdict {
        /** What differs is within what both may be wrong by. */
        AGREES("agrees"),
        TOO_HIGH("predicted too high"),
        TOO_LOW("predicted too low"),
        /** On the whole within what both may be wrong by, and beyond it at speeds. */
        IN_PARTS("agrees on the whole, not at every speed"),
        CANNOT_BE_TOLD("cannot be told");

        private final String label;

        Verdict(String label) {
            this.label = label;
        }

        public String key() {
            return name().toLowerCase(Locale.ROOT);
        }

        public String label() {
            return label;
        }
    }

    /**
     * One setup, or one run.
     * @param name      of it
     * @param of        what of it is held against the prediction: the mean of so many runs, their peaks
     * @param figure    torque, or power where only peaks of power were written down
     * @param verdict   on the whole
     * @param ratio     measured over predicted, over the speeds that both tell; NaN where there are none
     * @param half      95 % half-width by both doubts, as a share of the predicted; NaN where one is not known
     * @param within    speeds at which both lie within their doubts together
     * @param compared  speeds that both tell
     * @param points    by rising speed; a peak stands alone
     * @param sentences what it comes to, in plain words
     */
    public record Held(
            String name,
            String of,
            Dimension figure,
            Verdict verdict,
            double ratio,
            double half,
            int within,
            int compared,
            List<At> points,
            List<String> sentences) {
        public Held {
            points = List.copyOf(points);
            sentences = List.copyOf(sentences);
        }

        /** Whether it is a curve; else it is a peak alone. */
        public boolean isCurve() {
            return points.stream().anyMatch(p -> !Double.isNaN(p.speed()));
        }
    }

    /**
     * One speed.
     * @param speed         of the crank [rad/s]; NaN for a peak of which it was not written down
     * @param measured      in the prediction's air as far as it could be brought there [N m, or W]
     * @param measuredHalf  95 % half-width; NaN where it is not known
     * @param predicted     NaN where none is told
     * @param predictedHalf 95 % half-width; NaN where it is not known
     * @param why           none is told, in words; empty where it is
     */
    public record At(
            double speed, double measured, double measuredHalf, double predicted, double predictedHalf, String why) {
        public boolean isCompared() {
            return !Double.isNaN(predicted);
        }

        /** Predicted less measured, as a share of the measured. */
        public double difference() {
            return predicted / measured - 1;
        }

        /** 95 % half-width of it by both doubts, which know nothing of each other. */
        public double half() {
            return Math.hypot(measuredHalf, predictedHalf) / measured;
        }

        /** Whether both lie within their doubts together. Where that of the measured is not known, whether it lies within the prediction's. */
        public boolean isWithin() {
            double both = Double.isNaN(measuredHalf) ? predictedHalf : Math.hypot(measuredHalf, predictedHalf);
            return Math.abs(predicted - measured) <= both;
        }
    }
}
