package longthrow.buildfile;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.SplittableRandom;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Broken files never throw, and what is still read is written and read back the same. */
class BuildFileFuzzTest {
    private static final int MUTATIONS = 5_000; // for each of four seeds: 20,000

    private static final String[] PIECES = {
        "\n",
        "\n  ",
        "- ",
        ": ",
        "[",
        "]",
        "{",
        "}",
        ",",
        "'",
        "\"",
        "#",
        " #",
        "&a ",
        "*a",
        "!!x ",
        "|\n",
        ">\n",
        "? ",
        "<<: ",
        "---\n",
        "...\n",
        "%",
        "\t",
        "\u0000",
        "\uFEFF",
        "\r",
        "±",
        "° ",
        "1e308",
        "NaN",
        "-",
        "unknown",
        "readings: ",
        "\\x07",
        "𝛑",
        "\u2028",
        "9999999999999999999",
        "@",
        "`"
    };

    @ParameterizedTest
    @ValueSource(longs = {20240601, 20240602, 20240603, 20240604})
    void nothingThrows(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        byte[] example = BuildFileReadTest.HEAD
                .concat(Repository.text("examples/scenarios/s2-side-valve-kart.yaml")
                        .substring(Repository.text("examples/scenarios/s2-side-valve-kart.yaml")
                                .indexOf("units:")))
                .getBytes(StandardCharsets.UTF_8);
        for (int i = 0; i < MUTATIONS; i++) {
            byte[] mutated = example;
            for (int slips = random.nextInt(1, 5); slips > 0; slips--) {
                mutated = slip(mutated, random);
            }
            check(mutated);
        }
    }

    private static void check(byte[] bytes) {
        ReadBuild read;
        try {
            read = BuildFile.read(bytes);
            DonorFile.read(bytes);
            read.build().ifPresent(build -> {
                ReadBuild again = BuildFile.read(BuildFile.write(build));
                assertThat(again.faults()).isEmpty();
                assertThat(again.build()).contains(build);
            });
        } catch (RuntimeException | StackOverflowError thrown) {
            throw new AssertionError("thrown for:\n" + new String(bytes, StandardCharsets.ISO_8859_1), thrown);
        }
        assertThat(read.faults().isEmpty()).isEqualTo(read.build().isPresent());
    }

    private static byte[] slip(byte[] bytes, SplittableRandom random) {
        int at = random.nextInt(bytes.length);
        byte[] head = Arrays.copyOf(bytes, at);
        byte[] tail = Arrays.copyOfRange(bytes, Math.min(bytes.length, at + random.nextInt(3)), bytes.length);
        return switch (random.nextInt(6)) {
            case 0 -> join(head, new byte[] {(byte) random.nextInt(256)}, tail);
            case 1 -> join(head, tail);
            case 2 -> join(head, Arrays.copyOfRange(bytes, at, Math.min(bytes.length, at + random.nextInt(60))), tail);
            case 3 -> head.length > 20 && random.nextInt(4) == 0 ? head : join(head, tail);
            default -> join(head, PIECES[random.nextInt(PIECES.length)].getBytes(StandardCharsets.UTF_8), tail);
        };
    }

    private static byte[] join(byte[]... parts) {
        int length = Arrays.stream(parts).mapToInt(p -> p.length).sum();
        byte[] all = new byte[length];
        int at = 0;
        for (byte[] part : parts) {
            System.arraycopy(part, 0, all, at, part.length);
            at += part.length;
        }
        return all;
    }
}
