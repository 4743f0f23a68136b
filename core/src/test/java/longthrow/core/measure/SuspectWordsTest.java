package longthrow.core.measure;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import longthrow.core.answer.Answer;
import longthrow.core.answer.Finding;
import longthrow.core.answer.Result;
import longthrow.core.answer.Verdict;
import longthrow.core.term.Term;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Suspects as an owner reads them: one slip in an invented engine whose deck clearance comes out at 0.07 mm. */
class SuspectWordsTest {
    private static final Pattern SHARE = Pattern.compile("is suspect \\((?:over |under )?(\\d+) %\\)");

    private static Builds sheet(String bore, String deckHeight, String gasket, String... rod) {
        return Builds.engine("one slip")
                .typed(Term.BORE, bore + " ± 0.01 mm")
                .typed(Term.GASKET_THICKNESS, gasket + " ± 0.03 mm")
                .typed(Term.GASKET_BORE, "68.50 mm ± 0.01 mm")
                .typed(Term.CHAMBER_VOLUME, "16.2 cc ± 0.2 cc")
                .typed(Term.CROWN_VOLUME, "1.1 cc ± 0.15 cc")
                .typed(Term.DECK_HEIGHT, deckHeight + " ± 0.05 mm")
                .typed(Term.STROKE, "56.50 mm ± 0.02 mm")
                .typed(Term.PIN_DIAMETER, "17.00 mm ± 0.001 mm")
                .typed(Term.PIN_TOP_TO_CROWN, "16.40 mm ± 0.02 mm")
                .readings(Term.ROD_LENGTH, "caliper", rod);
    }

    private static List<Finding> suspects(Answer answer) {
        return answer.findings().stream()
                .filter(f -> f.kind() == Finding.Kind.SUSPECT)
                .toList();
    }

    private static Answer measured(Builds sheet) {
        return Measure.of(sheet.build(), List.of());
    }

    private static void shareNeverOverAHundred(Answer answer) {
        List<Integer> shares = new ArrayList<>();
        for (Finding f : suspects(answer)) {
            Matcher m = SHARE.matcher(f.message());
            if (m.find()) {
                shares.add(Integer.valueOf(m.group(1)));
            }
        }
        assertThat(shares.stream().mapToInt(Integer::intValue).sum()).isLessThanOrEqualTo(101); // rounded one by one
    }

    @Test
    void aSoundSheetHasNoSuspect() {
        Answer answer = measured(sheet("66.00 mm", "139.62 mm", "1.30 mm", "86.40 mm", "86.42 mm"));
        assertThat(suspects(answer)).isEmpty();
        assertThat(answer.findings()).noneMatch(f -> f.message().contains("widened"));
    }

    /** 660.0 and 6.600 for 66.00, 13.0 for 1.30: the decimal point. */
    @ParameterizedTest
    @CsvSource({
        "660.0 mm, 1.30 mm, cylinder.bore, 66.0",
        "6.600 mm, 1.30 mm, cylinder.bore, 66.0",
        "66.00 mm, 13.0 mm, gasket.thickness, 1.3"
    })
    void aFigureNoEngineHasIsNamedFirstWithItsDecimalPoint(String bore, String gasket, String place, String mended) {
        Answer answer = measured(sheet(bore, "139.62 mm", gasket, "86.40 mm"));
        assertThat(suspects(answer)).singleElement().satisfies(f -> {
            assertThat(f.where()).isEqualTo(place);
            assertThat(f.message()).contains("decimal point", mended);
        });
        assertThat(answer.value(Term.COMPRESSION_RATIO)).isEmpty();
        assertThat(answer.verdictsOn(Term.COMPRESSION_RATIO)).noneMatch(v -> v.state() != Verdict.State.UNKNOWN);
        assertThat(answer.next().get(0).read().path()).isEqualTo(place);
    }

    /** 20 mm is less than any rod: nothing innocent is blamed, and nothing is proposed that no engine has. */
    @Test
    void aRodShorterThanAnyIsBlamedItself() {
        Answer answer = measured(sheet("66.00 mm", "139.62 mm", "1.30 mm", "20.00 mm"));
        assertThat(suspects(answer))
                .singleElement()
                .satisfies(f -> assertThat(f.where()).isEqualTo("connecting_rod.length"));
    }

    @Test
    void swappedDigitsAreNamed() {
        Answer answer = measured(sheet("66.00 mm", "139.62 mm", "1.30 mm", "68.40 mm"));
        assertThat(suspects(answer).get(0).where()).isEqualTo("connecting_rod.length");
        assertThat(suspects(answer).get(0).message()).contains("two digits changed places", "86.40 mm");
        shareNeverOverAHundred(answer);
    }

    /** 129.62 for 139.62: a radius added twice explains it too, so the true slip need not stand first, but it must be named. */
    @Test
    void aMisreadDigitIsNamedBesideWhatExplainsItAsWell() {
        Answer answer = measured(sheet("66.00 mm", "129.62 mm", "1.30 mm", "86.40 mm"));
        assertThat(suspects(answer).toString()).contains("cylinder.deck_height", "139.62");
        shareNeverOverAHundred(answer);
    }

    @ParameterizedTest
    @CsvSource({"86.40 mm, 86.90 mm", "86.90 mm, 86.40 mm", "86.40 mm, 86.60 mm", "86.40 mm, 86.04 mm"})
    void ofTwoReadingsThatDifferEitherMayBeWrong(String one, String two) {
        Answer answer = measured(sheet("66.00 mm", "139.62 mm", "1.30 mm", one, two));
        assertThat(suspects(answer))
                .singleElement()
                .satisfies(f -> assertThat(f.message()).contains(one, two, "either may be wrong"));
        assertThat(answer.value(Term.ROD_LENGTH)).get().matches(Result::contradicted);
        assertThat(answer.value(Term.SQUISH)).get().matches(Result::contradicted);
        assertThat(answer.verdictsOn(Term.SQUISH)).allMatch(v -> v.state() == Verdict.State.UNKNOWN);
    }

    /** 0.12 mm apart, where a caliper on a rod leaves two readings within 0.10 mm: no alarm, but the interval must hold both. */
    @Test
    void twoReadingsFartherApartThanUsualWidenTheDoubt() {
        Answer answer = measured(sheet("66.00 mm", "139.62 mm", "1.30 mm", "86.40 mm", "86.52 mm"));
        assertThat(answer.value(Term.ROD_LENGTH)).get().satisfies(r -> {
            assertThat(r.figure().low()).isLessThan(86.40e-3);
            assertThat(r.figure().high()).isGreaterThan(86.52e-3);
        });
        assertThat(answer.findings())
                .anyMatch(f -> f.where().equals("connecting_rod.length")
                        && f.message().contains("differ by 0.12 mm")
                        && f.message().contains("widened"));
    }

    /** Two of three agree: the figure is theirs, (86.40 + 86.41) / 2, and stays marked. */
    @Test
    void theTwoOfThreeThatAgreeGiveTheFigure() {
        Answer answer = measured(sheet("66.00 mm", "139.62 mm", "1.30 mm", "86.40 mm", "86.41 mm", "86.90 mm"));
        assertThat(suspects(answer))
                .singleElement()
                .satisfies(f -> assertThat(f.message()).contains("reading 3", "86.90 mm"));
        Result rod = answer.value(Term.ROD_LENGTH).orElseThrow();
        assertThat(rod.contradicted()).isTrue();
        assertThat(rod.figure().value()).isCloseTo(86.405e-3, org.assertj.core.api.Assertions.within(0.005e-3));
    }

    @Test
    void whatWasReadAndSetAsideIsReadAgainNotRead() {
        Answer answer = measured(sheet("660.0 mm", "139.62 mm", "1.30 mm", "86.40 mm"));
        assertThat(answer.unknowns())
                .anyMatch(u -> u.term() == Term.BORE && u.why().contains("read again what is set aside"));
    }

    @Test
    void theLobeCentreAsksForWhatIsReadForIt() {
        assertThat(measured(sheet("66.00 mm", "139.62 mm", "1.30 mm", "86.40 mm"))
                        .unknowns())
                .filteredOn(u -> u.term() == Term.INTAKE_LOBE_CENTRE)
                .singleElement()
                .satisfies(
                        u -> assertThat(u.missing()).containsExactlyInAnyOrder(Term.INTAKE_OPENS, Term.INTAKE_CLOSES));
    }

    /** A wish and a plate are not readings. */
    @Test
    void aWantedSpeedIsAWish() {
        Answer answer = measured(
                sheet("66.00 mm", "139.62 mm", "1.30 mm", "86.40 mm").readings(Term.WANTED_SPEED, null, "6500 rpm"));
        assertThat(answer.value(Term.WANTED_SPEED)).get().satisfies(r -> {
            assertThat(r.figure().standardUncertainty()).isZero();
            assertThat(r.provenance()).extracting(p -> p.label()).containsExactly("as stated");
        });
    }
}
