package longthrow.core.measure;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import longthrow.core.answer.Verdict;
import longthrow.core.build.Build;
import longthrow.core.measurement.Measured;
import longthrow.core.measurement.Source;
import longthrow.core.measurement.StudentT;
import longthrow.core.quantity.Dimension;
import longthrow.core.term.Part;
import longthrow.core.term.Term;
import org.hipparchus.distribution.continuous.ChiSquaredDistribution;

/**
 * Is the cam what its card or the class rule says? Proven, not proven or wrong, and how many more trials of the same scatter would settle it: until the whole
 * 95 % interval of the mean clears the limit. A scatter seen in few trials is known badly, so the count reckons with its upper 80 % bound (Browne, On the use of
 * a pilot sample for sample size determination, Statistics in Medicine 14 (1995) 1933; from memory).
 */
final class Degreeing {
    /** Assurance that the scatter is not larger than reckoned with. */
    private static final double ASSURANCE = 0.80;
    /** Nobody turns an engine more often than this for one figure. */
    private static final int MOST_TRIALS = 100;

    private final Build build;
    private final Readings readings;
    private final Function<Term, Optional<Measured>> figures;

    Degreeing(Build build, Readings readings, Function<Term, Optional<Measured>> figures) {
        this.build = build;
        this.readings = readings;
        this.figures = figures;
    }

    /** The verdicts, those on the angles of the cam told in the words of degreeing. */
    List<Verdict> told(List<Verdict> verdicts) {
        return verdicts.stream().map(this::told).toList();
    }

    private Verdict told(Verdict verdict) {
        Term term = verdict.term();
        Optional<Measured> figure = figures.apply(term);
        if (term.part() != Part.CAMSHAFT || term.dimension() != Dimension.ANGLE || figure.isEmpty()) {
            return verdict;
        }
        Measured measured = figure.get();
        String interval =
                "; 95 % interval " + degrees(measured.low(), measured) + " to " + degrees(measured.high(), measured);
        return switch (verdict.state()) {
            case MEETS -> with(verdict, "proven: " + verdict.why() + interval, verdict.cure());
            case FAILS -> with(verdict, "wrong: " + verdict.why() + interval, verdict.cure());
            case NEAR -> with(verdict, "not proven: " + verdict.why() + interval, settled(verdict, measured));
            case UNKNOWN -> verdict;
        };
    }

    private static Verdict with(Verdict v, String why, String cure) {
        return new Verdict(
                v.rule(),
                v.label(),
                v.term(),
                v.least(),
                v.most(),
                v.probability(),
                v.state(),
                v.chosen(),
                why,
                cure,
                v.source());
    }

    private String degrees(double angle, Measured figure) {
        return Measure.words(build, Term.INTAKE_LOBE_CENTRE, angle, figure.expanded());
    }

    private String settled(Verdict verdict, Measured figure) {
        Optional<ReadingSet> trials = readings.trials(verdict.term());
        if (trials.isEmpty()) {
            return "take three or more trials, each with its own opening and closing and the zero found anew; their scatter will tell how many it takes";
        }
        double away = Math.min(Math.abs(figure.value() - verdict.least()), Math.abs(figure.value() - verdict.most()));
        double kept = tools(figure);
        if (kept >= away) {
            return "more trials cannot settle it: the wheel's own error, " + degrees(kept, figure)
                    + ", is larger than the " + degrees(away, figure)
                    + " to the limit. Find the zero anew for every trial, or use a better wheel";
        }
        int more = more(trials.get(), away, kept);
        return more > MOST_TRIALS
                ? "more than " + MOST_TRIALS + " trials of this scatter would be needed: read with a finer wheel"
                : "take " + more
                        + " more trials, opening and closing with the zero found anew: with this scatter their mean would then settle it";
    }

    /** 95 % half-width of what every trial shares, so that no number of them takes it away. */
    private static double tools(Measured figure) {
        double variance = 0;
        for (Map.Entry<Source, Double> c : figure.contributions().entrySet()) {
            if (!SHRINKING.contains(c.getKey().kind())) {
                variance += c.getValue() * c.getValue();
            }
        }
        return Source.NORMAL_95 * Math.sqrt(variance);
    }

    private static final Set<Source.Kind> SHRINKING = Set.of(Source.Kind.SCATTER, Source.Kind.RESOLUTION);

    /** Trials on top of those made until the interval of the mean is narrower than the way to the limit. */
    static int more(ReadingSet made, double away, double kept) {
        double freedom = made.freedom();
        double unlucky = new ChiSquaredDistribution(freedom).inverseCumulativeProbability(1 - ASSURANCE);
        double scatter = made.scatter() * Math.sqrt(freedom / unlucky);
        int n = made.count();
        do {
            n++;
            double half = StudentT.factor(Measured.COVERAGE, n - 1) * scatter / Math.sqrt(n);
            if (Math.hypot(half, kept) <= away) {
                break;
            }
        } while (n - made.count() <= MOST_TRIALS);
        return n - made.count();
    }
}
