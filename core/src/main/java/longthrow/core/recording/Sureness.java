package longthrow.core.recording;

/** How sure it is what a column means, the surest first. */
public enum Sureness {
    /** The owner said so. */
    TOLD("you said so"),
    /** Word and unit both stand in the file, and the figures fit them. */
    SURE("sure"),
    /** One of them was concluded; nothing speaks against it. */
    LIKELY("likely"),
    /** Two readings are possible, or none was found: not used before the owner has said which. */
    OPEN("to be said");

    private final String words;

    Sureness(String words) {
        this.words = words;
    }

    /** In the reader's words. */
    public String words() {
        return words;
    }
}
