package longthrow.buildfile;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import longthrow.core.build.OwnRule;
import longthrow.core.term.Term;
import org.junit.jupiter.api.Test;

/** A limit of the owner's own put in, changed and taken out, while every other character stays. */
class LimitEditTest {
    private static final String HEAD = "longthrow: 1\nengine:\n  name: One\n";
    private static final String CLASS = """
            rules:
              choose:
                squish_least: general # as my maker says
              keep:
                - name: class   # on lines
                  term: engine.clearance_volume
                  least: 24.5 cc
            """;
    private static final String MINE = """
                - name: mine
                  term: engine.squish
                  least: 1.2 mm # mind
                  guard: 0.1 mm
            """;

    private static String kept(String text, String least, String most) {
        Edited edited = BuildFile.keepLimit(text, "mine", Term.SQUISH, least, most);
        assertThat(edited.faults()).isEmpty();
        return edited.text().orElseThrow();
    }

    private static List<OwnRule> rules(String text) {
        return BuildFile.read(text).build().orElseThrow().ownRules();
    }

    @Test
    void itComesGoesAndLeavesTheRestAsItWas() {
        for (String text : List.of(HEAD + CLASS, (HEAD + CLASS).replace("\n", "\r\n"))) {
            String with = kept(text, "1.2 mm", "");
            assertThat(rules(with)).hasSize(2);
            assertThat(with)
                    .startsWith(text.stripTrailing())
                    .contains("- {name: mine, term: engine.squish, least: 1.2 mm}");
            String both = kept(with, "1.25 mm", "0.060 in");
            assertThat(both).contains("{name: mine, term: engine.squish, most: 0.060 in, least: 1.25 mm}");
            String most = kept(both, "", "0.060 in");
            assertThat(rules(most).get(1).lower()).isEmpty();
            assertThat(kept(most, "", "").stripTrailing()).isEqualTo(text.stripTrailing());
        }
    }

    @Test
    void itComesWhereThereIsNoListYetAndGoesAsTheOnlyOne() {
        String first = kept(HEAD, "1.2 mm", "1.5 mm");
        assertThat(rules(first))
                .singleElement()
                .satisfies(r -> assertThat(r.name()).isEqualTo("mine"));
        assertThat(rules(kept(first, "", ""))).isEmpty();
        assertThat(kept(HEAD, "", "")).isEqualTo(HEAD);
    }

    @Test
    void inBracketsToo() {
        String text = HEAD + "rules: {keep: [{name: class, term: cylinder.bore, most: 66.5 mm}]} # one line\n";
        String with = kept(text, "1.2 mm", "");
        assertThat(rules(with)).hasSize(2);
        assertThat(kept(with, "", "")).isEqualTo(text);
    }

    /** Written by hand on lines of its own, with a guard: bounds change, and it does not go with what hangs on it. */
    @Test
    void whatElseIsSaidOfItIsNotLost() {
        String text = HEAD + CLASS + MINE;
        String changed = kept(text, "1.3 mm", "1.6 mm");
        assertThat(changed).contains("      least: 1.3 mm # mind\n      guard: 0.1 mm", "      most: 1.6 mm\n");
        assertThat(rules(changed).get(1).guard()).hasToString("0.1 mm");
        Edited gone = BuildFile.keepLimit(text, "mine", Term.SQUISH, "", "");
        assertThat(gone.text()).isEmpty();
        assertThat(gone.faults().get(0).message()).contains("rules.keep", "change it in the text");
    }

    @Test
    void whatCannotBeReadIsRefusedWithItsCure() {
        Edited edited = BuildFile.keepLimit(HEAD, "mine", Term.SQUISH, "1.2", "");
        assertThat(edited.faults().get(0).message()).contains("1.2", "has no unit");
        Edited crossed = BuildFile.keepLimit(HEAD, "mine", Term.SQUISH, "2 mm", "1 mm");
        assertThat(crossed.faults().get(0).message()).contains("is more than 'most'");
    }

    @Test
    void aRuleOfTheTradeIsLetGoByTheWordUnknown() {
        String text = BuildFile.edit(HEAD + CLASS, "rules.choose.squish_least", "unknown")
                .text()
                .orElseThrow();
        assertThat(BuildFile.read(text).build().orElseThrow().rulesChosen()).isEmpty();
        assertThat(text).contains("squish_least: unknown # as my maker says");
    }
}
