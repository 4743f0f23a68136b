package longthrow.core.engine;

/** How sure the trade is of a rule. */
public enum Certainty {
    A("physics or a standard"),
    B("several published sheets agree"),
    C("widely repeated"),
    D("contested");

    private final String meaning;

    Certainty(String meaning) {
        this.meaning = meaning;
    }

    public String meaning() {
        return meaning;
    }
}
