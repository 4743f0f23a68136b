package longthrow.core.engine;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Optional;
import longthrow.core.build.Build;
import longthrow.core.build.OwnRule;
import longthrow.core.quantity.Dimension;
import longthrow.core.quantity.Quantity;
import longthrow.core.term.Term;
import org.jspecify.annotations.Nullable;

/**
 * The temperature at which a rule of the owner speaks of a length. Every figure here is at 20 °C (ISO 1:2022), so the limit is brought there with the
 * expansion of the part. A gap between two parts changes with both, in a way one expansion does not tell: it cannot be brought.
 */
final class RuleTemperature {
    /** Digits that a limit is kept to when it is brought to 20 °C [SI]: a tenth of a micrometre is finer than any reading. */
    private static final double STEP = 1e-7;

    private final @Nullable Quantity at;
    private final Optional<Material> metal;
    private final boolean needed;

    RuleTemperature(Build build, OwnRule rule, Term term) {
        at = rule.temperature();
        boolean oneBody = term.isRead() || term == Term.BORE;
        metal = oneBody ? Material.of(build, term.part()) : Optional.empty();
        needed = at != null && term.dimension() == Dimension.LENGTH && Math.abs(rise()) > 1e-9;
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
        double factor = 1 / (1 + part.expansion() * rise());
        BigDecimal brought = limit.value()
                .toDecimal()
                .multiply(BigDecimal.valueOf(factor))
                .setScale(digits(limit), RoundingMode.HALF_EVEN);
        return Bound.stated(Quantity.of(brought, limit.unit())).within(Math.abs(limit.si() * part.spread() * rise()));
    }

    /** The same [SI]. */
    double bringSi(Quantity limit) {
        return Optional.ofNullable(bring(limit).stated()).orElse(limit).si();
    }

    private static int digits(Quantity limit) {
        double unit = limit.unit().toSi(1);
        return (int) Math.max(0, Math.ceil(Math.log10(unit / STEP)));
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
