package longthrow.core.catalogue;

import java.util.OptionalInt;
import java.util.OptionalLong;

/**
 * What it costs and how long it takes. Money is whole hundredths of the currency, so that sums are exact.
 * @param price    without shipping; empty when not said: then no total is formed
 * @param shipping empty when not said
 * @param currency three letters as in ISO 4217, or the owner's own word; empty only when no money is said
 * @param vendor   who sells it; empty when not said
 * @param leadDays days until it is there; empty when not said
 */
public record Offer(OptionalLong price, OptionalLong shipping, String currency, String vendor, OptionalInt leadDays) {
    public static final Offer NONE = new Offer(OptionalLong.empty(), OptionalLong.empty(), "", "", OptionalInt.empty());

    public Offer {
        if (price.orElse(0) < 0 || shipping.orElse(0) < 0 || leadDays.orElse(0) < 0) {
            throw new IllegalArgumentException("price, shipping and lead time are 0 or more");
        }
    }
}
