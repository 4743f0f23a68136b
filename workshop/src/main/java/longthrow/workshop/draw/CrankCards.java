package longthrow.workshop.draw;

import static longthrow.workshop.draw.ReadingCard.card;
import static longthrow.workshop.draw.Sketch.Anchor.END;
import static longthrow.workshop.draw.Sketch.Anchor.MIDDLE;
import static longthrow.workshop.draw.Sketch.Anchor.START;

import java.util.List;
import longthrow.core.term.Term;

/** Readings of the crankshaft. */
final class CrankCards {
    private static final String TURN = "One turn of the micrometer missed: check every journal with a caliper too.";
    private static final String STROKE_SLIP =
            "The throw taken for the stroke, or the piston rocking between the two readings.";

    private CrankCards() {}

    static List<ReadingCard> cards() {
        return List.of(
                stroke(Term.STROKE),
                stroke(Term.DONOR_STROKE),
                card(
                        Term.THROW,
                        "crankshaft axis",
                        CrankCards::shaft,
                        "Stroke and throw mixed up: the throw is half the stroke.",
                        "Measure from the far side of the main journal to the far side of the crankpin, along the throw.",
                        "Take away half of each diameter.",
                        "Enter the throw here, or better the stroke by travel."),
                card(
                        Term.CRANKPIN_DIAMETER,
                        "far side of the crankpin",
                        CrankCards::shaft,
                        TURN,
                        "Clean the pin; micrometer set on its standard.",
                        "Two places along the pin, in line with the throw and across it.",
                        "Enter the mean here, the extremes under largest and smallest."),
                card(
                        Term.CRANKPIN_LARGEST,
                        "far side of the crankpin",
                        CrankCards::shaft,
                        TURN,
                        "Two places along the pin, in line with the throw and across it.",
                        "The largest of the four."),
                card(
                        Term.CRANKPIN_SMALLEST,
                        "far side of the crankpin",
                        CrankCards::shaft,
                        TURN,
                        "Two places along the pin, in line with the throw and across it.",
                        "The smallest of the four; a pin wears on the side of the throw that takes the load."),
                card(
                        Term.CRANKPIN_WIDTH,
                        "face of the other cheek",
                        CrankCards::shaft,
                        "Jaws in the fillets beside the cheeks.",
                        "Clean both cheeks, feel for burrs.",
                        "Inside jaws between the machined faces, clear of the fillets."),
                card(
                        Term.MAIN_JOURNAL,
                        "far side of the journal",
                        CrankCards::shaft,
                        TURN,
                        "Clean the journal; micrometer set on its standard.",
                        "Two places, two directions."),
                card(
                        Term.SEAL_FLYWHEEL_END,
                        "far side of the shaft",
                        CrankCards::shaft,
                        "Read beside the groove that the old seal has worn instead of in it, or the other way round: note which.",
                        "Clean the land where the lip of the seal runs.",
                        "Two directions; feel for a groove with a fingernail."),
                card(
                        Term.SEAL_OUTPUT_END,
                        "far side of the shaft",
                        CrankCards::shaft,
                        "Read beside the groove that the old seal has worn instead of in it, or the other way round: note which.",
                        "Clean the land where the lip of the seal runs.",
                        "Two directions; feel for a groove with a fingernail."),
                card(
                        Term.MAIN_BORE,
                        "far side of the bore",
                        CrankCards::mainBore,
                        "Side cover loose, so that its bore stands askew or oval.",
                        "Bearing clean and dry, gauge set to its ring.",
                        "Two directions at both ends of the bearing; rock to the smallest figure."),
                card(
                        Term.CRANK_RUN_OUT,
                        "axis of the bearings",
                        CrankCards::runOut,
                        "Tip on a keyway, or the dial's movement halved: the whole movement counts.",
                        "Shaft in its bearings or between centres, end clean.",
                        "Tip square on the shaft end, turn slowly once.",
                        "Largest less smallest figure of the dial."),
                card(
                        Term.CRANK_END_PLAY,
                        "crankcase",
                        CrankCards::endPlay,
                        "Side cover fitted without its gasket, or the dial not in line with the shaft.",
                        "Side cover on with its gasket, bolts torqued.",
                        "Dial in line with the shaft on its end; push in, zero, pull out, read."),
                card(
                        Term.COUNTERWEIGHT_RADIUS,
                        "crankshaft axis",
                        CrankCards::counterweight,
                        "Half the journal forgotten, or not at the outermost point.",
                        "Measure from the far side of the main journal to the outermost point of the counterweight.",
                        "Take away half the main journal."),
                card(
                        Term.BIG_END_SHIM,
                        "other face of the shim",
                        CrankCards::shim,
                        "Both sides added together: enter what was taken out on each side.",
                        "Clean the shims, flatten them.",
                        "Measure what was taken out of one side of the cap; the other side must be the same."),
                card(
                        Term.CRANK_TAPER,
                        "far side of the taper",
                        ShaftCards::taper,
                        ShaftCards.TAPER_SLIP,
                        "Mark the middle of the key's length on the taper.",
                        "Jaws square across the shaft at the mark, clear of the keyway."),
                card(
                        Term.CRANK_KEYWAY,
                        "other wall of the keyway",
                        ShaftCards::keyway,
                        ShaftCards.KEYWAY_SLIP,
                        "Clean the keyway; stone off burrs.",
                        "Inside jaws square between its walls, at both ends; the narrowest place counts."));
    }

    private static ReadingCard stroke(Term term) {
        return card(
                term,
                "deck face",
                CrankCards::travel,
                STROKE_SLIP,
                term == Term.STROKE
                        ? "Head off; base of the gauge across the deck, tip on the crown above the pin axis."
                        : "The same with the crankshaft that the case was made for, before it comes out.",
                "Read at true top dead centre, turn half a turn, read at true bottom dead centre.",
                "Push the piston to the same side both times.",
                "The difference is the stroke.");
    }

    private static void travel(CardSketch s) {
        s.partBox(80, 104, 24, 180);
        s.partBox(236, 104, 24, 180);
        s.unknown("M", 106, 122, "H", 234, "V", 160, "M", 106, 122, "V", 160);
        s.part("M", 106, 220, "H", 234, "V", 284, "H", 106, "Z");
        s.datumFace(60, 104, 104, 104);
        s.datumFace(236, 104, 280, 104);
        s.toolBox(70, 93, 200, 11);
        s.depthGauge(170, 104, 220, 0);
        s.upright(204, 122, 220);
        s.symbol(212, 186, START);
        s.tool(230, 52, START, 188, 54);
        s.datum(300, 120, START, 276, 106);
        s.note("crown at top dead centre", 300, 180, START);
        s.quiet("M", 296, 176, "L", 226, 124);
        s.note("crown at bottom dead centre", 300, 236, START);
        s.quiet("M", 296, 232, "L", 226, 222);
    }

    /** A crankshaft lying across, its throw up: flywheel end left. */
    private static void shaft(CardSketch s) {
        s.partBox(40, 168, 66, 34);
        s.partBox(106, 162, 64, 46);
        s.partBox(170, 66, 28, 190);
        s.partBox(262, 66, 28, 190);
        s.partBox(198, 80, 64, 44);
        s.partBox(290, 162, 64, 46);
        s.partBox(354, 168, 86, 34);
        s.axis(30, 185, 455, 185);
        s.note("flywheel end", s.is(Term.SEAL_FLYWHEEL_END) ? 90 : 38, 244, START);
        s.note("output end", s.is(Term.SEAL_OUTPUT_END) ? 376 : 465, 244, END);
        if (s.is(Term.THROW)) {
            s.datumAxis(30, 185, 450, 185);
            s.axis(180, 102, 340, 102);
            s.upright(325, 102, 185);
            s.symbol(333, 140, START);
            s.caliper(true, 80, 208, 250, 366, false);
            s.tool(400, 66, START, 378, 86);
            s.datum(20, 284, START, 60, 187);
        } else if (s.is(Term.CRANKPIN_WIDTH)) {
            s.caliper(false, 198, 262, 106, 46, true);
            s.datumFace(198, 134, 198, 76);
            s.level(198, 262, 142);
            s.symbol(230, 166, MIDDLE);
            s.datum(12, 90, START, 194, 116);
            s.tool(330, 80, START, 294, 42);
        } else if (s.is(Term.CRANKPIN_DIAMETER, Term.CRANKPIN_LARGEST, Term.CRANKPIN_SMALLEST)) {
            s.micrometer(true, 80, 124, 230, 420);
            s.datumFace(200, 80, 260, 80);
            s.upright(210, 80, 124);
            s.symbol(210, 152, MIDDLE);
            s.datum(12, 56, START, 204, 77);
            s.tool(330, 48, START, 320, 67);
        } else {
            journal(s);
        }
    }

    private static void journal(CardSketch s) {
        boolean left = s.is(Term.SEAL_FLYWHEEL_END);
        boolean seal = left || s.is(Term.SEAL_OUTPUT_END);
        double x = left ? 72 : seal ? 400 : 322;
        double top = seal ? 168 : 162;
        double bottom = seal ? 202 : 208;
        s.micrometer(true, top, bottom, x, left ? 22 : 462);
        s.datumFace(x - 26, top, x + 26, top);
        s.upright(x + (left ? 22 : -22), top, bottom);
        s.symbol(left ? 112 : x - 28, bottom - 8, left ? START : END);
        s.datum(left ? 12 : 296, 60, START, x, top - 4);
        s.tool(left ? 96 : x - 26, 278, left ? START : END, x + (left ? 8 : -8), bottom + 54);
    }

    private static void mainBore(CardSketch s) {
        s.part("M", 50, 80, "H", 300, "V", 136, "H", 50, "Z");
        s.part("M", 50, 204, "H", 300, "V", 260, "H", 50, "Z");
        s.partBox(120, 136, 120, 14);
        s.partBox(120, 190, 120, 14);
        s.axis(30, 170, 440, 170);
        s.toolLine(3, "M", 170, 150, "V", 190);
        s.toolBox(164, 156, 12, 28);
        s.toolBox(176, 166, 170, 8);
        s.face(362, 170, 18);
        s.datumFace(236, 190, 124, 190);
        s.upright(214, 150, 190);
        s.symbol(252, 160, START);
        s.datum(110, 278, START, 150, 194);
        s.tool(340, 120, START, 362, 150);
        s.note("plain main bearing in the case", 60, 54, START);
    }

    private static void runOut(CardSketch s) {
        s.partBox(60, 150, 60, 44);
        s.partBox(120, 96, 24, 150);
        s.partBox(186, 96, 24, 150);
        s.partBox(144, 104, 42, 34);
        s.partBox(210, 150, 70, 44);
        s.part("M", 280, 154, "L", 420, 150, "V", 182, "L", 280, 190, "Z");
        s.part("M", 230, 194, "L", 216, 240, "H", 262, "L", 248, 194, "Z");
        s.part("M", 80, 194, "L", 66, 240, "H", 112, "L", 98, 194, "Z");
        s.datumAxis(40, 172, 450, 172);
        s.indicator(400, 150, 0, -1);
        s.dimension(372, 136, 372, 151);
        s.symbol(358, 128, END);
        s.tool(290, 84, END, 380, 94);
        s.datum(290, 250, START, 330, 174);
        s.note("bearings", 150, 274, MIDDLE);
    }

    private static void endPlay(CardSketch s) {
        boolean cam = s.is(Term.CAM_END_PLAY);
        s.part("M", 60, 80, "H", 230, "V", 140, "H", 60, "Z", "M", 60, 210, "H", 230, "V", 260, "H", 60, "Z");
        if (cam) {
            s.part("M", 40, 155, "H", 290, "V", 195, "H", 40, "Z");
            s.part("M", 76, 146, "h", 30, "v", 60, "h", -30, "Z");
        } else {
            s.part("M", 40, 150, "H", 290, "V", 200, "H", 40, "Z");
        }
        s.datumFace(230, 140, 230, 82);
        s.axis(30, 175, 300, 175);
        s.indicator(290, 175, 1, 0);
        s.toolLine(4, "M", 346, 194, "V", 240, "H", 230);
        s.dimension(262, 218, 282, 218);
        s.symbol(308, 224, START);
        s.tool(330, 130, START, 340, 158);
        s.datum(270, 80, START, 236, 104);
        s.note(cam ? "camshaft, pushed and pulled" : "crankshaft, pushed and pulled", 70, 276, START);
        if (!cam) {
            s.note("side cover with its gasket", 70, 54, START);
        }
    }

    static void endFloat(CardSketch s) {
        endPlay(s);
    }

    private static void counterweight(CardSketch s) {
        s.part(
                "M", 98, 160, "A", 82, 82, "0 0 0", 262, 160, "L", 214, 140, "L", 196, 86, "A", 20, 20, "0 1 0", 164,
                86, "L", 146, 140, "Z");
        s.partRound(180, 160, 22);
        s.quietRound(180, 76, 14);
        s.datumAxis(110, 160, 320, 160);
        s.datumAxis(180, 120, 180, 214);
        s.quiet("M", 180, 242, "H", 300);
        s.upright(288, 160, 242);
        s.symbol(280, 208, END);
        s.caliper(true, 138, 242, 190, 340, false);
        s.tool(376, 180, START, 356, 180);
        s.datum(310, 80, START, 310, 158);
        s.note("counterweight", 180, 270, MIDDLE);
        s.note("from the far side of the journal, less half of it", 20, 60, START);
    }

    private static void shim(CardSketch s) {
        s.part("M", 70, 150, "H", 250, "V", 170, "H", 70, "Z");
        s.micrometer(true, 150, 170, 160, 330);
        s.datumFace(100, 150, 220, 150);
        s.dimension(92, 150, 92, 170);
        s.symbol(60, 140, END);
        s.datum(40, 90, START, 120, 147);
        s.tool(200, 250, START, 170, 230);
        s.note("shims of one side, pressed flat", 260, 96, START);
    }
}
