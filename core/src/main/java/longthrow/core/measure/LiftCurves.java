package longthrow.core.measure;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import longthrow.core.answer.DefaultUsed;
import longthrow.core.answer.Finding;
import longthrow.core.build.Build;
import longthrow.core.measurement.Measured;
import longthrow.core.motion.ValveMotion;
import longthrow.core.quantity.Dimension;
import longthrow.core.quantity.FigurePrinter;
import longthrow.core.term.Term;

/** What each lift table says by itself, in words; with the other readings it is brought together in {@link Readings}. */
final class LiftCurves {
    private final Build build;
    private final List<Finding> findings = new ArrayList<>();
    private final List<DefaultUsed> defaults = new ArrayList<>();

    LiftCurves(Build build, List<TableReading> tables) {
        this.build = build;
        tables.forEach(this::say);
    }

    List<Finding> findings() {
        return findings;
    }

    List<DefaultUsed> defaults() {
        return defaults;
    }

    private void say(TableReading reading) {
        TableCurve table = reading.table();
        defaults.addAll(reading.defaults());
        Optional<ValveMotion> valve = reading.atValve();
        Measured peak = valve.map(ValveMotion::peak).orElseGet(table.curve()::peak);
        StringBuilder said = new StringBuilder(table.valve().word() + " lift table: peak "
                + words(Dimension.LENGTH, peak) + (valve.isPresent() ? " at the valve" : " at the lobe"));
        Optional<Measured> duration = reading.duration();
        duration.ifPresent(d -> said.append("; at the checking lift duration ").append(words(Dimension.ANGLE, d)));
        reading.centre().ifPresent(c -> events(table.valve(), duration.orElseThrow(), c, said));
        said.append(String.format(
                Locale.ROOT,
                "; its rows scatter by %.3f mm",
                1e3 * table.curve().scatterRatio() * table.scatter()));
        findings.add(new Finding(Finding.Kind.NOTE, table.place(), said.toString(), mend(reading)));
    }

    private static String mend(TableReading reading) {
        Valve valve = reading.table().valve();
        if (reading.atValve().isEmpty()) {
            return "read " + valve.lift.path() + " and " + valve.lash.path()
                    + ": the dial stood at the lobe, and without them it is not known what the valve does";
        }
        if (!reading.knowsCheckingLift()) {
            return "write " + Term.CHECKING_LIFT.path() + " to have duration and events from it";
        }
        return reading.duration().isPresent() ? "" : "read on until the lift is below the checking lift on both sides";
    }

    private void events(Valve valve, Measured duration, Measured centre, StringBuilder said) {
        said.append(", lobe centre ").append(words(Dimension.ANGLE, centre));
        said.append(", opens ").append(words(Dimension.ANGLE, opens(valve, duration, centre)));
        said.append(", closes ").append(words(Dimension.ANGLE, closes(valve, duration, centre)));
    }

    /** Counted as the trade counts it: before top (intake) or bottom (exhaust) dead centre. */
    static Measured opens(Valve valve, Measured duration, Measured centre) {
        return valve == Valve.INTAKE
                ? Carried.sum(0.5, duration, -1, centre, 0)
                : Carried.sum(0.5, duration, 1, centre, -Math.PI);
    }

    /** After bottom (intake) or top (exhaust) dead centre. */
    static Measured closes(Valve valve, Measured duration, Measured centre) {
        return valve == Valve.INTAKE
                ? Carried.sum(0.5, duration, 1, centre, -Math.PI)
                : Carried.sum(0.5, duration, -1, centre, 0);
    }

    private String words(Dimension dimension, Measured figure) {
        return new FigurePrinter(build.units())
                .print(dimension, figure.value(), figure.expanded())
                .line();
    }
}
