package longthrow.core.dyno;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import longthrow.core.answer.Finding;
import longthrow.core.quantity.Quantity;
import longthrow.core.quantity.Units;
import longthrow.core.reduce.SpeedGrid;

/** The speeds at which runs are held beside each other: those that were written down where all have the same, else a grid that all share. */
final class GridOfRuns {
    private final List<Double> rpm;
    private final boolean peaks;
    private final longthrow.core.quantity.Dimension peakOf;

    /**
     * Of runs that are to be compared.
     * @param findings takes what is to be said of it
     */
    GridOfRuns(DynoSheet sheet, Reading reading, List<Finding> findings) {
        this.peaks = reading.isPeaks();
        this.peakOf = reading.figure();
        this.rpm = peaks ? List.of() : speeds(sheet, reading.alike(), findings);
    }

    private static List<Double> speeds(DynoSheet sheet, List<Reading.Ran> told, List<Finding> findings) {
        double low = sheet.from().map(Quantity::si).orElse(0.0);
        double high = sheet.to().map(Quantity::si).orElse(Double.POSITIVE_INFINITY);
        List<List<Double>> written = told.stream()
                .map(r -> r.figures().orElseThrow().speeds())
                .distinct()
                .toList();
        List<Double> all;
        if (written.size() == 1 && !written.get(0).isEmpty()) {
            all = written.get(0).stream().map(Units.RPM::fromSi).toList();
        } else {
            all = shared(told, low, high);
        }
        List<Double> used = all.stream()
                .filter(s -> Units.RPM.toSi(s) >= low * (1 - RunFigures.SAME)
                        && Units.RPM.toSi(s) <= high * (1 + RunFigures.SAME))
                .toList();
        if (used.isEmpty() && !told.isEmpty()) {
            findings.add(new Finding(
                    Finding.Kind.WARNING,
                    "speeds",
                    "no speed is in the runs and between 'from' and 'to'",
                    "mend 'speeds', or take runs over the speeds that are used"));
        }
        return used;
    }

    /** From the lowest to the highest that any run reaches: a speed that one lacks is told, not hidden. */
    private static List<Double> shared(List<Reading.Ran> told, double from, double to) {
        double low = Double.POSITIVE_INFINITY;
        double high = 0;
        for (Reading.Ran ran : told) {
            double[] reach = ran.figures().orElseThrow().reach();
            low = Math.min(low, reach[0]);
            high = Math.max(high, reach[1]);
        }
        List<Double> rpm = new ArrayList<>();
        Optional<SpeedGrid> grid =
                SpeedGrid.between(Units.RPM.fromSi(Math.max(low, from)), Units.RPM.fromSi(Math.min(high, to)));
        grid.ifPresent(g -> {
            for (int i = 0; i < g.count(); i++) {
                rpm.add((double) g.rpm(i));
            }
        });
        return rpm;
    }

    boolean isPeaks() {
        return peaks;
    }

    /** Rising; empty where runs are compared by their peaks. */
    List<Double> rpm() {
        return rpm;
    }

    /** A run's torque at these speeds, or its peak, as read; NaN where it has none. */
    double[] on(Reading.Ran ran) {
        RunFigures figures = ran.figures().orElseThrow();
        if (peaks) {
            return new double[] {figures.peak(peakOf).orElseThrow().figure().value()};
        }
        return rpm.stream()
                .mapToDouble(s -> figures.torque(Units.RPM.toSi(s)))
                .map(t -> t > 0 ? t : Double.NaN)
                .toArray();
    }
}
