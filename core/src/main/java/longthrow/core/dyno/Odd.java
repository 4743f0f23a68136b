package longthrow.core.dyno;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import longthrow.core.answer.Finding;
import longthrow.core.gain.Run;

/** A run that is far from the others of its session: nothing was changed between them, so a unit, a column or the run itself is not what it is taken for. */
final class Odd {
    /** Runs of a session differ by a few per cent at the most; from here on a run is named. Common practice, no source. */
    private static final double NAMED = 0.1;

    /** From here on it does not count. Judgement, no source. */
    private static final double NOT_COUNTED = 0.5;

    /** Fewer runs have no middle that one can be far from. */
    private static final int FEWEST = 3;

    private final DynoSheet.Session session;
    private final List<Finding> findings;

    Odd(DynoSheet.Session session, List<Finding> findings) {
        this.session = session;
        this.findings = findings;
    }

    /** The same runs; those that are too far off set aside out loud. */
    List<Run> without(List<Run> runs) {
        List<Run> counted = runs.stream()
                .skip(1)
                .filter(r -> r.reason().isEmpty() && !r.isSlipped())
                .toList();
        if (counted.size() < FEWEST) {
            return runs;
        }
        double[] middle = new double[counted.get(0).size()];
        for (int j = 0; j < middle.length; j++) {
            int at = j;
            middle[j] = median(counted.stream().mapToDouble(r -> r.at(at)).toArray());
        }
        List<Run> kept = new ArrayList<>();
        for (Run run : runs) {
            double[] ratios = new double[middle.length];
            for (int j = 0; j < middle.length; j++) {
                ratios[j] = run.at(j) / middle[j];
            }
            double ratio = median(ratios);
            boolean isAsked = counted.contains(run) && Math.abs(ratio - 1) > NAMED;
            if (isAsked) {
                String times = String.format(Locale.ROOT, "%.2f times the middle of its session", ratio);
                boolean counts = Math.abs(ratio - 1) <= NOT_COUNTED;
                findings.add(new Finding(
                        Finding.Kind.WARNING,
                        "run " + run.name() + " of " + session.name(),
                        "it shows " + times + ", and nothing was changed between them"
                                + (counts ? "; it counts" : "; it does not count"),
                        "look at its unit, columns and gear; set it aside if something failed"));
                kept.add(counts ? run : run.odd(times + ": a unit, column or gear is not that of the others"));
            } else {
                kept.add(run);
            }
        }
        return kept;
    }

    /** Of those that are numbers; NaN where none is. */
    private static double median(double[] values) {
        double[] sorted =
                Arrays.stream(values).filter(Double::isFinite).sorted().toArray();
        return sorted.length == 0 ? Double.NaN : sorted[sorted.length / 2];
    }
}
