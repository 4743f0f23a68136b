package longthrow.buildfile;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.SplittableRandom;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Broken catalogues never throw, and every row kept has its fate. */
class CatalogueFuzzTest {
    private static final int MUTATIONS = 1_000; // for each of four seeds, CSV and YAML by turns: 4,000

    private static final String CSV = """
            # kind: piston
            # invented: yes
            code,name,diameter [mm],diameter ±,compression_height,pin_diameter (in),crown_volume [cc],alloy,price [EUR],lead_days,basis,note
            T66,"seen, twice",65.94,0.01,24.90 mm ± 0.02 mm,0.669,1.1,cast,40,3 weeks,claimed,"a ""quoted"" word"
            T67,other,66.19,,24.90 mm,0.669,-2.5,iron,,,measured,
            """;

    private static final String YAML = """
            catalogue: 1
            invented: yes
            crankshafts:
              - {code: M-565, stroke: 56.50 mm ± 0.02 mm, metal: iron, price: 120 EUR}
              - code: M-566
                stroke: 56.60 mm
            machine_operations:
              - {code: H, operation: small_end_hone, least: 0.005 mm, most: 0.06 mm, price: 14 EUR}
            """;

    private static final String[] PIECES = {
        "\n",
        "\r\n",
        ",",
        ";",
        "\t",
        "\"",
        "\"\"",
        "#",
        "# kind: rod",
        "=",
        "±",
        " ± 0.1",
        "-",
        "1e308",
        "9".repeat(40),
        "NaN",
        "unknown",
        "\u0000",
        "\uFEFF",
        "\uFFFD",
        "𝛑",
        "\u2028",
        "[mm]",
        "(in)",
        "[",
        "]",
        "{",
        "}",
        ": ",
        "&a ",
        "*a",
        "code",
        "sep=;",
        "½",
        "€",
        "1,250.00",
        " ",
        "0x1F",
        "|",
        "'"
    };

    @ParameterizedTest
    @ValueSource(longs = {20240601, 20240602, 20240603, 20240604})
    void nothingThrows(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        for (int i = 0; i < MUTATIONS; i++) {
            boolean csv = random.nextBoolean();
            StringBuilder text = new StringBuilder(csv ? CSV : YAML);
            for (int n = random.nextInt(1, 6); n > 0; n--) {
                int at = random.nextInt(text.length());
                if (random.nextInt(3) == 0) {
                    text.delete(at, Math.min(text.length(), at + random.nextInt(1, 12)));
                } else {
                    text.insert(at, PIECES[random.nextInt(PIECES.length)]);
                }
                if (text.length() == 0) {
                    text.append('x');
                }
            }
            byte[] bytes = text.toString().getBytes(StandardCharsets.UTF_8);
            if (random.nextInt(10) == 0) {
                bytes[random.nextInt(bytes.length)] = (byte) random.nextInt(256);
            }
            Imported read = csv ? CatalogueFile.csv("a.csv", bytes) : CatalogueFile.yaml("a.yaml", bytes);
            long kept = read.fates().stream()
                    .filter(f -> f.outcome() == RowFate.Outcome.KEPT)
                    .count();
            assertThat(kept)
                    .as(text.toString())
                    .isEqualTo(read.parts().size() + (long) read.operations().size());
            assertThat(read.fates())
                    .as(text.toString())
                    .allMatch(f -> f.outcome().isRefused() != f.reasons().isEmpty());
        }
    }
}
