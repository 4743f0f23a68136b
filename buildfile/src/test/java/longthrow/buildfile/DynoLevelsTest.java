package longthrow.buildfile;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import longthrow.core.answer.Answer;
import longthrow.core.answer.DynoRuns;
import longthrow.core.answer.Finding;
import longthrow.core.quantity.Dimension;
import org.junit.jupiter.api.Test;

/**
 * Days, dynamometers and dates of the example (invented). Worked by hand: means of each session's second to last run, times the factor of its air by ISO 1585 as it stands in the scenario "did the
 * header help?" (0.9925, 1.0033, 1.0132); the rest by the formulas beside each figure, with t from a printed table.
 */
class DynoLevelsTest {
    private static final String SHEET = Repository.text("examples/dyno/levels.yaml");

    private static DynoRuns runs(String sheet) {
        return DynoAnswerTest.answer(sheet).runs().orElseThrow();
    }

    private static String changed(String from, String to) {
        assertThat(SHEET).contains(from);
        return SHEET.replace(from, to);
    }

    /** Reference: 4.3008, 4.3306, 4.2807, 4.3108 and 4.4919 kW. Of three their deviation is 0.02509; t 4.3027 times that times root 4/3 is 0.1246. */
    @Test
    void aDayIsHeldAgainstThreeEarlierDaysAndMore() {
        List<DynoRuns.Day> days = runs(SHEET).days().stream()
                .filter(d -> d.dyno().equals("shed drum"))
                .toList();
        double[] byHand = {4300.8, 4330.6, 4280.7, 4310.8, 4491.9};
        assertThat(days).hasSize(byHand.length);
        for (int i = 0; i < byHand.length; i++) {
            assertThat(days.get(i).figure()).isCloseTo(byHand[i], within(0.3)); // the factors are rounded to 0.00005
        }
        assertThat(days)
                .extracting(DynoRuns.Day::standing)
                .containsExactly(
                        DynoRuns.Standing.NOT_KNOWN,
                        DynoRuns.Standing.NOT_KNOWN,
                        DynoRuns.Standing.NOT_KNOWN,
                        DynoRuns.Standing.USUAL,
                        DynoRuns.Standing.OFF);
        assertThat(days.get(2).sentence()).contains("3 earlier days", "there are 2");
        assertThat(days.get(3).expected()).isCloseTo(4304.1, within(0.5));
        assertThat(days.get(3).half()).isCloseTo(124.6, within(1.5));
        // of four: mean 4.3058, deviation 0.02076, t 3.1824 times that times root 5/4 is 0.0739
        assertThat(days.get(4).expected()).isCloseTo(4305.8, within(0.5));
        assertThat(days.get(4).half()).isCloseTo(73.9, within(0.8));
        assertThat(days.get(4).sentence()).contains("OFF its usual level", "4.49 kW", "4.3 % above", "4.31 ± 0.07 kW");
    }

    @Test
    void aDayOffItsLevelStandsAtTheVerdictsOfThatDate() {
        Answer answer = DynoAnswerTest.answer(SHEET);
        DynoRuns runs = answer.runs().orElseThrow();
        assertThat(answer.findings())
                .filteredOn(f -> f.kind() == Finding.Kind.WARNING && f.where().equals("dynamometer"))
                .hasSize(1);
        DynoRuns.Gain airbox = gain(runs, "airbox");
        assertThat(airbox.sentences().get(1)).startsWith("Mind: the dynamometer was off its usual level on 2026-06-06");
        assertThat(runs.sentences()).contains(airbox.sentences().get(1));
        assertThat(gain(runs, "header").sentences()).noneMatch(s -> s.contains("Mind:"));
        // with the day at its level nobody has to mind anything
        DynoRuns usual = runs(changed(
                "{peak: 4.31 kW}, {peak: 4.43 kW}, {peak: 4.44 kW}, {peak: 4.43 kW}",
                "{peak: 4.1 kW}, {peak: 4.25 kW}, {peak: 4.26 kW}"));
        assertThat(gain(usual, "airbox").sentences()).noneMatch(s -> s.contains("Mind:"));
        assertThat(usual.days()).extracting(DynoRuns.Day::standing).doesNotContain(DynoRuns.Standing.OFF);
    }

    private static DynoRuns.Gain gain(DynoRuns runs, String setup) {
        return runs.gains().stream()
                .filter(g -> g.setup().equals(setup))
                .findFirst()
                .orElseThrow();
    }

    /**
     * Drum 4.3008, 4.3306, 4.2807, 4.3108 (not the day that was off), brake 4.5717 and 4.6101: means of logarithms differ by -0.06412, factor 0.9379. Welch: variances of the means 0.2311e-4 / 4 and
     * 0.3492e-4 / 2, so 0.004823 with 1.714 degrees of freedom.
     */
    @Test
    void theReferenceEngineOnBothTellsHowDynamometersDiffer() {
        DynoRuns.Level level = runs(SHEET).levels().get(0);
        assertThat(level.from()).isEqualTo("club's brake");
        assertThat(level.to()).isEqualTo("shed drum");
        assertThat(level.factor()).isCloseTo(0.9379, within(1e-4));
        assertThat(level.freedom()).isCloseTo(1.714, within(0.03));
        // t of 1.714 degrees of freedom is 5.067: 0.9379 times 5.067 times 0.004823
        assertThat(level.half()).isCloseTo(0.0229, within(3e-4));
        assertThat(level.been()).containsExactly("'Ostrel 98' on club's brake on 2 days, on shed drum on 4 days");
        assertThat(level.sentence()).contains("0.938 ± 0.023", "1 engine", "Left out", "2026-06-06 on shed drum");
    }

    /** Long pipe 10.3448 kW on the brake; stock 9.5597 kW on the drum, mean of fifteen runs; times 0.9379 over each other 1.0149. Its doubt is more than that of the factor alone. */
    @Test
    void aSetupOnTheOtherDynamometerIsHeldAgainstTheBaselineThroughTheFactorAndInNoVerdict() {
        DynoRuns runs = runs(SHEET);
        DynoRuns.Level level = runs.levels().get(0);
        assertThat(level.across()).hasSize(1);
        DynoRuns.Across across = level.across().get(0);
        assertThat(across.session()).isEqualTo("C");
        assertThat(across.ratio()).isCloseTo(1.0149, within(2e-4));
        assertThat(across.half()).isBetween(level.half(), 2 * level.half());
        assertThat(across.sentence()).contains("Weaker than baseline, change, baseline", "No verdict rests on it");
        assertThat(runs.gains()).extracting(DynoRuns.Gain::setup).doesNotContain("long pipe");
        assertThat(runs.runs()).filteredOn(r -> r.session().equals("C")).allMatch(r -> !r.counts());
    }

    @Test
    void oneVisitTellsNoFactorAndNothingIsHeldThroughIt() {
        DynoRuns.Level level =
                runs(changed("date: 2026-05-16", "date: 2026-04-18")).levels().get(0);
        assertThat(level.factor()).isNaN();
        assertThat(level.across()).isEmpty();
        assertThat(level.sentence()).contains("cannot be told yet", "'Ostrel 98' on club's brake on 1 day,");
        DynoRuns.Level none = runs(changed(
                        "    setup: Ostrel 98\n    check: yes\n    dyno:",
                        "    setup: other\n    check: yes\n    dyno:"))
                .levels()
                .get(0);
        assertThat(none.sentence()).contains("No engine was on both");
    }

    /** Stock on 0, 14, 35, 56 days (factors rounded): 9.5975, 9.5776, 9.5514, 9.5361 kW; slope -1.1527e-4 of the mean a day, t of 2 degrees of freedom 4.3027: ± 0.4876e-4. */
    @Test
    void theBaselineOverFourDatesHasATrend() {
        DynoRuns.Trend stock = trend(runs(SHEET), "stock");
        assertThat(stock.dates()).hasSize(4);
        assertThat(stock.perDay()).isCloseTo(-1.1527e-4, within(2e-6));
        assertThat(stock.half()).isCloseTo(0.4876e-4, within(3e-6));
        assertThat(stock.shown()).isTrue();
        assertThat(stock.sentence()).contains("has lost 0.66 ± 0.28 %", "-0.35 ± 0.15 % a month");
        assertThat(trend(runs(SHEET), "Ostrel 98").shown()).isFalse();
        DynoRuns.Trend three =
                trend(runs(changed("name: S2\n    setup: stock", "name: S2\n    setup: spare")), "stock");
        assertThat(three.perDay()).isNaN();
        assertThat(three.sentence()).contains("3 dates; 4 are the least");
    }

    private static DynoRuns.Trend trend(DynoRuns runs, String engine) {
        return runs.trends().stream()
                .filter(t -> t.engine().equals(engine))
                .findFirst()
                .orElseThrow();
    }

    /** Runs that do not count in a gain do not count here: the first, and those set aside. */
    @Test
    void theSameRunsCountAsInAGain() {
        DynoRuns aside = runs(changed(
                "[{peak: 4.20 kW}, {peak: 4.33 kW}, {peak: 4.34 kW}",
                "[{peak: 9 kW}, {peak: 8 kW, aside: chain off}, {peak: 4.34 kW}"));
        assertThat(aside.days().get(0).figure()).isCloseTo(4335 * 0.9925, within(1.0));
        Answer alone = DynoAnswerTest.answer(
                changed("[{peak: 4.20 kW}, {peak: 4.33 kW}, {peak: 4.34 kW}, {peak: 4.33 kW}]", "[{peak: 4.33 kW}]"));
        assertThat(alone.findings())
                .anyMatch(f -> f.where().equals("session R1") && f.message().contains("first is warm-up"));
    }

    @Test
    void withoutADateOrAStandardNothingIsHeldAgainstAnotherDayAndThatIsSaid() {
        Answer undated = DynoAnswerTest.answer(changed(
                "    check: yes                    # the reference engine, to see the drum's level that day\n    date: 2026-03-07\n",
                "    check: yes\n"));
        assertThat(undated.findings())
                .anyMatch(f -> f.where().equals("session R1") && f.message().contains("no date"));
        assertThat(undated.runs().orElseThrow().days()).hasSize(6);
        Answer asRead = DynoAnswerTest.answer(changed("standard: iso_1585", "standard: none"));
        assertThat(asRead.runs().orElseThrow().days()).isEmpty();
        assertThat(asRead.runs().orElseThrow().levels()).isEmpty();
        assertThat(asRead.findings())
                .anyMatch(f -> f.where().equals("standard") && f.message().contains("not held against each other"));
    }

    /** Torque in rows: the mean over the speeds that all have, by trapezoids: 11.0 over 2000 rpm and 11.5 over the next 1000. */
    @Test
    void curvesAreToldByTheirMeanOverTheSpeedsThatAllHave() {
        DynoRuns runs = runs("""
                longthrow_dyno: 1
                name: rows
                standard: iso_1585
                bench: {kind: table, name: drum}
                sessions:
                  - {name: R, setup: ref, check: yes, date: 2026-01-02, air: {pressure: 99 kPa, temperature: 25 °C, humidity: 0 %}, runs: [
                      {rows: {2000 rpm: 5 N·m, 4000 rpm: 5 N·m, 5000 rpm: 5 N·m}},
                      {rows: {2000 rpm: 10 N·m, 4000 rpm: 12 N·m, 5000 rpm: 11 N·m}}]}
                  - {name: A, setup: stock, runs: [{peak: 9 kW}]}
                """);
        DynoRuns.Day day = runs.days().get(0);
        assertThat(day.dimension()).isEqualTo(Dimension.TORQUE);
        assertThat(day.of()).isEqualTo("mean torque from 2000 to 5000 rpm");
        assertThat(day.figure()).isCloseTo((11.0 * 2000 + 11.5 * 1000) / 3000, within(0.005));
    }
}
