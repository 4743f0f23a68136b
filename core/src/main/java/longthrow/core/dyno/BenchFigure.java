package longthrow.core.dyno;

import java.util.EnumSet;
import java.util.Set;
import longthrow.core.quantity.Dimension;

/** A figure of the bench or vehicle that is read once and counts for every run on it. */
public enum BenchFigure {
    DRUM_INERTIA(
            "drum_inertia",
            Dimension.INERTIA,
            "moment of inertia of the drum with its shaft, and all that turns with it",
            BenchKind.INERTIA_DRUM),
    DRUM_MASS(
            "drum_mass", Dimension.MASS, "of the plain drum, where its inertia was not found", BenchKind.INERTIA_DRUM),
    DRUM_DIAMETER("drum_diameter", Dimension.LENGTH, "outside, of the plain drum", BenchKind.INERTIA_DRUM),
    DRUM_BORE(
            "drum_bore", Dimension.LENGTH, "inside, of a drum that is a tube; left out, solid", BenchKind.INERTIA_DRUM),
    CORD_RADIUS(
            "cord_radius",
            Dimension.LENGTH,
            "from the drum's axis to the middle of the cord that a mass fell on: half of what the cord is wound on and half the cord",
            BenchKind.INERTIA_DRUM),
    ENGINE_TURNS(
            "engine_turns",
            Dimension.RATIO,
            "turns of the crank for one turn of the drum, brake or wheel",
            BenchKind.INERTIA_DRUM,
            BenchKind.BRAKE,
            BenchKind.ROAD),
    ENGINE_INERTIA(
            "engine_inertia",
            Dimension.INERTIA,
            "of all that turns at the crank's speed: crank, flywheel, clutch",
            BenchKind.INERTIA_DRUM,
            BenchKind.ROAD),
    DRIVE_EFFICIENCY(
            "drive_efficiency",
            Dimension.RATIO,
            "share of the crank's power that chain, belt or gears hand on, 1 where figures are told at the crank; left out, figures are at the drum, brake or wheel",
            BenchKind.INERTIA_DRUM,
            BenchKind.BRAKE,
            BenchKind.TABLE,
            BenchKind.ROAD),
    ARM("arm", Dimension.LENGTH, "from the brake's axis to the line of the cell's force", BenchKind.BRAKE),
    MASS("mass", Dimension.MASS, "of vehicle and driver as they ran", BenchKind.ROAD),
    ROLL_OUT(
            "roll_out",
            Dimension.LENGTH,
            "way of the vehicle for one turn of the driven wheel, loaded",
            BenchKind.ROAD),
    WHEEL_INERTIA("wheel_inertia", Dimension.INERTIA, "of all wheels, axle and what turns with them", BenchKind.ROAD),
    SLOPE("slope", Dimension.RATIO, "rise of the road over its length, up is positive", BenchKind.ROAD),
    WIND("wind", Dimension.SPEED, "against the vehicle along its way", BenchKind.ROAD);

    private final String key;
    private final Dimension dimension;
    private final String meaning;

    @SuppressWarnings("ImmutableEnumChecker") // never handed out
    private final Set<BenchKind> kinds;

    BenchFigure(String key, Dimension dimension, String meaning, BenchKind first, BenchKind... more) {
        this.key = key;
        this.dimension = dimension;
        this.meaning = meaning;
        this.kinds = EnumSet.of(first, more);
    }

    public String key() {
        return key;
    }

    public Dimension dimension() {
        return dimension;
    }

    /** For people. */
    public String meaning() {
        return meaning;
    }

    /** Whether such a bench has it. */
    public boolean isOf(BenchKind kind) {
        return kinds.contains(kind);
    }
}
