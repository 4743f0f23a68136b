package longthrow.core.dyno;

/** By what torque or power came to be known. */
public enum BenchKind {
    INERTIA_DRUM("inertia_drum", "a drum that the engine speeds up"),
    BRAKE("brake", "a brake with arm and load cell"),
    TABLE("table", "figures as the dynamometer showed them"),
    ROAD("road", "the vehicle on the road, with its speed and a coast-down");

    private final String key;
    private final String meaning;

    BenchKind(String key, String meaning) {
        this.key = key;
        this.meaning = meaning;
    }

    public String key() {
        return key;
    }

    /** For people. */
    public String meaning() {
        return meaning;
    }
}
