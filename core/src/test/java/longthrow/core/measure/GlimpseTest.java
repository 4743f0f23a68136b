package longthrow.core.measure;

import static org.assertj.core.api.Assertions.assertThat;

import longthrow.core.build.Build;
import longthrow.core.term.Term;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Figures shown while typing are those that stand on the page afterwards. */
class GlimpseTest {
    /** The second compression height was read from the top of the pin, half a pin of 17 mm too short. */
    @ParameterizedTest
    @ValueSource(strings = {"24.90 mm", "16.40 mm"})
    void figuresAndSuspectsAreThoseOfTheSoundAppraisal(String compressionHeight) {
        Build build = Builds.engine("invented")
                .typed(Term.BORE, "66.00 mm ± 0.01 mm")
                .readings(Term.DECK_HEIGHT, "height_gauge", "139.62 mm", "139.63 mm")
                .readings(Term.DECK_CLEARANCE, "depth_gauge", "0.08 mm", "0.07 mm")
                .typed(Term.STROKE, "56.50 mm ± 0.02 mm")
                .typed(Term.ROD_LENGTH, "86.40 mm ± 0.03 mm")
                .readings(Term.COMPRESSION_HEIGHT, "caliper", compressionHeight)
                .readings(Term.PIN_DIAMETER, "micrometer", "17.000 mm")
                .typed(Term.GASKET_THICKNESS, "1.30 mm ± 0.03 mm")
                .build();
        Appraisal sound = Appraisal.sound(build);
        Glimpse glimpse = Glimpse.of(build);
        assertThat(glimpse.suspects().isEmpty()).isEqualTo(compressionHeight.startsWith("24"));
        assertThat(glimpse.suspects()).isEqualTo(sound.suspects());
        assertThat(glimpse.values()).isNotEmpty().hasSameSizeAs(sound.values());
        for (int i = 0; i < glimpse.values().size(); i++) {
            assertThat(glimpse.values().get(i).term())
                    .isEqualTo(sound.values().get(i).term());
            assertThat(glimpse.values().get(i).figure().value())
                    .isEqualTo(sound.values().get(i).figure().value());
            assertThat(glimpse.values().get(i).figure().expanded())
                    .isEqualTo(sound.values().get(i).figure().expanded());
        }
    }
}
