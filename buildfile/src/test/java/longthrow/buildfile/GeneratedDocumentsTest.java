package longthrow.buildfile;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
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

    private static void check(String path, String wanted) throws IOException {
        if (Boolean.getBoolean("longthrow.regenerate")) {
            Files.writeString(Repository.at(path), wanted);
        }
        assertThat(Files.exists(Repository.at(path)) ? Repository.text(path) : "")
                .as(path + " differs from the registry of terms; write it anew with: " + MEND)
                .isEqualTo(wanted);
    }
}
