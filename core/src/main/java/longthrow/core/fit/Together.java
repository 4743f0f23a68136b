package longthrow.core.fit;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.hipparchus.exception.MathIllegalStateException;
import org.hipparchus.optim.PointValuePair;
import org.hipparchus.optim.linear.LinearConstraint;
import org.hipparchus.optim.linear.LinearConstraintSet;
import org.hipparchus.optim.linear.LinearObjectiveFunction;
import org.hipparchus.optim.linear.NonNegativeConstraint;
import org.hipparchus.optim.linear.Relationship;
import org.hipparchus.optim.linear.SimplexSolver;
import org.hipparchus.optim.nonlinear.scalar.GoalType;

/**
 * Whether pieces within their tolerances exist that keep all limits of the stack at once. Each limit by itself may be met by a tall piston or by a short one,
 * and then by no one piston. For one bore and one gasket hole every limit is linear in the other sizes, so a linear programme decides exactly; bore and hole
 * are tried at {@link #STEPS} places of their tolerance, so a yes is proven, and a no means that none was found.
 */
final class Together {
    /** Places at which bore and hole are tried. */
    private static final int STEPS = 9;
    /** A limit missed by less than this is met [mm, cm3]: rounding of the solver, far below anything made. */
    private static final double ROUNDING = 1e-7;

    private static final double SOLVED_TO = 1e-9;

    private static final double MILLIMETRE = 1e-9; // from picometres
    private static final double CUBIC_CENTIMETRE = 1e6; // from cubic metres
    private static final double PER_MILLIMETRE_CUBED = 1e-3; // cubic centimetres

    /** Columns of the programme: lengths in millimetres, volumes in cubic centimetres. */
    enum Size {
        DECK_HEIGHT,
        STROKE,
        ROD,
        HEIGHT,
        GASKET,
        SKIRT,
        COUNTERWEIGHT,
        LAND,
        SLEEVE,
        CHAMBER,
        CROWN,
        BORE,
        HOLE,
        /** By how much the worst limit is kept, above {@link #FURTHEST} below it. */
        MARGIN
    }

    private static final List<Size> COLUMNS = List.of(Size.values());

    /** No limit is missed by more than this [mm, cm3] where each can be met by itself. */
    private static final double FURTHEST = 100;

    private final StackColumns c;
    private final StackLimits limits;

    Together(StackColumns columns, StackLimits limits) {
        this.c = columns;
        this.limits = limits;
    }

    /**
     * One set of sizes [mm, cm3] that keeps all limits, of a combination of these columns that keeps each limit by itself at least with selection; empty when
     * none was found.
     * @param mayBore where the bore must lie for the piston to run in it [pm]
     */
    Optional<Map<Size, Double>> pieces(Combination one, Window mayBore) {
        Box bore = Box.of(c.pistons.bore(), one.piston()).in(mayBore);
        Box hole = Box.of(c.gaskets.bore(), one.gasket());
        boolean holeAsked = !limits.gasketOverBore().isAny() && hole.isKnown();
        if (holeAsked) {
            Window over = limits.gasketOverBore();
            bore = bore.in(new Window(hole.low - over.most(), hole.high - over.least()));
        }
        if (bore.isEmpty()) {
            return Optional.empty();
        }
        for (int n = 0; n < STEPS; n++) {
            long b = bore.at(middleFirst(n));
            Window over = limits.gasketOverBore();
            Box holes = holeAsked ? hole.in(new Window(b + over.least(), b + over.most())) : hole;
            for (int m = 0; !holes.isEmpty() && m < STEPS; m++) {
                Optional<Map<Size, Double>> found = feasible(one, b, holes.at(middleFirst(m)));
                if (found.isPresent()) {
                    return found;
                }
                if (holes.low == holes.high) {
                    break;
                }
            }
            if (bore.low == bore.high) {
                break;
            }
        }
        return Optional.empty();
    }

    /** 4, 0, 8, 1, 7 …: the middle and the ends first. */
    private static int middleFirst(int n) {
        if (n == 0) {
            return STEPS / 2;
        }
        int k = n - 1;
        int fromEnd = k / 2;
        return k % 2 == 0 ? fromEnd : STEPS - 1 - fromEnd;
    }

    /** From low to high [pm]; not known: {@link Sizes#NOT_SAID} twice. */
    private record Box(long low, long high) {
        static Box of(Sizes sizes, int row) {
            return sizes.isKnown(row)
                    ? new Box(sizes.value[row] - sizes.half[row], sizes.value[row] + sizes.half[row])
                    : new Box(Sizes.NOT_SAID, Sizes.NOT_SAID);
        }

        boolean isKnown() {
            return low != Sizes.NOT_SAID;
        }

        boolean isEmpty() {
            return low > high;
        }

        Box in(Window window) {
            return isKnown() ? new Box(Math.max(low, window.least()), Math.min(high, window.most())) : this;
        }

        long at(int step) {
            return isKnown() ? low + (high - low) * step / (STEPS - 1) : low;
        }
    }

    private Optional<Map<Size, Double>> feasible(Combination one, long bore, long hole) {
        Programme programme = new Programme();
        programme.box(Size.BORE, new Box(bore, bore));
        if (hole != Sizes.NOT_SAID) {
            programme.box(Size.HOLE, new Box(hole, hole));
        }
        programme.box(Size.DECK_HEIGHT, Box.of(limits.deckHeight(), 0));
        programme.box(Size.STROKE, Box.of(c.cranks.stroke(), one.crank()));
        programme.box(Size.ROD, Box.of(c.rods.length(), one.rod()));
        programme.box(Size.HEIGHT, Box.of(c.pistons.height(), one.piston()));
        programme.box(Size.GASKET, Box.of(c.gaskets.thickness(), one.gasket()));
        double[] deck = form(Size.DECK_HEIGHT, 1, Size.STROKE, -0.5, Size.ROD, -1, Size.HEIGHT, -1);
        programme.within(deck, limits.deck());
        programme.within(plus(deck, Size.GASKET, 1), limits.squish());
        if (limits.rodRatioMillionths() > 0) {
            programme.atLeast(form(Size.ROD, 1, Size.STROKE, -limits.rodRatioMillionths() / 1e6), 0);
        }
        Box land = Box.of(c.pistons.topLand(), one.piston());
        if (land.isKnown()) {
            programme.box(Size.LAND, land);
            programme.within(plus(deck, Size.LAND, 1), limits.ringBelowDeck());
        }
        skirt(one, programme);
        flutter(one, programme);
        volumes(one, bore, hole, deck, programme);
        return programme.solved();
    }

    /** The longest stroke with the thinnest ring; by the shortest rod, so that a yes stays proven. */
    private void flutter(Combination one, Programme programme) {
        Box ring = Box.of(c.pistons.topRing(), one.piston());
        if (Double.isNaN(limits.wantedSpeed()) || !ring.isKnown()) {
            return;
        }
        double rod = MILLIMETRE * Box.of(c.rods.length(), one.rod()).low;
        double thickness = MILLIMETRE * ring.low / 1e3; // m
        double pull = 1e3 * limits.ringFlutter() / thickness / (limits.wantedSpeed() * limits.wantedSpeed()); // mm
        // r (1 + r / l) = pull
        programme.atMost(form(Size.STROKE, 1), rod * (Math.sqrt(1 + 4 * pull / rod) - 1));
    }

    private void skirt(Combination one, Programme programme) {
        Box skirt = Box.of(c.pistons.skirt(), one.piston());
        if (!skirt.isKnown()) {
            return;
        }
        programme.box(Size.SKIRT, skirt);
        Box weight = Box.of(c.cranks.counterweight(), one.crank());
        if (weight.isKnown()) {
            programme.box(Size.COUNTERWEIGHT, weight);
            programme.within(
                    form(Size.ROD, 1, Size.STROKE, -0.5, Size.SKIRT, -1, Size.COUNTERWEIGHT, -1), limits.skirtGap());
        }
        Box sleeve = Box.of(limits.sleeve(), 0);
        if (sleeve.isKnown()) {
            programme.box(Size.SLEEVE, sleeve);
            double[] out = form(Size.DECK_HEIGHT, 1, Size.ROD, -1, Size.SKIRT, 1, Size.STROKE, 0.5);
            programme.within(plus(out, Size.SLEEVE, -1), limits.skirtOut());
        }
    }

    /** Swept volume, ratio and clearance volume, the two last where every volume is known. */
    private void volumes(Combination one, long bore, long hole, double[] deck, Programme programme) {
        double b = MILLIMETRE * bore;
        double area = Math.PI / 4 * b * b * PER_MILLIMETRE_CUBED; // cm3 for each mm
        double[] swept = form(Size.STROKE, area);
        programme.atLeast(swept, limits.sweptLeast() * CUBIC_CENTIMETRE);
        programme.atMost(swept, limits.sweptMost() * CUBIC_CENTIMETRE);
        double crown = c.pistons.crown().value[one.piston()];
        if (Double.isNaN(crown) || Double.isNaN(limits.chamber()) || hole == Sizes.NOT_SAID) {
            return;
        }
        programme.box(
                Size.CHAMBER,
                (limits.chamber() - limits.chamberHalf()) * CUBIC_CENTIMETRE,
                (limits.chamber() + limits.chamberHalf()) * CUBIC_CENTIMETRE);
        double crownHalf = c.pistons.crown().half[one.piston()];
        programme.box(Size.CROWN, (crown - crownHalf) * CUBIC_CENTIMETRE, (crown + crownHalf) * CUBIC_CENTIMETRE);
        double h = MILLIMETRE * hole;
        double[] room = plus(times(deck, area), Size.GASKET, Math.PI / 4 * h * h * PER_MILLIMETRE_CUBED);
        room = plus(plus(room, Size.CHAMBER, 1), Size.CROWN, 1);
        programme.atLeast(room, limits.clearanceLeast() * CUBIC_CENTIMETRE);
        // ratio at least r: swept is at least (r - 1) of the room
        programme.atLeast(plus(times(room, 1 - limits.ratioLeast()), Size.STROKE, area), 0);
        if (limits.ratioMost() < Double.POSITIVE_INFINITY) {
            programme.atMost(plus(times(room, 1 - limits.ratioMost()), Size.STROKE, area), 0);
        }
    }

    // ---- linear forms

    private static int column(Size size) {
        return COLUMNS.indexOf(size);
    }

    private static double[] form(Object... sizesAndFactors) {
        double[] form = new double[COLUMNS.size()];
        for (int n = 0; n < sizesAndFactors.length; n += 2) {
            form[column((Size) sizesAndFactors[n])] = ((Number) sizesAndFactors[n + 1]).doubleValue();
        }
        return form;
    }

    private static double[] plus(double[] form, Size size, double factor) {
        double[] sum = form.clone();
        sum[column(size)] += factor;
        return sum;
    }

    private static double[] times(double[] form, double factor) {
        double[] product = form.clone();
        for (int n = 0; n < product.length; n++) {
            product[n] *= factor;
        }
        return product;
    }

    /** Sizes counted from the low end of their box, so that none is negative. */
    private static final class Programme {
        private final Set<Size> boxed = EnumSet.noneOf(Size.class);
        private final double[] low = new double[COLUMNS.size()];
        private final List<LinearConstraint> constraints = new ArrayList<>();
        private final List<double[]> forms = new ArrayList<>();
        private final List<Double> least = new ArrayList<>();

        void box(Size size, Box box) {
            box(size, MILLIMETRE * box.low, MILLIMETRE * box.high);
        }

        void box(Size size, double from, double to) {
            low[column(size)] = from;
            boxed.add(size);
            constraints.add(new LinearConstraint(form(size, 1), Relationship.LEQ, Math.max(0, to - from)));
        }

        void within(double[] form, Window window) {
            if (window.least() != Window.NO_LEAST) {
                atLeast(form, MILLIMETRE * window.least());
            }
            if (window.most() != Window.NO_MOST) {
                atMost(form, MILLIMETRE * window.most());
            }
        }

        void atLeast(double[] form, double value) {
            if (value > Double.NEGATIVE_INFINITY) {
                forms.add(form);
                least.add(value);
            }
        }

        void atMost(double[] form, double value) {
            if (value < Double.POSITIVE_INFINITY) {
                atLeast(times(form, -1), -value);
            }
        }

        Optional<Map<Size, Double>> solved() {
            for (int n = 0; n < forms.size(); n++) {
                double[] form = forms.get(n);
                double atLow = 0;
                for (int k = 0; k < form.length; k++) {
                    atLow += form[k] * low[k];
                }
                // form (low + x) >= least + margin - FURTHEST
                constraints.add(new LinearConstraint(
                        plus(form, Size.MARGIN, -1), Relationship.GEQ, least.get(n) - atLow - FURTHEST));
            }
            constraints.add(new LinearConstraint(form(Size.MARGIN, 1), Relationship.LEQ, FURTHEST));
            PointValuePair best;
            try {
                best = new SimplexSolver(SOLVED_TO)
                        .optimize(
                                new LinearObjectiveFunction(form(Size.MARGIN, 1), 0),
                                new LinearConstraintSet(constraints),
                                GoalType.MAXIMIZE,
                                new NonNegativeConstraint(true));
            } catch (MathIllegalStateException e) {
                return Optional.empty(); // some limit is missed by more than FURTHEST
            }
            if (best.getValue() < FURTHEST - ROUNDING) {
                return Optional.empty();
            }
            Map<Size, Double> pieces = new EnumMap<>(Size.class);
            for (Size size : boxed) {
                pieces.put(size, low[column(size)] + best.getPoint()[column(size)]);
            }
            return Optional.of(pieces);
        }
    }
}
