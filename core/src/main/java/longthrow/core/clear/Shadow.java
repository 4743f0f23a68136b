package longthrow.core.clear;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.function.ToDoubleFunction;
import java.util.stream.Stream;
import longthrow.core.clearance.Outline;
import longthrow.core.clearance.Point;

/** An outline looked through by straight lines, in its own frame [m]. */
final class Shadow {
    /** Chords of an outline that is looked through stand off by no more than this [m]: a tenth of the closest tracing. */
    private static final double CHORDS = 10e-6;

    private final List<List<Point>> loops;

    Shadow(Outline outline) {
        loops = outline.drawn(CHORDS);
    }

    /**
     * From where to where a line is inside, what lies between its pieces filled.
     * @param from least, to largest coordinate along the line
     */
    record Span(double from, double to) {
        double width() {
            return to - from;
        }
    }

    /** Along the level y. */
    Optional<Span> across(double y) {
        return span(y, Point::y, Point::x);
    }

    /** Along the column x. */
    Optional<Span> up(double x) {
        return span(x, Point::x, Point::y);
    }

    private Optional<Span> span(double at, ToDoubleFunction<Point> fixed, ToDoubleFunction<Point> along) {
        double from = Double.POSITIVE_INFINITY;
        double to = Double.NEGATIVE_INFINITY;
        for (List<Point> loop : loops) {
            for (int i = 0; i < loop.size(); i++) {
                Point a = loop.get(i);
                Point b = loop.get((i + 1) % loop.size());
                double off = fixed.applyAsDouble(a) - at;
                double next = fixed.applyAsDouble(b) - at;
                if (off * next <= 0) {
                    double share = off == next ? 0 : off / (off - next);
                    double where = along.applyAsDouble(a) + share * (along.applyAsDouble(b) - along.applyAsDouble(a));
                    from = Math.min(from, where);
                    to = Math.max(to, where);
                }
            }
        }
        return from <= to ? Optional.of(new Span(from, to)) : Optional.empty();
    }

    /** Levels between two, both among them, at which the outline has its corners: what is straight between them is narrowest at one of them. */
    private Stream<Double> levels(double low, double high) {
        List<Double> levels = new ArrayList<>(List.of(low, high));
        loops.forEach(loop -> loop.forEach(p -> {
            if (p.y() > low && p.y() < high) {
                levels.add(p.y());
            }
        }));
        return levels.stream();
    }

    /** Where it is narrowest between two levels; empty where it does not reach all of them. */
    Optional<Double> narrowest(double low, double high) {
        List<Optional<Span>> all = levels(low, high).map(this::across).toList();
        return all.stream().anyMatch(Optional::isEmpty)
                ? Optional.empty()
                : all.stream().flatMap(Optional::stream).map(Span::width).min(Double::compare);
    }

    /**
     * How far out it reaches between two levels; empty where it reaches none of them.
     * @param side 1 towards the anti-thrust side, -1 towards the other
     */
    Optional<Double> out(int side, double low, double high) {
        Stream<Double> ends = Stream.of(low, high)
                .map(this::across)
                .flatMap(Optional::stream)
                .map(span -> side > 0 ? span.to() : -span.from());
        Stream<Double> corners = loops.stream()
                .flatMap(List::stream)
                .filter(p -> p.y() > low && p.y() < high)
                .map(p -> side * p.x());
        return Stream.concat(ends, corners).max(Double::compare);
    }

    /** The farthest from (0, 0) of those corners that are meant. */
    Optional<Double> farthest(Predicate<Point> meant) {
        return loops.stream()
                .flatMap(List::stream)
                .filter(meant)
                .map(p -> Math.hypot(p.x(), p.y()))
                .max(Double::compare);
    }

    /** Height of its middle over (0, 0). */
    double middle() {
        double twice = 0;
        double moment = 0;
        for (List<Point> loop : loops) {
            for (int i = 0; i < loop.size(); i++) {
                Point a = loop.get(i);
                Point b = loop.get((i + 1) % loop.size());
                double cross = a.x() * b.y() - b.x() * a.y();
                twice += cross;
                moment += cross * (a.y() + b.y());
            }
        }
        return moment / (3 * twice);
    }

    /** From (0, 0) straight up to the first edge there. */
    double firstAbove() {
        double nearest = Double.POSITIVE_INFINITY;
        for (List<Point> loop : loops) {
            for (int i = 0; i < loop.size(); i++) {
                Point a = loop.get(i);
                Point b = loop.get((i + 1) % loop.size());
                if (a.x() > 0 != b.x() > 0) {
                    double y = a.y() + (b.y() - a.y()) * a.x() / (a.x() - b.x());
                    nearest = y > 0 ? Math.min(nearest, y) : nearest;
                }
            }
        }
        return nearest;
    }
}
