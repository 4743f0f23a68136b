package longthrow.core.build;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import longthrow.core.term.Part;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A maker's word is told by its form, never by words that happen to be there. */
class WhoseTest {
    @ParameterizedTest
    @CsvSource({
        "the rod maker's sheet, ROD, MAKERS",
        "the rod's maker, ROD, MAKERS",
        "connecting rod maker's sheet, ROD, MAKERS",
        "the engine maker's manual, ROD, MAKERS",
        "the rod maker's sheet, USE, SOMEBODYS",
        "the rod maker's sheet, FLYWHEEL, SOMEBODYS",
        "the wheel maker's sheet, FLYWHEEL, MAKERS",
        "the wheel maker's sheet, ROD, SOMEBODYS",
        "the donor maker's sheet, CRANKSHAFT, MAKERS",
        "the donor maker's sheet, ROD, SOMEBODYS",
        "the aftermarket maker, ROD, SOMEBODYS",
        "a maker, ROD, SOMEBODYS",
        "the maker's own words, ROD, SOMEBODYS",
        "sheet, ROD, SOMEBODYS",
        "the seller, ROD, SELLERS",
        "'', ROD, NOBODYS"
    })
    void theFormAndThePartDecide(String by, Part part, Whose whose) {
        assertThat(Whose.of(by, false, part)).isEqualTo(whose);
    }

    /** A catalogue is its seller's, unless it names the maker, alone or behind its code. */
    @ParameterizedTest
    @CsvSource({
        "R3, ROD, SELLERS",
        "'R3, the maker''s sheet', ROD, MAKERS",
        "'R3, the rod maker''s sheet', ROD, MAKERS",
        "'R3, the wheel maker''s sheet', ROD, SELLERS",
        "'shop list, the maker', ROD, SELLERS",
        "'R3, hearsay from the maker', ROD, SELLERS",
        "the maker, ROD, MAKERS",
        "'', ROD, SELLERS"
    })
    void aCatalogueIsItsSellers(String by, Part part, Whose whose) {
        assertThat(Whose.of(by, true, part)).isEqualTo(whose);
    }

    @Test
    void everyFormThatIsAdvisedCounts() {
        for (String form : List.of(
                "the maker",
                "the maker's sheet",
                "the maker's plate",
                "the maker's stamp",
                "the maker's manual",
                "its maker",
                "the engine's plate")) {
            for (Part part : Part.values()) {
                assertThat(Whose.of(form, false, part)).as(form).isEqualTo(Whose.MAKERS);
            }
        }
    }
}
