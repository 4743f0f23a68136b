package longthrow.workshop.store;

import java.util.Optional;
import java.util.UUID;

/** Names one build for good: it stays the same through renaming, and in every archive the build goes into. */
public record BuildId(UUID uuid) {
    /** A new one, which no other build has. */
    public static BuildId fresh() {
        return new BuildId(UUID.randomUUID());
    }

    /** The identity written as {@link #toString} writes it; empty where the text is none. */
    public static Optional<BuildId> parse(String text) {
        return StoredText.uuid(text).map(BuildId::new);
    }

    @Override
    public String toString() {
        return uuid.toString();
    }
}
