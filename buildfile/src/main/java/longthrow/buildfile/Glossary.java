package longthrow.buildfile;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import longthrow.core.quantity.BenchUnits;
import longthrow.core.quantity.Dimension;
import longthrow.core.quantity.FigurePrinter;
import longthrow.core.quantity.UnitSystem;
import longthrow.core.term.Believable;
import longthrow.core.term.Choice;
import longthrow.core.term.InstrumentKind;
import longthrow.core.term.Part;
import longthrow.core.term.ReadingKind;
import longthrow.core.term.TaperRate;
import longthrow.core.term.Term;

/** The glossary, generated from the registry of terms. */
public final class Glossary {
    /** What else the trade calls a term. Common trade words, no source. */
    private static final Map<Term, String> ALSO = Map.ofEntries(
            Map.entry(Term.DECK_CLEARANCE, "in the hole (below the deck), out of the hole (above it)"),
            Map.entry(Term.DECK_HEIGHT, "crank centre to deck"),
            Map.entry(Term.COMPRESSION_HEIGHT, "pin height; often mis-said for pin top to crown"),
            Map.entry(Term.ROD_LENGTH, "centre to centre"),
            Map.entry(Term.STROKE, "piston travel; a stroker crank has more of it than stock"),
            Map.entry(Term.THROW, "half stroke"),
            Map.entry(Term.SQUISH, "quench"),
            Map.entry(Term.CHAMBER_VOLUME, "cc of the head; taking it is cc-ing"),
            Map.entry(Term.CROWN_VOLUME, "dish, dome"),
            Map.entry(Term.SWEPT_VOLUME, "displacement"),
            Map.entry(Term.COMPRESSION_RATIO, "static ratio"),
            Map.entry(Term.BORE_TAPER, "taper"),
            Map.entry(Term.OUT_OF_ROUND, "oval"),
            Map.entry(Term.SLEEVE_WALL, "liner wall"),
            Map.entry(Term.PIN_DIAMETER, "wrist pin, gudgeon pin"),
            Map.entry(Term.ROD_SIDE_CLEARANCE, "side play"),
            Map.entry(Term.CRANK_END_PLAY, "end float"),
            Map.entry(Term.CRANK_RUN_OUT, "wobble, total indicator reading"),
            Map.entry(Term.INTAKE_LASH, "valve clearance, cold gap"),
            Map.entry(Term.EXHAUST_LASH, "valve clearance, cold gap"),
            Map.entry(Term.INTAKE_LOBE_CENTRE, "angle of the peak"),
            Map.entry(Term.INTAKE_DURATION, "open angle above the stated lift"),
            Map.entry(Term.SPRING_SEAT_LOAD, "seat pressure"),
            Map.entry(Term.SPRING_INSTALLED_HEIGHT, "shut length"),
            Map.entry(Term.COIL_BIND_MARGIN, "room to coil bind, where the coils touch"),
            Map.entry(Term.CAM_SPROCKET, "cam pulley, where a belt drives it"),
            Map.entry(Term.KEY_OFFSET, "offset key"),
            Map.entry(Term.COIL_GAP, "air gap"),
            Map.entry(Term.VENTURI, "carburettor throat"),
            Map.entry(Term.LEAK_DOWN, "leak-down percentage"));

    /** Short forms that may stand in names in the code. */
    private static final List<String[]> SHORT = List.of(
            new String[] {"tdc, bdc", "top and bottom dead centre"},
            new String[] {"btdc, atdc", "before and after top dead centre"},
            new String[] {"imep, bmep", "indicated and brake mean effective pressure"},
            new String[] {"bsfc", "brake specific fuel consumption"},
            new String[] {"rpm", "turns per minute"},
            new String[] {"cc", "cubic centimetre"},
            new String[] {"thou", "thousandth of an inch"},
            new String[] {"TIR", "total indicator reading, the whole movement of the dial in one turn"});

    private static final FigurePrinter PRINTER = new FigurePrinter(UnitSystem.METRIC_FIRST);

    private final Markdown page = new Markdown();

    private Glossary() {}

    public static String markdown() {
        return new Glossary().text();
    }

    private String text() {
        page.line("# Glossary");
        page.line("");
        page.line("Generated from the registry of terms; do not edit by hand. A term's place in a build file is"
                + " `section: key:`. Terms marked *worked out* are never entered.");
        for (Part part : Part.values()) {
            part(part);
        }
        WordsBesideTerms.write(page);
        WordsOfACatalogue.write(page);
        WordsOfADynoSheet.write(page);
        instruments();
        readings();
        page.heading(2, "Short forms");
        page.head("short", "meaning");
        SHORT.forEach(page::row);
        return page.toString();
    }

    private void part(Part part) {
        page.heading(
                2,
                part.label().substring(0, 1).toUpperCase(Locale.ROOT)
                        + part.label().substring(1) + ": `" + part.key() + "`");
        page.line(part.meaning() + ".");
        page.line("");
        page.head(
                "key", "term", "symbol", "meaning and sign", "units", "how it is come by", "believable", "also called");
        Arrays.stream(Term.values()).filter(t -> t.part() == part).forEach(this::term);
        List<Choice> choices =
                Arrays.stream(Choice.values()).filter(c -> c.part() == part).toList();
        if (!choices.isEmpty()) {
            page.line("");
            page.line("Chosen by a word:");
            page.line("");
            choices.forEach(this::choice);
        }
    }

    private void term(Term term) {
        String sign = term.sign().isEmpty() ? "" : "; " + term.sign();
        page.row(
                "`" + term.key() + "`",
                term.label(),
                term.symbol(),
                term.meaning() + sign,
                units(term),
                wayTo(term),
                term.isRead() ? range(term.dimension(), term.believable()) : "",
                ALSO.getOrDefault(term, ""));
    }

    private static String wayTo(Term term) {
        return term.isRead()
                ? OffASheet.way(term)
                        .orElseGet(() -> "`" + term.reading().key() + "` by "
                                + term.reading().usualInstrument().label())
                : "*worked out*";
    }

    private static String units(Term term) {
        double size = term.isRead() ? term.believable().middle() : 0;
        BenchUnits units = BenchUnits.of(term.dimension(), size);
        String both = units.metric() == units.inchTrade()
                ? units.metric().symbol()
                : units.metric().symbol() + ", " + units.inchTrade().symbol();
        return both.isEmpty() ? "a bare number" : both;
    }

    private static String range(Dimension dimension, Believable range) {
        return figure(dimension, range.least()) + " to " + figure(dimension, range.most());
    }

    private static String figure(Dimension dimension, double si) {
        return PRINTER.print(dimension, si, 0).first().text();
    }

    private void choice(Choice choice) {
        String options = choice.options().stream()
                .map(o -> "`" + o.key() + "` " + o.label())
                .collect(Collectors.joining(", "));
        page.line("- `" + choice.key() + "`, " + choice.meaning() + ": "
                + (choice.isTaper() ? TaperRate.ALLOWED : options.isEmpty() ? "in your own words" : options));
    }

    private void instruments() {
        page.heading(2, "Instruments");
        page.line("Built-in kinds. The stated error is a 95 % half-width shared by all readings of one instrument. An"
                + " instrument of your own, under `instruments:`, overrides these figures.");
        page.line("");
        page.head("key", "reads", "step", "stated error", "source");
        for (InstrumentKind kind : InstrumentKind.values()) {
            Dimension step = kind.dimension().ofDifference();
            String share = kind.relativeError() == 0
                    ? ""
                    : String.format(Locale.ROOT, "%s %% of the reading", plain(100 * kind.relativeError()));
            String error = kind.statedError() == 0 && !share.isEmpty() ? "" : figure(step, kind.statedError());
            boolean both = !error.isEmpty() && !share.isEmpty();
            page.row(
                    "`" + kind.key() + "`",
                    kind.dimension().plainName(),
                    kind == InstrumentKind.COUNT ? "" : figure(step, kind.resolution()),
                    error + (both ? " and " : "") + share,
                    kind.source());
        }
    }

    private void readings() {
        page.heading(2, "Kinds of reading");
        page.line(
                "The repeatability is the standard deviation of one reading by a careful owner, used where there are too few"
                        + " readings to tell. Both figures may be overridden under `bench:`. Common practice, no source.");
        page.line("");
        page.head("key", "how it is taken", "usual instrument", "repeatability", "minutes");
        for (ReadingKind kind : ReadingKind.values()) {
            page.row(
                    "`" + kind.key() + "`",
                    kind.how(),
                    kind.usualInstrument().label(),
                    kind == ReadingKind.COUNT ? "" : figure(kind.dimension().ofDifference(), kind.repeatability()),
                    plain(kind.minutes()));
        }
    }

    private static String plain(double number) {
        return String.format(Locale.ROOT, "%.1f", number).replaceFirst("\\.0$", "");
    }
}
