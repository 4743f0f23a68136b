package longthrow.core.fit;

/**
 * The engine the parts go into, and what must hold of the stack.
 * @param deckHeight      crank axis to deck [pm], with its box
 * @param sleeve          deck to lower end of the sleeve [pm]
 * @param chamber         volume in the head [m3]; NaN not known
 * @param chamberHalf     half-width of it [m3]
 * @param chamberUncertainty standard [m3]
 * @param deck            deck clearance
 * @param squish          deck clearance and gasket
 * @param ratioLeast      static ratio; 1 for none
 * @param ratioMost       infinity for none
 * @param rodRatioMillionths least rod length over stroke, in millionths; 0 for none
 * @param gasketOverBore  hole less bore
 * @param skirtGap        skirt to counterweight at bottom dead centre
 * @param ringBelowDeck   top ring below the deck at top dead centre
 * @param skirtOut        skirt below the sleeve at bottom dead centre
 * @param sweptLeast      swept volume [m3]; 0 for none
 * @param sweptMost       infinity for none
 * @param clearanceLeast  clearance volume [m3]; 0 for none
 * @param wantedSpeed     at which the top ring must not flutter [rad/s]; NaN for not said
 * @param ringFlutter     acceleration times ring thickness it bears [m2/s2]
 * @param aimedSquish     to rank by [pm]; {@link Sizes#NOT_SAID} for none
 */
public record StackLimits(
        Sizes deckHeight,
        Sizes sleeve,
        double chamber,
        double chamberHalf,
        double chamberUncertainty,
        Window deck,
        Window squish,
        double ratioLeast,
        double ratioMost,
        long rodRatioMillionths,
        Window gasketOverBore,
        Window skirtGap,
        Window ringBelowDeck,
        Window skirtOut,
        double sweptLeast,
        double sweptMost,
        double clearanceLeast,
        double wantedSpeed,
        double ringFlutter,
        long aimedSquish) {}
