package longthrow.core.dyno;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import longthrow.core.answer.DynoRuns;
import longthrow.core.answer.Finding;
import longthrow.core.quantity.Dimension;

/** Runs that are one run: a logger's file that is named twice, or a copy of it. Counted twice it would make scatter look small, or a change look like nothing. */
final class Twice {
    private final List<Finding> findings;

    /**
     * Looks for them.
     * @param findings takes what is found
     */
    Twice(List<Finding> findings) {
        this.findings = findings;
    }

    /** The runs in their order; of those that are one, the later without figures. */
    List<Reading.Ran> without(List<Reading.Ran> all) {
        Map<List<Long>, Reading.Ran> seen = new HashMap<>();
        List<Reading.Ran> once = new ArrayList<>();
        for (Reading.Ran ran : all) {
            Optional<List<Long>> digits = digits(ran);
            Optional<Reading.Ran> before = digits.map(seen::get);
            digits.ifPresent(d -> seen.putIfAbsent(d, ran));
            once.add(before.map(first -> told(ran, first)).orElse(ran));
        }
        return once;
    }

    private Reading.Ran told(Reading.Ran ran, Reading.Ran first) {
        String of = "run " + first.name() + " of " + first.session().name();
        findings.add(new Finding(
                Finding.Kind.WARNING,
                "run " + ran.name() + " of " + ran.session().name(),
                "its log is that of " + of + " to the last digit: one run, which counts once, there",
                "name the file of the run that was meant, or take the line out"));
        return new Reading.Ran(
                ran.session(),
                ran.pull(),
                ran.name(),
                Optional.empty(),
                ran.aside(),
                false,
                "the same log as " + of + ": it counts there");
    }

    /** What no two logged runs have alike: speed and height of both peaks, to the last bit. */
    private static Optional<List<Long>> digits(Reading.Ran ran) {
        if (!(ran.pull().evidence() instanceof DynoSheet.Log)) {
            return Optional.empty();
        }
        return ran.figures()
                .flatMap(f -> f.peak(Dimension.TORQUE)
                        .flatMap(t -> f.peak(Dimension.POWER).map(p -> bits(t, p))));
    }

    private static List<Long> bits(DynoRuns.Peak torque, DynoRuns.Peak power) {
        return List.of(
                Double.doubleToLongBits(torque.figure().value()),
                Double.doubleToLongBits(torque.speed()),
                Double.doubleToLongBits(power.figure().value()),
                Double.doubleToLongBits(power.speed()));
    }
}
