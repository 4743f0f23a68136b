package longthrow.workshop.web;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.List;

/**
 * What pages bring along: style, scripts, sign. A list and no folder: nothing but these can be asked for, and nothing is looked up
 * in the file system or in a jar opened as one, which costs a start some 40 ms.
 */
final class Assets {
    private static final String SCRIPT = "text/javascript; charset=utf-8";
    private static final String HTMX = "/webjars/htmx.org/2.0.10/dist/htmx.min.js";

    private record Asset(String path, String resource, String type) {
        static Asset own(String path, String file, String type) {
            return new Asset(path, "/longthrow/workshop/web/static/" + file, type);
        }

        byte[] content() {
            try (InputStream in = Assets.class.getResourceAsStream(resource)) {
                if (in == null) {
                    throw new IllegalStateException(resource + " is missing from the program; build again");
                }
                return in.readAllBytes();
            } catch (IOException damaged) {
                throw new UncheckedIOException(damaged);
            }
        }
    }

    private static final List<Asset> ALL = List.of(
            Asset.own("/static/longthrow.css", "longthrow.css", "text/css; charset=utf-8"),
            Asset.own("/static/longthrow.js", "longthrow.js", SCRIPT),
            Asset.own("/static/turning.js", "turning.js", SCRIPT),
            Asset.own("/static/looking.js", "looking.js", SCRIPT),
            Asset.own("/static/mark.svg", "mark.svg", "image/svg+xml"),
            Asset.own("/worker.js", "worker.js", SCRIPT), // at the root: a worker sees to the addresses below its own
            new Asset(HTMX, "/META-INF/resources" + HTMX, SCRIPT));

    private Assets() {}

    static void add(RoutesConfig routes) {
        ALL.forEach(asset -> routes.get(asset.path(), request -> answer(request, asset)));
    }

    /** Asked for again each time, and sent only if it is another than the one the browser has. */
    private static void answer(Context request, Asset asset) {
        byte[] content = asset.content();
        String tag = '"' + sha256(content) + '"';
        request.header("ETag", tag).header("Cache-Control", "no-cache").contentType(asset.type());
        if (tag.equals(request.header("If-None-Match"))) {
            request.status(HttpStatus.NOT_MODIFIED);
        } else {
            request.result(content);
        }
    }

    private static String sha256(byte[] content) {
        try {
            return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(content));
        } catch (NoSuchAlgorithmException never) {
            throw new IllegalStateException("every Java has SHA-256", never);
        }
    }
}
