package longthrow.workshop.web.fit;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import longthrow.core.answer.Answer;
import longthrow.core.answer.Candidate;
import longthrow.core.answer.Finding;
import longthrow.core.answer.Rejection;
import longthrow.core.answer.Result;
import longthrow.core.answer.Verdict;
import longthrow.core.quantity.Figure;
import longthrow.core.quantity.FigurePrinter;
import longthrow.core.quantity.PrintedFigures;
import longthrow.core.term.Term;

/**
 * The answer to fit, laid out.
 * @param side   those side by side
 * @param rows   of the table of those
 * @param others the rest, to be chosen for the table
 */
public record FitAnswer(
        List<Note> notes,
        List<Way> side,
        List<Line> rows,
        List<Way> others,
        List<Reason> rejections,
        List<Note> unknowns,
        List<Note> stops,
        String base,
        int based,
        String token,
        String key) {
    /** Kind of a piece that is work and no part. */
    private static final String MACHINING = "machine_operation";

    /** So many stand side by side. */
    static final int MOST_BESIDE = 4;

    public FitAnswer {
        notes = List.copyOf(notes);
        side = List.copyOf(side);
        rows = List.copyOf(rows);
        others = List.copyOf(others);
        rejections = List.copyOf(rejections);
        unknowns = List.copyOf(unknowns);
        stops = List.copyOf(stops);
    }

    /** Something to know. */
    public record Note(String where, String text, String mend, boolean warns) {}

    /**
     * A way that goes together.
     * @param rank   from 1, best first
     * @param alone  address that shows it in the table
     * @param fails  what it fails, by the rules the owner chose
     * @param near   what it is near to failing
     * @param pieces that are bought or machined
     * @param puts   what taking it puts into the build
     * @param leaves what taking it does not put in
     */
    public record Way(
            int rank,
            String title,
            String sureness,
            String total,
            String forgotten,
            String alone,
            List<String> fails,
            List<String> near,
            List<String> pieces,
            String puts,
            String leaves,
            List<Note> changes,
            List<Note> forces,
            List<Note> unknowns) {
        public Way {
            fails = List.copyOf(fails);
            near = List.copyOf(near);
            pieces = List.copyOf(pieces);
            changes = List.copyOf(changes);
            forces = List.copyOf(forces);
            unknowns = List.copyOf(unknowns);
        }
    }

    /** A line of the table: one figure of all that stand side by side. */
    public record Line(String label, List<Cell> cells) {
        public Line {
            cells = List.copyOf(cells);
        }
    }

    /** A figure in both units; empty where it is not known. */
    public record Cell(String first, String second) {}

    /** Why others do not fit. */
    public record Reason(String many, String reason, String example, String why, String cure) {}

    /**
     * Lays an answer out.
     * @param chosen ranks to stand side by side; empty for the first few
     */
    static FitAnswer of(Answer answer, List<Integer> chosen, String base, int based, String token, String key) {
        FigurePrinter printer = new FigurePrinter(answer.units());
        List<Candidate> all = answer.candidates();
        List<Integer> beside = chosen.stream()
                .filter(rank -> rank >= 1 && rank <= all.size())
                .distinct()
                .sorted()
                .limit(MOST_BESIDE)
                .toList();
        List<Integer> shown = beside.isEmpty()
                ? IntStream.rangeClosed(1, Math.min(MOST_BESIDE, all.size()))
                        .boxed()
                        .toList()
                : beside;
        List<Integer> rest = IntStream.rangeClosed(1, all.size())
                .boxed()
                .filter(rank -> !shown.contains(rank))
                .toList();
        return new FitAnswer(
                notes(answer.findings()),
                shown.stream().map(rank -> way(rank, all.get(rank - 1), base)).toList(),
                rows(shown.stream().map(rank -> all.get(rank - 1)).toList(), printer),
                rest.stream().map(rank -> way(rank, all.get(rank - 1), base)).toList(),
                answer.rejections().stream().map(FitAnswer::reason).toList(),
                answer.unknowns().stream()
                        .map(u -> new Note(u.term().label(), u.why(), "", true))
                        .toList(),
                answer.stops().stream()
                        .map(s -> new Note(
                                s.refused() ? "refused" : "not approved",
                                s.what() + " – " + s.why(),
                                s.wayRound(),
                                s.refused()))
                        .toList(),
                base,
                based,
                token,
                key);
    }

    private static List<Note> notes(List<Finding> findings) {
        return findings.stream()
                .map(f -> new Note(
                        f.where(),
                        f.message(),
                        f.mend(),
                        f.kind() == Finding.Kind.WARNING || f.kind() == Finding.Kind.SUSPECT))
                .toList();
    }

    private static Way way(int rank, Candidate c, String base) {
        return new Way(
                rank,
                c.title(),
                c.sureness().label(),
                total(c.total()),
                String.join("; ", c.total().forgotten()),
                base + "/fit?with=" + rank,
                rules(c, Verdict.State.FAILS),
                rules(c, Verdict.State.NEAR),
                c.pieces().stream().map(FitAnswer::piece).toList(),
                puts(c),
                leaves(c),
                notes(c.changes()),
                notes(c.forces()),
                notes(c.unknowns()));
    }

    private static String puts(Candidate c) {
        List<String> parts = c.pieces().stream()
                .filter(p -> !p.kind().equals(MACHINING))
                .map(p -> p.kind().replace('_', ' ') + " " + p.code())
                .toList();
        List<String> cuts = c.pieces().stream()
                .filter(p -> p.kind().equals(MACHINING))
                .map(Candidate.Piece::name)
                .toList();
        return (parts.isEmpty() ? "no part" : String.join(", ", parts) + " with the catalogue's figures")
                + (cuts.isEmpty() ? "" : "; the sizes as they are after: " + String.join(", ", cuts));
    }

    private static String leaves(Candidate c) {
        List<String> out = new ArrayList<>(c.total().forgotten());
        if (!c.forces().isEmpty()) {
            out.add("what it asks for (below)");
        }
        out.add("readings of parts that go, which become unknown");
        return String.join("; ", out);
    }

    private static List<String> rules(Candidate c, Verdict.State state) {
        return c.verdicts().stream()
                .filter(v -> v.chosen() && v.state() == state)
                .map(v -> v.label() + ": " + v.why() + (v.cure().isEmpty() ? "" : ". Cure: " + v.cure()))
                .toList();
    }

    private static String piece(Candidate.Piece p) {
        return p.kind().replace('_', ' ') + " " + p.code() + ", " + p.name()
                + (p.vendor().isEmpty() ? "" : ", " + p.vendor())
                + ", " + money(p.price(), p.currency())
                + (p.leadDays().isPresent() ? ", " + p.leadDays().getAsInt() + " days" : "")
                + (p.note().isEmpty() ? "" : "; " + p.note());
    }

    private static String total(Candidate.Total total) {
        if (total.currency().isEmpty() && total.notPriced().isEmpty()) {
            return "nothing to buy";
        }
        String known = total.currency().isEmpty()
                ? "no price is said"
                : money(OptionalLong.of(total.known()), total.currency());
        return known
                + (total.notPriced().isEmpty() ? "" : " and what " + String.join(", ", total.notPriced()) + " cost")
                + (total.budget().isEmpty() ? "" : ", of " + money(total.budget(), total.currency()) + " to spend");
    }

    private static String money(OptionalLong hundredths, String currency) {
        return hundredths.isEmpty()
                ? "price not said"
                : String.format(Locale.ROOT, "%.2f", hundredths.getAsLong() / 100.0)
                        + (currency.isEmpty() ? "" : " " + currency);
    }

    private static Reason reason(Rejection r) {
        return new Reason(
                r.count() == 1 ? "" : String.format(Locale.ROOT, "%,d ×", r.count()),
                r.reason(),
                r.example(),
                r.why(),
                r.cure());
    }

    private static List<Line> rows(List<Candidate> shown, FigurePrinter printer) {
        Set<Term> terms = new LinkedHashSet<>();
        shown.forEach(c -> c.values().forEach(v -> terms.add(v.term())));
        List<Map<Term, Result>> values = new ArrayList<>();
        for (Candidate c : shown) {
            Map<Term, Result> byTerm = new EnumMap<>(Term.class);
            c.values().forEach(v -> byTerm.put(v.term(), v));
            values.add(byTerm);
        }
        return terms.stream()
                .sorted()
                .map(term -> new Line(
                        term.label(),
                        values.stream()
                                .map(byTerm -> Optional.ofNullable(byTerm.get(term))
                                        .map(r -> cell(r.printed(printer)))
                                        .orElse(new Cell("", "")))
                                .collect(Collectors.toList())))
                .toList();
    }

    private static Cell cell(PrintedFigures printed) {
        return new Cell(
                printed.first().text(), printed.second().map(Figure::text).orElse(""));
    }
}
