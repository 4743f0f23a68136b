package longthrow.core.measure;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import longthrow.core.answer.Answer;
import longthrow.core.answer.DefaultUsed;
import longthrow.core.answer.Finding;
import longthrow.core.build.Build;
import longthrow.core.term.Term;
import org.junit.jupiter.api.Test;

/** Aims against an invented stack: deck height 139.62, stroke 56.50, rod 86.40, compression height 24.90, gasket 1.30: squish 1.37. */
class AimsTest {
    private static Builds stack() {
        return Builds.engine("invented")
                .typed(Term.BORE, "66.00 mm ± 0.01 mm")
                .typed(Term.DECK_HEIGHT, "139.62 mm ± 0.05 mm")
                .typed(Term.STROKE, "56.50 mm ± 0.02 mm")
                .typed(Term.ROD_LENGTH, "86.40 mm ± 0.03 mm")
                .typed(Term.COMPRESSION_HEIGHT, "24.90 mm ± 0.02 mm")
                .typed(Term.GASKET_THICKNESS, "1.30 mm ± 0.03 mm");
    }

    private static List<Finding> aims(Build build) {
        return Measure.of(build, List.of()).findings().stream()
                .filter(f -> f.where().startsWith("aims."))
                .toList();
    }

    @Test
    void whatIsAimedAtStandsBesideWhatThereIs() {
        assertThat(aims(stack().aim(Term.SQUISH, "1.27 mm").build()))
                .singleElement()
                .satisfies(f -> {
                    assertThat(f.message()).contains("aimed at 1.27 mm", "it is 1.37 mm", "0.10 mm", "above the aim");
                    assertThat(f.kind()).isEqualTo(Finding.Kind.NOTE);
                });
    }

    @Test
    void anAimWithinTheDoubtIsSaidToBeThere() {
        assertThat(aims(stack().aim(Term.SQUISH, "1.40 mm").build()))
                .singleElement()
                .satisfies(f -> assertThat(f.message()).endsWith("the aim lies within the doubt"));
    }

    @Test
    void anAimNoEngineOfThisKindHasIsQuestioned() {
        assertThat(aims(stack().aim(Term.SQUISH, "100 mm").build()))
                .anyMatch(f -> f.kind() == Finding.Kind.WARNING && f.message().contains("0.2 mm"));
        assertThat(aims(stack().aim(Term.COMPRESSION_RATIO, "1000").build()))
                .anyMatch(f -> f.kind() == Finding.Kind.WARNING && f.message().contains("1000"));
    }

    /** What readings are weighed by is no silent default. */
    @Test
    void whatEveryEngineIsTakenToHaveIsListed() {
        Answer answer = Measure.of(stack().build(), List.of());
        assertThat(answer.defaults())
                .extracting(DefaultUsed::what)
                .anyMatch(w -> w.contains("1.1 mm (0.043 in) proud of the deck to 3.6 mm (0.142 in) below"));
        Answer sides = Measure.of(
                stack().typed(Term.DECK_CLEARANCE_THRUST, "0.10 mm ± 0.03 mm")
                        .typed(Term.DECK_CLEARANCE_ANTITHRUST, "0.05 mm ± 0.03 mm")
                        .typed(Term.DECK_CLEARANCE, "0.07 mm ± 0.03 mm")
                        .build(),
                List.of());
        assertThat(sides.defaults())
                .extracting(DefaultUsed::what)
                .anyMatch(w -> w.contains("stand level across the pin within 0.29 mm"));
    }

    @Test
    void nothingIsWorkedOutForAnAimNoEngineHas() {
        Answer answer = Measure.of(stack().aim(Term.SQUISH, "500 mm").build(), List.of());
        assertThat(answer.value(Term.ROD_LENGTH_WANTED)).isEmpty();
        assertThat(aims(stack().aim(Term.SQUISH, "500 mm").build()))
                .singleElement()
                .satisfies(f -> assertThat(f.mend()).doesNotContain("fit"));
    }
}
