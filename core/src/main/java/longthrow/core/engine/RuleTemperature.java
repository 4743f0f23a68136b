package longthrow.core.engine;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Optional;
import longthrow.core.build.Build;
import longthrow.core.build.OwnRule;
import longthrow.core.quantity.Dimension;
import longthrow.core.quantity.Quantity;
import longthrow.core.term.Part;
import longthrow.core.term.Term;
import org.jspecify.annotations.Nullable;

/**
 * The temperature at which a rule of the owner speaks of a length, an area or a volume. Every figure here is at 20 °C (ISO 1:2022), so the limit is
 * brought there with the expansion of the part: once for a length, twice for an area, three times for a volume, since a body keeps its shape as it
 * grows. A gap between two parts, or a volume that two enclose, changes with both, in a way one expansion does not tell: it cannot be brought.
 */
final class RuleTemperature {
    /** Digits that a limit is kept to when it is brought to 20 °C [SI]: a tenth of a micrometre is finer than any reading. */
    private static final double STEP = 1e-7;

    /** The same for an area or a volume: a share of the limit, finer than any filling. */
    private static final double SHARE = 1e-6;

    private final @Nullable Quantity at;
    private final Optional<Material> metal;
    private final boolean needed;
    private final boolean oneBody;
    private final int directions;

    RuleTemperature(Build build, OwnRule rule, Term term) {
        at = rule.temperature();
        oneBody = isOneBody(term);
        directions = directions(term.dimension());
        metal = oneBody ? Material.of(build, term.part()) : Optional.empty();
        needed = at != null && directions > 0 && Math.abs(rise()) > 1e-9;
    }

    /** Whether it is of one part alone: what is read on the whole engine, or worked out of several parts, is not. */
    private static boolean isOneBody(Term term) {
        return term == Term.BORE || (term.isRead() && term.part() != Part.WHOLE && !isBetweenParts(term));
    }

    /** Read in one go, yet between two parts. */
    private static boolean isBetweenParts(Term term) {
        return switch (term) {
            case DECK_CLEARANCE,
                    DECK_CLEARANCE_THRUST,
                    DECK_CLEARANCE_ANTITHRUST,
                    DECK_CLEARANCE_FLYWHEEL_END,
                    DECK_CLEARANCE_OUTPUT_END -> true;
            default -> false;
        };
    }

    /** In how many directions a figure grows with its body. */
    private static int directions(Dimension dimension) {
        return switch (dimension) {
            case LENGTH -> 1;
            case AREA -> 2;
            case VOLUME -> 3;
            default -> 0;
        };
    }

    /** What would let the rule be held against the figure. */
    String cure(Term term) {
        return oneBody
                ? "write what the " + term.part().label() + " is made of"
                : "more than one part makes the " + term.label()
                        + ", so it must be read at that temperature, or the rule written at 20 °C";
    }

    private double rise() {
        return at == null ? 0 : at.si() - Material.REFERENCE_TEMPERATURE;
    }

    /** Whether the rule speaks of a length at another temperature and nothing tells how the part grows. */
    boolean isMissingMetal() {
        return needed && metal.isEmpty();
    }

    /** The limit as it is at 20 °C. */
    Bound bring(Quantity limit) {
        if (!needed || metal.isEmpty()) {
            return Bound.stated(limit);
        }
        Material part = metal.get();
        double factor = Math.pow(1 + part.expansion() * rise(), -directions);
        BigDecimal brought = limit.value()
                .toDecimal()
                .multiply(BigDecimal.valueOf(factor))
                .setScale(digits(limit), RoundingMode.HALF_EVEN);
        return Bound.stated(Quantity.of(brought, limit.unit()))
                .within(Math.abs(directions * limit.si() * part.spread() * rise()));
    }

    /** The same [SI]. */
    double bringSi(Quantity limit) {
        return Optional.ofNullable(bring(limit).stated()).orElse(limit).si();
    }

    private static int digits(Quantity limit) {
        double unit = limit.unit().toSi(1);
        double step = limit.dimension() == Dimension.LENGTH ? STEP : Math.abs(limit.si()) * SHARE;
        return (int) Math.max(0, Math.ceil(Math.log10(unit / step)));
    }

    /** What was done with it, for the reader; empty when there was nothing to do. */
    String aside(Wording wording, OwnRule rule) {
        if (!needed || at == null) {
            return "";
        }
        if (metal.isEmpty()) {
            return "; the rule speaks of " + wording.stated(at)
                    + ", and how this figure changes from there to 20 °C is not known";
        }
        String limits = rule.lower().map(wording::stated).orElse("")
                + (rule.lower().isPresent() && rule.upper().isPresent() ? " and " : "")
                + rule.upper().map(wording::stated).orElse("");
        return "; the rule says " + limits + " at " + wording.stated(at) + ", brought to 20 °C with the expansion of "
                + metal.get().key() + " (" + metal.get().source() + ")";
    }
}
