package longthrow.core.quantity;

import java.util.Optional;

/**
 * A value in the unit of the owner's choice and, where the trade has one, in the unit of the other bench.
 *
 * @param first in the system the owner chose
 * @param second in the other; none where both write the same unit (rpm, degrees, ratios)
 */
public record PrintedFigures(Figure first, Optional<Figure> second) {
    /** In one line: "1.37 ± 0.07 mm (0.0539 ± 0.0028 in)". */
    public String line() {
        if (second.isEmpty()) {
            return first.text();
        }
        boolean unknown = first.doubt().equals(Figure.UNKNOWN);
        return unknown
                ? first.withoutDoubt() + " (" + second.get().withoutDoubt() + "), doubt unknown"
                : first.text() + " (" + second.get().text() + ")";
    }
}
