package longthrow.workshop.draw;

import static longthrow.workshop.draw.ReadingCard.card;
import static longthrow.workshop.draw.Sketch.Anchor.END;
import static longthrow.workshop.draw.Sketch.Anchor.MIDDLE;
import static longthrow.workshop.draw.Sketch.Anchor.START;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import longthrow.core.term.Term;

/** Readings of bore, sleeve and deck. */
final class CylinderCards {
    private static final String BORE_SLIP =
            "Gauge not rocked to its smallest figure, metal warm from the hand or the hone, or the gauge not set again after its ring was dropped.";

    /** Where in the drawing of the bore each reading is taken: y of the gauge. */
    private static final Map<Term, Integer> DEPTH = Map.of(
            Term.BORE_TOP_THRUST, 112,
            Term.BORE_TOP_AXIS, 112,
            Term.BORE_MIDDLE_THRUST, 172,
            Term.BORE_MIDDLE_AXIS, 172,
            Term.BORE, 172,
            Term.BORE_BOTTOM_THRUST, 238,
            Term.BORE_BOTTOM_AXIS, 238);

    private CylinderCards() {}

    static List<ReadingCard> cards() {
        List<ReadingCard> cards = new ArrayList<>();
        for (Term bore : List.of(
                Term.BORE_TOP_THRUST,
                Term.BORE_MIDDLE_THRUST,
                Term.BORE_BOTTOM_THRUST,
                Term.BORE_TOP_AXIS,
                Term.BORE_MIDDLE_AXIS,
                Term.BORE_BOTTOM_AXIS,
                Term.BORE)) {
            cards.add(card(
                    bore,
                    "deck face for depth, pin axis for direction",
                    CylinderCards::bore,
                    BORE_SLIP,
                    "Clean the bore and let it stand with the gauge and its setting ring until all are at 20 °C.",
                    "Set the gauge to zero in the ring or with a micrometer.",
                    bore == Term.BORE
                            ? "Read at three depths, along and across the pin axis; enter the map rather than one figure if you can."
                            : "Let it down to the depth shown, turn it " + (isAlongAxis(bore) ? "along" : "across")
                                    + " the pin axis.",
                    "Rock it and take the smallest figure; lift it out, and read again."));
        }
        cards.add(card(
                Term.SLEEVE_OUTSIDE_TOP,
                "opposite side of the sleeve",
                CylinderCards::sleeve,
                "Jaws askew, or on a fin, a step or paint instead of the sleeve; the bore is often not in the middle of the casting, so the wall differs round it.",
                "Clean the sleeve to bare metal.",
                "Close the jaws square across the top end, two directions.",
                "Note the thinnest place of the wall beside it."));
        cards.add(card(
                Term.SLEEVE_OUTSIDE_BOTTOM,
                "opposite side of the sleeve",
                CylinderCards::sleeve,
                "Jaws askew, or on a chamfer at the lower end.",
                "Clean the sleeve to bare metal.",
                "Close the jaws square across the bottom end above any chamfer, two directions."));
        cards.add(card(
                Term.SLEEVE_LENGTH,
                "deck face",
                CylinderCards::sleeveLength,
                "Measured to the end of the casting instead of the end of the surface the skirt runs on; a notch for the rod counts only where the skirt passes it.",
                "Clean the deck face and the lower end.",
                "One jaw on the deck face, the other under the lower end of the running surface.",
                "Read on the thrust side and on the other."));
        cards.add(card(
                Term.DECK_FLATNESS,
                "edge of the straightedge",
                CylinderCards::flatness,
                "Carbon, gasket left over or the lifted edge of a stud hole holds the straightedge up.",
                "Scrape and stone the face clean, stone lifted edges at the stud holes.",
                "Lay the straightedge along, across and over both diagonals.",
                "The thickest leaf that passes anywhere counts."));
        cards.add(card(
                        Term.DECK_HEIGHT,
                        "crankshaft axis",
                        CylinderCards::deckHeight,
                        "Half the main bore forgotten or counted twice, or the case not level on the plate.",
                        "Stand the clean case on the plate, deck up and level.",
                        "Read the height of the deck face, then of the top of the main bore.",
                        "Deck less bore top, plus half the main bore, is the deck height.")
                .cautioned("A bare case tips: block it before you let go."));
        cards.add(card(
                Term.BORE_OFFSET,
                "crankshaft axis",
                CylinderCards::boreOffset,
                "Sign turned round: it is positive when the cylinder stands towards the anti-thrust side.",
                "Lay the case on its side on the plate, cylinder level.",
                "Read the height of main bore and cylinder bore, each at bottom and top; the middle of each pair is its axis.",
                "Cylinder axis less crankshaft axis, with its sign."));
        cards.add(deck(Term.DECK_CLEARANCE, "on the pin axis"));
        cards.add(deck(Term.DECK_CLEARANCE_THRUST, "on the thrust side, at right angles to the pin axis"));
        cards.add(deck(
                Term.DECK_CLEARANCE_ANTITHRUST, "on the anti-thrust side, as far from the pin axis as on the other"));
        cards.add(deck(Term.DECK_CLEARANCE_FLYWHEEL_END, "on the pin axis, at its flywheel end"));
        cards.add(deck(Term.DECK_CLEARANCE_OUTPUT_END, "on the pin axis, at its output end"));
        return cards;
    }

    private static ReadingCard deck(Term term, String where) {
        return card(
                term,
                "deck face",
                CylinderCards::deckClearance,
                "Read off the pin axis alone, so that the rock of the piston is taken for deck; or crown rim and dish mixed up; or the sign lost when the piston stands proud.",
                "Clean deck and crown rim; zero the gauge with its base on the deck and its tip on the deck too.",
                "Turn to true top dead centre: highest reading of the gauge.",
                "Tip on the crown rim " + where + "; piston pushed to the same side each time.",
                "Below the deck is positive, proud is negative.");
    }

    private static boolean isAlongAxis(Term term) {
        return term == Term.BORE_TOP_AXIS || term == Term.BORE_MIDDLE_AXIS || term == Term.BORE_BOTTOM_AXIS;
    }

    private static void walls(CardSketch s, double top, double bottom) {
        s.partBox(70, top, 22, bottom - top);
        s.partBox(212, top, 22, bottom - top);
    }

    private static void bore(CardSketch s) {
        walls(s, 84, 280);
        s.datumFace(70, 84, 92, 84);
        s.datumFace(212, 84, 234, 84);
        s.quiet("M", 92, 112, "H", 212, "M", 92, 172, "H", 212, "M", 92, 238, "H", 212);
        double y = DEPTH.getOrDefault(s.term(), 172);
        s.boreGauge(152, y, 60, 58);
        s.level(92, 212, y + 16);
        s.symbol(160, y + 38, START);
        s.tool(190, 56, START, 168, 58);
        s.datum(292, 84, START, 230, 85);
        boolean mean = s.term() == Term.BORE;
        station(s, "top", 112, y, mean);
        station(s, "middle", 172, y, mean);
        station(s, "bottom", 238, y, mean);
        if (!mean) {
            s.uprightOff(50, 84, y, 70);
            s.note("depth", 42, (84 + y) / 2 + 4, END);
        }
        // seen from above: which way
        s.partRound(400, 206, 56);
        s.holeRound(400, 206, 46);
        s.axis(338, 206, 462, 206);
        s.note("pin axis", 400, 145, MIDDLE);
        s.quiet("M", 430, 148, "L", 456, 205);
        if (isAlongAxis(s.term())) {
            s.level(354, 446, 206);
        } else if (mean) {
            s.level(354, 446, 206);
            s.upright(400, 160, 252);
        } else {
            s.upright(400, 160, 252);
        }
        s.note("seen from above", 400, 284, MIDDLE);
    }

    private static void sleeve(CardSketch s) {
        boolean top = s.is(Term.SLEEVE_OUTSIDE_TOP);
        s.partBox(200, 76, 28, 164);
        s.partBox(346, 76, 28, 164);
        s.axis(287, 60, 287, 252);
        double y = top ? 96 : 220;
        s.caliper(false, 200, 374, top ? 112 : 204, top ? 54 : 262, false);
        s.level(200, 374, y);
        s.symbol(296, top ? y + 24 : y - 10, START);
        if (top) {
            s.datumFace(200, 114, 200, 78);
        } else {
            s.datumFace(200, 238, 200, 202);
        }
        s.datum(10, 226, START, 201, top ? 106 : 208);
        s.tool(394, top ? 108 : 236, START, top ? 412 : 416, top ? 59 : 262);
        s.note("deck", 276, top ? 160 : 100, END);
        s.note("bottom", 279, top ? 228 : 160, END);
        if (!top) {
            s.note("above any", 384, 176, START);
            s.note("chamfer", 384, 191, START);
        }
        // seen from above: which way
        s.partRound(90, 120, 36);
        s.holeRound(90, 120, 27);
        s.level(54, 126, 120);
        s.upright(90, 84, 156);
        s.note("two directions", 90, 178, MIDDLE);
    }

    private static void sleeveLength(CardSketch s) {
        s.partBox(60, 70, 35, 180);
        s.partBox(200, 70, 35, 180);
        s.axis(148, 55, 148, 252);
        s.caliper(true, 70, 250, 212, 286, false);
        s.datumFace(60, 70, 95, 70);
        s.datumFace(200, 70, 235, 70);
        s.upright(180, 70, 250);
        s.quiet("M", 200, 70, "H", 174, "M", 200, 250, "H", 174);
        s.symbol(170, 170, END);
        s.datum(340, 70, START, 232, 71);
        s.tool(350, 200, START, 302, 190);
        s.note("running surface", 100, 284, START);
        s.quiet("M", 110, 276, "L", 96, 230);
    }

    static void flatness(CardSketch s) {
        s.part("M", 50, 182, "C", 130, 202, 260, 206, 330, 182, "V", 256, "H", 50, "Z");
        s.toolBox(40, 142, 300, 40);
        s.datumFace(340, 182, 40, 182);
        s.tool("M", 196, 183, "L", 380, 183, "V", 190, "H", 196, "Z");
        s.toolBox(380, 178, 40, 17);
        s.dimension(170, 182, 170, 197);
        s.symbol(148, 224, MIDDLE);
        s.datum(200, 100, START, 190, 181);
        s.tool(370, 236, START, 400, 194);
        s.note("straightedge", 60, 164, START);
        s.note(
                s.is(Term.HEAD_FLATNESS)
                        ? "head face, bent (drawn much too large)"
                        : "deck face, bent (drawn much too large)",
                60,
                276,
                START);
    }

    private static void deckHeight(CardSketch s) {
        s.plate(30, 450, 274);
        s.part(
                "M", 24, 274, "V", 200, "C", 24, 170, 64, 160, 74, 150, "V", 70, "H", 179, "V", 150, "C", 189, 160, 229,
                170, 229, 200, "V", 274, "Z");
        s.hole("M", 96, 70, "V", 158, "H", 157, "V", 70);
        s.holeRound(126, 214, 24);
        s.datumAxis(44, 214, 330, 214);
        s.datumAxis(126, 180, 126, 246);
        s.upright(300, 70, 214);
        s.symbol(310, 150, START);
        // height gauge
        s.toolBox(420, 60, 14, 206);
        s.toolBox(394, 262, 70, 12);
        s.toolBox(410, 60, 34, 26);
        s.tool("M", 410, 62, "H", 194, "L", 170, 70, "H", 410, "Z");
        s.tool(470, 44, END, 427, 60);
        s.datum(233, 250, START, 290, 214);
        s.note("deck", 84, 62, MIDDLE);
        s.note("main bore", 40, 258, START);
        s.note("surface plate", 30, 297, START);
    }

    private static void boreOffset(CardSketch s) {
        s.plate(30, 450, 274);
        s.part(
                "M", 60, 274, "V", 120, "H", 160, "C", 170, 140, 170, 140, 190, 146, "H", 300, "V", 240, "H", 190, "V",
                274, "Z");
        s.holeRound(112, 202, 26);
        s.hole("M", 300, 160, "H", 180, "V", 226, "H", 300);
        s.datumAxis(76, 202, 356, 202);
        s.axis(170, 184, 356, 184);
        s.dimension(340, 202, 340, 184);
        s.symbol(350, 232, START);
        s.toolBox(410, 60, 14, 206);
        s.toolBox(386, 262, 68, 12);
        s.toolBox(400, 138, 34, 26);
        s.tool("M", 400, 152, "H", 296, "L", 276, 160, "H", 400, "Z");
        s.tool(394, 90, END, 410, 100);
        s.datum(30, 76, START, 100, 202);
        s.note("cylinder, lying", 200, 262, START);
        s.note("axis of the cylinder", 210, 130, START);
        s.quiet("M", 226, 134, "L", 240, 183);
        s.note("up: anti-thrust side", 200, 60, START);
    }

    private static void deckClearance(CardSketch s) {
        boolean thrust = s.is(Term.DECK_CLEARANCE_THRUST, Term.DECK_CLEARANCE_ANTITHRUST);
        boolean right = s.is(Term.DECK_CLEARANCE_ANTITHRUST, Term.DECK_CLEARANCE_OUTPUT_END);
        boolean both = s.is(Term.DECK_CLEARANCE);
        walls(s, 140, 266);
        s.part("M", 94, 168, "H", 210, "V", 258, "H", 94, "Z");
        if (thrust) {
            pinEndOn(s, 152, 222);
        } else {
            pinAcross(s, 94, 210, 218, 258);
        }
        double x = right ? 190 : 114;
        s.depthGauge(x, 140, 168, 0);
        s.toolBox(60, 129, 184, 11);
        s.datumFace(70, 140, 92, 140);
        s.datumFace(212, 140, 234, 140);
        s.spot(x, 168, 5);
        double dim = right ? x - 22 : x + 22;
        s.upright(dim, 140, 168);
        s.symbol(right ? dim - 10 : dim + 10, 161, right ? END : START);
        s.tool(right ? 60 : 160, 84, START, right ? x - 17 : x + 17, 90);
        s.datum(270, 112, START, 232, 141);
        s.note("piston at top dead centre", 270, 56, START);
        s.note(thrust ? "thrust side" : "flywheel end", 12, 288, START);
        s.note(thrust ? "anti-thrust side" : "output end", 288, 288, END);
        if (both) {
            s.spot(190, 168, 5);
        }
        // seen from above: where
        double cx = 388;
        double cy = 210;
        s.partRound(cx, cy, 42);
        s.axis(cx - 46, cy, cx + 46, cy);
        double[] at =
                thrust ? new double[] {cx, right ? cy + 32 : cy - 32} : new double[] {right ? cx + 32 : cx - 32, cy};
        s.spot(at[0], at[1], 6);
        if (both) {
            s.spot(cx + 32, cy, 6);
        }
        s.note("pin axis", cx, thrust && !right ? cy + 16 : cy - 6, MIDDLE);
        s.note(
                "tip",
                thrust ? cx + 10 : at[0] + (right ? -1 : 1) * 4,
                thrust ? at[1] + 5 : cy + 20,
                thrust ? START : MIDDLE);
        s.note("flywheel", cx - 50, cy - 2, END);
        s.note("end", cx - 50, cy + 12, END);
        s.note("output", cx + 50, cy - 2, START);
        s.note("end", cx + 50, cy + 12, START);
        s.note("thrust side", cx, cy - 48, MIDDLE);
        s.note("anti-thrust side", cx, cy + 58, MIDDLE);
        s.note("seen from above", cx, 290, MIDDLE);
    }

    private static void station(CardSketch s, String name, double at, double read, boolean all) {
        boolean here = all || at == read;
        s.words(here ? "lit" : "quiet", name, 242, at + 5, START, Sketch.SMALL, here);
    }

    /** A piston cut along its pin: the pin lies across in its bosses, the rod between them. */
    static void pinAcross(CardSketch s, double left, double right, double pinY, double bottom) {
        double middle = (left + right) / 2;
        s.hole("M", middle - 26, bottom, "V", pinY - 28, "H", middle + 26, "V", bottom);
        s.part("M", middle - 14, pinY - 20, "H", middle + 14, "V", bottom + 12, "H", middle - 14, "Z");
        s.partBox(left + 8, pinY - 10, right - left - 16, 20);
        s.note("pin", middle, pinY + 5, MIDDLE);
    }

    /** A pin seen on its end. */
    static void pinEndOn(CardSketch s, double x, double y) {
        s.partRound(x, y, 16);
        s.holeRound(x, y, 8);
        s.note("pin, end on", x, y + 30, MIDDLE);
    }
}
