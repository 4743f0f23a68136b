package longthrow.buildfile;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.util.List;
import java.util.stream.Stream;
import longthrow.core.build.Damage;
import longthrow.core.engine.Rule;
import longthrow.core.term.OutlinedPart;
import longthrow.core.term.Part;
import longthrow.core.term.Term;
import org.junit.jupiter.api.Test;

/** The documents in the repository say what the registry of terms says. */
class GeneratedDocumentsTest {
    private static final String MEND = "mvn -q -pl buildfile -am test -Dtest=GeneratedDocumentsTest"
            + " -Dsurefire.failIfNoSpecifiedTests=false -Dlongthrow.regenerate=true";

    @Test
    void schemaIsTheOneOfTheRegistry() throws IOException {
        check("docs/build-file.schema.json", BuildSchema.json());
    }

    @Test
    void glossaryIsTheOneOfTheRegistry() throws IOException {
        check("docs/glossary.md", Glossary.markdown());
    }

    @Test
    void glossaryNamesEveryTerm() {
        String glossary = Glossary.markdown();
        for (Term term : Term.values()) {
            assertThat(glossary).contains("| `" + term.key() + "` | " + term.label() + " |");
        }
    }

    /** As the README promises: every word a file may hold. */
    @Test
    void glossaryNamesEveryWordAFileMayHold() {
        String glossary = Glossary.markdown();
        Stream<String> keys = Stream.of(
                        Layout.TOP_LEVEL,
                        Layout.INSTRUMENT_KEYS,
                        Layout.RULES_KEYS,
                        Layout.OWN_RULE_KEYS,
                        Layout.DAMAGE_KEYS,
                        Layout.LIFT_TABLE_KEYS,
                        Layout.LIFT_VALVES,
                        Layout.LIFT_AT,
                        Layout.OUTLINE_KEYS,
                        OutlinedPart.keys(),
                        Layout.BENCH_KEYS,
                        Layout.FIT_KEYS,
                        Layout.TAKEN_PART_KEYS,
                        Layout.TAKEN_WORK_KEYS)
                .flatMap(List::stream);
        assertThat(keys).allSatisfy(key -> assertThat(glossary).contains("`" + key + "`"));
        for (Layout.Form form : Layout.Form.values()) {
            assertThat(form.keys()).allSatisfy(key -> assertThat(glossary).contains("| `" + key + "` |"));
        }
        for (Part part : Part.values()) {
            assertThat(Layout.keys(part))
                    .allSatisfy(key -> assertThat(glossary).containsPattern("`[a-z_: ]*" + key + "`"));
        }
        for (Rule rule : Rule.values()) {
            assertThat(rule.alternatives())
                    .allSatisfy(alternative -> assertThat(glossary)
                            .contains("| `" + rule.key() + "` | " + rule.label() + " | `" + alternative.key() + "` "
                                    + alternative.label() + " | "
                                    + alternative.condition().text() + " | "
                                    + alternative.limits() + " |"));
        }
        for (Damage.Kind kind : Damage.Kind.values()) {
            assertThat(glossary).contains("- `" + kind.key() + "` " + kind.label());
        }
    }

    private static void check(String path, String wanted) throws IOException {
        if (Boolean.getBoolean("longthrow.regenerate")) {
            Files.writeString(Repository.at(path), wanted);
        }
        assertThat(Files.exists(Repository.at(path)) ? Repository.text(path) : "")
                .as(path + " differs from the registry of terms; write it anew with: " + MEND)
                .isEqualTo(wanted);
    }
}
