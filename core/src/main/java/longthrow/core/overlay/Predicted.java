package longthrow.core.overlay;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import longthrow.core.answer.Shaking;
import longthrow.core.answer.TorqueCurve;
import longthrow.core.answer.TorqueCurve.Row;
import longthrow.core.measurement.Measured;
import longthrow.core.quantity.Dimension;
import longthrow.core.quantity.FigurePrinter;

/** What is predicted, at any speed: as it was reckoned there, or straight between two speeds next to each other. Where none is told none is made up. */
final class Predicted {
    /** Two speeds are one within rounding. */
    static final double SAME = 1e-6;

    /**
     * Share of the highest speed that two speeds may lie apart for a curve to be straight between them: a bent one that falls by a seventh over half its range is missed there by less than half a
     * hundredth. Judgement.
     */
    static final double NEAR = 0.15;

    private static final String TORQUE = "torque";

    private final List<Row> rows;
    private final FigurePrinter printer;
    private final TorqueCurve curve;

    Predicted(TorqueCurve curve, FigurePrinter printer) {
        this.curve = curve;
        this.rows = curve.rows();
        this.printer = printer;
    }

    /** Torque at a speed with its 95 % half-width, NaN where that is not known; or why none is told. */
    record At(double value, double half, String why) {
        private static At none(String why) {
            return new At(Double.NaN, Double.NaN, why);
        }
    }

    boolean isEmpty() {
        return told().isEmpty();
    }

    private static Optional<Measured> torque(Row row) {
        return row.figure(TORQUE).map(Shaking.Figure::figure);
    }

    private List<Row> told() {
        return rows.stream().filter(r -> torque(r).isPresent()).toList();
    }

    /** Whether speeds stand near enough to each other for a curve; else it is told at single speeds. */
    boolean isCurve() {
        double most = rows.get(rows.size() - 1).speed();
        for (int i = 1; i < rows.size(); i++) {
            if (rows.get(i).speed() - rows.get(i - 1).speed() > NEAR * most) {
                return false;
            }
        }
        return rows.size() > 2;
    }

    /** Speeds at which torque is told [rad/s], rising. */
    List<Double> speeds() {
        return told().stream().map(Row::speed).toList();
    }

    At at(double speed) {
        Optional<Row> below = Optional.empty();
        for (Row row : rows) {
            if (Math.abs(row.speed() - speed) <= SAME * speed) {
                return torque(row)
                        .map(t -> new At(t.value(), half(t), ""))
                        .orElseGet(() -> At.none(row.standing().label()));
            }
            if (row.speed() > speed) {
                return below.map(from -> between(from, row, speed)).orElseGet(Predicted::beyond);
            }
            below = Optional.of(row);
        }
        return beyond();
    }

    private static At beyond() {
        return At.none("outside the speeds that were looked at");
    }

    private At between(Row from, Row to, double speed) {
        Optional<Measured> a = torque(from);
        Optional<Measured> b = torque(to);
        if (a.isEmpty() || b.isEmpty()) {
            Row untold = b.isEmpty() ? to : from;
            return At.none(untold.standing().label()
                    + (a.isEmpty() && b.isEmpty()
                            ? ""
                            : " from " + said(untold.speed()) + (b.isEmpty() ? " on" : " down")));
        }
        if (!isCurve()) {
            return At.none("too far from the speeds that were looked at");
        }
        double share = (speed - from.speed()) / (to.speed() - from.speed());
        return new At(
                a.get().value() * (1 - share) + b.get().value() * share,
                half(a.get()) * (1 - share) + half(b.get()) * share,
                "");
    }

    private String said(double speed) {
        return printer.print(Dimension.ROTATIONAL_SPEED, speed, 0).first().text();
    }

    private static double half(Measured figure) {
        return figure.isUnknown() ? Double.NaN : figure.expanded();
    }

    /**
     * The most of a figure.
     * @param isInside whether less is told on both sides; else there may be more where none is told
     */
    record Most(double speed, double value, double half, boolean isInside) {}

    Optional<Most> most(Dimension dimension) {
        String key = dimension == Dimension.POWER ? "power" : TORQUE;
        return curve.most(key).map(row -> {
            List<Row> all = new ArrayList<>(rows);
            int i = all.indexOf(row);
            boolean isInside = i > 0
                    && i < all.size() - 1
                    && all.get(i - 1).figure(key).isPresent()
                    && all.get(i + 1).figure(key).isPresent();
            Measured figure = row.figure(key).orElseThrow().figure();
            return new Most(row.speed(), figure.value(), half(figure), isInside);
        });
    }
}
