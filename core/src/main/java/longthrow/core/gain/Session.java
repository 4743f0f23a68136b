package longthrow.core.gain;

import java.util.List;
import java.util.Optional;

/**
 * Pulls in a row with nothing changed between them.
 * @param name  for people
 * @param setup what was on the engine; sessions of one setup have the same word here
 * @param air   the weather's factor; empty where nothing was read of the air, and then no session of the campaign may have one
 * @param runs  in the order in which they were made, the first one too
 */
public record Session(String name, String setup, Optional<AirCorrection> air, List<Run> runs) {
    public Session {
        runs = List.copyOf(runs);
        if (setup.isBlank()) {
            throw new IllegalArgumentException("session " + name + " does not say what was on the engine");
        }
        if (runs.isEmpty()) {
            throw new IllegalArgumentException("session " + name + " has no runs; leave it out or enter them");
        }
    }

    double factor() {
        return air.map(a -> a.factor().value()).orElse(1.0);
    }
}
