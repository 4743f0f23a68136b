package longthrow.workshop.print;

/** How a word stands out on a terminal that shows colour. Never the only sign: the word itself says the same. */
public enum Ink {
    PLAIN(""),
    STRONG("1"),
    QUIET("2"),
    GOOD("32"),
    DOUBTFUL("1;33"),
    BAD("1;31");

    private final String code;

    Ink(String code) {
        this.code = code;
    }

    /** The words in this ink (ECMA-48, select graphic rendition), or as they are. */
    String on(String words, boolean colour) {
        return !colour || code.isEmpty() || words.isEmpty() ? words : "\u001b[" + code + "m" + words + "\u001b[0m";
    }
}
