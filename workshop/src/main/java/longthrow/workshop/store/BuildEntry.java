package longthrow.workshop.store;

import java.time.Instant;
import java.util.Optional;

/**
 * A build in the list of builds.
 *
 * @param latest   number of its newest revision, 1 or more
 * @param saved    when that revision was saved
 * @param archived when it was put away; empty while it is in use
 */
public record BuildEntry(
        BuildId id, String name, Instant created, int latest, Instant saved, Optional<Instant> archived) {}
