package longthrow.buildfile;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import longthrow.core.build.Build;
import longthrow.core.build.Decided;
import longthrow.core.catalogue.Operation;
import longthrow.core.catalogue.PartKind;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class TakenSectionTest {
    private static final String HEAD = BuildFileReadTest.HEAD;

    private static Build build(String text) {
        ReadBuild read = BuildFile.read(text);
        assertThat(read.faults()).extracting(Fault::message).isEmpty();
        return read.build().orElseThrow();
    }

    @Test
    void theExampleOfTheGlossaryIsRead() {
        List<Decided> taken = build(HEAD + Layout.TAKEN_EXAMPLE + "\n").taken();
        assertThat(taken).hasSize(2);
        assertThat(taken.get(0)).isInstanceOfSatisfying(Decided.Bought.class, rod -> {
            assertThat(rod.kind()).isEqualTo(PartKind.CONNECTING_ROD);
            assertThat(rod.offer().vendor()).isEqualTo("the maker");
            assertThat(rod.offer().price()).hasValue(9500);
            assertThat(rod.offer().shipping()).isEmpty();
        });
        assertThat(taken.get(1)).isInstanceOfSatisfying(Decided.Work.class, hone -> {
            assertThat(hone.kind()).isEqualTo(Operation.Kind.SMALL_END_HONE);
            assertThat(hone.from()).hasToString("17.01 mm");
            assertThat(hone.to()).hasToString("17.02 mm");
            assertThat(hone.tolerance()).hasToString("0.002 mm");
        });
    }

    /** On one line, as an edit puts it, and in lines, as the file is written. */
    @Test
    void whatIsTakenIsPutIntoATextAndTakenOutAgainAndTheRestStays() {
        for (long seed = 20240601; seed < 20240601 + 60; seed++) {
            List<Decided> taken = RandomBuilds.build(seed).taken();
            String text = "# mine\n" + HEAD + "fit: {budget: 330 EUR}   # at most\n";
            String with =
                    BuildFile.edit(text, "taken", BuildFile.taken(taken)).text().orElseThrow();
            assertThat(build(with).taken()).as(with).isEqualTo(taken);
            assertThat(with).startsWith(text.stripTrailing());
            assertThat(build(BuildFile.write(build(with)))).isEqualTo(build(with));
            String without = BuildFile.edit(with, "taken", BuildFile.taken(List.of()))
                    .text()
                    .orElseThrow();
            assertThat(build(without)).isEqualTo(build(text));
        }
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "{}|taken|is wanted here",
                "[{code: A}]|taken[1]|start with 'part:'",
                "[{part: gasket, work: deck_cut, code: A}]|taken[1]|stand together",
                "[{part: gaskets, code: A}]|taken[1].part|did you mean gasket?",
                "[{part: gasket}]|taken[1]|is missing",
                "[{part: gasket, code: A, price: cheap}]|taken[1].price|is no amount of money",
                "[{part: gasket, code: A, price: 3 EUR, shipping: 1 NOK}]|taken[1].shipping|another currency",
                "[{part: gasket, code: A, lead_days: soon}]|taken[1].lead_days|is no number of days",
                "[{part: gasket, code: A, amount: 1 mm}]|taken[1].amount|is not a key that is known here",
                "[{work: deck_cut, code: A}]|taken[1]|is missing",
                "[{work: deck_cut, code: A, amount: 0 mm}]|taken[1].amount|above 0",
                "[{work: deck_cut, code: A, amount: 1 mm, to: 3 cc}]|taken[1].to|cc"
            })
    void aFaultSaysWhere(String taken, String path, String says) {
        ReadBuild read = BuildFile.read(HEAD + "taken: " + taken + "\n");
        assertThat(read.build()).isEmpty();
        assertThat(read.faults().get(0).path()).isEqualTo(path);
        assertThat(read.faults().get(0).message()).contains(says);
    }
}
