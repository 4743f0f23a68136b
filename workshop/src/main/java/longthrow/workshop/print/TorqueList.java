package longthrow.workshop.print;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import longthrow.core.answer.Answer;
import longthrow.core.answer.JetAdvice;
import longthrow.core.answer.Shaking.Figure;
import longthrow.core.answer.SparkSweep;
import longthrow.core.answer.TorqueCurve;
import longthrow.core.measurement.Measured;
import longthrow.core.quantity.Dimension;
import longthrow.core.quantity.FigurePrinter;
import longthrow.core.quantity.Quantity;
import longthrow.core.quantity.Units;

/** What torque over what speeds: what it comes to, a line or two for each speed, who owns the doubt, what to read next. */
final class TorqueList {
    private static final int INDENT = 2;

    /** Shares before the rest is left to {@code --all}; layout. */
    private static final int SHORT_LIST = 4;

    private static final String JET = "jet_mixture";

    private static final List<String> FIRST = List.of("torque", "power");

    private final Answer answer;
    private final Page page;
    private final FigurePrinter printer;
    private final boolean all;

    TorqueList(Answer answer, Page page, FigurePrinter printer, boolean all) {
        this.answer = answer;
        this.page = page;
        this.printer = printer;
        this.all = all;
    }

    void print() {
        answer.torque().ifPresent(this::print);
    }

    private void print(TorqueCurve curve) {
        page.heading(Ink.STRONG, "POWER", curve.takenFor().isEmpty() ? "" : "reckoned as " + curve.takenFor());
        curve.sentences().forEach(s -> page.paragraph(INDENT, s));
        missing(curve);
        if (!curve.rows().isEmpty()) {
            page.heading(Ink.STRONG, "AT EACH SPEED", "full throttle; ± is 95 %");
            curve.rows().forEach(this::row);
            page.ifAny(INDENT, "+ is the torque that a small step would give:", String.join("; ", curve.steps()));
        }
        if (!curve.sparks().isEmpty()) {
            page.heading(Ink.STRONG, "SPARK", "before top dead centre, full throttle; which key: see POWER");
            curve.sparks().stream()
                    .filter(sweep -> all || isNearMost(curve, sweep))
                    .forEach(this::spark);
        }
        curve.jet().ifPresent(this::jet);
        if (!curve.shares().isEmpty()) {
            page.heading(Ink.STRONG, "WHO OWNS THE DOUBT", "of the most torque");
            page.paragraph(
                    INDENT,
                    curve.shares().stream()
                                    .limit(all ? Integer.MAX_VALUE : SHORT_LIST)
                                    .map(s -> s.what() + " " + percent(s.share()))
                                    .collect(Collectors.joining("; "))
                            + ".");
        }
        if (!curve.next().isEmpty()) {
            page.heading(Ink.STRONG, "READ FOR POWER", "what cuts its doubt most");
            int rank = 0;
            for (TorqueCurve.Reading reading : curve.next()) {
                page.hanging(
                        INDENT,
                        Ink.STRONG,
                        ++rank + ". " + reading.read().what(),
                        Ink.PLAIN,
                        "(" + reading.read().where() + "): the ± of the most torque from " + percent(reading.now())
                                + " to " + percent(reading.after()));
                if (all) {
                    page.ifAny(2 * INDENT + 1, "how:", reading.read().how());
                }
            }
        }
    }

    /** Of all speeds that were looked at the one nearest most torque; the others are left to {@code --all}. */
    private static boolean isNearMost(TorqueCurve curve, SparkSweep sweep) {
        return curve.sparks().stream()
                .min(Comparator.comparingDouble(s -> Math.abs(s.speed() - curve.cycleSpeed())))
                .filter(sweep::equals)
                .isPresent();
    }

    private void spark(SparkSweep sweep) {
        page.paragraph(INDENT, sweep.said());
        if (!all) {
            return;
        }
        for (SparkSweep.Point point : sweep.points()) {
            page.hanging(
                    2 * INDENT + 1,
                    Ink.STRONG,
                    printer.print(Dimension.ANGLE, point.advance(), 0).line() + ":",
                    Ink.PLAIN,
                    rounded(point.torque())
                            + (Double.isNaN(point.octaneWanted())
                                    ? ""
                                    : String.format(Locale.ROOT, "; octane wanted %.0f", point.octaneWanted())));
        }
    }

    /** To a hundredth: the same engine beside itself, whose differences count and whose doubt stands at the speed. */
    private String rounded(double torque) {
        return printer.print(
                        Quantity.of(BigDecimal.valueOf(torque).setScale(2, RoundingMode.HALF_UP), Units.NEWTON_METRE))
                .line();
    }

    private void jet(JetAdvice jet) {
        if (jet.change().isEmpty() && !all) {
            return;
        }
        page.heading(Ink.STRONG, "MAIN JET", "for this place, weather and fuel");
        page.paragraph(INDENT, jet.said());
        jet.missing()
                .forEach(m -> page.hanging(INDENT, Ink.STRONG, m.what() + " (" + m.where() + "):", Ink.PLAIN, m.how()));
        jet.cautions().forEach(caution -> page.hanging(INDENT, Ink.BAD, "Beware:", Ink.PLAIN, caution));
        jet.read().forEach(read -> page.ifAny(INDENT, "look at:", read));
    }

    private void missing(TorqueCurve curve) {
        if (curve.missing().isEmpty()) {
            return;
        }
        page.heading(Ink.DOUBTFUL, "NOT TOLD", "it cannot do without these");
        curve.missing()
                .forEach(m -> page.hanging(
                        INDENT,
                        Ink.STRONG,
                        m.what() + (m.where().isEmpty() ? "" : " (" + m.where() + ")") + ":",
                        Ink.PLAIN,
                        m.how()));
    }

    private void row(TorqueCurve.Row row) {
        String speed = printer.print(Dimension.ROTATIONAL_SPEED, row.speed(), 0).line() + ":";
        if (row.figures().isEmpty()) {
            Ink ink = row.standing() == TorqueCurve.Standing.REFUSED ? Ink.BAD : Ink.DOUBTFUL;
            page.hanging(INDENT, Ink.STRONG, speed, ink, row.standing().label() + ", so none is told: " + row.why());
            return;
        }
        page.hanging(
                INDENT,
                Ink.STRONG,
                speed,
                Ink.PLAIN,
                FIRST.stream()
                                .flatMap(key -> row.figure(key).stream())
                                .map(this::words)
                                .collect(Collectors.joining("; "))
                        + (row.standing() == TorqueCurve.Standing.APPROVED
                                ? ""
                                : " (" + row.standing().label() + ")"));
        page.ifAny(
                2 * INDENT + 1,
                "held down by:",
                row.bounds().stream().map(TorqueCurve.Bound::brief).collect(Collectors.joining(", ")));
        row.figure(JET).ifPresent(f -> page.ifAny(2 * INDENT + 1, "main jet:", f.label() + " " + words(f)));
        if (all) {
            page.ifAny(2 * INDENT + 1, "stands so:", row.why());
            page.ifAny(
                    2 * INDENT + 1,
                    "also:",
                    row.figures().stream()
                            .filter(f -> !FIRST.contains(f.key()) && !f.key().equals(JET))
                            .map(f -> f.label() + " " + words(f))
                            .collect(Collectors.joining("; ")));
            row.reckoning().ifPresent(r -> page.ifAny(2 * INDENT + 1, "reckoned:", reckoned(r)));
        }
    }

    private String reckoned(TorqueCurve.Reckoning reckoning) {
        return String.format(
                Locale.ROOT,
                "%d cycles until they repeat within %.1g, %d cells of at most %s, %d steps; mass balances within %.1g,"
                        + " energy within %.1g",
                reckoning.cycles(),
                reckoning.change(),
                reckoning.cells(),
                printer.print(Dimension.LENGTH, reckoning.cell(), 0).line(),
                reckoning.steps(),
                Math.abs(reckoning.mass()),
                Math.abs(reckoning.energy()));
    }

    private String words(Figure figure) {
        Measured found = figure.figure();
        return found.isUnknown()
                ? printer.printDoubtUnknown(figure.dimension(), found.value()).line()
                : printer.print(figure.dimension(), found.value(), found.expanded())
                        .line();
    }

    private static String percent(double share) {
        return String.format(Locale.ROOT, "%.0f %%", 100 * share);
    }
}
