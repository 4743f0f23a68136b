package longthrow.core.reduce;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import longthrow.core.ComputedRows;
import longthrow.core.ReferenceRows;
import longthrow.core.formula.Expression;
import longthrow.core.formula.Formula;
import longthrow.core.quantity.Fraction;
import longthrow.core.quantity.Units;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Closed forms of the dyno against rows DYN-01 to DYN-12 and DYN-25 to DYN-28; each row names its source. DYN-20 and DYN-21 are splines, tested where those are. */
class ReduceValidationTest {
    private static final ReferenceRows ROWS = ReferenceRows.of("10_dyno_statistics");
    private static final ComputedRows COMPUTED = computed();

    static List<ReferenceRows.Row> rows() {
        return COMPUTED.rows();
    }

    @ParameterizedTest
    @MethodSource("rows")
    void figureIsWhatTheRowSays(ReferenceRows.Row row) {
        COMPUTED.check(row);
    }

    @Test
    void noRowOfTheseCasesIsLeftOut() {
        Set<String> elsewhere = ROWS.all().stream()
                .map(ReferenceRows.Row::id)
                .filter(id -> {
                    int number = Integer.parseInt(id.substring(4, 6));
                    return number >= 13 && number <= 24;
                })
                .collect(Collectors.toSet());
        assertThat(COMPUTED.leftOut(elsewhere)).isEmpty();
    }

    private static Expression number(double value) {
        return Expression.constant(value);
    }

    private static double at(Expression expression) {
        return Formula.of("row", expression).at();
    }

    private static ComputedRows computed() {
        ComputedRows rows = new ComputedRows(ROWS);
        drum(rows, "DYN-01", 4.2, 1200, 180);
        drum(rows, "DYN-02", 0.85, 3600, 900);
        inertia(rows, "DYN-03", 180, 0, 0.2);
        inertia(rows, "DYN-04", 240, 0.22, 0.25);
        int row = 0;
        for (double seconds : new double[] {2, 5, 10}) {
            double speed =
                    at(Rotation.speedAtConstantPower(number(4.2), number(9000), number(rpm(300)), number(seconds)));
            rows.put("DYN-05." + ++row, Units.RPM.fromSi(speed));
        }
        rows.putFrom(
                "DYN-06",
                1,
                at(Rotation.inertiaAtDrum(number(4.2), number(0.0042), number(5.4))),
                at(Rotation.inertiaAtEngine(number(4.2), number(0.0042), number(5.4))));
        weights(rows, "DYN-07", 2, 2, 0);
        weights(rows, "DYN-08", 3, 2, 0);
        weights(rows, "DYN-09", 4, 4, 0);
        weights(rows, "DYN-10", 2, 2, 1);
        weights(rows, "DYN-11", 3, 2, 1);
        weights(rows, "DYN-12", 5, 2, 0);
        brake(rows, "DYN-25", 85, 0.35, 3600);
        brake(rows, "DYN-26", 12.5 * 9.80665, 0.15, 5200); // 12.5 kgf; the row prints its newtons rounded
        fuel(rows, "DYN-27", 4100, 3600, 196.1e-6, 1.35);
        fuel(rows, "DYN-28", 9800, 6500, 211.7e-6, 3.4);
        return rows;
    }

    private static double rpm(double perMinute) {
        return Units.RPM.toSi(perMinute);
    }

    private static void drum(ComputedRows rows, String id, double inertia, double speed, double acceleration) {
        Expression torque = Rotation.torque(number(inertia), number(rpm(acceleration)));
        double power = at(Rotation.power(torque, number(rpm(speed))));
        rows.putFrom(id, 1, power / 1000, at(torque), Units.HORSEPOWER.fromSi(power));
    }

    private static void inertia(ComputedRows rows, String id, double mass, double inner, double outer) {
        Expression inertia = Rotation.inertiaOfTube(number(mass), number(inner), number(outer));
        rows.putFrom(id, 1, at(inertia), at(Rotation.massAtRim(inertia, number(outer))));
    }

    private static void weights(ComputedRows rows, String id, int half, int order, int derivative) {
        SavitzkyGolay filter = SavitzkyGolay.of(half, order, derivative);
        Fraction common = new Fraction(filter.commonDenominator(), java.math.BigInteger.ONE);
        rows.put(id + ".1", common.toDouble());
        for (int i = 0; i <= half; i++) {
            rows.put(id + "." + (i + 2), filter.weight(i).times(common).toDouble());
            Fraction mirrored =
                    derivative % 2 == 0 ? filter.weight(-i) : filter.weight(-i).negated();
            assertThat(mirrored).isEqualTo(filter.weight(i));
        }
    }

    private static void brake(ComputedRows rows, String id, double force, double arm, double speed) {
        Expression torque = Rotation.torqueAtArm(number(force), number(arm));
        rows.putFrom(id, 1, at(torque), at(Rotation.power(torque, number(rpm(speed)))) / 1000);
    }

    private static void fuel(
            ComputedRows rows, String id, double power, double speed, double displacement, double fuelPerHour) {
        Expression flow = number(fuelPerHour / 3600);
        double torque = power / rpm(speed);
        rows.putFrom(
                id,
                1,
                at(FourStrokeFigures.meanEffectivePressure(number(torque), number(displacement))) / 1e5,
                at(FourStrokeFigures.specificConsumption(flow, number(power))) * 3.6e9,
                at(FourStrokeFigures.efficiency(flow, number(power), number(44e6))),
                torque);
    }
}
