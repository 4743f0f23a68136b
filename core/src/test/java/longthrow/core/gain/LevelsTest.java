package longthrow.core.gain;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import longthrow.core.formula.SampleSource;
import longthrow.core.gain.LevelFactor.Both;
import longthrow.core.gain.LevelFactor.Figure;
import longthrow.core.quantity.Dimension;
import longthrow.core.quantity.FigurePrinter;
import longthrow.core.quantity.UnitSystem;
import org.junit.jupiter.api.Test;

/** Dynos, days and dates. */
class LevelsTest {
    private static final AirStandard ISO = AirStandard.ISO_1585;
    private static final FigurePrinter METRIC = new FigurePrinter(UnitSystem.METRIC_FIRST);

    /** By hand: ln ratios 0.05, 0.06, 0.07; mean 0.06, deviation 0.01, of the mean 0.005774; t of 2 degrees of freedom 4.3027. */
    @Test
    void factorBetweenDynosByThreeEngines() {
        LevelFactor f = LevelFactor.of(
                        "ours", "theirs", ISO, List.of(both("a", 9, 0.05), both("b", 12, 0.06), both("c", 7, 0.07)))
                .orElseThrow();
        assertThat(f.factor()).isCloseTo(Math.exp(0.06), within(1e-12));
        assertThat(f.halfWidth()).isCloseTo(Math.exp(0.06) * 4.3027 * 0.01 / Math.sqrt(3), within(1e-6));
        assertThat(GainSentences.level(f)).startsWith("theirs shows 1.062 ± 0.026 times what ours shows (3 engines");
    }

    private static Both both(String name, double figure, double logarithm) {
        return new Both(name, List.of(figure), List.of(figure * Math.exp(logarithm)));
    }

    @Test
    void oneVisitEachTellsNoFactor() {
        assertThat(LevelFactor.of("ours", "theirs", ISO, List.of(both("a", 9, 0.05))))
                .isEmpty();
        LevelFactor visits = LevelFactor.of(
                        "ours", "theirs", ISO, List.of(new Both("a", List.of(9.0, 9.1), List.of(9.5, 9.45, 9.55))))
                .orElseThrow();
        assertThat(visits.factor()).isCloseTo(9.5 / 9.05, within(1e-4));
        TwoSamples welch = TwoSamples.welch(
                new double[] {Math.log(9.5), Math.log(9.45), Math.log(9.55)},
                new double[] {Math.log(9.0), Math.log(9.1)});
        assertThat(visits.standardUncertainty()).isCloseTo(welch.standardError(), within(1e-12));
        assertThat(visits.freedom()).isCloseTo(welch.degreesOfFreedom(), within(1e-9));
    }

    @Test
    void figuresOfDifferentDynosAreNeverComparedWithoutAFactor() {
        Figure here = new Figure("ours", ISO, 9, 0.05);
        Figure there = new Figure("theirs", ISO, 9.5, 0.05);
        assertThat(LevelFactor.compare(here, there, Optional.empty())).isEmpty();
        assertThat(LevelFactor.compare(here, new Figure("ours", AirStandard.DIN_70020, 9, 0.05), Optional.empty()))
                .isEmpty();
        LevelFactor f = new LevelFactor("theirs", "ours", ISO, 0.95, 0.01, 5, 6);
        LevelFactor other = new LevelFactor("ours", "third", ISO, 0.95, 0.01, 5, 6);
        assertThat(LevelFactor.compare(here, there, Optional.of(other))).isEmpty();
        LevelFactor.Ratio ratio =
                LevelFactor.compare(here, there, Optional.of(f)).orElseThrow();
        assertThat(ratio.ratio()).isCloseTo(9.5 * 0.95 / 9, within(1e-12));
        assertThat(ratio.halfWidth()).isGreaterThan(1.96 * ratio.ratio() * 0.01);
        LevelFactor.Ratio back =
                LevelFactor.compare(there, here, Optional.of(f)).orElseThrow();
        assertThat(back.ratio() * ratio.ratio()).isCloseTo(1, within(1e-12));
        assertThat(LevelFactor.compare(here, here, Optional.empty())).isPresent();
        assertThat(GainSentences.notCompared(here, there)).contains("ours", "theirs");
    }

    /** By hand: 10.0, 10.1, 10.2: mean 10.1, deviation 0.1; t 4.3027 times 0.1 times root 4/3 is 0.4968. */
    @Test
    void todayIsHeldAgainstEarlierDays() {
        DayCheck check = DayCheck.of(ISO, List.of(10.0, 10.1, 10.2), 10.55).orElseThrow();
        assertThat(check.halfWidth()).isCloseTo(0.4968, within(1e-4));
        assertThat(check.isInside()).isTrue();
        DayCheck off = DayCheck.of(ISO, List.of(10.0, 10.1, 10.2), 10.7).orElseThrow();
        assertThat(off.isInside()).isFalse();
        assertThat(off.chance()).isLessThan(0.05);
        assertThat(GainSentences.day(off, "2026-06-01", "ours", "reference", Dimension.TORQUE, METRIC))
                .isEqualTo("2026-06-01: ours is OFF its usual level. The reference engine 'reference' showed 10.7 N·m,"
                        + " 5.9 % above the mean of 3 earlier days; by them a day lies at 10.1 ± 0.5 N·m, 95 in 100"
                        + " (by ISO 1585 (spark ignition)).");
        assertThat(DayCheck.of(ISO, List.of(10.0, 10.1), 10.7)).isEmpty();
        assertThat(DayCheck.of(ISO, List.of(10.0, 10.0, 10.0), 10.7)).isEmpty();
    }

    /** 1000 drawn series without and with a slope: "shown" falsely in 5 %, the interval holds the truth in 95 %. */
    @Test
    void trendIsShownOnlyWhereThereIsOne() {
        int shown = 0;
        int held = 0;
        for (int i = 0; i < 1000; i++) {
            SampleSource random = SampleSource.of(20_261_129L, i);
            shown += trend(random, 0).isShown() ? 1 : 0;
            Trend t = trend(random, -1e-4);
            held += Math.abs(t.perDay() + 1e-4) <= t.halfWidth() ? 1 : 0;
        }
        assertThat(shown).isBetween(30, 72);
        assertThat(held).isBetween(928, 970);
        assertThat(Trend.of("a", List.of(new Trend.Dated(0, 9), new Trend.Dated(1, 9.1), new Trend.Dated(2, 9))))
                .isEmpty();
    }

    private static Trend trend(SampleSource random, double perDay) {
        List<Trend.Dated> dated = new ArrayList<>();
        for (int d = 0; d < 8; d++) {
            double day = 20 * d - 70; // about the mean, so that the share is of the level itself
            dated.add(new Trend.Dated(day, 9.5 * (1 + perDay * day + 0.004 * random.nextNormal())));
        }
        return Trend.of("a", dated).orElseThrow();
    }

    /** By hand: -25.5 / 12500 a day is -3.107 % of 9.85 over 150 days; residuals leave 0.00949, of the slope 8.49e-5, times 4.3027. */
    @Test
    void trendIsSaid() {
        List<Trend.Dated> falling = List.of(
                new Trend.Dated(0, 10),
                new Trend.Dated(50, 9.91),
                new Trend.Dated(100, 9.79),
                new Trend.Dated(150, 9.7));
        assertThat(GainSentences.trend(Trend.of("kart", falling).orElseThrow(), "ours", ISO, false))
                .startsWith(
                        "'kart' has lost 3.1 ± 0.6 % over 150 days and 4 dates on ours, which is -0.62 ± 0.11 % a month of 30 days");
        List<Trend.Dated> none = List.of(
                new Trend.Dated(0, 10), new Trend.Dated(50, 9.8), new Trend.Dated(100, 9.9), new Trend.Dated(150, 10));
        assertThat(GainSentences.trend(Trend.of("kart", none).orElseThrow(), "ours", ISO, true))
                .startsWith("'kart': no trend shown, ");
        assertThat(Trend.of(
                        "kart",
                        List.of(
                                new Trend.Dated(0, 9.7),
                                new Trend.Dated(5, 9.7),
                                new Trend.Dated(9, 9.7),
                                new Trend.Dated(20, 9.7))))
                .isEmpty();
    }
}
