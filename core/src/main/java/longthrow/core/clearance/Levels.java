package longthrow.core.clearance;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Lines where a field on a grid passes through 0, as closed loops with the higher side on the left (marching squares). */
final class Levels {
    private Levels() {}

    /**
     * Loops, the longest first.
     * @param field by column and row; below 0 all along its rim
     */
    static List<List<Point>> of(double[][] field, double left, double low, double pitch) {
        int columns = field.length;
        int rows = field[0].length;
        Map<Long, Long> following = new HashMap<>();
        for (int i = 0; i + 1 < columns; i++) {
            for (int j = 0; j + 1 < rows; j++) {
                cell(field, i, j, rows, following);
            }
        }
        List<List<Point>> loops = new ArrayList<>();
        while (!following.isEmpty()) {
            long start = following.keySet().iterator().next();
            List<Point> loop = new ArrayList<>();
            Long at = start;
            while (at != null) {
                loop.add(point(field, at, rows, left, low, pitch));
                at = following.remove(at);
                if (at != null && at == start) {
                    break;
                }
            }
            if (loop.size() > 2) {
                loops.add(loop);
            }
        }
        loops.sort((a, b) -> Integer.compare(b.size(), a.size()));
        return loops;
    }

    /** An edge of the grid by its lower left node and its direction. */
    private static long edge(int i, int j, int rows, boolean upright) {
        return ((long) i * rows + j) * 2 + (upright ? 1 : 0);
    }

    private static Point point(double[][] field, long edge, int rows, double left, double low, double pitch) {
        boolean upright = (edge & 1) == 1;
        int i = (int) (edge / 2 / rows);
        int j = (int) (edge / 2 % rows);
        double a = field[i][j];
        double b = upright ? field[i][j + 1] : field[i + 1][j];
        double share = a / (a - b);
        return new Point(left + (i + (upright ? 0 : share)) * pitch, low + (j + (upright ? share : 0)) * pitch);
    }

    private static void cell(double[][] f, int i, int j, int rows, Map<Long, Long> following) {
        long bottom = edge(i, j, rows, false);
        long top = edge(i, j + 1, rows, false);
        long west = edge(i, j, rows, true);
        long east = edge(i + 1, j, rows, true);
        int inside = (f[i][j] > 0 ? 1 : 0)
                | (f[i + 1][j] > 0 ? 2 : 0)
                | (f[i + 1][j + 1] > 0 ? 4 : 0)
                | (f[i][j + 1] > 0 ? 8 : 0);
        boolean middle = f[i][j] + f[i + 1][j] + f[i + 1][j + 1] + f[i][j + 1] > 0;
        switch (inside) {
            case 1 -> following.put(bottom, west);
            case 2 -> following.put(east, bottom);
            case 3 -> following.put(east, west);
            case 4 -> following.put(top, east);
            case 6 -> following.put(top, bottom);
            case 7 -> following.put(top, west);
            case 8 -> following.put(west, top);
            case 9 -> following.put(bottom, top);
            case 11 -> following.put(east, top);
            case 12 -> following.put(west, east);
            case 13 -> following.put(bottom, east);
            case 14 -> following.put(west, bottom);
            case 5 -> {
                following.put(bottom, middle ? east : west);
                following.put(top, middle ? west : east);
            }
            case 10 -> {
                following.put(east, middle ? top : bottom);
                following.put(west, middle ? bottom : top);
            }
            default -> {}
        }
    }
}
