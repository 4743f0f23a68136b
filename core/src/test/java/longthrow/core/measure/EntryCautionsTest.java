package longthrow.core.measure;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import longthrow.core.answer.Finding;
import longthrow.core.build.Build;
import longthrow.core.build.Given;
import longthrow.core.engine.Stops;
import longthrow.core.term.Term;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What is said of an entry by itself. The figures are invented; the ranges are those of the terms. */
class EntryCautionsTest {
    private static List<Finding> cautions(Builds builds, Term term) {
        Build build = builds.build();
        Given given = build.of(term).get(0);
        return EntryCautions.of(build, term, given, term.path());
    }

    /** 6.5 rpm is no speed of an engine and 6500 is one; 65.541 mm is a bore as it stands; 0.500 and 6.5 have no thousands. */
    @ParameterizedTest
    @CsvSource({
        "WANTED_SPEED, 6.500 rpm, 6500 rpm",
        "WANTED_SPEED, 5.2 rpm, ''",
        "WANTED_SPEED, 5200 rpm, ''",
        "BORE, 65.541 mm, ''",
        "BORE, 0.065 mm, ''"
    })
    void aPointThatMayPartThousandsIsSaid(Term term, String written, String meant) {
        List<Finding> said = cautions(Builds.engine("one").readings(term, null, written), term);
        if (meant.isEmpty()) {
            assertThat(said).isEmpty();
        } else {
            assertThat(said)
                    .singleElement()
                    .satisfies(f -> assertThat(f.message() + f.mend()).contains(written, meant));
        }
    }

    @Test
    void theAnswerNamesBothThePointThatPartsThousandsAndTheSlip() {
        Build build = Builds.engine("one")
                .readings(Term.WANTED_SPEED, null, "6.500 rpm")
                .build();
        assertThat(Measure.of(build, List.of()).findings())
                .filteredOn(f -> f.kind() == Finding.Kind.SUSPECT)
                .singleElement()
                .satisfies(f -> {
                    assertThat(f.message()).contains("if the point parts thousands, 6500 rpm was meant", "Or ");
                    assertThat(f.mend()).contains("6500 rpm");
                });
        assertThat(build.of(Term.WANTED_SPEED).get(0).figure()).get().hasToString("6.500 rpm");
    }

    /** Wider than the figure where the figure cannot be near nothing; a small figure near nothing may be less than its doubt. */
    @ParameterizedTest
    @CsvSource({
        "BORE, 66 mm ± 70 mm, true",
        "BORE, 66 mm ± 66 mm, false",
        "BORE, 66.01 mm ± 0.01 mm, false",
        "CRANK_RUN_OUT, 0.01 mm ± 0.02 mm, false",
        "CRANK_RUN_OUT, 0.01 mm ± 70 mm, true",
        "CROWN_VOLUME, 0 cc ± 0.5 cc, false"
    })
    void aDoubtThatLeavesNothingOfTheFigureIsSaid(Term term, String written, boolean said) {
        Builds one = Builds.engine("one").typed(term, written);
        assertThat(cautions(one, term)).hasSize(said ? 1 : 0);
        assertThat(Measure.of(one.build(), List.of()).findings())
                .filteredOn(f -> f.message().contains("its ± of"))
                .as("said once in the answer, too")
                .hasSize(said ? 1 : 0);
    }

    @Test
    void aRatingThatIsNobodysWordIsSaidAndAMakersIsNot() {
        assertThat(cautions(
                        Builds.engine("one").readings(Term.ROD_RATED_SPEED, null, "8000 rpm"), Term.ROD_RATED_SPEED))
                .singleElement()
                .satisfies(f -> assertThat(f.mend()).isEqualTo(Stops.WHOSE_WORD));
        assertThat(cautions(
                        Builds.engine("one").specified(Term.ROD_RATED_SPEED, "8000 rpm", null, "the rod maker"),
                        Term.ROD_RATED_SPEED))
                .isEmpty();
        assertThat(cautions(
                        Builds.engine("one").specified(Term.ROD_RATED_SPEED, "8000 rpm", null, " "),
                        Term.ROD_RATED_SPEED))
                .as("a sheet of nobody")
                .hasSize(1);
    }
}
