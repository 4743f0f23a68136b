package longthrow.workshop.store;

/** A revision with the build file exactly as it was typed. */
public record Revision(RevisionEntry entry, String text) {
    /** The revision's number. */
    public int number() {
        return entry.number();
    }
}
