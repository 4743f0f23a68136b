package longthrow.core.cycle;

import java.util.Arrays;
import java.util.List;
import longthrow.core.flow.PoppetWay;
import longthrow.core.quantity.Require;

/**
 * Effective flow area of one group of valves by lift, told apart by direction: the area that, filled with the flow of a nozzle without loss from the state at rest before it, passes as much (Heywood 1988,
 * section 6.3.2). Without kink over the lift, nothing at no lift, held beyond the highest lift known.
 *
 * <p>Where nothing was read: coefficients of the curtain by lift over head diameter, inlet and exhaust (Heywood 1988, chapter 6, and C. F. Taylor, The Internal Combustion Engine in Theory and Practice, from
 * memory, within 0.06), for plain ports of two-valve heads. Into the cylinder counts as inlet, out of it as exhaust, whichever valve it is; that a valve blown through against its way acts as the
 * other kind is a judgement. No more than the narrowest section between head, seat and port passes (eqs. 6.7 to 6.9) as far as it is known.
 */
public final class ValveFlow {
    /** Half-width within which the published coefficients of the curtain agree, taken as standard uncertainty. */
    public static final double COEFFICIENT_DOUBT = 0.06;

    /** Relative standard uncertainty more, against a valve's own way, which is seldom read: a judgement. */
    public static final double BACKWARD_DOUBT = 0.10;

    /** What is taken where it was read so. */
    public static final String AGAINST =
            "the port was read against its own way; its own way is worked out from that, with doubt";

    private static final double[] LIFT_OVER_HEAD = {0.05, 0.10, 0.15, 0.20, 0.25, 0.30};
    private static final double[] INLET = {0.70, 0.68, 0.65, 0.60, 0.54, 0.48};
    private static final double[] EXHAUST = {0.70, 0.70, 0.68, 0.63, 0.57, 0.50};

    /** Coefficient of the head's area by lift over head diameter. */
    private static final RisingCurve INLET_HEAD = ofHead(INLET);

    private static final RisingCurve EXHAUST_HEAD = ofHead(EXHAUST);

    private static final int PLACES = 60;

    private final RisingCurve into;
    private final RisingCurve outOf;
    private final double intoDoubt;
    private final double outOfDoubt;
    private final double lastLift;
    private final List<String> taken;

    private ValveFlow(
            RisingCurve into,
            RisingCurve outOf,
            double intoDoubt,
            double outOfDoubt,
            double lastLift,
            List<String> taken) {
        this.into = into;
        this.outOf = outOf;
        this.intoDoubt = intoDoubt;
        this.outOfDoubt = outOfDoubt;
        this.lastLift = lastLift;
        this.taken = List.copyOf(taken);
    }

    private static RisingCurve ofHead(double[] ofCurtain) {
        int n = ofCurtain.length;
        double[] x = new double[n + 1];
        double[] y = new double[n + 1];
        for (int i = 0; i < n; i++) {
            x[i + 1] = LIFT_OVER_HEAD[i];
            y[i + 1] = 4 * ofCurtain[i] * LIFT_OVER_HEAD[i];
        }
        return new RisingCurve(x, y);
    }

    /** Relative standard uncertainty of the published coefficients, of inlets or of exhausts, each with its own way. */
    public static double usualDoubt(boolean inlet) {
        return COEFFICIENT_DOUBT
                / Arrays.stream(inlet ? INLET : EXHAUST).average().orElseThrow();
    }

    /** By published coefficients, where no bench was at hand. */
    public static ValveFlow usual(ValveGroup valves, boolean intake) {
        double last = LIFT_OVER_HEAD[LIFT_OVER_HEAD.length - 1] * valves.head();
        double inlet = usualDoubt(true);
        double exhaust = usualDoubt(false);
        return new ValveFlow(
                published(valves, INLET_HEAD, last),
                published(valves, EXHAUST_HEAD, last),
                intake ? inlet : Math.hypot(inlet, BACKWARD_DOUBT),
                intake ? Math.hypot(exhaust, BACKWARD_DOUBT) : exhaust,
                last,
                List.of(
                        "the port's flow was not read: coefficients of plain two-valve ports (Heywood 1988, chapter 6) are taken; beyond a lift of 0.30 of the head's diameter the flow is held"));
    }

    private static RisingCurve published(ValveGroup valves, RisingCurve ofHead, double last) {
        double[] lift = new double[PLACES + 1];
        double[] area = new double[PLACES + 1];
        for (int i = 1; i <= PLACES; i++) {
            lift[i] = last * i / PLACES;
            area[i] = Math.min(valves.headArea() * ofHead.at(lift[i] / valves.head()), narrowest(valves, lift[i]));
        }
        return new RisingCurve(lift, area);
    }

    /**
     * By a bench, which was read in one direction; the other follows as the published coefficients of the two differ, with {@link #BACKWARD_DOUBT}.
     * @param intake whether these are intake valves
     * @throws IllegalArgumentException where one of {@link BenchTable#remarks} refuses the table
     */
    public static ValveFlow read(BenchTable bench, ValveGroup valves, boolean intake) {
        List<BenchTable.Remark> remarks = bench.remarks(valves);
        remarks.stream().filter(BenchTable.Remark::refuses).findFirst().ifPresent(remark -> {
            throw new IllegalArgumentException(
                    "flow table" + (remark.row() < 0 ? "" : ", row " + (remark.row() + 1)) + ": " + remark.words());
        });
        List<BenchTable.Row> open =
                bench.rows().stream().filter(row -> row.lift() > 0).toList();
        int n = open.size();
        double[] lift = new double[n + 1];
        double[] read = new double[n + 1];
        double[] other = new double[n + 1];
        for (int i = 1; i <= n; i++) {
            BenchTable.Row row = open.get(i - 1);
            lift[i] = row.lift();
            read[i] = bench.area(row, valves);
            double inlet = INLET_HEAD.at(lift[i] / valves.head());
            double exhaust = EXHAUST_HEAD.at(lift[i] / valves.head());
            other[i] = read[i] * (bench.toCylinder() ? exhaust / inlet : inlet / exhaust);
        }
        RisingCurve asRead = new RisingCurve(lift, read);
        RisingCurve against = new RisingCurve(lift, other);
        double doubt = bench.doubt(valves);
        double more = Math.hypot(doubt, BACKWARD_DOUBT);
        List<String> taken = new java.util.ArrayList<>();
        remarks.forEach(remark -> taken.add(remark.words()));
        if (bench.toCylinder() != intake) {
            taken.add(AGAINST);
        }
        return bench.toCylinder()
                ? new ValveFlow(asRead, against, doubt, more, bench.lastLift(), taken)
                : new ValveFlow(against, asRead, more, doubt, bench.lastLift(), taken);
    }

    /**
     * Narrowest section between head, seat and port at a lift [m2], in three regimes (Heywood 1988, eqs. 6.7 to 6.9): square to the seat's face, between the edges of the two seats, the throat. Without
     * a seat the curtain stands for the first two.
     */
    private static double narrowest(ValveGroup valves, double lift) {
        double gap = valves.seat()
                .map(seat -> valves.count() * PoppetWay.gap(valves.head(), seat.width(), seat.angle(), lift))
                .orElseGet(() -> valves.curtainArea(lift));
        return Math.min(gap, valves.throatArea());
    }

    /**
     * Into the cylinder [m2].
     * @param lift [m]; 0 or below is shut
     */
    public double into(double lift) {
        return into.at(lift);
    }

    /** Out of the cylinder [m2], as {@link #into}. */
    public double outOf(double lift) {
        return outOf.at(lift);
    }

    /** Relative standard uncertainty of {@link #into}, of all lifts alike. */
    public double intoDoubt() {
        return intoDoubt;
    }

    /** Relative standard uncertainty of {@link #outOf}. */
    public double outOfDoubt() {
        return outOfDoubt;
    }

    /** Highest lift that anything is known of [m]; above it both areas are held. */
    public double lastLift() {
        return lastLift;
    }

    /** What was taken for granted, for people. */
    public List<String> taken() {
        return taken;
    }

    /**
     * Gas speed over that of sound which the valve would need on average: (piston area over mean effective area) times mean piston speed over the speed of sound. Above some 0.5 to 0.6 the
     * cylinder fills poorly (Taylor, chapter 6, from memory).
     */
    public static double machIndex(
            double pistonArea, double meanEffectiveArea, double meanPistonSpeed, double soundSpeed) {
        return Require.positive("piston area [m2]", pistonArea)
                / Require.positive("mean effective area [m2]", meanEffectiveArea)
                * meanPistonSpeed
                / Require.positive("speed of sound [m/s]", soundSpeed);
    }
}
