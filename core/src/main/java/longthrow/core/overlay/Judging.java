package longthrow.core.overlay;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import longthrow.core.answer.DynoRuns;
import longthrow.core.answer.DynoRuns.Where;
import longthrow.core.answer.Overlay;
import longthrow.core.answer.Overlay.Verdict;
import longthrow.core.quantity.Dimension;
import longthrow.core.quantity.FigurePrinter;
import longthrow.core.quantity.Units;

/** What may be said of measured and predicted beside each other, and what may not. */
final class Judging {
    /** Share of the speeds that may lie beyond both doubts where the whole lies within: one in ten, twice what 95 % lets happen. Judgement. */
    private static final double FEW = 0.1;

    /** A shape needs as many speeds; judgement. */
    private static final int SHAPE = 3;

    private static final double HUNDRED = 100;

    private final DynoRuns runs;
    private final OneAir air;
    private final FigurePrinter printer;

    Judging(DynoRuns runs, OneAir air, FigurePrinter printer) {
        this.runs = runs;
        this.air = air;
        this.printer = printer;
    }

    /** Why the level of the two cannot be compared, each a clause; none where it can. */
    private List<String> obstacles(List<DynoRuns.Run> own) {
        List<String> all = new ArrayList<>();
        switch (runs.where()) {
            case CRANK -> {}
            case BEHIND_DRIVE ->
                all.add("it was measured behind the drive, and what the drive takes is not known"
                        + " (write 'drive_efficiency' with its ± into 'bench')");
            case OWN_SPEED ->
                all.add("the speed of the crank is not known, only that of drum or wheel"
                        + " (write 'engine_turns' into 'bench', or log the engine's speed)");
            case NOT_SAID ->
                all.add("whether the dynamometer tells figures at the crank or behind a drive is not said"
                        + " (write 'drive_efficiency' into 'bench': 1 where it tells them at the crank)");
        }
        if (!air.isBrought(own)) {
            all.add(
                    runs.standard().isEmpty()
                            ? "the runs stand as read, in air that is not that of the prediction"
                                    + " (write 'standard' and the air of each session)"
                            : "the air that the engine drew is not known whole (write all three of 'air')");
        }
        return all;
    }

    // ---- a curve

    Overlay.Held ofCurve(String name, String of, List<DynoRuns.Run> own, List<Overlay.At> points) {
        List<Overlay.At> both = points.stream().filter(Overlay.At::isCompared).toList();
        int within = (int) both.stream().filter(Overlay.At::isWithin).count();
        double measured = both.stream().mapToDouble(Overlay.At::measured).sum();
        double ratio = both.isEmpty()
                ? Double.NaN
                : measured / both.stream().mapToDouble(Overlay.At::predicted).sum();
        // neighbouring speeds share their causes: half-widths add up as they are
        double predictedSum = both.stream().mapToDouble(Overlay.At::predicted).sum();
        double predictedHalf =
                both.stream().mapToDouble(Overlay.At::predictedHalf).sum() / predictedSum;
        double half =
                Math.hypot(both.stream().mapToDouble(Overlay.At::measuredHalf).sum() / predictedSum, predictedHalf);
        List<String> obstacles = obstacles(own);
        boolean isFar = !(Math.abs(1 - ratio) <= (Double.isNaN(half) ? predictedHalf : half));
        Verdict verdict =
                both.isEmpty() ? Verdict.CANNOT_BE_TOLD : verdict(obstacles, ratio, half, isFar, within, both.size());
        List<String> sentences = new ArrayList<>();
        sentences.add(name + ": " + verdict.label() + because(verdict, obstacles, both.isEmpty(), half) + ".");
        if (!both.isEmpty()) {
            sentences.add(
                    "Torque measured is " + ratio(ratio, half) + " of that predicted, over " + speeds(both) + "; at "
                            + within + " of " + both.size() + " the two lie within "
                            + (Double.isNaN(half) ? "the prediction's doubt" : "their doubts together") + ".");
        }
        if (obstacles.isEmpty()) {
            sentences.addAll(outside(both, within, verdict));
            worth(verdict, half).forEach(sentences::add);
        } else if (!both.isEmpty()) {
            sentences.addAll(shape(both, ratio));
            drive(ratio, obstacles).forEach(sentences::add);
        }
        sentences.addAll(untold(points));
        if (own.size() == 1 && !both.isEmpty()) {
            sentences.add("It is one run: how runs differ from each other is not in its ±.");
        }
        return new Overlay.Held(
                name, of, Dimension.TORQUE, verdict, ratio, half, within, both.size(), points, sentences);
    }

    /**
     * Behind a drive there is less than at the crank: a prediction below what was measured there is too low all the same.
     * @param isFar whether the two are further apart than what may be wrong
     */
    private Verdict verdict(
            List<String> obstacles, double ratio, double half, boolean isFar, int within, int compared) {
        boolean isBehindAlone = runs.where() == Where.BEHIND_DRIVE && obstacles.size() == 1;
        if (isBehindAlone && ratio - half > 1) {
            return Verdict.TOO_LOW;
        }
        if (!obstacles.isEmpty()) {
            return Verdict.CANNOT_BE_TOLD;
        }
        if (!isFar) {
            return within >= compared * (1 - FEW) ? Verdict.AGREES : Verdict.IN_PARTS;
        }
        if (Double.isNaN(half)) {
            return Verdict.CANNOT_BE_TOLD;
        }
        return ratio < 1 ? Verdict.TOO_HIGH : Verdict.TOO_LOW;
    }

    private static String because(Verdict verdict, List<String> obstacles, boolean isEmpty, double half) {
        if (isEmpty) {
            return obstacles.isEmpty() ? ", for no speed has both" : ", for " + String.join(", and ", obstacles);
        }
        if (!obstacles.isEmpty()) {
            return verdict == Verdict.TOO_LOW
                    ? ", even before what the drive takes is added"
                    : ", for " + String.join(", and ", obstacles);
        }
        return Double.isNaN(half) && verdict == Verdict.CANNOT_BE_TOLD
                ? ", for how sure the figures are is not known (write a ± beside what the dynamometer told)"
                : "";
    }

    /** What an agreement is worth: how wrong the prediction may be without its being seen. */
    private static List<String> worth(Verdict verdict, double half) {
        return verdict == Verdict.AGREES && !Double.isNaN(half)
                ? List.of(String.format(
                        Locale.ROOT,
                        "A prediction that is off by less than %.0f %% could not be told from a right one.",
                        HUNDRED * half))
                : verdict == Verdict.AGREES
                        ? List.of(
                                "How sure the measured figures are is not written, so this says no more than that they lie"
                                        + " within the prediction's doubt.")
                        : List.of();
    }

    private List<String> outside(List<Overlay.At> both, int within, Verdict verdict) {
        if (within == both.size() || verdict == Verdict.CANNOT_BE_TOLD) {
            return List.of();
        }
        List<String> said = new ArrayList<>();
        List<Overlay.At> high =
                both.stream().filter(p -> !p.isWithin() && p.difference() > 0).toList();
        List<Overlay.At> low =
                both.stream().filter(p -> !p.isWithin() && p.difference() < 0).toList();
        if (!high.isEmpty()) {
            said.add("Predicted higher than measured by more than both doubts at " + speeds(high) + ".");
        }
        if (!low.isEmpty()) {
            said.add("Predicted lower than measured by more than both doubts at " + speeds(low) + ".");
        }
        return said;
    }

    /** Level taken out: what is left is how the one bends beside the other. */
    private List<String> shape(List<Overlay.At> both, double ratio) {
        if (both.size() < SHAPE) {
            return List.of();
        }
        double least = Double.POSITIVE_INFINITY;
        double most = Double.NEGATIVE_INFINITY;
        for (Overlay.At at : both) {
            double apart = ratio * at.predicted() / at.measured() - 1;
            least = Math.min(least, apart);
            most = Math.max(most, apart);
        }
        return List.of(String.format(
                Locale.ROOT,
                "Of the shape alone, both brought to one level: the prediction runs from %.1f %% below to %.1f %% above what was measured.",
                HUNDRED * Math.max(0, -least),
                HUNDRED * Math.max(0, most)));
    }

    private List<String> drive(double ratio, List<String> obstacles) {
        return runs.where() == Where.BEHIND_DRIVE && obstacles.size() == 1 && ratio < 1
                ? List.of(String.format(
                        Locale.ROOT,
                        "If the prediction were right, the drive would hand on %.0f %% of the crank's power.",
                        HUNDRED * ratio))
                : List.of();
    }

    /** Speeds that were run and of which nothing is predicted, by why. */
    private List<String> untold(List<Overlay.At> points) {
        List<String> said = new ArrayList<>();
        for (int i = 0, from = 0; i < points.size(); i++) {
            boolean ends = i + 1 == points.size()
                    || !points.get(i + 1).why().equals(points.get(i).why());
            if (ends) {
                if (!points.get(i).isCompared()) {
                    said.add("At " + range(points.get(from), points.get(i)) + " torque was measured and none is told: "
                            + points.get(i).why()
                            + (points.get(i).why().contains("that were looked at")
                                    ? "."
                                    : "; that it was run there changes nothing of that."));
                }
                from = i + 1;
            }
        }
        return said;
    }

    // ---- a peak

    Overlay.Held ofPeaks(String name, List<DynoRuns.Run> own, Overlay.At at, Predicted.Most most) {
        List<String> obstacles = obstacles(own);
        double ratio = at.measured() / at.predicted();
        double half = Math.hypot(at.measuredHalf(), at.predictedHalf()) / at.predicted();
        Verdict byFigures = verdict(obstacles, ratio, half, !at.isWithin(), at.isWithin() ? 1 : 0, 1);
        // a most that stands at the end of what is predicted may be more: only that it is too high is sure then
        boolean mayBeMore = !most.isInside() && byFigures != Verdict.TOO_HIGH;
        Verdict verdict = mayBeMore ? Verdict.CANNOT_BE_TOLD : byFigures;
        String what = runs.figure() == Dimension.POWER ? "power" : "torque";
        List<String> sentences = new ArrayList<>();
        String edge = "the prediction is not told beyond " + speed(most.speed()) + ", where it is highest";
        List<String> all = new ArrayList<>(obstacles);
        if (mayBeMore) {
            all.add(edge);
        }
        sentences.add(name + ": " + verdict.label() + because(verdict, all, false, half) + ".");
        sentences.add("Most " + what + " measured is " + ratio(ratio, half) + " of the most predicted, "
                + said(at.predicted(), at.predictedHalf()) + " at " + speed(most.speed()) + ": "
                + said(at.measured(), at.measuredHalf())
                + (own.size() == 1 ? ", one run." : ", the mean of " + own.size() + " runs."));
        sentences.add("Only the peak can be compared: what happens beside it is not written in the sheet.");
        if (!mayBeMore && !most.isInside()) {
            sentences.add("The most may be more: " + edge + ".");
        }
        if (obstacles.isEmpty()) {
            worth(verdict, half).forEach(sentences::add);
        }
        return new Overlay.Held(
                name,
                own.size() == 1 ? "the peak of one run" : "the mean of the peaks of " + own.size() + " runs",
                runs.figure(),
                verdict,
                ratio,
                half,
                at.isWithin() ? 1 : 0,
                1,
                List.of(at),
                sentences);
    }

    // ---- words

    private static String ratio(double ratio, double half) {
        return Double.isNaN(half)
                ? String.format(Locale.ROOT, "%.2f (± not known)", ratio)
                : String.format(Locale.ROOT, "%.2f ± %.2f", ratio, half);
    }

    private String said(double value, double half) {
        return (Double.isNaN(half)
                        ? printer.printDoubtUnknown(runs.figure(), value)
                        : printer.print(runs.figure(), value, half))
                .first()
                .text();
    }

    private String speeds(List<Overlay.At> points) {
        return points.size() == 1
                ? "one speed, " + speed(points.get(0).speed())
                : points.size() + " speeds from " + speed(points.get(0).speed()) + " to "
                        + speed(points.get(points.size() - 1).speed());
    }

    private String range(Overlay.At from, Overlay.At to) {
        return from.speed() == to.speed() ? speed(from.speed()) : speed(from.speed()) + " to " + speed(to.speed());
    }

    private String speed(double speed) {
        return printer.print(Dimension.ROTATIONAL_SPEED, Units.RPM.toSi(Math.rint(Units.RPM.fromSi(speed))), 0)
                .first()
                .text();
    }
}
