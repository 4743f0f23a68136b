package longthrow.workshop.web;

import io.javalin.Javalin;
import io.javalin.config.JavalinConfig;
import io.javalin.config.SizeUnit;
import io.javalin.http.Context;
import io.javalin.http.HttpResponseException;
import io.javalin.http.HttpStatus;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.TimeoutException;
import longthrow.workshop.store.StoreFault;
import org.eclipse.jetty.server.HttpConnectionFactory;
import org.eclipse.jetty.server.ServerConnector;
import org.eclipse.jetty.server.handler.MinimumDataRateHandler;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** The pages on a port of this machine. */
public final class Server implements AutoCloseable {
    /** Reached from this machine alone. */
    public static final String LOOPBACK = "127.0.0.1";

    private static final int IN_MEMORY_MEGABYTES = 1;

    private static final Logger LOG = LoggerFactory.getLogger(Server.class);

    private final Javalin javalin;

    private Server(Javalin javalin) {
        this.javalin = javalin;
    }

    /**
     * How patient it is.
     * @param slowestBody  a body that trickles slower than this is cut off [bytes/s]
     * @param idleMilliseconds a connection on which nothing comes is closed after this
     */
    public record Patience(long slowestBody, long idleMilliseconds) {
        /** Our own choice: a phone at the edge of the radio sends a form at a thousand bytes a second. */
        public static final Patience USUAL = new Patience(200, 30_000);
    }

    /**
     * Starts serving.
     * @param port 0 for any that is free
     * @throws io.javalin.util.JavalinBindException if the port is taken
     */
    public static Server start(int port, Patience patience, Workbench workbench, List<Routes> pages) {
        Javalin javalin = Javalin.create(config -> {
            listen(config, port, patience);
            Assets.add(config.routes);
            new Guards(workbench.token()).add(config.routes);
            config.routes.before(request -> {
                if (isSomebodys(request)) {
                    workbench.desk().somebodyAsks();
                }
            });
            config.routes.after(request -> {
                if (isSomebodys(request)) {
                    workbench.desk().somebodyWasAnswered();
                }
            });
            pages.forEach(page -> page.add(config.routes));
            new Server.Trouble(workbench).add(config);
        });
        return new Server(javalin.start());
    }

    /** A page that looks whether rail and list are there is no visit. */
    private static boolean isSomebodys(Context request) {
        return !request.path().endsWith(Ahead.PATH);
    }

    private static void listen(JavalinConfig config, int port, Patience patience) {
        config.startup.showJavalinBanner = false;
        config.startup.startupWatcherEnabled = false;
        config.startup.showOldJavalinVersionWarning = false;
        config.jetty.addConnector((server, http) -> {
            ServerConnector connector = new ServerConnector(server, new HttpConnectionFactory(http));
            connector.setHost(LOOPBACK);
            connector.setPort(port);
            connector.setIdleTimeout(patience.idleMilliseconds());
            return connector;
        });
        config.http.maxRequestSize = Guards.LARGEST_FORM;
        config.http.prefer405over404 = true;
        config.http.defaultContentType = "text/html; charset=utf-8";
        config.jetty.multipartConfig.maxInMemoryFileSize(IN_MEMORY_MEGABYTES, SizeUnit.MB);
        config.jetty.multipartConfig.maxFileSize(Guards.LARGEST_UPLOAD, SizeUnit.BYTES);
        config.jetty.multipartConfig.maxTotalRequestSize(Guards.LARGEST_UPLOAD, SizeUnit.BYTES);
        config.jetty.modifyHttpConfiguration(http -> {
            http.setSendServerVersion(false);
            http.setIdleTimeout(patience.idleMilliseconds());
            http.setRequestHeaderSize(16 << 10);
        });
        config.jetty.modifyServer(
                server -> server.insertHandler(new MinimumDataRateHandler(patience.slowestBody(), 0)));
    }

    /** Pages for what went wrong: said plainly, nothing of the program's inside shown. */
    private record Trouble(Workbench workbench) {
        void add(JavalinConfig config) {
            config.routes.exception(FromBefore.class, (before, request) -> {
                request.attribute("said", true);
                request.status(HttpStatus.FORBIDDEN);
                workbench.view().show(request, "frombefore", FromBefore.Page.of(request, workbench));
            });
            config.routes.exception(Refused.class, (refused, request) -> say(request, refused));
            config.routes.exception(StoreFault.class, (fault, request) -> {
                if (status(fault).equals(HttpStatus.INTERNAL_SERVER_ERROR)
                        || fault.kind() == StoreFault.Kind.DISK_FAILED) {
                    LOG.error(
                            "{} {}: {}: {}",
                            request.method(),
                            request.path(),
                            fault.kind().name().toLowerCase(Locale.ROOT).replace('_', ' '),
                            fault.getMessage());
                    LOG.debug("where in the program it happened", fault);
                } else if (status(fault).getCode() > HttpStatus.INTERNAL_SERVER_ERROR.getCode()) {
                    LOG.warn(fault.getMessage()); // its owner can mend it and needs no trace
                }
                say(request, new Refused(status(fault), words(fault), fault.mend() + "."));
            });
            config.routes.exception(HttpResponseException.class, this::known);
            config.routes.exception(Exception.class, this::fault);
            config.routes.error(404, request -> notFound(request));
            config.routes.error(
                    405,
                    request -> sayIfBare(
                            request,
                            new Refused(
                                    HttpStatus.METHOD_NOT_ALLOWED,
                                    "This address is not for that",
                                    "Use the forms of the page.")));
            config.routes.error(413, request -> sayIfBare(request, Guards.tooLarge()));
        }

        private void known(HttpResponseException fault, Context request) {
            int status = fault.getStatus();
            if (status == 404) {
                request.status(404);
                notFound(request);
            } else if (status == 413) {
                say(request, Guards.tooLarge());
            } else {
                say(
                        request,
                        new Refused(
                                Optional.ofNullable(HttpStatus.forStatus(status))
                                        .orElse(HttpStatus.BAD_REQUEST),
                                "This address is not for that",
                                "Use the forms of the page."));
            }
        }

        private void fault(Exception fault, Context request) {
            if (isTooLarge(fault)) {
                say(request, Guards.tooLarge());
                return;
            }
            LOG.error("a page failed: {} {}", request.method(), request.path(), fault);
            say(
                    request,
                    new Refused(
                            HttpStatus.INTERNAL_SERVER_ERROR,
                            "The program has a fault; what was kept before is as it was",
                            "Go back and try again; if it comes again, save all builds as one file and report what you did."));
        }

        private void notFound(Context request) {
            sayIfBare(request, new Refused(HttpStatus.NOT_FOUND, "There is no such page", "Go to the builds."));
        }

        /** Unless a page was said already, as for a build that is not there. */
        private void sayIfBare(Context request, Refused refused) {
            if (request.attribute("said") == null) {
                say(request, refused);
            }
        }

        private void say(Context request, Refused refused) {
            request.attribute("said", true);
            request.status(refused.status());
            String message = Optional.ofNullable(refused.getMessage())
                    .orElse("Something is wrong")
                    .strip();
            workbench
                    .view()
                    .show(
                            request,
                            "message",
                            Map.of(
                                    "frame",
                                    Frame.plain(title(refused.status()), workbench.token(), "", workbench.damage()),
                                    "message",
                                    sentence(message),
                                    "mend",
                                    refused.mend(),
                                    "back",
                                    refused.back()));
        }

        /** What browsers call it, but where the fault is not the request's: whoever reads it runs no server of anybody's. */
        private static String title(HttpStatus status) {
            return status.equals(HttpStatus.INTERNAL_SERVER_ERROR) ? "Something is wrong here" : status.getMessage();
        }

        private static String sentence(String words) {
            String capital =
                    words.isEmpty() ? words : words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1);
            return capital.endsWith(".") ? capital : capital + ".";
        }

        /** With the place where it is one on the disk: its owner is the one who can go there. */
        private static String words(StoreFault fault) {
            return switch (fault.kind()) {
                case DISK_FULL, NOT_WRITABLE, DISK_FAILED, NO_FOLDER, DAMAGED ->
                    fault.what() + " (" + fault.where() + ")";
                case READ_ONLY, CLOSED, LOCKED, NOT_FOUND, REFUSED, BAD_ARCHIVE, NEWER_SCHEMA -> fault.what();
            };
        }

        private static HttpStatus status(StoreFault fault) {
            return switch (fault.kind()) {
                case NOT_FOUND -> HttpStatus.NOT_FOUND;
                case REFUSED, BAD_ARCHIVE -> HttpStatus.UNPROCESSABLE_CONTENT;
                case DISK_FULL -> HttpStatus.INSUFFICIENT_STORAGE;
                case READ_ONLY, CLOSED, LOCKED, NO_FOLDER, NOT_WRITABLE, DISK_FAILED -> HttpStatus.SERVICE_UNAVAILABLE;
                case DAMAGED, NEWER_SCHEMA -> HttpStatus.INTERNAL_SERVER_ERROR;
            };
        }
    }

    /** Whether a limit of the libraries that take forms apart stands behind it. */
    static boolean isTooLarge(Throwable fault) {
        for (Throwable at = fault; at != null; at = at.getCause()) {
            String message = String.valueOf(at.getMessage()).toLowerCase(Locale.ROOT);
            if (message.contains("max length") || message.contains("exceed") || message.contains("too large")) {
                return true;
            }
        }
        return false;
    }

    /** Whether it took too long to come. */
    static boolean isTimeout(Throwable fault) {
        for (Throwable at = fault; at != null; at = at.getCause()) {
            if (at instanceof TimeoutException
                    || String.valueOf(at.getMessage()).contains("data rate")) {
                return true;
            }
        }
        return false;
    }

    /** The port it is reached on. */
    public int port() {
        return javalin.port();
    }

    /** What to type into a browser. */
    public String address() {
        return "http://" + LOOPBACK + ":" + port() + "/";
    }

    @Override
    public void close() {
        javalin.stop();
    }
}
