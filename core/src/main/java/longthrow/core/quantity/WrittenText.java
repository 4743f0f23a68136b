package longthrow.core.quantity;

import java.util.Locale;

/** The many ways keyboards and copied pages write one character, brought to one: primes, dashes, spaces, fractions. */
final class WrittenText {
    /** A thin or non-breaking space between digits: it groups the digits of one number. */
    static final char GROUPING_SPACE = '\u2009';

    private static final String THIN_SPACES = "\u00a0\u2007\u2008\u2009\u200a\u202f";
    private static final String DASHES = "\u2010\u2011\u2012\u2013\u2014\u2212\ufe63";
    private static final String SINGLE_PRIMES = "\u2032\u2018\u2019\u201b\u00b4\u02b9`";
    private static final String DOUBLE_PRIMES = "\u2033\u201c\u201d\u201f\u02ba\u3003\u2036";
    private static final String DOTS = "\u22c5\u2219\u2022\u00d7\u30fb";
    private static final String SLASHES = "\u2044\u2215";

    private static final String VULGAR = "½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞⅑⅒⅐";
    private static final String[] VULGAR_PLAIN = {
        "1/2", "1/3", "2/3", "1/4", "3/4", "1/5", "2/5", "3/5", "4/5", "1/6", "5/6", "1/8", "3/8", "5/8", "7/8", "1/9",
        "1/10", "1/7"
    };

    private WrittenText() {}

    /** The text in plain characters, stripped. Characters that mean nothing here stay, for the parser to refuse. */
    static String plain(String written) {
        StringBuilder plain = new StringBuilder(written.length() + 8);
        for (int i = 0; i < written.length(); i++) {
            char c = written.charAt(i);
            int vulgar = VULGAR.indexOf(c);
            if (vulgar >= 0) {
                boolean afterDigit = plain.length() > 0 && isDigit(plain.charAt(plain.length() - 1));
                plain.append(afterDigit ? " " : "").append(VULGAR_PLAIN[vulgar]);
            } else {
                plain.append(plain(c));
            }
        }
        return withGroupingSpacesOnlyBetweenDigits(plain)
                .replace("''", "\"")
                .replace("℃", "°C")
                .replace("℉", "°F")
                .replace("+/-", "±")
                .replace("+-", "±")
                .strip();
    }

    private static char plain(char c) {
        if (c >= '\uff01' && c <= '\uff5e') { // full-width forms of ASCII
            return (char) (c - '\uff01' + '!');
        }
        if (THIN_SPACES.indexOf(c) >= 0) {
            return GROUPING_SPACE;
        }
        if (c == '\t' || c == '\u3000' || Character.isSpaceChar(c)) {
            return ' ';
        }
        if (DASHES.indexOf(c) >= 0) {
            return '-';
        }
        if (SINGLE_PRIMES.indexOf(c) >= 0) {
            return '\'';
        }
        if (DOUBLE_PRIMES.indexOf(c) >= 0) {
            return '"';
        }
        if (DOTS.indexOf(c) >= 0) {
            return '·';
        }
        if (SLASHES.indexOf(c) >= 0) {
            return '/';
        }
        return c == '\u00ba' || c == '\u02da' ? '°' : c;
    }

    private static String withGroupingSpacesOnlyBetweenDigits(StringBuilder text) {
        for (int i = 0; i < text.length(); i++) {
            boolean between =
                    i > 0 && i + 1 < text.length() && isDigit(text.charAt(i - 1)) && isDigit(text.charAt(i + 1));
            if (text.charAt(i) == GROUPING_SPACE && !between) {
                text.setCharAt(i, ' ');
            }
        }
        return text.toString();
    }

    /** Powers and micro in plain letters: "mm²" and "mm^2" become "mm2", "µm" becomes "um". */
    static String plainPowers(String unit) {
        return unit.replace("^", "")
                .replace('²', '2')
                .replace('³', '3')
                .replace('₂', '2')
                .replace('ₙ', 'n')
                .replace('µ', 'u')
                .replace('μ', 'u');
    }

    static boolean isDigit(char c) {
        return c >= '0' && c <= '9';
    }

    /** For a message: at most 40 characters, control characters made visible. */
    static String shown(String written) {
        int length = written.length();
        StringBuilder shown = new StringBuilder();
        written.codePoints().limit(40).forEach(c -> {
            if (Character.isISOControl(c) || !Character.isDefined(c) || (c >= 0xd800 && c <= 0xdfff)) {
                shown.append(String.format(Locale.ROOT, "\\u%04x", c));
            } else {
                shown.appendCodePoint(c);
            }
        });
        return length > 40 ? shown + "… (" + length + " characters)" : shown.toString();
    }
}
