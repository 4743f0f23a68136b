package longthrow.workshop;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import longthrow.buildfile.BuildFile;
import longthrow.core.answer.Clearance;
import longthrow.core.build.Build;
import longthrow.core.clear.Clear;
import org.junit.jupiter.api.Test;

/** Gaps, limits and shake worked out beside the requests: rail and list know them though nobody opened their pages. */
class AheadTest extends OverHttp {
    private static final String COMING = "being worked out";

    private static final String MOCK_IT_UP = "do not turn it under power before it has been mocked up";

    /** Three questions of a program that has just begun, beside other tests. */
    private static final Duration WITHIN = Duration.ofMinutes(2);

    private static String asks(Visitor.Page page) {
        Matcher place = Pattern.compile("data-asks=\"([^\"]+)\"").matcher(page.body());
        assertThat(place.find()).as("where the rail is asked for").isTrue();
        return place.group(1).replace("&amp;", "&");
    }

    private Visitor.Page whenItIsThere(String asks) throws InterruptedException {
        Instant end = Instant.now().plus(WITHIN);
        Visitor.Page rail = visitor.get(asks);
        while (rail.words().contains(COMING)) {
            assertThat(Instant.now()).as("it comes by itself").isBefore(end);
            Thread.sleep(100);
            rail = visitor.get(asks);
        }
        return rail;
    }

    private static String rail(Visitor.Page page) {
        Matcher rail = Pattern.compile("(?s)<nav class=\"rail\".*?</nav>").matcher(page.body());
        assertThat(rail.find()).isTrue();
        return rail.group().replaceAll("(?s)<[^>]*>", " ").replaceAll("\\s+", " ");
    }

    @Test
    void railAndListTakeTheAnswersThatNobodyAskedFor() throws InterruptedException {
        String base = visitor.example();
        Visitor.Page first = visitor.get(base + "/measure");
        assertThat(rail(first)).contains("Clear … " + COMING, "Life … " + COMING, "Shake … " + COMING);
        assertThat(first.words())
                .contains(
                        "Whether anything touches is " + COMING,
                        "Until it is said here, do not turn the engine under power")
                .doesNotContain(MOCK_IT_UP);
        Visitor.Page news = whenItIsThere(asks(first));
        assertThat(news.status()).isEqualTo(200);
        assertThat(news.body()).doesNotContain("<main", "data-asks");
        Visitor.Page next = visitor.get(base + "/measure");
        assertThat(next.words()).as("without script the next page has it").doesNotContain(COMING);
        assertThat(rail(next)).isEqualTo(rail(news)).contains("Clear ■ not approved", "Shake ~ near");
        Visitor.Page asked = visitor.get(base + "/life?now=1");
        assertThat(rail(asked)).as("as those who open the pages see it").isEqualTo(rail(next));
        assertThat(visitor.get(base + "/rail?revision=7&here=measure").status())
                .as("of another revision nothing is said")
                .isEqualTo(204);
    }

    /** Each pair of a longer throw mocked up with room: no page says any more that it must be, and none was opened for it. */
    @Test
    void whereEveryPairIsKnownNobodyIsSentToMockItUp() throws IOException, InterruptedException {
        String longer = Files.readString(Path.of("../examples/scenarios/s1-longer-throw.yaml"));
        Build build = BuildFile.read(longer).build().orElseThrow();
        String known = longer + "\nmocked_up:\n"
                + Clear.of(build).clearances().stream()
                        .filter(pair -> pair.state() == Clearance.State.UNKNOWN)
                        .map(pair -> "  - {pair: " + pair.key()
                                + ", way: feeler, gap: 4.0 mm, both_ways: yes, with_stroke: 56.5 mm}\n")
                        .collect(Collectors.joining());
        String base = kept(longer);
        assertThat(whenItIsThere(asks(visitor.get(base + "/measure"))).words()).contains(MOCK_IT_UP);
        String all = kept(known);
        Visitor.Page first = visitor.get(all + "/measure");
        assertThat(first.words()).doesNotContain(MOCK_IT_UP);
        assertThat(whenItIsThere(asks(first)).words()).doesNotContain(MOCK_IT_UP);
        assertThat(visitor.get(all + "/measure").words()).doesNotContain(MOCK_IT_UP, COMING);
    }

    private String kept(String text) {
        return visitor.upload(
                        "/builds/file",
                        "longer.yaml",
                        text.getBytes(StandardCharsets.UTF_8),
                        Map.of("key", Visitor.key()))
                .location()
                .replace("/measure", "");
    }

    /** Whoever reads and types goes first: between two of his requests nothing is begun, once he rests it is. */
    @Test
    void itWaitsUntilNobodyAsksForAnything() throws InterruptedException {
        String base = visitor.example();
        Visitor.Page first = visitor.get(base + "/measure");
        Instant end = Instant.now().plusSeconds(4);
        while (Instant.now().isBefore(end)) {
            visitor.get(base + "/history");
            Thread.sleep(50);
        }
        assertThat(visitor.get(asks(first)).words()).contains("Clear … " + COMING, "Shake … " + COMING);
        whenItIsThere(asks(first));
    }
}
