package longthrow.buildfile;

import java.util.Optional;
import longthrow.core.quantity.Dimension;
import longthrow.core.quantity.Quantity;

/** Temperatures at which a part is measured or judged. */
final class Temperatures {
    /** A part is not held in the hand, nor a rule kept, outside this range [K]: -50 to 300 °C. Common practice, no source. */
    private static final double COLDEST = 223.15;

    private static final double HOTTEST = 573.15;

    static final String RANGE = "-50 °C to 300 °C";

    private Temperatures() {}

    /** The temperature behind a key; empty when it is not there or was refused. */
    static Optional<Quantity> ofAPart(Fields fields, String key) {
        Optional<Quantity> read = fields.quantity(key, Dimension.TEMPERATURE);
        if (read.isEmpty() || (read.get().si() >= COLDEST && read.get().si() <= HOTTEST)) {
            return read;
        }
        fields.refuse(
                key,
                read.get().written(),
                "is no temperature at which a part is measured",
                RANGE,
                "check the number and its unit");
        return Optional.empty();
    }
}
