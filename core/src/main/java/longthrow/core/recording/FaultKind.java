package longthrow.core.recording;

/** What can be wrong with rows of a recording, and whether such rows are set aside unless their owner keeps them. */
public enum FaultKind {
    /** A figure jumps away and back within a few rows. */
    SPIKE("spike", true),
    /** A figure is zero or missing between rows where it is far from zero. */
    DROPOUT("dropout", true),
    /** A figure that else changes from row to row stands still. */
    STUCK("stuck", true),
    /** Time stands still. */
    TIME_REPEATED("repeated time", true),
    /** Time runs back and comes up again. */
    TIME_BACKWARD("backward time", true),
    /** Time starts anew: another run, another day. Nothing is wrong with the rows. */
    TIME_RESTART("time starts anew", false),
    /** Rows are missing before this one. Nothing is wrong with the rows there are. */
    TIME_GAP("gap in time", false),
    /** The engine turns faster than the drum's ratio allows: the clutch slips, and its power is not the drum's. */
    CLUTCH_SLIP("clutch slip", true),
    /** Engine and drum keep no ratio: slip cannot be told. */
    NO_FIXED_RATIO("no fixed ratio", false);

    private final String label;
    private final boolean setAside;

    FaultKind(String label, boolean setAside) {
        this.label = label;
        this.setAside = setAside;
    }

    /** Its name for people. */
    public String label() {
        return label;
    }

    /** Whether its rows are set aside unless the owner keeps them. */
    public boolean setsAside() {
        return setAside;
    }
}
