package longthrow.core.fit;

import java.util.ArrayList;
import java.util.List;

/** Combinations that no other beats in price and in distance of the squish from the aim, kept by rising price and falling distance. */
final class Front {
    private final long aim2;
    private final List<Combination> points = new ArrayList<>();

    Front(long aim) {
        if (aim == Sizes.NOT_SAID) {
            throw new IllegalStateException("a front of price against squish needs an aim for the squish");
        }
        aim2 = 2 * aim;
    }

    private long error(Combination one) {
        return Math.abs(one.squishHalf() - aim2);
    }

    /** Points at most as dear as this. */
    private int upTo(long price) {
        int low = 0;
        int high = points.size();
        while (low < high) {
            int middle = (low + high) >>> 1;
            if (points.get(middle).price() <= price) {
                low = middle + 1;
            } else {
                high = middle;
            }
        }
        return low;
    }

    /** Smallest distance among the points at most as dear as this, in half picometres; the largest long where there is none. */
    long errorBelow(long price) {
        int n = upTo(price);
        return n == 0 ? Long.MAX_VALUE : error(points.get(n - 1));
    }

    /** Whether a point is at least as cheap and nearer than this, or as good in both and of an earlier row. */
    boolean beats(long price, long squish2) {
        return errorBelow(price) < Math.abs(squish2 - aim2);
    }

    void take(Combination one) {
        int n = upTo(one.price());
        if (n > 0) {
            Combination before = points.get(n - 1);
            if (error(before) < error(one)
                    || (error(before) == error(one) && (before.price() < one.price() || isEarlier(before, one)))) {
                return;
            }
        }
        int first = n;
        while (first > 0 && points.get(first - 1).price() == one.price()) {
            first--;
        }
        int last = first;
        while (last < points.size() && error(points.get(last)) >= error(one)) {
            last++;
        }
        points.subList(first, last).clear();
        points.add(first, one);
    }

    private static boolean isEarlier(Combination a, Combination b) {
        int[] x = {a.crank(), a.piston(), a.rod(), a.gasket()};
        int[] y = {b.crank(), b.piston(), b.rod(), b.gasket()};
        return java.util.Arrays.compare(x, y) <= 0;
    }

    List<Combination> points() {
        return List.copyOf(points);
    }
}
