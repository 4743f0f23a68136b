package longthrow.core.gain;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** Scenario "did the header help?" (invented engine): five pulls each of stock, header, stock, peaks as read. Expected figures are those written beside the scenario; half their last digit is allowed. */
class HeaderScenarioTest {
    private static final Campaign CAMPAIGN = Campaign.ofPeaks(
            "stock",
            List.of(
                    session("A1", "stock", AirReading.exact(99.62, 19.0, 0.46), 9.38, 9.71, 9.67, 9.71, 9.73),
                    session("B", "header", AirReading.exact(99.55, 23.0, 0.41), 9.77, 9.82, 9.72, 9.76, 9.73),
                    session("A2", "stock", AirReading.exact(99.45, 26.5, 0.37), 9.40, 9.42, 9.44, 9.44, 9.45)));
    private static final Comparison COMPARISON = Comparison.of(CAMPAIGN, Aim.USUAL);
    private static final Gain GAIN = COMPARISON.gains().get(0);

    private static Session session(String name, String setup, AirReading air, double... kilowatt) {
        return new Session(
                name,
                setup,
                Optional.of(AirStandard.ISO_1585.correct(air)),
                IntStream.range(0, kilowatt.length)
                        .mapToObj(i -> Run.peak(name + "." + (i + 1), kilowatt[i]))
                        .toList());
    }

    @Test
    void factorsAreThoseOfTheStandard() { // "other vapour formulas within 0.0001"; here the second is 1.00325
        double[] factors =
                CAMPAIGN.sessions().stream().mapToDouble(Session::factor).toArray();
        assertThat(factors[0]).isCloseTo(0.9925, within(5e-5));
        assertThat(factors[1]).isCloseTo(1.0033, within(1e-4));
        assertThat(factors[2]).isCloseTo(1.0132, within(5e-5));
    }

    @Test
    void firstPullOfEverySessionIsDroppedAndSaid() {
        assertThat(COMPARISON.dropped()).extracting(Campaign.Dropped::run).containsExactly("A1.1", "B.1", "A2.1");
        assertThat(COMPARISON.dropped()).extracting(Campaign.Dropped::rule).containsOnly(Campaign.Rule.WARM_UP);
        double[] means = IntStream.range(0, 3)
                .mapToDouble(s -> CAMPAIGN.kept().stream()
                        .filter(k -> k.session() == s)
                        .mapToDouble(
                                k -> k.run().at(0) * CAMPAIGN.sessions().get(s).factor())
                        .average()
                        .orElseThrow())
                .toArray();
        assertThat(means[0]).isCloseTo(9.633, within(5e-4));
        assertThat(means[1]).isCloseTo(9.789, within(5e-4));
        assertThat(means[2]).isCloseTo(9.562, within(5e-4));
    }

    @Test
    void baselineOnALineGivesTheGain() {
        Estimate e = GAIN.overall();
        assertThat(e.gain()).isCloseTo(0.020, within(5e-4));
        assertThat(e.halfWidth()).isCloseTo(0.0045, within(5e-5));
        assertThat(e.baseline()).isCloseTo((9.633 + 9.562) / 2, within(5e-4));
        assertThat(GAIN.drift().change()).isCloseTo(-0.007, within(5e-4));
        assertThat(GAIN.scatter().deviation()).isCloseTo(0.031, within(5e-4));
        assertThat(GAIN.scatter().freedom()).isEqualTo(9);
        assertThat(GAIN.scatter().betweenFreedom()).isZero();
        assertThat(GAIN.scatter().refit()).isNaN();
    }

    @Test
    void otherWaysOfReckoningStandBeside() {
        assertThat(GAIN.others().welchHalfWidth()).isCloseTo(0.007, within(5e-4));
        assertThat(GAIN.overall().halfWidthAnyDrift()).isCloseTo(0.006, within(5e-4));
        assertThat(GAIN.others().againstFirst()).isCloseTo(0.016, within(5e-4));
        assertThat(GAIN.others().rawAgainstFirst()).isCloseTo(0.012, within(5e-4));
        assertThat(GAIN.others().allPullsCorrected()).isCloseTo(0.024, within(5e-4));
    }

    @Test
    void itIsRealAndSaidSo() {
        assertThat(GAIN.verdict().outcome()).isEqualTo(Verdict.Outcome.REAL_GAIN);
        assertThat(GainSentences.verdict(GAIN))
                .isEqualTo(
                        "Real as far as 3 sessions tell: 'header' gains, peak +2.0 ± 0.6 % by ISO 1585 (spark ignition).");
        assertThat(GainSentences.grounds(GAIN))
                .anyMatch(
                        s -> s.contains("+2.00 ± 0.45 % if the engine drifted on a straight line")
                                && s.contains(
                                        "+2.0 ± 0.6 % if between two baselines it may have stood anywhere from the level of the one to that of the other. The second decides"))
                .anyMatch(s -> s.contains(
                        "No session checks another: what taking off and putting on again scatters cannot be told"))
                .anyMatch(s -> s.startsWith("All figures corrected by ISO 1585 (spark ignition);"))
                .anyMatch(s -> s.startsWith("To be sure that taking off and putting on again did not do it"))
                .anyMatch(s -> s.contains(
                        "± 0.7 % with each session's own scatter (Welch); +1.6 % against the first baseline alone; +1.2 % uncorrected"
                                + " with every pull, against the first baseline; +2.4 % corrected with every pull"))
                .anyMatch(s -> s.contains("the peak alone"));
    }
}
