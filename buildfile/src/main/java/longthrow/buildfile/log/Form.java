package longthrow.buildfile.log;

/** How the cells of a column are written. */
public enum Form {
    /** Decimal numbers. */
    NUMBER,
    /** Hours, minutes and seconds. */
    CLOCK,
    /** Minutes and seconds. */
    MINUTES,
    /** A date, year first, and a time of day. */
    DATE_YEAR_FIRST,
    /** A date, day first, and a time of day. */
    DATE_DAY_FIRST,
    /** A date, month first, and a time of day. */
    DATE_MONTH_FIRST,
    /** Words. */
    TEXT
}
