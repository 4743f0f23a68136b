package longthrow.core.dyno;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import longthrow.core.answer.Finding;
import longthrow.core.gain.Campaign;
import longthrow.core.gain.Comparison;
import longthrow.core.gain.Run;
import longthrow.core.gain.Session;

/** Speeds that one run lacks are lost for all: told with the run. */
final class SpeedsLeftOut {
    /** Layout. */
    private static final int SHORT_RUNS_TOLD = 6;

    /** Fewer speeds are no area under a curve. Judgement. */
    private static final int FEWEST_SPEEDS = 3;

    private final Campaign campaign;
    private final Comparison comparison;

    SpeedsLeftOut(Campaign campaign, Comparison comparison) {
        this.campaign = campaign;
        this.comparison = comparison;
    }

    /**
     * Says which speeds are not used, and by which runs.
     * @param findings takes it
     * @return what stands against comparing at all; empty where nothing does
     */
    Optional<String> told(List<Finding> findings) {
        List<Double> lost = comparison.speedsLeftOut();
        if (lost.isEmpty()) {
            return Optional.empty();
        }
        int all = campaign.speedsRpm().size();
        int left = all - lost.size();
        Set<String> runs = shortRuns();
        findings.add(new Finding(
                2 * left < all ? Finding.Kind.WARNING : Finding.Kind.NOTE,
                "speeds",
                "not used, since a run that counts does not have them: "
                        + lost.stream()
                                .map(s -> String.format(Locale.ROOT, "%.0f", s))
                                .collect(Collectors.joining(", "))
                        + " rpm; " + runs.stream().limit(SHORT_RUNS_TOLD).collect(Collectors.joining(", "))
                        + (runs.size() > SHORT_RUNS_TOLD ? " and " + (runs.size() - SHORT_RUNS_TOLD) + " more" : ""),
                "set the short run aside, or take it again over the whole range"));
        return left < FEWEST_SPEEDS && all >= FEWEST_SPEEDS
                ? Optional.of("No run is held against another: all that count share " + left + " of " + all
                        + " speeds, and " + FEWEST_SPEEDS
                        + " are the least. Set the short run aside, or take it again over the whole range.")
                : Optional.empty();
    }

    private Set<String> shortRuns() {
        int all = campaign.speedsRpm().size();
        Set<String> runs = new LinkedHashSet<>();
        for (Session session : campaign.sessions()) {
            for (Run run : session.runs()) {
                boolean counts = comparison.dropped().stream()
                        .noneMatch(d ->
                                d.session().equals(session.name()) && d.run().equals(run.name()));
                long has = IntStream.range(0, all)
                        .filter(j -> !Double.isNaN(run.at(j)))
                        .count();
                if (counts && has < all) {
                    runs.add("run " + run.name() + " of " + session.name() + " has " + has + " of " + all);
                }
            }
        }
        return runs;
    }
}
