package longthrow.core.dyno;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import longthrow.core.answer.DynoRuns;
import longthrow.core.gain.Campaign;
import longthrow.core.gain.Run;
import longthrow.core.gain.Session;
import longthrow.core.measurement.Measured;
import longthrow.core.measurement.StudentT;
import longthrow.core.quantity.Units;

/** Mean curve of each setup with the 95 % band of the mean by the scatter of runs, that of all setups pooled; what drifts between its sessions is in the scatter. */
final class MeanCurves {
    private MeanCurves() {}

    static List<DynoRuns.Setup> of(Campaign campaign) {
        if (campaign.speedsRpm().isEmpty()) {
            return List.of();
        }
        Set<String> names = new LinkedHashSet<>();
        names.add(campaign.baseline());
        campaign.sessions().forEach(s -> names.add(s.setup()));
        Map<String, List<double[]>> counted = new LinkedHashMap<>();
        names.forEach(name -> counted.put(name, counted(campaign, name)));
        double[][] pooled = pooled(campaign.speedsRpm().size(), List.copyOf(counted.values()));
        List<DynoRuns.Setup> setups = new ArrayList<>();
        counted.forEach((name, runs) -> {
            if (!runs.isEmpty()) {
                setups.add(new DynoRuns.Setup(name, runs.size(), mean(campaign.speedsRpm(), runs, pooled)));
            }
        });
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

    /** Scatter of runs about their setup's mean at each speed, all setups together: two runs that happen to agree tell little. */
    private static double[][] pooled(int speeds, List<List<double[]>> setups) {
        double[][] squaresAndFreedom = new double[2][speeds];
        for (List<double[]> runs : setups) {
            for (int j = 0; j < speeds; j++) {
                double[] here = at(runs, j);
                double mean = java.util.Arrays.stream(here).average().orElse(0);
                for (double v : here) {
                    squaresAndFreedom[0][j] += (v - mean) * (v - mean);
                }
                squaresAndFreedom[1][j] += Math.max(0, here.length - 1);
            }
        }
        return squaresAndFreedom;
    }

    private static double[] at(List<double[]> runs, int speed) {
        return runs.stream()
                .mapToDouble(r -> r[speed])
                .filter(v -> !Double.isNaN(v))
                .toArray();
    }

    private static List<DynoRuns.Point> mean(List<Double> rpm, List<double[]> runs, double[][] squaresAndFreedom) {
        List<DynoRuns.Point> points = new ArrayList<>();
        for (int i = 0; i < rpm.size(); i++) {
            double[] here = at(runs, i);
            if (here.length == 0) {
                continue;
            }
            double freedom = squaresAndFreedom[1][i];
            double half = freedom < 1
                    ? Double.NaN
                    : StudentT.factor(Measured.COVERAGE, freedom)
                            * Math.sqrt(squaresAndFreedom[0][i] / freedom / here.length);
            double mean = java.util.Arrays.stream(here).average().orElseThrow();
            points.add(new DynoRuns.Point(Units.RPM.toSi(rpm.get(i)), mean, half));
        }
        return points;
    }
}
