package longthrow.core.gain;

import java.util.List;
import org.hipparchus.distribution.continuous.FDistribution;

/**
 * How much repeated runs of the same thing differ.
 * @param from            where it was taken from
 * @param sessions        how many
 * @param deviation       of one run [unit of the figure]
 * @param freedom         degrees of freedom behind it
 * @param within          deviation of runs inside sessions, pooled
 * @param withinFreedom   runs less sessions
 * @param betweenFreedom  sessions that check each other and the line of the drift; 0 with three sessions of baseline, change, baseline: nothing is then known of what a refit scatters
 * @param refit           deviation from session to session beyond what runs explain; 0 where runs explain it all, NaN without freedom
 * @param refitChance     how often chance alone makes sessions differ as much; NaN without freedom
 */
public record Scatter(
        From from,
        int sessions,
        double deviation,
        double freedom,
        double within,
        double withinFreedom,
        double betweenFreedom,
        double refit,
        double refitChance) {
    /**
     * Above this chance the sessions are taken to differ no more than runs do, and both are pooled; below it the sessions' own scatter is used (pooling "sometimes",
     * T. A. Bancroft, Biometrics 20 (1964) 427, who recommends 0.25; from memory). With 0.25 the 95 % interval held 92 % where refitting scatters about as runs do; with 0.5 it holds 94 % or more whatever it scatters
     * (docs/decisions/0033).
     */
    public static final double POOLING_CHANCE = 0.5;

    /** Where a scatter is taken from. */
    public enum From {
        /** Runs inside sessions: no sessions check each other. */
        RUNS,
        /** Runs and sessions alike. */
        RUNS_AND_SESSIONS,
        /** Sessions: they differ by more than runs do. */
        SESSIONS
    }

    /** Of figures by session, laid out so. */
    static Scatter of(Layout layout, List<double[]> bySession) {
        double squares = 0;
        int runs = 0;
        double[] means = new double[bySession.size()];
        for (int s = 0; s < means.length; s++) {
            Sample sample = Sample.of(bySession.get(s));
            means[s] = sample.mean();
            squares += sample.sumOfSquares();
            runs += sample.count();
        }
        double withinFreedom = runs - (double) means.length;
        double within = Math.sqrt(squares / withinFreedom);
        int free = layout.freedom();
        if (free < 1) {
            return new Scatter(
                    From.RUNS, means.length, within, withinFreedom, within, withinFreedom, 0, Double.NaN, Double.NaN);
        }
        double misfit = layout.misfit(means);
        double f = misfit / free / (within * within);
        double chance = Double.isFinite(f) ? 1 - new FDistribution(free, withinFreedom).cumulativeProbability(f) : 0;
        double refit = Math.sqrt(Math.max(0, misfit / free - within * within) * means.length / runs);
        Scatter pooled = new Scatter(
                From.RUNS_AND_SESSIONS,
                means.length,
                Math.sqrt((squares + misfit) / (withinFreedom + free)),
                withinFreedom + free,
                within,
                withinFreedom,
                free,
                refit,
                chance);
        return chance > POOLING_CHANCE ? pooled : pooled.taken(From.SESSIONS, Math.sqrt(misfit / free), free);
    }

    private Scatter taken(From from, double deviation, double freedom) {
        return new Scatter(
                from, sessions, deviation, freedom, within, withinFreedom, betweenFreedom, refit, refitChance);
    }

    /**
     * The same, with what all speeds of a curve say of how far sessions differ: one speed by itself has one or two degrees of freedom, and somewhere on a curve those few are alike by chance. Never less
     * than runs scatter here.
     * @param shared deviation of a session [unit of the figure]
     */
    Scatter sharing(double shared) {
        return taken(from, Math.max(shared, within), freedom);
    }

    /** The same figures' scatter from where another's was taken, so that all speeds of a curve go by one rule. */
    static Scatter like(From from, Layout layout, List<double[]> bySession) {
        Scatter own = of(layout, bySession);
        if (from == own.from || from == From.RUNS) {
            return own;
        }
        double squares = own.within * own.within * own.withinFreedom;
        double misfit = layout.misfit(
                bySession.stream().mapToDouble(x -> Sample.of(x).mean()).toArray());
        return from == From.SESSIONS
                ? own.taken(from, Math.sqrt(misfit / own.betweenFreedom), own.betweenFreedom)
                : own.taken(
                        from,
                        Math.sqrt((squares + misfit) / (own.withinFreedom + own.betweenFreedom)),
                        own.withinFreedom + own.betweenFreedom);
    }
}
