package longthrow.core.build;

import java.util.List;
import java.util.Optional;
import longthrow.core.quantity.Dimension;
import longthrow.core.quantity.Quantity;
import longthrow.core.term.OutlinedPart;
import org.jspecify.annotations.Nullable;

/**
 * The outline of a part as its owner traced it. What the text encloses is judged where it is drawn.
 * @param part     it stands for; that says where (0, 0) is and where +y points
 * @param unit     length of one unit of the drawing, above 0: of a scan the length of one pixel
 * @param form     of the text
 * @param lines    of it: points one a line, or pieces of a path in their order
 * @param datumX   where the part's datum stands in the drawing, across [length]; null for 0
 * @param datumY   likewise, up; in an SVG path down, as SVG counts it
 * @param mirrored whether it was traced from the end where the crankshaft turns anticlockwise; of what moves with a rocker, with its pivot to the right
 * @param from     where the part begins along the crankshaft; null with {@code to} for what is not told
 * @param to       where it ends, above {@code from}
 * @param doubt    95 % half-width by which the tracing may be off all round; null for {@link #USUAL_DOUBT}, less than {@link #LEAST_DOUBT} is taken as that
 * @param note     in the owner's words
 */
public record TracedOutline(
        OutlinedPart part,
        Quantity unit,
        Form form,
        List<String> lines,
        @Nullable Quantity datumX,
        @Nullable Quantity datumY,
        boolean mirrored,
        @Nullable Quantity from,
        @Nullable Quantity to,
        @Nullable Quantity doubt,
        String note) {
    /** 95 % half-width of a tracing of which none is given [m]; see {@link #USUAL_DOUBT_SOURCE}. */
    public static final double USUAL_DOUBT = 0.5e-3;

    /** Where {@link #USUAL_DOUBT} is from. */
    public static final String USUAL_DOUBT_SOURCE =
            "outline traced on paper or photographed: off by 0.5 mm all round; common practice, no source";

    /** No tracing is believed closer than this, 95 % half-width [m]; see {@link #LEAST_DOUBT_SOURCE}. */
    public static final double LEAST_DOUBT = 0.1e-3;

    /** Where {@link #LEAST_DOUBT} is from. */
    public static final String LEAST_DOUBT_SOURCE =
            "what a part's edge can be followed to by caliper, picture or drawing: 0.1 mm all round; common practice, no source";

    /** How an outline is written. */
    public enum Form {
        /** x and y, y up. */
        POINTS("points"),
        /** As in SVG, y down. */
        SVG_PATH("svg_path");

        private final String key;

        Form(String key) {
            this.key = key;
        }

        /** Key in a build file. */
        public String key() {
            return key;
        }
    }

    public TracedOutline {
        lines = List.copyOf(lines);
        lengths(unit, datumX, datumY, from, to, doubt);
        if (!(unit.si() > 0)) {
            throw new IllegalArgumentException(
                    "one unit of a drawing is " + unit.written() + " long; give a length above 0, such as 1 mm");
        }
        if ((from == null) != (to == null) || (from != null && to != null && !(from.si() < to.si()))) {
            throw new IllegalArgumentException("the " + part.label() + " reaches along the crankshaft from "
                    + (from == null ? "nowhere" : from.written()) + " to "
                    + (to == null ? "nowhere" : to.written())
                    + "; give both, the lower one first, or neither");
        }
        if (from != null && !part.along().isTold()) {
            throw new IllegalArgumentException("where the " + part.label() + " is along the crankshaft is "
                    + part.along().meaning());
        }
        if (from != null && from.si() < 0 && part.along() == OutlinedPart.Along.BOTH_SIDES) {
            throw new IllegalArgumentException("the " + part.label() + " begins at " + from.written()
                    + "; give 0 or more, " + part.along().meaning());
        }
        if (doubt != null && !(doubt.si() > 0)) {
            throw new IllegalArgumentException(
                    "the tracing is said to be off by " + doubt.written() + "; give what it may be off, above 0");
        }
    }

    private static void lengths(@Nullable Quantity... all) {
        for (Quantity one : all) {
            if (one != null && one.dimension() != Dimension.LENGTH) {
                throw new IllegalArgumentException(one.written() + " is no length; give it in mm or in");
            }
        }
    }

    /** Where its list stands in a build file. */
    public static String place(int number) {
        return "outlines[" + number + "]";
    }

    /** By how much it may be off all round, 95 % half-width [m]. */
    public double expandedDoubt() {
        return doubt == null ? USUAL_DOUBT : Math.max(doubt.si(), LEAST_DOUBT);
    }

    /** Whether it is said to be closer than any is believed. */
    public boolean isTooClose() {
        return doubt != null && doubt.si() < LEAST_DOUBT;
    }

    /** Where the part is along the crankshaft, where that is told. */
    public Optional<Reach> reach() {
        return from == null || to == null ? Optional.empty() : Optional.of(new Reach(from.si(), to.si()));
    }

    /** From where to where along the crankshaft [m]. */
    public record Reach(double from, double to) {}

    /** The text as one. */
    public String text() {
        return String.join(form == Form.POINTS ? "\n" : " ", lines);
    }

    /** The same with other free words. */
    public TracedOutline withNote(String other) {
        return new TracedOutline(part, unit, form, lines, datumX, datumY, mirrored, from, to, doubt, other);
    }
}
