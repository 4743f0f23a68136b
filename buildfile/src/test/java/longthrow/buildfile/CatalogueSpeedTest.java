package longthrow.buildfile;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Locale;
import java.util.SplittableRandom;
import longthrow.buildfile.RowFate.Outcome;
import org.junit.jupiter.api.Test;

/** A hundred thousand rows of nineteen columns, one in a hundred bad. */
class CatalogueSpeedTest {
    private static final int ROWS = 100_000;
    /** Asked is 1 s as a process; a test run measures its own instruments and its neighbours too. */
    private static final Duration LONGEST = Duration.ofSeconds(3);

    static String file(int rows, long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        String[] metals = {"steel", "billet_aluminium", "cast_aluminium"};
        String[] vendors = {"Quillane Works", "Osterby Parts", "Marn and Tove"};
        StringBuilder text = new StringBuilder("# kind: connecting_rod\n# invented: yes\n"
                + "code,name,length [mm],length ±,big_end_bore [mm],small_end_bore [mm],big_end_width [mm],"
                + "small_end_width [mm],rated_speed [rpm],metal,price [EUR],shipping [EUR],vendor,lead_days,basis,by,"
                + "when,batch,note\n");
        for (int i = 0; i < rows; i++) {
            boolean bad = i % 100 == 50;
            text.append(String.format(
                    Locale.ROOT,
                    "R%d,rod %d,%.2f,0.03,%.3f,%.3f,%.2f,%.2f,%d,%s,%.2f,4.90,%s,%d,%s,shop,2026-10-%02d,B%d,%n",
                    i,
                    random.nextInt(1000),
                    random.nextDouble(70, 140),
                    random.nextDouble(26, 31),
                    random.nextDouble(14, 18),
                    random.nextDouble(22, 25),
                    random.nextDouble(15, 17),
                    100 * random.nextInt(60, 90),
                    bad ? "tin" : metals[random.nextInt(3)],
                    random.nextDouble(40, 140),
                    vendors[random.nextInt(3)],
                    random.nextInt(1, 30),
                    random.nextBoolean() ? "claimed" : "measured",
                    random.nextInt(1, 29),
                    random.nextInt(100)));
        }
        return text.toString();
    }

    /** {@code -Dlongthrow.write=FILE} writes the catalogue there, to be read as a process. */
    @Test
    void aHundredThousandRowsAreReadQuickly() throws IOException {
        byte[] bytes = file(ROWS, 20240601).getBytes(StandardCharsets.UTF_8);
        String write = System.getProperty("longthrow.write");
        if (write != null) {
            Files.write(Path.of(write), bytes);
        }
        long before = ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
        Imported read = CatalogueFile.csv("connecting_rod.csv", bytes);
        Duration taken = Duration.ofNanos(ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime() - before);
        assertThat(read.parts()).hasSize(ROWS - ROWS / 100);
        assertThat(read.fates()).hasSize(ROWS);
        assertThat(read.fates().stream().filter(f -> f.outcome() == Outcome.REFUSED))
                .hasSize(ROWS / 100)
                .allMatch(f -> f.reasons().get(0).path().equals("metal"));
        assertThat(taken).isLessThan(LONGEST);
    }
}
