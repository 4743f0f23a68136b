package longthrow.core.gain;

import longthrow.core.quantity.Require;

/**
 * What one wants to be able to tell.
 * @param gain  smallest gain that matters, as a share of the baseline
 * @param power how often further runs shall bring a verdict, whatever the truth: that there is a gain or that it is less than the aim
 */
public record Aim(double gain, double power) {
    /** One per cent, four times in five. The first is judgement (runs one after the other repeat within 0.5 to 1.5 %, from memory); the second the usual power of a trial (J. Cohen, 1988, from memory). */
    public static final Aim USUAL = new Aim(0.01, 0.8);

    /** More further pulls than this cannot be asked of engine and owner. Judgement: two days on the dyno. */
    public static final int MOST_PULLS = 60;

    public Aim {
        Require.within("smallest gain that matters", gain, 1e-4, 0.5);
        Require.within("chance of a verdict", power, 0.5, 0.99);
    }
}
