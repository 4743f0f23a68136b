package longthrow.core.measure;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import longthrow.core.answer.ValveMovement;
import longthrow.core.answer.ValveMovement.AtLift;
import longthrow.core.answer.ValveMovement.Figure;
import longthrow.core.answer.ValveMovement.Per;
import longthrow.core.build.Build;
import longthrow.core.build.Given;
import longthrow.core.measurement.Measured;
import longthrow.core.motion.LiftCurve;
import longthrow.core.motion.LobeCurve;
import longthrow.core.motion.ValveMotion;
import longthrow.core.quantity.Dimension;
import longthrow.core.quantity.Quantity;
import longthrow.core.term.Term;

/** How each valve moves: by its lift table where there is one, else by duration, centre and full lift with the flanks assumed. */
final class ValveMovements {
    private static final double TURN = 2 * Math.PI;

    private final Build build;
    private final Function<Term, Optional<Measured>> figures;
    private final List<Quantity> lifts;
    private final List<ValveMovement> found = new ArrayList<>();

    private ValveMovements(Build build, Function<Term, Optional<Measured>> figures, List<Quantity> lifts) {
        this.build = build;
        this.figures = figures;
        this.lifts = lifts;
    }

    /**
     * Every valve of which something is known; with lifts asked for, also why the others are silent.
     * @param figures that are agreed; empty for what is in dispute or not known
     */
    static List<ValveMovement> of(
            Build build, List<TableReading> tables, Function<Term, Optional<Measured>> figures, List<Quantity> lifts) {
        ValveMovements all = new ValveMovements(build, figures, lifts);
        for (Valve valve : Valve.values()) {
            List<TableReading> own = tables.stream()
                    .filter(t -> t.table().valve() == valve && t.atValve().isPresent())
                    .toList();
            own.forEach(all::byTable);
            if (own.isEmpty()) {
                all.byFigures(valve, tables.stream().anyMatch(t -> t.table().valve() == valve));
            }
        }
        return List.copyOf(all.found);
    }

    // ---- by table

    private void byTable(TableReading table) {
        ValveMotion motion = table.atValve().orElseThrow();
        Valve valve = table.table().valve();
        List<Figure> whole = new ArrayList<>();
        whole.add(new Figure("full_lift", "full lift", Dimension.LENGTH, Per.NOTHING, motion.peak()));
        speeds(motion.steepest(), motion.sharpest(), whole);
        Optional<Measured> top = overlapTop(table);
        top.ifPresent(angle -> whole.add(atOverlap(motion.lift(angle))));
        List<AtLift> at = lifts.stream().map(lift -> at(table, motion, lift)).toList();
        String why = top.isPresent()
                ? ""
                : "lift at overlap top dead centre is not known: "
                        + (table.table().fromPeak()
                                ? "the table counts from its peak; read opening and closing too"
                                : "the table does not reach it");
        found.add(new ValveMovement(valve.part, table.table().place(), "", whole, at, why));
    }

    private static Figure atOverlap(Measured lift) {
        return new Figure(
                "lift_at_overlap_top", "lift at overlap top dead centre", Dimension.LENGTH, Per.NOTHING, lift);
    }

    /** Where on the wheel of the table overlap top dead centre stands, when the table reaches it. */
    private Optional<Measured> overlapTop(TableReading table) {
        Valve valve = table.table().valve();
        LiftCurve curve = table.table().curve();
        Optional<Measured> angle;
        if (table.table().fromPeak()) {
            angle = figures.apply(valve.centre).map(c -> Carried.times(-valve.sign(), c));
        } else {
            double turns = curve.peakAngle() / TURN;
            double top = TURN * (valve == Valve.INTAKE ? Math.floor(turns) : Math.ceil(turns));
            double[] usual = Readings.range(valve.centre);
            double from = valve.sign() * (curve.peakAngle() - top);
            angle = from >= usual[0] && from <= usual[1] ? Optional.of(Measured.exact(top)) : Optional.empty();
        }
        return angle.filter(a -> curve.reaches(a.value()));
    }

    private AtLift at(TableReading table, ValveMotion motion, Quantity lift) {
        Measured full = motion.peak();
        if (lift.si() >= full.low()) {
            return above(lift, full);
        }
        Optional<LiftCurve.Span> span = motion.at(Measured.exact(lift.si()));
        if (span.isEmpty()) {
            return silent(lift, "the table does not come down to this lift on both sides; read on");
        }
        Valve valve = table.table().valve();
        Measured duration = span.get().duration();
        if (table.table().fromPeak()) {
            return figures.apply(valve.centre)
                    .map(c -> events(valve, lift, duration, c))
                    .orElseGet(() -> new AtLift(
                            lift.si(),
                            lift.written(),
                            List.of(angle("duration", "duration", duration)),
                            "the table counts from its peak, so it does not tell when; read opening and closing too"));
        }
        Measured centre =
                TableReading.wrapped(Carried.times(valve.sign(), span.get().centre()));
        return events(valve, lift, duration, centre);
    }

    // ---- by figures

    /** From its inputs, in this order: full lift, checking lift, duration, centre; the doubt is theirs alone. */
    private record Lobe(List<Measured> inputs) {
        Measured tell(ToDoubleFunction<LobeCurve> figure) {
            return Carried.through(x -> figure.applyAsDouble(LobeCurve.of(x[0], x[1], x[2], x[3])), inputs);
        }
    }

    private void byFigures(Valve valve, boolean tableAtLobe) {
        String why = silence(valve, tableAtLobe);
        if (!why.isEmpty()) {
            if (!lifts.isEmpty()) {
                found.add(new ValveMovement(valve.part, ValveMovement.LOBE_FIGURES, "", List.of(), List.of(), why));
            }
            return;
        }
        Measured full = figures.apply(valve.lift).orElseThrow();
        Measured centre = figures.apply(valve.centre).orElseThrow();
        Lobe lobe = new Lobe(inputs(valve));
        List<Figure> whole = new ArrayList<>();
        speeds(lobe.tell(LobeCurve::steepest), Optional.of(lobe.tell(LobeCurve::sharpest)), whole);
        whole.add(atOverlap(lobe.tell(curve -> curve.at(0))));
        List<AtLift> at = lifts.stream()
                .map(lift -> lift.si() >= full.low()
                        ? above(lift, full)
                        : events(valve, lift, lobe.tell(curve -> 2 * curve.halfDuration(lift.si())), centre))
                .toList();
        found.add(new ValveMovement(valve.part, ValveMovement.LOBE_FIGURES, LobeCurve.ASSUMED, whole, at, ""));
    }

    /**
     * What a lobe can be made of: full lift, checking lift, duration, centre; empty where none can.
     * @param tableAtLobe whether there is a table of this valve that does not tell what the valve does
     */
    static Optional<List<Measured>> lobe(
            Build build, Valve valve, Function<Term, Optional<Measured>> figures, boolean tableAtLobe) {
        ValveMovements asked = new ValveMovements(build, figures, List.of());
        return asked.silence(valve, tableAtLobe).isEmpty() ? Optional.of(asked.inputs(valve)) : Optional.empty();
    }

    private List<Measured> inputs(Valve valve) {
        return List.of(
                figures.apply(valve.lift).orElseThrow(),
                figures.apply(Term.CHECKING_LIFT).orElseThrow(),
                figures.apply(valve.duration).orElseThrow(),
                figures.apply(valve.centre).orElseThrow());
    }

    /** Why no lobe can be made of the figures; empty when one can. */
    private String silence(Valve valve, boolean tableAtLobe) {
        if (tableAtLobe) {
            return "its lift table was read at the lobe: read " + valve.lift.path() + " and " + valve.lash.path()
                    + " to know what the valve does";
        }
        Set<String> missing = new LinkedHashSet<>();
        Term.read().stream()
                .filter(t -> t == Term.CHECKING_LIFT || t == valve.lift)
                .filter(t -> figures.apply(t).isEmpty())
                .forEach(t -> missing.add(t.label()));
        if (figures.apply(valve.duration).isEmpty()
                || figures.apply(valve.centre).isEmpty()) {
            valve.events().forEach(t -> missing.add(t.label()));
        }
        if (!missing.isEmpty()) {
            return "no lift table, and no lobe can be made of figures: not known, or in dispute: "
                    + String.join(", ", missing);
        }
        Set<String> sheets = sheets(valve);
        if (sheets.size() > 1) {
            return "events and checking lift stand on different sheets (" + String.join("; ", sheets)
                    + "): cards that check at different lifts are not comparable; write the checking lift of the sheet the events are from, or read them";
        }
        Measured full = figures.apply(valve.lift).orElseThrow();
        Measured checking = figures.apply(Term.CHECKING_LIFT).orElseThrow();
        return checking.low() >= 0 && checking.high() < full.low()
                ? ""
                : "the checking lift is not surely between 0 and the full lift";
    }

    /** Every sheet that an event of this valve or the checking lift was taken from. */
    private Set<String> sheets(Valve valve) {
        Set<String> sheets = new LinkedHashSet<>();
        for (Term term : List.of(valve.opens, valve.closes, Term.CHECKING_LIFT)) {
            for (Given given : build.of(term)) {
                if (given instanceof Given.Specified sheet && !sheet.by().isBlank()) {
                    sheets.add(sheet.by().strip());
                }
            }
        }
        return sheets;
    }

    // ---- both

    private void speeds(Measured steepest, Optional<Measured> sharpest, List<Figure> whole) {
        Optional<Measured> speed = figures.apply(Term.WANTED_SPEED);
        whole.add(new Figure("peak_velocity", "peak velocity", Dimension.LENGTH, Per.ANGLE, steepest));
        speed.ifPresent(n -> whole.add(new Figure(
                "peak_velocity_at_wanted_speed",
                "peak velocity at the wanted speed",
                Dimension.SPEED,
                Per.NOTHING,
                Carried.through(x -> x[0] * x[1], List.of(steepest, n)))));
        sharpest.ifPresent(bend -> {
            String what = "greatest negative acceleration";
            whole.add(new Figure("greatest_deceleration", what, Dimension.LENGTH, Per.ANGLE_SQUARED, bend));
            speed.ifPresent(n -> whole.add(new Figure(
                    "greatest_deceleration_at_wanted_speed",
                    what + " at the wanted speed",
                    Dimension.ACCELERATION,
                    Per.NOTHING,
                    Carried.through(x -> x[0] * x[1] * x[1], List.of(bend, n)))));
        });
    }

    private static AtLift events(Valve valve, Quantity lift, Measured duration, Measured centre) {
        String opens = valve == Valve.INTAKE ? "opens before top dead centre" : "opens before bottom dead centre";
        String closes = valve == Valve.INTAKE ? "closes after bottom dead centre" : "closes after top dead centre";
        return new AtLift(
                lift.si(),
                lift.written(),
                List.of(
                        angle("opens", opens, LiftCurves.opens(valve, duration, centre)),
                        angle("closes", closes, LiftCurves.closes(valve, duration, centre)),
                        angle("duration", "duration", duration),
                        angle("lobe_centre", "lobe centre", centre)),
                "");
    }

    private static Figure angle(String key, String label, Measured figure) {
        return new Figure(key, label, Dimension.ANGLE, Per.NOTHING, figure);
    }

    private static AtLift above(Quantity lift, Measured full) {
        return silent(
                lift,
                String.format(
                        Locale.ROOT,
                        "the valve does not surely lift so far: its full lift is %.3f ± %.3f mm (%.4f in); ask for less",
                        1e3 * full.value(),
                        1e3 * full.expanded(),
                        full.value() / 25.4e-3));
    }

    private static AtLift silent(Quantity lift, String why) {
        return new AtLift(lift.si(), lift.written(), List.of(), why);
    }
}
