package longthrow.buildfile;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import longthrow.core.answer.Answer;
import longthrow.core.answer.Approval;
import longthrow.core.answer.Approval.State;
import longthrow.core.build.Build;
import longthrow.core.build.Given;
import longthrow.core.term.Choice;
import longthrow.core.term.Term;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

/** A reading that is missing weighs no less than a bad one: leaving one out approves nothing that was not approved, and no higher speed. */
class NothingLeftOutHelpsTest {
    private static String example(String name) {
        return Repository.text("examples/" + name);
    }

    /** The examples as they are, and held to their makers' speeds, looked over. */
    static Stream<String> engines() {
        String demo = example("demo.yaml");
        String springs = example("scenarios/s3-springs.yaml");
        String iron = example("scenarios/s4-vintage-iron.yaml");
        String slow = Running.replaced(demo, "wanted_speed: 5200 rpm", "wanted_speed: 3600 rpm");
        return Stream.of(
                demo,
                slow,
                Running.replaced(slow, "\nseen:\n", LookedOver.SEEN),
                springs,
                Running.replaced(springs, "wanted_speed: 6000 rpm", "wanted_speed: 3600 rpm"),
                LookedOver.springsAtTheMakersSpeed(),
                iron,
                Running.replaced(iron, "wanted_speed: 1250 rpm", "wanted_speed: 500 rpm"),
                Running.replaced(
                        Running.replaced(iron, "wanted_speed: 1250 rpm", "wanted_speed: 500 rpm"),
                        "\nseen:\n  - part: flywheel\n    damage: crack\n    where: at the root of a spoke, a line that stays after wiping\n",
                        "\n" + LookedOver.SEEN),
                LadderMutationTest.RATED);
    }

    @ParameterizedTest
    @MethodSource("engines")
    void noReadingLeftOutApproves(String text) {
        Build whole = Running.build(text);
        Answer before = Running.limitsAlone(whole);
        without(whole).forEach((place, less) -> isNoBetter(before, Running.limitsAlone(less), place));
    }

    /** One bad reading each in an engine that is approved without it or with a good one: neither is approved with it, nor once it is left out. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "retainer_to_seal: 9.9 mm ± 0.001 mm | retainer_to_seal: 5 mm ± 0.001 mm",
                "bolt_tightenings: 1 | bolt_tightenings: 9",
                "kind: solid_iron | kind: cast_aluminium",
                "open_load: 137.9 N ± 0.01 N | open_load: 70 N ± 0.01 N",
                "solid_height: 27.0 mm ± 0.001 mm | solid_height: 35 mm ± 0.001 mm"
            })
    void aBadReadingLeftOutHelpsNothing(String good, String bad) {
        String held = LookedOver.springsAtTheMakersSpeed();
        assertThat(verdict(held)).isEqualTo(State.APPROVED);
        String key = good.substring(0, good.indexOf(':') + 1);
        String with = Running.replaced(held, good, bad);
        String without = Running.replaced(held, good + "\n", "\n").replaceAll("(?m)^ *\n", "");
        assertThat(without).doesNotContain(key + " " + good.substring(good.indexOf(':') + 2));
        if (!bad.startsWith("kind")) {
            assertThat(verdict(with)).as(bad).isNotEqualTo(State.APPROVED);
        }
        assertThat(verdict(without)).as("without " + key).isNotEqualTo(State.APPROVED);
    }

    /** Bolts past their proof load are no less so with one figure of them less. */
    @Test
    void boltsDrawnUpTooFarAreRefusedWhoeverRatesTheRod() {
        String rated = LadderMutationTest.RATED;
        assertThat(verdict(rated)).isEqualTo(State.APPROVED);
        String torn = Running.replaced(rated, "bolt_torque: 17 N·m", "bolt_torque: 75 N·m");
        assertThat(verdict(torn)).isEqualTo(State.REFUSED);
        String slow = Running.replaced(torn, "wanted_speed: 3900 rpm", "wanted_speed: 3000 rpm");
        assertThat(verdict(slow)).as("under the maker's governed speed").isEqualTo(State.REFUSED);
        Build whole = Running.build(slow);
        Answer before = Running.limitsAlone(whole);
        without(whole).forEach((place, less) -> isNoBetter(before, Running.limitsAlone(less), place));
    }

    private static State verdict(String text) {
        return Running.limitsAlone(Running.build(text))
                .ladder()
                .orElseThrow()
                .approval()
                .verdict();
    }

    private static void isNoBetter(Answer before, Answer after, String place) {
        Approval was = before.ladder().orElseThrow().approval();
        Approval is = after.ladder().orElseThrow().approval();
        if (is.verdict() == State.APPROVED) {
            assertThat(was.verdict()).as("without " + place).isEqualTo(State.APPROVED);
            assertThat(is.upTo().orElseThrow())
                    .as("without " + place)
                    .isLessThanOrEqualTo(was.upTo().orElseThrow() * (1 + 1e-9));
        }
    }

    /** One term or word less each. */
    private static Map<String, Build> without(Build whole) {
        Map<String, Build> variants = new LinkedHashMap<>();
        for (Term term : whole.given().keySet()) {
            Map<Term, List<Given>> given = new EnumMap<>(Term.class);
            given.putAll(whole.given());
            given.remove(term);
            variants.put(term.path(), whole.withGiven(given));
        }
        for (Choice choice : whole.choices().keySet()) {
            Map<Choice, String> choices = new LinkedHashMap<>(whole.choices());
            choices.remove(choice);
            variants.put(choice.path(), whole.withChoices(choices));
        }
        return variants;
    }
}
