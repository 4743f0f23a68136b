package longthrow.core.clearance;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.DoubleFunction;

/**
 * Gap of a pair through two turns.
 *
 * <p><b>The signed gap.</b> Apart, it is the distance of the two bodies. Where they overlap it is minus the depth of penetration: the largest depth to which a
 * point of one body lies inside the other, measured to the nearest point of the other's edge, the larger of both ways, so that it is what has to come off.
 * Of bodies with several outlines the deepest pair of outlines counts. Less the play of the {@link Pair}: bearings let the two come closer by
 * all of it, since the worst way may be another one at every angle.
 *
 * <p><b>The least one is found for sure.</b> The signed gap changes no faster with the crank angle than the points of one body move past the other, which the
 * motions bound on every interval; so between two angles it stays above half the sum of both gaps less that speed times the interval (Piyavskii 1972,
 * Shubert 1972). Intervals are halved until none can hold a gap less than the least one found by more than {@link #TOLERANCE}; from the angle of a gap just worked out
 * on, a {@link Strip} tells that of most of them at once.
 * Where nothing goes at half speed, one turn stands for both, and the least gap is told in the first.
 */
public final class Sweep {
    /** How far the least gap there is may lie below the one reported [m]: a sixth of the 0.01 mm that is promised. */
    public static final double TOLERANCE = 1.5e-6;

    private static final double TURN = 2 * Math.PI;
    /** First looks a turn. */
    private static final int LOOKS = 48;

    private static final double STEP = TURN / LOOKS;
    private static final int STACK = 4096;
    /** Where closing in on an angle ends [rad]. */
    private static final double ANGLE = 2e-6;
    /** By how much steps shorten on the way. */
    private static final double SHORTENING = 0.3;

    private final Pair pair;
    private final List<PairGap> gaps = new ArrayList<>();
    /** Until all stands as before: one where nothing goes at half speed. */
    private final int turns;

    private final int start;
    private final double[] from = new double[STACK];
    private final double[] to = new double[STACK];
    private final double[] atFrom = new double[STACK];
    private final double[] atTo = new double[STACK];
    /** A bound on how fast the gap changes within, that of a longer stretch. */
    private final double[] fastest = new double[STACK];

    private double best = Double.POSITIVE_INFINITY;
    private double bestAngle;
    private int bestOf;

    private Sweep(Pair pair) {
        this.pair = pair;
        turns = Math.max(pair.one().motion().turns(), pair.other().motion().turns());
        start = turns * LOOKS;
        for (Outline one : pair.one().outlines()) {
            for (Outline other : pair.other().outlines()) {
                gaps.add(new PairGap(pair.one().motion(), one, pair.other().motion(), other));
            }
        }
    }

    /** The gap at one crank angle [rad]; empty where the two share no depth along the crank axis and cannot touch. */
    public static Optional<Closest> at(Pair pair, double angle) {
        if (!Double.isFinite(angle)) {
            throw new IllegalArgumentException("a gap is asked for at " + angle + " rad; give a finite crank angle");
        }
        return pair.sharesDepth() ? Optional.of(new Sweep(pair).here(angle)) : Optional.empty();
    }

    /** The least gap over two turns, guaranteed to {@link #TOLERANCE}; empty where the two share no depth along the crank axis and cannot touch. */
    public static Optional<Closest> least(Pair pair) {
        return pair.sharesDepth() ? Optional.of(new Sweep(pair).least()) : Optional.empty();
    }

    /** The least over several conditions: rocked one way and the other, cold and running. Empty where none can touch. */
    public static Optional<Closest> least(List<Pair> conditions) {
        return conditions.stream()
                .map(Sweep::least)
                .flatMap(Optional::stream)
                .min((a, b) -> Double.compare(a.gap(), b.gap()));
    }

    /** Whether the two touch anywhere in two turns, which is quicker to know than the gap; within {@link #TOLERANCE} either answer is right. */
    public static boolean touches(Pair pair) {
        // drawn too large: how deep they overlap matters then, which only the least gap tells
        return pair.play() < 0
                ? least(pair).filter(closest -> closest.gap() < 0).isPresent()
                : pair.sharesDepth() && new Sweep(pair).touchesSomewhere();
    }

    /**
     * Gap against crank angle, for a chart: at so many angles evenly from 0, the last one before two turns are full. Empty where the two share no depth.
     * @param count at least 1
     */
    public static List<GapAt> curve(Pair pair, int count) {
        if (count < 1) {
            throw new IllegalArgumentException("a curve of " + count + " angles is asked for; give 1 or more");
        }
        if (!pair.sharesDepth()) {
            return List.of();
        }
        Sweep sweep = new Sweep(pair);
        GapAt[] curve = new GapAt[count];
        boolean isTwiceTheSame = sweep.turns == 1 && count % 2 == 0;
        for (int k = 0; k < count; k++) {
            double angle = 2 * TURN * k / count;
            curve[k] = new GapAt(
                    angle,
                    isTwiceTheSame && k >= count / 2 ? curve[k - count / 2].gap() : sweep.gap(angle) - pair.play());
        }
        return List.of(curve);
    }

    /**
     * Least gap against the phase of the camshaft.
     * @param byPhase the pair with the camshaft this much later [rad of crank]
     * @param phases  in the order wanted; {@link #oneToothOut} gives the two of a tooth
     */
    public static List<GapAt> againstPhase(DoubleFunction<Pair> byPhase, List<Double> phases) {
        List<GapAt> gaps = new ArrayList<>();
        for (double phase : phases) {
            least(byPhase.apply(phase)).ifPresent(closest -> gaps.add(new GapAt(phase, closest.gap())));
        }
        return List.copyOf(gaps);
    }

    /**
     * By how much a camshaft is late or early with its wheel one tooth out [rad of crank]: two turns of the crank by the teeth of the camshaft's wheel.
     * @param camTeeth at least 3
     */
    public static double oneToothOut(int camTeeth) {
        if (camTeeth < 3) {
            throw new IllegalArgumentException(
                    "a camshaft wheel has " + camTeeth + " teeth; count them, there are more than 2");
        }
        return 2 * TURN / camTeeth;
    }

    /**
     * A gap at an angle, or at a phase.
     * @param angle [rad]
     * @param gap   [m]
     */
    public record GapAt(double angle, double gap) {}

    private double gap(double angle) {
        double least = Double.POSITIVE_INFINITY;
        for (PairGap outlines : gaps) {
            least = Math.min(least, outlines.next(angle, least));
        }
        return least;
    }

    private Closest here(double angle) {
        best = Double.POSITIVE_INFINITY;
        for (int k = 0; k < gaps.size(); k++) {
            offer(gaps.get(k).at(angle), angle, k);
        }
        return found();
    }

    private Closest found() {
        double gap = gaps.get(bestOf).at(bestAngle);
        return gaps.get(bestOf).closest(gap - pair.play(), bestAngle);
    }

    private void offer(double gap, double angle, int of) {
        if (gap < best) {
            best = gap;
            bestAngle = angle;
            bestOf = of;
        }
    }

    private Closest least() {
        double[][] first = new double[gaps.size()][start + 1];
        for (int k = 0; k < gaps.size(); k++) {
            for (int i = 0; i < start; i++) {
                first[k][i] = gaps.get(k).nextNear(STEP * i, best);
                offer(first[k][i], STEP * i, k);
            }
            first[k][start] = first[k][0];
        }
        closeIn(STEP / 2);
        for (int k = 0; k < gaps.size(); k++) {
            if (best > -mostDepth() + 2 * TOLERANCE) {
                halve(k, first[k]);
            }
        }
        closeIn(STEP / 64);
        bestAngle -= turns * TURN * Math.floor(bestAngle / (turns * TURN));
        return found();
    }

    /** No depth exceeds that of the deepest core; infinite while nothing overlaps, which spares looking for cores. */
    private double mostDepth() {
        return best >= 0
                ? Double.POSITIVE_INFINITY
                : gaps.stream().mapToDouble(PairGap::deepestCore).max().orElse(Double.POSITIVE_INFINITY);
    }

    /** Goes down to the bottom near the least gap so far: a good one early saves most of the halving. */
    private void closeIn(double firstStep) {
        PairGap outlines = gaps.get(bestOf);
        for (double step = firstStep; step > ANGLE; step *= SHORTENING) {
            double angle = bestAngle;
            offer(outlines.at(angle - step), angle - step, bestOf);
            if (bestAngle == angle) {
                offer(outlines.at(angle + step), angle + step, bestOf);
            }
        }
    }

    private void halve(int k, double[] first) {
        PairGap outlines = gaps.get(k);
        for (int i = 0; i < start; i++) {
            int top = 0;
            put(top, STEP * i, STEP * (i + 1), first[i], first[i + 1]);
            fastest[top] = Double.POSITIVE_INFINITY;
            while (top >= 0) {
                double a = from[top];
                double b = to[top];
                double ga = atFrom[top];
                double gb = atTo[top--];
                double half = 0.5 * (b - a);
                double middle = a + half;
                double enoughFor = 0.5 * (ga + gb) - (best - TOLERANCE);
                if (fastest[top + 1] * half <= enoughFor || half < ANGLE) {
                    continue;
                }
                outlines.place(middle);
                double speed = outlines.steepest(middle, half);
                double change = speed * half;
                if (change <= enoughFor) {
                    continue;
                }
                boolean apart = Math.max(ga, gb) > change;
                double enough = Math.max(best, 2 * (best - TOLERANCE) + change - Math.min(ga, gb));
                boolean open = apart || enough < 0;
                double g = outlines.gap(open ? enough : Double.POSITIVE_INFINITY, true);
                if (open && g >= enough) {
                    continue; // neither half can hold less
                }
                offer(g, middle, k);
                boolean laid = outlines.layStrip(g);
                if (!laid || outlines.leastOn(middle, -half) < best - TOLERANCE) {
                    put(++top, a, middle, ga, g);
                    fastest[top] = speed;
                }
                if (!laid || outlines.leastOn(middle, half) < best - TOLERANCE) {
                    put(++top, middle, b, g, gb);
                    fastest[top] = speed;
                }
            }
        }
    }

    /** A stretch still to be looked at, with the gaps at its two ends. */
    private void put(int place, double a, double b, double atA, double atB) {
        from[place] = a;
        to[place] = b;
        atFrom[place] = atA;
        atTo[place] = atB;
    }

    private boolean touchesSomewhere() {
        double limit = pair.play();
        double[] first = new double[start + 1];
        for (PairGap outlines : gaps) {
            for (int i = 0; i < start; i++) {
                outlines.place(STEP * i);
                first[i] = outlines.gap(Double.POSITIVE_INFINITY, false);
                if (first[i] < limit) {
                    return true;
                }
            }
            first[start] = first[0];
            if (touchesBetween(outlines, first, limit)) {
                return true;
            }
        }
        return false;
    }

    private boolean touchesBetween(PairGap outlines, double[] first, double limit) {
        for (int i = 0; i < start; i++) {
            int top = 0;
            put(top, STEP * i, STEP * (i + 1), first[i], first[i + 1]);
            while (top >= 0) {
                double a = from[top];
                double b = to[top];
                double ga = atFrom[top];
                double gb = atTo[top--];
                double half = 0.5 * (b - a);
                double middle = a + half;
                outlines.place(middle);
                double change = outlines.steepest(middle, half) * half;
                if (0.5 * (ga + gb) - change >= limit - TOLERANCE || half < ANGLE) {
                    continue;
                }
                double g = outlines.gap(Double.POSITIVE_INFINITY, false);
                if (g < limit) {
                    return true;
                }
                boolean laid = outlines.layStrip(g);
                if (!laid || outlines.leastOn(middle, -half) < limit - TOLERANCE) {
                    put(++top, a, middle, ga, g);
                }
                if (!laid || outlines.leastOn(middle, half) < limit - TOLERANCE) {
                    put(++top, middle, b, g, gb);
                }
            }
        }
        return false;
    }

    /** How many gaps were worked out for a least one, for measurements. */
    static long evaluations(Pair pair) {
        Sweep sweep = new Sweep(pair);
        Closest closest = sweep.least();
        return Double.isNaN(closest.gap())
                ? 0
                : sweep.gaps.stream().mapToLong(PairGap::evaluations).sum();
    }
}
