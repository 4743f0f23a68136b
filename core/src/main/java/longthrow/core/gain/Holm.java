package longthrow.core.gain;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;

/** Several changes tried on one baseline: chance has several tries too. S. Holm, Scandinavian Journal of Statistics 6 (1979) 65. */
final class Holm {
    private Holm() {}

    /** Adjusted probabilities, in the order given; what is not a number stays so and counts as a try. */
    static List<Double> adjusted(List<Double> probabilities) {
        int m = probabilities.size();
        List<Integer> order = IntStream.range(0, m)
                .boxed()
                .sorted(Comparator.comparingDouble(probabilities::get))
                .toList();
        List<Double> adjusted = new ArrayList<>(probabilities);
        double most = 0;
        for (int rank = 0; rank < m; rank++) {
            double p = probabilities.get(order.get(rank));
            if (!Double.isNaN(p)) {
                most = Math.max(most, Math.min(1, (m - rank) * p));
                adjusted.set(order.get(rank), most);
            }
        }
        return List.copyOf(adjusted);
    }
}
