package longthrow.workshop.store;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class LineDiffTest {
    @Test
    void nothingAgainstNothingIsNothing() {
        assertThat(LineDiff.of("", "")).isEmpty();
        assertThat(LineDiff.of("", "a\n")).singleElement().matches(DiffLine::added);
        assertThat(LineDiff.of("a\n", "")).singleElement().matches(DiffLine::removed);
    }

    @Test
    void aMissingLastLineBreakIsADifference() {
        assertThat(LineDiff.of("a\nb", "a\nb\n")).hasSize(3);
    }

    /** The count of common lines against a count by trying every choice: the twin that cannot be wrong. */
    @Test
    void findsAsMuchInCommonAsThereIs() {
        SplittableRandom random = new SplittableRandom(20261125);
        for (int run = 0; run < 2000; run++) {
            String before = text(random, random.nextInt(9), 3);
            String after = text(random, random.nextInt(9), 3);
            List<DiffLine> lines = LineDiff.of(before, after);
            leadsFromOneToTheOther(lines, before, after);
            assertThat(lines.stream().filter(DiffLine::same).count())
                    .as(before + " against " + after)
                    .isEqualTo(common(before.lines().toList(), after.lines().toList()));
        }
    }

    /** Too long for the table: 20,000 lines, every tenth changed, and 30,000 with no line in common and none that is unique. */
    @Test
    void longTextsAreComparedWithoutATableOfAll() {
        SplittableRandom random = new SplittableRandom(7);
        String before =
                IntStream.range(0, 20_000).mapToObj(i -> "line " + i + "\n").collect(Collectors.joining());
        String after = before.lines()
                .map(line -> random.nextInt(10) == 0 ? line + " changed\n" : line + "\n")
                .collect(Collectors.joining());
        List<DiffLine> lines = LineDiff.of(before, after);
        leadsFromOneToTheOther(lines, before, after);
        long unchanged = after.lines().filter(line -> !line.endsWith("changed")).count();
        assertThat(lines.stream().filter(DiffLine::same).count()).isEqualTo(unchanged);

        String ones = "1\n".repeat(30_000);
        String twos = "2\n".repeat(30_000);
        assertThat(org.junit.jupiter.api.Assertions.assertTimeout(
                        Duration.ofSeconds(20), () -> LineDiff.of(ones, twos)))
                .hasSize(60_000);
    }

    private static void leadsFromOneToTheOther(List<DiffLine> lines, String before, String after) {
        List<DiffLine> old = lines.stream().filter(line -> !line.added()).toList();
        List<DiffLine> fresh = lines.stream().filter(line -> !line.removed()).toList();
        assertThat(old.stream().map(line -> line.text() + "\n").collect(Collectors.joining()))
                .isEqualTo(before);
        assertThat(fresh.stream().map(line -> line.text() + "\n").collect(Collectors.joining()))
                .isEqualTo(after);
        assertThat(old.stream().map(line -> line.before().orElseThrow()))
                .isEqualTo(IntStream.rangeClosed(1, old.size()).boxed().toList());
        assertThat(fresh.stream().map(line -> line.after().orElseThrow()))
                .isEqualTo(IntStream.rangeClosed(1, fresh.size()).boxed().toList());
    }

    private static String text(SplittableRandom random, int lines, int kinds) {
        return IntStream.range(0, lines)
                .mapToObj(i -> (char) ('a' + random.nextInt(kinds)) + "\n")
                .collect(Collectors.joining());
    }

    private static long common(List<String> a, List<String> b) {
        if (a.isEmpty() || b.isEmpty()) {
            return 0;
        }
        List<String> restA = a.subList(1, a.size());
        List<String> restB = b.subList(1, b.size());
        return a.get(0).equals(b.get(0)) ? 1 + common(restA, restB) : Math.max(common(restA, b), common(a, restB));
    }
}
