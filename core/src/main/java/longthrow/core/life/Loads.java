package longthrow.core.life;

import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleFunction;
import longthrow.core.motion.CrankMotion;
import longthrow.core.quantity.Require;

/**
 * Forces through two turns at steady speed. Newton's laws for piston and rod as rigid bodies; friction and the weight of the parts are left
 * out. The rod counts as its two masses and a couple: forces and their turning effect are those of the true rod. Norton, Design of Machinery,
 * chapter 13 (there without the couple); worked out here with it.
 *
 * @param crank motion of the piston
 * @param parts masses
 * @param bore  [m], &gt; 0
 * @param gas   on the piston
 * @param speed of the crank [rad/s], &ge; 0
 */
public record Loads(CrankMotion crank, MovingParts parts, double bore, GasTrace gas, double speed) {
    public Loads {
        Require.positive("bore [m]", bore);
        Require.notNegative("speed [rad/s]", speed);
    }

    /** At one angle after firing top dead centre [rad]. */
    public Load at(double angle) {
        double square = speed * speed;
        double sine = Math.sin(angle);
        double cosine = Math.cos(angle);
        double rodAngle = crank.rodAngle(angle);
        double lean = Math.sin(rodAngle);
        double upright = Math.cos(rodAngle);
        double pistonUp = -crank.travelBend(angle) * square; // acceleration towards the head
        double crankpinUp = -crank.crankRadius() * cosine * square;
        double crankpinOut = -crank.crankRadius() * sine * square;
        double gasDown = gas.gauge(angle) * Math.PI / 4 * bore * bore;

        double pinAlong = -(gasDown + parts.piston() * pistonUp);
        double massless = gasDown + parts.reciprocating() * pistonUp; // what the rod without mass has to push up
        double wall = massless * lean / upright - couple(angle, lean, upright); // of the wall on the piston
        double upOnRod = massless + parts.bigEnd() * crankpinUp;
        double outOnRod = parts.bigEnd() * crankpinOut - wall;

        double atSmallEnd = -(pinAlong * upright - wall * lean);
        double smallMass = parts.smallEnd() * pistonUp;
        double shank = atSmallEnd + smallMass * upright;
        double squeezeAtBearing = upOnRod * upright - outOnRod * lean;
        double unbalanced = parts.crank() * square;
        return new Load(
                angle,
                pinAlong,
                wall,
                -wall,
                atSmallEnd,
                shank,
                Math.max(0, -squeezeAtBearing),
                -upOnRod,
                -outOnRod,
                -upOnRod + unbalanced * cosine,
                -outOnRod + unbalanced * sine,
                crank.crankRadius() * (-cosine * outOnRod + sine * upOnRod));
    }

    /**
     * Side force for the couple that the two masses make too much: the rod turns by minus its angle, so its angular acceleration is minus that
     * of the rod angle, (r cos)2 lean / (l upright)3 - r sin / (l upright), times speed squared.
     */
    private double couple(double angle, double lean, double upright) {
        double rise = crank.rodLength() * upright;
        double slope = crank.crankRadius() * Math.cos(angle) / rise;
        double bend = (slope * slope * crank.rodLength() * lean - crank.crankRadius() * Math.sin(angle)) / rise;
        return parts.inertiaExcess() * -bend * speed * speed / rise;
    }

    /**
     * Through two turns.
     * @param count of angles, evenly spaced from 0, 4 at least
     */
    public List<Load> sweep(int count) {
        Require.within("angles of a sweep", count, 4, 1_000_000);
        List<Load> loads = new ArrayList<>(count);
        for (int k = 0; k < count; k++) {
            loads.add(at(GasTrace.CYCLE * k / count));
        }
        return List.copyOf(loads);
    }

    /** The bolts' share of {@link Load#capPull}: the crankpin itself swings the cap round. */
    public double boltPull(Load load, double capMass) {
        return Math.max(0, load.capPull() - capMass * crank.crankRadius() * speed * speed);
    }

    /**
     * Largest bending moment in the middle parts of a rod as it whips, with its mass spread evenly along it [N m]: at a distance of l/sqrt 3 from the
     * small end, m w2 r l / (9 sqrt 3). Khurmi and Gupta, Theory of Machines, chapter 16, or Shigley and Uicker; from memory. It acts with the
     * crank square to the rod, when the axial load is not at its largest; adding both at their largest is on the safe side.
     * @param rodMass whole rod [kg]
     */
    public double whip(double rodMass) {
        return rodMass * speed * speed * crank.crankRadius() * crank.rodLength() / (9 * Math.sqrt(3));
    }

    /**
     * Least and most of one force over several cases swept alike, for fatigue.
     * @param least most negative
     * @param most  most positive
     */
    public record Range(double least, double most) {
        /** Over all angles of all cases. */
        public static Range of(List<List<Load>> cases, ToDoubleFunction<Load> force) {
            double least = Double.POSITIVE_INFINITY;
            double most = Double.NEGATIVE_INFINITY;
            for (List<Load> loads : cases) {
                for (Load load : loads) {
                    least = Math.min(least, force.applyAsDouble(load));
                    most = Math.max(most, force.applyAsDouble(load));
                }
            }
            return new Range(least, most);
        }

        /** Half the swing. */
        public double alternating() {
            return (most - least) / 2;
        }

        /** Midway. */
        public double mean() {
            return (most + least) / 2;
        }
    }
}
