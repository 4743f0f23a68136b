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
                        "opposite side of the crankpin",
                        CrankCards::shaft,
                        TURN,
                        "Clean the pin; micrometer set on its standard.",
                        "Two places along the pin, in line with the throw and across it.",
                        "Enter the mean here, the extremes under largest and smallest."),
                card(
                        Term.CRANKPIN_LARGEST,
                        "opposite side of the crankpin",
                        CrankCards::shaft,
                        TURN,
                        "Two places along the pin, in line with the throw and across it.",
                        "The largest of the four."),
                card(
                        Term.CRANKPIN_SMALLEST,
                        "opposite side of the crankpin",
                        CrankCards::shaft,
                        TURN,
                        "Two places along the pin, in line with the throw and across it.",
                        "The smallest of the four; a pin wears on the side of the throw that takes the load."),
                card(
                        Term.CRANKPIN_WIDTH,
                        "face of the opposite cheek",
                        CrankCards::shaft,
                        "Jaws in the fillets beside the cheeks.",
                        "Clean both cheeks, feel for burrs.",
                        "Inside jaws between the machined faces, clear of the fillets."),
                card(
                        Term.MAIN_JOURNAL,
                        "opposite side of the journal",
                        CrankCards::shaft,
                        TURN,
                        "Clean the journal; micrometer set on its standard.",
                        "Two places, two directions."),
                card(
                        Term.SEAL_FLYWHEEL_END,
                        "opposite side of the shaft",
                        CrankCards::shaft,
                        "Read beside the groove that the old seal has worn instead of in it, or the other way round: note which.",
                        "Clean the land where the lip of the seal runs.",
                        "Two directions; feel for a groove with a fingernail."),
                card(
                        Term.SEAL_OUTPUT_END,
                        "opposite side of the shaft",
                        CrankCards::shaft,
                        "Read beside the groove that the old seal has worn instead of in it, or the other way round: note which.",
                        "Clean the land where the lip of the seal runs.",
                        "Two directions; feel for a groove with a fingernail."),
                card(
                        Term.MAIN_BORE,
                        "opposite side of the bore",
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
                        "opposite face of the shim",
                        CrankCards::shim,
                        "Both sides added together: enter what was taken out on each side.",
                        "Clean the shims, flatten them.",
                        "Measure what was taken out of one side of the cap; the other side must be the same."),
                card(
                        Term.CRANK_TAPER,
                        "opposite side of the taper",
                        ShaftCards::taper,
                        ShaftCards.TAPER_SLIP,
                        "Mark the middle of the key's length on the taper.",
                        "Jaws square across the shaft at the mark, clear of the keyway."),
                card(
                        Term.CRANK_KEYWAY,
                        "opposite wall of the keyway",
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
        s.partBox(80, 104, 24, 176);
        s.partBox(236, 104, 24, 176);
        s.unknown("M", 106, 122, "H", 234, "V", 160, "M", 106, 122, "V", 160);
        s.part("M", 106, 220, "H", 234, "V", 280, "H", 106, "Z");
        s.toolBox(70, 93, 200, 11);
        s.depthGauge(170, 104, 220, 0);
        s.datumFace(80, 104, 104, 104);
        s.datumFace(236, 104, 260, 104);
        s.upright(204, 122, 220);
        s.symbol(212, 186, START);
        s.tool(230, 56, START, 187, 54);
        s.datum(300, 120, START, 256, 105);
        s.note("crown at top dead centre", 300, 180, START);
        s.quiet("M", 296, 176, "L", 226, 122);
        s.note("crown at bottom dead centre", 300, 236, START);
        s.quiet("M", 296, 232, "L", 226, 220);
    }

    /** The crankshaft from the side, its throw up, flywheel end left; beside it the place read, seen on its end in the instrument. */
    private static void shaft(CardSketch s) {
        if (s.is(Term.THROW)) {
            throwOver(s);
            return;
        }
        if (s.is(Term.CRANKPIN_WIDTH)) {
            cheeks(s);
            return;
        }
        s.partBox(20, 172, 40, 28);
        s.partBox(60, 166, 36, 40);
        s.partBox(116, 100, 44, 36);
        s.partBox(180, 166, 36, 40);
        s.partBox(216, 172, 54, 28);
        s.partBox(96, 84, 20, 160);
        s.partBox(160, 84, 20, 160);
        s.axis(10, 186, 280, 186);
        s.note("flywheel end", 12, 266, START);
        s.note("output end", 280, 266, END);
        boolean pin = s.is(Term.CRANKPIN_DIAMETER, Term.CRANKPIN_LARGEST, Term.CRANKPIN_SMALLEST);
        if (pin) {
            s.lookAt(130, 88, 148, true);
        } else if (s.is(Term.SEAL_FLYWHEEL_END)) {
            s.lookAt(40, 160, 212, true);
        } else if (s.is(Term.SEAL_OUTPUT_END)) {
            s.lookAt(240, 160, 212, true);
        } else {
            s.lookAt(192, 154, 218, true);
        }
        s.roundInMicrometer(400, 156, 36, 464);
        s.uprightOff(342, 120, 192, 400);
        s.symbol(334, 162, END);
        s.datum(250, 60, START, 381, 125);
        s.tool(370, 254, END, 391, 254);
        String what = pin ? "crankpin" : s.is(Term.MAIN_JOURNAL) ? "journal" : "seal land";
        s.note(what + ", on its end", 470, 290, END);
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
        s.datumFace(124, 190, 236, 190);
        s.upright(250, 150, 190);
        s.quiet("M", 240, 150, "H", 256, "M", 240, 190, "H", 256);
        s.symbol(262, 160, START);
        s.datum(110, 282, START, 150, 191);
        s.tool(340, 120, START, 362, 152);
        s.note("plain main bearing in the case", 60, 54, START);
    }

    private static void runOut(CardSketch s) {
        s.partBox(60, 150, 60, 44);
        s.partBox(144, 104, 42, 34);
        s.partBox(120, 96, 24, 150);
        s.partBox(186, 96, 24, 150);
        s.partBox(210, 150, 70, 44);
        s.part("M", 280, 154, "L", 420, 150, "V", 194, "L", 280, 190, "Z");
        s.part("M", 240, 194, "L", 216, 262, "H", 264, "Z");
        s.part("M", 90, 194, "L", 66, 262, "H", 114, "Z");
        s.plate(40, 460, 262);
        s.datumAxis(40, 172, 440, 172);
        s.stand(396, 94, 444, 262);
        s.indicator(396, 150, 0, -1);
        s.dimension(366, 134, 366, 151);
        s.symbol(352, 136, END);
        s.tool(340, 64, END, 380, 86);
        s.datum(276, 226, START, 330, 172);
        s.note("bearings", 166, 290, MIDDLE);
        s.quiet("M", 140, 282, "L", 96, 250, "M", 192, 282, "L", 236, 250);
    }

    /** A shaft between two walls: its cheeks or shoulders stop it at both, the dial stands on the wall that is the datum. */
    private static void endPlay(CardSketch s) {
        boolean cam = s.is(Term.CAM_END_PLAY);
        s.partBox(60, 70, 32, 200);
        s.part("M", 94, 70, "H", 270, "V", 270, "H", 94, "V", 252, "H", 230, "V", 88, "H", 94, "Z");
        s.toolLine(3, "M", 93, 70, "V", 88, "M", 93, 252, "V", 270);
        s.partBox(30, 156, 280, 38);
        if (cam) {
            s.partBox(106, 120, 40, 110);
            s.partBox(204, 136, 26, 78);
            s.part("M", 156, 156, "C", 160, 126, 184, 126, 188, 156, "Z");
        } else {
            s.partBox(140, 104, 54, 30);
            s.partBox(106, 96, 34, 148);
            s.partBox(194, 96, 36, 148);
        }
        s.axis(20, 175, 320, 175);
        s.toolLine(4, "M", 366, 175, "V", 246, "H", 284);
        s.toolBox(270, 232, 14, 30);
        s.indicator(310, 175, 1, 0);
        s.datumFace(270, 206, 270, 268);
        double y = cam ? 216 : 212;
        s.level(92, 106, y);
        s.symbol(40, y + 4, MIDDLE);
        s.quiet("M", 52, y, "H", 72);
        s.lit("M", 26, 140, "H", 52);
        s.head(20, 140, -1, 0);
        s.head(58, 140, 1, 0);
        s.note("push,", 12, 112, START);
        s.note("pull", 12, 127, START);
        s.datum(300, 286, START, 268, 262);
        s.tool(340, 130, START, 366, 157);
        s.note(cam ? "camshaft" : "crankshaft", 324, 210, START);
        s.quiet("M", 326, 202, "L", 296, 186);
        s.note("side cover with its gasket", 12, 48, START);
        s.quiet("M", 60, 68, "L", 74, 84);
        s.note("crankcase", 244, 60, MIDDLE);
        s.note(cam ? "gear" : "cheek", cam ? 126 : 123, cam ? 140 : 116, MIDDLE);
        s.note(cam ? "collar" : "cheek", cam ? 216 : 212, cam ? 232 : 116, MIDDLE);
    }

    static void endFloat(CardSketch s) {
        endPlay(s);
    }

    private static void counterweight(CardSketch s) {
        s.part(
                "M", 98, 160, "A", 82, 82, "0 0 0", 262, 160, "L", 214, 140, "L", 196, 86, "A", 20, 20, "0 1 0", 164,
                86, "L", 146, 140, "Z");
        s.partRound(180, 160, 22);
        s.holeRound(180, 76, 12);
        s.caliper(true, 138, 242, 190, 340, false);
        s.datumAxis(80, 160, 316, 160);
        s.datumAxis(180, 120, 180, 206);
        s.uprightOff(76, 160, 242, 180);
        s.symbol(66, 208, END);
        s.tool(390, 190, START, 355, 180);
        s.datum(290, 80, START, 306, 160);
        s.note("counterweight", 180, 284, MIDDLE);
        s.note("from the far side of the journal, less half of it", 14, 60, START);
    }

    private static void shim(CardSketch s) {
        s.part("M", 70, 150, "H", 250, "V", 176, "H", 70, "Z");
        s.micrometer(true, 150, 176, 180, 320);
        s.datumFace(110, 150, 240, 150);
        s.uprightOff(50, 150, 176, 70);
        s.symbol(40, 170, END);
        s.datum(40, 90, START, 130, 150);
        s.tool(226, 262, START, 190, 240);
        s.note("shims of one side, pressed flat", 346, 150, START);
        s.note("shim", 120, 196, MIDDLE);
    }

    /** From the far side of the journal to the far side of the pin, seen along the shaft. */
    private static void throwOver(CardSketch s) {
        s.part("M", 158, 108, "A", 44, 44, "0 0 1", 242, 108, "L", 266, 196, "A", 68, 68, "0 0 1", 134, 196, "Z");
        s.partRound(200, 108, 24);
        s.partRound(200, 196, 26);
        s.caliper(true, 84, 222, 196, 296, false);
        s.datumAxis(96, 196, 288, 196);
        s.datumAxis(200, 176, 200, 216);
        s.axis(96, 108, 240, 108);
        s.upright(110, 108, 196);
        s.symbol(100, 158, END);
        s.tool(360, 130, START, 311, 140);
        s.datum(12, 284, START, 114, 196);
        s.note("crankpin", 200, 127, MIDDLE);
        s.note("main journal", 118, 246, END);
        s.quiet("M", 116, 238, "L", 184, 208);
        s.note("the caliper reads far side to far side: take away half of each diameter", 350, 190, START);
    }

    /** Between the cheeks, beside the pin. */
    private static void cheeks(CardSketch s) {
        s.partBox(60, 216, 80, 44);
        s.partBox(240, 216, 80, 44);
        s.partBox(180, 136, 60, 44);
        s.partBox(140, 84, 40, 196);
        s.partBox(240, 84, 40, 196);
        s.axis(40, 238, 340, 238);
        s.caliper(false, 180, 240, 128, 68, true);
        s.datumFace(180, 88, 180, 130);
        s.levelOff(180, 240, 196, 182);
        s.symbol(210, 222, MIDDLE);
        s.datum(12, 64, START, 178, 110);
        s.tool(340, 100, START, 290, 68);
        s.note("crankpin", 210, 163, MIDDLE);
        s.note("cheek", 134, 190, END);
        s.note("cheek", 286, 190, START);
    }
}
