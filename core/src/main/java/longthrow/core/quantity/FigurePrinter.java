package longthrow.core.quantity;

import java.math.BigDecimal;
import java.util.Optional;
import java.util.function.Function;

/**
 * Prints a value for both benches, the owner's choice first, with no more digits than its doubt supports:
 * {@code 1.37 ± 0.07 mm (0.0539 ± 0.0028 in)}. {@link Digits} has the rule. Printing knows no locale: a point is the
 * decimal mark everywhere.
 */
public final class FigurePrinter {
    private final UnitSystem order;

    public FigurePrinter(UnitSystem order) {
        this.order = order;
    }

    /**
     * A computed value in its usual units.
     *
     * @param si value [coherent SI], finite
     * @param expandedDoubt half width of the 95 % interval [coherent SI], finite, zero for an exact value
     */
    public PrintedFigures print(Dimension dimension, double si, double expandedDoubt) {
        return print(BenchUnits.of(dimension, si), si, expandedDoubt);
    }

    /** As {@link #print(Dimension, double, double)}, in units of the caller's choice. */
    public PrintedFigures print(BenchUnits units, double si, double expandedDoubt) {
        requireFinite("value", si);
        requireFinite("doubt", expandedDoubt);
        if (expandedDoubt < 0) {
            throw new IllegalArgumentException("doubt is " + expandedDoubt + "; it must be zero or more");
        }
        if (isCertainCount(units, si, expandedDoubt)) {
            return inBoth(
                    units, unit -> new Figure(BigDecimal.valueOf(Math.round(si)).toPlainString(), "", unit.symbol()));
        }
        if (expandedDoubt == 0 && !units.areOne()) {
            return printExact(units, si);
        }
        return inBoth(
                units,
                unit -> Digits.withDoubt(
                        unit.decimalFromSi(si), unit.ofDifference().decimalFromSi(expandedDoubt), unit));
    }

    /** A count is a whole number: where its doubt reaches one of them only, that is what was counted, and no ± is left to say. */
    private static boolean isCertainCount(BenchUnits units, double si, double expandedDoubt) {
        return units.metric().dimension() == Dimension.COUNT
                && expandedDoubt < 0.5
                && Math.abs(si - Math.rint(si)) <= expandedDoubt;
    }

    /** In the unit that needs fewer digits as it is, in the other as if it had been stated in the first. */
    private PrintedFigures printExact(BenchUnits units, double si) {
        BigDecimal metric = Digits.exactDigits(units.metric().decimalFromSi(si));
        BigDecimal inchTrade = Digits.exactDigits(units.inchTrade().decimalFromSi(si));
        boolean isMetric = metric.precision() <= inchTrade.precision();
        Unit own = isMetric ? units.metric() : units.inchTrade();
        double place =
                own.ofDifference().toSi((isMetric ? metric : inchTrade).ulp().doubleValue());
        return inBoth(
                units,
                unit -> unit == own
                        ? Digits.exact(unit.decimalFromSi(si), unit)
                        : Digits.converted(
                                unit.decimalFromSi(si), unit.ofDifference().fromSi(place), unit));
    }

    /** A computed value whose doubt has not been established, which is said. */
    public PrintedFigures printDoubtUnknown(Dimension dimension, double si) {
        return printDoubtUnknown(BenchUnits.of(dimension, si), si);
    }

    /** As {@link #printDoubtUnknown(Dimension, double)}, in units of the caller's choice. */
    public PrintedFigures printDoubtUnknown(BenchUnits units, double si) {
        requireFinite("value", si);
        return inBoth(units, unit -> Digits.doubtUnknown(unit.decimalFromSi(si), unit));
    }

    /** A length that is exact by statement. */
    public PrintedFigures print(ExactLength length) {
        return print(Quantity.of(length.toMillimetresExact(), Units.MILLIMETRE));
    }

    /** What was stated: with its doubt if it has one, else as it was written. */
    public PrintedFigures print(Stated stated) {
        Quantity value = stated.value();
        if (stated.expandedDoubt().isEmpty()) {
            return print(value);
        }
        Quantity doubt = stated.expandedDoubt().get();
        return inBoth(unitsFor(value), unit -> {
            BigDecimal number = decimalIn(unit, value);
            BigDecimal itsDoubt = decimalIn(unit.ofDifference(), doubt);
            return doubt.unit() == unit.ofDifference()
                    ? Digits.withDoubt(number, itsDoubt, Digits.writtenPlaces(doubt), unit)
                    : Digits.withDoubt(number, itsDoubt, unit);
        });
    }

    /**
     * A quantity stated without a doubt: as it was written in its own unit; in the other exactly if that is short,
     * else no coarser than half the last place that was written, and to four digits as far as the fourth decimal place: 55 mm (2.165 in),
     * 0.018 mm (0.00071 in).
     */
    public PrintedFigures print(Quantity stated) {
        return inBoth(
                unitsFor(stated),
                unit -> unit == stated.unit()
                        ? new Figure(Digits.asWritten(stated), "", unit.symbol())
                        : Digits.converted(decimalIn(unit, stated), lastPlaceIn(unit, stated), unit));
    }

    /** The usual ones, but a ratio stays as it was stated, in per cent or to one. */
    private static BenchUnits unitsFor(Quantity stated) {
        return stated.dimension().takesBareNumbers()
                ? BenchUnits.alone(stated.unit())
                : BenchUnits.of(stated.dimension(), stated.si());
    }

    private static BigDecimal decimalIn(Unit unit, Quantity quantity) {
        return unit.piPower() == quantity.unit().piPower()
                ? quantity.valueIn(unit).toDecimal()
                : unit.decimalFromSi(quantity.si());
    }

    /** Worth of the last written place in another unit; zero for what was written as a fraction. */
    private static double lastPlaceIn(Unit unit, Quantity quantity) {
        double place = Digits.lastWrittenPlace(quantity);
        return unit.ofDifference().fromSi(quantity.unit().ofDifference().toSi(place));
    }

    private PrintedFigures inBoth(BenchUnits units, Function<Unit, Figure> figure) {
        Unit first = order == UnitSystem.METRIC_FIRST ? units.metric() : units.inchTrade();
        Unit second = order == UnitSystem.METRIC_FIRST ? units.inchTrade() : units.metric();
        return new PrintedFigures(
                figure.apply(first), units.areOne() ? Optional.empty() : Optional.of(figure.apply(second)));
    }

    private static void requireFinite(String what, double number) {
        if (!Double.isFinite(number)) {
            throw new IllegalArgumentException(what + " is " + number + "; only a finite number can be printed, an "
                    + "unknown is printed as unknown");
        }
    }
}
