package longthrow.core.life;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import longthrow.core.answer.Rung;
import longthrow.core.engine.Alloy;
import longthrow.core.formula.Expression;
import longthrow.core.measurement.Measured;
import longthrow.core.measurement.Source;
import longthrow.core.quantity.Units;
import longthrow.core.term.Choice;
import longthrow.core.term.Term;

/**
 * What the metal of a rod bears at its temperature, as far as anybody has published it.
 * @param alloy    reckoned with
 * @param scatter  about 1, of all its strengths together
 * @param ultimate share of the tensile strength that is left at the temperature
 * @param yield    the same of the yield strength
 */
record RodMetal(Alloy alloy, Expression scatter, Expression ultimate, Expression yield) {
    /** Of the slope of a table by temperature [K]. */
    private static final double STEP = 0.5;

    /** Asks for metal and, where it matters, temperature; empty while something is missing. */
    static Optional<RodMetal> of(Asked of) {
        Optional<String> word = of.word(Choice.ROD_METAL);
        if (word.isEmpty()) {
            return Optional.empty();
        }
        Alloy alloy = switch (word.get()) {
            case "steel" -> Alloy.FORGED_CARBON_STEEL;
            case "billet_aluminium" -> Alloy.BILLET_ALUMINIUM_ROD;
            default -> Alloy.CAST_ROD;
        };
        if (alloy == Alloy.CAST_ROD) {
            of.lacks(new Rung.Missing(
                    Term.ROD_RATED_SPEED.path(),
                    "what cast aluminium bears at the rod's temperature",
                    "nobody has published it for this alloy and casting: only the maker's rating of the rod can tell",
                    0));
            return Optional.empty();
        }
        of.takes(
                Choice.ROD_METAL.path(),
                "a rod of " + word.get().replace('_', ' ') + " is reckoned as " + alloy.label()
                        + ": the weakest in fatigue that such a rod is usually made of",
                alloy.source());
        Expression scatter = of.scatter("strength of " + alloy.label(), alloy.spread());
        if (word.get().equals("steel")) {
            of.takes(
                    Choice.ROD_METAL.path(),
                    "steel keeps its strength up to 200 °C, hotter than any sound rod",
                    "ASM Handbook vol. 1; from memory");
            return Optional.of(new RodMetal(alloy, scatter, Expression.constant(1), Expression.constant(1)));
        }
        of.figure(Term.ROD_TEMPERATURE);
        Optional<Measured> temperature = of.value(Term.ROD_TEMPERATURE);
        if (temperature.isEmpty()) {
            return Optional.empty();
        }
        if (!isPublished(alloy, temperature.get())) {
            of.lacks(new Rung.Missing(
                    Term.ROD_RATED_SPEED.path(),
                    "what " + alloy.label() + " bears at "
                            + Math.round(Units.CELSIUS.fromSi(temperature.get().value())) + " °C",
                    "not published so hot or so cold: only the maker's rating of the rod can tell",
                    0));
            return Optional.empty();
        }
        return Optional.of(new RodMetal(
                alloy,
                scatter,
                of.given("tensile strength kept warm", kept(temperature.get(), alloy::keepsUltimate)),
                of.given("yield strength kept warm", kept(temperature.get(), alloy::keepsYield))));
    }

    private static boolean isPublished(Alloy alloy, Measured temperature) {
        double celsius = Units.CELSIUS.fromSi(temperature.value());
        return alloy.isKnownAt(celsius - STEP) && alloy.isKnownAt(celsius + STEP);
    }

    private static Measured kept(Measured temperature, DoubleUnaryOperator table) {
        double celsius = Units.CELSIUS.fromSi(temperature.value());
        double slope = (table.applyAsDouble(celsius + STEP) - table.applyAsDouble(celsius - STEP)) / (2 * STEP);
        Map<Source, Double> contributions = new LinkedHashMap<>();
        temperature.contributions().forEach((source, c) -> contributions.put(source, slope * c));
        return Measured.withContributions(table.applyAsDouble(celsius), contributions);
    }

    Expression ultimateStrength() {
        return scatter.times(ultimate).times(alloy.ultimate());
    }

    Expression yieldStrength() {
        return scatter.times(yield).times(alloy.yieldStrength());
    }

    /** Of a polished bar, at temperature: it falls as the tensile strength does. */
    Expression fatigueStrength() {
        return scatter.times(ultimate).times(alloy.fatigue());
    }
}
