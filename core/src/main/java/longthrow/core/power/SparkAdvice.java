package longthrow.core.power;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import longthrow.core.answer.SparkSweep;
import longthrow.core.answer.SparkSweep.Step;
import longthrow.core.measurement.Measured;
import longthrow.core.quantity.Dimension;
import longthrow.core.quantity.FigurePrinter;
import longthrow.core.quantity.Units;

/** One key serves at all speeds: which of those that are sold comes nearest the better spark at all of them together and is let by each of them. */
final class SparkAdvice {
    private static final String CAUTION =
            "An earlier spark raises the peak pressure, the heat of piston and head and the kick-back on starting, and knock burns a piston"
                    + " before it is heard over the exhaust; check the timing with a lamp after every change, go by one"
                    + " step, read the plug, and ask life again.";

    private static final String LATE =
            "A later spark heats the exhaust valve and the port; check the timing with a lamp.";

    /** Knock is looked for at so many speeds at least, the lowest of them at most so much of the highest, before an earlier spark is advised; our own choice. */
    private static final int LEAST_SPEEDS = 3;

    private static final double LOW = 0.6;

    private SparkAdvice() {}

    /**
     * A key and what it is worth over all speeds.
     * @param shift   from the straight key [rad]
     * @param advance with it [rad]
     * @param gain    mean of what torque gains, a share
     */
    record Key(double shift, double advance, double gain) {}

    /** Whether the speeds reach from low to high. */
    private static boolean isLookedThrough(List<SparkSweep> sweeps) {
        double lowest = sweeps.stream().mapToDouble(SparkSweep::speed).min().orElse(Double.NaN);
        double highest = sweeps.stream().mapToDouble(SparkSweep::speed).max().orElse(Double.NaN);
        return sweeps.size() >= LEAST_SPEEDS && lowest <= LOW * highest;
    }

    /** The key that gives most among those that every speed lets; empty where none is worth it. */
    static Optional<Key> key(List<SparkSweep> sweeps) {
        return keys(sweeps).stream()
                .filter(key -> of(sweeps, key).stream().allMatch(Step::isAllowed))
                .filter(key -> key.gain >= Lever.WORTH_A_WORD)
                .max(Comparator.comparingDouble(Key::gain));
    }

    /** Those that every speed knows. */
    private static List<Key> keys(List<SparkSweep> sweeps) {
        List<Key> keys = new ArrayList<>();
        if (sweeps.isEmpty()) {
            return keys;
        }
        for (Step step : sweeps.get(0).steps()) {
            Key bare = new Key(step.shift(), step.advance(), 0);
            List<Step> all = of(sweeps, bare);
            if (all.size() == sweeps.size()) {
                keys.add(new Key(
                        step.shift(),
                        step.advance(),
                        all.stream().mapToDouble(Step::gain).average().orElseThrow()));
            }
        }
        return keys;
    }

    private static List<Step> of(List<SparkSweep> sweeps, Key key) {
        return sweeps.stream()
                .flatMap(sweep -> sweep.steps().stream().filter(s -> s.shift() == key.shift))
                .toList();
    }

    /** Speeds that lie next to each other as from and to. */
    private static String at(List<SparkSweep> sweeps, FigurePrinter printer) {
        String first = speed(sweeps.get(0), printer);
        String last = speed(sweeps.get(sweeps.size() - 1), printer);
        return first.equals(last) ? "at " + first : "looked at from " + first + " to " + last;
    }

    private static String speed(SparkSweep sweep, FigurePrinter printer) {
        return printer.print(Dimension.ROTATIONAL_SPEED, Units.RPM.toSi(Math.rint(Units.RPM.fromSi(sweep.speed()))), 0)
                .first()
                .text();
    }

    /** The earliest key that more likely than not knocks at no speed, where the spark that is set does. */
    private static Optional<Key> quiet(List<SparkSweep> sweeps, double now) {
        return keys(sweeps).stream()
                .filter(key -> key.advance < now)
                .filter(key -> of(sweeps, key).stream()
                        .allMatch(s -> s.spare().isPresent() && s.spare().get().value() >= 0))
                .max(Comparator.comparingDouble(Key::advance));
    }

    /**
     * What to say of keys over all speeds, a caution beside it.
     * @param taper   diameter of the taper at the key [m]; empty where not known
     * @param isWhole whether the speeds reach from idle to the one wanted; a key stands at all of them, and where its owner chose others no earlier one is advised
     * @param isLean  whether the jet reads so lean that an earlier spark must not be added
     */
    static List<String> sentences(
            List<SparkSweep> sweeps, OptionalDouble taper, FigurePrinter printer, boolean isWhole, boolean isLean) {
        Optional<Measured> set = sweeps.stream().flatMap(s -> s.set().stream()).findFirst();
        if (set.isEmpty()) {
            return List.of();
        }
        double now = set.get().value();
        List<SparkSweep> knocking = sweeps.stream()
                .filter(s -> s.margin().angle().filter(m -> m.value() < 0).isPresent())
                .sorted(Comparator.comparingDouble(SparkSweep::speed))
                .toList();
        if (!knocking.isEmpty()) {
            boolean isSure = knocking.stream()
                    .flatMap(s -> s.margin().angle().stream())
                    .anyMatch(margin -> !margin.isUnknown() && margin.high() < 0);
            String knocks = (isSure
                            ? "It knocks at full throttle with the spark as set, "
                            : "It may knock at full throttle with the spark as set, more likely than not, ")
                    + at(knocking, printer) + ": ";
            return List.of(knocks
                    + quiet(sweeps, now)
                            .map(key -> named(key, taper, printer)
                                    + " is the earliest that more likely than not does not; it moves torque by "
                                    + share(key.gain) + ". " + LATE)
                            .orElse(
                                    (isSure
                                            ? "no key that is sold makes it late enough; a fuel of a higher octane"
                                                    + " number or less compression mends it. Do not hold full throttle there: knock"
                                                    + " breaks pistons."
                                            : "by the best estimate no key that is sold makes it late enough. Whether"
                                                    + " it does is within the doubt of the sum: listen for it there"
                                                    + " with the throttle opened by and by, shut it at the first"
                                                    + " rattle, and have a fuel of a higher octane number at hand.")));
        }
        Optional<Key> key = key(sweeps);
        if (key.isPresent() && key.get().advance > now && isLean) {
            return List.of("No earlier spark is advised while main jet and venturi read so lean: a lean engine runs hot"
                    + " and is the first to burn its piston. Mend the jet first.");
        }
        if (key.isPresent() && key.get().advance > now && !(isWhole && isLookedThrough(sweeps))) {
            return List.of("An earlier spark would give " + share(key.get().gain)
                    + " of torque at the speeds that were looked at; no key is advised by these alone, for one key"
                    + " stands at all speeds and knock is often worst at low speed: ask at all speeds, from idle up.");
        }
        if (key.isPresent()) {
            String beside = key.get().advance > now ? CAUTION : LATE;
            return List.of("Of the offset keys that are sold, " + named(key.get(), taper, printer)
                    + " comes nearest the better spark at all speeds that were looked at, for " + share(key.get().gain)
                    + " of torque on average. " + beside);
        }
        Optional<Key> kept = keys(sweeps).stream()
                .filter(k -> k.gain >= Lever.WORTH_A_WORD)
                .max(Comparator.comparingDouble(Key::gain));
        if (kept.isPresent()) {
            String against = of(sweeps, kept.get()).stream()
                    .map(Step::against)
                    .filter(said -> !said.isEmpty())
                    .findFirst()
                    .orElseThrow();
            return List.of("An earlier spark would give up to " + share(kept.get().gain)
                    + " of torque, and is not advised: " + against + ".");
        }
        return List.of("No offset key that is sold gives 1 % of torque or more: leave the spark as it is.");
    }

    private static String named(Key key, OptionalDouble taper, FigurePrinter printer) {
        String advance = printer.print(Dimension.ANGLE, key.advance, 0).line() + " before top dead centre";
        if (key.shift == 0) {
            return "the straight key (" + advance + ")";
        }
        String degrees = String.format(Locale.ROOT, "%.0f°", Math.toDegrees(Math.abs(key.shift)));
        String offset = taper.isPresent()
                ? ", a step of "
                        + printer.print(Dimension.LENGTH, 0.5 * Math.abs(key.shift) * taper.getAsDouble(), 0.05e-3)
                                .line()
                : "";
        return "the key of " + degrees + (key.shift > 0 ? " earlier" : " later") + offset + " (" + advance + ")";
    }

    private static String share(double gain) {
        return String.format(Locale.ROOT, "%+.1f %%", 100 * gain);
    }
}
