package longthrow.workshop.web;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import longthrow.core.answer.Answer;
import longthrow.core.answer.Finding;
import longthrow.core.answer.NextReading;
import longthrow.core.answer.Rung;
import longthrow.core.answer.Stop;
import longthrow.core.answer.Unknown;
import longthrow.core.book.Book;
import longthrow.core.engine.GapStops;
import longthrow.core.engine.Stops;
import longthrow.core.term.Choice;
import longthrow.core.term.Term;
import longthrow.workshop.print.PageWords;
import org.jspecify.annotations.Nullable;

/** What stands in the way of an engine: stops, doubts, unknowns, each with the field that mends it. */
public final class Ways {
    /** A term as stops and findings name it: its path in brackets, or alone. */
    private static final Pattern PATH = Pattern.compile("\\b([a-z_]+\\.[a-z_0-9]+)\\b");

    /** A speed in what must not be done. */
    private static final Pattern SPEED = Pattern.compile("\\d rpm\\b");

    /** Ratings a speed may exceed, the one to look at first in front; their stops name them by label alone. */
    private static final List<Term> RATINGS =
            List.of(Term.FLYWHEEL_RATED_SPEED, Term.ROD_RATED_SPEED, Term.GOVERNED_SPEED);

    private static final String BY_HAND =
            " Clear says which gaps are known and takes what is read of the others. The mock-up is your own to do, and to sign for on paper, at the end of the Book, under “"
                    + Book.MOCKED_UP_BY + "”.";

    private static final String GAPS_COMING =
            "Whether anything touches is being worked out for what is written down now. Until it is said here, do not turn the engine under power";

    /** Section of the build file that has no card of its own. */
    private static final String LIFT_TABLES = "lift_tables";

    private static final String FLOW_TABLES = "flow_tables";

    /** Section whose entries have a page of their own. */
    private static final String OUTLINES = "outlines";
    /** And one whose entries are made on the page Clear. */
    private static final String MOCKED_UP = "mocked_up";

    /** And one that is told on the page Life. */
    private static final String HOURS_AT = "hours_at";

    private final String base;
    private final List<Frame.Way> ways = new ArrayList<>();

    private Ways(String base) {
        this.base = base;
    }

    /** How many stops there are, in the words of rail and Book: only of what there is. */
    public static String stops(Answer answer) {
        long refused = answer.stops().stream().filter(Stop::refused).count();
        long notApproved = answer.stops().size() - refused;
        return answer.stops().isEmpty()
                ? "no stop known of"
                : refused == 0
                        ? "NOT APPROVED: " + notApproved
                        : "STOP: " + refused + " refused"
                                + (notApproved == 0 ? "" : ", " + notApproved + " not approved");
    }

    /**
     * What is refused first, then what is not approved, suspects, unknowns.
     * @param answer to measure
     * @param gaps   what its gaps stop it from; empty where that was not asked yet
     * @param coming whether that is being worked out
     */
    public static List<Frame.Way> of(Answer answer, Optional<List<Stop>> gaps, boolean coming, String base) {
        Ways ways = new Ways(base);
        List<Stop> ofGaps = gaps.orElse(List.of());
        List<Stop> others = answer.stops().stream()
                .filter(s -> gaps.isEmpty() ? !(coming && GapStops.isOfTheUnknown(s)) : !GapStops.isOfGaps(s))
                .toList();
        ofGaps.stream().filter(Stop::refused).forEach(ways::gap);
        others.stream().filter(Stop::refused).forEach(ways::stop);
        ofGaps.stream().filter(s -> !s.refused()).forEach(ways::gap);
        if (coming && gaps.isEmpty()) {
            ways.ways.add(new Frame.Way(Rail.State.COMING.label(), GAPS_COMING, "", base + "/clear", List.of(), false));
        }
        others.stream().filter(s -> !s.refused()).forEach(ways::stop);
        answer.findings().stream()
                .filter(f -> f.kind() == Finding.Kind.SUSPECT)
                .forEach(f ->
                        ways.add("doubt", PageWords.place(f.where()) + ": " + f.message(), f.mend(), f.where(), false));
        answer.unknowns().forEach(ways::unknown);
        if (answer.values().isEmpty()) {
            ways.begin(answer.next());
        }
        return ways.ways;
    }

    /**
     * With what the ladder of limits comes to, where nothing that stands in the way says so already.
     * @param life how far the limits are known; null where they were not asked
     */
    static List<Frame.Way> withLimits(List<Frame.Way> ways, Rail.@Nullable State life, String base) {
        if (life == null || (life != Rail.State.REFUSED && life != Rail.State.NOT_APPROVED)) {
            return ways;
        }
        boolean isRefused = life == Rail.State.REFUSED;
        boolean isSaid = ways.stream()
                .anyMatch(way -> way.kind().equals(Rail.State.REFUSED.label())
                        || (!isRefused && way.kind().equals(Rail.State.NOT_APPROVED.label())));
        if (isSaid) {
            return ways;
        }
        List<Frame.Way> all = new ArrayList<>();
        all.add(new Frame.Way(
                life.label(),
                "the speed that is wanted is " + life.label() + " by the limits of the parts",
                "Life says which limits are in the way, and what would lift each.",
                base + "/life",
                List.of(),
                isRefused));
        all.addAll(ways);
        return all;
    }

    private void gap(Stop stop) {
        boolean mockUp = GapStops.isOfTheUnknown(stop);
        ways.add(new Frame.Way(
                stop.refused() ? "refused" : "not approved",
                PageWords.said(stop.what() + " – " + stop.why()),
                PageWords.said(stop.wayRound()) + (mockUp ? "." + BY_HAND : ""),
                base + "/clear",
                mockUp ? List.of(signatures()) : List.of(),
                stop.refused()));
    }

    private Frame.Place signatures() {
        return new Frame.Place("the Book's signatures, on paper", base + "/book?view=sheet#signatures");
    }

    private void stop(Stop stop) {
        boolean mockUp = GapStops.isOfTheUnknown(stop);
        String named = address(stop.why());
        List<Frame.Place> others = new ArrayList<>();
        String first = named;
        if (SPEED.matcher(stop.what()).find()) {
            first = exceeded(stop.why()).map(this::card).orElse(named);
            if (!first.equals(named) && !named.isEmpty()) {
                others.add(new Frame.Place("what is not known", named));
            }
            String wanted = card(Term.WANTED_SPEED);
            if (!first.equals(wanted)) {
                others.add(new Frame.Place("or change the " + Term.WANTED_SPEED.label(), wanted));
            }
        }
        if (first.isEmpty() && !mockUp) {
            first = address(stop.wayRound()); // the likeliest reading stands first in what to read again
        }
        if (mockUp) {
            others.add(signatures());
        }
        ways.add(new Frame.Way(
                stop.refused() ? "refused" : "not approved",
                PageWords.said(stop.what() + " – " + stop.why()),
                PageWords.said(stop.wayRound()) + (mockUp ? "." + BY_HAND : ""),
                first,
                others,
                stop.refused()));
    }

    /** The rating that a speed exceeds; where the stop names no card at all, the one it is held against. */
    private static Optional<Term> exceeded(String why) {
        int at = why.indexOf(Stops.EXCEEDED);
        if (at < 0) {
            return PATH.matcher(why).find() ? Optional.empty() : named(why);
        }
        int end = why.indexOf(';', at);
        return named(why.substring(at, end < 0 ? why.length() : end)).or(() -> Optional.of(Term.GOVERNED_SPEED));
    }

    private static Optional<Term> named(String why) {
        return RATINGS.stream().filter(t -> why.contains(t.label())).findFirst();
    }

    /** Of an engine of which nothing is read: with what to begin. */
    private void begin(List<NextReading> next) {
        if (next.isEmpty()) {
            return;
        }
        List<Frame.Place> then = next.stream()
                .skip(1)
                .map(n -> new Frame.Place("then " + n.read().label(), card(n.read())))
                .toList();
        Term first = next.get(0).read();
        ways.add(new Frame.Way(
                "begin", "Nothing is read yet. Begin with: " + first.label(), "", card(first), then, false));
    }

    private void unknown(Unknown unknown) {
        String first = unknown.missing().isEmpty() || unknown.term().isRead()
                ? unknown.term().path()
                : unknown.missing().get(0).path();
        add("unknown", unknown.term().label() + " – " + unknown.why(), "", first, false);
    }

    private void add(String kind, String text, String mend, String names, boolean refused) {
        ways.add(new Frame.Way(kind, PageWords.said(text), PageWords.said(mend), address(names), List.of(), refused));
    }

    private String address(String names) {
        return card(names, base);
    }

    /**
     * Address of the card of the first quantity that a text names by its path; empty when it names none that is read.
     * @param base of the build's pages
     */
    public static String card(String names, String base) {
        return PageWords.read(names)
                .map(term -> base + "/measure/" + term.path())
                .orElse("");
    }

    /**
     * An input that an answer hangs on, with the way to the field that holds it: its card, its row or word on Measure, or the text for tables.
     * @param where place in the build file
     * @param base  of the build's pages
     */
    public static Frame.Place input(String where, String base) {
        return new Frame.Place(PageWords.place(where), field(where, base));
    }

    /** As {@link #input}, of something that is missing: what is only worked out has no row then, and its part is shown. */
    static Frame.Place input(Rung.Missing missing, String base) {
        return new Frame.Place(
                missing.what(),
                Term.at(missing.where())
                        .filter(term -> !term.isRead())
                        .map(term -> base + "/measure#" + term.part().key())
                        .orElseGet(() -> field(missing.where(), base)));
    }

    private static String field(String where, String base) {
        String card = card(where, base);
        if (!card.isEmpty()) {
            return card;
        }
        if (where.startsWith(OUTLINES)) {
            return base + "/outlines";
        }
        if (where.startsWith(LIFT_TABLES) || where.startsWith(FLOW_TABLES)) {
            return base + "/text";
        }
        if (where.startsWith(MOCKED_UP)) {
            return base + "/clear";
        }
        if (where.startsWith(HOURS_AT)) {
            return base + "/life#duty";
        }
        Matcher place = PATH.matcher(where);
        return place.find()
                        && (Term.at(place.group(1)).isPresent()
                                || Choice.at(place.group(1)).isPresent())
                ? base + "/measure#" + place.group(1)
                : "";
    }

    private String card(Term term) {
        return base + "/measure/" + term.path();
    }
}
