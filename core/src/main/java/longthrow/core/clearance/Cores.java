package longthrow.core.clearance;

import java.util.ArrayList;
import java.util.List;
import java.util.PriorityQueue;

/**
 * Points inside an outline that are deeper than all around them: centres of circles that fill it. Where another body covers one of them, that is how deep
 * it goes. Sought on a grid of {@link #GRID} by as many cells over the outline and then closed in on; two that share a cell's surroundings count as one.
 */
record Cores(List<Core> all, double deepest) {
    private static final int GRID = 48;
    private static final int MOST_CELLS = 4000;
    /** A tenth of the 0.01 mm the least gap is guaranteed to [m]. */
    static final double TOLERANCE = 1e-6;

    /**
     * One of them, in the frame of the outline.
     * @param depth [m]
     */
    record Core(double x, double y, double depth) {}

    private record Cell(double x, double y, double half, double depth) {
        double most() {
            return depth + half * Math.sqrt(2);
        }
    }

    static Cores of(Outline outline) {
        Edges edges = outline.edges();
        double half = edges.nodeR[0] / GRID;
        double x0 = edges.nodeX[0] - edges.nodeR[0] - half;
        double y0 = edges.nodeY[0] - edges.nodeR[0] - half;
        PointDepth depth = new PointDepth(outline);
        int n = GRID + 2;
        double[][] grid = new double[n][n];
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                grid[i][j] = depth.at(x0 + 2 * half * i, y0 + 2 * half * j);
            }
        }
        List<Core> found = new ArrayList<>();
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                if (isHighest(grid, i, j) && grid[i][j] > -2 * half) {
                    Core core = closedIn(depth, x0 + 2 * half * i, y0 + 2 * half * j, 2 * half);
                    if (core.depth > 0 && found.stream().noneMatch(c -> isSame(c, core))) {
                        found.add(core);
                    }
                }
            }
        }
        found.sort((a, b) -> Double.compare(b.depth, a.depth));
        return new Cores(
                List.copyOf(found),
                found.stream().mapToDouble(Core::depth).max().orElse(Double.POSITIVE_INFINITY));
    }

    private static boolean isSame(Core one, Core other) {
        return Math.abs(one.depth - other.depth) < TOLERANCE
                && Math.hypot(one.x - other.x, one.y - other.y) < Math.sqrt(one.depth * TOLERANCE);
    }

    private static boolean isHighest(double[][] grid, int i, int j) {
        for (int p = Math.max(0, i - 1); p <= Math.min(grid.length - 1, i + 1); p++) {
            for (int q = Math.max(0, j - 1); q <= Math.min(grid.length - 1, j + 1); q++) {
                if (grid[p][q] > grid[i][j]) {
                    return false;
                }
            }
        }
        return true;
    }

    /** Deepest point of a square, by halving the squares that may hold it: depth changes no faster than place. */
    private static Core closedIn(PointDepth depth, double x, double y, double half) {
        PriorityQueue<Cell> open = new PriorityQueue<>((a, b) -> Double.compare(b.most(), a.most()));
        Cell best = new Cell(x, y, half, depth.at(x, y));
        open.add(best);
        for (int k = 0; k < MOST_CELLS; k++) {
            Cell cell = open.poll();
            if (cell == null || cell.most() < best.depth + TOLERANCE) {
                break;
            }
            double h = cell.half / 2;
            for (int quarter = 0; quarter < 4; quarter++) {
                double cx = cell.x + ((quarter & 1) == 0 ? -h : h);
                double cy = cell.y + ((quarter & 2) == 0 ? -h : h);
                Cell part = new Cell(cx, cy, h, depth.at(cx, cy));
                if (part.depth > best.depth) {
                    best = part;
                }
                open.add(part);
            }
        }
        return new Core(best.x, best.y, best.depth);
    }
}
