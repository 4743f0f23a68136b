package longthrow.buildfile;

import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * What stands above the header of a CSV file: remarks, two of which are read, {@code # kind: connecting_rod} and {@code # invented:
 * yes}, and a spreadsheet's {@code sep=;}.
 * @param kind      as written; empty when not said
 * @param invented  as written; empty when not said
 * @param headerAt  where the header's line begins, in characters; the length of the text when there is none
 * @param line      of the header, from 1
 * @param delimiter parts the cells
 */
record CsvPreamble(String kind, String invented, int headerAt, int line, char delimiter) {
    private static final Pattern SAID = Pattern.compile("\"?#\\s*(kind|invented)\\s*:\\s*([^,;\t\"]*).*");
    private static final Pattern SEPARATOR = Pattern.compile("\"?sep=(.)\"?");

    static CsvPreamble of(String text) {
        String kind = "";
        String invented = "";
        char delimiter = 0;
        int line = 1;
        int at = 0;
        while (at < text.length()) {
            int end = lineEnd(text, at);
            String content = text.substring(at, Math.min(end, at + 200)).strip();
            Matcher said = SAID.matcher(content);
            Matcher separator = SEPARATOR.matcher(content);
            if (said.matches()) {
                boolean isKind = said.group(1).equals("kind");
                kind = isKind ? said.group(2).strip() : kind;
                invented = isKind ? invented : said.group(2).strip();
            } else if (separator.matches()) {
                delimiter = separator.group(1).charAt(0);
            } else if (!content.isEmpty() && !content.startsWith("#") && !content.startsWith("\"#")) {
                return new CsvPreamble(
                        kind, invented, at, line, delimiter == 0 ? delimiter(text.substring(at, end)) : delimiter);
            }
            at = next(text, end);
            line++;
        }
        return new CsvPreamble(kind, invented, text.length(), line, ',');
    }

    static int lineEnd(String text, int from) {
        int end = from;
        while (end < text.length() && text.charAt(end) != '\n' && text.charAt(end) != '\r') {
            end++;
        }
        return end;
    }

    /** Where the line begins that follows the one ending here. */
    static int next(String text, int end) {
        return Math.min(text.length(), end + (text.startsWith("\r\n", end) ? 2 : 1));
    }

    /** The mark that parts the headers, outside quotation marks and brackets; of equals the one that no number holds. */
    private static char delimiter(String header) {
        char best = ',';
        int most = 0;
        for (char candidate : new char[] {'\t', ';', ','}) {
            int count = 0;
            boolean quoted = false;
            for (int i = 0; i < header.length(); i++) {
                quoted ^= header.charAt(i) == '"';
                count += header.charAt(i) == candidate && !quoted ? 1 : 0;
            }
            if (count > most) {
                best = candidate;
                most = count;
            }
        }
        return best;
    }
}
