package longthrow.core.gain;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;
import longthrow.core.measurement.Measured;
import longthrow.core.measurement.Source;
import longthrow.core.measurement.StudentT;
import org.hipparchus.distribution.continuous.NormalDistribution;

/**
 * Every change of a campaign held against its baseline.
 * @param gains         one for each change, in the order in which they first came; empty where something stands against it
 * @param troubles      what stands against comparing at all
 * @param dropped       pulls that do not count, each with its reason
 * @param speedsLeftOut speeds of the grid that some kept run does not have [rpm]
 * @param beyond        what lies outside what the standard of correction is meant for, by session
 */
public record Comparison(
        List<Gain> gains,
        List<String> troubles,
        List<Campaign.Dropped> dropped,
        List<Double> speedsLeftOut,
        List<String> beyond) {
    /** Fewest degrees of freedom from which a scatter is told; with fewer the t factor is above 4. Judgement. */
    static final int LEAST_FREEDOM = 2;

    public Comparison {
        gains = List.copyOf(gains);
        troubles = List.copyOf(troubles);
        dropped = List.copyOf(dropped);
        speedsLeftOut = List.copyOf(speedsLeftOut);
        beyond = List.copyOf(beyond);
    }

    /** Compares, with nothing known of what refitting scatters. */
    public static Comparison of(Campaign campaign, Aim aim) {
        return of(campaign, aim, Optional.empty());
    }

    /** Compares. What is known of refitting is used where no sessions check each other; where they do, their own scatter speaks. */
    public static Comparison of(Campaign campaign, Aim aim, Optional<Refit> refit) {
        List<String> troubles = new ArrayList<>(campaign.troubles());
        List<Integer> used = used(campaign);
        if (used.isEmpty()) {
            troubles.add(GainSentences.noCommonSpeed());
        }
        List<Double> leftOut = IntStream.range(0, campaign.speedsRpm().size())
                .filter(j -> !used.contains(j))
                .mapToObj(campaign.speedsRpm()::get)
                .toList();
        if (!troubles.isEmpty()) {
            return new Comparison(List.of(), troubles, campaign.dropped(), leftOut, campaign.beyond());
        }
        Sums sums = new Sums(campaign, used, refit);
        if (!(sums.scatter(sums::overall, null).deviation() > 0)) {
            return new Comparison(
                    List.of(), List.of(GainSentences.noScatter()), campaign.dropped(), leftOut, campaign.beyond());
        }
        List<Gain> gains = campaign.candidates().stream()
                .map(setup -> sums.gain(setup, aim))
                .toList();
        return new Comparison(sums.judged(gains, aim), List.of(), campaign.dropped(), leftOut, campaign.beyond());
    }

    /** Speeds that every kept run has. */
    private static List<Integer> used(Campaign campaign) {
        return IntStream.range(0, campaign.size())
                .filter(j -> campaign.kept().stream()
                        .noneMatch(k -> Double.isNaN(k.run().at(j))))
                .boxed()
                .toList();
    }

    /** The sums over one campaign. */
    private static final class Sums {
        private final Campaign campaign;
        private final List<Integer> used;
        private final List<Campaign.Kept> kept;
        private final Layout layout;
        private final double everySpeedCoverage;
        private final double everySpeed;
        private final Optional<Refit> refit;

        Sums(Campaign campaign, List<Integer> used, Optional<Refit> refit) {
            this.refit = refit;
            this.campaign = campaign;
            this.used = used;
            this.kept = campaign.kept();
            this.layout = layout(campaign, kept);
            // changes tried on one baseline share the chance of a speed that stands out by luck (Bonferroni)
            this.everySpeedCoverage = 1
                    - (1 - Measured.COVERAGE)
                            / Math.max(1, campaign.candidates().size());
            this.everySpeed = EverySpeed.factor(residuals(), everySpeedCoverage);
        }

        private static Layout layout(Campaign campaign, List<Campaign.Kept> runs) {
            return new Layout(IntStream.range(0, campaign.sessions().size())
                    .mapToObj(s -> new Layout.Place(
                            campaign.sessions().get(s).setup(),
                            runs.stream()
                                    .filter(k -> k.session() == s)
                                    .mapToInt(Campaign.Kept::order)
                                    .average()
                                    .orElseThrow(),
                            (int) runs.stream().filter(k -> k.session() == s).count()))
                    .toList());
        }

        private double factor(Campaign.Kept run) {
            return campaign.sessions().get(run.session()).factor();
        }

        private double at(Campaign.Kept run, int speed) {
            return run.run().at(speed) * factor(run);
        }

        /** Area under the curve over the speeds used, by trapezoids, over their span; or the peak. */
        double overall(Campaign.Kept run) {
            return area(run) * factor(run);
        }

        private double area(Campaign.Kept run) {
            if (used.size() == 1) {
                return run.run().at(used.get(0));
            }
            double area = 0;
            for (int i = 1; i < used.size(); i++) {
                double step = campaign.speedsRpm().get(used.get(i))
                        - campaign.speedsRpm().get(used.get(i - 1));
                area += step / 2 * (run.run().at(used.get(i)) + run.run().at(used.get(i - 1)));
            }
            return area
                    / (campaign.speedsRpm().get(used.get(used.size() - 1))
                            - campaign.speedsRpm().get(used.get(0)));
        }

        private List<double[]> bySession(List<Campaign.Kept> runs, ToDoubleFunction<Campaign.Kept> figure) {
            return IntStream.range(0, campaign.sessions().size())
                    .mapToObj(s -> runs.stream()
                            .filter(k -> k.session() == s)
                            .mapToDouble(figure)
                            .toArray())
                    .toList();
        }

        private static double[] means(List<double[]> bySession) {
            return bySession.stream().mapToDouble(Sample::mean).toArray();
        }

        /** Each run against the mean of those before it in its session (Helmert): one less than runs in each session, each with the scatter of one run and apart from the others. */
        private List<double[]> residuals() {
            List<double[]> residuals = new ArrayList<>();
            for (int s = 0; s < layout.sessions(); s++) {
                int at = s;
                List<Campaign.Kept> runs =
                        kept.stream().filter(k -> k.session() == at).toList();
                double[] sum = new double[used.size()];
                for (int i = 0; i < runs.size(); i++) {
                    double[] row = new double[used.size()];
                    for (int j = 0; j < row.length; j++) {
                        double y = at(runs.get(i), used.get(j));
                        row[j] = i == 0 ? 0 : (y - sum[j] / i) * Math.sqrt(i / (i + 1.0));
                        sum[j] += y;
                    }
                    if (i > 0) {
                        residuals.add(row);
                    }
                }
            }
            return residuals;
        }

        Scatter scatter(ToDoubleFunction<Campaign.Kept> figure, Scatter.@org.jspecify.annotations.Nullable From like) {
            List<double[]> figures = bySession(kept, figure);
            return like == null ? Scatter.of(layout, figures) : Scatter.like(like, layout, figures);
        }

        Gain gain(String setup, Aim aim) {
            Scatter scatter = scatter(this::overall, null);
            Estimate overall = estimate(
                    setup, Double.NaN, this::overall, scatter, StudentT.factor(Measured.COVERAGE, scatter.freedom()));
            List<Estimate> atSpeeds = new ArrayList<>();
            if (!campaign.speedsRpm().isEmpty()) {
                double shared = scatter.from() == Scatter.From.SESSIONS ? sharedDeviation(setup) : Double.NaN;
                for (int speed : used) {
                    ToDoubleFunction<Campaign.Kept> figure = k -> at(k, speed);
                    Scatter own = scatter(figure, scatter.from());
                    Scatter here = Double.isNaN(shared) ? own : own.sharing(shared * base(setup, figure));
                    double factor = everySpeed
                            / StudentT.factor(everySpeedCoverage, scatter.withinFreedom())
                            * StudentT.factor(everySpeedCoverage, here.freedom());
                    atSpeeds.add(estimate(setup, campaign.speedsRpm().get(speed), figure, here, factor));
                }
            }
            return new Gain(
                    setup,
                    campaign.baseline(),
                    campaign.sessions().get(0).air().map(AirCorrection::standard),
                    overall,
                    atSpeeds,
                    stretches(atSpeeds),
                    drift(scatter),
                    scatter,
                    others(setup),
                    Verdict.of(Verdict.Outcome.TAKE_MORE, overall.chance(), 1, aim));
        }

        /** How far sessions of one setup differ, as a share of the level: the mean square over all speeds used. */
        private double sharedDeviation(String setup) {
            double squares = 0;
            for (int speed : used) {
                ToDoubleFunction<Campaign.Kept> figure = k -> at(k, speed);
                double share = scatter(figure, Scatter.From.SESSIONS).deviation() / base(setup, figure);
                squares += share * share;
            }
            return Math.sqrt(squares / used.size());
        }

        private double base(String setup, ToDoubleFunction<Campaign.Kept> figure) {
            return Layout.dot(baselineWeights(setup), means(bySession(kept, figure)));
        }

        private double[] baselineWeights(String setup) {
            return layout.level(campaign.baseline(), layout.centre(setup));
        }

        /** Weights on the sessions' means of the gain about where it is. */
        private double[] slope(String setup, double[] means) {
            double[] change = layout.level(setup, layout.centre(setup));
            double[] base = baselineWeights(setup);
            double level = Layout.dot(base, means);
            double ratio = Layout.dot(change, means) / level;
            return IntStream.range(0, means.length)
                    .mapToDouble(s -> (change[s] - ratio * base[s]) / level)
                    .toArray();
        }

        private Estimate estimate(
                String setup,
                double speed,
                ToDoubleFunction<Campaign.Kept> figure,
                Scatter scatter,
                double everySpeedFactor) {
            double[] means = means(bySession(kept, figure));
            double base = Layout.dot(baselineWeights(setup), means);
            double changed = Layout.dot(layout.level(setup, layout.centre(setup)), means);
            double[] slope = slope(setup, means);
            double perRun = 0;
            for (int s = 0; s < means.length; s++) {
                perRun += slope[s] * slope[s] / layout.runs(s);
            }
            double drift = Layout.dot(layout.drift(), means);
            Optional<Refit> known = refit.filter(r -> scatter.from() == Scatter.From.RUNS);
            return new Estimate(
                    speed,
                    base,
                    changed,
                    changed / base - 1,
                    scatter.deviation() * Math.sqrt(perRun),
                    scatter.freedom(),
                    known.map(r -> r.deviation() * reach(slope, means)).orElse(0.0),
                    known.map(Refit::freedom).orElse(1.0),
                    weather(slope, means),
                    Math.abs(drift) * layout.unknownShape(setup, campaign.baseline()) / base,
                    everySpeedFactor);
        }

        private static double reach(double[] slope, double[] means) {
            return Math.sqrt(IntStream.range(0, means.length)
                    .mapToDouble(s -> slope[s] * means[s] * slope[s] * means[s])
                    .sum());
        }

        /** What the corrections' own doubt does to the gain: sources that sessions share go out as far as they act alike. */
        private double weather(double[] slope, double[] means) {
            Map<Source, Double> sum = new LinkedHashMap<>();
            for (int s = 0; s < means.length; s++) {
                double reach = slope[s] * means[s];
                campaign.sessions()
                        .get(s)
                        .air()
                        .ifPresent(air -> air.factor()
                                .contributions()
                                .forEach((source, c) -> sum.merge(
                                        source, reach * c / air.factor().value(), Double::sum)));
            }
            return Math.sqrt(sum.values().stream().mapToDouble(c -> c * c).sum());
        }

        private Gain.Drift drift(Scatter scatter) {
            if (!layout.isDriftKnown()) {
                return new Gain.Drift(false, Double.NaN, Double.NaN, Double.NaN);
            }
            double[] means = means(bySession(kept, this::overall));
            List<Integer> baselines = IntStream.range(0, means.length)
                    .filter(s -> campaign.sessions().get(s).setup().equals(campaign.baseline()))
                    .boxed()
                    .toList();
            double first = order(baselines.get(0));
            double last = order(baselines.get(baselines.size() - 1));
            double level = Layout.dot(layout.level(campaign.baseline(), first), means);
            double perRun = 0;
            for (int s = 0; s < means.length; s++) {
                perRun += layout.drift()[s] * layout.drift()[s] / layout.runs(s);
            }
            double span = (last - first) / level;
            return new Gain.Drift(
                    true,
                    Layout.dot(layout.drift(), means) * span,
                    StudentT.factor(Measured.COVERAGE, scatter.freedom())
                            * scatter.deviation()
                            * Math.sqrt(perRun)
                            * span,
                    agrees(Layout.dot(layout.drift(), means)));
        }

        /** Each session's own trend from pull to pull against the line's, by F. */
        private double agrees(double drift) {
            double onLine = 0;
            double onOwn = 0;
            int trends = 0;
            for (int s = 0; s < layout.sessions(); s++) {
                int at = s;
                List<Campaign.Kept> runs =
                        kept.stream().filter(k -> k.session() == at).toList();
                double[] y = runs.stream().mapToDouble(this::overall).toArray();
                double[] x = runs.stream().mapToDouble(Campaign.Kept::order).toArray();
                double yMean = Sample.mean(y);
                double xMean = Sample.mean(x);
                double xx = 0;
                double xy = 0;
                double squares = 0;
                for (int i = 0; i < x.length; i++) {
                    double left = y[i] - yMean - drift * (x[i] - xMean);
                    squares += left * left;
                    xx += (x[i] - xMean) * (x[i] - xMean);
                    xy += (x[i] - xMean) * left;
                }
                onLine += squares;
                onOwn += xx == 0 ? squares : squares - xy * xy / xx;
                trends += xx == 0 ? 0 : 1;
            }
            int free = kept.size() - layout.sessions() - trends;
            return trends == 0 || free < 1 ? Double.NaN : new OneWay(onLine - onOwn, trends, onOwn, free).probability();
        }

        private double order(int session) {
            return kept.stream()
                    .filter(k -> k.session() == session)
                    .mapToInt(Campaign.Kept::order)
                    .average()
                    .orElseThrow();
        }

        private Gain.Others others(String setup) {
            List<Campaign.Kept> all = campaign.all().stream()
                    .filter(k ->
                            used.stream().noneMatch(j -> Double.isNaN(k.run().at(j))))
                    .toList();
            List<double[]> raw = bySession(all, this::area);
            List<double[]> corrected = bySession(kept, this::overall);
            double[] everything = means(bySession(all, this::overall));
            Layout allLaid = layout(campaign, all);
            double order = allLaid.centre(setup);
            Scatter runs = scatter(this::overall, Scatter.From.RUNS);
            return new Gain.Others(
                    welch(setup, corrected),
                    runsAlone(setup, runs),
                    againstFirst(setup, corrected),
                    againstFirst(setup, raw),
                    Layout.dot(allLaid.level(setup, order), everything)
                                    / Layout.dot(allLaid.level(campaign.baseline(), order), everything)
                            - 1);
        }

        private double runsAlone(String setup, Scatter scatter) {
            double[] slope = slope(setup, means(bySession(kept, this::overall)));
            double perRun = 0;
            for (int s = 0; s < slope.length; s++) {
                perRun += slope[s] * slope[s] / layout.runs(s);
            }
            return StudentT.factor(Measured.COVERAGE, scatter.withinFreedom()) * scatter.within() * Math.sqrt(perRun);
        }

        private double welch(String setup, List<double[]> figures) {
            double[] slope = slope(setup, means(figures));
            double sum = 0;
            double below = 0;
            for (int s = 0; s < slope.length; s++) {
                Sample sample = Sample.of(figures.get(s));
                if (slope[s] != 0) {
                    double v = slope[s] * slope[s] * sample.variance() / sample.count();
                    sum += v;
                    below += v * v / (sample.count() - 1);
                }
            }
            double freedom = sum * sum / below;
            return freedom > 0 ? StudentT.factor(Measured.COVERAGE, freedom) * Math.sqrt(sum) : Double.NaN;
        }

        private double againstFirst(String setup, List<double[]> figures) {
            double first = Double.NaN;
            List<Double> change = new ArrayList<>();
            for (int s = 0; s < figures.size(); s++) {
                String here = campaign.sessions().get(s).setup();
                if (here.equals(campaign.baseline()) && Double.isNaN(first)) {
                    first = Sample.mean(figures.get(s));
                }
                if (here.equals(setup)) {
                    Arrays.stream(figures.get(s)).forEach(change::add);
                }
            }
            return Sample.mean(change.stream().mapToDouble(Double::doubleValue).toArray()) / first - 1;
        }

        private static List<Gain.Stretch> stretches(List<Estimate> atSpeeds) {
            List<Gain.Stretch> stretches = new ArrayList<>();
            int before = 0;
            for (Estimate e : atSpeeds) {
                int sign = Math.abs(e.gain()) > e.halfWidthEverySpeedAnyDrift() ? (int) Math.signum(e.gain()) : 0;
                if (sign != 0) {
                    int last = stretches.size() - 1;
                    double from = sign == before ? stretches.get(last).fromRpm() : e.speedRpm();
                    if (sign == before) {
                        stretches.remove(last);
                    }
                    stretches.add(new Gain.Stretch(from, e.speedRpm(), sign > 0));
                }
                before = sign;
            }
            return stretches;
        }

        List<Gain> judged(List<Gain> gains, Aim aim) {
            List<Double> chances =
                    Holm.adjusted(gains.stream().map(g -> g.overall().chance()).toList());
            return IntStream.range(0, gains.size())
                    .mapToObj(i -> with(gains.get(i), verdict(gains.get(i), chances.get(i), gains.size(), aim)))
                    .toList();
        }

        private static Gain with(Gain g, Verdict verdict) {
            return new Gain(
                    g.setup(),
                    g.baseline(),
                    g.standard(),
                    g.overall(),
                    g.atSpeeds(),
                    g.shape(),
                    g.drift(),
                    g.scatter(),
                    g.others(),
                    verdict);
        }

        private Verdict verdict(Gain gain, double chance, int tries, Aim aim) {
            Estimate e = gain.overall();
            if (!layout.isDriftKnown() || !layout.isBracketed(gain.setup(), campaign.baseline())) {
                return Verdict.of(Verdict.Outcome.BASELINE_NOT_REPEATED, chance, tries, aim);
            }
            if (chance < 1 - Measured.COVERAGE) {
                return Verdict.of(
                        e.gain() > 0 ? Verdict.Outcome.REAL_GAIN : Verdict.Outcome.REAL_LOSS, chance, tries, aim);
            }
            if (e.gain() + e.halfWidthAnyDrift() < aim.gain()) {
                return Verdict.of(Verdict.Outcome.NOT_SHOWN, chance, tries, aim);
            }
            return more(gain, chance, tries, aim)
                    .orElseGet(() -> Verdict.of(Verdict.Outcome.CANNOT_BE_TOLD, chance, tries, aim));
        }

        /**
         * The fewest further sessions, change and baseline in turns, after which the doubt is small enough for a verdict. Hardest is a gain of half the aim: there it is reached when the
         * estimate lies beyond t u from nothing or from the aim, with chance 2 (1 - Phi(t - aim / (2 u))). Half of the failures that the aim allows are left to sessions that turn out to differ by more than
         * runs do.
         */
        private Optional<Verdict> more(Gain gain, double chance, int tries, Aim aim) {
            int usual = layout.usualRuns();
            double slack = new NormalDistribution().inverseCumulativeProbability(1 - (1 + aim.power()) / 4);
            double[] means = means(bySession(kept, this::overall));
            double drift =
                    Math.abs(Layout.dot(layout.drift(), means)) / gain.overall().baseline();
            double deviation = gain.scatter().deviation() / gain.overall().baseline();
            for (int pairs = 1; 2 * pairs * (usual + Campaign.WARM_UP) <= Aim.MOST_PULLS; pairs++) {
                Layout then = layout.with(gain.setup(), campaign.baseline(), pairs, usual);
                double u = Math.sqrt(perRun(then, gain.setup()) * deviation * deviation
                        + Math.pow(drift * then.unknownShape(gain.setup(), campaign.baseline()), 2)
                        + gain.overall().weather() * gain.overall().weather()
                        + Math.pow(gain.overall().refit(), 2)
                                * perSession(then, gain.setup())
                                / perSession(layout, gain.setup()));
                double freedom = gain.scatter().freedom() + 2 * pairs * usual;
                double t = StudentT.quantile(1 - (1 - Measured.COVERAGE) / 2 / tries, freedom);
                if (aim.gain() / (2 * u) >= t - slack) {
                    return Optional.of(new Verdict(
                            Verdict.Outcome.TAKE_MORE,
                            chance,
                            tries,
                            aim,
                            2 * pairs,
                            2 * pairs * (usual + Campaign.WARM_UP)));
                }
            }
            return Optional.empty();
        }

        /** Variance of the difference of levels for runs that scatter by one. */
        private double perRun(Layout then, String setup) {
            double[] weights = difference(then, setup);
            return IntStream.range(0, weights.length)
                    .mapToDouble(s -> weights[s] * weights[s] / then.runs(s))
                    .sum();
        }

        /** The same for sessions that scatter by one. */
        private double perSession(Layout then, String setup) {
            return Arrays.stream(difference(then, setup)).map(w -> w * w).sum();
        }

        private double[] difference(Layout then, String setup) {
            double[] change = then.level(setup, then.centre(setup));
            double[] base = then.level(campaign.baseline(), then.centre(setup));
            return IntStream.range(0, change.length)
                    .mapToDouble(s -> change[s] - base[s])
                    .toArray();
        }
    }
}
