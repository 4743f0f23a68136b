package longthrow.core.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import longthrow.core.answer.Answer;
import longthrow.core.build.Build;
import longthrow.core.measurement.Measured;
import longthrow.core.term.Term;
import org.junit.jupiter.api.Test;

/** Effective ratio and offsets through the whole of measure. */
class EffectiveRatioTest {
    private static Builds engine() {
        return Builds.engine("DCU-14")
                .typed(Term.BORE, "68 mm ± 0.001 mm")
                .typed(Term.STROKE, "54 mm ± 0.001 mm")
                .typed(Term.ROD_LENGTH, "84 mm ± 0.001 mm")
                .typed(Term.VOLUME_IN_ASSEMBLY, "26 cc ± 0.01 cc")
                .typed(Term.INTAKE_CLOSES, "45 deg ± 1 deg");
    }

    private static Measured figure(Build build, Term term) {
        return Measure.of(build, List.of()).value(term).orElseThrow().figure();
    }

    /** Reference row DCU-14.2: 7.74519030419527. Its doubt is nearly all the closing's. By hand: area 36.317 cm2, sine and cosine of
     * 225 degrees -0.7071, crank pin 1.909 cm beside, rod rise 8.180 cm, so 36.317 x 2.7 x (-0.7071 + 0.1650) = -53.15 cc/rad, 0.0357 of the ratio a degree;
     * with 0.0026 from the clearance volume 0.0358.
     */
    @Test
    void isThatOfTheReferenceRow() {
        Measured ratio = figure(engine().build(), Term.EFFECTIVE_RATIO);
        assertThat(ratio.value()).isCloseTo(7.745_190_304_195_27, within(1e-9));
        assertThat(ratio.expanded()).isCloseTo(0.0358, within(0.0001));
        assertThat(Measure.of(engine().build(), List.of()).defaults())
                .anyMatch(d -> d.where().equals(Term.PIN_OFFSET.path()));
    }

    @Test
    void isNotKnownWithoutARod() {
        Build build = Builds.engine("no rod")
                .typed(Term.BORE, "68 mm ± 0.001 mm")
                .typed(Term.STROKE, "54 mm ± 0.001 mm")
                .typed(Term.VOLUME_IN_ASSEMBLY, "26 cc ± 0.01 cc")
                .typed(Term.INTAKE_CLOSES, "45 deg ± 1 deg")
                .build();
        Answer answer = Measure.of(build, List.of());
        assertThat(answer.value(Term.EFFECTIVE_RATIO)).isEmpty();
    }

    /** A millimetre of offset: true stroke kept, less than a hundredth of the ratio. */
    @Test
    void aMillimetreOfOffsetMovesItByLessThanAHundredth() {
        double plain = figure(engine().build(), Term.EFFECTIVE_RATIO).value();
        double offset = figure(engine().typed(Term.PIN_OFFSET, "1 mm ± 0.01 mm").build(), Term.EFFECTIVE_RATIO)
                .value();
        assertThat(offset).isNotCloseTo(plain, within(1e-4)).isCloseTo(plain, within(0.01 * plain));
    }

    /** Ten millimetres of bore offset: pin height sqrt((84 + r)2 - 100) with the r of a true stroke of 54. */
    @Test
    void boreOffsetLowersThePistonAndShortensTheThrow() {
        Build build = engine().typed(Term.BORE_OFFSET, "10 mm ± 0.01 mm")
                .typed(Term.DECK_HEIGHT, "140 mm ± 0.01 mm")
                .typed(Term.COMPRESSION_HEIGHT, "29 mm ± 0.01 mm")
                .typed(Term.GASKET_THICKNESS, "1 mm ± 0.01 mm")
                .aim(Term.SQUISH, "1.5 mm")
                .build();
        double r = 27 * Math.sqrt((4 * 84.0 * 84 - 400 - 54 * 54) / (4 * 84.0 * 84 - 54 * 54));
        double height = Math.sqrt((84 + r) * (84 + r) - 100);
        assertThat(figure(build, Term.THROW).value()).isCloseTo(1e-3 * r, within(1e-9));
        assertThat(figure(build, Term.DECK_CLEARANCE).value()).isCloseTo(1e-3 * (140 - 29 - height), within(1e-9));
        double l = 1e3 * figure(build, Term.ROD_LENGTH_WANTED).value();
        // with that rod the pin stands at 140 - 29 - 0.5 and the true stroke is 54
        double throwWanted = Math.sqrt(110.5 * 110.5 + 100) - l;
        assertThat(Math.sqrt((l + throwWanted) * (l + throwWanted) - 100)
                        - Math.sqrt((l - throwWanted) * (l - throwWanted) - 100))
                .isCloseTo(54, within(1e-6));
    }

    /** A rod that cannot turn is a stop elsewhere; here it must not bring the answer down. */
    @Test
    void partsThatCannotTurnGiveNoRatio() {
        Build build = Builds.engine("cannot turn")
                .typed(Term.BORE, "68 mm ± 0.001 mm")
                .typed(Term.STROKE, "120 mm ± 0.001 mm")
                .typed(Term.ROD_LENGTH, "41 mm ± 0.001 mm")
                .typed(Term.VOLUME_IN_ASSEMBLY, "26 cc ± 0.01 cc")
                .typed(Term.INTAKE_CLOSES, "45 deg ± 1 deg")
                .typed(Term.PIN_OFFSET, "1 mm ± 0.01 mm")
                .build();
        assertThat(Measure.of(build, List.of()).value(Term.EFFECTIVE_RATIO)).isEmpty();
    }
}
