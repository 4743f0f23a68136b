package longthrow.workshop.store;

/** What became of a save: {@link Saved}, or {@link Outdated} and not applied. */
public sealed interface SaveResult {
    /**
     * The edit is a revision now, and on the disk.
     *
     * @param again true where the same key had been saved before: this is that first revision, nothing was added
     */
    record Saved(RevisionEntry revision, boolean again) implements SaveResult {}

    /**
     * The edit was not applied: the build had moved on since the revision it was based on.
     *
     * @param latest what the build says now, for {@link Store#compare} and a choice
     */
    record Outdated(Revision latest) implements SaveResult {}
}
