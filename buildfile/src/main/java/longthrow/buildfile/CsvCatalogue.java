package longthrow.buildfile;

import de.siegmar.fastcsv.reader.AbstractBaseCsvCallbackHandler;
import de.siegmar.fastcsv.reader.CommentStrategy;
import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.FieldMismatchStrategy;
import java.io.IOException;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** The lines of a CSV file to rows. A broken row costs itself: reading goes on with the line after it. */
final class CsvCatalogue {
    /** Longest cell; with more, a quotation mark is missing. */
    private static final int LONGEST_CELL = 1 << 14;

    private static final int MOST_ROWS = 500_000;
    private static final int MOST_COLUMNS = 300;
    /** So often reading is taken up again behind a broken row. */
    private static final int MOST_BROKEN = 1000;

    private static final String QUOTES =
            "put a quotation mark at both ends of the cell, and double those inside, or take them all out";

    private final String text;
    private final String file;
    private final Shelf shelf;
    private final CsvPreamble preamble;
    private final CatalogueRow row;
    private final Rows rows = new Rows();
    private final List<Fault> faults = new ArrayList<>();
    private final List<Note> notes = new ArrayList<>();

    private CatalogueColumn @Nullable [] columns;
    private int count;
    private boolean broken;

    CsvCatalogue(String text, String file, Shelf shelf, CsvPreamble preamble, boolean invented) {
        this.text = text;
        this.file = file;
        this.shelf = shelf;
        this.preamble = preamble;
        this.row = new CatalogueRow(shelf, file, invented);
    }

    Imported read() {
        int at = preamble.headerAt();
        int line = preamble.line();
        int resumed = 0;
        while (at < text.length()) {
            int stopped = readFrom(at, line);
            if (stopped == 0) {
                break;
            }
            if (!faults.isEmpty() || ++resumed > MOST_BROKEN) {
                tooBroken(resumed);
                break;
            }
            for (; line <= stopped; line++) {
                at = CsvPreamble.next(text, CsvPreamble.lineEnd(text, at));
            }
        }
        if (columns == null && faults.isEmpty()) {
            faults.add(
                    whole("has no header", "make the first line the names of the columns, such as code,length [mm]"));
        }
        return rows.imported(faults, notes);
    }

    private void tooBroken(int resumed) {
        if (resumed > MOST_BROKEN) {
            faults.add(whole(
                    "has more than " + MOST_BROKEN + " rows with broken quotation marks; the rest was not looked at",
                    QUOTES));
        }
    }

    private static Fault whole(String why, String mend) {
        return new Fault(0, 0, "", "", why, "", mend);
    }

    /** Reads on until the end, 0, or a broken row, its line. */
    private int readFrom(int at, int line) {
        Handler handler = new Handler(line - 1);
        try (StringReader from = new StringReader(text)) {
            long skipped = from.skip(at);
            if (skipped != at) {
                throw new IllegalStateException("skipped " + skipped + " of " + at);
            }
            CsvReader<Boolean> reader = CsvReader.builder()
                    .fieldSeparator(preamble.delimiter())
                    .quoteCharacter('"')
                    .commentStrategy(CommentStrategy.SKIP)
                    .commentCharacter('#')
                    .skipEmptyLines(true)
                    .extraFieldStrategy(FieldMismatchStrategy.IGNORE)
                    .missingFieldStrategy(FieldMismatchStrategy.IGNORE)
                    .allowUnclosedQuote(false)
                    .maxBufferSize(LONGEST_CELL)
                    .build(handler, from);
            for (boolean goOn : reader) {
                if (!goOn) {
                    return broken ? row.line() : 0;
                }
            }
            return 0;
        } catch (CsvParseException | UncheckedIOException unreadable) {
            int stopped = Math.max(handler.begun, line);
            if (columns == null) {
                faults.add(
                        new Fault(stopped, 0, "", "", "the header has quotation marks that do not pair", "", QUOTES));
                return stopped;
            }
            row.begin(stopped);
            brokenRow();
            return stopped;
        } catch (IOException cannotBe) {
            throw new UncheckedIOException(cannotBe); // a text in memory has no trouble with its device
        }
    }

    private void brokenRow() {
        row.refuse("", "", "has quotation marks that do not pair, or a cell without end", "", QUOTES);
        rows.add(row, shelf, file);
    }

    private final class Handler extends AbstractBaseCsvCallbackHandler<Boolean> {
        private final int linesBefore;
        private final List<String> header = new ArrayList<>();
        private int begun;
        private int fields;
        private boolean lineBreak;

        Handler(int linesBefore) {
            this.linesBefore = linesBefore;
        }

        @Override
        protected void handleBegin(long startingLineNumber) {
            begun = linesBefore + (int) startingLineNumber;
            fields = 0;
            lineBreak = false;
            row.begin(begun);
        }

        @Override
        protected void handleField(int index, char[] buffer, int offset, int length, boolean quoted) {
            fields++;
            if (quoted && !lineBreak) {
                for (int i = offset; i < offset + length; i++) {
                    lineBreak |= buffer[i] == '\n' || buffer[i] == '\r';
                }
            }
            CatalogueColumn[] known = columns;
            if (known == null) {
                header.add(new String(buffer, offset, length));
            } else if (index < known.length) {
                known[index].cell(buffer, offset, length, row);
            } else if (length > 0 && !lineBreak) {
                row.isNotBlank();
                fields = Math.max(fields, known.length + 1);
                surplus = true;
            }
        }

        private boolean surplus;

        @Override
        protected Boolean buildRecord() {
            CatalogueColumn[] known = columns;
            if (known == null) {
                columns = columns(header, begun);
                return faults.isEmpty();
            }
            boolean ragged = fields < known.length || surplus;
            surplus = false;
            if (ragged && lineBreak) {
                broken = true;
                brokenRow();
                return false;
            }
            if (row.isBlank()) {
                return true;
            }
            if (++count > MOST_ROWS) {
                faults.add(whole("has more than " + MOST_ROWS + " rows; the rest was not looked at", "split it"));
                return false;
            }
            if (ragged) {
                row.refuse(
                        "",
                        "",
                        "has " + fields + " cells; the header has " + known.length,
                        "",
                        fields > known.length && preamble.delimiter() == ','
                                ? "write a decimal point, not a comma, or put the cell in quotation marks"
                                : "give each column its cell; an empty one where nothing is known");
            }
            rows.add(row, shelf, file);
            return true;
        }
    }

    private CatalogueColumn[] columns(List<String> header, int line) {
        List<CatalogueColumn> found = new ArrayList<>();
        Set<Object> seen = new HashSet<>();
        if (header.size() > MOST_COLUMNS) {
            faults.add(whole("has " + header.size() + " columns", "keep those that this program knows"));
            return new CatalogueColumn[0];
        }
        CatalogueColumns known = CatalogueColumns.headed(shelf, preamble.delimiter() != ',');
        List<CatalogueColumns.Found> all = known.all(header);
        for (int i = 0; i < header.size(); i++) {
            String name = header.get(i);
            CatalogueColumns.Found one = all.get(i);
            Fault fault = one.fault();
            if (fault != null) {
                faults.add(new Fault(line, 0, fault.path(), fault.found(), fault.why(), fault.allowed(), fault.mend()));
            }
            if (!one.note().isEmpty()) {
                notes.add(new Note(line, name.strip(), one.note()));
            }
            CatalogueColumn column = one.column();
            if (column != null) {
                found.add(column);
                if (!one.meaning().isEmpty() && !seen.add(one.meaning())) {
                    faults.add(new Fault(
                            line,
                            0,
                            name.strip(),
                            name.strip(),
                            "is a second column of " + one.meaning(),
                            "each once",
                            "put # before the one to leave out"));
                }
            }
        }
        if (!seen.contains(CatalogueLabel.CODE.key()) && faults.isEmpty()) {
            faults.add(new Fault(
                    line,
                    0,
                    "",
                    "",
                    "has no column 'code', by which a row is told from the others",
                    "",
                    "add it; if the cells are not parted at all, save the file as CSV again"));
        }
        return found.toArray(CatalogueColumn[]::new);
    }
}
