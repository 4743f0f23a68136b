package longthrow.core.dyno;

import java.util.List;
import java.util.Optional;
import longthrow.core.answer.DynoRuns;
import longthrow.core.measurement.Measured;
import longthrow.core.quantity.Dimension;

/** Torque or power written down at speeds. Between two lines torque is straight. */
final class TableFigures implements RunFigures {
    private final double[] speeds;
    private final Measured[] torques;

    /**
     * Of a table.
     * @param handedOn share of the crank's power that reached what was written down; empty where it is not told
     */
    TableFigures(DynoSheet.Table table, Optional<Measured> handedOn) {
        List<DynoSheet.Row> rows = table.rows();
        this.speeds = rows.stream().mapToDouble(r -> r.speed().si()).toArray();
        this.torques = new Measured[speeds.length];
        for (int i = 0; i < speeds.length; i++) {
            Measured figure =
                    RunFigures.atCrank(RunFigures.told(rows.get(i).figure(), "the dynamometer's figures"), handedOn);
            boolean isPower = rows.get(i).figure().value().dimension() == Dimension.POWER;
            torques[i] = isPower ? Times.of(figure, 1 / speeds[i]) : figure;
        }
    }

    @Override
    public boolean isCurve() {
        return true;
    }

    @Override
    public double[] reach() {
        return new double[] {speeds[0], speeds[speeds.length - 1]};
    }

    @Override
    public List<Double> speeds() {
        return java.util.Arrays.stream(speeds).boxed().toList();
    }

    @Override
    public double torque(double speed) {
        return RunFigures.between(speeds, i -> torques[i].value(), speed);
    }

    @Override
    public double half(double speed) {
        return RunFigures.between(speeds, i -> torques[i].isUnknown() ? Double.NaN : torques[i].expanded(), speed);
    }

    @Override
    public Optional<DynoRuns.Peak> peak(Dimension dimension) {
        int best = best(dimension);
        boolean isInside = hasPeakInside(dimension);
        return Optional.of(new DynoRuns.Peak(
                figure(best, dimension),
                speeds[best],
                speeds[Math.max(0, best - 1)],
                speeds[Math.min(speeds.length - 1, best + 1)],
                isInside
                        ? "the highest line of the table"
                        : "the table's " + (best == 0 ? "lowest" : "highest") + " speed: it may be higher beyond"));
    }

    @Override
    public boolean hasPeakInside(Dimension dimension) {
        int best = best(dimension);
        return best > 0 && best < speeds.length - 1;
    }

    private int best(Dimension dimension) {
        int best = 0;
        for (int i = 1; i < speeds.length; i++) {
            best = figure(i, dimension).value() > figure(best, dimension).value() ? i : best;
        }
        return best;
    }

    private Measured figure(int i, Dimension dimension) {
        return dimension == Dimension.POWER ? Times.of(torques[i], speeds[i]) : torques[i];
    }
}
