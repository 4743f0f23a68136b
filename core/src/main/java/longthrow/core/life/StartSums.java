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
import longthrow.core.quantity.Units;
import longthrow.core.term.Term;

/** Whether it will start: how hard it pulls without and with its release at work, and from what speed it cannot kick back. */
final class StartSums {
    private static final List<Term> COMPRESSION =
            List.of(Term.STROKE, Term.ROD_LENGTH, Term.BORE, Term.COMPRESSION_RATIO, Term.INTAKE_CLOSES);

    /** Speeds of a pull by hand, slow and brisk [rpm]; common practice, no source. */
    private static final List<Integer> PULLS_RPM = List.of(300, 600);

    /** Flow coefficient of a valve just off its seat: the middle of 0.6 to 0.7; Heywood (1988), section 6.3.2; from memory. */
    private static final double THROUGH_A_SLIT = 0.65;

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
                "hardest pull on the crankshaft through compression, no release",
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
        if (!known.build().of(Term.RELEASE_LIFT).isEmpty()) {
            released();
            sentences.add(
                    "With the compression release at work it pulls as hard as said for the two speeds if it holds the exhaust valve off its seat through all of the compression; one that lets go earlier pulls harder, up to the figure without it.");
        }
        return new LimitLadder.Start(figures, missing, sentences);
    }

    /** Turned over slowly by a rope that drags, and briskly: the range of pulls by hand. */
    private void released() {
        List<Term> release = new ArrayList<>(COMPRESSION);
        release.add(Term.EXHAUST_HEAD);
        release.add(Term.RELEASE_LIFT);
        for (int rpm : PULLS_RPM) {
            double speed = Units.RPM.toSi(rpm);
            tell(
                    "torque_released_" + rpm,
                    "hardest pull on the crankshaft, release at work, turned at " + rpm + " rpm",
                    Dimension.TORQUE,
                    release,
                    x -> starting(x).hardestTorqueWithRelease(Starting.releaseArea(x[5], x[6], THROUGH_A_SLIT), speed));
        }
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
                "compression begins where the intake closes at the checking lift; nothing leaks past valves and rings",
                "Starting: isentropic air; friction comes on top");
        if (terms.contains(Term.RELEASE_LIFT)) {
            of.takes(
                    Term.RELEASE_LIFT.path(),
                    "the release leaks as a slit round the exhaust valve's head, flow coefficient 0.65, from where the intake closes to top dead centre",
                    "Heywood (1988), section 6.3.2 and appendix C; from memory");
        }
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
