package longthrow.core.overlay;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import longthrow.core.answer.Answer;
import longthrow.core.answer.DynoRuns;
import longthrow.core.answer.Overlay;
import longthrow.core.answer.TorqueCurve;
import longthrow.core.quantity.FigurePrinter;

/** Answers to {@code dyno} laid over the answer to {@code power}. */
public final class Overlays {
    private Overlays() {}

    /**
     * The answer to {@code power} with what was measured laid over it; the same otherwise, to the last digit.
     * @param sheets answers to {@code dyno}
     */
    public static Answer onto(Answer power, List<Answer> sheets) {
        return power.torque()
                .map(curve -> power.withTorque(curve.withOverlays(
                        sheets.stream().map(dyno -> of(dyno, power)).toList())))
                .orElse(power);
    }

    /**
     * One sheet over the answer to {@code power}.
     * @throws IllegalArgumentException when the first is no answer to {@code dyno} or the second none to {@code power}
     */
    public static Overlay of(Answer dyno, Answer power) {
        DynoRuns runs = dyno.runs().orElseThrow(() -> new IllegalArgumentException("no answer to dyno"));
        TorqueCurve curve = power.torque().orElseThrow(() -> new IllegalArgumentException("no answer to power"));
        FigurePrinter printer = new FigurePrinter(power.units());
        Predicted predicted = new Predicted(curve, printer);
        OneAir air = new OneAir(runs, curve, printer);
        List<Overlay.Held> held = new ArrayList<>();
        if (!predicted.isEmpty()) {
            new Against(runs, predicted, air, printer).all().forEach(held::add);
        }
        return new Overlay(
                dyno.engine(),
                dyno.invented(),
                runs.standard(),
                runs.place(),
                said(predicted, air, runs.engine(), held),
                held);
    }

    private static List<String> said(Predicted predicted, OneAir air, String engine, List<Overlay.Held> held) {
        List<String> said = new ArrayList<>();
        if (predicted.isEmpty()) {
            said.add("No torque is predicted, so nothing can be held against it.");
            return said;
        }
        if (held.isEmpty()) {
            said.add("No run of the sheet has figures that count, so nothing is held against the prediction.");
            return said;
        }
        said.addAll(air.sentences());
        if (!engine.isEmpty()) {
            said.add("The sheet names " + engine + " as the build of its engine.");
        }
        said.add(
                held.size() > 1
                        ? "Which of these setups the build is, as it is written, the sheet does not say: look at the one that it is."
                        : "Whether the engine ran as the build is written, the sheet does not say.");
        said.add("Nothing of the prediction was moved to meet the runs; and that an engine ran at a speed does not show"
                + " that it holds there.");
        return said;
    }

    /** Runs by what was on the engine, in their order. */
    static Map<String, List<DynoRuns.Run>> bySetup(DynoRuns runs, Predicate<DynoRuns.Run> which) {
        return runs.runs().stream()
                .filter(which)
                .collect(Collectors.groupingBy(DynoRuns.Run::setup, LinkedHashMap::new, Collectors.toList()));
    }

    /** Of one setup the runs that count. */
    static List<DynoRuns.Run> counted(DynoRuns runs, String setup) {
        return Optional.ofNullable(bySetup(runs, DynoRuns.Run::counts).get(setup))
                .orElse(List.of());
    }
}
