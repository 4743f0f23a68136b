package longthrow.workshop.json;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.networknt.schema.Error;
import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import longthrow.core.answer.Answer;
import longthrow.core.quantity.UnitSystem;
import longthrow.core.term.Term;
import longthrow.workshop.SampleAnswer;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** The document against its schema, by a validator that is not ours, and its numbers against the answer. */
class AnswerJsonTest {
    private static final Path SCHEMA = Path.of("..", "docs", "answer.schema.json");

    /** {@code -Dlongthrow.rewrite=true} writes it anew. */
    @Test
    void readingThatIsToSettleADisagreementHasNullForItsDoubts() {
        assertThat(AnswerJson.of(SampleAnswer.settling()).replaceAll("\\s", ""))
                .contains("\"now\":null", "\"after\":null");
    }

    @Test
    void schemaInTheDocumentationIsTheOneOfTheCode() throws IOException {
        if (Boolean.getBoolean("longthrow.rewrite")) {
            Files.writeString(SCHEMA, AnswerJson.schema());
        }
        assertThat(SCHEMA).hasContent(AnswerJson.schema());
    }

    @ParameterizedTest
    @CsvSource({"loud, METRIC_FIRST", "quiet, INCH_FIRST"})
    void documentKeepsItsSchema(String kind, UnitSystem units) {
        Answer answer = kind.equals("loud") ? SampleAnswer.loud(units) : SampleAnswer.quiet(units);
        assertThat(faults(AnswerJson.of(answer))).isEmpty();
    }

    @Test
    void movementsKeepTheSchemaToo() {
        Answer answer = SampleAnswer.moving();
        JsonNode movement = read(answer).path("movements").path(0);
        assertThat(faults(AnswerJson.of(answer))).isEmpty();
        assertThat(movement.path("figures").path(0).path("unit").stringValue()).isEqualTo("m/rad");
        assertThat(movement.path("lifts")
                        .path(0)
                        .path("figures")
                        .path(0)
                        .path("unit")
                        .stringValue())
                .isEqualTo("rad");
    }

    @ParameterizedTest
    @CsvSource({
        "'\"value\": 9.66', '\"value\": \"about ten\"'",
        "engine.squish, engine.no_such_term",
        "'\"format\": 1', '\"format\": 2'"
    })
    void schemaRefusesWhatTheDocumentNeverHolds(String there, String instead) {
        String document = AnswerJson.of(SampleAnswer.loud(UnitSystem.METRIC_FIRST));
        assertThat(document).contains(there);
        assertThat(faults(document.replace(there, instead))).isNotEmpty();
    }

    @Test
    void numbersAreSiInFullPrecision() {
        Answer answer = SampleAnswer.quiet(UnitSystem.INCH_FIRST);
        JsonNode squish = read(answer).path("values").path(Term.SQUISH.path());
        assertThat(squish.path("unit").stringValue()).isEqualTo("m");
        var figure = answer.value(Term.SQUISH).orElseThrow().figure();
        assertThat(squish.path("value").doubleValue()).isEqualTo(figure.value());
        assertThat(squish.path("low").doubleValue()).isEqualTo(figure.low());
        assertThat(squish.path("high").doubleValue()).isEqualTo(figure.high());
        assertThat(squish.path("standard_uncertainty").doubleValue()).isEqualTo(figure.standardUncertainty());
    }

    @Test
    void whatIsUnlimitedOrUnknownIsNullWithAReason() {
        JsonNode document = read(SampleAnswer.quiet(UnitSystem.METRIC_FIRST));
        JsonNode skirt = document.path("values").path(Term.SKIRT_BELOW_PIN.path());
        assertThat(skirt.path("low").isNull()).isTrue();
        assertThat(skirt.path("standard_uncertainty").isNull()).isTrue();
        assertThat(skirt.path("doubt_unknown_because").stringValue()).contains("skirt below pin");
        JsonNode stroke = document.path("values").path(Term.STROKE.path());
        assertThat(stroke.path("degrees_of_freedom").isNull()).isTrue();
        assertThat(stroke.path("low").isNumber()).isTrue();
        JsonNode wall = document.path("verdicts").get(3);
        assertThat(wall.path("term").stringValue()).isEqualTo(Term.SLEEVE_WALL.path());
        assertThat(wall.path("probability").isNull()).isTrue();
        assertThat(wall.path("most").isNull()).isTrue();
        assertThat(wall.path("why").stringValue()).isNotBlank();
        assertThat(document.path("next").get(1).path("now").isNull()).isTrue();
    }

    @Test
    void nothingOfTheAnswerIsLeftOut() {
        Answer answer = SampleAnswer.loud(UnitSystem.METRIC_FIRST);
        JsonNode document = read(answer);
        assertThat(document.path("values").size()).isEqualTo(answer.values().size());
        assertThat(document.path("verdicts").size()).isEqualTo(answer.verdicts().size());
        assertThat(document.path("findings").size()).isEqualTo(answer.findings().size());
        assertThat(document.path("stops").size()).isEqualTo(answer.stops().size());
        assertThat(document.path("unknowns").size()).isEqualTo(answer.unknowns().size());
        assertThat(document.path("defaults").size()).isEqualTo(answer.defaults().size());
        assertThat(document.path("next").size()).isEqualTo(answer.next().size());
        assertThat(document.path("movements").size())
                .isEqualTo(answer.movements().size());
    }

    @Test
    void everyTermMayStandInTheDocument() {
        JsonNode words = new JsonMapper()
                .readTree(AnswerJson.schema())
                .path("$defs")
                .path("term")
                .path("enum");
        assertThat(words.valueStream().map(JsonNode::stringValue))
                .containsExactlyElementsOf(
                        Arrays.stream(Term.values()).map(Term::path).toList());
    }

    /** RFC 8259, section 7: quotation mark, reverse solidus and control characters must be escaped. */
    @Test
    void anyNameComesBackAsItWas() {
        String name = "a\"b\\c\n\t\u0000\u001b\u007f\u0085 ± 測 \uD83D\uDD27";
        assertThat(read(SampleAnswer.named(name)).path("engine").stringValue()).isEqualTo(name);
        assertThat(AnswerJson.of(SampleAnswer.named("half \uD83D"))).contains("half \\ud83d");
    }

    @Test
    void numberThatIsNoneIsNotWritten() {
        assertThatThrownBy(() -> JsonText.of(Map.of("a", List.of(Double.NaN))))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("NaN");
    }

    private static JsonNode read(Answer answer) {
        return new JsonMapper().readTree(AnswerJson.of(answer));
    }

    private static List<Error> faults(String document) {
        Schema schema = SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
                .getSchema(AnswerJson.schema(), InputFormat.JSON);
        return schema.validate(document, InputFormat.JSON);
    }
}
