package longthrow.buildfile;

/** One column of a catalogue: what to do with its cells. */
abstract class CatalogueColumn {
    private static final String UNKNOWN = Layout.UNKNOWN;

    private final String header;

    CatalogueColumn(String header) {
        this.header = header;
    }

    /** As typed. */
    final String header() {
        return header;
    }

    /** One cell as it lies in the reader's buffer; the buffer is used again for the next. */
    final void cell(char[] buffer, int offset, int length, CatalogueRow row) {
        int from = offset;
        int end = offset + length;
        while (from < end && isSpace(buffer[from])) {
            from++;
        }
        while (end > from && isSpace(buffer[end - 1])) {
            end--;
        }
        if (from > offset && end - from > 1 && buffer[from] == '"' && buffer[end - 1] == '"') {
            from++; // a space before the quotation mark
            end--;
        }
        if (from == end || isUnknown(buffer, from, end)) {
            return;
        }
        row.isNotBlank();
        if (buffer[from] == '=') {
            row.refuse(
                    header,
                    new String(buffer, from, end - from),
                    "is a spreadsheet formula, which only a spreadsheet can work out",
                    "what the formula comes to",
                    "paste the column as values before saving");
            return;
        }
        take(buffer, from, end, row);
    }

    /**
     * What stands in the cell: not empty, not unknown, no spaces around it.
     * @param end behind the last character
     */
    abstract void take(char[] buffer, int from, int end, CatalogueRow row);

    private static boolean isSpace(char c) {
        return c == ' ' || c == '\t' || c == '\u00a0' || c == '\n' || c == '\r';
    }

    private static boolean isUnknown(char[] buffer, int from, int end) {
        if (end - from != UNKNOWN.length()) {
            return false;
        }
        for (int i = 0; i < UNKNOWN.length(); i++) {
            if (Character.toLowerCase(buffer[from + i]) != UNKNOWN.charAt(i)) {
                return false;
            }
        }
        return true;
    }

    /** A column left out on purpose, or one that has no header and must be empty. */
    static final class LeftOut extends CatalogueColumn {
        LeftOut(String header) {
            super(header);
        }

        @Override
        void take(char[] buffer, int from, int end, CatalogueRow row) {
            if (header().isEmpty()) {
                row.refuse(
                        "",
                        new String(buffer, from, end - from),
                        "stands under no header",
                        "",
                        "write the column's name into the header, or # before it to leave the column out");
            }
        }
    }
}
