package longthrow.core.engine;

import java.util.Optional;
import longthrow.core.build.Build;
import longthrow.core.term.Choice;
import longthrow.core.term.Part;

/** Linear expansion of the metals a part may be made of [1/K], 20 to 100 °C, with the 95 % half-width among alloys. */
public enum Material {
    IRON("iron", 10.5e-6, 1.0e-6, "grey cast iron, Machinery's Handbook, coefficients of expansion; from memory"),
    STEEL("steel", 11.5e-6, 1.0e-6, "carbon and low-alloy steel, JCGM 100:2008 H.1 uses 11.5e-6 for steel gauges"),
    ALUMINIUM("aluminium", 22.5e-6, 1.5e-6, "casting alloys 21e-6 to 24e-6, Machinery's Handbook; from memory");

    /** Reference temperature of every length [K], ISO 1:2022. */
    public static final double REFERENCE_TEMPERATURE = 293.15;

    private final String key;
    private final double expansion;
    private final double spread;
    private final String source;

    Material(String key, double expansion, double spread, String source) {
        this.key = key;
        this.expansion = expansion;
        this.spread = spread;
        this.source = source;
    }

    public String key() {
        return key;
    }

    /** Expansion [1/K]. */
    public double expansion() {
        return expansion;
    }

    /** 95 % half-width of the expansion [1/K]. */
    public double spread() {
        return spread;
    }

    public String source() {
        return source;
    }

    /** The metal of a part as far as the owner said it; empty when not said. */
    public static Optional<Material> of(Build build, Part part) {
        return switch (part) {
            case CYLINDER -> build.choice(Choice.CYLINDER_METAL).map(Material::named);
            case HEAD -> build.choice(Choice.HEAD_METAL).map(Material::named);
            case PISTON -> build.choice(Choice.PISTON_ALLOY).map(a -> a.equals("iron") ? IRON : ALUMINIUM);
            case ROD -> build.choice(Choice.ROD_METAL).map(m -> m.equals("steel") ? STEEL : ALUMINIUM);
            case CRANKSHAFT -> build.choice(Choice.CRANKSHAFT_METAL).map(Material::named);
            case WHOLE,
                    OUTPUT_SHAFT,
                    IGNITION,
                    FLYWHEEL,
                    GASKET,
                    CAMSHAFT,
                    INTAKE_VALVE,
                    EXHAUST_VALVE,
                    SPRING,
                    ROCKER,
                    PUSHROD,
                    RINGS,
                    CRANKCASE,
                    INTAKE,
                    CARBURETTOR,
                    EXHAUST,
                    LIMITER,
                    CLUTCH,
                    SPROCKET,
                    USE,
                    PLACE -> Optional.empty();
        };
    }

    private static Material named(String key) {
        for (Material m : values()) {
            if (m.key.equals(key)) {
                return m;
            }
        }
        throw new IllegalArgumentException("no metal is called " + key);
    }
}
