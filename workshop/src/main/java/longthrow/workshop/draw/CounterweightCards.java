package longthrow.workshop.draw;

import static longthrow.workshop.draw.ReadingCard.card;
import static longthrow.workshop.draw.Sketch.Anchor.END;
import static longthrow.workshop.draw.Sketch.Anchor.MIDDLE;
import static longthrow.workshop.draw.Sketch.Anchor.START;

import java.util.List;
import longthrow.core.term.Term;

/** Readings of the counterweights, for what passes them and for the balance. */
final class CounterweightCards {
    private CounterweightCards() {}

    static List<ReadingCard> cards() {
        return List.of(
                card(
                        Term.COUNTERWEIGHT_SPAN,
                        "one edge of the counterweight",
                        CounterweightCards::span,
                        "The angle between the slanting cheeks taken: the outer edge counts, where its corners are.",
                        "Stand the crankshaft on paper; mark its axis and both corners of the outer edge.",
                        "Draw lines from the axis to the corners, protractor between them; a whole disc is 360°."),
                card(
                        Term.COUNTERWEIGHT_FACES,
                        "inner face of the opposite counterweight",
                        CounterweightCards::side,
                        "Measured between the cheeks at the crankpin, where they may stand nearer.",
                        "Clean the inner faces of the counterweights.",
                        "Inside jaws between them, where the skirt comes down."),
                card(
                        Term.COUNTERWEIGHT_THICKNESS,
                        "opposite face of the counterweight",
                        CounterweightCards::side,
                        "Read at the cheek instead of at the counterweight, or over a casting seam.",
                        "Jaws over one counterweight near its outer edge.",
                        "Both counterweights; not alike: the mean, and a note."),
                card(
                        Term.MAIN_SPAN,
                        "middle of one main bearing",
                        CounterweightCards::side,
                        "Taken over the outer ends of the bearings: their middles count, where the load is carried.",
                        "Mark the middle of each main journal, or of each bearing, with the shaft as it sits.",
                        "From mark to mark; or over both bearings, less half of each."),
                card(
                                Term.BOB_WEIGHT,
                                "empty scale at zero",
                                CounterweightCards::bob,
                                "Hung off the middle of the pin, or rails that are not level: the shaft then creeps one way.",
                                "Bare crankshaft, without gear or flywheel, on two level edges.",
                                "Hang weight on the crankpin until the shaft stays wherever it is turned to.",
                                "Weigh all that hung there: strap, pan and weights.")
                        .cautioned("The shaft may roll off: stops at the ends of the rails."),
                card(
                        Term.DRILL_RADIUS,
                        "crankshaft axis",
                        CounterweightCards::drill,
                        "Too near to the edge or the keyway: the wall that is left holds the weight together.",
                        "Mark on the counterweight where the hole would go, opposite the crankpin.",
                        "From the far side of the main journal to the mark, less half the journal."));
    }

    /** Seen along the crankshaft, crankpin up, the counterweight an even sector. */
    private static void along(CardSketch s, double x, double y) {
        double right = x + 86 * Math.cos(Math.toRadians(20));
        double left = x - 86 * Math.cos(Math.toRadians(20));
        double corner = y + 86 * Math.sin(Math.toRadians(20));
        s.part(
                "M", left, corner, "A", 86, 86, "0 0 0", right, corner, "L", x + 34, y - 14, "L", x + 22, y - 66, "A",
                22, 22, "0 0 0", x - 22, y - 66, "L", x - 34, y - 14, "Z");
        s.partRound(x, y - 66, 14);
        s.partRound(x, y, 22);
    }

    private static void span(CardSketch s) {
        double x = 170;
        double y = 142;
        along(s, x, y);
        s.protractor(x, y, 62, 0);
        double c = Math.cos(Math.toRadians(20));
        double q = Math.sin(Math.toRadians(20));
        s.lit("M", x, y, "L", x - 122 * c, y + 122 * q);
        s.datumAxis(x, y, x + 122 * c, y + 122 * q);
        s.angle(x, y, 108, 20, 160);
        s.symbol(250, 264, START);
        s.tool(330, 250, START, 212, 184);
        s.datum(320, 110, START, x + 116 * c, y + 116 * q);
        s.note("crankpin", 202, 70, START);
        s.note("counterweight", 12, 284, START);
        s.quiet("M", 70, 270, "L", 116, 200);
    }

    /** From the side, crankpin up. */
    private static void side(CardSketch s) {
        s.partBox(100, 118, 90, 40);
        s.partBox(290, 118, 90, 40);
        s.partBox(228, 58, 24, 36);
        s.part("M", 190, 50, "H", 228, "V", 98, "H", 222, "V", 216, "H", 190, "Z");
        s.part("M", 290, 50, "H", 252, "V", 98, "H", 258, "V", 216, "H", 290, "Z");
        s.axis(86, 138, 190, 138);
        s.axis(290, 138, 394, 138);
        if (s.is(Term.COUNTERWEIGHT_FACES)) {
            s.caliper(false, 222, 258, 176, 254, true);
            s.datumFace(222, 104, 222, 170);
            s.level(222, 258, 142);
            s.symbol(240, 132, MIDDLE);
            s.datum(6, 60, START, 220, 110);
        } else if (s.is(Term.MAIN_SPAN)) {
            s.caliper(false, 145, 335, 160, 254, false);
            s.datumAxis(145, 106, 145, 176);
            s.axis(335, 106, 335, 176);
            s.level(145, 335, 236);
            s.symbol(240, 230, MIDDLE);
            s.datum(6, 60, START, 144, 112);
        } else {
            s.caliper(false, 258, 290, 196, 254, false);
            s.datumFace(290, 160, 290, 214);
            s.levelOff(258, 290, 234, 216);
            s.symbol(324, 240, START);
            s.datum(310, 186, START, 290, 190);
        }
        s.tool(190, 284, END, s.is(Term.COUNTERWEIGHT_FACES) ? 222 : s.is(Term.MAIN_SPAN) ? 200 : 258, 262);
        double beside = s.is(Term.MAIN_SPAN) ? 346 : 316;
        s.note("crankpin", beside, 62, START);
        s.quiet("M", beside - 4, 62, "L", 242, 74);
        s.note("counterweights", 180, 206, END);
    }

    private static void bob(CardSketch s) {
        double x = 150;
        double y = 132;
        s.partBox(60, 160, 10, 112);
        s.partBox(230, 160, 10, 112);
        s.part(
                "M", x - 70, y + 34, "A", 78, 78, "0 0 0", x + 70, y + 34, "L", x + 34, y - 10, "L", x + 20, y - 54,
                "A", 20, 20, "0 0 0", x - 20, y - 54, "L", x - 34, y - 10, "Z");
        s.partRound(x, y - 54, 13);
        s.partRound(x, y, 18);
        s.partBox(40, 150, 220, 10);
        s.lit("M", x - 4, y - 54, "V", y + 96, "M", x + 4, y - 54, "V", y + 96);
        s.lit("M", x - 24, y + 96, "h", 48, "v", 34, "h", -48, "Z");
        s.symbol(x, y + 120, MIDDLE);
        // what hung there, on the scale
        s.partBox(366, 116, 48, 34);
        s.scale(390, 150, 66);
        s.datumZero(352, 196);
        s.symbol(394, 187, MIDDLE);
        s.tool(420, 90, START, 450, 152);
        s.datum(290, 256, START, 352, 194);
        s.note("level edges", 20, 290, START);
        s.note("stays at any angle", 190, 66, START);
        s.note("weight", 186, 270, START);
    }

    private static void drill(CardSketch s) {
        double x = 180;
        double y = 132;
        along(s, x, y);
        s.caliper(true, 110, 192, 186, 340, false);
        s.lit(Sketch.round(x, 192, 11));
        s.lit("M", x - 5, 192, "h", 10, "M", x, 187, "v", 10);
        s.datumAxis(x - 100, y, x + 130, y);
        s.datumAxis(x, y - 26, x, y + 26);
        s.quiet("M", x - 12, 192, "H", 66);
        s.upright(72, y, 192);
        s.symbol(62, 182, END);
        s.tool(390, 190, START, 355, 180);
        s.datum(270, 84, START, 300, y);
        s.note("hole, not yet drilled", 220, 262, START);
        s.quiet("M", 218, 256, "L", 190, 204);
        s.note("from the far side of the journal, less half of it", 14, 260, START);
    }
}
