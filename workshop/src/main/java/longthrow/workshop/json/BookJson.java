package longthrow.workshop.json;

import java.util.List;
import longthrow.core.book.Book;
import longthrow.core.engine.FirstStart;
import longthrow.core.quantity.UnitSystem;

/** The JSON of a Book, and its schema, docs/book.schema.json. */
public final class BookJson {
    /** Raised when a key changes its meaning or goes away; adding keys does not raise it. */
    private static final int FORMAT = 1;

    private static final JsonShape<Book.RecipeLine> LINE = new JsonShape<Book.RecipeLine>()
            .text("part", "it belongs to", Book.RecipeLine::part)
            .text("label", "what it is", Book.RecipeLine::label)
            .text("figure", "value and doubt, or the word chosen", Book.RecipeLine::figure)
            .text("other", "in the other bench's unit; empty where there is none", Book.RecipeLine::other)
            .text("known_by", "measured, guessed, by a sheet, worked out, in dispute", Book.RecipeLine::how)
            .truth("sound", "whether it may be built on as it is", Book.RecipeLine::sound);

    private static final JsonShape<Book.ReadAgain> AGAIN = new JsonShape<Book.ReadAgain>()
            .text("what", "is read", Book.ReadAgain::what)
            .text("why", "it is not enough as it is", Book.ReadAgain::why)
            .text("how", "it is taken", Book.ReadAgain::how);

    private static final JsonShape<Book.ReadingLine> READING = new JsonShape<Book.ReadingLine>()
            .text("part", "it was read on", Book.ReadingLine::part)
            .text("label", "what was read", Book.ReadingLine::label)
            .text("written", "as it was written", Book.ReadingLine::written)
            .text("instrument", "or whose word it is", Book.ReadingLine::instrument)
            .text("result", "figure and doubt; empty where none came of it", Book.ReadingLine::result)
            .text("remark", "temperature, who, when, photograph, note; empty for none", Book.ReadingLine::remark);

    private static final JsonShape<Book.PartLine> PART = new JsonShape<Book.PartLine>()
            .text("part", "which", Book.PartLine::part)
            .text("words", "whose sheet stands behind it, or what becomes of it and why", Book.PartLine::words);

    private static final JsonShape<Book.Way> WAY = new JsonShape<Book.Way>()
            .text("title", "parts by their codes", Book.Way::title)
            .text("fits", "how surely", Book.Way::fits)
            .text("total", "what it costs as far as is known", Book.Way::total)
            .texts("pieces", "bought or machined, and the chief figures", Book.Way::pieces)
            .texts("fails", "rules it fails or nearly fails", Book.Way::fails)
            .texts("forces", "what else it makes necessary", Book.Way::forces)
            .texts("open", "what stays unknown", Book.Way::open);

    private static final JsonShape<Book.Ticket> TICKET = new JsonShape<Book.Ticket>()
            .text("part", "worked on", Book.Ticket::part)
            .text("work", "what is done", Book.Ticket::work)
            .text("from", "size before", Book.Ticket::from)
            .text("to", "size after, or the window it must end in", Book.Ticket::to)
            .text("tolerance", "held to", Book.Ticket::tolerance)
            .text("datum", "measured from", Book.Ticket::datum)
            .text("inspect", "what is read afterwards", Book.Ticket::inspect)
            .text("source", "why it is asked for", Book.Ticket::source);

    private static final JsonShape<Book.Limit> LIMIT = new JsonShape<Book.Limit>()
            .text("label", "for what it is meant", Book.Limit::label)
            .text("window", "in words, worked out for this engine where that can be done", Book.Limit::window)
            .text("by", "what it was worked out by; empty for a stated limit", Book.Limit::by)
            .text("source", "where it comes from", Book.Limit::source)
            .truth("in_force", "whether it counts for this engine", Book.Limit::inForce)
            .text("state", "how the engine stands to it", l -> l.state().label());

    private static final JsonShape<Book.Target> TARGET = new JsonShape<Book.Target>()
            .text("part", "it is read on", Book.Target::part)
            .text("label", "what it is", Book.Target::label)
            .text("how", "it is read; empty where nothing is said", Book.Target::how)
            .list("limits", "one, or several where the trade disagrees", LIMIT, Book.Target::limits)
            .text("now", "as read, in the units that come first; empty where it is not", Book.Target::now)
            .text("now_both", "as read, in both units; empty where it is not", Book.Target::other)
            .truth("limit_of_wear", "rather than a figure to set", Book.Target::limit)
            .word(
                    "whose",
                    "whose limit it is: the owner's own, a maker's rating or worked out from one, the trade's",
                    List.of("own", "maker", "trade"),
                    t -> switch (t.whose()) {
                        case OWNERS -> "own";
                        case MAKERS -> "maker";
                        case TRADES, BEHIND_OWNERS -> "trade";
                    })
            .truth(
                    "behind_own",
                    "whether the owner has a limit on the same side, which stands before it",
                    t -> t.whose() == Book.Target.Whose.BEHIND_OWNERS);

    private static final JsonShape<Book.Torque> TORQUE = new JsonShape<Book.Torque>()
            .text("joint", "what is tightened", Book.Torque::joint)
            .text("torque", "or that it is unknown", Book.Torque::torque)
            .text("lubricant", "or that it is unknown", Book.Torque::lubricant)
            .text("mind", "what to mind", Book.Torque::how)
            .text("source", "where that comes from", Book.Torque::source);

    private static final JsonShape<FirstStart> STEP = new JsonShape<FirstStart>()
            .text("stage", "when", s -> s.stage().label())
            .text("step", "what to do", FirstStart::step)
            .text("source", "where it comes from", FirstStart::source);

    private static final JsonShape<Book.CostLine> COST_LINE = new JsonShape<Book.CostLine>()
            .text("piece", "what is bought or done", Book.CostLine::piece)
            .text("price", "or that none is said", Book.CostLine::price);

    private static final JsonShape<Book> BOOK = new JsonShape<Book>()
            .text("engine", "name of the build", Book::engine)
            .truth("invented", "whether the build says that it is made up", Book::invented)
            .word(
                    "units",
                    "which units come first",
                    List.of("metric", "inch"),
                    b -> b.units() == UnitSystem.METRIC_FIRST ? "metric" : "inch")
            .text("approval", "what the sheet says about running it; it never approves", Book::approval)
            .list("stops", "what must not be done, refused first", AnswerJson.STOP, Book::stops)
            .list("headline", "figures that say what engine it is", LINE, Book::headline)
            .list("recipe", "words and figures, part by part", LINE, Book::recipe)
            .list("again", "what to measure again before anything is bought", AGAIN, Book::again)
            .list("readings", "as they were written", READING, Book::readings)
            .list("parts", "whose figures stand on a sheet, and verdicts on parts", PART, Book::parts)
            .truth("searched", "whether a catalogue was searched", Book::searched)
            .list("ways", "parts that go together, best first", WAY, Book::ways)
            .list("refused", "why others do not", AnswerJson.REJECTION, Book::refused)
            .list("tickets", "for the machine shop", TICKET, Book::tickets)
            .list("targets", "gaps and clearances", TARGET, Book::targets)
            .list("torques", "joints", TORQUE, Book::torques)
            .list("steps", "first start and running in", STEP, Book::steps)
            .list("cautions", "what to mind where it can hurt someone", AnswerJson.FINDING, Book::cautions)
            .list("findings", "what else was noticed", AnswerJson.FINDING, Book::findings)
            .list("unknowns", "what cannot be said yet", AnswerJson.UNKNOWN, Book::unknowns)
            .list("defaults", "every default and assumption used", AnswerJson.DEFAULT, Book::defaults)
            .texts("signatures", "who signs for what", Book::signatures)
            .list("cost", "pieces of the best way", COST_LINE, b -> b.cost().lines())
            .text(
                    "total",
                    "of what is priced; empty where nothing is",
                    b -> b.cost().total())
            .text("budget", "empty where none was set", b -> b.cost().budget())
            .texts("unpriced", "usually forgotten, no price said", b -> b.cost().unpriced())
            .texts("left_out", "what was taken out before it was shared", Book::leftOut);

    private static final JsonDocument<Book> DOCUMENT = new JsonDocument<>(
            FORMAT,
            "Longthrow Book",
            "The sheet of one engine, as printed by 'book --json'. Figures are words with their units, as "
                    + "on paper; numbers in SI are in the answers.",
            BOOK);

    private BookJson() {}

    /** The document, ended by a line feed. */
    public static String of(Book book) {
        return DOCUMENT.of(book);
    }

    /** The JSON Schema (draft 2020-12) of every document that {@link #of} writes. */
    public static String schema() {
        return DOCUMENT.schema();
    }
}
