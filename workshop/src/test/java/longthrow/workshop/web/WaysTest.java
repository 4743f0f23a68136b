package longthrow.workshop.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

/** Where Life does not approve and nothing else says so, the list does: no page says that nothing stands in the way of an engine that may not be run. */
class WaysTest {
    private static final String BASE = "/b/x";

    private static Frame.Way way(String kind) {
        return new Frame.Way(kind, "something", "", "", List.of(), false);
    }

    @Test
    void limitsThatDoNotApproveStandInTheWay() {
        List<Frame.Way> ways = Ways.withLimits(List.of(way("unknown")), Rail.State.NOT_APPROVED, BASE);
        assertThat(ways).hasSize(2);
        assertThat(ways.get(0).kind()).isEqualTo("not approved");
        assertThat(ways.get(0).address()).isEqualTo("/b/x/life");
        assertThat(ways.get(0).refused()).isFalse();
    }

    @Test
    void aRefusalIsSaidBesideWhatIsOnlyNotApproved() {
        List<Frame.Way> ways = Ways.withLimits(List.of(way("not approved")), Rail.State.REFUSED, BASE);
        assertThat(ways).extracting(Frame.Way::kind).containsExactly("refused", "not approved");
        assertThat(ways.get(0).refused()).isTrue();
    }

    @Test
    void nothingIsSaidTwiceNorBeforeItIsKnown() {
        List<Frame.Way> stopped = List.of(way("not approved"));
        assertThat(Ways.withLimits(stopped, Rail.State.NOT_APPROVED, BASE)).isEqualTo(stopped);
        List<Frame.Way> none = List.of();
        assertThat(Ways.withLimits(none, Rail.State.COMING, BASE)).isEmpty();
        assertThat(Ways.withLimits(none, Rail.State.ANSWERED, BASE)).isEmpty();
        assertThat(Ways.withLimits(none, null, BASE)).isEmpty();
    }
}
