package longthrow.core.recording;

/**
 * Rows in which the bench does one thing.
 * @param kind what
 * @param from the first row
 * @param to   the last row
 * @param startSpeed of the drum, or of the engine where there is no drum's [rad/s]; for road runs of the road [m/s]
 * @param endSpeed   at the end [the same]
 */
public record Stretch(Kind kind, int from, int to, double startSpeed, double endSpeed) {
    /** What a bench does. */
    public enum Kind {
        /** It gains speed: a run at full throttle, or one of several in a log. */
        PULL,
        /** It loses speed by itself. */
        COAST,
        /** It keeps its speed: a point on the brake. */
        STEADY
    }
}
