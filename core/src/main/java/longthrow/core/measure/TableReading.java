package longthrow.core.measure;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import longthrow.core.answer.DefaultUsed;
import longthrow.core.answer.Finding;
import longthrow.core.formula.Expression;
import longthrow.core.formula.Formula;
import longthrow.core.measurement.Measured;
import longthrow.core.measurement.Observation;
import longthrow.core.measurement.Source;
import longthrow.core.motion.LiftCurve;
import longthrow.core.motion.ValveMotion;
import longthrow.core.term.Term;

/**
 * What one lift table says at the checking lift, as readings beside those taken directly: duration and lobe centre, and full lift where the dial stood at
 * the valve (docs/decisions/0010-lift-tables-as-readings.md). Lift, lash and checking lift come from what was read directly of them, never from figures
 * that hold this table; the readings say how they move with each of the three, so that a slip in one of those is told from a slip in the table.
 */
final class TableReading {
    private static final double TURN = 2 * Math.PI;

    private final TableCurve table;
    private final Map<Term, Measured> direct = new LinkedHashMap<>();
    private final Optional<ValveMotion> motion;
    private final List<Told> told = new ArrayList<>();
    private final List<Finding> findings = new ArrayList<>();
    private Optional<Measured> duration = Optional.empty();
    private Optional<Measured> centre = Optional.empty();

    /** One figure that the table tells, as an observation. */
    record Told(Term term, Observation observation) {}

    /**
     * What a table tells.
     * @param read figures by what was read of them directly alone
     */
    TableReading(TableCurve table, Function<Term, Optional<Measured>> read) {
        this.table = table;
        for (Term term : List.of(Term.CHECKING_LIFT, table.valve().lift, table.valve().lash)) { // as hangsOn has it
            read.apply(term).ifPresent(m -> direct.put(term, m));
        }
        this.motion = motion();
        if (table.atValve()) {
            tell(table.valve().lift, "full lift", table.curve().peak());
        }
        level().flatMap(table.curve()::at).ifPresent(this::atCheckingLift);
    }

    TableCurve table() {
        return table;
    }

    /** Whether readings of this term enter into what the table tells. */
    boolean hangsOn(Term term) {
        return term == Term.CHECKING_LIFT || term == table.valve().lift || term == table.valve().lash;
    }

    List<Told> told() {
        return told;
    }

    List<Finding> findings() {
        return findings;
    }

    /** What the valve does; empty where the dial stood at the lobe and full lift or lash was not read. */
    Optional<ValveMotion> atValve() {
        return motion;
    }

    /** At the checking lift, with all its doubt. */
    Optional<Measured> duration() {
        return duration;
    }

    /** As {@link #duration}; empty too for a table counted from the peak. */
    Optional<Measured> centre() {
        return centre;
    }

    boolean knowsCheckingLift() {
        return direct.containsKey(Term.CHECKING_LIFT);
    }

    private Optional<ValveMotion> motion() {
        if (table.atValve()) {
            return Optional.of(ValveMotion.readAtValve(table.curve()));
        }
        Measured full = direct.get(table.valve().lift);
        Measured lash = direct.get(table.valve().lash);
        if (full == null || lash == null || lash.value() < 0) {
            return Optional.empty();
        }
        Measured top = table.curve().peak();
        Measured ratio = Carried.through(x -> (x[0] + x[1]) / x[2], List.of(full, lash, top));
        return ratio.value() > 0 ? Optional.of(new ValveMotion(table.curve(), ratio, lash)) : Optional.empty();
    }

    /** What the motion takes for granted. */
    List<DefaultUsed> defaults() {
        List<DefaultUsed> defaults = new ArrayList<>(table.defaults());
        if (!table.atValve()) {
            motion.ifPresent(
                    m -> defaults.add(
                            new DefaultUsed(
                                    table.place(),
                                    String.format(
                                            java.util.Locale.ROOT,
                                            "rocker ratio taken as %.3f over the whole lift: full valve lift and lash over full lobe lift",
                                            m.ratio().value()),
                                    "geometry at full lift; the ratio of a rocker changes by a few per cent with lift, common practice, no source")));
        }
        return defaults;
    }

    /** The height on this curve at which the valve stands at the checking lift; how it moves with what was read directly is kept apart by {@link #moving}. */
    private Optional<Measured> level() {
        Measured checking = direct.get(Term.CHECKING_LIFT);
        if (checking == null || motion.isEmpty()) {
            return Optional.empty();
        }
        Map<Source, Double> moves = new LinkedHashMap<>();
        if (table.atValve()) {
            moves.put(moving(Term.CHECKING_LIFT), 1.0);
            return Optional.of(Measured.withContributions(checking.value(), moves));
        }
        Measured top = table.curve().peak();
        double lash = motion.get().lash().value();
        double ratio = motion.get().ratio().value();
        double level = (checking.value() + lash) / ratio;
        moves.put(moving(Term.CHECKING_LIFT), 1 / ratio);
        moves.put(moving(table.valve().lash), 1 / ratio - level / (ratio * top.value()));
        moves.put(moving(table.valve().lift), -level / (ratio * top.value()));
        Carried.add(moves, top, level / top.value());
        return Optional.of(Measured.withContributions(level, moves));
    }

    /** Stands in for a reading of which it is not yet decided what it will be. */
    private static Source moving(Term term) {
        return Source.known("moves with " + term.path(), Source.Kind.TYPED, term.label(), 1);
    }

    private void atCheckingLift(LiftCurve.Span span) {
        double[] widths = Readings.range(table.valve().duration);
        Measured wide = span.duration();
        duration = Optional.of(resolved(wide));
        if (!(wide.value() >= widths[0] && wide.value() <= widths[1])) {
            findings.add(warning(
                    "its duration at the checking lift, " + degrees(wide) + ", is outside what a lobe shows, "
                            + degrees(widths[0]) + " to " + degrees(widths[1]) + ", so no event is taken from it",
                    "count crank degrees, two for each degree of the camshaft, and look at the checking lift"));
            return;
        }
        tell(table.valve().duration, "duration", wide);
        if (table.fromPeak()) {
            return;
        }
        Measured middle = wrapped(Carried.times(table.valve().sign(), span.centre()));
        centre = Optional.of(resolved(middle));
        double[] centres = Readings.range(table.valve().centre);
        if (!(middle.value() >= centres[0] && middle.value() <= centres[1])) {
            findings.add(warning(
                    "its lobe centre would be " + degrees(middle) + ", outside what a cam shows, "
                            + degrees(centres[0]) + " to " + degrees(centres[1])
                            + ": 0 on the wheel was no top dead centre, so only duration and lift are taken from it",
                    "write the angles so that 0 is a top dead centre, or count them from the peak"));
            return;
        }
        tell(table.valve().centre, "centre", middle);
    }

    private static String degrees(Measured angle) {
        return degrees(angle.value());
    }

    private static String degrees(double angle) {
        return String.format(java.util.Locale.ROOT, "%.0f°", Math.toDegrees(angle));
    }

    private Finding warning(String message, String mend) {
        return new Finding(Finding.Kind.WARNING, table.place(), table.valve().word() + " lift table: " + message, mend);
    }

    /** 0 to a turn: a wheel shows both top dead centres alike. */
    static Measured wrapped(Measured angle) {
        double turns = Math.floor(angle.value() / TURN);
        return Measured.withContributions(angle.value() - turns * TURN, angle.contributions());
    }

    /** Lift, lash and checking lift as they were read put in, with their doubt. */
    private Measured resolved(Measured figure) {
        Map<Source, Double> errors = new LinkedHashMap<>(figure.contributions());
        direct.forEach((term, read) -> {
            Double moves = errors.remove(moving(term));
            if (moves != null) {
                Carried.add(errors, read, moves);
            }
        });
        return Measured.withContributions(figure.value(), errors);
    }

    private void tell(Term term, String what, Measured figure) {
        Map<Source, Double> errors = new LinkedHashMap<>(figure.contributions());
        Expression says = Expression.input(term.path());
        for (Map.Entry<Term, Measured> read : direct.entrySet()) {
            Double moves = errors.remove(moving(read.getKey()));
            if (moves != null) {
                Expression off = Expression.input(read.getKey().path())
                        .minus(read.getValue().value());
                says = says.minus(off.times(moves)); // the figure at the true lift, brought to the lift as read
            }
        }
        Map<Source, Double> factors = new LinkedHashMap<>();
        errors.forEach((source, c) -> {
            if (c != 0) {
                factors.put(source, c / source.standardUncertainty());
            }
        });
        String id = table.place() + ", " + what;
        told.add(new Told(term, new Observation(id, Formula.of(id, says), figure.value(), factors)));
    }
}
