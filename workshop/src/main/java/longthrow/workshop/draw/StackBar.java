package longthrow.workshop.draw;

import static longthrow.workshop.draw.Sketch.Anchor.MIDDLE;
import static longthrow.workshop.draw.Sketch.Anchor.START;
import static longthrow.workshop.draw.Svg.n;

import java.util.List;
import java.util.Optional;
import longthrow.core.answer.Answer;
import longthrow.core.quantity.UnitSystem;
import longthrow.core.term.Term;

/**
 * The stack: deck height on one side, half stroke, rod and compression height on the other, to scale from the crankshaft axis up; beside it the last
 * millimetres at the deck, larger, with gasket and squish. Doubt is hatched at the joints, too large by a factor that is written. What is not known
 * is an open gap with a question mark.
 */
public final class StackBar {
    private static final int WIDTH = 780;
    private static final int HEIGHT = 460;
    private static final double AXIS_Y = 396;
    private static final double TALL = 320;
    private static final double BAR = 64;
    private static final double DECK_X = 30;
    private static final double PARTS_X = 124;
    /** Share of the known stack given to each unknown piece where nothing says how long it is. Layout. */
    private static final double OPEN_SHARE = 0.5;

    private static final double DOUBT_ROOM = 7;

    /** The magnified end: how much of the cylinder it shows at least [m], and where it stands. */
    private static final double LAST = 3e-3;

    private static final double INSET_X = 400;
    private static final double INSET_WIDE = 134;
    private static final double INSET_TOP = 70;
    private static final double BLOCK = 40;
    private static final double INSET_TALL = 240;

    /** A piece of the stack. */
    private record Piece(Term term, String name, double share) {}

    private static final List<Piece> PIECES = List.of(
            new Piece(Term.STROKE, "half of the stroke", 0.5),
            new Piece(Term.ROD_LENGTH, "rod length", 1),
            new Piece(Term.COMPRESSION_HEIGHT, "compression height", 1));

    private final AnswerFigures figures;

    private StackBar(AnswerFigures figures) {
        this.figures = figures;
    }

    /** The stack of an answer, in its owner's units. */
    public static StackBar of(Answer answer) {
        return of(answer, answer.units());
    }

    /** The stack of an answer, with these units written. */
    public static StackBar of(Answer answer, UnitSystem units) {
        return new StackBar(new AnswerFigures(answer, units));
    }

    /**
     * The drawing, a whole SVG element.
     * @param idPrefix begins its ids
     */
    public String svg(String idPrefix) {
        Svg svg = new Svg(idPrefix, WIDTH, HEIGHT, figures.titled("Stack from crankshaft axis to deck"), description());
        Sketch s = new Sketch(svg, WIDTH, HEIGHT);
        bars(s);
        inset(s);
        return svg.finished();
    }

    private String description() {
        return figures.said(Term.DECK_HEIGHT) + " against half of the " + figures.said(Term.STROKE) + ", "
                + figures.said(Term.ROD_LENGTH) + " and " + figures.said(Term.COMPRESSION_HEIGHT) + "; "
                + figures.said(Term.DECK_CLEARANCE) + ", " + figures.said(Term.GASKET_THICKNESS) + ", "
                + figures.said(Term.SQUISH) + ".";
    }

    private Optional<Double> length(Piece piece) {
        return figures.value(piece.term()).map(v -> v * piece.share());
    }

    // ---- the bars

    private void bars(Sketch s) {
        double known = PIECES.stream().mapToDouble(p -> length(p).orElse(0.0)).sum();
        long open = PIECES.stream().filter(p -> length(p).isEmpty()).count();
        Optional<Double> deck = figures.value(Term.DECK_HEIGHT);
        double left = deck.map(
                        h -> h - known - figures.value(Term.DECK_CLEARANCE).orElse(0.0))
                .orElse(0.0);
        double gap = open == 0 ? 0 : left > 0 ? left / open : (known > 0 ? known : deck.orElse(1.0)) * OPEN_SHARE;
        double top = Math.max(known + open * gap, deck.orElse(0.0));
        double scale = TALL / top;
        int too = Exaggeration.factor(largestDoubt() * scale, DOUBT_ROOM);

        s.datumAxis(16, AXIS_Y, 214, AXIS_Y);
        deckBar(s, deck, scale, too);
        double at = 0;
        for (Piece piece : PIECES) {
            Optional<Double> length = length(piece);
            double tall = length.orElse(gap) * scale;
            double y = AXIS_Y - at - tall;
            bar(s, piece.term(), PARTS_X, y, tall, length.isPresent());
            doubt(s, PARTS_X, y, figures.doubt(piece.term()) * piece.share() * scale * too);
            beside(s, piece, PARTS_X + BAR + 12, y + tall / 2);
            at += tall;
        }
        s.note("crankshaft axis", 16, AXIS_Y + 18, START);
        s.words(
                "quiet",
                "Both bars to one scale." + (too > 1 ? " Hatched: the ±, drawn " + too + " times too large." : ""),
                16,
                HEIGHT - 14,
                START,
                Sketch.SMALL,
                false);
    }

    private double largestDoubt() {
        double parts = PIECES.stream()
                .mapToDouble(p -> figures.doubt(p.term()) * p.share())
                .max()
                .orElse(0);
        return Math.max(parts, figures.doubt(Term.DECK_HEIGHT));
    }

    private void deckBar(Sketch s, Optional<Double> deck, double scale, int too) {
        double tall = deck.map(h -> h * scale).orElse(TALL);
        double y = AXIS_Y - tall;
        bar(s, Term.DECK_HEIGHT, DECK_X, y, tall, deck.isPresent());
        doubt(s, DECK_X, y, figures.doubt(Term.DECK_HEIGHT) * scale * too);
        if (deck.isPresent()) {
            s.datumFace(DECK_X - 14, y, PARTS_X + BAR + 8, y);
        }
        if (deck.isPresent()) {
            s.symbol(Term.DECK_HEIGHT.symbol(), DECK_X + BAR / 2, AXIS_Y - tall / 2, MIDDLE);
        }
        s.words("quiet", figures.named(Term.DECK_HEIGHT, "deck height"), 16, 24, START, Sketch.SMALL, false);
        s.words("part", figures.text(Term.DECK_HEIGHT), 16, 42, START, Sketch.TEXT, true);
    }

    private static void bar(Sketch s, Term term, double x, double y, double tall, boolean known) {
        s.svg()
                .add(
                        "rect",
                        "class",
                        known ? "part" : "unknown",
                        "data-term",
                        term.path(),
                        "x",
                        n(x),
                        "y",
                        n(y),
                        "width",
                        n(BAR),
                        "height",
                        n(tall),
                        "stroke",
                        "currentColor",
                        "stroke-width",
                        "1.6",
                        "fill",
                        known ? "currentColor" : "none",
                        "fill-opacity",
                        "0.1",
                        "stroke-dasharray",
                        known ? "none" : "5 4");
        if (!known) {
            s.words("unknown", "?", x + BAR / 2, y + tall / 2 + 9, MIDDLE, 26, true);
        }
    }

    private static void doubt(Sketch s, double x, double y, double half) {
        if (half >= 0.5) {
            s.doubt(x, y - half, BAR, 2 * half);
        }
    }

    private void beside(Sketch s, Piece piece, double x, double y) {
        s.words("quiet", figures.named(piece.term(), piece.name()), x, y - 3, START, Sketch.SMALL, false);
        String figure = figures.text(piece.term());
        boolean half = piece.share() != 1 && figures.value(piece.term()).isPresent();
        s.words("part", half ? "½ × " + figure : figure, x, y + 15, START, 14, true);
    }

    // ---- the last millimetres

    private void inset(Sketch s) {
        Optional<Double> clearance = figures.value(Term.DECK_CLEARANCE);
        Optional<Double> gasket = figures.value(Term.GASKET_THICKNESS);
        double above = Math.max(gasket.orElse(0.0), Math.max(0, -clearance.orElse(0.0)));
        double below = Math.max(0, clearance.orElse(0.0));
        double shown = Math.max(LAST, 1.35 * (above + below));
        double scale = INSET_TALL / shown;
        double deckY = INSET_TOP + INSET_TALL / 2 + (above - below) / 2 * scale;
        double right = INSET_X + INSET_WIDE;
        double bottom = INSET_TOP + INSET_TALL;

        s.quiet(Sketch.box(INSET_X, INSET_TOP, INSET_WIDE, INSET_TALL));
        s.partBox(INSET_X, deckY, BLOCK, bottom - deckY);
        s.datumFace(INSET_X - 12, deckY, INSET_X + BLOCK, deckY);
        double crownY = deckY + clearance.orElse(0.0) * scale;
        double headY = deckY - gasket.orElse(0.0) * scale;
        double middle = INSET_X + 88;
        if (gasket.isPresent()) {
            s.svg()
                    .add(
                            "rect",
                            "class",
                            "part",
                            "data-term",
                            Term.GASKET_THICKNESS.path(),
                            "x",
                            n(INSET_X),
                            "y",
                            n(headY),
                            "width",
                            n(BLOCK - 4),
                            "height",
                            n(deckY - headY),
                            "stroke",
                            "currentColor",
                            "fill",
                            "currentColor",
                            "fill-opacity",
                            "0.3");
            s.partBox(INSET_X, INSET_TOP, INSET_WIDE, headY - INSET_TOP);
            hatched(s, INSET_X + BLOCK, headY, INSET_WIDE - BLOCK, figures.doubt(Term.GASKET_THICKNESS) * scale);
        } else {
            s.unknown("M", INSET_X, deckY - 40, "H", right);
            s.words("unknown", "?", INSET_X + BLOCK / 2, deckY - 12, MIDDLE, 24, true);
        }
        if (clearance.isPresent()) {
            s.svg()
                    .add(
                            "rect",
                            "class",
                            "part",
                            "data-term",
                            Term.DECK_CLEARANCE.path(),
                            "x",
                            n(INSET_X + BLOCK + 4),
                            "y",
                            n(crownY),
                            "width",
                            n(INSET_WIDE - BLOCK - 4),
                            "height",
                            n(bottom - crownY),
                            "stroke",
                            "currentColor",
                            "stroke-width",
                            "1.6",
                            "fill",
                            "currentColor",
                            "fill-opacity",
                            "0.1");
            hatched(s, INSET_X + BLOCK + 4, crownY, INSET_WIDE - BLOCK - 4, figures.doubt(Term.DECK_CLEARANCE) * scale);
        } else {
            s.unknown("M", INSET_X + BLOCK + 4, bottom, "V", deckY + 40, "H", right);
            s.words("unknown", "?", middle, deckY + 30, MIDDLE, 24, true);
        }
        if (clearance.isPresent() && gasket.isPresent() && crownY - headY > 1) {
            s.upright(middle, headY, crownY);
        }
        s.words(
                "quiet",
                "the last " + millimetres(shown) + " at the deck, larger",
                INSET_X,
                INSET_TOP - 10,
                START,
                Sketch.SMALL,
                false);
        s.words("quiet", "head", middle, INSET_TOP + 14, MIDDLE, Sketch.SMALL, false);
        s.words("quiet", "piston", middle, bottom - 8, MIDDLE, Sketch.SMALL, false);
        s.words("quiet", "deck", INSET_X + BLOCK / 2, bottom - 8, MIDDLE, Sketch.SMALL, false);
        double x = right + 16;
        beside(s, Term.SQUISH, "squish", x, INSET_TOP + 40, middle, (headY + crownY) / 2);
        beside(
                s,
                Term.GASKET_THICKNESS,
                "gasket, crushed",
                x,
                INSET_TOP + 104,
                INSET_X + BLOCK / 2,
                (headY + deckY) / 2);
        boolean proud = clearance.orElse(0.0) < 0;
        beside(
                s,
                Term.DECK_CLEARANCE,
                proud ? "deck clearance: proud" : "deck clearance",
                x,
                INSET_TOP + 168,
                INSET_X + 116,
                crownY);
        s.words("quiet", "Hatched here: the ±, to scale.", INSET_X, bottom + 20, START, Sketch.SMALL, false);
    }

    private static void hatched(Sketch s, double x, double y, double width, double half) {
        if (half >= 0.5) {
            s.doubt(
                    x,
                    Math.max(INSET_TOP, y - half),
                    width,
                    Math.min(y + half, INSET_TOP + INSET_TALL) - Math.max(INSET_TOP, y - half));
        }
    }

    /** A figure beside the magnified end, with a line to its place. */
    private void beside(Sketch s, Term term, String name, double x, double y, double toX, double toY) {
        s.quiet("M", x - 4, y, "L", toX, toY);
        s.words("quiet", figures.named(term, name), x, y - 3, START, Sketch.SMALL, false);
        s.words("lit", figures.text(term), x, y + 15, START, 14, true);
    }

    private static String millimetres(double length) {
        return Svg.n(length * 1e3) + " mm";
    }
}
