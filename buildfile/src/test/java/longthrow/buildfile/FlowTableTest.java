package longthrow.buildfile;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import longthrow.core.build.Build;
import longthrow.core.build.FlowTable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The section {@code flow_tables}: what may be in it, and what is said of what may not. */
class FlowTableTest {
    private static final String HEAD = "longthrow: 1\nengine: {name: a}\n";

    private static Build build(String yaml) {
        return BuildFile.read(yaml).build().orElseThrow();
    }

    @Test
    void everyKeyIsReadAndWritten() {
        Build build = build(HEAD + Layout.FLOW_TABLES_EXAMPLE + "\n");
        FlowTable table = build.flows().get(0);
        assertThat(table.direction()).contains(FlowTable.Direction.INTO);
        assertThat(table.joined()).contains(FlowTable.Joined.RADIUSED);
        assertThat(table.coefficient()).isEmpty();
        assertThat(table.depression().orElseThrow().si())
                .isCloseTo(28 * 249.089, within(1.0)); // one inch of water 249.09 Pa
        assertThat(table.rows().get(2).lift().si()).isCloseTo(6e-3, within(1e-12));
        assertThat(table.rows().get(2).flow().si()).isCloseTo(23.1e-3, within(1e-12));
        String written = BuildFile.write(build);
        assertThat(written)
                .contains("flow_tables:\n  - valve: intake\n    direction: into_cylinder\n    depression: 28 inH2O\n");
        assertThat(build(written)).isEqualTo(build);
        assertThat(build(HEAD + "flow_tables: []\n").flows()).isEmpty();
    }

    /** What a table says nothing of is left open, for it is asked for where it counts. */
    @Test
    void aTableMayLackWhatItNeedsToCount() {
        FlowTable table = build(HEAD + "flow_tables: [{valve: exhaust, rows: {2 mm: 0.66, 4 mm: 62 %}}]\n")
                .flows()
                .get(0);
        assertThat(table.direction()).isEmpty();
        assertThat(table.coefficient()).isEmpty();
        assertThat(table.depression()).isEmpty();
        assertThat(table.rows().get(1).flow().si()).isCloseTo(0.62, within(1e-12));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "rows: {2 mm: 9 l/s} | flow_tables[1] | is missing | valve: intake",
                "valve: intake | flow_tables[1] | is missing | 2 mm: 9.6 l/s",
                "valve: inlet, rows: {} | flow_tables[1].valve | inlet | intake",
                "valve: intake, way: in, rows: {} | flow_tables[1].way | is not a key | direction",
                "valve: intake, direction: in, rows: {} | flow_tables[1].direction | into_cylinder | out_of_cylinder",
                "valve: intake, coefficient_of: seat, rows: {} | flow_tables[1].coefficient_of | seat | curtain_area",
                "valve: intake, coefficient_of: head_area, rows: {2 mm: 9 l/s} | flow_tables[1].coefficient_of | no place beside rows that are flows | without a unit",
                "valve: intake, depression: 28 psi, rows: {2 mm: 9 l/s} | flow_tables[1].depression | 28 psi | 1 to 100 inches of water",
                "valve: intake, depression: 28, rows: {2 mm: 9 l/s} | flow_tables[1].depression | 28 | inH2O",
                "valve: intake, air: 1 bar ± 1 mbar, rows: {2 mm: 9 l/s} | flow_tables[1].air | has a ± | leave out",
                "valve: intake, air: 3 kPa, rows: {2 mm: 9 l/s} | flow_tables[1].air | 3 kPa | 110 kPa, absolute",
                "valve: intake, temperature: 100 °C, rows: {2 mm: 9 l/s} | flow_tables[1].temperature | 100 °C | 77 °C",
                "valve: intake, within: 60 %, rows: {2 mm: 9 l/s} | flow_tables[1].within | says nothing | under 50 %",
                "valve: intake, within: 0 %, rows: {2 mm: 9 l/s} | flow_tables[1].within | no doubt at all | above 0",
                "valve: intake, rows: {4 mm: 9 l/s, 2 mm: 5 l/s} | flow_tables[1].rows.2 mm | does not come after 4 mm | sort the lines",
                "valve: intake, rows: {2 mm: 9 l/s, 4 mm: 0.6} | flow_tables[1].rows.4 mm | not of the kind of 9 l/s | all rows alike",
                "valve: intake, rows: {2 mm: 9 kg} | flow_tables[1].rows.2 mm | 9 kg | L/s",
                "valve: intake, rows: {2 mm: -9 l/s} | flow_tables[1].rows.2 mm | is negative | direction",
                "valve: intake, rows: {2 mm: [9 l/s]} | flow_tables[1].rows.2 mm | a single value | brackets",
            })
    void whatMayNotBeIsToldWithItsPlaceAndHowToMendIt(String table, String where, String why, String mend) {
        assertThat(BuildFile.read(HEAD + "flow_tables: [{" + table + "}]\n").faults())
                .anySatisfy(fault -> {
                    assertThat(fault.path()).isEqualTo(where);
                    assertThat(fault.toString()).contains(why, mend);
                });
    }
}
