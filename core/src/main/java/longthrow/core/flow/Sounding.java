package longthrow.core.flow;

/** What sounds in pipes and volumes, and how sound meets a step (Kinsler et al., Fundamentals of Acoustics, 4th ed., chapters 9 and 10). Faint sound in gas at rest; lengths with their {@link EndCorrection}. */
public final class Sounding {
    private Sounding() {}

    /**
     * Of a pipe with one end closed [Hz].
     * @param mode from 1
     */
    public static double closedAtOneEnd(double soundSpeed, double length, int mode) {
        return (2 * mode - 1) * soundSpeed / (4 * length);
    }

    /** Of a pipe with both ends open, or both closed [Hz]. */
    public static double alikeAtBothEnds(double soundSpeed, double length, int mode) {
        return mode * soundSpeed / (2 * length);
    }

    /** Of a volume that breathes through a neck, Helmholtz [Hz]; wavelengths long against both. */
    public static double volumeAndNeck(double soundSpeed, double volume, double neckArea, double neckLength) {
        return soundSpeed / (2 * Math.PI) * Math.sqrt(neckArea / (volume * neckLength));
    }

    /** Pressure thrown back by a step over that which came; areas [m2] before and behind it. */
    public static double thrownBack(double areaBefore, double areaBehind) {
        return (areaBefore - areaBehind) / (areaBefore + areaBehind);
    }

    /** Pressure let through over that which came. */
    public static double letThrough(double areaBefore, double areaBehind) {
        return 1 + thrownBack(areaBefore, areaBehind);
    }
}
