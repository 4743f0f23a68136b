package longthrow.core.engine;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import longthrow.core.ComputedRows;
import longthrow.core.ReferenceRows;
import longthrow.core.formula.Expression;
import longthrow.core.formula.Formula;
import longthrow.core.motion.SliderCrank;
import longthrow.core.quantity.ExactLength;
import longthrow.core.quantity.FigurePrinter;
import longthrow.core.quantity.Quantity;
import longthrow.core.quantity.Unit;
import longthrow.core.quantity.UnitSystem;
import longthrow.core.quantity.UnitValidationTest;
import longthrow.core.quantity.Units;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Displacement, clearance stack, ratios, deck height and power through the formulas and units of the product, against the reference rows;
 * each row names its source and carries its inputs.
 */
class DisplacementValidationTest {
    private static final ReferenceRows ROWS = ReferenceRows.of("03_displacement_cr_units");
    private static final ComputedRows COMPUTED = computed();

    static List<ReferenceRows.Row> rows() {
        return COMPUTED.rows();
    }

    @ParameterizedTest
    @MethodSource("rows")
    void geometryIsWhatTheTableSays(ReferenceRows.Row row) {
        COMPUTED.check(row);
    }

    /** The units' own test has the rest of the topic. */
    @Test
    void noRowIsLeftOut() {
        assertThat(ROWS.all()).hasSize(64);
        Set<String> units =
                UnitValidationTest.rows().stream().map(ReferenceRows.Row::id).collect(Collectors.toSet());
        assertThat(COMPUTED.leftOut(units)).isEmpty();
    }

    /** DCU-09.1, common practice: the trade writes 55 mm as 2.165 in. */
    @Test
    void fiftyFiveMillimetresArePrintedAsTheTradeWritesThem() {
        ReferenceRows.Row row = ROWS.row("DCU-09.1");
        FigurePrinter printer = new FigurePrinter(UnitSystem.METRIC_FIRST);
        String inches = printer.print(Quantity.of("55", Units.MILLIMETRE))
                .second()
                .orElseThrow()
                .value();
        row.check(Double.parseDouble(inches));
        assertThat(inches).isEqualTo("2.165");
        assertThat(printer.print(ExactLength.ofMillimetres("55")).line()).isEqualTo("55 mm (2.165 in)");
    }

    private static ComputedRows computed() {
        ComputedRows to = new ComputedRows(ROWS);
        power(to);
        swept(to, "DCU-05", 68, 54);
        swept(to, "DCU-06", 70, 55);
        swept(to, "DCU-07", 70, 58);
        swept(to, "DCU-08", 88, 64);
        stack(to, "DCU-10", new Cylinder(68, 54, 22), new Gasket(69.5, 1.2), 0.15, 0, 0.3);
        stack(to, "DCU-11", new Cylinder(68.5, 54, 20), new Gasket(70, 0.25), -0.1, -1.5, 0.3);
        stack(to, "DCU-12", new Cylinder(70, 58, 24.5), new Gasket(71, 1), 0, 4, 0.25);
        deck(to);
        effective(to);
        to.put("DCU-15.1", cc(Compression.sphericalCap(mm(30), mm(12))));
        return to;
    }

    private static double si(String number, Unit unit) {
        return Quantity.of(number, unit).si();
    }

    private static Expression mm(double millimetres) {
        return Expression.constant(Units.MILLIMETRE.toSi(millimetres));
    }

    private static double at(Expression expression) {
        return Formula.of("reference", expression).at();
    }

    private static double cc(Expression volume) {
        return Units.CUBIC_CENTIMETRE.fromSi(at(volume));
    }

    private static double power(double torque, double speed) {
        return at(Power.power(Expression.constant(torque), Expression.constant(speed)));
    }

    private static void power(ComputedRows to) {
        double rpm = si("1", Units.RPM);
        to.putFrom(
                "DCU-04",
                1,
                1 / Units.HORSEPOWER.fromSi(power(si("1", Units.POUND_FOOT), rpm)),
                Units.HORSEPOWER.fromSi(power(si("10", Units.POUND_FOOT), si("5252", Units.RPM))),
                Units.KILOWATT.fromSi(power(si("12.4", Units.NEWTON_METRE), si("3600", Units.RPM))),
                at(Power.torque(Expression.constant(si("1", Units.KILOWATT)), Expression.constant(rpm))));
    }

    private static void swept(ComputedRows to, String caseId, double bore, double stroke) {
        Expression volume = Compression.sweptVolume(mm(bore), mm(stroke));
        to.putFrom(caseId, 1, cc(volume), Units.CUBIC_INCH.fromSi(at(volume)));
    }

    /** Bore and stroke [mm], chamber [cm3]. */
    private record Cylinder(double bore, double stroke, double chamber) {}

    /** Bore and crushed thickness [mm]. */
    private record Gasket(double bore, double thickness) {}

    private static Expression ccm(double volume) {
        return Expression.constant(Units.CUBIC_CENTIMETRE.toSi(volume));
    }

    private static void stack(
            ComputedRows to, String caseId, Cylinder cylinder, Gasket gasket, double below, double dish, double small) {
        Expression swept = Compression.sweptVolume(mm(cylinder.bore), mm(cylinder.stroke));
        Expression hole = Compression.gasketVolume(mm(gasket.bore), mm(gasket.thickness));
        Expression deck = Compression.deckVolume(mm(cylinder.bore), mm(below));
        Expression clearance = Compression.clearanceVolume(ccm(cylinder.chamber), hole, deck, ccm(dish), ccm(small));
        Expression ratio = Compression.ratio(swept, clearance);
        to.putFrom(caseId, 1, cc(swept), cc(hole), cc(deck), cc(clearance), at(ratio));
        double back = cc(Compression.clearanceForRatio(swept, ratio));
        assertThat(back).isCloseTo(cc(clearance), within(1e-11));
    }

    private static void deck(ComputedRows to) {
        Expression below = Stack.deckClearance(mm(138.2), mm(54), mm(84), mm(27));
        to.putFrom(
                "DCU-13",
                1,
                Units.MILLIMETRE.fromSi(at(below)),
                Units.MILLIMETRE.fromSi(at(Stack.squish(below, mm(1.2)))));
    }

    private static void effective(ComputedRows to) {
        SliderCrank crank = SliderCrank.inLine(mm(27), mm(84));
        Expression closes = Expression.constant(si("225", Units.DEGREE));
        Expression trapped = crank.volumeSwept(mm(68), closes);
        to.putFrom("DCU-14", 1, cc(trapped), at(Compression.effectiveRatio(trapped, ccm(26))));
    }
}
