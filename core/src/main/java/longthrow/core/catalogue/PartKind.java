package longthrow.core.catalogue;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import longthrow.core.term.Choice;
import longthrow.core.term.Part;
import longthrow.core.term.Term;

/** What is sold as one piece, and the sections of the build file it speaks of. A catalogue file holds one kind. */
public enum PartKind {
    CRANKSHAFT("crankshaft", "crankshaft", Part.CRANKSHAFT, Part.OUTPUT_SHAFT),
    CONNECTING_ROD("connecting_rod", "connecting rod", Part.ROD),
    PISTON("piston", "piston with pin, rings and clips", Part.PISTON, Part.RINGS),
    GASKET("gasket", "head gasket", Part.GASKET),
    HEAD("head", "head", Part.HEAD, Part.INTAKE_VALVE, Part.EXHAUST_VALVE),
    CAMSHAFT("camshaft", "camshaft", Part.CAMSHAFT, Part.INTAKE_VALVE, Part.EXHAUST_VALVE),
    VALVE_SPRING("valve_spring", "valve spring", Part.SPRING),
    PUSHROD("pushrod", "pushrod", Part.PUSHROD),
    CARBURETTOR("carburettor", "carburettor", Part.CARBURETTOR),
    EXHAUST("exhaust", "exhaust", Part.EXHAUST),
    FLYWHEEL("flywheel", "flywheel", Part.FLYWHEEL),
    IGNITION("ignition", "ignition", Part.IGNITION),
    LIMITER("limiter", "speed limiter", Part.LIMITER),
    CLUTCH("clutch", "clutch", Part.CLUTCH),
    SPROCKET("sprocket", "sprocket", Part.SPROCKET),
    DONOR_ENGINE("donor_engine", "donor engine", Part.values());

    private final String key;
    private final String label;

    @SuppressWarnings("ImmutableEnumChecker") // made by List.of
    private final List<Part> sections;

    PartKind(String key, String label, Part... sections) {
        this.key = key;
        this.label = label;
        this.sections = List.of(sections);
    }

    public static Optional<PartKind> at(String key) {
        return Arrays.stream(values()).filter(k -> k.key.equals(key)).findFirst();
    }

    /** Name in files and on the command line. */
    public String key() {
        return key;
    }

    /** Name for people. */
    public String label() {
        return label;
    }

    /** Sections of the build file whose terms and words a row may state, the part's own first. */
    public List<Part> sections() {
        return sections;
    }

    public boolean mayState(Term term) {
        return sections.contains(term.part());
    }

    public boolean mayState(Choice choice) {
        return sections.contains(choice.part());
    }

    /** The part of the engine it replaces. */
    public Part part() {
        return sections.get(0);
    }
}
