package longthrow.core.fit;

import java.util.Arrays;

/**
 * One dimension of all parts of a kind: value and half-width of its tolerance [pm], standard uncertainty [pm]. A value that is not said is {@link #NOT_SAID};
 * of a tolerance that is not said the half-width is 0 and {@link #isVague} tells so.
 */
public final class Sizes {
    /** Stands for a figure that a row does not say. */
    public static final long NOT_SAID = Long.MIN_VALUE;

    final long[] value;
    final long[] half;
    final double[] uncertainty;
    private final boolean[] vague;

    /**
     * A column.
     * @param value       [pm], {@link #NOT_SAID} where unknown
     * @param half        half-width of the box [pm], 0 or more; {@link #NOT_SAID} where the row gives no tolerance
     * @param uncertainty standard uncertainty [pm], 0 or more
     */
    public Sizes(long[] value, long[] half, double[] uncertainty) {
        if (value.length != half.length || value.length != uncertainty.length) {
            throw new IllegalArgumentException("a column has as many tolerances as values");
        }
        this.value = value.clone();
        this.half = half.clone();
        this.uncertainty = uncertainty.clone();
        this.vague = new boolean[value.length];
        for (int i = 0; i < value.length; i++) {
            if (half[i] == NOT_SAID) {
                this.half[i] = 0;
                vague[i] = value[i] != NOT_SAID;
            } else if (half[i] < 0 || !(uncertainty[i] >= 0)) {
                throw new IllegalArgumentException("a tolerance is 0 or more, row " + i + " has " + half[i]);
            }
        }
    }

    /** Figures taken as exactly what they say. */
    public static Sizes exact(long... value) {
        return new Sizes(value, new long[value.length], new double[value.length]);
    }

    /** So many parts that do not say this figure. */
    public static Sizes unknown(int count) {
        long[] value = new long[count];
        Arrays.fill(value, NOT_SAID);
        return exact(value);
    }

    int count() {
        return value.length;
    }

    boolean isKnown(int i) {
        return value[i] != NOT_SAID;
    }

    /** Whether the figure is said and its tolerance is not. */
    boolean isVague(int i) {
        return vague[i];
    }

    long widest() {
        long widest = 0;
        for (long one : half) {
            widest = Math.max(widest, one);
        }
        return widest;
    }
}
