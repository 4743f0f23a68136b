package longthrow.buildfile.log;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

/** The small version of {@link LogMutations}, which throws where one is thrown over or a line is lost. */
class LogMutationTest {
    private static final int LOGS = 2000;
    private static final long MOST_BYTES = 512L << 20;

    @Test
    void ofBrokenLogsEveryLineIsKeptOrListed() {
        LogMutations.Tally tally = LogMutations.run(LOGS);
        assertThat(tally.read + tally.refused).isEqualTo(LOGS);
        assertThat(tally.read).isGreaterThan(LOGS * 3 / 4); // breaking them leaves most of them logs
        assertThat(tally.rows + tally.listed).isEqualTo(tally.lines);
        assertThat(tally.mostMemory).isLessThan(MOST_BYTES);
    }
}
