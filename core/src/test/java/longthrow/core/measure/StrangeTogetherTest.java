package longthrow.core.measure;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import longthrow.core.answer.Answer;
import longthrow.core.answer.Finding;
import longthrow.core.answer.Verdict;
import longthrow.core.term.Choice;
import longthrow.core.term.Term;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** An invented engine each size of which can be believed by itself. */
class StrangeTogetherTest {
    private static Builds engine(String bore, String stroke, String gasketBore) {
        return Builds.engine("invented")
                .typed(Term.BORE, bore + " ± 0.01 mm")
                .typed(Term.STROKE, stroke + " ± 0.02 mm")
                .typed(Term.GASKET_BORE, gasketBore + " ± 0.02 mm")
                .typed(Term.GASKET_THICKNESS, "1.30 mm ± 0.03 mm")
                .typed(Term.DECK_CLEARANCE, "0.07 mm ± 0.03 mm")
                .typed(Term.CROWN_VOLUME, "1.1 cc ± 0.15 cc")
                .typed(Term.CHAMBER_VOLUME, "16.2 cc ± 0.2 cc");
    }

    private static Answer measure(Builds engine) {
        return Measure.of(engine.build(), List.of());
    }

    /** 68.5 over 40.00 is 28.5 mm: no gasket is to be bought to mend a bore read wrong. */
    @Test
    void aGasketHoleFarOverTheBoreIsADoubtOnBothReadingsAndBuysNothing() {
        Answer answer = measure(engine("40.00 mm", "56.50 mm", "68.5 mm"));
        assertThat(answer.findings())
                .filteredOn(f -> f.kind() == Finding.Kind.SUSPECT)
                .singleElement()
                .satisfies(f -> {
                    assertThat(f.where()).contains("gasket.bore", "cylinder.bore");
                    assertThat(f.message()).contains("gasket bore 68.5", "bore 40", "28.5", "10 mm");
                    assertThat(f.mend()).startsWith("read both again");
                });
        assertThat(answer.verdicts()).noneMatch(v -> v.cure().contains("gasket with a hole"));
        assertThat(answer.verdicts())
                .filteredOn(v -> v.term() == Term.COMPRESSION_RATIO || v.term() == Term.GASKET_OVER_BORE)
                .as("nothing is judged by it")
                .allMatch(v -> v.state() == Verdict.State.UNKNOWN);
        assertThat(answer.value(Term.COMPRESSION_RATIO))
                .get()
                .satisfies(v -> assertThat(v.contradicted()).isTrue());
        assertThat(Appraisal.sound(engine("40.00 mm", "56.50 mm", "68.5 mm").build())
                        .figure(Term.SWEPT_VOLUME))
                .isEmpty();
    }

    /** In a side-valve head the hole takes in the valves: 66 mm and 82 mm of the same area are no slip. */
    @Test
    void aHoleThatTakesInTheValvesIsNone() {
        Builds side = engine("66.00 mm", "56.50 mm", "82 mm").choose(Choice.VALVE_LAYOUT, "side");
        assertThat(measure(side).findings()).noneMatch(f -> f.mend().startsWith("read both again"));
        assertThat(measure(engine("66.00 mm", "56.50 mm", "82 mm")).findings())
                .anyMatch(f -> f.mend().startsWith("read both again"));
    }

    @Test
    void aUsualGasketIsNoDoubt() {
        Answer answer = measure(engine("66.00 mm", "56.50 mm", "68.5 mm"));
        assertThat(answer.findings()).noneMatch(f -> f.mend().startsWith("read both again"));
        assertThat(answer.value(Term.COMPRESSION_RATIO))
                .get()
                .satisfies(v -> assertThat(v.contradicted()).isFalse());
    }

    /** pi/4 x 31^2 x 26 = 19.6 cc; pi/4 x 39^2 x 41.4 = 49.5 cc, as minibikes have; pi/4 x 100^2 x 95 = 746 cc. */
    @ParameterizedTest
    @CsvSource({
        "31.00 mm, 26.00 mm, 33 mm, 19.6, true",
        "39.00 mm, 41.40 mm, 41 mm, 49.5, false",
        "100.00 mm, 95.00 mm, 103 mm, 746, true"
    })
    void aDisplacementThisProgramIsNotForIsAWarningThatNamesBoth(
            String bore, String stroke, String gasket, String volume, boolean warned) {
        Answer answer = measure(engine(bore, stroke, gasket));
        List<Finding> doubts = answer.findings().stream()
                .filter(f -> f.message().contains("80 to 500 cc") && f.mend().startsWith("read both again"))
                .toList();
        assertThat(doubts).hasSize(warned ? 1 : 0);
        if (warned) {
            assertThat(doubts.get(0).kind()).isEqualTo(Finding.Kind.WARNING);
            assertThat(doubts.get(0).where()).contains("cylinder.bore", "crankshaft.stroke");
            assertThat(doubts.get(0).message()).contains(volume);
            assertThat(answer.verdicts())
                    .filteredOn(v -> v.term() == Term.GASKET_OVER_BORE || v.term() == Term.COMPRESSION_RATIO)
                    .allMatch(v -> v.cure().isEmpty() || v.cure().startsWith("first read bore and stroke again"));
        }
    }

    @Test
    void aLimitWithoutRoomIsSaidAndCutsNothing() {
        Answer answer =
                measure(engine("66.00 mm", "56.50 mm", "68.5 mm").keep("even", Term.BORE, "66.2 mm", "66.2 mm", null));
        assertThat(answer.verdicts())
                .filteredOn(v -> v.rule().equals("own:even"))
                .singleElement()
                .satisfies(v -> {
                    assertThat(v.state()).isEqualTo(Verdict.State.UNKNOWN);
                    assertThat(v.why()).contains("its least and its most are the same");
                    assertThat(v.cure()).startsWith("give the limit a range").doesNotContain("bore it out");
                });
    }
}
