package longthrow.buildfile;

import static org.assertj.core.api.Assertions.assertThat;

import longthrow.core.build.Build;
import longthrow.core.build.Given;
import longthrow.core.build.OwnRule;
import longthrow.core.quantity.UnitSystem;
import longthrow.core.term.Part;
import longthrow.core.term.Term;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class BlankSheetTest {
    @ParameterizedTest
    @EnumSource
    void isABuildFileWithEveryTermUnknown(UnitSystem units) {
        ReadBuild read = BuildFile.read(BlankSheet.text(units));
        assertThat(read.faults()).isEmpty();
        Build build = read.build().orElseThrow();
        assertThat(build.units()).isEqualTo(units);
        for (Term term : Term.read()) {
            assertThat(build.of(term)).containsExactly(new Given.NotKnown(""));
        }
    }

    @ParameterizedTest
    @EnumSource
    void fitsOnPaperInOrderOfStripping(UnitSystem units) {
        String text = BlankSheet.text(units);
        assertThat(text.lines()).allMatch(line -> line.length() <= 100, "100 columns");
        int at = 0;
        for (Part part : Part.values()) {
            at = text.indexOf("\n" + part.key() + ":\n", at);
            assertThat(at).as(part.key()).isPositive();
            int within = at;
            for (Term term : Layout.terms(part)) {
                within = text.indexOf("\n  " + term.key() + ": unknown", within);
                assertThat(within).as(term.path()).isPositive();
            }
        }
    }

    /** Who does not want torque and power foretold sees which lines to leave out. */
    @ParameterizedTest
    @EnumSource
    void marksWhatPowerAloneAsksFor(UnitSystem units) {
        String flowing = BlankSheet.text(units).replaceAll("\\n *# *", " ");
        for (Term term : Term.read()) {
            String told = "(?s).*" + java.util.regex.Pattern.quote(term.meaning()) + "[^#]{0,90}; for power alone.*";
            assertThat(flowing.matches(told)).as(term.path()).isEqualTo(term.isForPowerAlone());
        }
    }

    /** The remark at the end has to be right once its # is taken away. */
    @ParameterizedTest
    @EnumSource
    void theRuleInTheLastRemarkIsOneThatCanBeChosen(UnitSystem units) {
        String text = BlankSheet.text(units).replace("# rules:", "rules:").replace("#   keep:", "  keep:");
        assertThat(BuildFile.read(text).build().orElseThrow().rulesChosen()).containsEntry("squish_least", "general");
    }

    @ParameterizedTest
    @EnumSource
    void theRuleOfOnesOwnInTheLastRemarkIsRead(UnitSystem units) {
        String text = BlankSheet.text(units).replace("# rules:", "rules:").replace("#   keep:", "  keep:");
        OwnRule rule = BuildFile.read(text).build().orElseThrow().ownRules().get(0);
        assertThat(rule.term()).isEqualTo(Term.SQUISH);
        assertThat(rule.least()).isNotNull();
    }

    @ParameterizedTest
    @EnumSource
    void searchForPartsIsShownWithKeysThereAre(UnitSystem units) {
        String shown = BlankSheet.text(units)
                .lines()
                .filter(line -> line.startsWith("# fit: {"))
                .findFirst()
                .orElseThrow();
        Node.Mapping root = TreeReader.read(shown.substring(2), new Faults()).orElseThrow();
        assertThat(((Node.Mapping) root.entries().get(0).value()).entries())
                .extracting(entry -> entry.key().text())
                .isNotEmpty()
                .isSubsetOf(Layout.FIT_KEYS);
    }

    /** To run an engine until something lets go is no way to find what speed it bears. */
    @ParameterizedTest
    @EnumSource
    void approvedSpeedIsReadOffASheetAndNeverByRunning(UnitSystem units) {
        String text = BlankSheet.text(units);
        assertThat(text).contains("off its sheet or stamp, never by running it");
        int at = text.indexOf("  rated_speed:");
        int found = 0;
        while (at >= 0) {
            found++;
            assertThat(text.substring(Math.max(0, at - 250), at))
                    .doesNotContain("tachometer", "steady for ten seconds")
                    .contains("off its sheet");
            at = text.indexOf("  rated_speed:", at + 1);
        }
        assertThat(found).isEqualTo(2);
    }

    @ParameterizedTest
    @EnumSource
    void whatOneLineNeedsBesidesStandsBeforeIt(UnitSystem units) {
        assertThat(BlankSheet.text(units))
                .containsSubsequence("one of them will do", "  bore_top_thrust: unknown", "  bore: unknown")
                .containsSubsequence(
                        "ignition timing hang on it", "  fuel: unknown", "for this speed", "  wanted_speed:");
    }

    @ParameterizedTest
    @EnumSource
    void aFilledLineCountsAsAReading(UnitSystem units) {
        String filled = BlankSheet.text(units).replace("  deck_height: unknown", "  deck_height: 139.62 mm");
        assertThat(BuildFile.read(filled).build().orElseThrow().has(Term.DECK_HEIGHT))
                .isTrue();
    }
}
