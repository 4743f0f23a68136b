package longthrow.workshop.store;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;

/**
 * What is different between two texts, line by line: a longest common subsequence. Where a stretch without common ends is so
 * long that the table for it would not be, the lines that occur once in both are taken as fixed first, which may miss the
 * very longest; where there are none of these the stretch is replaced as a whole. What comes out always leads from one text
 * to the other.
 */
final class LineDiff {
    /** Cells of the largest table, 32 MB of them; two build files of 2800 lines changed throughout. */
    private static final long MOST_CELLS = 8_000_000;

    private final List<String> before;
    private final List<String> after;
    private final List<DiffLine> lines = new ArrayList<>();

    private LineDiff(List<String> before, List<String> after) {
        this.before = before;
        this.after = after;
    }

    /** A stretch of each text still to be compared. */
    private record Stretch(int beforeFrom, int beforeTo, int afterFrom, int afterTo) {}

    static List<DiffLine> of(String before, String after) {
        LineDiff diff = new LineDiff(lines(before), lines(after));
        diff.compare();
        return List.copyOf(diff.lines);
    }

    /** Each line with the sign that ends it, so that a missing last one is a difference. */
    static List<String> lines(String text) {
        List<String> lines = new ArrayList<>();
        int from = 0;
        while (from < text.length()) {
            int end = text.indexOf('\n', from);
            int to = end < 0 ? text.length() : end + 1;
            lines.add(text.substring(from, to));
            from = to;
        }
        return lines;
    }

    private void compare() {
        Deque<Stretch> open = new ArrayDeque<>();
        open.push(new Stretch(0, before.size(), 0, after.size()));
        while (!open.isEmpty()) {
            Stretch at = open.pop();
            int b = at.beforeFrom();
            int a = at.afterFrom();
            while (b < at.beforeTo() && a < at.afterTo() && before.get(b).equals(after.get(a))) {
                same(b++, a++);
            }
            int tail = 0;
            while (at.beforeTo() - tail > b
                    && at.afterTo() - tail > a
                    && before.get(at.beforeTo() - tail - 1).equals(after.get(at.afterTo() - tail - 1))) {
                tail++;
            }
            if (tail > 0) {
                open.push(new Stretch(at.beforeTo() - tail, at.beforeTo(), at.afterTo() - tail, at.afterTo()));
            }
            Stretch middle = new Stretch(b, at.beforeTo() - tail, a, at.afterTo() - tail);
            if ((long) (middle.beforeTo() - b) * (middle.afterTo() - a) <= MOST_CELLS) {
                byTable(middle);
            } else {
                List<Stretch> parts = betweenUniqueLines(middle);
                if (parts.isEmpty()) {
                    replaced(middle);
                }
                for (int i = parts.size() - 1; i >= 0; i--) {
                    open.push(parts.get(i));
                }
            }
        }
    }

    private void byTable(Stretch at) {
        int rows = at.beforeTo() - at.beforeFrom();
        int columns = at.afterTo() - at.afterFrom();
        int[][] common = new int[rows + 1][columns + 1]; // [i][j]: of what is left from line i and line j
        for (int i = rows - 1; i >= 0; i--) {
            for (int j = columns - 1; j >= 0; j--) {
                common[i][j] = before.get(at.beforeFrom() + i).equals(after.get(at.afterFrom() + j))
                        ? common[i + 1][j + 1] + 1
                        : Math.max(common[i + 1][j], common[i][j + 1]);
            }
        }
        int i = 0;
        int j = 0;
        while (i < rows || j < columns) {
            if (i < rows && j < columns && before.get(at.beforeFrom() + i).equals(after.get(at.afterFrom() + j))) {
                same(at.beforeFrom() + i++, at.afterFrom() + j++);
            } else if (j == columns || (i < rows && common[i + 1][j] >= common[i][j + 1])) {
                removed(at.beforeFrom() + i++);
            } else {
                added(at.afterFrom() + j++);
            }
        }
    }

    /** The stretch parted at lines that occur once in each, as many as stand in the same order; empty where there is none. */
    private List<Stretch> betweenUniqueLines(Stretch at) {
        Map<String, int[]> seen = new HashMap<>(); // count before, count after, place after
        for (int i = at.beforeFrom(); i < at.beforeTo(); i++) {
            seen.computeIfAbsent(before.get(i), line -> new int[3])[0]++;
        }
        for (int j = at.afterFrom(); j < at.afterTo(); j++) {
            int[] counts = seen.computeIfAbsent(after.get(j), line -> new int[3]);
            counts[1]++;
            counts[2] = j;
        }
        List<int[]> pairs = new ArrayList<>(); // place before, place after
        for (int i = at.beforeFrom(); i < at.beforeTo(); i++) {
            int[] counts = seen.getOrDefault(before.get(i), new int[3]);
            if (counts[0] == 1 && counts[1] == 1) {
                pairs.add(new int[] {i, counts[2]});
            }
        }
        List<Stretch> parts = new ArrayList<>();
        int b = at.beforeFrom();
        int a = at.afterFrom();
        for (int[] pair : longestRising(pairs)) {
            parts.add(new Stretch(b, pair[0], a, pair[1]));
            parts.add(new Stretch(pair[0], pair[0] + 1, pair[1], pair[1] + 1));
            b = pair[0] + 1;
            a = pair[1] + 1;
        }
        if (!parts.isEmpty()) {
            parts.add(new Stretch(b, at.beforeTo(), a, at.afterTo()));
        }
        return parts;
    }

    /** The longest choice of pairs whose second places rise as their first do, by patience sorting. */
    private static List<int[]> longestRising(List<int[]> pairs) {
        int[] ends = new int[pairs.size()]; // index of the pair on top of each pile
        int[] previous = new int[pairs.size()];
        int piles = 0;
        for (int k = 0; k < pairs.size(); k++) {
            int low = 0;
            int high = piles;
            while (low < high) {
                int middle = (low + high) >>> 1;
                if (pairs.get(ends[middle])[1] < pairs.get(k)[1]) {
                    low = middle + 1;
                } else {
                    high = middle;
                }
            }
            previous[k] = low == 0 ? -1 : ends[low - 1];
            ends[low] = k;
            piles = Math.max(piles, low + 1);
        }
        int[][] rising = new int[piles][];
        int k = piles == 0 ? -1 : ends[piles - 1];
        for (int place = piles - 1; place >= 0; place--) {
            rising[place] = pairs.get(k);
            k = previous[k];
        }
        return Arrays.asList(rising);
    }

    private void replaced(Stretch at) {
        for (int i = at.beforeFrom(); i < at.beforeTo(); i++) {
            removed(i);
        }
        for (int j = at.afterFrom(); j < at.afterTo(); j++) {
            added(j);
        }
    }

    private void same(int b, int a) {
        lines.add(new DiffLine(OptionalInt.of(b + 1), OptionalInt.of(a + 1), bare(before.get(b))));
    }

    private void removed(int b) {
        lines.add(new DiffLine(OptionalInt.of(b + 1), OptionalInt.empty(), bare(before.get(b))));
    }

    private void added(int a) {
        lines.add(new DiffLine(OptionalInt.empty(), OptionalInt.of(a + 1), bare(after.get(a))));
    }

    private static String bare(String line) {
        return line.endsWith("\n") ? line.substring(0, line.length() - 1) : line;
    }
}
