package longthrow.buildfile.log;

/** Why a line of a log is not kept as a row of figures. */
public enum Why {
    /** What a logger writes above its header. */
    PREAMBLE("stands above the figures", "stand above the figures", false),
    /** Names of the columns. */
    HEADER("names the columns", "name the columns", false),
    /** Units of the columns. */
    UNITS("gives the units", "give the units", false),
    /** Names of the columns, once more. */
    HEADER_AGAIN(
            "names the columns once more: perhaps another run begins here",
            "name the columns once more: perhaps another run begins at each",
            false),
    /** Names of the columns, other ones: what stands below is not what stands above. */
    OTHER_HEADER(
            "names the columns otherwise than the header above",
            "name the columns otherwise than the header above",
            true),
    /** A remark. */
    COMMENT("is a remark", "are remarks", false),
    /** Nothing. */
    EMPTY("is empty", "are empty", false),
    /** Fewer cells than columns. */
    TOO_FEW("has fewer cells than there are columns", "have fewer cells than there are columns", true),
    /** More cells than columns. */
    TOO_MANY("has more cells than there are columns", "have more cells than there are columns", true),
    /** A quotation mark that is not closed in its line. */
    QUOTE("has a quotation mark that is not closed", "have a quotation mark that is not closed", true),
    /** Cells, and not one figure. */
    NO_FIGURES("holds no figure", "hold no figure", true),
    /** A figure that can be read in two ways. */
    TWO_WAYS("holds a figure that can be read in two ways", "hold a figure that can be read in two ways", true);

    private final String words;
    private final String ofSeveral;
    private final boolean fault;

    Why(String words, String ofSeveral, boolean fault) {
        this.words = words;
        this.ofSeveral = ofSeveral;
        this.fault = fault;
    }

    /** Continues "line 12 …". */
    public String words() {
        return words;
    }

    /** So many lines, and why they are no rows. */
    public String words(int count) {
        return count == 1 ? "1 line " + words : count + " lines " + ofSeveral;
    }

    /** Whether figures may have been lost with the line. */
    public boolean isFault() {
        return fault;
    }
}
