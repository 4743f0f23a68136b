package longthrow.buildfile;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import longthrow.core.build.Build;
import longthrow.core.build.Given;
import longthrow.core.quantity.Quantity;
import longthrow.core.quantity.Units;
import longthrow.core.term.Term;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class FlowEntryTest {
    private static final Quantity BORE = Quantity.of("66.01", Units.MILLIMETRE);

    /** Whatever stands in the examples can be taken out, written on one line, and put there again. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "demo.yaml",
                "scenarios/s1-longer-throw.yaml",
                "scenarios/s2-side-valve-kart.yaml",
                "scenarios/s3-springs.yaml",
                "scenarios/s4-vintage-iron.yaml"
            })
    void everyEntryOfTheExamplesReadsBackEqual(String file) throws IOException {
        String text = Files.readString(Path.of("../examples").resolve(file));
        Build build = BuildFile.read(text).build().orElseThrow();
        for (Map.Entry<Term, List<Given>> entry : build.given().entrySet()) {
            String path = entry.getKey().path();
            Edited without = BuildFile.edit(text, path, "unknown");
            Edited again = BuildFile.edit(without.text().orElseThrow(), path, BuildFile.entry(entry.getValue()));
            assertThat(again.faults()).as(path).isEmpty();
            assertThat(BuildFile.read(again.text().orElseThrow())
                            .build()
                            .orElseThrow()
                            .of(entry.getKey()))
                    .as(path)
                    .isEqualTo(entry.getValue());
        }
    }

    @Test
    void entriesReadBackEqualWhateverIsInTheirWords() {
        String words = "it's: a, [strange] {note} # with \"marks\"";
        List<Given> entries = List.of(
                new Given.Taken(
                        List.of(BORE, BORE),
                        "bore_gauge",
                        Quantity.of("24", Units.CELSIUS),
                        null,
                        new Given.Origin("me, too", "May: 3", ""),
                        words),
                new Given.Taken(List.of(BORE), null, null, null, Given.Origin.NOT_SAID, ""),
                new Given.Typed(BORE, Quantity.of("0.02", Units.MILLIMETRE), words),
                new Given.Specified(BORE, null, words, true, ""),
                new Given.Assumed(BORE, Quantity.of("0.5", Units.MILLIMETRE), words, words));
        assertThat(roundTrip(entries)).isEqualTo(entries);
        for (Given one : entries) {
            assertThat(roundTrip(List.of(one))).containsExactly(one);
        }
    }

    @Test
    void severalBareReadingsOfSeveralEntriesStaySeveralEntries() {
        Given bare = new Given.Taken(List.of(BORE), null, null, null, Given.Origin.NOT_SAID, "");
        assertThat(roundTrip(List.of(bare, bare))).containsExactly(bare, bare);
    }

    @Test
    void nothingAtAllIsUnknown() {
        assertThat(BuildFile.entry(List.of())).isEqualTo("unknown");
        assertThat(roundTrip(List.of(new Given.NotKnown("no feeler: none, thin enough"))))
                .containsExactly(new Given.NotKnown("no feeler: none, thin enough"));
    }

    private static List<Given> roundTrip(List<Given> entries) {
        Edited edited =
                BuildFile.edit("longthrow: 1\nengine:\n  name: one\n", "cylinder.bore", BuildFile.entry(entries));
        assertThat(edited.faults()).isEmpty();
        return BuildFile.read(edited.text().orElseThrow()).build().orElseThrow().of(Term.BORE);
    }
}
