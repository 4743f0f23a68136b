package longthrow.workshop.draw;

import static longthrow.workshop.draw.ReadingCard.card;
import static longthrow.workshop.draw.Sketch.Anchor.END;
import static longthrow.workshop.draw.Sketch.Anchor.MIDDLE;
import static longthrow.workshop.draw.Sketch.Anchor.START;

import java.util.List;
import longthrow.core.term.Term;

/** Readings of the piston's shape below and above: skirt, crown, valve pockets, and the hole through the pin. */
final class PistonShapeCards {
    private PistonShapeCards() {}

    static List<ReadingCard> cards() {
        return List.of(
                card(
                        Term.SKIRT_WIDTH,
                        "opposite corner of the skirt",
                        PistonShapeCards::skirt,
                        "Measured across the pin, where it is the piston diameter: along the pin it is cut away.",
                        "Look at the skirt from the thrust side, pin lying across.",
                        "Jaws over the corners of its lower edge, along the pin; both skirts, the wider counts."),
                card(
                        Term.PIN_INSIDE,
                        "opposite side of the hole",
                        PistonShapeCards::pinHole,
                        "Read at the mouth: many pins are wider there than in the middle, where they bend.",
                        "Clean the hole.",
                        "Inside jaws as deep as they go, two directions; a waisted hole: its narrowest, and a note.",
                        "A solid pin: enter 0."),
                card(
                        Term.CROWN_THICKNESS,
                        "plate under the crown",
                        PistonShapeCards::crown,
                        "A rib under the crown read instead of the crown between the ribs.",
                        "Piston crown down on the plate; a straight bar across the skirt.",
                        "Depth from the bar to the plate beside the piston, and from the bar to the inside of the crown at its middle.",
                        "Their difference; less the height of a dome, more the depth of a dish."),
                pocket(Term.INTAKE_POCKET, "intake"),
                pocket(Term.EXHAUST_POCKET, "exhaust"));
    }

    private static ReadingCard pocket(Term term, String valve) {
        return card(
                term,
                "crown rim",
                PistonShapeCards::pocket,
                "Read to the shallow end of a slanting pocket, or from the floor of a dish.",
                "Clean the crown; find the pocket of the " + valve + " valve.",
                "Bridge on the crown rim, rod down to the floor of the pocket where the rim of the valve comes nearest.",
                "No pocket: enter 0.");
    }

    private static void skirt(CardSketch s) {
        s.part(
                "M", 90, 60, "H", 290, "V", 128, "C", 270, 140, 262, 150, 258, 164, "V", 212, "H", 122, "V", 164, "C",
                118, 150, 110, 140, 90, 128, "Z");
        for (int groove = 0; groove < 3; groove++) {
            s.quiet("M", 90, 74 + groove * 14, "H", 290, "M", 90, 80 + groove * 14, "H", 290);
        }
        s.axis(70, 134, 310, 134);
        s.caliper(false, 122, 258, 196, 256, false);
        s.datumFace(258, 166, 258, 210);
        s.levelOff(122, 258, 234, 214);
        s.symbol(276, 238, START);
        s.datum(320, 80, START, 258, 172);
        s.tool(350, 250, START, 304, 266);
        s.note("pin axis", 316, 138, START);
        s.note("skirt, seen from the thrust side", 310, 184, START);
        s.quiet("M", 306, 186, "L", 250, 190);
    }

    private static void pinHole(CardSketch s) {
        s.partBox(50, 116, 220, 22);
        s.partBox(50, 182, 220, 22);
        s.axis(30, 160, 290, 160);
        s.caliper(true, 138, 182, 170, 318, true);
        s.datumFace(54, 182, 166, 182);
        s.upright(120, 138, 182);
        s.symbol(110, 156, END);
        s.datum(20, 256, START, 80, 183);
        s.tool(360, 130, START, 333, 130);
        s.note("pin, cut through", 60, 106, START);
        s.partRound(410, 210, 40);
        s.holeRound(410, 210, 20);
        s.level(390, 430, 210);
        s.note("on its end", 410, 272, MIDDLE);
    }

    private static void crown(CardSketch s) {
        s.plate(30, 400, 254);
        s.part(
                "M", 80, 254, "V", 130, "H", 104, "V", 206, "Q", 104, 226, 126, 226, "H", 214, "Q", 236, 226, 236, 206,
                "V", 130, "H", 260, "V", 254, "Z");
        s.partBox(60, 118, 300, 12);
        s.caliperDepth(true, 118, 226, 150, 70);
        s.caliperDepth(true, 118, 254, 320, 70);
        s.datumFace(262, 254, 398, 254);
        s.upright(190, 226, 254);
        s.symbol(202, 246, START);
        s.tool(372, 60, START, 332, 70);
        s.datum(180, 292, START, 290, 257);
        s.note("bar across the skirt", 366, 106, START);
        s.note("piston, cut, crown down", 374, 176, START);
        s.quiet("M", 332, 182, "L", 252, 190);
        s.note("pin bore", 68, 176, END);
        s.quiet(Sketch.box(80, 156, 24, 34));
    }

    private static void pocket(CardSketch s) {
        boolean intake = s.is(Term.INTAKE_POCKET);
        s.part(
                "M", 60, 140, "H", 96, "L", 106, 166, "H", 164, "L", 174, 140, "H", 204, "L", 212, 160, "H", 256, "L",
                264, 140, "H", 300, "V", 262, "H", 60, "Z");
        double x = intake ? 135 : 234;
        double floor = intake ? 166 : 160;
        s.toolBox(50, 129, 260, 11);
        s.depthGauge(x, 140, floor, 0);
        s.datumFace(62, 140, 94, 140);
        s.datumFace(266, 140, 298, 140);
        s.spot(x, floor, 4);
        double dim = intake ? 116 : 220;
        s.upright(intake ? 154 : 250, 140, floor);
        s.symbol(intake ? 154 : 250, floor + 38, MIDDLE);
        s.tool(intake ? 170 : 270, 84, START, x + 17, 90);
        s.datum(326, 120, START, 292, 141);
        s.note("intake", 116, intake ? 240 : 190, MIDDLE);
        s.note("exhaust", 234, intake ? 186 : 240, MIDDLE);
        s.note("crown, cut through its pockets", 326, 200, START);
        s.quiet("M", 322, 200, "L", 284, 200);
        s.quiet("M", dim, floor, "h", 1);
    }
}
