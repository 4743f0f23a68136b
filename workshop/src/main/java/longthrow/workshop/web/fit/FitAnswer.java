package longthrow.workshop.web.fit;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import longthrow.core.answer.Aimed;
import longthrow.core.answer.Answer;
import longthrow.core.answer.Candidate;
import longthrow.core.answer.Finding;
import longthrow.core.answer.Rejection;
import longthrow.core.answer.Result;
import longthrow.core.answer.Unknown;
import longthrow.core.answer.Verdict;
import longthrow.core.build.Build;
import longthrow.core.engine.Rule;
import longthrow.core.fit.Fit;
import longthrow.core.quantity.Figure;
import longthrow.core.quantity.FigurePrinter;
import longthrow.core.quantity.PrintedFigures;
import longthrow.core.term.Term;
import longthrow.workshop.print.PageWords;
import longthrow.workshop.web.Frame;

/**
 * The answer to fit, laid out.
 * @param taken  whether parts or work are taken: then ways are named beside those
 * @param first  what is to be known before anything else: what is taken, how the engine stands, which work is missing
 * @param order  what best first means
 * @param side   those side by side
 * @param head   first rows of the table of those: how surely they fit, what they cost
 * @param rows   figures in which they differ; all of them where one stands alone
 * @param same   figures that are the same in all
 * @param others the rest, to be chosen for the table
 * @param disputes rules on which sources differ here, or of which the owner chose one
 */
public record FitAnswer(
        boolean taken,
        List<Note> first,
        List<Note> notes,
        String order,
        List<Way> side,
        List<Line> head,
        List<Line> rows,
        List<Line> same,
        List<Way> others,
        List<Dispute> disputes,
        List<Reason> rejections,
        List<Note> unknowns,
        List<Note> stops,
        String base,
        int based,
        String token,
        String key) {
    /** Kind of a piece that is work and no part. */
    private static final String MACHINING = "machine_operation";

    /** Findings that stand above the ways. */
    private static final Set<String> FIRST = Set.of(Fit.TAKEN, Fit.MISSING_WORK);

    /** Before the key of a rule: the place of its form on this page. */
    private static final String FORM = "rule-";

    /** So many stand side by side. */
    static final int MOST_BESIDE = 4;

    public FitAnswer {
        first = List.copyOf(first);
        notes = List.copyOf(notes);
        side = List.copyOf(side);
        head = List.copyOf(head);
        rows = List.copyOf(rows);
        same = List.copyOf(same);
        disputes = List.copyOf(disputes);
        others = List.copyOf(others);
        rejections = List.copyOf(rejections);
        unknowns = List.copyOf(unknowns);
        stops = List.copyOf(stops);
    }

    /**
     * Something to know.
     * @param places where what it tells to do is done
     */
    public record Note(String where, String text, String mend, boolean warns, List<Frame.Place> places) {
        public Note {
            places = List.copyOf(places);
        }

        /** With nowhere to go. */
        static Note of(String where, String text, String mend, boolean warns) {
            return new Note(PageWords.said(where), PageWords.said(text), PageWords.said(mend), warns, List.of());
        }
    }

    /**
     * A way that goes together.
     * @param rank   from 1, best first
     * @param alone  address that shows it in the table
     * @param aims   how it stands to what is aimed at
     * @param fails  what it fails, by the rules the owner chose
     * @param near   what it is near to failing
     * @param splits rules that it keeps by some sources only
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
            List<Mark> aims,
            List<String> fails,
            List<String> near,
            List<Split> splits,
            List<String> pieces,
            String puts,
            String leaves,
            List<Note> changes,
            List<Note> forces,
            List<Note> unknowns) {
        public Way {
            aims = List.copyOf(aims);
            splits = List.copyOf(splits);
            fails = List.copyOf(fails);
            near = List.copyOf(near);
            pieces = List.copyOf(pieces);
            changes = List.copyOf(changes);
            forces = List.copyOf(forces);
            unknowns = List.copyOf(unknowns);
        }
    }

    /** A state by its key, for sign and colour, and in words. */
    public record Mark(String state, String text) {}

    /** A rule that one way keeps by some sources only, with the place of its form on this page. */
    public record Split(String label, String text, String form) {}

    /**
     * A rule with its sources, to choose one or none.
     * @param chosen whether one is chosen
     */
    public record Dispute(String rule, String label, boolean chosen, List<Source> sources) {
        public Dispute {
            sources = List.copyOf(sources);
        }
    }

    /** One source. */
    public record Source(String key, String text, boolean chosen) {}

    /**
     * A line of the table: one figure of all that stand side by side.
     * @param differs whether they differ in it
     */
    public record Line(String label, boolean differs, List<Cell> cells) {
        public Line {
            cells = List.copyOf(cells);
        }

        static Line of(String label, List<Cell> cells) {
            return new Line(label, cells.stream().distinct().count() > 1, cells);
        }
    }

    /**
     * A figure in both units.
     * @param first empty where it is not known
     * @param why   it is not known; empty where it is
     * @param marks how it stands to what is aimed at
     */
    public record Cell(String first, String second, String why, List<Mark> marks) {
        public Cell {
            marks = List.copyOf(marks);
        }

        static Cell of(String text) {
            return new Cell(text, "", "", List.of());
        }
    }

    /**
     * One thing in the way of others.
     * @param many  how many it keeps apart; empty for one
     * @param cases in which it shows, each with its own figures
     */
    public record Reason(String many, String reason, List<Case> cases) {
        public Reason {
            cases = List.copyOf(cases);
        }
    }

    /** Parts that are kept apart in one way: which they are, by which figures, and what would mend it. */
    public record Case(String examples, String why, String cure) {}

    /**
     * Lays an answer out.
     * @param chosen ranks to stand side by side; empty for the first few
     */
    static FitAnswer of(
            Answer answer, Build build, List<Integer> chosen, String base, int based, String token, String key) {
        FigurePrinter printer = new FigurePrinter(answer.units());
        List<Candidate> all =
                answer.candidates().stream().filter(FitAnswer::isToTake).toList();
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
        List<Candidate> together = shown.stream().map(rank -> all.get(rank - 1)).toList();
        List<Line> rows = rows(together, printer);
        boolean alone = together.size() < 2;
        return new FitAnswer(
                !build.taken().isEmpty(),
                Stream.concat(
                                answer.candidates().stream()
                                        .filter(c -> !isToTake(c))
                                        .map(c -> asItStands(c, build)),
                                notes(findings(answer, true), base).stream())
                        .toList(),
                notes(findings(answer, false), base),
                PageWords.said(Fit.order(answer)),
                shown.stream().map(rank -> way(rank, all.get(rank - 1), base)).toList(),
                List.of(
                        Line.of(
                                "fits",
                                together.stream()
                                        .map(c -> Cell.of(c.sureness().label()))
                                        .toList()),
                        Line.of(
                                "to pay",
                                together.stream()
                                        .map(c -> Cell.of(total(c.total())))
                                        .toList())),
                rows.stream().filter(line -> alone || line.differs()).toList(),
                rows.stream().filter(line -> !alone && !line.differs()).toList(),
                rest.stream().map(rank -> way(rank, all.get(rank - 1), base)).toList(),
                disputes(all, build),
                reasons(answer.rejections()),
                answer.unknowns().stream()
                        .map(u -> Note.of(u.term().label(), u.why(), "", true))
                        .toList(),
                answer.stops().stream()
                        .map(s -> Note.of(
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

    private static List<Finding> findings(Answer answer, boolean first) {
        return answer.findings().stream()
                .filter(f -> FIRST.contains(f.where()) == first)
                .toList();
    }

    /** The engine as it stands is no way to choose: there is nothing to buy and nothing to take. */
    private static boolean isToTake(Candidate candidate) {
        return !candidate.pieces().isEmpty();
    }

    private static Note asItStands(Candidate c, Build build) {
        List<String> wrong = Stream.concat(
                        rules(c, Verdict.State.FAILS).stream(),
                        c.openAims().stream().map(a -> a.term().label() + ": " + a.said()))
                .toList();
        return Note.of(
                build.taken().isEmpty() ? "as it stands" : "as taken",
                (build.taken().isEmpty()
                                ? "what the build has goes together already: fits "
                                : Fit.takenWords(build) + " go together: fits ")
                        + c.sureness().label()
                        + (build.taken().isEmpty() ? ", nothing to buy" : ", nothing to choose besides")
                        + (wrong.isEmpty() ? "" : "; but " + String.join("; ", wrong)),
                "",
                !wrong.isEmpty());
    }

    private static List<Note> notes(List<Finding> findings, String base) {
        return findings.stream()
                .map(f -> new Note(
                        PageWords.said(f.where()),
                        PageWords.said(f.message()),
                        PageWords.said(f.mend()),
                        f.kind() == Finding.Kind.WARNING || f.kind() == Finding.Kind.SUSPECT,
                        PageWords.places(f.message() + " " + f.mend()).stream()
                                .map(w -> place(w, base))
                                .toList()))
                .toList();
    }

    private static Frame.Place place(PageWords.Where where, String base) {
        return switch (where) {
            case PARTS -> new Frame.Place("Parts", "/parts");
            case AIMS -> new Frame.Place("Aims, and what may be bought", "#wish");
            case MEASURE -> new Frame.Place("Measure", base + "/measure");
            case BUILD_TEXT -> new Frame.Place("the build's text", base + "/text");
        };
    }

    private static Way way(int rank, Candidate c, String base) {
        return new Way(
                rank,
                c.title(),
                c.sureness().label(),
                total(c.total()),
                String.join("; ", c.total().forgotten()),
                base + "/fit?with=" + rank,
                c.openAims().stream()
                        .map(a -> mark(a, (a.isOneFigure() ? a.term().label() + ": " : "") + a.said()))
                        .toList(),
                rules(c, Verdict.State.FAILS),
                rules(c, Verdict.State.NEAR),
                c.splits().stream()
                        .map(s -> new Split(s.label(), s.said(), FORM + s.rule()))
                        .toList(),
                c.pieces().stream().map(FitAnswer::piece).toList(),
                puts(c),
                leaves(c),
                notes(c.changes(), base),
                notes(c.forces(), base),
                Stream.concat(c.notKnown().stream().map(u -> notKnown(u, base)), notes(c.unknowns(), base).stream())
                        .toList());
    }

    /** A figure that a way has not, with where what is missing is written down. */
    private static Note notKnown(Unknown unknown, String base) {
        return new Note(
                unknown.term().label(),
                PageWords.said(unknown.why()),
                "",
                true,
                Stream.concat(
                                unknown.missing().stream()
                                        .filter(Term::isRead)
                                        .map(t -> new Frame.Place(
                                                t.label() + ", where it is your own", base + "/measure/" + t.path())),
                                unknown.missing().isEmpty()
                                        ? Stream.of()
                                        : Stream.of(new Frame.Place("Parts, where it is a catalogue's", "/parts")))
                        .toList());
    }

    private static Mark mark(Aimed aim, String text) {
        return new Mark(aim.state().key(), aim.state().label() + ": " + text);
    }

    /** Rules that split one of the ways, and those of which the owner chose a source, in the order of the table of rules. */
    private static List<Dispute> disputes(List<Candidate> all, Build build) {
        Set<String> split = all.stream()
                .flatMap(c -> c.splits().stream())
                .map(Candidate.Split::rule)
                .collect(Collectors.toSet());
        return Arrays.stream(Rule.values())
                .filter(r -> split.contains(r.key()) || build.rulesChosen().containsKey(r.key()))
                .map(r -> dispute(r, build))
                .toList();
    }

    private static Dispute dispute(Rule rule, Build build) {
        String chosen = build.rulesChosen().getOrDefault(rule.key(), "");
        return new Dispute(
                rule.key(),
                rule.label(),
                !chosen.isEmpty(),
                rule.applicable(build).stream()
                        .map(a -> new Source(
                                a.key(),
                                a.label() + ": " + a.limits() + " – " + a.source(),
                                a.key().equals(chosen)))
                        .toList());
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
            out.add("what it asks for (above)");
        }
        out.add("readings of parts that go, which become unknown");
        return String.join("; ", out);
    }

    private static List<String> rules(Candidate c, Verdict.State state) {
        return c.verdicts().stream()
                .filter(v -> v.chosen() && v.state() == state)
                .filter(v -> c.aims().stream()
                        .noneMatch(a -> a.term() == v.term() && a.wish().equals(v.label())))
                .map(v ->
                        PageWords.said(v.label() + ": " + v.why() + (v.cure().isEmpty() ? "" : ". Cure: " + v.cure())))
                .toList();
    }

    private static String piece(Candidate.Piece p) {
        return p.kind().replace('_', ' ') + " " + p.code() + (p.name().isBlank() ? "" : ", " + p.name())
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
                + (total.toSpend().isEmpty() ? "" : ", of " + total.toSpend() + " to spend");
    }

    private static String money(OptionalLong hundredths, String currency) {
        return hundredths.isEmpty()
                ? "price not said"
                : String.format(Locale.ROOT, "%.2f", hundredths.getAsLong() / 100.0)
                        + (currency.isEmpty() ? "" : " " + currency);
    }

    /** By what is in the way, each said once; below it those with the same figures together. */
    private static List<Reason> reasons(List<Rejection> rejections) {
        Map<String, List<Rejection>> byReason = new LinkedHashMap<>();
        rejections.forEach(r ->
                byReason.computeIfAbsent(r.reason(), k -> new ArrayList<>()).add(r));
        return byReason.entrySet().stream()
                .map(e -> {
                    long many =
                            e.getValue().stream().mapToLong(Rejection::count).sum();
                    return new Reason(
                            many == 1 ? "" : String.format(Locale.ROOT, "%,d ×", many),
                            PageWords.said(e.getKey()),
                            cases(e.getValue()));
                })
                .toList();
    }

    private static List<Case> cases(List<Rejection> alike) {
        Map<List<String>, List<Rejection>> byFigures = new LinkedHashMap<>();
        alike.forEach(r -> byFigures
                .computeIfAbsent(List.of(r.why(), r.cure()), k -> new ArrayList<>())
                .add(r));
        return byFigures.values().stream()
                .map(same -> new Case(
                        examples(same),
                        PageWords.said(same.get(0).why()),
                        PageWords.said(same.get(0).cure())))
                .toList();
    }

    private static String examples(List<Rejection> same) {
        String names =
                same.stream().map(Rejection::example).filter(e -> !e.isEmpty()).collect(Collectors.joining("; "));
        boolean more = same.stream().anyMatch(r -> r.count() > 1);
        return names.isEmpty() || !more ? names : "such as " + names;
    }

    private static List<Line> rows(List<Candidate> shown, FigurePrinter printer) {
        Set<Term> terms = new TreeSet<>();
        shown.forEach(c -> {
            c.values().forEach(v -> terms.add(v.term()));
            c.notKnown().forEach(u -> terms.add(u.term()));
            c.aims().forEach(a -> terms.add(a.term()));
        });
        return terms.stream()
                .map(term -> new Line(
                        term.label(),
                        isOther(term, shown, printer),
                        shown.stream().map(c -> cell(c, term, printer)).toList()))
                .toList();
    }

    /**
     * Whether the ways differ in a figure: it is known of some and not of others, or two of them are printed as other values and stand apart by
     * more than the smaller of their doubts. A doubt that alone is another is no difference.
     */
    private static boolean isOther(Term term, List<Candidate> shown, FigurePrinter printer) {
        List<Optional<Result>> all = shown.stream()
                .map(c -> c.values().stream().filter(v -> v.term() == term).findFirst())
                .toList();
        List<Result> known = all.stream().flatMap(Optional::stream).toList();
        return (known.size() != all.size() && !known.isEmpty())
                || known.stream().anyMatch(a -> known.stream().anyMatch(b -> areApart(a, b, printer)))
                || (known.isEmpty()
                        && shown.stream()
                                        .map(c -> cell(c, term, printer))
                                        .distinct()
                                        .count()
                                > 1);
    }

    private static boolean areApart(Result a, Result b, FigurePrinter printer) {
        boolean sameInPrint = a.printed(printer)
                .first()
                .value()
                .equals(b.printed(printer).first().value());
        double doubt = Math.min(a.figure().expanded(), b.figure().expanded());
        return !sameInPrint
                && (Double.isNaN(doubt)
                        || Math.abs(a.figure().value() - b.figure().value()) > doubt);
    }

    private static Cell cell(Candidate c, Term term, FigurePrinter printer) {
        List<Mark> marks = c.aims().stream()
                .filter(a -> a.term() == term)
                .map(a -> mark(a, a.brief()))
                .toList();
        Optional<Result> value =
                c.values().stream().filter(v -> v.term() == term).findFirst();
        if (value.isEmpty()) {
            String why = c.notKnown().stream()
                    .filter(u -> u.term() == term)
                    .map(Unknown::why)
                    .findFirst()
                    .orElse("");
            return new Cell("", "", why, marks);
        }
        PrintedFigures printed = value.get().printed(printer);
        return new Cell(
                printed.first().text(), printed.second().map(Figure::text).orElse(""), "", marks);
    }
}
