package longthrow.core.answer;

import java.util.List;
import java.util.Locale;
import longthrow.core.measurement.Measured;
import longthrow.core.quantity.Dimension;

/**
 * Where the shake goes.
 * @param speed     of the crank it is told at [rad/s]; NaN when none is known, then forces and path are missing
 * @param figures   masses, factor, forces, movement
 * @param trade     what a counterweight makes of the once-a-turn force, factor by factor
 * @param path      of the tip of the force over one turn, first and second order together
 * @param drilling  holes that would bring the factor to what the trade uses; empty when none are called for or something is missing
 * @param pistons   what other pistons on offer would make of the factor
 * @param missing   what would have to be read for the rest
 * @param sentences what it comes to, in plain words
 */
public record Shaking(
        double speed,
        List<Figure> figures,
        List<Trade> trade,
        List<Point> path,
        List<Holes> drilling,
        List<OtherPiston> pistons,
        List<Rung.Missing> missing,
        List<String> sentences) {
    public Shaking {
        figures = List.copyOf(figures);
        trade = List.copyOf(trade);
        path = List.copyOf(path);
        drilling = List.copyOf(drilling);
        pistons = List.copyOf(pistons);
        missing = List.copyOf(missing);
        sentences = List.copyOf(sentences);
    }

    /** One figure: stable key, label, and what it is. */
    public record Figure(String key, String label, Dimension dimension, Measured figure) {}

    /**
     * A balance factor and what it leaves.
     * @param factor share of the reciprocating mass
     * @param along  amplitude along the cylinder [N]
     * @param across amplitude across it [N]
     */
    public record Trade(double factor, Measured along, Measured across) {}

    /**
     * The force at one angle.
     * @param angle  after top dead centre [rad]
     * @param along  the cylinder, towards the head positive [N]
     * @param across it, towards the crank pin at +90 degrees positive [N]
     */
    public record Point(double angle, double along, double across) {}

    /**
     * Holes in the counterweight, parallel to the crankshaft, half of them each side of its middle.
     * @param aim      what it is drilled for
     * @param count    of holes
     * @param diameter of the drill [m]
     * @param radius   of their centres about the crankshaft [m]
     * @param depth    to the full diameter [m]
     * @param wall     left beyond the tip of the drill [m]
     * @param result   balance factor after it
     */
    public record Holes(
            Aim aim, int count, double diameter, double radius, Measured depth, Measured wall, Measured result) {}

    /** What holes are drilled for. */
    public enum Aim {
        /** No more than brings the factor surely inside what the trade uses. */
        INSIDE("the least that is surely inside"),
        /** The middle of that. */
        MIDDLE("the middle");

        private final String label;

        Aim(String label) {
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
     * A piston on offer.
     * @param code   of the catalogue
     * @param name   for people
     * @param factor balance factor with it, the crank left as it is
     */
    public record OtherPiston(String code, String name, Measured factor) {}
}
