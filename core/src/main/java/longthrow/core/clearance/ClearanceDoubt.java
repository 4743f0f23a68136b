package longthrow.core.clearance;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import longthrow.core.formula.SampleSource;
import longthrow.core.measurement.Law;
import longthrow.core.measurement.StudentT;

/**
 * How sure a least gap is.
 *
 * <p>The gap is worked out with each parameter moved to both sides by itself, and between and beyond taken as a sum of parabolas, one for each parameter; that
 * sum is sampled (JCGM 101:2008, propagation of distributions). It is then held against the gap itself at {@link #CHECKS} draws: where it misses
 * by more than {@link #CLOSE} of the spread, as where the nearest place jumps from one to another, {@link #WHOLE} draws (or as many as are asked for) of the gap itself are taken instead.
 * A probability is then that of the sum over all its draws, plus what the gap says otherwise at its own (a control variate): few draws leave little scatter.
 *
 * @param nominal  the least gap at the best estimates
 * @param low      lower end of the 95 % interval of the gap [m]
 * @param high     upper end
 * @param worst    the gap with every parameter at the end of its 95 % range, a rectangular one at its limit, on the side that closes the gap [m]
 * @param contact  probability of contact, 0 to 1
 * @param shares   of each parameter in the variance of the gap, 0 to 1, largest first; empty where nothing is in doubt
 * @param isWhole  whether every draw was a gap worked out in full
 * @param below    probability that the gap is less than each of the limits asked about, in their order
 */
public record ClearanceDoubt(
        Closest nominal,
        double low,
        double high,
        double worst,
        double contact,
        Map<String, Double> shares,
        boolean isWhole,
        List<Double> below) {
    /** Draws of the sum of parabolas. A 95 % end then scatters by about 1 % of the spread, a probability by 0.3 points at most. */
    static final int DRAWS = 40_000;
    /** Draws at which it is held against the gap itself. */
    static final int CHECKS = 48;
    /** Root mean square miss, as a share of the spread, up to which it will do; its mean is taken out, so it widens the spread by half a per cent. A judgement. */
    static final double CLOSE = 0.1;
    /** Draws of the gap itself where it will not. A probability then scatters by half a point at most. */
    static final int WHOLE = 10_000;

    private static final int LEAST_WHOLE = 100;

    private static final long SEED = 20_261_126L;
    /** Moves a normal parameter far enough out to see its bend, a rectangular one just to its limit. */
    private static final double MOVE = Math.sqrt(3);

    private static final double COVERAGE = 0.95;

    public ClearanceDoubt {
        shares = java.util.Collections.unmodifiableMap(new LinkedHashMap<>(shares));
        below = List.copyOf(below);
    }

    /** For a mechanism; empty where its two bodies share no depth along the crank axis. */
    public static Optional<ClearanceDoubt> of(Mechanism mechanism) {
        return of(mechanism, List.of(), WHOLE);
    }

    /**
     * The same, held against limits.
     * @param limits wanted gaps [m]
     * @param whole  draws of the gap itself where the sum of parabolas will not do, in the place of {@link #WHOLE}; 100 or more
     */
    public static Optional<ClearanceDoubt> of(Mechanism mechanism, List<Double> limits, int whole) {
        if (whole < LEAST_WHOLE || whole > DRAWS) {
            throw new IllegalArgumentException(
                    whole + " draws of a gap are asked for; allowed are " + LEAST_WHOLE + " to " + DRAWS);
        }
        return Sweep.least(mechanism.pair()).map(nominal -> new Sampling(mechanism, nominal, limits, whole).doubt());
    }

    /** The work in between. */
    private static final class Sampling {
        private final Mechanism mechanism;
        private final Closest nominal;
        private final int n;
        private final double[] values;
        private final double[] unit; // scale of each error
        private final double[] slope; // gap per scale
        private final double[] bend;
        private final List<Double> limits;
        private final int wholeDraws;
        private final SampleSource random = SampleSource.of(SEED);

        Sampling(Mechanism mechanism, Closest nominal, List<Double> limits, int wholeDraws) {
            this.limits = limits;
            this.wholeDraws = wholeDraws;
            this.mechanism = mechanism;
            this.nominal = nominal;
            n = mechanism.parameters().size();
            values = mechanism.values();
            unit = new double[n];
            slope = new double[n];
            bend = new double[n];
        }

        private double gap(double[] at) {
            Pair pair = mechanism.shape().of(at);
            return Sweep.least(pair)
                    .orElseThrow(() -> new IllegalStateException("the bodies "
                            + pair.one().name() + " and "
                            + pair.other().name() + " share depth at the best estimates and not with a parameter moved;"
                            + " give their depths with the end play in, as numbers without doubt"))
                    .gap();
        }

        ClearanceDoubt doubt() {
            double[] worst = values.clone();
            boolean sure = true;
            for (int i = 0; i < n; i++) {
                Law law = mechanism.parameters().get(i).error();
                unit[i] = scale(law);
                if (unit[i] > 0) {
                    sure = false;
                    double[] at = values.clone();
                    at[i] = values[i] + MOVE * unit[i];
                    double up = gap(at);
                    at[i] = values[i] - MOVE * unit[i];
                    double down = gap(at);
                    slope[i] = (up - down) / (2 * MOVE);
                    bend[i] = (up + down - 2 * nominal.gap()) / (2 * MOVE * MOVE);
                    worst[i] += up < down ? end(law) : -end(law);
                }
            }
            double gap = nominal.gap();
            if (sure) {
                return new ClearanceDoubt(
                        nominal,
                        gap,
                        gap,
                        gap,
                        gap < 0 ? 1 : 0,
                        Map.of(),
                        true,
                        limits.stream().map(limit -> gap < limit ? 1.0 : 0.0).toList());
            }
            double[][] errors = drawn(DRAWS);
            double[] sums = new double[DRAWS];
            Arrays.fill(sums, gap);
            double[] variances = new double[n];
            for (int i = 0; i < n; i++) {
                double[] part = new double[DRAWS];
                for (int k = 0; k < DRAWS; k++) {
                    part[k] = part(i, errors[i][k]);
                    sums[k] += part[k];
                }
                variances[i] = spread(part) * spread(part);
            }
            double off = 0;
            double miss = 0;
            for (int k = 0; k < CHECKS; k++) {
                double difference = gap(values(errors, k)) - sums[k];
                off += difference / CHECKS;
                miss += difference * difference / CHECKS;
            }
            boolean whole = !(Math.sqrt(miss) <= CLOSE * spread(sums));
            double[] draws = sums;
            if (whole) {
                draws = new double[wholeDraws];
                for (int k = 0; k < wholeDraws; k++) {
                    draws[k] = gap(values(errors, k));
                }
            } else {
                for (int k = 0; k < DRAWS; k++) {
                    draws[k] += off;
                }
            }
            double[] gaps = draws;
            double contact = lessThan(0, gaps, sums);
            List<Double> below =
                    limits.stream().map(limit -> lessThan(limit, gaps, sums)).toList();
            draws = gaps.clone();
            Arrays.sort(draws);
            int out = (int) Math.round((1 - COVERAGE) / 2 * draws.length);
            return new ClearanceDoubt(
                    nominal,
                    draws[out],
                    draws[draws.length - 1 - out],
                    Math.min(gap, gap(worst)),
                    contact,
                    shares(variances),
                    whole,
                    below);
        }

        /** Share of gaps less than a limit: of the sums, and mended by how many more or fewer the gaps themselves are at the draws they were worked out for. */
        private static double lessThan(double limit, double[] gaps, double[] sums) {
            double more = 0;
            long of = 0;
            for (int k = 0; k < sums.length; k++) {
                boolean isLess = sums[k] < limit;
                of += isLess ? 1 : 0;
                if (k < gaps.length) {
                    more += (gaps[k] < limit ? 1 : 0) - (isLess ? 1 : 0);
                }
            }
            return Math.max(0, Math.min(1, of / (double) sums.length + more / gaps.length));
        }

        private double part(int i, double error) {
            double z = unit[i] == 0 ? 0 : error / unit[i];
            return z * (slope[i] + bend[i] * z);
        }

        private double[] values(double[][] errors, int k) {
            double[] at = values.clone();
            for (int i = 0; i < n; i++) {
                at[i] += errors[i][k];
            }
            return at;
        }

        private double[][] drawn(int count) {
            double[][] errors = new double[n][count];
            for (int i = 0; i < n; i++) {
                mechanism.parameters().get(i).error().fill(random, errors[i], count);
            }
            return errors;
        }

        private Map<String, Double> shares(double[] variances) {
            double total = Arrays.stream(variances).sum();
            Map<String, Double> shares = new LinkedHashMap<>();
            List<Integer> order = java.util.stream.IntStream.range(0, n)
                    .boxed()
                    .filter(i -> unit[i] > 0)
                    .sorted((i, j) -> Double.compare(variances[j], variances[i]))
                    .toList();
            for (int i : order) {
                shares.put(mechanism.parameters().get(i).name(), total > 0 ? variances[i] / total : 0);
            }
            return shares;
        }

        private static double spread(double[] x) {
            double mean = Arrays.stream(x).average().orElse(0);
            return Math.sqrt(
                    Arrays.stream(x).map(v -> (v - mean) * (v - mean)).average().orElse(0));
        }

        /** Standard uncertainty in the sense of JCGM 100: the scale of a t, else the standard deviation. */
        private static double scale(Law law) {
            return law instanceof Law.ScaledT t ? t.scale() : law.standardDeviation();
        }

        /** Where the range ends that holds 95 %, or the limit where there is one. */
        private static double end(Law law) {
            if (law instanceof Law.Rectangular r) {
                return r.hi();
            } else if (law instanceof Law.ArcSine a) {
                return a.hi();
            } else if (law instanceof Law.CurvilinearTrapezoid c) {
                return c.hi() + c.inexactness();
            } else if (law instanceof Law.ScaledT t) {
                return t.scale() * StudentT.factor(COVERAGE, t.degreesOfFreedom());
            } else {
                return law.standardDeviation() * StudentT.factor(COVERAGE, Double.POSITIVE_INFINITY);
            }
        }
    }
}
