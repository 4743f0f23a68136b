package longthrow.core.answer;

import java.util.List;
import java.util.Optional;

/**
 * What lets go first, and whether the speed wanted may be run.
 * @param approval of the whole
 * @param rungs    in the way of the speed asked for first, then weakest first, those that no speed decides last
 * @param start    whether it will start
 */
public record LimitLadder(Approval approval, List<Rung> rungs, Start start) {
    public LimitLadder {
        rungs = List.copyOf(rungs);
    }

    /**
     * Turning it over by hand.
     * @param figures   pull, work, speeds of kick-back
     * @param missing   what would have to be read for the rest
     * @param sentences what it comes to, in plain words
     */
    public record Start(List<Shaking.Figure> figures, List<Rung.Missing> missing, List<String> sentences) {
        /** Nothing can be said. */
        public static final Start NOTHING = new Start(List.of(), List.of(), List.of());

        public Start {
            figures = List.copyOf(figures);
            missing = List.copyOf(missing);
            sentences = List.copyOf(sentences);
        }
    }

    /** The rung with this key, if it is asked of such an engine. */
    public Optional<Rung> rung(String key) {
        return rungs.stream().filter(r -> r.key().equals(key)).findFirst();
    }
}
