package longthrow.workshop.draw;

import static longthrow.workshop.draw.ReadingCard.card;
import static longthrow.workshop.draw.Sketch.Anchor.END;
import static longthrow.workshop.draw.Sketch.Anchor.MIDDLE;
import static longthrow.workshop.draw.Sketch.Anchor.START;

import java.util.List;
import longthrow.core.term.Term;

/** Readings of the engine together. */
final class WholeCards {
    private static final String LOCK =
            "Air turns a free crankshaft with force: lock it, and keep hands, rope and spanner off it.";

    private WholeCards() {}

    static List<ReadingCard> cards() {
        return List.of(
                card(
                                Term.CRANKING_PRESSURE,
                                "needle at zero",
                                WholeCards::cranking,
                                "Throttle shut, or a compression release that bleeds the charge: the figure then says little.",
                                "Engine warm, throttle held open, spark earthed.",
                                "Gauge into the plug hole.",
                                "Pull until the needle rises no more.")
                        .cautioned("Earth the plug lead and keep spray off it: fuel mist from the plug hole lights."),
                card(
                                Term.LEAK_DOWN,
                                "pressure of the first gauge",
                                WholeCards::leak,
                                "Not on true top dead centre with both valves shut, or a cold engine.",
                                "Engine warm, top dead centre of the compression stroke.",
                                "Lock the crankshaft, then let the air in slowly.",
                                "The second gauge shows the share lost; listen at carburettor, exhaust and breather for where it goes.")
                        .cautioned(LOCK),
                card(
                                Term.VOLUME_IN_ASSEMBLY,
                                "lower thread of the plug hole",
                                WholeCards::assembly,
                                "Bubbles under the head, a drip past the rings, or the crank off top dead centre.",
                                "Smear grease round the top ring before assembly; top dead centre by positive stop, both valves shut.",
                                "Tilt so that the plug hole is the highest point.",
                                "Fill to the lower thread, rock the engine for bubbles, fill up; three times.")
                        .cautioned(
                                "Drain it all before you crank: a cylinder full of fluid bends the rod. Thin spirit burns."),
                card(
                        Term.VALVES,
                        "first valve",
                        WholeCards::valves,
                        "Intake valves counted alone: intake and exhaust valves count together.",
                        "Head off, look at its face; or count the springs under the valve cover.",
                        "Count every valve once, intake and exhaust."),
                squish(Term.SQUISH_FLYWHEEL_END, "flywheel"),
                squish(Term.SQUISH_OUTPUT_END, "output"),
                card(
                        Term.VALVE_TO_HEAD,
                        "underside of the head",
                        WholeCards::clay,
                        "Clay not oiled and torn, lash not set, or the gasket left out.",
                        "Oiled clay on the valve head, head on with the used gasket and torqued, lash set.",
                        "Two turns by hand, head off.",
                        "Cut the clay through, measure its thinnest place."));
    }

    /** The head seen from below, two valves and the plug. */
    private static void valves(CardSketch s) {
        s.part("M", 70, 70, "H", 290, "V", 270, "H", 70, "Z");
        s.holeRound(180, 170, 84);
        s.partRound(144, 162, 34);
        s.partRound(216, 166, 28);
        s.quietRound(180, 226, 12);
        s.spot(144, 162, 6);
        s.spot(216, 166, 6);
        s.lit("M", 144, 162, "L", 210, 166);
        s.head(210, 166, 1, 0.06);
        s.symbol(180, 122, MIDDLE);
        s.tool(340, 190, START, 211, 166);
        s.datum(320, 60, START, 146, 156);
        s.note("head, from below", 320, 262, START);
        s.note("plug", 60, 290, END);
        s.quiet("M", 62, 284, "L", 170, 230);
    }

    private static ReadingCard squish(Term term, String end) {
        return card(
                term,
                "crown rim",
                WholeCards::solder,
                "Solder off the pin line, so that the piston rocks; or an old uncrushed gasket; or hard wire.",
                "Soft solder thicker than the gap on the crown rim, on the pin line at the " + end + " end.",
                "Head on with the used gasket, torqued; turn by hand through top dead centre.",
                "Head off; measure the solder at its thinnest.");
    }

    private static void engine(CardSketch s) {
        s.part("M", 70, 110, "H", 90, "V", 270, "H", 70, "Z", "M", 210, 110, "H", 230, "V", 270, "H", 210, "Z");
        s.part(
                "M", 60, 70, "H", 138, "V", 88, "H", 162, "V", 70, "H", 240, "V", 106, "H", 206, "C", 200, 94, 100, 94,
                94, 106, "H", 60, "Z");
        s.part("M", 92, 122, "H", 208, "V", 190, "H", 92, "Z");
        s.quietRound(150, 166, 11);
        s.quiet("M", 92, 132, "H", 208, "M", 92, 140, "H", 208);
    }

    private static void cranking(CardSketch s) {
        engine(s);
        s.toolLine(5, "M", 150, 92, "V", 56, "C", 150, 40, 260, 40, 300, 90);
        s.face(330, 130, 50);
        s.toolLine(
                1.2, "M", 294, 166, "L", 302, 158, "M", 280, 130, "h", 10, "M", 330, 80, "v", 10, "M", 380, 130, "h",
                -10);
        s.datumZero(298, 162);
        s.symbol(150, 113, MIDDLE);
        s.tool(400, 60, MIDDLE, 352, 86);
        s.datum(300, 224, START, 298, 156);
        s.note("throttle open, spark earthed", 250, 280, START);
        s.note("plug hole", 62, 58, START);
        s.quiet("M", 122, 58, "L", 148, 78);
    }

    private static void leak(CardSketch s) {
        engine(s);
        s.toolLine(5, "M", 150, 92, "V", 56, "H", 300, "M", 300, 56, "H", 450);
        s.face(310, 102, 32);
        s.face(410, 102, 32);
        s.toolLine(4, "M", 310, 70, "V", 56, "M", 410, 70, "V", 56);
        s.note("air in", 468, 44, END);
        s.note("second gauge: what is left", 310, 154, MIDDLE);
        s.note("first gauge", 440, 154, MIDDLE);
        s.datumZero(396, 106);
        s.datum(290, 210, START, 396, 126);
        s.tool(210, 40, START, 280, 56);
        s.symbol(150, 113, MIDDLE);
        s.lit("M", 138, 240, "V", 258, "H", 162, "V", 240, "Z", "M", 142, 240, "C", 142, 226, 158, 226, 158, 240);
        s.note("crank locked", 150, 280, MIDDLE);
        s.note("top dead centre, both valves shut", 290, 264, START);
    }

    private static void assembly(CardSketch s) {
        engine(s);
        s.lit("M", 94, 108, "C", 100, 96, 200, 96, 206, 108, "V", 121, "H", 94, "Z");
        s.burette(150, 26, 84);
        s.datumFace(138, 88, 162, 88);
        s.symbol(270, 124, START);
        s.quiet("M", 264, 120, "L", 198, 114);
        s.tool(200, 54, START, 156, 60);
        s.datum(290, 160, START, 160, 89);
        s.note("both valves shut, piston at top dead centre", 260, 240, START);
    }

    private static void solder(CardSketch s) {
        boolean flywheel = s.is(Term.SQUISH_FLYWHEEL_END);
        s.part("M", 40, 54, "H", 290, "V", 112, "H", 232, "C", 222, 84, 108, 84, 98, 112, "H", 40, "Z");
        s.toolBox(40, 112, 22, 7);
        s.toolBox(268, 112, 22, 7);
        s.partBox(40, 119, 22, 146);
        s.partBox(268, 119, 22, 146);
        s.partBox(64, 132, 202, 114);
        CylinderCards.pinAcross(s, 64, 266, 200, 246);
        // the crushed wire at both ends of the pin line
        for (double at : new double[] {66, 226}) {
            s.tool("M", at, 113, "h", 38, "v", 18, "h", -38, "Z");
        }
        double dim = flywheel ? 112 : 218;
        s.datumFace(66, 132, 264, 132);
        s.upright(dim, 112, 132);
        s.quiet("M", flywheel ? 98 : 232, 112, "H", dim);
        s.symbol(flywheel ? dim + 9 : dim - 9, 124, flywheel ? START : END);
        s.datum(310, 252, START, 262, 134);
        s.note("solder wire, crushed at both ends of the pin line", 310, 62, START);
        s.quiet("M", 306, 74, "L", 262, 118);
        s.note("head gasket, used", 316, 122, START);
        s.quiet("M", 312, 118, "L", 288, 115);
        s.note("head, torqued", 165, 74, MIDDLE);
        s.note("flywheel end", 20, 288, START);
        s.note("output end", 300, 288, END);
        s.note("turned once through top dead centre", 310, 278, START);
        // the wire afterwards
        s.tool("M", 330, 170, "h", 22, "q", 6, 5, 0, 10, "h", -22, "Z");
        s.caliper(true, 171, 179, 344, 372, false);
        s.note("thinnest place", 400, 148, START);
        s.label("tool", "caliper", 410, 186, START, 390, 200);
    }

    private static void clay(CardSketch s) {
        s.part("M", 40, 50, "H", 288, "V", 126, "H", 272, "C", 262, 90, 78, 90, 68, 126, "H", 40, "Z");
        s.part("M", 40, 150, "H", 104, "L", 124, 180, "H", 144, "V", 270, "H", 40, "Z");
        s.part("M", 236, 180, "H", 216, "V", 270, "H", 300, "V", 150, "H", 256, "Z");
        s.part("M", 120, 126, "H", 240, "L", 196, 142, "H", 186, "V", 280, "H", 174, "V", 142, "H", 164, "Z");
        s.tool("M", 130, 99, "H", 230, "L", 226, 126, "H", 134, "Z");
        s.datumFace(210, 98, 150, 98);
        s.upright(250, 98, 126);
        s.quiet("M", 228, 99, "H", 256, "M", 240, 126, "H", 256);
        s.symbol(296, 122, START);
        s.quiet("M", 256, 112, "H", 292);
        s.datum(316, 50, START, 206, 98);
        s.label("tool", "clay, read by the caliper", 330, 170, START, 224, 120);
        s.note("valve at full lift", 310, 240, START);
        s.quiet("M", 306, 236, "L", 186, 220);
        s.note("head", 60, 74, START);
        s.note("block", 90, 230, MIDDLE);
    }

    static void mass(CardSketch s) {
        String what = s.term().part().label();
        switch (s.term()) {
            case PISTON_MASS -> {
                s.part("M", 130, 80, "H", 250, "V", 190, "H", 226, "V", 180, "H", 154, "V", 190, "H", 130, "Z");
                s.holeRound(190, 140, 18);
            }
            case PIN_MASS -> {
                what = "pin and clips";
                s.partBox(120, 140, 120, 50);
                s.part("M", 262, 190, "A", 16, 16, "0 1 1", 270, 188);
            }
            case RING_MASS -> {
                what = "all rings";
                for (int ring = 0; ring < 3; ring++) {
                    s.partBox(110, 182 - ring * 14, 160, 8);
                }
            }
            case FLYWHEEL_MASS -> {
                what = "bare wheel";
                s.part("M", 90, 190, "V", 150, "H", 160, "V", 130, "H", 220, "V", 150, "H", 290, "V", 190, "Z");
            }
            default -> {
                what = "whole rod, cap, bolts and dipper";
                s.part(
                        "M", 126, 156, "L", 262, 170, "A", 15, 15, "0 1 1", 262, 180, "L", 126, 176, "A", 24, 24,
                        "0 1 1", 126, 156, "Z");
                s.holeRound(104, 166, 15);
                s.holeRound(276, 175, 7);
            }
        }
        s.scale(190, 190, 110);
        s.datumZero(128, 236);
        s.symbol(190, 227, MIDDLE);
        s.tool(330, 222, START, 276, 222);
        s.datum(20, 272, START, 128, 230);
        s.note(what, 190, 60, MIDDLE);
    }
}
