package longthrow.workshop.print;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.List;
import longthrow.buildfile.BuildFile;
import longthrow.core.measure.Measure;
import org.junit.jupiter.api.Test;

/** Verdicts as an owner reads them, from an invented build file. */
class VerdictListTest {
    private static final String STACK = """
            longthrow: 1
            engine: {name: invented, invented: yes}
            gasket: {thickness: 1.30 mm ± 0.03 mm, bore: 68.5 mm ± 0.01 mm}
            cylinder: {bore: 66.00 mm ± 0.01 mm, deck_clearance: 0.07 mm ± 0.02 mm}
            connecting_rod: {metal: billet_aluminium}
            use: {wanted_speed: 6500 rpm}
            """;

    private static String printed(String more, boolean all) {
        var build = BuildFile.read((STACK + more).getBytes(StandardCharsets.UTF_8))
                .build()
                .orElseThrow();
        String text = AnswerText.of(Measure.of(build, List.of()), 80, false, all);
        return text.substring(text.indexOf("VERDICTS")).replaceAll("\\s+", " ");
    }

    /** 0.07 + 1.30 = 1.37 mm is 0.10 mm over the club's 1.27 mm. */
    @Test
    void theOwnersRuleStandsFirstAndInFull() {
        String text =
                printed("rules: {keep: [{name: 'Kart club: squish', term: engine.squish, least: 1.27 mm}]}\n", false);
        assertThat(text)
                .startsWith("VERDICTS – meets or fails: 95 % sure; near: not proven either way meets Kart club: squish")
                .contains("is 0.100 mm (0.0039 in) above the least, 1.27 mm", "kept with a probability")
                .doesNotContain("OPEN squish");
    }

    @Test
    void whereTheTradeDisagreesEveryLimitIsTold() {
        assertThat(printed("", false)).contains("OPEN squish", "; least 1.5 mm", "; least 0.76 mm");
    }

    @Test
    void whatTheOwnersRuleNeedsIsAskedForWithoutAsking() {
        assertThat(printed(
                        "rules: {keep: [{name: bore, term: cylinder.bore, least: 66 mm, temperature: 40 °C}]}\n",
                        false))
                .contains("cure: write what the cylinder is made of");
    }

    @Test
    void oneSourceAloneIsNoDisagreement() {
        assertThat(printed("flywheel: {kind: solid_iron}\n", true))
                .contains("pulling class, iron wheel; most 4000 rpm", "not in force unless you choose it");
        assertThat(printed("", true)).doesNotContain("pulling");
    }
}
