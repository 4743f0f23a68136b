package longthrow.core.measure;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;

/**
 * One thousand seeded benches: 30 % without a mistake, 5 % with two, the rest with one. A mistake counts where it stands out of the disagreement of
 * everything else by three standard uncertainties or more.
 */
class SuspectsValidationTest {
    private static final int ENGINES = 1000;

    @Test
    void theTrueMistakeIsNamedFirst() {
        int scored = 0;
        int first = 0;
        int amongThree = 0;
        int clean = 0;
        int falseAlarms = 0;
        int missed = 0;
        Map<String, int[]> byKind = new TreeMap<>();
        List<String> wrong = new ArrayList<>();
        for (int seed = 0; seed < ENGINES; seed++) {
            MistakenBench bench = new MistakenBench(seed);
            Figures figures = Figures.of(bench.build);
            Readings readings = figures.readings();
            Suspects suspects = Suspects.of(figures);
            if (bench.made.isEmpty()) {
                clean++;
                if (suspects.alarm()) {
                    falseAlarms++;
                }
                continue;
            }
            List<MistakenBench.Made> visible = bench.made.stream()
                    .filter(m ->
                            suspects.standardUncertaintiesOf(entry(readings, bench, m), reading(m), m.error()) >= 3)
                    .toList();
            if (visible.isEmpty()) {
                continue;
            }
            List<Integer> ranks = visible.stream()
                    .map(m -> rank(suspects, readings, bench, m))
                    .toList();
            boolean isFirst = ranks.contains(0);
            boolean isAmong = ranks.stream().allMatch(r -> r < 3);
            scored++;
            first += isFirst ? 1 : 0;
            amongThree += isAmong ? 1 : 0;
            missed += suspects.alarm() ? 0 : 1;
            int[] count = byKind.computeIfAbsent(visible.get(0).mistake().key(), k -> new int[3]);
            count[0]++;
            count[1] += isFirst ? 1 : 0;
            count[2] += isAmong ? 1 : 0;
            if (!isFirst || !isAmong) {
                wrong.add(seed + " " + visible + " ranks " + ranks + " none " + suspects.noMistake() + " "
                        + suspects.ranked().stream()
                                .limit(4)
                                .map(s -> s.mistake().key() + "@" + s.entry().place()
                                        + String.format(Locale.ROOT, " %.3g mm %.2f", s.move() * 1e3, s.share()))
                                .toList());
            }
        }
        System.out.printf(
                Locale.ROOT,
                "scored %d first %.1f %% among three %.1f %% clean %d false alarms %.1f %% missed %d%n",
                scored,
                100.0 * first / scored,
                100.0 * amongThree / scored,
                clean,
                100.0 * falseAlarms / clean,
                missed);
        byKind.forEach((k, c) -> System.out.printf(
                Locale.ROOT,
                "%-22s %4d first %5.1f %% three %5.1f %%%n",
                k,
                c[0],
                100.0 * c[1] / c[0],
                100.0 * c[2] / c[0]));
        assertThat(first).as(() -> String.join("\n", wrong)).isGreaterThanOrEqualTo((int) Math.ceil(0.85 * scored));
        assertThat(amongThree).isGreaterThanOrEqualTo((int) Math.ceil(0.97 * scored));
        assertThat(falseAlarms).isLessThanOrEqualTo((int) Math.floor(0.05 * clean));
    }

    private static int entry(Readings readings, MistakenBench bench, MistakenBench.Made made) {
        int position = bench.lines.getOrDefault(made.term(), List.of()).indexOf(made.line());
        int seen = 0;
        for (int i = 0; i < readings.entries().size(); i++) {
            if (readings.entries().get(i).term() == made.term() && seen++ == position) {
                return i;
            }
        }
        throw new IllegalStateException("no entry for " + made);
    }

    private static int reading(MistakenBench.Made made) {
        return made.mistake() == Mistake.THIMBLE_TURN || MistakenBench.PEN.contains(made.mistake()) ? 0 : -1;
    }

    private static int rank(Suspects suspects, Readings readings, MistakenBench bench, MistakenBench.Made made) {
        Readings.Entry entry = readings.entries().get(entry(readings, bench, made));
        List<Suspects.Suspect> ranked = suspects.ranked();
        for (int k = 0; k < ranked.size(); k++) {
            if (ranked.get(k).mistake() == made.mistake()
                    && ranked.get(k).entry().place().equals(entry.place())) {
                return k;
            }
        }
        return Integer.MAX_VALUE;
    }
}
