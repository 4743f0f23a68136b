package longthrow.core.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import longthrow.core.formula.Expression;
import longthrow.core.formula.Formula;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The fast twin against the formulas, the sign of the thrust, and the crank found from its true stroke. */
class CrankMotionTest {
    private static final Expression ANGLE = Expression.input("angle");

    /** Invented cranks with offsets up to a third of the throw, either way. */
    static List<CrankMotion> hundredCranks() {
        SplittableRandom random = new SplittableRandom(20_261_125);
        List<CrankMotion> cranks = new ArrayList<>();
        for (int k = 0; k < 100; k++) {
            double radius = random.nextDouble(0.015, 0.05);
            double offset = random.nextDouble(-0.33, 0.33) * radius;
            cranks.add(new CrankMotion(radius, random.nextDouble(2.6, 5) * radius, k == 0 ? 0 : offset));
        }
        return cranks;
    }

    private static SliderCrank formulas(CrankMotion crank) {
        return new SliderCrank(
                Expression.constant(crank.crankRadius()),
                Expression.constant(crank.rodLength()),
                Expression.constant(crank.offset()));
    }

    private static double at(Expression expression) {
        return Formula.of("crank", expression).at();
    }

    /** Tolerance: a few roundings of numbers up to the rod plus crank. */
    @ParameterizedTest
    @MethodSource("hundredCranks")
    void fastTwinIsTheFormula(CrankMotion fast) {
        SliderCrank crank = formulas(fast);
        double close = 4e-16;
        assertThat(fast.stroke()).isCloseTo(at(crank.stroke()), within(close));
        assertThat(fast.topDeadCentre()).isCloseTo(at(crank.topDeadCentre()), within(close));
        assertThat(fast.bottomDeadCentre()).isCloseTo(at(crank.bottomDeadCentre()), within(4 * close));
        Formula travel = Formula.of("travel", crank.travel(ANGLE));
        Formula slope = Formula.of("slope", crank.travelSlope(ANGLE));
        Formula rodAngle = Formula.of("rod angle", crank.rodAngle(ANGLE));
        Formula thrust = Formula.of("thrust", crank.sideThrust(ANGLE, Expression.constant(1)));
        double[] bend = new double[1];
        for (double angle = -7; angle < 14; angle += 0.37) {
            slope.gradient(new double[] {angle}, bend);
            assertThat(fast.travel(angle)).isCloseTo(travel.at(angle), within(close));
            assertThat(fast.travelSlope(angle)).isCloseTo(slope.at(angle), within(close));
            assertThat(fast.travelBend(angle)).isCloseTo(bend[0], within(close));
            assertThat(fast.rodAngle(angle)).isCloseTo(rodAngle.at(angle), within(close));
            assertThat(fast.sideThrust(angle, 1)).isCloseTo(thrust.at(angle), within(close));
        }
    }

    /**
     * The sign convention: the crank pin stands on the positive, anti-thrust side at 90 degrees, and pressure in the expansion stroke presses
     * the piston on the other wall. Hand: radius 27, rod 84, no offset: tan of the rod angle there is 27 / sqrt(84^2 - 27^2).
     */
    @Test
    void expansionPressesThePistonAwayFromTheCrankPin() {
        CrankMotion crank = new CrankMotion(0.027, 0.084, 0);
        double force = 5000;
        assertThat(crank.rodAngle(Math.PI / 2)).isPositive();
        assertThat(crank.sideThrust(Math.PI / 2, force))
                .isCloseTo(-force * 27 / Math.sqrt(84 * 84 - 27 * 27), within(1e-9));
        for (int degrees = 1; degrees < 180; degrees++) {
            assertThat(crank.sideThrust(Math.toRadians(degrees), force)).isNegative();
            assertThat(crank.sideThrust(Math.toRadians(-degrees), force)).isPositive();
        }
    }

    /** What an offset is for: moved towards the anti-thrust side the piston path lies nearer the crank pin in expansion, so the thrust falls. */
    @Test
    void offsetTowardsTheAntiThrustSideEasesTheThrustOfExpansion() {
        double plain = new CrankMotion(0.027, 0.084, 0).sideThrust(Math.PI / 2, 5000);
        double eased = new CrankMotion(0.027, 0.084, 0.001).sideThrust(Math.PI / 2, 5000);
        assertThat(Math.abs(eased)).isLessThan(Math.abs(plain));
        assertThat(new CrankMotion(0.027, 0.084, 0.001).topDeadCentre()).isPositive();
    }

    /** Energy: what the piston force does along the cylinder the rod gives to the crank, so thrust does no work; checked by the torque. */
    @ParameterizedTest
    @MethodSource("hundredCranks")
    void torqueOfRodForceIsForceTimesTravelSlope(CrankMotion crank) {
        for (double angle = 0.1; angle < 6.2; angle += 0.31) {
            double force = 1000;
            double side = -crank.sideThrust(angle, force); // of the rod on the crank pin, across the cylinder
            double pinAcross = crank.crankRadius() * Math.sin(angle);
            double pinAlong = crank.crankRadius() * Math.cos(angle);
            double torque = force * pinAcross + side * pinAlong;
            assertThat(torque).isCloseTo(force * crank.travelSlope(angle), within(1e-11));
        }
    }

    @ParameterizedTest
    @MethodSource("hundredCranks")
    void crankIsFoundFromItsTrueStroke(CrankMotion crank) {
        SliderCrank found = SliderCrank.ofStroke(
                Expression.constant(crank.stroke()),
                Expression.constant(crank.rodLength()),
                Expression.constant(crank.offset()));
        assertThat(at(found.crankRadius())).isCloseTo(crank.crankRadius(), within(1e-15));
    }

    @Test
    void volumeSlopeIsTheDerivativeOfVolume() {
        SliderCrank crank = formulas(new CrankMotion(0.027, 0.084, 0.001));
        Expression bore = Expression.constant(0.068);
        Formula volume = Formula.of("volume", crank.volumeSwept(bore, ANGLE));
        Formula slope = Formula.of("slope", crank.volumeSlope(bore, ANGLE));
        double[] derivative = new double[1];
        for (double angle = -3; angle < 7; angle += 0.5) {
            volume.gradient(new double[] {angle}, derivative);
            assertThat(slope.at(angle)).isCloseTo(derivative[0], within(1e-18));
        }
    }

    @Test
    void aCrankThatCannotTurnIsNotBuilt() {
        assertThatThrownBy(() -> new CrankMotion(0.027, 0.0275, 0.001))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("must exceed 0.028");
        assertThatThrownBy(() -> new CrankMotion(0.027, Double.NaN, 0)).hasMessageContaining("NaN");
        assertThatThrownBy(() -> new CrankMotion(-1, 3, 0)).hasMessageContaining("above 0");
    }
}
