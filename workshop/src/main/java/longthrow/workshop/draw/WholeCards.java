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
        s.datumFace(292, 164, 300, 172);
        s.symbol(150, 118, MIDDLE);
        s.tool(400, 60, MIDDLE, 352, 86);
        s.datum(300, 230, START, 297, 168);
        s.note("throttle open, spark earthed", 250, 280, START);
        s.note("plug hole", 70, 58, START);
        s.quiet("M", 128, 62, "L", 144, 76);
        s.note("0", 288, 184, END);
    }

    private static void leak(CardSketch s) {
        engine(s);
        s.toolLine(5, "M", 150, 92, "V", 56, "H", 300, "M", 300, 56, "H", 450);
        s.face(310, 96, 32);
        s.face(400, 96, 32);
        s.toolLine(4, "M", 310, 64, "V", 56, "M", 400, 64, "V", 56);
        s.note("air in", 454, 46, END);
        s.note("what is left", 310, 146, MIDDLE);
        s.note("first gauge", 400, 146, MIDDLE);
        s.datumFace(382, 128, 418, 128);
        s.datum(290, 196, START, 410, 132);
        s.tool(250, 36, START, 340, 56);
        s.symbol(150, 118, MIDDLE);
        s.lit("M", 138, 240, "V", 258, "H", 162, "V", 240, "M", 142, 240, "C", 142, 226, 158, 226, 158, 240);
        s.note("crank locked", 150, 290, MIDDLE);
    }

    private static void assembly(CardSketch s) {
        engine(s);
        s.lit("M", 94, 108, "C", 100, 96, 200, 96, 206, 108, "V", 121, "H", 94, "Z");
        s.burette(150, 26, 84);
        s.datumFace(164, 88, 136, 88);
        s.symbol(270, 124, START);
        s.quiet("M", 264, 120, "L", 198, 114);
        s.tool(190, 52, START, 158, 54);
        s.datum(290, 160, START, 164, 90);
        s.note("both valves shut, piston at top dead centre", 260, 240, START);
    }

    private static void solder(CardSketch s) {
        s.part("M", 60, 60, "H", 320, "V", 120, "H", 250, "C", 240, 90, 140, 90, 130, 120, "H", 60, "Z");
        s.quiet(Sketch.box(60, 120, 24, 8));
        s.quiet(Sketch.box(296, 120, 24, 8));
        s.part("M", 60, 128, "H", 84, "V", 270, "H", 60, "Z", "M", 296, 128, "H", 320, "V", 270, "H", 296, "Z");
        s.part("M", 86, 146, "H", 294, "V", 250, "H", 86, "Z");
        s.quiet("M", 86, 196, "H", 294, "M", 86, 220, "H", 294);
        s.axis(40, 208, 340, 208);
        boolean flywheel = s.is(Term.SQUISH_FLYWHEEL_END);
        double x = flywheel ? 104 : 276;
        s.lit("M", x - 12, 134, "h", 24, "Z");
        s.tool("M", x - 14, 122, "h", 28, "v", 22, "h", -28, "Z");
        s.datumFace(flywheel ? 172 : 262, 147, flywheel ? 118 : 208, 147);
        s.dimension(flywheel ? 124 : 256, 120, flywheel ? 124 : 256, 146);
        s.symbol(flywheel ? 116 : 264, 180, flywheel ? START : END);
        s.datum(350, 216, START, flywheel ? 160 : 240, 150);
        s.label("tool", "solder, read by caliper", 350, 80, START, x + 12, 130);
        s.note("flywheel end", 60, 288, START);
        s.note("output end", 320, 288, END);
        s.note("pin line", 190, 202, MIDDLE);
        s.note("head", 190, 80, MIDDLE);
    }

    private static void clay(CardSketch s) {
        s.part("M", 50, 60, "H", 330, "V", 130, "H", 300, "C", 290, 100, 90, 100, 80, 130, "H", 50, "Z");
        s.part(
                "M", 50, 150, "H", 110, "L", 130, 180, "H", 150, "V", 270, "H", 50, "Z", "M", 250, 180, "H", 230, "V",
                270, "H", 330, "V", 150, "H", 270, "Z");
        s.part("M", 140, 126, "H", 240, "L", 206, 142, "H", 196, "V", 280, "H", 184, "V", 142, "H", 174, "Z");
        s.tool("M", 146, 110, "C", 160, 106, 220, 106, 234, 110, "L", 234, 125, "H", 146, "Z");
        s.datumFace(140, 107, 240, 107);
        s.dimension(256, 107, 256, 126);
        s.symbol(266, 148, START);
        s.datum(270, 34, START, 236, 104);
        s.label("tool", "clay, read by the caliper", 336, 176, START, 232, 120);
        s.note("valve at full lift", 60, 290, START);
        s.note("head", 70, 84, START);
    }

    static void mass(CardSketch s) {
        String what = s.term().part().label();
        switch (s.term()) {
            case PISTON_MASS -> {
                s.part("M", 130, 80, "H", 250, "V", 190, "H", 226, "V", 180, "H", 154, "V", 190, "H", 130, "Z");
                s.quietRound(190, 140, 18);
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
                s.part("M", 100, 160, "L", 280, 166, "V", 182, "L", 100, 188, "Z");
                s.partRound(106, 160, 30);
                s.partRound(282, 174, 16);
            }
        }
        s.scale(190, 190, 100);
        s.datumFace(90, 190, 290, 190);
        s.symbol(190, 227, MIDDLE);
        s.tool(330, 222, START, 270, 222);
        s.datum(312, 150, START, 286, 188);
        s.note(what, 190, 60, MIDDLE);
    }
}
