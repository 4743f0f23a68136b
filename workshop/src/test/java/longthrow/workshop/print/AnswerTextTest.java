package longthrow.workshop.print;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.stream.Stream;
import longthrow.core.answer.Answer;
import longthrow.core.quantity.UnitSystem;
import longthrow.workshop.SampleAnswer;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What an owner must be able to read off the sheet; the layout itself is free to change. */
class AnswerTextTest {
    private static final String ESCAPE = "\u001b";

    @ParameterizedTest
    @MethodSource("layouts")
    void noLineIsWiderThanThePageOrEndsInSpaces(Answer answer, int width, boolean all) {
        assertThat(AnswerText.of(answer, width, false, all).lines()).allSatisfy(line -> {
            assertThat(PlainText.width(line)).isLessThanOrEqualTo(width);
            assertThat(line).isEqualTo(line.stripTrailing());
        });
    }

    static Stream<Object[]> layouts() {
        return Stream.of(60, 61, 72, 80, 100, 120, 200)
                .flatMap(width -> Stream.of(true, false)
                        .flatMap(all -> Stream.of(
                                        SampleAnswer.loud(UnitSystem.METRIC_FIRST),
                                        SampleAnswer.quiet(UnitSystem.INCH_FIRST))
                                .map(answer -> new Object[] {answer, width, all})));
    }

    @ParameterizedTest
    @ValueSource(ints = {60, 80, 100, 160})
    void unitOfTheOwnersChoiceComesFirstAndTheOtherIsThereToo(int width) {
        String metric = AnswerText.of(SampleAnswer.quiet(UnitSystem.METRIC_FIRST), width, false, false);
        String inch = AnswerText.of(SampleAnswer.quiet(UnitSystem.INCH_FIRST), width, false, false);
        assertThat(metric).containsSubsequence("  squish", "1.37 ± 0.07 mm", "0.0539 ± 0.0027 in");
        assertThat(inch).containsSubsequence("  squish", "0.0539 ± 0.0027 in", "1.37 ± 0.07 mm");
    }

    @Test
    void stopsComeBeforeEverythingElseWithReasonAndWayRound() {
        String sheet = loud(false);
        assertThat(sheet)
                .containsSubsequence(
                        "2 stops",
                        "NOT APPROVED: turning this engine to 6500 rpm",
                        "why:",
                        "safe way:",
                        "REFUSED: running it with this flywheel",
                        "SUSPECTS",
                        "FIGURES",
                        "VERDICTS",
                        "READ NEXT");
    }

    @Test
    void inventedEngineSaysSoAtTheTop() {
        assertThat(loud(false).lines().limit(2)).anyMatch(line -> line.contains("INVENTED"));
    }

    @Test
    void figureInDisputeIsMarkedInWords() {
        assertThat(loud(false))
                .containsSubsequence("IN DISPUTE: do not use; readings behind it disagree", "  squish", "IN DISPUTE");
        assertThat(AnswerText.of(SampleAnswer.quiet(UnitSystem.METRIC_FIRST), 80, false, false))
                .doesNotContain("IN DISPUTE");
    }

    @Test
    void everyFigureNamesWhoOwnsMostOfItsDoubtAndHowItIsKnown() {
        assertThat(loud(false)).containsSubsequence("swept volume", "doubt: bore 81 %; partly assumed");
    }

    @Test
    void verdictsStandAsWordsTheWorstFirstWithWhyCureAndSource() {
        assertThat(loud(false))
                .containsSubsequence(
                        "VERDICTS",
                        "FAILS   swept volume: at most 190 cc by the class rule",
                        "why: 3.3 cc above the limit",
                        "cure: a shorter throw",
                        "rule from: class rule, invented",
                        "NEAR    squish",
                        "UNKNOWN sleeve wall left",
                        "meets   bore");
    }

    @Test
    void whatTheRestOfTheTradeSaysStandsBelowTheRuleThatWasChosen() {
        assertThat(loud(false))
                .containsSubsequence("NEAR    squish", "others say", "meets   at least 0.76 mm", "UNKNOWN sleeve");
    }

    @Test
    void ruleTheTradeDisagreesOnStaysOpenAndSaysOnceHowToChoose() {
        assertThat(loud(false))
                .containsSubsequence(
                        "OPEN    static compression ratio, the trade disagrees: 9.66 ± 0.13",
                        "highest static ratio:",
                        "FAILS   regular; most 9",
                        "meets   premium; most 10.5",
                        "choose: longthrow set FILE rules.choose.static_ratio regular, or")
                .doesNotContain("sources disagree");
        assertThat(loud(false).replaceAll("\\s+", " ")).contains("1 rule open");
        assertThat(loud(true)).contains("sources disagree");
    }

    @Test
    void ruleWhoseAlternativesAgreeTakesOneLine() {
        assertThat(loud(false)).contains("meets   bore", "rod ratio, by both sources");
        assertThat(loud(true))
                .containsSubsequence(
                        "rod ratio, none chosen", "meets   usual; most 1.65", "meets   not harsh; most 1.8");
    }

    @Test
    void everyPartHasItsVerdictAndWhatToDo() {
        assertThat(loud(false))
                .containsSubsequence("PARTS", "cylinder: keep", "connecting rod: machine: the pin is tight");
    }

    @Test
    void figureWithoutKnownDoubtIsNotPrintedAsIfItHadNone() {
        assertThat(loud(true)).containsSubsequence("skirt below pin", "17.60 mm, doubt unknown");
        assertThat(loud(true)).doesNotContain("17.60 mm ±");
    }

    @Test
    void allShowsEveryReadingShareAndDefaultAndTheShortSheetSaysHowManyItLeavesOut() {
        assertThat(loud(false))
                .contains("and 4 more, readings as entered and what the figures above are made of: --all");
        assertThat(loud(false)).doesNotContain("gasket thickness 19 %");
        assertThat(loud(true))
                .contains("do this: hone the small end")
                .contains("chamber volume 81 %, gasket thickness 19 %", "from: crankshaft.stroke#1", "source: ISO 3611")
                .doesNotContain("--all");
    }

    @Test
    void nextReadingSaysHowLongAndWhatItBringsInBothUnits() {
        assertThat(loud(false).replaceAll("\\s+", " "))
                .contains(
                        "1. deck height (cylinder.deck_height), height gauge, about 12 minutes",
                        "squish from ± 0.07 mm (± 0.0028 in) to ± 0.040 mm (± 0.0016 in)",
                        "sleeve wall left from unknown to ± 0.030 mm (± 0.0012 in)");
    }

    @Test
    void wayOfReadingIsSaidOnceWhereTheNextIsTheSame() {
        String sheet = AnswerText.of(SampleAnswer.twoReadOneWay(), 80, false, false);
        assertThat(sheet).containsOnlyOnce("depth gauge on a bridge").contains("how: as the one above");
    }

    @Test
    void readingThatIsToSettleADisagreementBringsNoFigure() {
        assertThat(AnswerText.of(SampleAnswer.settling(), 80, false, false))
                .contains("brings: settles the disagreement; the likeliest to be wrong")
                .doesNotContain("±", "NaN");
    }

    @Test
    void colourAddsNothingButColour() {
        Answer answer = SampleAnswer.loud(UnitSystem.METRIC_FIRST);
        String coloured = AnswerText.of(answer, 80, true, false);
        assertThat(coloured).contains(ESCAPE + "[1;31mREFUSED:" + ESCAPE + "[0m");
        assertThat(coloured.replaceAll(ESCAPE + "\\[[0-9;]*m", "")).isEqualTo(loud(false));
        assertThat(loud(false)).doesNotContain(ESCAPE);
    }

    @Test
    void engineNamedToSteerTheTerminalIsShownAndNotObeyed() {
        Answer answer = SampleAnswer.named("evil\u001b[2J\u202Egnp.exe\nSTOP");
        assertThat(AnswerText.of(answer, 80, false, false))
                .doesNotContain(ESCAPE, "\u202E", "\nSTOP")
                .contains("measure: evil\uFFFD[2J\uFFFDgnp.exe STOP");
    }

    @Test
    void wordWiderThanThePageIsCutNotSpilled() {
        String sheet = AnswerText.of(SampleAnswer.named("x".repeat(200) + " 測定".repeat(60)), 60, false, false);
        assertThat(sheet.lines()).allMatch(line -> PlainText.width(line) <= 60);
        assertThat(sheet.replaceAll("\\s", "")).contains("x".repeat(200));
    }

    @Test
    void lineThatIsCutEndsBehindAClauseAndTearsNoFigure() {
        assertThat(PlainText.cut("it is 0.0080 mm below the least, 0.018 mm (0.0007 in)", 40))
                .isEqualTo("it is 0.0080 mm below the least …");
        assertThat(PlainText.cut("one clause only", 40)).isEqualTo("one clause only …");
    }

    @Test
    void cautionForATestThatNobodyTookIsLeftToAll() {
        Answer without = SampleAnswer.cautioned("");
        assertThat(AnswerText.of(without, 80, false, false)).doesNotContain("compressed air");
        assertThat(AnswerText.of(without, 80, false, true)).contains("compressed air");
        assertThat(AnswerText.of(SampleAnswer.cautioned("take a leak-down"), 80, false, false))
                .contains("compressed air");
    }

    @Test
    void figureIsNotTornFromItsUnitOrItsDoubt() {
        List<String> lines = PlainText.wrap("the gap is 1.37 ± 0.07 mm wide, 97 % of it here", 14, 14);
        assertThat(lines).contains("1.37 ± 0.07 mm").noneMatch(line -> line.endsWith("97"));
    }

    private static String loud(boolean all) {
        return AnswerText.of(SampleAnswer.loud(UnitSystem.METRIC_FIRST), 80, false, all);
    }
}
