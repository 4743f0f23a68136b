package longthrow.workshop.print;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import longthrow.core.engine.Stops;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PageWordsTest {
    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            value = {
                "not known: flywheel rated speed (flywheel.rated_speed); not known: flywheel rated speed",
                "exhaust lobe centre (camshaft.exhaust_lobe_centre, 11 pairs); exhaust lobe centre (11 pairs)",
                "a part (not.a_place, 2 pairs); a part (not.a_place, 2 pairs)",
                "where use.duty is utility, show, yard; where duty is utility, show, yard",
                "read rocker.lift_ratio; read rocker.lift_ratio",
                "name catalogue files with --catalogue; add a catalogue on the page Parts",
                "add head_gasket to fit: choose:; tick head gasket under May be bought",
                "rules.keep[1].least read 1,27 mm as 1.27 mm; your limit no. 1, least read 1,27 mm as 1.27 mm",
                "3.5 and 1.27 mm in a.csv stay; 3.5 and 1.27 mm in a.csv stay",
            })
    void placesInAFileBecomeNames(String said, String shown) {
        assertThat(PageWords.said(said)).isEqualTo(shown);
    }

    @Test
    void aRuleIsChosenWhereItStands() {
        assertThat(PageWords.said("choose with rules: choose: squish_least: general or small_kart"))
                .isEqualTo("choose one of its sources where least squish stands on Measure");
        assertThat(PageWords.places("choose with rules: choose: squish_least: general"))
                .containsExactly(PageWords.Where.MEASURE);
    }

    @Test
    void howARatingIsVouchedForIsSaidByTheCard() {
        assertThat(PageWords.said(Stops.WHOSE_WORD)).contains("on its card").doesNotContain("{");
    }

    @Test
    void whatIsDoneElsewhereHasAPlace() {
        assertThat(PageWords.places("name catalogue files with --catalogue")).isEqualTo(List.of(PageWords.Where.PARTS));
        assertThat(PageWords.places("write aims: engine.squish: 1.27 mm")).isEqualTo(List.of(PageWords.Where.AIMS));
        assertThat(PageWords.places("hone the bore")).isEmpty();
    }
}
