package longthrow.buildfile;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Files that are no text. The bytes are those of ISO 32000-1:2008, 7.5.2; APPNOTE.TXT 4.3.7; MS-CFB 2.2. */
class FileKindTest {
    private static byte[] bytes(String hex) {
        byte[] begins = java.util.HexFormat.of().parseHex(hex);
        byte[] all = java.util.Arrays.copyOf(begins, 600);
        java.util.Arrays.fill(all, begins.length, all.length, (byte) 0xfe); // no UTF-8 behind it
        return all;
    }

    @ParameterizedTest
    @CsvSource({
        "255044462d312e37, PDF, is a PDF",
        "504b030414000600, ZIPPED, spreadsheet file",
        "d0cf11e0a1b11ae1, COMPOUND, older kind"
    })
    void areToldByTheirFirstBytesWhereverTextIsWanted(String hex, FileKind kind, String said) {
        byte[] file = bytes(hex);
        assertThat(FileKind.of(file)).contains(kind);
        for (List<Fault> faults : List.of(
                CatalogueFile.csv("rods.csv", file).faults(),
                CatalogueFile.yaml("rods.yaml", file).faults())) {
            assertThat(faults).singleElement().satisfies(f -> {
                assertThat(f.why()).contains(said).doesNotContain("byte");
                assertThat(f.mend()).contains("as CSV");
            });
        }
        for (List<Fault> faults :
                List.of(BuildFile.read(file).faults(), DonorFile.read(file).faults())) {
            assertThat(faults).singleElement().satisfies(f -> {
                assertThat(f.why()).contains(said).doesNotContain("byte");
                assertThat(f.mend())
                        .as("CSV is no cure here")
                        .doesNotContain("CSV")
                        .contains("longthrow");
            });
        }
    }

    @Test
    void aPdfOfPlainSignsIsOneToo() {
        byte[] plain = "%PDF-1.4\n1 0 obj\n".getBytes(StandardCharsets.US_ASCII);
        assertThat(CatalogueFile.csv("rods.csv", plain).faults())
                .singleElement()
                .satisfies(f -> assertThat(f.why()).contains("is a PDF"));
    }

    @Test
    void textIsNone() {
        for (String text : List.of("", "P", "PK", "code,length [mm]\n", "longthrow: 1\n", "%PD")) {
            assertThat(FileKind.of(text.getBytes(StandardCharsets.UTF_8)))
                    .as(text)
                    .isEmpty();
        }
    }
}
