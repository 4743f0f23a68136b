package longthrow.buildfile;

import static org.assertj.core.api.Assertions.assertThat;

import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import longthrow.core.quantity.UnitSystem;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The schema judged by an independent validator of JSON Schema 2020-12. */
class BuildSchemaTest {
    private static final Schema SCHEMA = SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
            .getSchema(BuildSchema.json());

    private static List<String> complaints(String yaml) {
        Faults faults = new Faults();
        Node root = TreeReader.read(yaml, faults).orElseThrow(() -> new AssertionError(faults.all()));
        return SCHEMA.validate(Json.write(plain(root)), InputFormat.JSON).stream()
                .map(Object::toString)
                .toList();
    }

    private static Object plain(Node node) {
        if (node instanceof Node.Scalar scalar) {
            return scalar.text();
        }
        if (node instanceof Node.Sequence list) {
            return list.items().stream().map(BuildSchemaTest::plain).toList();
        }
        Map<String, Object> map = new LinkedHashMap<>();
        ((Node.Mapping) node).entries().forEach(e -> map.put(e.key().text(), plain(e.value())));
        return map;
    }

    @Test
    void examplesAreValid() {
        for (String example : Repository.EXAMPLES) {
            assertThat(complaints(Repository.text(example))).as(example).isEmpty();
        }
    }

    @Test
    void theBlankSheetIsValid() {
        assertThat(complaints(BlankSheet.text(UnitSystem.INCH_FIRST))).isEmpty();
    }

    @Test
    void whateverIsWrittenIsValid() {
        IntStream.range(0, 50)
                .forEach(i -> assertThat(complaints(BuildFile.write(RandomBuilds.build(20240601 + i))))
                        .as("seed " + (20240601 + i))
                        .isEmpty());
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "engine: {name: a}",
                "longthrow: 2\nengine: {name: a}",
                "longthrow: 1",
                "longthrow: 1\nengine: {valves: side}",
                "longthrow: 1\nengine: {name: a, valves: sideways}",
                "longthrow: 1\nengine: {name: a}\ncilinder: {}",
                "longthrow: 1\nengine: {name: a}\ncylinder: {boer: 66 mm}",
                "longthrow: 1\nengine: {name: a}\ncylinder: {bore: 66}",
                "longthrow: 1\nengine: {name: a}\ncylinder: {bore: []}",
                "longthrow: 1\nengine: {name: a}\ncylinder: {bore: {reading: 66 mm}}",
                "longthrow: 1\nengine: {name: a}\ncylinder: {bore: {assumed: 66 mm ± 1 mm}}",
                "longthrow: 1\nengine: {name: a}\ninstruments: {a: {resolution: 1 mm}}",
                "longthrow: 1\nengine: {name: a}\nrules: {keep: [{name: a, term: cylinder.bore}]}",
                "longthrow: 1\nengine: {name: a}\naims: {cylinder.boer: 66 mm}",
                "longthrow: 1\nengine: {name: a}\nseen: [{part: head, damage: cracked}]",
                "longthrow: 1\nengine: {name: a}\nlift_tables: [{valve: intake, rows: {}}]",
                "longthrow: 1\nengine: {name: a}\nflow_tables: [{valve: intake}]",
                "longthrow: 1\nengine: {name: a}\nflow_tables: [{valve: intake, direction: inwards, rows: {}}]",
                "longthrow: 1\nengine: {name: a}\nmocked_up: [{pair: rod_to_skirt, way: clay}]",
                "longthrow: 1\nengine: {name: a}\nmocked_up: [{pair: rod_to_moon, way: clay, gap: 1 mm}]",
                "longthrow: 1\nengine: {name: a}\nmocked_up: [{pair: rod_to_skirt, way: clay, gap: 1 mm, at_least: 1 mm}]",
                "longthrow: 1\nengine: {name: a}\nbench: {depht: {minutes: 3}}",
                "longthrow: 1\nengine: {name: a}\ntaken: [{part: gasket}]",
                "longthrow: 1\nengine: {name: a}\ntaken: [{work: deck_cut, code: A}]",
                "longthrow: 1\nengine: {name: a}\ntaken: [{part: gasket, work: deck_cut, code: A, amount: 1 mm}]"
            })
    void brokenFilesAreNotValidAndAreRefusedByTheReaderToo(String yaml) {
        assertThat(complaints(yaml)).isNotEmpty();
        assertThat(BuildFile.read(yaml).faults()).isNotEmpty();
    }
}
