package longthrow.core.book;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import longthrow.core.answer.Answer;
import longthrow.core.answer.Clearance;
import longthrow.core.answer.Clearance.Gap;
import longthrow.core.answer.Verdict;
import longthrow.core.build.Build;
import longthrow.core.build.MockedUp;
import longthrow.core.engine.Alternative;
import longthrow.core.term.MovingPair;

/** What was mocked up of the pairs behind an assembly target: the least of them, how many of how many, and how they stand to what the trade wants. */
final class MockedGaps {
    private final Build build;
    private final Optional<Answer> clear;
    private final Words words;

    /** @param clear where it was asked; without it nobody knows whether a reading still tells, and it is told as it was written */
    MockedGaps(Build build, Optional<Answer> clear, Words words) {
        this.build = build;
        this.clear = clear;
        this.words = words;
    }

    /**
     * A pair that was mocked up.
     * @param label of the pair
     * @param said  its gap, or why the reading does not count
     * @param least at the best estimate [m]; infinite where the reading does not count
     */
    private record Told(String label, String said, double least) {}

    /** The least gap, with its pair where there are several, and how many are not mocked up; empty where none is. */
    String brief(Set<MovingPair> pairs) {
        List<Told> told = told(pairs);
        if (told.isEmpty()) {
            return "";
        }
        Told least = told.get(0);
        long all = pairs(pairs);
        return nearer(pairs, least)
                + (all > 1 ? least.label() + " " : "")
                + least.said()
                + (all > 1 ? "; " + count(told, all) : "");
    }

    /** A pair that nobody mocked up and that is drawn closer than the least of those, which alone would hide it; empty where there is none. */
    private String nearer(Set<MovingPair> pairs, Told least) {
        return known(pairs).stream()
                .filter(pair -> pair.mocked().isEmpty())
                .filter(pair ->
                        pair.cold().filter(gap -> gap.value() < least.least()).isPresent())
                .min(Comparator.comparingDouble(
                        pair -> pair.cold().orElseThrow().value()))
                .map(pair -> pair.one() + " to " + pair.other() + " "
                        + words.gap(pair.cold().orElseThrow()) + " as drawn; mocked up: ")
                .orElse("");
    }

    /** Each gap; empty where none is mocked up. */
    String line(Set<MovingPair> pairs) {
        List<Told> told = told(pairs);
        if (told.isEmpty()) {
            return "";
        }
        long all = pairs(pairs);
        return nearer(pairs, told.get(0))
                + told.stream()
                        .map(t -> (all > 1 ? t.label() + " " : "") + t.said())
                        .collect(Collectors.joining("; "))
                + (all > 1 ? "; " + count(told, all) : "");
    }

    /** What tells no more is not counted. */
    private String count(List<Told> told, long all) {
        long some = told.stream()
                .filter(t -> clear.isEmpty() || Double.isFinite(t.least()))
                .count();
        return some == all ? "all " + all + " pairs mocked up" : some + " of " + all + " pairs mocked up";
    }

    /**
     * How all the pairs that the engine has stand to a limit: not kept where one does not keep it, kept only where each is known to.
     * @param key of the limit
     */
    Verdict.State state(Set<MovingPair> pairs, String key, Alternative limit) {
        List<Verdict.State> states = known(pairs).stream()
                .map(pair -> pair.limits().stream()
                        .filter(l -> l.key().equals(key))
                        .map(Clearance.Limit::state)
                        .findFirst()
                        .orElse(Verdict.State.UNKNOWN))
                .toList();
        if (states.isEmpty()) {
            return Verdict.State.UNKNOWN;
        }
        for (Verdict.State worst : List.of(Verdict.State.FAILS, Verdict.State.UNKNOWN, Verdict.State.NEAR)) {
            if (states.contains(worst)) {
                return worst;
            }
        }
        return limit.upper().isPresent()
                ? Verdict.State.UNKNOWN
                : Verdict.State.MEETS; // a gap is held against its least alone
    }

    private List<Clearance> known(Set<MovingPair> pairs) {
        return clear.map(Answer::clearances).orElse(List.of()).stream()
                .filter(c -> MovingPair.at(c.key()).filter(pairs::contains).isPresent())
                .toList();
    }

    /** How many of them this engine has; as many as were mocked up where that was not asked. */
    private long pairs(Set<MovingPair> pairs) {
        return clear.isPresent() ? known(pairs).size() : pairs.size();
    }

    /** The least first. */
    private List<Told> told(Set<MovingPair> pairs) {
        List<Told> told = new ArrayList<>();
        if (clear.isEmpty()) {
            build.mockedUp().stream()
                    .filter(m -> pairs.contains(m.pair()))
                    .map(MockedGaps::asWritten)
                    .forEach(told::add);
            return told;
        }
        for (Clearance pair : known(pairs)) {
            if (!pair.mocked().isEmpty()) {
                told.add(told(pair));
            }
        }
        told.sort(Comparator.comparingDouble(Told::least));
        return told;
    }

    private static Told asWritten(MockedUp entry) {
        return new Told(entry.pair().label(), entry.found().written() + ", as mocked up", Double.POSITIVE_INFINITY);
    }

    private Told told(Clearance pair) {
        String label = pair.one() + " to " + pair.other();
        Optional<Gap> counts = pair.cold().filter(gap -> pair.mocked().stream().anyMatch(Clearance.Mocked::counts));
        if (counts.isPresent()) {
            return new Told(label, words.gap(counts.get()), counts.get().value());
        }
        String read = pair.mocked().stream().map(Clearance.Mocked::read).collect(Collectors.joining("; "));
        return pair.cold()
                .map(gap -> new Told(label, words.gap(gap) + " as drawn counts; mocked up " + read, gap.value()))
                .orElseGet(() -> new Told(
                        label,
                        "mocked up " + read + ", which tells no more: see What touches",
                        Double.POSITIVE_INFINITY));
    }
}
