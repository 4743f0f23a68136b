package longthrow.core.power;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import longthrow.core.measurement.Measured;
import longthrow.core.measurement.Source;
import longthrow.core.power.PumpOctane.Scale;
import org.junit.jupiter.api.Test;

/** By hand: research and motor number of petrol lie 9 apart (8 to 10), so it acts 4.5 below the one and within 4.5 of the middle, evenly: 4.5 / sqrt(3) = 2.598. */
class PumpOctaneTest {
    private static final double TIGHT = 1e-9;
    private static final Source PUMP = Source.known("pump", Source.Kind.ASSUMED, "pump", 0.6);

    @Test
    void aResearchNumberActsAsTheMiddleBelowIt() {
        Measured acting = PumpOctane.acting(Measured.of(95, List.of(PUMP)), Scale.RESEARCH);
        assertThat(acting.value()).isCloseTo(90.5, within(TIGHT));
        // the middle itself is open by a quarter of 10 - 8, evenly
        double half = 4.5 / Math.sqrt(3);
        double open = 0.5 / Math.sqrt(3);
        assertThat(acting.standardUncertainty()).isCloseTo(Math.sqrt(0.36 + half * half + open * open), within(TIGHT));
    }

    @Test
    void aMeanNumberIsTheMiddle() {
        Measured acting = PumpOctane.acting(Measured.of(87, List.of(PUMP)), Scale.MEAN);
        assertThat(acting.value()).isEqualTo(87);
        double half = 4.5 / Math.sqrt(3);
        assertThat(acting.standardUncertainty()).isCloseTo(Math.sqrt(0.36 + half * half), within(TIGHT));
    }

    @Test
    void oneFuelIsTheSameByEitherScale() {
        assertThat(PumpOctane.acting(Measured.exact(95), Scale.RESEARCH).value())
                .isEqualTo(PumpOctane.acting(Measured.exact(90.5), Scale.MEAN).value());
    }

    @Test
    void theMarginCarriesTheDoubtOfBoth() {
        Source engine = Source.known("engine", Source.Kind.ASSUMED, "engine", 4);
        Measured margin = PumpOctane.margin(Measured.of(90, List.of(PUMP)), Measured.of(93, List.of(engine)));
        assertThat(margin.value()).isEqualTo(-3);
        assertThat(margin.standardUncertainty()).isCloseTo(Math.sqrt(0.36 + 16), within(TIGHT));
        // what both rest on goes out
        Measured same = PumpOctane.margin(Measured.of(90, List.of(PUMP)), Measured.of(93, List.of(PUMP)));
        assertThat(same.standardUncertainty()).isEqualTo(0);
    }
}
