package longthrow.buildfile;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import longthrow.core.answer.Answer;
import longthrow.core.answer.Rung;
import longthrow.core.answer.Rung.State;
import longthrow.core.answer.Rung.Weight;
import longthrow.core.build.GasReading;
import longthrow.core.quantity.Units;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** How long the rod's beam lasts at the stated duty, on the whole invented engine of {@link LadderMutationTest}, wanted for 5200 rpm and 60 h. */
class RodHoursTest {
    private static final String HOURS = "rod_beam_hours";
    private static final String AT_ONE_SPEED = "rod_beam_fatigue";

    private static Answer answer(String text, GasReading... traces) {
        ReadBuild read = BuildFile.read(text.getBytes(StandardCharsets.UTF_8));
        assertThat(read.faults()).extracting(Fault::message).isEmpty();
        return Running.limitsAlone(read.build().orElseThrow().withGas(List.of(traces)));
    }

    private static Rung rung(String text, String key, GasReading... traces) {
        return rung(answer(text, traces), key);
    }

    private static Rung rung(Answer answer, String key) {
        return answer.ladder().orElseThrow().rung(key).orElseThrow(() -> new AssertionError(key));
    }

    private static String wanted(String rpm) {
        String was = "wanted_speed: 5200 rpm";
        assertThat(LadderMutationTest.WHOLE).contains(was);
        return LadderMutationTest.WHOLE.replace(was, "wanted_speed: " + rpm + " rpm");
    }

    private static String duty(String... speedsAndShares) {
        StringBuilder steps = new StringBuilder();
        for (int k = 0; k < speedsAndShares.length; k += 2) {
            steps.append(steps.isEmpty() ? "" : ", ")
                    .append("{speed: ")
                    .append(speedsAndShares[k])
                    .append(" rpm, share: ")
                    .append(speedsAndShares[k + 1])
                    .append(" %}");
        }
        return "hours_at: [" + steps + "]\n";
    }

    /** At the speed at which fatigue is just reached in the hours wanted, a duty of that one speed lasts as long: even odds, whatever the doubts. The standard doubt of the logarithm is about 0.7, so 1e-7 of the odds is 2e-7 of the hours. */
    @Test
    void aDutyOfOneStepLastsWhatFatigueAtThatSpeedSays() {
        String slow = wanted("1000")
                .replace("cut_speed: {specified: 5300 rpm", "cut_speed: {specified: 15990 rpm")
                .replace("governed_speed: {specified: 3600 rpm, by: the engine's plate, note: made up}", "")
                .replace("rated_speed: {specified: 3200 rpm, by: its maker's sheet, note: made up}", "");
        double speed = rung(slow, AT_ONE_SPEED).speed().orElseThrow().value();
        String rpm = String.format(Locale.ROOT, "%.12f", Units.RPM.fromSi(speed));
        Rung hours =
                rung(slow.replace("wanted_speed: 1000 rpm", "wanted_speed: " + rpm + " rpm") + duty(rpm, "100"), HOURS);
        assertThat(hours.state()).isEqualTo(State.NEAR);
        assertThat(hours.probability()).isCloseTo(0.5, within(1e-7));
        assertThat(hours.why()).contains("60 h (");
        String faster = String.format(Locale.ROOT, "%.12f", Units.RPM.fromSi(speed) * 1.001);
        assertThat(rung(
                                slow.replace("wanted_speed: 1000 rpm", "wanted_speed: " + faster + " rpm")
                                        + duty(faster, "100"),
                                HOURS)
                        .probability())
                .isLessThan(0.499);
    }

    @Test
    void lessTimeAtTheFastestStepLastsLonger() {
        String fast = LadderMutationTest.WHOLE;
        double before = -1;
        for (String share : List.of("100", "60", "30", "10")) {
            String rest = String.valueOf(100 - Integer.parseInt(share));
            String steps = share.equals("100") ? duty("5200", "100") : duty("3000", rest, "5200", share);
            double now = rung(fast + steps, HOURS).probability();
            assertThat(now).as(share).isGreaterThan(before);
            before = now;
        }
    }

    @Test
    void theRungTellsHoursAndWhatTheyRestOn() {
        Answer answer = answer(LadderMutationTest.WHOLE + LadderMutationTest.DUTY);
        Rung hours = rung(answer, HOURS);
        assertThat(hours.why()).contains("40 h (9.8 h to 160 h) by Miner's sum; 60 h are wanted", "holds: 360 h (");
        assertThat(hours.hangsOn()).contains("hours_at", "use.hours_wanted", "connecting_rod.metal");
        assertThat(hours.speed()).isEmpty();
        assertThat(answer.defaults()).anyMatch(d -> d.what().contains("70 % at 3000 rpm; 30 % at 5200 rpm"));
        assertThat(answer.defaults()).anyMatch(d -> d.what().contains("break between 0.3 and 3.0"));
    }

    /** Where a duty is stated that reaches the speed, all the hours at that speed decide nothing; without one they do as ever. */
    @Test
    void fatigueAtOneSpeedOnlyTellsBesideADutyThatReachesTheSpeed() {
        String thin = LadderMutationTest.WHOLE.replace("beam_thickness: 14.0 mm", "beam_thickness: 7.0 mm");
        Rung alone = rung(thin, AT_ONE_SPEED);
        assertThat(alone.weight()).isEqualTo(Weight.HOLDS_BACK);
        Rung beside = rung(thin + LadderMutationTest.DUTY, AT_ONE_SPEED);
        assertThat(beside.weight()).isEqualTo(Weight.TELLS);
        assertThat(beside.isInTheWay()).isFalse();
        assertThat(beside.state()).isEqualTo(alone.state());
        assertThat(beside.why()).contains("whose own limit decides", alone.why());
        assertThat(beside.hangsOn()).contains("hours_at");
        assertThat(rung(thin + LadderMutationTest.DUTY, HOURS).isInTheWay()).isTrue();
        assertThat(answer(thin).ladder().orElseThrow().rung(HOURS)).isEmpty();
    }

    @Test
    void aDutyThatEndsBelowTheSpeedTellsNothingOfIt() {
        String text = LadderMutationTest.WHOLE + duty("3000", "70", "5100", "30");
        Rung hours = rung(text, HOURS);
        assertThat(hours.state()).isEqualTo(State.UNKNOWN);
        assertThat(hours.isInTheWay()).isTrue();
        assertThat(hours.why()).contains("hours at 5200 rpm", "does not reach", "5100 rpm");
        Rung alone = rung(LadderMutationTest.WHOLE, AT_ONE_SPEED);
        Rung beside = rung(text, AT_ONE_SPEED);
        assertThat(beside.weight()).isEqualTo(alone.weight());
        assertThat(beside.why()).isEqualTo(alone.why());
    }

    /** Faster than the limiter lets it run, or than is wanted where there is none; and the speed wanted for no time at all. Whoever covers the rod's limits, a duty is its owner's. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "{speed: 9000 rpm, share: 50 %}, {speed: 1000 rpm, share: 50 %} | 9000 rpm is above the 5300 rpm at which the limiter cuts",
                "{speed: 1000 rpm, share: 100 %} | does not reach: its fastest step is 1000 rpm",
                "{speed: 1000 rpm, share: 99.9999 %}, {speed: 5200 rpm, share: 0.0001 %} | less than 1 % of the time"
            })
    void aDutyThatDoesNotGoWithTheSpeedApprovesNothing(String steps, String said) {
        String rated = LadderMutationTest.WHOLE.replace(
                "rated_speed: {specified: 3200 rpm", "rated_speed: {specified: 8000 rpm");
        assertThat(rung(rated + LadderMutationTest.DUTY, HOURS).state()).isEqualTo(State.COVERED);
        Rung hours = rung(rated + "hours_at: [" + steps + "]\n", HOURS);
        assertThat(hours.state()).isEqualTo(State.UNKNOWN);
        assertThat(hours.isInTheWay()).isTrue();
        assertThat(hours.why()).contains(said);
        assertThat(hours.missing())
                .anyMatch(m -> m.where().equals("hours_at") && !m.what().isBlank());
        assertThat(rung(rated + "hours_at: [{speed: 1000 rpm, share: 99 %}, {speed: 5200 rpm, share: 1 %}]\n", HOURS)
                        .isInTheWay())
                .isFalse();
    }

    /** Without a limiter nothing is run faster than is wanted. */
    @Test
    void withoutALimiterNoStepIsFasterThanWanted() {
        String open = Running.replaced(
                LadderMutationTest.WHOLE, "limiter: {cut_speed: {specified: 5300 rpm, by: its maker}}\n", "");
        assertThat(rung(open + duty("3000", "70", "5300", "30"), HOURS).why())
                .contains("5300 rpm is above the 5200 rpm that is wanted, and no limiter is known");
        assertThat(rung(open + LadderMutationTest.DUTY, HOURS).why()).doesNotContain("not known");
    }

    @Test
    void withoutHoursWantedTheRungIsUnknownAndNamesThem() {
        String text = LadderMutationTest.WHOLE.replace("  hours_wanted: 60 h\n", "") + LadderMutationTest.DUTY;
        Rung hours = rung(text, HOURS);
        assertThat(hours.state()).isEqualTo(State.UNKNOWN);
        assertThat(hours.missing()).extracting(Rung.Missing::where).containsExactly("use.hours_wanted");
    }

    /** Where the mean alone is past what the metal bears the line of swings has no end to read: it is passed, not unknown and not held. */
    @Test
    void aPullPastTheMetalLastsNoTime() {
        String text = wanted("15900")
                        .replace("cut_speed: {specified: 5300 rpm", "cut_speed: {specified: 15990 rpm")
                        .replace("beam_thickness: 14.0 mm", "beam_thickness: 6.0 mm")
                        .replace("mass: 171.4 g", "mass: 400 g")
                        .replace("beam_width: 18.0 mm", "beam_width: 9.0 mm")
                + duty("3000", "90", "15900", "10");
        Rung hours = rung(text, HOURS);
        assertThat(hours.state()).isEqualTo(State.EXCEEDED);
        assertThat(hours.why()).contains("without any gas too", "the mean pull alone");
    }

    /** A trace counts up to where it was taken: for a duty with a faster step the bounding one does. */
    @Test
    void aGasTraceCountsForDutiesItReaches() {
        GasReading[] trace = GasTraceTest.sweep(0.5, GasReading.Cycles.STRONGEST);
        Rung bound = rung(LadderMutationTest.WHOLE + LadderMutationTest.DUTY, HOURS);
        Rung by = rung(LadderMutationTest.WHOLE + LadderMutationTest.DUTY, HOURS, trace);
        assertThat(by.probability()).isGreaterThan(bound.probability());
        assertThat(by.why()).contains("the gas trace measured at 3450 rpm (gas_traces[3])");
        assertThat(by.hangsOn()).contains("gas_traces[1]", "hours_at");
        Rung faster = rung(
                LadderMutationTest.WHOLE.replace("cut_speed: {specified: 5300 rpm", "cut_speed: {specified: 5500 rpm")
                        + duty("3000", "70", "5200", "25", "5400", "5"),
                HOURS,
                trace);
        assertThat(faster.why()).doesNotContain("gas_traces[1]");
    }
}
