package longthrow.core.quantity;

/** Which of the two figures comes first; both are always printed. */
public enum UnitSystem {
    METRIC_FIRST,
    INCH_FIRST
}
