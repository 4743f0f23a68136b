package longthrow.core.power;

import java.util.Locale;
import longthrow.core.quantity.Dimension;

/** What the prediction of torque needs to know of an engine and its day, each a number. What was not read is taken as {@link Usual} has it, and said. */
public enum Needed {
    BORE(Dimension.LENGTH, "bore"),
    STROKE(Dimension.LENGTH, "stroke"),
    ROD(Dimension.LENGTH, "rod length"),
    OFFSET(Dimension.LENGTH, "offset of the pin's path"),
    COMPRESSION_RATIO(Dimension.RATIO, "static compression ratio"),
    INTAKE_HEAD(Dimension.LENGTH, "intake valve head"),
    EXHAUST_HEAD(Dimension.LENGTH, "exhaust valve head"),
    INTAKE_THROAT(Dimension.LENGTH, "intake throat behind the seat"),
    EXHAUST_THROAT(Dimension.LENGTH, "exhaust throat behind the seat"),
    INTAKE_LIFT(Dimension.LENGTH, "intake valve lift"),
    EXHAUST_LIFT(Dimension.LENGTH, "exhaust valve lift"),
    CHECKING_LIFT(Dimension.LENGTH, "lift at which the events are told"),
    INTAKE_OPENS(Dimension.ANGLE, "intake opens before top dead centre"),
    INTAKE_CLOSES(Dimension.ANGLE, "intake closes after bottom dead centre"),
    EXHAUST_OPENS(Dimension.ANGLE, "exhaust opens before bottom dead centre"),
    EXHAUST_CLOSES(Dimension.ANGLE, "exhaust closes after top dead centre"),
    INTAKE_FLOW(Dimension.RATIO, "flow of the intake valve over what is published for its size"),
    EXHAUST_FLOW(Dimension.RATIO, "flow of the exhaust valve over what is published for its size"),
    INTAKE_PORT_LENGTH(Dimension.LENGTH, "intake port from valve to flange"),
    INTAKE_RUNNER_LENGTH(Dimension.LENGTH, "flange to carburettor"),
    INTAKE_BORE(Dimension.LENGTH, "bore between carburettor and port"),
    VENTURI(Dimension.LENGTH, "venturi"),
    INTAKE_RESTRICTOR(Dimension.LENGTH, "restrictor plate under the carburettor, as a plain hole"),
    THROTTLE(Dimension.LENGTH, "open throttle, as a plain hole"),
    CARBURETTOR_LENGTH(Dimension.LENGTH, "length of the carburettor"),
    AIRBOX(Dimension.VOLUME, "room between filter and carburettor"),
    FILTER(Dimension.LENGTH, "air filter, as a plain hole"),
    EXHAUST_PORT_LENGTH(Dimension.LENGTH, "exhaust port from valve to flange"),
    EXHAUST_RESTRICTOR(Dimension.LENGTH, "restrictor plate at the exhaust port, as a plain hole"),
    PRIMARY_LENGTH(Dimension.LENGTH, "exhaust pipe"),
    PRIMARY_BORE(Dimension.LENGTH, "inside of the exhaust pipe"),
    SILENCER(Dimension.VOLUME, "room in the silencer"),
    SILENCER_HOLE(Dimension.LENGTH, "way out of the silencer, as a plain hole"),
    HEAD_TEMPERATURE(Dimension.TEMPERATURE, "inner wall of head and valves"),
    CROWN_TEMPERATURE(Dimension.TEMPERATURE, "crown of the piston"),
    SLEEVE_TEMPERATURE(Dimension.TEMPERATURE, "wall of the bore"),
    INTAKE_WALL_TEMPERATURE(Dimension.TEMPERATURE, "wall of the intake port"),
    EXHAUST_WALL_TEMPERATURE(Dimension.TEMPERATURE, "wall of exhaust port and pipe"),
    OIL_TEMPERATURE(Dimension.TEMPERATURE, "oil"),
    FLAME_TRAVEL(Dimension.LENGTH, "plug to the farthest wall of the chamber"),
    SPARK(Dimension.ANGLE, "spark before top dead centre"),
    MIXTURE(Dimension.RATIO, "fuel over what the air can burn"),
    EVAPORATED(Dimension.RATIO, "share of the fuel that evaporates out of the air's heat"),
    FIRE_EFFICIENCY(Dimension.RATIO, "share of the charge that burns as far as its oxygen goes"),
    CREVICES(Dimension.RATIO, "room of crevices at the top ring and elsewhere over the volume that is swept"),
    DEVELOPMENT(Dimension.RATIO, "flame development angle over the formula's"),
    BURNING(Dimension.RATIO, "rapid burning angle over the formula's"),
    WALL_HEAT(Dimension.RATIO, "heat to the walls over the formula's"),
    FRICTION(Dimension.RATIO, "friction over the formula's"),
    CRANKCASE(Dimension.PRESSURE, "mean effective pressure that the crankcase's breathing takes"),
    CASE_VOLUME(Dimension.VOLUME, "free volume of the crankcase"),
    BREATHER_VALVE(Dimension.LENGTH, "check valve of the crankcase, as a plain hole"),
    BREATHER_OPEN(Dimension.LENGTH, "open breather of the crankcase, as a plain hole"),
    INERTIA(Dimension.INERTIA, "inertia of flywheel and crankshaft"),
    AIR_PRESSURE(Dimension.PRESSURE, "air pressure"),
    AIR_TEMPERATURE(Dimension.TEMPERATURE, "air temperature"),
    HUMIDITY(Dimension.RATIO, "relative humidity");

    private final Dimension dimension;
    private final String label;

    Needed(Dimension dimension, String label) {
        this.dimension = dimension;
        this.label = label;
    }

    /** Stable, as a place of the build file where it stands in none. */
    public String key() {
        return "power." + name().toLowerCase(Locale.ROOT);
    }

    public Dimension dimension() {
        return dimension;
    }

    /** Whether it changes what rubs and nothing of the gas. */
    boolean rubsAlone() {
        return switch (this) {
            case FRICTION, CRANKCASE, CASE_VOLUME, BREATHER_VALVE, BREATHER_OPEN, OIL_TEMPERATURE -> true;
            default -> false;
        };
    }

    /** What it is, without what it is told as. */
    String place() {
        return label.replace(", as a plain hole", "");
    }

    /** For people. */
    public String label() {
        return label;
    }
}
