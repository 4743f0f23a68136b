package longthrow.workshop.draw;

import static longthrow.workshop.draw.ReadingCard.card;
import static longthrow.workshop.draw.Sketch.Anchor.END;
import static longthrow.workshop.draw.Sketch.Anchor.MIDDLE;
import static longthrow.workshop.draw.Sketch.Anchor.START;

import java.util.List;
import longthrow.core.term.Term;

/** Readings of the carburettor's length and of its main jet. */
final class JetCards {
    private JetCards() {}

    static List<ReadingCard> cards() {
        return List.of(
                card(
                        Term.CARBURETTOR_LENGTH,
                        "face of the flange",
                        JetCards::carburettor,
                        "An air horn or filter housing counted with it, or the choke plate's body left out.",
                        "Carburettor off, filter off.",
                        "Jaws over flange and mouth, along the bore."),
                card(
                        Term.MAIN_JET_DRILL,
                        "opposite side of the hole",
                        JetCards::jet,
                        "The countersink read instead of the narrowest place, or a drill turned by hand: it cuts brass.",
                        "Jet out, clean, blown through.",
                        "Largest pin gauge, or shank of a new drill, that enters by its own weight."),
                card(
                        Term.MAIN_JET_FLOW,
                        "outlet of the jet",
                        JetCards::flow,
                        "The level falls while it runs: then the flow belongs to no head.",
                        "Jet in a tube as it sits in the carburettor; level kept by an overflow.",
                        "Catch what runs through in two minutes; divide by the time. Three times.",
                        "Write the height of the level and which liquid it was."),
                card(
                        Term.MAIN_JET_HEAD,
                        "outlet of the jet",
                        JetCards::flow,
                        "Read to the bottom of the vessel instead of to the level.",
                        "Overflow running: the level stands still.",
                        "Tape upright, outlet of the jet to the level."));
    }

    private static void carburettor(CardSketch s) {
        s.part(
                "M", 70, 90, "H", 84, "V", 112, "H", 300, "V", 136, "C", 250, 136, 220, 146, 190, 146, "C", 160, 146,
                140, 136, 70, 136, "Z");
        s.part(
                "M", 70, 230, "H", 84, "V", 212, "H", 300, "V", 190, "C", 250, 190, 220, 180, 190, 180, "C", 160, 180,
                140, 190, 70, 190, "Z");
        s.partBox(150, 212, 80, 64);
        s.axis(40, 163, 340, 163);
        s.caliper(false, 70, 300, 108, 66, false);
        s.datumFace(70, 134, 70, 112);
        s.level(70, 300, 163);
        s.symbol(250, 157, MIDDLE);
        s.tool(380, 110, START, 340, 65);
        s.datum(12, 284, START, 69, 124);
        s.note("flange", 12, 56, START);
        s.note("mouth", 320, 200, START);
    }

    private static void jet(CardSketch s) {
        s.part("M", 90, 110, "H", 230, "V", 140, "L", 210, 152, "H", 90, "Z");
        s.part("M", 90, 188, "H", 210, "L", 230, 200, "V", 230, "H", 90, "Z");
        s.toolBox(130, 152, 210, 36);
        s.toolBox(340, 144, 70, 52);
        s.datumFace(96, 188, 206, 188);
        s.uprightOff(70, 152, 188, 130);
        s.symbol(56, 176, END);
        s.tool(330, 100, START, 300, 153);
        s.datum(240, 270, START, 180, 191);
        s.note("main jet, cut through", 60, 90, START);
    }

    private static void flow(CardSketch s) {
        s.part("M", 110, 60, "H", 118, "V", 210, "H", 150, "V", 226, "H", 110, "Z");
        s.part("M", 230, 84, "H", 238, "V", 226, "H", 198, "V", 210, "H", 230, "Z");
        s.part("M", 238, 84, "H", 262, "V", 92, "H", 238, "Z");
        s.quiet("M", 118, 84, "H", 230);
        s.part("M", 150, 214, "H", 168, "V", 236, "H", 150, "Z");
        s.part("M", 180, 214, "H", 198, "V", 236, "H", 180, "Z");
        s.datumFace(168, 236, 150, 236);
        s.datumFace(198, 236, 180, 236);
        if (s.is(Term.MAIN_JET_FLOW)) {
            s.tool("M", 150, 248, "H", 198, "V", 294, "H", 150, "Z");
            s.hole("M", 155, 248, "H", 193, "V", 266, "H", 155, "Z");
            s.stopwatch(350, 170, 36);
            s.lit("M", 174, 150, "V", 200);
            s.head(174, 208, 0, 1);
            s.symbol(146, 180, MIDDLE);
            s.tool(320, 270, START, 197, 280);
        } else {
            s.toolBox(300, 60, 12, 200);
            for (int mark = 0; mark < 19; mark++) {
                s.toolLine(1, "M", 300, 66 + mark * 10, "h", 6);
            }
            s.upright(275, 84, 236);
            s.quiet("M", 262, 84, "H", 300, "M", 198, 236, "H", 300);
            s.symbol(174, 160, MIDDLE);
            s.tool(350, 130, START, 313, 140);
        }
        s.datum(12, 284, START, 156, 238);
        s.note("level kept by the overflow", 290, 40, START);
        s.quiet("M", 288, 44, "L", 246, 82);
        s.note("jet", 60, 224, START);
        s.quiet("M", 80, 220, "L", 152, 226);
    }
}
