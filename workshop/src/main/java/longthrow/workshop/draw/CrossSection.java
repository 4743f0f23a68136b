package longthrow.workshop.draw;

import static longthrow.workshop.draw.Sketch.Anchor.MIDDLE;
import static longthrow.workshop.draw.Sketch.Anchor.START;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import longthrow.core.answer.Answer;
import longthrow.core.formula.Expression;
import longthrow.core.formula.Formula;
import longthrow.core.motion.CrankMotion;
import longthrow.core.motion.SliderCrank;
import longthrow.core.quantity.UnitSystem;
import longthrow.core.term.Term;

/**
 * Crank, rod, pin, piston, bore, deck and gasket cut along the cylinder, to scale, at any crank angle; seen so that the crank turns clockwise. The
 * gaps that this picture shows are written beside it. A size that is not known is drawn dashed, by a share of the others that is layout only, and
 * named.
 */
public final class CrossSection {
    private static final int WIDTH = 520;
    private static final int HEIGHT = 560;
    private static final double TOP = 44;
    private static final double BOTTOM = 524;
    private static final double AXIS_X = 165;
    private static final double HALF_WIDE = 150;
    private static final double COLUMN_X = 330;
    private static final double HEAD_TALL = 16;
    static final double WALL = 12;
    /** Dead centre for the arrow of a gap: piston this near to it, as a share of the stroke. Layout. */
    private static final double AT_DEAD_CENTRE = 1e-3;
    /** Half of the angle that the counterweight spans. Layout: its shape is not read. */
    private static final double COUNTERWEIGHT_HALF_ANGLE = 1.2;

    private static final String STROKE = "stroke";
    private static final String ROD = "rod";
    private static final String OFFSET = "offset";
    private static final String ANGLE = "angle";

    private final AnswerFigures figures;
    private final List<String> dashed = new ArrayList<>();

    private final double stroke;
    private final double rod;
    private final double compressionHeight;
    private final double bore;
    private final double deckHeight;
    private final double gasket;
    private final double skirt;
    private final double counterweight;
    private final double pin;
    private final double crankpin;
    private final double journal;
    private final double sleeve;
    private final double boreOffset;
    private final double offset;
    private final SliderCrank crank;

    private CrossSection(AnswerFigures figures) {
        this.figures = figures;
        double measure = figures.value(Term.STROKE)
                .or(() -> figures.value(Term.BORE))
                .or(() -> figures.value(Term.ROD_LENGTH).map(l -> 0.6 * l))
                .or(() -> figures.value(Term.DECK_HEIGHT).map(h -> 0.4 * h))
                .orElse(1.0);
        this.stroke = size(Term.STROKE, measure);
        this.rod = size(Term.ROD_LENGTH, 1.7 * stroke);
        this.compressionHeight = size(Term.COMPRESSION_HEIGHT, 0.45 * stroke);
        this.deckHeight = size(Term.DECK_HEIGHT, stroke / 2 + rod + compressionHeight);
        this.gasket = size(Term.GASKET_THICKNESS, 0.02 * stroke);
        this.bore = size(Term.BORE, 1.15 * stroke);
        this.sleeve = size(Term.SLEEVE_LENGTH, 1.4 * stroke);
        this.skirt = size(Term.SKIRT_BELOW_PIN, 0.3 * stroke);
        this.pin = size(Term.PIN_DIAMETER, 0.27 * stroke);
        this.crankpin = size(Term.CRANKPIN_DIAMETER, 0.45 * stroke);
        this.journal = size(Term.MAIN_JOURNAL, 0.45 * stroke);
        this.counterweight = size(Term.COUNTERWEIGHT_RADIUS, 0.7 * stroke);
        this.boreOffset = figures.value(Term.BORE_OFFSET).orElse(0.0);
        this.offset = boreOffset + figures.value(Term.PIN_OFFSET).orElse(0.0);
        this.crank = SliderCrank.ofStroke(Expression.input(STROKE), Expression.input(ROD), Expression.input(OFFSET));
    }

    /** The section of an answer, in its owner's units. */
    public static CrossSection of(Answer answer) {
        return of(answer, answer.units());
    }

    /** The section of an answer, with these units written. */
    public static CrossSection of(Answer answer, UnitSystem units) {
        return new CrossSection(new AnswerFigures(answer, units));
    }

    private double size(Term term, double otherwise) {
        Optional<Double> known = figures.value(term).filter(v -> v > 0);
        if (known.isEmpty()) {
            dashed.add(term.label());
        }
        return known.orElse(otherwise);
    }

    private boolean knows(Term... terms) {
        for (Term term : terms) {
            if (figures.value(term).filter(v -> v > 0).isEmpty()) {
                return false;
            }
        }
        return true;
    }

    /** Sizes that are not known and drawn dashed, by name. */
    public List<String> dashed() {
        return List.copyOf(dashed);
    }

    /** At true top dead centre. */
    public String atTopDeadCentre(String idPrefix) {
        return at(number(crank.topDeadCentre(), 0), idPrefix);
    }

    /** At true bottom dead centre. */
    public String atBottomDeadCentre(String idPrefix) {
        return at(number(crank.bottomDeadCentre(), 0), idPrefix);
    }

    /**
     * The drawing, a whole SVG element.
     * @param angle    of the crank [rad] from the throw pointing along the cylinder, positive in the direction of rotation
     * @param idPrefix begins its ids
     * @throws IllegalArgumentException when the rod is too short for the crank to turn, or the angle is not finite
     */
    public String at(double angle, String idPrefix) {
        if (!Double.isFinite(angle)) {
            throw new IllegalArgumentException("crank angle is " + angle + "; it must be a finite number of radians");
        }
        Place place = place(angle);
        double travel = number(crank.highestPin(), angle) - place.pinHeight();
        Svg svg = new Svg(
                idPrefix,
                WIDTH,
                HEIGHT,
                figures.titled("Cross-section at " + degrees(angle) + "° of crank"),
                "Crank, rod, piston, bore and deck to scale; " + figures.said(Term.DECK_CLEARANCE)
                        + ", " + figures.said(Term.SQUISH) + ", " + figures.said(Term.SKIRT_TO_COUNTERWEIGHT) + "."
                        + (dashed.isEmpty() ? "" : " Not known and drawn dashed: " + String.join(", ", dashed) + "."));
        Sketch s = new Sketch(svg, WIDTH, HEIGHT);
        cylinder(s, place);
        piston(s, place);
        web(s, place);
        rod(s, place);
        gaps(s, place, travel);
        column(s, angle);
        return svg.finished();
    }

    /**
     * Where things are at an angle.
     * @throws IllegalArgumentException when the rod is too short for the crank to turn
     */
    Place place(double angle) {
        double radius = number(crank.crankRadius(), angle);
        if (!(rod > radius + Math.abs(offset))) { // written positively, so that NaN fails too
            throw new IllegalArgumentException("rod length is " + figures.text(Term.ROD_LENGTH) + " and stroke "
                    + figures.text(Term.STROKE) + ": with so short a rod the crank cannot turn. Read both again");
        }
        return new Place(angle, radius, number(crank.pinHeight(Expression.input(ANGLE)), angle), scale(radius));
    }

    /** The crank of this picture, as it moves. */
    CrankMotion motion() {
        return new CrankMotion(number(crank.crankRadius(), 0), rod, offset);
    }

    /** A figure of this crank at an angle. */
    private double number(Expression expression, double angle) {
        Map<String, Double> inputs = Map.of(STROKE, stroke, ROD, rod, OFFSET, offset, ANGLE, angle);
        return Formula.of("drawn", expression).at((String input) -> inputs.getOrDefault(input, Double.NaN));
    }

    private static String degrees(double angle) {
        double turn = Math.toDegrees(angle) % 360;
        return Svg.n(turn < 0 ? turn + 360 : turn);
    }

    /** Pixels per metre so that all of it fits whatever the angle. */
    private double scale(double radius) {
        double above = Math.max(deckHeight + gasket, radius + rod + compressionHeight);
        double below = Math.max(counterweight, radius + crankpin);
        double beside = Math.max(below, bore / 2 + Math.abs(boreOffset));
        return Math.min((BOTTOM - TOP - HEAD_TALL) / (above + below), (HALF_WIDE - WALL) / beside);
    }

    /** Where things are at one angle; lengths [m] become pixels here and nowhere else. */
    record Place(double angle, double radius, double pinHeight, double scale) {
        double x(double besideAxis) {
            return AXIS_X + besideAxis * scale;
        }
    }

    double y(Place p, double aboveAxis) {
        double above = Math.max(deckHeight + gasket, p.radius() + rod + compressionHeight);
        return TOP + HEAD_TALL + (above - aboveAxis) * p.scale();
    }

    private void outline(Sketch s, boolean known, Object... data) {
        if (known) {
            s.part(data);
        } else {
            s.unknown(data);
        }
    }

    /** Deck over the crank axis [m]. */
    double deckLevel() {
        return deckHeight;
    }

    /** From the pin down to the middle of the piston [pixels]; above the pin where negative. */
    double pistonMiddle(Place p) {
        return (skirt - compressionHeight) / 2 * p.scale();
    }

    /** From the crank axis to the middle of the counterweight's rim [pixels]. */
    double counterweightMiddle(Place p) {
        return 0.7 * counterweight * p.scale();
    }

    /** The wall of the bore on the left [pixels]. */
    double boreLeft(Place p) {
        return p.x(boreOffset - bore / 2);
    }

    /** The wall of the bore on the right [pixels]. */
    double boreRight(Place p) {
        return p.x(boreOffset + bore / 2);
    }

    void cylinder(Sketch s, Place p) {
        double left = boreLeft(p);
        double right = boreRight(p);
        double deck = y(p, deckHeight);
        double end = y(p, deckHeight - sleeve);
        boolean known = knows(Term.BORE, Term.SLEEVE_LENGTH, Term.DECK_HEIGHT);
        outline(s, known, Sketch.box(left - WALL, deck, WALL, end - deck));
        outline(s, known, Sketch.box(right, deck, WALL, end - deck));
        if (knows(Term.DECK_HEIGHT)) {
            s.datumFace(left - WALL - 14, deck, left, deck);
            s.datumFace(right, deck, right + WALL + 14, deck);
        }
        double head = y(p, deckHeight + gasket);
        outline(
                s,
                knows(Term.DECK_HEIGHT, Term.GASKET_THICKNESS),
                Sketch.box(left - WALL, head - HEAD_TALL, right - left + 2 * WALL, HEAD_TALL));
        if (knows(Term.GASKET_THICKNESS)) {
            s.tool(Sketch.box(left - WALL, head, WALL - 2, deck - head));
            s.tool(Sketch.box(right + 2, head, WALL - 2, deck - head));
        }
        s.axis(p.x(boreOffset), TOP - 6, p.x(boreOffset), BOTTOM + 16);
        double axis = y(p, 0);
        s.axis(AXIS_X - HALF_WIDE, axis, AXIS_X + HALF_WIDE, axis);
    }

    void piston(Sketch s, Place p) {
        double left = boreLeft(p) + 1.5;
        double right = boreRight(p) - 1.5;
        double crown = y(p, p.pinHeight() + compressionHeight);
        double bottom = y(p, p.pinHeight() - skirt);
        outline(
                s,
                knows(Term.BORE, Term.COMPRESSION_HEIGHT, Term.SKIRT_BELOW_PIN, Term.ROD_LENGTH, Term.STROKE),
                Sketch.box(left, crown, right - left, bottom - crown));
    }

    private double[] towards(Place p, double fromX, double fromY, double angle, double length) {
        return new double[] {fromX + length * p.scale() * Math.sin(angle), fromY - length * p.scale() * Math.cos(angle)
        };
    }

    void web(Sketch s, Place p) {
        double axisY = y(p, 0);
        double[] throwEnd = towards(p, AXIS_X, axisY, p.angle(), p.radius());
        double[] from = towards(p, AXIS_X, axisY, p.angle() + Math.PI - COUNTERWEIGHT_HALF_ANGLE, counterweight);
        double[] to = towards(p, AXIS_X, axisY, p.angle() + Math.PI + COUNTERWEIGHT_HALF_ANGLE, counterweight);
        double cheek = 0.68 * crankpin;
        double[] side = towards(p, throwEnd[0], throwEnd[1], p.angle() - Math.PI / 2, cheek);
        double[] tip = towards(p, throwEnd[0], throwEnd[1], p.angle(), cheek);
        double[] other = towards(p, throwEnd[0], throwEnd[1], p.angle() + Math.PI / 2, cheek);
        double big = counterweight * p.scale();
        double small = cheek * p.scale();
        outline(
                s,
                knows(Term.COUNTERWEIGHT_RADIUS, Term.CRANKPIN_DIAMETER, Term.STROKE),
                "M",
                from[0],
                from[1],
                "A",
                big,
                big,
                "0 0 1",
                to[0],
                to[1],
                "L",
                side[0],
                side[1],
                "A", // by its tip: half a circle in one piece is dented by the rounding of its ends
                small,
                small,
                "0 0 1",
                tip[0],
                tip[1],
                "A",
                small,
                small,
                "0 0 1",
                other[0],
                other[1],
                "Z");
        outline(s, knows(Term.MAIN_JOURNAL), Sketch.round(AXIS_X, axisY, journal / 2 * p.scale()));
    }

    void rod(Sketch s, Place p) {
        double[] a = towards(p, AXIS_X, y(p, 0), p.angle(), p.radius());
        double bx = p.x(offset);
        double by = y(p, p.pinHeight());
        double length = Math.hypot(bx - a[0], by - a[1]);
        double ux = (bx - a[0]) / length;
        double uy = (by - a[1]) / length;
        double big = 0.66 * crankpin * p.scale();
        double small = 0.75 * pin * p.scale();
        double wide = 0.6 * big;
        double narrow = 0.7 * small;
        double upA = Math.sqrt(big * big - wide * wide);
        double downB = Math.sqrt(small * small - narrow * narrow);
        outline(
                s,
                knows(Term.ROD_LENGTH, Term.STROKE, Term.CRANKPIN_DIAMETER, Term.PIN_DIAMETER),
                "M",
                a[0] + ux * upA + uy * wide,
                a[1] + uy * upA - ux * wide,
                "L",
                bx - ux * downB + uy * narrow,
                by - uy * downB - ux * narrow,
                "A",
                small,
                small,
                "0 1 1",
                bx - ux * downB - uy * narrow,
                by - uy * downB + ux * narrow,
                "L",
                a[0] + ux * upA - uy * wide,
                a[1] + uy * upA + ux * wide,
                "A",
                big,
                big,
                "0 1 1",
                a[0] + ux * upA + uy * wide,
                a[1] + uy * upA - ux * wide,
                "Z");
        outline(s, knows(Term.CRANKPIN_DIAMETER), Sketch.round(a[0], a[1], crankpin / 2 * p.scale()));
        outline(s, knows(Term.PIN_DIAMETER), Sketch.round(bx, by, pin / 2 * p.scale()));
    }

    /** An arrow where a gap stands open at a dead centre. */
    private void gaps(Sketch s, Place p, double travel) {
        double crown = y(p, p.pinHeight() + compressionHeight);
        double head = y(p, deckHeight + gasket);
        if (travel < AT_DEAD_CENTRE * stroke
                && knows(Term.DECK_HEIGHT, Term.GASKET_THICKNESS, Term.COMPRESSION_HEIGHT, Term.ROD_LENGTH, Term.STROKE)
                && crown - head > 0.2) {
            s.upright(p.x(boreOffset) + bore / 4 * p.scale(), head, crown);
        }
        double bottom = y(p, p.pinHeight() - skirt);
        double weight = y(p, counterweight);
        if (stroke - travel < AT_DEAD_CENTRE * stroke
                && knows(Term.SKIRT_BELOW_PIN, Term.COUNTERWEIGHT_RADIUS, Term.ROD_LENGTH, Term.STROKE)
                && Math.abs(weight - bottom) > 0.2) {
            s.upright(p.x(boreOffset) - bore / 4 * p.scale(), bottom, weight);
        }
    }

    private void column(Sketch s, double angle) {
        s.words("quiet", "crank at " + degrees(angle) + "°, turning right", 16, 24, START, Sketch.SMALL, false);
        double y = 70;
        s.words("quiet", "at top dead centre", COLUMN_X, y, START, Sketch.SMALL, true);
        y = figure(s, Term.DECK_CLEARANCE, y + 20);
        y = figure(s, Term.SQUISH, y);
        s.words("quiet", "at bottom dead centre", COLUMN_X, y + 16, START, Sketch.SMALL, true);
        y = figure(s, Term.SKIRT_TO_COUNTERWEIGHT, y + 36);
        if (figures.value(Term.BOSS_TO_COUNTERWEIGHT).isPresent()) {
            y = figure(s, Term.BOSS_TO_COUNTERWEIGHT, y);
        }
        if (!dashed.isEmpty()) {
            s.words("unknown", "Dashed: not known", COLUMN_X, y + 16, START, Sketch.SMALL, true);
            for (int i = 0; i < dashed.size(); i++) {
                s.words("unknown", dashed.get(i), COLUMN_X, y + 34 + i * 16, START, Sketch.SMALL, false);
            }
        }
        s.words(
                "quiet",
                dashed.isEmpty() ? "to scale" : "to scale, but for what is dashed",
                AXIS_X,
                HEIGHT - 8,
                MIDDLE,
                Sketch.SMALL,
                false);
    }

    private double figure(Sketch s, Term term, double y) {
        s.words("quiet", figures.named(term, term.label()), COLUMN_X, y, START, Sketch.SMALL, false);
        s.words("lit", figures.text(term), COLUMN_X, y + 18, START, 14, true);
        return y + 42;
    }
}
