package longthrow.core.dyno;

import java.util.List;
import java.util.Optional;
import longthrow.core.answer.DynoRuns;
import longthrow.core.recording.Recording;

/**
 * What became of a logger's file.
 * @param recording its rows; empty where it could not be read
 * @param told      what it was recognised as and which lines are no rows
 * @param trouble   why it could not be read; empty where it was
 */
public record Logged(Optional<Recording> recording, DynoRuns.Log told, String trouble) {
    public Logged {
        if (recording.isEmpty() == trouble.isEmpty()) {
            throw new IllegalArgumentException("a log has rows or a reason why not, and only one of them");
        }
    }

    /** It could not be read. */
    public static Logged refused(String file, String why) {
        return new Logged(Optional.empty(), new DynoRuns.Log(file, 0, 0, List.of(), List.of(why)), why);
    }
}
