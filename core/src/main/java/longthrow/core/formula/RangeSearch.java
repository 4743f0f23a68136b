package longthrow.core.formula;

import java.util.Arrays;
import java.util.Comparator;
import java.util.PriorityQueue;

/**
 * Finds the range of a formula over a box by branch and bound with monotonicity (Hansen &amp; Walster, Global Optimization
 * Using Interval Analysis, 2nd ed., 2004; from memory). An input with a one-signed derivative is put at its better end,
 * after which the narrower box may show others one-signed; a box of which nothing is left but a corner is done. A box
 * with open inputs is bounded by the mean value form and split along the input that contributes most.
 */
final class RangeSearch {
    /** Boxes looked at for each end before the search settles for an enclosure; some tens of milliseconds for 70 steps at worst. */
    private static final int MOST_BOXES = 1000;

    /** The search stops when this part of the width of the plain interval evaluation is all that is uncertain. */
    private static final double GOOD_ENOUGH = 1e-9;

    private final Formula formula;

    RangeSearch(Formula formula) {
        this.formula = formula;
    }

    Range over(Interval[] box) {
        IntervalEvaluation whole = new IntervalEvaluation(formula, box);
        if (!whole.isContinuous() || !whole.result().isBounded()) {
            return new Range(whole.result(), oneValueTaken(box), Range.Quality.ENCLOSURE);
        }
        double goodEnough = GOOD_ENOUGH * whole.result().width();
        End highest = new End(box, 1, goodEnough).search();
        End lowest = new End(box, -1, goodEnough).search();
        Interval interval = new Interval(
                Math.max(0 - lowest.bound, whole.result().lo()),
                Math.min(highest.bound, whole.result().hi()));
        Interval attained = new Interval(0 - lowest.best, Math.max(0 - lowest.best, highest.best));
        boolean exact = lowest.exact && highest.exact;
        return new Range(interval, attained, exact ? Range.Quality.EXACT : Range.Quality.ENCLOSURE);
    }

    /** Where there is no continuity nothing is known to lie between two values: one value only. */
    private Interval oneValueTaken(Interval[] box) {
        for (double part : new double[] {0.5, 0.382, 0.271, 0.864, 0.0, 1.0}) {
            double value = formula.at(Arrays.stream(box)
                    .mapToDouble(side -> side.middle() + (part - 0.5) * (side.isBounded() ? side.width() : 1))
                    .toArray());
            if (Double.isFinite(value)) {
                return Interval.point(value);
            }
        }
        throw new OutsideDomainException(
                formula.name(), new OutsideDomainException("a division", Interval.ZERO, "a divisor other than 0"));
    }

    /** A part of the box still to be split, along side number {@code split}; no value in it exceeds the bound. */
    private static final class Part {
        private final Interval[] box;
        private final double bound;
        private final int split;

        Part(Interval[] box, double bound, int split) {
            this.box = box;
            this.bound = bound;
            this.split = split;
        }

        double bound() {
            return bound;
        }
    }

    /** The search for one end: the largest value of {@code sign} times the formula. */
    private final class End {
        private final double sign;
        private final Interval[] start;
        private final double goodEnough;
        /** No value exceeds this. */
        private double bound = Double.NEGATIVE_INFINITY;
        /** A value that is taken (rounded down). */
        private double best = Double.NEGATIVE_INFINITY;

        /** Whether that value and the bound are one and the same, but for rounding. */
        private boolean exact;

        End(Interval[] start, double sign, double goodEnough) {
            this.goodEnough = goodEnough;
            this.start = start;
            this.sign = sign;
        }

        End search() {
            PriorityQueue<Part> open =
                    new PriorityQueue<>(Comparator.comparingDouble(Part::bound).reversed());
            double cornerBound = examine(start, Double.POSITIVE_INFINITY, open);
            int boxes = 1;
            while (!open.isEmpty() && boxes < MOST_BOXES) {
                Part top = open.peek();
                if (top.bound <= cornerBound || top.bound - best <= goodEnough) {
                    break;
                }
                open.poll();
                Interval side = top.box[top.split];
                for (Interval half :
                        new Interval[] {new Interval(side.lo(), side.middle()), new Interval(side.middle(), side.hi())
                        }) {
                    Interval[] part = top.box.clone();
                    part[top.split] = half;
                    cornerBound = Math.max(cornerBound, examine(part, top.bound, open));
                    boxes++;
                }
            }
            double openBound = open.isEmpty() ? Double.NEGATIVE_INFINITY : open.peek().bound;
            exact = Math.max(openBound, best) <= cornerBound;
            bound = Math.max(Math.max(openBound, best), cornerBound); // parts dropped unseen hold nothing above best
            return this;
        }

        /**
         * Narrows a part of the box as far as signs allow. Adds it to the open ones unless it is down to a corner, or
         * cannot hold the largest value.
         *
         * @return the bound if it is a corner, minus infinity otherwise
         */
        private double examine(Interval[] given, double parentBound, PriorityQueue<Part> open) {
            Interval[] box = given;
            while (true) {
                IntervalEvaluation evaluation = new IntervalEvaluation(formula, box);
                Interval value = signed(evaluation.result());
                Interval[] gradient = evaluation.gradient();
                Interval[] narrowed = toBetterEnds(box, gradient);
                if (isPoint(box)) {
                    best = Math.max(best, value.lo());
                    return value.hi();
                }
                if (Arrays.equals(box, narrowed)) {
                    addOpen(box, value, gradient, parentBound, open);
                    return Double.NEGATIVE_INFINITY;
                }
                box = narrowed;
            }
        }

        private Interval[] toBetterEnds(Interval[] box, Interval[] gradient) {
            Interval[] narrowed = box.clone();
            for (int i = 0; i < box.length; i++) {
                Interval slope = signed(gradient[i]);
                if (slope.lo() >= 0) {
                    narrowed[i] = Interval.point(box[i].hi());
                } else if (slope.hi() <= 0) {
                    narrowed[i] = Interval.point(box[i].lo());
                }
            }
            return narrowed;
        }

        private void addOpen(
                Interval[] box, Interval value, Interval[] gradient, double parentBound, PriorityQueue<Part> open) {
            Interval[] middle = Arrays.stream(box)
                    .map(side -> Interval.point(side.middle()))
                    .toArray(Interval[]::new);
            Interval meanValueForm = signed(new IntervalEvaluation(formula, middle).result());
            best = Math.max(best, meanValueForm.lo());
            int split = 0;
            double most = -1;
            for (int i = 0; i < box.length; i++) {
                if (!box[i].isPoint()) {
                    Interval contribution = signed(gradient[i]).times(box[i].minus(middle[i]));
                    meanValueForm = meanValueForm.plus(contribution);
                    if (contribution.width() > most) {
                        most = contribution.width();
                        split = i;
                    }
                }
            }
            double partBound = Math.min(parentBound, Math.min(value.hi(), meanValueForm.hi()));
            if (partBound > best) {
                open.add(new Part(box, partBound, split));
            }
        }

        private Interval signed(Interval interval) {
            return sign > 0 ? interval : interval.negated();
        }

        private boolean isPoint(Interval[] box) {
            return Arrays.stream(box).allMatch(Interval::isPoint);
        }
    }
}
