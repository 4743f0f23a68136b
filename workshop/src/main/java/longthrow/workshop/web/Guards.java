package longthrow.workshop.web;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.HandlerType;
import io.javalin.http.HttpStatus;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * What a request must keep before any page sees it: it comes to this machine by its own name, from our own pages, by a plain method,
 * with the token that only our pages hold, and no larger than allowed. docs/security.md says which threat each line meets.
 */
final class Guards {
    /** Name of the form field, and of the header that scripts send, with the token. */
    static final String TOKEN_FIELD = "token";

    static final String TOKEN_HEADER = "X-Longthrow-Token";

    /** A form of text: a build file of the largest size, every sign of it escaped [bytes]. */
    static final long LARGEST_FORM = 4L << 20;

    /** Files that come in: the largest catalogue that is read, and an archive with its photos [bytes]. */
    static final long LARGEST_UPLOAD = 1L << 30;

    /** Stands for bytes that are no letter. */
    private static final String NO_LETTER = "\uFFFD";

    private static final String MULTIPART = "multipart/form-data";

    /** Names by which this machine is reached from itself. A foreign name that points here is a page of someone else's. */
    private static final Set<String> OWN_NAMES = Set.of("localhost", "127.0.0.1", "[::1]");

    /** What is not said after the name; RFC 9110, section 4.2.1. */
    private static final String USUAL_PORT = "80";

    private static final Set<HandlerType> METHODS = Set.of(HandlerType.GET, HandlerType.HEAD, HandlerType.POST);

    /** By which some servers let a GET pass for another method. */
    private static final Set<String> OVERRIDES = Set.of("X-HTTP-Method-Override", "X-HTTP-Method", "X-Method-Override");

    /**
     * Headers of every answer. Script and style come from our own files only; nothing is framed;
     * nothing is told to others. With no referrer at all a browser calls the origin of our own forms "null", which is foreign.
     */
    static final Map<String, String> HEADERS = Map.of(
            "Content-Security-Policy",
            "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:; connect-src 'self'; font-src 'self';"
                    + " manifest-src 'self'; worker-src 'self'; form-action 'self'; base-uri 'none'; frame-ancestors 'none'",
            "X-Content-Type-Options",
            "nosniff",
            "Referrer-Policy",
            "same-origin",
            "Cross-Origin-Opener-Policy",
            "same-origin",
            "Cross-Origin-Resource-Policy",
            "same-origin",
            "Permissions-Policy",
            "camera=(), geolocation=(), microphone=(), payment=(), usb=()",
            "X-Frame-Options",
            "DENY");

    private final String token;

    /**
     * With the secret of this workshop.
     * @param token that every change must carry
     */
    Guards(String token) {
        this.token = token;
    }

    void add(RoutesConfig routes) {
        routes.before(this::check);
    }

    private void check(Context request) {
        HEADERS.forEach(request::header);
        request.header("Cache-Control", isAsset(request.path()) ? "no-cache" : "no-store");
        if (!isOwn(request.header("Host"), request.req().getLocalPort())) {
            throw new Refused(
                    HttpStatus.MISDIRECTED_REQUEST,
                    "This workshop answers only to its own machine",
                    "Open http://127.0.0.1 with the port that the program printed.");
        }
        if (!METHODS.contains(request.method()) || OVERRIDES.stream().anyMatch(name -> request.header(name) != null)) {
            throw new Refused(
                    HttpStatus.METHOD_NOT_ALLOWED,
                    "Pages are read by GET and changed by POST, nothing else",
                    "Use the forms of the page.");
        }
        if (!"navigate"
                        .equals(Optional.ofNullable(request.header("Sec-Fetch-Mode"))
                                .orElse("navigate"))
                && isForeign(request)) {
            throw new Refused(
                    HttpStatus.FORBIDDEN,
                    "A page of another site asked for this",
                    "Open the page in a window of its own.");
        }
        if (request.method().equals(HandlerType.POST)) {
            checkChange(request);
        }
    }

    /** The same for everybody and without anything of the owner's: worth keeping, and asked for again each time. */
    private static boolean isAsset(String path) {
        return path.startsWith("/static/") || path.startsWith("/webjars/");
    }

    private void checkChange(Context request) {
        if (isForeign(request)) {
            throw new Refused(
                    HttpStatus.FORBIDDEN,
                    "A page of another site sent this; nothing was changed",
                    "Open the page here and enter it there.");
        }
        String type = Optional.ofNullable(request.contentType()).orElse("").toLowerCase(Locale.ROOT);
        boolean upload = type.startsWith(MULTIPART);
        if (!upload && !type.startsWith("application/x-www-form-urlencoded")) {
            throw new Refused(
                    HttpStatus.UNSUPPORTED_MEDIA_TYPE,
                    "Only forms are taken; nothing was changed",
                    "Use the forms of the page.");
        }
        if (request.req().getContentLengthLong() > (upload ? LARGEST_UPLOAD : LARGEST_FORM)) {
            throw tooLarge();
        }
        String sent = Optional.ofNullable(request.header(TOKEN_HEADER)).orElseGet(() -> formToken(request));
        if (!MessageDigest.isEqual(sent.getBytes(StandardCharsets.UTF_8), token.getBytes(StandardCharsets.UTF_8))) {
            throw upload || !isOfOurPage(request)
                    ? new Refused(
                            HttpStatus.FORBIDDEN,
                            "The page is from before; nothing was changed",
                            "Load the page again and enter it once more.")
                    : new FromBefore();
        }
        if (!upload
                && request.formParamMap().values().stream()
                        .flatMap(List::stream)
                        .anyMatch(v -> v.contains(NO_LETTER))) {
            throw new Refused(
                    HttpStatus.BAD_REQUEST,
                    "The form holds signs that are no UTF-8; nothing was changed",
                    "Send it as UTF-8, as the pages do.");
        }
    }

    /** A form without script, of which the browser itself says that it is of a page of ours: who says nothing is shown nothing to press. */
    private static boolean isOfOurPage(Context request) {
        boolean isSaid = request.header("Origin") != null || "same-origin".equals(request.header("Sec-Fetch-Site"));
        return isSaid && request.header("HX-Request") == null && request.header(TOKEN_HEADER) == null;
    }

    static Refused tooLarge() {
        return new Refused(
                HttpStatus.CONTENT_TOO_LARGE,
                "That is larger than what is taken here; nothing was changed",
                "Send less at once.");
    }

    /** The first look into the body: what cannot be taken apart ends here. */
    private static String formToken(Context request) {
        try {
            return Optional.ofNullable(request.formParam(TOKEN_FIELD)).orElse("");
        } catch (io.javalin.http.HttpResponseException limit) {
            throw tooLarge();
        } catch (Exception broken) { // what the libraries throw here differs with the way the body is broken
            throw Server.isTimeout(broken)
                    ? new Refused(
                            HttpStatus.REQUEST_TIMEOUT,
                            "The form came too slowly and was cut off; nothing was changed",
                            "Send it again.")
                    : Server.isTooLarge(broken)
                            ? tooLarge()
                            : new Refused(
                                    HttpStatus.BAD_REQUEST,
                                    "The form is not whole; nothing was changed",
                                    "Load the page again and enter it once more.");
        }
    }

    /** By name and port: another program of this machine has the same names, and its pages are not ours. */
    private static boolean isOwn(@Nullable String host, int ownPort) {
        if (host == null) {
            return false;
        }
        int colon = host.lastIndexOf(':');
        boolean hasPort = colon > host.lastIndexOf(']');
        String name = hasPort ? host.substring(0, colon) : host;
        String port = hasPort ? host.substring(colon + 1) : USUAL_PORT;
        return OWN_NAMES.contains(name.toLowerCase(Locale.ROOT)) && port.equals(String.valueOf(ownPort));
    }

    /** Browsers say where a change comes from; a tool that says nothing still needs the token. */
    private static boolean isForeign(Context request) {
        String site = request.header("Sec-Fetch-Site");
        if (site != null && !site.equals("same-origin") && !site.equals("none")) {
            return true;
        }
        String origin = request.header("Origin");
        return origin != null && !origin.equals("http://" + request.header("Host"));
    }
}
