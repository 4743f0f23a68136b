package longthrow.core.answer;

import java.util.List;
import longthrow.core.measurement.Measured;
import longthrow.core.quantity.Dimension;
import longthrow.core.term.Part;

/**
 * How one valve moves, by its lift table or by the figures of its lobe.
 * @param valve   intake or exhaust
 * @param from    place of the table in the build file; {@link #LOBE_FIGURES} for the figures
 * @param assumed what is taken for granted of the curve, in words; empty when it was read
 * @param figures of the whole motion
 * @param lifts   events at the lifts that were asked for
 * @param why     what cannot be said and why; empty when all is said
 */
public record ValveMovement(
        Part valve, String from, String assumed, List<Figure> figures, List<AtLift> lifts, String why) {
    /** Instead of a place: duration at the checking lift, lobe centre and full lift. */
    public static final String LOBE_FIGURES = "lobe figures";

    public ValveMovement {
        figures = List.copyOf(figures);
        lifts = List.copyOf(lifts);
    }

    /** By what a figure of the motion is counted. */
    public enum Per {
        /** As it is. */
        NOTHING("", 0),
        /** First derivative by the crank angle. */
        ANGLE(" per degree", 1),
        /** Second derivative by the crank angle. */
        ANGLE_SQUARED(" per degree squared", 2);

        private final String words;
        private final int power;

        Per(String words, int power) {
            this.words = words;
            this.power = power;
        }

        /** Behind a figure that is printed per degree. */
        public String words() {
            return words;
        }

        /** Behind the SI unit. */
        public String si() {
            return power == 0 ? "" : power == 1 ? "/rad" : "/rad²";
        }

        /** From per radian to per degree. */
        public double toDegrees() {
            return Math.pow(Math.toRadians(1), power);
        }
    }

    /**
     * One figure of the motion.
     * @param key       stable
     * @param label     for people
     * @param dimension of the value times the angle it is counted by
     * @param figure    coherent SI, per radian
     */
    public record Figure(String key, String label, Dimension dimension, Per per, Measured figure) {
        /** Symbol of the SI unit. */
        public String unit() {
            return dimension.siSymbol() + per.si();
        }
    }

    /**
     * Events at one lift of the valve.
     * @param lift    asked for [m]
     * @param written as it was asked for
     * @param figures what is known, of opening, closing, duration and lobe centre
     * @param why     what is not, and why; empty when all is said
     */
    public record AtLift(double lift, String written, List<Figure> figures, String why) {
        public AtLift {
            figures = List.copyOf(figures);
        }
    }
}
