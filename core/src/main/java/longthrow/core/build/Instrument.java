package longthrow.core.build;

import longthrow.core.term.InstrumentKind;
import org.jspecify.annotations.Nullable;

/**
 * An instrument on the bench: a built-in kind, or the owner's own with what is known of it.
 * @param key           name in the build file
 * @param kind          the built-in kind it is one of
 * @param resolution    step of the scale [SI], &gt; 0
 * @param statedError   95 % half-width shared by all its readings [SI], &ge; 0
 * @param relativeError the same as a share of the reading, &ge; 0
 * @param temperatureMetalIsSteel steel scale or frame: expands as steel when a temperature is given
 * @param calibration   note of when and against what it was checked; empty when never
 * @param setWith       the instrument or standard it was set with, whose own error its readings then share; null when it needs none
 */
public record Instrument(
        String key,
        InstrumentKind kind,
        double resolution,
        double statedError,
        double relativeError,
        boolean temperatureMetalIsSteel,
        String calibration,
        @Nullable Instrument setWith) {
    public Instrument {
        if (!(resolution > 0) || !(statedError >= 0) || !(relativeError >= 0)) {
            throw new IllegalArgumentException(
                    "instrument " + key + " needs a resolution above 0 and a stated error of at least 0");
        }
    }

    /** An instrument that is not set with another. */
    public Instrument(
            String key,
            InstrumentKind kind,
            double resolution,
            double statedError,
            double relativeError,
            boolean temperatureMetalIsSteel,
            String calibration) {
        this(key, kind, resolution, statedError, relativeError, temperatureMetalIsSteel, calibration, null);
    }

    /** The built-in instrument of this kind. */
    public static Instrument builtIn(InstrumentKind kind) {
        return new Instrument(kind.key(), kind, kind.resolution(), kind.statedError(), kind.relativeError(), true, "");
    }
}
