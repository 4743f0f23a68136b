package longthrow.core.quantity;

import java.util.Optional;

/**
 * A value in the unit of the owner's choice and, where the trade has one, in the unit of the other bench.
 *
 * @param first in the system the owner chose
 * @param second in the other; none where both write the same unit (rpm, degrees, ratios)
 */
public record PrintedFigures(Figure first, Optional<Figure> second) {
    /** In one line: "1.37 ± 0.07 mm (0.054 ± 0.003 in)". */
    public String line() {
        return second.map(other -> {
                    boolean unknown = first.doubt().equals(Figure.UNKNOWN);
                    Figure beside = unknown ? new Figure(other.value(), "", other.unit()) : other;
                    return unknown
                            ? new Figure(first.value(), "", first.unit()).text() + " (" + beside.text()
                                    + "), doubt unknown"
                            : first.text() + " (" + beside.text() + ")";
                })
                .orElseGet(first::text);
    }
}
