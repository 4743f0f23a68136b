package longthrow.core.measure;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import longthrow.core.answer.Finding;
import longthrow.core.term.Term;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Pairs of readings of one invented body, each of which can be believed by itself. */
class OutOfOrderTest {
    private static List<Finding> suspects(String one, String is, String other, String too) {
        return Appraisal.sound(Builds.engine("invented")
                        .typed(Term.at(one).orElseThrow(), is)
                        .typed(Term.at(other).orElseThrow(), too)
                        .build())
                .suspects();
    }

    /** Swapped, or with the other sign, the two cannot both be; as they are, nothing is said. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "connecting_rod.bolt_up|9.0 mm ± 0.5 mm|connecting_rod.bolt_down|16.0 mm ± 0.5 mm|-16.0 mm ± 0.5 mm|sign",
                "connecting_rod.bolt_out|22.0 mm ± 0.5 mm|connecting_rod.big_end_bore|28.0 mm ± 0.1 mm|46 mm ± 0.1 mm|inside the big-end bore",
                "connecting_rod.big_end_reach|20.0 mm ± 0.5 mm|connecting_rod.big_end_bore|28.0 mm ± 0.1 mm|42 mm ± 0.1 mm|its own bore",
                "connecting_rod.big_end_reach|20.0 mm ± 0.5 mm|connecting_rod.cap_below|20.0 mm ± 0.5 mm|23 mm ± 0.5 mm|outermost point",
                "connecting_rod.cap_below|20.0 mm ± 0.5 mm|connecting_rod.big_end_bore|28.0 mm ± 0.1 mm|42 mm ± 0.1 mm|the cap would end",
                "connecting_rod.beam_thickness|14.0 mm ± 0.1 mm|connecting_rod.web_thickness|14.0 mm ± 0.1 mm|15 mm ± 0.1 mm|thicker than the beam",
                "connecting_rod.beam_width|19.0 mm ± 0.1 mm|connecting_rod.flange_thickness|9.5 mm ± 0.1 mm|11 mm ± 0.1 mm|wider than the beam",
                "piston.pin_diameter|16.0 mm ± 0.01 mm|piston.pin_inside_diameter|10.0 mm ± 0.1 mm|18 mm ± 0.1 mm|wider inside than outside",
                "piston.boss_below_pin|12.0 mm ± 0.1 mm|piston.pin_diameter|16.0 mm ± 0.01 mm|26 mm ± 0.01 mm|hole of its pin",
                "flywheel.diameter|150 mm ± 1 mm|flywheel.rim_inside_diameter|118 mm ± 1 mm|160 mm ± 1 mm|wider inside than outside",
                "pushrod.outside_diameter|6.0 mm ± 0.1 mm|pushrod.wall|3.0 mm ± 0.1 mm|3.5 mm ± 0.1 mm|thicker than the pushrod",
                "valve_spring.outside_diameter|21.0 mm ± 0.1 mm|valve_spring.wire_diameter|2.5 mm ± 0.01 mm|7 mm ± 0.01 mm|",
                "connecting_rod.dipper_reach|40.0 mm ± 0.5 mm|connecting_rod.cap_below|20.0 mm ± 0.5 mm|45 mm ± 0.5 mm|bottom of the cap",
                "camshaft.release_reach|21.5 mm ± 0.5 mm|camshaft.core_diameter|14.0 mm ± 0.1 mm|25 mm ± 0.1 mm|",
                "connecting_rod.dipper_reach|0 mm ± 0.1 mm|connecting_rod.cap_below|20.0 mm ± 0.5 mm|21 mm ± 0.5 mm|",
            })
    void twoReadingsOfOneBodyThatCannotBothBeAreSaid(
            String one, String is, String other, String sound, String slip, String says) {
        assertThat(suspects(one, is, other, sound)).isEmpty();
        List<Finding> said = suspects(one, is, other, slip);
        if (says == null) { // still possible: a spring wound close, a weight hardly off the shaft, no dipper
            assertThat(said).isEmpty();
        } else {
            assertThat(said).singleElement().satisfies(f -> {
                assertThat(f.kind()).isEqualTo(Finding.Kind.SUSPECT);
                assertThat(f.where()).contains(one, other);
                assertThat(f.message()).contains(says);
            });
        }
    }

    /** The doubt of both counts: what may be a hair the other way is no slip. */
    @Test
    void withinTheirDoubtNothingIsSaid() {
        assertThat(suspects(
                        "connecting_rod.big_end_reach",
                        "20.0 mm ± 0.5 mm",
                        "connecting_rod.cap_below",
                        "20.5 mm ± 0.5 mm"))
                .isEmpty();
    }

    @Test
    void nothingIsToldFromEither() {
        Appraisal slipped = Appraisal.sound(Builds.engine("invented")
                .typed(Term.BOLT_UP, "9.0 mm ± 0.5 mm")
                .typed(Term.BOLT_DOWN, "-16.0 mm ± 0.5 mm")
                .typed(Term.BOLT_OUT, "22.0 mm ± 0.5 mm")
                .build());
        assertThat(slipped.figure(Term.BOLT_UP)).isEmpty();
        assertThat(slipped.figure(Term.BOLT_DOWN)).isEmpty();
        assertThat(slipped.figure(Term.BOLT_OUT)).isPresent();
    }
}
