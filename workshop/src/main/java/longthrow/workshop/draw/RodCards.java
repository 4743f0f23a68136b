package longthrow.workshop.draw;

import static longthrow.workshop.draw.ReadingCard.card;
import static longthrow.workshop.draw.Sketch.Anchor.END;
import static longthrow.workshop.draw.Sketch.Anchor.MIDDLE;
import static longthrow.workshop.draw.Sketch.Anchor.START;

import java.util.List;
import longthrow.core.term.Term;

/** Readings of the connecting rod. */
final class RodCards {
    private static final String LEVEL =
            "Set the scale to zero with the support standing on it; level the rod with blocks and a spirit level.";

    private RodCards() {}

    static List<ReadingCard> cards() {
        return List.of(
                card(
                        Term.ROD_LENGTH,
                        "centre of the big end",
                        RodCards::front,
                        "An edge reading written down as the centres: half of both bores too little.",
                        "Not read straight: read inside edge to inside edge and both bores.",
                        "Edge reading plus half of each bore is the length; better enter the three bare readings."),
                card(
                        Term.ROD_INSIDE_EDGES,
                        "near edge of the big-end bore",
                        RodCards::front,
                        "The two jaws at different depths, or on the chamfer of a bore.",
                        "Clean both bores; cap torqued.",
                        "Jaws on the nearest edges of the two bores, both at the same depth.",
                        "Smallest figure; then from the opposite face of the rod."),
                card(
                        Term.BIG_END_BORE,
                        "opposite side of the bore",
                        RodCards::front,
                        "Cap loose or turned round: the bore is then oval.",
                        "Cap the right way round, bolts oiled and torqued as they will run.",
                        "Gauge set to its ring; along the rod and across it.",
                        "Rock to the smallest figure; the difference of the two is the ovality."),
                card(
                        Term.SMALL_END_BORE,
                        "opposite side of the bore",
                        RodCards::front,
                        "Read over an oil hole, or without its bush.",
                        "Bush in place, bore clean.",
                        "Gauge set to its ring; along the rod and across it, at both ends of the bore."),
                card(
                        Term.BIG_END_WIDTH,
                        "opposite face of the big end",
                        RodCards::edge,
                        "Jaws on a bolt head or on the dipper.",
                        "Stone off burrs.",
                        "Jaws square over the two machined faces."),
                card(
                        Term.SMALL_END_WIDTH,
                        "opposite face of the small end",
                        RodCards::edge,
                        "Bush standing proud of the eye on one side.",
                        "Bush in place, faces clean.",
                        "Jaws square over the two faces of the small end, two places."),
                card(
                        Term.BIG_END_STRIP,
                        "crankpin",
                        RodCards::strip,
                        "Oil on the pin, or the shaft turned with the strip in: it smears and reads too tight.",
                        "Wipe pin and cap dry; lay the strip along the pin.",
                        "Torque the cap, do not turn the shaft, take the cap off again.",
                        "Hold the printed scale against the widest part."),
                card(
                        Term.ROD_SIDE_CLEARANCE,
                        "cheek of the crank",
                        RodCards::side,
                        "A burr, or the rod held askew.",
                        "Push the rod against one cheek.",
                        "Thickest leaf with a light drag between the other cheek and the big end."),
                card(
                        Term.ROD_MASS,
                        "empty scale at zero",
                        WholeCards::mass,
                        "Dipper, bolts or cap left off.",
                        "Clean and dry, with cap, bolts and dipper as it will run.",
                        "Scale set to zero empty; weigh, take off, check zero."),
                card(
                        Term.ROD_BIG_END_MASS,
                        "zero with the support on the scale",
                        RodCards::endMass,
                        "Rod not level, or hung so that it pulls sideways.",
                        LEVEL,
                        "Big end on the scale above its centre, small end hung from its centre by a thread.",
                        "Read; turn the rod over and read again. Both ends together must make the whole rod."),
                card(
                        Term.ROD_SMALL_END_MASS,
                        "zero with the support on the scale",
                        RodCards::endMass,
                        "Rod not level, or hung so that it pulls sideways.",
                        LEVEL,
                        "Small end on the scale above its centre, big end hung from its centre by a thread.",
                        "Read; turn the rod over and read again. Both ends together must make the whole rod."));
    }

    /** A rod lying across, big end left; the bores round (110, 170) and (320, 170). */
    private static void rod(CardSketch s) {
        s.part(
                "M", 158.8, 152, "L", 291.7, 160, "A", 30, 30, "0 1 1", 291.7, 180, "L", 158.8, 188, "A", 52, 52,
                "0 1 1", 158.8, 152, "Z");
        s.holeRound(110, 170, 34);
        s.holeRound(320, 170, 17);
    }

    private static void front(CardSketch s) {
        if (s.is(Term.ROD_INSIDE_EDGES, Term.ROD_LENGTH)) {
            centres(s);
            return;
        }
        rod(s);
        boolean big = s.is(Term.BIG_END_BORE);
        double x = big ? 110 : 320;
        double radius = big ? 34 : 17;
        s.boreGaugeEndOn(x, 170, radius, 0, 1);
        s.datumArc(x, 170, radius, 60, 120, false);
        double off = big ? 40 : 372;
        s.uprightOff(off, 170 - radius, 170 + radius, x);
        s.symbol(big ? 32 : 382, 176, big ? END : START);
        s.datum(big ? 150 : 190, 262, START, x, 170 + radius);
        s.tool(big ? 200 : 250, 90, START, x, 164);
        s.note("big end", 110, big ? 250 : 242, MIDDLE);
        s.note("small end", 350, 222, START);
        s.note("then along the rod too", big ? 200 : 150, 118, START);
    }

    private static void edge(CardSketch s) {
        boolean big = s.is(Term.BIG_END_WIDTH);
        s.part(
                "M", 90, 140, "H", 180, "V", 158, "H", 290, "V", 148, "H", 350, "V", 200, "H", 290, "V", 190, "H", 180,
                "V", 208, "H", 90, "Z");
        double y1 = big ? 140 : 148;
        double y2 = big ? 208 : 200;
        s.caliper(true, y1, y2, big ? 130 : 326, big ? 66 : 374, false);
        if (big) {
            s.datumFace(92, y1, 178, y1);
        } else {
            s.datumFace(292, y1, 348, y1);
        }
        s.upright(big ? 150 : 306, y1, y2);
        s.symbol(big ? 160 : 296, 180, big ? START : END);
        s.datum(big ? 130 : 160, 88, START, big ? 166 : 300, y1);
        s.tool(big ? 110 : 300, 264, big ? START : END, big ? 66 : 374, 240);
        s.note("rod, seen edge on", 470, 60, END);
        s.note("big end", 140, 228, MIDDLE);
        s.note("small end", 330, big ? 138 : 228, big ? MIDDLE : END);
    }

    private static void strip(CardSketch s) {
        s.part(
                "M", 70, 196, "A", 80, 80, "0 0 1", 230, 196, "L", 262, 196, "V", 150, "C", 262, 40, 38, 40, 38, 150,
                "V", 196, "Z");
        s.partRound(150, 196, 54);
        s.datumArc(150, 196, 54, 230, 310, true);
        s.toolBox(136, 117, 24, 24);
        s.dimension(170, 118, 170, 145);
        s.symbol(180, 138, START);
        s.tool(320, 96, START, 160, 126);
        // the flattened strip held to its printed scale
        s.toolBox(320, 150, 120, 40);
        for (int bar = 0; bar < 5; bar++) {
            s.toolLine(3 + 2.4 * bar, "M", 338 + bar * 22, 156, "v", 18);
        }
        s.datum(210, 280, START, 186, 161);
        s.note("cap, torqued", 150, 90, MIDDLE);
        s.note("crankpin", 150, 216, MIDDLE);
        s.note("scale printed on its packet: the wider, the tighter", 320, 210, START);
    }

    private static void side(CardSketch s) {
        s.partBox(110, 152, 150, 36);
        s.partBox(60, 80, 50, 130);
        s.partBox(260, 80, 50, 130);
        s.partBox(110, 104, 138, 48);
        s.partBox(110, 188, 138, 48);
        s.toolBox(249, 66, 10, 84);
        s.toolBox(242, 40, 24, 26);
        s.datumFace(260, 150, 260, 82);
        s.lit("M", 206, 128, "H", 150);
        s.head(146, 128, -1, 0);
        s.note("pushed over", 206, 148, END);
        s.note("big end of the rod", 118, 120, START);
        s.note("crankpin", 180, 174, MIDDLE);
        s.level(248, 260, 222);
        s.quiet("M", 260, 210, "V", 230);
        s.symbol(288, 228, START);
        s.tool(330, 60, START, 266, 54);
        s.datum(330, 120, START, 262, 112);
        s.note("cheek", 84, 74, MIDDLE);
        s.note("cheek", 290, 74, START);
        s.note("big end cut through, clearance drawn much too large", 60, 272, START);
    }

    private static void endMass(CardSketch s) {
        boolean big = s.is(Term.ROD_BIG_END_MASS);
        double on = big ? 110 : 320;
        double hung = big ? 320 : 110;
        double radius = big ? 34 : 17;
        double pan = big ? 232 : 212;
        rod(s);
        s.toolRound(on, 170, radius);
        s.tool("M", on - 8, 170, "H", on + 8, "L", on + 26, pan, "H", on - 26, "Z");
        s.scale(on, pan, 50);
        s.datumZero(big ? on + 42 : on - 42, pan);
        s.toolRound(hung, 170, big ? 17 : 34);
        s.toolLine(1.8, "M", hung, 52, "V", 170);
        s.spot(hung, 170, 4);
        s.toolBox(hung - 26, 44, 52, 8);
        s.axis(30, 170, 400, 170);
        s.symbol(on, pan + 37, MIDDLE);
        s.tool(big ? 250 : 390, big ? 270 : 266, START, on + 40, pan + 34);
        s.datum(big ? 190 : 20, big ? 226 : 256, START, on + (big ? 42 : -42), pan - 5);
        s.note("thread, tied to a plug in the centre of the bore", big ? 300 : 130, 84, big ? END : START);
        s.note("support", on - (big ? 40 : -44), big ? 226 : 206, big ? END : START);
        s.note("level", 408, 174, START);
    }

    /** The rod cut along through both bores, so that the jaws are seen to enter them from the face. */
    private static void centres(CardSketch s) {
        boolean edges = s.is(Term.ROD_INSIDE_EDGES);
        s.partBox(58, 140, 18, 44);
        s.partBox(144, 140, 159, 44);
        s.partBox(337, 140, 13, 44);
        s.quiet("M", 76, 140, "H", 144, "M", 76, 184, "H", 144, "M", 303, 140, "H", 337, "M", 303, 184, "H", 337);
        s.note("big end", 90, 200, END);
        s.note("small end", 354, 200, MIDDLE);
        s.note("rod, cut through both bores", 222, 166, MIDDLE);
        s.tool(396, 78, START, 350, 93);
        s.caliper(false, 144, 303, 174, 102, false);
        if (edges) {
            s.datumFace(144, 182, 144, 142);
            s.levelOff(144, 303, 216, 186);
            s.symbol(222, 238, MIDDLE);
            s.datum(14, 262, START, 144, 181);
        } else {
            s.datumAxis(110, 130, 110, 280);
            s.axis(320, 130, 320, 280);
            s.levelOff(144, 303, 210, 186);
            s.note("the caliper reads this", 222, 228, MIDDLE);
            s.level(110, 320, 254);
            s.symbol(222, 276, MIDDLE);
            s.note("half a bore", 100, 226, END);
            s.quiet("M", 110, 210, "H", 144, "M", 303, 210, "H", 320);
            s.note("half a bore", 330, 226, START);
            s.note("centre to centre: reading plus half of each bore", 330, 258, START);
            s.datum(14, 70, START, 110, 132);
        }
    }
}
