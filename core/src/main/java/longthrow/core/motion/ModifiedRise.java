package longthrow.core.motion;

import java.util.List;

/**
 * A rise whose acceleration is sewn together from pieces of sines and constants; the second half mirrors the first. Each piece is integrated in
 * closed form from the end of the last, and the whole is scaled to rise by 1.
 */
final class ModifiedRise {
    private static final double EIGHTH = 0.125;
    /** Acceleration sin(4 pi u) up to 1/8, then 1 up to 3/8, then falling as the sine to the middle. */
    static final ModifiedRise TRAPEZOID = new ModifiedRise(List.of(
            new Piece(0, EIGHTH, 4 * Math.PI, 0),
            new Piece(EIGHTH, 3 * EIGHTH, 0, Math.PI / 2),
            new Piece(3 * EIGHTH, 0.5, 4 * Math.PI, Math.PI / 2)));
    /** Acceleration sin(4 pi u) up to 1/8, then a sine three times slower that comes to nothing in the middle. */
    static final ModifiedRise SINE = new ModifiedRise(
            List.of(new Piece(0, EIGHTH, 4 * Math.PI, 0), new Piece(EIGHTH, 0.5, 4 * Math.PI / 3, Math.PI / 2)));

    private final List<Piece> pieces;
    private final double[] velocity;
    private final double[] lift;
    private final double scale;

    /** Acceleration sin(frequency (u - from) + phase). */
    private record Piece(double from, double to, double frequency, double phase) {
        double angle(double u) {
            return frequency * (u - from) + phase;
        }

        double jerk(double u) {
            return frequency * Math.cos(angle(u));
        }

        double acceleration(double u) {
            return Math.sin(angle(u));
        }

        /** Gained since the start of the piece. */
        double velocity(double u) {
            return frequency == 0 ? (u - from) * Math.sin(phase) : (Math.cos(phase) - Math.cos(angle(u))) / frequency;
        }

        /** Gained since the start of the piece by its own acceleration alone. */
        double lift(double u) {
            double x = u - from;
            return frequency == 0
                    ? x * x / 2 * Math.sin(phase)
                    : (x * Math.cos(phase) - (Math.sin(angle(u)) - Math.sin(phase)) / frequency) / frequency;
        }
    }

    private ModifiedRise(List<Piece> pieces) {
        this.pieces = pieces;
        int n = pieces.size();
        this.velocity = new double[n + 1];
        this.lift = new double[n + 1];
        for (int k = 0; k < n; k++) {
            Piece piece = pieces.get(k);
            velocity[k + 1] = velocity[k] + piece.velocity(piece.to);
            lift[k + 1] = lift[k] + velocity[k] * (piece.to - piece.from) + piece.lift(piece.to);
        }
        this.scale = 0.5 / lift[n];
    }

    double at(double u, int order) {
        if (u > 0.5) {
            double mirrored = at(1 - u, order);
            return switch (order) {
                case 0 -> 1 - mirrored;
                case 1, 3 -> mirrored;
                default -> -mirrored;
            };
        }
        int k = 0;
        while (k < pieces.size() - 1 && u > pieces.get(k).to) {
            k++;
        }
        Piece piece = pieces.get(k);
        return scale
                * switch (order) {
                    case 0 -> lift[k] + velocity[k] * (u - piece.from) + piece.lift(u);
                    case 1 -> velocity[k] + piece.velocity(u);
                    case 2 -> piece.acceleration(u);
                    case 3 -> piece.jerk(u);
                    default -> throw new IllegalArgumentException("order is " + order + "; it must be 0 to 3");
                };
    }
}
