package longthrow.workshop.store;

import java.time.Instant;
import java.util.UUID;

/**
 * A catalogue its owner imported, kept as the file it was.
 *
 * @param sha256 of its content, by which {@link Store#content} finds it
 * @param active whether its owner wants parts from it
 */
public record CatalogueEntry(UUID id, String name, String sha256, long bytes, Instant imported, boolean active) {}
