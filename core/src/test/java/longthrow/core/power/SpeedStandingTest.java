package longthrow.core.power;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import longthrow.core.answer.Answer;
import longthrow.core.answer.Approval;
import longthrow.core.answer.LimitLadder;
import longthrow.core.answer.Rung;
import longthrow.core.answer.Stop;
import longthrow.core.answer.TorqueCurve.Standing;
import longthrow.core.measurement.Measured;
import longthrow.core.measurement.Source;
import longthrow.core.quantity.UnitSystem;
import longthrow.core.term.Part;
import org.junit.jupiter.api.Test;

/** What may be run, by an answer to life made up for it: asked at 500 rad/s. */
class SpeedStandingTest {
    private static final double ASKED = 500;

    private static Answer life(Approval.State verdict, OptionalDouble upTo, List<Rung> rungs, List<Stop> stops) {
        Approval approval = new Approval(
                verdict, OptionalDouble.of(ASKED), upTo, OptionalDouble.empty(), "as said", List.of(), List.of(), "");
        return bare(stops).withLadder(new LimitLadder(approval, rungs, LimitLadder.Start.NOTHING));
    }

    private static Answer bare(List<Stop> stops) {
        return new Answer(
                "life",
                "made up",
                true,
                UnitSystem.METRIC_FIRST,
                List.of(),
                List.of(),
                List.of(),
                stops,
                List.of(),
                List.of(),
                List.of());
    }

    /**
     * A limit.
     * @param speed at which it gives up [rad/s]; NaN where no speed decides
     * @param doubt standard uncertainty of that
     */
    private static Rung rung(Rung.Weight weight, Rung.State state, double speed, double doubt) {
        Measured at = Measured.of(
                Double.isNaN(speed) ? 0 : speed, List.of(Source.known("limit", Source.Kind.ASSUMED, "limit", doubt)));
        return new Rung(
                "rod",
                "rod",
                Part.ROD,
                Rung.Kind.STRENGTH,
                weight,
                Double.isNaN(speed) ? Optional.empty() : Optional.of(at),
                state,
                0.5,
                List.of(),
                List.of(),
                "",
                List.of(),
                "",
                "");
    }

    private static Standing at(Answer life, double speed) {
        return new SpeedStanding(life).at(speed).standing();
    }

    @Test
    void approvedUpToASpeedAndNoFurther() {
        Answer life = life(Approval.State.APPROVED, OptionalDouble.of(520), List.of(), List.of());
        assertThat(at(life, 100)).isEqualTo(Standing.APPROVED);
        assertThat(at(life, 520)).isEqualTo(Standing.APPROVED);
        assertThat(at(life, 521)).isEqualTo(Standing.NOT_APPROVED);
        assertThat(new SpeedStanding(life).at(521).why()).contains("above what is approved");
    }

    @Test
    void aLimitThatIsSurelyPassedRefusesAboveItAlone() {
        Rung rod = rung(Rung.Weight.REFUSES, Rung.State.HOLDS, 600, 10);
        Answer life = life(Approval.State.APPROVED, OptionalDouble.of(520), List.of(rod), List.of());
        assertThat(at(life, 600)).isEqualTo(Standing.NOT_APPROVED); // as likely passed as not
        assertThat(at(life, 616)).isEqualTo(Standing.NOT_APPROVED); // 1.6 standard uncertainties: not surely
        assertThat(at(life, 617)).isEqualTo(Standing.REFUSED);
        assertThat(new SpeedStanding(life).at(617).why()).contains("rod");
    }

    @Test
    void whatHoldsBackOrTellsRefusesNothing() {
        for (Rung.Weight weight : List.of(Rung.Weight.HOLDS_BACK, Rung.Weight.TELLS)) {
            Rung rod = rung(weight, Rung.State.HOLDS, 600, 1);
            assertThat(at(life(Approval.State.NOT_APPROVED, OptionalDouble.empty(), List.of(rod), List.of()), 900))
                    .isEqualTo(Standing.NOT_APPROVED);
        }
    }

    @Test
    void aMakersWordCoversUpToTheSpeedAskedFor() {
        Rung covered = rung(Rung.Weight.REFUSES, Rung.State.COVERED, 400, 1);
        Answer life = life(Approval.State.APPROVED, OptionalDouble.of(ASKED), List.of(covered), List.of());
        assertThat(at(life, ASKED)).isEqualTo(Standing.APPROVED);
        assertThat(at(life, 501)).isEqualTo(Standing.REFUSED);
        Rung alone = rung(Rung.Weight.REFUSES, Rung.State.NEAR, 400, 1);
        assertThat(at(life(Approval.State.NOT_APPROVED, OptionalDouble.empty(), List.of(alone), List.of()), 450))
                .isEqualTo(Standing.REFUSED);
    }

    @Test
    void whatIsRefusedForItsSpeedIsNotApprovedBelowIt() {
        Rung passed = rung(Rung.Weight.REFUSES, Rung.State.EXCEEDED, 450, 1);
        Answer life = life(Approval.State.REFUSED, OptionalDouble.empty(), List.of(passed), List.of());
        assertThat(at(life, 440)).isEqualTo(Standing.NOT_APPROVED);
        assertThat(at(life, 460)).isEqualTo(Standing.REFUSED);
        assertThat(at(life, ASKED)).isEqualTo(Standing.REFUSED);
        assertThat(at(life, 2000)).isEqualTo(Standing.REFUSED);
    }

    @Test
    void damageAndLimitsWithoutSpeedRefuseAll() {
        Rung passed = rung(Rung.Weight.REFUSES, Rung.State.EXCEEDED, 450, 1);
        Rung worn = rung(Rung.Weight.REFUSES, Rung.State.EXCEEDED, Double.NaN, 1);
        Stop damage = new Stop("do not start it", "a crack", "", true);
        assertThat(at(life(Approval.State.REFUSED, OptionalDouble.empty(), List.of(passed, worn), List.of()), 10))
                .isEqualTo(Standing.REFUSED);
        // nothing says why it is refused: to be on the safe side at every speed
        assertThat(at(life(Approval.State.REFUSED, OptionalDouble.empty(), List.of(), List.of(damage)), 10))
                .isEqualTo(Standing.REFUSED);
    }

    @Test
    void onlyAnAnswerToLifeIsTaken() {
        assertThatThrownBy(() -> new SpeedStanding(bare(List.of()))).hasMessageContaining("life");
    }
}
