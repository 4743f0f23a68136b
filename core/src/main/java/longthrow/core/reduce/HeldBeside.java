package longthrow.core.reduce;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import longthrow.core.reduce.RunRows.Column;

/** What was logged beside a brake that held its speeds: averaged over each stretch as its torque is, and drawn through those points. */
final class HeldBeside {
    /** As many as of torque. */
    private static final int FEWEST = 3;

    private final List<BrakeRun.Steady> stretches;
    private final double[] engine;
    private final RunCurve curve;
    private final List<Remark> remarks;

    private HeldBeside(List<BrakeRun.Steady> stretches, double[] engine, RunCurve curve, List<Remark> remarks) {
        this.stretches = stretches;
        this.engine = engine;
        this.curve = curve;
        this.remarks = remarks;
    }

    /**
     * The same curve with what was logged beside.
     * @param engine speed of the engine by row [rad/s]
     */
    static Reduced with(Reduced reduced, RunRows rows, List<BrakeRun.Steady> stretches, double[] engine) {
        if (reduced.curve().isEmpty()) {
            return reduced;
        }
        List<Remark> remarks = new ArrayList<>(reduced.remarks());
        HeldBeside held = new HeldBeside(stretches, engine, reduced.curve().get(), remarks);
        List<AlongCurve> beside = new ArrayList<>();
        for (Map.Entry<String, double[]> one : rows.beside().entrySet()) {
            held.along(one.getKey(), one.getValue()).ifPresent(beside::add);
        }
        double[] flow = rows.column(Column.FUEL_FLOW);
        Optional<AlongCurve> fuel = flow == null ? Optional.empty() : held.along(Column.FUEL_FLOW.words(), flow);
        return new Reduced(Optional.of(reduced.curve().get().beside(beside, fuel)), remarks);
    }

    private Optional<AlongCurve> along(String name, double[] values) {
        List<double[]> points = new ArrayList<>(); // speed, mean, its standard uncertainty, degrees of freedom
        for (BrakeRun.Steady stretch : stretches) {
            mean(stretch, values).ifPresent(points::add);
        }
        points.sort(Comparator.comparingDouble(p -> p[0]));
        if (points.size() < FEWEST) {
            remarks.add(Remark.warning(
                    name + " has figures at " + points.size() + " of the speeds that were held; at least " + FEWEST
                            + " are needed to tell it by speed. It is left out"));
            return Optional.empty();
        }
        int n = points.size();
        double[][] columns = new double[4][n];
        for (int c = 0; c < columns.length; c++) {
            int column = c;
            columns[c] = points.stream().mapToDouble(p -> p[column]).toArray();
        }
        double[] speeds = CurveMaker.speeds(curve.grid());
        double freedom = Arrays.stream(columns[3]).min().orElse(1);
        PointFit fit = new PointFit(columns[0], columns[1], columns[2], freedom, speeds);
        double[] told = new double[speeds.length];
        double[] doubts = new double[speeds.length];
        for (int i = 0; i < speeds.length; i++) {
            boolean reached = speeds[i] >= columns[0][0] && speeds[i] <= columns[0][n - 1];
            told[i] = reached ? fit.value(i) : Double.NaN;
            doubts[i] = reached ? fit.standardUncertainty(i) : Double.NaN;
        }
        return Optional.of(new AlongCurve(name, told, doubts));
    }

    private Optional<double[]> mean(BrakeRun.Steady stretch, double[] values) {
        int count = stretch.to() - stretch.from();
        int parts = count >= 2 * BrakeRun.PARTS ? BrakeRun.PARTS : count;
        Thinned thin = Thinned.inParts(stretch.from(), stretch.to(), parts, engine, values);
        int n = thin.points();
        if (n < 2) {
            return Optional.empty();
        }
        double speed = Arrays.stream(thin.column(0)).average().orElse(0);
        double mean = Arrays.stream(thin.column(1)).average().orElse(0);
        double squares =
                Arrays.stream(thin.column(1)).map(v -> (v - mean) * (v - mean)).sum();
        return Optional.of(new double[] {speed, mean, Math.sqrt(squares / (n - 1) / n), n - 1.0});
    }
}
