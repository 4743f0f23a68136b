package longthrow.workshop;

import java.io.IOException;
import java.net.URI;
import java.net.URLEncoder;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.TreeMap;
import java.util.UUID;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * Many people at one workshop over HTTP, several at each build. Each goes round and round: the page Measure, the card of a
 * quantity, three previews while typing, what was previewed last kept, the page again, every third time the history. Whoever finds that the build has
 * gone on meanwhile keeps theirs on top. Between two pages each pauses, between two keys a little.
 */
final class Crowd {
    /** One quantity for each who works at the same build, and a figure near which its readings lie [mm]. */
    private static final Map<String, Double> QUANTITIES = new LinkedHashMap<>(Map.of(
            "cylinder.deck_height", 137.36,
            "gasket.thickness", 1.10,
            "intake_valve.lift", 6.32,
            "camshaft.end_play", 0.18,
            "output_shaft.usable_length", 58.5));

    private static final Pattern HIDDEN = Pattern.compile("name=\"(\\w+)\" value=\"([^\"]*)\"");
    private static final int PREVIEWS = 3;
    private static final Duration WARM_UP = Duration.ofSeconds(30);
    private static final int MOST_TRIES = 200;
    private static final int STEPS = 2_000;
    /** At most so long, 99 times in 100 [ms]. */
    private static final int ASKED = 250;

    private final HttpClient client =
            HttpClient.newBuilder().followRedirects(HttpClient.Redirect.NEVER).build();
    private final URI address;
    private final String token;
    private final Pace pace;

    /**
     * Arrives.
     * @param token that changes carry
     */
    Crowd(URI address, String token, Pace pace) {
        this.address = address;
        this.token = token;
        this.pace = pace;
    }

    /**
     * How fast they are.
     * @param pageMilliseconds between two pages: from half of it to one and a half
     * @param keyMilliseconds  between two previews, likewise
     */
    record Pace(Duration lasts, int pageMilliseconds, int keyMilliseconds) {}

    /** An edit that was answered as kept. */
    record Acknowledged(String build, String quantity, UUID key, String note) {}

    /** What one of them, or all, saw. */
    static final class Seen {
        private final Map<String, List<Double>> milliseconds = new TreeMap<>();
        private final List<String> errors = new ArrayList<>();
        private final List<Acknowledged> kept = new ArrayList<>();
        private final List<Double> warm = new ArrayList<>(); // those begun after the first half minute
        private final long begun = System.nanoTime();
        private final Map<Integer, Integer> slow =
                new TreeMap<>(); // in each ten seconds, how many took longer than asked
        private int outdated;

        private void took(String what, long begunNanos) {
            double took = (System.nanoTime() - begunNanos) / 1e6;
            if (took > ASKED) {
                slow.merge((int) ((begunNanos - begun) / 10_000_000_000L), 1, Integer::sum);
            }
            milliseconds.computeIfAbsent(what, w -> new ArrayList<>()).add(took);
            if (begunNanos - begun > WARM_UP.toNanos()) {
                warm.add(took);
            }
        }

        private void add(Seen other) {
            other.milliseconds.forEach((what, all) ->
                    milliseconds.computeIfAbsent(what, w -> new ArrayList<>()).addAll(all));
            errors.addAll(other.errors);
            kept.addAll(other.kept);
            warm.addAll(other.warm);
            other.slow.forEach((when, many) -> slow.merge(when, many, Integer::sum));
            outdated += other.outdated;
        }

        List<String> errors() {
            return errors;
        }

        List<Acknowledged> kept() {
            return kept;
        }

        int outdated() {
            return outdated;
        }

        int requests() {
            return milliseconds.values().stream().mapToInt(List::size).sum();
        }

        /** Of all requests, how long it took to the last byte [ms]. */
        double percentile(double share) {
            return percentile(
                    milliseconds.values().stream().flatMap(List::stream).toList(), share);
        }

        private static double percentile(List<Double> all, double share) {
            List<Double> sorted = new ArrayList<>(all);
            Collections.sort(sorted);
            return sorted.get((int) Math.ceil(share * sorted.size()) - 1);
        }

        /** A line for each kind of request. */
        String table() {
            return milliseconds.entrySet().stream()
                    .map(e -> line(e.getKey(), e.getValue()))
                    .collect(Collectors.joining(
                            "\n",
                            "",
                            "\n"
                                    + line(
                                            "all",
                                            milliseconds.values().stream()
                                                    .flatMap(List::stream)
                                                    .toList())
                                    + (warm.isEmpty() ? "" : "\n" + line("warm", warm))
                                    + "\nlonger than " + ASKED + " ms, by tens of seconds: " + slow));
        }

        private static String line(String what, List<Double> all) {
            return String.format(
                    Locale.ROOT,
                    "%-8s %6d requests, median %5.0f ms, 95 %% %5.0f ms, 99 %% %5.0f ms, longest %5.0f ms",
                    what,
                    all.size(),
                    percentile(all, 0.5),
                    percentile(all, 0.95),
                    percentile(all, 0.99),
                    percentile(all, 1));
        }
    }

    /**
     * Asks for the style sheet, again and again: the visitors' own Java is new too, and would be timed with the workshop's. Of the workshop's pages and
     * sums this warms nothing.
     */
    void learnToWalk() throws InterruptedException {
        Person one = new Person(0, "", "");
        try {
            for (int i = 0; i < STEPS; i++) {
                one.get("walk", "/static/longthrow.css");
            }
        } catch (IOException failed) {
            throw new IllegalStateException(failed);
        }
    }

    /** Sends them all, spread evenly over the builds, and waits until the last has ended its round. */
    Seen work(int people, List<String> builds) throws InterruptedException {
        ExecutorService pool = Executors.newFixedThreadPool(people);
        try {
            List<Callable<Seen>> all = new ArrayList<>();
            List<String> quantities = List.copyOf(QUANTITIES.keySet());
            for (int person = 0; person < people; person++) {
                String build = builds.get(person % builds.size());
                String quantity = quantities.get(person / builds.size() % quantities.size());
                Person one = new Person(person, build, quantity);
                all.add(one::untilTheEnd);
            }
            Seen seen = new Seen();
            for (Future<Seen> done : pool.invokeAll(all)) {
                seen.add(done.get());
            }
            return seen;
        } catch (ExecutionException failed) {
            throw new IllegalStateException(failed);
        } finally {
            pool.shutdownNow();
        }
    }

    private final class Person {
        private final int number;
        private final String build;
        private final String quantity;
        private final SplittableRandom random;
        private final Seen seen = new Seen();

        Person(int number, String build, String quantity) {
            this.number = number;
            this.build = build;
            this.quantity = quantity;
            this.random = new SplittableRandom(20261125L + number);
        }

        Seen untilTheEnd() throws InterruptedException {
            long end = System.nanoTime() + pace.lasts().toNanos();
            pause(pace.pageMilliseconds()); // not all at once
            for (int round = 0; System.nanoTime() < end; round++) {
                try {
                    round(round);
                } catch (IOException failed) {
                    seen.errors.add("person " + number + ": " + failed);
                }
            }
            return seen;
        }

        private void round(int round) throws IOException, InterruptedException {
            get("page", build + "/measure");
            pause(pace.pageMilliseconds());
            String card = get("card", build + "/measure/" + quantity);
            pause(pace.pageMilliseconds());
            String key = field(card, "key");
            String note = "person " + number + " round " + round + " " + key;
            String reading = "";
            for (int typed = 0; typed < PREVIEWS; typed++) {
                reading = reading();
                post("preview", build + "/preview/" + quantity, form(field(card, "based"), key, reading, note), 200);
                pause(pace.keyMilliseconds());
            }
            keep(field(card, "based"), key, reading, note);
            get("page", build + "/measure");
            pause(pace.pageMilliseconds());
            if (round % 3 == 2) {
                get("history", build + "/history");
                pause(pace.pageMilliseconds());
            }
        }

        private void keep(String begun, String key, String reading, String note)
                throws IOException, InterruptedException {
            String based = begun;
            for (int tries = 0; tries < MOST_TRIES; tries++) {
                HttpResponse<String> answer =
                        post("keep", build + "/measure/" + quantity, form(based, key, reading, note), 303, 409);
                if (answer.statusCode() == 303) {
                    seen.kept.add(new Acknowledged(build, quantity, UUID.fromString(key), note));
                    return;
                }
                if (answer.statusCode() != 409) {
                    return;
                }
                seen.outdated++;
                based = field(answer.body(), "based");
            }
            seen.errors.add("person " + number + ": outdated " + MOST_TRIES + " times in a row");
        }

        private String reading() {
            return String.format(
                    Locale.ROOT, "%.4f mm", QUANTITIES.getOrDefault(quantity, 0.0) + 0.01 * random.nextDouble());
        }

        private Map<String, String> form(String based, String key, String reading, String note) {
            return Map.of(
                    "token",
                    token,
                    "based",
                    based,
                    "key",
                    key.toString(),
                    "entry",
                    "0",
                    "how",
                    "read",
                    "unit",
                    "mm",
                    "reading",
                    reading,
                    "note",
                    note);
        }

        private String get(String what, String path) throws IOException, InterruptedException {
            return send(what, HttpRequest.newBuilder(address.resolve(path)).GET(), 200)
                    .body();
        }

        private HttpResponse<String> post(String what, String path, Map<String, String> fields, Integer... expected)
                throws IOException, InterruptedException {
            String body = fields.entrySet().stream()
                    .map(f -> f.getKey() + "=" + URLEncoder.encode(f.getValue(), StandardCharsets.UTF_8))
                    .collect(Collectors.joining("&"));
            return send(
                    what,
                    HttpRequest.newBuilder(address.resolve(path))
                            .header("Content-Type", "application/x-www-form-urlencoded")
                            .POST(HttpRequest.BodyPublishers.ofString(body)),
                    expected);
        }

        private HttpResponse<String> send(String what, HttpRequest.Builder request, Integer... expected)
                throws IOException, InterruptedException {
            long begun = System.nanoTime();
            HttpResponse<String> answer = client.send(
                    request.timeout(Duration.ofSeconds(60)).build(),
                    HttpResponse.BodyHandlers.ofString(StandardCharsets.UTF_8));
            seen.took(what, begun);
            if (!List.of(expected).contains(answer.statusCode())) {
                seen.errors.add("person " + number + ": " + what + " answered " + answer.statusCode() + ": "
                        + answer.body().replaceAll("(?s)<[^>]*>", " ").replaceAll("\\s+", " "));
            }
            return answer;
        }

        private void pause(int about) throws InterruptedException {
            Thread.sleep(about / 2 + random.nextInt(about + 1));
        }
    }

    private static String field(String page, String name) {
        Matcher fields = HIDDEN.matcher(page);
        while (fields.find()) {
            if (fields.group(1).equals(name)) {
                return fields.group(2);
            }
        }
        throw new AssertionError("no field " + name + " in:\n" + page);
    }
}
