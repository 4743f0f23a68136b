package longthrow.workshop.draw;

import static longthrow.workshop.draw.Sketch.Anchor.END;
import static longthrow.workshop.draw.Sketch.Anchor.MIDDLE;
import static longthrow.workshop.draw.Sketch.Anchor.START;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import longthrow.core.answer.Answer;
import longthrow.core.quantity.UnitSystem;
import longthrow.core.term.Term;

/**
 * The deck clearance at its four corners: seen from above, and cut along the pin axis and across it with the tilt drawn too large by a factor that is
 * written. In the cuts the deck is level and the crown leans.
 */
public final class DeckTilt {
    private static final int WIDTH = 660;
    private static final int HEIGHT = 330;
    private static final double ROOM = 44;
    private static final double CROWN_WIDE = 150;

    private static final List<Term> CORNERS = List.of(
            Term.DECK_CLEARANCE_THRUST,
            Term.DECK_CLEARANCE_ANTITHRUST,
            Term.DECK_CLEARANCE_FLYWHEEL_END,
            Term.DECK_CLEARANCE_OUTPUT_END);

    private final AnswerFigures figures;
    private final double scale;
    private final int factor;

    private DeckTilt(AnswerFigures figures) {
        this.figures = figures;
        double most = CORNERS.stream()
                .mapToDouble(t -> Math.abs(figures.value(t).orElse(0.0)))
                .max()
                .orElse(0);
        this.scale = figures.value(Term.BORE).map(b -> CROWN_WIDE / b).orElse(0.0);
        this.factor = Exaggeration.factor(most * scale, ROOM);
    }

    /** The deck of an answer; none where no corner of it, or no bore to draw it by, is known. */
    public static Optional<DeckTilt> of(Answer answer) {
        return of(answer, answer.units());
    }

    /** The deck of an answer, with these units written; none where no corner of it, or no bore to draw it by, is known. */
    public static Optional<DeckTilt> of(Answer answer, UnitSystem units) {
        AnswerFigures figures = new AnswerFigures(answer, units);
        boolean any = CORNERS.stream().anyMatch(t -> figures.value(t).isPresent());
        return any && figures.value(Term.BORE).isPresent() ? Optional.of(new DeckTilt(figures)) : Optional.empty();
    }

    /** How many times too large heights are drawn. */
    public int factor() {
        return factor;
    }

    /**
     * The drawing, a whole SVG element.
     * @param idPrefix begins its ids
     */
    public String svg(String idPrefix) {
        Svg svg = new Svg(
                idPrefix,
                WIDTH,
                HEIGHT,
                figures.titled("Deck clearance at the corners"),
                CORNERS.stream().map(figures::said).collect(Collectors.joining("; "))
                        + "; piston below the deck positive. Heights drawn " + factor + " times too large.");
        Sketch s = new Sketch(svg, WIDTH, HEIGHT);
        fromAbove(s);
        cut(
                s,
                70,
                "across the pin axis",
                "thrust",
                "anti-thrust",
                Term.DECK_CLEARANCE_THRUST,
                Term.DECK_CLEARANCE_ANTITHRUST,
                Term.DECK_TILT_SIDES);
        cut(
                s,
                210,
                "along the pin axis",
                "flywheel end",
                "output end",
                Term.DECK_CLEARANCE_FLYWHEEL_END,
                Term.DECK_CLEARANCE_OUTPUT_END,
                Term.DECK_TILT_ENDS);
        s.words(
                "quiet",
                "Heights drawn " + factor + " times too large; the deck is drawn level.",
                16,
                HEIGHT - 12,
                START,
                Sketch.SMALL,
                false);
        return svg.finished();
    }

    private void fromAbove(Sketch s) {
        double x = 214;
        double y = 160;
        s.partRound(x, y, 62);
        s.axis(x - 76, y, x + 76, y);
        s.words("quiet", "pin axis", x, y - 5, MIDDLE, Sketch.SMALL, false);
        s.words("quiet", "seen from above", 16, 24, START, Sketch.SMALL, false);
        corner(s, Term.DECK_CLEARANCE_THRUST, "thrust side", x, y - 52, x, y - 106, MIDDLE);
        corner(s, Term.DECK_CLEARANCE_ANTITHRUST, "anti-thrust side", x, y + 52, x, y + 84, MIDDLE);
        corner(s, Term.DECK_CLEARANCE_FLYWHEEL_END, "flywheel end", x - 52, y, x - 82, y - 8, END);
        corner(s, Term.DECK_CLEARANCE_OUTPUT_END, "output end", x + 52, y, x + 82, y - 8, START);
    }

    private void corner(
            Sketch s, Term term, String name, double x, double y, double textX, double textY, Sketch.Anchor anchor) {
        boolean known = figures.value(term).isPresent();
        if (known) {
            s.spot(x, y, 4);
        } else {
            s.quietRound(x, y, 4);
        }
        s.words("quiet", name, textX, textY, anchor, Sketch.SMALL, false);
        s.words(known ? "lit" : "unknown", known ? figures.text(term) : "?", textX, textY + 17, anchor, 14, true);
        if (figures.isDisputed(term)) {
            s.words("unknown", "in dispute", textX, textY + 32, anchor, Sketch.SMALL, false);
        }
    }

    private void cut(
            Sketch s, double deckY, String name, String left, String right, Term leftTerm, Term rightTerm, Term tilt) {
        double x1 = 470;
        double x2 = x1 + CROWN_WIDE;
        s.words("quiet", name, (x1 + x2) / 2, deckY - 42, MIDDLE, Sketch.SMALL, false);
        s.datumFace(x1 - 32, deckY, x1 - 4, deckY);
        s.datumFace(x2 + 4, deckY, x2 + 32, deckY);
        s.quiet("M", x1 - 4, deckY, "H", x2 + 4);
        s.words("quiet", left, x1 - 2, deckY - 24, MIDDLE, Sketch.SMALL, false);
        s.words("quiet", right, x2 + 2, deckY - 24, MIDDLE, Sketch.SMALL, false);
        s.words(
                "lit",
                figures.named(tilt, "difference") + " " + figures.text(tilt),
                WIDTH - 8,
                deckY + ROOM + 34,
                END,
                14,
                true);
        Optional<Double> a = figures.value(leftTerm);
        Optional<Double> b = figures.value(rightTerm);
        if (a.isEmpty() || b.isEmpty()) {
            s.unknown("M", x1, deckY + 22, "H", x2);
            s.words("unknown", "?", (x1 + x2) / 2, deckY + 16, MIDDLE, 24, true);
            return;
        }
        double y1 = deckY + a.get() * scale * factor;
        double y2 = deckY + b.get() * scale * factor;
        s.part("M", x1, y1, "L", x2, y2, "V", deckY + ROOM + 16, "H", x1, "Z");
        if (Math.abs(y1 - deckY) > 1) {
            s.upright(x1 + 10, deckY, y1 + (y2 - y1) * 10 / CROWN_WIDE);
        }
        if (Math.abs(y2 - deckY) > 1) {
            s.upright(x2 - 10, deckY, y2 - (y2 - y1) * 10 / CROWN_WIDE);
        }
    }
}
