package longthrow.core.fit;

/**
 * The parts of one search as columns, row k of every column of a kind being the same part. Money in whole hundredths; a price that is not said counts as 0
 * and as an unknown of that part ({@code unknowns}). Classes number the parts of a kind that meet their neighbours alike.
 */
public final class StackColumns {
    /**
     * What can take the place of the crankshaft.
     * @param stroke        [pm]
     * @param counterweight radius [pm]
     * @param each          price, class, unknowns
     */
    public record Cranks(Sizes stroke, Sizes counterweight, Each each) {}

    /**
     * What can take the place of the piston, with the cylinder bored to it.
     * @param bore     of the cylinder with this piston [pm]
     * @param height   compression height [pm]
     * @param skirt    below the pin centre [pm]
     * @param topLand  height of the top land [pm]
     * @param topRing  thickness of the top ring [pm]
     * @param crown    dish positive, dome negative
     */
    public record Pistons(
            Sizes bore, Sizes height, Sizes skirt, Sizes topLand, Sizes topRing, Volumes crown, Each each) {}

    /**
     * What can take the place of the rod.
     * @param length [pm]
     */
    public record Rods(Sizes length, Each each) {}

    /**
     * What can take the place of the head gasket.
     * @param thickness crushed [pm]
     * @param bore      of the hole [pm]
     */
    public record Gaskets(Sizes thickness, Sizes bore, Each each) {}

    /** What every part of a kind has: its price in whole hundredths, its class from 0, and how many things it does not say. */
    public static final class Each {
        private final long[] price;
        private final int[] group;
        private final int[] unknowns;

        /**
         * Columns of one length.
         * @param group    class of the parts that meet their neighbours alike, from 0
         * @param unknowns things this part does not say and the search would like to know
         */
        public Each(long[] price, int[] group, int[] unknowns) {
            if (price.length != group.length || price.length != unknowns.length) {
                throw new IllegalArgumentException("every part has a price, a class and a count of unknowns");
            }
            this.price = price.clone();
            this.group = group.clone();
            this.unknowns = unknowns.clone();
        }

        /** Priced, all of one class, nothing unknown. */
        public static Each priced(long... price) {
            return new Each(price, new int[price.length], new int[price.length]);
        }

        long[] price() {
            return price;
        }

        int[] group() {
            return group;
        }

        int[] unknowns() {
            return unknowns;
        }

        int groups() {
            int most = -1;
            for (int one : group) {
                most = Math.max(most, one);
            }
            return most + 1;
        }
    }

    final Cranks cranks;
    final Pistons pistons;
    final Rods rods;
    final Gaskets gaskets;
    /** By class of crank and class of rod. */
    final Pairing[][] crankRod;
    /** By class of rod and class of piston. */
    final Pairing[][] rodPiston;

    public StackColumns(
            Cranks cranks, Pistons pistons, Rods rods, Gaskets gaskets, Pairing[][] crankRod, Pairing[][] rodPiston) {
        this.cranks = cranks;
        this.pistons = pistons;
        this.rods = rods;
        this.gaskets = gaskets;
        this.crankRod = crankRod;
        this.rodPiston = rodPiston;
    }

    /** Combinations in all. */
    public long combinations() {
        return Math.multiplyExact(
                Math.multiplyExact(
                        (long) cranks.stroke().count(), pistons.height().count()),
                Math.multiplyExact(
                        (long) rods.length().count(), gaskets.thickness().count()));
    }
}
