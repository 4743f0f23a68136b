package longthrow.core.engine;

import java.util.Arrays;

/**
 * Oils by what is printed on the can. Kinematic viscosity at 100 °C: the range of SAE J300 for the grade; at 40 °C: what makers' sheets of such oils say, within
 * a tenth or so; all from memory. The grade's range is its spread; a can's own sheet is better. [m2/s]
 */
public enum OilGrade {
    SAE_20("sae_20", 6.9, 9.3, 62),
    SAE_30("sae_30", 9.3, 12.5, 97),
    SAE_40("sae_40", 12.5, 16.3, 142),
    W5_30("5w_30", 9.3, 12.5, 63),
    W10_30("10w_30", 9.3, 12.5, 70),
    W10_40("10w_40", 12.5, 16.3, 97),
    W20_50("20w_50", 16.3, 21.9, 165);

    /** Density at work, 80 to 120 °C [kg/m3]; mineral oils, 2 % either way; from memory. */
    public static final double DENSITY = 820;

    private static final double SQUARE_MILLIMETRE = 1e-6;

    private final String key;
    private final double hotLeast;
    private final double hotMost;
    private final double warm;

    OilGrade(String key, double hotLeast, double hotMost, double warm) {
        this.key = key;
        this.hotLeast = hotLeast;
        this.hotMost = hotMost;
        this.warm = warm;
    }

    /**
     * By its word in a build file.
     * @throws IllegalArgumentException when there is none of that word
     */
    public static OilGrade at(String key) {
        return Arrays.stream(values())
                .filter(oil -> oil.key.equals(key))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("no oil is called " + key));
    }

    /** At 40 °C. */
    public double at40() {
        return warm * SQUARE_MILLIMETRE;
    }

    /** At 100 °C, the middle of the grade's range. */
    public double at100() {
        return (hotLeast + hotMost) / 2 * SQUARE_MILLIMETRE;
    }

    /** Half the grade's range, as a share of its middle. */
    public double spread() {
        return (hotMost - hotLeast) / (hotMost + hotLeast);
    }
}
