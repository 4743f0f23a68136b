package longthrow.buildfile;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.Objects;
import longthrow.core.build.Donor;
import longthrow.core.term.Term;
import org.junit.jupiter.api.Test;

class DonorFileTest {
    private static final String FIGURES =
            "cylinder.bore: 65 mm, crankshaft.stroke: 49 mm, piston: {pin_diameter: 18 mm, mass: 180 g}";

    private static String file(String figures) {
        return "longthrow_donors: 1\ndonors:\n  - {name: a, figures: {" + figures + "}}\n";
    }

    private static String message(String text) {
        return DonorFile.read(text).faults().get(0).message();
    }

    @Test
    void aBuildFileIsNamedAsSuch() {
        assertThat(DonorFile.read("longthrow: 1\nengine: {name: a}\n").faults())
                .extracting(Fault::message)
                .containsExactly(
                        "line 1, column 1, longthrow: this is a build file; give it as the build file itself, without --donors");
    }

    @Test
    void anEmptyFileIsToldTheFirstLineOfACatalogue() {
        assertThat(message("")).contains("start it with the line 'longthrow_donors: 1'");
        assertThat(message("- a\n")).contains("start the file with the line 'longthrow_donors: 1'");
    }

    @Test
    void theExampleIsRead() {
        ReadDonors read = DonorFile.read(Repository.text("examples/donors.yaml").getBytes(StandardCharsets.UTF_8));
        assertThat(read.faults()).isEmpty();
        assertThat(read.invented()).isTrue();
        Donor first = read.donors().orElseThrow().get(0);
        assertThat(first.figures()).hasSize(4);
        Donor.Figure pin = Objects.requireNonNull(first.figures().get(Term.PIN_DIAMETER));
        assertThat(pin.nominal()).hasToString("18.00 mm");
        assertThat(pin.spread()).hasToString("0.01 mm");
    }

    @Test
    void aSpreadMayBeMissingAndFiguresMayBeNested() {
        Donor donor = DonorFile.read(file(FIGURES)).donors().orElseThrow().get(0);
        assertThat(Objects.requireNonNull(donor.figures().get(Term.BORE)).spread())
                .isNull();
        assertThat(donor.figures()).containsOnlyKeys(Term.BORE, Term.STROKE, Term.PIN_DIAMETER, Term.PISTON_MASS);
    }

    @Test
    void faultsAreNamedWithTheirPlace() {
        assertThat(message(file("cylinder.bore: 65 mm"))).contains("line 3", "has 1 figures", "4 to 6");
        assertThat(message(file(FIGURES.replace("65 mm", "65"))))
                .contains("has no unit", "donors[1].figures.cylinder.bore");
        assertThat(message(file(FIGURES.replace("cylinder.bore", "cylinder.boer"))))
                .contains("did you mean cylinder.bore");
        assertThat(message(file(FIGURES.replace("cylinder.bore: 65 mm", "engine.compression_ratio: 9"))))
                .contains("worked out");
        assertThat(message("invented: yes\n")).contains("'longthrow_donors: 1' the first line");
        assertThat(message("longthrow_donors: 2\n")).contains("newer format");
        assertThat(message("longthrow_donors: 1\n")).contains("'donors' is missing");
        assertThat(message("longthrow_donors: 1\ndonors: a\n")).contains("a list is wanted");
        assertThat(message(file(FIGURES) + "  - {name: a, figures: {" + FIGURES + "}}\n"))
                .contains("names two versions");
    }
}
