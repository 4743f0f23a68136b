package longthrow.core.build;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.Map;
import longthrow.core.build.MockedUp.EndPlay;
import longthrow.core.build.MockedUp.Way;
import longthrow.core.quantity.Quantity;
import longthrow.core.quantity.Units;
import longthrow.core.term.MovingPair;
import longthrow.core.term.Term;
import org.junit.jupiter.api.Test;

class MockedUpTest {
    private static final Quantity GAP = Quantity.of("1.2", Units.MILLIMETRE);
    private static final Quantity NONE = Quantity.of("0", Units.MILLIMETRE);

    private static MockedUp mocked(Way way, MockedUp.Found found, Map<Term, Quantity> with) {
        return new MockedUp(MovingPair.ROD_TO_SKIRT, way, found, EndPlay.NOT_SAID, with, "");
    }

    @Test
    void blueTellsWhetherTheyTouchAndNoMore() {
        assertThat(mocked(Way.BLUE, new MockedUp.Touching(), Map.of()).found().written())
                .isEqualTo("touches");
        assertThat(mocked(Way.BLUE, new MockedUp.Free(NONE), Map.of()).found().written())
                .contains("not read");
        assertThatThrownBy(() -> mocked(Way.BLUE, new MockedUp.Free(GAP), Map.of()))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> mocked(Way.BLUE, new MockedUp.Read(List.of(GAP), null), Map.of()))
                .isInstanceOf(IllegalArgumentException.class);
    }

    /** The valve is pressed on along its stem: it meets a piston, another valve, a head over it, or its retainer a seal; nothing of a crank, and no wall beside it. */
    @Test
    void softSpringsReadWhatAValveMeets() {
        assertThat(MovingPair.values())
                .filteredOn(Way.SOFT_SPRING::reads)
                .containsExactlyInAnyOrder(
                        MovingPair.INTAKE_VALVE_TO_PISTON,
                        MovingPair.EXHAUST_VALVE_TO_PISTON,
                        MovingPair.VALVE_TO_VALVE,
                        MovingPair.VALVE_TO_HEAD,
                        MovingPair.INTAKE_RETAINER_TO_SEAL,
                        MovingPair.EXHAUST_RETAINER_TO_SEAL);
        assertThat(MovingPair.values()).allMatch(Way.CLAY::reads).allMatch(Way.BLUE::reads);
        assertThatThrownBy(() -> mocked(Way.SOFT_SPRING, new MockedUp.Touching(), Map.of()))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("in the place of valve springs");
    }

    @Test
    void partsAreKnownAgainByTheSizesThatDecideAGap() {
        assertThatThrownBy(() -> mocked(Way.CLAY, new MockedUp.Touching(), Map.of(Term.BIG_END_WIDTH, GAP)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("connecting_rod.big_end_width");
        assertThat(MockedUp.sizes(MovingPair.ROD_TO_SKIRT))
                .containsExactly(Term.STROKE, Term.ROD_LENGTH, Term.COMPRESSION_HEIGHT);
        assertThat(MockedUp.sizes(MovingPair.PISTON_TO_HEAD)).contains(Term.GASKET_THICKNESS);
        assertThat(MockedUp.sizes(MovingPair.PUSHROD_TO_TUBE)).containsExactly(Term.INTAKE_LIFT, Term.EXHAUST_LIFT);
        assertThat(MockedUp.sizes(MovingPair.ROD_BOLTS_TO_INTAKE_LOBE))
                .containsExactly(Term.STROKE, Term.ROD_LENGTH, Term.COMPRESSION_HEIGHT, Term.INTAKE_LIFT);
        assertThat(MockedUp.sizes(MovingPair.BIG_END_TO_CAM_CORE)).contains(Term.CAM_CORE);
    }

    @Test
    void readingsAreOneOrMoreAndOnlyOneHasItsDoubt() {
        assertThatThrownBy(() -> new MockedUp.Read(List.of(), null)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new MockedUp.Read(List.of(GAP, GAP), GAP))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new MockedUp.Curve(List.of())).isInstanceOf(IllegalArgumentException.class);
        assertThat(new MockedUp.Read(List.of(GAP), GAP).written()).isEqualTo("1.2 mm ± 1.2 mm");
    }
}
