package longthrow.workshop.draw;

import static longthrow.workshop.draw.ReadingCard.card;
import static longthrow.workshop.draw.Sketch.Anchor.END;
import static longthrow.workshop.draw.Sketch.Anchor.MIDDLE;
import static longthrow.workshop.draw.Sketch.Anchor.START;

import java.util.List;
import longthrow.core.term.Term;

/** Readings of the connecting rod. */
final class RodCards {
    private static final String LEVEL = "Set the scale to zero empty; level the rod with blocks and a spirit level.";

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
                        "Smallest figure; then from the other face of the rod."),
                card(
                        Term.BIG_END_BORE,
                        "far side of the bore",
                        RodCards::front,
                        "Cap loose or turned round: the bore is then oval.",
                        "Cap the right way round, bolts oiled and torqued as they will run.",
                        "Gauge set to its ring; along the rod and across it.",
                        "Rock to the smallest figure; the difference of the two is the ovality."),
                card(
                        Term.SMALL_END_BORE,
                        "far side of the bore",
                        RodCards::front,
                        "Read over an oil hole, or without its bush.",
                        "Bush in place, bore clean.",
                        "Gauge set to its ring; along the rod and across it, at both ends of the bore."),
                card(
                        Term.BIG_END_WIDTH,
                        "other face of the big end",
                        RodCards::edge,
                        "Jaws on a bolt head or on the dipper.",
                        "Stone off burrs.",
                        "Jaws square over the two machined faces."),
                card(
                        Term.SMALL_END_WIDTH,
                        "other face of the small end",
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
                        "empty scale at zero",
                        RodCards::endMass,
                        "Rod not level, or hung so that it pulls sideways.",
                        LEVEL,
                        "Big end on the scale above its centre, small end hung from its centre by a thread.",
                        "Read; turn the rod over and read again. Both ends together must make the whole rod."),
                card(
                        Term.ROD_SMALL_END_MASS,
                        "empty scale at zero",
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
        s.quietRound(110, 170, 34);
        s.quietRound(320, 170, 17);
    }

    private static void front(CardSketch s) {
        rod(s);
        s.axis(110, 104, 110, 236);
        s.axis(320, 126, 320, 220);
        if (s.is(Term.BIG_END_BORE)) {
            s.boreGaugeEndOn(110, 170, 34, 0, 1);
            s.datumFace(128, 208, 92, 208);
            s.upright(186, 136, 204);
            s.quiet("M", 110, 136, "H", 192, "M", 110, 204, "H", 192);
            s.symbol(196, 176, START);
            s.datum(150, 262, START, 124, 210);
            s.tool(200, 100, START, 116, 162);
        } else if (s.is(Term.SMALL_END_BORE)) {
            s.boreGaugeEndOn(320, 170, 17, 0, 1);
            s.datumFace(332, 190, 308, 190);
            s.upright(372, 153, 187);
            s.quiet("M", 320, 153, "H", 378, "M", 320, 187, "H", 378);
            s.symbol(382, 176, START);
            s.datum(190, 262, START, 312, 192);
            s.tool(250, 100, START, 316, 162);
        } else {
            s.caliper(false, 144, 303, 172, 226, false);
            s.datumFace(144, 186, 144, 154);
            boolean edges = s.is(Term.ROD_INSIDE_EDGES);
            if (edges) {
                s.level(144, 303, 120);
                s.quiet("M", 144, 114, "V", 154, "M", 303, 114, "V", 154);
            } else {
                s.datumAxis(110, 88, 110, 130);
                s.level(110, 320, 100);
                s.quiet("M", 320, 94, "V", 130);
                s.note("edges plus half of each bore", 420, 120, MIDDLE);
            }
            s.symbol(222, edges ? 112 : 92, MIDDLE);
            s.datum(20, 60, START, edges ? 144 : 110, edges ? 152 : 90);
            s.tool(370, 284, START, 344, 244);
        }
        s.note("big end", 70, 240, MIDDLE);
        s.note("small end", 372, 216, START);
    }

    private static void edge(CardSketch s) {
        boolean big = s.is(Term.BIG_END_WIDTH);
        s.part(
                "M", 60, 140, "H", 150, "V", 158, "H", 290, "V", 148, "H", 350, "V", 200, "H", 290, "V", 190, "H", 150,
                "V", 208, "H", 60, "Z");
        double x = big ? 105 : 320;
        double y1 = big ? 140 : 148;
        double y2 = big ? 208 : 200;
        s.caliper(true, y1, y2, x + 10, big ? 200 : 390, false);
        s.datumFace(x - 42, y1, x + 10, y1);
        s.upright(big ? 84 : 302, y1, y2);
        s.symbol(big ? 92 : 294, 180, big ? START : END);
        s.datum(20, 84, START, x - 30, y1 - 3);
        s.tool(big ? 260 : 290, 264, big ? START : END, big ? 218 : 388, 240);
        s.note("rod, seen edge on", 250, 60, MIDDLE);
        s.note("big end", 100, 228, MIDDLE);
        s.note("small end", 330, 130, MIDDLE);
    }

    private static void strip(CardSketch s) {
        s.part(
                "M", 70, 190, "A", 80, 80, "0 0 1", 230, 190, "L", 262, 190, "V", 150, "C", 262, 40, 38, 40, 38, 150,
                "V", 190, "Z");
        s.partRound(150, 196, 66);
        s.datumFace(196, 148, 104, 148);
        s.lit("M", 142, 118, "h", 16, "v", 8, "h", -16, "Z");
        s.spot(150, 123, 5);
        s.dimension(206, 114, 206, 128);
        s.symbol(222, 118, START);
        // the flattened strip on its scale
        s.toolBox(320, 150, 120, 40);
        for (int bar = 0; bar < 5; bar++) {
            s.toolLine(3 + 2.4 * bar, "M", 338 + bar * 22, 156, "v", 18);
        }
        s.tool(320, 132, START, 360, 150);
        s.datum(250, 250, START, 190, 226);
        s.note("cap, torqued", 150, 62, MIDDLE);
        s.note("printed scale for its width", 320, 208, START);
    }

    private static void side(CardSketch s) {
        s.part("M", 60, 80, "H", 110, "V", 260, "H", 60, "Z");
        s.part("M", 260, 80, "H", 310, "V", 260, "H", 260, "Z");
        s.partBox(110, 140, 150, 60);
        s.part("M", 110, 120, "H", 240, "V", 220, "H", 110, "Z");
        s.datumFace(260, 138, 260, 82);
        s.feeler(250, 150, 0.28, -0.96, 80);
        s.level(240, 260, 212);
        s.symbol(236, 250, END);
        s.tool(330, 66, START, 278, 56);
        s.datum(330, 130, START, 266, 112);
        s.note("rod", 170, 175, MIDDLE);
        s.note("crankpin between its cheeks", 110, 278, START);
    }

    private static void endMass(CardSketch s) {
        boolean big = s.is(Term.ROD_BIG_END_MASS);
        double on = big ? 110 : 320;
        double hung = big ? 320 : 110;
        double radius = big ? 52 : 30;
        rod(s);
        s.part("M", on - 8, 170 + radius, "H", on + 8, "L", on, 160, "Z");
        s.scale(on, 170 + radius, 50);
        s.datumFace(on - 50, 170 + radius, on + 50, 170 + radius);
        s.quiet("M", hung, 40, "V", 170);
        s.toolLine(4, "M", hung - 24, 40, "H", hung + 24);
        s.axis(40, 170, 400, 170);
        s.symbol(on, 170 + radius + 38, MIDDLE);
        s.tool(big ? 190 : 380, big ? 246 : 250, START, on + 40, 170 + radius + 34);
        s.datum(big ? 190 : 20, big ? 272 : 262, START, on + (big ? 48 : -48), 170 + radius + 4);
        s.note("hung by a thread", hung + 10, 70, START);
        s.note("level", 430, 174, MIDDLE);
    }
}
