package longthrow.core.build;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;
import longthrow.core.quantity.Dimension;
import longthrow.core.quantity.FigurePrinter;
import longthrow.core.quantity.Quantity;
import longthrow.core.quantity.UnitSystem;
import longthrow.core.quantity.Units;
import longthrow.core.term.Term;

/**
 * A step of the duty that an owner states: part of the running time at one speed. All steps together are the whole time.
 * @param speed of the crank
 * @param share of the running time, above 0, at most the whole
 */
public record HoursAt(Quantity speed, Quantity share) {
    /** Shares are written in round figures: they may miss the whole by so much; a judgement. */
    public static final double ROUNDED = 0.005;

    /**
     * Least part of the running time at the speed wanted, or above it, for a duty to tell anything of that speed: shares are written in round figures, and an owner who
     * wants a speed for less than this does not know for how much; a judgement.
     */
    public static final double LEAST_AT_SPEED = 0.01;

    /** A duty is told in a few speeds; a judgement. */
    public static final int MOST_STEPS = 24;

    /** Decimal shares added up as doubles. */
    private static final double DIGITS = 1e-12;

    /**
     * Why steps are no duty.
     * @param step    number of the step that is wrong, from 0; empty where it is all of them together
     * @param isShare whether it is its share that is wrong, not its speed
     * @param found   what is there
     * @param why     it cannot be
     * @param allowed what may be there
     * @param mend    what to do
     */
    public record Trouble(OptionalInt step, boolean isShare, String found, String why, String allowed, String mend) {}

    /** Of the running time; above 0, at most 1. */
    public double part() {
        return share.si();
    }

    /** What the shares of steps add up to. */
    public static double whole(List<HoursAt> steps) {
        return steps.stream().mapToDouble(HoursAt::part).sum();
    }

    /** The same as it is told. */
    public static String wholeInPercent(List<HoursAt> steps) {
        return BigDecimal.valueOf(100 * whole(steps))
                        .round(new MathContext(4))
                        .stripTrailingZeros()
                        .toPlainString()
                + " %";
    }

    /**
     * Steps in words, with the hours that each comes to.
     * @param wanted running time; empty where it is not known
     */
    public static List<String> said(List<HoursAt> steps, Optional<Quantity> wanted) {
        FigurePrinter printer = new FigurePrinter(UnitSystem.METRIC_FIRST);
        double whole = whole(steps);
        return steps.stream()
                .map(s -> s.share().written() + " at " + s.speed().written()
                        + wanted.map(w -> ", "
                                        + printer.print(Dimension.TIME, s.part() / whole * w.si(), 0)
                                                .first()
                                                .text()
                                        + " of " + w.written())
                                .orElse(""))
                .toList();
    }

    /** What keeps steps from being a duty; empty for a duty, and for no steps at all. */
    public static Optional<Trouble> trouble(List<HoursAt> steps) {
        if (steps.size() > MOST_STEPS) {
            return Optional.of(new Trouble(
                    OptionalInt.empty(),
                    false,
                    steps.size() + " steps",
                    "are more than anybody can tell apart",
                    "at most " + MOST_STEPS,
                    "put speeds that lie close together under the fastest of them"));
        }
        for (int k = 0; k < steps.size(); k++) {
            Optional<Trouble> trouble = trouble(steps, k);
            if (trouble.isPresent()) {
                return trouble;
            }
        }
        double whole = whole(steps);
        boolean isWhole = steps.isEmpty() || Math.abs(whole - 1) <= ROUNDED + DIGITS;
        return isWhole
                ? Optional.empty()
                : Optional.of(new Trouble(
                        OptionalInt.empty(),
                        true,
                        wholeInPercent(steps),
                        "is what the shares add up to, and not the whole running time",
                        String.format(Locale.ROOT, "100 %% within %.1f %%", 100 * ROUNDED),
                        whole < 1
                                ? "say at which speed the rest of the time is run, or make a share larger"
                                : "make a share smaller, or take a step out"));
    }

    private static Optional<Trouble> trouble(List<HoursAt> steps, int k) {
        HoursAt step = steps.get(k);
        if (!Term.WANTED_SPEED.believable().holds(step.speed().si())) {
            return Optional.of(new Trouble(
                    OptionalInt.of(k),
                    false,
                    step.speed().written(),
                    "is no speed of such an engine",
                    String.format(
                            Locale.ROOT,
                            "%.0f rpm to %.0f rpm",
                            Units.RPM.fromSi(Term.WANTED_SPEED.believable().least()),
                            Units.RPM.fromSi(Term.WANTED_SPEED.believable().most())),
                    "write a speed of the crank"));
        }
        if (!(step.part() > 0 && step.part() <= 1)) {
            return Optional.of(new Trouble(
                    OptionalInt.of(k),
                    true,
                    step.share().written(),
                    "is no share of the running time",
                    "above 0 %, at most 100 %",
                    "write how much of its running time the engine spends at this speed, such as 30 %"));
        }
        boolean isTwice = steps.subList(0, k).stream().anyMatch(s -> s.speed().compareTo(step.speed()) == 0);
        return isTwice
                ? Optional.of(new Trouble(
                        OptionalInt.of(k),
                        false,
                        step.speed().written(),
                        "stands there twice",
                        "each speed once",
                        "add its shares together in one step"))
                : Optional.empty();
    }
}
