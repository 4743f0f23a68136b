package longthrow.core.power;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import longthrow.core.cycle.ValveLift;
import longthrow.core.measurement.Measured;
import longthrow.core.term.Part;
import org.junit.jupiter.api.Test;

class TableLiftTest {
    private static final double FULL = 8e-3;

    /** Quick up, slow down: from -100 to 0 and from 0 to 140 degrees, in squares of the cosine. */
    private static double crooked(double degrees) {
        double share = degrees < 0 ? degrees / -100 : degrees / 140;
        double c = share < 1 ? Math.cos(0.5 * Math.PI * share) : 0;
        return FULL * c * c;
    }

    private static TableLift table(DoubleUnaryOperator lift, int from, int to) {
        List<longthrow.core.measure.ValveLift.Place> places = new ArrayList<>();
        for (int degrees = from; degrees <= to; degrees++) {
            // the table's zero stands 70 degrees before its peak
            places.add(new longthrow.core.measure.ValveLift.Place(
                    Math.toRadians(degrees + 70), lift.applyAsDouble(degrees), Measured.exact(0)));
        }
        return new TableLift(new longthrow.core.measure.ValveLift(
                Part.INTAKE_VALVE, "lift_tables[1]", places, Measured.exact(FULL), Measured.exact(-1), List.of()));
    }

    private static TableLift crooked() {
        return table(TableLiftTest::crooked, -99, 139);
    }

    /**
     * At 1 mm, an eighth of 8 mm, cos2 is 1/8 where the angle is 1.20943 rad, 0.76995 of a right angle: 76.995 degrees before the peak and 107.793 after it, 184.788 between.
     */
    @Test
    void eventsStandWhereTheyAreSaidToAndTheShapeIsTheTables() {
        double duration = Math.toRadians(184.788);
        double centre = Math.toRadians(465);
        ValveLift lift = crooked().at(FULL, 1e-3, duration, centre);
        assertThat(lift.isAssumed()).isFalse();
        assertThat(Math.toDegrees(lift.opens(1e-3))).isCloseTo(465 - 92.394, within(0.02));
        assertThat(Math.toDegrees(lift.closes(1e-3))).isCloseTo(465 + 92.394, within(0.02));
        // its peak lies before the middle of its events: 76.995 after it opens
        assertThat(Math.toDegrees(lift.peakAngle())).isCloseTo(465 - 92.394 + 76.995, within(0.5));
        assertThat(lift.peak()).isCloseTo(FULL, within(1e-6));
        double middle = Math.toRadians(465 - 92.394 + 76.995);
        for (int degrees = -95; degrees <= 135; degrees += 5) {
            assertThat(lift.at(middle + Math.toRadians(degrees)))
                    .as("%d", degrees)
                    .isCloseTo(crooked(degrees), within(3e-6)); // straight between whole degrees
        }
    }

    /** A tenth longer between the events, a tenth higher: the same curve, drawn out. */
    @Test
    void movedEventsStretchItAndAMovedFullLiftRaisesIt() {
        double duration = Math.toRadians(184.788);
        ValveLift longer = crooked().at(FULL, 1e-3, 1.1 * duration, 7);
        assertThat(longer.closes(1e-3) - longer.opens(1e-3)).isCloseTo(1.1 * duration, within(1e-4));
        assertThat(longer.closes(4e-3) - longer.opens(4e-3))
                .isCloseTo(1.1 * Math.toRadians(120), within(1e-3)); // cos2 = 1/2 at 50 and 70 degrees
        ValveLift higher = crooked().at(1.1 * FULL, 1.1e-3, duration, 7);
        assertThat(higher.peak()).isCloseTo(1.1 * FULL, within(1e-6));
        assertThat(higher.closes(1.1e-3) - higher.opens(1.1e-3)).isCloseTo(duration, within(1e-4));
        double mean = crooked().at(FULL, 1e-3, duration, 7).mean(x -> x);
        assertThat(longer.mean(x -> x) / mean).isCloseTo(1.1, within(1e-3));
        assertThat(higher.mean(x -> x) / mean).isCloseTo(1.1, within(1e-3));
    }

    @Test
    void aTableThatStopsShortOfTheCheckingLiftTellsNothing() {
        TableLift cut = table(TableLiftTest::crooked, -70, 139); // 1.65 mm at its first row
        assertThatThrownBy(() -> cut.at(FULL, 1e-3, 3.2, 7)).hasMessageContaining("checking lift");
        // below its last row it is carried on to the seat
        ValveLift lift = table(TableLiftTest::crooked, -90, 120).at(FULL, 1e-3, Math.toRadians(184.788), 7);
        assertThat(lift.carriedOn()).isCloseTo(crooked(120), within(1e-9));
        assertThat(lift.opens(0)).isLessThan(lift.opens(1e-3));
    }
}
