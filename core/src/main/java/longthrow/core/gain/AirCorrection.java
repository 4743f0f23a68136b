package longthrow.core.gain;

import java.util.List;
import java.util.Locale;
import longthrow.core.measurement.Measured;

/**
 * A weather factor, with the standard it is of.
 * @param standard by which
 * @param factor   observed times this is corrected; its doubt is that of the instruments and of the standard itself
 * @param pressure that it took: of the dry air, or the whole where the standard takes that [Pa]
 * @param beyond   what lies outside what the standard is meant for, in words; empty where nothing does
 */
public record AirCorrection(AirStandard standard, Measured factor, double pressure, List<String> beyond) {
    public AirCorrection {
        beyond = List.copyOf(beyond);
    }

    /** Whether air and factor are what the standard is meant for. */
    public boolean isWithin() {
        return beyond.isEmpty();
    }

    /** A figure corrected; the standard goes with it. */
    public Corrected of(double observed) {
        return new Corrected(
                observed * factor.value(), Math.abs(observed) * factor.standardUncertainty(), standard, isWithin());
    }

    /**
     * A corrected torque or power.
     * @param value               in the unit of what was observed
     * @param standardUncertainty that the correction brings alone
     * @param standard            by which
     * @param within              whether air and factor are what the standard is meant for
     */
    public record Corrected(double value, double standardUncertainty, AirStandard standard, boolean within) {
        /** The standard's name as it stands beside the figure. */
        public String label() {
            return String.format(Locale.ROOT, "by %s%s", standard.label(), within ? "" : ", outside its limits");
        }
    }
}
