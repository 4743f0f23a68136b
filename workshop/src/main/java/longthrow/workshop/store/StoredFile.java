package longthrow.workshop.store;

import java.time.Instant;

/**
 * A photo or a table attached to a revision of a build.
 *
 * @param name   as its owner called it; never a path on this machine
 * @param sha256 of its content, by which {@link Store#content} finds it, 64 small hexadecimal digits
 */
public record StoredFile(
        BuildId build, int revision, String name, String mediaType, String sha256, long bytes, Instant attached) {}
