package longthrow.core.life;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import longthrow.core.answer.LimitLadder;
import longthrow.core.answer.Rung;
import longthrow.core.answer.Shaking;
import longthrow.core.measure.Carried;
import longthrow.core.measurement.Measured;
import longthrow.core.motion.CrankMotion;
import longthrow.core.quantity.Dimension;
import longthrow.core.term.Term;

/** Whether it will start: how hard it pulls with every valve shut and no release at work, and from what speed it cannot kick back. */
final class StartSums {
    private static final List<Term> COMPRESSION =
            List.of(Term.STROKE, Term.ROD_LENGTH, Term.BORE, Term.COMPRESSION_RATIO, Term.INTAKE_CLOSES);

    private final Known known;
    private final List<Asked> asked = new ArrayList<>();
    private final List<Shaking.Figure> figures = new ArrayList<>();
    private final List<Rung.Missing> missing = new ArrayList<>();

    StartSums(Known known) {
        this.known = known;
    }

    List<Asked> asked() {
        return List.copyOf(asked);
    }

    LimitLadder.Start told() {
        List<Term> spark = new ArrayList<>(COMPRESSION);
        spark.add(known.figure(Term.TIMING_WITH_KEY).isPresent() ? Term.TIMING_WITH_KEY : Term.BASE_TIMING);
        spark.add(Term.FLYWHEEL_INERTIA);
        tell(
                "hardest_torque",
                "hardest pull on the crankshaft through compression",
                Dimension.TORQUE,
                COMPRESSION,
                x -> starting(x).hardestTorque());
        tell(
                "speed_to_pass",
                "speed at the spark that just carries it over, unlit",
                Dimension.ROTATIONAL_SPEED,
                spark,
                x -> starting(x).speedToPass(x[6], x[5], false));
        tell(
                "speed_past_kick_back",
                "speed at the spark above which it cannot kick back",
                Dimension.ROTATIONAL_SPEED,
                spark,
                x -> starting(x).speedToPass(x[6], x[5], true));
        List<String> sentences = new ArrayList<>();
        sentences.add(
                "A rope or handle that is snatched back breaks fingers and wrists: pull with the fingers only, let go at once, stand to the side. Between the two speeds whether it "
                        + "kicks back hangs on how fast the flame is; a heavier wheel or a later spark lowers both.");
        if (known.figure(Term.RELEASE_LIFT).isPresent()) {
            sentences.add(
                    "The compression release makes it easier than this: how much hangs on when it shuts and how fast it is cranked, which is not reckoned here.");
        }
        return new LimitLadder.Start(figures, missing, sentences);
    }

    private static Starting starting(double[] x) {
        return new Starting(new CrankMotion(x[0] / 2, x[1], 0), x[2], x[3], Math.max(0, Math.PI - x[4]));
    }

    private void tell(
            String key, String label, Dimension dimension, List<Term> terms, ToDoubleFunction<double[]> figure) {
        Asked of = new Asked(known);
        asked.add(of);
        terms.forEach(of::figure);
        of.takes(
                Term.INTAKE_CLOSES.path(),
                "compression begins where the intake closes at the checking lift; nothing leaks, and no release is at work: the hardest it can pull",
                "Starting: isentropic air; friction comes on top");
        for (Rung.Missing m : of.missing()) {
            if (missing.stream().noneMatch(other -> other.where().equals(m.where()))) {
                missing.add(m);
            }
        }
        if (of.isWhole()) {
            Optional<Measured> told = terms.stream().allMatch(t -> of.value(t).isPresent())
                    ? Optional.of(Carried.through(
                            figure,
                            terms.stream().map(t -> of.value(t).orElseThrow()).toList()))
                    : Optional.empty();
            told.ifPresent(f -> figures.add(new Shaking.Figure(key, label, dimension, f)));
        }
    }
}
