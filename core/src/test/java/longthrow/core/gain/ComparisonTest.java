package longthrow.core.gain;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.stream.IntStream;
import longthrow.core.formula.SampleSource;
import longthrow.core.gain.Verdict.Outcome;
import longthrow.core.measurement.Measured;
import longthrow.core.measurement.Source;
import org.junit.jupiter.api.Test;

/** Campaigns, their rules and what is said of them. */
class ComparisonTest {
    private static final double[] COLD_AND_FOUR = {9.7, 10.02, 9.98, 10.01, 9.99};

    private static Session session(String name, String setup, double... peaks) {
        return new Session(
                name,
                setup,
                Optional.empty(),
                IntStream.range(0, peaks.length)
                        .mapToObj(i -> Run.peak(String.valueOf(i + 1), peaks[i]))
                        .toList());
    }

    private static double[] times(double factor) {
        return Arrays.stream(COLD_AND_FOUR).map(x -> x * factor).toArray();
    }

    private static Campaign campaign(double... levels) {
        List<Session> sessions = new ArrayList<>();
        for (int s = 0; s < levels.length; s++) {
            sessions.add(session("S" + s, s % 2 == 0 ? "stock" : "change", times(levels[s])));
        }
        return Campaign.ofPeaks("stock", sessions);
    }

    private static Gain gain(Campaign campaign) {
        Comparison comparison = Comparison.of(campaign, Aim.USUAL);
        assertThat(comparison.troubles()).isEmpty();
        return comparison.gains().get(0);
    }

    @Test
    void verdictsInTheirOrder() {
        assertThat(gain(campaign(1, 1.02, 1)).verdict().outcome()).isEqualTo(Outcome.REAL_GAIN);
        Gain loss = gain(campaign(1, 0.98, 1));
        assertThat(loss.verdict().outcome()).isEqualTo(Outcome.REAL_LOSS);
        assertThat(GainSentences.verdict(loss))
                .startsWith("Real as far as 3 sessions tell, the weather left in: 'change' loses, peak -2.00 ± 0.");
        Gain none = gain(campaign(1, 1.001, 1));
        assertThat(none.verdict().outcome()).isEqualTo(Outcome.NOT_SHOWN);
        assertThat(GainSentences.verdict(none))
                .startsWith("Not shown: peak +0.10 ± 0.")
                .endsWith("A gain of 1.0 % or more is ruled out.");
    }

    /** The baseline wanders by 1.2 %: where the engine stood between is uncertain by 0.35 %, and further sessions make that smaller. */
    @Test
    void moreRunsAreAskedForWhereTheyWouldTell() {
        Gain g = gain(campaign(1, 1.012, 1.012));
        Verdict v = g.verdict();
        assertThat(v.outcome()).isEqualTo(Outcome.TAKE_MORE);
        assertThat(v.pulls()).isEqualTo(5 * v.sessions()).isBetween(10, Aim.MOST_PULLS);
        assertThat(GainSentences.verdict(g))
                .startsWith("Not shown: ")
                .contains("Take " + v.pulls() + " more runs in " + v.sessions()
                        + " sessions, 'change' and 'stock' in turns");
    }

    @Test
    void whatNoNumberOfRunsTellsIsSaid() {
        Campaign wild = Campaign.ofPeaks(
                "stock",
                List.of(
                        session("A", "stock", 9, 10, 12, 9, 11),
                        session("B", "change", 9, 11, 12, 9, 12),
                        session("C", "stock", 9, 10, 12, 9, 11)));
        assertThat(gain(wild).verdict().outcome()).isEqualTo(Outcome.CANNOT_BE_TOLD);
        assertThat(GainSentences.verdict(gain(wild))).contains("It cannot be told this way");
    }

    @Test
    void withoutTheBaselineAgainNothingIsReal() {
        Gain g = gain(campaign(1, 1.05));
        assertThat(g.verdict().outcome()).isEqualTo(Outcome.BASELINE_NOT_REPEATED);
        assertThat(g.drift().known()).isFalse();
        assertThat(GainSentences.verdict(g)).contains("Put it back and run it again");
        assertThat(GainSentences.grounds(g)).anyMatch(s -> s.contains("No setup was run twice"));
    }

    /** A second session of the change behind the last baseline takes nothing away from the first. */
    @Test
    void aChangeThatComesLastCountsWithMoreDoubt() {
        Gain g = gain(campaign(1, 1.02, 0.998, 1.018));
        assertThat(g.verdict().outcome()).isEqualTo(Outcome.REAL_GAIN);
        assertThat(g.overall().anyDrift()).isGreaterThan(0);
    }

    @Test
    void airOutsideTheStandardIsSaidBySession() {
        AirCorrection high = AirStandard.ISO_1585.correct(AirReading.exact(83.5, 22, 0.25));
        List<Session> sessions = campaign(1, 1.02, 1).sessions().stream()
                .map(s -> new Session(s.name(), s.setup(), Optional.of(high), s.runs()))
                .toList();
        assertThat(Comparison.of(Campaign.ofPeaks("stock", sessions), Aim.USUAL).beyond())
                .hasSize(3)
                .allSatisfy(s -> assertThat(s).contains("factor 1.231 is outside"));
    }

    /** B at 1.02 and C at 1.004 on a flat baseline, layout by hand: two tries double the smaller chance. */
    @Test
    void severalChangesOnOneBaselineGoByHolm() {
        Campaign campaign = Campaign.ofPeaks(
                "stock",
                List.of(
                        session("A1", "stock", times(1)),
                        session("B", "pipe", times(1.02)),
                        session("A2", "stock", times(1)),
                        session("C", "filter", times(1.0025)),
                        session("A3", "stock", times(1))));
        List<Gain> gains = Comparison.of(campaign, Aim.USUAL).gains();
        assertThat(gains).extracting(Gain::setup).containsExactly("pipe", "filter");
        assertThat(gains.get(0).overall().gain()).isCloseTo(0.02, within(1e-12));
        assertThat(gains.get(1).overall().gain()).isCloseTo(0.0025, within(1e-12));
        Gain filter = gains.get(1);
        assertThat(gains.get(0).verdict().chance())
                .isCloseTo(2 * gains.get(0).overall().chance(), within(1e-12));
        assertThat(filter.verdict().chance()).isCloseTo(filter.overall().chance(), within(1e-12));
        assertThat(filter.verdict().tries()).isEqualTo(2);
        assertThat(GainSentences.grounds(filter)).anyMatch(s -> s.contains("Holm"));
    }

    /** Sessions of one setup stand 3 % apart while runs scatter by 0.2 %: the sessions' own scatter is used. */
    @Test
    void sessionsThatDifferSpeakForThemselves() {
        Gain g = gain(campaign(1, 1.02, 1.03, 1.02, 1, 1.03, 1.01));
        assertThat(g.scatter().from()).isEqualTo(Scatter.From.SESSIONS);
        assertThat(g.scatter().betweenFreedom()).isEqualTo(4);
        assertThat(g.scatter().refit()).isGreaterThan(0.05);
        assertThat(g.overall().halfWidth()).isGreaterThan(0.015);
        assertThat(GainSentences.grounds(g)).anyMatch(s -> s.contains("refitting"));
        Gain alike = gain(campaign(1, 1.02, 1, 1.02, 1));
        assertThat(alike.scatter().from()).isEqualTo(Scatter.From.RUNS_AND_SESSIONS);
        assertThat(alike.scatter().freedom()).isEqualTo(15 + 2);
        Refit known = Refit.of(g).orElseThrow();
        assertThat(Refit.of(gain(campaign(1, 1.02, 1)))).isEmpty();
        Gain with = Comparison.of(campaign(1, 1.02, 1), Aim.USUAL, Optional.of(known))
                .gains()
                .get(0);
        // by hand: u of one session each at middle and ends, root of 1 + 1/4 + 1/4 of baseline 1
        assertThat(with.overall().refit()).isCloseTo(known.deviation() * Math.sqrt(1.02 * 1.02 * 1.5), within(1e-9));
        assertThat(with.verdict().outcome()).isNotEqualTo(Outcome.REAL_GAIN);
        assertThat(GainSentences.grounds(with)).anyMatch(s -> s.contains("known from earlier campaigns"));
    }

    @Test
    void nothingIsDroppedWithoutAWord() {
        Session a = session("A", "stock", times(1));
        List<Run> runs = new ArrayList<>(a.runs());
        runs.set(2, runs.get(2).setAside("carburettor iced"));
        runs.set(3, runs.get(3).slipped());
        Campaign c = Campaign.ofPeaks(
                "stock",
                List.of(new Session("A", "stock", Optional.empty(), runs), session("B", "change", times(1)), a));
        assertThat(GainSentences.dropped(c.dropped()))
                .isEqualTo(
                        "A 1: first pull of its session: warm-up; A 3: set aside: carburettor iced; A 4: the clutch slipped: engine and drum did not keep their ratio; "
                                + "B 1: first pull of its session: warm-up; A 1: first pull of its session: warm-up");
        assertThat(c.kept().size() + c.dropped().size()).isEqualTo(15);
        assertThat(c.kept().get(0).order()).isEqualTo(2);
        assertThat(c.kept().get(1).order()).isEqualTo(5);
    }

    @Test
    void badCampaignsAreToldNotThrown() {
        assertThat(troubles(campaign(1))).anyMatch(s -> s.contains("there is no change"));
        assertThat(troubles(Campaign.ofPeaks("none", campaign(1, 1, 1).sessions())))
                .anyMatch(s -> s.contains("no session has the baseline 'none'"));
        assertThat(troubles(Campaign.ofPeaks(
                        "stock", List.of(session("A", "stock", 9, 9.1), session("B", "change", 9, 9.2)))))
                .anyMatch(s -> s.contains("2 pulls kept in 2 sessions leave 0"));
        assertThat(troubles(
                        Campaign.ofPeaks("stock", List.of(session("A", "stock", 9), session("B", "change", times(1))))))
                .anyMatch(s -> s.contains("session A has no pull left"));
        assertThat(troubles(Campaign.ofPeaks(
                        "stock", List.of(session("A", "stock", 9, 10, 10, 10), session("B", "change", 9, 11, 11, 11)))))
                .anyMatch(s -> s.contains("alike to the last digit"));
        Session corrected = new Session(
                "A",
                "stock",
                Optional.of(AirStandard.DIN_70020.correct(AirReading.exact(99, 20, 0.5))),
                session("A", "stock", times(1)).runs());
        assertThat(troubles(Campaign.ofPeaks("stock", List.of(corrected, session("B", "change", times(1))))))
                .anyMatch(s -> s.contains("different standards"));
        assertThatThrownBy(() -> Run.peak("x", -1)).hasMessageContaining("above 0");
        assertThatThrownBy(() -> new Campaign("stock", List.of(3000.0, 2000.0), List.of()))
                .hasMessageContaining("ascending");
        assertThatThrownBy(() -> new Campaign(
                        "stock", List.of(2000.0, 3000.0), campaign(1).sessions()))
                .hasMessageContaining("has 1 figures; the grid has 2");
    }

    private static List<String> troubles(Campaign campaign) {
        Comparison comparison = Comparison.of(campaign, Aim.USUAL);
        assertThat(comparison.gains()).isEmpty();
        return comparison.troubles();
    }

    private static Campaign curves(double scale, double[] change, int nanSpeed) {
        SampleSource random = SampleSource.of(20_261_132L);
        List<Session> sessions = new ArrayList<>();
        for (int s = 0; s < 3; s++) {
            List<Run> runs = new ArrayList<>();
            for (int r = 0; r < 5; r++) {
                double together = 0.002 * random.nextNormal();
                double[] values = new double[change.length];
                for (int j = 0; j < values.length; j++) {
                    values[j] =
                            scale * 10 * (1 + together + 0.002 * random.nextNormal()) * (s == 1 ? 1 + change[j] : 1);
                    values[j] = s == 2 && r == 3 && j == nanSpeed ? Double.NaN : values[j];
                }
                runs.add(Run.curve(String.valueOf(r), values));
            }
            sessions.add(new Session("S" + s, s == 1 ? "pipe" : "stock", Optional.empty(), runs));
        }
        return new Campaign(
                "stock",
                IntStream.range(0, change.length)
                        .mapToObj(j -> 2000.0 + 500 * j)
                        .toList(),
                sessions);
    }

    @Test
    void shapeIsToldInWords() {
        Gain g = gain(curves(1, new double[] {0.03, 0.03, 0.03, 0, 0, -0.03, -0.03}, -1));
        assertThat(GainSentences.shape(g))
                .isEqualTo(
                        "Gains from 2000 to 3000 rpm, loses from 4500 to 5000 rpm; elsewhere not shown (band that holds at all speeds at once).");
        Gain none = gain(curves(1, new double[7], -1));
        assertThat(GainSentences.shape(none)).startsWith("At no speed by itself");
        assertThat(g.atSpeeds())
                .allSatisfy(e -> assertThat(e.halfWidthEverySpeed()).isGreaterThan(e.halfWidth()));
        assertThat(GainSentences.verdict(g)).contains("area from 2000 to 5000 rpm");
    }

    /** Area by trapezoids, by hand: 0.5, 1, 1, 1, 1, 1, 0.5 of (3 3 3 0 0 -3 -3) % over 6 is 0.5 %, but for scatter of the runs. */
    @Test
    void areaIsOverTheSpeedsUsed() {
        Gain g = gain(curves(1, new double[] {0.03, 0.03, 0.03, 0, 0, -0.03, -0.03}, -1));
        Gain flat = gain(curves(1, new double[7], -1));
        assertThat(g.overall().gain() - flat.overall().gain()).isCloseTo(0.005, within(1e-4));
    }

    @Test
    void sameInAnyUnit() {
        double[] change = {0.01, 0.02, 0.01};
        Gain one = gain(curves(1, change, -1));
        Gain other = gain(curves(0.7375621, change, -1));
        assertThat(other.overall().gain()).isCloseTo(one.overall().gain(), within(1e-12));
        assertThat(other.overall().halfWidthAnyDrift()).isCloseTo(one.overall().halfWidthAnyDrift(), within(1e-12));
        assertThat(other.atSpeeds().get(1).halfWidthEverySpeed())
                .isCloseTo(one.atSpeeds().get(1).halfWidthEverySpeed(), within(1e-9));
    }

    @Test
    void speedThatSomeRunLacksIsLeftOutAndSaid() {
        Comparison c = Comparison.of(curves(1, new double[4], 3), Aim.USUAL);
        assertThat(c.speedsLeftOut()).containsExactly(3500.0);
        assertThat(c.gains().get(0).atSpeeds()).hasSize(3);
    }

    /** A barometer that reads 1 % high in all sessions changes no gain; the same in one session alone does. */
    @Test
    void doubtThatSessionsShareGoesOut() {
        double shared = weather("barometer", "barometer", "barometer");
        double own = weather("first", "second", "third");
        assertThat(shared).isLessThan(1e-4);
        // by hand: 1.2 x 0.5 % x root(1 + 1/4 + 1/4)
        assertThat(own).isCloseTo(1.2 * 0.005 * Math.sqrt(1.5), within(2e-4));
    }

    private static double weather(String... barometers) {
        List<Session> sessions = new ArrayList<>();
        for (int s = 0; s < 3; s++) {
            AirReading air = new AirReading(
                    Measured.of(99e3, List.of(Source.known(barometers[s], Source.Kind.INSTRUMENT, "barometer", 495))),
                    Measured.exact(298.15),
                    Measured.exact(0));
            sessions.add(new Session(
                    "S" + s,
                    s == 1 ? "change" : "stock",
                    Optional.of(AirStandard.ISO_1585.correct(air)),
                    session("", "x", times(1)).runs()));
        }
        return gain(Campaign.ofPeaks("stock", sessions)).overall().weather();
    }

    /** All speeds alike: no wider than at one. Nothing in common: Šidák's, which is the most. */
    @Test
    void bandAtEverySpeedKnowsHowSpeedsGoTogether() {
        SampleSource random = SampleSource.of(20_261_131L);
        List<double[]> alike = new ArrayList<>();
        List<double[]> apart = new ArrayList<>();
        for (int i = 0; i < 60; i++) {
            double z = random.nextNormal();
            alike.add(IntStream.range(0, 8).mapToDouble(j -> z * (1 + j)).toArray());
            apart.add(
                    IntStream.range(0, 8).mapToDouble(j -> random.nextNormal()).toArray());
        }
        double pointwise = longthrow.core.measurement.StudentT.factor(0.95, 60);
        double sidak = longthrow.core.measurement.StudentT.factor(Math.pow(0.95, 1 / 8.0), 60);
        assertThat(EverySpeed.factor(alike, 0.95)).isCloseTo(pointwise, within(0.08));
        assertThat(EverySpeed.factor(apart, 0.95)).isCloseTo(sidak, within(0.1));
    }

    /** Five sessions, two changes that change nothing: a speed that stands out of the band for all speeds is luck, in one campaign of twenty for both changes together. */
    @Test
    void noSpeedStandsOutWhereSessionsCheckEachOtherOnce() {
        List<Double> rpm =
                IntStream.range(0, 11).mapToObj(i -> 3000.0 + 200 * i).toList();
        int claims = 0;
        int campaigns = 60;
        for (int c = 0; c < campaigns; c++) {
            Random random = new Random(900 + c);
            List<Session> sessions = new ArrayList<>();
            for (String setup : List.of("stock", "header", "stock", "jet", "stock")) {
                List<Run> runs = new ArrayList<>();
                for (int r = 0; r < 5; r++) {
                    double level = 13 * (1 + 0.003 * random.nextGaussian());
                    runs.add(Run.curve(
                            String.valueOf(r),
                            rpm.stream()
                                    .mapToDouble(x -> level * (1 + 0.003 * random.nextGaussian()))
                                    .toArray()));
                }
                sessions.add(new Session("S" + sessions.size(), setup, Optional.empty(), runs));
            }
            Comparison comparison = Comparison.of(new Campaign("stock", rpm, sessions), Aim.USUAL);
            claims += comparison.gains().stream().anyMatch(g -> !g.shape().isEmpty()) ? 1 : 0;
        }
        assertThat(claims).isLessThanOrEqualTo(6);
    }
}
