package longthrow.core.engine;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import longthrow.core.term.Choice;
import longthrow.core.term.Term;
import org.jspecify.annotations.Nullable;

/**
 * Joints of the engine that are tightened to a torque. None is made up: each is its maker's to say, and of the two that {@code life} needs the build file can hold it.
 * What the trade gives for plain screws by thread and grade stands apart, for covers and brackets alone.
 */
public enum Fastener {
    ROD_BOLTS(
            "rod bolts",
            "new each build, or stretch measured and five tightenings at most",
            "part-maker sheet; common practice, no source; certainty C, widely repeated",
            Term.ROD_BOLT_TORQUE,
            Choice.ROD_BOLT_LUBRICANT),
    HEAD_BOLTS(
            "head bolts or nuts",
            "crosswise in steps",
            "engineering handbook (steps with a stated lubricant); certainty A, physics or a standard"),
    FLYWHEEL_NUT(
            "flywheel nut",
            "taper dry and clean, blued for contact: the taper holds the wheel, the key only locates it",
            "service-manual practice; certainty B, several published sheets agree",
            Term.FLYWHEEL_NUT_TORQUE,
            Choice.FLYWHEEL_NUT_LUBRICANT),
    SIDE_COVER(
            "side cover screws",
            "crosswise in steps, then turn the crankshaft by hand and read its end play",
            "service-manual practice; certainty B, several published sheets agree"),
    SPARK_PLUG("spark plug", "into aluminium", "service-manual practice; certainty B, several published sheets agree"),
    ROCKER_OR_CAM(
            "rocker studs, cam and tappet fasteners",
            "thread locker out of the oil ways",
            "common practice, no source; certainty C, widely repeated");

    /** Instead of a torque or a lubricant that nobody gave. */
    public static final String UNKNOWN = "unknown: ask the maker";

    /**
     * Starting torques for plain screws, dry and zinc plated, steel into steel.
     * <p>The metric ones agree with VDI 2230 tables at a friction of 0.14 (10.1, 24.6, 36.1 N m; from memory).
     */
    private static final List<Plain> PLAIN = List.of(
            new Plain("M6, grade 8.8", 10),
            new Plain("M8, grade 8.8", 25),
            new Plain("M8, grade 10.9", 35),
            new Plain("1/4-20, grade 5", 11),
            new Plain("1/4-20, grade 8", 16),
            new Plain("5/16-18, grade 5", 23),
            new Plain("5/16-18, grade 8", 33));

    /** What goes for all of those. */
    public static final String PLAIN_NOTE =
            "starting values for plain screws, dry and zinc plated, steel into steel: for covers and brackets whose maker gives none, never for rod, "
                    + "head or flywheel. Oiled threads 10 % less, into aluminium 30 % less or more than that. The same torque gives a clamp that scatters by 25 to 30 %";

    /** Where those come from. */
    public static final String PLAIN_SOURCE = "service-manual practice; certainty B, several published sheets agree";

    private final String label;
    private final String how;
    private final String source;
    private final @Nullable Term torque;
    private final @Nullable Choice lubricant;

    Fastener(String label, String how, String source) {
        this(label, how, source, null, null);
    }

    Fastener(String label, String how, String source, @Nullable Term torque, @Nullable Choice lubricant) {
        this.torque = torque;
        this.lubricant = lubricant;
        this.label = label;
        this.how = how;
        this.source = source;
    }

    /**
     * A plain screw.
     * @param thread       and grade
     * @param newtonMetres starting torque
     */
    public record Plain(String thread, int newtonMetres) {}

    /** All joints, from the inside out. */
    public static List<Fastener> all() {
        return Arrays.asList(values());
    }

    public static List<Plain> plain() {
        return PLAIN;
    }

    public String label() {
        return label;
    }

    /** Under what its torque is written down in the build; empty for a joint of which nothing needs it. */
    public Optional<Term> torque() {
        return Optional.ofNullable(torque);
    }

    /** Under what its lubricant is. */
    public Optional<Choice> lubricant() {
        return Optional.ofNullable(lubricant);
    }

    /** What to mind. */
    public String how() {
        return how;
    }

    /** Where that comes from. */
    public String source() {
        return source;
    }
}
