package longthrow.core.clear;

import java.util.LinkedHashMap;
import java.util.Map;
import longthrow.core.term.Term;

/** One value for each figure that a pair is drawn from. What is only of a running engine is nothing where it is not given. */
final class Sizes {
    /** By how much the camshaft stands later than read [rad of crank]. */
    static final String LATER = "camshaft later";

    private final Map<String, Double> values;

    /** @param values by path of the term, or by the name a figure was given */
    Sizes(Map<String, Double> values) {
        this.values = values;
    }

    double of(Term term) {
        return of(term.path());
    }

    double of(String name) {
        Double value = values.get(name);
        if (value == null) {
            throw new IllegalStateException(name + " was never asked for");
        }
        return value;
    }

    /** All of them by name. */
    Map<String, Double> values() {
        return java.util.Collections.unmodifiableMap(values);
    }

    boolean has(String name) {
        return values.containsKey(name);
    }

    double warm(Warm what) {
        return values.getOrDefault(what.key(), 0.0);
    }

    /** By how much larger something has grown than it was read. */
    double grown(Warm what) {
        return 1 + warm(what);
    }

    /** By how much two parts come closer than drawn: slack, and what was traced too small [m]. */
    double closer(Warm slack) {
        return warm(slack) + Outlined.larger(this);
    }

    double later() {
        return values.getOrDefault(LATER, 0.0);
    }

    /** The same with the camshaft so much later. */
    Sizes later(double angle) {
        Map<String, Double> other = new LinkedHashMap<>(values);
        other.put(LATER, angle);
        return new Sizes(other);
    }
}
