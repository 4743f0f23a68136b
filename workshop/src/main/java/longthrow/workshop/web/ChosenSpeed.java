package longthrow.workshop.web;

import io.javalin.http.Context;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import longthrow.core.quantity.Dimension;
import longthrow.core.quantity.Parsed;
import longthrow.core.quantity.QuantityParser;
import longthrow.core.quantity.Units;
import longthrow.core.term.Believable;
import longthrow.core.term.Term;

/**
 * A speed that an address asks for: any that may be wanted of an engine may be looked at.
 * @param speed   of the crank that was chosen [rad/s]; empty for that of the build
 * @param trouble why another was not taken; empty for none
 */
public record ChosenSpeed(OptionalDouble speed, String trouble) {
    /** None chosen. */
    public static final ChosenSpeed OF_THE_BUILD = new ChosenSpeed(OptionalDouble.empty(), "");

    private static final int LONGEST_SAID = 20;

    /**
     * Of a request.
     * @param instead what is shown where none is taken, in a sentence
     */
    public static ChosenSpeed of(Context request, String instead) {
        String asked =
                Optional.ofNullable(request.queryParam("speed")).orElse("").strip();
        if (asked.isEmpty()) {
            return OF_THE_BUILD;
        }
        Believable range = Term.WANTED_SPEED.believable();
        Parsed parsed = QuantityParser.parse(BareNumber.with(asked, Units.RPM.symbol()), Dimension.ROTATIONAL_SPEED);
        if (parsed instanceof Parsed.Understood understood
                && range.holds(understood.stated().value().si())) {
            return new ChosenSpeed(OptionalDouble.of(understood.stated().value().si()), "");
        }
        String said = asked.length() > LONGEST_SAID ? asked.substring(0, LONGEST_SAID) + "…" : asked;
        return new ChosenSpeed(
                OptionalDouble.empty(),
                String.format(
                        Locale.ROOT,
                        "Crank speed: “%s” was asked for; it must be a speed from %.0f to %.0f rpm, such as 3000 rpm or 50 rev/s. %s",
                        said,
                        Units.RPM.fromSi(range.least()),
                        Units.RPM.fromSi(range.most()),
                        instead));
    }

    /** As an address asks for it again; empty where none is chosen. */
    public String asked() {
        return speed.isEmpty() ? "" : "speed=" + bare();
    }

    /** In turns a minute, without its unit; empty where none is chosen. */
    public String bare() {
        return speed.isEmpty()
                ? ""
                : String.format(Locale.ROOT, "%.1f", Units.RPM.fromSi(speed.getAsDouble()))
                        .replace(".0", "");
    }
}
