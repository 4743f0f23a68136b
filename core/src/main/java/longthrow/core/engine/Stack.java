package longthrow.core.engine;

import longthrow.core.formula.Expression;

/**
 * The sum behind most questions: crank axis to deck = half stroke + rod + compression height + deck clearance.
 * Deck clearance is positive with the piston below the deck. All lengths [m].
 */
public final class Stack {
    private Stack() {}

    /** Crank axis to deck face that these parts add up to. */
    public static Expression deckHeight(
            Expression stroke, Expression rodLength, Expression compressionHeight, Expression deckClearance) {
        return Expression.sum(stroke.half(), rodLength, compressionHeight, deckClearance);
    }

    /** Crown rim to deck at top dead centre. Negative when proud. */
    public static Expression deckClearance(
            Expression deckHeight, Expression stroke, Expression rodLength, Expression compressionHeight) {
        return deckHeight.minus(stroke.half()).minus(rodLength).minus(compressionHeight);
    }

    /** The rod that leaves this deck clearance. */
    public static Expression rodLength(
            Expression deckHeight, Expression stroke, Expression compressionHeight, Expression deckClearance) {
        return deckHeight.minus(stroke.half()).minus(compressionHeight).minus(deckClearance);
    }

    /** Piston rim to head at top dead centre, cold, with the crushed gasket. */
    public static Expression squish(Expression deckClearance, Expression gasketThickness) {
        return deckClearance.plus(gasketThickness);
    }

    /** Pin centre to crown from pin top to crown: half a pin more. */
    public static Expression compressionHeightFromPinTop(Expression pinTopToCrown, Expression pinDiameter) {
        return pinTopToCrown.plus(pinDiameter.half());
    }

    /** Pin top to crown: half a pin less than the compression height. */
    public static Expression pinTopToCrown(Expression compressionHeight, Expression pinDiameter) {
        return compressionHeight.minus(pinDiameter.half());
    }

    /** Bottom of the pin bore to crown: half a bore more than the compression height. */
    public static Expression pinBottomToCrown(Expression compressionHeight, Expression pinBore) {
        return compressionHeight.plus(pinBore.half());
    }

    /** Nearest edges of the two rod bores: half of each bore less than centre to centre. */
    public static Expression rodInsideEdges(Expression rodLength, Expression bigEndBore, Expression smallEndBore) {
        return rodLength.minus(bigEndBore.half()).minus(smallEndBore.half());
    }

    /**
     * Skirt to counterweight at bottom dead centre: the pin stands rod less throw above the crank axis.
     * Not valid with a pin or bore offset of more than a few per cent of the rod.
     */
    public static Expression skirtToCounterweight(
            Expression rodLength, Expression stroke, Expression skirtBelowPin, Expression counterweightRadius) {
        return rodLength.minus(stroke.half()).minus(skirtBelowPin).minus(counterweightRadius);
    }

    /** Metal between the oil-ring groove and the pin bore; negative where the bore cuts the groove open. */
    public static Expression grooveToPin(Expression compressionHeight, Expression pinBore, Expression grooveToCrown) {
        return compressionHeight.minus(pinBore.half()).minus(grooveToCrown);
    }

    /** Upper edge of the top ring below the deck face at top dead centre; negative where it leaves the bore. */
    public static Expression ringBelowDeck(Expression deckClearance, Expression topLandHeight) {
        return deckClearance.plus(topLandHeight);
    }

    /** Lower end of the skirt below the lower end of the sleeve at bottom dead centre. */
    public static Expression skirtOutOfSleeve(
            Expression stroke,
            Expression deckClearance,
            Expression compressionHeight,
            Expression skirtBelowPin,
            Expression sleeveLength) {
        return Expression.sum(stroke, deckClearance, compressionHeight, skirtBelowPin)
                .minus(sleeveLength);
    }

    /** Rod length over stroke [1]. */
    public static Expression rodRatio(Expression rodLength, Expression stroke) {
        return rodLength.dividedBy(stroke);
    }
}
