package longthrow.buildfile.log;

import java.nio.charset.StandardCharsets;
import java.util.regex.Pattern;

/** What a single cell looks like by itself. */
enum Look {
    EMPTY,
    NO_VALUE,
    NUMBER,
    CLOCK,
    MINUTES,
    DATE,
    WORDS;

    private static final Pattern GROUPED_BY_COMMA =
            Pattern.compile("[+-]?[0-9]{1,3}((,[0-9]{3})+\\.[0-9]*|(,[0-9]{3}){2,})");
    private static final Pattern GROUPED_BY_POINT =
            Pattern.compile("[+-]?[0-9]{1,3}((\\.[0-9]{3})+,[0-9]*|(\\.[0-9]{3}){2,})");
    /** One mark that may part thousands or begin decimals. */
    private static final Pattern TWO_WAYS = Pattern.compile("[+-]?[1-9][0-9]{0,2}[.,][0-9]{3}");

    private static final Pattern DATE_FORM = Pattern.compile("[0-9]{1,4}([-./])[0-9]{1,2}\\1[0-9]{1,4}([T ].{4,30})?");

    static Look of(String cell) {
        if (cell.isEmpty()) {
            return EMPTY;
        }
        if (cell.length() > 40) {
            return WORDS;
        }
        char first = cell.charAt(0);
        boolean digit = first >= '0' && first <= '9';
        if (digit || first == '-' || first == '+' || first == '.' || first == ',') {
            Look figure = figure(cell, digit);
            if (figure != WORDS) {
                return figure;
            }
        }
        return LineReader.isNoValue(cell) ? NO_VALUE : WORDS;
    }

    /** What begins like a number. */
    private static Look figure(String cell, boolean digit) {
        if (isNumber(cell) || isGrouped(cell)) {
            return NUMBER;
        }
        if (digit && cell.indexOf(':') > 0) {
            if (!Double.isNaN(TimeForms.seconds(cell, Form.CLOCK, 0))) {
                return CLOCK;
            }
            if (!Double.isNaN(TimeForms.seconds(cell, Form.MINUTES, 0))) {
                return MINUTES;
            }
        }
        boolean isDate = digit
                && DATE_FORM.matcher(cell).matches()
                && (isDate(cell, Form.DATE_YEAR_FIRST)
                        || isDate(cell, Form.DATE_DAY_FIRST)
                        || isDate(cell, Form.DATE_MONTH_FIRST));
        return isDate ? DATE : WORDS;
    }

    private static boolean isNumber(String cell) {
        byte[] bytes = cell.getBytes(StandardCharsets.UTF_8);
        return DecimalBytes.isNumber(bytes, 0, bytes.length, (byte) '.')
                || DecimalBytes.isNumber(bytes, 0, bytes.length, (byte) ',');
    }

    private static boolean isDate(String cell, Form form) {
        return !Double.isNaN(TimeForms.seconds(cell, form, 0));
    }

    static boolean isGrouped(String cell) {
        return GROUPED_BY_COMMA.matcher(cell).matches()
                || GROUPED_BY_POINT.matcher(cell).matches();
    }

    static boolean isGroupedByComma(String cell) {
        return GROUPED_BY_COMMA.matcher(cell).matches();
    }

    static boolean isTwoWays(String cell) {
        return TWO_WAYS.matcher(cell).matches();
    }

    boolean isFigure() {
        return this == NUMBER || this == CLOCK || this == MINUTES || this == DATE;
    }
}
