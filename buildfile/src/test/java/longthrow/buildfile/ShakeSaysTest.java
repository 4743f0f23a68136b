package longthrow.buildfile;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.charset.StandardCharsets;
import java.util.List;
import longthrow.core.answer.Shaking;
import longthrow.core.shake.Shake;
import org.junit.jupiter.api.Test;

/** What is said of a counterweight that is too heavy, too light or neither, on the invented example. */
class ShakeSaysTest {
    private static Shaking shaking(String bobWeight, String thickness) {
        String text = Repository.text("examples/demo.yaml")
                .replace("bob_weight: 258.0 g", bobWeight)
                .replace("counterweight_thickness: 16.5 mm", thickness);
        return Shake.of(BuildFile.read(text.getBytes(StandardCharsets.UTF_8))
                        .build()
                        .orElseThrow())
                .shaking()
                .orElseThrow();
    }

    private static String factor(Shaking shaking) {
        return shaking.sentences().stream()
                .filter(s -> s.startsWith("The counterweight balances"))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void aLightCounterweightIsNotDrilled() {
        Shaking light = shaking("bob_weight: 200.0 g", "counterweight_thickness: 16.5 mm");
        assertThat(light.drilling()).isEmpty();
        assertThat(factor(light)).contains("too light", "Drill nothing", "heavy metal");
    }

    @Test
    void whyAHeavyOneHasNoHolesIsSaid() {
        Shaking thin = shaking("bob_weight: 380.0 g", "counterweight_thickness: 8 mm");
        assertThat(thin.drilling()).isEmpty();
        assertThat(factor(thin))
                .contains("no pair of holes from 6 to 14 mm", "3 mm of web")
                .doesNotContain("missing");
        Shaking unread = shaking("bob_weight: 380.0 g", "counterweight_thickness: unknown");
        assertThat(factor(unread))
                .contains("cannot be said before these are read: ", "thickness")
                .doesNotContain("no pair");
    }

    /** A point over the range: the least drilling is offered where no pair of holes takes off enough for the middle, and what either takes is said. */
    @Test
    void aLittleTooHeavyTakesLittle() {
        Shaking heavy = shaking("bob_weight: 306.0 g", "counterweight_thickness: 12 mm");
        assertThat(heavy.drilling()).isNotEmpty();
        assertThat(heavy.drilling()).allSatisfy(h -> {
            assertThat(h.aim()).isEqualTo(Shaking.Aim.INSIDE);
            assertThat(h.result().high()).as("surely inside").isLessThanOrEqualTo(Shake.MOST_FACTOR);
            assertThat(h.wall().low()).isGreaterThanOrEqualTo(3e-3);
        });
        assertThat(factor(heavy))
                .contains("would have to come off to reach 65 %", "to reach the middle, 57.5 %", "surely inside")
                .contains("no pair of holes takes off enough for the middle");
    }

    /** A doubt is printed as far as it is known, and never as none. */
    @Test
    void theShareHasItsDoubt() {
        assertThat(factor(shaking("bob_weight: 258.0 g", "counterweight_thickness: 16.5 mm")))
                .containsPattern("balances \\d+(\\.\\d+)? ± [1-9\\d.]*[1-9]\\d* %")
                .doesNotContain("± 0 %");
    }

    /** One force has one doubt wherever it is told. */
    @Test
    void theRowAsItIsHasTheDoubtOfItsFigure() {
        Shaking shaking = shaking("bob_weight: 258.0 g", "counterweight_thickness: 16.5 mm");
        double factor = figure(shaking, "balance_factor").figure().value();
        List<Shaking.Trade> own =
                shaking.trade().stream().filter(t -> t.factor() == factor).toList();
        assertThat(own).hasSize(1);
        assertThat(own.get(0).along().expanded())
                .isCloseTo(figure(shaking, "along").figure().expanded(), within(1e-9));
        assertThat(own.get(0).across().expanded())
                .isCloseTo(figure(shaking, "across").figure().expanded(), within(1e-9));
    }

    private static Shaking.Figure figure(Shaking shaking, String key) {
        return shaking.figures().stream()
                .filter(f -> f.key().equals(key))
                .findFirst()
                .orElseThrow();
    }
}
