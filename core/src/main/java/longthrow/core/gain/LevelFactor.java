package longthrow.core.gain;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import longthrow.core.measurement.Measured;
import longthrow.core.measurement.StudentT;

/**
 * How much more one dyno shows than another with the same engine. Dynos differ in level by several per cent (losses, inertia, calibration, roller), so figures of two dynos are compared by this alone.
 * Reckoned in logarithms: a level is a factor.
 * @param from                dyno whose figures are brought over
 * @param to                  dyno to whose level
 * @param standard            by which all figures are corrected
 * @param factor              figure on {@code from} times this is the figure on {@code to}
 * @param standardUncertainty as a share
 * @param freedom             degrees of freedom behind it
 * @param engines             how many engines went over both
 */
public record LevelFactor(
        String from,
        String to,
        AirStandard standard,
        double factor,
        double standardUncertainty,
        double freedom,
        int engines) {

    /**
     * One engine on both dynos, nothing changed on it.
     * @param name   which
     * @param onFrom its figure of each visit to the one, a visit's runs averaged; corrected
     * @param onTo   of each visit to the other
     */
    public record Both(String name, List<Double> onFrom, List<Double> onTo) {
        public Both {
            onFrom = List.copyOf(onFrom);
            onTo = List.copyOf(onTo);
            if (onFrom.isEmpty() || onTo.isEmpty()) {
                throw new IllegalArgumentException("engine " + name + " was not on both dynos; leave it out");
            }
        }

        private static double[] logs(List<Double> figures) {
            return figures.stream().mapToDouble(Math::log).toArray();
        }

        double difference() {
            return Sample.mean(logs(onTo)) - Sample.mean(logs(onFrom));
        }
    }

    /**
     * By three engines or more: their differences are the repeats, and hold what an engine does to a dyno. By fewer: the visits are, and two to each dyno are the least.
     * @return empty where it cannot be told how sure it would be; {@link GainSentences#noLevelFactor} says why
     */
    public static Optional<LevelFactor> of(String from, String to, AirStandard standard, List<Both> engines) {
        double[] differences = engines.stream().mapToDouble(Both::difference).toArray();
        if (differences.length > Comparison.LEAST_FREEDOM) {
            Sample s = Sample.of(differences);
            return s.standardDeviation() > 0
                    ? Optional.of(new LevelFactor(
                            from,
                            to,
                            standard,
                            Math.exp(s.mean()),
                            s.standardDeviation() / Math.sqrt(s.count()),
                            s.count() - 1,
                            differences.length))
                    : Optional.empty();
        }
        List<Both> repeated = engines.stream()
                .filter(e -> e.onFrom().size() > 1 && e.onTo().size() > 1)
                .toList();
        if (repeated.isEmpty()) {
            return Optional.empty();
        }
        double weights = 0;
        double sum = 0;
        double variance = 0;
        double below = 0;
        for (Both engine : repeated) {
            TwoSamples t = TwoSamples.welch(Both.logs(engine.onTo()), Both.logs(engine.onFrom()));
            double weight = engine.onFrom().size() + (double) engine.onTo().size();
            double v = Math.pow(weight * t.standardError(), 2);
            weights += weight;
            sum += weight * t.difference();
            variance += v;
            below += v * v / t.degreesOfFreedom();
        }
        return variance > 0
                ? Optional.of(new LevelFactor(
                        from,
                        to,
                        standard,
                        Math.exp(sum / weights),
                        Math.sqrt(variance) / weights,
                        variance * variance / below,
                        repeated.size()))
                : Optional.empty();
    }

    /** Half of the 95 % interval of the factor. */
    public double halfWidth() {
        return factor * StudentT.factor(Measured.COVERAGE, freedom) * standardUncertainty;
    }

    /**
     * A corrected figure on a dyno.
     * @param dyno                which
     * @param standard            by which it is corrected
     * @param value               in any unit
     * @param standardUncertainty of it [same]
     */
    public record Figure(String dyno, AirStandard standard, double value, double standardUncertainty) {}

    /**
     * Two figures held against each other.
     * @param ratio     second over first
     * @param halfWidth 95 % of the ratio
     */
    public record Ratio(double ratio, double halfWidth) {}

    /**
     * Second over first. Of different dynos only through a factor between just these, and by one standard.
     * @return empty where they may not be compared
     */
    public static Optional<Ratio> compare(Figure first, Figure second, Optional<LevelFactor> between) {
        if (first.standard() != second.standard()) {
            return Optional.empty();
        }
        double own =
                Math.hypot(first.standardUncertainty() / first.value(), second.standardUncertainty() / second.value());
        double ratio = second.value() / first.value();
        if (first.dyno().equals(second.dyno())) {
            return Optional.of(
                    new Ratio(ratio, ratio * StudentT.factor(Measured.COVERAGE, Double.POSITIVE_INFINITY) * own));
        }
        return between.filter(b -> b.joins(first, second)).map(b -> {
            double level = b.from.equals(first.dyno()) ? b.factor : 1 / b.factor;
            double r = ratio / level;
            // widths squared and added, and not doubts by their common degrees of freedom: a level known by few would
            // else be surer with more doubt beside it
            return new Ratio(
                    r,
                    r
                            * Math.hypot(
                                    StudentT.factor(Measured.COVERAGE, b.freedom) * b.standardUncertainty,
                                    StudentT.factor(Measured.COVERAGE, Double.POSITIVE_INFINITY) * own));
        });
    }

    private boolean joins(Figure first, Figure second) {
        List<String> mine = List.of(from, to);
        return standard == first.standard()
                && Arrays.asList(first.dyno(), second.dyno()).containsAll(mine);
    }
}
