package longthrow.core.fit;

import longthrow.core.answer.Sureness;
import org.jspecify.annotations.Nullable;

/**
 * One combination held against its limits, step by step: crank, piston and rod first, the gasket after. Fields are those of the last step; reused, so that
 * millions of combinations cost no memory. Belongs to one thread.
 */
final class StackFit {
    private static final double METRE = 1e-12;
    private static final double QUARTER_PI = Math.PI / 4;
    private static final long MILLION = 1_000_000L;

    private final StackColumns c;
    private final StackLimits limits;
    private final StackVolumes volumes;
    private final long deckHeight;
    private final long deckHeightHalf;
    private final double deckHeightVariance;

    /** What keeps it apart; null while nothing does. */
    @Nullable
    Obstacle obstacle;

    Sureness sureness = Sureness.SURE;
    int unknowns;
    int unsaid;
    /** Whether every size as stated keeps its window, tolerances aside. */
    boolean bySizes = true;

    int cuts;
    long price;
    long deck2;
    long squish2;
    double ratio;

    // of crank, piston and rod, before the gasket
    private int crank;
    private int piston;
    private int rod;
    private Sureness stackSureness = Sureness.SURE;
    private int stackUnknowns;
    private int stackUnsaid;
    private boolean stackBySizes = true;
    private long stackPrice;
    private long half2;
    private double variance2;

    StackFit(StackColumns columns, StackLimits limits) {
        this.c = columns;
        this.limits = limits;
        this.volumes = new StackVolumes(columns, limits);
        deckHeight = limits.deckHeight().value[0];
        deckHeightHalf = limits.deckHeight().half[0];
        deckHeightVariance = square(limits.deckHeight().uncertainty[0]);
    }

    /** One more size that is asked for and not known. */
    private void notSaid() {
        unknowns++;
        unsaid++;
    }

    private static double square(double x) {
        return x * x;
    }

    /** Deck clearance in half picometres. */
    static long deck2(long deckHeight, long stroke, long length, long height) {
        return 2 * (deckHeight - length - height) - stroke;
    }

    /** Takes crank, piston and rod together; false when something keeps them apart, see {@link #obstacle}. */
    boolean stack(int i, int j, int k) {
        crank = i;
        piston = j;
        rod = k;
        obstacle = null;
        Pairing one = c.crankRod[c.cranks.each().group()[i]][c.rods.each().group()[k]];
        Pairing two = c.rodPiston[c.rods.each().group()[k]][c.pistons.each().group()[j]];
        if (!one.fits() || !two.fits()) {
            obstacle = one.fits() ? two.obstacle() : one.obstacle();
            return false;
        }
        long s = c.cranks.stroke().value[i];
        long h = c.pistons.height().value[j];
        long l = c.rods.length().value[k];
        if (s == Sizes.NOT_SAID
                || h == Sizes.NOT_SAID
                || l == Sizes.NOT_SAID
                || !c.pistons.bore().isKnown(j)) {
            obstacle = Obstacle.NOT_SAID;
            return false;
        }
        if (2 * l <= s) {
            obstacle = Obstacle.ROD_RATIO; // the crankshaft could not turn
            return false;
        }
        sureness = Sureness.worse(one.sureness(), two.sureness());
        unknowns = one.unknowns()
                + two.unknowns()
                + c.cranks.each().unknowns()[i]
                + c.pistons.each().unknowns()[j]
                + c.rods.each().unknowns()[k];
        unsaid = one.unknowns() + two.unknowns();
        bySizes = true;
        cuts = one.cuts() + two.cuts();
        stackPrice = one.price()
                + two.price()
                + c.cranks.each().price()[i]
                + c.pistons.each().price()[j]
                + c.rods.each().price()[k];
        if (limits.deckHeight().isVague(0)
                || c.cranks.stroke().isVague(i)
                || c.pistons.height().isVague(j)
                || c.rods.length().isVague(k)) {
            sureness = Sureness.worse(sureness, Sureness.SELECTION);
        }
        long sHalf = c.cranks.stroke().half[i];
        long hHalf = c.pistons.height().half[j];
        long lHalf = c.rods.length().half[k];
        double sVar = square(c.cranks.stroke().uncertainty[i]);
        double hVar = square(c.pistons.height().uncertainty[j]);
        double lVar = square(c.rods.length().uncertainty[k]);
        deck2 = deck2(deckHeight, s, l, h);
        half2 = 2 * (deckHeightHalf + lHalf + hHalf) + sHalf;
        variance2 = 4 * (deckHeightVariance + lVar + hVar) + sVar;
        volumes.of(i, j, k, deck2, half2, variance2);
        if (limits.rodRatioMillionths() > 0
                && !keeps(
                        l * MILLION - limits.rodRatioMillionths() * s,
                        lHalf * MILLION + limits.rodRatioMillionths() * sHalf,
                        square((double) MILLION) * lVar + square((double) limits.rodRatioMillionths()) * sVar,
                        0,
                        Long.MAX_VALUE >> 1,
                        Obstacle.ROD_RATIO,
                        Obstacle.ROD_RATIO)) {
            return false;
        }
        if (!swept(i, j) || !speed(i, j, k)) {
            return false;
        }
        if (!keeps(deck2, half2, variance2, limits.deck(), Obstacle.DECK_PROUD, Obstacle.DECK_LOW)
                || !ring(j)
                || !skirt(i, j, s, l, sHalf, lHalf, sVar, lVar)
                || !sleeve(j, s, l, sHalf, lHalf, sVar, lVar)) {
            return false;
        }
        stackSureness = sureness;
        stackUnknowns = unknowns;
        stackUnsaid = unsaid;
        stackBySizes = bySizes;
        return true;
    }

    /** Bore area times stroke: its ends lie at the corners of both. */
    private boolean swept(int i, int j) {
        if (limits.sweptLeast() <= 0 && limits.sweptMost() == Double.POSITIVE_INFINITY) {
            return true;
        }
        Sizes stroke = c.cranks.stroke();
        Sizes bore = c.pistons.bore();
        double s = METRE * stroke.value[i];
        double b = METRE * bore.value[j];
        double volume = QUARTER_PI * b * b * s;
        double low = StackVolumes.corner(b, -METRE * bore.half[j], s, -METRE * stroke.half[i]);
        double high = StackVolumes.corner(b, METRE * bore.half[j], s, METRE * stroke.half[i]);
        double variance = square(QUARTER_PI * b * b * METRE * stroke.uncertainty[i])
                + square(2 * QUARTER_PI * b * s * METRE * bore.uncertainty[j]);
        return inside(
                volume, low, high, variance, limits.sweptLeast(), limits.sweptMost(), Obstacle.SWEPT, Obstacle.SWEPT);
    }

    /** r w2 (1 + r / l) against what the ring bears; more with a longer throw, less with a longer rod and a thinner ring. */
    private boolean speed(int i, int j, int k) {
        if (Double.isNaN(limits.wantedSpeed())) {
            return true;
        }
        Sizes ring = c.pistons.topRing();
        if (!ring.isKnown(j)) {
            notSaid();
            return true;
        }
        double low = volumes.ringLoad(i, j, k, -1);
        double high = volumes.ringLoad(i, j, k, 1);
        if (high <= limits.ringFlutter()) {
            return true;
        }
        if (low > limits.ringFlutter()) {
            obstacle = Obstacle.SPEED;
            return false;
        }
        // the box is narrow against the limit, which is known to two digits: no more is made of it
        sureness = Sureness.worse(sureness, Sureness.SELECTION);
        return true;
    }

    private boolean inside(
            double value,
            double low,
            double high,
            double variance,
            double least,
            double most,
            Obstacle below,
            Obstacle above) {
        if (low >= least && high <= most) {
            return true;
        }
        if (high < least || low > most) {
            obstacle = high < least ? below : above;
            return false;
        }
        bySizes &= value >= least && value <= most;
        sureness = Sureness.worse(sureness, Boxes.byProbability(value - least, most - value, Math.sqrt(variance)));
        return true;
    }

    private boolean ring(int j) {
        if (limits.ringBelowDeck().isAny()) {
            return true;
        }
        Sizes land = c.pistons.topLand();
        if (!land.isKnown(j)) {
            notSaid();
            return true;
        }
        return keeps(
                deck2 + 2 * land.value[j],
                half2 + 2 * land.half[j],
                variance2 + 4 * square(land.uncertainty[j]),
                limits.ringBelowDeck(),
                Obstacle.RING_OUT,
                Obstacle.RING_OUT);
    }

    /** Rod less throw less skirt less counterweight. */
    private boolean skirt(int i, int j, long s, long l, long sHalf, long lHalf, double sVar, double lVar) {
        if (limits.skirtGap().isAny()) {
            return true;
        }
        Sizes skirt = c.pistons.skirt();
        Sizes weight = c.cranks.counterweight();
        if (!skirt.isKnown(j) || !weight.isKnown(i)) {
            notSaid();
            return true;
        }
        return keeps(
                2 * (l - skirt.value[j] - weight.value[i]) - s,
                2 * (lHalf + skirt.half[j] + weight.half[i]) + sHalf,
                4 * (lVar + square(skirt.uncertainty[j]) + square(weight.uncertainty[i])) + sVar,
                limits.skirtGap(),
                Obstacle.SKIRT_HITS,
                Obstacle.SKIRT_HITS);
    }

    /** Stroke, deck clearance, compression height and skirt less the sleeve: height and deck clearance fall out of the sum, so neither counts twice. */
    private boolean sleeve(int j, long s, long l, long sHalf, long lHalf, double sVar, double lVar) {
        if (limits.skirtOut().isAny()) {
            return true;
        }
        Sizes skirt = c.pistons.skirt();
        if (!skirt.isKnown(j) || !limits.sleeve().isKnown(0)) {
            notSaid();
            return true;
        }
        return keeps(
                2 * (deckHeight - l + skirt.value[j] - limits.sleeve().value[0]) + s,
                2 * (deckHeightHalf + lHalf + skirt.half[j] + limits.sleeve().half[0]) + sHalf,
                4 * (deckHeightVariance + lVar + square(skirt.uncertainty[j]) + square(limits.sleeve().uncertainty[0]))
                        + sVar,
                limits.skirtOut(),
                Obstacle.SKIRT_OUT,
                Obstacle.SKIRT_OUT);
    }

    private boolean keeps(long value2, long box2, double var2, Window window, Obstacle low, Obstacle high) {
        return window.isAny() || keeps(value2, box2, var2, 2 * window.least(), 2 * window.most(), low, high);
    }

    private boolean keeps(long value, long box, double variance, long least, long most, Obstacle low, Obstacle high) {
        if (value - box >= least && value + box <= most) {
            return true;
        }
        if (value + box < least || value - box > most) {
            obstacle = value + box < least ? low : high;
            return false;
        }
        bySizes &= value >= least && value <= most;
        sureness = Sureness.worse(
                sureness, Boxes.byProbability((double) (value - least), (double) (most - value), Math.sqrt(variance)));
        return true;
    }

    /** The gasket on top of the last {@link #stack}; false when something keeps it apart. */
    boolean gasket(int g) {
        obstacle = null;
        sureness = stackSureness;
        unknowns = stackUnknowns + c.gaskets.each().unknowns()[g];
        unsaid = stackUnsaid;
        bySizes = stackBySizes;
        price = stackPrice + c.gaskets.each().price()[g];
        Sizes thickness = c.gaskets.thickness();
        if (!thickness.isKnown(g)) {
            obstacle = Obstacle.NOT_SAID;
            return false;
        }
        if (thickness.isVague(g)) {
            sureness = Sureness.worse(sureness, Sureness.SELECTION);
        }
        squish2 = deck2 + 2 * thickness.value[g];
        return hole(g)
                && keeps(
                        squish2,
                        half2 + 2 * thickness.half[g],
                        variance2 + 4 * square(thickness.uncertainty[g]),
                        limits.squish(),
                        Obstacle.SQUISH_TIGHT,
                        Obstacle.SQUISH_WIDE)
                && ratio(g);
    }

    private boolean hole(int g) {
        if (limits.gasketOverBore().isAny()) {
            return true;
        }
        Sizes hole = c.gaskets.bore();
        Sizes bore = c.pistons.bore();
        if (!hole.isKnown(g)) {
            notSaid();
            return true;
        }
        return keeps(
                2 * (hole.value[g] - bore.value[piston]),
                2 * (hole.half[g] + bore.half[piston]),
                4 * (square(hole.uncertainty[g]) + square(bore.uncertainty[piston])),
                limits.gasketOverBore(),
                Obstacle.GASKET_HOLE,
                Obstacle.GASKET_HOLE);
    }

    /**
     * Static ratio. It rises with stroke, rod and compression height and falls with deck height, chamber, dish and gasket, everywhere; with the bore it
     * rises while chamber, dish and gasket hold more than nothing. So its largest and smallest over the box lie at two corners of it, exactly.
     */
    private boolean ratio(int g) {
        double crown = c.pistons.crown().value[piston];
        if (Double.isNaN(crown)
                || Double.isNaN(limits.chamber())
                || !c.gaskets.bore().isKnown(g)) {
            ratio = Double.NaN;
            if (isRatioLimited()) {
                notSaid();
            }
            return true;
        }
        ratio = volumes.ratioAt(g, 0);
        if (!isRatioLimited()) {
            return true;
        }
        boolean box = volumes.hasBox(g);
        double low = box ? volumes.ratioAt(g, -1) : ratio;
        double high = box ? volumes.ratioAt(g, 1) : ratio;
        boolean byRatio = inside(
                ratio,
                low,
                high,
                box ? volumes.ratioVariance(g) : 0,
                limits.ratioLeast(),
                limits.ratioMost(),
                Obstacle.RATIO_LOW,
                Obstacle.RATIO_HIGH);
        return byRatio && room(g);
    }

    private boolean isRatioLimited() {
        return limits.ratioLeast() > 1 || limits.ratioMost() < Double.POSITIVE_INFINITY || limits.clearanceLeast() > 0;
    }

    /** Clearance volume by rule: least with everything that takes room at its largest. */
    private boolean room(int g) {
        if (limits.clearanceLeast() <= 0) {
            return true;
        }
        double volume = volumes.clearanceAt(g, 0);
        return inside(
                volume,
                volumes.clearanceAt(g, 1),
                volumes.clearanceAt(g, -1),
                volumes.clearanceVariance(g),
                limits.clearanceLeast(),
                Double.POSITIVE_INFINITY,
                Obstacle.ROOM_SMALL,
                Obstacle.ROOM_SMALL);
    }

    Combination combination(int g) {
        return new Combination(
                crank, piston, rod, g, sureness, bySizes, unknowns, unsaid, cuts, price, deck2, squish2, ratio);
    }

    /** Distance of the squish from the aim in half picometres. */
    long squishError2() {
        return Math.abs(squish2 - 2 * limits.aimedSquish());
    }
}
