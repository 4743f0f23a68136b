package longthrow.buildfile;

import static org.assertj.core.api.Assertions.assertThat;

import longthrow.core.dyno.DynoSheet;
import org.junit.jupiter.api.Test;

/** A run set aside and counted again: the word is written, and all else stays as it stands. */
class AsideEditTest {
    private static final String SHEET = """
            longthrow_dyno: 1
            name: Two lengths of pipe   # invented
            standard: none
            bench: {kind: table}
            sessions:
              - name: A1
                setup: short
                runs:
                  - {peak: 9.38 kW}   # cold
                  - {peak: 9.71 kW, aside: rain}
                  - name: third   # by hand
                    rows:
                      3000 rpm: 13.1 N·m   # read twice
                      3200 rpm: 13.4 N·m
                  - aside: smoke   # blue
                    peak: 9.7 kW
                  - peak: 9.8 kW
                    aside: 'wind: gusts'
            """;

    private static String with(String text, int run, String why) {
        Edited edited = DynoSheetFile.aside(text, 0, run, why);
        assertThat(edited.faults()).isEmpty();
        return edited.text().orElseThrow();
    }

    private static String aside(String text, int run) {
        DynoSheet sheet = DynoSheetFile.read(text).sheet().orElseThrow();
        return sheet.sessions().get(0).pulls().get(run).aside();
    }

    @Test
    void oneInBracesGetsTheWordAndLosesItAgain() {
        String set = with(SHEET, 0, "throttle, not open: 1 of 2");
        assertThat(set).contains("- {peak: 9.38 kW, aside: 'throttle, not open: 1 of 2'}   # cold");
        assertThat(aside(set, 0)).isEqualTo("throttle, not open: 1 of 2");
        assertThat(with(set, 0, "")).isEqualTo(SHEET);
    }

    @Test
    void oneInLinesGetsTheWordAndLosesItAgain() {
        String set = with(SHEET, 2, "slipped");
        assertThat(set).contains("- aside: slipped\n        name: third   # by hand");
        assertThat(with(set, 2, "")).isEqualTo(SHEET);
    }

    @Test
    void aReasonIsReplaced() {
        assertThat(with(SHEET, 1, "fog")).isEqualTo(SHEET.replace("aside: rain", "aside: fog"));
    }

    @Test
    void aLineOfItsOwnGoesAndARemarkStays() {
        assertThat(with(SHEET, 4, "")).isEqualTo(SHEET.replace("        aside: 'wind: gusts'\n", ""));
        String counted = with(SHEET, 3, "");
        assertThat(counted).contains("- aside: \"\"   # blue");
        assertThat(aside(counted, 3)).isEmpty();
    }

    @Test
    void whatCannotBeWrittenIsRefusedAndSaid() {
        assertThat(DynoSheetFile.aside(SHEET, 0, 9, "x").faults().get(0).message())
                .contains("not in the sheet");
        assertThat(DynoSheetFile.aside(SHEET, 0, 0, "two\nlines").faults()).isNotEmpty();
        assertThat(DynoSheetFile.aside("longthrow_dyno: 1\n", 0, 0, "x").text()).isEmpty();
    }

    @Test
    void theEmptySheetReadsAsItStands() {
        assertThat(DynoSheetFile.read(DynoSheetFile.blank()).faults()).isEmpty();
    }
}
