package longthrow.workshop;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.NetworkInterface;
import java.net.Socket;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import longthrow.workshop.web.Server;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What docs/security.md promises, each shown over a bare socket: no client library mends what is sent. */
class WorkshopGuardsTest {
    private static final Server.Patience SHORT = new Server.Patience(200, 3_000);

    @TempDir
    private Path folder;

    private Serving serving;

    @BeforeEach
    void open() throws IOException {
        serving = Serving.start(folder, 0, SHORT, Example.ofThisProgram());
    }

    @AfterEach
    void close() {
        serving.close();
    }

    private int port() {
        return URI.create(serving.address()).getPort();
    }

    private String own() {
        return "127.0.0.1:" + port();
    }

    /** Sends the bytes and reads until the other side closes. */
    private String raw(String request) throws IOException {
        try (Socket socket = new Socket(InetAddress.getLoopbackAddress(), port())) {
            socket.setSoTimeout(20_000);
            socket.getOutputStream().write(request.getBytes(StandardCharsets.ISO_8859_1));
            socket.getOutputStream().flush();
            return new String(socket.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        }
    }

    private String get(String path, String host, String... headers) throws IOException {
        return raw(head("GET", path, host, headers) + "\r\n");
    }

    private static String head(String method, String path, String host, String... headers) {
        return method + " " + path + " HTTP/1.1\r\nHost: " + host + "\r\nConnection: close\r\n"
                + (headers.length == 0 ? "" : String.join("\r\n", headers) + "\r\n");
    }

    private String token() throws IOException {
        String answer = get("/alive", own());
        return answer.substring(answer.indexOf("\r\n\r\n") + 4).strip();
    }

    private String post(String path, String body, String... headers) throws IOException {
        return raw(head("POST", path, own(), headers) + "Content-Length: " + body.length() + "\r\n\r\n" + body);
    }

    private static final String FORM = "Content-Type: application/x-www-form-urlencoded";

    private String begin() throws IOException {
        return "token=" + token() + "&what=example&key=" + Visitor.key();
    }

    private static int status(String answer) {
        assertThat(answer).startsWith("HTTP/1.1 ");
        return Integer.parseInt(answer.substring(9, 12));
    }

    private void nothingWasBegun() {
        assertThat(serving.store().builds()).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "evil.example",
                "evil.example:8173",
                "127.0.0.1.evil.example",
                "localhost.evil.example",
                "192.168.0.7",
                ""
            })
    void aForeignHostIsRefused(String host) throws IOException {
        int status = status(get("/builds", host));
        assertThat(status).isIn(400, 421);
    }

    /** Another program of this machine has the same names: its pages are not ours. */
    @ParameterizedTest
    @ValueSource(strings = {"127.0.0.1", "localhost", "[::1]"})
    void aForeignPortIsRefused(String name) throws IOException {
        assertThat(status(get("/builds", name + ":" + port()))).isEqualTo(200);
        assertThat(status(get("/builds", name + ":" + (port() == 65535 ? 1 : port() + 1))))
                .isEqualTo(421);
        assertThat(status(get("/builds", name))).as("port 80").isEqualTo(421);
        assertThat(status(get("/builds", name + ":"))).isIn(400, 421);
    }

    @Test
    void ownNamesAreAnswered() throws IOException {
        for (String host :
                List.of("127.0.0.1:" + port(), "localhost:" + port(), "LOCALHOST:" + port(), "[::1]:" + port())) {
            assertThat(status(get("/builds", host))).as(host).isEqualTo(200);
        }
    }

    @Test
    void itListensOnThisMachineAlone() throws IOException {
        for (NetworkInterface card : Collections.list(NetworkInterface.getNetworkInterfaces())) {
            for (InetAddress address : Collections.list(card.getInetAddresses())) {
                if (!address.isLoopbackAddress()) {
                    boolean open;
                    try (Socket socket = new Socket()) {
                        socket.connect(new java.net.InetSocketAddress(address, port()), 500);
                        open = true;
                    } catch (IOException refused) {
                        open = false;
                    }
                    assertThat(open).as(address.toString()).isFalse();
                }
            }
        }
    }

    @Test
    void aChangeFromAnotherSiteIsRefusedEvenWithTheToken() throws IOException {
        String body = begin();
        for (String header : List.of(
                "Origin: http://evil.example",
                "Origin: null",
                "Origin: http://127.0.0.1:1",
                "Origin: https://" + own(),
                "Sec-Fetch-Site: cross-site",
                "Sec-Fetch-Site: same-site")) {
            assertThat(status(post("/builds", body, FORM, header))).as(header).isEqualTo(403);
        }
        nothingWasBegun();
        assertThat(status(post("/builds", body, FORM, "Origin: http://" + own(), "Sec-Fetch-Site: same-origin")))
                .isEqualTo(303);
    }

    @Test
    void aPageOfAnotherSiteMayLeadHereButNotReadOrDrawFromHere() throws IOException {
        assertThat(status(get("/builds", own(), "Sec-Fetch-Site: cross-site", "Sec-Fetch-Mode: navigate")))
                .isEqualTo(200);
        for (String mode : List.of("no-cors", "cors", "websocket")) {
            assertThat(status(get("/alive", own(), "Sec-Fetch-Site: cross-site", "Sec-Fetch-Mode: " + mode)))
                    .isEqualTo(403);
        }
    }

    @Test
    void aChangeWithoutTheTokenIsRefused() throws IOException {
        String form = "what=example&key=" + Visitor.key();
        assertThat(status(post("/builds", form, FORM))).isEqualTo(403);
        assertThat(status(post("/builds", "token=" + "0".repeat(64) + "&" + form, FORM)))
                .isEqualTo(403);
        assertThat(status(post("/builds", "token=&" + form, FORM))).isEqualTo(403);
        nothingWasBegun();
        assertThat(status(post("/builds", form, FORM, "X-Longthrow-Token: " + token())))
                .isEqualTo(303);
    }

    /** A form without script from before the workshop was started anew: what was typed is there again with a token that counts, and is kept when it is sent once more. */
    @Test
    void aFormFromBeforeIsShownAgainAndLosesNothing() throws IOException {
        String typed = "what=empty&name=Kept+%3Cafter%3E+all&key=" + Visitor.key();
        String old = "token=" + "0".repeat(64) + "&" + typed;
        String again = post("/builds", old, FORM, "Origin: http://" + own(), "Sec-Fetch-Site: same-origin");
        assertThat(status(again)).isEqualTo(403);
        nothingWasBegun();
        assertThat(again)
                .contains("Send it again", "Nothing is lost", "Kept &lt;after&gt; all", "action=\"/builds\"")
                .contains("name=\"token\" value=\"" + token() + "\"")
                .doesNotContain("0".repeat(64));
        assertThat(status(post("/builds", "token=" + token() + "&" + typed, FORM, "Origin: http://" + own())))
                .isEqualTo(303);
        assertThat(serving.store().builds()).extracting(b -> b.name()).containsExactly("Kept <after> all");
    }

    /** Who comes from elsewhere, or does not say from where, is shown nothing that he could have somebody press; a script is told by the status alone. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "Origin: http://evil.example",
                "Origin: null",
                "Sec-Fetch-Site: cross-site",
                "Sec-Fetch-Site: same-site",
                "Accept: text/html",
                "Sec-Fetch-Site: none",
                "HX-Request: true"
            })
    void aFormOfNobodyKnownIsNotShownAgain(String header) throws IOException {
        String old = "token=" + "0".repeat(64) + "&what=empty&name=Planted&key=" + Visitor.key();
        String refused = header.startsWith("HX")
                ? post("/builds", old, FORM, header, "Origin: http://" + own())
                : post("/builds", old, FORM, header);
        assertThat(status(refused)).isEqualTo(403);
        assertThat(refused).doesNotContain("Planted", "Send it again");
        String elsewhere = raw(head("POST", "/builds", "evil.example", FORM, "Origin: http://evil.example")
                + "Content-Length: " + old.length() + "\r\n\r\n" + old);
        assertThat(status(elsewhere)).isEqualTo(421);
        assertThat(elsewhere).doesNotContain("Planted", "Send it again");
        nothingWasBegun();
    }

    @Test
    void theTokenIsAnotherInEveryRun(@TempDir Path elsewhere) throws IOException {
        String one = token();
        assertThat(one).hasSize(64);
        try (Serving other = Serving.start(elsewhere, 0, SHORT, Example.ofThisProgram())) {
            assertThat(other.address()).isNotEqualTo(serving.address());
            Serving kept = serving;
            serving = other;
            assertThat(token()).hasSize(64).isNotEqualTo(one);
            serving = kept;
        }
    }

    @Test
    void noMethodPassesForAnother() throws IOException {
        for (String header :
                List.of("X-HTTP-Method-Override: POST", "X-HTTP-Method: POST", "X-Method-Override: POST")) {
            assertThat(status(get("/builds", own(), header))).as(header).isEqualTo(405);
        }
        for (String method : List.of("PUT", "DELETE", "PATCH", "OPTIONS", "TRACE", "PROPFIND")) {
            assertThat(status(raw(head(method, "/builds", own()) + "\r\n")))
                    .as(method)
                    .isIn(405, 501, 400);
        }
        assertThat(status(get("/everything", own()))).isIn(404, 405);
    }

    @Test
    void onlyFormsAreTaken() throws IOException {
        for (String type : List.of("application/json", "text/plain", "application/xml")) {
            assertThat(status(post("/builds", begin(), "Content-Type: " + type)))
                    .as(type)
                    .isEqualTo(415);
        }
        assertThat(status(post("/builds", begin()))).isEqualTo(415);
        nothingWasBegun();
    }

    @Test
    void aBrokenFormIsRefusedAndNoFault() throws IOException {
        String answer =
                post("/builds/file", "this is no part of anything", "Content-Type: multipart/form-data; boundary=x");
        assertThat(status(answer)).isBetween(400, 422);
        assertThat(status(post("/builds/file", "x", "Content-Type: multipart/form-data")))
                .isBetween(400, 422);
        assertThat(status(post("/builds", begin().replace("key=", "key=%zz"), FORM)))
                .isBetween(400, 422);
    }

    @Test
    void aFormThatIsTooLargeIsRefused() throws IOException {
        String head = head("POST", "/builds", own(), FORM);
        assertThat(status(raw(head + "Content-Length: 5000000\r\n\r\n"))).isEqualTo(413);
        StringBuilder chunked = new StringBuilder(head).append("Transfer-Encoding: chunked\r\n\r\n");
        String piece = "a".repeat(1 << 16);
        for (int i = 0; i < 80; i++) {
            chunked.append("10000\r\n").append(piece).append("\r\n");
        }
        chunked.append("0\r\n\r\n");
        String answer;
        try {
            answer = raw(chunked.toString());
        } catch (IOException cutOff) {
            answer = "";
        }
        assertThat(answer.isEmpty() || status(answer) == 413).as(answer).isTrue();
        assertThat(status(raw(head("POST", "/builds/file", own(), "Content-Type: multipart/form-data; boundary=x")
                        + "Content-Length: 2000000000\r\n\r\n")))
                .isEqualTo(413);
        nothingWasBegun();
    }

    @Test
    void headersThatAreTooLargeAreRefused() throws IOException {
        assertThat(status(get("/builds", own(), "X-Long: " + "a".repeat(40_000))))
                .isEqualTo(431);
        assertThat(status(get("/" + "a".repeat(40_000), own()))).isIn(414, 431);
    }

    /** Ten bytes every half second: below the least rate, above the idle time. */
    @Test
    void aBodyThatTricklesIsCutOff() throws Exception {
        String form = begin() + "&pad=" + "a".repeat(5_000);
        long begun = System.nanoTime();
        try (Socket socket = new Socket(InetAddress.getLoopbackAddress(), port())) {
            socket.setSoTimeout(30_000);
            OutputStream out = socket.getOutputStream();
            out.write((head("POST", "/builds", own(), FORM) + "Content-Length: " + form.length() + "\r\n\r\n")
                    .getBytes(StandardCharsets.US_ASCII));
            boolean cutOff = false;
            InputStream in = socket.getInputStream();
            for (int at = 0; at < form.length() && !cutOff; at += 10) {
                try {
                    out.write(
                            form.substring(at, Math.min(form.length(), at + 10)).getBytes(StandardCharsets.US_ASCII));
                    out.flush();
                    Thread.sleep(500);
                    cutOff = in.available() > 0;
                } catch (IOException closed) {
                    cutOff = true;
                }
                assertThat(System.nanoTime() - begun).as("cut off in good time").isLessThan(20_000_000_000L);
            }
            assertThat(cutOff).isTrue();
        }
        nothingWasBegun();
    }

    @Test
    void aConnectionOnWhichNothingComesIsClosed() throws IOException {
        long begun = System.nanoTime();
        raw("GET /builds HTTP/1.1\r\nHost: " + own() + "\r\n"); // never ended
        assertThat(System.nanoTime() - begun).isLessThan(15_000_000_000L);
    }

    @Test
    void everyKindOfAnswerBearsTheHeaders() throws IOException {
        String begun = post("/builds", begin(), FORM);
        String base = begun.lines()
                .filter(l -> l.startsWith("Location: "))
                .findFirst()
                .orElseThrow()
                .substring(10)
                .replace("/measure", "");
        List<String> answers = List.of(
                get("/builds", own()),
                get(base + "/measure", own()),
                get(base + "/file", own()),
                get("/everything.zip", own()),
                get("/static/longthrow.css", own()),
                get("/webjars/htmx.org/2.0.10/dist/htmx.min.js", own()),
                get("/worker.js", own()),
                get("/alive", own()),
                get("/nothing", own()),
                get("/static/nothing.css", own()),
                get("/builds", "evil.example"),
                begun,
                post("/builds", "x=1", FORM),
                raw(head("HEAD", "/builds", own()) + "\r\n"),
                raw(head("PUT", "/builds", own()) + "\r\n"));
        for (String answer : answers) {
            String head = answer.substring(0, answer.indexOf("\r\n\r\n")).toLowerCase(Locale.ROOT);
            assertThat(head)
                    .contains("content-security-policy: default-src 'none'; script-src 'self'")
                    .contains(
                            "frame-ancestors 'none'", "x-content-type-options: nosniff", "referrer-policy: same-origin")
                    .contains("cross-origin-opener-policy: same-origin", "cross-origin-resource-policy: same-origin")
                    .containsPattern("cache-control: (no-|max-age=)")
                    .doesNotContain("server:", "x-powered-by", "access-control-allow-origin");
        }
    }

    @Test
    void pagesHoldNoScriptOrStyleOfTheirOwn() throws IOException {
        try (Visitor visitor = Visitor.in(folder.resolve("pages"))) {
            String base = visitor.example();
            for (String page : List.of(
                    "/builds",
                    "/parts",
                    base + "/measure",
                    base + "/measure/cylinder.deck_height",
                    base + "/fit?now=1",
                    base + "/life?now=1",
                    base + "/shake?speed=3000",
                    base + "/power?now=1",
                    base + "/text",
                    base + "/history")) {
                String body = visitor.get(page).body();
                assertThat(body)
                        .as(page)
                        .doesNotContainPattern("<script(?![^>]* src=)")
                        .doesNotContainPattern("(?i)<[^>]+\\son[a-z]+=")
                        .doesNotContain(" style=")
                        .doesNotContain("<style")
                        .doesNotContain("javascript:");
                assertThat(body.replace("http://www.w3.org/2000/svg", ""))
                        .as(page)
                        .doesNotContain("http://", "https://");
            }
        }
    }

    @Test
    void noPageShowsTheInsideOfTheProgram() throws IOException {
        String begun = begin();
        for (String answer : List.of(
                get("/b/%00/measure", own()),
                get("/b/..%2f..%2fetc/measure", own()),
                get("/static/..%2f..%2f..%2fetc%2fpasswd", own()),
                get("/static/../../etc/passwd", own()),
                get("/.git/config", own()),
                get("/static/.git/config", own()),
                get("/builds?%zz", own()),
                get("/b/x/measure/%ff", own()),
                post("/builds/file", "x", "Content-Type: multipart/form-data; boundary=x"),
                post("/builds", begun + "&name=%00", FORM))) {
            assertThat(answer)
                    .doesNotContain("Exception", "\tat ", "at java.", "longthrow.workshop", "org.eclipse", "io.javalin")
                    .doesNotContain("root:", "[core]");
        }
    }

    @Test
    void theNoticeIsACookieThatOnlyGoesBackHere() throws IOException {
        String begun = post("/builds", begin(), FORM);
        assertThat(begun)
                .containsPattern("Set-Cookie: notice=[^\r]*HttpOnly")
                .containsPattern("Set-Cookie: notice=[^\r]*SameSite=Strict");
        String page = get("/builds", own(), "Cookie: notice=%3Cscript%3Ealert(1)%3C%2Fscript%3E");
        assertThat(page).doesNotContain("<script>alert").contains("&lt;script&gt;alert(1)");
        assertThat(status(get("/builds", own(), "Cookie: notice=%zz"))).isEqualTo(200);
    }

    @Test
    void namesOfFilesThatComeInAreNeverPaths() throws IOException {
        try (Visitor visitor = Visitor.in(folder.resolve("names"))) {
            Visitor.Page sent = visitor.upload(
                    "/parts",
                    "../../../evil.csv",
                    "# kind: gasket\ncode,thickness [mm]\nG1,1.02\n".getBytes(StandardCharsets.UTF_8),
                    Map.of());
            visitor.post(sent.location(), Map.of());
            assertThat(visitor.serving().store().catalogues().get(0).name()).isEqualTo("evil.csv");
            assertThat(folder.resolve("evil.csv")).doesNotExist();
        }
    }

    @Test
    void ourScriptsPutTextInAsTextAndRunNone() throws IOException {
        for (String script : List.of("/static/longthrow.js", "/worker.js")) {
            String text = get(script, own());
            assertThat(status(text)).isEqualTo(200);
            assertThat(text)
                    .as(script)
                    .doesNotContain("innerHTML", "outerHTML", "insertAdjacentHTML", "document.write")
                    .doesNotContainPattern("\\beval\\(|new Function|setTimeout\\(\\s*[\"'`]");
        }
    }

    @Test
    void everyAnswerSaysWhatItIs() throws IOException {
        try (Visitor visitor = Visitor.in(folder.resolve("types"))) {
            String base = visitor.empty("A \"name\"; filename=\"x.html\" ± <b>");
            Map<String, String> types = new java.util.LinkedHashMap<>(Map.of(
                    "/builds",
                    "text/html; *charset=utf-8",
                    base + "/measure",
                    "text/html; *charset=utf-8",
                    base + "/measure/cylinder.bore",
                    "text/html; *charset=utf-8",
                    base + "/file",
                    "application/yaml; *charset=utf-8",
                    "/everything.zip",
                    "application/zip.*",
                    "/alive",
                    "text/plain.*charset=utf-8",
                    "/static/longthrow.css",
                    "text/css.*",
                    "/static/longthrow.js",
                    "(text|application)/javascript.*",
                    "/worker.js",
                    "text/javascript; *charset=utf-8",
                    "/nothing",
                    "text/html; *charset=utf-8"));
            types.forEach((path, type) -> {
                Visitor.Page page = visitor.get(path);
                assertThat(page.headers().get("content-type"))
                        .as(path)
                        .singleElement()
                        .asString()
                        .matches("(?i)" + type);
                assertThat(page.headers().get("x-content-type-options"))
                        .as(path)
                        .contains("nosniff");
            });
            for (String path : List.of(base + "/file", "/everything.zip")) {
                assertThat(visitor.get(path).headers().get("content-disposition"))
                        .as("goes out as a file, under a plain name")
                        .singleElement()
                        .asString()
                        .matches("attachment; filename=\"[a-z0-9.-]+\"");
            }
        }
    }

    @Test
    void readingChangesNothing() {
        try (Visitor visitor = Visitor.in(folder.resolve("reading"))) {
            String base = visitor.example();
            List<String> changes = List.of(
                    "/builds",
                    "/builds/file",
                    "/everything",
                    base + "/measure/cylinder.bore",
                    base + "/preview/cylinder.bore",
                    base + "/choice/engine.valves",
                    base + "/text",
                    base + "/undo",
                    base + "/back",
                    base + "/name",
                    base + "/away",
                    base + "/fit",
                    base + "/fit/take",
                    "/parts",
                    "/parts/demo");
            for (String path : changes) {
                String query = "?token=" + visitor.token() + "&based=1&key=" + Visitor.key()
                        + "&what=example&reading=66&unit=mm&how=read&entry=0&name=x&text=x";
                assertThat(visitor.get(path + query).status()).as(path).isLessThan(500);
            }
            assertThat(visitor.serving().store().builds())
                    .singleElement()
                    .satisfies(build -> assertThat(build.latest()).isEqualTo(1));
        }
    }

    @Test
    void noAddressHoldsTheToken() {
        try (Visitor visitor = Visitor.in(folder.resolve("addresses"))) {
            String token = visitor.token();
            String base = visitor.example();
            for (String path :
                    List.of("/builds", "/parts", base + "/measure", base + "/measure/cylinder.bore", base + "/fit")) {
                assertThat(visitor.get(path).body())
                        .as(path)
                        .contains(token)
                        .doesNotContainPattern("(href|src|action|hx-get|hx-post)=\"[^\"]*" + token);
            }
            Visitor.Page kept = visitor.post(
                    base + "/measure/cylinder.bore",
                    Map.of("based", "1", "key", Visitor.key(), "entry", "0", "how", "read", "unit", "mm"),
                    List.of("66.01"));
            assertThat(kept.status()).isEqualTo(303);
            assertThat(kept.location()).doesNotContain(token);
        }
    }
}
