package longthrow.buildfile;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.charset.StandardCharsets;
import java.util.List;
import longthrow.core.answer.Answer;
import longthrow.core.answer.Result;
import longthrow.core.build.Build;
import longthrow.core.measure.Measure;
import longthrow.core.term.Term;
import org.junit.jupiter.api.Test;

/** From the file to the figures, for the invented acceptance cases: figures as the case gives them, to its last digit. */
class ScenarioFilesTest {
    private static Build build(String example) {
        ReadBuild read = BuildFile.read(Repository.text(example).getBytes(StandardCharsets.UTF_8));
        assertThat(read.faults()).extracting(Fault::message).isEmpty();
        assertThat(read.build().orElseThrow().invented()).isTrue();
        return read.build().orElseThrow();
    }

    private static Result result(Answer answer, Term term) {
        return answer.value(term).orElseThrow(() -> new AssertionError(term.path() + " is missing"));
    }

    @Test
    void longerThrow() {
        Answer answer = Measure.of(build("examples/scenarios/s1-longer-throw.yaml"), List.of());
        assertThat(result(answer, Term.SQUISH).figure().value()).isCloseTo(1.37e-3, within(0.005e-3));
        assertThat(result(answer, Term.SQUISH).figure().expanded()).isCloseTo(0.07e-3, within(0.005e-3));
        assertThat(result(answer, Term.COMPRESSION_RATIO).figure().value()).isCloseTo(9.66, within(0.005));
        assertThat(result(answer, Term.COMPRESSION_RATIO).figure().expanded()).isCloseTo(0.13, within(0.005));
        assertThat(result(answer, Term.SKIRT_TO_COUNTERWEIGHT).figure().value()).isCloseTo(1.65e-3, within(0.005e-3));
        assertThat(result(answer, Term.PIN_CLEARANCE).figure().value()).isCloseTo(0.010e-3, within(0.0005e-3));
    }

    @Test
    void sideValveKart() {
        Answer answer = Measure.of(build("examples/scenarios/s2-side-valve-kart.yaml"), List.of());
        assertThat(result(answer, Term.COMPRESSION_RATIO).figure().value()).isCloseTo(8.29, within(0.005));
        assertThat(result(answer, Term.CLEARANCE_VOLUME).figure().expanded()).isCloseTo(0.36e-6, within(0.005e-6));
        assertThat(Math.toDegrees(
                        result(answer, Term.INTAKE_LOBE_CENTRE).figure().low()))
                .isCloseTo(103.8, within(0.05));
        assertThat(Math.toDegrees(
                        result(answer, Term.INTAKE_LOBE_CENTRE).figure().high()))
                .isCloseTo(106.9, within(0.05));
        assertThat(Math.toDegrees(result(answer, Term.KEY_SHIFT).figure().value()))
                .isCloseTo(4.1, within(0.05));
    }

    /** The stock spring: 9.5 N/mm, bind after 13.0 mm; rim 67.5 m/s at 6000 rpm. */
    @Test
    void springs() {
        Answer answer = Measure.of(build("examples/scenarios/s3-springs.yaml"), List.of());
        assertThat(result(answer, Term.SPRING_RATE).figure().value()).isCloseTo(9.5e3, within(5.0));
        assertThat(result(answer, Term.COIL_BIND_MARGIN).figure().value()).isCloseTo(4.8e-3, within(0.005e-3));
        assertThat(result(answer, Term.RIM_SPEED).figure().value()).isCloseTo(67.5, within(0.1));
        assertThat(result(answer, Term.SWEPT_VOLUME).figure().value()).isCloseTo(319.5e-6, within(0.05e-6));
    }

    /** What of the case counts for the moving mass: 102.5 g. */
    @Test
    void whatMovesWithTheValveAddsUp() {
        Answer answer = Measure.of(build("examples/scenarios/s3-springs.yaml"), List.of());
        double ratio = value(answer, Term.ROCKER_VALVE_ARM) / value(answer, Term.ROCKER_PUSHROD_ARM);
        double moving = value(answer, Term.INTAKE_MASS)
                + value(answer, Term.RETAINER_MASS)
                + value(answer, Term.SPRING_MASS) / 3
                + value(answer, Term.ROCKER_MASS)
                + (value(answer, Term.PUSHROD_MASS) + value(answer, Term.LIFTER_MASS)) / (ratio * ratio);
        assertThat(moving).isCloseTo(102.5e-3, within(0.05e-3));
    }

    private static double value(Answer answer, Term term) {
        return result(answer, term).figure().value();
    }

    @Test
    void vintageIron() {
        Build build = build("examples/scenarios/s4-vintage-iron.yaml");
        Answer answer = Measure.of(build, List.of());
        assertThat(result(answer, Term.BORE_TAPER).figure().value()).isCloseTo(0.21e-3, within(0.005e-3));
        assertThat(result(answer, Term.OUT_OF_ROUND).figure().value()).isCloseTo(0.09e-3, within(0.005e-3));
        assertThat(build.shims()).hasSize(3);
        assertThat(build.damage()).hasSize(1);
    }
}
