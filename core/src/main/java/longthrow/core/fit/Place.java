package longthrow.core.fit;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import longthrow.core.answer.DefaultUsed;
import longthrow.core.build.Build;
import longthrow.core.build.OwnRule;
import longthrow.core.engine.Alternative;
import longthrow.core.engine.Rule;
import longthrow.core.measurement.Measured;
import longthrow.core.quantity.Quantity;
import longthrow.core.quantity.Units;
import longthrow.core.term.Term;

/**
 * The highest static ratio for a fuel at another air pressure than that of sea level, for which the trade's figures are meant: the ratio that ends
 * compression at the same pressure, p e^n the same. Thin air allows more, dense air less. An owner's own rule on the ratio stands as he wrote it.
 */
final class Place {
    /** Standard air pressure [Pa], ISO 2533:1975; that trade figures for the ratio are meant for it is common practice, no source. */
    private static final double SEA_LEVEL = 101_325;
    /** Exponent of compression of the mixture with its loss of heat, Heywood (1988) section 9.2.2: 1.3 ± 0.05; from memory. */
    private static final double EXPONENT = 1.3;

    private Place() {}

    /** The build with the trade's ratio brought to its place; the same build where no place is said, or nothing to bring. */
    static Build ratioFor(Build build, List<DefaultUsed> defaults) {
        Quantity pressure = build.fit().airPressure();
        boolean own = build.ownRules().stream().anyMatch(r -> r.term() == Term.COMPRESSION_RATIO);
        if (pressure == null || own) {
            return build;
        }
        List<Alternative> meant =
                Rule.STATIC_RATIO.inForce(build).map(List::of).orElseGet(() -> Rule.STATIC_RATIO.applicable(build));
        Optional<Double> most = meant.stream()
                .flatMap(a -> a.upper().flatMap(b -> b.value(t -> Optional.<Measured>empty())).stream())
                .max(Double::compare);
        if (most.isEmpty()) {
            return build;
        }
        double there = most.get() * Math.pow(SEA_LEVEL / pressure.si(), 1 / EXPONENT);
        String name = String.format(
                Locale.ROOT,
                "highest static ratio for the fuel at %s: %.2f, where sea level has %.2f",
                pressure.written(),
                there,
                most.get());
        defaults.add(
                new DefaultUsed(
                        "fit.air_pressure",
                        name,
                        "the same pressure at the end of compression, exponent 1.3: Heywood (1988) section 9.2.2, from memory"));
        List<OwnRule> rules = new ArrayList<>(build.ownRules());
        rules.add(new OwnRule(
                name,
                Term.COMPRESSION_RATIO,
                null,
                Quantity.of(BigDecimal.valueOf(there).setScale(2, RoundingMode.DOWN), Units.BARE_RATIO),
                null,
                null,
                "",
                "the trade's figure brought to the air pressure of the place"));
        Map<String, String> chosen = new LinkedHashMap<>(build.rulesChosen());
        chosen.remove(Rule.STATIC_RATIO.key());
        return build.withRules(chosen, rules);
    }
}
