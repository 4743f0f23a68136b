package longthrow.workshop;

import java.nio.file.Path;
import java.security.SecureRandom;
import java.time.Duration;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import longthrow.workshop.store.Store;
import longthrow.workshop.store.StoreFault;
import longthrow.workshop.web.Ahead;
import longthrow.workshop.web.Catalogues;
import longthrow.workshop.web.Clearances;
import longthrow.workshop.web.Dynos;
import longthrow.workshop.web.Loaded;
import longthrow.workshop.web.Searches;
import longthrow.workshop.web.Server;
import longthrow.workshop.web.Torques;
import longthrow.workshop.web.Workbench;
import longthrow.workshop.web.book.BookRoutes;
import longthrow.workshop.web.builds.BuildsRoutes;
import longthrow.workshop.web.clear.ClearRoutes;
import longthrow.workshop.web.dyno.DynoRoutes;
import longthrow.workshop.web.fit.FitRoutes;
import longthrow.workshop.web.life.LifeRoutes;
import longthrow.workshop.web.measure.MeasureRoutes;
import longthrow.workshop.web.outline.OutlineRoutes;
import longthrow.workshop.web.parts.PartsRoutes;
import longthrow.workshop.web.power.PowerRoutes;
import longthrow.workshop.web.shake.ShakeRoutes;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** The workshop being served: the store opened and the pages over it. Here alone are all pages known. */
final class Serving implements AutoCloseable {
    private static final int TOKEN_BYTES = 32;

    /** The first page comes before it. */
    private static final long WARM_UP_AFTER_MILLISECONDS = 1_000;

    /** How often it is looked whether a backup is due; the store itself says so once an hour at most. */
    private static final Duration LOOK_FOR_BACKUP = Duration.ofMinutes(5);

    private static final Duration REHEARSAL_ENDS_WITHIN = Duration.ofSeconds(2);

    private static final Logger LOG = LoggerFactory.getLogger(Serving.class);

    private final Store store;
    private final Server server;
    private final String token;
    private final Thread backing;
    private final Thread warming;
    private final Ahead ahead;
    private final Torques torques;

    private Serving(Store store, Server server, String token, Ahead ahead, Torques torques, Thread warming) {
        this.ahead = ahead;
        this.torques = torques;
        this.token = token;
        this.warming = warming;
        this.backing = new Thread(
                new BackupWatch(
                        () -> store.health().readOnly(),
                        () -> store.backUpIfDue(),
                        LOOK_FOR_BACKUP,
                        trouble -> LOG.warn("a backup could not be made: {}", trouble)),
                "backups");
        backing.setDaemon(true);
        backing.start();
        this.store = store;
        this.server = server;
    }

    /** Opens and serves with the usual patience. */
    static Serving start(Path folder, int port, Example example) {
        return start(folder, port, Server.Patience.USUAL, example);
    }

    /**
     * Opens and serves.
     * @param port    0 for any that is free
     * @param example what a first visit is offered
     * @throws longthrow.workshop.store.StoreFault if the data cannot be opened
     * @throws io.javalin.util.JavalinBindException if the port is taken
     */
    static Serving start(Path folder, int port, Server.Patience patience, Example example) {
        return start(folder, port, patience, example, true);
    }

    /** For a rehearsal: at any port, and nothing is rehearsed for it. */
    static Serving unseen(Path folder, Example example) {
        return start(folder, 0, Server.Patience.USUAL, example, false);
    }

    private static Serving start(Path folder, int port, Server.Patience patience, Example example, boolean rehearsed) {
        CompletableFuture<Store> opening = CompletableFuture.supplyAsync(() -> Store.open(folder), Serving::beside);
        String token = newToken();
        Workbench bench = new Workbench(() -> opened(opening), token);
        Catalogues catalogues = new Catalogues(bench);
        Searches searches = new Searches(bench, catalogues);
        Clearances clearances = new Clearances(bench);
        Loaded loaded = new Loaded(bench, catalogues, clearances);
        Dynos dynos = new Dynos(bench);
        Torques torques = new Torques(bench, loaded, PowerRunner::onAll);
        Ahead ahead = new Ahead(bench, catalogues, clearances, loaded, torques, dynos);
        Optional<Server> server = Optional.empty();
        boolean serving = false;
        try {
            server = Optional.of(Server.start(
                    port,
                    patience,
                    bench,
                    List.of(
                            new BuildsRoutes(bench, example.build()),
                            new MeasureRoutes(bench),
                            new FitRoutes(bench, catalogues, searches),
                            new BookRoutes(bench, catalogues, searches, clearances, loaded, dynos),
                            new ClearRoutes(bench, clearances),
                            new OutlineRoutes(bench),
                            new LifeRoutes(bench, catalogues, loaded),
                            new PowerRoutes(bench, catalogues, torques, dynos),
                            new ShakeRoutes(bench, catalogues, loaded),
                            new DynoRoutes(bench, dynos),
                            ahead,
                            new PartsRoutes(bench, catalogues, example.catalogue()))));
            Store store = opened(opening);
            serving = true;
            if (rehearsed) {
                ahead.begin();
            }
            return new Serving(
                    store,
                    server.get(),
                    token,
                    ahead,
                    torques,
                    rehearsed ? warmUp(bench, example) : new Thread("no rehearsal"));
        } finally {
            if (!serving) {
                ahead.close();
                torques.close();
                server.ifPresent(Server::close);
                letGo(opening);
            }
        }
    }

    /** Opening the data and starting the server take as long as each other: together, not one after the other. */
    private static void beside(Runnable work) {
        Thread thread = new Thread(work, "opening");
        thread.setDaemon(true);
        thread.start();
    }

    /** The store, waited for, or the fault that stood in its way. */
    private static Store opened(CompletableFuture<Store> opening) {
        try {
            return opening.join();
        } catch (CompletionException failed) {
            if (failed.getCause() instanceof RuntimeException fault) {
                throw fault;
            }
            throw failed;
        }
    }

    private static void letGo(CompletableFuture<Store> opening) {
        try {
            opening.join().close();
        } catch (CompletionException neverOpened) {
            // nothing to let go of; why it did not open is said already
        }
    }

    /**
     * The first engine is slow, whoever's it is, and so are the first readings typed: while its owner still looks at the list, the
     * invented one is worked out.
     */
    private static Thread warmUp(Workbench bench, Example example) {
        Thread thread = new Thread(
                () -> {
                    try {
                        Thread.sleep(WARM_UP_AFTER_MILLISECONDS);
                        lookOver(bench.store());
                        bench.desk().work(example.build());
                        Rehearsal.once(example, bench.desk());
                    } catch (InterruptedException ended) {
                        Thread.currentThread().interrupt();
                    }
                },
                "warm-up");
        thread.setDaemon(true);
        thread.start();
        return thread;
    }

    /** Behind the start, which looks at the newest revision of each build alone: 1000 revisions cost more than a start should. */
    private static void lookOver(Store store) {
        try {
            store.lookOverRevisions();
        } catch (StoreFault fault) {
            LOG.warn("the revisions could not all be looked over: {}", fault.getMessage());
        }
    }

    private static String newToken() {
        byte[] random = new byte[TOKEN_BYTES];
        new SecureRandom().nextBytes(random);
        return HexFormat.of().formatHex(random);
    }

    /** That changes carry. */
    String token() {
        return token;
    }

    Store store() {
        return store;
    }

    String address() {
        return server.address();
    }

    /** It has a folder of its own to throw away. */
    private void letRehearsalEnd() {
        try {
            warming.join(REHEARSAL_ENDS_WITHIN.toMillis());
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    /** Answers what is under way, then lets go of the data. */
    @Override
    public void close() {
        try {
            warming.interrupt();
            backing.interrupt();
            ahead.close();
            torques.close();
            letRehearsalEnd();
            server.close();
        } finally {
            store.close();
        }
    }
}
