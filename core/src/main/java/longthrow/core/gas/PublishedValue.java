package longthrow.core.gas;

import longthrow.core.quantity.Require;

/**
 * A figure of a fuel with what else is printed for it.
 * @param value  taken, coherent SI
 * @param low    lowest that a source prints, or the value itself
 * @param high   highest that a source prints, or the value itself
 * @param source where value and spread come from, for people
 */
public record PublishedValue(double value, double low, double high, String source) {
    public PublishedValue {
        Require.finite("value", value);
        if (!(low <= value && value <= high)) {
            throw new IllegalArgumentException(
                    "value " + value + " is not between the lowest " + low + " and the highest " + high + " printed");
        }
        if (source.isBlank()) {
            throw new IllegalArgumentException("a published value needs its source; say where " + value + " is from");
        }
    }

    static PublishedValue of(double value, String source) {
        return new PublishedValue(value, value, value, source);
    }

    /** The same plus a shift in all three. */
    PublishedValue plus(double shift, String from) {
        return new PublishedValue(value + shift, low + shift, high + shift, from);
    }

    /** Weighted sum of two, each end with its like: the spreads of a blend's parts are taken to lean the same way. */
    static PublishedValue weighted(PublishedValue one, double weight, PublishedValue other, double otherWeight) {
        return new PublishedValue(
                one.value * weight + other.value * otherWeight,
                one.low * weight + other.low * otherWeight,
                one.high * weight + other.high * otherWeight,
                one.source.equals(other.source) ? one.source : one.source + "; " + other.source);
    }
}
