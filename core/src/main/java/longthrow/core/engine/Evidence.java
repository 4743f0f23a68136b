package longthrow.core.engine;

/** What sort of text a rule was found in. */
public enum Evidence {
    STANDARD("published standard or law"),
    HANDBOOK("engineering handbook"),
    SERVICE_MANUAL("service-manual practice"),
    PART_MAKER("part-maker sheet"),
    CLASS_RULE("published class rule sheet"),
    COMMON_PRACTICE("common practice, no source");

    private final String label;

    Evidence(String label) {
        this.label = label;
    }

    public String label() {
        return label;
    }
}
