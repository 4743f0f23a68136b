package longthrow.core.engine;

import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;
import longthrow.core.quantity.Require;
import org.jspecify.annotations.Nullable;

/**
 * What metals of pistons, rods, pins and wheels bear: the one table. Typical figures of sound metal at room temperature, not what is sure in any one
 * part: see {@link #spread}. A part maker's own figure stands before every row. Strengths and moduli [Pa], densities [kg/m3], expansion [1/K].
 *
 * <p>Sources, all from memory unless a row says otherwise: <i>ASM</i>, ASM Handbook vol. 2 (1990), typical properties and strengths after
 * 10,000 hours warm; <i>AA</i>, Aluminum Association, typical values; <i>Shigley</i>, Budynas and Nisbett, Shigley's Mechanical Engineering
 * Design, tables. Where a figure is not published for the metal it is left unknown.
 */
public enum Alloy {
    CAST_PISTON(
            Form.PERMANENT_MOULD,
            "336.0-T5 cast piston alloy, 12 % silicon",
            Set.of(Use.PISTON),
            strength(248, 193, 93, Fatigue.ALUMINIUM, 0.12),
            body(73.0, 0.33, 2720, 18.9),
            List.of(),
            "ASM, AA"),
    HYPEREUTECTIC_PISTON(
            Form.PERMANENT_MOULD,
            "390.0-T5 cast piston alloy, 17 % silicon",
            Set.of(Use.PISTON),
            strength(200, 190, 85, Fatigue.ALUMINIUM, 0.15),
            body(81.2, 0.33, 2730, 18.0),
            List.of(),
            "ASM; fatigue strength estimated from its T6 by the ratio of strengths, no source"),
    FORGED_4032(
            Form.FORGED,
            "4032-T6 forged piston alloy, 12 % silicon",
            Set.of(Use.PISTON),
            strength(379, 317, 110, Fatigue.ALUMINIUM, 0.08),
            body(78.6, 0.33, 2690, 19.4),
            List.of(new Warm(100, 345, 303), new Warm(149, 255, 228), new Warm(204, 90, 62)),
            "ASM, AA"),
    FORGED_2618(
            Form.FORGED,
            "2618-T61 forged piston alloy, hardly any silicon",
            Set.of(Use.PISTON, Use.ROD),
            strength(441, 372, 125, Fatigue.ALUMINIUM, 0.08),
            body(74.5, 0.33, 2760, 22.3),
            List.of(new Warm(100, 427, 372), new Warm(149, 345, 303), new Warm(204, 221, 179), new Warm(260, 90, 62)),
            "ASM, AA; ultimate, yield and density read in a supplier's public sheet"),
    CAST_ROD(
            Form.SAND_CAST,
            "A356.0-T6 sand-cast aluminium",
            Set.of(Use.ROD),
            strength(278, 207, 59, Fatigue.ALUMINIUM, 0.15),
            body(72.4, 0.33, 2685, 21.4),
            List.of(),
            "ASM, AA"),
    DIE_CAST_ROD(
            Form.DIE_CAST,
            "380.0 die-cast aluminium",
            Set.of(Use.ROD, Use.FLYWHEEL),
            strength(324, 159, 138, Fatigue.ALUMINIUM, 0.20),
            body(71.0, 0.33, 2740, 21.8),
            List.of(),
            "ASM, AA; of separately cast bars: gas pores in thick parts take off far more than the spread"),
    FORGED_ALUMINIUM_ROD(
            Form.FORGED,
            "2014-T6 forged aluminium",
            Set.of(Use.ROD),
            strength(483, 414, 124, Fatigue.ALUMINIUM, 0.08),
            body(72.4, 0.33, 2800, 23.0),
            List.of(new Warm(100, 438, 393), new Warm(149, 276, 241), new Warm(204, 110, 90)),
            "ASM, AA"),
    BILLET_ALUMINIUM_ROD(
            Form.WROUGHT_BAR,
            "7075-T6 aluminium cut from bar",
            Set.of(Use.ROD, Use.FLYWHEEL),
            strength(572, 503, 159, Fatigue.ALUMINIUM, 0.08),
            body(71.7, 0.33, 2810, 23.6),
            List.of(new Warm(100, 483, 448), new Warm(149, 214, 186), new Warm(204, 110, 87)),
            "ASM, AA; ultimate, yield, modulus and expansion read in a public course table"),
    BILLET_ALUMINIUM_WHEEL(
            Form.WROUGHT_BAR,
            "6061-T6 aluminium cut from plate",
            Set.of(Use.FLYWHEEL),
            strength(310, 276, 97, Fatigue.ALUMINIUM, 0.08),
            body(68.9, 0.33, 2700, 23.6),
            List.of(new Warm(100, 290, 262), new Warm(149, 234, 214), new Warm(204, 131, 103)),
            "ASM, AA"),
    NODULAR_IRON(
            Form.SAND_CAST,
            "nodular iron 65-45-12",
            Set.of(Use.ROD, Use.CRANKSHAFT, Use.FLYWHEEL),
            strength(464, 332, 193, Fatigue.STEEL, 0.10),
            body(168, 0.29, 7100, 11.6),
            List.of(),
            "ASM Handbook vol. 1, nodular iron"),
    FORGED_CARBON_STEEL(
            Form.FORGED,
            "1045 carbon steel, normalised",
            Set.of(Use.ROD, Use.CRANKSHAFT, Use.FLYWHEEL),
            strength(590, 340, 270, Fatigue.STEEL, 0.10),
            body(205, 0.29, 7850, 11.5),
            List.of(),
            "Shigley; fatigue 0.46 of the ultimate strength after the same tables"),
    BILLET_STEEL(
            Form.WROUGHT_BAR,
            "4340 steel, quenched and tempered at 540 °C",
            Set.of(Use.ROD, Use.CRANKSHAFT, Use.FLYWHEEL),
            strength(1170, 1080, 540, Fatigue.STEEL, 0.10),
            body(205, 0.29, 7850, 12.3),
            List.of(),
            "ASM Handbook vol. 1, Shigley; fatigue 0.46 of the ultimate strength"),
    CASE_HARDENED_PIN(
            Form.WROUGHT_BAR,
            "8620 steel, case-hardened, by its core",
            Set.of(Use.PISTON_PIN),
            strength(1000, 750, 480, Fatigue.STEEL, 0.20),
            body(205, 0.29, 7850, 12.0),
            List.of(),
            "ASM Handbook vol. 1; the hard case adds to the fatigue strength and is not counted"),
    GREY_IRON_20(
            Form.SAND_CAST,
            "grey iron class 20: old or plain castings",
            Set.of(Use.FLYWHEEL),
            strength(152, null, 69, Fatigue.STEEL, 0.20),
            body(80, 0.26, 7100, 11.0),
            List.of(),
            "Shigley table A-24; spread for old castings: common practice, no source"),
    GREY_IRON_30(
            Form.SAND_CAST,
            "grey iron class 30",
            Set.of(Use.FLYWHEEL),
            strength(214, null, 97, Fatigue.STEEL, 0.10),
            body(100, 0.26, 7200, 11.0),
            List.of(),
            "Shigley table A-24");

    /** How the part came to its shape. */
    public enum Form {
        SAND_CAST,
        PERMANENT_MOULD,
        DIE_CAST,
        /** Grain follows the shape. */
        FORGED,
        /** Cut from bar or plate, whose grain runs one way. */
        WROUGHT_BAR
    }

    /** What it is used for. */
    public enum Use {
        PISTON,
        ROD,
        PISTON_PIN,
        CRANKSHAFT,
        FLYWHEEL
    }

    /** For how many swings its fatigue strength is stated. */
    public enum Fatigue {
        /** A million, and for good in steady use. */
        STEEL(1e6),
        /** Five hundred million; it falls on beyond. */
        ALUMINIUM(5e8);

        private final double swings;

        Fatigue(double swings) {
            this.swings = swings;
        }

        public double swings() {
            return swings;
        }
    }

    /**
     * Strength after long hours at a temperature.
     * @param celsius     degrees
     * @param ultimateMpa tensile strength [MPa]
     * @param yieldMpa    yield strength [MPa]
     */
    public record Warm(double celsius, double ultimateMpa, double yieldMpa) {}

    private record Strength(double ultimate, @Nullable Double yield, double fatigue, Fatigue kind, double spread) {}

    private record Body(double modulus, double poisson, double density, double expansion) {}

    private static final double MEGA = 1e6;
    private static final double GIGA = 1e9;
    private static final double ROOM = 20; // degrees Celsius

    private final Form form;
    private final String label;

    @SuppressWarnings("ImmutableEnumChecker") // Set.of is immutable, which its type does not say
    private final Set<Use> uses;

    @SuppressWarnings("ImmutableEnumChecker") // a record of numbers
    private final Strength strength;

    @SuppressWarnings("ImmutableEnumChecker") // a record of numbers
    private final Body body;

    @SuppressWarnings("ImmutableEnumChecker") // List.of is immutable, which its type does not say
    private final List<Warm> warm;

    private final String source;

    Alloy(Form form, String label, Set<Use> uses, Strength strength, Body body, List<Warm> warm, String source) {
        this.form = form;
        this.label = label;
        this.uses = uses;
        this.strength = strength;
        this.body = body;
        this.warm = warm;
        this.source = source;
    }

    private static Strength strength(
            double ultimate, @Nullable Integer yield, double fatigue, Fatigue kind, double spread) {
        return new Strength(ultimate, yield == null ? null : (double) yield, fatigue, kind, spread);
    }

    private static Body body(double modulus, double poisson, double density, double expansion) {
        return new Body(modulus, poisson, density, expansion);
    }

    /** All metals that some part of this use is made of. */
    public static List<Alloy> of(Use use) {
        return Arrays.stream(values()).filter(a -> a.uses.contains(use)).toList();
    }

    public Form form() {
        return form;
    }

    public String label() {
        return label;
    }

    public String source() {
        return source;
    }

    /** Tensile strength. */
    public double ultimate() {
        return strength.ultimate * MEGA;
    }

    /** Whether it yields before it breaks; grey iron does not. */
    public boolean isDuctile() {
        return strength.yield != null;
    }

    /**
     * Yield strength.
     * @throws IllegalStateException when it breaks without yielding
     */
    public double yieldStrength() {
        Double yield = strength.yield;
        if (yield == null) {
            throw new IllegalStateException(label + " breaks without yielding; judge it by its tensile strength");
        }
        return yield * MEGA;
    }

    /** Fatigue strength of a polished bar, turned to and fro, for {@link #fatigueSwings} swings. */
    public double fatigue() {
        return strength.fatigue * MEGA;
    }

    /** Swings that {@link #fatigue} is for. */
    public double fatigueSwings() {
        return strength.kind.swings();
    }

    /**
     * Share of the lengthwise fatigue strength that is left across the grain, as where a rod is cut from bar with its beam along it and its
     * eyes stress the metal crosswise: wrought steel 0.6 to 0.9 by its inclusions, wrought aluminium 0.8 to 0.95; ASM Handbook vol. 19; from memory. A forging's
     * grain follows its shape, a casting has none: 1.
     */
    public double acrossGrain() {
        if (form != Form.WROUGHT_BAR) {
            return 1;
        }
        return strength.kind == Fatigue.STEEL ? 0.75 : 0.875;
    }

    /** Half-width of {@link #acrossGrain}: both ends of its range. */
    public double acrossGrainSpread() {
        if (form != Form.WROUGHT_BAR) {
            return 0;
        }
        return strength.kind == Fatigue.STEEL ? 0.15 : 0.075;
    }

    /** Half-width of all strengths among heats, forms and sizes, 95 %, as a share. */
    public double spread() {
        return strength.spread;
    }

    /** Young's modulus; within 3 % but for the irons, 10 %. */
    public double modulus() {
        return body.modulus * GIGA;
    }

    /** Poisson's ratio. */
    public double poisson() {
        return body.poisson;
    }

    /** Density. */
    public double density() {
        return body.density;
    }

    /** Linear expansion, 20 to 100 °C. */
    public double expansion() {
        return body.expansion * 1e-6;
    }

    /** Whether its strength at this temperature is known: between two published ones. Steel and iron keep theirs up to 200 °C. */
    public boolean isKnownAt(double celsius) {
        if (strength.kind == Fatigue.STEEL) {
            return celsius >= ROOM && celsius <= 200;
        }
        double last = warm.isEmpty() ? ROOM : warm.get(warm.size() - 1).celsius;
        return celsius >= ROOM && celsius <= last;
    }

    /**
     * Share of the tensile strength left after long hours at a temperature, straight between the published ones.
     * @throws IllegalArgumentException where nothing is published; see {@link #isKnownAt}
     */
    public double keepsUltimate(double celsius) {
        return kept(
                celsius, strength.ultimate, warm.stream().map(Warm::ultimateMpa).toList());
    }

    /** The same of the yield strength. */
    public double keepsYield(double celsius) {
        double room = yieldStrength() / MEGA;
        return kept(celsius, room, warm.stream().map(Warm::yieldMpa).toList());
    }

    private double kept(double celsius, double room, List<Double> strengths) {
        if (!isKnownAt(celsius)) {
            throw new IllegalArgumentException(
                    "no strength of " + label + " at " + celsius + " °C is published; ask the part maker");
        }
        if (strength.kind == Fatigue.STEEL || celsius == ROOM) {
            return 1;
        }
        Require.finite("temperature [°C]", celsius);
        int above = IntStream.range(0, warm.size())
                .filter(k -> warm.get(k).celsius >= celsius)
                .findFirst()
                .orElseThrow();
        double coolEnd = above == 0 ? ROOM : warm.get(above - 1).celsius;
        double before = above == 0 ? room : strengths.get(above - 1);
        double share = (celsius - coolEnd) / (warm.get(above).celsius - coolEnd);
        return (before + share * (strengths.get(above) - before)) / room;
    }
}
