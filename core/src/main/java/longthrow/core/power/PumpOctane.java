package longthrow.core.power;

import java.util.LinkedHashMap;
import java.util.Map;
import longthrow.core.gas.Fuel;
import longthrow.core.gas.PublishedValue;
import longthrow.core.measurement.Measured;
import longthrow.core.measurement.Source;

/**
 * The octane number by which a petrol acts in an engine, of the one that the pump prints: somewhere between its motor and its research number (Heywood (1988) 9.6.2), taken as a rectangle from the one
 * to the other. How far they lie apart is as {@link Fuel#petrol(double)} has it. Not for fuels unlike petrol.
 */
final class PumpOctane {
    /** By which scale the pump prints it; words as of the choice {@code use.octane_scale}. */
    enum Scale {
        RESEARCH,
        MEAN
    }

    private PumpOctane() {}

    /**
     * With its doubt.
     * @param printed by the pump
     */
    static Measured acting(Measured printed, Scale scale) {
        PublishedValue between = sensitivity();
        double half = 0.5 * between.value();
        Map<Source, Double> sources = new LinkedHashMap<>(printed.contributions());
        add(sources, "octane: between motor and research", "where a petrol acts between its octane numbers", half);
        return switch (scale) {
            case MEAN -> Measured.withContributions(printed.value(), sources);
            case RESEARCH -> {
                // a research number alone leaves the motor number open, and with it the middle
                double open = 0.25 * (between.high() - between.low());
                add(sources, "octane: motor number", "motor number of a petrol by its research number", open);
                yield Measured.withContributions(printed.value() - half, sources);
            }
        };
    }

    /** What is left of it over what is wanted; below 0 it knocks. */
    static Measured margin(Measured acting, Measured wanted) {
        Map<Source, Double> sources = new LinkedHashMap<>(acting.contributions());
        wanted.contributions().forEach((source, c) -> sources.merge(source, -c, Double::sum));
        return Measured.withContributions(acting.value() - wanted.value(), sources);
    }

    private static void add(Map<Source, Double> sources, String id, String label, double half) {
        Source source = Source.rectangular(id, Source.Kind.ASSUMED, label, half);
        sources.put(source, source.standardUncertainty());
    }

    /** Research number less motor number, at any research number alike. */
    private static PublishedValue sensitivity() {
        double research = 95;
        PublishedValue motor = Fuel.petrol(research).motorOctane().orElseThrow();
        return new PublishedValue(
                research - motor.value(), research - motor.high(), research - motor.low(), motor.source());
    }
}
