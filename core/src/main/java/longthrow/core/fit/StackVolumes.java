package longthrow.core.fit;

/**
 * Volumes, ratio and ring load of one combination, in the middle of its box of tolerances and at the corners where they are least and most. All are
 * monotone in every input, so their ends over the box lie at two corners of it, exactly, and an input that stands in two terms is never counted twice.
 * The sums are those of {@link longthrow.core.engine.Compression}, written for millions of combinations; a test holds the two together.
 */
final class StackVolumes {
    private static final double METRE = 1e-12;
    private static final double QUARTER_PI = Math.PI / 4;

    private final StackColumns c;
    private final StackLimits limits;
    private final Sizes deckHeight;
    private int crank;
    private int piston;
    private int rod;
    private long deck2;
    private long half2;
    private double variance2;

    StackVolumes(StackColumns columns, StackLimits limits) {
        this.c = columns;
        this.limits = limits;
        this.deckHeight = limits.deckHeight();
    }

    /**
     * The combination that is meant from now on.
     * @param deckHalf     deck clearance in half picometres
     * @param boxHalf      half-width of its box, in half picometres
     * @param varianceHalf in half picometres squared
     */
    void of(int i, int j, int k, long deckHalf, long boxHalf, double varianceHalf) {
        crank = i;
        piston = j;
        rod = k;
        deck2 = deckHalf;
        half2 = boxHalf;
        variance2 = varianceHalf;
    }

    private static double square(double x) {
        return x * x;
    }

    /** Swept volume at a corner. */
    static double corner(double bore, double boreHalf, double stroke, double strokeHalf) {
        return QUARTER_PI * square(bore + boreHalf) * (stroke + strokeHalf);
    }

    /** Acceleration at top dead centre times ring thickness [m2/s2]; +1 is the corner where it is most. */
    double ringLoad(int i, int j, int k, int corner) {
        double r = METRE * (c.cranks.stroke().value[i] + corner * c.cranks.stroke().half[i]) / 2;
        double l = METRE * (c.rods.length().value[k] - corner * c.rods.length().half[k]);
        double t = METRE * (c.pistons.topRing().value[j] + corner * c.pistons.topRing().half[j]);
        return r * square(limits.wantedSpeed()) * (1 + r / l) * t;
    }

    /** +1 is the corner with the least room. */
    double clearanceAt(int g, int corner) {
        double s = METRE * (c.cranks.stroke().value[crank] + corner * c.cranks.stroke().half[crank]);
        double l = METRE * (c.rods.length().value[rod] + corner * c.rods.length().half[rod]);
        double h = METRE * (c.pistons.height().value[piston] + corner * c.pistons.height().half[piston]);
        double deck = METRE * (deckHeight.value[0] - corner * deckHeight.half[0]) - s / 2 - l - h;
        int boreCorner = deck > 0 ? -corner : corner;
        double b = METRE * (c.pistons.bore().value[piston] + boreCorner * c.pistons.bore().half[piston]);
        return smallVolume(g, corner) + QUARTER_PI * b * b * deck;
    }

    /** Chamber, dish and gasket. */
    private double smallVolume(int g, int corner) {
        double t = METRE * (c.gaskets.thickness().value[g] - corner * c.gaskets.thickness().half[g]);
        double hole = METRE * (c.gaskets.bore().value[g] - corner * c.gaskets.bore().half[g]);
        return limits.chamber()
                - corner * limits.chamberHalf()
                + c.pistons.crown().value[piston]
                - corner * c.pistons.crown().half[piston]
                + QUARTER_PI * hole * hole * t;
    }

    /** First order, every input once. */
    double clearanceVariance(int g) {
        double t = METRE * c.gaskets.thickness().value[g];
        double hole = METRE * c.gaskets.bore().value[g];
        double b = METRE * c.pistons.bore().value[piston];
        double area = QUARTER_PI * b * b;
        return square(area * METRE) * variance2 / 4
                + square(QUARTER_PI * hole * hole * METRE * c.gaskets.thickness().uncertainty[g])
                + square(Math.PI / 2 * hole * t * METRE * c.gaskets.bore().uncertainty[g])
                + square(Math.PI / 2 * b * METRE * deck2 / 2 * METRE * c.pistons.bore().uncertainty[piston])
                + square(limits.chamberUncertainty())
                + square(c.pistons.crown().uncertainty[piston]);
    }

    /** Whether any input has a width. */
    boolean hasBox(int g) {
        return half2 != 0
                || c.gaskets.thickness().half[g] != 0
                || c.gaskets.bore().half[g] != 0
                || c.pistons.bore().half[piston] != 0
                || c.pistons.crown().half[piston] != 0
                || limits.chamberHalf() != 0;
    }

    /** At the middle of the box, or at the corner where it is smallest (-1) or largest (+1); infinity when no room is left. */
    double ratioAt(int g, int corner) {
        double s = METRE * (c.cranks.stroke().value[crank] + corner * c.cranks.stroke().half[crank]);
        double l = METRE * (c.rods.length().value[rod] + corner * c.rods.length().half[rod]);
        double h = METRE * (c.pistons.height().value[piston] + corner * c.pistons.height().half[piston]);
        double top = METRE * (deckHeight.value[0] - corner * deckHeight.half[0]);
        double small = smallVolume(g, corner);
        int boreCorner = small > 0 ? corner : -corner;
        double b = METRE * (c.pistons.bore().value[piston] + boreCorner * c.pistons.bore().half[piston]);
        double area = QUARTER_PI * b * b;
        double clearance = small + area * (top - s / 2 - l - h);
        return clearance > 0 ? 1 + area * s / clearance : Double.POSITIVE_INFINITY;
    }

    /** First order, every input once. */
    double ratioVariance(int g) {
        double s = METRE * c.cranks.stroke().value[crank];
        double t = METRE * c.gaskets.thickness().value[g];
        double hole = METRE * c.gaskets.bore().value[g];
        double b = METRE * c.pistons.bore().value[piston];
        double area = QUARTER_PI * b * b;
        double small = limits.chamber() + c.pistons.crown().value[piston] + QUARTER_PI * hole * hole * t;
        double clearance = small + area * METRE * deck2 / 2;
        double swept = area * s;
        double byVolume = swept / (clearance * clearance);
        double byHeight = byVolume * area;
        double byStroke = area / clearance + byHeight / 2;
        double byBore = Math.PI / 2 * b * s * small / (clearance * clearance);
        double sum = square(byStroke * METRE * c.cranks.stroke().uncertainty[crank])
                + square(byHeight * METRE * c.rods.length().uncertainty[rod])
                + square(byHeight * METRE * c.pistons.height().uncertainty[piston])
                + square(byHeight * METRE) * square(deckHeight.uncertainty[0])
                + square(byVolume * QUARTER_PI * hole * hole * METRE * c.gaskets.thickness().uncertainty[g])
                + square(byVolume * Math.PI / 2 * hole * t * METRE * c.gaskets.bore().uncertainty[g])
                + square(byBore * METRE * c.pistons.bore().uncertainty[piston]);
        return sum
                + square(byVolume * limits.chamberUncertainty())
                + square(byVolume * c.pistons.crown().uncertainty[piston]);
    }
}
