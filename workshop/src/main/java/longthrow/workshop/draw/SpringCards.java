package longthrow.workshop.draw;

import static longthrow.workshop.draw.ReadingCard.card;
import static longthrow.workshop.draw.Sketch.Anchor.END;
import static longthrow.workshop.draw.Sketch.Anchor.MIDDLE;
import static longthrow.workshop.draw.Sketch.Anchor.START;

import java.util.List;
import longthrow.core.term.Term;

/** Readings of the spring itself, of the room under its retainer, and of the pushrod's tube. */
final class SpringCards {
    private SpringCards() {}

    static List<ReadingCard> cards() {
        return List.of(
                card(
                        Term.SPRING_WIRE,
                        "opposite side of the wire",
                        SpringCards::wire,
                        "Over paint, rust or a mark of the die; a wire that is not round read one way only.",
                        "Clean the wire of the outer spring.",
                        "Across the wire of the end coil, two directions, two places."),
                card(
                        Term.SPRING_OUTSIDE,
                        "opposite side of the coils",
                        SpringCards::outside,
                        "Over an end coil that is ground or bent in: the middle coils count.",
                        "Stand the loose spring on the plate.",
                        "Jaws across the middle coils, two directions; a tapered spring: the mean of its ends."),
                card(
                        Term.SPRING_COILS,
                        "end of the coil that lies on",
                        SpringCards::coils,
                        "The coils that lie on at the ends counted too: they do not move.",
                        "Mark where the wire leaves the end coil at the bottom.",
                        "Count round and up to where it meets the end coil at the top, to a quarter."),
                card(
                        Term.RETAINER_TO_SEAL,
                        "top of the seal or guide",
                        SpringCards::travel,
                        "Read with the valve open, or to a seal that is not pressed home.",
                        "Valve shut with retainer and locks, a light checking spring under them, seal pressed home.",
                        "From the top of the seal, or of the guide where there is none, to the lowest point of the retainer.",
                        "Full lift must leave a margin here: push the valve by hand that far and look."),
                card(
                        Term.PUSHROD_OUTSIDE,
                        "opposite side of the pushrod",
                        SpringCards::pushrodAcross,
                        "Read at a pressed-in end, which is thicker or thinner than the tube.",
                        "Roll it on a plate: a bent one goes.",
                        "Jaws across its middle, two directions."),
                card(
                        Term.PUSHROD_WALL,
                        "inside of the tube",
                        SpringCards::pushrodWall,
                        "Guessed from the oil hole in its end, which is smaller than the tube.",
                        "Saw through an old one of the same make and stone off the burr; or take it off the maker's sheet.",
                        "One jaw in the tube, four places.",
                        "A solid rod: enter half its outside diameter."));
    }

    /** A spring cut through: round wire on both sides. */
    private static void cut(CardSketch s) {
        s.quiet("M", 120, 102, "L", 250, 72, "M", 120, 142, "L", 250, 112, "M", 120, 162, "L", 250, 132);
        s.quiet("M", 120, 202, "L", 250, 172, "M", 120, 222, "L", 250, 192, "M", 120, 262, "L", 250, 232);
        for (int coil = 0; coil < 3; coil++) {
            s.partRound(120, 122 + coil * 60, 20);
            s.partRound(250, 92 + coil * 60, 20);
        }
        s.axis(185, 60, 185, 284);
    }

    private static void wire(CardSketch s) {
        cut(s);
        s.micrometer(false, 230, 270, 92, 46);
        s.datumArc(250, 92, 20, 150, 210, true);
        s.levelOff(230, 270, 124, 104);
        s.symbol(300, 130, START);
        s.datum(20, 66, START, 231, 86);
        s.tool(350, 150, START, 332, 100);
        s.note("spring, cut through", 300, 240, START);
        s.quiet("M", 298, 236, "L", 268, 218);
    }

    private static void outside(CardSketch s) {
        cut(s);
        s.caliper(false, 100, 270, 178, 236, false);
        s.datumArc(250, 152, 20, -30, 30, true);
        s.levelOff(100, 270, 52, 122);
        s.symbol(185, 46, MIDDLE);
        s.datum(310, 80, START, 270, 150);
        s.tool(340, 210, START, 316, 240);
        s.note("spring, cut through", 20, 290, START);
    }

    private static void coils(CardSketch s) {
        s.partBox(140, 60, 100, 12);
        s.part("M", 140, 72, "H", 240, "V", 80, "L", 140, 88, "Z");
        for (int turn = 0; turn < 5; turn++) {
            double y = 92 + turn * 32;
            s.part(
                    "M", 140, y + 20, "L", 240, y + 2, "A", 6, 6, "0 0 1", 240, y + 14, "L", 140, y + 32, "A", 6, 6,
                    "0 0 1", 140, y + 20, "Z");
        }
        s.part("M", 140, 256, "L", 240, 248, "V", 264, "H", 140, "Z");
        s.partBox(120, 264, 140, 12);
        s.datumFace(142, 264, 238, 264);
        // the pencil that counts
        for (int turn = 0; turn < 5; turn++) {
            double y = 228 - turn * 32;
            s.toolLine(2.4, "M", 254, y, "H", 274);
            s.words("tool", Integer.toString(turn + 1), 282, y + 5, START, Sketch.TEXT, true);
        }
        s.tool("M", 276, 84, "L", 330, 66, "L", 334, 76, "L", 282, 92, "Z");
        s.lit("M", 306, 236, "V", 100);
        s.head(306, 94, 0, -1);
        s.symbol(320, 172, START);
        s.tool(350, 60, START, 330, 72);
        s.datum(300, 262, START, 230, 266);
        s.note("lies on, does not move: not counted", 132, 90, END);
        s.quiet("M", 126, 82, "L", 144, 74);
    }

    private static void travel(CardSketch s) {
        s.part("M", 84, 236, "H", 164, "V", 276, "H", 84, "Z", "M", 216, 236, "H", 296, "V", 276, "H", 216, "Z");
        s.partBox(164, 186, 52, 90);
        s.part("M", 158, 174, "H", 222, "V", 200, "H", 158, "Z");
        s.quiet(
                "M", 108, 84, "L", 130, 104, "L", 108, 124, "L", 130, 144, "L", 108, 164, "L", 130, 184, "L", 108, 204,
                "L", 130, 236);
        s.quiet(
                "M", 272, 84, "L", 250, 104, "L", 272, 124, "L", 250, 144, "L", 272, 164, "L", 250, 184, "L", 272, 204,
                "L", 250, 236);
        s.part("M", 104, 68, "H", 276, "V", 82, "H", 224, "V", 104, "H", 156, "V", 82, "H", 104, "Z");
        s.partBox(183, 50, 14, 238);
        s.caliper(true, 104, 174, 216, 326, true);
        s.datumFace(158, 174, 182, 174);
        s.upright(144, 104, 174);
        s.quiet("M", 156, 104, "H", 138, "M", 158, 174, "H", 138);
        s.symbol(96, 150, END);
        s.tool(380, 180, START, 341, 190);
        s.datum(12, 262, START, 160, 180);
        s.note("retainer, valve shut", 290, 60, START);
        s.note("seal", 250, 258, START);
        s.quiet("M", 250, 252, "L", 218, 194);
    }

    private static void pushrodAcross(CardSketch s) {
        s.partBox(40, 143, 250, 14);
        s.partRound(40, 150, 11);
        s.partRound(290, 150, 11);
        s.lookAt(165, 128, 172, true);
        s.note("at its middle", 165, 204, MIDDLE);
        s.roundInCaliper(384, 150, 22, 432);
        s.uprightOff(348, 128, 172, 384);
        s.symbol(340, 190, END);
        s.datum(230, 66, START, 372, 132);
        s.tool(330, 250, START, 440, 210);
        s.note("pushrod, on its end", 320, 284, START);
    }

    private static void pushrodWall(CardSketch s) {
        s.partRound(170, 180, 76);
        s.holeRound(170, 180, 50);
        s.caliper(true, 104, 130, 160, 300, false);
        s.datumArc(170, 180, 50, 215, 265, false);
        s.uprightOff(70, 104, 130, 166);
        s.symbol(60, 124, END);
        s.tool(360, 130, START, 315, 150);
        s.datum(12, 290, START, 140, 139);
        s.note("old pushrod, sawn through, drawn large", 290, 240, START);
        s.quiet("M", 286, 234, "L", 238, 206);
    }
}
