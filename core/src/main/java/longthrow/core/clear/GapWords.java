package longthrow.core.clear;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import longthrow.core.answer.Clearance;
import longthrow.core.answer.Clearance.Gap;
import longthrow.core.answer.Clearance.Way;
import longthrow.core.answer.Rung;
import longthrow.core.answer.Verdict;
import longthrow.core.quantity.Dimension;
import longthrow.core.quantity.FigurePrinter;
import longthrow.core.quantity.UnitSystem;

/** Gaps in words. */
final class GapWords {
    /** No gap is promised closer than this [m]. */
    private static final double PROMISED = 0.01e-3;

    private final FigurePrinter printer;

    GapWords(UnitSystem units) {
        printer = new FigurePrinter(units);
    }

    /** How a pair stands, cold and running. */
    String why(Gap cold, Optional<Gap> warm, List<Clearance.Limit> limits, List<Rung.Missing> notWarm) {
        StringBuilder said = new StringBuilder(length(cold)).append(way(cold.way()));
        boolean isMockedUp = cold.way() == Way.MOCKED_UP || cold.way() == Way.AT_LEAST;
        if (!isMockedUp) { // what was read at one place says not where it is least
            said.append(at(cold.angle()));
        }
        if (!isMockedUp || cold.value() != 0) {
            said.append(atTheWorst(cold));
        }
        if (limits.isEmpty() && cold.value() > 0) {
            said.append("; how much is enough is not known: no source states it");
        }
        for (Clearance.Limit limit : limits) {
            said.append(String.format(
                    Locale.ROOT,
                    "; %s wants %s: %s%s",
                    limit.label(),
                    length(limit.least()),
                    limit.state() == Verdict.State.MEETS
                            ? "kept"
                            : limit.state() == Verdict.State.FAILS ? "not kept" : "kept with " + percent(limit.keeps()),
                    limit.decides() ? "" : " (not the one you chose)"));
        }
        if (warm.isPresent()) {
            Gap gap = warm.get();
            said.append("; running ")
                    .append(length(gap))
                    .append(at(gap.angle()))
                    .append(atTheWorst(gap));
        } else if (!notWarm.isEmpty()) {
            boolean isToRead = notWarm.stream().anyMatch(m -> !m.where().isEmpty());
            said.append("; running not known: ")
                    .append(
                            isToRead
                                    ? notWarm.size() + (notWarm.size() == 1 ? " reading is" : " readings are")
                                            + " missing"
                                    : notWarm.get(0).what());
        }
        return said.toString();
    }

    private static String way(Way way) {
        return switch (way) {
            case BESIDE -> " beside each other along the crankshaft";
            case MOCKED_UP, AT_LEAST -> " as mocked up, cold";
            case READ -> " as read, cold";
            case IN_PLANE, TRAVEL -> " cold";
        };
    }

    private static String percent(double share) {
        return share > 0.995 && share < 1
                ? "over 99 %"
                : share < 0.005 && share > 0 ? "under 1 %" : String.format(Locale.ROOT, "%.0f %%", 100 * share);
    }

    private static String at(double angle) {
        return Double.isNaN(angle) ? "" : String.format(Locale.ROOT, " at %.0f°", Math.toDegrees(angle));
    }

    /** A gap with its doubt; in words where none was read. */
    String length(Gap gap) {
        if (gap.value() == 0 && gap.way() == Way.MOCKED_UP) {
            return "touching";
        }
        if (gap.value() == 0 && gap.way() == Way.AT_LEAST) {
            return "free of each other";
        }
        double doubt = Math.max(gap.high() - gap.value(), gap.value() - gap.low());
        return (gap.way() == Way.AT_LEAST ? "at least " : "")
                + printer.print(Dimension.LENGTH, gap.value(), Math.max(doubt, PROMISED / 2))
                        .line();
    }

    /** Two things that are not the same: every figure at its worst at once, and the chance that they touch. */
    private static String atTheWorst(Gap gap) {
        if (gap.worst() > 0) {
            return ", at the worst " + length(gap.worst());
        }
        return ", with every figure at its worst "
                + (gap.worst() < 0 ? "an overlap of " + length(-gap.worst()) : "touching")
                + (gap.contact() > 0 ? "; by chance they touch in " + percent(gap.contact()) : "");
    }

    /** To a hundredth, which is all that is promised of a gap. */
    static String length(double metres) {
        return String.format(Locale.ROOT, "%.2f mm (%.3f in)", 1e3 * metres + 0.0, metres / 25.4e-3 + 0.0);
    }
}
