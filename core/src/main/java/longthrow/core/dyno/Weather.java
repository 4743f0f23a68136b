package longthrow.core.dyno;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import longthrow.core.answer.DefaultUsed;
import longthrow.core.gain.AirCorrection;
import longthrow.core.gain.AirReading;
import longthrow.core.gain.AirStandard;
import longthrow.core.measurement.Measured;
import longthrow.core.measurement.Source;
import longthrow.core.quantity.Quantity;
import longthrow.core.quantity.Stated;

/** The air of each session, with the doubt of its instruments, and the factor of the standard for it. */
final class Weather {
    /** 95 % half-widths where nothing is said of the instrument [Pa], [K], share. */
    private static final double BAROMETER = 100;

    private static final double THERMOMETER = 1;
    private static final double HYGROMETER = 0.05;

    private static final String SOURCE = "instruments as workshops have them; common practice, no source";

    private final Map<String, DefaultUsed> taken = new LinkedHashMap<>();

    /** The factor, or nothing where the air was not read whole. */
    Optional<AirCorrection> factor(DynoSheet.Air air, Optional<AirStandard> standard) {
        if (standard.isEmpty() || !air.isKnown()) {
            return Optional.empty();
        }
        return Optional.of(standard.get()
                .correct(new AirReading(
                        read(air.pressure(), "barometer", "pressure", "0.1 kPa", BAROMETER),
                        read(air.temperature(), "thermometer of the air", "temperature", "1 °C", THERMOMETER),
                        read(air.humidity(), "hygrometer", "humidity", "5 % of relative humidity", HYGROMETER))));
    }

    /** One instrument for all sessions: what it shows wrong it shows wrong in each, and goes out of a difference as far as they act alike. */
    private Measured read(Optional<Stated> stated, String instrument, String key, String words, double usual) {
        Stated read = stated.orElseThrow();
        Optional<Double> typed = read.expandedDoubt().map(Quantity::si);
        if (typed.isEmpty()) {
            taken.put(
                    key,
                    new DefaultUsed(
                            "sessions.air." + key,
                            "the " + instrument + " is right to ± " + words + " (95 %)",
                            SOURCE));
        }
        double half = typed.orElse(usual);
        if (half == 0) {
            return Measured.exact(read.value().si());
        }
        String id = "dyno " + instrument + (typed.isPresent() ? " ± " + typed.get() : "");
        return Measured.of(read.value().si(), List.of(Source.at95(id, Source.Kind.INSTRUMENT, instrument, half)));
    }

    List<DefaultUsed> taken() {
        return List.copyOf(taken.values());
    }
}
