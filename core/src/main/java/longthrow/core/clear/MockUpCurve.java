package longthrow.core.clear;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Function;
import longthrow.core.build.MockedUp;
import longthrow.core.clearance.Closest;
import longthrow.core.clearance.GapFit;
import longthrow.core.clearance.GapFit.Freely;
import longthrow.core.clearance.Pair;
import longthrow.core.clearance.Sweep;
import longthrow.core.life.Asked;
import longthrow.core.life.Known;
import longthrow.core.measurement.Source;
import longthrow.core.term.InstrumentKind;

/**
 * Gaps read at several angles: where they are least, how sure that is, and whether they go together. Where the pair is drawn, its curve is moved to fit them
 * ({@link GapFit}), which tells of the angles between; else the smallest read counts, or the parabola through it and its neighbours where that is smaller.
 * @param least    gap [m]
 * @param doubt    standard uncertainty of it, the tool's own error left out [m]
 * @param angle    of the crank there [rad]
 * @param said     how it was found
 * @param reserves why it may be smaller elsewhere; empty where not
 * @param misfit   the rows do not go together; empty where they do
 */
record MockUpCurve(
        double least, double doubt, double angle, String said, List<String> reserves, Optional<String> misfit) {
    private static final double TURNS = 4 * Math.PI;
    /** Rows from which the angle is fitted too: two are left then to see whether they agree. */
    private static final int ROWS_FOR_A_PHASE = 4;
    /** So little chance of so much disagreement is said. */
    private static final double UNLIKELY = 0.05;
    /** Step of the slope of a drawn curve [rad]. */
    private static final double STEP = Math.toRadians(0.5);

    MockUpCurve {
        reserves = List.copyOf(reserves);
    }

    /**
     * Looks at the rows.
     * @param rowDoubt standard uncertainty of one gap, by hand and scale [m]
     */
    static MockUpCurve of(Plan plan, Known known, MockedUp.Curve curve, double rowDoubt) {
        List<MockedUp.Row> rows = curve.rows();
        if (plan instanceof Plan.Outlines outlines) {
            try {
                Asked of = new Asked(known);
                Function<Sizes, Pair> drawing = outlines.drawing().of(of, false);
                if (of.isWhole()) {
                    return fitted(drawing.apply(new Sourced(of.figures(), drawing).best()), outlines, rows, rowDoubt);
                }
            } catch (IllegalArgumentException cannotBeFitted) {
                return bare(
                        rows,
                        rowDoubt,
                        ", and the drawn curve cannot be laid through them: " + cannotBeFitted.getMessage());
            }
        }
        return bare(rows, rowDoubt, "");
    }

    private static double rad(MockedUp.Row row) {
        return row.angle().si();
    }

    // ---- by the drawn curve

    private static MockUpCurve fitted(Pair pair, Plan.Outlines plan, List<MockedUp.Row> rows, double rowDoubt) {
        List<GapFit.Reading> readings = rows.stream()
                .map(row -> new GapFit.Reading(
                        rad(row), row.gap().si(), Math.hypot(rowDoubt, slope(pair, rad(row)) * wheel())))
                .toList();
        GapFit fit = fit(pair, readings, plan.hasCam() && rows.size() >= ROWS_FOR_A_PHASE);
        Closest nearest = Sweep.least(pair).orElseThrow();
        if (nearest.gap() <= 0) {
            throw new IllegalArgumentException("as drawn they overlap, and a depth is no gap");
        }
        boolean isMisfit = fit.freedom() > 0 && fit.chance() < UNLIKELY;
        double wider = fit.freedom() > 0 ? Math.max(1, Math.sqrt(fit.chiSquared() / fit.freedom())) : 1;
        MockedUp.Row smallest = rows.get(smallest(rows));
        double least = nearest.gap() + fit.shift();
        double at = ((nearest.angle() + fit.phase()) % TURNS + TURNS) % TURNS;
        boolean isRead =
                smallest.gap().si() < least && (isMisfit || smallest.gap().si() == 0);
        double angle = isRead ? rad(smallest) : at;
        List<String> reserves = new ArrayList<>();
        if (!isRead && (angle < rad(rows.get(0)) || angle > rad(rows.get(rows.size() - 1)))) {
            reserves.add(String.format(
                    Locale.ROOT, "the rows do not reach %.0f°, where it is least as drawn", Math.toDegrees(angle)));
        }
        return new MockUpCurve(
                isRead ? smallest.gap().si() : least,
                Math.max(isRead ? rowDoubt : 0, fit.shiftDoubt() * wider),
                angle,
                String.format(
                        Locale.ROOT,
                        "least at %.0f°: the drawn curve moved by %+.2f mm%s fits its %d rows%s",
                        Math.toDegrees(angle),
                        1e3 * fit.shift() + 0.0,
                        fit.phaseDoubt() > 0
                                ? String.format(Locale.ROOT, " and %+.1f°", Math.toDegrees(fit.phase()) + 0.0)
                                : "",
                        rows.size(),
                        isMisfit ? " badly" : ""),
                reserves,
                isMisfit ? Optional.of(misfit(fit, rows, readings)) : Optional.empty());
    }

    private static GapFit fit(Pair pair, List<GapFit.Reading> readings, boolean withPhase) {
        if (withPhase) {
            try {
                return GapFit.of(pair, readings, Freely.SHIFT_AND_PHASE);
            } catch (IllegalArgumentException noPhase) {
                // read on one flank, or nowhere near the curve: the shift alone says so
            }
        }
        return GapFit.of(pair, readings, Freely.SHIFT);
    }

    private static String misfit(GapFit fit, List<MockedUp.Row> rows, List<GapFit.Reading> readings) {
        int worst = 0;
        for (int k = 1; k < rows.size(); k++) {
            if (Math.abs(fit.residuals().get(k)) > Math.abs(fit.residuals().get(worst))) {
                worst = k;
            }
        }
        double off = fit.residuals().get(worst) * readings.get(worst).standardUncertainty();
        return String.format(
                Locale.ROOT,
                "the rows do not go with the shape of the drawn curve: so much disagreement has a chance of %s; %s at %s lies"
                        + " farthest off, by %+.2f mm",
                fit.chance() < 0.01 ? "under 1 %" : String.format(Locale.ROOT, "%.0f %%", 100 * fit.chance()),
                rows.get(worst).gap().written(),
                rows.get(worst).angle().written(),
                1e3 * off);
    }

    /** How the gap changes with the angle as drawn [m/rad], without sign. */
    private static double slope(Pair pair, double angle) {
        double later = Sweep.at(pair, angle + STEP).orElseThrow().gap();
        double earlier = Sweep.at(pair, angle - STEP).orElseThrow().gap();
        return Math.abs(later - earlier) / (2 * STEP);
    }

    /** Standard uncertainty of an angle off a degree wheel [rad]. */
    private static double wheel() {
        InstrumentKind wheel = InstrumentKind.DEGREE_WHEEL;
        return Math.hypot(wheel.resolution() / Math.sqrt(12), wheel.statedError() / Source.NORMAL_95);
    }

    // ---- by themselves

    private static int smallest(List<MockedUp.Row> rows) {
        int smallest = 0;
        for (int k = 1; k < rows.size(); k++) {
            if (rows.get(k).gap().si() < rows.get(smallest).gap().si()) {
                smallest = k;
            }
        }
        return smallest;
    }

    /** A wrong angle moves the curve and not its least, so it is no doubt of this one. */
    private static MockUpCurve bare(List<MockedUp.Row> rows, double rowDoubt, String why) {
        int k = smallest(rows);
        double read = rows.get(k).gap().si();
        double angle = rad(rows.get(k));
        if (k == 0 || k == rows.size() - 1) {
            return new MockUpCurve(
                    read,
                    rowDoubt,
                    angle,
                    said(angle, rows) + why,
                    List.of("the smallest stands at the end of the rows, so it may be smaller beyond"),
                    Optional.empty());
        }
        double before = rad(rows.get(k - 1)) - angle;
        double after = rad(rows.get(k + 1)) - angle;
        double rise = rows.get(k - 1).gap().si() - read;
        double fall = rows.get(k + 1).gap().si() - read;
        double bend = (rise / before - fall / after) / (before - after);
        double slope = rise / before - bend * before;
        double lower = bend > 0 ? Math.min(0, -slope * slope / (4 * bend)) : 0;
        double at = Math.min(TURNS, Math.max(0, bend > 0 ? angle - slope / (2 * bend) : angle));
        return new MockUpCurve(
                Math.max(0, read + lower),
                rowDoubt,
                at,
                said(at, rows) + ", between them by the parabola through it and its neighbours" + why,
                List.of(),
                Optional.empty());
    }

    private static String said(double angle, List<MockedUp.Row> rows) {
        return String.format(
                Locale.ROOT, "least at %.0f°: the smallest of %d rows", Math.toDegrees(angle), rows.size());
    }
}
