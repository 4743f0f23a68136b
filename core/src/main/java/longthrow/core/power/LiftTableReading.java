package longthrow.core.power;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import longthrow.core.answer.DefaultUsed;
import longthrow.core.answer.Finding;
import longthrow.core.answer.ValveMovement;
import longthrow.core.life.Known;
import longthrow.core.measure.ValveLift;
import longthrow.core.measurement.Measured;
import longthrow.core.term.Part;
import longthrow.core.term.Term;

/** What the lift table of one valve comes to, where its events and its full lift are known: they say where on the crank it stands. Else why it does not count. */
final class LiftTableReading {
    private final Part valve;
    private Optional<TableLift> lift = Optional.empty();
    private Optional<Finding> finding = Optional.empty();
    private List<DefaultUsed> taken = List.of();

    /**
     * Of one valve.
     * @param readings with all of the valve timing, or none of it
     */
    LiftTableReading(Known known, boolean intake, Map<Needed, Measured> readings) {
        this.valve = intake ? Part.INTAKE_VALVE : Part.EXHAUST_VALVE;
        known.lift(valve)
                .filter(l -> !l.from().equals(ValveMovement.LOBE_FIGURES))
                .ifPresent(table -> counts(table, intake, readings));
    }

    Optional<TableLift> lift() {
        return lift;
    }

    Optional<Finding> finding() {
        return finding;
    }

    List<DefaultUsed> taken() {
        return taken;
    }

    private void counts(ValveLift table, boolean intake, Map<Needed, Measured> readings) {
        Measured full = readings.get(intake ? Needed.INTAKE_LIFT : Needed.EXHAUST_LIFT);
        Measured opens = readings.get(intake ? Needed.INTAKE_OPENS : Needed.EXHAUST_OPENS);
        Measured closes = readings.get(intake ? Needed.INTAKE_CLOSES : Needed.EXHAUST_CLOSES);
        Measured checking = readings.get(Needed.CHECKING_LIFT);
        if (full == null || opens == null || closes == null || checking == null) {
            notCounted(
                    table.from(),
                    "when both valves open and close is not known, or how far this one lifts",
                    "write " + Term.CHECKING_LIFT.path()
                            + ", and read tables of both valves, or the events, on a wheel that stands at 0 where a top dead centre is");
            return;
        }
        TableLift read = new TableLift(table);
        double duration = Math.PI + opens.value() + closes.value();
        try {
            read.at(full.value(), checking.value(), duration, 0);
            read.at(full.high(), Math.max(0, checking.low()), duration, 0); // as far as doubt moves it
        } catch (IllegalArgumentException cannot) {
            notCounted(
                    table.from(),
                    "it does not come down to the checking lift on both sides, or does not fall to its ends",
                    "read on until the valve is shut on both sides");
            return;
        }
        lift = Optional.of(read);
        taken = table.defaults();
        finding = Optional.of(new Finding(
                Finding.Kind.NOTE, table.from(), "the " + valve.label() + " is lifted as this table has it", ""));
    }

    private void notCounted(String place, String why, String mend) {
        finding = Optional.of(new Finding(
                Finding.Kind.WARNING,
                place,
                "this lift table of the " + valve.label() + " does not count for torque, and a lobe with assumed flanks"
                        + " stands for it: " + why,
                mend));
    }
}
