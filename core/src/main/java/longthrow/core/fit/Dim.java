package longthrow.core.fit;

import longthrow.core.catalogue.CataloguePart;
import longthrow.core.measurement.Measured;
import longthrow.core.measurement.Source;
import longthrow.core.quantity.ExactLength;
import longthrow.core.quantity.Quantity;
import org.jspecify.annotations.Nullable;

/**
 * A figure with the box it may lie in [SI].
 * @param value       nominal
 * @param half        half-width of the box: the tolerance of a sheet, the 95 % doubt of a reading
 * @param uncertainty standard
 * @param isVague     whether the sheet gives no tolerance; then half and uncertainty are 0
 */
record Dim(double value, double half, double uncertainty, boolean isVague) {
    private static final double PICOMETRE = 1e-12;
    /** Standard uncertainty of a rectangle over its half-width, JCGM 100:2008 4.3.7. */
    private static final double RECTANGLE = 1 / Math.sqrt(3);

    static Dim of(CataloguePart.Figure figure) {
        Quantity tolerance = figure.tolerance();
        double half = tolerance == null ? 0 : Math.abs(tolerance.si());
        double standard = figure.isLimit() ? half * RECTANGLE : half / Source.NORMAL_95;
        return new Dim(figure.value().si(), half, standard, tolerance == null);
    }

    static Dim of(Measured figure) {
        return new Dim(figure.value(), figure.expanded(), figure.standardUncertainty(), false);
    }

    /** Moved by an amount that is held to a tolerance. */
    Dim moved(double by, double tolerance) {
        return new Dim(value + by, half + tolerance, Math.hypot(uncertainty, tolerance * RECTANGLE), isVague);
    }

    /**
     * Moved by what a shop takes off or puts on; where it says no tolerance, how far it may lie is not known.
     * @param share of the amount by which this figure moves
     * @param held  half-width to which the amount is held
     */
    Dim machined(double amount, double share, @Nullable ExactLength held) {
        return held == null
                ? new Dim(value + share * amount, half, uncertainty, true)
                : moved(share * amount, Math.abs(share) * held.metres());
    }

    /** Made to a size: how well the size before was known counts no more, only how the shop holds the new one. */
    static Dim made(double size, @Nullable ExactLength held) {
        return held == null
                ? new Dim(size, 0, 0, true)
                : new Dim(size, held.metres(), held.metres() * RECTANGLE, false);
    }

    /** Sum of this and a share of another. */
    Dim plus(double share, Dim other) {
        return new Dim(
                value + share * other.value,
                half + Math.abs(share) * other.half,
                Math.hypot(uncertainty, share * other.uncertainty),
                isVague || other.isVague);
    }

    /** Whole picometres; figures written as decimals of millimetres or inches come out exactly. */
    long picometres() {
        return Math.round(value / PICOMETRE);
    }

    long halfPicometres() {
        return Math.round(half / PICOMETRE);
    }

    double uncertaintyPicometres() {
        return uncertainty / PICOMETRE;
    }
}
