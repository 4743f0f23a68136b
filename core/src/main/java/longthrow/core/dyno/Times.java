package longthrow.core.dyno;

import java.util.LinkedHashMap;
import java.util.Map;
import longthrow.core.answer.DynoRuns;
import longthrow.core.measurement.Measured;
import longthrow.core.measurement.Source;

/** Products of figures with their doubt. */
final class Times {
    private Times() {}

    static Measured of(Measured a, double factor) {
        Map<Source, Double> doubt = new LinkedHashMap<>();
        a.contributions().forEach((source, c) -> doubt.put(source, c * factor));
        return Measured.withContributions(a.value() * factor, doubt);
    }

    static Measured of(Measured a, Measured b) {
        Map<Source, Double> doubt = new LinkedHashMap<>();
        a.contributions().forEach((source, c) -> doubt.merge(source, c * b.value(), Double::sum));
        b.contributions().forEach((source, c) -> doubt.merge(source, c * a.value(), Double::sum));
        return Measured.withContributions(a.value() * b.value(), doubt);
    }

    /** A figure over another. */
    static Measured over(Measured a, Measured b) {
        Map<Source, Double> doubt = new LinkedHashMap<>();
        double value = a.value() / b.value();
        a.contributions().forEach((source, c) -> doubt.merge(source, c / b.value(), Double::sum));
        b.contributions().forEach((source, c) -> doubt.merge(source, -c * value / b.value(), Double::sum));
        return Measured.withContributions(value, doubt);
    }

    static DynoRuns.Peak of(DynoRuns.Peak peak, Measured factor) {
        return new DynoRuns.Peak(of(peak.figure(), factor), peak.speed(), peak.low(), peak.high(), peak.shown());
    }
}
