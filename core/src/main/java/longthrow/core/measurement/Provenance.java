package longthrow.core.measurement;

/** Where a figure came from. */
public enum Provenance {
    MEASURED("measured"),
    SPECIFIED("specified"),
    CATALOGUE("catalogue"),
    ASSUMED("assumed");

    private final String label;

    Provenance(String label) {
        this.label = label;
    }

    public String label() {
        return label;
    }
}
