package longthrow.workshop.web.builds;

import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import longthrow.core.answer.Answer;
import longthrow.core.answer.Finding;
import longthrow.core.build.Build;
import longthrow.workshop.store.BuildEntry;
import longthrow.workshop.web.Desk;
import longthrow.workshop.web.Rail;
import longthrow.workshop.web.Ways;
import longthrow.workshop.web.Workbench;

/**
 * One build in the list.
 * @param worked whether it is worked out; else its state is asked for afterwards
 * @param sign   of its state, so that colour is not the only one
 * @param state  for the style sheet
 * @param label  of its state
 * @param stops  what stands in its way first, at most a few
 * @param counts how much stands in its way
 * @param begun  when it was begun, where another has the same name; else empty
 * @param damage why its newest revision cannot be read; empty where it can
 */
public record BuildCard(
        String name,
        String base,
        boolean invented,
        boolean worked,
        String sign,
        String state,
        String label,
        List<String> stops,
        String counts,
        int revision,
        String saved,
        String begun,
        String damage) {
    private static final DateTimeFormatter WHEN = DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm", Locale.ROOT);

    /** So many stops are named; layout. */
    private static final int MOST_STOPS = 2;

    public BuildCard {
        stops = List.copyOf(stops);
    }

    /** A build with what is known of it. */
    static BuildCard of(BuildEntry entry, Optional<Desk.Work> work) {
        Optional<Answer> measure = work.flatMap(Desk.Work::measure);
        Rail.State state = measure.map(Rail::state).orElse(Rail.State.UNKNOWN);
        return new BuildCard(
                entry.name(),
                Workbench.base(entry.id()),
                work.flatMap(Desk.Work::build).map(Build::invented).orElse(false),
                work.isPresent(),
                state.sign(),
                state.key(),
                work.isPresent() && measure.isEmpty() ? "its text cannot be read" : state.label(),
                measure.map(BuildCard::stops).orElse(List.of()),
                measure.map(BuildCard::counts).orElse(""),
                entry.latest(),
                when(entry.saved()),
                "",
                "");
    }

    /** The same with when it was begun. */
    BuildCard begun(java.time.Instant created) {
        return new BuildCard(
                name,
                base,
                invented,
                worked,
                sign,
                state,
                label,
                stops,
                counts,
                revision,
                saved,
                when(created),
                damage);
    }

    /** A build whose newest revision cannot be read as it was saved. */
    static BuildCard damaged(BuildEntry entry, String why) {
        return new BuildCard(
                entry.name(),
                Workbench.base(entry.id()),
                false,
                true,
                Rail.State.UNKNOWN.sign(),
                Rail.State.UNKNOWN.key(),
                "damaged",
                List.of(),
                "",
                entry.latest(),
                when(entry.saved()),
                "",
                why);
    }

    /** Refused before not approved. */
    private static List<String> stops(Answer answer) {
        return answer.stops().stream()
                .sorted((a, b) -> Boolean.compare(b.refused(), a.refused()))
                .limit(MOST_STOPS)
                .map(s -> (s.refused() ? "Refused: " : "Not approved: ") + s.what())
                .toList();
    }

    private static String counts(Answer answer) {
        long suspects = answer.findings().stream()
                .filter(f -> f.kind() == Finding.Kind.SUSPECT)
                .count();
        return Ways.stops(answer) + ", " + many(suspects, "suspect") + ", "
                + many(answer.unknowns().size(), "unknown");
    }

    private static String many(long count, String what) {
        return count + " " + what + (count == 1 ? "" : "s");
    }

    /** A time as the clock of this machine shows it. */
    static String when(java.time.Instant time) {
        return WHEN.format(time.atZone(ZoneId.systemDefault()));
    }
}
