package longthrow.core.recording;

import java.util.EnumSet;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import longthrow.core.quantity.Dimension;
import longthrow.core.quantity.Unit;
import longthrow.core.quantity.Units;

/** Units as loggers write them: the table of units, and what other languages and old character sets make of them. Common practice, no source. */
public final class LoggedUnits {
    private static final Map<String, String> ALSO = Map.ofEntries(
            Map.entry("u/min", "rpm"),
            Map.entry("umin", "rpm"),
            Map.entry("upm", "rpm"),
            Map.entry("min-1", "rpm"),
            Map.entry("min^-1", "rpm"),
            Map.entry("min⁻¹", "rpm"),
            Map.entry("1/min.", "rpm"),
            Map.entry("tr/min", "rpm"),
            Map.entry("tr/mn", "rpm"),
            Map.entry("tpm", "rpm"),
            Map.entry("giri/min", "rpm"),
            Map.entry("giri", "rpm"),
            Map.entry("omw/min", "rpm"),
            Map.entry("hz", "r/s"),
            Map.entry("km/std", "km/h"),
            Map.entry("km/u", "km/h"),
            Map.entry("ch", "PS"),
            Map.entry("pk", "PS"),
            Map.entry("hk", "PS"),
            Map.entry("n.m", "N·m"),
            Map.entry("n*m", "N·m"),
            Map.entry("kgm", "kgf·m"),
            Map.entry("mkg", "kgf·m"),
            Map.entry("kg", "kgf"),
            Map.entry("sek", "s"),
            Map.entry("seg", "s"),
            Map.entry("msec", "ms"),
            Map.entry("std", "h"),
            Map.entry("degc", "°C"),
            Map.entry("deg c", "°C"),
            Map.entry("deg. c", "°C"),
            Map.entry("grad c", "°C"),
            Map.entry("grd c", "°C"),
            Map.entry("gradi c", "°C"),
            Map.entry("ºc", "°C"),
            Map.entry("degf", "°F"),
            Map.entry("deg f", "°F"),
            Map.entry("ºf", "°F"),
            Map.entry("% rh", "%"),
            Map.entry("%rh", "%"),
            Map.entry("% rf", "%"),
            Map.entry("% r.f.", "%"),
            Map.entry("-", ""),
            Map.entry("λ", ""),
            Map.entry("lambda", ""),
            Map.entry("afr", ""),
            Map.entry("ratio", ""),
            Map.entry("1", ""));

    private static final Set<Dimension> LOGGED = EnumSet.of(Dimension.LENGTH, Dimension.ACCELERATION);

    static {
        for (Channel channel : Channel.values()) {
            LOGGED.add(channel.dimension());
        }
    }

    private LoggedUnits() {}

    /**
     * The unit of this dimension that is written so, if there is one.
     * @param dimension of the channel
     * @param text      what stands in the file, without brackets
     */
    public static Optional<Unit> find(Dimension dimension, String text) {
        String plain = text.strip();
        if (plain.isEmpty() || plain.length() > 24) {
            return Optional.empty();
        }
        String also = ALSO.get(plain.toLowerCase(Locale.ROOT));
        if (also != null && also.isEmpty()) {
            return switch (dimension) {
                case RATIO -> Optional.of(Units.BARE_RATIO);
                case COUNT -> Optional.of(Units.BARE_COUNT);
                default -> Optional.empty();
            };
        }
        Optional<Unit> found = also == null ? Optional.empty() : Unit.find(dimension, also);
        return found.isPresent() ? found : Unit.find(dimension, plain);
    }

    /** Whether this is a unit of anything that a logger writes. */
    public static boolean isUnit(String text) {
        if (text.strip().length() > 24) {
            return false;
        }
        for (Dimension dimension : LOGGED) {
            if (find(dimension, text).isPresent()) {
                return true;
            }
        }
        return text.strip().matches("(?i)m?v|volts?|m?a|bool|deg|°|hh:mm:ss.*|#");
    }
}
