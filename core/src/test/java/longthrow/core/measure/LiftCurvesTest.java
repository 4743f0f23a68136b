package longthrow.core.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import longthrow.core.answer.Answer;
import longthrow.core.answer.Finding;
import longthrow.core.build.Build;
import longthrow.core.build.LiftTable;
import longthrow.core.motion.LobeCurve;
import longthrow.core.quantity.Dimension;
import longthrow.core.quantity.Parsed;
import longthrow.core.quantity.Quantity;
import longthrow.core.quantity.QuantityParser;
import longthrow.core.term.Term;
import org.junit.jupiter.api.Test;

/** What measure says of lift tables: invented lobes with known figures, written to a hundredth of a millimetre. */
class LiftCurvesTest {
    /** Lobe of 228 degrees at 1.27 mm, 8.2 mm high, centre 106 degrees after top dead centre. */
    private static final LobeCurve LOBE = LobeCurve.of(8.2e-3, 1.27e-3, Math.toRadians(228), Math.toRadians(106));

    private static Quantity quantity(String text, Dimension dimension) {
        return ((Parsed.Understood) QuantityParser.parse(text, dimension))
                .stated()
                .value();
    }

    private static LiftTable table(String valve, int from, int to, int step, double centre) {
        List<LiftTable.Row> rows = new ArrayList<>();
        for (int at = from; at <= to; at += step) {
            double lift = 1e3 * LOBE.at(Math.toRadians(at - centre + 106));
            rows.add(new LiftTable.Row(
                    quantity(at + "°", Dimension.ANGLE),
                    quantity(String.format(Locale.ROOT, "%.2f mm", lift), Dimension.LENGTH)));
        }
        return new LiftTable(valve, "valve", rows);
    }

    private static Answer ask(LiftTable table, String opens, String closes) {
        Build build = Builds.engine("lifts")
                .typed(Term.CHECKING_LIFT, "1.27 mm ± 0.001 mm")
                .typed(Term.INTAKE_OPENS, opens + " ± 1 deg")
                .typed(Term.INTAKE_CLOSES, closes + " ± 1 deg")
                .lifts(table)
                .build();
        return Measure.of(build, List.of());
    }

    private static List<Finding> on(Answer answer) {
        return answer.findings().stream()
                .filter(f -> f.where().startsWith("lift_tables"))
                .toList();
    }

    /** 228 degrees about 106: opens 8 before top dead centre, closes 40 after bottom. */
    @Test
    void aTableThatAgreesWithTheEventsIsToldInOneNote() {
        List<Finding> findings = on(ask(table("intake", -40, 250, 5, 106), "8 deg", "40 deg"));
        assertThat(findings).hasSize(1);
        assertThat(findings.get(0).kind()).isEqualTo(Finding.Kind.NOTE);
        String said = findings.get(0).message();
        assertThat(said).contains("peak 8.20").contains("at the valve");
        assertThat(figure(said, "duration ")).isCloseTo(228, within(0.5));
        assertThat(figure(said, "lobe centre ")).isCloseTo(106, within(0.5));
        assertThat(figure(said, "opens ")).isCloseTo(8, within(0.5));
        assertThat(figure(said, "closes ")).isCloseTo(40, within(0.5));
    }

    private static double figure(String said, String after) {
        int start = said.indexOf(after) + after.length();
        return Double.parseDouble(said.substring(start, said.indexOf(' ', start)));
    }

    @Test
    void aTableThatDisagreesIsNamed() {
        Answer answer = ask(table("intake", -40, 250, 5, 106), "20 deg", "52 deg");
        assertThat(answer.findings()).anyMatch(f -> f.kind() == Finding.Kind.SUSPECT);
        // once, among the suspects: no second report beside it
        assertThat(on(answer).stream().filter(f -> f.kind() == Finding.Kind.NOTE))
                .hasSize(1);
        assertThat(answer.findings()).noneMatch(f -> f.message().contains("disagree: "));
    }

    /** Counted from firing top dead centre the same lobe stands a turn later; an exhaust lobe counts before. */
    @Test
    void bothTopDeadCentresShowTheSameCentre() {
        List<Finding> late = on(ask(table("intake", 320, 610, 5, 466), "8 deg", "40 deg"));
        assertThat(figure(late.get(0).message(), "lobe centre ")).isCloseTo(106, within(0.5));
        List<Finding> exhaust = on(ask(table("exhaust", -250, 40, 5, -106), "8 deg", "40 deg"));
        String said = exhaust.get(0).message();
        assertThat(figure(said, "lobe centre ")).isCloseTo(106, within(0.5));
        assertThat(figure(said, "opens ")).isCloseTo(40, within(0.5));
        assertThat(figure(said, "closes ")).isCloseTo(8, within(0.5));
    }

    @Test
    void aTableFromThePeakTellsNoCentreAndSaysWhatItAssumes() {
        Answer answer = ask(table("intake", 0, 150, 10, 0), "8 deg", "40 deg");
        String said = on(answer).get(0).message();
        assertThat(figure(said, "duration ")).isCloseTo(228, within(0.7));
        assertThat(said).doesNotContain("lobe centre");
        assertThat(answer.defaults())
                .anyMatch(d -> d.where().startsWith("lift_tables") && d.what().contains("mirror"));
    }
}
