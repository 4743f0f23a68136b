package longthrow.core.clear;

/** What running changes of a pair; each is nothing in the cold engine. */
enum Warm {
    /** Share by which the rod has grown. */
    ROD_GROWTH,
    /** Share by which the skirt has grown. */
    SKIRT_GROWTH,
    /** Share by which the piston has grown from its pin up to the crown. */
    CROWN_GROWTH,
    /** Share by which the deck has moved away from the crankshaft, at the least. */
    CYLINDER_GROWTH,
    /** Share by which crank throw and counterweights have grown. */
    CRANK_GROWTH,
    /** Share by which lobes and weight have grown. */
    CAM_GROWTH,
    /** By how much inertia draws the rod out, or presses it together [m]. */
    STRETCH,
    /** Slack from the crankshaft's bearings to the piston, worst way [m]. */
    SLACK_TO_PISTON,
    /** Slack from the crankshaft's bearings to the rod's big end, worst way [m]. */
    SLACK_TO_BIG_END,
    /** Slack of the crankshaft in its bearings, worst way [m]. */
    SLACK_OF_CRANK,
    /** By how much a rocked piston stands higher at its edge [m]. */
    ROCK,
    /** Share by which pushrods have grown. */
    GEAR_GROWTH,
    /** By how much more rocker and retainer come together as they grow [m]. */
    GAP_TO_RETAINER;

    /** Name among the figures of a pair; no place in a build file has it. */
    String key() {
        return "running: " + name().toLowerCase(java.util.Locale.ROOT);
    }
}
