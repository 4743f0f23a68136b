package longthrow.workshop;

import static org.assertj.core.api.Assertions.assertThat;

import com.networknt.schema.InputFormat;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import longthrow.workshop.json.CatalogueJson;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class CatalogueCommandTest {
    private static final Path SCHEMA = Path.of("..", "docs", "catalogue.schema.json");
    private static final String DEMO = Path.of("..", "examples", "catalogue").toString();

    @TempDir
    private Path folder;

    private String write(String name, String text) throws IOException {
        return Files.writeString(folder.resolve(name), text).toString();
    }

    @Test
    void demoCatalogueIsClean() {
        CommandRun run = CommandRun.of("catalogue", DEMO);
        assertThat(run.err()).isEmpty();
        assertThat(run.code()).as(run.out()).isZero();
        assertThat(run.out())
                .contains("42  connecting rod\n", "18  machine operation\n")
                .contains("17 files, 284 rows: 266 parts and 18 machine operations kept, 0 the same again, 0 refused")
                .endsWith("All of it is invented, as its files say.\n");
    }

    @Test
    void whatWasOnOfferInTheFirstScenarioIsClean() {
        CommandRun run = CommandRun.of("catalogue", "../examples/scenarios/s1-catalogue.yaml");
        assertThat(run.code()).as(run.out()).isZero();
        assertThat(run.out()).contains("1 file, 9 rows: 8 parts and 1 machine operation kept");
    }

    @Test
    void everyBadRowIsNamedWithItsPlaceAndMend() throws IOException {
        String file = write("rods.csv", "code,length [mm]\nA,86.4\nB,86.4 g\nA,86.4\nA,87\nC,864\n");
        CommandRun run = CommandRun.of("catalogue", file);
        assertThat(run.code()).as("a bad row costs only itself").isZero();
        assertThat(run.err()).isEqualTo("longthrow: 2 rows refused; the others are kept\n");
        assertThat(run.out())
                .contains(file + ":3: B: length [mm]: '86.4 g' is a mass; a length is wanted here; allowed: mm, in")
                .contains(file + ":4: A: is the same as " + file + ":2, and counted once")
                .contains(file + ":5: A: code: 'A' stands at " + file + ":2 and differs: connecting_rod.length 86.4 mm")
                .contains(file + ":6: C: length [mm]: 864 mm is hard to believe")
                .contains("1 file, 5 rows: 2 parts and 0 machine operations kept, 1 the same again, 2 refused");
    }

    @Test
    void theKindIsAskedForAndMayBeGiven() throws IOException {
        String file = write("list.csv", "code,length [mm]\nA,86.4\n");
        CommandRun asked = CommandRun.of("catalogue", file);
        assertThat(asked.code()).isEqualTo(ExitCode.INPUT_REFUSED.code());
        assertThat(asked.out()).contains("neither the file nor its name says what its rows are");
        assertThat(CommandRun.of("catalogue", "--kind", "connecting_rod", file).code())
                .isZero();
        assertThat(CommandRun.of("catalogue", "--kind", "rod", file).err()).contains("--kind is 'rod'; allowed:");
    }

    @Test
    void codesAreComparedAcrossFiles() throws IOException {
        write("rod.csv", "code,length [mm]\nA,86.4\n");
        write("more rods.csv", "code,length [mm]\nA,86.5\n");
        CommandRun run = CommandRun.of("catalogue", folder.toString());
        assertThat(run.code()).isZero();
        assertThat(run.out()).contains("differs: connecting_rod.length 86.5 mm there, 86.4 mm here");
    }

    @Test
    void standardInputIsRead() {
        CommandRun run = CommandRun.reading("# kind: sprocket\ncode,teeth\nA,12\n", "catalogue", "-");
        assertThat(run.code()).as(run.out()).isZero();
        CommandRun yaml = CommandRun.reading("catalogue: 1\nsprockets:\n  - {code: A, teeth: 12}\n", "catalogue", "-");
        assertThat(yaml.code()).as(yaml.out()).isZero();
    }

    @Test
    void whatCannotBeOpenedIsSaid() {
        CommandRun missing =
                CommandRun.of("catalogue", folder.resolve("none.csv").toString());
        assertThat(missing.code()).isEqualTo(ExitCode.INPUT_REFUSED.code());
        assertThat(missing.err()).contains("there is no such file or folder");
        CommandRun empty = CommandRun.of("catalogue", folder.toString());
        assertThat(empty.code()).isEqualTo(ExitCode.INPUT_REFUSED.code());
        assertThat(empty.err()).contains("holds no catalogue");
        assertThat(CommandRun.of("catalogue").err()).contains("Missing required parameter");
    }

    @Test
    void aCatalogueGivenAsABuildIsNamedAsSuch() throws IOException {
        CommandRun run = CommandRun.of("measure", write("parts.yaml", "catalogue: 1\n"));
        assertThat(run.err()).contains("this is a catalogue of parts");
    }

    /** {@code -Dlongthrow.rewrite=true} writes it anew. */
    @Test
    void schemaInTheDocumentationIsTheOneOfTheCode() throws IOException {
        if (Boolean.getBoolean("longthrow.rewrite")) {
            Files.writeString(SCHEMA, CatalogueJson.schema());
        }
        assertThat(SCHEMA).hasContent(CatalogueJson.schema());
    }

    @Test
    void documentKeepsItsSchema() throws IOException {
        String file = write("rods.csv", "code,length [mm],rod_length_x\nA,86.4,\n");
        String rows = write("rod.csv", "code,length [mm]\nA,86.4\nB,86.4 g\nA,86.4\nA,87\nC,864\n");
        CommandRun run = CommandRun.of("catalogue", "--json", DEMO, file, rows);
        assertThat(run.code())
                .as("a column nobody knows costs the whole file")
                .isEqualTo(ExitCode.INPUT_REFUSED.code());
        assertThat(run.err()).contains("nothing was read of " + file);
        assertThat(SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
                        .getSchema(CatalogueJson.schema(), InputFormat.JSON)
                        .validate(run.out(), InputFormat.JSON))
                .isEmpty();
        assertThat(run.out()).contains("\"outcome\": \"refused\"", "\"outcome\": \"the same row again\"");
    }
}
