package longthrow.workshop.web;

import io.javalin.http.Context;
import io.javalin.http.Cookie;
import io.javalin.http.HttpStatus;
import io.javalin.http.SameSite;
import java.net.URLDecoder;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.CompletionException;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.locks.Lock;
import java.util.concurrent.locks.ReentrantLock;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.function.Supplier;
import java.util.stream.Stream;
import longthrow.buildfile.BuildFile;
import longthrow.core.answer.Answer;
import longthrow.core.answer.Stop;
import longthrow.core.build.Build;
import longthrow.core.engine.GapStops;
import longthrow.core.term.Term;
import longthrow.workshop.store.BuildEntry;
import longthrow.workshop.store.BuildId;
import longthrow.workshop.store.CatalogueEntry;
import longthrow.workshop.store.Revision;
import longthrow.workshop.store.Store;
import longthrow.workshop.store.StoreFault;

/** What every page works with: the store, the builds read from it, the templates and the token that changes carry. */
public final class Workbench {
    private static final String NOTICE = "notice";
    private static final String KEPT = "kept";
    private static final int NOTICE_SECONDS = 60;
    private static final int LONGEST_NOTICE = 600;

    /** Builds that share one of these only wait for each other now and then; our own choice. */
    private static final int JUDGES = 64;

    private static final int MOST_STATES = 128;

    /** What the answer to a question hangs on; no catalogues where it is asked of none. */
    private record Asked(Rail.Question question, String text, List<CatalogueEntry> catalogues) {}

    /** What the moving engine is asked, in the order in which one rests on the other. */
    static final List<Rail.Question> MOVING =
            List.of(Rail.Question.CLEAR, Rail.Question.LIFE, Rail.Question.SHAKE, Rail.Question.POWER);

    private volatile Optional<Consumer<Open>> shown = Optional.empty();
    private volatile Function<BuildId, Rail.State> runs = id -> Rail.State.UNKNOWN;
    private final Map<Asked, Rail.State> states = new ConcurrentHashMap<>();
    private final Map<String, List<Stop>> gapStops = new ConcurrentHashMap<>(); // by text
    private final Supplier<Store> store;
    private final Desk desk = new Desk();
    private final List<Lock> judges =
            Stream.generate(() -> (Lock) new ReentrantLock(true)).limit(JUDGES).toList();
    private final View view = new View();
    private final String token;

    /**
     * Over a store.
     * @param token secret of this run, which a change must carry
     */
    public Workbench(Supplier<Store> store, String token) {
        this.store = store;
        this.token = token;
    }

    public Store store() {
        return store.get();
    }

    public Desk desk() {
        return desk;
    }

    public View view() {
        return view;
    }

    public String token() {
        return token;
    }

    /**
     * A build that a page shows or changes. It is measured when the answer is asked for: keeping a reading needs none.
     * @param base address of its pages
     */
    public record Open(BuildEntry entry, Revision revision, Desk desk, String base) {
        /** What comes of its text. */
        public Desk.Work work() {
            return desk.work(revision.text());
        }

        /** Its answer to measure. */
        public Optional<Answer> measure() {
            return work().measure();
        }

        /** The build as it is read; a page that needs one is refused where its text cannot be read. */
        public Build build() {
            return desk.ifKnown(revision.text())
                    .map(Desk.Work::build)
                    .orElseGet(() -> BuildFile.read(revision.text()).build())
                    .orElseThrow(() -> new Refused(
                            HttpStatus.UNPROCESSABLE_CONTENT,
                            "The text of this build cannot be read, so nothing else can be done with it",
                            "Open its text and mend what is said there."));
        }
    }

    /** The build of a request's address, as it stands and measured, for a page that shows it. */
    public Open open(Context request) {
        Open open = begin(request);
        if (desk.ifKnown(open.revision().text()).isPresent()) {
            return open;
        }
        // One judge for a build: those who wait meanwhile all get the newest, and what is past already is not measured.
        Lock judge = judges.get(Math.floorMod(open.entry().id().hashCode(), JUDGES));
        judge.lock();
        try {
            Revision newest = store().latest(open.entry().id());
            desk.work(newest.text());
            return new Open(open.entry(), newest, desk, open.base());
        } finally {
            judge.unlock();
        }
    }

    /** The build of a request's address, to be changed; measured only where that is asked for. */
    public Open begin(Context request) {
        BuildEntry entry = entry(request);
        return new Open(entry, store().latest(entry.id()), desk, base(entry.id()));
    }

    /** The build of a request's address, without its text. */
    public BuildEntry entry(Context request) {
        return BuildId.parse(request.pathParam("id"))
                .flatMap(id ->
                        store().builds().stream().filter(b -> b.id().equals(id)).findFirst())
                .orElseThrow(() -> new Refused(
                        HttpStatus.NOT_FOUND, "There is no such build here", "Look in the list of builds."));
    }

    /** Address of a build's pages. */
    public static String base(BuildId id) {
        return "/b/" + id;
    }

    /** What stands around a page of a build. */
    public Frame frame(Context request, Open open, String title, Rail.Question here) {
        return frame(request, open, title, Optional.of(here));
    }

    /** What stands around a page of a build that answers none of the ten questions. */
    public Frame frame(Context request, Open open, String title) {
        return frame(request, open, title, Optional.empty());
    }

    private Frame frame(Context request, Open open, String title, Optional<Rail.Question> here) {
        return frame(open, title, here, notice(request));
    }

    /** Rail and list alone, as they are by now. */
    Frame around(Open open, Optional<Rail.Question> here) {
        return frame(open, "", here, "");
    }

    private Frame frame(Open open, String title, Optional<Rail.Question> here, String notice) {
        Map<Rail.Question, Rail.State> known = known(open);
        if (known.containsValue(Rail.State.COMING)) {
            shown.ifPresent(ahead -> ahead.accept(open));
        }
        return new Frame(
                title,
                open.entry().name(),
                open.base(),
                open.revision().number(),
                Rail.of(settled(open), known, open.base(), here),
                ways(open, known),
                token,
                notice,
                open.work().build().map(Build::invented).orElse(false),
                damage());
    }

    /** Has somebody told of every build that is shown and of which not all is worked out; the rail says from then on that it is being worked out. */
    void whenShown(Consumer<Open> told) {
        shown = Optional.of(told);
    }

    /** Has the rail ask how far the runs of a build are answered; unknown until then. */
    void whenAskedOfRuns(Function<BuildId, Rail.State> asked) {
        runs = asked;
    }

    /** What is asked of the moving engine and not worked out for a text. */
    Set<Rail.Question> unanswered(String text, List<CatalogueEntry> active) {
        Set<Rail.Question> open = EnumSet.noneOf(Rail.Question.class);
        for (Rail.Question question : MOVING) {
            if (stateOf(question, text, active).isEmpty()) {
                open.add(question);
            }
        }
        return open;
    }

    /** Of Clear, where it has an answer, only with its stops. */
    private Optional<Rail.State> stateOf(Rail.Question question, String text, List<CatalogueEntry> active) {
        return Optional.ofNullable(states.get(asked(question, text, active)))
                .filter(state ->
                        question != Rail.Question.CLEAR || state == Rail.State.UNKNOWN || gapStops.containsKey(text));
    }

    /** Clear is asked of no catalogue. */
    private static Asked asked(Rail.Question question, String text, List<CatalogueEntry> active) {
        return new Asked(question, text, question == Rail.Question.CLEAR ? List.of() : active);
    }

    /** As {@link #remember}, where nothing is remembered. */
    void rememberUnlessKnown(Rail.Question question, String text, List<CatalogueEntry> active, Rail.State state) {
        states.putIfAbsent(asked(question, text, active), state);
    }

    /** The answer to measure without the stop that asks for a mock-up, once Clear was asked and needs none. */
    private Optional<Answer> settled(Open open) {
        Optional<List<Stop>> gaps =
                Optional.ofNullable(gapStops.get(open.revision().text()));
        return open.measure()
                .map(m -> gaps.map(known -> GapStops.settled(m, known)).orElse(m));
    }

    /** What stands around a page of a build whose newest revision cannot be read as it was saved. */
    public Frame damagedFrame(Context request, BuildEntry entry, String title) {
        return new Frame(
                title,
                entry.name(),
                base(entry.id()),
                entry.latest(),
                List.of(),
                List.of(),
                token,
                notice(request),
                false,
                damage());
    }

    /** What is broken in the data, in words for the top of every page; empty for nothing. */
    String damage() {
        try {
            return store().health().summary();
        } catch (StoreFault | CompletionException notOpen) {
            return ""; // why it is not open is said elsewhere
        }
    }

    /** How far a question is answered, to be shown on the rail for as long as build and catalogues are the same. */
    void remember(Rail.Question question, String text, List<CatalogueEntry> searched, Rail.State state) {
        if (states.size() >= MOST_STATES) {
            states.clear();
        }
        states.put(new Asked(question, text, searched), state);
    }

    /** What its gaps stop a build from, to be said on its every page for as long as its text is the same. */
    void rememberGaps(String text, List<Stop> stops) {
        if (gapStops.size() >= MOST_STATES) {
            gapStops.clear();
        }
        gapStops.put(text, List.copyOf(stops));
    }

    /** What stands in the way, with what its gaps stop it from and what its limits come to, once those were asked. */
    private List<Frame.Way> ways(Open open, Map<Rail.Question, Rail.State> known) {
        Optional<List<Stop>> gaps =
                Optional.ofNullable(gapStops.get(open.revision().text()));
        boolean gapsAreComing = known.get(Rail.Question.CLEAR) == Rail.State.COMING;
        return open.measure()
                .map(m -> Ways.withLimits(
                        Ways.of(m, gaps, gapsAreComing, open.base()), known.get(Rail.Question.LIFE), open.base()))
                .orElse(List.of());
    }

    /**
     * Whether the build was changed while a page of it was worked out, so that it would be of an older text: then the same page is sent for once more. Pieces
     * that a script fetches follow that as pages do.
     */
    public boolean sentOn(Context request, Open open) {
        boolean isOvertaken =
                store().latest(open.entry().id()).number() != open.revision().number();
        if (isOvertaken) {
            String query = request.queryString();
            request.redirect(request.path() + (query == null ? "" : "?" + query), HttpStatus.SEE_OTHER);
        }
        return isOvertaken;
    }

    private Map<Rail.Question, Rail.State> known(Open open) {
        Map<Rail.Question, Rail.State> known = new EnumMap<>(Rail.Question.class);
        List<CatalogueEntry> active =
                store().catalogues().stream().filter(CatalogueEntry::active).toList();
        known.put(Rail.Question.FIT, fitState(open, active));
        Rail.State ran = runs.apply(open.entry().id());
        known.put(Rail.Question.DYNO, ran == Rail.State.COMING && shown.isEmpty() ? Rail.State.NEAR : ran);
        String text = open.revision().text();
        boolean isWorkedAhead = shown.isPresent() && open.work().build().isPresent();
        for (Rail.Question question : MOVING) {
            stateOf(question, text, active)
                    .or(() -> isWorkedAhead ? Optional.of(Rail.State.COMING) : Optional.empty())
                    .ifPresent(state -> known.put(question, state));
        }
        return known;
    }

    /** What the last search found; before it, what the stack itself says: whether it can be laid out, and whether it is in dispute. */
    private Rail.State fitState(Open open, List<CatalogueEntry> active) {
        Rail.State found =
                states.get(new Asked(Rail.Question.FIT, open.revision().text(), active));
        if (found != null) {
            return found;
        }
        return open.measure()
                .flatMap(m -> m.value(Term.SQUISH))
                .map(squish -> squish.contradicted() ? Rail.State.UNKNOWN : Rail.State.NEAR)
                .orElse(Rail.State.UNKNOWN);
    }

    /** What stands around a page of no build. */
    public Frame frame(Context request, String title) {
        return Frame.plain(title, token, notice(request), damage());
    }

    /** What the change before this page did; said once. */
    private static String notice(Context request) {
        return once(request, NOTICE);
    }

    /** Path of the quantity that was kept just before this page is shown; empty for none, and when it is asked again. */
    public static String justKept(Context request) {
        return once(request, KEPT);
    }

    /** What a change left for the next page. */
    private static String once(Context request, String name) {
        String said = request.cookie(name);
        if (said == null || said.isEmpty()) {
            return "";
        }
        request.removeCookie(name);
        try {
            return URLDecoder.decode(said, StandardCharsets.UTF_8);
        } catch (IllegalArgumentException notOurs) {
            return "";
        }
    }

    /** Goes on to another page, which says what was done. */
    public static void goOn(Context request, String address, String said) {
        sayLater(request, said);
        request.redirect(address, HttpStatus.SEE_OTHER);
    }

    /** Has the next page say something, where this answer is no page. */
    public static void sayLater(Context request, String said) {
        String brief = said.length() > LONGEST_NOTICE ? said.substring(0, LONGEST_NOTICE) + "…" : said;
        leave(request, NOTICE, brief);
    }

    /** Has the next page offer the way on from a quantity. */
    public static void kept(Context request, String path) {
        leave(request, KEPT, path);
    }

    private static void leave(Context request, String name, String said) {
        request.cookie(new Cookie(
                name,
                URLEncoder.encode(said, StandardCharsets.UTF_8),
                "/",
                NOTICE_SECONDS,
                false,
                true,
                null,
                SameSite.STRICT));
    }

    /** How large a file may be that comes in, in words. */
    public static String largestUpload() {
        return (Guards.LARGEST_UPLOAD >> 30) + " GiB";
    }

    /** A field of a form, without space around it; empty when it is not there. */
    public static String field(Context request, String name) {
        return Optional.ofNullable(request.formParam(name)).orElse("").strip();
    }

    /** The key under which a change is kept once, however often it is sent. */
    public static UUID key(Context request) {
        try {
            return UUID.fromString(field(request, "key"));
        } catch (IllegalArgumentException e) {
            throw notWhole();
        }
    }

    /** The revision that a change was made on. */
    public static int basedOn(Context request) {
        return number(field(request, "based"));
    }

    /** A count out of a form or an address. */
    public static int number(String digits) {
        try {
            return Integer.parseInt(digits);
        } catch (NumberFormatException e) {
            throw notWhole();
        }
    }

    private static Refused notWhole() {
        return new Refused(
                HttpStatus.BAD_REQUEST, "The form is not whole; nothing was changed", "Load the page again.");
    }
}
