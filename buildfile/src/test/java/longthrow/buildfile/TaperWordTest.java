package longthrow.buildfile;

import static org.assertj.core.api.Assertions.assertThat;

import longthrow.core.catalogue.CataloguePart;
import longthrow.core.term.Choice;
import longthrow.core.term.TaperRate;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A taper is compared, so it is no free word. */
class TaperWordTest {
    private static final String HEAD = "longthrow: 1\nengine:\n  name: One\n";

    private static ReadBuild taper(String words) {
        return BuildFile.read(HEAD + "crankshaft:\n  taper: " + words + "\n");
    }

    @Test
    void aRateIsKeptAsItStands() {
        assertThat(taper("1:8").build().orElseThrow().choice(Choice.CRANK_TAPER_FORM))
                .contains("1:8");
        assertThat(taper("unknown").build().orElseThrow().choice(Choice.CRANK_TAPER_FORM))
                .isEmpty();
    }

    @ParameterizedTest
    @ValueSource(strings = {"banana", "1 in 8", "steep"})
    void anythingElseIsRefusedWithWhatIsAllowed(String words) {
        assertThat(taper(words).faults()).singleElement().satisfies(f -> {
            assertThat(f.found()).isEqualTo(words);
            assertThat(f.line()).isEqualTo(5);
            assertThat(f.allowed()).contains(TaperRate.ALLOWED);
            assertThat(f.mend()).isEqualTo(TaperRate.mend(words));
        });
    }

    @Test
    void aCellOfACatalogueCostsItsRow() {
        Imported read = CatalogueFileTest.csv("flywheel.csv", "code,taper\nW1,1:8\nW2,banana\n");
        assertThat(read.parts()).extracting(CataloguePart::code).containsExactly("W1");
        assertThat(read.fates().get(1).reasons())
                .singleElement()
                .satisfies(f -> assertThat(f.allowed()).isEqualTo(TaperRate.ALLOWED));
    }
}
