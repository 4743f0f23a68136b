package longthrow.buildfile;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import longthrow.core.build.Build;
import longthrow.core.build.MockedUp;
import longthrow.core.term.MovingPair;
import longthrow.core.term.Term;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class MockedUpSectionTest {
    private static final String HEAD = BuildFileReadTest.HEAD;

    private static Build build(String text) {
        ReadBuild read = BuildFile.read(text);
        assertThat(read.faults()).extracting(Fault::message).isEmpty();
        return read.build().orElseThrow();
    }

    @Test
    void theExampleOfTheGlossaryIsRead() {
        List<MockedUp> mocked = build(HEAD + Layout.MOCKED_UP_EXAMPLE + "\n").mockedUp();
        assertThat(mocked).hasSize(2);
        assertThat(mocked.get(0).pair()).isEqualTo(MovingPair.ROD_BOLTS_TO_CAM_CORE);
        assertThat(mocked.get(0).way()).isEqualTo(MockedUp.Way.CLAY);
        assertThat(mocked.get(0).endPlay()).isEqualTo(MockedUp.EndPlay.BOTH_WAYS);
        assertThat(mocked.get(0).found().written()).isEqualTo("1.9 mm, 2.0 mm");
        assertThat(mocked.get(0).with().get(Term.STROKE)).hasToString("56.5 mm");
        assertThat(mocked.get(1).endPlay()).isEqualTo(MockedUp.EndPlay.NOT_SAID);
        assertThat(mocked.get(1).found().written()).isEqualTo("3.4 mm at 365°, 3.1 mm at 370°, 3.3 mm at 375°");
    }

    /** On one line, as an edit puts it, and in lines, as the file is written. */
    @Test
    void whatIsMockedUpIsPutIntoATextAndTakenOutAgainAndTheRestStays() {
        for (long seed = 20261126; seed < 20261126 + 60; seed++) {
            List<MockedUp> mocked = RandomBuilds.build(seed).mockedUp();
            String text = "# mine\n" + HEAD + "fit: {budget: 330 EUR}   # at most\n";
            String with = BuildFile.edit(text, "mocked_up", BuildFile.mockedUp(mocked))
                    .text()
                    .orElseThrow();
            assertThat(build(with).mockedUp()).as(with).isEqualTo(mocked);
            assertThat(build(BuildFile.write(build(with)))).isEqualTo(build(with));
            assertThat(with).contains("# mine\n", "fit: {budget: 330 EUR}   # at most\n");
            String without = BuildFile.edit(with, "mocked_up", BuildFile.mockedUp(List.of()))
                    .text()
                    .orElseThrow();
            assertThat(build(without)).isEqualTo(build(text));
        }
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "{}|mocked_up|is wanted here",
                "[{way: clay, gap: 1 mm}]|mocked_up[1]|pair' is missing",
                "[{pair: rod_to_skirt, gap: 1 mm}]|mocked_up[1]|way' is missing",
                "[{pair: rod_bolt_to_case, way: clay, gap: 1 mm}]|mocked_up[1].pair|did you mean rod_bolts_to_case?",
                "[{pair: rod_to_skirt, way: putty, gap: 1 mm}]|mocked_up[1].way|clay, wire, soft_spring, feeler, blue",
                "[{pair: rod_to_skirt, way: clay}]|mocked_up[1]|nothing here says what was found",
                "[{pair: rod_to_skirt, way: clay, gap: 1 mm, at_least: 1 mm}]|mocked_up[1]|stand together",
                "[{pair: rod_to_skirt, way: clay, gap: -1 mm}]|mocked_up[1].gap|write 'touches'",
                "[{pair: rod_to_skirt, way: clay, gap: [1 mm, 2 in, 190 mm]}]|mocked_up[1].gap[3]|check the unit",
                "[{pair: rod_to_skirt, way: clay, gap: 1.9}]|mocked_up[1].gap|mm",
                "[{pair: rod_to_skirt, way: clay, gap: []}]|mocked_up[1].gap|is an empty list",
                "[{pair: rod_to_skirt, way: clay, at_least: -1 mm}]|mocked_up[1].at_least|is below nothing",
                "[{pair: intake_valve_to_piston, way: soft_spring, rows: {5°: 3.4 mm, 10°: 3.1 mm, 15°: 3.3 mm}}]|mocked_up[1].rows|add 360° to each",
                "[{pair: exhaust_valve_to_piston, way: clay, rows: {0°: 3.4 mm, 10°: 3.1 mm, 715°: 3.3 mm}}]|mocked_up[1].rows|both valves are shut",
                "[{pair: valve_to_valve, way: wire, rows: {-5°: 3.4 mm, 5°: 3.1 mm, 10°: 3.3 mm}}]|mocked_up[1].rows.-5°|10° before it is 350°",
                "[{pair: valve_to_valve, way: wire, rows: {2°: 3.4 mm, 5°: 3.1 mm, 10°: 3.3 mm}}]|mocked_up[1].rows|firing top dead centre",
                "[{pair: rod_to_skirt, way: soft_spring, gap: 1 mm}]|mocked_up[1].way|clay, wire, feeler, blue",
                "[{pair: intake_valve_to_wall, way: soft_spring, gap: 1 mm}]|mocked_up[1].way|in the place of valve springs",
                "[{pair: piston_to_head, way: soft_spring, gap: touches}]|mocked_up[1].way|valve_to_valve",
                "[{pair: rod_to_skirt, way: blue, gap: 1 mm}]|mocked_up[1].way|not how far they stay apart",
                "[{pair: rod_to_skirt, way: blue, at_least: 1 mm}]|mocked_up[1].way|not how far they stay apart",
                "[{pair: rod_to_skirt, way: clay, gap: 1 mm, both_ways: maybe}]|mocked_up[1].both_ways|yes, no, unknown",
                "[{pair: rod_to_skirt, way: clay, gap: 1 mm, with_stroke: 0 mm}]|mocked_up[1].with_stroke|above 0",
                "[{pair: rod_to_skirt, way: clay, gap: 1 mm, with_throw: 28 mm}]|mocked_up[1].with_throw|is not a key that is known here",
                "[{pair: rod_to_skirt, way: clay, rows: {10°: 1 mm, 15°: 2 mm}}]|mocked_up[1].rows|has 2 rows",
                "[{pair: rod_to_skirt, way: clay, rows: {10°: 1 mm, 5°: 2 mm, 20°: 2 mm}}]|mocked_up[1].rows.5°|does not come after 10°",
                "[{pair: rod_to_skirt, way: clay, rows: {-10°: 1 mm, 5°: 2 mm, 20°: 2 mm}}]|mocked_up[1].rows.-10°|10° before it is 350°"
            })
    void aFaultSaysWhereAndHowToMendIt(String mocked, String path, String says) {
        ReadBuild read = BuildFile.read(HEAD + "mocked_up: " + mocked + "\n");
        assertThat(read.build()).isEmpty();
        assertThat(read.faults().get(0).path()).isEqualTo(path);
        assertThat(read.faults().get(0).message()).contains(says);
    }

    @Test
    void moreThanAnybodyReadsIsRefused() {
        String entry = "{pair: rod_to_skirt, way: clay, gap: 1 mm}";
        String many = String.join(", ", java.util.Collections.nCopies(MockedUpReader.MOST_ENTRIES + 1, entry));
        assertThat(BuildFile.read(HEAD + "mocked_up: [" + many + "]\n").faults())
                .singleElement()
                .satisfies(f -> assertThat(f.message()).contains("at most " + MockedUpReader.MOST_ENTRIES));
    }
}
