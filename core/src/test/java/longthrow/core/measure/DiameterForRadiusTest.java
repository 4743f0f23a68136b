package longthrow.core.measure;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import longthrow.core.answer.Answer;
import longthrow.core.answer.Finding;
import longthrow.core.build.Build;
import longthrow.core.term.Term;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * A diameter written for a radius, or the other way, believable by itself: only bodies that would stand far inside each other tell. The engine's gaps are
 * sums of its sizes: 86.40 - 56.50 / 2 - 17.60 - 38.90 = 1.65 mm from skirt to counterweight.
 */
class DiameterForRadiusTest {
    private static Builds engine() {
        return Builds.engine("invented")
                .typed(Term.BORE, "66.00 mm ± 0.01 mm")
                .readings(Term.DECK_HEIGHT, "height_gauge", "139.62 mm", "139.63 mm")
                .typed(Term.STROKE, "56.50 mm ± 0.02 mm")
                .typed(Term.ROD_LENGTH, "86.40 mm ± 0.03 mm")
                .readings(Term.COMPRESSION_HEIGHT, "caliper", "24.90 mm")
                .typed(Term.SKIRT_BELOW_PIN, "17.60 mm ± 0.05 mm")
                .readings(Term.PIN_DIAMETER, "micrometer", "17.000 mm");
    }

    private static Builds fitted() {
        return engine().typed(Term.COUNTERWEIGHT_RADIUS, "38.90 mm ± 0.03 mm");
    }

    @Test
    void aDiameterWrittenForTheRadiusOfTheCounterweightIsNamedFirst() {
        Build build =
                engine().typed(Term.COUNTERWEIGHT_RADIUS, "77.80 mm ± 0.03 mm").build();
        Answer answer = Measure.of(build, List.of());
        Finding first = answer.findings().get(0);
        assertThat(first.kind()).isEqualTo(Finding.Kind.SUSPECT);
        assertThat(first.where()).isEqualTo("crankshaft.counterweight_radius");
        assertThat(first.message()).contains("radius and diameter were mixed up", "All agree if it is 38.900 mm");
        assertThat(answer.next().get(0).read()).isEqualTo(Term.COUNTERWEIGHT_RADIUS);
        assertThat(answer.stops())
                .filteredOn(s -> s.why().contains("the skirt would strike the counterweight"))
                .singleElement()
                .satisfies(s ->
                        assertThat(s.wayRound()).contains("is worked out from: crankshaft.counterweight_radius, "));
        assertThat(answer.defaults())
                .anyMatch(d -> d.toString().contains("skirt to counterweight of 0 mm (0.00 in) to 20 mm (0.79 in)"));
    }

    @ParameterizedTest
    @CsvSource({
        "piston.diameter, 32.98 mm ± 0.01 mm, 65.960 mm",
        "connecting_rod.small_end_bore, 8.51 mm ± 0.01 mm, 17.020 mm",
        "cylinder.bore, 33.00 mm ± 0.01 mm, 66.000 mm"
    })
    void aRadiusWrittenForADiameterIsNamedFirst(String path, String radius, String diameter) {
        Term term = Term.at(path).orElseThrow();
        Builds builds = Builds.engine("invented")
                .typed(Term.STROKE, "56.50 mm ± 0.02 mm")
                .readings(Term.PIN_DIAMETER, "micrometer", "17.000 mm")
                .typed(term, radius);
        if (term != Term.PISTON_DIAMETER) {
            builds.typed(Term.PISTON_DIAMETER, "65.96 mm ± 0.01 mm");
        }
        if (term != Term.BORE) {
            builds.typed(Term.BORE, "66.00 mm ± 0.01 mm");
        }
        if (term == Term.BORE) {
            builds.typed(Term.GASKET_BORE, "66.50 mm ± 0.05 mm");
        }
        Answer answer = Measure.of(builds.build(), List.of());
        assertThat(answer.findings().get(0).message()).contains("radius and diameter were mixed up");
        assertThat(answer.findings().stream().filter(f -> f.kind() == Finding.Kind.SUSPECT))
                .anyMatch(f -> f.where().equals(path) && f.message().contains("All agree if it is " + diameter));
    }

    /** A counterweight that is really too large by a few millimetres is refused, and nobody's reading is blamed. */
    @Test
    void aRealInterferenceBlamesNoReading() {
        Build build =
                engine().typed(Term.COUNTERWEIGHT_RADIUS, "46.00 mm ± 0.03 mm").build();
        Answer answer = Measure.of(build, List.of());
        assertThat(answer.findings()).noneMatch(f -> f.kind() == Finding.Kind.SUSPECT);
        assertThat(answer.stops()).anyMatch(s -> s.refused() && s.why().contains("the skirt would strike"));
    }

    @Test
    void nothingIsTakenForGrantedOfGapsThatCanBe() {
        Answer answer = Measure.of(fitted().build(), List.of());
        assertThat(answer.defaults()).noneMatch(d -> d.toString().contains("skirt to counterweight"));
    }

    // ---- what an edit breaks, while it is typed

    @Test
    void anEditThatLeavesNoRoomSaysSoBeforeItIsKept() {
        Glimpse before = Glimpse.of(fitted().build());
        Glimpse tooLarge = Glimpse.of(
                engine().typed(Term.COUNTERWEIGHT_RADIUS, "46.00 mm ± 0.03 mm").build());
        assertThat(tooLarge.brokenSince(before))
                .first()
                .satisfies(f -> assertThat(f.message())
                        .contains(
                                "skirt to counterweight comes out at -5.45",
                                "the skirt would strike the counterweight"));
        assertThat(before.brokenSince(tooLarge)).isEmpty();
        assertThat(tooLarge.brokenSince(tooLarge)).isEmpty();
    }

    @Test
    void anEditThatBreaksARuleSaysWhich() {
        Glimpse before = Glimpse.of(
                fitted().typed(Term.TOP_RING_GAP, "0.30 mm ± 0.02 mm").build());
        Glimpse tight = Glimpse.of(
                fitted().typed(Term.TOP_RING_GAP, "0.05 mm ± 0.02 mm").build());
        assertThat(tight.brokenSince(before))
                .anySatisfy(f -> assertThat(f.message()).contains("fails: top ring gap 0.050"));
    }

    @Test
    void anEditThatOnlyMovesAFigureBreaksNothingNew() {
        Glimpse refused = Glimpse.of(
                engine().typed(Term.COUNTERWEIGHT_RADIUS, "46.00 mm ± 0.03 mm").build());
        Glimpse alike = Glimpse.of(
                engine().typed(Term.COUNTERWEIGHT_RADIUS, "46.50 mm ± 0.03 mm").build());
        assertThat(alike.brokenSince(refused)).isEmpty();
    }
}
