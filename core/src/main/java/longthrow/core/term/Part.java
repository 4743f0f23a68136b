package longthrow.core.term;

/** The part a term belongs to: a section of the build file, in the order in which an engine is stripped. */
public enum Part {
    WHOLE("engine", "whole engine", "as found, before the spanners come out"),
    OUTPUT_SHAFT("output_shaft", "output shaft", "the end that drives the clutch or pulley"),
    IGNITION("ignition", "ignition", "magneto, coil, key"),
    FLYWHEEL("flywheel", "flywheel", "wheel, rim, taper"),
    HEAD("head", "head", "chamber, face, plug; on a side-valve the head is the chamber"),
    GASKET("gasket", "head gasket", "the crushed gasket that will be used, or its sheet"),
    CAMSHAFT("camshaft", "camshaft", "lobes, events by degree wheel"),
    INTAKE_VALVE("intake_valve", "intake valve", "valve, seat, lash"),
    EXHAUST_VALVE("exhaust_valve", "exhaust valve", "valve, seat, lash"),
    SPRING("valve_spring", "valve spring", "load, height, rate"),
    ROCKER("rocker", "rocker", "its two arms, and what sets the lash"),
    PUSHROD("pushrod", "pushrod", "length between its ends"),
    CYLINDER("cylinder", "cylinder", "bore, deck, sleeve"),
    PISTON("piston", "piston", "crown, pin, skirt"),
    RINGS("rings", "piston rings", "gap, groove, thickness"),
    ROD("connecting_rod", "connecting rod", "centres, bores, masses"),
    CRANKSHAFT("crankshaft", "crankshaft", "throw, pin, journals"),
    CRANKCASE("crankcase", "crankcase", "the room under the piston and what lets it breathe"),
    INTAKE("intake", "intake", "air filter, airbox, runner between carburettor and port"),
    CARBURETTOR("carburettor", "carburettor", "venturi, jets"),
    EXHAUST("exhaust", "exhaust", "primary pipe, silencer"),
    LIMITER("limiter", "speed limiter", "what cuts the spark above a speed"),
    CLUTCH("clutch", "clutch", "what sits on the output shaft"),
    SPROCKET("sprocket", "sprocket", "teeth and chain"),
    USE("use", "intended use", "speeds and limits you mean to run to"),
    PLACE("place", "day and place", "the air it is to run in");

    private final String key;
    private final String label;
    private final String meaning;

    Part(String key, String label, String meaning) {
        this.key = key;
        this.label = label;
        this.meaning = meaning;
    }

    /** Section name in the build file. */
    public String key() {
        return key;
    }

    /** Name for people, lower case. */
    public String label() {
        return label;
    }

    /** What belongs here, in a few words. */
    public String meaning() {
        return meaning;
    }
}
