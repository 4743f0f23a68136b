package longthrow.core.cycle;

/**
 * Shape of the chamber, as far as published burn angles tell them apart. From a tenth to nine tenths at full load: side valve 35 to 55 degrees, two overhead valves in wedge,
 * bath or hemisphere 25 to 40, compact four valves with the plug in the middle 20 to 28; from the spark to a tenth 15 to 30 for all. These ranges are from memory; that the middle of each
 * belongs to the anchor of {@link BurnAngles}, and how far the plug usually stands from the axis, is judgement.
 */
public enum Chamber {
    /** Valves beside the bore, chamber over them, plug over the valves. */
    SIDE_VALVE(35, 55, 0.85),
    /** Two overhead valves side by side, wedge or bath tub, plug at the side. */
    WEDGE(25, 40, 0.75),
    /** Two valves at an angle, plug between centre and wall. */
    HEMISPHERE(25, 40, 0.65),
    /** Four valves under a roof, plug in the middle. */
    PENT_ROOF(20, 28, 0.5);

    /** Spark to a tenth [deg], from memory, all chambers. */
    static final double SHORTEST_DEVELOPMENT_DEGREES = 15;

    static final double LONGEST_DEVELOPMENT_DEGREES = 30;

    private final double shortestDegrees;
    private final double longestDegrees;
    private final double travel;

    Chamber(double shortestDegrees, double longestDegrees, double travel) {
        this.shortestDegrees = shortestDegrees;
        this.longestDegrees = longestDegrees;
        this.travel = travel;
    }

    /** Published range of the angle from a tenth to nine tenths, its lower end [rad]. */
    public double shortestRapid() {
        return Math.toRadians(shortestDegrees);
    }

    /** Its upper end [rad]. */
    public double longestRapid() {
        return Math.toRadians(longestDegrees);
    }

    /** From the plug to the farthest wall where nothing is told, in bores: 0.5 in the middle, 1 at the wall. */
    public double usualTravel() {
        return travel;
    }
}
