package longthrow.core.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import longthrow.core.ReferenceRows;
import longthrow.core.answer.Answer;
import longthrow.core.answer.Finding;
import longthrow.core.answer.ValveMovement;
import longthrow.core.build.Donor;
import longthrow.core.build.LiftTable;
import longthrow.core.measurement.Measured;
import longthrow.core.motion.LobeCurve;
import longthrow.core.motion.RiseFunction;
import longthrow.core.quantity.Dimension;
import longthrow.core.quantity.Quantity;
import longthrow.core.term.Part;
import longthrow.core.term.Term;
import org.junit.jupiter.api.Test;

/** How the valves move at any lift, by table and by lobe figures, with rows of the reference tables. */
class ValveMovementsTest {
    private static final ReferenceRows ROWS = ReferenceRows.of("13_cam_spring");
    private static final double HALF = 140; // degrees from nothing to the peak
    private static final double FULL = 8.0; // mm
    /** The vanishing pull on figures sought moves an angle by some 1e-8 of its doubt [rad]. */
    private static final double PULL = 1e-6;

    private static Quantity lift(String text) {
        return LiftTableReadingsTest.quantity(text, Dimension.LENGTH);
    }

    /** A 3-4-5 rise and its mirror about a centre. */
    private static LiftTable table(String valve, double from, double to, double step, double centre) {
        List<LiftTable.Row> rows = new ArrayList<>();
        for (double angle = from; angle <= to; angle += step) {
            double u = Math.max(0, 1 - Math.abs(angle - centre) / HALF);
            rows.add(new LiftTable.Row(
                    LiftTableReadingsTest.quantity(String.format(Locale.ROOT, "%.2f°", angle), Dimension.ANGLE),
                    lift(String.format(Locale.ROOT, "%.2f mm", FULL * RiseFunction.POLYNOMIAL_345.at(u, 0)))));
        }
        return new LiftTable(valve, "valve", rows);
    }

    private static ValveMovement movement(Builds build, Part valve, String... lifts) {
        List<Quantity> asked =
                java.util.Arrays.stream(lifts).map(ValveMovementsTest::lift).toList();
        return Measure.of(build.build(), List.of(), asked).movements().stream()
                .filter(m -> m.valve() == valve)
                .findFirst()
                .orElseThrow();
    }

    private static Measured figure(List<ValveMovement.Figure> figures, String key) {
        return figures.stream()
                .filter(f -> f.key().equals(key))
                .findFirst()
                .orElseThrow(() -> new AssertionError(key + " is not among " + figures))
                .figure();
    }

    private static void holds(Measured figure, double truth) {
        assertThat(figure.interval().contains(truth))
                .as("%s to %s holds %s", figure.low(), figure.high(), truth)
                .isTrue();
    }

    /** Rows CAM-03: lift 0.103515625 at a quarter, 0.5 at half and 0.896484375 at three quarters; largest velocity 1.875, largest acceleration 5.7735. */
    @Test
    void theTableTellsAnyLift() {
        ValveMovement m = movement(
                Builds.engine("table")
                        .typed(Term.WANTED_SPEED, "5000 rpm ± 0.001 rpm")
                        .lifts(table("intake", -60, 320, 5, 125)),
                Part.INTAKE_VALVE,
                FULL * ROWS.row("CAM-03.7").value() + " mm",
                FULL * ROWS.row("CAM-03.13").value() + " mm",
                FULL * ROWS.row("CAM-03.16").value() + " mm");
        assertThat(m.from()).isEqualTo("lift_tables[1]");
        assertThat(m.assumed()).isEmpty();
        double[] quarters = {0.25, 0.5, 0.75};
        for (int k = 0; k < quarters.length; k++) {
            double half = (1 - quarters[k]) * HALF;
            List<ValveMovement.Figure> at = m.lifts().get(k).figures();
            holds(figure(at, "duration"), Math.toRadians(2 * half));
            holds(figure(at, "lobe_centre"), Math.toRadians(125));
            holds(figure(at, "opens"), Math.toRadians(half - 125));
            holds(figure(at, "closes"), Math.toRadians(half + 125 - 180));
        }
        double velocity = ROWS.row("CAM-03.1").value() * FULL * 1e-3 / Math.toRadians(HALF);
        holds(figure(m.figures(), "peak_velocity"), velocity);
        double omega = 5000 * Math.PI / 30;
        holds(figure(m.figures(), "peak_velocity_at_wanted_speed"), velocity * omega);
        double sharpest = -ROWS.row("CAM-03.2").value() * FULL * 1e-3 / Math.pow(Math.toRadians(HALF), 2);
        holds(figure(m.figures(), "greatest_deceleration"), sharpest);
        holds(figure(m.figures(), "greatest_deceleration_at_wanted_speed"), sharpest * omega * omega);
        // overlap top dead centre is 125 degrees before the peak
        double u = 1 - 125 / HALF;
        holds(figure(m.figures(), "lift_at_overlap_top"), 1e-3 * FULL * RiseFunction.POLYNOMIAL_345.at(u, 0));
    }

    @Test
    void anExhaustLobeIsCountedBeforeTopDeadCentre() {
        ValveMovement m = movement(
                Builds.engine("exhaust").lifts(table("exhaust", 420, 790, 5, 610)), Part.EXHAUST_VALVE, "4 mm");
        List<ValveMovement.Figure> at = m.lifts().get(0).figures();
        // 610 is 110 degrees before the second turn; half lift is passed 70 degrees from the peak
        holds(figure(at, "lobe_centre"), Math.toRadians(110));
        holds(figure(at, "opens"), Math.toRadians(0));
        holds(figure(at, "closes"), Math.toRadians(-40));
        double u = 1 - 110 / HALF;
        holds(figure(m.figures(), "lift_at_overlap_top"), 1e-3 * FULL * RiseFunction.POLYNOMIAL_345.at(u, 0));
    }

    @Test
    void aTableFromThePeakTakesItsCentreFromTheEvents() {
        Builds build = Builds.engine("mirror").lifts(table("intake", 0, 150, 5, 0));
        ValveMovement alone = movement(build, Part.INTAKE_VALVE, "4 mm");
        assertThat(alone.lifts().get(0).figures()).hasSize(1);
        assertThat(alone.lifts().get(0).why()).contains("read opening and closing too");
        assertThat(alone.why()).contains("overlap top dead centre is not known");
        ValveMovement read = movement(
                build.typed(Term.INTAKE_OPENS, "10 deg ± 0.5 deg").typed(Term.INTAKE_CLOSES, "40 deg ± 0.5 deg"),
                Part.INTAKE_VALVE,
                "4 mm");
        assertThat(figure(read.lifts().get(0).figures(), "opens").value())
                .isCloseTo(Math.toRadians(70 - 105), within(Math.toRadians(0.5)));
        assertThat(read.why()).isEmpty();
    }

    private static Builds card() {
        return Builds.engine("card")
                .specified(Term.CHECKING_LIFT, "1.27 mm", "0.01 mm")
                .specified(Term.INTAKE_OPENS, "8 deg", "1 deg")
                .specified(Term.INTAKE_CLOSES, "40 deg", "1 deg")
                .typed(Term.INTAKE_LIFT, "8.2 mm ± 0.05 mm");
    }

    /** At the checking lift the card comes back; elsewhere the flank is the assumed one, and that is said. */
    @Test
    void lobeFiguresTellAnyLiftWithTheFlanksAssumed() {
        ValveMovement m = movement(card(), Part.INTAKE_VALVE, "1.27 mm", "4 mm", "9 mm");
        assertThat(m.from()).isEqualTo(ValveMovement.LOBE_FIGURES);
        assertThat(m.assumed()).isEqualTo(LobeCurve.ASSUMED);
        List<ValveMovement.Figure> same = m.lifts().get(0).figures();
        assertThat(figure(same, "duration").value()).isCloseTo(Math.toRadians(228), within(PULL));
        assertThat(figure(same, "opens").value()).isCloseTo(Math.toRadians(8), within(PULL));
        assertThat(figure(same, "closes").value()).isCloseTo(Math.toRadians(40), within(PULL));
        // at the checking lift the full lift does not matter, at 4 mm it does; by hand: half duration 114 sqrt(1 -
        // cbrt(4 / 8.2)) / sqrt(1 - cbrt(1.27 / 8.2))
        double half = 114 * Math.sqrt((1 - Math.cbrt(4 / 8.2)) / (1 - Math.cbrt(1.27 / 8.2)));
        Measured four = figure(m.lifts().get(1).figures(), "duration");
        assertThat(four.value()).isCloseTo(Math.toRadians(2 * half), within(PULL));
        assertThat(four.contributions().keySet()).anyMatch(s -> s.id().startsWith("intake_valve.lift"));
        assertThat(m.lifts().get(2).figures()).isEmpty();
        assertThat(m.lifts().get(2).why()).contains("full lift is 8.200");
        // Norton's 3-4-5-6: steepest at u2 = 1/5, 6 P / h / sqrt 5 (4/5)^2; sharpest 6 P / h2
        double h = Math.toRadians(114) / Math.sqrt(1 - Math.cbrt(1.27 / 8.2));
        assertThat(figure(m.figures(), "peak_velocity").value())
                .isCloseTo(6 * 8.2e-3 / h / Math.sqrt(5) * 0.64, within(PULL));
        assertThat(figure(m.figures(), "greatest_deceleration").value()).isCloseTo(-6 * 8.2e-3 / (h * h), within(PULL));
        assertThat(figure(m.figures(), "lift_at_overlap_top").value())
                .isCloseTo(8.2e-3 * Math.pow(1 - Math.pow(Math.toRadians(106) / h, 2), 3), within(PULL));
    }

    /** Derivatives of the doubt by another way: each input moved by hand; a step to one side only is out by the second order, less than a thousandth here. */
    @Test
    void theDoubtOfLobeFiguresIsThatOfTheirInputs() {
        Measured at = figure(
                movement(card(), Part.INTAKE_VALVE, "4 mm").lifts().get(0).figures(), "duration");
        double sum = 0;
        double[][] moved = {
            {8.2 + 0.05 / 1.96, 1.27, 228},
            {8.2, 1.27 + 0.01 / Math.sqrt(3), 228},
            {8.2, 1.27, 228 + Math.sqrt(2 / 3.0)}
        };
        for (double[] x : moved) {
            LobeCurve lobe = LobeCurve.of(1e-3 * x[0], 1e-3 * x[1], Math.toRadians(x[2]), 0);
            sum += Math.pow(2 * lobe.halfDuration(4e-3) - at.value(), 2);
        }
        assertThat(at.standardUncertainty()).isCloseTo(Math.sqrt(sum), within(1e-3 * Math.sqrt(sum)));
    }

    @Test
    void eventsOfOneCardAtTheCheckingLiftOfAnotherAreNotComparable() {
        Builds two = Builds.engine("two cards")
                .specified(Term.CHECKING_LIFT, "1.27 mm", "0.01 mm", "card of the maker")
                .specified(Term.INTAKE_OPENS, "8 deg", "1 deg", "card of the grinder")
                .specified(Term.INTAKE_CLOSES, "40 deg", "1 deg", "card of the grinder")
                .typed(Term.INTAKE_LIFT, "8.2 mm ± 0.05 mm");
        ValveMovement m = movement(two, Part.INTAKE_VALVE, "1 mm");
        assertThat(m.figures()).isEmpty();
        assertThat(m.why()).contains("card of the grinder", "card of the maker", "not comparable");
        // two checking lifts that differ are in dispute, and so no lobe is made
        Builds disputed = card().specified(Term.CHECKING_LIFT, "1.00 mm", "0.01 mm");
        assertThat(movement(disputed, Part.INTAKE_VALVE, "1 mm").why()).contains("in dispute", "checking lift");
    }

    private static Donor version(String name, String opens, String checking) {
        return new Donor(
                name,
                "",
                Map.of(
                        Term.INTAKE_OPENS,
                        new Donor.Figure(
                                Builds.quantity(Term.INTAKE_OPENS, opens), Builds.quantity(Term.INTAKE_OPENS, "1 deg")),
                        Term.CHECKING_LIFT,
                        new Donor.Figure(
                                Builds.quantity(Term.CHECKING_LIFT, checking),
                                Builds.quantity(Term.CHECKING_LIFT, "0.001 mm"))));
    }

    @Test
    void versionsWhoseCardsCheckApartAreNotToldByTheirEvents() {
        Builds engine = Builds.engine("which")
                .typed(Term.CHECKING_LIFT, "1.27 mm ± 0.001 mm")
                .typed(Term.INTAKE_OPENS, "8 deg ± 0.5 deg");
        List<Finding> apart = Measure.of(
                        engine.build(), List.of(version("a", "8 deg", "1.27 mm"), version("b", "20 deg", "1.00 mm")))
                .findings();
        assertThat(apart)
                .anyMatch(f -> f.message().contains("one checking lift: ")
                        && f.message().contains("intake opens"));
        assertThat(apart).noneMatch(f -> f.message().contains("it is the version"));
        List<Finding> same = Measure.of(
                        engine.build(), List.of(version("a", "8 deg", "1.27 mm"), version("b", "20 deg", "0.050 in")))
                .findings();
        assertThat(same).anyMatch(f -> f.message().contains("it is the version a"));
    }

    @Test
    void whatIsNotKnownIsSaidOnlyWhenAsked() {
        Builds build = Builds.engine("nothing").typed(Term.INTAKE_OPENS, "8 deg ± 1 deg");
        Answer unasked = Measure.of(build.build(), List.of());
        assertThat(unasked.movements()).isEmpty();
        assertThat(movement(build, Part.EXHAUST_VALVE, "1 mm").why())
                .contains("exhaust valve lift", "checking lift", "exhaust opens");
        assertThatThrownBy(() -> Measure.of(build.build(), List.of(), List.of(lift("-1 mm"))))
                .hasMessageContaining("above 0");
    }
}
