package longthrow.workshop.web;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.ScheduledFuture;
import java.util.concurrent.ScheduledThreadPoolExecutor;
import java.util.concurrent.ThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import java.util.function.Predicate;
import java.util.stream.Stream;
import longthrow.core.answer.Answer;
import longthrow.workshop.store.BuildId;
import longthrow.workshop.store.CatalogueEntry;
import longthrow.workshop.store.StoreFault;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * What touches, what lets go first, where it shakes, whether torque can be told and what runs with logs come to, worked out beside the requests for a build that is shown, so that rail and list know it though nobody opened
 * those pages. One question at a time, the build shown last first, of its newest revision alone, and only while nobody asks for anything and a processor is free.
 */
public final class Ahead implements Routes, AutoCloseable {
    /** Builds that wait; more are shown at once by nobody, and the oldest goes; our own choice. */
    private static final int MOST_WAITING = 8;

    private static final Logger LOG = LoggerFactory.getLogger(Ahead.class);

    private final Workbench bench;
    private final Catalogues catalogues;
    private final Clearances clearances;
    private final Loaded loaded;
    private final Torques torques;
    private final Dynos dynos;
    private final Map<BuildId, Integer> waiting = new LinkedHashMap<>(); // revision that was shown
    private boolean isAtWork;
    private final ScheduledExecutorService worker =
            new ScheduledThreadPoolExecutor(1, Ahead::beside, new ThreadPoolExecutor.DiscardPolicy());

    /** Nothing waits yet. */
    public Ahead(
            Workbench bench,
            Catalogues catalogues,
            Clearances clearances,
            Loaded loaded,
            Torques torques,
            Dynos dynos) {
        this.bench = bench;
        this.catalogues = catalogues;
        this.clearances = clearances;
        this.loaded = loaded;
        this.torques = torques;
        this.dynos = dynos;
    }

    private static Thread beside(Runnable task) {
        Thread thread = new Thread(task, "gaps and limits ahead");
        thread.setDaemon(true);
        return thread;
    }

    /** From now on what is shown is worked ahead. */
    public void begin() {
        bench.whenShown(this::shown);
    }

    @Override
    public void add(RoutesConfig routes) {
        routes.get("/b/{id}" + PATH, this::rail);
    }

    /** Last part of the address under which a page asks for rail and list as they are by now: nobody's visit. */
    static final String PATH = "/rail";

    /** Nothing is sent where the page that asks is of another revision: its own text is past. */
    private void rail(Context request) {
        Workbench.Open open = bench.begin(request);
        boolean isOfThis = String.valueOf(open.revision().number()).equals(request.queryParam("revision"));
        if (!isOfThis || bench.desk().ifKnown(open.revision().text()).isEmpty()) {
            request.status(HttpStatus.NO_CONTENT);
            return;
        }
        String asked = Optional.ofNullable(request.queryParam("here")).orElse("");
        Optional<Rail.Question> here = Stream.of(Rail.Question.values())
                .filter(q -> !asked.isEmpty() && q.page().equals(asked))
                .findFirst();
        bench.view().show(request, "railnews", Map.of("frame", bench.around(open, here)));
    }

    private void shown(Workbench.Open open) {
        synchronized (waiting) {
            waiting.remove(open.entry().id());
            waiting.put(open.entry().id(), open.revision().number());
            if (waiting.size() > MOST_WAITING) {
                waiting.remove(waiting.keySet().iterator().next());
            }
            if (!isAtWork) {
                isAtWork = true;
                later(Desk.REST_MILLISECONDS);
            }
        }
    }

    private void later(long milliseconds) {
        ScheduledFuture<?> unused = worker.schedule(this::step, milliseconds, TimeUnit.MILLISECONDS);
    }

    /** One question, or none while somebody asks for something. */
    private void step() {
        long rest = bench.desk().restsIn();
        if (rest > 0) {
            later(rest);
            return;
        }
        Optional<BuildId> next = next();
        if (next.isEmpty()) {
            return;
        }
        boolean isMore = false;
        try {
            isMore = workedOne(next.get());
        } catch (StoreFault fault) {
            LOG.debug("the build that was to be worked ahead cannot be read; its page says so", fault);
        } finally {
            if (!isMore) {
                synchronized (waiting) {
                    waiting.remove(next.get());
                }
            }
            later(0);
        }
    }

    /** The one shown last; none, and the work ends, where none waits. */
    private Optional<BuildId> next() {
        synchronized (waiting) {
            List<BuildId> all = new ArrayList<>(waiting.keySet());
            isAtWork = !all.isEmpty();
            return all.isEmpty() ? Optional.empty() : Optional.of(all.get(all.size() - 1));
        }
    }

    /** Works out the first question that is not answered; false where all are, or the text cannot be read. */
    private boolean workedOne(BuildId id) {
        String text = bench.store().latest(id).text();
        if (bench.desk().read(text).build().isEmpty()) {
            return dynos.workAhead(id); // runs are not asked of the build
        }
        List<CatalogueEntry> active = catalogues.active();
        Set<Rail.Question> open = bench.unanswered(text, active);
        Predicate<Rail.Question> isOpen = open::contains;
        Optional<Rail.Question> first = Workbench.MOVING.stream().filter(isOpen).findFirst();
        first.ifPresent(question -> ask(question, text, active));
        return first.isPresent() || dynos.workAhead(id);
    }

    private void ask(Rail.Question question, String text, List<CatalogueEntry> active) {
        Rail.State state;
        try {
            state = worked(question, text, active);
        } catch (RuntimeException fault) { // its page says so when it is asked; the rail waits for it no longer
            LOG.warn("{} could not be worked ahead: {}", question.label(), fault.toString());
            state = Rail.State.UNKNOWN;
        }
        bench.rememberUnlessKnown(question, text, active, state);
    }

    /** The answers may be remembered from before though the rail has forgotten them. */
    private Rail.State worked(Rail.Question question, String text, List<CatalogueEntry> active) {
        return switch (question) {
            case CLEAR -> {
                Answer clear = clearances.of(text).answer();
                bench.rememberGaps(text, Clearances.stops(clear));
                yield Rail.cleared(clear);
            }
            case LIFE -> Rail.approved(loaded.life(text, active));
            case SHAKE -> Rail.shaken(loaded.shake(text, active));
            case POWER -> torques.glance(text, active);
            case MEASURE, FIT, DYNO, DRIVE, SPEND, BOOK ->
                throw new IllegalArgumentException(question + " is not worked ahead");
        };
    }

    @Override
    public void close() {
        worker.shutdownNow();
        try { // what is under way still reads the store, which is shut after this
            if (!worker.awaitTermination(2, TimeUnit.SECONDS)) {
                LOG.debug("an answer that was being worked ahead is left");
            }
        } catch (InterruptedException told) {
            Thread.currentThread().interrupt();
        }
    }
}
