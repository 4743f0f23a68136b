package longthrow.workshop.web.measure;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Optional;
import longthrow.core.measure.Glimpse;
import longthrow.workshop.web.Desk;
import org.junit.jupiter.api.Test;

class PreviewsTest {
    private final Previews previews = new Previews();

    @Test
    void ofAFormTheLastAskingIsTheNewestAndFormsDoNotOvertakeEachOther() {
        Previews.Asked first = previews.ask("one");
        Previews.Asked other = previews.ask("other");
        assertThat(previews.isNewest(first)).isTrue();
        Previews.Asked second = previews.ask("one");
        assertThat(previews.isNewest(first)).isFalse();
        assertThat(previews.isNewest(second)).isTrue();
        assertThat(previews.isNewest(other)).isTrue();
    }

    /** Working out too much is better than nothing on the page. */
    @Test
    void aFormThatWasForgottenIsStillAnswered() {
        Previews.Asked asked = previews.ask("one");
        for (int i = 0; i < 1_000; i++) {
            previews.ask("other " + i);
        }
        assertThat(previews.isNewest(asked)).isTrue();
    }

    @Test
    void whatWasOvertakenIsNotWorkedOutUnlessItIsKnown() {
        Desk desk = new Desk();
        Previews.Asked asked = previews.ask("one");
        previews.ask("one");
        String text = "longthrow: 1\nengine:\n  name: One\n";
        assertThat(desk.glance(text, () -> previews.isNewest(asked))).isEqualTo(Optional.empty());
        Glimpse known = desk.glance(text);
        assertThat(desk.glance(text, () -> previews.isNewest(asked))).contains(known);
    }
}
