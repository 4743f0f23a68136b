package longthrow.core.measurement;

import java.util.LinkedHashMap;
import java.util.Map;
import longthrow.core.formula.Formula;

/**
 * One thing that was read: what the formula of the unknown figures ought to give, and what stood on the instrument.
 * @param id      unique, for people to find it: the place in the build file
 * @param formula what is read, as a formula of the figures sought
 * @param value   what was read [SI]
 * @param errors  for each source how far one unit of its error moves this reading (1 for a plain error)
 */
public record Observation(String id, Formula formula, double value, Map<Source, Double> errors) {
    public Observation {
        if (!Double.isFinite(value)) {
            throw new IllegalArgumentException(id + " is " + value + "; a reading must be a finite number");
        }
        errors = java.util.Collections.unmodifiableMap(new LinkedHashMap<>(errors));
        double own = 0;
        for (Map.Entry<Source, Double> e : errors.entrySet()) {
            own += Math.abs(e.getValue() * e.getKey().forWeights());
        }
        if (!(own > 0)) {
            throw new IllegalArgumentException(
                    id + " has no doubt at all; a reading without doubt cannot be weighed against others");
        }
    }

    /** The same reading with another figure on the instrument. */
    public Observation reading(double other) {
        return new Observation(id, formula, other, errors);
    }
}
