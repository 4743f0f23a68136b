package longthrow.core.engine;

import java.util.Locale;

/** What becomes of a part of the donor, mildest first. */
public enum Outcome {
    KEEP,
    NOT_YET_KNOWN,
    MACHINE,
    REPLACE,
    WALK_AWAY;

    public String label() {
        return name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }

    /** The graver of the two. */
    Outcome orGraver(Outcome other) {
        return other.compareTo(this) > 0 ? other : this;
    }
}
