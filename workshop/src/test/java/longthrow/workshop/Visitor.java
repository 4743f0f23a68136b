package longthrow.workshop;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.net.URI;
import java.net.URLDecoder;
import java.net.URLEncoder;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** A workshop served over real HTTP, and somebody who visits it as a browser without script would. */
final class Visitor implements AutoCloseable {
    private static final Pattern HIDDEN = Pattern.compile("<input type=\"hidden\" name=\"(\\w+)\" value=\"([^\"]*)\">");

    private final HttpClient client =
            HttpClient.newBuilder().followRedirects(HttpClient.Redirect.NEVER).build();
    private final String address;
    private final Runnable ending;
    private final @Nullable Serving serving;
    private String notice = "";

    private Visitor(String address, Runnable ending, @Nullable Serving serving) {
        this.address = address;
        this.ending = ending;
        this.serving = serving;
    }

    static Visitor in(Path folder) {
        try {
            Serving serving = Serving.start(folder, 0, Example.ofThisProgram());
            return new Visitor(serving.address(), serving::close, serving);
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }

    /** Of a program in its own process, which ends with the visit. */
    static Visitor of(ServedProgram program) {
        return new Visitor(program.address(), program::close, null);
    }

    String address() {
        return address;
    }

    /** What came back. */
    record Page(int status, String body, String location, Map<String, List<String>> headers) {
        /** Value of a hidden field of the first form that has it. */
        String hidden(String name) {
            Matcher fields = HIDDEN.matcher(body);
            while (fields.find()) {
                if (fields.group(1).equals(name)) {
                    return fields.group(2);
                }
            }
            throw new AssertionError("no hidden field " + name + " in:\n" + body);
        }

        /** Text without marks. */
        String words() {
            return body.replaceAll("(?s)<[^>]*>", " ")
                    .replace("&#39;", "'")
                    .replace("&#34;", "\"")
                    .replace("&amp;", "&")
                    .replace("&lt;", "<")
                    .replace("&gt;", ">")
                    .replaceAll("\\s+", " ");
        }
    }

    Serving serving() {
        return Objects.requireNonNull(serving, "the workshop runs in a process of its own");
    }

    Page get(String address) {
        return send(request(address).GET());
    }

    /** As a browser comes to a page with what the change before left for it. */
    Page getWith(String address, String cookie) {
        return send(request(address).header("Cookie", cookie).GET());
    }

    /** A form sent, with the token that is on every page. */
    Page post(String address, Map<String, String> fields) {
        return post(address, fields, List.of());
    }

    /** A form with several boxes of one name. */
    Page post(String address, Map<String, String> fields, List<String> readings) {
        Map<String, String> all = new LinkedHashMap<>(fields);
        all.putIfAbsent("token", token());
        String body = all.entrySet().stream()
                .map(f -> f.getKey() + "=" + URLEncoder.encode(f.getValue(), StandardCharsets.UTF_8))
                .collect(Collectors.joining("&"));
        for (String reading : readings) {
            body += "&reading=" + URLEncoder.encode(reading, StandardCharsets.UTF_8);
        }
        return send(request(address)
                .header("Content-Type", "application/x-www-form-urlencoded")
                .POST(HttpRequest.BodyPublishers.ofString(body)));
    }

    /** A file sent. */
    Page upload(String address, String name, byte[] content, Map<String, String> fields) {
        String boundary = "----visitor" + UUID.randomUUID();
        ByteArrayOutputStream body = new ByteArrayOutputStream();
        Map<String, String> all = new LinkedHashMap<>(fields);
        all.putIfAbsent("token", token());
        all.forEach((field, value) -> write(
                body,
                "--" + boundary + "\r\nContent-Disposition: form-data; name=\"" + field + "\"\r\n\r\n" + value
                        + "\r\n"));
        write(
                body,
                "--" + boundary + "\r\nContent-Disposition: form-data; name=\"file\"; filename=\"" + name
                        + "\"\r\nContent-Type: application/octet-stream\r\n\r\n");
        body.writeBytes(content);
        write(body, "\r\n--" + boundary + "--\r\n");
        return send(request(address)
                .header("Content-Type", "multipart/form-data; boundary=" + boundary)
                .POST(HttpRequest.BodyPublishers.ofByteArray(body.toByteArray())));
    }

    byte[] download(String address) {
        try {
            return client.send(request(address).GET().build(), HttpResponse.BodyHandlers.ofByteArray())
                    .body();
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        } catch (InterruptedException e) {
            throw new IllegalStateException(e);
        }
    }

    /** Begins the invented example and gives the address of its pages. */
    String example() {
        return begin(Map.of("what", "example", "key", key()));
    }

    /** Begins an empty sheet and gives the address of its pages. */
    String empty(String name) {
        return begin(Map.of("what", "empty", "name", name, "key", key()));
    }

    private String begin(Map<String, String> fields) {
        Page page = post("/builds", fields);
        if (page.status() != 303) {
            throw new AssertionError(page.status() + " " + page.words());
        }
        return page.location().replace("/measure", "");
    }

    static String key() {
        return UUID.randomUUID().toString();
    }

    String token() {
        return get("/alive").body();
    }

    /** What the last change said it did. */
    String said() {
        return notice;
    }

    private HttpRequest.Builder request(String address) {
        return HttpRequest.newBuilder(URI.create(this.address).resolve(address));
    }

    private Page send(HttpRequest.Builder request) {
        try {
            HttpResponse<String> answer =
                    client.send(request.build(), HttpResponse.BodyHandlers.ofString(StandardCharsets.UTF_8));
            answer.headers().allValues("Set-Cookie").stream()
                    .filter(c -> c.startsWith("notice="))
                    .findFirst()
                    .ifPresent(c -> notice = URLDecoder.decode(
                            c.substring("notice=".length()).split(";", -1)[0], StandardCharsets.UTF_8));
            return new Page(
                    answer.statusCode(),
                    answer.body(),
                    answer.headers().firstValue("Location").orElse(""),
                    answer.headers().map());
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        } catch (InterruptedException e) {
            throw new IllegalStateException(e);
        }
    }

    private static void write(ByteArrayOutputStream body, String text) {
        body.writeBytes(text.getBytes(StandardCharsets.UTF_8));
    }

    @Override
    public void close() {
        ending.run();
    }
}
