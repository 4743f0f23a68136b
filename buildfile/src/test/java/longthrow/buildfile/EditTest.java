package longthrow.buildfile;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import longthrow.core.build.Build;
import longthrow.core.build.Given;
import longthrow.core.quantity.UnitSystem;
import longthrow.core.term.Term;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** One value changes; every other byte stays. */
class EditTest {
    private static final String TEXT = """
            # my engine
            longthrow: 1   # format
            engine: {name: a, valves: side}   # short

            cylinder:
              # the bore was honed
              bore: 66.00 mm    # by me
              deck_height:   # crank to deck
                # twice
                readings: [139.62 mm,   # first
                           139.60 mm]   # second
                with: height_gauge      # borrowed
              # not yet: deck_clearance

            use:
              fuel: petrol
            """;

    private static String edited(String text, String path, String value) {
        Edited edited = BuildFile.edit(text, path, value);
        assertThat(edited.faults()).extracting(Fault::message).isEmpty();
        return edited.text().orElseThrow();
    }

    @Test
    void aSingleValueIsReplacedInItsPlace() {
        assertThat(edited(TEXT, "cylinder.bore", "66.02 mm ± 0.01 mm"))
                .isEqualTo(TEXT.replace("66.00 mm", "66.02 mm ± 0.01 mm"));
    }

    @Test
    void theLineToWriteOnGoesAndOtherRemarksStay() {
        String sheet = BlankSheet.text(UnitSystem.METRIC_FIRST);
        assertThat(edited(sheet, "cylinder.bore", "66.02 mm")).contains("\n  bore: 66.02 mm\n");
        assertThat(edited(sheet, "use.fuel", "petrol")).contains("\n  fuel: petrol\n");
        String written = sheet.replaceFirst("(  deck_height: unknown +# _+ mm)", "$1, see photo");
        assertThat(edited(written, "cylinder.deck_height", "139.6 mm")).contains("_ mm, see photo");
    }

    @Test
    void aValueOfManyLinesGivesWayAndItsRemarksStay() {
        String text = edited(TEXT, "cylinder.deck_height", "139.61 mm");
        assertThat(text).contains("  deck_height: 139.61 mm   # crank to deck\n");
        assertThat(text).contains("# twice", "# first", "# second", "# borrowed", "# not yet: deck_clearance");
        assertThat(text).startsWith(TEXT.substring(0, TEXT.indexOf("deck_height:")));
        assertThat(text).endsWith(TEXT.substring(TEXT.indexOf("  # not yet")));
    }

    @Test
    void aMissingKeyIsAddedInOrderOfStripping() {
        assertThat(edited(TEXT, "cylinder.bore_top_thrust", "66.02 mm"))
                .isEqualTo(TEXT.replace(
                        "  # the bore was honed\n  bore:",
                        "  # the bore was honed\n  bore_top_thrust: 66.02 mm\n  bore:"));
        assertThat(edited(TEXT, "cylinder.deck_clearance", "0.1 mm"))
                .isEqualTo(TEXT.replace("# borrowed\n", "# borrowed\n  deck_clearance: 0.1 mm\n"));
    }

    @Test
    void aMissingSectionIsAddedInOrderOfStripping() {
        assertThat(edited(TEXT, "piston.diameter", "65.95 mm"))
                .isEqualTo(TEXT.replace("deck_clearance\n", "deck_clearance\npiston:\n  diameter: 65.95 mm\n"));
        assertThat(edited(TEXT, "bench.deck.minutes", "3"))
                .isEqualTo(TEXT.replace("petrol\n", "petrol\nbench:\n  deck:\n    minutes: 3\n"));
        assertThat(edited(TEXT, "aims.engine.squish", "1 mm"))
                .isEqualTo(TEXT.replace("petrol\n", "petrol\naims:\n  engine.squish: 1 mm\n"));
        assertThat(edited(TEXT, "units", "inch")).isEqualTo(TEXT.replace("# short\n", "# short\nunits: inch\n"));
    }

    @Test
    void keysInBracesAreChangedAndAddedThere() {
        assertThat(edited(TEXT, "engine.valves", "overhead")).isEqualTo(TEXT.replace("side}", "overhead}"));
        assertThat(edited(TEXT, "engine.leak_down", "7 %")).isEqualTo(TEXT.replace("side}", "side, leak_down: 7 %}"));
        assertThat(edited(TEXT, "engine.donor", "this, or that")).contains("donor: 'this, or that'");
    }

    @Test
    void aWholeFormMayBePutIn() {
        String text = edited(TEXT, "cylinder.bore", "{specified: 66.00 mm, tolerance: 0.01 mm, by: 'me: always'}");
        assertThat(BuildFile.read(text).build().orElseThrow().of(Term.BORE).get(0))
                .isInstanceOf(Given.Specified.class);
    }

    @Test
    void windowsLineEndsAMarkAndAMissingLastLineEndStay() {
        String windows = "\uFEFF" + TEXT.stripTrailing().replace("\n", "\r\n");
        assertThat(edited(windows, "use.duty", "mild")).isEqualTo(windows + "\r\n  duty: mild");
        assertThat(edited(windows, "cylinder.bore", "67 mm")).isEqualTo(windows.replace("66.00 mm", "67 mm"));
    }

    @Test
    void anEmptyValueIsFilled() {
        String text = "longthrow: 1\nengine: {name: a}\ncylinder:\n  bore:   # not yet\npiston:\n";
        assertThat(BuildFile.edit(text, "cylinder.bore", "66 mm").faults())
                .extracting(Fault::path, Fault::line)
                .containsExactly(tuple("piston", 0)); // still empty; its line would count in a text nobody sees
        String once = text.replace("piston:\n", "");
        assertThat(edited(once, "cylinder.bore", "66 mm")).isEqualTo(once.replace("bore:", "bore: 66 mm"));
        String other = "longthrow: 1\nengine: {name: a}\npiston:   # later\n";
        assertThat(edited(other, "piston.mass", "200 g")).isEqualTo(other + "  mass: 200 g\n");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {"66", "66 mm # no", "a\nb", "[66 mm", "", "66 mm ± -1 mm", "\u0007", "{x: 1}", "- 66 mm", "*a"})
    void whatCannotStandThereIsRefusedAndNothingChanges(String value) {
        Edited edited = BuildFile.edit(TEXT, "cylinder.bore", value);
        assertThat(edited.text()).isEmpty();
        assertThat(edited.faults()).isNotEmpty();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {"cylinder.boer", "", ".", "cylinder", "cylinder.bore.x", "longthrow.x", "engine.name.x", "aims."
            })
    void aPathThatIsNoneIsRefused(String path) {
        assertThat(BuildFile.edit(TEXT, path, "66 mm").faults()).isNotEmpty();
    }

    @Test
    void aKeyWithoutItsSectionIsAnsweredWithAllItMayStandIn() {
        Edited edited = BuildFile.edit(TEXT, "bore", "66 mm");
        assertThat(edited.text()).isEmpty();
        assertThat(edited.faults()).singleElement().satisfies(fault -> {
            assertThat(fault.line()).isZero();
            assertThat(fault.mend()).isEqualTo("write gasket.bore or cylinder.bore or clutch.bore");
        });
    }

    /** Any term of any random build set anew: all other terms, and all lines that do not hold it, stay. */
    @Test
    void nothingElseChangesInAnyFile() {
        SplittableRandom random = new SplittableRandom(20240601);
        for (int i = 0; i < 60; i++) {
            String text = withRemarks(BuildFile.write(RandomBuilds.build(20240601 + i)));
            Term term = Term.read().get(random.nextInt(Term.read().size()));
            String changed = edited(text, term.path(), "unknown");
            Build before = BuildFile.read(text).build().orElseThrow();
            Build after = BuildFile.read(changed).build().orElseThrow();
            assertThat(after.of(term)).containsExactly(new Given.NotKnown(""));
            assertThat(after.withGiven(before.given())).isEqualTo(before);
            assertThat(remarks(changed)).containsExactlyElementsOf(remarks(text));
            for (Term other : Term.read()) {
                if (other != term) {
                    assertThat(after.of(other)).isEqualTo(before.of(other));
                }
            }
        }
    }

    private static String withRemarks(String text) {
        StringBuilder marked = new StringBuilder();
        int n = 0;
        for (String line : text.lines().toList()) {
            marked.append(line).append(" # remark ").append(n++).append('\n');
        }
        return marked.toString();
    }

    private static List<String> remarks(String text) {
        List<String> remarks = new ArrayList<>();
        for (String line : text.lines().toList()) {
            int at = line.indexOf("# remark");
            if (at >= 0) {
                remarks.add(line.substring(at));
            }
        }
        return remarks;
    }
}
