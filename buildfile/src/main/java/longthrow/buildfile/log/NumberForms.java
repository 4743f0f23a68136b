package longthrow.buildfile.log;

import java.util.regex.Pattern;

/** Numbers with marks between their thousands. */
final class NumberForms {
    private NumberForms() {}

    /** The number, where thousands are parted throughout by the mark that the file is known to use; else NaN. */
    static double grouped(String text, char mark, char grouping) {
        if (grouping == 0) {
            return Double.NaN;
        }
        String group = Pattern.quote(String.valueOf(grouping));
        String form = "[+-]?[0-9]{1,3}(" + group + "[0-9]{3})+(" + Pattern.quote(String.valueOf(mark)) + "[0-9]*)?";
        if (text.length() > 40 || !text.matches(form)) {
            return Double.NaN;
        }
        return Double.parseDouble(text.replace(String.valueOf(grouping), "").replace(mark, '.'));
    }
}
