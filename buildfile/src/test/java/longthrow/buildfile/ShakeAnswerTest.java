package longthrow.buildfile;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.OptionalDouble;
import longthrow.core.answer.Shaking;
import longthrow.core.build.Build;
import longthrow.core.catalogue.Catalogue;
import longthrow.core.shake.Shake;
import org.junit.jupiter.api.Test;

/** Where the shake of an invented engine goes, every figure by hand: 271.0 g up and down, 127.2 g round, throw 27.70 mm, rod 85.20 mm, 5200 rpm. */
class ShakeAnswerTest {
    private static final String ENGINE = """
            longthrow: 1
            engine: {name: shaken, invented: yes, mass: 15.6 kg}
            piston: {mass: 171.4 g, pin_mass: 39.8 g}
            rings: {mass: 11.2 g}
            connecting_rod: {length: 85.20 mm, small_end_mass: 48.6 g, big_end_mass: 127.2 g}
            crankshaft: {metal: iron, stroke: 55.40 mm, bob_weight: 258.0 g, drill_radius: 29.0 mm, counterweight_thickness: 20.0 mm}
            use: {wanted_speed: 5200 rpm, mount_resonance: 2600 rpm}
            """;

    private static final double SQUARE = Math.pow(5200 * Math.PI / 30, 2);
    private static final double PRIMARY = 0.2710 * 0.02770 * SQUARE;

    private static Shaking shaking(String text) {
        Build build =
                BuildFile.read(text.getBytes(StandardCharsets.UTF_8)).build().orElseThrow();
        return Shake.of(build).shaking().orElseThrow();
    }

    private static double figure(Shaking shaking, String key) {
        return shaking.figures().stream()
                .filter(f -> f.key().equals(key))
                .findFirst()
                .orElseThrow(() -> new AssertionError(key + " is missing"))
                .figure()
                .value();
    }

    @Test
    void forcesAndFactorAreThoseByHand() {
        Shaking shaking = shaking(ENGINE);
        double factor = (258.0 - 127.2) / 271.0;
        assertThat(figure(shaking, "reciprocating_mass")).isCloseTo(0.2710, within(1e-9));
        assertThat(figure(shaking, "balance_factor")).isCloseTo(factor, within(1e-9));
        assertThat(figure(shaking, "primary_force")).isCloseTo(PRIMARY, within(1e-6 * PRIMARY));
        assertThat(figure(shaking, "along")).isCloseTo(PRIMARY * (1 - factor), within(1e-6 * PRIMARY));
        assertThat(figure(shaking, "across")).isCloseTo(PRIMARY * factor, within(1e-6 * PRIMARY));
        assertThat(figure(shaking, "against_crank")).isCloseTo(PRIMARY / 2, within(1e-6 * PRIMARY));
        double l = 27.70 / 85.20; // first term and a half of the series: l + l3/4
        assertThat(figure(shaking, "secondary_force")).isCloseTo(PRIMARY * (l + l * l * l / 4), within(1e-3 * PRIMARY));
        assertThat(shaking.drilling()).isEmpty();
        assertThat(shaking.missing()).isEmpty();
        assertThat(shaking.sentences().get(0)).contains("No counterweight");
    }

    /** Half of the reciprocating mass turning against the crank at its radius: Den Hartog, Mechanical Vibrations, chapter 5; from memory. */
    @Test
    void aBalanceShaftCarriesHalfOfWhatGoesUpAndDown() {
        assertThat(figure(shaking(ENGINE), "shaft_weight")).isCloseTo(0.1355, within(1e-9));
    }

    /** Forces of masses grow with the square of the speed: at half the speed a quarter, figures, path and trade alike; masses and factor stay. */
    @Test
    void atAnotherSpeedForcesFollowItsSquare() {
        Build build =
                BuildFile.read(ENGINE.getBytes(StandardCharsets.UTF_8)).build().orElseThrow();
        Shaking own = shaking(ENGINE);
        Shaking half = Shake.of(build, Catalogue.EMPTY, OptionalDouble.of(own.speed() / 2))
                .shaking()
                .orElseThrow();
        assertThat(half.speed()).isEqualTo(own.speed() / 2);
        for (String force : List.of("primary_force", "secondary_force", "along", "across", "against_crank")) {
            assertThat(figure(half, force)).as(force).isCloseTo(figure(own, force) / 4, within(1e-9 * PRIMARY));
        }
        for (String same : List.of("reciprocating_mass", "balance_factor", "shaft_weight")) {
            assertThat(figure(half, same)).as(same).isEqualTo(figure(own, same));
        }
        for (int i = 0; i < own.path().size(); i++) {
            assertThat(half.path().get(i).along()).isCloseTo(own.path().get(i).along() / 4, within(1e-9 * PRIMARY));
        }
        assertThat(half.trade().get(0).along().value())
                .isCloseTo(own.trade().get(0).along().value() / 4, within(1e-9 * PRIMARY));
        assertThatThrownBy(() -> Shake.of(build, Catalogue.EMPTY, OptionalDouble.of(0)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("speed");
    }

    /** Along and across add up to the primary whatever the factor from 0 to 1: a counterweight trades one for the other. */
    @Test
    void counterweightTradesOneForOne() {
        Shaking shaking = shaking(ENGINE);
        assertThat(shaking.trade())
                .hasSizeGreaterThan(4)
                .allSatisfy(t ->
                        assertThat(t.along().value() + t.across().value()).isCloseTo(PRIMARY, within(1e-6 * PRIMARY)));
    }

    /** At top dead centre the path stands at primary (1 + l) less what the counterweight takes; at 90 degrees across by the factor. */
    @Test
    void pathBeginsAtTopDeadCentre() {
        Shaking shaking = shaking(ENGINE);
        double factor = (258.0 - 127.2) / 271.0;
        assertThat(shaking.path()).hasSize(72);
        assertThat(shaking.path().get(0).along())
                .isCloseTo(PRIMARY * (1 + 27.70 / 85.20 - factor), within(1e-6 * PRIMARY));
        assertThat(Math.abs(shaking.path().get(18).across())).isCloseTo(PRIMARY * factor, within(1e-6 * PRIMARY));
    }

    /** At twice the resonance a spring moves by force over stiffness over 3, damping hardly felt: F / (3 m w0^2). */
    @Test
    void movementOnTheMountIsThatOfOneSpring() {
        Shaking shaking = shaking(ENGINE);
        double expected = figure(shaking, "along") / (3 * 15.6 * SQUARE / 4);
        assertThat(figure(shaking, "mount_along")).isCloseTo(expected, within(0.01 * expected));
    }

    /** Too heavy: 306 g make 65.98 %. Two 14 mm holes at 29 mm must take (0.6598 - 0.575) m r of iron, 7100 kg/m3, a third of the drill's point counted. */
    @Test
    void heavyCounterweightIsDrilled() {
        Shaking shaking = shaking(ENGINE.replace("258.0 g", "306.0 g"));
        double factor = (306.0 - 127.2) / 271.0;
        double point = 7e-3 / Math.tan(Math.toRadians(59));
        double depth =
                (factor - 0.575) * 0.2710 * 0.02770 / (2 * Math.PI / 4 * 14e-3 * 14e-3 * 7100 * 29e-3) - point / 3;
        Shaking.Holes widest = shaking.drilling().get(shaking.drilling().size() - 1);
        assertThat(widest.diameter()).isEqualTo(14e-3);
        assertThat(widest.depth().value()).isCloseTo(depth, within(1e-8));
        assertThat(widest.wall().value()).isCloseTo(20e-3 - depth - point, within(1e-8));
        assertThat(widest.wall().low()).isGreaterThan(3e-3);
        assertThat(widest.result().value()).isCloseTo(0.575, within(1e-9));
    }

    @Test
    void whatIsMissingIsNamedAndNothingIsPutInItsPlace() {
        Shaking shaking = shaking(ENGINE.replace("bob_weight: 258.0 g, ", ""));
        assertThat(shaking.missing()).extracting(m -> m.where()).contains("crankshaft.bob_weight");
        assertThat(shaking.figures())
                .extracting(Shaking.Figure::key)
                .doesNotContain("balance_factor", "along", "mount_along");
        assertThat(shaking.path()).isEmpty();
        assertThat(figure(shaking, "against_crank")).isCloseTo(PRIMARY / 2, within(1e-6 * PRIMARY));
    }
}
