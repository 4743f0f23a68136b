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
                "far side of the sleeve",
                CylinderCards::sleeve,
                "Jaws askew, or on a fin, a step or paint instead of the sleeve; the bore is often not in the middle of the casting, so the wall differs round it.",
                "Clean the sleeve to bare metal.",
                "Close the jaws square across the top end, two directions.",
                "Note the thinnest place of the wall beside it."));
        cards.add(card(
                Term.SLEEVE_OUTSIDE_BOTTOM,
                "far side of the sleeve",
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
        walls(s, 84, 284);
        s.datumFace(64, 84, 92, 84);
        s.datumFace(212, 84, 240, 84);
        s.quiet("M", 92, 112, "H", 212, "M", 92, 172, "H", 212, "M", 92, 238, "H", 212);
        double y = DEPTH.getOrDefault(s.term(), 172);
        s.boreGauge(152, y, 60, 58);
        s.level(92, 212, y + 20);
        s.symbol(160, y + 42, START);
        s.tool(190, 52, START, 168, 58);
        s.datum(258, 84, START, 238, 84);
        // seen from above: which way
        s.partRound(390, 210, 58);
        s.quietRound(390, 210, 48);
        s.axis(316, 210, 464, 210);
        s.note("pin axis", 340, 204, START);
        if (isAlongAxis(s.term())) {
            s.level(342, 438, 210);
        } else if (s.term() == Term.BORE) {
            s.level(342, 438, 210);
            s.upright(390, 162, 258);
        } else {
            s.upright(390, 162, 258);
        }
        s.note("seen from above", 390, 288, MIDDLE);
    }

    private static void sleeve(CardSketch s) {
        s.part("M", 190, 70, "H", 220, "V", 280, "H", 190, "Z");
        s.part("M", 340, 70, "H", 370, "V", 280, "H", 340, "Z");
        s.axis(280, 55, 280, 292);
        double y = s.is(Term.SLEEVE_OUTSIDE_TOP) ? 90 : 258;
        boolean top = s.is(Term.SLEEVE_OUTSIDE_TOP);
        s.caliper(false, 190, 370, y, top ? 48 : 222, false);
        if (!top) {
            s.note("running surface", 280, 100, MIDDLE);
        }
        s.level(190, 370, y);
        s.symbol(290, y + (top ? 22 : -10), START);
        s.datumFace(190, top ? 110 : 278, 190, top ? 72 : 240);
        s.datum(12, 150, START, 188, top ? 104 : 244);
        s.tool(404, top ? 100 : 190, START, 396, top ? 60 : 224);
    }

    private static void sleeveLength(CardSketch s) {
        s.part("M", 90, 70, "H", 125, "V", 250, "H", 90, "Z");
        s.part("M", 230, 70, "H", 265, "V", 250, "H", 230, "Z");
        s.axis(178, 55, 178, 280);
        s.datumFace(82, 70, 129, 70);
        s.datumFace(226, 70, 273, 70);
        s.caliper(true, 70, 250, 240, 300, false);
        s.upright(200, 70, 250);
        s.symbol(192, 170, END);
        s.datum(340, 60, START, 276, 70);
        s.tool(350, 200, START, 316, 190);
    }

    static void flatness(CardSketch s) {
        s.part("M", 50, 190, "C", 130, 200, 260, 204, 330, 190, "V", 260, "H", 50, "Z");
        s.toolBox(40, 150, 300, 36);
        s.datumFace(340, 187, 40, 187);
        s.feeler(196, 193, 0.93, 0.36, 170);
        s.dimension(190, 187, 190, 198);
        s.symbol(172, 226, END);
        s.datum(200, 100, START, 150, 186);
        s.tool(350, 215, START, 332, 243);
        s.note("straightedge", 60, 172, START);
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
                "M", 60, 274, "V", 200, "C", 60, 170, 100, 160, 110, 150, "V", 70, "H", 215, "V", 150, "C", 225, 160,
                265, 170, 265, 200, "V", 274, "Z");
        s.quiet("M", 132, 70, "V", 158, "M", 193, 70, "V", 158);
        s.quietRound(162, 214, 24);
        s.datumAxis(96, 214, 262, 214);
        s.datumAxis(162, 180, 162, 246);
        s.upright(240, 70, 214);
        s.quiet("M", 215, 70, "H", 248);
        s.symbol(246, 130, START);
        // height gauge
        s.toolBox(420, 60, 14, 206);
        s.toolBox(390, 262, 74, 12);
        s.toolBox(410, 60, 34, 26);
        s.tool("M", 410, 64, "H", 262, "L", 266, 70, "H", 410, "Z");
        s.quiet("M", 262, 70, "H", 250);
        s.tool(394, 150, END, 420, 170);
        s.datum(418, 242, END, 256, 215);
        s.note("surface plate", 276, 268, START);
        s.note("main bore", 80, 252, START);
    }

    private static void boreOffset(CardSketch s) {
        s.plate(30, 450, 274);
        s.part(
                "M", 60, 274, "V", 120, "H", 160, "C", 170, 140, 170, 140, 190, 146, "H", 300, "V", 240, "H", 190, "V",
                274, "Z");
        s.quietRound(112, 202, 26);
        s.quiet("M", 170, 160, "H", 300, "M", 170, 226, "H", 300);
        s.datumAxis(60, 202, 340, 202);
        s.axis(160, 184, 340, 184);
        s.dimension(326, 202, 326, 184);
        s.symbol(336, 170, START);
        s.toolBox(400, 60, 14, 206);
        s.toolBox(376, 262, 68, 12);
        s.toolBox(390, 134, 34, 26);
        s.tool("M", 390, 154, "H", 288, "L", 292, 160, "H", 390, "Z");
        s.tool(390, 90, END, 402, 100);
        s.datum(60, 60, START, 90, 200);
        s.note("cylinder, lying", 200, 258, START);
        s.note("axis of the cylinder", 210, 130, START);
    }

    private static void deckClearance(CardSketch s) {
        walls(s, 150, 284);
        s.part("M", 94, 178, "H", 210, "V", 270, "H", 94, "Z");
        s.quietRound(152, 240, 16);
        double x = s.is(Term.DECK_CLEARANCE_ANTITHRUST, Term.DECK_CLEARANCE_OUTPUT_END) ? 196 : 108;
        s.datumFace(56, 150, 92, 150);
        s.datumFace(212, 150, 248, 150);
        s.depthGauge(x, 150, 178, 0);
        s.toolBox(60, 139, 184, 11);
        s.upright(x < 150 ? x + 18 : x - 18, 150, 178);
        s.symbol(x < 150 ? x + 28 : x - 28, 172, x < 150 ? START : END);
        s.tool(x < 150 ? 150 : 60, 84, START, x < 150 ? 125 : x - 17, x < 150 ? 96 : 98);
        s.datum(266, 138, START, 248, 150);
        // seen from above: where
        s.partRound(384, 222, 44);
        s.axis(322, 222, 446, 222);
        double[] at = s.is(Term.DECK_CLEARANCE_THRUST)
                ? new double[] {384, 188}
                : s.is(Term.DECK_CLEARANCE_ANTITHRUST)
                        ? new double[] {384, 256}
                        : s.is(Term.DECK_CLEARANCE_OUTPUT_END) ? new double[] {418, 222} : new double[] {350, 222};
        s.spot(at[0], at[1], 6);
        if (s.is(Term.DECK_CLEARANCE)) {
            s.spot(418, 222, 6);
        }
        s.words("quiet", "pin axis", 384, 217, MIDDLE, Sketch.SMALL, false);
        s.words("quiet", "flywheel", 318, 219, END, Sketch.SMALL, false);
        s.words("quiet", "end", 318, 234, END, Sketch.SMALL, false);
        s.words("quiet", "output", 450, 217, MIDDLE, Sketch.SMALL, false);
        s.words("quiet", "end", 450, 236, MIDDLE, Sketch.SMALL, false);
        s.words("quiet", "thrust side", 384, 170, MIDDLE, Sketch.SMALL, false);
        s.words("quiet", "seen from above", 384, 288, MIDDLE, Sketch.SMALL, false);
    }
}
