package longthrow.buildfile.log;

import java.util.Arrays;

/** The cells of one line: where each begins and ends, without blanks and quotation marks around it. */
final class Cells {
    private final byte delimiter;
    private int[] places = new int[32]; // from and to of each in turn

    /** Parted by this byte; a blank stands for any run of blanks and tabs. */
    Cells(byte delimiter) {
        this.delimiter = delimiter;
    }

    int from(int cell) {
        return places[2 * cell];
    }

    int to(int cell) {
        return places[2 * cell + 1];
    }

    boolean isEmpty(int cell) {
        return from(cell) == to(cell);
    }

    static boolean isBlank(byte b) {
        return b == ' ' || b == '\t';
    }

    private boolean isDelimiter(byte b) {
        return delimiter == ' ' ? isBlank(b) : b == delimiter;
    }

    /** How many there are; -1 where a quotation mark is not closed. */
    int split(byte[] bytes, int start, int end) {
        int count = 0;
        int at = start;
        while (true) {
            while (at < end && (bytes[at] == ' ' || (bytes[at] == '\t' && delimiter != '\t'))) {
                at++;
            }
            if (delimiter == ' ' && at == end) {
                return count;
            }
            int from = at;
            int to;
            if (at < end && bytes[at] == '"') {
                from = ++at;
                while (at < end && (bytes[at] != '"' || (at + 1 < end && bytes[at + 1] == '"'))) {
                    at += bytes[at] == '"' ? 2 : 1;
                }
                if (at >= end) {
                    return -1;
                }
                to = at++;
                while (at < end && !isDelimiter(bytes[at])) {
                    at++; // what follows a closing mark belongs to no cell
                }
            } else {
                while (at < end && !isDelimiter(bytes[at])) {
                    at++;
                }
                to = at;
            }
            add(bytes, count++, from, to);
            if (at >= end) {
                return count;
            }
            at++;
        }
    }

    private void add(byte[] bytes, int cell, int first, int behind) {
        int from = first;
        int to = behind;
        while (to > from && isBlank(bytes[to - 1])) {
            to--;
        }
        while (from < to && isBlank(bytes[from])) {
            from++;
        }
        if (2 * cell + 2 > places.length) {
            places = Arrays.copyOf(places, places.length * 2);
        }
        places[2 * cell] = from;
        places[2 * cell + 1] = to;
    }
}
