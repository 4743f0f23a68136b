package longthrow.core;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class ReferenceRowsTest {
    private static ReferenceRows.Row row(String tolerance) {
        return new ReferenceRows.Row("X-01.1", "a, b", "length", -200, "mm", tolerance, "invented here");
    }

    @Test
    void readsEveryFormOfTolerance() {
        assertThat(row("rel 1e-10 for the exact constant; 1e-4 where the tool uses 5252")
                        .allowed())
                .isCloseTo(200e-10, within(1e-20));
        assertThat(row("abs 5e-7").allowed()).isEqualTo(5e-7);
        assertThat(row("abs 0.005 (1e6 trials)").allowed()).isEqualTo(0.005);
        assertThat(row("abs 0.6 nm").allowed()).isEqualTo(0.6);
        assertThat(row("rel 1 %").allowed()).isCloseTo(2, within(1e-15));
        assertThatThrownBy(() -> row("about 3")).hasMessageContaining("X-01.1").hasMessageContaining("about 3");
    }

    @Test
    void failsWithIdExpectedGotAndTolerance() {
        row("abs 0.5").check(-200.5);
        assertThatThrownBy(() -> row("abs 0.5").check(-200.6))
                .isInstanceOf(AssertionError.class)
                .hasMessageContaining("X-01.1")
                .hasMessageContaining("expected -200.0 mm")
                .hasMessageContaining("got -200.6")
                .hasMessageContaining("abs 0.5");
        assertThatThrownBy(() -> row("abs 0.5").check(Double.NaN)).isInstanceOf(AssertionError.class);
    }

    @Test
    void readsQuotedFields() {
        ReferenceRows rows = ReferenceRows.parse("id,inputs,quantity,value,unit,tolerance,source\n"
                + "A-01.1,\"a, \"\"b\"\"\nc\",q,1e3,mm,abs 1,s\nA-02.1,,q,2,,rel 1e-9,s");
        assertThat(rows.row("A-01.1").inputs()).isEqualTo("a, \"b\"\nc");
        assertThat(rows.cases("A-02")).extracting(ReferenceRows.Row::value).containsExactly(2.0);
        assertThat(rows.all()).hasSize(2);
    }
}
