package longthrow.workshop.draw;

import java.util.ArrayList;
import java.util.List;

/** Finds room for words beside a spot: where they cover nothing of what is drawn already, or least of it. Pixels, x to the right, y down. */
final class WordRoom {
    /** Mean width of a bold letter to its size, wider than most sans-serif faces have it. */
    private static final double LETTER = 0.6;

    private static final double[] FAR = {8, 14, 22, 32};
    private static final double[][] WAYS = {{1, 0}, {-1, 0}, {1, -1}, {-1, -1}, {1, 1}, {-1, 1}, {0, -1}, {0, 1}};

    /** Clear ground round the words [pixels]. */
    private static final double CLEAR = 3;

    private static final double SAMPLE = 2;

    // What words do harm by, for each sample they cover, other words they meet, or pixel they stand outside.
    private static final double HIDES_WORDS = 1000;
    private static final double HIDES_CURVE = 10;
    private static final double HIDES_AXIS = 0.3;

    /** For each pixel from the spot: words far off seem to belong to another. */
    private static final double ASTRAY = 0.4;

    private final double width;
    private final double height;
    private final double size;
    private final List<double[]> curves = new ArrayList<>();
    private final List<double[]> axes = new ArrayList<>();
    private final List<Box> taken = new ArrayList<>();

    /** Where words stand: their edges. */
    record Box(double left, double top, double right, double bottom) {
        private boolean holds(double[] point) {
            return point[0] > left - CLEAR
                    && point[0] < right + CLEAR
                    && point[1] > top - CLEAR
                    && point[1] < bottom + CLEAR;
        }

        private boolean meets(Box other) {
            return left < other.right + CLEAR
                    && right > other.left - CLEAR
                    && top < other.bottom + CLEAR
                    && bottom > other.top - CLEAR;
        }

        double middle() {
            return (left + right) / 2;
        }

        /** The line they are written on. */
        double base() {
            return bottom - 0.25 * (bottom - top);
        }
    }

    /**
     * Of an empty drawing.
     * @param size of the words
     */
    WordRoom(double width, double height, double size) {
        this.width = width;
        this.height = height;
        this.size = size;
    }

    /** What must not be covered. */
    void curve(double fromX, double fromY, double toX, double toY) {
        sample(curves, fromX, fromY, toX, toY);
    }

    /** What is better not covered. */
    void axis(double fromX, double fromY, double toX, double toY) {
        sample(axes, fromX, fromY, toX, toY);
    }

    private static void sample(List<double[]> into, double fromX, double fromY, double toX, double toY) {
        int steps = 1 + (int) (Math.hypot(toX - fromX, toY - fromY) / SAMPLE);
        for (int k = 0; k <= steps; k++) {
            into.add(new double[] {fromX + (toX - fromX) * k / steps, fromY + (toY - fromY) * k / steps});
        }
    }

    /** Words that stand there already. */
    void words(String words, double left, double base) {
        taken.add(new Box(left, base - 0.8 * size, left + wide(words), base + 0.25 * size));
    }

    double wide(String words) {
        return words.length() * size * LETTER;
    }

    /** Room for words beside a spot; it is taken then. */
    Box beside(String words, double x, double y) {
        Box best = box(words, x, y, WAYS[0], FAR[0]);
        double least = Double.MAX_VALUE;
        for (double far : FAR) {
            for (double[] way : WAYS) {
                Box box = box(words, x, y, way, far);
                double harm = harm(box) + ASTRAY * far;
                if (harm < least) {
                    least = harm;
                    best = box;
                }
            }
        }
        taken.add(best);
        return best;
    }

    private Box box(String words, double x, double y, double[] way, double far) {
        double wide = wide(words);
        double tall = 1.05 * size;
        double left = x + way[0] * far - (way[0] < 0 ? wide : way[0] == 0 ? wide / 2 : 0);
        double top = y + way[1] * far - (way[1] < 0 ? tall : way[1] == 0 ? tall / 2 : 0);
        return new Box(left, top, left + wide, top + tall);
    }

    private double harm(Box box) {
        double outside = Math.max(0, 2 - box.left())
                + Math.max(0, box.right() - width + 2)
                + Math.max(0, 2 - box.top())
                + Math.max(0, box.bottom() - height + 2);
        return outside * HIDES_WORDS
                + HIDES_WORDS * taken.stream().filter(box::meets).count()
                + HIDES_CURVE * curves.stream().filter(box::holds).count()
                + HIDES_AXIS * axes.stream().filter(box::holds).count();
    }
}
