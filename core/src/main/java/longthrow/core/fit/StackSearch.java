package longthrow.core.fit;

import java.util.Arrays;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.PriorityQueue;

/**
 * Every crankshaft, piston, rod and gasket that close the stack, found without touching those that cannot: rods of one class lie sorted by length, and deck
 * and squish leave a short run of them for each crankshaft and piston. Exact: limits are included, lengths are whole picometres.
 *
 * <p>{@link #cheapest} and {@link #front} go through crankshafts and pistons from cheap to dear and leave off where nothing cheaper can come, so their cost
 * follows the answer rather than the product of the lists; {@link #each} visits all that fit. Instances belong to one thread.
 */
public final class StackSearch {
    /** Dearest first, so that the head of the queue is the next to go. */
    private static final Comparator<Combination> DEAREST_FIRST = new Comparator<>() {
        @Override
        public int compare(Combination a, Combination b) {
            return byPrice(b, a);
        }
    };

    private final StackColumns c;
    private final StackLimits limits;
    private final StackFit fit;
    /** Rods of each class by length. */
    private final int[][] rodsOf;

    private final long[][] lengthsOf;
    private final long cheapestRod;
    private final long cheapestGasket;
    private final long thinnest;
    private final long thickest;
    private final int[] cranksByPrice;
    private final int[] pistonsByPrice;
    private final int[] gasketsByPrice;
    private final int[][] gasketsOf;

    /** Takes what fits. */
    public interface Visitor {
        /** One combination that fits; false to leave off. */
        boolean take(Combination combination);
    }

    public StackSearch(StackColumns columns, StackLimits limits) {
        this.c = columns;
        this.limits = limits;
        this.fit = new StackFit(columns, limits);
        int groups = c.rods.each().groups();
        rodsOf = new int[groups][];
        lengthsOf = new long[groups][];
        sortRods(groups);
        cheapestRod = least(c.rods.each().price());
        cheapestGasket = least(c.gaskets.each().price());
        long thin = Long.MAX_VALUE;
        long thick = Long.MIN_VALUE;
        for (long t : c.gaskets.thickness().value) {
            if (t != Sizes.NOT_SAID) {
                thin = Math.min(thin, t);
                thick = Math.max(thick, t);
            }
        }
        thinnest = thin > thick ? 0 : thin;
        thickest = thin > thick ? 0 : thick;
        gasketsByPrice = sorted(c.gaskets.each().price());
        cranksByPrice = sorted(c.cranks.each().price());
        pistonsByPrice = sorted(c.pistons.each().price());
        gasketsOf = new int[c.pistons.height().count()][];
    }

    private void sortRods(int groups) {
        int[] count = new int[groups];
        long[] length = c.rods.length().value;
        int[] group = c.rods.each().group();
        for (int k = 0; k < length.length; k++) {
            count[group[k]] += length[k] == Sizes.NOT_SAID ? 0 : 1;
        }
        for (int q = 0; q < groups; q++) {
            rodsOf[q] = new int[count[q]];
        }
        Arrays.fill(count, 0);
        for (int k : sorted(length)) {
            if (length[k] != Sizes.NOT_SAID) {
                rodsOf[group[k]][count[group[k]]++] = k;
            }
        }
        for (int q = 0; q < groups; q++) {
            lengthsOf[q] = new long[rodsOf[q].length];
            for (int n = 0; n < rodsOf[q].length; n++) {
                lengthsOf[q][n] = length[rodsOf[q][n]];
            }
        }
    }

    /** Indices in rising order of the key, equal keys in their own order. Key and index share one long, so that no object is made. */
    static int[] sorted(long[] key) {
        int bits = Math.max(1, 32 - Integer.numberOfLeadingZeros(Math.max(key.length - 1, 1)));
        long[] packed = new long[key.length];
        for (int n = 0; n < key.length; n++) {
            long least = key[n] == Sizes.NOT_SAID ? 0 : key[n];
            packed[n] = Math.addExact(Math.multiplyExact(least, 1L << bits), n);
        }
        Arrays.sort(packed);
        int[] order = new int[key.length];
        for (int n = 0; n < order.length; n++) {
            order[n] = (int) (packed[n] & ((1L << bits) - 1));
        }
        return order;
    }

    private static long least(long[] of) {
        long least = of.length == 0 ? 0 : Long.MAX_VALUE;
        for (long one : of) {
            least = Math.min(least, one);
        }
        return least;
    }

    private long slack2() {
        return 2 * (c.rods.length().widest() + c.pistons.height().widest())
                + c.cranks.stroke().widest()
                + 2 * limits.deckHeight().widest();
    }

    /** Deck clearances that deck and squish window leave, in half picometres, tolerances given. */
    private long leastDeck2() {
        long bySquish =
                2 * (limits.squish().least() - thickest - c.gaskets.thickness().widest());
        return Math.max(2 * limits.deck().least(), bySquish) - slack2();
    }

    private long mostDeck2() {
        long bySquish =
                2 * (limits.squish().most() - thinnest + c.gaskets.thickness().widest());
        return Math.min(2 * limits.deck().most(), bySquish) + slack2();
    }

    /** First place in a sorted column whose value is at least this. */
    private static int from(long[] sorted, long least) {
        int low = 0;
        int high = sorted.length;
        while (low < high) {
            int middle = (low + high) >>> 1;
            if (sorted[middle] < least) {
                low = middle + 1;
            } else {
                high = middle;
            }
        }
        return low;
    }

    private boolean canStand(int crank, int piston) {
        return c.cranks.stroke().isKnown(crank) && c.pistons.height().isKnown(piston);
    }

    private boolean match(int crank, int group, int piston) {
        return c.crankRod[c.cranks.each().group()[crank]][group].fits()
                && c.rodPiston[group][c.pistons.each().group()[piston]].fits();
    }

    /** Twice what crank, rod and deck clearance share: 2 (deck height - compression height) - stroke. */
    private long room2(int crank, int piston) {
        return 2 * (limits.deckHeight().value[0] - c.pistons.height().value[piston]) - c.cranks.stroke().value[crank];
    }

    /** Gaskets whose hole may suit the bore of this piston, by rising price. */
    private int[] gasketsFor(int piston) {
        int[] found = gasketsOf[piston];
        if (found == null) {
            found = gasketsThatMaySuit(piston);
            gasketsOf[piston] = found;
        }
        return found;
    }

    private int[] gasketsThatMaySuit(int piston) {
        Sizes hole = c.gaskets.bore();
        Sizes bore = c.pistons.bore();
        Window over = limits.gasketOverBore();
        int[] found = new int[hole.count()];
        int n = 0;
        for (int g : gasketsByPrice) {
            boolean known = hole.isKnown(g) && bore.isKnown(piston);
            long gap = known ? hole.value[g] - bore.value[piston] : 0;
            long box = hole.half[g] + bore.half[piston];
            if (!known || over.isAny() || (gap + box >= over.least() && gap - box <= over.most())) {
                found[n++] = g;
            }
        }
        return Arrays.copyOf(found, n);
    }

    /** Visits every combination that fits, the cheaper crankshafts and pistons first, until the visitor leaves off. */
    public void each(Visitor visitor) {
        long least2 = leastDeck2();
        long most2 = mostDeck2();
        for (int i : cranksByPrice) {
            for (int j : pistonsByPrice) {
                for (int q = 0; canStand(i, j) && q < rodsOf.length; q++) {
                    if (match(i, q, j) && !run(i, j, q, least2, most2, visitor)) {
                        return;
                    }
                }
            }
        }
    }

    /** False when the visitor left off. */
    private boolean run(int i, int j, int q, long least2, long most2, Visitor visitor) {
        long room2 = room2(i, j);
        long[] lengths = lengthsOf[q];
        int[] gaskets = gasketsFor(j);
        // 2 l between room2 - most2 and room2 - least2
        for (int n = from(lengths, Math.floorDiv(room2 - most2, 2L)); n < lengths.length; n++) {
            if (2 * lengths[n] > room2 - least2) {
                break;
            }
            if (fit.stack(i, j, rodsOf[q][n])) {
                for (int g : gaskets) {
                    if (fit.gasket(g) && !visitor.take(fit.combination(g))) {
                        return false;
                    }
                }
            }
        }
        return true;
    }

    /** How many fit. */
    public long count() {
        long[] count = {0};
        each(combination -> ++count[0] > 0);
        return count[0];
    }

    /** The cheapest that fit, at most so many, equal prices by their rows. */
    public List<Combination> cheapest(int most) {
        PriorityQueue<Combination> kept = new PriorityQueue<>(most, DEAREST_FIRST);
        long least2 = leastDeck2();
        long most2 = mostDeck2();
        long[] rodPrice = c.rods.each().price();
        long[] gasketPrice = c.gaskets.each().price();
        long cap = Long.MAX_VALUE;
        for (int i : cranksByPrice) {
            for (int j : pistonsByPrice) {
                long two = c.cranks.each().price()[i] + c.pistons.each().price()[j];
                if (two + cheapestRod + cheapestGasket > cap) {
                    break;
                }
                if (!canStand(i, j)) {
                    continue;
                }
                long room2 = room2(i, j);
                for (int q = 0; q < rodsOf.length; q++) {
                    if (!match(i, q, j)) {
                        continue;
                    }
                    long[] lengths = lengthsOf[q];
                    int[] gaskets = gasketsFor(j);
                    for (int n = from(lengths, Math.floorDiv(room2 - most2, 2L)); n < lengths.length; n++) {
                        if (2 * lengths[n] > room2 - least2) {
                            break;
                        }
                        int k = rodsOf[q][n];
                        if (two + rodPrice[k] + cheapestGasket > cap || !fit.stack(i, j, k)) {
                            continue;
                        }
                        for (int g : gaskets) {
                            if (two + rodPrice[k] + gasketPrice[g] > cap) {
                                break;
                            }
                            if (fit.gasket(g) && (kept.size() < most || fit.price <= cap)) {
                                cap = keep(kept, fit.combination(g), most);
                            }
                        }
                    }
                }
            }
        }
        Combination[] cheapest = new Combination[kept.size()];
        for (int n = cheapest.length - 1; n >= 0; n--) {
            cheapest[n] = kept.remove();
        }
        return List.of(cheapest);
    }

    /** Rising price, equal prices by their rows. */
    private static int byPrice(Combination a, Combination b) {
        int order = Long.compare(a.price(), b.price());
        order = order != 0 ? order : Integer.compare(a.crank(), b.crank());
        order = order != 0 ? order : Integer.compare(a.piston(), b.piston());
        order = order != 0 ? order : Integer.compare(a.rod(), b.rod());
        return order != 0 ? order : Integer.compare(a.gasket(), b.gasket());
    }

    private static long keep(PriorityQueue<Combination> kept, Combination one, int most) {
        kept.add(one);
        if (kept.size() > most) {
            kept.poll();
        }
        return kept.size() < most ? Long.MAX_VALUE : kept.element().price();
    }

    /** Price against distance of the squish from the aim: those that nothing beats in both, from cheap to dear; of equals the first by its rows. */
    public List<Combination> front() {
        Front front = new Front(limits.aimedSquish());
        long least2 = leastDeck2();
        long most2 = mostDeck2();
        for (int i : cranksByPrice) {
            for (int j : pistonsByPrice) {
                long cheapest = c.cranks.each().price()[i] + c.pistons.each().price()[j] + cheapestRod + cheapestGasket;
                if (front.errorBelow(cheapest) == 0) {
                    break; // nothing dearer can be nearer than exact
                }
                for (int q = 0; canStand(i, j) && q < rodsOf.length; q++) {
                    if (match(i, q, j)) {
                        run(i, j, q, least2, most2, front);
                    }
                }
            }
        }
        return front.points();
    }

    private void run(int i, int j, int q, long least2, long most2, Front front) {
        long room2 = room2(i, j);
        long[] lengths = lengthsOf[q];
        int[] gaskets = gasketsFor(j);
        long two = c.cranks.each().price()[i] + c.pistons.each().price()[j];
        long[] thickness = c.gaskets.thickness().value;
        for (int n = from(lengths, Math.floorDiv(room2 - most2, 2L)); n < lengths.length; n++) {
            long deck2 = room2 - 2 * lengths[n];
            if (deck2 < least2) {
                break;
            }
            int k = rodsOf[q][n];
            long three = two + c.rods.each().price()[k];
            long worst = front.errorBelow(three + cheapestGasket);
            boolean stands = false;
            for (int g : gaskets) {
                if (thickness[g] == Sizes.NOT_SAID
                        || Math.abs(deck2 + 2 * thickness[g] - 2 * limits.aimedSquish()) > worst
                        || front.beats(three + c.gaskets.each().price()[g], deck2 + 2 * thickness[g])) {
                    continue;
                }
                stands = stands || fit.stack(i, j, k);
                if (!stands) {
                    break;
                }
                if (fit.gasket(g)) {
                    front.take(fit.combination(g));
                }
            }
        }
    }

    /**
     * Combinations that an obstacle is the first to count out.
     * @param count   how many
     * @param crank   row of the first of them
     * @param piston  as above
     * @param rod     as above
     * @param gasket  as above
     */
    public record Rejected(long count, int crank, int piston, int rod, int gasket) {
        private Rejected plus(long more) {
            return new Rejected(count + more, crank, piston, rod, gasket);
        }
    }

    /** How many of all combinations each obstacle counts out, in the order of {@link Obstacle}; those that fit are left over. */
    public Map<Obstacle, Rejected> rejections() {
        Map<Obstacle, Rejected> counts = new EnumMap<>(Obstacle.class);
        int gaskets = c.gaskets.thickness().count();
        int[][] byClass = byClass();
        for (int i = 0; i < c.cranks.stroke().count(); i++) {
            for (int j = 0; j < c.pistons.height().count(); j++) {
                for (int q = 0; q < byClass.length; q++) {
                    if (!match(i, q, j) && byClass[q].length > 0) {
                        // one of a class is kept out by what keeps all of it out
                        fit.stack(i, j, byClass[q][0]);
                        count(counts, (long) gaskets * byClass[q].length, i, j, byClass[q][0], 0);
                    } else {
                        count(counts, gaskets, i, j, byClass[q]);
                    }
                }
            }
        }
        return counts;
    }

    private void count(Map<Obstacle, Rejected> counts, int gaskets, int i, int j, int[] rods) {
        for (int k : rods) {
            if (!fit.stack(i, j, k)) {
                count(counts, gaskets, i, j, k, 0);
                continue;
            }
            for (int g = 0; g < gaskets; g++) {
                if (!fit.gasket(g)) {
                    count(counts, 1, i, j, k, g);
                }
            }
        }
    }

    /** All rods of each class, those without a length too, in their own order. */
    private int[][] byClass() {
        int[] group = c.rods.each().group();
        int[] count = new int[c.rods.each().groups()];
        for (int q : group) {
            count[q]++;
        }
        int[][] byClass = new int[count.length][];
        for (int q = 0; q < count.length; q++) {
            byClass[q] = new int[count[q]];
        }
        Arrays.fill(count, 0);
        for (int k = 0; k < group.length; k++) {
            byClass[group[k]][count[group[k]]++] = k;
        }
        return byClass;
    }

    private void count(Map<Obstacle, Rejected> counts, long times, int i, int j, int k, int g) {
        Obstacle obstacle = java.util.Objects.requireNonNull(fit.obstacle);
        Rejected before = counts.get(obstacle);
        counts.put(obstacle, before == null ? new Rejected(times, i, j, k, g) : before.plus(times));
    }

    /** What keeps one combination apart; empty when it fits. */
    public java.util.Optional<Obstacle> obstacle(int crank, int piston, int rod, int gasket) {
        return fit.stack(crank, piston, rod) && fit.gasket(gasket)
                ? java.util.Optional.empty()
                : java.util.Optional.ofNullable(fit.obstacle);
    }
}
