package longthrow.core.measure;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import longthrow.core.answer.DefaultUsed;
import longthrow.core.answer.Finding;
import longthrow.core.build.Build;
import longthrow.core.build.Instrument;
import longthrow.core.build.LiftTable;
import longthrow.core.measurement.Measured;
import longthrow.core.measurement.Source;
import longthrow.core.motion.LiftCurve;
import longthrow.core.motion.ValveMotion;
import longthrow.core.quantity.Dimension;
import longthrow.core.quantity.FigurePrinter;
import longthrow.core.term.InstrumentKind;
import longthrow.core.term.ReadingKind;
import longthrow.core.term.Term;

/** What the lift tables say: peak, and at the checking lift duration, lobe centre and events; held against the same things read directly. */
final class LiftCurves {
    /** A dial set by eye stands within this of the line of motion [rad] and then reads big by up to one over its cosine; common practice, no source. */
    private static final double DIAL_DIRECTION = Math.toRadians(5);

    private static final double TURN = 2 * Math.PI;

    private final Build build;
    private final Function<Term, Optional<Measured>> figures;
    private final List<Finding> findings = new ArrayList<>();
    private final List<DefaultUsed> defaults = new ArrayList<>();

    /**
     * Everything the tables of this build say.
     * @param figures of the engine by its other readings; empty for what is not known
     */
    LiftCurves(Build build, Function<Term, Optional<Measured>> figures) {
        this.build = build;
        this.figures = figures;
        for (int k = 0; k < build.lifts().size(); k++) {
            LiftTable table = build.lifts().get(k);
            if (LiftTables.isWhole(table)) {
                say(table, "lift_tables[" + (k + 1) + "]");
            }
        }
    }

    List<Finding> findings() {
        return findings;
    }

    List<DefaultUsed> defaults() {
        return defaults;
    }

    /** Terms of one valve. */
    private record Valve(Term lift, Term lash, Term duration, Term centre, Term opens, Term closes, boolean intake) {
        static final Valve INTAKE = new Valve(
                Term.INTAKE_LIFT,
                Term.INTAKE_LASH,
                Term.INTAKE_DURATION,
                Term.INTAKE_LOBE_CENTRE,
                Term.INTAKE_OPENS,
                Term.INTAKE_CLOSES,
                true);
        static final Valve EXHAUST = new Valve(
                Term.EXHAUST_LIFT,
                Term.EXHAUST_LASH,
                Term.EXHAUST_DURATION,
                Term.EXHAUST_LOBE_CENTRE,
                Term.EXHAUST_OPENS,
                Term.EXHAUST_CLOSES,
                false);
    }

    private void say(LiftTable table, String place) {
        Valve valve = table.valve().equals("intake") ? Valve.INTAKE : Valve.EXHAUST;
        List<LiftTable.Row> rows = table.rows();
        double[] angles = rows.stream().mapToDouble(r -> r.angle().si()).toArray();
        double[] lifts = rows.stream().mapToDouble(r -> r.lift().si()).toArray();
        boolean fromPeak = angles[0] == 0 && java.util.Arrays.stream(lifts).allMatch(l -> l <= lifts[0]);
        LiftCurve.Bench bench = bench(place);
        LiftCurve curve = LiftCurve.of(place, table.valve() + " lift table", angles, lifts, fromPeak, bench);
        assumed(place, fromPeak);
        ValveMotion motion = motion(curve, table, valve, place);
        boolean atLobe = table.at().equals("lobe") && motion.ratio().value() == 1;
        StringBuilder said = new StringBuilder(table.valve() + " lift table: peak "
                + words(Dimension.LENGTH, motion.peak()) + (atLobe ? " at the lobe" : " at the valve"));
        if (!atLobe) {
            compare(place, valve.lift(), motion.peak());
        }
        Optional<Measured> checking = figures.apply(Term.CHECKING_LIFT);
        Optional<LiftCurve.Span> span = checking.flatMap(motion::at);
        span.ifPresent(s -> {
            said.append("; at the checking lift duration ").append(words(Dimension.ANGLE, s.duration()));
            compare(place, valve.duration(), s.duration());
            if (!fromPeak) {
                events(place, valve, s, said);
            }
        });
        said.append(String.format(
                java.util.Locale.ROOT,
                "; its rows scatter by %.3f mm",
                1e3 * curve.scatterRatio() * bench.liftScatter()));
        String mend = checking.isEmpty()
                ? "write " + Term.CHECKING_LIFT.path() + " to have duration and events from it"
                : span.isEmpty() ? "read on until the lift is below the checking lift on both sides" : "";
        findings.add(new Finding(Finding.Kind.NOTE, place, said.toString(), mend));
    }

    private void events(String place, Valve valve, LiftCurve.Span span, StringBuilder said) {
        Measured centre = wrapped(span.centre(), valve.intake() ? 1 : -1);
        Measured half = scaled(span.duration(), 0.5);
        Measured early = plus(half, centre, -1, 0);
        Measured late = plus(half, centre, 1, -Math.PI);
        said.append(", lobe centre ").append(words(Dimension.ANGLE, centre));
        said.append(", opens ").append(words(Dimension.ANGLE, valve.intake() ? early : late));
        said.append(", closes ").append(words(Dimension.ANGLE, valve.intake() ? late : early));
        compare(place, valve.centre(), centre);
    }

    /** The two events of a lobe counted as the trade counts them, from half the duration and the centre. */
    private static Measured plus(Measured half, Measured centre, double factor, double shift) {
        Map<Source, Double> errors = new LinkedHashMap<>(half.contributions());
        centre.contributions().forEach((source, c) -> errors.merge(source, factor * c, Double::sum));
        return Measured.withContributions(half.value() + factor * centre.value() + shift, errors);
    }

    private static Measured scaled(Measured figure, double factor) {
        Map<Source, Double> errors = new LinkedHashMap<>();
        figure.contributions().forEach((source, c) -> errors.put(source, factor * c));
        return Measured.withContributions(factor * figure.value(), errors);
    }

    /** After (sign 1) or before (sign -1) top dead centre, 0 to a turn: a wheel shows both top dead centres alike. */
    private static Measured wrapped(Measured angle, int sign) {
        Measured signed = scaled(angle, sign);
        double turns = Math.floor(signed.value() / TURN);
        return Measured.withContributions(signed.value() - turns * TURN, signed.contributions());
    }

    /** At the valve where the dial stood there, or where full lift and lash tell the rocker's ratio; else at the lobe. */
    private ValveMotion motion(LiftCurve curve, LiftTable table, Valve valve, String place) {
        Optional<Measured> full = figures.apply(valve.lift());
        Optional<Measured> lash = figures.apply(valve.lash());
        if (table.at().equals("valve") || full.isEmpty() || lash.isEmpty()) {
            return ValveMotion.readAtValve(curve);
        }
        Measured top = curve.peak();
        double ratio = (full.get().value() + lash.get().value()) / top.value();
        Map<Source, Double> errors = new LinkedHashMap<>();
        full.get().contributions().forEach((s, c) -> errors.merge(s, c / top.value(), Double::sum));
        lash.get().contributions().forEach((s, c) -> errors.merge(s, c / top.value(), Double::sum));
        top.contributions().forEach((s, c) -> errors.merge(s, -ratio * c / top.value(), Double::sum));
        defaults.add(
                new DefaultUsed(
                        place,
                        String.format(
                                java.util.Locale.ROOT,
                                "rocker ratio taken as %.3f over the whole lift: full valve lift and lash over full lobe lift",
                                ratio),
                        "geometry at full lift; the ratio of a rocker changes by a few per cent with lift, common practice, no source"));
        return new ValveMotion(curve, Measured.withContributions(ratio, errors), lash.get());
    }

    private void assumed(String place, boolean fromPeak) {
        defaults.add(
                fromPeak
                        ? new DefaultUsed(
                                place,
                                "angles count from the peak; the other flank is taken as the mirror of this one, so it tells no lobe centre",
                                "the first row stands at 0 and is the highest")
                        : new DefaultUsed(
                                place,
                                "0 on the wheel is taken as a top dead centre, degrees counted on in the running direction",
                                "common practice, no source"));
        defaults.add(new DefaultUsed(
                place,
                "each lift scatters as the table of repeatability says until its rows say otherwise; the dial may stand 5° off the line of motion",
                "docs/decisions/0007-smoothing.md; common practice, no source"));
    }

    private LiftCurve.Bench bench(String place) {
        Instrument dial = tool(InstrumentKind.DIAL_INDICATOR);
        Instrument wheel = tool(InstrumentKind.DEGREE_WHEEL);
        double liftScatter = Math.hypot(build.repeatability(ReadingKind.LIFT), dial.resolution() / Math.sqrt(12));
        Map<Source, Double> dials = new LinkedHashMap<>();
        Map<Source, Double> gains = new LinkedHashMap<>();
        for (Instrument at = dial; at != null; at = at.setWith()) {
            if (at.statedError() > 0) {
                Source source = stated(at);
                dials.put(source, source.standardUncertainty());
            }
        }
        Source direction = Source.rectangular(
                place + " dial direction",
                Source.Kind.INSTRUMENT,
                "direction of the dial",
                1 / Math.cos(DIAL_DIRECTION) - 1);
        gains.put(direction, direction.standardUncertainty());
        Map<Source, Double> wheels = new LinkedHashMap<>();
        if (wheel.statedError() > 0) {
            Source source = stated(wheel);
            wheels.put(source, source.standardUncertainty());
        }
        return new LiftCurve.Bench(
                liftScatter,
                ReadingKind.POOLED_DEGREES_OF_FREEDOM,
                wheel.resolution() / Math.sqrt(12),
                wheels,
                dials,
                gains);
    }

    /** The same source as that of other readings with this tool: {@link Readings}. */
    private static Source stated(Instrument tool) {
        return Source.at95(
                "instrument " + tool.key(), Source.Kind.INSTRUMENT, tool.key().replace('_', ' '), tool.statedError());
    }

    /** The owner's tool of this kind when there is just one; else the built-in figures. */
    private Instrument tool(InstrumentKind kind) {
        List<Instrument> own = build.instruments().values().stream()
                .filter(i -> i.kind() == kind)
                .toList();
        return own.size() == 1 ? own.get(0) : Instrument.builtIn(kind);
    }

    /** What the table says against what was read directly; tools they share cancel. */
    private void compare(String place, Term term, Measured byTable) {
        Optional<Measured> direct = figures.apply(term);
        if (direct.isEmpty()) {
            return;
        }
        Map<Source, Double> errors = new LinkedHashMap<>(byTable.contributions());
        direct.get().contributions().forEach((source, c) -> errors.merge(source, -c, Double::sum));
        Measured difference =
                Measured.withContributions(byTable.value() - direct.get().value(), errors);
        if (Math.abs(difference.value()) <= difference.expanded()) {
            return;
        }
        findings.add(
                new Finding(
                        Finding.Kind.WARNING,
                        place,
                        "the table and what was read directly disagree: " + term.label() + " by the table "
                                + words(term.dimension(), byTable) + ", read directly "
                                + words(term.dimension(), direct.get()) + "; the difference is more than their doubt",
                        "look at the zero of the wheel, the lash, the checking lift and where the dial stood, and read one of them again"));
    }

    private String words(Dimension dimension, Measured figure) {
        return new FigurePrinter(build.units())
                .print(dimension, figure.value(), figure.expanded())
                .line();
    }
}
