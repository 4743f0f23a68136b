package longthrow.workshop.json;

import java.util.List;
import longthrow.core.book.Book;
import longthrow.core.book.LimitChapter;
import longthrow.core.book.ProvedChapter;
import longthrow.core.book.ShakeChapter;
import longthrow.core.book.TouchChapter;
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

    private static final JsonShape<Book.Figure> FIGURE = new JsonShape<Book.Figure>()
            .text("label", "what it is", Book.Figure::label)
            .text("words", "value and doubt", Book.Figure::words);

    private static final JsonShape<TouchChapter.Side> SIDE = new JsonShape<TouchChapter.Side>()
            .text("gap", "least gap with its 95 % interval, or how deep they overlap", TouchChapter.Side::gap)
            .text("worst", "with every figure behind it at its worst", TouchChapter.Side::worst)
            .text("contact", "probability that they touch", TouchChapter.Side::contact)
            .text(
                    "angle",
                    "of the crank from firing top dead centre; empty where none decides",
                    TouchChapter.Side::angle);

    private static final JsonShape<TouchChapter.Told> TOLD = new JsonShape<TouchChapter.Told>()
            .text("key", "stable", TouchChapter.Told::key)
            .text("pair", "the two parts", TouchChapter.Told::pair)
            .text("state", "how they stand to each other", TouchChapter.Told::state)
            .truth("holds_back", "whether a run is held back by them", TouchChapter.Told::isHeld)
            .list("cold", "at 20 °C, one", SIDE, t -> List.of(t.cold()))
            .list(
                    "running",
                    "warm, at the wanted speed, one; empty when it cannot be said",
                    SIDE,
                    t -> t.running().stream().toList())
            .text("not_warm", "what would have to be read for that", TouchChapter.Told::notWarm)
            .texts("wanted", "by the trade, each with whether it is kept", TouchChapter.Told::wanted)
            .text("mend", "what to take off and where, or change instead", TouchChapter.Told::mend)
            .text("leaves", "left of the part behind the cut; empty when it is not known", TouchChapter.Told::leaves)
            .text("how", "it is read when mocked up", TouchChapter.Told::how);

    private static final JsonShape<TouchChapter.Open> OPEN = new JsonShape<TouchChapter.Open>()
            .text("pair", "the two parts", TouchChapter.Open::pair)
            .text("why", "nothing can be said", TouchChapter.Open::why)
            .list("missing", "what would have to be read", AnswerJson.MISSING, TouchChapter.Open::missing)
            .text("how", "it is read when mocked up", TouchChapter.Open::how);

    private static final JsonShape<TouchChapter> TOUCHING = new JsonShape<TouchChapter>()
            .text("summary", "how many pairs stand how", TouchChapter::summary)
            .text("least", "the least gap that is known, and its pair", TouchChapter::least)
            .list("unknown", "until mocked up", OPEN, TouchChapter::unknown)
            .list("told", "gaps, the gravest first", TOLD, TouchChapter::told);

    private static final JsonShape<LimitChapter.Line> RUNG = new JsonShape<LimitChapter.Line>()
            .text("key", "stable", LimitChapter.Line::key)
            .text("label", "what gives up", LimitChapter.Line::label)
            .text("kind", "in what way", LimitChapter.Line::kind)
            .truth("guide", "whether it is told and decides nothing", LimitChapter.Line::isGuide)
            .text("state", "how it stands at the speed asked for", LimitChapter.Line::state)
            .truth("in_the_way", "whether it keeps that speed from being approved", LimitChapter.Line::isInTheWay)
            .text(
                    "speed",
                    "at which it gives up, with its 95 % band; empty when not known, or when no speed decides",
                    LimitChapter.Line::speed)
            .text("why", "how it stands, in words", LimitChapter.Line::why)
            .text("source", "material, grade, rule or formula with where it comes from", LimitChapter.Line::source)
            .text("doubt", "whose it mostly is", LimitChapter.Line::doubt)
            .texts("hangs_on", "places in the build file it was asked of", LimitChapter.Line::hangsOn)
            .list("missing", "what would have to be read or asked", AnswerJson.MISSING, LimitChapter.Line::missing)
            .text("unlock", "what would mend it; empty when it holds", LimitChapter.Line::unlock);

    private static final JsonShape<LimitChapter> LIMITS = new JsonShape<LimitChapter>()
            .text(
                    "verdict",
                    "refused, not approved or approved",
                    l -> l.verdict().label())
            .text("said", "in one sentence", LimitChapter::said)
            .texts("reasons", "why, gravest first", LimitChapter::reasons)
            .list("unlocks", "what would lift it, in order", AnswerJson.UNLOCK, LimitChapter::unlocks)
            .text("instead", "what can be had instead; empty when approved", LimitChapter::instead)
            .list("limits", "in the way first, then the weakest", RUNG, LimitChapter::limits)
            .list("start", "turning it over by hand", FIGURE, l -> l.start().figures())
            .list(
                    "start_missing",
                    "what would have to be read for the rest",
                    AnswerJson.MISSING,
                    l -> l.start().missing())
            .texts("start_said", "what it comes to", l -> l.start().sentences());

    private static final JsonShape<ShakeChapter.Trade> TRADE = new JsonShape<ShakeChapter.Trade>()
            .text("factor", "share of the reciprocating mass that is balanced", ShakeChapter.Trade::factor)
            .text("along", "force left along the cylinder, once a turn", ShakeChapter.Trade::along)
            .text("across", "force across it", ShakeChapter.Trade::across);

    private static final JsonShape<ShakeChapter.Holes> HOLES = new JsonShape<ShakeChapter.Holes>()
            .text("aim", "what they are drilled for", ShakeChapter.Holes::aim)
            .text("drill", "how many, and the drill", ShakeChapter.Holes::drill)
            .text("where", "their centres stand", ShakeChapter.Holes::where)
            .text("depth", "to the full diameter", ShakeChapter.Holes::depth)
            .text("wall", "left beyond the tip", ShakeChapter.Holes::wall)
            .text("result", "balance factor after it", ShakeChapter.Holes::result);

    private static final JsonShape<ShakeChapter> SHAKING = new JsonShape<ShakeChapter>()
            .text("at", "speed of the crank it is told at; empty when none is known", ShakeChapter::at)
            .texts("sentences", "what it comes to", ShakeChapter::sentences)
            .list("figures", "masses, factor, forces, movement", FIGURE, ShakeChapter::figures)
            .list("trade", "what a counterweight makes of the once-a-turn force", TRADE, ShakeChapter::trade)
            .list("holes", "any one of which would lighten the counterweight", HOLES, ShakeChapter::holes)
            .list("pistons", "on offer, with the factor each would make", FIGURE, ShakeChapter::pistons)
            .list("missing", "what would have to be read for the rest", AnswerJson.MISSING, ShakeChapter::missing)
            .text("line", "balance factor and what is drilled, as on the wall", ShakeChapter::line);

    private static final JsonShape<ProvedChapter.Change> CHANGE = new JsonShape<ProvedChapter.Change>()
            .text("setup", "the change", ProvedChapter.Change::setup)
            .text("baseline", "against what", ProvedChapter.Change::baseline)
            .text("verdict", "in a few words", ProvedChapter.Change::verdict)
            .truth("shown", "whether a gain or a loss is real", ProvedChapter.Change::isShown)
            .text("of", "what the gain is of: area under the curve, or peak", ProvedChapter.Change::of)
            .text("gain", "95 %, whatever shape the drift had: this one decides", ProvedChapter.Change::gain)
            .text("straight", "95 %, if drift was a straight line", ProvedChapter.Change::straight)
            .text("said", "the verdict as a sentence", ProvedChapter.Change::said)
            .texts("grounds", "what stands behind it, and what cannot be shown", ProvedChapter.Change::grounds);

    private static final JsonShape<ProvedChapter.Session> SESSION = new JsonShape<ProvedChapter.Session>()
            .text("name", "of the session", ProvedChapter.Session::name)
            .text("setup", "that was on", ProvedChapter.Session::setup)
            .text("runs", "how many of them count", ProvedChapter.Session::runs)
            .text("remark", "when, who, on what; empty where nothing is said", ProvedChapter.Session::remark)
            .text("air", "what the weather made of its figures; empty where not told", ProvedChapter.Session::air);

    private static final JsonShape<ProvedChapter.Highest> HIGHEST = new JsonShape<ProvedChapter.Highest>()
            .text("setup", "which", ProvedChapter.Highest::setup)
            .list("figures", "highest torque and power of its runs that count", FIGURE, ProvedChapter.Highest::figures);

    private static final JsonShape<ProvedChapter.Aside> ASIDE = new JsonShape<ProvedChapter.Aside>()
            .text("why", "they do not count", ProvedChapter.Aside::why)
            .text("runs", "by session and name", ProvedChapter.Aside::runs);

    private static final JsonShape<ProvedChapter> PROVED = new JsonShape<ProvedChapter>()
            .text("title", "what was tried", ProvedChapter::title)
            .truth("invented", "whether the sheet says that it is made up", ProvedChapter::invented)
            .text("standard", "that figures are corrected to, or that they are as read", ProvedChapter::standard)
            .text("place", "where torque and power are told", ProvedChapter::place)
            .text("bench", "by what they were read", ProvedChapter::bench)
            .text("standing", "what the sheet is to this engine", ProvedChapter::standing)
            .texts("said", "what it comes to, as far as no change says it", ProvedChapter::said)
            .list("changes", "what each did", CHANGE, ProvedChapter::changes)
            .list("sessions", "in order of time", SESSION, ProvedChapter::sessions)
            .text("counting", "how many runs count", ProvedChapter::counting)
            .list("highest", "of each setup", HIGHEST, ProvedChapter::highest)
            .list("aside", "runs that do not count", ASIDE, ProvedChapter::aside)
            .texts("cautions", "before an engine is run on such a bench", ProvedChapter::cautions);

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
            .texts("damage", "that was seen, as far as no stop names it", Book::damage)
            .list(
                    "touching",
                    "what touches, one",
                    TOUCHING,
                    b -> b.touching().stream().toList())
            .list(
                    "limits",
                    "what lets go first, one",
                    LIMITS,
                    b -> b.limits().stream().toList())
            .list(
                    "shaking",
                    "where the shake goes, one",
                    SHAKING,
                    b -> b.shaking().stream().toList())
            .list(
                    "proved",
                    "what was proved on the dynamometer, by each sheet of runs",
                    PROVED,
                    b -> b.proved().orElse(List.of()))
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
