package longthrow.workshop.web;

import longthrow.core.measurement.Measured;
import longthrow.core.quantity.Dimension;
import longthrow.core.quantity.Figure;
import longthrow.core.quantity.FigurePrinter;
import longthrow.core.quantity.PrintedFigures;

/** A figure in the unit of the owner's choice, and in that of the other bench; that is empty where both write the same. */
public record BothUnits(String first, String second) {
    /** A figure with its doubt, or with the word that it is not known. */
    public static BothUnits of(FigurePrinter printer, Dimension dimension, Measured figure) {
        PrintedFigures printed = figure.isUnknown()
                ? printer.printDoubtUnknown(dimension, figure.value())
                : printer.print(dimension, figure.value(), figure.expanded());
        return new BothUnits(
                printed.first().text(), printed.second().map(Figure::text).orElse(""));
    }
}
