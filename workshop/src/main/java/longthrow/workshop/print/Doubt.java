package longthrow.workshop.print;

import longthrow.core.quantity.BenchUnits;
import longthrow.core.quantity.Dimension;
import longthrow.core.quantity.Figure;
import longthrow.core.quantity.FigurePrinter;
import longthrow.core.quantity.PrintedFigures;

/** A doubt by itself, in both units: {@code ± 0.07 mm (± 0.0028 in)}. */
final class Doubt {
    private Doubt() {}

    /** @param near the figure it belongs to [SI], so that both stand in the same unit */
    static String text(FigurePrinter printer, Dimension dimension, double near, double doubt) {
        PrintedFigures printed = printer.print(BenchUnits.of(dimension, near), near, doubt);
        return alone(printed.first())
                + printed.second().map(other -> " (" + alone(other) + ")").orElse("");
    }

    private static String alone(Figure figure) {
        String number = figure.doubt().isEmpty() ? "0" : figure.doubt();
        return "± " + number + (figure.unit().isEmpty() || figure.unit().startsWith(":") ? "" : " ") + figure.unit();
    }
}
