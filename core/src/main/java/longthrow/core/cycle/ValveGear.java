package longthrow.core.cycle;

/**
 * Layouts of the valve train with the constants that K. J. Patton, R. G. Nitschke and J. B. Heywood, SAE 890836, table of valve train types, give for them (from memory): follower (flat or
 * roller), then what rocks and slides by oil film and by mixed contact. A side-valve train has no row there: its tappet stands on the valve as under a direct overhead cam, its cam lies in the case; the
 * follower is taken from the pushrod row and the rest from the direct row (our reading).
 */
public enum ValveGear {
    SIDE_VALVE(400, 0, 0.5, 10.7),
    PUSHROD_FLAT(400, 0, 0.5, 32.1),
    PUSHROD_ROLLER(0, 0.0151, 0.5, 32.1),
    /** One overhead cam, rockers with slipper. */
    OVERHEAD_CAM_ROCKER(400, 0, 0.5, 21.4),
    OVERHEAD_CAM_ROLLER_ROCKER(0, 0.0151, 0.5, 21.4),
    /** One overhead cam on fingers with slipper. */
    OVERHEAD_CAM_FINGER(600, 0, 0.2, 42.8),
    /** Overhead cams straight on tappets. */
    OVERHEAD_CAM_DIRECT(200, 0, 0.5, 10.7);

    final double flat;
    final double roller;
    final double film;
    final double mixed;

    ValveGear(double flat, double roller, double film, double mixed) {
        this.flat = flat;
        this.roller = roller;
        this.film = film;
        this.mixed = mixed;
    }
}
