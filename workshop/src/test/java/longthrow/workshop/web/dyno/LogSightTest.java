package longthrow.workshop.web.dyno;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import longthrow.workshop.draw.LogChart;
import org.junit.jupiter.api.Test;

/** What is sent of a long log. All figures are invented. */
class LogSightTest {
    /** The bound is the page's promise; scatter in every column of pixels is the most that a picture can hold. */
    private static final int MOST_BYTES = 60_000;

    private static int bytes(LogSight sight) {
        return sight.chart().getBytes(StandardCharsets.UTF_8).length;
    }

    @Test
    void aPictureIsAsLargeHoweverManyRowsLieBehindItAndItsSpikeStands() {
        LogChart.Log log = LogSightSpeed.log(400_000);
        LogSight whole = LogSightSpeed.look(log, "", "");
        assertThat(bytes(whole)).isLessThan(MOST_BYTES);
        assertThat(whole.about()).isEqualTo("400,000 of 400,000 rows, from 0 to 399.999 s");
        assertThat(whole.chart()).as("torque leaps to 30000 N·m in one row").contains(">20000<");
        LogSight part = LogSightSpeed.look(log, "140", "160");
        assertThat(bytes(part)).isLessThan(MOST_BYTES);
        assertThat(part.chart()).as("the spike is elsewhere").doesNotContain(">20000<");
        assertThat(part.ways()).extracting(LogSight.Way::id).contains("earlier", "later", "whole");
    }

    @Test
    void aStretchEndsWhereTheLogEndsAndNeverTurnsRound() {
        LogChart.Log log = LogSightSpeed.log(5_000);
        assertThat(LogSightSpeed.look(log, "-3", "99").about()).contains("5,000 of 5,000 rows");
        LogSight wrong = LogSightSpeed.look(log, "3", "2");
        assertThat(wrong.trouble()).contains("is no stretch of this log");
        assertThat(wrong.about()).contains("5,000 of 5,000 rows");
        assertThat(LogSightSpeed.look(log, "2", "2.0000000001").about()).contains("of 5,000 rows");
    }
}
