package longthrow.workshop.web;

import java.util.List;
import java.util.Optional;
import longthrow.buildfile.BuildFile;
import longthrow.core.answer.Answer;
import longthrow.core.answer.Stop;
import longthrow.core.build.Build;
import longthrow.core.clear.Clear;
import longthrow.core.clear.Drawn;
import longthrow.core.clear.ReliefCut;
import longthrow.core.engine.GapStops;

/** Whether anything touches in an engine, worked out once for each text of late: it takes seconds, so no two are worked out at once. */
public final class Clearances {
    private static final int MOST_REMEMBERED = 8;

    private final Workbench bench;
    private final Lately<String, Seen> seen = new Lately<>(MOST_REMEMBERED, this::look);
    private final Turns turns = new Turns(1);

    /**
     * None worked out yet.
     * @param bench whose rail says how far each came
     */
    public Clearances(Workbench bench) {
        this.bench = bench;
    }

    /**
     * What was found.
     * @param answer to clear
     * @param drawn  its pairs as they are drawn
     * @param cuts   what comes off parts, of the gravest few pairs that are cut to an outline
     */
    public record Seen(Answer answer, List<Drawn> drawn, List<ReliefCut> cuts) {
        public Seen {
            drawn = List.copyOf(drawn);
            cuts = List.copyOf(cuts);
        }
    }

    private Seen look(String text) {
        Build build = BuildFile.read(text).build().orElseThrow();
        Answer answer = Clear.of(build);
        bench.remember(Rail.Question.CLEAR, text, List.of(), Rail.cleared(answer));
        bench.rememberGaps(text, stops(answer));
        return new Seen(answer, Drawn.of(build), ReliefCut.gravest(build, answer));
    }

    /** Of an answer to clear, those that are there because of gaps. */
    static List<Stop> stops(Answer clear) {
        return clear.stops().stream().filter(GapStops::isOfGaps).toList();
    }

    /** Works it out, or remembers. */
    public Seen of(String text) {
        return turns.of(seen, text, () -> true).orElseThrow();
    }

    /** What is remembered; nothing is begun. */
    public Optional<Seen> ifKnown(String text) {
        return seen.ifKnown(text);
    }
}
