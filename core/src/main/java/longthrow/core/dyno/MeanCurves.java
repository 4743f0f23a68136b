package longthrow.core.dyno;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import longthrow.core.answer.DynoRuns;
import longthrow.core.gain.Campaign;
import longthrow.core.gain.Run;
import longthrow.core.gain.Session;
import longthrow.core.measurement.Measured;
import longthrow.core.measurement.StudentT;
import longthrow.core.quantity.Units;

/** Mean curve of each setup with the 95 % band of the mean by the scatter of its runs; what drifts between its sessions is in the scatter. */
final class MeanCurves {
    private MeanCurves() {}

    static List<DynoRuns.Setup> of(Campaign campaign) {
        if (campaign.speedsRpm().isEmpty()) {
            return List.of();
        }
        Set<String> names = new LinkedHashSet<>();
        names.add(campaign.baseline());
        campaign.sessions().forEach(s -> names.add(s.setup()));
        List<DynoRuns.Setup> setups = new ArrayList<>();
        for (String name : names) {
            List<double[]> runs = counted(campaign, name);
            if (!runs.isEmpty()) {
                setups.add(new DynoRuns.Setup(name, runs.size(), mean(campaign.speedsRpm(), runs)));
            }
        }
        return setups;
    }

    private static List<double[]> counted(Campaign campaign, String setup) {
        List<double[]> runs = new ArrayList<>();
        for (Session session : campaign.sessions()) {
            if (!session.setup().equals(setup)) {
                continue;
            }
            double factor = session.air().map(a -> a.factor().value()).orElse(1.0);
            for (Run run : session.runs()) {
                boolean isDropped = campaign.dropped().stream()
                        .anyMatch(d ->
                                d.session().equals(session.name()) && d.run().equals(run.name()));
                if (!isDropped) {
                    double[] values = new double[run.size()];
                    for (int i = 0; i < values.length; i++) {
                        values[i] = factor * run.at(i);
                    }
                    runs.add(values);
                }
            }
        }
        return runs;
    }

    private static List<DynoRuns.Point> mean(List<Double> rpm, List<double[]> runs) {
        List<DynoRuns.Point> points = new ArrayList<>();
        for (int i = 0; i < rpm.size(); i++) {
            int at = i;
            double[] here = runs.stream()
                    .mapToDouble(r -> r[at])
                    .filter(v -> !Double.isNaN(v))
                    .toArray();
            if (here.length == 0) {
                continue;
            }
            double mean = java.util.Arrays.stream(here).average().orElseThrow();
            double squares = java.util.Arrays.stream(here)
                    .map(v -> (v - mean) * (v - mean))
                    .sum();
            double half = here.length < 2
                    ? Double.NaN
                    : StudentT.factor(Measured.COVERAGE, here.length - 1.0)
                            * Math.sqrt(squares / (here.length - 1) / here.length);
            points.add(new DynoRuns.Point(Units.RPM.toSi(rpm.get(i)), mean, half));
        }
        return points;
    }
}
