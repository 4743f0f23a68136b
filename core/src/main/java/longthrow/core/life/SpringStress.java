package longthrow.core.life;

import longthrow.core.engine.CoilSpring;
import longthrow.core.engine.SpringWire;
import longthrow.core.formula.Expression;

/**
 * Shear stress of a valve spring against setting and against breaking. Budynas and Nisbett, Shigley's Mechanical Engineering Design, sections 10-1, 10-4
 * and 10-9; Zimmerli's fatigue strengths; from memory. Loads [N], stresses [Pa].
 * @param coil the spring
 * @param wire what it is wound from
 */
public record SpringStress(CoilSpring coil, SpringWire wire) {
    private Expression ultimate() {
        return wire.ultimate(coil.wire());
    }

    /** How many times the load a spring as wound bears before it sets. */
    public Expression setFactor(Expression load) {
        return ultimate().times(wire.beforeSet()).dividedBy(coil.shearStress(load));
    }

    /** The same once its maker has set it: the inside of the coil has then yielded for good, and only the direct shear is added, 1 + 0.5 / index. */
    public Expression setFactorPressed(Expression load) {
        Expression direct = Expression.constant(0.5).dividedBy(coil.index()).plus(1);
        Expression stress = coil.shearStress(load).dividedBy(coil.wahlFactor()).times(direct);
        return ultimate().times(wire.afterSet()).dividedBy(stress);
    }

    /**
     * Goodman's factor in shear for a load that swings between seat and open, for good.
     * @param peened shot-peened, as springs for racing are
     */
    public Expression fatigueFactor(Expression seatLoad, Expression openLoad, boolean peened) {
        Expression shearUltimate = ultimate().times(SpringWire.SHEAR_ULTIMATE);
        double swing = peened ? SpringWire.PEENED_SWING : SpringWire.PLAIN_SWING;
        double mean = peened ? SpringWire.PEENED_MEAN : SpringWire.PLAIN_MEAN;
        Expression reversed =
                new MeanStress(Expression.constant(swing), Expression.constant(mean)).reversed(shearUltimate);
        return MeanStress.between(coil.shearStress(seatLoad), coil.shearStress(openLoad))
                .goodman(reversed, shearUltimate);
    }

    /** Lift left before the coils touch [m]. */
    public Expression bindMargin(Expression installedHeight, Expression lift) {
        return installedHeight.minus(lift).minus(coil.solidLength());
    }
}
