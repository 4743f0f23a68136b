package longthrow.buildfile.log;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** Times of day, with a date or without, as seconds. */
final class TimeForms {
    private static final double DAY = 86_400;
    private static final String FRACTION = "(?:[.,]([0-9]{1,9}))?";
    private static final Pattern CLOCK =
            Pattern.compile("([0-9]{1,3}):([0-9]{2}):([0-9]{2})" + FRACTION + "\\s*([AaPp][Mm])?");
    private static final Pattern MINUTES = Pattern.compile("([0-9]{1,4}):([0-9]{2})" + FRACTION);
    private static final Pattern DATED = Pattern.compile(
            "([0-9]{1,4})[-./]([0-9]{1,2})[-./]([0-9]{1,4})(?:[T ]\\s*(.+?))?(?:Z|[+-][0-9]{2}:?[0-9]{2})?");

    private TimeForms() {}

    /** Seconds from midnight, or from the midnight that begins the base day; NaN where it is no such time. */
    static double seconds(String text, Form form, long baseDay) {
        if (text.length() > 40) {
            return Double.NaN;
        }
        return switch (form) {
            case CLOCK -> clock(text);
            case MINUTES -> minutes(text);
            case DATE_YEAR_FIRST, DATE_DAY_FIRST, DATE_MONTH_FIRST -> dated(text, form, baseDay);
            case NUMBER, TEXT -> Double.NaN;
        };
    }

    private static double clock(String text) {
        Matcher m = CLOCK.matcher(text);
        if (!m.matches()) {
            return Double.NaN;
        }
        int hours = Integer.parseInt(m.group(1));
        int minutes = Integer.parseInt(m.group(2));
        int seconds = Integer.parseInt(m.group(3));
        if (minutes > 59 || seconds > 60) { // a leap second is written 60
            return Double.NaN;
        }
        String half = m.group(5);
        if (half != null) {
            if (hours < 1 || hours > 12) {
                return Double.NaN;
            }
            hours = hours % 12 + (half.charAt(0) == 'p' || half.charAt(0) == 'P' ? 12 : 0);
        }
        return hours * 3600.0 + minutes * 60.0 + withFraction(seconds, m.group(4));
    }

    private static double minutes(String text) {
        Matcher m = MINUTES.matcher(text);
        if (!m.matches() || Integer.parseInt(m.group(2)) > 59) {
            return Double.NaN;
        }
        return Integer.parseInt(m.group(1)) * 60.0 + withFraction(Integer.parseInt(m.group(2)), m.group(3));
    }

    private static double withFraction(int seconds, @Nullable String fraction) {
        return fraction == null ? seconds : Double.parseDouble(seconds + "." + fraction);
    }

    private static double dated(String text, Form form, long baseDay) {
        Matcher m = DATED.matcher(text);
        if (!m.matches()) {
            return Double.NaN;
        }
        String time = m.group(4);
        double inDay = time == null ? 0 : clock(time);
        if (time != null && Double.isNaN(inDay) && time.matches("[0-9]{1,2}:[0-9]{2}")) {
            inDay = minutes(time) * 60; // hours and minutes
        }
        Long day = day(m, form);
        return day == null ? Double.NaN : (day - baseDay) * DAY + inDay;
    }

    /** The day of a date so written [days since 1970]; null where it is none. */
    static @Nullable Long day(String text, Form form) {
        Matcher m = DATED.matcher(text);
        return m.matches() ? day(m, form) : null;
    }

    private static @Nullable Long day(Matcher m, Form form) {
        int first = Integer.parseInt(m.group(1));
        int second = Integer.parseInt(m.group(2));
        int third = Integer.parseInt(m.group(3));
        try {
            return switch (form) {
                case DATE_YEAR_FIRST -> LocalDate.of(first, second, third).toEpochDay();
                case DATE_DAY_FIRST ->
                    LocalDate.of(century(third), second, first).toEpochDay();
                case DATE_MONTH_FIRST ->
                    LocalDate.of(century(third), first, second).toEpochDay();
                default -> null;
            };
        } catch (DateTimeException none) {
            return null;
        }
    }

    private static int century(int year) {
        return year < 100 ? 2000 + year : year;
    }
}
