package longthrow.core.overlay;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import longthrow.core.answer.DynoRuns;
import longthrow.core.answer.DynoRuns.Where;
import longthrow.core.answer.Overlay;
import longthrow.core.measurement.Measured;
import longthrow.core.measurement.Source;
import longthrow.core.quantity.Dimension;
import longthrow.core.quantity.FigurePrinter;

/** Each setup of a sheet, or each run where there is no mean, held against the prediction. */
final class Against {
    private final DynoRuns runs;
    private final Predicted predicted;
    private final OneAir air;
    private final Judging judging;

    Against(DynoRuns runs, Predicted predicted, OneAir air, FigurePrinter printer) {
        this.runs = runs;
        this.predicted = predicted;
        this.air = air;
        this.judging = new Judging(runs, air, printer);
    }

    List<Overlay.Held> all() {
        if (!runs.setups().isEmpty()) {
            return runs.setups().stream().map(this::mean).toList();
        }
        boolean hasCounted = runs.runs().stream().anyMatch(DynoRuns.Run::counts);
        List<Overlay.Held> held = new ArrayList<>();
        Overlays.bySetup(runs, r -> hasCounted ? r.counts() : r.why().equals(DynoRuns.UNHELD))
                .forEach((setup, own) -> {
                    if (own.stream().allMatch(r -> !hasCounted && !r.curve().isEmpty())) {
                        own.stream().map(this::alone).forEach(held::add);
                    } else {
                        peaks(setup, own).ifPresent(held::add);
                    }
                });
        return held;
    }

    // ---- curves

    private Overlay.Held mean(DynoRuns.Setup setup) {
        List<DynoRuns.Run> own = Overlays.counted(runs, setup.name());
        return curve(
                setup.name(),
                own.size() == 1 ? "one run" : "the mean of " + own.size() + " runs",
                own,
                setup.torque(),
                point -> Math.hypot(own.size() < 2 ? 0 : point.half(), bench(own, point)));
    }

    private Overlay.Held alone(DynoRuns.Run run) {
        return curve(
                run.setup() + ", run " + run.name() + " of " + run.session(),
                "one run",
                List.of(run),
                run.curve(),
                DynoRuns.Point::half);
    }

    /**
     * Half-width of one run at the speed of a point, of the mean of runs [N m]: what the bench lays on all alike, with what each scatters in itself, which is told with it. NaN where one is not known.
     */
    private static double bench(List<DynoRuns.Run> own, DynoRuns.Point point) {
        double sum = 0;
        for (DynoRuns.Run run : own) {
            sum += run.curve().stream()
                    .filter(p -> Math.abs(p.speed() - point.speed()) <= Predicted.SAME * point.speed())
                    .mapToDouble(p -> p.half() / p.value())
                    .findFirst()
                    .orElse(Double.NaN);
        }
        return point.value() * sum / own.size();
    }

    private Overlay.Held curve(
            String name,
            String of,
            List<DynoRuns.Run> own,
            List<DynoRuns.Point> corrected,
            ToDoubleFunction<DynoRuns.Point> halfOf) {
        List<Overlay.At> points = new ArrayList<>();
        if (runs.where() != Where.OWN_SPEED) {
            double back = air.back(own);
            double weather = air.half(own);
            List<DynoRuns.Point> brought = corrected.stream()
                    .map(p -> new DynoRuns.Point(
                            p.speed(),
                            back * p.value(),
                            back * Math.hypot(halfOf.applyAsDouble(p), weather * p.value())))
                    .toList();
            (predicted.isCurve() ? brought : at(predicted.speeds(), brought)).forEach(p -> points.add(at(p)));
        }
        return judging.ofCurve(name, of, own, points);
    }

    private Overlay.At at(DynoRuns.Point measured) {
        Predicted.At there = predicted.at(measured.speed());
        return new Overlay.At(
                measured.speed(), measured.value(), measured.half(), there.value(), there.half(), there.why());
    }

    /** What was measured at single speeds of the prediction: straight between two speeds near each other. */
    private static List<DynoRuns.Point> at(List<Double> speeds, List<DynoRuns.Point> measured) {
        List<DynoRuns.Point> all = new ArrayList<>();
        double most = measured.get(measured.size() - 1).speed();
        for (double speed : speeds) {
            for (int i = 0; i < measured.size(); i++) {
                DynoRuns.Point a = measured.get(Math.max(0, i - 1));
                DynoRuns.Point b = measured.get(i);
                boolean isSame = Math.abs(b.speed() - speed) <= Predicted.SAME * speed;
                if (isSame) {
                    all.add(new DynoRuns.Point(speed, b.value(), b.half()));
                    break;
                }
                if (a.speed() < speed && speed < b.speed() && b.speed() - a.speed() <= Predicted.NEAR * most) {
                    double share = (speed - a.speed()) / (b.speed() - a.speed());
                    all.add(new DynoRuns.Point(
                            speed,
                            a.value() * (1 - share) + b.value() * share,
                            a.half() * (1 - share) + b.half() * share));
                    break;
                }
            }
        }
        return all;
    }

    // ---- peaks

    private Optional<Overlay.Held> peaks(String setup, List<DynoRuns.Run> own) {
        List<DynoRuns.Run> with = own.stream().filter(r -> peak(r).isPresent()).toList();
        Optional<Predicted.Most> most = predicted.most(runs.figure());
        if (with.isEmpty() || most.isEmpty()) {
            return Optional.empty();
        }
        boolean isBrought = air.isBrought(with);
        Measured mean = mean(with.stream()
                .map(r -> air.brought(peak(r).orElseThrow().figure(), isBrought))
                .toList());
        double half = mean.isUnknown() ? Double.NaN : mean.expanded();
        double speed = with.size() == 1 ? peak(with.get(0)).orElseThrow().speed() : Double.NaN;
        return Optional.of(judging.ofPeaks(
                setup,
                with,
                new Overlay.At(
                        speed,
                        mean.value(),
                        half,
                        most.get().value(),
                        most.get().half(),
                        ""),
                most.get()));
    }

    private Optional<DynoRuns.Peak> peak(DynoRuns.Run run) {
        return runs.figure() == Dimension.POWER ? run.power() : run.torque();
    }

    /** Of some figures: what they share stays, and how they scatter is one more source. */
    private static Measured mean(List<Measured> all) {
        int n = all.size();
        double mean = all.stream().mapToDouble(Measured::value).average().orElseThrow();
        Map<Source, Double> doubt = new LinkedHashMap<>();
        all.forEach(m -> m.contributions().forEach((source, c) -> doubt.merge(source, c / n, Double::sum)));
        if (n > 1) {
            double squares = all.stream()
                    .mapToDouble(m -> (m.value() - mean) * (m.value() - mean))
                    .sum();
            double scatter = Math.sqrt(squares / (n - 1) / n);
            Source source = new Source(
                    "scatter of the runs", Source.Kind.SCATTER, "scatter of the runs", scatter, n - 1.0, scatter);
            doubt.put(source, scatter);
        }
        return Measured.withContributions(mean, doubt);
    }
}
