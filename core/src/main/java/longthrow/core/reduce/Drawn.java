package longthrow.core.reduce;

/** A curve at places, with how sure it is at each and between two of them. */
interface Drawn {
    double value(int place);

    double standardUncertainty(int place);

    /** Degrees of freedom of the doubt at a place. */
    double freedom(int place);

    /** Standard uncertainty of a value times a factor less another times another factor. */
    double ofDifference(int place, double factor, int other, double otherFactor);

    /** How far to each side points count; 0 where nothing is smoothed. */
    double width();

    /** How many places of the curve are independent looks at it, about. */
    double looks();
}
