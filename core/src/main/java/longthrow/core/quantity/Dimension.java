package longthrow.core.quantity;

import java.util.List;

/** A kind of quantity, with its name in plain words and the units to offer when one is missing or does not fit. */
public enum Dimension {
    LENGTH("length", "m", "mm", "in", "thou", "µm", "cm", "m", "ft"),
    AREA("area", "m²", "mm²", "cm²", "sq in", "m²"),
    VOLUME("volume", "m³", "cc", "cu in", "ml", "L", "US fl oz"),
    MASS("mass", "kg", "g", "kg", "oz", "lb"),
    TIME("time", "s", "s", "min", "h"),
    ANGLE("angle", "rad", "°", "rad"),
    SPEED("speed", "m/s", "m/s", "ft/min", "km/h", "mph", "ft/s"),
    ROTATIONAL_SPEED("rotational speed", "rad/s", "rpm", "rad/s"),
    ACCELERATION("acceleration", "m/s²", "m/s²", "ft/s²"),
    FORCE("force", "N", "N", "lbf", "kgf"),
    STIFFNESS("stiffness", "N/m", "N/mm", "lbf/in"),
    TORQUE("torque", "N·m", "N·m", "lb-ft", "lb-in", "kgf·m"),
    /** Also stress. */
    PRESSURE("pressure", "Pa", "kPa", "psi", "bar", "mbar", "MPa", "inHg", "mmH2O", "inH2O"),
    TEMPERATURE("temperature", "K", "°C", "°F", "K"),
    TEMPERATURE_DIFFERENCE("temperature difference", "K", "°C", "°F", "K"),
    POWER("power", "W", "kW", "hp", "W", "PS"),
    INERTIA("moment of inertia", "kg·m²", "kg·m²", "lb·ft²", "g·cm²"),
    DENSITY("density", "kg/m³", "kg/m³", "g/cc", "lb/ft³"),
    VOLUME_FLOW("volume flow", "m³/s", "L/s", "cfm", "m³/s"),
    MASS_FLOW("mass flow", "kg/s", "g/s", "lb/h", "kg/h"),
    SPECIFIC_FUEL_CONSUMPTION("specific fuel consumption", "kg/J", "g/kWh", "lb/hp-h"),
    /** Length growth per length and kelvin. */
    EXPANSION("thermal expansion", "1/K", "µm/m/K", "1/K", "µin/in/°F"),
    /** A pure number; a bare number is taken. */
    RATIO("ratio", "1", "a bare number", "%", ":1", "in/in"),
    /** A whole number of things; a bare number is taken. */
    COUNT("count", "1", "a bare whole number");

    private final String plainName;
    private final String siSymbol;

    @SuppressWarnings("ImmutableEnumChecker") // List.of is immutable, which its type does not say
    private final List<String> fitting;

    Dimension(String plainName, String siSymbol, String... fitting) {
        this.plainName = plainName;
        this.siSymbol = siSymbol;
        this.fitting = List.of(fitting);
    }

    /** In plain words: "length", "torque". */
    public String plainName() {
        return plainName;
    }

    /** With its article: "a length", "an angle". */
    public String withArticle() {
        return ("aeiou".indexOf(plainName.charAt(0)) >= 0 ? "an " : "a ") + plainName;
    }

    /** Symbol of the coherent SI unit. */
    public String siSymbol() {
        return siSymbol;
    }

    /** Units to offer in a message, the most usual first: a metric one, then one of the inch trade where there is one. */
    public List<String> fittingUnits() {
        return fitting;
    }

    /** Whether a number without a unit already says everything. */
    public boolean takesBareNumbers() {
        return this == RATIO || this == COUNT;
    }

    /** The dimension of a difference of two such quantities, hence of a doubt: differs for temperatures only. */
    public Dimension ofDifference() {
        return this == TEMPERATURE ? TEMPERATURE_DIFFERENCE : this;
    }
}
