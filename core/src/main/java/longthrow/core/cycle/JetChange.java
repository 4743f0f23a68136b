package longthrow.core.cycle;

import java.util.Collection;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeSet;
import longthrow.core.gas.Fuel;
import longthrow.core.gas.MoistAir;
import longthrow.core.gas.PublishedValue;
import longthrow.core.quantity.Require;

/**
 * What another place, weather, fuel or mixture asks of the main jet of a carburettor whose present jet is right, full throttle, same speed.
 *
 * <p>Bernoulli twice (Heywood 1988, section 7.3): the depression goes with the density of the air, so fuel to air goes with jet area times the root of fuel density over air density. The trade changes
 * more: half to all of the density's change in the jet's number (common practice, no source), whatever the number means.
 * @param areaRatio   of the jet, after over before
 * @param doubt       relative standard uncertainty of it
 * @param airRatio    density of the dry air, after over before
 * @param heatRatio   heat that a kilogram of air sets free with just enough fuel, after over before: the fuel's own word on power
 * @param volumeRatio fuel used by volume for the same air, after over before
 */
public record JetChange(double areaRatio, double doubt, double airRatio, double heatRatio, double volumeRatio) {
    /** Relative standard uncertainty for coefficients that move a little with speed, thickness and temperature of the fuel: a judgement. */
    public static final double MODEL_DOUBT = 0.02;

    /** Share of the density's change that the trade changes a jet's number by. */
    public static final double TRADE_LEAST = 0.5;

    public static final double TRADE_MOST = 1.0;

    /** Leaner than wanted by more than this share of fuel is told: what a step between two jets is worth at most; a judgement. */
    public static final double USUAL_MARGIN = 0.02;

    /**
     * What the engine runs on and in.
     * @param equivalenceRatio wanted there; the same before and after keeps what was right
     * @param dryAirDensity    [kg/m3]: (pressure less vapour's) over gas constant of dry air and temperature, {@link #dryAirDensity}
     */
    public record Running(Fuel fuel, double equivalenceRatio, double dryAirDensity) {
        public Running {
            Require.within("equivalence ratio", equivalenceRatio, 0.5, 2);
            Require.within("density of dry air [kg/m3]", dryAirDensity, 0.3, 2);
        }

        private PublishedValue liquid() {
            return fuel.density()
                    .orElseThrow(() -> new IllegalArgumentException(fuel
                            + " is a gas, which no fuel jet of a float carburettor measures out; take a liquid fuel"));
        }

        /** Mass of fuel to air. */
        private double fuelToAir() {
            return equivalenceRatio / fuel.stoichiometricAirFuel(MoistAir.DRY);
        }
    }

    /**
     * Density of the dry part of moist air, which is what holds oxygen [kg/m3].
     * @param pressure         not reduced to sea level [Pa]
     * @param relativeHumidity 0 to 1
     */
    public static double dryAirDensity(double pressure, double temperature, double relativeHumidity) {
        double vapour = MoistAir.vapourFraction(relativeHumidity, temperature, pressure);
        return MoistAir.DRY.density(temperature, pressure * (1 - vapour));
    }

    public static JetChange of(Running before, Running after) {
        double air = after.dryAirDensity / before.dryAirDensity;
        double fuel = after.fuelToAir() / before.fuelToAir();
        double liquid = after.liquid().value() / before.liquid().value();
        double density = before.fuel.equals(after.fuel) ? 0 : 0.5 * Math.hypot(spread(before), spread(after));
        return new JetChange(
                fuel * Math.sqrt(air / liquid),
                Math.hypot(MODEL_DOUBT, density),
                air,
                heat(after.fuel) / heat(before.fuel),
                fuel / liquid);
    }

    private static double spread(Running running) {
        PublishedValue density = running.liquid();
        return 0.5 * (density.high() - density.low()) / density.value() / Math.sqrt(3);
    }

    /** Of a kilogram of air with just enough fuel [J]. */
    private static double heat(Fuel fuel) {
        return fuel.heatingValue().value() / fuel.stoichiometricAirFuel(MoistAir.DRY);
    }

    /** Of the jet's bore, after over before. */
    public double diameterRatio() {
        return Math.sqrt(areaRatio);
    }

    /**
     * By how much the number of the jet changes, after over before.
     * @param physics by the meaning of the number; where it is not known, the richer of both meanings
     * @param leanest and richest what physics under either meaning (or the one known), its doubt at 95 % and the trade's rule come to
     */
    public record Numbers(double physics, double leanest, double richest) {}

    /**
     * What the number becomes.
     * @param meaning of the number; empty where not known
     */
    public Numbers numbers(Optional<JetSize.Numbering> meaning) {
        double asFlow = areaRatio;
        double asDiameter = diameterRatio();
        double physics = meaning.map(m -> Math.pow(areaRatio, 1.0 / m.power())).orElse(Math.max(asFlow, asDiameter));
        double least = meaning.isPresent() ? physics : Math.min(asFlow, asDiameter);
        double range = 1.96 * doubt;
        double rest = areaRatio / Math.sqrt(airRatio); // what is not the air's density: fuel and mixture
        double restNumber = meaning.map(m -> Math.pow(rest, 1.0 / m.power())).orElse(rest);
        double mild = restNumber * (1 + TRADE_LEAST * (airRatio - 1));
        double strong = restNumber * (1 + TRADE_MOST * (airRatio - 1));
        return new Numbers(
                physics,
                Math.min(least * (1 - range), Math.min(mild, strong)),
                Math.max(physics * (1 + range), Math.max(mild, strong)));
    }

    /**
     * A jet one can buy.
     * @param number    to start with
     * @param fuelShare fuel that it passes over what is wanted: below 1 is leaner
     * @param leaner    next smaller number, empty where there is none
     * @param richer    next larger
     * @param words     what to say of it, empty where it keeps the margin
     */
    public record Choice(double number, double fuelShare, OptionalDouble leaner, OptionalDouble richer, String words) {}

    /**
     * The smallest jet that is not leaner than wanted by more than a margin; where none is large enough the largest, which is then said.
     * @param present number of the jet that is right before the change
     * @param meaning of the numbers
     * @param sizes   that are to be had
     * @param margin  0 to below 1, see {@link #USUAL_MARGIN}
     */
    public Choice choose(double present, JetSize.Numbering meaning, Collection<Double> sizes, double margin) {
        Require.positive("number of the present jet", present);
        Require.within("margin to the lean side", margin, 0, 0.5);
        TreeSet<Double> numbers = new TreeSet<>();
        sizes.forEach(size -> numbers.add(Require.positive("jet number", size)));
        if (numbers.isEmpty()) {
            throw new IllegalArgumentException("no jets to choose from; give the numbers that are to be had");
        }
        double least = present * Math.pow(areaRatio * (1 - margin), 1.0 / meaning.power());
        Double found = numbers.ceiling(least * (1 - 1e-12));
        double number = found == null ? numbers.last() : found;
        double share = Math.pow(number / present, meaning.power()) / areaRatio;
        String words = found == null
                ? String.format(
                        Locale.ROOT,
                        "the largest jet there is passes %.1f %% less fuel than wanted, more than the margin of %.1f %%: do not run it at full throttle; get a larger one",
                        100 * (1 - share),
                        100 * margin)
                : "";
        return new Choice(number, share, next(numbers.lower(number)), next(numbers.higher(number)), words);
    }

    private static OptionalDouble next(@org.jspecify.annotations.Nullable Double number) {
        return number == null ? OptionalDouble.empty() : OptionalDouble.of(number);
    }
}
