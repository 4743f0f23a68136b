package longthrow.core.measure;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import longthrow.core.ReferenceRows;
import longthrow.core.build.Instrument;
import longthrow.core.term.InstrumentKind;
import longthrow.core.term.Term;
import org.junit.jupiter.api.Test;

/** Scatter of repeated readings of the measure question, against JCGM 100:2008, 4.2, as in the reference rows UNC-04. */
class ReadingSetValidationTest {
    @Test
    void scatterOfTheMeanIsTheGuidesTypeA() {
        Instrument gauge = Instrument.builtIn(InstrumentKind.DIAL_INDICATOR);
        ReadingSet set = new ReadingSet(
                Term.DECK_CLEARANCE,
                "here",
                List.of(0.152e-3, 0.149e-3, 0.155e-3, 0.151e-3, 0.15e-3, 0.154e-3),
                gauge,
                0.01e-3,
                30);
        ReferenceRows.of("01_uncertainty").row("UNC-04.2").check(set.scatter() / Math.sqrt(set.count()) * 1e3);
        assertThat(set.freedom()).isEqualTo(5);
    }
}
