package longthrow.workshop;

import java.io.IOException;
import java.net.URI;
import java.net.URLEncoder;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.UUID;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import longthrow.buildfile.BuildFile;
import longthrow.core.term.Term;
import longthrow.workshop.web.Desk;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Somebody who goes through the pages of a workshop that nobody sees, in a folder that is thrown away, so that the compiler knows pages and sums before
 * the first owner comes: Measure, a card, figures while typing, a reading kept, the history. Whoever asks the real workshop for something goes first.
 */
final class Rehearsal {
    /** Of pages; after so many they take no longer than after many more; measured on the example. */
    private static final int ROUNDS = 100;

    private static final int KEYS = 3;
    private static final Duration PATIENCE = Duration.ofSeconds(20);
    private static final Pattern HIDDEN = Pattern.compile("name=\"(\\w+)\" value=\"([^\"]*)\"");
    private static final Logger LOG = LoggerFactory.getLogger(Rehearsal.class);

    /** What is typed, and about how much of it [mm]. */
    private static final Map<Term, Double> TYPED = new LinkedHashMap<>(Map.of(
            Term.DECK_HEIGHT, 137.36,
            Term.GASKET_THICKNESS, 1.10,
            Term.PIN_DIAMETER, 16.00,
            Term.CAM_CORE, 14.10,
            Term.INTAKE_LIFT, 6.32));

    /** Sheets differ: readings more and fewer than the example has, agreeing or not, so that the compiler does not learn the one sheet by heart. */
    private static final List<Map<Term, String>> OTHERWISE = List.of(
            Map.of(Term.COMPRESSION_HEIGHT, "unknown"),
            Map.of(Term.BORE, "unknown"),
            Map.of(Term.DECK_HEIGHT, "137.36 mm", Term.CHAMBER_VOLUME, "unknown"),
            Map.of(Term.STROKE, "56.9 mm", Term.INTAKE_LIFT, "unknown"),
            Map.of(Term.GASKET_THICKNESS, "1.30 mm", Term.COMPRESSION_HEIGHT, "unknown"));

    /** What the compiler has learned serves all workshops of this process. */
    private static final AtomicBoolean DONE = new AtomicBoolean();

    private final HttpClient client =
            HttpClient.newBuilder().followRedirects(HttpClient.Redirect.NEVER).build();
    private final URI address;
    private final Desk desk;
    private final String token;

    private Rehearsal(String address, String token, Desk desk) {
        this.address = URI.create(address);
        this.token = token;
        this.desk = desk;
    }

    /**
     * Rehearses once in a process. What goes wrong ends it with a line in the log; the workshop that is served knows nothing of it.
     * @param desk of the workshop that is served
     * @throws InterruptedException when it is to end
     */
    static void once(Example example, Desk desk) throws InterruptedException {
        if (!DONE.compareAndSet(false, true)) {
            return;
        }
        boolean whole = false;
        try {
            desk.rehearse(sheets(example.build()));
            pages(example, desk);
            whole = true;
        } finally {
            DONE.compareAndSet(true, whole);
        }
    }

    private static List<String> sheets(String example) {
        List<String> sheets = new ArrayList<>(List.of(example));
        for (Map<Term, String> otherwise : OTHERWISE) {
            String text = example;
            for (Map.Entry<Term, String> entry : otherwise.entrySet()) {
                text = BuildFile.edit(text, entry.getKey().path(), entry.getValue())
                        .text()
                        .orElse(text);
            }
            sheets.add(text);
        }
        return sheets;
    }

    private static void pages(Example example, Desk desk) throws InterruptedException {
        Path folder;
        try {
            folder = Files.createTempDirectory("longthrow-rehearsal");
        } catch (IOException noRoom) {
            LOG.info("nothing rehearsed: {}", noRoom.toString());
            return;
        }
        try (Serving unseen = Serving.unseen(folder, example)) {
            Rehearsal rehearsal = new Rehearsal(unseen.address(), unseen.token(), desk);
            String build = rehearsal.begin();
            List<Term> terms = List.copyOf(TYPED.keySet());
            for (int round = 0; round < ROUNDS; round++) {
                rehearsal.round(build, terms.get(round % terms.size()), round);
            }
        } catch (IOException | RuntimeException wrong) {
            LOG.info("rehearsed in part: {}", wrong.toString());
        } finally {
            thrownAway(folder);
        }
    }

    private static void thrownAway(Path folder) {
        try (Stream<Path> all = Files.walk(folder)) {
            for (Path each : all.sorted(java.util.Comparator.reverseOrder()).toList()) {
                Files.deleteIfExists(each);
            }
        } catch (IOException left) {
            LOG.info("{} is left behind: {}", folder, left.toString());
        }
    }

    private String begin() throws IOException, InterruptedException {
        Map<String, String> fields = Map.of(
                "token", token, "what", "example", "key", UUID.randomUUID().toString());
        return post("builds", fields)
                .headers()
                .firstValue("Location")
                .orElseThrow(() -> new IOException("no build begun"))
                .replace("/measure", "");
    }

    private void round(String build, Term term, int round) throws IOException, InterruptedException {
        get(build + "/measure");
        String card = get(build + "/measure/" + term.path());
        Map<String, String> fields = new LinkedHashMap<>(Map.of(
                "token", token, "based", field(card, "based"), "key", field(card, "key"), "entry", "0", "how", "read"));
        fields.put("unit", "mm");
        fields.put("note", "");
        for (int key = 0; key < KEYS; key++) {
            fields.put("reading", reading(term, round * KEYS + key));
            post(build + "/preview/" + term.path(), fields);
        }
        post(build + "/measure/" + term.path(), fields);
        get(build + "/measure");
        get(build + "/history");
        get("builds");
    }

    private static String reading(Term term, int count) {
        return String.format(Locale.ROOT, "%.4f mm", TYPED.getOrDefault(term, 0.0) + 1e-4 * count);
    }

    private static String field(String page, String name) throws IOException {
        Matcher fields = HIDDEN.matcher(page);
        while (fields.find()) {
            if (fields.group(1).equals(name)) {
                return fields.group(2);
            }
        }
        throw new IOException("no field " + name);
    }

    private String get(String path) throws IOException, InterruptedException {
        return send(HttpRequest.newBuilder(address.resolve(path)).GET()).body();
    }

    private HttpResponse<String> post(String path, Map<String, String> fields)
            throws IOException, InterruptedException {
        String body = fields.entrySet().stream()
                .map(f -> f.getKey() + "=" + URLEncoder.encode(f.getValue(), StandardCharsets.UTF_8))
                .collect(Collectors.joining("&"));
        return send(HttpRequest.newBuilder(address.resolve(path))
                .header("Content-Type", "application/x-www-form-urlencoded")
                .POST(HttpRequest.BodyPublishers.ofString(body)));
    }

    private HttpResponse<String> send(HttpRequest.Builder request) throws IOException, InterruptedException {
        desk.letOthersFirst();
        return client.send(request.timeout(PATIENCE).build(), HttpResponse.BodyHandlers.ofString());
    }
}
