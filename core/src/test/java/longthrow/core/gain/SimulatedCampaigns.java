package longthrow.core.gain;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.ForkJoinPool;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.IntStream;
import longthrow.core.formula.SampleSource;
import longthrow.core.measurement.Measured;
import longthrow.core.measurement.Source;

/**
 * Invented campaigns of known truth: five pulls each of baseline, change and baseline over twelve speeds, corrected by ISO 1585 from instruments that err, while the engine
 * follows the air by exponents of its own; drift, runs that scatter alike at all speeds and from speed to speed, a cold first pull in every session, slip in some.
 * {@link #main} measures 4000 campaigns of each kind, the tests a few hundred.
 */
final class SimulatedCampaigns {
    private static final long SEED = 20_261_128L;
    static final int SPEEDS = 12;
    private static final int PULLS = 5;

    /** How the engine drifts: whole change as a share, by the share of the campaign gone by. */
    enum Shape {
        /** A straight line, as the pointwise band takes it. */
        LINE(x -> x),
        /** Most of it at the beginning, as an engine that warms through. */
        SETTLING(x -> 1 - Math.exp(-4 * x)),
        /** All at once, somewhere in the change's session. */
        STEP(x -> x < 0.5 ? 0 : 1),
        /** There and back, so that both baselines are alike: no baseline can see it. */
        HUMP(x -> Math.sin(Math.PI * x) * Math.sin(Math.PI * x));

        @SuppressWarnings("ImmutableEnumChecker") // keeps no state
        private final DoubleUnaryOperator gone;

        Shape(DoubleUnaryOperator gone) {
            this.gone = gone;
        }
    }

    /**
     * Kind of campaign.
     * @param shape     of the drift
     * @param slipTold  whether the ratio tells of slip; else it stays in
     * @param refit     scatter from session to session, as a share
     * @param sessions  how many, baseline and change in turns
     * @param nothing   whether the change does nothing
     * @param refitKnown whether that scatter is known, with eight degrees of freedom
     */
    record Kind(Shape shape, boolean slipTold, double refit, int sessions, boolean nothing, boolean refitKnown) {
        static Kind of(Shape shape) {
            return new Kind(shape, true, 0, 3, false, false);
        }

        Kind withoutGain() {
            return new Kind(shape, slipTold, refit, sessions, true, refitKnown);
        }
    }

    /** What came of many campaigns; shares. */
    record Tally(
            double pointwise,
            double pointwiseWorst,
            double pointwiseAnyDrift,
            double everySpeed,
            double everySpeedAnyDrift,
            double overall,
            double overallAnyDrift,
            double falseReal,
            double real,
            double askedForMore,
            double settled,
            double cannot,
            double pulls,
            double wrongStretch,
            double odd) {}

    private final Kind kind;
    private final SampleSource random;
    private final double gain;
    private final double tilt;
    private final double common;
    private final double own;
    private final double drift;
    private final double driftTilt;
    private final double weatherDrift;
    private final double pressureExponent;
    private final double temperatureExponent;
    private final double[] instrument;
    private final int pullsPlanned;
    private final double knownRefit;
    private int pull;
    private int session;
    private final List<Session> sessions = new ArrayList<>();

    private SimulatedCampaigns(Kind kind, int number) {
        this.kind = kind;
        random = SampleSource.of(SEED, number);
        gain = kind.nothing() ? 0 : uniform(0, 0.04);
        tilt = kind.nothing() ? 0 : uniform(-0.02, 0.02); // gains at one end, may lose at the other
        common = uniform(
                0.002, 0.005); // runs one after the other on an inertia dyno repeat within 0.5 to 1.5 %, from memory
        own = uniform(0.001, 0.004);
        drift = uniform(-0.015, 0.015);
        driftTilt = uniform(-0.3, 0.3);
        weatherDrift = uniform(-1, 1);
        pressureExponent = uniform(1, 1.4); // half-width of AirStandard's rectangle
        temperatureExponent = uniform(0.5, 0.7);
        instrument = new double[] {100 * random.nextNormal(), 0.5 * random.nextNormal(), 0.03 * random.nextNormal()};
        knownRefit = kind.refit() * Math.sqrt(random.nextChiSquared(8) / 8);
        pullsPlanned = PULLS * kind.sessions();
        for (int s = 0; s < kind.sessions(); s++) {
            session(s % 2 == 0 ? "stock" : "change", PULLS);
        }
    }

    private double uniform(double from, double to) {
        return from + (to - from) * random.nextUniform();
    }

    private static double speed(int j) {
        return 2500 + 400.0 * j;
    }

    private static double span(int j) {
        return 2.0 * j / (SPEEDS - 1) - 1;
    }

    private double truth(int j) {
        return gain + tilt * span(j);
    }

    private static double level(int j) {
        return 10 - 2 * span(j) * span(j);
    }

    /** Mean over the speeds by trapezoids, as a share of the baseline's. */
    private double overallTruth() {
        double with = 0;
        double without = 0;
        for (int j = 0; j < SPEEDS; j++) {
            double weight = j == 0 || j == SPEEDS - 1 ? 0.5 : 1;
            with += weight * level(j) * (1 + truth(j));
            without += weight * level(j);
        }
        return with / without - 1;
    }

    private void session(String setup, int pulls) {
        double kilopascal = 98 + 0.5 * weatherDrift * pull / pullsPlanned;
        double celsius = 22 + 5 * weatherDrift * pull / pullsPlanned;
        AirReading air = new AirReading(
                read(1e3 * kilopascal, instrument[0], 100, "barometer"),
                read(celsius + 273.15, instrument[1], 0.5, "thermometer"),
                read(0.45, instrument[2], 0.03, "hygrometer"));
        AirReading true_ = AirReading.exact(kilopascal, celsius, 0.45);
        double weather = Math.pow(true_.dryPressure() / 99e3, pressureExponent)
                * Math.pow((celsius + 273) / 298, -temperatureExponent);
        double refit = kind.refit() * random.nextNormal();
        int slipping = random.nextUniform() < 0.15 ? 1 + (int) (random.nextUniform() * (pulls - 1)) : -1;
        List<Run> runs = new ArrayList<>();
        for (int r = 0; r < pulls; r++) {
            double gone = (pull + 0.5) / pullsPlanned;
            double drifted = drift * kind.shape().gone.applyAsDouble(gone);
            double together = common * random.nextNormal() + (r == 0 ? uniform(-0.05, -0.01) : 0);
            double[] values = new double[SPEEDS];
            double neighbour = random.nextNormal();
            int from = (int) (random.nextUniform() * (SPEEDS - 3));
            for (int j = 0; j < SPEEDS; j++) {
                neighbour = 0.7 * neighbour + Math.sqrt(1 - 0.49) * random.nextNormal();
                double slip = r == slipping && j >= from && j < from + 4
                        ? 0.03
                        : 0; // the engine runs away from the drum and back: read low
                values[j] = level(j)
                        * (setup.equals("change") ? 1 + truth(j) : 1)
                        * (1 + drifted * (1 + driftTilt * span(j)))
                        * (1 + together + own * neighbour + refit - slip)
                        * weather;
            }
            Run run = Run.curve(sessions.size() + "." + r, values);
            runs.add(r == slipping && kind.slipTold() ? run.slipped() : run);
            pull++;
        }
        session++;
        sessions.add(new Session("S" + session, setup, Optional.of(AirStandard.ISO_1585.correct(air)), runs));
    }

    private static Measured read(double truth, double error, double u, String instrument) {
        return Measured.of(truth + error, List.of(Source.known(instrument, Source.Kind.INSTRUMENT, instrument, u)));
    }

    private Gain compare() {
        List<Double> speeds =
                IntStream.range(0, SPEEDS).mapToObj(SimulatedCampaigns::speed).toList();
        Optional<Refit> known = kind.refitKnown() ? Optional.of(new Refit(knownRefit, 8)) : Optional.empty();
        Comparison comparison = Comparison.of(new Campaign("stock", speeds, sessions), Aim.USUAL, known);
        if (comparison.gains().isEmpty()) {
            throw new IllegalStateException(comparison.troubles().toString());
        }
        return comparison.gains().get(0);
    }

    /** Counts of one campaign, in the order of the tally, and speed by speed behind. */
    private double[] counts() {
        double[] c = new double[16 + SPEEDS];
        Gain g = compare();
        boolean all = true;
        boolean allAny = true;
        for (int j = 0; j < SPEEDS; j++) {
            Estimate e = g.atSpeeds().get(j);
            double off = Math.abs(e.gain() - truth(j));
            c[16 + j] = off <= e.halfWidth() ? 1 : 0;
            c[0] += c[16 + j] / SPEEDS;
            c[2] += off <= e.halfWidthAnyDrift() ? 1.0 / SPEEDS : 0;
            all &= off <= e.halfWidthEverySpeed();
            allAny &= off <= e.halfWidthEverySpeedAnyDrift();
            boolean said = Math.abs(e.gain()) > e.halfWidthEverySpeedAnyDrift();
            c[13] = Math.max(c[13], said && e.gain() * truth(j) <= 0 ? 1 : 0);
        }
        c[3] = all ? 1 : 0;
        c[4] = allAny ? 1 : 0;
        double off = Math.abs(g.overall().gain() - overallTruth());
        c[5] = off <= g.overall().halfWidth() ? 1 : 0;
        c[6] = off <= g.overall().halfWidthAnyDrift() ? 1 : 0;
        c[14] = g.drift().agrees() < 0.05 ? 1 : 0;
        Verdict v = g.verdict();
        c[9] = v.outcome() == Verdict.Outcome.TAKE_MORE ? 1 : 0;
        c[11] = v.outcome() == Verdict.Outcome.CANNOT_BE_TOLD ? 1 : 0;
        if (c[9] > 0) {
            c[12] = v.pulls();
            String next = sessions.get(sessions.size() - 1).setup().equals("stock") ? "change" : "stock";
            for (int s = 0; s < v.sessions(); s++) {
                session(next, v.pulls() / v.sessions());
                next = next.equals("stock") ? "change" : "stock";
            }
            v = compare().verdict();
            boolean settled = isReal(v) || v.outcome() == Verdict.Outcome.NOT_SHOWN;
            c[10] = settled ? 1 : 0;
        }
        boolean right = (v.outcome() == Verdict.Outcome.REAL_GAIN && overallTruth() > 0)
                || (v.outcome() == Verdict.Outcome.REAL_LOSS && overallTruth() < 0);
        c[8] = isReal(v) ? 1 : 0;
        c[7] = isReal(v) && !right ? 1 : 0;
        return c;
    }

    private static boolean isReal(Verdict v) {
        return v.outcome() == Verdict.Outcome.REAL_GAIN || v.outcome() == Verdict.Outcome.REAL_LOSS;
    }

    static Tally tally(Kind kind, int campaigns) {
        double[] sum = IntStream.range(0, campaigns)
                .parallel()
                .mapToObj(i -> new SimulatedCampaigns(kind, i).counts())
                .reduce(new double[16 + SPEEDS], SimulatedCampaigns::plus);
        double worst = Arrays.stream(sum, 16, 16 + SPEEDS).min().orElseThrow() / campaigns;
        double[] s = Arrays.stream(sum).map(x -> x / campaigns).toArray();
        return new Tally(
                s[0],
                worst,
                s[2],
                s[3],
                s[4],
                s[5],
                s[6],
                s[7],
                s[8],
                s[9],
                s[10] / s[9],
                s[11],
                s[12] / s[9],
                s[13],
                s[14]);
    }

    private static double[] plus(double[] a, double[] b) {
        double[] sum = a.clone();
        for (int i = 0; i < sum.length; i++) {
            sum[i] += b[i];
        }
        return sum;
    }

    /** Measures. First argument: campaigns of each kind, 4000 unless given. */
    public static void main(String[] args) {
        int campaigns = args.length > 0 ? Integer.parseInt(args[0]) : 4000;
        long start = System.nanoTime();
        for (Shape shape : Shape.values()) {
            show(Kind.of(shape), campaigns);
            show(Kind.of(shape).withoutGain(), campaigns);
        }
        show(new Kind(Shape.HUMP, true, 0, 7, true, false), campaigns);
        for (boolean nothing : new boolean[] {false, true}) {
            show(new Kind(Shape.LINE, false, 0, 3, nothing, false), campaigns);
            show(new Kind(Shape.LINE, true, 0, 7, nothing, false), campaigns);
            show(new Kind(Shape.LINE, true, 0.003, 3, nothing, false), campaigns);
            show(new Kind(Shape.LINE, true, 0.003, 3, nothing, true), campaigns);
            show(new Kind(Shape.LINE, true, 0.003, 5, nothing, false), campaigns);
            show(new Kind(Shape.LINE, true, 0.003, 7, nothing, false), campaigns);
        }
        System.out.printf(
                Locale.ROOT,
                "%.1f s, %d threads%n",
                (System.nanoTime() - start) / 1e9,
                ForkJoinPool.commonPool().getParallelism());
    }

    private static void show(Kind kind, int campaigns) {
        Tally t = tally(kind, campaigns);
        System.out.printf(
                Locale.ROOT,
                "%s%n   pointwise %.2f worst %.2f any %.2f | every %.2f any %.2f | area %.2f any %.2f | real %.2f false %.2f | more %.2f settled %.2f pulls %.0f cannot %.2f | stretch wrong %.2f | odd trend %.2f%n",
                kind,
                100 * t.pointwise,
                100 * t.pointwiseWorst,
                100 * t.pointwiseAnyDrift,
                100 * t.everySpeed,
                100 * t.everySpeedAnyDrift,
                100 * t.overall,
                100 * t.overallAnyDrift,
                100 * t.real,
                100 * t.falseReal,
                100 * t.askedForMore,
                100 * t.settled,
                t.pulls,
                100 * t.cannot,
                100 * t.wrongStretch,
                100 * t.odd);
    }
}
