package longthrow.core.fit;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;

/** The search against every one of 144 million combinations tried in turn, in plain millimetres and doubles. */
class JoinQuestionTest {
    private static final double K = 0.000785398163397448; // pi / 4 mm2 to cc
    private static final double AIM = 1.0;

    /** Price and distance of the squish from the aim of every combination that holds, in hundredths. */
    private static List<long[]> bruteForce(JoinQuestion q) {
        List<long[]> found = new ArrayList<>();
        for (int i = 0; i < q.crank[0].length; i++) {
            double stroke = q.crank[0][i] / 100.0;
            for (int j = 0; j < q.piston[0].length; j++) {
                double bore = q.piston[0][j] / 100.0;
                for (int k = 0; k < q.rod[0].length; k++) {
                    double rod = q.rod[0][k] / 100.0;
                    double deck = 220 - stroke / 2 - rod - q.piston[1][j] / 100.0;
                    if (!(deck >= -0.1025 && deck <= 0.4025) || rod / stroke < 1.49999 || !q.matches(i, j, k)) {
                        continue;
                    }
                    for (int g = 0; g < q.gasket[0].length; g++) {
                        double hole = q.gasket[0][g] / 100.0;
                        double thick = q.gasket[1][g] / 100.0;
                        double room = 52 - q.piston[2][j] / 100.0 + hole * hole * thick * K + deck * bore * bore * K;
                        double ratio = (stroke * bore * bore * K + room) / room;
                        if (hole >= bore - 1e-9 && hole <= bore + 2.005 && ratio >= 9.5 && ratio <= 11) {
                            found.add(new long[] {
                                q.crank[1][i] + q.piston[3][j] + q.rod[1][k] + q.gasket[2][g],
                                Math.round(Math.abs(deck + thick - AIM) * 1e6)
                            });
                        }
                    }
                }
            }
        }
        return found;
    }

    private static List<long[]> frontOf(List<long[]> all) {
        TreeMap<Long, Long> least = new TreeMap<>();
        all.forEach(a -> least.merge(a[0], a[1], Math::min));
        List<long[]> front = new ArrayList<>();
        long best = Long.MAX_VALUE;
        for (var e : least.entrySet()) {
            if (e.getValue() < best) {
                best = e.getValue();
                front.add(new long[] {e.getKey(), best});
            }
        }
        return front;
    }

    private static void agree(JoinQuestion question, long expected) {
        List<long[]> all = bruteForce(question);
        StackSearch search = new StackSearch(question.columns(), question.limits());
        assertThat(search.count()).isEqualTo(all.size());
        assertThat(all).hasSizeGreaterThan(100);
        if (expected > 0) {
            assertThat(all).hasSize((int) expected);
        }
        assertThat(search.cheapest(100).stream().mapToLong(Combination::price).toArray())
                .isEqualTo(all.stream().mapToLong(a -> a[0]).sorted().limit(100).toArray());
        List<long[]> front = frontOf(all);
        assertThat(search.front().stream()
                        .map(f -> new long[] {f.price(), Math.round(Math.abs(f.squishHalf() / 2e9 - AIM) * 1e6)})
                        .toList())
                .usingRecursiveFieldByFieldElementComparator()
                .containsExactlyElementsOf(front);
        long counted = search.rejections().values().stream()
                .mapToLong(StackSearch.Rejected::count)
                .sum();
        assertThat(counted + all.size()).isEqualTo(question.columns().combinations());
    }

    /** 43,107 hold: three general-purpose query engines and a plain C program count the same on these tables. */
    @Test
    void theSearchFindsWhatTryingEveryCombinationFinds() {
        agree(JoinQuestion.tables(), 43_107);
    }

    @Test
    void withCrankpinsAndPinsOfSeveralSizesToo() {
        agree(JoinQuestion.tables().withSizes(), 0);
    }

    /** Lists ten times as long hold ten thousand times the combinations: the cheapest are found by following prices, and are the same as of all. */
    @Test
    void costFollowsTheAnswer() {
        JoinQuestion ten = JoinQuestion.larger(10);
        StackSearch search = new StackSearch(ten.columns(), ten.limits());
        List<Combination> cheapest = search.cheapest(100);
        assertThat(cheapest).hasSize(100);
        assertThat(search.front()).isNotEmpty();
        assertThat(search.front().get(0).price()).isEqualTo(cheapest.get(0).price());
    }
}
