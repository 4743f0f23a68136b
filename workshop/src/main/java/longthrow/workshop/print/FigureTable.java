package longthrow.workshop.print;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import longthrow.core.answer.Answer;
import longthrow.core.answer.Finding;
import longthrow.core.answer.Result;
import longthrow.core.answer.Verdict;
import longthrow.core.measurement.Measured;
import longthrow.core.measurement.Provenance;
import longthrow.core.quantity.Figure;
import longthrow.core.quantity.FigurePrinter;
import longthrow.core.quantity.Percent;
import longthrow.core.quantity.PrintedFigures;
import longthrow.core.term.Part;
import longthrow.core.term.Term;

/** The figures by part: label, value ± doubt in both units, where it comes from, and whose doubt it mostly is. */
final class FigureTable {
    private static final int INDENT = 2;
    private static final int GAP = 2;
    /** Smallest share of a doubt that is named. */
    private static final double LEAST_SHARE = 0.01;

    /** A longer label takes a line of its own, so that a few do not push the figures of all off the page. */
    private static final int LONGEST_LABEL = 28;

    private static final String DISPUTED = "IN DISPUTE";

    /** What the figures they are part of say shorter; printed when asked for, or when a rule is not met. */
    private static final Set<Term> SECONDARY = Set.of(
            Term.GASKET_VOLUME,
            Term.DECK_VOLUME,
            Term.CREVICE_VOLUME,
            Term.BORE_TAPER_THRUST,
            Term.BORE_TAPER_AXIS,
            Term.OUT_OF_ROUND_TOP,
            Term.OUT_OF_ROUND_MIDDLE,
            Term.OUT_OF_ROUND_BOTTOM,
            Term.DECK_TILT_SIDES,
            Term.DECK_TILT_ENDS,
            Term.SIDE_CLEARANCE_BY_WIDTH);

    private final Answer answer;
    private final Page page;
    private final FigurePrinter printer;
    private final boolean all;

    FigureTable(Answer answer, Page page, FigurePrinter printer, boolean all) {
        this.answer = answer;
        this.page = page;
        this.printer = printer;
        this.all = all;
    }

    /** One figure in its pieces. */
    private record Row(Result result, String label, String first, String second, String mark, String owner) {}

    void print() {
        boolean anyWorkedOut = answer.values().stream().anyMatch(v -> !v.term().isRead());
        Map<Part, List<Row>> byPart = new EnumMap<>(Part.class);
        List<String> disputedReadings = new ArrayList<>();
        int leftOut = 0;
        for (Result result : answer.values()) {
            boolean isRead = anyWorkedOut && result.term().isRead() && result.term() != Term.DECK_CLEARANCE;
            if (all || !(isRead || isAside(result))) {
                byPart.computeIfAbsent(result.term().part(), p -> new ArrayList<>())
                        .add(row(result));
            } else if (isRead && result.contradicted()) {
                disputedReadings.add(result.term().label());
            } else {
                leftOut++;
            }
        }
        if (!byPart.isEmpty()) {
            page.heading(
                    Ink.STRONG,
                    "FIGURES",
                    "the ± holds the true figure 19 times in 20; behind it whose doubt it mostly is, and how it is known"
                            + " where not by measuring alone");
            if (answer.values().stream().anyMatch(Result::contradicted)) {
                page.hanging(
                        0,
                        Ink.BAD,
                        DISPUTED + ":",
                        Ink.PLAIN,
                        answer.findings().stream().anyMatch(f -> f.kind() == Finding.Kind.SUSPECT)
                                ? "do not use; readings behind it disagree, see SUSPECTS."
                                : "do not use; no engine can have it as it is written, see STOP.");
            }
            List<Row> rows = byPart.values().stream().flatMap(List::stream).toList();
            Columns columns = Columns.of(rows, page.width());
            byPart.forEach((part, itsRows) -> {
                page.hanging(0, Ink.QUIET, part.label(), Ink.PLAIN, "");
                itsRows.forEach(row -> print(row, columns));
            });
        }
        if (!disputedReadings.isEmpty()) {
            page.hanging(0, Ink.BAD, "readings " + DISPUTED + ":", Ink.PLAIN, String.join("; ", disputedReadings));
        }
        if (leftOut > 0) {
            page.hanging(
                    0,
                    Ink.QUIET,
                    "",
                    Ink.QUIET,
                    "and " + leftOut + " more, readings as entered and what the figures above are made of: --all");
        }
    }

    private boolean isAside(Result result) {
        return SECONDARY.contains(result.term())
                && !result.contradicted()
                && answer.verdictsOn(result.term()).stream().allMatch(v -> v.state() == Verdict.State.MEETS);
    }

    private Row row(Result result) {
        PrintedFigures printed = result.printed(printer);
        return new Row(
                result,
                result.term().label(),
                printed.first().text(),
                printed.second()
                        .map(f -> f.doubt().equals(Figure.UNKNOWN) ? new Figure(f.value(), "", f.unit()) : f)
                        .map(Figure::text)
                        .orElse(""),
                result.contradicted() ? DISPUTED : result.isWorkedOut() ? "worked out" : result.howKnown(),
                owner(result));
    }

    private void print(Row row, Columns columns) {
        boolean longLabel = PlainText.width(row.label()) > columns.label();
        if (longLabel) {
            page.line(" ".repeat(INDENT) + row.label());
        }
        StringBuilder line = new StringBuilder(" ".repeat(INDENT))
                .append(PlainText.padded(longLabel ? "" : row.label(), columns.label()))
                .append(" ".repeat(GAP))
                .append(PlainText.padded(row.first(), columns.first()));
        if (columns.room() != Room.NARROW) {
            line.append(" ".repeat(GAP)).append(PlainText.padded(row.second(), columns.second()));
        }
        String tail = all ? "" : tail(row);
        boolean fits = columns.room() != Room.NARROW
                && PlainText.width(line.toString()) + GAP + PlainText.width(tail) <= page.width();
        if (fits) {
            line.append(" ".repeat(GAP)).append(page.ink(ink(row), tail));
        }
        page.line(line.toString());
        if (!fits || all) {
            List<String> behind = new ArrayList<>();
            if (columns.room() == Room.NARROW && !row.second().isEmpty()) {
                behind.add(row.second());
            }
            if (row.result().contradicted()) {
                behind.add(DISPUTED);
            }
            if (!row.owner().isEmpty() && (all || !row.result().contradicted())) {
                behind.add("doubt: " + (all ? owners(row.result()) : row.owner()));
            }
            if (!row.mark().isEmpty() && !row.result().contradicted()) {
                behind.add(row.mark());
            }
            page.hanging(2 * INDENT, Ink.PLAIN, "", Ink.QUIET, String.join("; ", behind));
        }
        if (all) {
            page.ifAny(2 * INDENT, "from:", String.join(", ", row.result().from()));
            page.ifAny(2 * INDENT, "sign:", row.result().term().sign());
        }
    }

    /** Whose doubt it mostly is, and how the figure is known where it is not measured alone. */
    private static String tail(Row row) {
        if (row.result().contradicted()) {
            return DISPUTED;
        }
        boolean measured = row.mark().equals(Provenance.MEASURED.label());
        return Stream.of(row.owner(), measured ? "" : row.mark())
                .filter(s -> !s.isEmpty())
                .collect(Collectors.joining("; "));
    }

    private static Ink ink(Row row) {
        return row.result().contradicted()
                ? Ink.BAD
                : row.mark().equals(Provenance.MEASURED.label()) ? Ink.QUIET : Ink.DOUBTFUL;
    }

    private static String owner(Result result) {
        return result.figure().isUnknown()
                ? ""
                : result.figure().shares().stream()
                        .limit(1)
                        .map(FigureTable::named)
                        .collect(Collectors.joining());
    }

    /** Every share of one per cent and more. */
    private static String owners(Result result) {
        return result.figure().shares().stream()
                .filter(share -> share.share() >= LEAST_SHARE)
                .map(FigureTable::named)
                .collect(Collectors.joining(", "));
    }

    private static String named(Measured.Share share) {
        return PlainText.of(share.owner()) + " " + Percent.ofShare(share.share());
    }

    /** What the page has room for on the line of a figure. */
    private enum Room {
        /** Label and both figures. */
        MIDDLE,
        /** Label and the first figure. */
        NARROW
    }

    /** Widths of the columns. */
    private record Columns(int label, int first, int second, Room room) {
        private static Columns of(List<Row> rows, int width) {
            int label = Math.min(LONGEST_LABEL, widest(rows, Row::label));
            int first = widest(rows, Row::first);
            int second = widest(rows, Row::second);
            int middle = INDENT + label + GAP + first + GAP + second;
            return new Columns(label, first, second, middle <= width ? Room.MIDDLE : Room.NARROW);
        }

        private static int widest(List<Row> rows, Function<Row, String> piece) {
            return rows.stream()
                    .mapToInt(row -> PlainText.width(piece.apply(row)))
                    .max()
                    .orElse(0);
        }
    }
}
