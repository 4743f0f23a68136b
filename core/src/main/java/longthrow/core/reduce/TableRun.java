package longthrow.core.reduce;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import longthrow.core.formula.Expression;
import longthrow.core.formula.Formula;
import longthrow.core.measurement.Measured;
import longthrow.core.measurement.Source;

/** A table kept by hand: speed, and torque or power. */
public final class TableRun {
    private static final Formula SCALED =
            Formula.of("figure of a table", Expression.input("figure").times(Expression.input("scale")));
    private static final Source NOT_KNOWN =
            Source.known("table without doubt", Source.Kind.UNKNOWN, "a table that tells no ±", 1);

    private TableRun() {}

    /** What the table's figures are. */
    public enum Figure {
        /** [N m]. */
        TORQUE,
        /** [W]. */
        POWER
    }

    /**
     * A line.
     * @param speed     of the engine [rad/s], above 0
     * @param figure    torque [N m] or power [W]
     * @param plusMinus 95 % half-width of what was read by itself, in the figure's unit; empty where not told
     */
    public record Line(double speed, double figure, OptionalDouble plusMinus) {}

    /**
     * Brings a table to a curve.
     * @param scale 1 with the relative doubt that all lines share
     * @param taken where the torque is
     */
    public static Reduced reduce(
            List<Line> lines, Figure figure, Measured scale, RunCurve.Taken taken, Optional<SpeedGrid> wanted) {
        List<Remark> remarks = new ArrayList<>();
        List<double[]> points = new ArrayList<>();
        boolean allTold = true;
        for (int i = 0; i < lines.size(); i++) {
            Line line = lines.get(i);
            double pm = line.plusMinus().orElse(0);
            if (!(line.speed() > 0) || !Double.isFinite(line.figure()) || !(pm >= 0) || Double.isInfinite(pm)) {
                return Reduced.refused(
                        remarks,
                        String.format(
                                Locale.ROOT,
                                "Line %d of the table: speed %s rad/s, figure %s, ± %s; speed must be above 0, the figure a number, the ± not below 0",
                                i + 1,
                                line.speed(),
                                line.figure(),
                                pm));
            }
            allTold &= line.plusMinus().isPresent();
            double perTorque = figure == Figure.POWER ? line.speed() : 1;
            points.add(new double[] {
                line.speed(), line.figure() / perTorque, pm / Source.NORMAL_95 / perTorque, Double.POSITIVE_INFINITY
            });
        }
        if (!allTold) {
            remarks.add(
                    Remark.warning(
                            "Not every line of the table tells a ±: how sure the curve is is not known, and no change can be judged by it. Write down what the needle wandered by"));
        }
        points.sort(Comparator.comparingDouble(p -> p[0]));
        return PointsRun.reduced(points, taken, new AsItIs(scale, allTold), wanted, remarks, (fit, places) -> {});
    }

    /** The table's torque, scaled by what all lines share. */
    private record AsItIs(Measured scale, boolean doubtTold) implements CurveMaker.Bench {
        @Override
        public Measured torque(double speed, double drawn) {
            Measured figure = doubtTold
                    ? Measured.exact(drawn)
                    : Measured.withContributions(drawn, Map.of(NOT_KNOWN, Math.max(Math.abs(drawn), 1e-9)));
            Map<String, Measured> inputs = Map.of("figure", figure, "scale", scale);
            return Measured.through(SCALED, name -> Objects.requireNonNull(inputs.get(name)));
        }

        @Override
        public Measured power(double speed, double drawn) {
            return torque(speed, drawn * speed);
        }

        @Override
        public double torqueValue(double speed, double drawn) {
            return drawn * scale.value();
        }

        @Override
        public double torquePerUnit(double speed) {
            return scale.value();
        }

        @Override
        public double workingSpeed(double speed) {
            return speed;
        }
    }
}
