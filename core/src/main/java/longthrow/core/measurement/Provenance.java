package longthrow.core.measurement;

/** Where a figure came from. */
public enum Provenance {
    MEASURED("measured"),
    /** A wish of the owner or a figure off a plate. */
    STATED("as stated"),
    SPECIFIED("specified"),
    CATALOGUE("catalogue"),
    /** A size that work which was decided on is still to give. */
    PLANNED("planned, not machined yet"),
    ASSUMED("assumed");

    private final String label;

    Provenance(String label) {
        this.label = label;
    }

    public String label() {
        return label;
    }
}
